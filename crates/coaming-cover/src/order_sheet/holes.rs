//! The hole list: every hole with its place, size, role and layer.

use coaming::fastener::CountersunkHeadOutcome;
use coaming::prelude::*;
use coaming::thermal::HoleRole;

use super::blank::axes;
use super::item::{Item, Line, found, given, length, number, option, places, said, words};
use crate::amount::{Measure, Phrase};
use crate::checks::countersink;
use crate::demand::{Need, NotChecked};
use crate::document::{Insert, Layer, LayerRole, Outline, Passed, ScrewPattern, Sealing};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Every hole: of the screws, the inserts, the cut-outs, the drains and the latches.
pub(super) fn holes(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for pattern in prepared.cover.screws.iter().flatten() {
        let passes = pattern.passes.iter().flatten();
        lines.extend(passes.map(|passed| of_layer(prepared, pattern, passed)));
        lines.extend(pattern.insert.iter().map(|insert| of_insert(pattern, insert)));
    }
    for layer in &prepared.cover.layers {
        lines.extend(cut_outs(layer));
    }
    lines.extend(drains(prepared));
    lines.extend(latches(prepared));
    lines
}

/// Where the screws of a pattern stand, in metres.
pub(super) fn points(pattern: &ScrewPattern) -> Result<Vec<(f64, f64)>, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let positions =
        pattern.positions.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.positions")))?;
    let count = pattern.count.need(|| format!("{path}.count"))?;
    positions.points(count).ok_or_else(|| {
        NotChecked::not_calculated(format!(
            "the places of {count} screws on a rectangle; give them as points ({path}.positions)"
        ))
    })
}

/// Places on the face of a layer as they lie on its blank, from its left and lower edge.
fn on_blank(layer: &Layer, points: &[(f64, f64)]) -> Result<Vec<(f64, f64)>, NotChecked> {
    let [x, y] = axes(layer)?;
    let centre = layer.at.as_ref().map_or((0.0, 0.0), |at| (at.x.value, at.y.value));
    Ok(points.iter().map(|point| (x.on_blank(point.0 - centre.0), y.on_blank(point.1 - centre.1))).collect())
}

/// Places in the cover's coordinates, and for a bent layer on its blank too.
fn placed(layer: &Layer, points: Result<Vec<(f64, f64)>, NotChecked>) -> Vec<Item> {
    let blank = points.clone().and_then(|points| on_blank(layer, &points));
    let mut items = vec![places("centres", points)];
    if layer.bends.iter().flatten().next().is_some() {
        items.push(places("centres on the blank, from its left and lower edge", blank));
    }
    items
}

fn of_layer(prepared: &Prepared<'_>, pattern: &ScrewPattern, passed: &Passed) -> Line {
    let path = format!("screws.{}", pattern.name);
    let at = |field: &str| format!("{path}.passes.{}.{field}", passed.layer);
    let mut items = vec![
        said("layer", passed.layer.clone()),
        number("holes", pattern.count, || format!("{path}.count")),
        given("diameter", passed.hole, || at("hole")),
        option("role", passed.role, || at("role")),
    ];
    if passed.role == Some(HoleRole::Slot) {
        items.push(option("slot runs", passed.slot_direction, || at("slot_direction")));
        items.push(given("slot, length over all", passed.slot_length, || at("slot_length")));
    }
    match prepared.layer(&passed.layer) {
        Ok(layer) => items.extend(placed(layer, points(pattern))),
        Err(why) => items.push(places("centres", Err(why))),
    }
    items.push(given("deviation of a centre", pattern.position_tolerance, || {
        format!("{path}.position_tolerance")
    }));
    match passed.countersunk {
        Some(true) => items.extend(countersinks(prepared, pattern, passed)),
        Some(false) => items.push(said("countersink", "none")),
        None => items.push(words("countersink", None, || at("countersunk"))),
    }
    items.extend(sealing(prepared.layer(&passed.layer).ok(), passed.sealed_by, || at("sealed_by")));
    Line { part: format!("{} in {}", pattern.name, passed.layer), items }
}

fn countersinks(prepared: &Prepared<'_>, pattern: &ScrewPattern, passed: &Passed) -> Vec<Item> {
    let sunk = countersink(prepared, pattern, passed, &mut Worksheet::new());
    let of = |pick: fn(&CountersunkHeadOutcome) -> f64| sunk.as_ref().map(pick).map_err(Clone::clone);
    let mut items = vec![
        found(
            "countersink, diameter at the face",
            Measure::LENGTH,
            of(|sunk| sunk.countersink_diameter.value),
        ),
        found("countersink, depth", Measure::LENGTH, of(|sunk| sunk.countersink_depth.value)),
        found("countersink, included angle", Measure::of::<Angle>(), of(|sunk| sunk.included_angle.value)),
    ];
    if sunk.is_ok_and(|sunk| sunk.dimension_unverified) {
        items.push(said("beware", "the head's dimensions are unverified: try one screw in a piece of scrap"));
    }
    items
}

