//! The pane at both limits of how it is held, under one load: bands of deflection and stress over them.

use std::sync::Arc;

use coaming::material::Material;
use coaming::prelude::*;
use coaming::thermal::HoleRole;
use coaming_panel::{Load, Panel};

use crate::amount::{Amount, Measure};
use crate::checks::movement::{bush_play, passed};
use crate::checks::solved::at;
use crate::demand::{Need, NotChecked, Origin};
use crate::document::{Joining, Layer, Outline};
use crate::held::{self, Found, Rest};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// A pane at one of its limits.
pub(super) struct Limit {
    pub(super) name: &'static str,
    pub(super) panel: Panel,
    /// The same where no contact has to be found: to compare places.
    pub(super) roughly: Panel,
}

/// A pane at one of its limits, under a load.
pub(super) struct State {
    pub(super) limit: Limit,
    pub(super) load: Load,
    pub(super) found: Arc<Found>,
    /// Error of its stress in pascals, where it was solved for large deflection.
    stretched: Option<f64>,
}

/// The pane at its softest, then at its firmest, of this stiffness; tells what holds it.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn limits(
    prepared: &Prepared<'_>,
    layer: &Layer,
    softest: Rest,
    youngs_modulus: Pressure,
    sheet: &mut Worksheet,
) -> Result<[Limit; 2], NotChecked> {
    let firmest = firmest(prepared, layer, sheet)?;
    let mut limit = |rest: Rest| {
        let panel = held::pane(prepared, layer, rest, youngs_modulus, sheet)?;
        let roughly = match rest {
            Rest::OnItsFrame => held::pane(prepared, layer, Rest::BetweenEdges, youngs_modulus, sheet)?,
            _ => panel.clone(),
        };
        Ok::<Limit, NotChecked>(Limit { name: rest.name(), panel, roughly })
    };
    Ok([limit(softest)?, limit(firmest)?])
}

/// The pane at both its limits with Young's modulus of its material's record.
///
/// # Errors
/// As [`limits`].
pub(super) fn at_room_temperature(
    prepared: &Prepared<'_>,
    layer: &Layer,
    sheet: &mut Worksheet,
) -> Result<[Limit; 2], NotChecked> {
    let material = prepared.material_of(layer)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    limits(prepared, layer, Rest::OnItsFrame, youngs_modulus, sheet)
}

/// How firmly the pane is held at best: in its plane too, unless it floats on shoulder bushes in holes that leave it room.
fn firmest(prepared: &Prepared<'_>, layer: &Layer, sheet: &mut Worksheet) -> Result<Rest, NotChecked> {
    let told = "firmest hold of the pane";
    if layer.joining.need(|| format!("layers.{}.joining", layer.name))? == Joining::Bonded {
        sheet.note_words(told, "bonded: its lap flat, and held in its plane");
        return Ok(Rest::FlatAndHeld);
    }
    let patterns = prepared.cover.screws.iter().flatten();
    let mut passing = patterns
        .filter(|pattern| pattern.passes.iter().flatten().any(|passed| passed.layer == layer.name))
        .peekable();
    if passing.peek().is_none() {
        return Err(NotChecked::needs(format!("screws (a pattern that passes `{}`)", layer.name)));
    }
    for pattern in passing {
        let bushed = pattern.bush.as_ref().is_some_and(|bush| bush.layer == layer.name);
        let role = passed(pattern, &layer.name)?.role;
        let role = role.need(|| format!("screws.{}.passes.{}.role", pattern.name, layer.name))?;
        if !bushed || role == HoleRole::Fixed || !bush_play(prepared, pattern, sheet)?.1.floats {
            let how = "clamped by its screws: its lap flat, and held in its plane by friction";
            sheet.note_words(told, how);
            return Ok(Rest::FlatAndHeld);
        }
    }
    sheet.note_words(told, "afloat on its shoulder bushes: its lap flat, free in its plane");
    Ok(Rest::FlatAndFree)
}

/// The pane at each limit under a load of its own.
///
/// # Errors
/// [`NotChecked::Refused`] with the solver's reason.
pub(super) fn under(
    prepared: &Prepared<'_>,
    limits: [Limit; 2],
    load: impl Fn(&Limit) -> Result<Load, NotChecked>,
    sheet: &mut Worksheet,
) -> Result<Vec<State>, NotChecked> {
    let mut states = Vec::new();
    for limit in limits {
        let load = load(&limit)?;
        let found = held::pane_under(prepared, &limit.panel, &load)?;
        states.push(State { limit, load, found, stretched: None });
    }
    sheet.solved(held::PANEL_SOLVER);
    Ok(states)
}

/// The largest deflection of any limit, in metres.
pub(super) fn furthest(states: &[State]) -> f64 {
    states.iter().map(|state| state.found.deflection.value.abs()).fold(0.0, f64::max)
}

