//! Screws: countersinks, lengths, edge distances.

pub(super) mod inserts;
pub(super) mod joint;
mod service_load;
pub(super) mod spacing;
pub(super) mod springs;
pub(super) mod strength;

use coaming::fastener::{
    CountersunkHead, CountersunkHeadOutcome, GripLayer, HeadSeat, LengthSeries, ScrewLength,
    ScrewLengthOutcome,
};
use coaming::material::MaterialKind;
use coaming::prelude::*;

use crate::amount::{Amount, Measure, Phrase};
use crate::checks::bonds::pair;
use crate::checks::movement::passed;
use crate::checks::{Check, Subject, name};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin, Ruling};
use crate::document::{Passed, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The screws' checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "countersink_depth",
        title: "Countersink against sheet thickness",
        case: None,
        subjects: |prepared| passes_that(prepared, |passed| passed.countersunk == Some(true)),
        demand: countersink_depth,
    },
    Check {
        key: "countersink_in_plastic",
        title: "No countersink in a layer that crazes",
        case: None,
        subjects: |prepared| passes_that(prepared, |_| true),
        demand: countersink_in_plastic,
    },
    Check {
        key: "screw_tip_clearance",
        title: "Screw length: clearance at the tip",
        case: None,
        subjects: patterns,
        demand: tip_clearance,
    },
    Check {
        key: "screw_engagement",
        title: "Screw length: engagement of the thread",
        case: None,
        subjects: patterns,
        demand: engagement,
    },
    Check {
        key: "edge_distance",
        title: "Distance of a hole from the edge",
        case: None,
        subjects: |prepared| passes_that(prepared, |_| true),
        demand: edge_distance,
    },
    Check {
        key: "screw_galvanic",
        title: "Galvanic pair of screw and layer",
        case: None,
        subjects: |prepared| passes_that(prepared, |_| true),
        demand: galvanic,
    },
];

/// A pattern with each layer that it passes and that is as asked.
pub(super) fn passes_that(prepared: &Prepared<'_>, is: fn(&Passed) -> bool) -> Vec<Subject> {
    let of_pattern = |pattern: &ScrewPattern| -> Vec<Subject> {
        let name = pattern.name.clone();
        let passes = pattern.passes.iter().flatten().filter(|passed| is(passed));
        passes.map(|passed| vec![name.clone(), passed.layer.clone()]).collect()
    };
    prepared.cover.screws.iter().flatten().flat_map(of_pattern).collect()
}

/// Every pattern.
pub(super) fn patterns(prepared: &Prepared<'_>) -> Vec<Subject> {
    prepared.cover.screws.iter().flatten().map(|pattern| vec![pattern.name.clone()]).collect()
}

fn countersink_depth(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let mut sheet = Worksheet::new();
    let outcome = countersink(prepared, pattern, passed(pattern, &layer.name)?, &mut sheet)?;
    let thickness = layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?;
    if outcome.breaks_through {
        sheet.at("breaks through: a knife edge on the far face");
    }
    let material = prepared.material_of(layer)?;
    let (limit, origin, marginal_above) = if material.kind == MaterialKind::Laminate {
        let (limit, origin) = practice(prepared.limits.countersink_laminate());
        (limit, origin, None)
    } else {
        let (limit, origin) = practice(prepared.limits.countersink_fail());
        (limit, origin, Some(prepared.limits.countersink_pass().0))
    };
    let due: Length = si(outcome.flush_depth.value / prepared.limits.countersink_pass().0);
    if due > thickness {
        let lever = format!("layers.{}.thickness", layer.name);
        sheet.cure(
            lever,
            Amount::of(thickness),
            Amount::of(due),
            "thicker sheet, a smaller screw, or a head that stands on the surface",
        );
    }
    let ratio = outcome.depth_ratio;
    let bound = Bound::AtMost { limit, marginal_above };
    Ok(sheet.finish(Finding::Number { low: ratio, high: ratio, measure: Measure::Percent, bound }, origin))
}

