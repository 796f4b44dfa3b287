//! What the rows that the panel solver answers have in common: the lid at its limits, bands over them, and the long story.

use std::sync::Arc;

use coaming::prelude::*;
use coaming_panel::Load;

use crate::amount::{Amount, Measure, Phrase};
use crate::demand::{Demand, NotChecked};
use crate::held::{self, Found, Setup};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The lid at one of its limits, under a load.
pub(super) struct State {
    pub(super) name: String,
    pub(super) setup: Setup,
    pub(super) load: Load,
    pub(super) found: Arc<Found>,
    /// Error of its stress in pascals, where it was solved for large deflection.
    pub(super) stretched: Option<f64>,
}

/// The closed lid at every limit.
pub(super) fn closed(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<Vec<State>, NotChecked> {
    under(prepared, sheet, |setup| (setup, Load::default()))
}

/// The lid at every limit under a load that may depend on how the layers join in.
pub(super) fn under(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    load: impl Fn(Setup) -> (Setup, Load),
) -> Result<Vec<State>, NotChecked> {
    let named = |setup: Setup| {
        let (setup, load) = load(setup);
        (setup.joined_name().to_owned(), setup, load)
    };
    each(prepared, sheet, Setup::ALL.into_iter().map(named).collect())
}

/// The lid at each of some limits under its load, each told once; the inputs are noted of the one that takes the most, the
/// last. A limit bears its name and the gasket's end.
pub(super) fn each(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    limits: Vec<(String, Setup, Load)>,
) -> Result<Vec<State>, NotChecked> {
    let mut states: Vec<State> = Vec::new();
    for (name, setup, load) in limits.into_iter().rev() {
        let found = match states.is_empty() {
            true => held::under(prepared, setup, &load, Some(&mut *sheet))?,
            false => held::under(prepared, setup, &load, None)?,
        };
        // A gasket whose law is known is the same at both ends of its band.
        let same = |known: &&mut State| {
            known.setup.joined == setup.joined && known.load == load && known.found == found
        };
        match states.iter_mut().find(same) {
            Some(known) => known.name = name,
            None => {
                let name = format!("{name}, {}", setup.firmness_name());
                states.push(State { name, setup, load, found, stretched: None });
            }
        }
    }
    states.reverse();
    sheet.solved(held::PANEL_SOLVER);
    Ok(states)
}

/// How far a lid bends, and why it could not be solved for that.
pub(super) struct Beyond {
    /// Largest deflection over the thickness, by linear theory.
    ratio: f64,
    why: Option<NotChecked>,
}

impl Beyond {
    /// Whether the states that bend too far for linear theory were solved for that.
    ///
    /// # Errors
    /// Why they were not.
    pub(super) fn solved(self) -> Result<(), NotChecked> {
        self.why.map_or(Ok(()), Err)
    }

    /// A row that is judged, or one whose linear number is shown and not judged by, with the reason.
    pub(super) fn judge(self, demand: Demand) -> Result<Demand, NotChecked> {
        or_beyond(demand, self.ratio, self.why)
    }
}

/// A row that is judged, or one whose linear number is shown and not judged by, with the reason and how far the deflection is past
/// the thickness.
pub(super) fn or_beyond(
    demand: Demand,
    ratio: f64,
    unsolved: Option<NotChecked>,
) -> Result<Demand, NotChecked> {
    let Some(why) = unsolved else { return Ok(demand) };
    let why = match why {
        NotChecked::Refused(error) => error.to_string(),
        NotChecked::NotCalculated { what, .. } => format!("needs {what}"),
        NotChecked::Needs(paths) => format!("needs {}", paths.join(", ")),
    };
    Err(NotChecked::NotCalculated {
        what: format!("needs large deflection: w/t = {}; {why}; linear", rounded(ratio, 3)),
        shown: Some(Box::new(demand)),
    })
}

/// Whether a lid may be bent past half its sheet's thickness, where a linear answer decides nothing.
pub(super) fn past_half(found: &Found, thickness: f64) -> bool {
    found.deflection.value.abs() + found.deflection_error() > 0.5 * thickness
}

/// The states that a row is judged by: each that is past half the sheet's thickness solved anew for large deflection. Where
/// that finds nothing, the linear ones stand, with the reason.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of the thickness.
pub(super) fn judged(
    prepared: &Prepared<'_>,
    linear: Vec<State>,
    sheet: &mut Worksheet,
) -> Result<(Vec<State>, Beyond), NotChecked> {
    let thickness = held::skin(prepared)?.1;
    let past = |state: &State| past_half(&state.found, thickness);
    let furthest = linear.iter().map(|state| state.found.deflection.value.abs()).fold(0.0, f64::max);
    let ratio = furthest / thickness;
    if !linear.iter().any(past) {
        return Ok((linear, Beyond { ratio, why: None }));
    }
    for state in &linear {
        let label = format!("largest deflection, linear, {}", state.name);
        sheet.note(&label, state.found.deflection.value, Measure::LENGTH);
    }
    let one = |state: &State| {
        let (name, load) = (state.name.clone(), state.load.clone());
        let setup = state.setup;
        if !past(state) {
            return Ok(State { name, setup, load, found: Arc::clone(&state.found), stretched: None });
        }
        let held::Stretched { found, stress_error } = held::stretched(prepared, setup, &load)?;
        Ok(State { name, setup, load, found, stretched: Some(stress_error) })
    };
    match linear.iter().map(one).collect::<Result<Vec<State>, NotChecked>>() {
        Err(why) => Ok((linear, Beyond { ratio, why: Some(why) })),
        Ok(states) => {
            let large = states.iter().filter(|state| state.stretched.is_some());
            let large: Vec<&str> = large.map(|state| state.name.as_str()).collect();
            sheet.note_words("solved for large deflection", large.join("; "));
            sheet.solved(held::LARGE_DEFLECTION);
            sheet.say("Past half the thickness a linear number decides nothing: there the row is judged by large deflection, in which the lid stretches as it bows. It is free in its plane, for a sponge holds no edge against drawing in.");
            Ok((states, Beyond { ratio, why: None }))
        }
    }
}

/// The band of a number over the limits, widened by its error, with the state at its higher end.
pub(super) fn highest(states: &[State], of: impl Fn(&Found) -> (f64, f64)) -> Option<(f64, f64, &State)> {
    let mut band: Option<(f64, f64, &State)> = None;
    for state in states {
        let (value, error) = of(&state.found);
        band = Some(match band {
            None => (value - error, value + error, state),
            Some((low, high, worst)) => (
                low.min(value - error),
                high.max(value + error),
                if value + error > high { state } else { worst },
            ),
        });
    }
    band
}

/// The band of a number over the limits, widened by its error, with the state at its lower end.
pub(super) fn lowest(states: &[State], of: impl Fn(&Found) -> (f64, f64)) -> Option<(f64, f64, &State)> {
    let turned = highest(states, |found| {
        let (value, error) = of(found);
        (-value, error)
    });
    turned.map(|(low, high, worst)| (-high, -low, worst))
}

/// What a list without states would be: it has one, or there was an error before.
pub(super) fn nothing() -> NotChecked {
    NotChecked::not_calculated("a lid at none of its limits")
}

pub(super) const fn metres(si: f64) -> Amount {
    Amount { si, measure: Measure::LENGTH }
}

/// A place on the cover, after some words with an amount in them.
pub(super) fn at(words: &str, amount: Amount, place: held::Place) -> Phrase {
    // What rounding leaves of a middle is no place.
    let whole = |si: f64| metres(if si.abs() < 1e-9 { 0.0 } else { si });
    Phrase::with(format!("{words}, x {{}}, y {{}}"), [amount, whole(place.at.x), whole(place.at.y)])
}

/// Tells how the seal fares at each limit.
pub(super) fn tell_seal(sheet: &mut Worksheet, states: &[State]) {
    for state in states {
        let found = &state.found;
        sheet.note(&format!("least compression, {}", state.name), found.least.value, Measure::LENGTH);
        sheet.note(&format!("largest compression, {}", state.name), found.most.value, Measure::LENGTH);
        sheet.note(&format!("seal line without contact, {}", state.name), found.open_length, Measure::LENGTH);
        sheet.note(
            &format!("error of the compression, {}", state.name),
            found.left.compression,
            Measure::LENGTH,
        );
        balance(sheet, state);
    }
    if states.iter().any(|state| state.found.beyond_law) {
        sheet.say("Somewhere the gasket is compressed past its law's last point.");
    }
}

/// Tells what each latch pulls at each limit.
pub(super) fn tell_pulls(sheet: &mut Worksheet, states: &[State]) {
    for state in states {
        for (nth, pull) in state.found.pulls.iter().enumerate() {
            sheet.note(&format!("pull of latch {}, {}", nth + 1, state.name), *pull, Measure::FORCE);
        }
        sheet.note(&format!("error of a pull, {}", state.name), state.found.pull_error(), Measure::FORCE);
        let pushed: f64 = state.found.stops.iter().sum();
        if pushed > 0.0 {
            sheet.note(&format!("push of all stops, {}", state.name), pushed, Measure::FORCE);
        }
        sheet.note(&format!("push of the gasket, {}", state.name), state.found.gasket_force, Measure::FORCE);
        balance(sheet, state);
    }
}

fn balance(sheet: &mut Worksheet, state: &State) {
    sheet.note(&format!("balance left over, {}", state.name), state.found.balance, Measure::Number);
}

/// What the model is, for the long story.
pub(super) fn tell_model(prepared: &Prepared<'_>, sheet: &mut Worksheet) {
    sheet.say("Panel solver: lid, gasket and latches together; linear in the deflection of the lid where no other theory is named.");
    sheet.say("A screening: refined until the deflection is known to a twentieth, and the row is widened by the error that is left.");
    sheet.say("Window, frame and stiffeners join in somewhere between not at all (the sheet alone, its cut-outs open) and as one piece with the sheet. A layer of less than a thousandth of the sheet's own stiffness only weighs.");
    sheet.say("Each latch holds its place at the closed height; flanges are beams joined at the corners; the lid's weight is left out.");
    if prepared.cover.seal.as_ref().is_some_and(|seal| seal.stop_height.is_some()) {
        sheet.say("Stops are taken to stand at the latches; a latch that is set harder onto its stop pulls more than this.");
    }
}
