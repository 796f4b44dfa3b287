//! A moment on the lid about a line in its plane.

use coaming_panel::{Load, Point, Pressure};

use super::lid::built;
use super::moments::Moments;
use super::setup::Setup;
use crate::demand::NotChecked;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// A direction in the cover's plane.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Along {
    /// To the right.
    X,
    /// Up.
    Y,
}

/// A moment that lifts what lies further along a direction, as a pressure that grows evenly along it and adds up to no force.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(crate) fn tilted(
    prepared: &Prepared<'_>,
    setup: Setup,
    along: Along,
    moment: f64,
) -> Result<Load, NotChecked> {
    let (_, parts) = built(prepared, setup, &mut Worksheet::new())?;
    let mut whole = Moments::default();
    for sheet in parts.stiff.iter().take(1) {
        whole = Moments::of(&sheet.outline, sheet.at.as_ref());
    }
    for cut in &parts.open {
        whole = whole.less(Moments::of(&cut.outline, cut.at.as_ref()));
    }
    let (first, second) = match along {
        Along::X => (whole.x, whole.xx),
        Along::Y => (whole.y, whole.yy),
    };
    let middle = first / whole.area;
    let slope = moment / (second - first * middle);
    let gradient = match along {
        Along::X => Point { x: slope, y: 0.0 },
        Along::Y => Point { x: 0.0, y: slope },
    };
    let pressure = Pressure { at_origin: -slope * middle, gradient, region: None };
    Ok(Load { pressures: vec![pressure], ..Load::default() })
}
