//! The pane under what stands on it for a season: how far it creeps, and whether it bears the stress.

use coaming::plate::{CreepDeflection, CreepDeflectionOutcome, EdgeSupport, RectangularPlate};
use coaming::prelude::*;

use crate::amount::{Amount, Measure};
use crate::checks::lid::linear_or_beyond;
use crate::checks::pane::hole_stress::sustained;
use crate::checks::pane::{panes, span};
use crate::checks::{Check, Subject, name};
use crate::demand::{Demand, Need, NotChecked};
use crate::document::{Layer, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The checks of creep.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "pane_creep",
        title: "Pane's sag after a season",
        case: Some(LoadKind::ClosedAfterSeason),
        subjects: panes,
        demand: sag,
    },
    Check {
        key: "pane_sustained",
        title: "Pane's stress under what stands on it",
        case: Some(LoadKind::ClosedAfterSeason),
        subjects: panes,
        demand: stress,
    },
];

/// What a season makes of a pane.
struct Aged {
    outcome: CreepDeflectionOutcome,
    stress: f64,
    thickness: Length,
    shorter: f64,
}

/// The pane under pressure and its own weight across it, at its warmest.
fn aged(prepared: &Prepared<'_>, layer: &Layer, sheet: &mut Worksheet) -> Result<Aged, NotChecked> {
    let case = prepared.load_case(LoadKind::ClosedAfterSeason)?;
    let path = "load_cases.closed_after_season";
    let stands = sheet.given("pressure that stands", format!("{path}.pressure"), case.pressure)?.value
        * case.factor.unwrap_or(1.0);
    let season = sheet.given("season", format!("{path}.duration"), case.duration)?;
    let warmest = prepared.temperature(LoadKind::Hot, &layer.name)?;
    sheet.note("pane at its warmest", warmest.value, Measure::TEMPERATURE);
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let material = prepared.material_of(layer)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    let density = sheet.property(&material, "density", &material.density)?;
    let gravity = prepared.cover.service.as_ref().and_then(|service| service.gravity.clone());
    let gravity = gravity.need(|| "service.gravity".to_owned())?;
    let size = math::hypot(math::hypot(gravity.x, gravity.y), gravity.z);
    let across = if size > 0.0 { gravity.z.abs() / size } else { 0.0 };
    let weight = across * density.value * thickness.value * standard_gravity(1.0).value;
    sheet.note("its own weight across it", weight, Measure::PRESSURE);
    let there = material.youngs_modulus_at(warmest);
    let there = there.need(|| format!("materials.{}.modulus_over_temperature", material.key))?;
    let youngs_modulus = sheet.figure(&material, "youngs_modulus", there);
    let factor = material.creep_factor(warmest, season);
    let factor =
        sheet.figure(&material, "creep", factor.need(|| format!("materials.{}.creep", material.key))?);
    sheet.note("creep modulus over its own", factor, Measure::Percent);
    let (width, height) = span(layer, sheet)?;
    let plate = sheet.run(&RectangularPlate {
        length: width,
        width: height,
        thickness,
        youngs_modulus,
        poissons_ratio,
        pressure: si(stands + weight),
        edge_support: EdgeSupport::Supported,
    })?;
    let stress = plate.largest_stress.value.abs();
    let outcome = sheet.run(&CreepDeflection {
        short_time_deflection: si(plate.largest_deflection.value.abs()),
        youngs_modulus,
        creep_modulus_factor: factor,
        sustained_stress: si(stress),
        sustained_stress_limit: None,
    })?;
    sheet.note("sag at once", plate.largest_deflection.value.abs(), Measure::LENGTH);
    sheet.note("sag that creep adds", outcome.creep.value, Measure::LENGTH);
    sheet.say("The pane is taken as supported along its free span, as warm as it gets for the whole season.");
    Ok(Aged { outcome, stress, thickness, shorter: width.value.min(height.value) })
}

fn sag(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let aged = aged(prepared, layer, &mut sheet)?;
    let (share, origin) = practice(prepared.limits.pane_deflection());
    let (found, limit) = (aged.outcome.deflection.value, share * aged.shorter);
    if found > limit {
        let to: Length = si(aged.thickness.value * math::cbrt(found / limit));
        let lever = format!("layers.{}.thickness", layer.name);
        let words = format!("thicker sheet for `{}`", layer.name);
        sheet.cure(lever, Amount::of(aged.thickness), Amount::of(to), words);
    }
    linear_or_beyond(sheet.at_most(found, Measure::LENGTH, limit, origin), found / aged.thickness.value)
}

fn stress(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let aged = aged(prepared, layer, &mut sheet)?;
    let (limit, origin) = sustained(prepared, &*prepared.material_of(layer)?, &mut sheet)?;
    sheet.advise(format!("layers.{}.thickness", layer.name), "thicker sheet, or a smaller span");
    let ratio = aged.outcome.deflection.value / aged.thickness.value;
    linear_or_beyond(sheet.at_most(aged.stress, Measure::STRESS, limit, origin), ratio)
}
