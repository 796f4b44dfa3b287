//! A hand that leans on the sheet, at the place that takes it worst.

use coaming::plate::{EdgeSupport, RectangularPlatePatch};
use coaming::prelude::*;
use coaming_panel::Load;

use crate::amount::Measure;
use crate::checks::lid::plate;
use crate::checks::lid::sag::{stress_band, tell_foot, yields};
use crate::checks::lid::{factor, thicker};
use crate::checks::pane::lean_case;
use crate::checks::solved::{judged, tell_model, under};
use crate::checks::{Subject, name};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked};
use crate::document::{Layer, LayerRole};
use crate::held::{self, Firmness, Joined, Setup, beside_cut_outs, even_about, room_for};
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
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let place = worst_place(prepared, layer, (force, side), thickness.value)?;
    let load = held::lean(place, force, side);
    let linear = under(prepared, &mut sheet, |setup| (setup, load.clone()))?;
    let (states, beyond) = judged(prepared, linear, &mut sheet)?;
    let (low, high) = stress_band(prepared, &states, &mut sheet)?;
    for (label, value) in [("centre of the hand, x", place.0), ("centre of the hand, y", place.1)] {
        sheet.note(label, value, Measure::LENGTH);
    }
    for state in &states {
        let found = &state.found;
        sheet.note(&format!("largest deflection, {}", state.name), found.deflection.value, Measure::LENGTH);
    }
    sheet.say("The place was searched for on the sheet alone, on a coarse mesh: on an even grid and beside its cut-outs by linear theory, then about the worst of it, by large deflection where the sheet bends past half its thickness.");
    tell_foot(&mut sheet);
    tell_model(prepared, &mut sheet);
    closed_form(prepared, layer, force, side, &mut sheet);
    thicker(&mut sheet, layer, thickness, high / limit);
    let bound = Bound::AtMost { limit, marginal_above: None };
    let demand = sheet.finish(Finding::Number { low, high, measure: Measure::STRESS, bound }, origin);
    beyond.judge(demand)
}

/// The hand where it stresses the sheet alone most.
pub(in crate::checks) fn worst_load(prepared: &Prepared<'_>) -> Result<Load, NotChecked> {
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    let layer = skin.ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))?;
    let case = lean_case(prepared, layer)?;
    let mut sheet = Worksheet::new();
    let force = sheet.given("hand force", "load_cases.lean.force", case.force)?.value;
    let force = force * factor(&mut sheet, case.factor);
    let side = sheet.given("side of the patch", "load_cases.lean.patch", case.patch)?.value;
    let thickness = layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?.value;
    Ok(held::lean(worst_place(prepared, layer, (force, side), thickness)?, force, side))
}

/// The solid plate on a rigid seal line with the hand at its centre, for the long story.
fn closed_form(prepared: &Prepared<'_>, layer: &Layer, force: f64, side: f64, sheet: &mut Worksheet) {
    let Ok(plate) = plate::plate(prepared, layer, sheet) else { return };
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

/// The centre of the patch that stresses the sheet alone most: searched for on a coarse mesh by linear theory, and where that
/// bends the sheet past half its thickness by large deflection, from the worst few places on.
fn worst_place(
    prepared: &Prepared<'_>,
    layer: &Layer,
    (force, side): (f64, f64),
    thickness: f64,
) -> Result<(f64, f64), NotChecked> {
    let softest = Setup::new(Joined::SheetAlone, Firmness::Firmest);
    let load = |place: (f64, f64)| held::lean(place, force, side);
    let linear = |place| held::on_first_mesh(prepared, softest, &load(place));
    let (places, step) = grid(prepared, layer, side);
    let mut stressed: Vec<((f64, f64), f64, f64)> = Vec::new();
    for place in places {
        let found = linear(place)?;
        stressed.push((place, found.stress.value, found.deflection.value.abs()));
    }
    // A stable sort: of places alike the first stays.
    stressed.sort_by(|one, other| other.1.total_cmp(&one.1));
    let far = stressed.iter().any(|(_, _, deflection)| *deflection > 0.5 * thickness);
    let stress = |place| match far {
        true => held::roughly_stretched(prepared, softest, &load(place)).map(|found| found.stress.value),
        false => linear(place).map(|found| found.stress.value),
    };
    let mut worst: Option<((f64, f64), f64)> = None;
    for (place, linear, _) in stressed.into_iter().take(if far { FEW } else { 1 }) {
        let found = if far { stress(place)? } else { linear };
        if worst.is_none_or(|(_, known)| found > known) {
            worst = Some((place, found));
        }
    }
    let Some(worst) = worst else {
        return Err(NotChecked::not_calculated("a hand on a sheet that has no room for it"));
    };
    about(layer, side, worst, step, stress)
}

/// A worse place about a known one, in steps that are halved.
fn about(
    layer: &Layer,
    side: f64,
    (mut place, mut known): ((f64, f64), f64),
    mut step: (f64, f64),
    stress: impl Fn((f64, f64)) -> Result<f64, NotChecked>,
) -> Result<(f64, f64), NotChecked> {
    for _ in 0..HALVINGS {
        step = (step.0 / 2.0, step.1 / 2.0);
        let (x, y) = place;
        let about = [(x - step.0, y), (x + step.0, y), (x, y - step.1), (x, y + step.1)];
        for next in about.into_iter().filter(|next| room_for(layer, *next, side)) {
            let found = stress(next)?;
            if found > known {
                (place, known) = (next, found);
            }
        }
    }
    Ok(place)
}

/// How many of the worst places by linear theory are tried by large deflection.
const FEW: usize = 4;
/// How often the step of the grid is halved about its worst place.
const HALVINGS: usize = 2;
/// Most places along one side of the grid.
const MOST: usize = 9;

/// Centres of the patch on an even grid, a patch and a quarter apart, and beside the cut-outs, with the grid's steps. Of places that mirror each
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
    let on_grid = centres.filter(|place| room_for(layer, *place, side));
    // The same half or quarter of what lies beside the cut-outs.
    let slack = 1e-9;
    let (middle_x, middle_y) = (0.5 * (left + right) + slack, 0.5 * (bottom + top) + slack);
    let kept = |place: &(f64, f64)| !(even_x && place.0 > middle_x || even_y && place.1 > middle_y);
    let beside = beside_cut_outs(layer, side).into_iter().filter(kept);
    (on_grid.chain(beside).collect(), (dx, dy))
}
