//! A bay that was closed and then warms.

use coaming::prelude::*;
use coaming::thermal::{BayPressure, BayPressureOutcome};

use super::bay;
use crate::amount::{Amount, Measure, Phrase};
use crate::checks::{Subject, latch_forces};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin, Ruling};
use crate::document::Bay;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

pub(super) fn closed_bay(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let bay = bay(prepared)?;
    let vented = bay.vented.need(|| "service.bay.vented".to_owned())?;
    let mut sheet = Worksheet::new();
    let needs = "a bay that warms has a breather";
    let rule = Origin::Published(Source::common_practice("a bay that warms has a breather and a drain"));
    if vented {
        return Ok(sheet.rule("the bay breathes", needs, Ruling::Holds, rule));
    }
    let outcome = risen(prepared, bay, &mut sheet)?;
    sheet.note("rise by the dry gas", outcome.dry_gas_rise.value, Measure::PRESSURE);
    sheet.note("rise by the vapour", outcome.vapour_rise.value, Measure::PRESSURE);
    sheet.note("lift on the lid", outcome.lift.value, Measure::FORCE);
    sheet.note("lift on each latch", outcome.latch_lift.value, Measure::FORCE);
    sheet.note("force that throws the lid when the last latch lets go", outcome.lift.value, Measure::FORCE);
    sheet.advise("service.bay.vented", "a breather, and weep holes at the low points");
    let finds = Phrase::with(
        "closed, it rises by {} and lifts the lid with {}",
        [
            Amount { si: outcome.pressure_rise.value, measure: Measure::PRESSURE },
            Amount { si: outcome.lift.value, measure: Measure::FORCE },
        ],
    );
    let ruling = if outcome.pressure_rise.value > 0.0 { Ruling::Broken } else { Ruling::Holds };
    Ok(sheet.rule(finds, needs, ruling, rule))
}

/// The pressure of a bay that was closed and then warmed.
fn risen(
    prepared: &Prepared<'_>,
    bay: &Bay,
    sheet: &mut Worksheet,
) -> Result<BayPressureOutcome, NotChecked> {
    let closing_temperature = sheet.given("closed at", "service.bay.closed_at", bay.closed_at)?;
    let service_temperature = sheet.given("bay in operation", "service.bay.temperature", bay.temperature)?;
    let humidity = sheet.number("humidity in operation", "service.bay.humidity", bay.humidity)?;
    let path = prepared.seal()?.path.as_ref().ok_or_else(|| NotChecked::needs("seal.path"))?;
    let latches = prepared.cover.latches.as_ref().and_then(|latches| latches.count);
    sheet.run(&BayPressure {
        closing_temperature,
        closing_humidity: ambient_humidity(bay)?,
        closing_pressure: pascal(101_325.0),
        service_temperature,
        service_humidity: humidity,
        lid_area: si(path.area()),
        latches: latches.need(|| "latches.count".to_owned())?,
    })
}

/// What a latch carries while the bay is under pressure: its share of the gasket and of the lift.
pub(super) fn closed_bay_latch(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let bay = bay(prepared)?;
    let vented = bay.vented.need(|| "service.bay.vented".to_owned())?;
    let mut sheet = Worksheet::new();
    if vented {
        let rule = Origin::Published(Source::common_practice("a bay that breathes does not lift its lid"));
        return Ok(sheet.rule("the bay breathes", "no lift on the latches", Ruling::Holds, rule));
    }
    let outcome = risen(prepared, bay, &mut sheet)?;
    let lift = outcome.latch_lift.value.max(0.0);
    sheet.note("lift on each latch", lift, Measure::FORCE);
    let forces = latch_forces(prepared, &mut sheet)?;
    let load = prepared.cover.latches.as_ref().and_then(|latches| latches.working_load);
    let load = sheet.given("maker's working load", "latches.working_load", load)?;
    let [low, high] = forces.map(|force| force.latch_force.value + lift);
    sheet.advise("service.bay.vented", "a breather, and weep holes at the low points");
    let bound = Bound::AtMost { limit: load.value, marginal_above: None };
    let finding = Finding::Number { low, high, measure: Measure::FORCE, bound };
    Ok(sheet.finish(finding, Origin::Maker("latches.working_load".to_owned())))
}

/// Humidity of the bay when it was closed.
fn ambient_humidity(bay: &Bay) -> Result<f64, NotChecked> {
    bay.closed_at_humidity.need(|| "service.bay.closed_at_humidity".to_owned())
}
