//! The lid: how far it bows, and where it rings.

use coaming::material::Material;
use coaming::plate::{
    EdgeSupport, InPlaneSupport, RectangularPlate, RectangularPlateLargeDeflection, RectangularPlatePatch,
};
use coaming::prelude::*;

use super::{Check, Subject, layers_that, name};
use crate::amount::{Amount, Measure};
use crate::demand::{Bound, Demand, Finding, NotChecked};
use crate::document::{Layer, LayerRole, LoadKind, Outline};
use crate::prepared::Prepared;
use crate::verdict::{Verdict, verdict};
use crate::worksheet::{Worksheet, practice};

/// The lid's checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "lid_wind_in",
        title: "Sag under wind that presses in",
        case: Some(LoadKind::WindIn),
        subjects: skins,
        demand: |prepared, subject| wind(prepared, subject, LoadKind::WindIn, 1.0),
    },
    Check {
        key: "lid_wind_out",
        title: "Sag under wind that lifts",
        case: Some(LoadKind::WindOut),
        subjects: skins,
        demand: |prepared, subject| wind(prepared, subject, LoadKind::WindOut, -1.0),
    },
    Check {
        key: "lid_lean",
        title: "Lean on the sheet",
        case: Some(LoadKind::Lean),
        subjects: skins,
        demand: lean,
    },
    Check {
        key: "lid_frequency",
        title: "First mode of the lid on its seal",
        case: Some(LoadKind::ClosedNew),
        subjects: skins,
        demand: |_, _| {
            Err(NotChecked::not_calculated("the lid's modes on seal and latches need the panel solver"))
        },
    },
];

fn skins(prepared: &Prepared<'_>) -> Vec<Subject> {
    layers_that(prepared, |layer| layer.role == LayerRole::Skin)
}

/// The rectangle on which the lid lies: the seal's centre line.
fn span(prepared: &Prepared<'_>) -> Result<(Length, Length), NotChecked> {
    match prepared.seal()?.path.as_ref() {
        Some(Outline::Rectangle(rectangle)) => Ok((rectangle.width, rectangle.height)),
        Some(_) => Err(NotChecked::not_calculated("a seal line that is no rectangle needs the panel solver")),
        None => Err(NotChecked::needs("seal.path")),
    }
}

/// What every plate calculation of the lid takes.
struct Plate {
    width: Length,
    height: Length,
    thickness: Length,
    youngs_modulus: Pressure,
    poissons_ratio: f64,
}

fn plate(prepared: &Prepared<'_>, layer: &Layer, sheet: &mut Worksheet) -> Result<Plate, NotChecked> {
    let (width, height) = span(prepared)?;
    sheet.note("seal line, width", width.value, Measure::LENGTH);
    sheet.note("seal line, height", height.value, Measure::LENGTH);
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let material: Material = prepared.material_of(layer)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    if layer.cut_outs.iter().flatten().next().is_some() {
        sheet.say("The sheet is taken as solid: its cut-out makes it softer, what is fixed over the cut-out stiffer.");
    }
    if layer.bends.iter().flatten().next().is_some() {
        sheet.say(
            "The flanges are left out: they make the edges stiffer than a plate that is merely supported.",
        );
    }
    sheet.say(
        "The seal line is taken as a rigid support all round; bow between latches needs the panel solver.",
    );
    Ok(Plate { width, height, thickness, youngs_modulus, poissons_ratio })
}

fn wind(prepared: &Prepared<'_>, subject: &Subject, kind: LoadKind, sign: f64) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let case = prepared.load_case(kind)?;
    let path = format!("load_cases.{}.pressure", Choice::name(kind));
    let pressure = sheet.given("wind pressure", path, case.pressure)?.value * factor(&mut sheet, case.factor);
    let plate = plate(prepared, layer, &mut sheet)?;
    let outcome = sheet.run(&RectangularPlate {
        length: plate.width,
        width: plate.height,
        thickness: plate.thickness,
        youngs_modulus: plate.youngs_modulus,
        poissons_ratio: plate.poissons_ratio,
        pressure: si(sign * pressure),
        edge_support: EdgeSupport::Supported,
    })?;
    let shorter = plate.width.value.min(plate.height.value);
    let (share, origin) = practice(prepared.limits.cover_deflection());
    let limit = share * shorter;
    let linear = outcome.largest_deflection.value.abs();
    sheet.note("deflection, linear", linear, Measure::LENGTH);
    sheet.note("stress, linear", outcome.largest_stress.value, Measure::STRESS);
    let (low, high) = match outcome.deflection_ratio > 0.5 {
        true => large_deflection(&mut sheet, &plate, sign * pressure)?,
        false => (linear, linear),
    };
    thicker(&mut sheet, layer, plate.thickness, high / limit);
    let bound = Bound::AtMost { limit, marginal_above: None };
    let demand = sheet.finish(Finding::Number { low, high, measure: Measure::LENGTH, bound }, origin);
    no_false_pass(demand, layer, kind)
}

