//! The sheet between its screws, which a frame behind it moves as the two grow apart.

use coaming::prelude::*;

use crate::amount::Measure;
use crate::checks::movement::{bush_play, growth};
use crate::checks::{Subject, name};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin, Ruling};
use crate::document::{LayerRole, LoadKind, ScrewPattern};
use crate::held;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Each pattern through the sheet with each layer behind it: one that its screws pass, or that holds their inserts.
pub(super) fn subjects(prepared: &Prepared<'_>) -> Vec<Subject> {
    let mut all = Vec::new();
    for pattern in prepared.cover.screws.iter().flatten() {
        for layer in behind(prepared, pattern) {
            all.push(vec![pattern.name.clone(), layer]);
        }
    }
    all
}

/// The layers behind the sheet, of a pattern that passes the sheet first.
fn behind(prepared: &Prepared<'_>, pattern: &ScrewPattern) -> Vec<String> {
    let mut passes = pattern.passes.iter().flatten();
    let first = passes.next().and_then(|passed| prepared.layer(&passed.layer).ok());
    if first.is_none_or(|layer| layer.role != LayerRole::Skin) {
        return Vec::new();
    }
    let mut found: Vec<String> = passes.map(|passed| passed.layer.clone()).collect();
    found.extend(pattern.insert.iter().map(|insert| insert.layer.clone()));
    found.dedup();
    found
}

/// The growth apart at which the sheet buckles between its screws, a band over how it is held and over how stiff what moves it is,
/// against the growth that there is.
pub(super) fn pressed_sheet(
    prepared: &Prepared<'_>,
    subject: &Subject,
    kind: LoadKind,
) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    let skin = skin.ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))?;
    let mut sheet = Worksheet::new();
    let (material, skin_material) = (prepared.material_of(layer)?, prepared.material_of(skin)?);
    let own = growth(prepared, layer, &material, kind, &mut sheet)?;
    let apart = own - growth(prepared, skin, &skin_material, kind, &mut sheet)?;
    sheet.note("growth apart", apart, Measure::Number);
    let needs = "the sheet stays flat between its screws";
    let practice = Origin::Published(Source::common_practice("a sheet that is pulled does not bow"));
    if pattern.bush.as_ref().is_some_and(|bush| bush.layer == layer.name)
        && bush_play(prepared, pattern, &mut sheet)?.1.floats
    {
        let floats = Origin::Published(Source::common_practice("a layer that floats moves no screw"));
        return Ok(sheet.rule("it floats on its shoulder bushes", needs, Ruling::Holds, floats));
    }
    if apart == 0.0 {
        return Ok(sheet.rule("they grow alike", needs, Ruling::Holds, practice));
    }
    let size = pattern.size.need(|| format!("screws.{}.size", pattern.name))?;
    let width = size.nominal_diameter().value;
    let places = held::places(pattern)?;
    let thickness =
        |of: &crate::document::Layer| of.thickness.need(|| format!("layers.{}.thickness", of.name));
    let modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let skin_modulus = sheet.property(&skin_material, "youngs_modulus", &skin_material.youngs_modulus)?;
    // What gives as its section does leaves the sheet a share.
    let (push, resist) = (modulus * thickness(layer)?, skin_modulus * thickness(skin)?);
    let share = push.value / (push.value + resist.value);
    sheet.reckon(
        "share of the growth that comes to the sheet, where what moves it gives: E t of it over E t of both",
    );
    sheet.note("share of the growth", share, Measure::Percent);
    let mut bows = |flat: bool| held::sheet_bows(prepared, skin, (&places, width), apart, flat, &mut sheet);
    let (loose, flat) = (bows(false)?, bows(true)?);
    sheet.solved(held::PANEL_SOLVER);
    sheet.say("Panel solver: the sheet with its flanges alone, its cut-outs open, moved at each screw by the growth apart, away from the origin or towards it. Its screws hold it at the height of what lies behind, which is taken to stay flat. At its softest it turns under their heads, gasket and latches do not hold it, and what moves it is stiff; at its firmest it lies flat under them, its outer edge keeps its height, and what moves it gives. No play of the holes is counted.");
    let mut band: Option<(f64, f64)> = None;
    for (found, words, gives) in
        [(loose, "free to turn under the heads", 1.0), (flat, "flat under the heads", share)]
    {
        let Some((strain, error)) = found else { continue };
        sheet.note(&format!("growth that buckles the sheet, {words}"), strain, Measure::Number);
        sheet.note(&format!("its error, {words}"), error, Measure::Percent);
        let (low, high) = (strain * (1.0 - error), strain * (1.0 + error) / gives);
        band = Some(band.map_or((low, high), |(least, most)| (low.min(least), high.max(most))));
    }
    let (Some((low, high)), Some(_)) = (band, flat) else {
        return Ok(sheet.rule("nothing presses the sheet", needs, Ruling::Holds, practice));
    };
    sheet.at("growth apart that buckles the sheet between its screws");
    sheet.advise(
        format!("screws.{}.positions", pattern.name),
        "screws closer together, a thicker sheet, or slots and bushes that let what lies behind slide",
    );
    let origin = Origin::Design(format!("growth of layers.{} against the sheet", layer.name));
    let bound = Bound::AtLeast { limit: apart.abs() };
    Ok(sheet.finish(Finding::Number { low, high, measure: Measure::Percent, bound }, origin))
}
