//! The frame: whether it has room to swell.

pub(super) mod damp;

use coaming::prelude::*;

use crate::amount::{Amount, Measure};
use crate::checks::movement::growth;
use crate::checks::{Check, Subject, layers_that, name};
use crate::demand::{Demand, NotChecked, Origin};
use crate::document::{LayerRole, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The frame's checks.
pub(super) const CHECKS: &[Check] = &[Check {
    key: "frame_growth",
    title: "Room for the frame to swell and grow",
    case: Some(LoadKind::Hot),
    subjects: |prepared| layers_that(prepared, |layer| layer.role == LayerRole::Frame),
    demand: frame_growth,
}];

fn frame_growth(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let path = format!("layers.{}", layer.name);
    let mut sheet = Worksheet::new();
    let pieces = layer.pieces.ok_or_else(|| NotChecked::needs(format!("{path}.pieces")))?;
    sheet.note("pieces", f64::from(pieces), Measure::Number);
    let gap = match pieces {
        1 => mm(0.0),
        _ => sheet.given("gap between pieces", format!("{path}.piece_gap"), layer.piece_gap)?,
    };
    let material = prepared.material_of(layer)?;
    let strain = growth(prepared, layer, &material, LoadKind::Hot, &mut sheet)?;
    // What holds the frame grows with it, and gives it that much room.
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    let skin = skin.ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))?;
    let skin_material = prepared.material_of(skin)?;
    let room = growth(prepared, skin, &skin_material, LoadKind::Hot, &mut sheet)?;
    let (width, height) = layer.outline.box_size();
    let longest = width.max(height);
    sheet.note("length of the frame", longest, Measure::LENGTH);
    let growth = ((strain - room) * longest).max(0.0);
    if growth > gap.value {
        let to: Length = si(growth);
        let words = "divide the frame, and leave the gap that its own swell and warmth ask for";
        sheet.cure(format!("{path}.piece_gap"), Amount::of(gap), Amount::of(to), words);
    }
    Ok(sheet.at_most(growth, Measure::LENGTH, gap.value, Origin::Design(format!("{path}.piece_gap"))))
}
