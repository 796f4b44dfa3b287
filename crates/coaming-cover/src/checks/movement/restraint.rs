//! Layers that their screws hold: friction under the heads, and the force of what cannot move.

use coaming::plate::{EdgeSupport, HeatedPlateBuckling, HeatedPlateBucklingOutcome};
use coaming::prelude::*;
use coaming::thermal::{JointSlip, JointSlipOutcome, RestrainedGrowth, Restraint};

use crate::amount::Measure;
use crate::checks::movement::{bush_play, growth};
use crate::checks::{Subject, name};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin, Ruling};
use crate::document::{Layer, LayerRole, LoadKind, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// What a layer grows more than the one that the heads sit on, as a strain, from assembly to a load case.
pub(in crate::checks) fn difference(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    layer: &Layer,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    let holder = pattern.passes.iter().flatten().next();
    let holder = holder.ok_or_else(|| NotChecked::needs(format!("screws.{}.passes", pattern.name)))?;
    let holder = prepared.layer(&holder.layer)?;
    let own = growth(prepared, layer, &*prepared.material_of(layer)?, kind, sheet)?;
    let held = growth(prepared, holder, &*prepared.material_of(holder)?, kind, sheet)?;
    sheet.note("growth apart", own - held, Measure::Number);
    Ok(own - held)
}

/// Buckling of a pane whose edges cannot move in its plane, with what it expands more than its holder.
pub(super) fn buckling(
    prepared: &Prepared<'_>,
    layer: &Layer,
    expansion: Expansion,
    sheet: &mut Worksheet,
) -> Result<HeatedPlateBucklingOutcome, NotChecked> {
    let at = |field: &str| format!("layers.{}.{field}", layer.name);
    let material = prepared.material_of(layer)?;
    let situation = HeatedPlateBuckling {
        length: sheet.given("free span, width", at("free_width"), layer.free_width)?,
        width: sheet.given("free span, height", at("free_height"), layer.free_height)?,
        thickness: sheet.given("thickness", at("thickness"), layer.thickness)?,
        youngs_modulus: sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?,
        poissons_ratio: sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?,
        expansion,
        temperature_rise: delta_kelvin(0.0),
        edge_support: EdgeSupport::Supported,
    };
    sheet.say(
        "Its free span is taken as supported; edges held against turning bear two and a half to four times as much.",
    );
    sheet.run(&situation)
}

/// A layer held by its clamps.
pub(in crate::checks) struct Held {
    /// Its stress where nothing gives, the sign with it: negative where it is pressed.
    pub(in crate::checks) stress: f64,
    /// Stress past which it bows instead, for a pane that is pressed; infinite for any other.
    pub(in crate::checks) bows: f64,
    /// Force that moves it: what it grows with, or that at which it bows.
    limit: f64,
    /// Section across which it is held.
    pub(in crate::checks) section: f64,
    /// Screws that hold one side.
    pub(in crate::checks) to_one_side: u32,
    /// Friction of the clamps against it.
    pub(in crate::checks) slip: JointSlipOutcome,
}

/// A layer that its clamps hold, with all that it grows apart.
pub(in crate::checks) fn held(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    layer: &Layer,
    apart: f64,
    sheet: &mut Worksheet,
) -> Result<Held, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let torque = sheet.given("tightening torque", format!("{path}.torque"), pattern.torque)?;
    let nut_factor = sheet.number("nut factor", format!("{path}.nut_factor"), pattern.nut_factor)?;
    let size = pattern.size.need(|| format!("{path}.size"))?;
    let preload: Force = si(torque.value / (nut_factor * size.nominal_diameter().value));
    sheet.note("preload, T/(K d)", preload.value, Measure::FORCE);
    let friction_min =
        sheet.number("least friction", format!("{path}.friction_low"), pattern.friction_low)?;
    let friction_max =
        sheet.number("greatest friction", format!("{path}.friction_high"), pattern.friction_high)?;
    let count = pattern.count.need(|| format!("{path}.count"))?;
    let to_one_side = count.div_ceil(2);
    sheet.note("screws to one side", f64::from(to_one_side), Measure::Number);
    let behind = pattern.passes.iter().flatten().skip_while(|passed| passed.layer != layer.name).nth(1);
    let insert = pattern.insert.as_ref().is_some_and(|insert| insert.layer != layer.name);
    let friction_faces = if behind.is_some() || insert { 2 } else { 1 };
    sheet.note("faces that rub", f64::from(friction_faces), Measure::Number);

    let (width, height) = layer.outline.box_size();
    let at = |field: &str| format!("layers.{}.{field}", layer.name);
    let thickness = sheet.given("thickness", at("thickness"), layer.thickness)?;
    let material = prepared.material_of(layer)?;
    let across = width.min(height);
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    let held = sheet.run(&RestrainedGrowth {
        growth_difference: apart,
        held_length: si(width.max(height)),
        clearance: mm(0.0),
        restraint: Restraint::BothDirections,
        youngs_modulus,
        poissons_ratio,
        width: si(across),
        thickness,
        screws: to_one_side,
        screw_diameter: size.nominal_diameter(),
    })?;
    sheet.note("force of the layer, held", held.force.value, Measure::FORCE);
    sheet.note("stress of the layer, held", held.stress.value, Measure::STRESS);
    let mut bows = f64::INFINITY;
    if layer.role == LayerRole::Pane && apart > 0.0 {
        let expansion = sheet.property(&material, "expansion", &material.expansion)?;
        bows = buckling(prepared, layer, expansion, sheet)?.critical_stress.value;
        sheet.note("stress at which it bows", bows, Measure::STRESS);
    }
    let limit = held.force.value.min(bows * across * thickness.value);
    let slip = sheet.run(&JointSlip {
        preload_min: preload,
        preload_max: preload,
        screws: to_one_side,
        friction_faces,
        friction_min,
        friction_max,
        restrained_force: held.force,
    })?;
    let (stress, section) = (held.stress.value, across * thickness.value);
    Ok(Held { stress, bows, limit, section, to_one_side, slip })
}

