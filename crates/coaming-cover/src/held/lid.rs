//! The lid with its flanges on gasket and latches.

use coaming::prelude::*;
use coaming::sheet::BendDirection;
use coaming_panel::{
    Beam, Joint, JointKind, Latch, LatchAction, Layer as Sheet, Line, Material, Panel, Point, Region, Stop,
};

use super::gasket::gasket;
use super::masses::{Parts, region, weigh};
use super::outline::outline;
use super::places::{Over, over};
use super::setup::{Joined, Setup};
use super::stacking::{Stacked, joins, stacked};
use crate::amount::Measure;
use crate::demand::{Need, NotChecked};
use crate::document::{Bend, Edge, Face, Layer, LayerRole, LoadKind, Outline};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Stiffness of a stop in newtons per metre: it gives a thousandth of a millimetre under 100 N.
const STOP: f64 = 1e8;

/// The lid closed on its gasket, held at each latch at the closed height. Stops are taken to stand at the latches.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(crate) fn lid(prepared: &Prepared<'_>, setup: Setup, sheet: &mut Worksheet) -> Result<Panel, NotChecked> {
    built(prepared, setup, sheet).map(|built| built.0)
}

/// The lid, and what it is made of.
///
/// # Errors
/// As [`lid`].
pub(super) fn built<'a>(
    prepared: &Prepared<'a>,
    setup: Setup,
    sheet: &mut Worksheet,
) -> Result<(Panel, Parts<'a>), NotChecked> {
    let skin = skin_layer(prepared)?;
    let gasket = gasket(prepared, setup)?;
    let latches = prepared.cover.latches.as_ref().ok_or_else(|| NotChecked::needs("latches"))?;
    let positions = latches.positions.as_ref().ok_or_else(|| NotChecked::needs("latches.positions"))?;
    let thickness = thickness(skin, sheet)?;
    let material = elastic(prepared, skin, setup.warm, sheet)?;
    let mut panel = Panel::new(outline(&skin.outline, skin.at.as_ref()), Sheet::whole(thickness, material));
    let parts = match setup.joined {
        Joined::SheetAlone => Parts::alone(prepared, skin),
        _ => one_piece(prepared, setup, skin, &mut panel, sheet)?,
    };
    panel.holes = parts.open.iter().map(|cut| outline(&cut.outline, cut.at.as_ref())).collect();
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
    // Mass does nothing without acceleration. Where it is known it is always there, so that one panel does for all loads.
    let weighed = match setup.weighed {
        true => Some(weigh(prepared, &parts, &panel, sheet)?),
        false => weigh(prepared, &parts, &panel, &mut Worksheet::new()).ok(),
    };
    Ok((weighed.unwrap_or(panel), parts))
}

fn skin_layer<'a>(prepared: &Prepared<'a>) -> Result<&'a Layer, NotChecked> {
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    skin.ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))
}

/// The sheet that is the lid, and its thickness in metres.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(crate) fn skin<'a>(prepared: &Prepared<'a>) -> Result<(&'a Layer, f64), NotChecked> {
    let skin = skin_layer(prepared)?;
    Ok((skin, thickness(skin, &mut Worksheet::new())?))
}

pub(super) fn thickness(layer: &Layer, sheet: &mut Worksheet) -> Result<f64, NotChecked> {
    let path = format!("layers.{}.thickness", layer.name);
    Ok(sheet.given(&format!("{}, thickness", layer.name), path, layer.thickness)?.value)
}

/// Stiffness of a layer: as warm as it is in a load case where its material's is known there, at room temperature otherwise.
pub(super) fn elastic(
    prepared: &Prepared<'_>,
    layer: &Layer,
    warm: Option<LoadKind>,
    sheet: &mut Worksheet,
) -> Result<Material, NotChecked> {
    let material = prepared.material_of(layer)?;
    let warm = warm.and_then(|kind| prepared.temperature(kind, &layer.name).ok());
    let youngs_modulus = match warm.and_then(|warm| material.youngs_modulus_at(warm)) {
        Some(figure) => sheet.figure(&material, "youngs_modulus", figure),
        None => sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?,
    };
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    // Mass is added where it is known; what grows is a load.
    Ok(Material::isotropic(youngs_modulus.value, poissons_ratio, 0.0, 0.0))
}

/// A layer of less than this share of the sheet's stiffness, against bending and in the plane, only weighs: it would make
/// the lid stiffer by less than any digit that is shown, and the mesh would have to follow its outline.
const LIMP: f64 = 1e-3;

/// Stiffness of a layer over the sheet's: against bending about the sheet's middle or in the plane, whichever is more.
fn share_of_stiffness(sheet: &Sheet, layer: &Sheet) -> f64 {
    let arm = layer.lower_face + 0.5 * layer.thickness - 0.5 * sheet.thickness;
    let stretching = |one: &Sheet| one.material.youngs_modulus_1 * one.thickness;
    let square = layer.thickness * layer.thickness / 12.0 + arm * arm;
    let bending = stretching(layer) * square / (stretching(sheet) * sheet.thickness * sheet.thickness / 12.0);
    bending.max(stretching(layer) / stretching(sheet))
}

/// Adds the layers on both faces that join in, as one piece with the sheet. A cut-out that none of them closes stays open.
fn one_piece<'a>(
    prepared: &Prepared<'a>,
    setup: Setup,
    skin: &'a Layer,
    panel: &mut Panel,
    sheet: &mut Worksheet,
) -> Result<Parts<'a>, NotChecked> {
    let mut parts = Parts { stiff: vec![skin], limp: Vec::new(), open: Vec::new() };
    let bare = panel.layers.first().cloned();
    for Stacked { layer, lower_face, thickness } in stacked(prepared, skin, sheet)? {
        let material = elastic(prepared, layer, setup.warm, sheet)?;
        let made = Sheet { region: Some(region(layer)), lower_face, thickness, material };
        let limp = bare.as_ref().is_some_and(|bare| share_of_stiffness(bare, &made) < LIMP);
        if limp || !joins(prepared, setup.joined, layer)? {
            parts.limp.push(layer);
            continue;
        }
        panel.layers.push(made);
        panel.joints.push(Joint { lower: panel.layers.len() - 1, upper: 0, kind: JointKind::Bonded });
        parts.stiff.push(layer);
    }
    let mut covered = Vec::new();
    for cut in skin.cut_outs.iter().flatten() {
        match parts.stiff.iter().skip(1).any(|layer| over(layer, cut) == Over::Covers) {
            true => covered.push(outline(&cut.outline, cut.at.as_ref())),
            false => parts.open.push(cut),
        }
    }
    if let Some(first) = panel.layers.first_mut() {
        first.region = Some(Region { outline: panel.outline.clone(), holes: covered });
    }
    Ok(parts)
}

/// A return flange as a beam along its edge: a strip that stands on the sheet.
pub(super) fn flange(
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
        density: 0.0,
    })
}
