//! Rectangular plate under a force spread over a rectangular patch, at any place.

use super::isotropic::{check_small, check_thin, face_stress, flexural_rigidity};
use super::levy_patch::{Ends, Patch};
use super::{EdgeSupport, rectangle_patch};
use crate::prelude::*;

/// A patch's smaller side may be this small against the longer side of the plate: the series grows as its inverse.
const SMALLEST_PATCH: f64 = 1e-3;

/// Rectangular plate under a force spread evenly over a rectangular patch (a hand, a knee, a foot), supported or
/// clamped all round.
///
/// # Formula
/// D ∇⁴w = F/(u v) on the patch u × v, D = E t³/(12 (1 − ν²)). Supported: Lévy's series along the better side, the
/// borders of the patch by (1 + k d/2) e^(−k d). Clamped: such a series with one pair of edges clamped, plus clamped
/// polynomials that take the slopes off the other pair. σ = 6 M/t². Positive force pushes inward, so that the
/// deflection is negative; moments and stresses are those of the inner face.
///
/// # Validity
/// Thin, flat, isotropic, elastic; small deflection. Supported: deflection to 1e-8, moments to 1e-6; the largest moment
/// on the patch is found by search, to 1e-5. Clamped:
/// `moment_error` and `deflection_error` measure what is left (two resolutions compared at the patch): below 1e-6 unless
/// the patch lies in a corner of the plate or nearly fills it; past 1e-6 the outcome carries a caveat. A patch's smaller
/// side is at least 1/1000 of the longer side of the plate: the moment under a point has no finite value. A patch smaller
/// than the thickness carries a caveat: thin-plate theory overrates the stress there.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), art. 32 to 34 (supported, partial load),
/// art. 44 (clamped).
///
/// # Example
/// A supported square under a central load on a hundredth of its side: α = 0.0116 (art. 34) gives 11.6 mm for
/// F a²/D = 1 m.
/// ```
/// use coaming::plate::{EdgeSupport, RectangularPlatePatch};
/// use coaming::prelude::*;
///
/// let plate = RectangularPlatePatch {
///     length: m(1.0),
///     width: m(1.0),
///     thickness: mm(12.0),
///     youngs_modulus: gigapascal(70.0),
///     poissons_ratio: 0.3,
///     edge_support: EdgeSupport::Supported,
///     force: newton(1000.0),
///     patch_length: mm(10.0),
///     patch_width: mm(10.0),
///     patch_centre_along_length: mm(500.0),
///     patch_centre_along_width: mm(500.0),
/// };
/// let (outcome, _) = plate.calculate()?;
/// let alpha = -outcome.largest_deflection * outcome.flexural_rigidity / (plate.force * m(1.0) * m(1.0));
/// assert!((alpha.value - 0.0116).abs() < 0.0116e-3);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RectangularPlatePatch {
    /// Length of the plate between its supports, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the plate between its supports, b; it may be the longer side.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Thickness, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Young's modulus, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Poisson's ratio, ν.
    #[possible(-0.99..=0.5)]
    #[tested(0.0..=0.5)]
    pub poissons_ratio: f64,
    /// How the plate is held along its edge.
    pub edge_support: EdgeSupport,
    /// Force on the patch, F: positive pushes the plate inward.
    pub force: Force,
    /// Side of the patch along the length, u.
    #[possible(f64::MIN_POSITIVE..)]
    pub patch_length: Length,
    /// Side of the patch along the width, v.
    #[possible(f64::MIN_POSITIVE..)]
    pub patch_width: Length,
    /// Distance of the patch's centre from a corner of the plate, along the length.
    #[possible(f64::MIN_POSITIVE..)]
    pub patch_centre_along_length: Length,
    /// Distance of the patch's centre from the same corner, along the width.
    #[possible(f64::MIN_POSITIVE..)]
    pub patch_centre_along_width: Length,
}

/// Outcome of [`RectangularPlatePatch`]. Places are measured from the same corner as the patch's centre.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RectangularPlatePatchOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Pressure on the patch, F/(u v).
    pub patch_pressure: Pressure,
    /// Deflection of the patch's centre, outward positive.
    pub patch_deflection: Length,
    /// Deflection of the largest size, outward positive.
    pub largest_deflection: Length,
    /// Where that is, along the length.
    pub largest_deflection_along_length: Length,
    /// Where that is, along the width.
    pub largest_deflection_along_width: Length,
    /// Size of the largest deflection over the thickness.
    pub deflection_ratio: f64,
    /// Moment per length at the patch's centre that bends the length, positive where the inner face is in tension.
    pub patch_moment_along_length: Force,
    /// Moment per length at the patch's centre that bends the width.
    pub patch_moment_along_width: Force,
    /// Principal moment per length of the largest size on the patch.
    pub largest_patch_moment: Force,
    /// Moment per length of the largest size across an edge; zero where supported.
    pub largest_edge_moment: Force,
    /// Where that is, along the length.
    pub largest_edge_moment_along_length: Length,
    /// Where that is, along the width.
    pub largest_edge_moment_along_width: Length,
    /// Twisting moment per length of the largest size at a corner, its size; zero where clamped.
    pub corner_twisting_moment: Force,
    /// Principal stress of the largest size on the patch, on the inner face.
    #[shown_in("MPa")]
    pub largest_patch_stress: Pressure,
    /// Stress of the largest size across an edge, on the inner face.
    #[shown_in("MPa")]
    pub largest_edge_stress: Pressure,
    /// Size of the largest bending stress: patch, edges or corners.
    #[shown_in("MPa")]
    pub largest_stress: Pressure,
    /// Estimated relative error of the patch's deflection: zero where the series is summed to its last digit.
    pub deflection_error: f64,
    /// Estimated relative error of the moments at the patch.
    pub moment_error: f64,
}