/// Friction of the clamps, a band, against the force that moves the layer: what it grows with, or for a pane the force
/// at which it bows instead, if that is less.
pub(super) fn clamp_friction(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let path = format!("screws.{}", pattern.name);
    let mut sheet = Worksheet::new();
    let needs = "it slides before it bows or strains";
    let practice =
        Origin::Published(Source::common_practice("a layer that grows slides, or floats on bushes"));
    if pattern.bush.as_ref().is_some_and(|bush| bush.layer == layer.name)
        && bush_play(prepared, pattern, &mut sheet)?.1.floats
    {
        return Ok(sheet.rule("it floats on its shoulder bushes", needs, Ruling::Holds, practice));
    }
    let apart = difference(prepared, pattern, layer, LoadKind::Hot, &mut sheet)?;
    if apart == 0.0 {
        return Ok(sheet.rule("it grows as much as what holds it", needs, Ruling::Holds, practice));
    }
    let Held { slip, limit, .. } = held(prepared, pattern, layer, apart, &mut sheet)?;
    sheet.note_words(
        "under the growth alone it",
        Choice::name(slip.slip).replace("band", "may slide or lock"),
    );
    sheet.at("friction of the clamps against what moves the layer");
    sheet.advise(format!("{path}.bush"), "shoulder bushes, so that the clamps do not bear on the layer");
    let bound = Bound::AtMost { limit, marginal_above: None };
    let finding = Finding::Number {
        low: slip.friction_force_min.value,
        high: slip.friction_force_max.value,
        measure: Measure::FORCE,
        bound,
    };
    Ok(sheet.finish(finding, Origin::Design(format!("growth and stiffness of layers.{}", layer.name))))
}
