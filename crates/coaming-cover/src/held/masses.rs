//! What the layers weigh, for inertia and modes.

use coaming_panel::{Panel, Region, SpreadMass};

use super::outline::outline;
use super::places::{Over, over};
use crate::checks::mass;
use crate::demand::{Need, NotChecked};
use crate::document::{CutOut, Layer};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// What the lid is made of at one of its limits.
pub(super) struct Parts<'a> {
    /// Layers that stiffen it, the sheet first.
    pub(super) stiff: Vec<&'a Layer>,
    /// Layers that only weigh.
    pub(super) limp: Vec<&'a Layer>,
    /// Cut-outs of the sheet that no stiff layer closes.
    pub(super) open: Vec<&'a CutOut>,
}

impl<'a> Parts<'a> {
    /// The sheet alone: all others only weigh, and its cut-outs are open.
    pub(super) fn alone(prepared: &Prepared<'a>, skin: &'a Layer) -> Self {
        let others = prepared.cover.layers.iter().filter(|layer| layer.name != skin.name);
        Self { stiff: vec![skin], limp: others.collect(), open: skin.cut_outs.iter().flatten().collect() }
    }
}

/// Where a layer is.
pub(super) fn region(layer: &Layer) -> Region {
    let holes = layer.cut_outs.iter().flatten().map(|cut| outline(&cut.outline, cut.at.as_ref()));
    Region { outline: outline(&layer.outline, layer.at.as_ref()), holes: holes.collect() }
}

/// The lid with the mass of all its layers.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give, [`NotChecked::NotCalculated`] for a layer that only
/// weighs and lies over a part of a cut-out.
pub(super) fn weigh(
    prepared: &Prepared<'_>,
    parts: &Parts<'_>,
    bare: &Panel,
    sheet: &mut Worksheet,
) -> Result<Panel, NotChecked> {
    let mut panel = bare.clone();
    for (layer, plate) in parts.stiff.iter().zip(&mut panel.layers) {
        plate.material.density = density(prepared, layer, sheet)?;
    }
    let own = panel.layers.first().map_or(0.0, |plate| plate.material.density);
    for flange in &mut panel.beams {
        flange.density = own;
    }
    for layer in &parts.limp {
        panel.spread_masses.push(spread(prepared, layer, &parts.open, sheet)?);
    }
    Ok(panel)
}

/// Density of a layer at its own thickness such that it has the mass that the review counts, over the area that carries
/// it: flanges are left to their beams.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn density(
    prepared: &Prepared<'_>,
    layer: &Layer,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    if layer.mass.is_none() {
        let material = prepared.material_of(layer)?;
        return sheet.property(&material, "density", &material.density).map(|density| density.value);
    }
    let thickness = layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?;
    let mass = mass::of_layer(prepared, layer, sheet)?;
    Ok(mass / (mass::area(layer)? * thickness.value))
}

/// A layer that only weighs. A pane hangs on its lap: where it spans an open cut-out of the sheet, its mass there moves out
/// to where it lies on the sheet.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give, [`NotChecked::NotCalculated`] for a layer over a
/// part of a cut-out.
fn spread(
    prepared: &Prepared<'_>,
    layer: &Layer,
    open: &[&CutOut],
    sheet: &mut Worksheet,
) -> Result<SpreadMass, NotChecked> {
    let thickness = layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?.value;
    let mut carried = layer.net_area();
    for cut in open {
        match over(layer, cut) {
            Over::Clear => {}
            Over::Covers => carried -= cut.outline.area(),
            Over::Part => {
                return Err(NotChecked::not_calculated(format!(
                    "the weight of `{}`, which lies over a part of a cut-out",
                    layer.name
                )));
            }
        }
    }
    if carried <= 0.0 {
        return Err(NotChecked::not_calculated(format!(
            "the weight of `{}`, which lies nowhere on the sheet",
            layer.name
        )));
    }
    let mass_per_area = density(prepared, layer, sheet)? * thickness * layer.net_area() / carried;
    Ok(SpreadMass { region: region(layer), mass_per_area })
}
