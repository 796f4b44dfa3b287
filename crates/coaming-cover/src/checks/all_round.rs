//! Compression all round the seal: lid, gasket and latches solved together.

use coaming::gasket::{PublishedLimits, SpongeGrade};
use coaming::prelude::*;
use coaming_panel::{Answer, Load, Settings, Solver};

use super::Subject;
use super::seal::{gasket, grade, kind, nominal_compression, window};
use crate::amount::{Amount, Measure, Phrase};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked};
use crate::document::Seal;
use crate::held::{Joined, Latched, PANEL_SOLVER, lid, refusal};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Least compression along the whole seal line, closed and new, in the middle of all tolerances.
///
/// The band runs from the softest lid on the firmest gasket to the stiffest lid on the softest gasket: a softer lid bows
/// further, and a firmer gasket bows it more. Each end is widened by the solver's own estimate of its error.
pub(super) fn least(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let seal = prepared.seal()?;
    let window = window(prepared, kind(seal, &mut sheet)?);
    // Notes width, curve or grade, and what is weak about them.
    gasket(prepared, &mut sheet)?;
    let (free, compressed, _) = nominal_compression(prepared, &mut sheet)?;
    let (soft, firm) = laws(prepared, seal)?;
    let closed = |law| Latched { law, free_height: free.value, closed_height: free.value - compressed.value };
    let stiffest = lid(prepared, Joined::OnePiece, closed(soft), &mut sheet)?;
    let softest = lid(prepared, Joined::SheetAlone, closed(firm), &mut Worksheet::new())?;
    let solve = |panel| {
        let mut solver = Solver::new(panel, SCREENING).map_err(|error| refusal(&error))?;
        solver.solve(&Load::default()).map_err(|error| refusal(&error))
    };
    let (stiffest, softest) = (solve(&stiffest)?, solve(&softest)?);
    sheet.solved(PANEL_SOLVER);
    let state = |answer: &Answer| {
        answer.gaskets.first().cloned().ok_or_else(|| NotChecked::not_calculated("a lid without a gasket"))
    };
    let (best, worst) = (state(&stiffest)?, state(&softest)?);
    let low = (worst.smallest.value - softest.error.compression) / free.value;
    let high = (best.smallest.value + stiffest.error.compression) / free.value;
    let metres = |si| Amount { si, measure: Measure::LENGTH };
    let place = worst.smallest.at;
    sheet.at(Phrase::with(
        "{} at the worst place, x {}, y {}",
        [metres(worst.smallest.value), metres(place.x), metres(place.y)],
    ));
    sheet.note("least compression, sheet alone", worst.smallest.value, Measure::LENGTH);
    sheet.note("seal line without contact, sheet alone", worst.open_length, Measure::LENGTH);
    sheet.note("least compression, one piece", best.smallest.value, Measure::LENGTH);
    for (name, answer) in [("sheet alone", &softest), ("one piece", &stiffest)] {
        for (nth, latch) in answer.latches.iter().enumerate() {
            sheet.note(&format!("pull of latch {}, {name}", nth + 1), latch.pull, Measure::FORCE);
        }
        sheet.note(&format!("error of the compression, {name}"), answer.error.compression, Measure::LENGTH);
        sheet.note(&format!("balance left over, {name}"), answer.balance.force, Measure::Number);
    }
    sheet.say("Panel solver: lid, gasket and latches together; linear in the deflection of the lid.");
    sheet.say("Window, frame and stiffeners join in somewhere between not at all (the sheet alone, its cut-outs open) and as one piece with the sheet.");
    sheet.say("Each latch holds its place at the closed height; flanges are beams joined at the corners; the lid's weight is left out.");
    if worst.beyond_law || best.beyond_law {
        sheet.say("Somewhere the gasket is compressed past its law's last point.");
    }
    sheet.advise("layers.bends", "return flanges or a thicker sheet, more latches, or a softer gasket");
    let bound = Bound::AtLeast { limit: window.least.0 };
    Ok(sheet.finish(Finding::Number { low, high, measure: Measure::Percent, bound }, window.least.1))
}

/// A compression is wanted to a hundredth of a millimetre, not to half a per cent of a bow that may be less than that: the
/// row is widened by the error that is left, and prints it.
const SCREENING: Settings = Settings { tolerance: 0.05, first_triangles: 120, most_triangles: 20_000 };

/// Compressions at which a grade's law is taken; the solver joins them without ever falling.
const STEPS: [f64; 13] = [0.0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7];

type Points = Vec<(f64, f64)>;

/// The softest and the firmest law of the gasket: compression in metres, line force in newtons per metre.
fn laws(prepared: &Prepared<'_>, seal: &Seal) -> Result<(Points, Points), NotChecked> {
    let free_height = seal.free_height.need(|| "seal.free_height".to_owned())?;
    let width = seal.width.need(|| "seal.width".to_owned())?;
    if let Some(curve) = &seal.curve {
        let mut points: Points = curve
            .iter()
            .map(|point| (point.compression * free_height.value, point.pressure.value * width.value))
            .collect();
        if points.first().is_some_and(|first| first.0 > 0.0) {
            points.insert(0, (0.0, 0.0));
        }
        return Ok((points.clone(), points));
    }
    let name =
        seal.material.need(|| "seal.curve, seal.pressure_at_25_percent or seal.material".to_owned())?;
    prepared.material(&name, "seal.material")?;
    let (grade, sponge_class) =
        grade(&name).ok_or_else(|| NotChecked::needs("seal.curve or seal.pressure_at_25_percent"))?;
    let (mut soft, mut firm) = (Points::new(), Points::new());
    for compression in STEPS {
        let situation = SpongeGrade {
            grade,
            sponge_class,
            published_limits: PublishedLimits::Psi,
            quarter_pressure: seal.pressure_at_25_percent,
            compression,
            width,
            free_height,
        };
        // Past the range of the stated shape the law is an estimate: the row's caveat comes from the nominal compression.
        let (outcome, _) = situation.calculate().map_err(NotChecked::Refused)?;
        soft.push((compression * free_height.value, outcome.line_force_min.value));
        firm.push((compression * free_height.value, outcome.line_force_max.value));
    }
    Ok((soft, firm))
}
