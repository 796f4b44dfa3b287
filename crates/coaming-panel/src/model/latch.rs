//! Latches that draw the panel down, and stops that hold it up.

use crate::error::{PanelError, finite, not_negative, positive};
use crate::geometry::point::Point;

/// What a latch does. It only ever pulls the panel inward (against z).
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LatchAction {
    /// Draws its point to this deflection, or lets go if it would have to push.
    Height(f64),
    /// A spring drawn past the undeflected panel: it pulls with stiffness × (deflection + draw) while that is positive.
    Spring {
        /// Stiffness of latch and keeper, N/m.
        stiffness: f64,
        /// Draw, m.
        draw: f64,
    },
    /// Pulls with this force, N.
    Force(f64),
}

/// A latch at a point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Latch {
    /// Where it holds the panel.
    pub at: Point,
    /// What it does.
    pub action: LatchAction,
}

/// A stop at a point: it pushes the panel outward where it would sink below a height, and never pulls.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stop {
    /// Where.
    pub at: Point,
    /// Deflection at which the panel meets it, m.
    pub height: f64,
    /// Its stiffness, N/m.
    pub stiffness: f64,
}

/// A mass at a point, moving with the panel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PointMass {
    /// Where.
    pub at: Point,
    /// Mass, kg.
    pub mass: f64,
}

impl Latch {
    pub(crate) fn check(&self, name: &str) -> Result<(), PanelError> {
        match self.action {
            LatchAction::Height(height) => finite(format!("{name}: height"), height).map(|_| ()),
            LatchAction::Spring { stiffness, draw } => {
                positive(format!("{name}: stiffness"), stiffness)?;
                finite(format!("{name}: draw"), draw).map(|_| ())
            }
            LatchAction::Force(force) => not_negative(format!("{name}: force"), force).map(|_| ()),
        }
    }
}

impl Stop {
    pub(crate) fn check(&self, name: &str) -> Result<(), PanelError> {
        finite(format!("{name}: height"), self.height)?;
        positive(format!("{name}: stiffness"), self.stiffness).map(|_| ())
    }
}
