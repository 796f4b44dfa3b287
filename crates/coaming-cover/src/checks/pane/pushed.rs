//! The pane under wind and under acceleration across it: how far it bows, and what that stresses.

use coaming::plate::{EdgeSupport, RectangularPlate, RectangularPlateOutcome};
use coaming::prelude::*;
use coaming_panel::Load;

use crate::amount::Measure;
use crate::checks::ahead::thrown;
use crate::checks::lid::pressure;
use crate::checks::pane::states::{
    State, at_room_temperature, deflection_band, furthest, strength, stress_band, stretch, tell_model, under,
};
use crate::checks::pane::{span, thicker};
use crate::checks::solved::or_beyond;
use crate::checks::{Subject, name};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked};
use crate::document::{Layer, LoadKind};
use crate::held;
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The load of a load case on a pane, and its size as a pressure. The pane is alike on both faces: it is pressed inward, whichever face it
/// rests on.
fn load(
    prepared: &Prepared<'_>,
    layer: &Layer,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<(Load, f64), NotChecked> {
    if kind != LoadKind::AccelerationZ {
        let size = pressure(prepared, kind, sheet)?;
        sheet.say("The wind acts on the free span, evenly. Outward the pane rests on the sheet round its opening, which is taken to be no wider than the free span.");
        return Ok((held::pressed(layer, -size.abs())?, -size.abs()));
    }
    let load = thrown(prepared, sheet)?;
    let load = Load { normal_acceleration: -load.normal_acceleration.abs(), ..load };
    let material = prepared.material_of(layer)?;
    let density = sheet.property(&material, "density", &material.density)?;
    let thickness = layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?;
    let pressure = density.value * thickness.value * load.normal_acceleration;
    Ok((load, pressure))
}

/// The pane at both limits under the load of a load case, and how far by linear theory.
fn pushed(
    prepared: &Prepared<'_>,
    layer: &Layer,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<(Vec<State>, f64, Option<NotChecked>), NotChecked> {
    let (load, pressure) = load(prepared, layer, kind, sheet)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let limits = at_room_temperature(prepared, layer, sheet)?;
    let mut states = under(prepared, limits, |_| Ok(load.clone()), sheet)?;
    let furthest = furthest(&states);
    let unsolved = stretch(prepared, &mut states, thickness.value, sheet);
    tell_model(layer, sheet);
    beside(prepared, layer, pressure, sheet);
    Ok((states, furthest, unsolved))
}

/// The closed form beside the solver's number, for the long story: what it refuses takes nothing from the row.
fn beside(prepared: &Prepared<'_>, layer: &Layer, pressure: f64, sheet: &mut Worksheet) {
    if let Ok(outcome) = closed_form(prepared, layer, pressure, sheet) {
        let deflection = outcome.largest_deflection.value.abs();
        sheet.note("supported plate, deflection, linear", deflection, Measure::LENGTH);
        sheet.note("supported plate, stress, linear", outcome.largest_stress.value.abs(), Measure::STRESS);
    }
}

fn closed_form(
    prepared: &Prepared<'_>,
    layer: &Layer,
    pressure: f64,
    sheet: &mut Worksheet,
) -> Result<RectangularPlateOutcome, NotChecked> {
    let (length, width) = span(layer, sheet)?;
    let material = prepared.material_of(layer)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    sheet.run(&RectangularPlate {
        length,
        width,
        thickness: layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?,
        youngs_modulus,
        poissons_ratio,
        pressure: si(pressure),
        edge_support: EdgeSupport::Supported,
    })
}

/// Largest deflection of the pane against a share of its shorter free span.
pub(super) fn deflection(
    prepared: &Prepared<'_>,
    subject: &Subject,
    kind: LoadKind,
) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let (width, height) = span(layer, &mut sheet)?;
    let (states, linear, unsolved) = pushed(prepared, layer, kind, &mut sheet)?;
    let (low, high) = deflection_band(&states, &mut sheet);
    let (share, origin) = practice(prepared.limits.pane_deflection());
    let limit = share * width.value.min(height.value);
    if high > limit {
        thicker(&mut sheet, layer, linear / limit)?;
    }
    let bound = Bound::AtMost { limit, marginal_above: None };
    let demand = sheet.finish(Finding::Number { low, high, measure: Measure::LENGTH, bound }, origin);
    or_beyond(demand, linear / layer.thickness.map_or(f64::INFINITY, |thickness| thickness.value), unsolved)
}

/// Largest principal stress in the pane against what it bears for a moment.
pub(super) fn stress(
    prepared: &Prepared<'_>,
    subject: &Subject,
    kind: LoadKind,
) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let (limit, origin) = strength(&*prepared.material_of(layer)?, &mut sheet)?;
    let (states, linear, unsolved) = pushed(prepared, layer, kind, &mut sheet)?;
    let (low, high) = stress_band(prepared, &states, &mut sheet)?;
    if high > limit {
        thicker(&mut sheet, layer, high / limit)?;
    }
    let bound = Bound::AtMost { limit, marginal_above: None };
    let demand = sheet.finish(Finding::Number { low, high, measure: Measure::STRESS, bound }, origin);
    or_beyond(demand, linear / layer.thickness.map_or(f64::INFINITY, |thickness| thickness.value), unsolved)
}
