//! What is kept of one solution.

use coaming_panel::result::field::Field;
use coaming_panel::{Answer, Point};

use super::unseen::is_unseen;

/// A value and where it occurs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Place {
    /// The value, in SI units.
    pub(crate) value: f64,
    /// Where, in the cover's plane.
    pub(crate) at: Point,
}

/// Estimates of what the mesh leaves open.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Left {
    /// Of any deflection, over the largest.
    pub(crate) deflection_share: f64,
    /// Of any latch's pull, over the strongest.
    pub(crate) pull_share: f64,
    /// Of the seal's compression, in metres.
    pub(crate) compression: f64,
    /// Of the largest moment or of the largest force in the plane, over it, whichever is more. Under a latch no mesh is fine enough.
    pub(crate) stress_share: f64,
}

/// What is kept of one solution: the mesh and its fields are not.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Found {
    /// Pull of each latch, in newtons.
    pub(crate) pulls: Vec<f64>,
    /// Push of each stop, in newtons.
    pub(crate) stops: Vec<f64>,
    /// Force of the gasket on the lid, in newtons.
    pub(crate) gasket_force: f64,
    /// Least compression of the gasket, in metres; below zero it is open.
    pub(crate) least: Place,
    /// Largest compression of the gasket, in metres.
    pub(crate) most: Place,
    /// Length of the seal line without contact, in metres.
    pub(crate) open_length: f64,
    /// True where the gasket is compressed past the last point of its law.
    pub(crate) beyond_law: bool,
    /// Largest deflection either way, in metres; positive outward.
    pub(crate) deflection: Place,
    /// Largest principal stress in the sheet, in pascals, away from the latches and from sharp corners of joined layers.
    pub(crate) stress: Place,
    /// Forces left over, as a share.
    pub(crate) balance: f64,
    /// What the mesh leaves open.
    pub(crate) left: Left,
    /// Triangles of the finest mesh.
    pub(crate) triangles: usize,
}

impl Found {
    /// What is kept of an answer, the layer 0 of whose panel is the sheet.
    pub(super) fn new(answer: &Answer, unseen: &[Point]) -> Self {
        let gasket = answer.gaskets.first().cloned().unwrap_or_default();
        let place =
            |extreme: coaming_panel::result::answer::Extreme| Place { value: extreme.value, at: extreme.at };
        let strongest = answer.latches.iter().map(|latch| latch.pull).fold(0.0, f64::max);
        Self {
            pulls: answer.latches.iter().map(|latch| latch.pull).collect(),
            stops: answer.stops.clone(),
            gasket_force: gasket.force,
            least: place(gasket.smallest),
            most: place(gasket.largest),
            open_length: gasket.open_length,
            beyond_law: gasket.beyond_law,
            deflection: place(answer.largest_deflection),
            stress: if unseen.is_empty() { largest(&answer.field) } else { stress(&answer.field, unseen) },
            balance: answer.balance.force,
            left: Left {
                deflection_share: answer.error.deflection,
                pull_share: if strongest > 0.0 { answer.error.latch_force } else { 0.0 },
                compression: answer.error.compression,
                stress_share: answer.error.moment.max(answer.error.membrane_force),
            },
            triangles: answer.error.triangles,
        }
    }

    /// The same with its error taken as a tenth.
    pub(super) fn about(self) -> Self {
        let compression = 0.1 * self.deflection.value.abs();
        let left = Left { deflection_share: 0.1, pull_share: 0.1, compression, stress_share: 0.1 };
        Self { left, ..self }
    }

    /// Pull of the most loaded latch, with its number from 1.
    pub(crate) fn strongest(&self) -> (usize, f64) {
        let each = self.pulls.iter().copied().enumerate();
        each.fold((1, 0.0), |best, (nth, pull)| if pull > best.1 { (nth + 1, pull) } else { best })
    }

    /// Error of the pull of the most loaded latch, in newtons.
    pub(crate) fn pull_error(&self) -> f64 {
        self.left.pull_share * self.strongest().1
    }

    /// Error of the deflection, in metres.
    pub(crate) fn deflection_error(&self) -> f64 {
        self.left.deflection_share * self.deflection.value.abs()
    }
}

/// The largest principal stress of the layer 0 on either face, at the corners of the triangles: edges and all.
fn largest(field: &Field) -> Place {
    let nowhere = Place { value: 0.0, at: Point { x: 0.0, y: 0.0 } };
    [false, true].into_iter().filter_map(|upper| field.largest_stress(0, upper)).fold(
        nowhere,
        |worst, (value, at)| if value.abs() > worst.value { Place { value: value.abs(), at } } else { worst },
    )
}

/// The largest principal stress at the middle of any triangle of the sheet.
fn stress(field: &Field, unseen: &[Point]) -> Place {
    let mut worst = Place { value: 0.0, at: Point { x: 0.0, y: 0.0 } };
    for (triangle, corners) in field.triangles.iter().enumerate() {
        let middle = corners.iter().filter_map(|&corner| field.vertices.get(corner)).fold(
            Point { x: 0.0, y: 0.0 },
            |sum, point| Point { x: sum.x + point.x / 3.0, y: sum.y + point.y / 3.0 },
        );
        if is_unseen(middle, unseen) {
            continue;
        }
        let Some(here) = field.middle_of(triangle) else { continue };
        for layer in here.layers.iter().filter(|layer| layer.layer == 0) {
            for face in [layer.lower, layer.upper] {
                let size = face.principal_1.abs().max(face.principal_2.abs());
                if size > worst.value {
                    worst = Place { value: size, at: middle };
                }
            }
        }
    }
    worst
}
