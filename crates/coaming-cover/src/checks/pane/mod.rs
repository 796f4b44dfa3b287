//! The pane: its deflection under a hand, and where it rings.

pub(super) mod creep;
mod hole_stress;
pub(super) mod lap;

use coaming::plate::{
    EdgeSupport, RectangularPlateFrequency, RectangularPlatePatch, RectangularPlatePatchOutcome,
};
use coaming::prelude::*;

use crate::amount::{Amount, Measure};
use crate::checks::lid::linear_or_beyond;
use crate::checks::{Check, Subject, layers_that, name, orders};
use crate::demand::{Demand, NotChecked};
use crate::document::{Layer, LayerRole, LoadCase, LoadKind};
use crate::prepared::{Prepared, property};
use crate::worksheet::{Worksheet, practice};

/// The pane's checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "pane_hand",
        title: "Pane under a hand",
        case: Some(LoadKind::Lean),
        subjects: panes,
        demand: hand,
    },
    Check {
        key: "pane_frequency",
        title: "Pane's first mode against engine and pump",
        case: Some(LoadKind::ClosedNew),
        subjects: panes,
        demand: frequency,
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

/// The pane under its hand, and its shorter free span.
pub(super) fn under_hand(
    prepared: &Prepared<'_>,
    layer: &Layer,
    edge_support: EdgeSupport,
    sheet: &mut Worksheet,
) -> Result<(RectangularPlatePatchOutcome, f64), NotChecked> {
    let case = lean_case(prepared, layer)?;
    let force =
        sheet.given("hand force", "load_cases.lean.force", case.force)?.value * case.factor.unwrap_or(1.0);
    let patch = sheet.given("side of the patch", "load_cases.lean.patch", case.patch)?;
    let (width, height) = span(layer, sheet)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let material = prepared.material_of(layer)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    let outcome = sheet.run(&RectangularPlatePatch {
        length: width,
        width: height,
        thickness,
        youngs_modulus,
        poissons_ratio,
        edge_support,
        force: si(force),
        patch_length: patch,
        patch_width: patch,
        patch_centre_along_length: si(width.value / 2.0),
        patch_centre_along_width: si(height.value / 2.0),
    })?;
    Ok((outcome, width.value.min(height.value)))
}

fn hand(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let (outcome, shorter) = under_hand(prepared, layer, EdgeSupport::Supported, &mut sheet)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    sheet.at("centre of the pane");
    sheet.say("The pane is taken as supported along its free span; its lap and its screws make it stiffer.");
    sheet.note("stress, linear", outcome.largest_stress.value, Measure::STRESS);
    let (share, origin) = practice(prepared.limits.pane_deflection());
    let limit = share * shorter;
    let deflection = outcome.largest_deflection.value.abs();
    if deflection > limit {
        let to: Length = si(thickness.value * math::cbrt(deflection / limit));
        let lever = format!("layers.{}.thickness", layer.name);
        sheet.cure(
            lever,
            Amount::of(thickness),
            Amount::of(to),
            format!("thicker sheet for `{}`", layer.name),
        );
    }
    linear_or_beyond(sheet.at_most(deflection, Measure::LENGTH, limit, origin), outcome.deflection_ratio)
}

fn frequency(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    orders::excitations(prepared)?;
    let (width, height) = span(layer, &mut sheet)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let material = prepared.material_of(layer)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    let mass_density = sheet.property(&material, "density", &material.density)?;
    let stiffnesses = stiffness_range(prepared, layer, &material, &mut sheet)?;
    let mut frequencies = Vec::new();
    for youngs_modulus in stiffnesses {
        let outcome = sheet.run(&RectangularPlateFrequency {
            length: width,
            width: height,
            thickness,
            youngs_modulus,
            poissons_ratio,
            mass_density,
            added_mass_per_area: None,
            edge_support: EdgeSupport::Supported,
        })?;
        frequencies.push(outcome.frequency.value);
    }
    let low = frequencies.iter().copied().fold(f64::INFINITY, f64::min);
    let high = frequencies.iter().copied().fold(0.0, f64::max);
    sheet.say("The pane is taken as supported along its free span; held firmly it rings higher.");
    sheet.note("first mode, lowest", low, Measure::FREQUENCY);
    sheet.note("first mode, highest", high, Measure::FREQUENCY);
    let (lever, words) = (
        format!("layers.{}.thickness", layer.name),
        "another thickness or span; thicker can move it onto the next order",
    );
    orders::against(prepared, sheet, (low, high), lever, words)
}

/// Young's modulus cold and hot where the material's is known over temperature and the load cases give the pane's own
/// temperatures; the one at room temperature otherwise.
fn stiffness_range(
    prepared: &Prepared<'_>,
    layer: &Layer,
    material: &coaming::material::Material,
    sheet: &mut Worksheet,
) -> Result<Vec<Pressure>, NotChecked> {
    let mut known = Vec::new();
    for kind in [LoadKind::Cold, LoadKind::Hot] {
        if let Ok(temperature) = prepared.temperature(kind, &layer.name)
            && let Some(figure) = material.youngs_modulus_at(temperature)
        {
            known.push(sheet.figure(material, "youngs_modulus", figure));
        }
    }
    if known.is_empty() {
        sheet.say("Stiffness at room temperature: a warm pane rings lower.");
        let figure = property(material, "youngs_modulus", &material.youngs_modulus)?;
        known.push(sheet.figure(material, "youngs_modulus", figure));
    }
    Ok(known)
}
