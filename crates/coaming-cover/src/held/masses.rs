//! What the layers weigh, for inertia and modes.

use coaming_panel::{Layer as Sheet, Material, Region};

use super::outline::outline;
use super::places::{Over, over};
use crate::checks::mass;
use crate::demand::{Need, NotChecked};
use crate::document::Layer;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Stiffness of a layer that is only to weigh, as a share of the sheet's: no part of any digit that is shown.
const LIMP: f64 = 1e-6;

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

/// The other layers as limp weights on the sheet. A pane hangs on its lap: where it spans a cut-out of the sheet, its
/// mass there moves out to where it lies on the sheet.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give, [`NotChecked::NotCalculated`] for a layer over a
/// part of a cut-out.
pub(super) fn weights(
    prepared: &Prepared<'_>,
    skin: &Layer,
    of_the_sheet: Material,
    sheet: &mut Worksheet,
) -> Result<Vec<Sheet>, NotChecked> {
    let mut limp: Vec<Sheet> = Vec::new();
    for layer in prepared.cover.layers.iter().filter(|layer| layer.name != skin.name) {
        let thickness = layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?.value;
        let mut carried = layer.net_area();
        for cut in skin.cut_outs.iter().flatten() {
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
        let density = density(prepared, layer, sheet)? * layer.net_area() / carried;
        let holes = layer.cut_outs.iter().flatten().map(|cut| outline(&cut.outline, cut.at.as_ref()));
        limp.push(Sheet {
            region: Some(Region {
                outline: outline(&layer.outline, layer.at.as_ref()),
                holes: holes.collect(),
            }),
            // Where it stands does not matter as long as no two stand in one place.
            lower_face: -thickness - limp.iter().map(|above| above.thickness).sum::<f64>(),
            thickness,
            material: Material::isotropic(LIMP * of_the_sheet.youngs_modulus_1, 0.3, density, 0.0),
        });
    }
    Ok(limp)
}
