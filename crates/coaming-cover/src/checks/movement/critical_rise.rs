//! A pane that grows against its screws: the rise at which it bows between them.

use coaming::prelude::*;
use coaming::thermal::{CriticalRise, CriticalRiseOutcome};

use crate::amount::Measure;
use crate::checks::movement::restraint::{buckling, difference};
use crate::checks::movement::{bush_play, passed, shank};
use crate::checks::{Subject, name};
use crate::demand::{Bound, Demand, Finding, NotChecked, Origin, Ruling};
use crate::document::LoadKind;
use crate::held::{self, Grip, Rest};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The rise of pane and holder together that takes up its clearance and bows the pane, a band over both limits of how it is held,
/// against the rise that has its growth.
pub(super) fn critical_rise(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let path = format!("screws.{}", pattern.name);
    let mut sheet = Worksheet::new();
    let apart = difference(prepared, pattern, layer, LoadKind::Hot, &mut sheet)?;
    let needs = "it takes up its clearance and bows at a greater rise";
    let holder = pattern.passes.iter().flatten().next();
    let holder = holder.ok_or_else(|| NotChecked::needs(format!("{path}.passes")))?;
    let holder = prepared.material_of(prepared.layer(&holder.layer)?)?;
    let material = prepared.material_of(layer)?;
    let expansion = sheet.property(&material, "expansion", &material.expansion)?;
    let other_expansion = sheet.property(&holder, "expansion", &holder.expansion)?;
    if apart <= 0.0 {
        let practice = Origin::Published(Source::common_practice("a layer that is pulled does not bow"));
        return Ok(sheet.rule("it does not grow against what holds it", needs, Ruling::Holds, practice));
    }
    let hole = format!("{path}.passes.{}.hole", layer.name);
    let hole_diameter = sheet.given("hole", hole.clone(), passed(pattern, &layer.name)?.hole)?;
    let shank = shank(pattern, &layer.name, &path, &mut sheet)?;
    let tolerance = sheet.given(
        "position tolerance",
        format!("{path}.position_tolerance"),
        pattern.position_tolerance,
    )?;
    let places = held::places(pattern)?;
    // Both ends together, and at each the tolerance may already have used its part.
    let clearance: Length = si((hole_diameter.value - shank.value - 2.0 * tolerance.value).max(0.0));
    sheet.note("clearance left by the tolerance", clearance.value, Measure::LENGTH);
    let floats = pattern.bush.as_ref().is_some_and(|bush| bush.layer == layer.name)
        && bush_play(prepared, pattern, &mut sheet)?.1.floats;
    let faster: Expansion = si((expansion.value - other_expansion.value).abs().max(f64::MIN_POSITIVE));
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let away = |place: &(f64, f64)| math::hypot(place.0, place.1);
    let furthest = places.iter().map(away).fold(0.0, f64::max);
    let nearest = places.iter().map(away).filter(|away| *away > shank.value).fold(furthest, f64::min);
    let mut rise = |rest: Rest, grip: Grip, reach: f64, clearance: Length| {
        let bows = held::pane_bows(prepared, layer, rest, (&places, shank.value), grip, youngs_modulus)?;
        let Some((strain, error)) = bows else { return Ok(None) };
        let outcome = sheet.run(&CriticalRise {
            expansion,
            other_expansion,
            held_length: si(2.0 * reach),
            clearance,
            critical_strain: strain.min(0.5),
        })?;
        sheet.note(
            &format!("rise that takes up the clearance, {}", rest.name()),
            outcome.rise_to_contact.value,
            Measure::DIFFERENCE,
        );
        let beyond = outcome.rise_beyond_contact.value;
        sheet.note(
            &format!("rise beyond it that bows the pane, {}", rest.name()),
            beyond,
            Measure::DIFFERENCE,
        );
        sheet.note(&format!("its error, {}", rest.name()), error, Measure::Percent);
        Ok::<Option<(CriticalRiseOutcome, f64)>, NotChecked>(Some((outcome, error)))
    };
    // Friction holds a clamped pane from the first degree; what floats is free until its furthest hole touches.
    let play = if floats { clearance } else { si(0.0) };
    let low = rise(Rest::BetweenEdges, Grip::BothWays, furthest, play)?;
    // The pane is pressed all over once its nearest hole touches, and then along the way to the origin at least.
    let high = rise(Rest::FlatAndFree, Grip::Outward, nearest, clearance)?;
    sheet.solved(held::PANEL_SOLVER);
    let (Some((low, low_error)), Some((high, high_error))) = (low, high) else {
        let practice = Origin::Published(Source::common_practice("a layer that is not pressed does not bow"));
        return Ok(sheet.rule("no screw presses it", needs, Ruling::Holds, practice));
    };
    if let Ok(bows) = buckling(prepared, layer, faster, &mut sheet) {
        let supported = bows.critical_temperature_rise.value;
        sheet.note(
            "plate held all along a supported edge, rise that bows it",
            supported,
            Measure::DIFFERENCE,
        );
    }
    sheet.say("Panel solver: the pane held in its plane at its screws alone, between two limits. The softer rests between two edges along its free span, and each screw holds it both ways once the first touches (from the start, where it is clamped); in the firmer its lap is flat, and the screws press it along the way to the origin once the last touches.");
    sheet.say("The growth apart, moisture included, is given as the rise of pane and holder together that makes it. A pane that is not flat bows from the start, and more and more.");
    sheet.at("rise of pane and holder together that bows the pane");
    sheet.advise(hole, "larger holes, on shoulder bushes, one fixed and one slot");
    let origin = Origin::Design(format!("growth of layers.{} against what holds it", layer.name));
    let finding = Finding::Number {
        low: low.critical_rise.value - low_error * low.rise_beyond_contact.value,
        high: high.critical_rise.value + high_error * high.rise_beyond_contact.value,
        measure: Measure::DIFFERENCE,
        bound: Bound::AtLeast { limit: apart / faster.value },
    };
    Ok(sheet.finish(finding, origin))
}
