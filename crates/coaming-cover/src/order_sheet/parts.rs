//! Adhesives, parts and mass.

use coaming::prelude::*;

use super::{Item, Line, Value, found, given, words};
use crate::amount::{Amount, Measure};
use crate::checks::mass;
use crate::demand::NotChecked;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// One line for each bond, with the volume of its bond line; one for each sealant.
pub(super) fn adhesives(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for bond in prepared.cover.bonds.iter().flatten() {
        let at = |field: &str| format!("bonds.{}.{field}", bond.name);
        let pieces =
            bond.layers.iter().filter_map(|layer| prepared.layer(layer).ok()?.pieces).max().unwrap_or(1);
        let volume = match (bond.thickness, bond.length, bond.width) {
            (Some(t), Some(l), Some(w)) => Ok(t.value * l.value * w.value * f64::from(pieces)),
            _ => Err(NotChecked::needs(format!("{}, {}, {}", at("thickness"), at("length"), at("width")))),
        };
        lines.push(Line {
            part: bond.name.clone(),
            items: vec![
                words("adhesive", bond.adhesive.clone(), || at("adhesive")),
                given("bond line", bond.thickness, || at("thickness")),
                words("pieces", Some(pieces.to_string()), String::new),
                found("volume, without waste", Measure::of::<Volume>(), &volume),
            ],
        });
    }
    let sealants = prepared.cover.service.as_ref().and_then(|service| service.sealants.as_ref());
    for sealant in sealants.into_iter().flatten() {
        let volume: Result<f64, NotChecked> =
            Err(NotChecked::not_calculated("sealant joints are not described"));
        lines.push(Line {
            part: "sealant".to_owned(),
            items: vec![
                Item { label: "material", value: Value::Words(sealant.clone()) },
                found("volume", Measure::of::<Volume>(), &volume),
            ],
        });
    }
    lines
}

/// One line for each layer with its mass, and their sum.
pub(super) fn parts(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    for layer in &prepared.cover.layers {
        let path = |field: &str| format!("layers.{}.{field}", layer.name);
        let (width, height) = layer.outline.box_size();
        let size = |si: f64| Value::Amount(Amount { si, measure: Measure::LENGTH });
        lines.push(Line {
            part: layer.name.clone(),
            items: vec![
                words("pieces", Some(layer.pieces.unwrap_or(1).to_string()), String::new),
                words("material", layer.material.clone(), || path("material")),
                Item { label: "width over all", value: size(width) },
                Item { label: "height over all", value: size(height) },
                given("thickness", layer.thickness, || path("thickness")),
                found("mass", Measure::MASS, &mass::of_layer(prepared, layer, &mut Worksheet::new())),
            ],
        });
    }
    let total = mass::of_cover(prepared, &mut Worksheet::new()).map(|mass| mass.value);
    let items = vec![
        found("mass", Measure::MASS, &total),
        Item { label: "without", value: Value::Words("screws, inserts, gasket, adhesive, paint".to_owned()) },
    ];
    lines.push(Line { part: "cover".to_owned(), items });
    lines
}