/// The countersink of a pattern in a layer, flush at the theoretical sharp diameter of its head.
pub(crate) fn countersink(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    passed: &Passed,
    sheet: &mut Worksheet,
) -> Result<CountersunkHeadOutcome, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let layer = prepared.layer(&passed.layer)?;
    let standard = pattern.countersunk_head.need(|| format!("{path}.countersunk_head"))?;
    let size = pattern.size.need(|| format!("{path}.size"))?;
    sheet.note_words("head", format!("{} {}", Choice::name(standard), Choice::name(size)));
    let hole = sheet.given("hole", format!("{path}.passes.{}.hole", layer.name), passed.hole)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let outcome = sheet.run(&CountersunkHead {
        standard,
        size,
        head_sharp_diameter: None,
        head_tolerance: mm(0.0),
        hole_diameter: hole,
        sheet_thickness: thickness,
        countersink_diameter: None,
        countersink_tolerance: mm(0.0),
    })?;
    sheet.note("theoretical sharp diameter", outcome.sharp_diameter.value, Measure::LENGTH);
    sheet.note("depth of the flush countersink", outcome.flush_depth.value, Measure::LENGTH);
    if outcome.dimension_unverified {
        sheet.unverified(&format!("sharp diameter of {} {}", Choice::name(standard), Choice::name(size)));
    }
    Ok(outcome)
}

fn countersink_in_plastic(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let path = format!("screws.{}.passes.{}.countersunk", pattern.name, layer.name);
    let sunk = passed(pattern, &layer.name)?.countersunk.need(|| path.clone())?;
    let material = prepared.material_of(layer)?;
    let crazes = material.kind == MaterialKind::ClearPlastic;
    let mut sheet = Worksheet::new();
    sheet.note_words("material", material.name.to_string());
    sheet.advise(path, "a flat head on a washer or a shoulder bush");
    let finds = match (sunk, crazes) {
        (true, true) => "countersunk into a clear plastic",
        (true, false) => "countersunk into a layer that does not craze",
        (false, _) => "not countersunk",
    };
    let ruling = if sunk && crazes { Ruling::Broken } else { Ruling::Holds };
    let origin =
        Origin::Published(Source::common_practice("no countersink in a brittle or craze-prone layer"));
    Ok(sheet.rule(finds, "no countersink in a brittle or craze-prone layer", ruling, origin))
}

/// The screw in its grip and hole.
pub(super) fn screw(
    prepared: &Prepared<'_>,
    subject: &Subject,
    sheet: &mut Worksheet,
) -> Result<ScrewLengthOutcome, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let path = format!("screws.{}", pattern.name);
    let length = sheet.given("length of the screw", format!("{path}.length"), pattern.length)?;
    let passes = pattern.passes.as_ref().filter(|passes| !passes.is_empty());
    let passes = passes.ok_or_else(|| NotChecked::needs(format!("{path}.passes")))?;
    let insert = pattern.insert.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.insert")))?;
    let hole_depth =
        sheet.given("depth of the hole", format!("{path}.insert.hole_depth"), insert.hole_depth)?;
    let threaded_length =
        sheet.given("thread of the insert", format!("{path}.insert.thread_length"), insert.thread_length)?;
    let size = pattern.size.need(|| format!("{path}.size"))?;
    let mut layers = Vec::new();
    for passed in passes.iter().filter(|passed| passed.layer != insert.layer) {
        let layer = prepared.layer(&passed.layer)?;
        // A layer that floats on a bush is no part of the grip: the bush is.
        let (thickness, tolerance) = match &pattern.bush {
            Some(bush) if bush.layer == layer.name => (
                sheet.given("length of the bush", format!("{path}.bush.length"), bush.length)?,
                sheet.given(
                    "deviation of the bush",
                    format!("{path}.bush.length_tolerance"),
                    bush.length_tolerance,
                )?,
            ),
            _ => {
                let at = |field: &str| format!("layers.{}.{field}", layer.name);
                (
                    sheet.given(&format!("thickness of {}", layer.name), at("thickness"), layer.thickness)?,
                    sheet.given(
                        &format!("deviation of {}", layer.name),
                        at("thickness_tolerance"),
                        layer.thickness_tolerance,
                    )?,
                )
            }
        };
        layers.push(GripLayer { thickness, thinner_by: tolerance, thicker_by: tolerance });
    }
    let head_seat = match (pattern.countersunk_head, pattern.flat_head) {
        (Some(_), _) => HeadSeat::Countersunk,
        (None, Some(_)) => HeadSeat::UnderHead,
        (None, None) => {
            return Err(NotChecked::needs(format!("{path}.countersunk_head or {path}.flat_head")));
        }
    };
    let (tip, _) = prepared.limits.tip_clearance();
    let (engagement, _) = prepared.limits.insert_engagement();
    let outcome = sheet.run(&ScrewLength {
        head_seat,
        smallest_protrusion: None,
        largest_protrusion: None,
        layers,
        washers: Vec::new(),
        hole_depth: Some(hole_depth),
        hole_depth_tolerance: mm(0.0),
        recess: mm(0.0),
        threaded_length,
        point_length: mm(0.0),
        // A thread shorter than is due has a row that says so: the length is worked out for all of it.
        required_engagement: si((engagement * size.nominal_diameter().value).min(threaded_length.value)),
        required_tip_clearance: si(tip),
        series: LengthSeries::Iso888,
        length: Some(length),
        shorter_by: mm(0.0),
        longer_by: mm(0.0),
    })?;
    sheet.note("grip", outcome.grip.value, Measure::LENGTH);
    sheet.note("length past the grip", outcome.length_past_grip.value, Measure::LENGTH);
    Ok(outcome)
}

