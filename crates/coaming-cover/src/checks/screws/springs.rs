//! A screw and what it clamps, as two springs from the head to the insert: with the bush or the soft layers in its path.

use std::sync::Arc;

use coaming::fastener::{
    BoltStiffness, ClampedLayer, HeadBearing, HeadStiffness, JointKind, MemberStiffness, ShoulderBush,
};
use coaming::material::{Material, MaterialKind};
use coaming::prelude::*;

use crate::amount::Measure;
use crate::checks::movement::growth;
use crate::checks::screws::countersink;
use crate::checks::screws::inserts::{bears, on_insert};
use crate::checks::screws::strength::thread;
use crate::demand::{Need, NotChecked};
use crate::document::{Bush, Insert, Layer, LoadKind, Passed, ScrewPattern};
use crate::prepared::{Prepared, property};
use crate::worksheet::Worksheet;

/// The joint of one screw in a state of the cover.
pub(super) struct Springs {
    /// Stiffness of the screw.
    pub(super) screw: ForcePerLength,
    /// Stiffness of what it clamps, as tightened.
    pub(super) clamped: ForcePerLength,
    /// The same after a season, at the temperature of that state.
    pub(super) clamped_later: ForcePerLength,
    /// Growth of what it clamps.
    pub(super) clamped_growth: Length,
    /// Growth of the screw over the same length.
    pub(super) screw_growth: Length,
    /// The plastic whose creep is not known at its warmest, so that it may be worse.
    pub(super) at_best: Option<String>,
}

/// What the head needs of the layer that it sits on.
struct Seat {
    bearing: Length,
    hole: Length,
    /// How far the middle of a countersunk head's cone lies below the face.
    sunk: f64,
}

/// A joint as it is put together.
struct Stack {
    layers: Vec<ClampedLayer>,
    growth: f64,
    at_best: Option<String>,
}

/// The springs of a pattern's screw in a state of the cover.
pub(super) fn springs(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<Springs, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let insert = pattern.insert.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.insert")))?;
    let passes: Vec<&Passed> = pattern.passes.iter().flatten().collect();
    let first = passes.first().ok_or_else(|| NotChecked::needs(format!("{path}.passes")))?;
    let seat = seat(prepared, pattern, first, sheet)?;
    let stack = stack(prepared, pattern, insert, kind, seat.sunk, sheet)?;
    let length: f64 = stack.layers.iter().map(|layer| layer.thickness.value).sum();
    let own = |given: &Option<String>, path: String| -> Result<Arc<Material>, NotChecked> {
        prepared.material(&given.need(|| path.clone())?, &path)
    };
    let screw_material = own(&pattern.material, format!("{path}.material"))?;
    let insert_material = own(&insert.material, format!("{path}.insert.material"))?;
    let thread = thread(pattern, sheet)?;
    let youngs_modulus = sheet.property(&screw_material, "youngs_modulus", &screw_material.youngs_modulus)?;
    let nut_youngs_modulus =
        sheet.property(&insert_material, "youngs_modulus", &insert_material.youngs_modulus)?;
    let screw = sheet.run(&BoltStiffness {
        thread,
        youngs_modulus,
        head: HeadStiffness::Socket,
        shank: Vec::new(),
        free_thread_length: si(length),
        joint_kind: JointKind::Tapped,
        nut_youngs_modulus,
    })?;
    let outer_diameter = si(reach(pattern, sheet)?);
    let hole_diameter = widest_hole(pattern, seat.hole, sheet)?;
    let clamped = sheet.run(&MemberStiffness {
        layers: stack.layers,
        bearing_diameter: seat.bearing,
        hole_diameter,
        outer_diameter,
        joint_kind: JointKind::Tapped,
    })?;
    sheet.note("stiffness of the screw", screw.stiffness.value, Measure::of::<ForcePerLength>());
    sheet.note("stiffness of what it clamps", clamped.stiffness.value, Measure::of::<ForcePerLength>());
    let later = clamped.stiffness_after_creep;
    sheet.note("the same after a season", later.value, Measure::of::<ForcePerLength>());
    let expansion = sheet.property(&screw_material, "expansion", &screw_material.expansion)?;
    let warmth = prepared.temperature(kind, &first.layer)?.value - prepared.assembled_at()?.value;
    sheet.say("Springs: the screw is threaded all along, and its head bears at the middle of its cone or on its face.");
    Ok(Springs {
        screw: screw.stiffness,
        clamped: clamped.stiffness,
        clamped_later: later.min(clamped.stiffness),
        clamped_growth: si(stack.growth),
        screw_growth: si(expansion.value * warmth * length),
        at_best: stack.at_best,
    })
}

