//! How far an answer may be from that of an infinitely fine mesh, from what changed between nested meshes.

use crate::math::ln;
use std::f64::consts::LN_2;

/// Estimate of the discretisation error.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ErrorEstimate {
    /// Error of the deflection anywhere, over the largest deflection.
    pub deflection: f64,
    /// Error of any latch force, over the largest; 0 without latches that pull.
    pub latch_force: f64,
    /// Error of the compression at its smallest and largest, m; 0 without gaskets.
    pub compression: f64,
    /// Order of convergence seen, if three meshes were used.
    pub order: Option<f64>,
    /// Triangles of the finest mesh.
    pub triangles: usize,
    /// Whether the deflection meets the tolerance asked for. If not, the value stands with this estimate.
    pub met: bool,
}

/// Factor from the last change to the error that is left.
///
/// When each halving of the mesh divides the error by 2^p, the error left is the last change over 2^p - 1. With p seen on three meshes
/// (limited to 0.5..=2, the range between the sharpest corners and smooth fields) and a safety of 1.5; with two meshes, p = 1.
pub(crate) fn error_left(last_change: f64, change_before: Option<f64>) -> (f64, Option<f64>) {
    match change_before.filter(|&b| b > 0.0 && last_change > 0.0) {
        None => (last_change, None),
        Some(before) => {
            let order = ln(before / last_change) / LN_2;
            let reduction = (before / last_change).clamp(2.0_f64.sqrt(), 4.0);
            (1.5 * last_change / (reduction - 1.0), Some(order))
        }
    }
}
