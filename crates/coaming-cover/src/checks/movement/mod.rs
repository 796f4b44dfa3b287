//! Holes and movement: whether each layer can grow without leaning on its screws.

mod critical_rise;
mod pressed_sheet;
pub(super) mod restraint;

use coaming::material::Material;
use coaming::prelude::*;
use coaming::thermal::{
    HoleMovement, HoleRole, LayerGrowth, ShoulderBush, ShoulderBushOutcome, ToleranceStack,
};

use crate::amount::{Amount, Measure, Phrase};
use crate::checks::screws::springs::{bush_material, bush_strain};
use crate::checks::{Check, Subject, name};
use crate::demand::{Demand, Need, NotChecked, Origin, Ruling};
use crate::document::{Layer, LayerRole, LoadKind, Passed, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The checks of holes and movement.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "hole_movement_hot",
        title: "Holes against movement, hot",
        case: Some(LoadKind::Hot),
        subjects: floating,
        demand: |prepared, subject| movement(prepared, subject, LoadKind::Hot),
    },
    Check {
        key: "hole_movement_cold",
        title: "Holes against movement, cold",
        case: Some(LoadKind::Cold),
        subjects: floating,
        demand: |prepared, subject| movement(prepared, subject, LoadKind::Cold),
    },
    Check {
        key: "countersunk_float",
        title: "Countersunk head on a layer that moves",
        case: None,
        subjects: floating,
        demand: countersunk_float,
    },
    Check {
        key: "bush_length",
        title: "Shoulder bush against what floats on it",
        case: Some(LoadKind::Hot),
        subjects: |prepared| {
            let patterns = prepared.cover.screws.iter().flatten();
            patterns
                .filter(|pattern| pattern.bush.is_some())
                .map(|pattern| vec![pattern.name.clone()])
                .collect()
        },
        demand: bush_length,
    },
    Check {
        key: "clamp_friction",
        title: "Does the layer slide under its clamps",
        case: Some(LoadKind::Hot),
        subjects: floating,
        demand: restraint::clamp_friction,
    },
    Check {
        key: "critical_rise",
        title: "Heat that bows a pane held at its holes",
        case: Some(LoadKind::Hot),
        subjects: |prepared| {
            let pane = |subject: &Subject| {
                let layer = subject.get(1).and_then(|layer| prepared.layer(layer).ok());
                layer.is_some_and(|layer| layer.role == LayerRole::Pane)
            };
            floating(prepared).into_iter().filter(pane).collect()
        },
        demand: critical_rise::critical_rise,
    },
    Check {
        key: "pressed_sheet_hot",
        title: "Sheet between its screws, pressed by what grows behind it",
        case: Some(LoadKind::Hot),
        subjects: pressed_sheet::subjects,
        demand: |prepared, subject| pressed_sheet::pressed_sheet(prepared, subject, LoadKind::Hot),
    },
    Check {
        key: "pressed_sheet_cold",
        title: "Sheet between its screws, pressed by what shrinks behind it",
        case: Some(LoadKind::Cold),
        subjects: pressed_sheet::subjects,
        demand: |prepared, subject| pressed_sheet::pressed_sheet(prepared, subject, LoadKind::Cold),
    },
];

/// A pattern with each layer behind its first: those can move against the one that the head sits on.
fn floating(prepared: &Prepared<'_>) -> Vec<Subject> {
    let of_pattern = |pattern: &ScrewPattern| -> Vec<Subject> {
        let name = pattern.name.clone();
        pattern
            .passes
            .iter()
            .flatten()
            .skip(1)
            .map(|passed| vec![name.clone(), passed.layer.clone()])
            .collect()
    };
    prepared.cover.screws.iter().flatten().flat_map(of_pattern).collect()
}

/// A layer that a pattern passes.
pub(super) fn passed<'a>(pattern: &'a ScrewPattern, layer: &str) -> Result<&'a Passed, NotChecked> {
    let mut passes = pattern.passes.iter().flatten();
    passes
        .find(|passed| passed.layer == layer)
        .ok_or_else(|| NotChecked::needs(format!("screws.{}.passes", pattern.name)))
}

