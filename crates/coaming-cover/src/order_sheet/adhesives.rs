//! Adhesives and sealants: volumes of their joints, and what to order.

use coaming::prelude::*;

use super::item::{Item, Line, Value, found, given, hours, limit, number, said, words};
use crate::amount::Measure;
use crate::demand::NotChecked;
use crate::document::{Bond, CutOut, Layer, SealantJoint, Sealing};
use crate::prepared::Prepared;

/// One line for each bond and for each bead of sealant, then one for each sealant named.
pub(super) fn adhesives(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut lines: Vec<Line> =
        prepared.cover.bonds.iter().flatten().map(|bond| of_bond(prepared, bond)).collect();
    for layer in &prepared.cover.layers {
        for (nth, cut) in sealed(layer) {
            lines.push(of_bead(prepared, layer, nth, cut));
        }
    }
    lines.extend(prepared.cover.sealant_joints.iter().flatten().map(|joint| of_joint(prepared, joint)));
    lines.extend(screw_sealing(prepared));
    let service = prepared.cover.service.as_ref();
    for sealant in service.and_then(|service| service.sealants.as_ref()).into_iter().flatten() {
        lines.push(Line {
            part: format!("sealant {sealant}"),
            items: vec![
                said("material", sealant.clone()),
                hours("time to cure", service.and_then(|service| service.sealant_cure_time), || {
                    "service.sealant_cure_time".to_owned()
                }),
            ],
        });
    }
    lines
}

/// The cut-outs of a layer that sealant closes, each with its place in the list.
pub(super) fn sealed(layer: &Layer) -> impl Iterator<Item = (usize, &CutOut)> {
    let cuts = layer.cut_outs.iter().flatten().enumerate();
    cuts.filter(|(_, cut)| cut.sealed_by == Some(Sealing::Sealant))
}

/// Volume of a bond line in cubic metres, all its pieces together.
pub(super) fn bond_volume(prepared: &Prepared<'_>, bond: &Bond) -> Result<f64, NotChecked> {
    let at = |field: &str| format!("bonds.{}.{field}", bond.name);
    let sizes = [("thickness", bond.thickness), ("length", bond.length), ("width", bond.width)];
    let missing: Vec<String> = sizes.iter().filter(|size| size.1.is_none()).map(|size| at(size.0)).collect();
    if !missing.is_empty() {
        return Err(NotChecked::Needs(missing));
    }
    let piece: f64 = sizes.iter().filter_map(|size| size.1).map(|size| size.value).product();
    Ok(piece * f64::from(pieces(prepared, bond)))
}

/// How many pieces a bond line is laid in: as many as the more divided of its layers has.
fn pieces(prepared: &Prepared<'_>, bond: &Bond) -> u32 {
    bond.layers.iter().filter_map(|layer| prepared.layer(layer).ok()?.pieces).max().unwrap_or(1)
}

/// Volume of the bead round a cut-out in cubic metres, along its edge.
pub(super) fn bead_volume(layer: &Layer, nth: usize, cut: &CutOut) -> Result<f64, NotChecked> {
    let at = |field: &str| format!("layers.{}.cut_outs[{nth}].{field}", layer.name);
    match (cut.bead_width, cut.bead_depth) {
        (Some(width), Some(depth)) => Ok(cut.outline.perimeter() * width.value * depth.value),
        (width, depth) => {
            let given = [("bead_width", width.is_some()), ("bead_depth", depth.is_some())];
            Err(NotChecked::Needs(given.iter().filter(|size| !size.1).map(|size| at(size.0)).collect()))
        }
    }
}

/// The volume of a joint, and what to order for it.
fn volumes(prepared: &Prepared<'_>, volume: Result<f64, NotChecked>) -> [Item; 3] {
    let (factor, origin) = prepared.limits.waste();
    let measure = Measure::of::<Volume>();
    [
        found("volume of the joint", measure, volume.clone()),
        limit("factor for waste", factor, Measure::Number, origin),
        found("volume to order", measure, volume.map(|volume| volume * factor)),
    ]
}

fn of_bond(prepared: &Prepared<'_>, bond: &Bond) -> Line {
    let at = |field: &str| format!("bonds.{}.{field}", bond.name);
    let mut items = vec![
        words("adhesive", bond.adhesive.clone(), || at("adhesive")),
        said("joins", bond.layers.join(" and ")),
        given("thickness of the bond line", bond.thickness, || at("thickness")),
        given("length of one piece", bond.length, || at("length")),
        given("width", bond.width, || at("width")),
        number("pieces", Some(pieces(prepared, bond)), String::new),
    ];
    items.extend(volumes(prepared, bond_volume(prepared, bond)));
    items.push(hours("time to cure", bond.cure_time, || at("cure_time")));
    Line { part: bond.name.clone(), items }
}

fn of_bead(prepared: &Prepared<'_>, layer: &Layer, nth: usize, cut: &CutOut) -> Line {
    let at = |field: &str| format!("layers.{}.cut_outs[{nth}].{field}", layer.name);
    let mut items = vec![
        found("length of the bead", Measure::LENGTH, Ok(cut.outline.perimeter())),
        given("width of the bead", cut.bead_width, || at("bead_width")),
        given("depth of the bead", cut.bead_depth, || at("bead_depth")),
    ];
    items.extend(volumes(prepared, bead_volume(layer, nth, cut)));
    Line { part: format!("bead round cut-out {} in {}", nth + 1, layer.name), items }
}

/// A joint that is filled with sealant.
fn of_joint(prepared: &Prepared<'_>, joint: &SealantJoint) -> Line {
    let at = |field: &str| format!("sealant_joints.{}.{field}", joint.name);
    let sizes = [("width", joint.width), ("depth", joint.depth), ("length", joint.length)];
    let missing: Vec<String> = sizes.iter().filter(|size| size.1.is_none()).map(|size| at(size.0)).collect();
    let volume = match missing.is_empty() {
        true => Ok(sizes.iter().filter_map(|size| size.1).map(|size| size.value).product()),
        false => Err(NotChecked::Needs(missing)),
    };
    let mut items = vec![
        words("sealant", joint.sealant.clone(), || at("sealant")),
        said("between", joint.layers.join(" and ")),
        given("width", joint.width, || at("width")),
        given("depth", joint.depth, || at("depth")),
        given("length", joint.length, || at("length")),
    ];
    items.extend(volumes(prepared, volume));
    Line { part: format!("sealant joint {}", joint.name), items }
}

/// The screw holes that are set in sealant: their number; what goes under a head is not calculated.
fn screw_sealing(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for pattern in prepared.cover.screws.iter().flatten() {
        for passed in
            pattern.passes.iter().flatten().filter(|passed| passed.sealed_by == Some(Sealing::Sealant))
        {
            let volume = NotChecked::not_calculated("the sealant under the heads of screws: a dab each");
            lines.push(Line {
                part: format!("sealant under {} in {}", pattern.name, passed.layer),
                items: vec![
                    number("holes", pattern.count, || format!("screws.{}.count", pattern.name)),
                    Item { label: "volume", value: Value::Unknown(volume) },
                ],
            });
        }
    }
    lines
}
