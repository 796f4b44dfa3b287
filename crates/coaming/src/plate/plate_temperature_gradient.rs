//! Plate with one face warmer than the other: free bow, bow of a supported plate, moment of a clamped one.

use super::isotropic::flexural_rigidity;
use crate::prelude::*;

/// Rectangular plate with a temperature gradient through its thickness: free bow, supported bow, clamped moment and stress.
///
/// # Formula
/// Free: curvature α ΔT/t in every direction, bow κ L²/8 over a span L. Clamped all round: flat, M = D (1 + ν) α ΔT/t,
/// σ = E α ΔT/(2 (1 − ν)). Supported all round: ∇²w = −(1 + ν) α ΔT/t with w = 0 at the edge, so that
/// w0 = (1 + ν) α ΔT/t s² (1/8 − (4/π³) Σ ± 1/(m³ cosh(m π l/(2 s)))), m odd, s and l the sides.
///
/// # Validity
/// Linear course of temperature through the thickness, the same all over; thin, isotropic, elastic; properties at the mean
/// temperature; small deflection (caveat where the supported bow passes t/2). The gradient is that of the outer face less the
/// inner one; the plate bows towards the warmer face.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), art. 14 (free, clamped) and art. 24
/// (supported).
///
/// # Example
/// E = 70 GPa, α = 23.6e-6 1/K, 10 K from face to face, ν = 0.33: 12.33 MPa when clamped (art. 14).
/// ```
/// use coaming::plate::PlateTemperatureGradient;
/// use coaming::prelude::*;
///
/// let plate = PlateTemperatureGradient {
///     length: mm(500.0),
///     width: mm(300.0),
///     thickness: mm(2.0),
///     youngs_modulus: gigapascal(70.0),
///     poissons_ratio: 0.33,
///     expansion: per_kelvin(23.6e-6),
///     gradient: delta_kelvin(10.0),
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.clamped_stress - megapascal(12.33)).abs() < megapascal(0.01));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PlateTemperatureGradient {
    /// Length of the plate, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the plate, b.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Thickness, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Young's modulus at the mean temperature, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Poisson's ratio, ν.
    #[possible(-0.99..=0.5)]
    #[tested(0.0..=0.5)]
    pub poissons_ratio: f64,
    /// Coefficient of linear expansion, α.
    pub expansion: Expansion,
    /// Temperature of the outer face less that of the inner face, ΔT.
    pub gradient: TemperatureDifference,
}

/// Outcome of [`PlateTemperatureGradient`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct PlateTemperatureGradientOutcome {
    /// Curvature of the free plate; positive where the middle stands outward.
    pub free_curvature: Curvature,
    /// Bow of the free plate over its length, middle against ends, outward positive.
    pub free_bow_along_length: Length,
    /// Bow of the free plate over its width, outward positive.
    pub free_bow_along_width: Length,
    /// Deflection of the centre of a plate supported all round, outward positive.
    pub supported_bow: Length,
    /// Moment per length all over a plate clamped all round: positive where the inner face is in tension.
    pub clamped_moment: Force,
    /// Stress on the inner face of the clamped plate, in all directions; the outer face has the opposite.
    #[shown_in("MPa")]
    pub clamped_stress: Pressure,
}

/// Deflection of the centre by ∇²w = −1, w = 0 at the edge, over the short side squared; ratio long over short.
fn membrane_centre(ratio: f64) -> f64 {
    let mut sum = 0.0;
    let mut sign = 1.0;
    let mut m = 1.0;
    loop {
        let e = math::exp(-0.5 * m * PI * ratio);
        let term = 2.0 * e / (1.0 + e * e) / (m * m * m);
        sum += sign * term;
        if term < 1e-18 {
            break;
        }
        sign = -sign;
        m += 2.0;
    }
    0.125 - 4.0 / (PI * PI * PI) * sum
}

impl Calculation for PlateTemperatureGradient {
    const NAME: &'static str = "plate_temperature_gradient";
    const SOURCE: &'static [Source] = &[Source {
        title: "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells",
        edition: "2nd ed., 1959",
        locator: "art. 14 and 24",
        standing: Standing::Memory,
    }];
    type Outcome = PlateTemperatureGradientOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, t) = (self.length.value, self.width.value, self.thickness.value);
        let (e, nu) = (self.youngs_modulus.value, self.poissons_ratio);
        let curvature = self.expansion.value * self.gradient.value / t;
        let short = a.min(b);
        let supported = (1.0 + nu) * curvature * short * short * membrane_centre(a.max(b) / short);
        let moment = flexural_rigidity(e, t, nu) * (1.0 + nu) * curvature;
        super::isotropic::check_small(supported, t, caveats);
        Ok(PlateTemperatureGradientOutcome {
            free_curvature: si(curvature),
            free_bow_along_length: si(0.125 * curvature * a * a),
            free_bow_along_width: si(0.125 * curvature * b * b),
            supported_bow: si(supported),
            clamped_moment: si(moment),
            clamped_stress: si(super::isotropic::face_stress(moment, t)),
        })
    }
}
