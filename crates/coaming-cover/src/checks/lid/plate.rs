//! The lid as a solid plate on a rigid seal line: the closed forms beside the panel solver.

use coaming::plate::{EdgeSupport, InPlaneSupport, RectangularPlate, RectangularPlateLargeDeflection};
use coaming::prelude::*;

use crate::amount::Measure;
use crate::demand::NotChecked;
use crate::document::{Layer, Outline};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The rectangle on which the lid lies: the seal's centre line.
fn span(prepared: &Prepared<'_>) -> Result<(Length, Length), NotChecked> {
    match prepared.seal()?.path.as_ref() {
        Some(Outline::Rectangle(rectangle)) => Ok((rectangle.width, rectangle.height)),
        Some(_) => Err(NotChecked::not_calculated("a plate over a seal line that is no rectangle")),
        None => Err(NotChecked::needs("seal.path")),
    }
}

/// What every plate calculation of the lid takes.
pub(super) struct Plate {
    pub(super) width: Length,
    pub(super) height: Length,
    pub(super) thickness: Length,
    pub(super) youngs_modulus: Pressure,
    pub(super) poissons_ratio: f64,
}

pub(super) fn plate(
    prepared: &Prepared<'_>,
    layer: &Layer,
    sheet: &mut Worksheet,
) -> Result<Plate, NotChecked> {
    let (width, height) = span(prepared)?;
    sheet.note("seal line, width", width.value, Measure::LENGTH);
    sheet.note("seal line, height", height.value, Measure::LENGTH);
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let material = prepared.material_of(layer)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    if layer.cut_outs.iter().flatten().next().is_some() {
        sheet.say("In the closed form the sheet is solid: its cut-out makes it softer, what is fixed over the cut-out stiffer.");
    }
    if layer.bends.iter().flatten().next().is_some() {
        sheet.say(
            "The closed form leaves the flanges out: they make the edges stiffer than a plate that is merely supported.",
        );
    }
    sheet.say("In the closed form the seal line is a rigid support all round.");
    Ok(Plate { width, height, thickness, youngs_modulus, poissons_ratio })
}

/// Deflection of the solid plate under a pressure that is positive inward: linear up to half the thickness, between two
/// edge conditions in its plane past that.
pub(super) fn sag(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    plate: &Plate,
    pressure: f64,
) -> Result<(f64, f64), NotChecked> {
    let outcome = sheet.run(&RectangularPlate {
        length: plate.width,
        width: plate.height,
        thickness: plate.thickness,
        youngs_modulus: plate.youngs_modulus,
        poissons_ratio: plate.poissons_ratio,
        pressure: si(pressure),
        edge_support: EdgeSupport::Supported,
    })?;
    let linear = outcome.largest_deflection.value.abs();
    sheet.note("solid plate, deflection, linear", linear, Measure::LENGTH);
    sheet.note("solid plate, stress, linear", outcome.largest_stress.value, Measure::STRESS);
    match outcome.deflection_ratio > 0.5 {
        true => large_deflection(prepared, sheet, plate, pressure),
        false => Ok((linear, linear)),
    }
}

/// Deflection past half the thickness, between edges that stay straight and edges that draw in and wave as on a gasket:
/// the lid's own edges lie between the two.
fn large_deflection(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    plate: &Plate,
    pressure: f64,
) -> Result<(f64, f64), NotChecked> {
    let mut at = |in_plane_support: InPlaneSupport| {
        let plate = RectangularPlateLargeDeflection {
            length: plate.width,
            width: plate.height,
            thickness: plate.thickness,
            youngs_modulus: plate.youngs_modulus,
            poissons_ratio: plate.poissons_ratio,
            pressure: si(pressure),
            edge_support: EdgeSupport::Supported,
            in_plane_support,
        };
        let outcome = sheet.take::<RectangularPlateLargeDeflection>(prepared.solutions.plate(&plate));
        outcome.map(|outcome| outcome.centre_deflection.value.abs())
    };
    let (straight, free) = (at(InPlaneSupport::Straight)?, at(InPlaneSupport::Free)?);
    sheet.note("solid plate, deflection, large, edges that stay straight", straight, Measure::LENGTH);
    sheet.note("solid plate, deflection, large, edges that draw in", free, Measure::LENGTH);
    Ok((straight.min(free), straight.max(free)))
}
