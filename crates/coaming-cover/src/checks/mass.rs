//! Mass, and whether one hand lifts it off.

use coaming::latch::LidTether;
use coaming::prelude::*;

use crate::amount::Measure;
use crate::checks::{Check, Subject, whole};
use crate::demand::{Demand, Need, NotChecked, Origin};
use crate::document::{Edge, Layer, LoadKind, Outline};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The checks of mass.
pub(super) const CHECKS: &[Check] = &[
    Check { key: "mass", title: "Mass to lift off", case: None, subjects: whole, demand: lift_off },
    Check {
        key: "tether",
        title: "Tether that catches the lid",
        case: Some(LoadKind::Opening),
        subjects: whole,
        demand: tether,
    },
];

fn lift_off(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let mass = of_cover(prepared, &mut sheet)?;
    let one_handed = prepared.cover.service.as_ref().and_then(|service| service.one_handed);
    let one_handed = one_handed.need(|| "service.one_handed".to_owned())?;
    sheet.note_words("lifted off by", if one_handed { "one hand" } else { "two hands" });
    let (limit, origin) =
        practice(if one_handed { prepared.limits.mass_one_hand() } else { prepared.limits.mass_two_hands() });
    sheet.reckon("mass of a layer = (outline − cut-outs + flanges at their outside height) × thickness × density; then all added");
    sheet.advise("layers", "thinner or lighter layers, or two hands and handles for them");
    Ok(sheet.at_most(mass.value, Measure::MASS, limit, origin))
}

/// Force in the tether of a lid that slips from the hand.
fn tether(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let given = prepared.cover.tether.as_ref().ok_or_else(|| NotChecked::needs("tether"))?;
    let mut sheet = Worksheet::new();
    let mass = of_cover(prepared, &mut sheet)?;
    let free_fall = sheet.given("free fall", "tether.free_fall", given.free_fall)?;
    let stiffness = sheet.given("stiffness of the tether", "tether.stiffness", given.stiffness)?;
    let load = sheet.given("maker's working load", "tether.working_load", given.working_load)?;
    let outcome = sheet.run(&LidTether { mass, free_fall, stiffness, working_load: Some(load) })?;
    sheet.note("weight of the lid", outcome.weight.value, Measure::FORCE);
    sheet.note("stretch of the tether", outcome.largest_stretch.value, Measure::LENGTH);
    sheet.advise("tether.free_fall", "less slack, a softer tether, or a stronger one");
    let origin = Origin::Maker("tether.working_load".to_owned());
    Ok(sheet.at_most(outcome.largest_force.value, Measure::FORCE, load.value, origin))
}

/// Mass of every layer; screws, gasket and what is not described are left out, and said to be.
pub(crate) fn of_cover(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<Mass, NotChecked> {
    let mut total = 0.0;
    for layer in &prepared.cover.layers {
        let mass = of_layer(prepared, layer, sheet)?;
        sheet.note(&format!("mass of {}", layer.name), mass, Measure::MASS);
        total += mass;
    }
    if let Some(latches) = &prepared.cover.latches {
        let count = latches.count.need(|| "latches.count".to_owned())?;
        let mass = latches.mass.need(|| "latches.mass".to_owned())?;
        sheet.note("mass of the latches", f64::from(count) * mass.value, Measure::MASS);
        total += f64::from(count) * mass.value;
    }
    sheet.say("Screws, inserts, gasket, adhesive and paint are left out.");
    Ok(si(total))
}

/// Mass of a layer in kilograms: as given, or from its area, thickness and density, flanges included.
pub(crate) fn of_layer(
    prepared: &Prepared<'_>,
    layer: &Layer,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    if let Some(mass) = layer.mass {
        return Ok(mass.value);
    }
    let thickness = layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?;
    let material = prepared.material_of(layer)?;
    let density = sheet.property(&material, "density", &material.density)?;
    Ok(area(layer)? * thickness.value * density.value)
}

/// Area of the sheet of a layer with its flanges, in square metres.
pub(crate) fn area(layer: &Layer) -> Result<f64, NotChecked> {
    Ok(layer.net_area() + flanges(layer)?)
}

/// Area of the flanges, at their outside height.
fn flanges(layer: &Layer) -> Result<f64, NotChecked> {
    let mut area = 0.0;
    for bend in layer.bends.iter().flatten() {
        let Outline::Rectangle(outside) = &layer.outline else {
            return Err(NotChecked::not_calculated("flanges along an outline that is no rectangle"));
        };
        let along =
            if matches!(bend.edge, Edge::Left | Edge::Right) { outside.height } else { outside.width };
        let path = || format!("layers.{}.bends.{}.flange", layer.name, Choice::name(bend.edge));
        area += bend.flange.need(path)?.value * along.value;
    }
    Ok(area)
}