/// Where the head bears.
fn seat(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    first: &Passed,
    sheet: &mut Worksheet,
) -> Result<Seat, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let hole = sheet.given("hole", format!("{path}.passes.{}.hole", first.layer), first.hole)?;
    match (pattern.countersunk_head, pattern.flat_head) {
        (Some(_), _) => {
            let cone = countersink(prepared, pattern, first, sheet)?;
            let bearing = si((cone.sharp_diameter.value + hole.value) / 2.0);
            Ok(Seat { bearing, hole, sunk: cone.flush_depth.value / 2.0 })
        }
        (None, Some(standard)) => {
            let size = pattern.size.need(|| format!("{path}.size"))?;
            let face = sheet.run(&HeadBearing {
                standard,
                size,
                bearing_outer_diameter: None,
                bearing_inner_diameter: hole,
                force: newton(0.0),
                pressure_limit: megapascal(1.0),
            })?;
            if face.dimension_unverified {
                sheet.unverified(&format!(
                    "bearing face of {} {}",
                    Choice::name(standard),
                    Choice::name(size)
                ));
            }
            Ok(Seat { bearing: face.bearing_outer_diameter, hole, sunk: 0.0 })
        }
        (None, None) => Err(NotChecked::needs(format!("{path}.countersunk_head or {path}.flat_head"))),
    }
}

/// The layers between the head and the insert, with what they grow.
fn stack(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    insert: &Insert,
    kind: LoadKind,
    sunk: f64,
    sheet: &mut Worksheet,
) -> Result<Stack, NotChecked> {
    let mut stack = Stack { layers: Vec::new(), growth: 0.0, at_best: None };
    let passes = pattern.passes.iter().flatten().filter(|passed| passed.layer != insert.layer);
    for (nth, passed) in passes.enumerate() {
        let layer = prepared.layer(&passed.layer)?;
        match &pattern.bush {
            Some(bush) if bush.layer == layer.name => {
                bushed(prepared, pattern, bush, kind, &mut stack, sheet)?;
            }
            _ => {
                let at = format!("layers.{}.thickness", layer.name);
                let whole = sheet.given(&format!("thickness of {}", layer.name), at, layer.thickness)?;
                let left = whole.value - if nth == 0 { sunk } else { 0.0 };
                if left <= 0.0 {
                    let what = format!("a joint whose head sinks through `{}`", layer.name);
                    return Err(NotChecked::not_calculated(what));
                }
                plain(prepared, layer, left, kind, &mut stack, sheet)?;
            }
        }
    }
    let (_, _, hole) = on_insert(pattern, insert)?;
    if !bears(pattern, insert, hole, sheet)? {
        let path = format!("screws.{}.insert.thread_length", pattern.name);
        let thread = sheet.given("thread of the insert", path, insert.thread_length)?;
        sheet.say("What is clamped lies on the plastic and not on the insert: half the insert's length of plastic is in the path of the force.");
        plain(prepared, prepared.layer(&insert.layer)?, thread.value / 2.0, kind, &mut stack, sheet)?;
    }
    Ok(stack)
}

/// A layer that carries the clamp force itself.
fn plain(
    prepared: &Prepared<'_>,
    layer: &Layer,
    thickness: f64,
    kind: LoadKind,
    stack: &mut Stack,
    sheet: &mut Worksheet,
) -> Result<(), NotChecked> {
    let material = prepared.material_of(layer)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let creep_factor = softer(prepared, layer, &material, kind, stack, sheet)?;
    stack.growth += growth(prepared, layer, &material, kind, sheet)? * thickness;
    stack.layers.push(ClampedLayer { thickness: si(thickness), youngs_modulus, creep_factor, bush: None });
    Ok(())
}