/// A solid plate on a rigid seal line is no bound where the sheet has a cut-out, and no model of a lid that is lifted
/// off its seal: there it can tell that a cover fails, never that it passes.
fn no_false_pass(demand: Demand, layer: &Layer, kind: LoadKind) -> Result<Demand, NotChecked> {
    let what = match (kind, layer.cut_outs.iter().flatten().next()) {
        (LoadKind::WindOut, _) => "a lid that is lifted is held by its latches: needs the panel solver",
        (_, Some(_)) => "the cut-out and what covers it need the panel solver",
        (_, None) => return Ok(demand),
    };
    match verdict(&demand.finding) {
        Verdict::Fail => Ok(demand),
        _ => Err(NotChecked::NotCalculated {
            what: format!("{what}; as a solid plate"),
            shown: Some(Box::new(demand)),
        }),
    }
}

/// Deflection past half the thickness, between edges that stay straight and edges that draw in and wave as on a gasket:
/// the lid's own edges lie between the two.
fn large_deflection(sheet: &mut Worksheet, plate: &Plate, pressure: f64) -> Result<(f64, f64), NotChecked> {
    let mut at = |in_plane_support: InPlaneSupport| {
        let outcome = sheet.run(&RectangularPlateLargeDeflection {
            length: plate.width,
            width: plate.height,
            thickness: plate.thickness,
            youngs_modulus: plate.youngs_modulus,
            poissons_ratio: plate.poissons_ratio,
            pressure: si(pressure),
            edge_support: EdgeSupport::Supported,
            in_plane_support,
        });
        outcome.map(|outcome| outcome.centre_deflection.value.abs())
    };
    let (straight, free) = (at(InPlaneSupport::Straight)?, at(InPlaneSupport::Free)?);
    sheet.note("deflection, large, edges that stay straight", straight, Measure::LENGTH);
    sheet.note("deflection, large, edges that draw in", free, Measure::LENGTH);
    Ok((straight.min(free), straight.max(free)))
}

fn lean(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let mut cases = prepared.cover.load_cases.iter().flatten();
    let case = cases
        .find(|case| case.kind == LoadKind::Lean && case.layer.as_deref() == Some(layer.name.as_str()))
        .ok_or_else(|| {
            NotChecked::needs(format!("load_cases (kind = \"lean\", layer = \"{}\")", layer.name))
        })?;
    let force = sheet.given("hand force", "load_cases.lean.force", case.force)?.value
        * factor(&mut sheet, case.factor);
    let patch = sheet.given("side of the patch", "load_cases.lean.patch", case.patch)?;
    let plate = plate(prepared, layer, &mut sheet)?;
    let outcome = sheet.run(&RectangularPlatePatch {
        length: plate.width,
        width: plate.height,
        thickness: plate.thickness,
        youngs_modulus: plate.youngs_modulus,
        poissons_ratio: plate.poissons_ratio,
        edge_support: EdgeSupport::Supported,
        force: si(force),
        patch_length: patch,
        patch_width: patch,
        patch_centre_along_length: si(plate.width.value / 2.0),
        patch_centre_along_width: si(plate.height.value / 2.0),
    })?;
    sheet.at("centre of the sheet");
    let material = prepared.material_of(layer)?;
    let yields = sheet.property(&material, "yield_strength", &material.yield_strength)?;
    sheet.note("deflection, linear", outcome.largest_deflection.value.abs(), Measure::LENGTH);
    let stress = outcome.largest_stress.value;
    thicker(&mut sheet, layer, plate.thickness, (stress / yields.value).max(1e-9));
    let origin = crate::demand::Origin::Design(format!("materials.{}.yield_strength", material.key));
    linear_or_beyond(sheet.at_most(stress, Measure::STRESS, yields.value, origin), outcome.deflection_ratio)
}

fn factor(sheet: &mut Worksheet, factor: Option<f64>) -> f64 {
    match factor {
        Some(factor) => {
            sheet.note("factor on the load", factor, Measure::Number);
            factor
        }
        None => 1.0,
    }
}

/// The thickness that would bring the finding to its limit: deflection falls with the cube of it.
fn thicker(sheet: &mut Worksheet, layer: &Layer, thickness: Length, excess: f64) {
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
