//! Dew on the inner face of skin and pane.

use coaming::prelude::*;
use coaming::thermal::DewPoint;

use super::{Lined, bay, layers_at, liners, stack};
use crate::amount::{Amount, Measure, Phrase};
use crate::checks::Subject;
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin};
use crate::document::Layer;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The inner face of the skin, where a liner covers it and where it leaves it bare.
pub(super) fn dew(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    sheet.advise("layers", "a liner, drier air, or drains for what runs down");
    let bare = faces_in_damp(prepared, &mut sheet, &layers_at(prepared, Lined::Bare)?)?;
    if liners(prepared).next().is_none() {
        return wet(prepared, sheet, [bare, bare]);
    }
    let lined = faces_in_damp(prepared, &mut sheet, &layers_at(prepared, Lined::Lined)?)?;
    sheet.note("inner face, lined", lined.value, Measure::TEMPERATURE);
    sheet.say("What the liner leaves bare, such as the rim and the seal line, is as cold as without it.");
    wet(prepared, sheet, [bare, lined])
}

/// Temperature of the inner face on a cool day with a damp bay, the sun away.
pub(super) fn faces_in_damp(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    layers: &[&Layer],
) -> Result<Temperature, NotChecked> {
    let bay = bay(prepared)?;
    let inside = sheet.given("bay", "service.bay.dew_temperature", bay.dew_temperature)?;
    let outside = sheet.given("weather", "service.bay.dew_ambient", bay.dew_ambient)?;
    let sun = (watt_per_square_meter(0.0), 0.0);
    Ok(stack(prepared, sheet, (inside, outside), sun, layers)?.inner_face_temperature)
}

/// A face, between its coldest and its warmest place, against the dew point of the bay.
pub(super) fn wet(
    prepared: &Prepared<'_>,
    mut sheet: Worksheet,
    [coldest, warmest]: [Temperature; 2],
) -> Result<Demand, NotChecked> {
    let bay = bay(prepared)?;
    let inside = sheet.given("bay", "service.bay.dew_temperature", bay.dew_temperature)?;
    let humidity = sheet.number("humidity", "service.bay.humidity", bay.humidity)?;
    let mut above = |face: Temperature| {
        let outcome = sheet.run(&DewPoint {
            air_temperature: inside,
            relative_humidity: humidity,
            face_temperature: Some(face),
        })?;
        let margin = outcome.face_margin.need(|| "service.bay".to_owned())?;
        Ok::<_, NotChecked>((margin.value, outcome.dew_point))
    };
    let (low, dew_point) = above(coldest)?;
    let (high, _) = above(warmest)?;
    sheet.note("dew point", dew_point.value, Measure::TEMPERATURE);
    sheet.note("inner face", coldest.value, Measure::TEMPERATURE);
    let temperature = |si: f64| Amount { si, measure: Measure::TEMPERATURE };
    let faces = [temperature(coldest.value), temperature(warmest.value), temperature(dew_point.value)];
    let [cold, _, dew] = faces;
    sheet.at(match coldest == warmest {
        true => Phrase::with("inner face above the dew point: {} and {}", [cold, dew]),
        false => Phrase::with("inner face above the dew point: bare {}, lined {}, and {}", faces),
    });
    let origin = Origin::Published(Source::common_practice("a face below the dew point gets wet"));
    let finding = Finding::Number {
        low: low.min(high),
        high: low.max(high),
        measure: Measure::DIFFERENCE,
        bound: Bound::AtLeast { limit: 0.0 },
    };
    Ok(sheet.finish(finding, origin))
}
