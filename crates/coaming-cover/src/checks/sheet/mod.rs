//! Bent sheet: the flat pattern, holes beside bends, flanges on the press brake.

pub(crate) mod flat;

use coaming::prelude::*;
use coaming::sheet::{
    AirBend, AluminumDesignManualTemper, DieOpeningRounding, HoleDistanceReference, HoleToBend,
    SmallestRadiusByDesignManual,
};

use crate::amount::{Amount, Measure, Phrase};
use crate::checks::sheet::flat::{Flat, flat};
use crate::checks::{Check, Subject, layers_that, name};
use crate::demand::{Demand, NotChecked, Origin, Ruling};
use crate::document::{Bend, Edge, Layer};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The sheet's checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "flat_pattern",
        title: "Flat pattern against its bends",
        case: None,
        subjects: bent,
        demand: flat_pattern,
    },
    Check {
        key: "hole_to_bend",
        title: "Hole beside a bend",
        case: None,
        subjects: bends,
        demand: hole_to_bend,
    },
    Check {
        key: "smallest_flange",
        title: "Flange long enough for the die",
        case: None,
        subjects: bends,
        demand: smallest_flange,
    },
    Check {
        key: "inside_radius",
        title: "Inside radius that the sheet bears",
        case: None,
        subjects: bends,
        demand: inside_radius,
    },
];

fn bent(prepared: &Prepared<'_>) -> Vec<Subject> {
    layers_that(prepared, |layer| layer.bends.iter().flatten().next().is_some())
}

fn bends(prepared: &Prepared<'_>) -> Vec<Subject> {
    let of_layer = |layer: &Layer| -> Vec<Subject> {
        let name = layer.name.clone();
        layer
            .bends
            .iter()
            .flatten()
            .map(|bend| vec![name.clone(), Choice::name(bend.edge).to_owned()])
            .collect()
    };
    prepared.cover.layers.iter().flat_map(of_layer).collect()
}

/// The bend of a subject, with its path.
fn bend<'a>(prepared: &Prepared<'a>, subject: &Subject) -> Result<(&'a Layer, &'a Bend, String), NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let edge = name(subject, 1)?;
    let path = format!("layers.{}.bends.{edge}", layer.name);
    let mut bends = layer.bends.iter().flatten();
    let bend =
        bends.find(|bend| Choice::name(bend.edge) == edge).ok_or_else(|| NotChecked::needs(path.clone()))?;
    Ok((layer, bend, path))
}

/// General tolerance of ISO 2768-1, class m, for a length in metres; none past the table.
fn general_tolerance(length: f64) -> Option<f64> {
    const STEPS: [(f64, f64); 7] =
        [(0.003, 0.1), (0.006, 0.1), (0.03, 0.2), (0.12, 0.3), (0.4, 0.5), (1.0, 0.8), (2.0, 1.2)];
    STEPS.iter().find(|step| length <= step.0).map(|step| step.1 / 1e3)
}

const ISO_2768: Source = Source {
    title: "ISO 2768-1",
    edition: "1989",
    locator: "table 1, class m",
    standing: Standing::SecondHand,
};

fn flat_pattern(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let path = format!("layers.{}", layer.name);
    let blank = layer.blank.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.blank")))?;
    let mut sheet = Worksheet::new();
    let Flat { width, height, deduction, spread } = flat(prepared, layer, &mut sheet)?;
    sheet.note("flat width due", width, Measure::LENGTH);
    sheet.note("flat height due", height, Measure::LENGTH);
    sheet.note("flat width drawn", blank.width.value, Measure::LENGTH);
    sheet.note("flat height drawn", blank.height.value, Measure::LENGTH);
    sheet.note("by DIN 6935 instead, each deduction differs by", spread, Measure::LENGTH);
    let (off_width, off_height) = ((blank.width.value - width).abs(), (blank.height.value - height).abs());
    let off = off_width.max(off_height);
    let limit = general_tolerance(width.max(height))
        .ok_or_else(|| NotChecked::not_calculated("general tolerances above 2000 mm"))?;
    let length = |si: f64| Amount { si, measure: Measure::LENGTH };
    sheet.at(Phrase::with(
        "{} x {} drawn, {} x {} due",
        [length(blank.width.value), length(blank.height.value), length(width), length(height)],
    ));
    sheet.say("Bend a test strip of the same sheet and take its K-factor before the blanks are cut.");
    let (lever, now, to) = if off_width >= off_height {
        ("width", blank.width.value, width)
    } else {
        ("height", blank.height.value, height)
    };
    if off > limit {
        let words = deduction
            .map_or_else(|| Phrase::from(""), |bd| Phrase::with("deduct {} for each bend", [length(bd)]));
        sheet.cure(format!("{path}.blank.{lever}"), length(now), length(to), words);
    }
    Ok(sheet.at_most(off, Measure::LENGTH, limit, Origin::Published(ISO_2768)))
}

