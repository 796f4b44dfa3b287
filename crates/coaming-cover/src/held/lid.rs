//! The lid with its flanges on gasket and latches.

use coaming::prelude::*;
use coaming::sheet::BendDirection;
use coaming_panel::{
    Beam, Joint, JointKind, Latch, LatchAction, Layer as Sheet, Line, Material, Panel, Point, Region, Stop,
};

use super::gasket::gasket;
use super::masses::{density, weights};
use super::outline::outline;
use super::places::{Bounds, Over, over};
use super::setup::{Joined, Setup};
use crate::amount::Measure;
use crate::demand::{Need, NotChecked};
use crate::document::{Bend, Edge, Face, Layer, LayerRole, Outline};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Stiffness of a stop in newtons per metre: it gives a thousandth of a millimetre under 100 N.
const STOP: f64 = 1e8;

/// The lid closed on its gasket, held at each latch at the closed height. Stops are taken to stand at the latches.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(crate) fn lid(prepared: &Prepared<'_>, setup: Setup, sheet: &mut Worksheet) -> Result<Panel, NotChecked> {
    let skin = prepared
        .cover
        .layers
        .iter()
        .find(|layer| layer.role == LayerRole::Skin)
        .ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))?;
    let gasket = gasket(prepared, setup)?;
    let latches = prepared.cover.latches.as_ref().ok_or_else(|| NotChecked::needs("latches"))?;
    let positions = latches.positions.as_ref().ok_or_else(|| NotChecked::needs("latches.positions"))?;
    let thickness = thickness(skin, sheet)?;
    let material = elastic(prepared, skin, sheet)?;
    let mut material = material;
    if setup.weighed {
        material.density = density(prepared, skin, sheet)?;
    }
    let openings = skin.cut_outs.iter().flatten().map(|cut| outline(&cut.outline, cut.at.as_ref()));
    let mut panel = Panel::new(outline(&skin.outline, skin.at.as_ref()), Sheet::whole(thickness, material));
    match setup.joined {
        Joined::SheetAlone => panel.holes = openings.collect(),
        Joined::OnePiece => one_piece(prepared, skin, openings.collect(), setup.weighed, &mut panel, sheet)?,
    }
    if setup.weighed && setup.joined == Joined::SheetAlone {
        panel.layers.extend(weights(prepared, skin, material, sheet)?);
    }
    for bend in skin.bends.iter().flatten() {
        panel.beams.push(flange(prepared, skin, bend, thickness, material, sheet)?);
    }
    panel.gaskets = vec![gasket];
    let at = |x: f64, y: f64| Latch { at: Point { x, y }, action: LatchAction::Height(0.0) };
    panel.latches = positions.iter().map(|point| at(point.x.value, point.y.value)).collect();
    if prepared.seal()?.stop_height.is_some() {
        let stop = |latch: &Latch| Stop { at: latch.at, height: 0.0, stiffness: STOP };
        panel.stops = panel.latches.iter().map(stop).collect();
    }
    Ok(panel)
}

fn thickness(layer: &Layer, sheet: &mut Worksheet) -> Result<f64, NotChecked> {
    let path = format!("layers.{}.thickness", layer.name);
    Ok(sheet.given(&format!("{}, thickness", layer.name), path, layer.thickness)?.value)
}

fn elastic(prepared: &Prepared<'_>, layer: &Layer, sheet: &mut Worksheet) -> Result<Material, NotChecked> {
    let material = prepared.material_of(layer)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    // Density is added where mass matters; warmth does not act in this model.
    Ok(Material::isotropic(youngs_modulus.value, poissons_ratio, 0.0, 0.0))
}

