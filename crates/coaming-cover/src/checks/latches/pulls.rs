//! What each latch pulls, from lid, gasket and latches solved together; the even share beside it.

use coaming::latch::{LatchForce, LatchMissing};
use coaming_panel::Load;

use crate::amount::{Amount, Measure, Phrase};
use crate::checks::Subject;
use crate::checks::latches::{forces, latches, situation};
use crate::checks::solved::{Beyond, State, closed, highest, judged, nothing, tell_model, tell_pulls, under};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin};
use crate::document::LoadKind;
use crate::held::{self, Firmness, Found, Joined, Setup};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};
use coaming::prelude::*;

/// The even share of each latch by the closed form, for the long story.
fn even_share(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<(f64, f64), NotChecked> {
    let [low, high] = forces(prepared, sheet)?;
    sheet.note("even share of each latch, lowest", low.latch_force.value, Measure::FORCE);
    sheet.note("even share of each latch, highest", high.latch_force.value, Measure::FORCE);
    Ok((low.latch_force.value, high.latch_force.value))
}

/// Where the most loaded latch stands.
fn strongest_at(prepared: &Prepared<'_>, worst: &State) -> Phrase {
    let (nth, pull) = worst.found.strongest();
    let mut places = prepared.cover.latches.iter().filter_map(|latches| latches.positions.as_ref()).flatten();
    let force = Amount { si: pull, measure: Measure::FORCE };
    match places.nth(nth - 1) {
        Some(at) => Phrase::with(
            format!("{{}} at latch {nth}, x {{}}, y {{}}"),
            [force, Amount::of(at.x), Amount::of(at.y)],
        ),
        None => Phrase::with(format!("{{}} at latch {nth}"), [force]),
    }
}

/// The closed lid: pull of its most loaded latch in newtons, both ends, and its limits.
struct Closing {
    pulls: (f64, f64),
    states: Vec<State>,
    beyond: Beyond,
}

/// Pull of the most loaded latch of the closed lid, with the lid at its limits.
fn closing(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<Closing, NotChecked> {
    let linear = closed(prepared, sheet)?;
    let (states, beyond) = judged(prepared, linear, sheet)?;
    let pull = |found: &Found| (found.strongest().1, found.pull_error());
    let (low, high, worst) = highest(&states, pull).ok_or_else(nothing)?;
    sheet.at(strongest_at(prepared, worst));
    Ok(Closing { pulls: (low.max(0.0), high), states, beyond })
}

/// Force of the hand on a latch that pulls so much: that latch as if it were alone on a strip that pushes with its pull.
fn hand(prepared: &Prepared<'_>, pulls: (f64, f64), sheet: &mut Worksheet) -> Result<(f64, f64), NotChecked> {
    let one = situation(prepared, sheet)?;
    let mut of = |pull: f64| {
        let line_force = si(pull / one.path_length.value);
        sheet
            .run(&LatchForce { line_force, latches: 1, ..one.clone() })
            .map(|outcome| outcome.hand_force.value)
    };
    Ok((of(pulls.0)?, of(pulls.1)?))
}

/// Pull of the most loaded latch when closed, and the force of the hand on it, both ends, in newtons.
pub(crate) fn most_loaded(prepared: &Prepared<'_>) -> [Result<(f64, f64), NotChecked>; 2] {
    let pulls = latches(prepared).and_then(|_| closing(prepared, &mut Worksheet::new()));
    let pulls = pulls.and_then(|closing| closing.beyond.solved().map(|()| closing.pulls));
    let force = pulls.clone().and_then(|pulls| hand(prepared, pulls, &mut Worksheet::new()));
    [pulls, force]
}

/// Force of the hand on the most loaded latch. Stops carry nothing here, and closing is done without wind.
pub(super) fn hand_force(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    even_share(prepared, &mut sheet)?;
    // What the document lacks for the lever comes before the solver's work.
    situation(prepared, &mut sheet)?;
    let Closing { pulls, states, beyond } = closing(prepared, &mut sheet)?;
    let (low, high) = hand(prepared, pulls, &mut sheet)?;
    tell_pulls(&mut sheet, &states);
    tell_model(prepared, &mut sheet);
    let (limit, origin) = practice(prepared.limits.hand_force());
    if high > limit {
        sheet.advise(
            "seal.width",
            "a softer or narrower gasket, less compression, more latches, or a longer lever",
        );
    }
    let bound = Bound::AtMost { limit, marginal_above: None };
    beyond.judge(sheet.finish(Finding::Number { low, high, measure: Measure::FORCE, bound }, origin))
}

/// The pulls at the limits against the maker's working load.
pub(super) fn against_working_load(
    prepared: &Prepared<'_>,
    mut sheet: Worksheet,
    linear: Vec<State>,
) -> Result<Demand, NotChecked> {
    let load =
        sheet.given("maker's working load", "latches.working_load", latches(prepared)?.working_load)?;
    let (states, beyond) = judged(prepared, linear, &mut sheet)?;
    let pull = |found: &Found| (found.strongest().1, found.pull_error());
    let (low, high, worst) = highest(&states, pull).ok_or_else(nothing)?;
    sheet.at(strongest_at(prepared, worst));
    tell_pulls(&mut sheet, &states);
    tell_model(prepared, &mut sheet);
    sheet.advise("latches.count", "more latches, stronger ones, or a softer gasket");
    let bound = Bound::AtMost { limit: load.value, marginal_above: None };
    let finding = Finding::Number { low: low.max(0.0), high, measure: Measure::FORCE, bound };
    beyond.judge(sheet.finish(finding, Origin::Maker("latches.working_load".to_owned())))
}

/// Pull of the most loaded latch against the maker's working load.
pub(super) fn working_load(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    even_share(prepared, &mut sheet)?;
    latches(prepared)?.working_load.need(|| "latches.working_load".to_owned())?;
    let states = closed(prepared, &mut sheet)?;
    against_working_load(prepared, sheet, states)
}

/// Pull of the most loaded latch while wind lifts, against the maker's working load.
pub(super) fn wind_out(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    latches(prepared)?.working_load.need(|| "latches.working_load".to_owned())?;
    let pressure = crate::checks::lid::pressure(prepared, LoadKind::WindOut, &mut sheet)?;
    let states = under(prepared, &mut sheet, |setup| (setup, held::wind(prepared, setup.joined, -pressure)))?;
    against_working_load(prepared, sheet, states)
}

/// Load on the other latches where one is open or broken: the one whose want loads another most.
pub(super) fn missing(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let (low, high) = even_share(prepared, &mut sheet)?;
    let latches = latches(prepared)?;
    let load = latches.working_load.need(|| "latches.working_load".to_owned())?;
    let count = latches.count.need(|| "latches.count".to_owned())?;
    for force in [low, high] {
        let outcome =
            sheet.run(&LatchMissing { latch_force: si(force), latches: count, working_load: Some(load) })?;
        sheet.note("even share of the others", outcome.even_share.value, Measure::FORCE);
        sheet.note(
            "estimate for two neighbours alone, evenly spaced",
            outcome.neighbour_share.value,
            Measure::FORCE,
        );
    }
    sheet.say("The shares by hand are estimates for latches at even spacing, and no bounds: the row is judged by what was solved for these places.");
    let (nth, states) = without_one(prepared, &mut sheet, pull)?;
    sheet.note("latch that is missing", f64::from(nth), Measure::Number);
    sheet.say("The row tells of the latch whose want loads another most.");
    tell_search(&mut sheet);
    against_working_load(prepared, sheet, states)
}

/// The lid at every limit without the one latch, numbered from 1, whose want is worst for the sheet alone.
pub(in crate::checks) fn without_one(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    badness: impl Fn(&Found) -> f64,
) -> Result<(u32, Vec<State>), NotChecked> {
    let nth = worst_missing(prepared, badness)?;
    let states = under(prepared, sheet, |setup| (setup, without(nth)))?;
    Ok((u32::try_from(nth + 1).unwrap_or(u32::MAX), states))
}

/// The want of the latch that loads another most, where the maker says how much a latch bears.
pub(in crate::checks) fn worst_load(prepared: &Prepared<'_>) -> Result<Load, NotChecked> {
    latches(prepared)?.working_load.need(|| "latches.working_load".to_owned())?;
    worst_missing(prepared, pull).map(without)
}

fn pull(found: &Found) -> f64 {
    found.strongest().1
}

/// The lid without a latch.
pub(in crate::checks) fn without(nth: usize) -> Load {
    Load { missing_latches: vec![nth], ..Load::default() }
}

/// The latch whose want is worst for the sheet alone, by index.
///
/// Each is taken away on the first mesh; those that come near to the worst there are compared on meshes that are fine enough.
pub(in crate::checks) fn worst_missing(
    prepared: &Prepared<'_>,
    badness: impl Fn(&Found) -> f64,
) -> Result<usize, NotChecked> {
    let softest = Setup::new(Joined::SheetAlone, Firmness::Firmest);
    let roughly = |load: &Load| held::on_first_mesh(prepared, softest, load).map(|found| badness(&found));
    let closed = roughly(&Load::default())?;
    let mut rough = Vec::new();
    for nth in held::latches_apart(prepared)? {
        rough.push((nth, roughly(&without(nth))?));
    }
    let most = rough.iter().map(|one| one.1).fold(f64::NEG_INFINITY, f64::max);
    let near = most - NEAR * (most - closed).abs();
    let mut worst: Option<(usize, f64)> = None;
    for (nth, _) in rough.into_iter().filter(|one| one.1 >= near) {
        let bad = badness(held::under(prepared, softest, &without(nth), None)?.as_ref());
        // Latches alike are told apart by no more than the mesh: the first of them stays.
        if worst.is_none_or(|(_, known)| bad > known + 1e-3 * known.abs()) {
            worst = Some((nth, bad));
        }
    }
    worst.map(|(nth, _)| nth).ok_or_else(|| NotChecked::needs("latches.positions"))
}

/// How the latch was found.
pub(in crate::checks) fn tell_search(sheet: &mut Worksheet) {
    sheet.say("Each latch in turn was taken away from the sheet alone on a coarse mesh, and those that came near to the worst again on finer ones; of latches that mirror each other one was.");
}

/// What counts as near to the worst: within so much of what the worst does to the closed lid.
const NEAR: f64 = 0.2;
