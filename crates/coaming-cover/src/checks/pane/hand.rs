//! A hand on the pane, where it does most: how far the pane bows, and what that stresses.

use coaming::plate::{EdgeSupport, RectangularPlatePatch, RectangularPlatePatchOutcome};
use coaming::prelude::*;
use coaming_panel::Load;

use crate::amount::Measure;
use crate::checks::pane::states::{
    Limit, State, at_room_temperature, deflection_band, furthest, strength, stress_band, stretch, tell_model,
    under,
};
use crate::checks::pane::{lean_case, span, thicker};
use crate::checks::solved::or_beyond;
use crate::checks::{Subject, name};
use crate::demand::{Bound, Demand, Finding, NotChecked};
use crate::document::{Layer, Outline};
use crate::held;
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// A hand: its force in newtons, and the side of its patch in metres.
#[derive(Clone, Copy)]
pub(super) struct Hand {
    force: f64,
    side: f64,
}

/// The hand that leans on a pane.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn hand(
    prepared: &Prepared<'_>,
    layer: &Layer,
    sheet: &mut Worksheet,
) -> Result<Hand, NotChecked> {
    let case = lean_case(prepared, layer)?;
    let force = sheet.given("hand force", "load_cases.lean.force", case.force)?.value
        * crate::checks::lid::factor(sheet, case.factor);
    let side = sheet.given("side of the patch", "load_cases.lean.patch", case.patch)?.value;
    Ok(Hand { force, side })
}

/// The pane under its hand at the centre by the closed form, and its shorter free span.
pub(super) fn closed_form(
    prepared: &Prepared<'_>,
    layer: &Layer,
    sheet: &mut Worksheet,
) -> Result<(RectangularPlatePatchOutcome, f64), NotChecked> {
    let Hand { force, side } = hand(prepared, layer, sheet)?;
    let (width, height) = span(layer, sheet)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let material = prepared.material_of(layer)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    let outcome = sheet.run(&RectangularPlatePatch {
        length: width,
        width: height,
        thickness,
        youngs_modulus,
        poissons_ratio,
        edge_support: EdgeSupport::Supported,
        force: si(force),
        patch_length: si(side),
        patch_width: si(side),
        patch_centre_along_length: si(width.value / 2.0),
        patch_centre_along_width: si(height.value / 2.0),
    })?;
    Ok((outcome, width.value.min(height.value)))
}

/// The closed form beside the solver's number, for the long story: what it refuses takes nothing from the row.
fn beside(prepared: &Prepared<'_>, layer: &Layer, sheet: &mut Worksheet) {
    if let Ok((outcome, _)) = closed_form(prepared, layer, sheet) {
        let deflection = outcome.largest_deflection.value.abs();
        sheet.note("supported plate, hand at its centre, deflection, linear", deflection, Measure::LENGTH);
        let stress = outcome.largest_stress.value.abs();
        sheet.note("supported plate, hand at its centre, stress, linear", stress, Measure::STRESS);
    }
}

/// What a search for the worst place of a hand looks at.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Worst {
    Deflection,
    Stress,
}

/// The hand where it does most to a pane at one limit: searched for on a coarse mesh, by linear theory and, for the stress of a pane
/// that bends past half its thickness, by large deflection. Deflections are compared by linear theory alone.
fn worst_load(
    prepared: &Prepared<'_>,
    layer: &Layer,
    limit: &Limit,
    hand: Hand,
    worst: Worst,
) -> Result<Load, NotChecked> {
    let of = |found: &held::Found| match worst {
        Worst::Deflection => found.deflection.value.abs(),
        Worst::Stress => found.stress.value,
    };
    let thickness = limit.panel.layers.first().map_or(0.0, |pane| pane.thickness);
    let load = |place| held::lean(place, hand.force, hand.side);
    let mut tried: Vec<(Load, f64)> = Vec::new();
    let mut far = false;
    for place in places(layer, hand.side)? {
        let found = held::pane_on_first_mesh(prepared, &limit.roughly, &load(place))?;
        far |= found.deflection.value.abs() > 0.5 * thickness;
        tried.push((load(place), of(&found)));
    }
    if far && worst == Worst::Stress {
        for (load, size) in &mut tried {
            let found = held::pane_roughly_stretched(prepared, &limit.roughly, load)?;
            *size = of(&found);
        }
    }
    let mut found: Option<(Load, f64)> = None;
    for (load, size) in tried {
        // Of places alike the first stays, and the centre comes first.
        if found.as_ref().is_none_or(|(_, known)| size > *known) {
            found = Some((load, size));
        }
    }
    found.map(|(load, _)| load).ok_or_else(no_room)
}

