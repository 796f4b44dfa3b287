//! What is left of the seal's contact after a season, under wind, under acceleration and with a latch missing.

use coaming_panel::Load;

use crate::amount::Measure;
use crate::checks::Subject;
use crate::checks::ahead::thrown;
use crate::checks::latches::pulls::{tell_search, without, without_one, worst_missing};
use crate::checks::seal::recovery::season;
use crate::checks::seal::{gap, gasket, kind, nominal_compression, window};
use crate::checks::solved::{
    State, at, highest, judged, lowest, metres, nothing, tell_model, tell_pulls, tell_seal, under,
};
use crate::demand::{Bound, Demand, Finding, NotChecked, Origin};
use crate::document::LoadKind;
use crate::held::{self, Setup};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The worksheet with what every row of the loaded seal takes, and the deviations of the gap that it must follow.
pub(super) fn begin(prepared: &Prepared<'_>) -> Result<(Worksheet, f64), NotChecked> {
    let mut sheet = Worksheet::new();
    let window = window(prepared, kind(prepared.seal()?, &mut sheet)?);
    gasket(prepared, &mut sheet)?;
    let gap = gap(prepared, &mut sheet, &window)?.half_band.value;
    sheet.note("deviations of the gap, root-sum-square", gap, Measure::LENGTH);
    Ok((sheet, gap))
}

/// The least compression at the limits against the deviations of the gap: contact must be left where the gap is widest.
pub(super) fn contact_left(
    prepared: &Prepared<'_>,
    mut sheet: Worksheet,
    linear: Vec<State>,
    gap: f64,
) -> Result<Demand, NotChecked> {
    let (states, beyond) = judged(prepared, linear, &mut sheet)?;
    let band = lowest(&states, |found| (found.least.value, found.left.compression));
    let (low, high, worst) = band.ok_or_else(nothing)?;
    let place = worst.found.least;
    sheet.at(at("{} at the worst place", metres(place.value), place));
    tell_seal(&mut sheet, &states);
    tell_pulls(&mut sheet, &states);
    tell_model(prepared, &mut sheet);
    sheet.advise("layers.bends", "return flanges or a thicker sheet, more latches, or more compression");
    let origin =
        Origin::Design("contact must be left where the gap is widest by its own deviations".to_owned());
    let bound = Bound::AtLeast { limit: gap };
    beyond.judge(sheet.finish(Finding::Number { low, high, measure: Measure::LENGTH, bound }, origin))
}

/// Least compression while wind lifts the lid.
pub(super) fn wind_out(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let (mut sheet, gap) = begin(prepared)?;
    let pressure = crate::checks::lid::pressure(prepared, LoadKind::WindOut, &mut sheet)?;
    let states = under(prepared, &mut sheet, |setup| (setup, held::wind(prepared, setup.joined, -pressure)))?;
    sheet.say("The wind pulls on the whole outer face, evenly.");
    contact_left(prepared, sheet, states, gap)
}

/// Largest compression while wind presses the lid in, against the window's extreme.
pub(super) fn wind_in(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let window = window(prepared, kind(prepared.seal()?, &mut sheet)?);
    gasket(prepared, &mut sheet)?;
    let (free, _, _) = nominal_compression(prepared, &mut sheet)?;
    let pressure = crate::checks::lid::pressure(prepared, LoadKind::WindIn, &mut sheet)?;
    let linear = under(prepared, &mut sheet, |setup| (setup, held::wind(prepared, setup.joined, pressure)))?;
    let (states, beyond) = judged(prepared, linear, &mut sheet)?;
    let band = highest(&states, |found| (found.most.value, found.left.compression));
    let (low, high, worst) = band.ok_or_else(nothing)?;
    let place = worst.found.most;
    sheet.at(at("{} at the tightest place", metres(place.value), place));
    tell_seal(&mut sheet, &states);
    tell_model(prepared, &mut sheet);
    sheet.say("The wind presses on the whole outer face, evenly.");
    sheet.advise("seal.stop_height", "stops, or stops nearer to each other, or a firmer gasket");
    let bound = Bound::AtMost { limit: window.most.0, marginal_above: None };
    let (low, high) = (low / free.value, high / free.value);
    let finding = Finding::Number { low, high, measure: Measure::Percent, bound };
    beyond.judge(sheet.finish(finding, window.most.1))
}

/// Least compression while the cover is thrown outward.
pub(super) fn acceleration(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let (mut sheet, gap) = begin(prepared)?;
    let thrown = thrown(prepared, &mut sheet)?;
    let states = under(prepared, &mut sheet, |setup| (setup.weighed(), thrown.clone()))?;
    sheet.say(
        "All layers with their mass are thrown outward; screws, inserts, gasket and paint are left out.",
    );
    contact_left(prepared, sheet, states, gap)
}

/// How far the seal opens at its worst.
fn opens(found: &held::Found) -> f64 {
    -found.least.value
}

/// The want of the latch that opens the seal most.
pub(in crate::checks) fn worst_load(prepared: &Prepared<'_>) -> Result<Load, NotChecked> {
    worst_missing(prepared, opens).map(without)
}

/// Least compression with one latch open or broken.
pub(super) fn latch_missing(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let (mut sheet, gap) = begin(prepared)?;
    let (nth, states) = without_one(prepared, &mut sheet, opens)?;
    sheet.note("latch that is missing", f64::from(nth), Measure::Number);
    sheet.say("The row tells of the latch whose want opens the seal most.");
    tell_search(&mut sheet);
    contact_left(prepared, sheet, states, gap)
}

/// What the gasket still follows at the worst place after a season, with the lid's bow solved for.
pub(super) fn after_season(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    kind(prepared.seal()?, &mut sheet)?;
    gasket(prepared, &mut sheet)?;
    let season = season(prepared, &mut sheet, None)?;
    let recovered =
        |setup: Setup| (setup.recovered_to(season.outcome.recovered_height.value), Load::default());
    let linear = under(prepared, &mut sheet, recovered)?;
    let (states, beyond) = judged(prepared, linear, &mut sheet)?;
    let band = lowest(&states, |found| (found.least.value, found.left.compression));
    let (low, high, worst) = band.ok_or_else(nothing)?;
    let place = worst.found.least;
    sheet.at(at("{} still followed at the worst place", metres(place.value), place));
    tell_seal(&mut sheet, &states);
    tell_pulls(&mut sheet, &states);
    sheet.say("The bow of the lid is in the solution; flatness of the opening and what the gasket's own deviation lacks are in the limit. A gasket that has taken a set presses from its recovered height on as a new one does.");
    tell_model(prepared, &mut sheet);
    sheet.advise("seal.free_height", "a higher gasket or one of less set, a stiffer lid, a flatter seat");
    let bound = Bound::AtLeast { limit: season.due };
    let finding = Finding::Number { low, high, measure: Measure::LENGTH, bound };
    beyond.judge(sheet.finish(finding, season.origin))
}