/// Growth strain of a layer from assembly to a load case.
pub(super) fn growth(
    prepared: &Prepared<'_>,
    layer: &Layer,
    material: &Material,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    let expansion = sheet.property(material, "expansion", &material.expansion)?;
    let assembly_temperature = prepared.assembled_at()?;
    let service_temperature = prepared.temperature(kind, &layer.name)?;
    sheet.note(&format!("{} at", layer.name), service_temperature.value, Measure::TEMPERATURE);
    let moisture = moisture(prepared, layer, material, kind, sheet)?;
    let outcome = sheet.run(&LayerGrowth {
        length: m(1.0),
        expansion,
        assembly_temperature,
        service_temperature,
        assembly_moisture_strain: 0.0,
        service_moisture_strain: moisture,
    })?;
    sheet.note(&format!("{} growth strain", layer.name), outcome.growth_strain, Measure::Number);
    Ok(outcome.growth_strain)
}

/// Moisture strain of a layer from its making to a load case; nothing for a material that takes up no water.
fn moisture(
    prepared: &Prepared<'_>,
    layer: &Layer,
    material: &Material,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    if material.moisture_uptake.is_none() {
        return Ok(0.0);
    }
    let made = layer.made_at_humidity.need(|| format!("layers.{}.made_at_humidity", layer.name))?;
    let now = prepared.humidity(kind, &layer.name)?;
    sheet.note(&format!("{} made at humidity", layer.name), made, Measure::Percent);
    sheet.note(&format!("{} at humidity", layer.name), now, Measure::Percent);
    match material.moisture_strain(made, now) {
        Some(figure) => Ok(sheet.figure(material, "swelling", figure)),
        None => Err(NotChecked::needs(format!("materials.{}.swelling", material.key))),
    }
}

fn movement(prepared: &Prepared<'_>, subject: &Subject, kind: LoadKind) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let path = format!("screws.{}", pattern.name);
    let here = passed(pattern, &layer.name)?;
    let mut sheet = Worksheet::new();
    let holder_name = &pattern
        .passes
        .iter()
        .flatten()
        .next()
        .ok_or_else(|| NotChecked::needs(format!("{path}.passes")))?
        .layer;
    let holder = prepared.layer(holder_name)?;
    let (material, holder_material) = (prepared.material_of(layer)?, prepared.material_of(holder)?);
    let hole = sheet.given("hole", format!("{path}.passes.{}.hole", layer.name), here.hole)?;
    let role = here.role.need(|| format!("{path}.passes.{}.role", layer.name))?;
    sheet.note_words("role of the holes", Choice::name(role));
    let shank = shank(pattern, &layer.name, &path, &mut sheet)?;
    let positions =
        pattern.positions.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.positions")))?;
    let (x, y) = positions.reach();
    let tolerance = sheet.given(
        "position tolerance",
        format!("{path}.position_tolerance"),
        pattern.position_tolerance,
    )?;
    let growth_strain = growth(prepared, layer, &material, kind, &mut sheet)?;
    let fastener_growth_strain = growth(prepared, holder, &holder_material, kind, &mut sheet)?;
    let outcome = sheet.run(&HoleMovement {
        distance_x: si(x),
        distance_y: si(y),
        growth_strain,
        fastener_growth_strain,
        hole_role: HoleRole::Oversize,
        slot_direction: None,
        fastener_diameter: shank,
        hole_position_tolerance: tolerance,
        fastener_position_tolerance: mm(0.0),
        tolerance_stack: ToleranceStack::WorstCase,
        inflation_factor: None,
        hole_diameter: Some(hole),
        slot_length: None,
    })?;
    if role == HoleRole::Fixed {
        sheet.say("One close hole places the layer; the others need the room that this row asks for.");
    }
    sheet.say("The fixed point is taken at the origin; the furthest screw decides.");
    sheet.note("movement at the furthest screw", outcome.movement.value, Measure::LENGTH);
    let needed = outcome.movement.value + outcome.position_tolerance.value;
    let clearance = (hole.value - shank.value) / 2.0;
    let furthest = Amount { si: math::hypot(x, y), measure: Measure::LENGTH };
    sheet.at(Phrase::with("furthest screw, {} from the origin", [furthest]));
    if needed > clearance {
        let lever = format!("{path}.passes.{}.hole", layer.name);
        let to = outcome.smallest_hole_diameter;
        sheet.cure(
            lever,
            Amount::of(hole),
            Amount::of(to),
            format!("larger holes in `{}`, on shoulder bushes, one fixed and one slot", layer.name),
        );
    }
    let origin = Origin::Design(format!("radial clearance of {path}.passes.{}.hole", layer.name));
    Ok(sheet.at_most(needed, Measure::LENGTH, clearance, origin))
}

