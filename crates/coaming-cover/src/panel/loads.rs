//! Load cases of a panel. Pressures are positive where they push the panel onto its seal; forces are positive outward.

use super::shape::{Edge, Line, Shape};
use crate::document::Point;
use coaming::prelude::*;

/// A pressure on the whole panel or on a region, uniform or linear over the plane.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PressureOn {
    /// Pressure at the origin, positive where it pushes the panel onto its seal (against z).
    pub pressure: Pressure,
    /// Its increase per distance along x; none if absent.
    pub increase_along_x: Option<ForcePerVolume>,
    /// Its increase per distance along y; none if absent.
    pub increase_along_y: Option<ForcePerVolume>,
    /// Where it acts; on the whole panel if absent.
    pub region: Option<Shape>,
}

/// A force spread evenly over a patch.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PatchForce {
    /// The patch; all of it must lie on the panel for all of the force to act.
    pub patch: Shape,
    /// The force, positive outward.
    pub force: Force,
}

/// A force at a point.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ForceAt {
    /// Where.
    pub at: Point,
    /// The force, positive outward.
    pub force: Force,
}

/// A force along a line.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ForceAlong {
    /// Where.
    pub line: Line,
    /// Force per length, positive outward.
    pub force: ForcePerLength,
}

/// A moment along an edge.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct EdgeMomentAlong {
    /// The edge of the outline or of a hole.
    pub edge: Edge,
    /// Moment per length, positive where it bends the edge outward.
    pub moment: Force,
}

/// Temperature of one layer above the one at which the panel is flat and free of stress.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LayerRise {
    /// Name of the layer.
    pub layer: String,
    /// Rise at the middle of the layer.
    pub rise: TemperatureDifference,
    /// Outer face minus inner face; none if absent.
    pub gradient: Option<TemperatureDifference>,
}

/// All loads that act together, and what is asked about them.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PanelLoadCase {
    /// Its name.
    pub name: String,
    /// Pressures.
    pub pressures: Option<Vec<PressureOn>>,
    /// Forces on patches.
    pub patches: Option<Vec<PatchForce>>,
    /// Forces at points.
    pub point_forces: Option<Vec<ForceAt>>,
    /// Forces along lines.
    pub line_forces: Option<Vec<ForceAlong>>,
    /// Moments along edges.
    pub edge_moments: Option<Vec<EdgeMomentAlong>>,
    /// Acceleration of gravity along z times any factor, positive outward: -1 gn for a panel that lies outer face up.
    pub normal_acceleration: Option<Acceleration>,
    /// Temperatures of layers.
    pub temperatures: Option<Vec<LayerRise>>,
    /// Names of the latches that are missing.
    pub missing_latches: Option<Vec<String>>,
    /// How many natural modes about this equilibrium are wanted; none if absent.
    #[possible(1.0..=100.0)]
    pub modes: Option<u32>,
    /// True where the travel that frees every latch is wanted.
    pub opening: Option<bool>,
}
