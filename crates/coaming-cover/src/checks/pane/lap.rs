//! The lap of a pane: what is left of its engagement, and what holds it against an outward load.

use coaming::prelude::*;
use coaming::thermal::{PaneEngagement, PaneEngagementOutcome};

use crate::amount::{Amount, Measure};
use crate::checks::movement::{growth, shank};
use crate::checks::pane::hand;
use crate::checks::{Check, Subject, layers_that, name};
use crate::demand::{Demand, Need, NotChecked};
use crate::document::{CutOut, Face, Layer, LayerRole, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The checks of the lap.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "pane_engagement",
        title: "Edge of the pane left in its lap",
        case: Some(LoadKind::Cold),
        subjects: panes,
        demand: engagement,
    },
    Check {
        key: "pane_retention",
        title: "Pane held against an outward load",
        case: Some(LoadKind::WindOut),
        subjects: panes,
        demand: retention,
    },
];

fn panes(prepared: &Prepared<'_>) -> Vec<Subject> {
    layers_that(prepared, |layer| layer.role == LayerRole::Pane)
}

/// The lap in the cold, under the hand, with everything against it at once, in the worse direction.
fn engagement(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let (hand, _) = hand::closed_form(prepared, layer, &mut sheet)?;
    let bow: Length = si(hand.largest_deflection.value.abs());
    sheet.note("bow under the hand, linear", bow.value, Measure::LENGTH);
    let path = format!("layers.{}", layer.name);
    let tolerance = sheet.given(
        "deviation of edge and opening",
        format!("{path}.edge_tolerance"),
        layer.edge_tolerance,
    )?;
    let (side_clearance, holder) = play(prepared, layer, &mut sheet)?;
    let pane_growth_strain =
        growth(prepared, layer, &*prepared.material_of(layer)?, LoadKind::Cold, &mut sheet)?;
    let frame_growth_strain =
        growth(prepared, holder, &*prepared.material_of(holder)?, LoadKind::Cold, &mut sheet)?;
    let (width, height) = layer.outline.box_size();
    let mut worst: Option<PaneEngagementOutcome> = None;
    let free_width = layer.free_width.need(|| format!("{path}.free_width"))?;
    let free_height = layer.free_height.need(|| format!("{path}.free_height"))?;
    for (whole, free_span) in [(width, free_width), (height, free_height)] {
        let outcome = sheet.run(&PaneEngagement {
            free_span,
            overlap: si((whole - free_span.value) / 2.0),
            pane_growth_strain,
            frame_growth_strain,
            bow,
            side_clearance,
            tolerance,
        })?;
        if worst.as_ref().is_none_or(|known| outcome.engagement < known.engagement) {
            worst = Some(outcome);
        }
    }
    let worst = worst.need(|| format!("{path}.free_width"))?;
    sheet.note("drawn in by the bow", worst.bow_draw.value, Measure::LENGTH);
    sheet.note("shrunk at each edge", worst.shrinkage.value, Measure::LENGTH);
    sheet.say("The bow is the linear one, which draws in more than a pane that stretches.");
    let (limit, origin) = practice(prepared.limits.pane_engagement());
    if worst.engagement.value < limit {
        let short = 2.0 * (limit - worst.engagement.value);
        let (now, to) = (Amount::of::<Length>(si(width)), Amount::of::<Length>(si(width + short)));
        sheet.cure(format!("{path}.outline"), now, to, "a larger pane, both ways, or a thicker one");
    }
    Ok(sheet.at_least(worst.engagement.value, Measure::LENGTH, limit, origin))
}

/// How far the pane can shift to one side in its screw holes, and the layer that its screws place it on.
fn play<'a>(
    prepared: &Prepared<'a>,
    pane: &Layer,
    sheet: &mut Worksheet,
) -> Result<(Length, &'a Layer), NotChecked> {
    let patterns = prepared.cover.screws.iter().flatten();
    let mut passing = patterns.filter_map(|pattern| {
        let passed = pattern.passes.iter().flatten().find(|passed| passed.layer == pane.name)?;
        Some((pattern, passed))
    });
    let (pattern, passed) = passing
        .next()
        .ok_or_else(|| NotChecked::needs(format!("screws (a pattern that passes `{}`)", pane.name)))?;
    let path = format!("screws.{}", pattern.name);
    let hole = sheet.given("hole", format!("{path}.passes.{}.hole", pane.name), passed.hole)?;
    let shank = shank(pattern, &pane.name, &path, sheet)?;
    let holder =
        pattern.passes.iter().flatten().next().ok_or_else(|| NotChecked::needs(format!("{path}.passes")))?;
    let clearance: Length = si(((hole.value - shank.value) / 2.0).max(0.0));
    sheet.note("play in the holes", clearance.value, Measure::LENGTH);
    Ok((clearance, prepared.layer(&holder.layer)?))
}

/// A pane behind the sheet is held by its lap over the aperture; one on the outer face by its screws alone.
fn retention(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let face = layer.face.need(|| format!("layers.{}.face", layer.name))?;
    if face == Face::Outer {
        return Err(NotChecked::not_calculated(
            "a pane outside the sheet, which its screws or bond alone hold",
        ));
    }
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    let skin = skin.ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))?;
    let path = format!("layers.{}.cut_outs", skin.name);
    let cut_outs = skin.cut_outs.as_ref().ok_or_else(|| NotChecked::needs(path.clone()))?;
    let away = |cut_out: &CutOut| {
        let (x, y) = cut_out.at.map_or((0.0, 0.0), |at| (at.x.value, at.y.value));
        let (px, py) = layer.at.map_or((0.0, 0.0), |at| (at.x.value, at.y.value));
        (x - px, y - py)
    };
    let far = |cut_out: &CutOut| math::hypot(away(cut_out).0, away(cut_out).1);
    let cut_out = cut_outs.iter().min_by(|a, b| far(a).total_cmp(&far(b)));
    let cut_out = cut_out.ok_or_else(|| NotChecked::needs(path.clone()))?;
    let ((width, height), (cut_width, cut_height)) = (layer.outline.box_size(), cut_out.outline.box_size());
    let (x, y) = away(cut_out);
    let lap = ((width - cut_width) / 2.0 - x.abs()).min((height - cut_height) / 2.0 - y.abs());
    sheet.note("aperture, width", cut_width, Measure::LENGTH);
    sheet.note("aperture, height", cut_height, Measure::LENGTH);
    sheet.note("pane, width", width, Measure::LENGTH);
    sheet.note("pane, height", height, Measure::LENGTH);
    sheet.note("pane off the middle of the aperture, along x", x.abs(), Measure::LENGTH);
    sheet.note("pane off the middle of the aperture, along y", y.abs(), Measure::LENGTH);
    sheet.reckon(
        "lap = (pane − aperture)/2 − what the pane is off the middle, the smaller of both directions",
    );
    sheet.at("lap of the pane behind the sheet, all round");
    let (limit, origin) = practice(prepared.limits.pane_engagement());
    sheet.advise(format!("layers.{}.outline", layer.name), "a larger pane, or a smaller aperture");
    Ok(sheet.at_least(lap, Measure::LENGTH, limit, origin))
}
