//! Compression all round the closed seal: lid, gasket and latches solved together.

use crate::amount::Measure;
use crate::checks::Subject;
use crate::checks::seal::{gasket, kind, nominal_compression, window};
use crate::checks::solved::{
    at, closed, highest, judged, lowest, metres, nothing, tell_model, tell_pulls, tell_seal,
};
use crate::demand::{Bound, Demand, Finding, NotChecked};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Least compression along the whole seal line, closed and new, in the middle of all tolerances.
///
/// The band runs over the limits of the lid and of its gasket: a softer lid bows further, and a firmer gasket bows it more.
/// Each end is widened by the solver's own estimate of its error.
pub(super) fn least(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let seal = prepared.seal()?;
    let window = window(prepared, kind(seal, &mut sheet)?);
    // Notes width, curve or grade, and what is weak about them.
    gasket(prepared, &mut sheet)?;
    let (free, _, _) = nominal_compression(prepared, &mut sheet)?;
    let linear = closed(prepared, &mut sheet)?;
    let (states, beyond) = judged(prepared, linear, &mut sheet)?;
    let band = lowest(&states, |found| (found.least.value, found.left.compression));
    let (low, high, worst) = band.ok_or_else(nothing)?;
    let place = worst.found.least;
    sheet.at(at("{} at the worst place", metres(place.value), place));
    tell_seal(&mut sheet, &states);
    tell_pulls(&mut sheet, &states);
    tell_model(prepared, &mut sheet);
    sheet.advise("layers.bends", "return flanges or a thicker sheet, more latches, or a softer gasket");
    let (low, high) = (low / free.value, high / free.value);
    let bound = Bound::AtLeast { limit: window.least.0 };
    let finding = Finding::Number { low, high, measure: Measure::Percent, bound };
    beyond.judge(sheet.finish(finding, window.least.1))
}

/// Largest compression along the whole seal line, closed and new, in the middle of all tolerances.
pub(super) fn most(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let seal = prepared.seal()?;
    let window = window(prepared, kind(seal, &mut sheet)?);
    gasket(prepared, &mut sheet)?;
    let (free, _, _) = nominal_compression(prepared, &mut sheet)?;
    let linear = closed(prepared, &mut sheet)?;
    let (states, beyond) = judged(prepared, linear, &mut sheet)?;
    let band = highest(&states, |found| (found.most.value, found.left.compression));
    let (low, high, worst) = band.ok_or_else(nothing)?;
    let place = worst.found.most;
    sheet.at(at("{} at the tightest place", metres(place.value), place));
    tell_seal(&mut sheet, &states);
    tell_model(prepared, &mut sheet);
    sheet.advise("seal.stop_height", "higher stops, or a higher gasket");
    let (low, high) = (low / free.value, high / free.value);
    let bound = Bound::AtMost { limit: window.most.0, marginal_above: None };
    let finding = Finding::Number { low, high, measure: Measure::Percent, bound };
    beyond.judge(sheet.finish(finding, window.most.1))
}
