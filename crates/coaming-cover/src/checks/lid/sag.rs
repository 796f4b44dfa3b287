//! How far wind bows the lid as it is held, by gasket and latches, and what that stresses.

use crate::amount::{Amount, Measure};
use crate::checks::lid::plate;
use crate::checks::lid::{pressure, thicker};
use crate::checks::solved::{State, at, highest, judged, metres, nothing, tell_model, tell_pulls, under};
use crate::checks::{Subject, name};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin};
use crate::document::{Layer, LoadKind};
use crate::held::{self, FOOT};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The lid at every limit under the wind of a load case, and that wind's pressure, positive inward.
fn blown(
    prepared: &Prepared<'_>,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<(Vec<State>, f64), NotChecked> {
    let size = pressure(prepared, kind, sheet)?;
    let inward = if kind == LoadKind::WindOut { -size } else { size };
    let states = under(prepared, sheet, |setup| (setup, held::wind(prepared, setup.joined, inward)))?;
    Ok((states, inward))
}

/// Largest deflection of the lid from the plane of its latches, against a share of the shorter side.
pub(super) fn wind(prepared: &Prepared<'_>, subject: &Subject, kind: LoadKind) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let path = prepared.seal()?.path.as_ref().ok_or_else(|| NotChecked::needs("seal.path"))?;
    let (width, height) = path.box_size();
    let (share, origin) = practice(prepared.limits.cover_deflection());
    let limit = share * width.min(height);
    let thickness = layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?;
    let (linear, inward) = blown(prepared, kind, &mut sheet)?;
    let (states, beyond) = judged(prepared, linear, &mut sheet)?;
    let sag = highest(&states, |found| (found.deflection.value.abs(), found.deflection_error()));
    let (low, high, worst) = sag.ok_or_else(nothing)?;
    let place = worst.found.deflection;
    sheet.at(at("{} from the plane of the latches", metres(place.value), place));
    for state in &states {
        let found = &state.found;
        sheet.note(&format!("largest deflection, {}", state.name), found.deflection.value, Measure::LENGTH);
        sheet.note(
            &format!("error of the deflection, {}", state.name),
            found.deflection_error(),
            Measure::LENGTH,
        );
    }
    tell_pulls(&mut sheet, &states);
    tell_model(prepared, &mut sheet);
    sheet.say("The deflection counts from the plane of the latches, the bow of the closed lid included; the wind acts on the whole outer face, evenly.");
    // A solid plate on a rigid seal line, for comparison: what it refuses takes nothing from the row.
    if let Ok(plate) = plate::plate(prepared, layer, &mut sheet) {
        let _ = plate::sag(prepared, &mut sheet, &plate, inward);
    }
    thicker(&mut sheet, layer, thickness, high / limit);
    let bound = Bound::AtMost { limit, marginal_above: None };
    let finding = Finding::Number { low: low.max(0.0), high, measure: Measure::LENGTH, bound };
    beyond.judge(sheet.finish(finding, origin))
}

/// Largest principal stress in the sheet against its yield strength.
pub(super) fn stress(
    prepared: &Prepared<'_>,
    subject: &Subject,
    kind: LoadKind,
) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let (limit, origin) = yields(prepared, layer, &mut sheet)?;
    let thickness = layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?;
    let (linear, _) = blown(prepared, kind, &mut sheet)?;
    let (states, beyond) = judged(prepared, linear, &mut sheet)?;
    let (low, high) = stress_band(prepared, &states, &mut sheet)?;
    tell_foot(&mut sheet);
    tell_model(prepared, &mut sheet);
    let furthest = highest(&states, |found| (found.deflection.value.abs(), 0.0)).ok_or_else(nothing)?.1;
    sheet.note("largest deflection", furthest, Measure::LENGTH);
    thicker(&mut sheet, layer, thickness, high / limit);
    let bound = Bound::AtMost { limit, marginal_above: None };
    let demand = sheet.finish(Finding::Number { low, high, measure: Measure::STRESS, bound }, origin);
    beyond.judge(demand)
}

/// The band of the largest stress in the sheet over the lid's limits, each widened by what refinement made of it, and by no less
/// than the share by which the deflection may be off: where the meshes were refined for other loads, little may have changed. The solver's own
/// estimate for moments is that of the largest, which stands under a latch, where no stress is looked at.
pub(super) fn stress_band(
    prepared: &Prepared<'_>,
    states: &[State],
    sheet: &mut Worksheet,
) -> Result<(f64, f64), NotChecked> {
    let (mut low, mut high) = (f64::INFINITY, 0.0_f64);
    for state in states {
        let place = state.found.stress;
        let error = match state.stretched {
            Some(error) => error,
            None => {
                let first = held::stress_on_first_mesh(prepared, state.setup, &state.load)?;
                (place.value - first).abs().max(state.found.left.deflection_share * place.value)
            }
        };
        sheet.note(&format!("largest stress, {}", state.name), place.value, Measure::STRESS);
        sheet.note(&format!("error of the stress, {}", state.name), error, Measure::STRESS);
        low = low.min((place.value - error).max(0.0));
        if place.value + error > high {
            high = place.value + error;
            sheet.at(at(
                "{} at the worst place",
                Amount { si: place.value, measure: Measure::STRESS },
                place,
            ));
        }
    }
    sheet.say("The error of a stress is what refinement made of it, from the first mesh to the last, or the solver's own estimate for the largest moment, whichever is more. As one piece, a layer's sharp corner on the sheet has no largest stress in thin-plate theory: the stress is read beside it, and a real corner is rounded or held by screws.");
    Ok((low, high))
}

/// Yield strength of a layer, and that it is the limit.
pub(super) fn yields(
    prepared: &Prepared<'_>,
    layer: &Layer,
    sheet: &mut Worksheet,
) -> Result<(f64, Origin), NotChecked> {
    let material = prepared.material_of(layer)?;
    let yields = sheet.property(&material, "yield_strength", &material.yield_strength)?;
    Ok((yields.value, Origin::Design(format!("materials.{}.yield_strength", material.key))))
}

/// Where the stress is not looked at.
pub(super) fn tell_foot(sheet: &mut Worksheet) {
    sheet.note(
        "not looked at within so much of a latch or a sharp corner of a joined layer",
        FOOT,
        Measure::LENGTH,
    );
    sheet
        .say("Right at a latch its foot spreads the pull: the stress there is that of the foot's own shape.");
}