/// Solves each state that is past half the thickness anew for large deflection, in its place. Where that finds nothing the
/// linear ones stand, with the reason.
pub(super) fn stretch(
    prepared: &Prepared<'_>,
    states: &mut [State],
    thickness: f64,
    sheet: &mut Worksheet,
) -> Option<NotChecked> {
    for state in states.iter() {
        let label = format!("largest deflection, linear, {}", state.limit.name);
        sheet.note(&label, state.found.deflection.value.abs(), Measure::LENGTH);
    }
    let mut anew: Vec<Option<held::Stretched>> = Vec::new();
    for state in states.iter() {
        let reach = state.found.deflection.value.abs() + state.found.deflection_error();
        anew.push(match reach > 0.5 * thickness {
            true => match held::pane_stretched(prepared, &state.limit.panel, &state.load) {
                Ok(stretched) => Some(stretched),
                Err(why) => return Some(why),
            },
            false => None,
        });
    }
    let mut large = Vec::new();
    for (state, stretched) in states.iter_mut().zip(anew) {
        let Some(held::Stretched { found, stress_error }) = stretched else { continue };
        (state.found, state.stretched) = (found, Some(stress_error));
        large.push(state.limit.name);
    }
    if !large.is_empty() {
        sheet.note_words("solved for large deflection", large.join("; "));
        sheet.solved(held::LARGE_DEFLECTION);
        sheet.say("Past half the thickness a linear number decides nothing: there the row is judged by large deflection, in which the pane stretches as it bows.");
    }
    None
}

/// The band of the deflection over the limits in metres, widened by its error; says where it is largest.
pub(super) fn deflection_band(states: &[State], sheet: &mut Worksheet) -> (f64, f64) {
    let (mut low, mut high) = (f64::INFINITY, 0.0);
    for state in states {
        let place = state.found.deflection;
        let (found, error) = (place.value.abs(), state.found.deflection_error());
        sheet.note(&format!("largest deflection, {}", state.limit.name), found, Measure::LENGTH);
        sheet.note(&format!("error of the deflection, {}", state.limit.name), error, Measure::LENGTH);
        low = f64::min(low, (found - error).max(0.0));
        if found + error > high {
            high = found + error;
            let amount = Amount { si: found, measure: Measure::LENGTH };
            sheet.at(at("{} at the worst place", amount, place));
        }
    }
    (low, high)
}

/// The band of the largest principal stress over the limits in pascals, each widened by its error.
///
/// # Errors
/// [`NotChecked::Refused`] with the solver's reason.
pub(super) fn stress_band(
    prepared: &Prepared<'_>,
    states: &[State],
    sheet: &mut Worksheet,
) -> Result<(f64, f64), NotChecked> {
    let (mut low, mut high) = (f64::INFINITY, 0.0);
    for state in states {
        let (place, error) = (state.found.stress, stress_error(prepared, state)?);
        sheet.note(&format!("largest stress, {}", state.limit.name), place.value, Measure::STRESS);
        sheet.note(&format!("error of the stress, {}", state.limit.name), error, Measure::STRESS);
        low = f64::min(low, (place.value - error).max(0.0));
        if place.value + error > high {
            high = place.value + error;
            let amount = Amount { si: place.value, measure: Measure::STRESS };
            sheet.at(at("{} at the worst place", amount, place));
        }
    }
    Ok((low, high))
}

/// What the mesh leaves open of the largest stress of a state, in pascals: what refinement made of it from the first mesh to the last,
/// and the share by which deflection, moments or forces in the plane may still be off.
///
/// # Errors
/// [`NotChecked::Refused`] with the solver's reason.
pub(super) fn stress_error(prepared: &Prepared<'_>, state: &State) -> Result<f64, NotChecked> {
    let found = &state.found;
    let left = found.left.deflection_share.max(found.left.stress_share) * found.stress.value;
    let changed = match state.stretched {
        Some(changed) => changed,
        None => {
            let first = held::pane_on_first_mesh(prepared, &state.limit.panel, &state.load)?;
            (found.stress.value - first.stress.value).abs()
        }
    };
    Ok(changed + left)
}

/// What a pane bears for a moment: its yield strength, or its ultimate strength where it does not yield.
///
/// # Errors
/// [`NotChecked::Needs`] with material and property.
pub(super) fn strength(material: &Material, sheet: &mut Worksheet) -> Result<(f64, Origin), NotChecked> {
    let yields = material.yield_strength.is_some() || material.ultimate_strength.is_none();
    let (name, figure) = match yields {
        true => ("yield_strength", &material.yield_strength),
        false => ("ultimate_strength", &material.ultimate_strength),
    };
    let limit = sheet.property(material, name, figure)?;
    sheet.say(
        "The limit is that of a moment, in clean air: what stands, and what crazes, are rows of their own.",
    );
    Ok((limit.value, Origin::Design(format!("materials.{}.{name}", material.key))))
}

/// What the model is, for the long story.
pub(super) fn tell_model(layer: &Layer, sheet: &mut Worksheet) {
    if matches!(layer.outline, Outline::Circle(_)) {
        sheet.say("The mesh meets a round edge by straight pieces: a stress right at it may be off by a twentieth, which no estimate shows.");
    }
    sheet.say("Panel solver: the pane by itself, between two limits. At its softest it rests along the edge of its free span, which does not hold it back, free to turn and to slide; at its firmest its lap is flat. Sheet and frame are taken as stiff.");
    sheet.say("A screening: refined until the deflection is known to a twentieth, and the row is widened by the error that is left. That of a stress is what refinement made of it, from the first mesh to the last, and the solver's own estimate for moments and forces in the plane.");
}