impl RectangularPlatePatch {
    /// The patch's borders, in short sides; on the edge where they meet it but for rounding.
    fn patch(&self, scale: f64) -> Result<Patch, Error> {
        let (a, b) = (self.length.value, self.width.value);
        let (u, v) = (self.patch_length.value, self.patch_width.value);
        let smallest = SMALLEST_PATCH * a.max(b);
        for (name, side) in [("patch_length", u), ("patch_width", v)] {
            if side < smallest {
                return Err(self.impossible(
                    name,
                    "at least 1/1000 of the longer side of the plate: a point or a line load has no finite moment \
                     beneath it",
                ));
            }
        }
        let (x1, x2) = borders(self.patch_centre_along_length.value, u, a).ok_or_else(|| {
            self.impossible("patch_centre_along_length", "a place where the patch lies on the plate")
        })?;
        let (y1, y2) = borders(self.patch_centre_along_width.value, v, b).ok_or_else(|| {
            self.impossible("patch_centre_along_width", "a place where the patch lies on the plate")
        })?;
        let [a, b, x1, x2, y1, y2] = [a, b, x1, x2, y1, y2].map(|value| value / scale);
        Ok(Patch { a, b, x1, x2, y1, y2, ends: Ends::Supported })
    }
}

/// Low and high border; none where they pass the plate's edges by more than rounding.
fn borders(centre: f64, side: f64, plate: f64) -> Option<(f64, f64)> {
    let rounding = 1e-12 * plate;
    let (mut low, mut high) = (centre - 0.5 * side, centre + 0.5 * side);
    if low < -rounding || high > plate + rounding {
        return None;
    }
    if low <= rounding {
        low = 0.0;
    }
    if high >= plate - rounding {
        high = plate;
    }
    Some((low, high))
}

impl Calculation for RectangularPlatePatch {
    const NAME: &'static str = "rectangular_plate_patch";
    const SOURCE: &'static [Source] = &[Source {
        title: "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells",
        edition: "2nd ed., 1959",
        locator: "art. 32 to 34 and 44",
        standing: Standing::Computed,
    }];
    type Outcome = RectangularPlatePatchOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (t, nu) = (self.thickness.value, self.poissons_ratio);
        let short = self.length.value.min(self.width.value);
        let patch = self.patch(short)?;
        let d = flexural_rigidity(self.youngs_modulus.value, t, nu);
        let q = self.force.value / (self.patch_length.value * self.patch_width.value);
        let plate = rectangle_patch::solve(patch, self.edge_support == EdgeSupport::Clamped, nu);
        let moment = q * short * short;
        let deflection = moment * short * short / d;
        let (mx, my) = plate.at_patch.moments(nu);
        let stress = |value: f64| face_stress(moment * value, t);
        let worst = [plate.patch_moment.value, plate.edge_moment.value, plate.corner_twist]
            .iter()
            .fold(0.0, |worst: f64, value| worst.max(stress(*value).abs()));
        let largest = deflection * plate.deflection.value;
        check_thin(t, short, caveats);
        check_small(largest, t, caveats);
        if self.patch_length.value.min(self.patch_width.value) < t {
            caveats.add(Caveat::PatchWithinThickness);
        }
        if plate.moment_change > 1e-6 || plate.deflection_change > 1e-8 {
            caveats.add(Caveat::SeriesUnsettled);
        }
        Ok(RectangularPlatePatchOutcome {
            flexural_rigidity: si(d),
            patch_pressure: si(q),
            patch_deflection: si(-deflection * plate.at_patch.w),
            largest_deflection: si(-largest),
            largest_deflection_along_length: si(short * plate.deflection.x),
            largest_deflection_along_width: si(short * plate.deflection.y),
            deflection_ratio: (largest / t).abs(),
            patch_moment_along_length: si(moment * mx),
            patch_moment_along_width: si(moment * my),
            largest_patch_moment: si(moment * plate.patch_moment.value),
            largest_edge_moment: si(moment * plate.edge_moment.value),
            largest_edge_moment_along_length: si(short * plate.edge_moment.x),
            largest_edge_moment_along_width: si(short * plate.edge_moment.y),
            corner_twisting_moment: si((moment * plate.corner_twist).abs()),
            largest_patch_stress: si(stress(plate.patch_moment.value)),
            largest_edge_stress: si(stress(plate.edge_moment.value)),
            largest_stress: si(worst),
            deflection_error: plate.deflection_change,
            moment_error: plate.moment_change,
        })
    }
}
