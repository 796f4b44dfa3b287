//! Gasket and adhesives against their service temperatures, and every soft part in the cold.

use std::sync::Arc;

use coaming::material::Material;
use coaming::prelude::*;

use crate::amount::Measure;
use crate::checks::climate::{Lined, against_service, ambient, bay, can_soften, sunlit};
use crate::checks::{Check, Subject, name, whole};
use crate::demand::{Demand, Need, NotChecked, Origin};
use crate::document::{Bond, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The checks of service temperatures.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "gasket_temperature",
        title: "Gasket against its service temperature",
        case: Some(LoadKind::Sun),
        subjects: whole,
        demand: |prepared, _| {
            let material = gasket(prepared)?;
            let mut sheet = Worksheet::new();
            let outcome = sunlit(prepared, &mut sheet, Lined::Bare)?;
            let face = outcome.inner_face_temperature.value;
            let air = bay(prepared)?.temperature.need(|| "service.bay.temperature".to_owned())?.value;
            sheet.at("the warmer of the bay and the sunlit skin's inner face");
            against_service(prepared, sheet, &material, face.max(air))
        },
    },
    Check {
        key: "gasket_cold",
        title: "Gasket in the cold",
        case: Some(LoadKind::Cold),
        subjects: whole,
        demand: |prepared, _| {
            let material = gasket(prepared)?;
            let mut sheet = Worksheet::new();
            let coldest = sheet.given("weather", "service.ambient.lowest", ambient(prepared)?.lowest)?;
            in_the_cold(prepared, sheet, &material, coldest)
        },
    },
    Check {
        key: "adhesive_temperature",
        title: "Adhesive against its service temperature",
        case: Some(LoadKind::Sun),
        subjects: bonds,
        demand: |prepared, subject| {
            let (bond, material) = adhesive(prepared, subject)?;
            let mut sheet = Worksheet::new();
            let warmest = extreme(prepared, bond, LoadKind::Sun, &mut sheet, f64::max)?;
            sheet.at("the warmer of the two layers that it joins");
            against_service(prepared, sheet, &material, warmest.value)
        },
    },
    Check {
        key: "adhesive_cold",
        title: "Adhesive in the cold",
        case: Some(LoadKind::Cold),
        subjects: bonds,
        demand: |prepared, subject| {
            let (bond, material) = adhesive(prepared, subject)?;
            let mut sheet = Worksheet::new();
            let coldest = extreme(prepared, bond, LoadKind::Cold, &mut sheet, f64::min)?;
            in_the_cold(prepared, sheet, &material, coldest)
        },
    },
    Check {
        key: "layer_cold",
        title: "Layer in the cold",
        case: Some(LoadKind::Cold),
        subjects: can_soften,
        demand: |prepared, subject| {
            let layer = prepared.layer(name(subject, 0)?)?;
            let material = prepared.material_of(layer)?;
            let mut sheet = Worksheet::new();
            let coldest = prepared.temperature(LoadKind::Cold, &layer.name)?;
            sheet.note("temperature of the layer", coldest.value, Measure::TEMPERATURE);
            in_the_cold(prepared, sheet, &material, coldest)
        },
    },
];

fn gasket(prepared: &Prepared<'_>) -> Result<Arc<Material>, NotChecked> {
    let name = prepared.seal()?.material.need(|| "seal.material".to_owned())?;
    prepared.material(&name, "seal.material")
}

fn bonds(prepared: &Prepared<'_>) -> Vec<Subject> {
    prepared.cover.bonds.iter().flatten().map(|bond| vec![bond.name.clone()]).collect()
}

fn adhesive<'a>(prepared: &Prepared<'a>, subject: &Subject) -> Result<(&'a Bond, Arc<Material>), NotChecked> {
    let name = name(subject, 0)?;
    let mut bonds = prepared.cover.bonds.iter().flatten();
    let bond =
        bonds.find(|bond| bond.name == name).ok_or_else(|| NotChecked::needs(format!("bonds.{name}")))?;
    let path = format!("bonds.{name}.adhesive");
    let adhesive = bond.adhesive.need(|| path.clone())?;
    Ok((bond, prepared.material(&adhesive, &path)?))
}

/// The warmest or coldest of the layers of a bond in a load case.
fn extreme(
    prepared: &Prepared<'_>,
    bond: &Bond,
    kind: LoadKind,
    sheet: &mut Worksheet,
    pick: fn(f64, f64) -> f64,
) -> Result<Temperature, NotChecked> {
    let mut found: Option<f64> = None;
    for layer in &bond.layers {
        let temperature = prepared.temperature(kind, layer)?.value;
        sheet.note(&format!("{layer} at"), temperature, Measure::TEMPERATURE);
        found = Some(found.map_or(temperature, |known| pick(known, temperature)));
    }
    found.map(si).need(|| format!("bonds.{}.layers", bond.name))
}

/// A temperature against the lowest that a material serves at. A ratio of absolute temperatures says nothing: the margin
/// is one of falls below the temperature at assembly.
fn in_the_cold(
    prepared: &Prepared<'_>,
    mut sheet: Worksheet,
    material: &Material,
    coldest: Temperature,
) -> Result<Demand, NotChecked> {
    let limit = sheet.property(material, "lowest_temperature", &material.lowest_temperature)?;
    let from = prepared.assembled_at()?.value;
    sheet.note("temperature at assembly", from, Measure::TEMPERATURE);
    sheet.reckon("fall = temperature at assembly − lowest temperature; margin = (assembly − limit)/fall − 1");
    sheet.say("The margin is one of falls below the temperature at assembly.");
    sheet.advise("layers", "a material that stays tough in the cold");
    let origin = Origin::Design(format!("materials.{}.lowest_temperature", material.key));
    Ok(sheet.at_most(from - coldest.value, Measure::Fallen { from }, from - limit.value, origin))
}
