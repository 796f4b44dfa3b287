//! Factors at which what acts in the plane makes a panel buckle.

use crate::geometry::point::Point;
use crate::model::load::LayerTemperature;

/// One way to buckle.
#[derive(Debug, Clone, PartialEq)]
pub struct BucklingMode {
    /// What acts in the plane times this makes the panel buckle.
    pub factor: f64,
    /// Estimate of the error of the factor, as a share of it.
    pub error: f64,
    /// Deflection of every vertex, scaled so that the largest in size is 1.
    pub shape: Vec<f64>,
}

/// The ways to buckle, lowest factor first, with the mesh.
#[derive(Debug, Clone, PartialEq)]
pub struct Buckling {
    /// The ways to buckle; empty where nothing presses the panel together.
    pub modes: Vec<BucklingMode>,
    /// Vertices of the mesh.
    pub vertices: Vec<Point>,
    /// Triangles, three vertices each.
    pub triangles: Vec<[usize; 3]>,
    /// Whether every factor meets the tolerance asked for. If not, the values stand with their estimates.
    pub met: bool,
}

/// Temperatures at which a panel buckles.
#[derive(Debug, Clone, PartialEq)]
pub struct CriticalRise {
    /// The given temperatures times this make the panel buckle.
    pub factor: f64,
    /// Estimate of the error of the factor, as a share of it.
    pub error: f64,
    /// The given temperatures times the factor.
    pub temperatures: Vec<LayerTemperature>,
    /// Whether the factor meets the tolerance asked for.
    pub met: bool,
}
