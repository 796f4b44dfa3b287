//! How much warmer one face of the skin is than the other.

use coaming::prelude::*;

use super::{Lined, ambient, bay, layers_at, stack, sunlit};
use crate::demand::NotChecked;
use crate::document::LoadKind;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// How much warmer the outer face of the bare skin is than its inner one, in kelvin: in the sun on the hottest day, or on the
/// hottest or coldest day without sun, with the bay in operation.
pub(in crate::checks) fn face_difference(
    prepared: &Prepared<'_>,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    let faces = if kind == LoadKind::Sun {
        sunlit(prepared, sheet, Lined::Bare)?
    } else {
        let inside = sheet.given("bay", "service.bay.temperature", bay(prepared)?.temperature)?;
        let weather = ambient(prepared)?;
        let (path, outside) = match kind {
            LoadKind::Cold => ("service.ambient.lowest", weather.lowest),
            _ => ("service.ambient.highest", weather.highest),
        };
        let outside = sheet.given("weather", path, outside)?;
        let sun = (watt_per_square_meter(0.0), 0.0);
        stack(prepared, sheet, (inside, outside), sun, &layers_at(prepared, Lined::Bare)?)?
    };
    Ok(faces.outer_face_temperature.value - faces.inner_face_temperature.value)
}