fn no_room() -> NotChecked {
    NotChecked::not_calculated("a hand on a pane that has no room for it")
}

/// Centres of the patch within the free span, the middle first: five each way. Where the pane is even about its middle, one of
/// each four that mirror each other.
fn places(layer: &Layer, side: f64) -> Result<Vec<(f64, f64)>, NotChecked> {
    let ((width, height), (x, y)) = (held::span_size(layer)?, held::centre(layer));
    let (dx, dy) = (0.25 * (width - side).max(0.0), 0.25 * (height - side).max(0.0));
    let even =
        !matches!(layer.outline, Outline::Polygon(_)) && layer.cut_outs.iter().flatten().next().is_none();
    let steps: &[f64] = if even { &[0.0, -1.0, -2.0] } else { &[0.0, -1.0, -2.0, 1.0, 2.0] };
    let mut all = Vec::new();
    for j in steps {
        for i in steps {
            let place = (x + dx * i, y + dy * j);
            if !all.contains(&place) {
                all.push(place);
            }
        }
    }
    Ok(all)
}

/// The pane under its hand at both limits, and how far by linear theory over its thickness.
fn leaned(
    prepared: &Prepared<'_>,
    layer: &Layer,
    worst: Worst,
    sheet: &mut Worksheet,
) -> Result<(Vec<State>, f64, Option<NotChecked>), NotChecked> {
    let hand = hand(prepared, layer, sheet)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let limits = at_room_temperature(prepared, layer, sheet)?;
    let load = |limit: &Limit| worst_load(prepared, layer, limit, hand, worst);
    let mut states = under(prepared, limits, load, sheet)?;
    let furthest = furthest(&states);
    let unsolved = stretch(prepared, &mut states, thickness.value, sheet);
    sheet.say("The place of the hand is the worst of an even grid over the free span, for each limit its own, on a coarse mesh, the pane between two edges instead of resting on one: of the deflection by linear theory, of the stress past half the thickness by large deflection.");
    tell_model(layer, sheet);
    beside(prepared, layer, sheet);
    Ok((states, furthest, unsolved))
}

/// Largest deflection of the pane under its hand, against a share of its shorter free span.
pub(super) fn deflection(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let (width, height) = span(layer, &mut sheet)?;
    let (states, linear, unsolved) = leaned(prepared, layer, Worst::Deflection, &mut sheet)?;
    let (low, high) = deflection_band(&states, &mut sheet);
    let (share, origin) = practice(prepared.limits.pane_deflection());
    let limit = share * width.value.min(height.value);
    if high > limit {
        thicker(&mut sheet, layer, linear / limit)?;
    }
    let bound = Bound::AtMost { limit, marginal_above: None };
    let demand = sheet.finish(Finding::Number { low, high, measure: Measure::LENGTH, bound }, origin);
    or_beyond(demand, over_thickness(linear, layer), unsolved)
}

/// Largest principal stress in the pane under its hand, against what it bears for a moment.
pub(super) fn stress(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let (limit, origin) = strength(&*prepared.material_of(layer)?, &mut sheet)?;
    let (states, linear, unsolved) = leaned(prepared, layer, Worst::Stress, &mut sheet)?;
    let (low, high) = stress_band(prepared, &states, &mut sheet)?;
    if high > limit {
        thicker(&mut sheet, layer, high / limit)?;
    }
    let bound = Bound::AtMost { limit, marginal_above: None };
    let demand = sheet.finish(Finding::Number { low, high, measure: Measure::STRESS, bound }, origin);
    or_beyond(demand, over_thickness(linear, layer), unsolved)
}

/// The largest stress in the pane under its hand at its firmest, in pascals, with its error added; the reason where it is past
/// half its thickness and could not be solved for that.
pub(super) fn firmest_stress(
    prepared: &Prepared<'_>,
    layer: &Layer,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    let (states, _, unsolved) = leaned(prepared, layer, Worst::Stress, sheet)?;
    if let Some(why) = unsolved {
        return Err(why);
    }
    let firmest = states.last().ok_or_else(no_room)?;
    Ok(firmest.found.stress.value + super::states::stress_error(prepared, firmest)?)
}

/// A length over the pane's thickness.
fn over_thickness(length: f64, layer: &Layer) -> f64 {
    layer.thickness.map_or(0.0, |thickness| length / thickness.value)
}
