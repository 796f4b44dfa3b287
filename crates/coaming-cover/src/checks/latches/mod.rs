//! The latches: force, hand, travel, and what keeps the lid closed on the road.

pub(super) mod fixing;
pub(super) mod pulls;
pub(super) mod warm;

use coaming::latch::{LatchForce, LatchForceOutcome, LatchHold, LatchTravel, LatchTravelOutcome};
use coaming::prelude::*;
use coaming_panel::Load;

use crate::amount::{Amount, Measure};
use crate::checks::seal::{line_force, nominal_compression};
use crate::checks::{Check, Subject, mass, solved, whole};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin};
use crate::document::{Latches, LoadKind};
use crate::held::{self, Setup};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The latches' checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "latch_hand_force",
        title: "Hand force on one latch",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: pulls::hand_force,
    },
    Check {
        key: "latch_working_load",
        title: "Latch against the maker's working load",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: pulls::working_load,
    },
    Check {
        key: "latch_working_load_wind",
        title: "Latch against the maker's working load",
        case: Some(LoadKind::WindOut),
        subjects: whole,
        demand: pulls::wind_out,
    },
    Check {
        key: "latch_missing",
        title: "One latch missing: load on the others",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: pulls::missing,
    },
    Check {
        key: "latch_travel",
        title: "Travel to close",
        case: Some(LoadKind::Opening),
        subjects: whole,
        demand: travel,
    },
    Check {
        key: "latch_release",
        title: "Travel to let go",
        case: Some(LoadKind::Opening),
        subjects: whole,
        demand: release,
    },
    Check {
        key: "latch_hold",
        title: "Contact left under acceleration",
        case: Some(LoadKind::AccelerationZ),
        subjects: whole,
        demand: hold,
    },
];

pub(super) fn latches<'a>(prepared: &Prepared<'a>) -> Result<&'a Latches, NotChecked> {
    prepared.cover.latches.as_ref().ok_or_else(|| NotChecked::needs("latches"))
}

