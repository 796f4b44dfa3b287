//! What acts in the plane of the panel: forces along edges, and supports that move.

use super::line::Line;
use crate::error::{PanelError, finite};
use crate::geometry::point::Point;

/// A force in the plane along an edge of the outline or of a hole, at the middle of one layer.
#[derive(Debug, Clone, PartialEq)]
pub struct EdgeForce {
    /// An edge of the outline or of a hole.
    pub line: Line,
    /// The layer that it pulls.
    pub layer: usize,
    /// Pull per length at right angles to the edge, N/m: positive away from the material, so that it stretches the layer.
    pub outward: f64,
    /// Force per length along x and y, N/m, besides the pull.
    pub force: Point,
}

impl EdgeForce {
    /// A pull alone.
    pub fn outward(line: Line, layer: usize, outward: f64) -> Self {
        Self { line, layer, outward, force: Point::default() }
    }

    /// A force of given direction alone.
    pub fn directed(line: Line, layer: usize, force: Point) -> Self {
        Self { line, layer, outward: 0.0, force }
    }

    fn check(&self, name: &str, layers: usize) -> Result<(), PanelError> {
        finite(format!("{name}: outward"), self.outward)?;
        finite(format!("{name}: force x"), self.force.x)?;
        finite(format!("{name}: force y"), self.force.y)?;
        if self.layer >= layers {
            return Err(PanelError::Missing {
                name: name.into(),
                reason: format!("there is no layer {}", self.layer),
            });
        }
        Ok(())
    }
}

/// A line support that has moved in the plane, with every layer that it holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SupportMovement {
    /// Index of the line support. It must hold what it moves.
    pub support: usize,
    /// How far, along x and y, m.
    pub movement: Point,
}

impl SupportMovement {
    fn check(&self, name: &str) -> Result<(), PanelError> {
        finite(format!("{name}: movement x"), self.movement.x)?;
        finite(format!("{name}: movement y"), self.movement.y).map(|_| ())
    }
}

/// Checks all that acts in the plane. Whether a support that moves is there and holds its line is checked on the mesh.
pub(crate) fn check(
    forces: &[EdgeForce],
    movements: &[SupportMovement],
    layers: usize,
) -> Result<(), PanelError> {
    for (i, force) in forces.iter().enumerate() {
        force.check(&format!("edge force {i}"), layers)?;
    }
    for (i, movement) in movements.iter().enumerate() {
        movement.check(&format!("support movement {i}"))?;
    }
    Ok(())
}