fn hole_to_bend(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (layer, bend, path) = bend(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let distance =
        sheet.given("hole edge to bent-up face", format!("{path}.nearest_hole"), bend.nearest_hole)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let radius = sheet.given("inside radius", format!("{path}.inside_radius"), bend.inside_radius)?;
    let bend_angle = sheet.given("bend angle", format!("{path}.bend_angle"), bend.bend_angle)?;
    let k_factor = sheet.number("K-factor", format!("{path}.k_factor"), bend.k_factor)?;
    let (thicknesses, origin) = practice(prepared.limits.hole_to_bend());
    // What is needed at the edge does not hang on the size of the hole: a round one of one thickness stands for any.
    let outcome = sheet.run(&HoleToBend {
        thickness,
        inside_radius: radius,
        bend_angle,
        k_factor,
        across_bend: thickness,
        along_bend: thickness,
        centre_distance: si(distance.value + thickness.value / 2.0),
        measured_from: HoleDistanceReference::InsideFace,
        hole_factor: Some(thicknesses),
        slot_factor: None,
    })?;
    let due = outcome.needed_from_inside_face;
    sheet.say("For round holes; a slot along the bend asks for more.");
    if distance < due {
        sheet.cure(
            format!("{path}.nearest_hole"),
            Amount::of(distance),
            Amount::of(due),
            "move the hole away, or drill it after bending",
        );
    }
    Ok(sheet.at_least(distance.value, Measure::LENGTH, due.value, origin))
}

fn smallest_flange(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (layer, bend, path) = bend(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let flange = sheet.given("flange", format!("{path}.flange"), bend.flange)?;
    let die = sheet.given("die opening", format!("{path}.die_opening"), bend.die_opening)?;
    let bend_angle = sheet.given("bend angle", format!("{path}.bend_angle"), bend.bend_angle)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let material = prepared.material_of(layer)?;
    let ultimate_strength = sheet.property(&material, "ultimate_strength", &material.ultimate_strength)?;
    let (width, height) = layer.outline.box_size();
    let bend_length = if matches!(bend.edge, Edge::Left | Edge::Right) { height } else { width };
    sheet.note("length of the bend", bend_length, Measure::LENGTH);
    let (share, origin) = practice(prepared.limits.flange_over_die());
    let outcome = sheet.run(&AirBend {
        thickness,
        ultimate_strength,
        bend_length: si(bend_length),
        bend_angle,
        die_opening: Some(die),
        die_opening_rounding: DieOpeningRounding::Exact,
        punch_radius: None,
        force_factor: None,
        radius_factor: None,
        flange_factor: Some(share),
    })?;
    sheet.note("inside radius that this die gives", outcome.inside_radius.value, Measure::LENGTH);
    sheet.note("force of the brake", outcome.force.value, Measure::FORCE);
    let due = outcome.smallest_flange;
    if flange < due {
        sheet.cure(
            format!("{path}.flange"),
            Amount::of(flange),
            Amount::of(due),
            "longer flange, or a narrower die",
        );
    }
    Ok(sheet.at_least(flange.value, Measure::LENGTH, due.value, origin))
}

/// Step of the table of smallest inside radii, in thicknesses.
const TABLE_STEP: f64 = 0.5;

/// The tempers that both the table of materials and the Aluminum Design Manual hold.
fn temper(material: &str) -> Option<AluminumDesignManualTemper> {
    match material {
        "aluminium_3003_h14" => Some(AluminumDesignManualTemper::A3003H14),
        "aluminium_5052_h32" => Some(AluminumDesignManualTemper::A5052H32),
        "aluminium_6061_t6" => Some(AluminumDesignManualTemper::A6061T6),
        _ => None,
    }
}

fn inside_radius(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (layer, bend, path) = bend(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let radius = sheet.given("inside radius", format!("{path}.inside_radius"), bend.inside_radius)?;
    let bend_angle = sheet.given("bend angle", format!("{path}.bend_angle"), bend.bend_angle)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let material = prepared.material_of(layer)?;
    let temper = temper(&material.key)
        .ok_or_else(|| NotChecked::not_calculated(format!("smallest inside radius of {}", material.name)))?;
    if bend_angle > deg(90.0) {
        return Err(NotChecked::not_calculated("smallest inside radius past 90 deg"));
    }
    let outcome = sheet.run(&SmallestRadiusByDesignManual { temper, thickness })?;
    sheet.say("A guide value for a smooth edge across the grain; along the grain takes more.");
    let due = outcome.smallest_radius;
    if radius < due {
        sheet.cure(
            format!("{path}.inside_radius"),
            Amount::of(radius),
            Amount::of(due),
            "a larger radius, or a softer temper",
        );
    }
    let [source] = SmallestRadiusByDesignManual::SOURCE else {
        return Err(NotChecked::not_calculated("smallest inside radius without a source"));
    };
    let origin = Origin::Published(*source);
    // The table is printed in steps of half a thickness: by half a step it can tell nothing.
    if radius < due && radius.value >= due.value - TABLE_STEP / 2.0 * thickness.value {
        let template = "{}, below a guide value of {} by less than the table tells";
        let finds = Phrase::with(template, [Amount::of(radius), Amount::of(due)]);
        return Ok(sheet.rule(finds, "a bent test strip without cracks", Ruling::NeedsTest, origin));
    }
    Ok(sheet.at_least(radius.value, Measure::LENGTH, due.value, origin))
}
