//! The values of a solved panel over its mesh, and how sure they are. Deflections are positive outward, stress in tension.
//!
//! They are plain SI numbers, with the unit in the name, ready to be plotted or summed.

use super::place::StressAt;
use coaming::prelude::*;

/// How far the solution may be from that of an infinitely fine mesh; each is absent where no finer mesh was allowed to compare with.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MeshError {
    /// Error of the deflection anywhere, over the largest.
    pub deflection: Option<f64>,
    /// Error of any latch's force, over the largest.
    pub latch_force: Option<f64>,
    /// Error of the smallest and largest compression.
    pub compression: Option<Length>,
    /// Error of the largest moment, over it. Under a bare point and in a sharp inner corner the moment grows without bound: this then says how
    /// much a finer mesh would add.
    pub moment: Option<f64>,
    /// Error of the largest force in the plane, over it; 0 where none passes. What is said of the moment goes for it too.
    pub membrane_force: Option<f64>,
    /// Triangles of the finest mesh.
    pub triangles: u32,
    /// True where the deflection meets the tolerance.
    pub met: bool,
}

/// What is left when all forces and moments are added.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BalanceLeft {
    /// Sum of all forces over the sum of their sizes.
    pub force: f64,
    /// Sum of all moments over the sum of the forces' sizes times the size of the panel.
    pub moment: f64,
    /// Sum of all forces in the plane over the sum of their sizes (of their turning over the size of the panel, if that is larger).
    pub in_plane: f64,
}

/// Stress in one layer: the larger principal stress in size on each face, and its course over the layer's triangles.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LayerStresses {
    /// Name of the layer.
    pub layer: String,
    /// Largest in size on the inner face.
    pub inner: StressAt,
    /// Largest in size on the outer face.
    pub outer: StressAt,
    /// Triangles that the layer covers, by index.
    pub triangles: Vec<u32>,
    /// Larger principal stress on the inner face at the middle of each of them, Pa.
    pub inner_larger_pa: Vec<f64>,
    /// Smaller principal stress on the inner face, Pa.
    pub inner_smaller_pa: Vec<f64>,
    /// Larger principal stress on the outer face, Pa.
    pub outer_larger_pa: Vec<f64>,
    /// Smaller principal stress on the outer face, Pa.
    pub outer_smaller_pa: Vec<f64>,
}

/// The values over the mesh.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MeshField {
    /// Vertices: x, m.
    pub x_m: Vec<f64>,
    /// Vertices: y, m.
    pub y_m: Vec<f64>,
    /// Triangles: indices of three vertices each, one after another.
    pub triangles: Vec<u32>,
    /// Deflection at the vertices, m.
    pub deflection_m: Vec<f64>,
    /// Slope along x at the vertices.
    pub slope_x: Vec<f64>,
    /// Slope along y at the vertices.
    pub slope_y: Vec<f64>,
    /// Moment per length at the middle of the triangles, xx, N; positive stretches the outer face.
    pub moment_xx_n: Vec<f64>,
    /// Moment per length, yy, N.
    pub moment_yy_n: Vec<f64>,
    /// Moment per length, xy, N.
    pub moment_xy_n: Vec<f64>,
    /// Force in the plane per length at the middle of the triangles, of all layers, xx, N/m; positive in tension.
    pub membrane_xx_n_per_m: Vec<f64>,
    /// Force in the plane per length, yy, N/m.
    pub membrane_yy_n_per_m: Vec<f64>,
    /// Force in the plane per length, xy, N/m.
    pub membrane_xy_n_per_m: Vec<f64>,
}
