//! The flat size of a layer, which both its check and the order sheet need.

use coaming::prelude::*;
use coaming::sheet::{BendAllowance, BentMetal, KFactorDin6935, LegReference};

use crate::demand::NotChecked;
use crate::document::{Bend, Edge, Layer, Outline};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// A flat size, in metres.
pub(crate) struct Flat {
    /// Size along x.
    pub(crate) width: f64,
    /// Size along y.
    pub(crate) height: f64,
    /// Deduction of the first bend; none for a flat layer.
    pub(crate) deduction: Option<f64>,
    /// How far the deduction by DIN 6935 lies from the one that was used, at most.
    pub(crate) spread: f64,
}

/// The flat size of a layer whose outline is its outside size after bending.
pub(crate) fn flat(_: &Prepared<'_>, layer: &Layer, sheet: &mut Worksheet) -> Result<Flat, NotChecked> {
    let Outline::Rectangle(outside) = &layer.outline else {
        return Err(NotChecked::not_calculated("the flat pattern of an outline that is no rectangle"));
    };
    let mut size =
        Flat { width: outside.width.value, height: outside.height.value, deduction: None, spread: 0.0 };
    for bend in layer.bends.iter().flatten() {
        let path = format!("layers.{}.bends.{}", layer.name, Choice::name(bend.edge));
        let flange = sheet.given("flange", format!("{path}.flange"), bend.flange)?;
        let (bd, other) = deduction(sheet, layer, bend, &path)?;
        size.deduction.get_or_insert(bd);
        size.spread = size.spread.max((bd - other).abs());
        match bend.edge {
            Edge::Left | Edge::Right => size.width += flange.value - bd,
            Edge::Top | Edge::Bottom => size.height += flange.value - bd,
        }
    }
    Ok(size)
}

/// Bend deduction in metres with the document's K-factor, and with DIN 6935's in its place.
pub(crate) fn deduction(
    sheet: &mut Worksheet,
    layer: &Layer,
    bend: &Bend,
    path: &str,
) -> Result<(f64, f64), NotChecked> {
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let bend_angle = sheet.given("bend angle", format!("{path}.bend_angle"), bend.bend_angle)?;
    let inside_radius = sheet.given("inside radius", format!("{path}.inside_radius"), bend.inside_radius)?;
    let k_factor = sheet.number("K-factor", format!("{path}.k_factor"), bend.k_factor)?;
    let with = |k_factor: f64| BendAllowance {
        bend_angle,
        inside_radius,
        thickness,
        k_factor,
        leg_reference: LegReference::ToVirtualSharp,
    };
    let outcome = sheet.run(&with(k_factor))?;
    let din = KFactorDin6935 { inside_radius, thickness, metal: BentMetal::Other }.calculate();
    let other = din
        .and_then(|(din, _)| with(din.k_factor).calculate())
        .map_or(outcome.bend_deduction, |(din, _)| din.bend_deduction);
    Ok((outcome.bend_deduction.value, other.value))
}