fn of_insert(pattern: &ScrewPattern, insert: &Insert) -> Line {
    let path = format!("screws.{}", pattern.name);
    let at = |field: &str| format!("{path}.insert.{field}");
    Line {
        part: format!("inserts of {} in {}", pattern.name, insert.layer),
        items: vec![
            said("layer", insert.layer.clone()),
            number("holes", pattern.count, || format!("{path}.count")),
            said("role", "insert"),
            places("centres", points(pattern)),
            given("diameter of the hole", insert.hole_diameter, || at("hole_diameter")),
            given("depth", insert.hole_depth, || at("hole_depth")),
            given("outside diameter of the insert", insert.outside_diameter, || at("outside_diameter")),
        ],
    }
}

fn cut_outs(layer: &Layer) -> Vec<Line> {
    let of = |(nth, cut): (usize, &crate::document::CutOut)| {
        let shape = match &cut.outline {
            Outline::Rectangle(rectangle) => {
                let size = [length(rectangle.width.value), length(rectangle.height.value)];
                match rectangle.corner_radius {
                    Some(radius) => Phrase::with(
                        "rectangle {} x {}, corners of radius {}",
                        [size[0], size[1], length(radius.value)],
                    ),
                    None => Phrase::with("rectangle {} x {}, sharp corners", size),
                }
            }
            Outline::Circle(circle) => Phrase::with("circle of diameter {}", [length(circle.diameter.value)]),
            Outline::Polygon(_) => Phrase::from("polygon with the corners below"),
        };
        let points = match &cut.outline {
            Outline::Polygon(_) => cut.outline.corners(),
            _ => vec![cut.at.as_ref().map_or((0.0, 0.0), |at| (at.x.value, at.y.value))],
        };
        let path = || format!("layers.{}.cut_outs[{nth}].sealed_by", layer.name);
        let mut items =
            vec![said("layer", layer.name.clone()), said("role", "aperture"), said("shape", shape)];
        items.extend(placed(layer, Ok(points)));
        items.extend(sealing(Some(layer), cut.sealed_by, path));
        Line { part: format!("cut-out {} in {}", nth + 1, layer.name), items }
    };
    layer.cut_outs.iter().flatten().enumerate().map(of).collect()
}

/// What seals a hole: to be known of the outer layer, and said of any other where the document gives it.
fn sealing(layer: Option<&Layer>, by: Option<Sealing>, path: impl FnOnce() -> String) -> Option<Item> {
    let outer = layer.is_none_or(|layer| layer.role == LayerRole::Skin);
    (outer || by.is_some()).then(|| option("sealed by", by, path))
}

fn drains(prepared: &Prepared<'_>) -> Option<Line> {
    let bay = prepared.cover.service.as_ref()?.bay.as_ref()?;
    let drains = bay.drains.as_ref().filter(|drains| !drains.is_empty())?;
    let points = drains.iter().map(|point| (point.x.value, point.y.value)).collect();
    Some(Line {
        part: "drains".to_owned(),
        items: vec![
            said("role", "drain or weep hole"),
            number("holes", u32::try_from(drains.len()).ok(), || "service.bay.drains".to_owned()),
            places("centres", Ok(points)),
            given("diameter", bay.drain_diameter, || "service.bay.drain_diameter".to_owned()),
            words("layer", bay.drain_layer.clone(), || "service.bay.drain_layer".to_owned()),
        ],
    })
}

fn latches(prepared: &Prepared<'_>) -> Option<Line> {
    let latches = prepared.cover.latches.as_ref()?;
    let points = latches.positions.as_ref().ok_or_else(|| NotChecked::needs("latches.positions"));
    let points = points.map(|points| points.iter().map(|point| (point.x.value, point.y.value)).collect());
    let drilling =
        NotChecked::not_calculated("the drilling plan of latch and keeper, which their maker gives");
    Some(Line {
        part: "latches and keepers".to_owned(),
        items: vec![
            said("role", "mounting holes"),
            places("centres of pull", points),
            Item { label: "holes", value: super::item::Value::Unknown(drilling) },
        ],
    })
}

/// How many holes of a pattern a sealing washer closes.
pub(super) fn sealing_washers(pattern: &ScrewPattern) -> bool {
    pattern.passes.iter().flatten().any(|passed| passed.sealed_by == Some(Sealing::SealingWasher))
}