/// Adds the layers on both faces, each glued to the one before it. A cut-out that no layer closes stays a hole.
fn one_piece(
    prepared: &Prepared<'_>,
    skin: &Layer,
    openings: Vec<coaming_panel::Outline>,
    weighed: bool,
    panel: &mut Panel,
    sheet: &mut Worksheet,
) -> Result<(), NotChecked> {
    let others = prepared.cover.layers.iter().filter(|layer| layer.name != skin.name);
    let mut stacked: Vec<(&Layer, f64)> = Vec::new();
    for layer in others {
        let face = layer.face.need(|| format!("layers.{}.face", layer.name))?;
        let own = thickness(layer, sheet)?;
        let under: f64 = stacked
            .iter()
            .filter(|(below, _)| {
                below.face == Some(face) && Bounds::of_layer(below).meets(Bounds::of_layer(layer))
            })
            .map(|(_, thickness)| thickness)
            .sum();
        let lower_face = match face {
            Face::Inner => -under - own,
            Face::Outer => panel.layers.first().map_or(0.0, |skin| skin.thickness) + under,
        };
        let holes = layer.cut_outs.iter().flatten().map(|cut| outline(&cut.outline, cut.at.as_ref()));
        let mut material = elastic(prepared, layer, sheet)?;
        if weighed {
            material.density = density(prepared, layer, sheet)?;
        }
        panel.layers.push(Sheet {
            region: Some(Region {
                outline: outline(&layer.outline, layer.at.as_ref()),
                holes: holes.collect(),
            }),
            lower_face,
            thickness: own,
            material,
        });
        panel.joints.push(Joint { lower: panel.layers.len() - 1, upper: 0, kind: JointKind::Bonded });
        stacked.push((layer, own));
    }
    let cuts = skin.cut_outs.iter().flatten();
    let closed: Vec<bool> =
        cuts.map(|cut| stacked.iter().any(|(layer, _)| over(layer, cut) == Over::Covers)).collect();
    let (mut open, mut covered) = (Vec::new(), Vec::new());
    for (opening, closed) in openings.into_iter().zip(closed) {
        if closed { covered.push(opening) } else { open.push(opening) }
    }
    panel.holes = open;
    if let Some(first) = panel.layers.first_mut() {
        first.region = Some(Region { outline: panel.outline.clone(), holes: covered });
    }
    Ok(())
}

/// A return flange as a beam along its edge: a strip that stands on the sheet.
fn flange(
    prepared: &Prepared<'_>,
    skin: &Layer,
    bend: &Bend,
    thickness: f64,
    material: Material,
    sheet: &mut Worksheet,
) -> Result<Beam, NotChecked> {
    let path = |key: &str| format!("layers.{}.bends.{key}", skin.name);
    let angle = bend.bend_angle.need(|| path("bend_angle"))?.value;
    if (angle - math::PI / 2.0).abs() > 0.1 {
        return Err(NotChecked::not_calculated("a flange that is not bent by about 90 degrees as a beam"));
    }
    let direction = bend.bend_direction.need(|| path("bend_direction"))?;
    let good = prepared.cover.good_face.need(|| "good_face".to_owned())?;
    let height = sheet.given("flange, outside height", path("flange"), bend.flange)?.value;
    let depth = height - thickness;
    if depth <= 0.0 {
        return Err(NotChecked::Refused(Error::inconsistent(
            path("flange"),
            "a flange is higher than the sheet is thick",
        )));
    }
    // `up` and `down` are as seen from the good face.
    let outward = (direction == BendDirection::Up) == (good == Face::Outer);
    let centroid_height = if outward { thickness + depth / 2.0 } else { -depth / 2.0 };
    let side = match bend.edge {
        Edge::Bottom => 0,
        Edge::Right => 1,
        Edge::Top => 2,
        Edge::Left => 3,
    };
    let step = match &skin.outline {
        Outline::Rectangle(shape) if shape.corner_radius.is_none_or(|radius| radius.value == 0.0) => 1,
        Outline::Rectangle(_) => 2,
        _ => return Err(NotChecked::not_calculated("flanges along an outline that is no rectangle")),
    };
    sheet.note("flange, depth under the sheet", depth, Measure::LENGTH);
    Ok(Beam {
        line: Line::OutlineEdge(step * side),
        layer: 0,
        youngs_modulus: material.youngs_modulus_1,
        shear_modulus: material.shear_modulus,
        area: depth * thickness,
        second_moment_of_area: thickness * depth * depth * depth / 12.0,
        torsion_constant: depth * thickness * thickness * thickness / 3.0,
        centroid_height,
        density: material.density,
    })
}
