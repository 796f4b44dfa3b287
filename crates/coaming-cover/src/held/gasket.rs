//! The gasket's law at both ends of its band.

use coaming::gasket::{PublishedLimits, SpongeGrade};
use coaming::prelude::*;
use coaming_panel::{Gasket, Law};

use super::outline::outline;
use super::setup::{Firmness, Setup};
use crate::checks::seal_grade;
use crate::demand::{Need, NotChecked};
use crate::document::Seal;
use crate::panel::closed as round;
use crate::prepared::Prepared;

/// Compressions at which a grade's law is taken; the solver joins them without ever falling.
const STEPS: [f64; 13] = [0.0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7];

/// Compression in metres against line force in newtons per metre.
type Points = Vec<(f64, f64)>;

/// The gasket of a setup along its path, closed to the height that stops or latches set.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn gasket(prepared: &Prepared<'_>, setup: Setup) -> Result<Gasket, NotChecked> {
    let seal = prepared.seal()?;
    let path = seal.path.as_ref().ok_or_else(|| NotChecked::needs("seal.path"))?;
    let free = seal.free_height.need(|| "seal.free_height".to_owned())?;
    let closed = seal
        .stop_height
        .or(seal.closed_height)
        .need(|| "seal.stop_height or seal.closed_height".to_owned())?;
    Ok(Gasket {
        line: round(outline(path, None)),
        law: Law::Points(law(prepared, seal, setup.firmness)?),
        free_height: setup.recovered.unwrap_or(free.value),
        closed_gap: closed.value,
        gap_error: Vec::new(),
    })
}

/// One law of the gasket. A strip that has taken a set presses from its recovered height on as a new one does.
fn law(prepared: &Prepared<'_>, seal: &Seal, firmness: Firmness) -> Result<Points, NotChecked> {
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
        return Ok(points);
    }
    let name =
        seal.material.need(|| "seal.curve, seal.pressure_at_25_percent or seal.material".to_owned())?;
    prepared.material(&name, "seal.material")?;
    let (grade, sponge_class) =
        seal_grade(&name).ok_or_else(|| NotChecked::needs("seal.curve or seal.pressure_at_25_percent"))?;
    let at = |compression: f64| {
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
        let force = match firmness {
            Firmness::Softest => outcome.line_force_min,
            Firmness::Firmest => outcome.line_force_max,
        };
        Ok((compression * free_height.value, force.value))
    };
    STEPS.into_iter().map(at).collect()
}
