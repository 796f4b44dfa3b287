//! What the screws of a pattern carry in service: a hand on the pane that they hold, wind on it, and the road.

use coaming::fastener::{
    FastenerPattern, FastenerPatternOutcome, PatternFastener, PreloadScatter, PreloadScatterOutcome,
};
use coaming::prelude::*;

use crate::amount::Measure;
use crate::checks::{mass, pane};
use crate::demand::{Need, NotChecked};
use crate::document::{Face, Layer, LayerRole, LoadKind, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Preload of a pattern by its torque, with the scatter of its method.
pub(super) fn preload(
    pattern: &ScrewPattern,
    sheet: &mut Worksheet,
) -> Result<PreloadScatterOutcome, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let torque = sheet.given("tightening torque", format!("{path}.torque"), pattern.torque)?;
    let nut_factor = sheet.number("nut factor", format!("{path}.nut_factor"), pattern.nut_factor)?;
    let size = pattern.size.need(|| format!("{path}.size"))?;
    let method = pattern.tightening.need(|| format!("{path}.tightening"))?;
    sheet.note_words("tightened", Choice::name(method).replace('_', " "));
    let nominal_preload: Force = si(torque.value / (nut_factor * size.nominal_diameter().value));
    let outcome = sheet.run(&PreloadScatter {
        nominal_preload,
        method,
        uncertainty: pattern.tightening_uncertainty,
    })?;
    sheet.note("preload, T/(K d)", nominal_preload.value, Measure::FORCE);
    sheet.note("least preload", outcome.smallest_preload.value, Measure::FORCE);
    sheet.note("greatest preload", outcome.largest_preload.value, Measure::FORCE);
    sheet.say("What a locking patch takes of the torque is lost to the preload, and is not taken off here.");
    Ok(outcome)
}

/// The layers that the screws hold to the one under their heads.
pub(super) fn held<'a>(
    prepared: &Prepared<'a>,
    pattern: &ScrewPattern,
) -> Result<Vec<&'a Layer>, NotChecked> {
    let passes = pattern.passes.as_ref().filter(|passes| !passes.is_empty());
    let passes = passes.ok_or_else(|| NotChecked::needs(format!("screws.{}.passes", pattern.name)))?;
    let insert = pattern
        .insert
        .as_ref()
        .ok_or_else(|| NotChecked::needs(format!("screws.{}.insert", pattern.name)))?;
    let mut layers: Vec<&Layer> = Vec::new();
    for name in passes.iter().skip(1).map(|passed| &passed.layer).chain([&insert.layer]) {
        if !layers.iter().any(|known| known.name == *name) {
            layers.push(prepared.layer(name)?);
        }
    }
    Ok(layers)
}

/// A force along x, y and the screws, at a place, shared among the screws.
fn share(
    pattern: &ScrewPattern,
    (x, y): (f64, f64),
    (right, up, along): (f64, f64, f64),
    sheet: &mut Worksheet,
) -> Result<FastenerPatternOutcome, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let positions =
        pattern.positions.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.positions")))?;
    let count = pattern.count.need(|| format!("{path}.count"))?;
    let points = positions.points(count).ok_or_else(|| {
        NotChecked::not_calculated(format!(
            "the places of {count} screws on a rectangle; give them as points"
        ))
    })?;
    let at = |point: &(f64, f64)| PatternFastener { x: si(point.0), y: si(point.1), relative_stiffness: 1.0 };
    let nothing: Torque = si(0.0);
    sheet.run(&FastenerPattern {
        fasteners: points.iter().map(at).collect(),
        load_x: si(x),
        load_y: si(y),
        force_x: si(right),
        force_y: si(up),
        force_z: si(along),
        moment_x: nothing,
        moment_y: nothing,
        moment_z: nothing,
    })
}

/// Pull on the most loaded screw from a hand at the corner of the free span of each pane that they hold. A hand may push
/// from either side, so it is taken to pull the pane from its seat whichever face the pane lies on.
pub(super) fn lean(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    let mut pull = 0.0_f64;
    for layer in held(prepared, pattern)?.into_iter().filter(|layer| layer.role == LayerRole::Pane) {
        let case = pane::lean_case(prepared, layer)?;
        let force = sheet.given("hand force", "load_cases.lean.force", case.force)?.value
            * case.factor.unwrap_or(1.0);
        let patch = sheet.given("side of the patch", "load_cases.lean.patch", case.patch)?.value;
        let (width, height) = pane::span(layer, sheet)?;
        let corner = |side: Length| ((side.value - patch) / 2.0).max(0.0);
        let (x, y) = layer.at.map_or((0.0, 0.0), |at| (at.x.value, at.y.value));
        for (right, up) in [(1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)] {
            let place = (x + right * corner(width), y + up * corner(height));
            pull = pull.max(share(pattern, place, (0.0, 0.0, force), sheet)?.largest_tension.value);
        }
    }
    sheet.note("pull on the most loaded screw under a hand", pull, Measure::FORCE);
    sheet.say("Pane and frame are taken as rigid; a soft pane that pries at its edge pulls harder.");
    Ok(pull)
}

