//! Where the lid's mass has its centre.

use crate::amount::Measure;
use crate::checks::mass;
use crate::demand::{Need, NotChecked};
use crate::prepared::Prepared;
use crate::stack;
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

/// The centre of mass of all layers and latches; screws, gasket and what is not described are left out. A layer's mass lies evenly
/// over its area and its flanges, a latch's at the sheet's inner face.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(super) fn of_mass(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<Centre, NotChecked> {
    let mut sum = Sum::default();
    for layer in &prepared.cover.layers {
        let mass = mass::of_layer(prepared, layer, sheet)?;
        let centre = stack::centre_of(prepared, layer);
        sum.add(mass, centre.plane?, centre.z?);
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