/// Diameter of what passes the hole: the bush where the layer floats on one, the screw otherwise.
pub(super) fn shank(
    pattern: &ScrewPattern,
    layer: &str,
    path: &str,
    sheet: &mut Worksheet,
) -> Result<Length, NotChecked> {
    match &pattern.bush {
        Some(bush) if bush.layer == layer => sheet.given(
            "bush, outside diameter",
            format!("{path}.bush.outside_diameter"),
            bush.outside_diameter,
        ),
        _ => {
            let size = pattern.size.need(|| format!("{path}.size"))?;
            sheet.given("screw diameter", format!("{path}.size"), Some(size.nominal_diameter()))
        }
    }
}

fn countersunk_float(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = name(subject, 1)?;
    let path = format!("screws.{}.passes.{layer}", pattern.name);
    let here = passed(pattern, layer)?;
    let sunk = here.countersunk.need(|| format!("{path}.countersunk"))?;
    let mut sheet = Worksheet::new();
    sheet.advise(format!("{path}.countersunk"), "a head that stands on the surface, or a shoulder bush");
    let ruling = if sunk { Ruling::Broken } else { Ruling::Holds };
    let finds =
        if sunk { "the head is sunk into a layer that must float" } else { "the head is not sunk into it" };
    let origin =
        Origin::Published(Source::common_practice("a countersunk head centres itself and cannot float"));
    Ok(sheet.rule(finds, "a layer that moves is not countersunk", ruling, origin))
}

/// Play of a layer under the bush of its pattern.
pub(super) fn bush_play(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    sheet: &mut Worksheet,
) -> Result<(Length, ShoulderBushOutcome), NotChecked> {
    let path = format!("screws.{}.bush", pattern.name);
    let bush = pattern.bush.as_ref().ok_or_else(|| NotChecked::needs(path.clone()))?;
    let layer = prepared.layer(&bush.layer)?;
    let material = prepared.material_of(layer)?;
    let bush_length = sheet.given("length of the bush", format!("{path}.length"), bush.length)?;
    let bush_tolerance =
        sheet.given("deviation of the bush", format!("{path}.length_tolerance"), bush.length_tolerance)?;
    let at = |field: &str| format!("layers.{}.{field}", layer.name);
    let layer_thickness = sheet.given("thickness", at("thickness"), layer.thickness)?;
    let thickness_tolerance =
        sheet.given("deviation of the thickness", at("thickness_tolerance"), layer.thickness_tolerance)?;
    let hot_layer_strain = growth(prepared, layer, &material, LoadKind::Hot, sheet)?;
    let cold_layer_strain = growth(prepared, layer, &material, LoadKind::Cold, sheet)?;
    let own = bush_material(prepared, pattern, bush)?;
    let hot_bush_strain = bush_strain(prepared, bush, &own, LoadKind::Hot, sheet)?;
    let cold_bush_strain = bush_strain(prepared, bush, &own, LoadKind::Cold, sheet)?;
    let outcome = sheet.run(&ShoulderBush {
        bush_length,
        bush_tolerance,
        layer_thickness,
        thickness_tolerance,
        hot_bush_strain,
        hot_layer_strain,
        cold_bush_strain,
        cold_layer_strain,
    })?;
    sheet.note("least play under the bush", outcome.play_min.value, Measure::LENGTH);
    sheet.note("greatest play under the bush", outcome.play_max.value, Measure::LENGTH);
    Ok((bush_length, outcome))
}

fn bush_length(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let (bush_length, outcome) = bush_play(prepared, pattern, &mut sheet)?;
    let least = outcome.play_min;
    if !outcome.floats {
        let to: Length = si(bush_length.value - least.value);
        sheet.cure(
            format!("screws.{}.bush.length", pattern.name),
            Amount::of(bush_length),
            Amount::of(to),
            "a longer bush, so that the layer floats at every extreme",
        );
    }
    let finds = Phrase::with("play of {} to {}", [Amount::of(least), Amount::of(outcome.play_max)]);
    let ruling = if outcome.floats { Ruling::Holds } else { Ruling::Broken };
    let origin =
        Origin::Published(Source::common_practice("a bush is longer than the layer that floats on it"));
    Ok(sheet.rule(finds, "play left at every extreme", ruling, origin))
}