/// Pull on each screw from wind on the free span of each pane that they hold: wind that presses in pulls a pane on the
/// inner face from its seat, wind that lifts one on the outer face. The other way it only presses the pane on its seat.
pub(super) fn wind(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    let mut pull = 0.0;
    for layer in held(prepared, pattern)?.into_iter().filter(|layer| layer.role == LayerRole::Pane) {
        let face = layer.face.need(|| format!("layers.{}.face", layer.name))?;
        let kind = match face {
            Face::Inner => LoadKind::WindIn,
            Face::Outer => LoadKind::WindOut,
        };
        let case = prepared.load_case(kind)?;
        let path = format!("load_cases.{}.pressure", Choice::name(kind));
        let pressure = sheet.given("wind pressure", path, case.pressure)?.value * case.factor.unwrap_or(1.0);
        let (width, height) = pane::span(layer, sheet)?;
        let force = pressure * width.value * height.value;
        pull += share(pattern, (0.0, 0.0), (0.0, 0.0, force), sheet)?.largest_tension.value;
    }
    sheet.note("pull on each screw in wind", pull, Measure::FORCE);
    Ok(pull)
}

/// Pull and shear on each screw from the mass that they hold, shaken along z and in the plane.
pub(super) fn shake(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    sheet: &mut Worksheet,
) -> Result<(f64, f64), NotChecked> {
    let (mut held_mass, mut first_x, mut first_y) = (0.0, 0.0, 0.0);
    for layer in held(prepared, pattern)? {
        let mass = mass::of_layer(prepared, layer, sheet)?;
        let (x, y) = layer.at.map_or((0.0, 0.0), |at| (at.x.value, at.y.value));
        (held_mass, first_x, first_y) = (held_mass + mass, first_x + mass * x, first_y + mass * y);
    }
    sheet.note("mass that the screws hold", held_mass, Measure::MASS);
    let centre = if held_mass > 0.0 { (first_x / held_mass, first_y / held_mass) } else { (0.0, 0.0) };
    let mut acceleration = |kind: LoadKind| -> Result<f64, NotChecked> {
        let path = format!("load_cases.{}.acceleration", Choice::name(kind));
        let case = prepared.load_case(kind)?;
        Ok(sheet.given(Choice::name(kind), path, case.acceleration)?.value * case.factor.unwrap_or(1.0))
    };
    let along = acceleration(LoadKind::AccelerationZ)? * held_mass;
    let right = acceleration(LoadKind::AccelerationX)? * held_mass;
    let up = acceleration(LoadKind::AccelerationY)? * held_mass;
    // Each axis is shaken by itself, either way.
    let mut pull = 0.0_f64;
    for way in [along, -along] {
        pull = pull.max(share(pattern, centre, (0.0, 0.0, way), sheet)?.largest_tension.value);
    }
    let in_x = share(pattern, centre, (right, 0.0, 0.0), sheet)?.largest_shear.value;
    let in_y = share(pattern, centre, (0.0, up, 0.0), sheet)?.largest_shear.value;
    let shear = in_x.max(in_y);
    sheet.note("pull on the most loaded screw, shaken", pull, Measure::FORCE);
    sheet.note("shear on the most loaded screw, shaken", shear, Measure::FORCE);
    sheet.say("Each layer's mass hangs at the middle of its outline; off the middle of the screws it turns on them.");
    Ok((pull, shear))
}

/// The largest pull of all, and the shear of the road.
pub(super) fn worst(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    sheet: &mut Worksheet,
) -> Result<(f64, f64), NotChecked> {
    let lean = lean(prepared, pattern, sheet)?;
    let wind = wind(prepared, pattern, sheet)?;
    let (shaken, shear) = shake(prepared, pattern, sheet)?;
    let pull = lean.max(wind).max(shaken);
    sheet.note("largest pull in service", pull, Measure::FORCE);
    Ok((pull, shear))
}
