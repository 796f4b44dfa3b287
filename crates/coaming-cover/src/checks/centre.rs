//! Where the lid's mass has its centre.

use coaming::prelude::*;
use coaming::sheet::BendDirection;

use crate::amount::Measure;
use crate::checks::mass;
use crate::demand::{Need, NotChecked};
use crate::document::{Edge, Face, Layer};
use crate::held::{self, Moments};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The lid's mass in kilograms and its centre in metres: in the cover's plane, and above the sheet's inner face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Centre {
    pub(super) mass: f64,
    pub(super) x: f64,
    pub(super) y: f64,
    pub(super) height: f64,
}

/// Mass and first moments, added part by part.
#[derive(Default)]
struct Sum {
    mass: f64,
    x: f64,
    y: f64,
    height: f64,
}

impl Sum {
    fn add(&mut self, mass: f64, (x, y): (f64, f64), height: f64) {
        self.mass += mass;
        self.x += mass * x;
        self.y += mass * y;
        self.height += mass * height;
    }
}

/// The centre of mass of all layers and latches; screws, gasket and what is not described are left out. Each layer's mass lies
/// evenly over its area, a flange's at half its depth, a latch's at the sheet's inner face.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn of_mass(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<Centre, NotChecked> {
    let (skin, thickness) = held::skin(prepared)?;
    let mut sum = Sum::default();
    add_sheet(prepared, skin, thickness, sheet, &mut sum)?;
    for held::Stacked { layer, lower_face, thickness } in held::stacked(prepared, skin, sheet)? {
        let mass = mass::of_layer(prepared, layer, sheet)?;
        sum.add(mass, middle(layer), lower_face + 0.5 * thickness);
    }
    if let Some(latches) = &prepared.cover.latches {
        let each = latches.mass.need(|| "latches.mass".to_owned())?.value;
        let positions = latches.positions.as_ref().ok_or_else(|| NotChecked::needs("latches.positions"))?;
        for at in positions {
            sum.add(each, (at.x.value, at.y.value), 0.0);
        }
    }
    let mass = sum.mass;
    let centre = Centre { mass, x: sum.x / mass, y: sum.y / mass, height: sum.height / mass };
    sheet.note("mass of the lid", mass, Measure::MASS);
    sheet.note("centre of mass, x", centre.x, Measure::LENGTH);
    sheet.note("centre of mass, y", centre.y, Measure::LENGTH);
    sheet.note("centre of mass over the sheet's inner face", centre.height, Measure::LENGTH);
    sheet.reckon(
        "centre of mass = sum of mass × place over the sum of mass, over layers, flanges and latches",
    );
    Ok(centre)
}

fn middle(layer: &Layer) -> (f64, f64) {
    let mut whole = Moments::of(&layer.outline, layer.at.as_ref());
    for cut in layer.cut_outs.iter().flatten() {
        whole = whole.less(Moments::of(&cut.outline, cut.at.as_ref()));
    }
    (whole.x / whole.area, whole.y / whole.area)
}

/// The sheet and its flanges, which share its mass by their area.
fn add_sheet(
    prepared: &Prepared<'_>,
    skin: &Layer,
    thickness: f64,
    sheet: &mut Worksheet,
    sum: &mut Sum,
) -> Result<(), NotChecked> {
    let mass = mass::of_layer(prepared, skin, sheet)?;
    let per_area = mass / mass::area(skin)?;
    sum.add(per_area * skin.net_area(), middle(skin), 0.5 * thickness);
    let (width, height) = skin.outline.box_size();
    let (x, y) = skin.at.as_ref().map_or((0.0, 0.0), |at| (at.x.value, at.y.value));
    for bend in skin.bends.iter().flatten() {
        let path = |key: &str| format!("layers.{}.bends.{}.{key}", skin.name, Choice::name(bend.edge));
        let flange = bend.flange.need(|| path("flange"))?.value;
        let direction = bend.bend_direction.need(|| path("bend_direction"))?;
        let good = prepared.cover.good_face.need(|| "good_face".to_owned())?;
        let outward = (direction == BendDirection::Up) == (good == Face::Outer);
        let reach = if outward { 0.5 * flange } else { thickness - 0.5 * flange };
        let (at, along) = match bend.edge {
            Edge::Left => ((x - width / 2.0, y), height),
            Edge::Right => ((x + width / 2.0, y), height),
            Edge::Bottom => ((x, y - height / 2.0), width),
            Edge::Top => ((x, y + height / 2.0), width),
        };
        sum.add(per_area * flange * along, at, reach);
    }
    Ok(())
}