/// How many times softer a layer is after a season at its warmest, and at the temperature of the state.
fn softer(
    prepared: &Prepared<'_>,
    layer: &Layer,
    material: &Material,
    kind: LoadKind,
    stack: &mut Stack,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    if material.kind == MaterialKind::Metal {
        return Ok(1.0);
    }
    let season = prepared.load_case(LoadKind::ClosedAfterSeason)?.duration;
    let season = sheet.given("season", "load_cases.closed_after_season.duration", season)?;
    let warmest = prepared.temperature(LoadKind::Hot, &layer.name)?;
    let creep = match material.creep_factor(warmest, season) {
        Some(figure) => figure,
        None => {
            let last = material.creep.last().and_then(|line| line.factor.at(season));
            stack.at_best = Some(layer.name.clone());
            last.need(|| format!("materials.{}.creep", material.key))?
        }
    };
    let creep = sheet.figure(material, "creep", creep);
    sheet.note(&format!("creep modulus of {} over its own", layer.name), creep, Measure::Percent);
    let there = material.youngs_modulus_at(prepared.temperature(kind, &layer.name)?);
    let there = there.need(|| format!("materials.{}.modulus_over_temperature", material.key))?;
    let there = sheet.figure(material, "modulus_over_temperature", there);
    let here = property(material, "youngs_modulus", &material.youngs_modulus)?.value;
    Ok((here.value / (there.value * creep)).max(1.0))
}

/// A layer that floats on a bush, which carries the clamp force in its place.
fn bushed(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    bush: &Bush,
    kind: LoadKind,
    stack: &mut Stack,
    sheet: &mut Worksheet,
) -> Result<(), NotChecked> {
    let path = format!("screws.{}.bush", pattern.name);
    let length = sheet.given("length of the bush", format!("{path}.length"), bush.length)?;
    let outside = "bush, outside diameter";
    let outer_diameter = sheet.given(outside, format!("{path}.outside_diameter"), bush.outside_diameter)?;
    let inner_diameter = sheet.given("bush, bore", format!("{path}.bore"), bush.bore)?;
    let material = bush_material(prepared, pattern, bush)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    stack.growth += bush_strain(prepared, bush, &material, kind, sheet)? * length.value;
    stack.layers.push(ClampedLayer {
        thickness: length,
        youngs_modulus,
        creep_factor: 1.0,
        bush: Some(ShoulderBush { outer_diameter, inner_diameter, youngs_modulus }),
    });
    Ok(())
}

/// The material of a bush.
pub(in crate::checks) fn bush_material(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    bush: &Bush,
) -> Result<Arc<Material>, NotChecked> {
    let path = format!("screws.{}.bush.material", pattern.name);
    prepared.material(&bush.material.need(|| path.clone())?, &path)
}

/// Growth strain of a bush, as warm as the layer that floats on it.
pub(in crate::checks) fn bush_strain(
    prepared: &Prepared<'_>,
    bush: &Bush,
    material: &Material,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    let expansion = sheet.property(material, "expansion", &material.expansion)?;
    let warmth = prepared.temperature(kind, &bush.layer)?.value - prepared.assembled_at()?.value;
    Ok(expansion.value * warmth)
}

/// The widest hole of the layers that carry the clamp force themselves.
fn widest_hole(pattern: &ScrewPattern, first: Length, sheet: &mut Worksheet) -> Result<Length, NotChecked> {
    let floats = pattern.bush.as_ref().map(|bush| bush.layer.as_str());
    let mut widest = first;
    for passed in pattern.passes.iter().flatten().filter(|passed| Some(passed.layer.as_str()) != floats) {
        let at = format!("screws.{}.passes.{}.hole", pattern.name, passed.layer);
        let hole = sheet.given(&format!("hole in {}", passed.layer), at, passed.hole)?;
        widest = if hole > widest { hole } else { widest };
    }
    Ok(widest)
}

/// How wide the parts round a screw are: twice the least distance to an edge, and no more than the pitch.
fn reach(pattern: &ScrewPattern, sheet: &mut Worksheet) -> Result<f64, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let floats = pattern.bush.as_ref().map(|bush| bush.layer.as_str());
    let mut widest = f64::INFINITY;
    for passed in pattern.passes.iter().flatten().filter(|passed| Some(passed.layer.as_str()) != floats) {
        let at = format!("{path}.passes.{}.edge_distance", passed.layer);
        let label = format!("edge distance in {}", passed.layer);
        widest = widest.min(2.0 * sheet.given(&label, at, passed.edge_distance)?.value);
    }
    let count = pattern.count.need(|| format!("{path}.count"))?;
    let pitch = pattern.positions.as_ref().and_then(|positions| positions.shortest_pitch(count));
    Ok(pitch.map_or(widest, |pitch| widest.min(pitch)))
}
