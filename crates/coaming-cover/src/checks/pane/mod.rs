//! The pane: how far it bows, what that stresses, and where it rings.

pub(super) mod creep;
mod frequency;
mod hand;
mod hole_stress;
pub(super) mod lap;
mod pushed;
mod states;

use coaming::prelude::*;

use crate::amount::Amount;
use crate::checks::{Check, Subject, layers_that};
use crate::demand::{Need, NotChecked};
use crate::document::{Layer, LayerRole, LoadCase, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The pane's checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "pane_hand",
        title: "Pane under a hand",
        case: Some(LoadKind::Lean),
        subjects: panes,
        demand: hand::deflection,
    },
    Check {
        key: "pane_hand_stress",
        title: "Stress in the pane under a hand",
        case: Some(LoadKind::Lean),
        subjects: panes,
        demand: hand::stress,
    },
    Check {
        key: "pane_wind_in",
        title: "Pane under wind that presses in",
        case: Some(LoadKind::WindIn),
        subjects: panes,
        demand: |prepared, subject| pushed::deflection(prepared, subject, LoadKind::WindIn),
    },
    Check {
        key: "pane_wind_out",
        title: "Pane under wind that lifts",
        case: Some(LoadKind::WindOut),
        subjects: panes,
        demand: |prepared, subject| pushed::deflection(prepared, subject, LoadKind::WindOut),
    },
    Check {
        key: "pane_wind_in_stress",
        title: "Stress in the pane under wind that presses in",
        case: Some(LoadKind::WindIn),
        subjects: panes,
        demand: |prepared, subject| pushed::stress(prepared, subject, LoadKind::WindIn),
    },
    Check {
        key: "pane_wind_out_stress",
        title: "Stress in the pane under wind that lifts",
        case: Some(LoadKind::WindOut),
        subjects: panes,
        demand: |prepared, subject| pushed::stress(prepared, subject, LoadKind::WindOut),
    },
    Check {
        key: "pane_acceleration_z",
        title: "Pane thrown outward",
        case: Some(LoadKind::AccelerationZ),
        subjects: panes,
        demand: |prepared, subject| pushed::deflection(prepared, subject, LoadKind::AccelerationZ),
    },
    Check {
        key: "pane_acceleration_z_stress",
        title: "Stress in the pane thrown outward",
        case: Some(LoadKind::AccelerationZ),
        subjects: panes,
        demand: |prepared, subject| pushed::stress(prepared, subject, LoadKind::AccelerationZ),
    },
    Check {
        key: "pane_frequency",
        title: "Pane's first mode against engine and pump",
        case: Some(LoadKind::ClosedNew),
        subjects: panes,
        demand: frequency::frequency,
    },
    Check {
        key: "pane_stress_at_holes_closed",
        title: "Stress at the pane's holes",
        case: Some(LoadKind::ClosedNew),
        subjects: hole_stress::subjects,
        demand: hole_stress::closed,
    },
    Check {
        key: "pane_stress_at_holes_hot",
        title: "Stress at the pane's holes",
        case: Some(LoadKind::Hot),
        subjects: hole_stress::subjects,
        demand: |prepared, subject| hole_stress::restrained(prepared, subject, LoadKind::Hot),
    },
    Check {
        key: "pane_stress_at_holes_cold",
        title: "Stress at the pane's holes",
        case: Some(LoadKind::Cold),
        subjects: hole_stress::subjects,
        demand: |prepared, subject| hole_stress::restrained(prepared, subject, LoadKind::Cold),
    },
    Check {
        key: "pane_stress_at_holes_lean",
        title: "Stress at the pane's holes",
        case: Some(LoadKind::Lean),
        subjects: hole_stress::subjects,
        demand: hole_stress::lean,
    },
];

pub(super) fn panes(prepared: &Prepared<'_>) -> Vec<Subject> {
    layers_that(prepared, |layer| layer.role == LayerRole::Pane)
}

/// Width and height of the pane's free span.
pub(super) fn span(layer: &Layer, sheet: &mut Worksheet) -> Result<(Length, Length), NotChecked> {
    let path = |side: &str| format!("layers.{}.free_{side}", layer.name);
    let width = sheet.given("free span, width", path("width"), layer.free_width)?;
    let height = sheet.given("free span, height", path("height"), layer.free_height)?;
    Ok((width, height))
}

/// The load case of a hand on a layer.
pub(super) fn lean_case<'a>(prepared: &Prepared<'a>, layer: &Layer) -> Result<&'a LoadCase, NotChecked> {
    let mut cases = prepared.cover.load_cases.iter().flatten();
    cases
        .find(|case| case.kind == LoadKind::Lean && case.layer.as_deref() == Some(layer.name.as_str()))
        .ok_or_else(|| NotChecked::needs(format!("load_cases (kind = \"lean\", layer = \"{}\")", layer.name)))
}

/// The thickness at which the pane would stay within a limit that it exceeds so many times by linear theory.
fn thicker(sheet: &mut Worksheet, layer: &Layer, excess: f64) -> Result<(), NotChecked> {
    let lever = format!("layers.{}.thickness", layer.name);
    let thickness = layer.thickness.need(|| lever.clone())?;
    if excess > 1.0 {
        let to: Length = si(thickness.value * math::cbrt(excess));
        let words = format!("thicker sheet for `{}`", layer.name);
        sheet.cure(lever, Amount::of(thickness), Amount::of(to), words);
    }
    Ok(())
}
