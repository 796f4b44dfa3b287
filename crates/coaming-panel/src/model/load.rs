//! Loads on the panel. Every force is positive along z, the outward normal.

use super::growth::LayerGrowth;
use super::in_plane::{EdgeForce, SupportMovement};
use super::line::Line;
use crate::error::{PanelError, finite};
use crate::geometry::outline::Outline;
use crate::geometry::point::Point;

/// A pressure that varies linearly over the plane, on the whole panel or on a region of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Pressure {
    /// Pressure at the origin, Pa.
    pub at_origin: f64,
    /// Its increase per metre along x and y, Pa/m.
    pub gradient: Point,
    /// Where it acts; absent: on the whole panel.
    pub region: Option<Outline>,
}

impl Pressure {
    /// The same pressure everywhere.
    pub fn uniform(pressure: f64) -> Self {
        Self { at_origin: pressure, gradient: Point::default(), region: None }
    }

    /// Pressure at a point.
    pub(crate) fn at(&self, p: Point) -> f64 {
        self.at_origin + self.gradient.dot(p)
    }
}

/// A force at a point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PointForce {
    /// Where.
    pub at: Point,
    /// Force, N.
    pub force: f64,
}

/// A force along a line.
#[derive(Debug, Clone, PartialEq)]
pub struct LineForce {
    /// Where.
    pub line: Line,
    /// Force per length, N/m.
    pub force: f64,
}

/// A moment along an edge of the outline or of a hole. Positive bends the edge outward: it does work on a deflection that grows
/// toward the edge.
#[derive(Debug, Clone, PartialEq)]
pub struct EdgeMoment {
    /// An edge of the outline or of a hole.
    pub line: Line,
    /// Moment per length, N.
    pub moment: f64,
}

/// Temperature of one layer above the one at which the panel is flat and free of stress.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LayerTemperature {
    /// Index of the layer.
    pub layer: usize,
    /// Rise at the middle of the layer, K.
    pub rise: f64,
    /// Upper face minus lower face, K.
    pub difference: f64,
}

/// All loads that act together.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Load {
    /// Pressures; a total force on a patch is a pressure on a region.
    pub pressures: Vec<Pressure>,
    /// Forces at points.
    pub point_forces: Vec<PointForce>,
    /// Forces along lines.
    pub line_forces: Vec<LineForce>,
    /// Moments along edges.
    pub edge_moments: Vec<EdgeMoment>,
    /// Acceleration of gravity along z, times any factor, m/s2: -9.80665 for a panel that lies with its outer face up.
    pub normal_acceleration: f64,
    /// Temperatures of layers.
    pub temperatures: Vec<LayerTemperature>,
    /// Growth of layers of any other kind, as by moisture.
    pub growths: Vec<LayerGrowth>,
    /// Forces in the plane along edges.
    pub edge_forces: Vec<EdgeForce>,
    /// Line supports that have moved in the plane.
    pub support_movements: Vec<SupportMovement>,
    /// Latches that are missing, by index.
    pub missing_latches: Vec<usize>,
}

impl Load {
    /// A uniform pressure alone.
    pub fn uniform_pressure(pressure: f64) -> Self {
        Self { pressures: vec![Pressure::uniform(pressure)], ..Self::default() }
    }

    /// Whether anything acts in the plane besides temperatures.
    pub(crate) fn acts_in_plane(&self) -> bool {
        !self.edge_forces.is_empty() || !self.support_movements.is_empty()
    }

    pub(crate) fn check(&self, layers: usize, latches: usize) -> Result<(), PanelError> {
        super::size::check_load(self)?;
        for (i, p) in self.pressures.iter().enumerate() {
            finite(format!("pressure {i}: at_origin"), p.at_origin)?;
            finite(format!("pressure {i}: gradient x"), p.gradient.x)?;
            finite(format!("pressure {i}: gradient y"), p.gradient.y)?;
        }
        for (i, p) in self.point_forces.iter().enumerate() {
            finite(format!("point force {i}: force"), p.force)?;
            finite(format!("point force {i}: x"), p.at.x)?;
            finite(format!("point force {i}: y"), p.at.y)?;
        }
        for (i, p) in self.line_forces.iter().enumerate() {
            finite(format!("line force {i}: force"), p.force)?;
        }
        for (i, p) in self.edge_moments.iter().enumerate() {
            finite(format!("edge moment {i}: moment"), p.moment)?;
        }
        super::in_plane::check(&self.edge_forces, &self.support_movements, layers)?;
        finite("normal_acceleration", self.normal_acceleration)?;
        for (i, t) in self.temperatures.iter().enumerate() {
            finite(format!("temperature {i}: rise"), t.rise)?;
            finite(format!("temperature {i}: difference"), t.difference)?;
            if t.layer >= layers {
                return Err(PanelError::Missing {
                    name: format!("temperature {i}"),
                    reason: format!("there is no layer {}", t.layer),
                });
            }
        }
        for (i, g) in self.growths.iter().enumerate() {
            g.check(&format!("growth {i}"), layers)?;
        }
        match self.missing_latches.iter().find(|&&m| m >= latches) {
            Some(m) => Err(PanelError::Missing {
                name: "missing_latches".into(),
                reason: format!("there is no latch {m}"),
            }),
            None => Ok(()),
        }
    }
}
