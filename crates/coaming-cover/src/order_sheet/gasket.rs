//! Gasket and latches.

use coaming::prelude::*;

use super::{Item, Line, Value, found, given, words};
use crate::amount::Measure;
use crate::checks::{latch_forces, line_force, needed_travel};
use crate::demand::NotChecked;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The gasket: its section, cut length, stops and the force that closes it.
pub(super) fn gasket(prepared: &Prepared<'_>) -> Vec<Line> {
    let Some(seal) = &prepared.cover.seal else { return Vec::new() };
    let length = seal
        .path
        .as_ref()
        .map(crate::document::Outline::perimeter)
        .ok_or_else(|| NotChecked::needs("seal.path"));
    let mut worksheet = Worksheet::new();
    vec![Line {
        part: "gasket".to_owned(),
        items: vec![
            words("material", seal.material.clone(), || "seal.material".to_owned()),
            given("free height", seal.free_height, || "seal.free_height".to_owned()),
            given("width", seal.width, || "seal.width".to_owned()),
            found("cut length on the centre line", Measure::LENGTH, &length),
            given("height of the stops", seal.stop_height, || "seal.stop_height".to_owned()),
            band(
                "line force when closed",
                Measure::Quantity(&Dimension::FORCE_PER_LENGTH, "N/mm"),
                line_force(prepared, &mut worksheet),
            ),
            words("adhesive backing", seal.backing.clone(), || "seal.backing".to_owned()),
        ],
    }]
}

/// The latches: number, force, hand force and travel.
pub(super) fn latches(prepared: &Prepared<'_>) -> Vec<Line> {
    let Some(latches) = &prepared.cover.latches else { return Vec::new() };
    let forces = latch_forces(prepared, &mut Worksheet::new());
    let pair = |pick: fn(&coaming::latch::LatchForceOutcome) -> Force| {
        forces.as_ref().map(|[low, high]| (pick(low).value, pick(high).value)).map_err(Clone::clone)
    };
    vec![Line {
        part: "latches".to_owned(),
        items: vec![
            words("latches", latches.count.map(|count| count.to_string()), || "latches.count".to_owned()),
            given("travel", latches.travel, || "latches.travel".to_owned()),
            found("travel needed to close", Measure::LENGTH, &needed_travel(prepared, &mut Worksheet::new())),
            given("adjustment either way", latches.adjustment, || "latches.adjustment".to_owned()),
            band("force on each", Measure::FORCE, pair(|outcome| outcome.latch_force)),
            band("hand force", Measure::FORCE, pair(|outcome| outcome.hand_force)),
        ],
    }]
}

fn band(label: &'static str, measure: Measure, outcome: Result<(f64, f64), NotChecked>) -> Item {
    let value = match outcome {
        Ok((low, high)) => Value::Band { low, high, measure },
        Err(why) => Value::Unknown(crate::render::why_not(&why)),
    };
    Item { label, value }
}
