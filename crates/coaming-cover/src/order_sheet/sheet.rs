//! Blanks and bend lines.

use coaming::prelude::*;

use super::{Item, Line, Value, found, given, words};
use crate::amount::Measure;
use crate::checks::flat::{Flat, deduction, flat};
use crate::document::{Edge, LayerRole};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// One line for each skin: the size to cut.
pub(super) fn blanks(prepared: &Prepared<'_>) -> Vec<Line> {
    let skins = prepared.cover.layers.iter().filter(|layer| layer.role == LayerRole::Skin);
    skins
        .map(|layer| {
            let path = |field: &str| format!("layers.{}.{field}", layer.name);
            let size = flat(prepared, layer, &mut Worksheet::new());
            let of = |pick: fn(&Flat) -> f64| size.as_ref().map(pick).map_err(Clone::clone);
            Line {
                part: layer.name.clone(),
                items: vec![
                    words("material", layer.material.clone(), || path("material")),
                    given("thickness", layer.thickness, || path("thickness")),
                    found("flat width", Measure::LENGTH, &of(|flat| flat.width)),
                    found("flat height", Measure::LENGTH, &of(|flat| flat.height)),
                ],
            }
        })
        .collect()
}

/// One line for each bend: angle, radius, direction, deduction, and the bend line from the edge of the blank.
pub(super) fn bends(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for layer in &prepared.cover.layers {
        for bend in layer.bends.iter().flatten() {
            let path = format!("layers.{}.bends.{}", layer.name, Choice::name(bend.edge));
            let at = |field: &str| format!("{path}.{field}");
            let bd = deduction(&mut Worksheet::new(), layer, bend, &path).map(|(bd, _)| bd);
            // Half of the deduction comes off the flange: the bend line stands in the middle of the bend.
            let line = bd.clone().and_then(|bd| {
                let flange = bend.flange.ok_or_else(|| crate::demand::NotChecked::needs(at("flange")))?;
                Ok(flange.value - bd / 2.0)
            });
            let side =
                if matches!(bend.edge, Edge::Left | Edge::Right) { "parallel to y" } else { "parallel to x" };
            lines.push(Line {
                part: format!("{}, {} edge", layer.name, Choice::name(bend.edge)),
                items: vec![
                    given("bend angle", bend.bend_angle, || at("bend_angle")),
                    given("inside radius", bend.inside_radius, || at("inside_radius")),
                    words("direction", bend.bend_direction.map(|way| Choice::name(way).to_owned()), || {
                        at("bend_direction")
                    }),
                    given("flange, outside", bend.flange, || at("flange")),
                    found("bend deduction", Measure::LENGTH, &bd),
                    found("bend line from the edge of the blank", Measure::LENGTH, &line),
                    Item { label: "runs", value: Value::Words(side.to_owned()) },
                ],
            });
        }
    }
    lines
}
