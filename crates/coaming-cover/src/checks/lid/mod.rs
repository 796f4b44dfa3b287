//! The lid: how far it bows, what that stresses, and where it rings.

mod frequency;
pub(super) mod lean;
mod plate;
pub(super) mod sag;

use coaming::prelude::*;

use crate::amount::{Amount, Measure};
use crate::checks::{Check, Subject, layers_that};
use crate::demand::{Demand, Finding, NotChecked};
use crate::document::{Layer, LayerRole, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The lid's checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "lid_wind_in",
        title: "Sag under wind that presses in",
        case: Some(LoadKind::WindIn),
        subjects: skins,
        demand: |prepared, subject| sag::wind(prepared, subject, LoadKind::WindIn),
    },
    Check {
        key: "lid_wind_out",
        title: "Sag under wind that lifts",
        case: Some(LoadKind::WindOut),
        subjects: skins,
        demand: |prepared, subject| sag::wind(prepared, subject, LoadKind::WindOut),
    },
    Check {
        key: "lid_wind_in_stress",
        title: "Stress under wind that presses in",
        case: Some(LoadKind::WindIn),
        subjects: skins,
        demand: |prepared, subject| sag::stress(prepared, subject, LoadKind::WindIn),
    },
    Check {
        key: "lid_wind_out_stress",
        title: "Stress under wind that lifts",
        case: Some(LoadKind::WindOut),
        subjects: skins,
        demand: |prepared, subject| sag::stress(prepared, subject, LoadKind::WindOut),
    },
    Check {
        key: "lid_lean",
        title: "Lean on the sheet",
        case: Some(LoadKind::Lean),
        subjects: skins,
        demand: lean::lean,
    },
    Check {
        key: "lid_frequency",
        title: "First mode of the lid on its seal",
        case: Some(LoadKind::ClosedNew),
        subjects: skins,
        demand: frequency::frequency,
    },
];

fn skins(prepared: &Prepared<'_>) -> Vec<Subject> {
    layers_that(prepared, |layer| layer.role == LayerRole::Skin)
}

/// Pressure of the wind of a load case in pascals, with its factor.
pub(super) fn pressure(
    prepared: &Prepared<'_>,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    let case = prepared.load_case(kind)?;
    let path = format!("load_cases.{}.pressure", Choice::name(kind));
    Ok(sheet.given("wind pressure", path, case.pressure)?.value * factor(sheet, case.factor))
}

/// The load cases' factor; 1 where there is none.
pub(super) fn factor(sheet: &mut Worksheet, factor: Option<f64>) -> f64 {
    match factor {
        Some(factor) => {
            sheet.note("factor on the load", factor, Measure::Number);
            factor
        }
        None => 1.0,
    }
}

/// The thickness that would bring the finding to its limit: deflection falls with the cube of it.
pub(super) fn thicker(sheet: &mut Worksheet, layer: &Layer, thickness: Length, excess: f64) {
    if excess > 1.0 {
        let to: Length = si(thickness.value * math::cbrt(excess));
        sheet.cure(
            format!("layers.{}.thickness", layer.name),
            Amount::of(thickness),
            Amount::of(to),
            format!("thicker sheet for `{}`, or flanges and ribs", layer.name),
        );
    }
}

/// A linear plate tells the truth up to half its thickness; beyond, the row shows its number and is not checked.
pub(super) fn linear_or_beyond(demand: Demand, deflection_ratio: f64) -> Result<Demand, NotChecked> {
    let is_number = matches!(demand.finding, Finding::Number { .. });
    if is_number && deflection_ratio > 0.5 {
        return Err(NotChecked::NotCalculated {
            what: format!("needs large deflection: w/t = {}; linear", rounded(deflection_ratio, 3)),
            shown: Some(Box::new(demand)),
        });
    }
    Ok(demand)
}
