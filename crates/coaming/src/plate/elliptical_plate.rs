//! Clamped elliptical plate under uniform pressure.

use super::isotropic::{check_small, check_thin, face_stress, flexural_rigidity};
use crate::prelude::*;

/// Elliptical plate under uniform pressure, clamped all round.
///
/// # Formula
/// w = w0 (1 − x²/a² − y²/b²)², w0 = q/(D (24/a⁴ + 16/(a² b²) + 24/b⁴)), a and b half of length and width. At the centre
/// M_x = 4 D w0 (1/a² + ν/b²); across the edge at the end of the length M = −8 D w0/a² and the reaction 8 D w0 (3/a² +
/// 1/b²)/a; the same with a and b exchanged. σ = 6 M/t².
///
/// # Validity
/// Thin, flat, isotropic, elastic; small deflection; exact within thin-plate theory. Caveats: deflection past t/2; t over
/// 1/20 of the shorter side.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), art. 71.
///
/// # Example
/// A circle of 1 m radius: D = 10 kN·m, q = 1 kPa, w0 = q a⁴/(64 D) = 1.5625 mm.
/// ```
/// use coaming::plate::EllipticalPlate;
/// use coaming::prelude::*;
///
/// let plate = EllipticalPlate {
///     length: m(2.0),
///     width: m(2.0),
///     thickness: mm(10.0),
///     youngs_modulus: gigapascal(109.2),
///     poissons_ratio: 0.3,
///     pressure: kilopascal(1.0),
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.centre_deflection - mm(-1.5625)).abs() < mm(1e-9));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct EllipticalPlate {
    /// Length of the plate between its clamped ends, 2 a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the plate between its clamped sides, 2 b; it may be the longer one.
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
    /// Pressure, q: positive pushes the plate inward.
    pub pressure: Pressure,
}

/// Outcome of [`EllipticalPlate`]. Moments and stresses are those of the inner face, positive where it is in tension.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct EllipticalPlateOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Deflection of the centre, outward positive.
    pub centre_deflection: Length,
    /// Size of the centre's deflection over the thickness.
    pub deflection_ratio: f64,
    /// Moment per length that bends along the length, at the centre.
    pub centre_moment_along_length: Force,
    /// Moment per length that bends along the width, at the centre.
    pub centre_moment_along_width: Force,
    /// Moment per length across the edge at the ends of the length.
    pub length_end_moment: Force,
    /// Moment per length across the edge at the ends of the width.
    pub width_end_moment: Force,
    /// Size of the largest stress, at the ends of the shorter side.
    #[shown_in("MPa")]
    pub largest_stress: Pressure,
    /// Reaction per length of the edge at the ends of the length, outward positive.
    pub length_end_reaction: ForcePerLength,
    /// Reaction per length of the edge at the ends of the width.
    pub width_end_reaction: ForcePerLength,
}

impl Calculation for EllipticalPlate {
    const NAME: &'static str = "elliptical_plate";
    const SOURCE: &'static [Source] = &[Source {
        title: "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells",
        edition: "2nd ed., 1959",
        locator: "art. 71",
        standing: Standing::Memory,
    }];
    type Outcome = EllipticalPlateOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, t) = (0.5 * self.length.value, 0.5 * self.width.value, self.thickness.value);
        let (nu, q) = (self.poissons_ratio, self.pressure.value);
        let d = flexural_rigidity(self.youngs_modulus.value, t, nu);
        let (a2, b2) = (1.0 / (a * a), 1.0 / (b * b));
        // D w0
        let dw = q / (24.0 * a2 * a2 + 16.0 * a2 * b2 + 24.0 * b2 * b2);
        let (centre_x, centre_y) = (4.0 * dw * (a2 + nu * b2), 4.0 * dw * (b2 + nu * a2));
        let (end_x, end_y) = (-8.0 * dw * a2, -8.0 * dw * b2);
        let w = dw / d;
        check_thin(t, 2.0 * a.min(b), caveats);
        check_small(w, t, caveats);
        let largest = [centre_x, centre_y, end_x, end_y].iter().fold(0.0, |worst: f64, m| worst.max(m.abs()));
        Ok(EllipticalPlateOutcome {
            flexural_rigidity: si(d),
            centre_deflection: si(-w),
            deflection_ratio: (w / t).abs(),
            centre_moment_along_length: si(centre_x),
            centre_moment_along_width: si(centre_y),
            length_end_moment: si(end_x),
            width_end_moment: si(end_y),
            largest_stress: si(face_stress(largest, t)),
            length_end_reaction: si(8.0 * dw * (3.0 * a2 + b2) / a),
            width_end_reaction: si(8.0 * dw * (3.0 * b2 + a2) / b),
        })
    }
}
