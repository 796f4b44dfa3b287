//! A hand that leans on the sheet, at the place that takes it worst.

use coaming::plate::{EdgeSupport, RectangularPlatePatch};
use coaming::prelude::*;
use coaming_panel::Load;

use super::lid::{factor, thicker};
use super::lid_sag::{beyond, stress_band, tell_foot, yields};
use super::pane::lean_case;
use super::solved::{each, tell_model};
use super::{Subject, lid_plate, name};
use crate::amount::Measure;
use crate::demand::{Bound, Demand, Finding, NotChecked};
use crate::document::{Layer, LayerRole};
use crate::held::{self, Firmness, Joined, Setup, even_about, room_for};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Stress under a leaning hand against yield. The place is searched for on the sheet alone, which is softer than any real lid;
/// there the lid is solved at all its limits.
pub(super) fn lean(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let case = lean_case(prepared, layer)?;
    let force = sheet.given("hand force", "load_cases.lean.force", case.force)?.value
        * factor(&mut sheet, case.factor);
    let side = sheet.given("side of the patch", "load_cases.lean.patch", case.patch)?.value;
    let (limit, origin) = yields(prepared, layer, &mut sheet)?;
    let place = worst_place(prepared, layer, force, side)?;
    let load = held::lean(place, force, side);
    let states = each(&mut sheet, |setup, sheet| held::under(prepared, setup, &load, sheet))?;
    let (low, high) = stress_band(prepared, &states, |_| load.clone(), &mut sheet)?;
    for (label, value) in [("centre of the hand, x", place.0), ("centre of the hand, y", place.1)] {
        sheet.note(label, value, Measure::LENGTH);
    }
    for state in &states {
        let found = &state.found;
        sheet.note(&format!("largest deflection, {}", state.name), found.deflection.value, Measure::LENGTH);
    }
    sheet.say("The place was searched for on the sheet alone, to first order about the closed lid on a coarse mesh: on an even grid, then about the two worst of it; between those two the solution on finer meshes decides.");
    tell_foot(&mut sheet);
    tell_model(prepared, &mut sheet);
    closed_form(prepared, layer, force, side, &mut sheet);
    let deflection = states.iter().map(|state| state.found.deflection.value.abs()).fold(0.0, f64::max);
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    thicker(&mut sheet, layer, thickness, high / limit);
    let bound = Bound::AtMost { limit, marginal_above: None };
    let demand = sheet.finish(Finding::Number { low, high, measure: Measure::STRESS, bound }, origin);
    match deflection > 0.5 * thickness.value {
        true => Err(beyond(demand, deflection / thickness.value)),
        false => Ok(demand),
    }
}

/// The hand where it stresses the sheet alone most.
pub(super) fn worst_load(prepared: &Prepared<'_>) -> Result<Load, NotChecked> {
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    let layer = skin.ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))?;
    let case = lean_case(prepared, layer)?;
    let mut sheet = Worksheet::new();
    let force = sheet.given("hand force", "load_cases.lean.force", case.force)?.value;
    let force = force * factor(&mut sheet, case.factor);
    let side = sheet.given("side of the patch", "load_cases.lean.patch", case.patch)?.value;
    Ok(held::lean(worst_place(prepared, layer, force, side)?, force, side))
}

/// The solid plate on a rigid seal line with the hand at its centre, for the long story.
fn closed_form(prepared: &Prepared<'_>, layer: &Layer, force: f64, side: f64, sheet: &mut Worksheet) {
    let Ok(plate) = lid_plate::plate(prepared, layer, sheet) else { return };
    let outcome = sheet.run(&RectangularPlatePatch {
        length: plate.width,
        width: plate.height,
        thickness: plate.thickness,
        youngs_modulus: plate.youngs_modulus,
        poissons_ratio: plate.poissons_ratio,
        edge_support: EdgeSupport::Supported,
        force: si(force),
        patch_length: si(side),
        patch_width: si(side),
        patch_centre_along_length: si(plate.width.value / 2.0),
        patch_centre_along_width: si(plate.height.value / 2.0),
    });
    if let Ok(outcome) = outcome {
        sheet.note(
            "solid plate, deflection, linear",
            outcome.largest_deflection.value.abs(),
            Measure::LENGTH,
        );
        sheet.note("solid plate, stress, linear", outcome.largest_stress.value, Measure::STRESS);
    }
}

