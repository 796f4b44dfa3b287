//! The layers on both faces of the sheet: how high each lies, and how it is held there.

use coaming::thermal::HoleRole;

use super::places::overlap;
use super::setup::Joined;
use crate::demand::{Need, NotChecked};
use crate::document::{Face, Joining, Layer};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// A layer other than the sheet, and where it lies along z.
pub(super) struct Stacked<'a> {
    /// The layer.
    pub(super) layer: &'a Layer,
    /// Height of its lower face above the sheet's inner face, in metres.
    pub(super) lower_face: f64,
    /// Its thickness, in metres.
    pub(super) thickness: f64,
}

/// The layers on both faces of the sheet, each on those before it that it lies over.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn stacked<'a>(
    prepared: &Prepared<'a>,
    skin: &Layer,
    sheet: &mut Worksheet,
) -> Result<Vec<Stacked<'a>>, NotChecked> {
    let own_thickness = super::lid::thickness(skin, &mut Worksheet::new())?;
    let mut all: Vec<Stacked<'a>> = Vec::new();
    for layer in prepared.cover.layers.iter().filter(|layer| layer.name != skin.name) {
        let face = layer.face.need(|| format!("layers.{}.face", layer.name))?;
        let thickness = super::lid::thickness(layer, sheet)?;
        let before = all.iter().filter(|one| one.layer.face == Some(face) && overlap(one.layer, layer));
        let under: f64 = before.map(|one| one.thickness).sum();
        let lower_face = match face {
            Face::Inner => -under - thickness,
            Face::Outer => own_thickness + under,
        };
        all.push(Stacked { layer, lower_face, thickness });
    }
    Ok(all)
}

/// How a layer is held to the sheet, as far as growth goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Hold {
    /// Glued.
    Bonded,
    /// By screws that leave it no room: it slips more or less.
    Tight,
    /// By screws that leave it room, as in an oversize hole or on a shoulder bush.
    Floating,
}

/// How a layer is held to the sheet.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn hold(prepared: &Prepared<'_>, layer: &Layer) -> Result<Hold, NotChecked> {
    if layer.joining.need(|| format!("layers.{}.joining", layer.name))? == Joining::Bonded {
        return Ok(Hold::Bonded);
    }
    let mut found = None;
    for pattern in prepared.cover.screws.iter().flatten() {
        if pattern.insert.as_ref().is_some_and(|insert| insert.layer == layer.name) {
            return Ok(Hold::Tight);
        }
        for passed in pattern.passes.iter().flatten().filter(|passed| passed.layer == layer.name) {
            let path = || format!("screws.{}.passes.{}.role", pattern.name, layer.name);
            if passed.role.need(path)? == HoleRole::Fixed {
                return Ok(Hold::Tight);
            }
            found = Some(Hold::Floating);
        }
    }
    found.ok_or_else(|| {
        NotChecked::needs(format!("screws (one that passes `{}`, or whose insert lies in it)", layer.name))
    })
}

/// Whether a layer joins in with the sheet at a limit.
///
/// # Errors
/// As [`hold`].
pub(super) fn joins(prepared: &Prepared<'_>, joined: Joined, layer: &Layer) -> Result<bool, NotChecked> {
    Ok(match joined {
        Joined::SheetAlone => false,
        Joined::OnePiece => true,
        Joined::Bonded => hold(prepared, layer)? == Hold::Bonded,
        Joined::Driving => hold(prepared, layer)? != Hold::Floating,
    })
}