fn tip_clearance(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let outcome = screw(prepared, subject, &mut sheet)?;
    let clearance = outcome.smallest_tip_clearance.need(|| "insert.hole_depth".to_owned())?;
    let (limit, origin) = practice(prepared.limits.tip_clearance());
    if clearance.value < 0.0 {
        let nominal = outcome.tip_clearance.map_or(0.0, |nominal| nominal.value);
        let amount = |si: f64| Amount { si, measure: Measure::LENGTH };
        sheet.at(Phrase::with(
            "bottoms by {}, nominal clearance {}",
            [amount(-clearance.value), amount(nominal)],
        ));
    }
    if clearance.value < limit {
        let shorter: Length = si(outcome.length.value - (limit - clearance.value));
        let lever = format!("screws.{}.length", name(subject, 0)?);
        sheet.cure(
            lever,
            Amount::of(outcome.length),
            Amount::of(shorter),
            "the next shorter length, or a deeper hole",
        );
    }
    Ok(sheet.at_least(clearance.value, Measure::LENGTH, limit, origin))
}

fn engagement(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let outcome = screw(prepared, subject, &mut sheet)?;
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let size = pattern.size.need(|| format!("screws.{}.size", pattern.name))?;
    let (diameters, origin) = practice(prepared.limits.insert_engagement());
    let due = diameters * size.nominal_diameter().value;
    let found = outcome.smallest_engagement.value;
    let insert = pattern.insert.as_ref();
    let thread = insert.and_then(|insert| insert.thread_length);
    if let Some(thread) = thread.filter(|thread| found < due && thread.value < due) {
        // No screw engages more thread than the insert has.
        sheet.cure(
            format!("screws.{}.insert.thread_length", pattern.name),
            Amount::of(thread),
            Amount::of(si::<Length>(due)),
            "a longer insert, for its own thread is what limits, and a screw that reaches through it",
        );
    } else if found < due {
        let longer: Length = si(outcome.length.value + due - found);
        let lever = format!("screws.{}.length", pattern.name);
        let words = "the next longer length, for the screw is what limits";
        sheet.cure(lever, Amount::of(outcome.length), Amount::of(longer), words);
    }
    Ok(sheet.at_least(found, Measure::LENGTH, due, origin))
}

fn edge_distance(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let path = format!("screws.{}.passes.{}", pattern.name, layer.name);
    let passed = passed(pattern, &layer.name)?;
    let mut sheet = Worksheet::new();
    let distance = sheet.given(
        "centre of the hole to the edge",
        format!("{path}.edge_distance"),
        passed.edge_distance,
    )?;
    let hole = sheet.given("hole", format!("{path}.hole"), passed.hole)?;
    let material = prepared.material_of(layer)?;
    let (diameters, origin) = practice(match material.kind {
        MaterialKind::Metal => prepared.limits.edge_distance_aluminium(),
        MaterialKind::Laminate => prepared.limits.edge_distance_laminate(),
        _ => prepared.limits.edge_distance_plastic(),
    });
    sheet.note("distance due over the hole's diameter", diameters, Measure::Number);
    sheet.reckon("distance due = that number × diameter of the hole");
    let due = diameters * hole.value;
    if distance.value < due {
        sheet.cure(
            format!("{path}.edge_distance"),
            Amount::of(distance),
            Amount::of(si::<Length>(due)),
            "move the holes inward",
        );
    }
    Ok(sheet.at_least(distance.value, Measure::LENGTH, due, origin))
}

fn galvanic(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let path = format!("screws.{}.material", pattern.name);
    let screw = prepared.material(&pattern.material.need(|| path.clone())?, &path)?;
    let apart = passed(pattern, &layer.name)?.insulated;
    let path = format!("screws.{}.passes.{}.insulated", pattern.name, layer.name);
    let advice = "sealant under the head and in the hole, a sleeve, or a coating on both";
    pair(&screw, &*prepared.material_of(layer)?, apart, path, advice)
}