/// The centre of the patch that stresses the sheet alone most: looked for to first order about the closed lid on a coarse
/// mesh, and decided between the two that stand out there by what the hand does on meshes that are fine enough.
fn worst_place(
    prepared: &Prepared<'_>,
    layer: &Layer,
    force: f64,
    side: f64,
) -> Result<(f64, f64), NotChecked> {
    let softest = Setup::new(Joined::SheetAlone, Firmness::Firmest);
    let roughly = |places: Vec<(f64, f64)>| {
        let hands: Vec<Load> = places.iter().map(|place| held::lean(*place, force, side)).collect();
        let stresses = held::stress_nearby(prepared, softest, &hands)?;
        Ok::<Vec<((f64, f64), f64)>, NotChecked>(places.into_iter().zip(stresses).collect())
    };
    let (places, mut step) = grid(prepared, layer, side);
    let mut known = roughly(places)?;
    for _ in 0..HALVINGS {
        step = (step.0 / 2.0, step.1 / 2.0);
        let mut about = Vec::new();
        for (x, y) in two_worst(&known) {
            about.extend([(x - step.0, y), (x + step.0, y), (x, y - step.1), (x, y + step.1)]);
        }
        let new =
            |next: &(f64, f64)| room_for(layer, *next, side) && !known.iter().any(|(place, _)| place == next);
        let about: Vec<(f64, f64)> = about.into_iter().filter(new).collect();
        known.extend(roughly(about)?);
    }
    let mut worst: Option<((f64, f64), f64)> = None;
    for place in two_worst(&known) {
        let hand = held::lean(place, force, side);
        let found = held::under(prepared, softest, &hand, &mut Worksheet::new())?.stress.value;
        if worst.is_none_or(|(_, known)| found > known) {
            worst = Some((place, found));
        }
    }
    worst
        .map(|(place, _)| place)
        .ok_or_else(|| NotChecked::not_calculated("a hand on a sheet that has no room for it"))
}

/// The two places of most stress, the worst first; of places that are alike the first.
fn two_worst(known: &[((f64, f64), f64)]) -> Vec<(f64, f64)> {
    let mut order: Vec<&((f64, f64), f64)> = known.iter().collect();
    order.sort_by(|one, other| other.1.total_cmp(&one.1));
    order.into_iter().take(2).map(|one| one.0).collect()
}

/// How often the step of the grid is halved about its worst place.
const HALVINGS: usize = 2;
/// Most places along one side of the grid.
const MOST: usize = 9;

/// Centres of the patch on an even grid, a patch and a quarter apart, with the grid's steps. Of places that mirror each
/// other on a lid that is even about its middle, one stands.
fn grid(prepared: &Prepared<'_>, layer: &Layer, side: f64) -> (Vec<(f64, f64)>, (f64, f64)) {
    let ((left, right), (bottom, top)) = held::reach(layer);
    let steps = |low: f64, high: f64| {
        let room = (high - low - side).max(0.0);
        let mut count = 1;
        while count < MOST && room / count as f64 > 1.25 * side {
            count += 1;
        }
        (low + side / 2.0, room / count as f64, count)
    };
    let ((x, dx, across), (y, dy, up)) = (steps(left, right), steps(bottom, top));
    let (even_x, even_y) = even_about(prepared, layer);
    let (last_x, last_y) = (if even_x { across / 2 } else { across }, if even_y { up / 2 } else { up });
    let places = (0..=last_y).flat_map(|j| (0..=last_x).map(move |i| (i, j)));
    let centres = places.map(|(i, j)| (x + dx * i as f64, y + dy * j as f64));
    (centres.filter(|place| room_for(layer, *place, side)).collect(), (dx, dy))
}
