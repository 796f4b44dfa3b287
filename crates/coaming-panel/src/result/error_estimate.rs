//! How far an answer may be from that of an infinitely fine mesh, from what changed between two meshes.

use crate::math::ln;

/// Estimate of the discretisation error.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ErrorEstimate {
    /// Error of the deflection anywhere, over the largest deflection.
    pub deflection: f64,
    /// Error of any latch force, over the largest; 0 without latches that pull.
    pub latch_force: f64,
    /// Error of the compression at its smallest and largest, m; 0 without gaskets.
    pub compression: f64,
    /// Error of the largest moment, over that moment. Under a bare point and in a sharp inner corner the moment grows without bound: this
    /// then says how much a finer mesh would add, and no mesh is fine enough.
    pub moment: f64,
    /// Error of the largest force in the plane, over that force; 0 where none passes. What is said of the moment goes for it too.
    pub membrane_force: f64,
    /// Order of convergence seen between the last two meshes, in the energy's error against the mean size of the triangles.
    pub order: Option<f64>,
    /// Triangles of the finest mesh.
    pub triangles: usize,
    /// Whether the deflection meets the tolerance asked for. If not, the value stands with this estimate.
    pub met: bool,
}

/// Safety on the estimates of deflections and forces.
pub(crate) const SAFETY: f64 = 1.5;
/// Safety on those of frequencies, of which a few may all lie close to the tolerance.
pub(crate) const SAFETY_OF_MODES: f64 = 3.0;

/// Factor from the last change of a quantity to the error that is left in it.
///
/// Errors of deflections and forces fall as the energy's error, the square of the recovered field's distance from the triangles' own.
/// Where that square fell to 1/r from one mesh to the next, the error left is the change over r - 1: whatever the refinement did not
/// reach keeps r near 1 and the estimate large. r is kept within 1.25..=4, the range between a refinement that
/// missed and a halving of every triangle in a smooth field; from the first mesh, which may be too coarse for its indicators to be
/// trusted, to the second, at most 2.
pub(crate) fn share_left(square_before: f64, square: f64, from_first: bool) -> f64 {
    let most = if from_first { 2.0 } else { 4.0 };
    let reduction = if square > 0.0 { (square_before / square).clamp(1.25, most) } else { most };
    1.0 / (reduction - 1.0)
}

/// Share of a frequency that is left as an error where there is but one mesh: half of what the energy of the mode errs by, for the energy
/// goes as the square of the frequency.
pub(crate) fn share_of_one_mesh(square_over_energy: f64) -> f64 {
    0.5 * square_over_energy
}

/// Order of convergence from the squares of two indicators and the triangles of their meshes.
pub(crate) fn order(
    square_before: f64,
    square: f64,
    triangles_before: usize,
    triangles: usize,
) -> Option<f64> {
    let finer = triangles as f64 / triangles_before as f64;
    (square > 0.0 && square_before > 0.0 && finer > 1.0).then(|| 2.0 * ln(square_before / square) / ln(finer))
}