/// The latches on their seal, with no line force yet.
pub(super) fn situation(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<LatchForce, NotChecked> {
    let latches = latches(prepared)?;
    let path = prepared.seal()?.path.as_ref().ok_or_else(|| NotChecked::needs("seal.path"))?;
    let path_length: Length = si(path.perimeter());
    sheet.note("length of the seal line", path_length.value, Measure::LENGTH);
    let count = latches.count.need(|| "latches.count".to_owned())?;
    sheet.note("latches", f64::from(count), Measure::Number);
    let lever_ratio = sheet.number("lever ratio", "latches.lever_ratio", latches.lever_ratio)?;
    let efficiency = sheet.number("efficiency", "latches.efficiency", latches.efficiency)?;
    let worked_at_once = latches.worked_at_once.need(|| "latches.worked_at_once".to_owned())?;
    sheet.note("worked at once", f64::from(worked_at_once), Measure::Number);
    let (limit, _) = prepared.limits.hand_force();
    Ok(LatchForce {
        line_force: si(0.0),
        path_length,
        latches: count,
        pressure: pascal(0.0),
        sealed_area: si(path.area()),
        lever_ratio,
        efficiency,
        worked_at_once,
        hand_force_limit: si(limit),
        working_load: latches.working_load,
    })
}

/// The forces at both ends of the gasket's band, each latch with an even share.
pub(crate) fn forces(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
) -> Result<[LatchForceOutcome; 2], NotChecked> {
    latches(prepared)?;
    let (low, high) = line_force(prepared, sheet)?;
    let situation = situation(prepared, sheet)?;
    let mut at = |line_force: f64| sheet.run(&LatchForce { line_force: si(line_force), ..situation.clone() });
    Ok([at(low)?, at(high)?])
}

/// The travel of the latches with what it has to take up.
fn travel_outcome(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
) -> Result<(Length, LatchTravelOutcome), NotChecked> {
    let latches = latches(prepared)?;
    let (_, compressed, _) = nominal_compression(prepared, sheet)?;
    let stand_off = sheet.given("stand-off", "latches.stand_off", latches.stand_off)?;
    let bow = sheet.given("bow", "latches.bow", latches.bow)?;
    let tolerance = sheet.given("tolerance", "latches.mounting_tolerance", latches.mounting_tolerance)?;
    let release_clearance =
        sheet.given("release clearance", "latches.release_clearance", latches.release_clearance)?;
    let travel = sheet.given("travel of the latch", "latches.travel", latches.travel)?;
    let outcome = sheet.run(&LatchTravel {
        compressed,
        stand_off,
        bow,
        tolerance,
        release_clearance,
        set_of_deflection: 0.0,
        travel,
        release_travel: None,
    })?;
    Ok((travel, outcome))
}

/// The travel that closing needs, in metres.
pub(crate) fn needed_travel(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<f64, NotChecked> {
    travel_outcome(prepared, sheet).map(|(_, outcome)| outcome.needed_travel.value)
}

fn travel(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let (given, outcome) = travel_outcome(prepared, &mut sheet)?;
    let needed = outcome.needed_travel;
    if needed > given {
        sheet.cure("latches.travel", Amount::of(given), Amount::of(needed), "a latch with more travel");
    }
    Ok(sheet.at_most(needed.value, Measure::LENGTH, given.value, Origin::Design("latches.travel".to_owned())))
}

/// Travel that it takes to let go: how far the lid springs after the hooks, and the clearance past the keeper.
fn release(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let (given, closed_form) = travel_outcome(prepared, &mut sheet)?;
    let clearance = latches(prepared)?.release_clearance.need(|| "latches.release_clearance".to_owned())?;
    let (mut low, mut high) = (f64::INFINITY, 0.0_f64);
    for setup in Setup::ALL.into_iter().rev() {
        let (rebound, error) = held::rebound(prepared, setup, &Load::default(), Some(&mut sheet))?;
        sheet.note(&format!("rebound at the latches, {}", setup.joined_name()), rebound, Measure::LENGTH);
        low = low.min(rebound - error + clearance.value);
        high = high.max(rebound + error + clearance.value);
    }
    sheet.solved(held::PANEL_SOLVER);
    let needed = closed_form.needed_release_travel;
    sheet.note("compression, bow and clearance, added", needed.value, Measure::LENGTH);
    sheet.say("All latches are let go together, until the gasket pushes with a thousandth of what it did: each rises by what the gasket was compressed by at it. A bow that is only the gasket's doing goes with it, and does not come on top as it does in the closed form.");
    solved::tell_model(prepared, &mut sheet);
    if high > given.value {
        sheet.cure(
            "latches.travel",
            Amount::of(given),
            Amount { si: high, measure: Measure::LENGTH },
            "a latch with more travel",
        );
    }
    let bound = Bound::AtMost { limit: given.value, marginal_above: None };
    let origin = Origin::Design("latches.travel".to_owned());
    Ok(sheet.finish(Finding::Number { low, high, measure: Measure::LENGTH, bound }, origin))
}

/// What presses the lid on its seal while the road throws it outward: all latches together, less the lid's inertia.
fn hold(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let case = prepared.load_case(LoadKind::AccelerationZ)?;
    let acceleration =
        sheet.given("acceleration", "load_cases.acceleration_z.acceleration", case.acceleration)?;
    let acceleration = acceleration * crate::checks::lid::factor(&mut sheet, case.factor);
    let [even, _] = forces(prepared, &mut sheet)?;
    let lid = mass::of_cover(prepared, &mut sheet)?;
    let count = latches(prepared)?.count.need(|| "latches.count".to_owned())?;
    sheet.note("even share of each latch, lowest", even.latch_force.value, Measure::FORCE);
    let linear = solved::closed(prepared, &mut sheet)?;
    let (states, beyond) = solved::judged(prepared, linear, &mut sheet)?;
    let all = |found: &held::Found| (found.pulls.iter().sum(), found.pull_error() * f64::from(count));
    let (least, _, _) = solved::lowest(&states, all).ok_or_else(solved::nothing)?;
    solved::tell_pulls(&mut sheet, &states);
    solved::tell_model(prepared, &mut sheet);
    let outcome = sheet.run(&LatchHold {
        mass: lid,
        acceleration,
        latches: count,
        latch_force: si(least.max(0.0) / f64::from(count)),
        working_load: latches(prepared)?.working_load,
    })?;
    sheet.note("inertia of the lid", outcome.inertia_force.value, Measure::FORCE);
    sheet.note("pull of all latches, at least", outcome.closing_force.value, Measure::FORCE);
    sheet.advise("seal.width", "a firmer gasket or more compression holds the lid harder");
    let origin = Origin::Design("contact must be left: the lid may not lift off its seal".to_owned());
    let (inertia, closing) = (outcome.inertia_force.value, outcome.closing_force.value);
    beyond.judge(sheet.at_most(inertia, Measure::FORCE, closing, origin))
}
