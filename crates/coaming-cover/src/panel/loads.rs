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

/// Growth of one layer that its temperature does not explain, as by moisture: the strains that it would show if nothing held it, beside
/// those at which the panel is flat and free of stress.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LayerGrowth {
    /// Name of the layer.
    pub layer: String,
    /// Strain at the middle of the layer, of an orthotropic one along axis 1.
    #[possible(-0.2..=0.2)]
    pub strain: f64,
    /// Strain at the middle along axis 2; as `strain` if absent.
    #[possible(-0.2..=0.2)]
    pub strain_2: Option<f64>,
    /// Strain at the outer face minus that at the inner, of an orthotropic layer along axis 1; none if absent.
    #[possible(-0.2..=0.2)]
    pub gradient: Option<f64>,
    /// The same along axis 2; as `gradient` if absent.
    #[possible(-0.2..=0.2)]
    pub gradient_2: Option<f64>,
}

/// A force in the plane along an edge, at the middle of one layer.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct EdgeForceAlong {
    /// The edge of the outline or of a hole.
    pub edge: Edge,
    /// Name of the layer that it pulls.
    pub layer: String,
    /// Pull per length at right angles to the edge, positive where it stretches the layer; none if absent.
    pub outward: Option<ForcePerLength>,
    /// Force per length along x; none if absent.
    pub along_x: Option<ForcePerLength>,
    /// Force per length along y; none if absent.
    pub along_y: Option<ForcePerLength>,
}

/// A support along a line that has moved in the plane, with every layer that it holds.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SupportMovement {
    /// Index of the support in `line_supports`, from 0. It must hold what it moves.
    pub support: u32,
    /// How far along x; not at all if absent.
    pub along_x: Option<Length>,
    /// How far along y; not at all if absent.
    pub along_y: Option<Length>,
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
    /// Growth of layers of any other kind, as by moisture.
    pub growths: Option<Vec<LayerGrowth>>,
    /// Forces in the plane along edges.
    pub edge_forces: Option<Vec<EdgeForceAlong>>,
    /// Supports along lines that have moved in the plane.
    pub support_movements: Option<Vec<SupportMovement>>,
    /// Names of the latches that are missing.
    pub missing_latches: Option<Vec<String>>,
    /// How many natural modes about this equilibrium are wanted; none if absent.
    #[possible(1.0..=100.0)]
    pub modes: Option<u32>,
    /// True where the travel that frees every latch is wanted.
    pub opening: Option<bool>,
    /// True where the stretching that the deflection itself brings is to be counted: past about half the thickness linear theory does not
    /// hold. How the edges are held in the plane then decides by up to a factor of two: it is what the supports say, free where they say
    /// nothing. Modes and opening stay those of linear theory.
    pub large_deflection: Option<bool>,
    /// How many factors are wanted by which what acts in the plane makes the panel buckle; none if absent.
    #[possible(1.0..=20.0)]
    pub buckling: Option<u32>,
    /// True where the temperatures are wanted, in proportion to those of the load case, at which the panel buckles.
    pub critical_rise: Option<bool>,
}
