//! The latches: force, hand, travel, and what keeps the lid closed on the road.

use coaming::latch::{
    LatchForce, LatchForceOutcome, LatchHold, LatchMissing, LatchTravel, LatchTravelOutcome,
};
use coaming::prelude::*;

use super::seal::{line_force, nominal_compression};
use super::{Check, Subject, mass, whole};
use crate::amount::{Amount, Measure};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin};
use crate::document::{Latches, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The latches' checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "latch_hand_force",
        title: "Hand force on one latch",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: hand_force,
    },
    Check {
        key: "latch_working_load",
        title: "Latch against the maker's working load",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: working_load,
    },
    Check {
        key: "latch_missing",
        title: "One latch missing: load on the others",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: missing,
    },
    Check {
        key: "latch_travel",
        title: "Travel to close",
        case: Some(LoadKind::Opening),
        subjects: whole,
        demand: |prepared, _| travel(prepared, false),
    },
    Check {
        key: "latch_release",
        title: "Travel to let go",
        case: Some(LoadKind::Opening),
        subjects: whole,
        demand: |prepared, _| travel(prepared, true),
    },
    Check {
        key: "latch_hold",
        title: "Contact left under acceleration",
        case: Some(LoadKind::AccelerationZ),
        subjects: whole,
        demand: hold,
    },
];

fn latches<'a>(prepared: &Prepared<'a>) -> Result<&'a Latches, NotChecked> {
    prepared.cover.latches.as_ref().ok_or_else(|| NotChecked::needs("latches"))
}

/// The forces at both ends of the gasket's band.
pub(crate) fn forces(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
) -> Result<[LatchForceOutcome; 2], NotChecked> {
    let latches = latches(prepared)?;
    let (low, high) = line_force(prepared, sheet)?;
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
    let mut at = |line_force: f64| {
        sheet.run(&LatchForce {
            line_force: si(line_force),
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
    };
    let outcomes = [at(low)?, at(high)?];
    sheet.say(
        "Each latch is taken to carry an equal share; what the lid's bow makes of it needs the panel solver.",
    );
    Ok(outcomes)
}

fn hand_force(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let [low, high] = forces(prepared, &mut sheet)?;
    sheet.note("force on each latch, lowest", low.latch_force.value, Measure::FORCE);
    sheet.note("force on each latch, highest", high.latch_force.value, Measure::FORCE);
    let (limit, origin) = practice(prepared.limits.hand_force());
    if high.hand_force.value > limit {
        sheet.advise(
            "seal.width",
            "a softer or narrower gasket, less compression, more latches, or a longer lever",
        );
    }
    let bound = Bound::AtMost { limit, marginal_above: None };
    let finding = Finding::Number {
        low: low.hand_force.value,
        high: high.hand_force.value,
        measure: Measure::FORCE,
        bound,
    };
    Ok(sheet.finish(finding, origin))
}

fn working_load(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let [low, high] = forces(prepared, &mut sheet)?;
    let load =
        sheet.given("maker's working load", "latches.working_load", latches(prepared)?.working_load)?;
    sheet.advise("latches.count", "more latches, or a softer gasket");
    let bound = Bound::AtMost { limit: load.value, marginal_above: None };
    let finding = Finding::Number {
        low: low.latch_force.value,
        high: high.latch_force.value,
        measure: Measure::FORCE,
        bound,
    };
    Ok(sheet.finish(finding, Origin::Maker("latches.working_load".to_owned())))
}

/// Load on the other latches where one is open or broken: between an even share and that of its two neighbours alone.
fn missing(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let closed = forces(prepared, &mut sheet)?;
    let latches = latches(prepared)?;
    let load = sheet.given("maker's working load", "latches.working_load", latches.working_load)?;
    let count = latches.count.need(|| "latches.count".to_owned())?;
    let (mut low, mut high) = (f64::INFINITY, 0.0);
    for force in closed {
        let outcome = sheet.run(&LatchMissing {
            latch_force: force.latch_force,
            latches: count,
            working_load: Some(load),
        })?;
        low = outcome.even_share.value.min(outcome.neighbour_share.value).min(low);
        high = outcome.largest_latch_force.value.max(high);
    }
    sheet.say("A stiff lid shares alike; on a soft one the two neighbours take it alone.");
    sheet.advise("latches.count", "more latches, stronger ones, or a softer gasket");
    let bound = Bound::AtMost { limit: load.value, marginal_above: None };
    let finding = Finding::Number { low, high, measure: Measure::FORCE, bound };
    Ok(sheet.finish(finding, Origin::Maker("latches.working_load".to_owned())))
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

fn travel(prepared: &Prepared<'_>, release: bool) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let (given, outcome) = travel_outcome(prepared, &mut sheet)?;
    let needed = if release { outcome.needed_release_travel } else { outcome.needed_travel };
    if needed > given {
        sheet.cure("latches.travel", Amount::of(given), Amount::of(needed), "a latch with more travel");
    }
    Ok(sheet.at_most(needed.value, Measure::LENGTH, given.value, Origin::Design("latches.travel".to_owned())))
}

fn hold(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let case = prepared.load_case(LoadKind::AccelerationZ)?;
    let acceleration =
        sheet.given("acceleration", "load_cases.acceleration_z.acceleration", case.acceleration)?;
    let [low, _] = forces(prepared, &mut sheet)?;
    let lid = mass::of_cover(prepared, &mut sheet)?;
    let count = latches(prepared)?.count.need(|| "latches.count".to_owned())?;
    let outcome = sheet.run(&LatchHold {
        mass: lid,
        acceleration,
        latches: count,
        latch_force: low.latch_force,
        working_load: latches(prepared)?.working_load,
    })?;
    sheet.note("inertia of the lid", outcome.inertia_force.value, Measure::FORCE);
    sheet.advise("seal.width", "a firmer gasket or more compression holds the lid harder");
    let origin = Origin::Design("contact must be left: the lid may not lift off its seal".to_owned());
    Ok(sheet.at_most(outcome.inertia_force.value, Measure::FORCE, outcome.closing_force.value, origin))
}
