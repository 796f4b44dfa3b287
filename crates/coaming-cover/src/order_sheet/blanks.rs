//! Blanks and bend lines.

use coaming::material::MaterialKind;
use coaming::prelude::*;

use super::blank::{Axis, axes};
use super::item::{Item, Line, found, given, length, number, option, said, words};
use crate::amount::{Measure, Phrase};
use crate::checks::sheet::flat::deduction;
use crate::demand::NotChecked;
use crate::document::{Bend, Edge, Layer, LayerRole};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// One line for each layer that is cut from sheet: the size to cut, and how it lies on the stock.
pub(super) fn blanks(prepared: &Prepared<'_>) -> Vec<Line> {
    let sheets = prepared.cover.layers.iter().filter(|layer| layer.role != LayerRole::Frame);
    sheets.map(|layer| blank(prepared, layer)).collect()
}

fn blank(prepared: &Prepared<'_>, layer: &Layer) -> Line {
    let path = |field: &str| format!("layers.{}.{field}", layer.name);
    let flat = axes(layer);
    let of = |place: usize| match &flat {
        Ok(axes) => axes.get(place).map(Axis::size).ok_or_else(|| NotChecked::needs(path("outline"))),
        Err(why) => Err(why.clone()),
    };
    let mut items = vec![
        number("pieces", Some(layer.pieces.unwrap_or(1)), String::new),
        words("material", layer.material.clone(), || path("material")),
        given("thickness", layer.thickness, || path("thickness")),
        given("deviation of the thickness", layer.thickness_tolerance, || path("thickness_tolerance")),
        found("flat width, along x", Measure::LENGTH, of(0)),
        found("flat height, along y", Measure::LENGTH, of(1)),
    ];
    if let Some(drawn) = &layer.blank {
        let size = [length(drawn.width.value), length(drawn.height.value)];
        items.push(said("blank as drawn", Phrase::with("{} x {}", size)));
    }
    if layer.pieces.is_some_and(|pieces| pieces > 1) {
        items.push(said("divided", "the size is that of all pieces together, along their length"));
        items.push(given("gap between two pieces", layer.piece_gap, || path("piece_gap")));
    }
    if let Some(notch) = notch(layer, &flat) {
        items.push(notch);
    }
    let kind = prepared.material_of(layer).map(|material| material.kind);
    if matches!(kind, Ok(MaterialKind::Metal | MaterialKind::Laminate) | Err(_)) {
        items.push(option("grain or fibres run", layer.grain, || path("grain")));
    }
    if matches!(kind, Ok(MaterialKind::Metal) | Err(_)) {
        items.push(option("burr on the face", layer.burr_face, || path("burr_face")));
    }
    items.push(option("good face", prepared.cover.good_face, || "good_face".to_owned()));
    Line { part: layer.name.clone(), items }
}

/// What is cut from each corner where two flanges meet: at least up to where their bend lines cross.
fn notch(layer: &Layer, flat: &Result<[Axis; 2], NotChecked>) -> Option<Item> {
    let [x, y] = flat.as_ref().ok()?;
    let along_x = [Edge::Left, Edge::Right].map(|edge| from_own_edge(x, edge));
    let along_y = [Edge::Bottom, Edge::Top].map(|edge| from_own_edge(y, edge));
    let widest = |sides: [Option<f64>; 2]| sides.into_iter().flatten().reduce(f64::max);
    let (width, height) = (widest(along_x)?, widest(along_y)?);
    layer.bends.as_ref()?;
    let words = "{} x {}, to where the bend lines cross; relief beyond it as the die asks";
    Some(said("corner notch, at least", Phrase::with(words, [length(width), length(height)])))
}

/// A bend line from the edge of the blank that it runs along, in metres.
fn from_own_edge(axis: &Axis, edge: Edge) -> Option<f64> {
    let line = axis.bend_line(edge)?;
    Some(if matches!(edge, Edge::Left | Edge::Bottom) { line } else { axis.size() - line })
}

/// One line for each bend: angle, radius, direction, deduction, and the bend line from the edges of the blank.
pub(super) fn bends(prepared: &Prepared<'_>) -> Vec<Line> {
    let layers = prepared.cover.layers.iter();
    layers.flat_map(|layer| layer.bends.iter().flatten().map(move |bend| bend_line(layer, bend))).collect()
}

fn bend_line(layer: &Layer, bend: &Bend) -> Line {
    let path = format!("layers.{}.bends.{}", layer.name, Choice::name(bend.edge));
    let at = |field: &str| format!("{path}.{field}");
    let bd = deduction(&mut Worksheet::new(), layer, bend, &path).map(|(bd, _)| bd);
    let upright = matches!(bend.edge, Edge::Left | Edge::Right);
    let line = axes(layer).and_then(|axes| {
        let [x, y] = &axes;
        let axis = if upright { x } else { y };
        let from_start = axis.bend_line(bend.edge).ok_or_else(|| NotChecked::needs(path.clone()))?;
        let own = from_own_edge(axis, bend.edge).ok_or_else(|| NotChecked::needs(path.clone()))?;
        Ok((from_start, own))
    });
    let (from_start, own) = match line {
        Ok((from_start, own)) => (Ok(from_start), Ok(own)),
        Err(why) => (Err(why.clone()), Err(why)),
    };
    let start = if upright {
        "bend line from the blank's left edge"
    } else {
        "bend line from the blank's lower edge"
    };
    Line {
        part: format!("{}, {} edge", layer.name, Choice::name(bend.edge)),
        items: vec![
            given("bend angle, turned through", bend.bend_angle, || at("bend_angle")),
            given("inside radius", bend.inside_radius, || at("inside_radius")),
            option("direction, seen from the good face", bend.bend_direction, || at("bend_direction")),
            given("flange, outside", bend.flange, || at("flange")),
            found("bend deduction", Measure::LENGTH, bd),
            found(start, Measure::LENGTH, from_start),
            found("bend line from its own edge", Measure::LENGTH, own),
            said("runs", if upright { "parallel to y" } else { "parallel to x" }),
            given("die opening", bend.die_opening, || at("die_opening")),
        ],
    }
}
