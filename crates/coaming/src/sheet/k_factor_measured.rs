//! The neutral axis from a bent test strip.

use super::length_reference::{AboveNinety, LengthReference, past_tangent_line};
use crate::prelude::*;

/// Neutral axis measured from a test strip with one bend, with its uncertainty.
///
/// # Formula
///
/// A strip of flat length L is bent once and its two legs A and B are measured, both to the same reference.
///
/// - what a leg length goes past the tangent line: z = (r + e) tan(α/2), e by the reference as in `profile`
/// - bend allowance BA = L − (A − z) − (B − z); deduction BD = A + B − L; K = (BA/α − r) / t
/// - uncertainty: u = √Σ (∂K/∂x · uₓ)² over L, A, B, α, r and t; worst case Σ |∂K/∂x · uₓ|
///
/// with ∂K/∂L = −∂K/∂A = −∂K/∂B = 1/(α t), ∂K/∂r = (2 z'ᵣ/α − 1)/t, ∂K/∂t = (2 z'ₜ/α − K)/t and
/// ∂K/∂α = (2 z'ₐ − BA/α)/(α t), where z'ᵣ, z'ₜ and z'ₐ are the derivatives of z.
///
/// # Validity
///
/// One bend, square to the strip. The uncertainties are small against the values, all in the same sense (all standard, or
/// all limits), and independent for the first figure. At 90° exactly the derivative by α is that to the virtual sharp, the larger of
/// the two. Measure the radius: it weighs as much as the lengths, and in air bending it is set by the die. K that is not between 0 and 1 is an error, K outside 0.25 to
/// 0.50 bears a caveat. Several strips, averaged, lower the part of the uncertainty that is due to reading.
///
/// # Source
///
/// Geometry, the inverse of the bend allowance; propagation of uncertainty after JCGM 100:2008, clause 5.1.2, equation 10.
///
/// # Example
///
/// The handbook's bend: flats of 0.8 and 1.6 in with an allowance of 0.2791 in, R 0.16 in, T 0.04 in, has its neutral
/// axis at 0.4467 T within the rounding of the printed formula (B004); so a strip of 2.6791 in must have legs of 1.000 and 1.800 in.
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) = KFactorMeasured {
///     flat_length: inch(2.6791),
///     first_leg: inch(1.0),
///     second_leg: inch(1.8),
///     reference: LengthReference::Outside,
///     above_ninety: AboveNinety::TangentPlane,
///     bend_angle: deg(90.0),
///     inside_radius: inch(0.16),
///     thickness: inch(0.04),
///     flat_length_uncertainty: inch(0.002),
///     leg_uncertainty: inch(0.002),
///     bend_angle_uncertainty: deg(0.5),
///     inside_radius_uncertainty: inch(0.005),
///     thickness_uncertainty: inch(0.001),
/// }
/// .calculate()?;
/// assert!((outcome.k_factor - 0.4467).abs() < 0.008);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct KFactorMeasured {
    /// Length of the flat strip before bending, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub flat_length: Length,
    /// First leg of the bent strip, A.
    #[possible(f64::MIN_POSITIVE..)]
    pub first_leg: Length,
    /// Second leg of the bent strip, B.
    #[possible(f64::MIN_POSITIVE..)]
    pub second_leg: Length,
    /// What both legs are measured to.
    pub reference: LengthReference,
    /// What outside, inside and mid lengths go to at a bend of more than 90°.
    pub above_ninety: AboveNinety,
    /// Bend angle as measured, α: the angle the sheet is turned through.
    #[possible(f64::MIN_POSITIVE..=PI)]
    #[also(included_angle, super::supplement)]
    pub bend_angle: Angle,
    /// Inside radius as measured, r.
    #[possible(0.0..)]
    pub inside_radius: Length,
    /// Thickness as measured, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Uncertainty of the flat length, ±.
    #[possible(0.0..)]
    pub flat_length_uncertainty: Length,
    /// Uncertainty of each leg, ±.
    #[possible(0.0..)]
    pub leg_uncertainty: Length,
    /// Uncertainty of the bend angle, ±.
    #[possible(0.0..)]
    pub bend_angle_uncertainty: Angle,
    /// Uncertainty of the inside radius, ±.
    #[possible(0.0..)]
    pub inside_radius_uncertainty: Length,
    /// Uncertainty of the thickness, ±.
    #[possible(0.0..)]
    pub thickness_uncertainty: Length,
}

/// The neutral axis of a test strip.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct KFactorMeasuredOutcome {
    /// Neutral axis, K: its distance from the inside face over the thickness.
    pub k_factor: f64,
    /// Uncertainty of K, ±: root sum of squares of the parts.
    pub k_factor_uncertainty: f64,
    /// Largest error of K, ±: sum of the parts.
    pub k_factor_worst_case: f64,
    /// Length of the neutral line in the bend, BA.
    pub bend_allowance: Length,
    /// What the two legs exceed the flat by, BD.
    pub bend_deduction: Length,
    /// Part of the uncertainty that is due to the flat length.
    pub from_flat_length: f64,
    /// Part that is due to each of the two legs.
    pub from_each_leg: f64,
    /// Part that is due to the bend angle.
    pub from_bend_angle: f64,
    /// Part that is due to the inside radius.
    pub from_inside_radius: f64,
    /// Part that is due to the thickness.
    pub from_thickness: f64,
}

impl Calculation for KFactorMeasured {
    const NAME: &'static str = "k_factor_measured";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "FAA-H-8083-31A, Aviation Maintenance Technician Handbook - Airframe",
            edition: "2018",
            locator: "vol. 1, ch. 4, U-channel layout",
            standing: Standing::Read,
        },
        Source {
            title: "JCGM 100, Guide to the expression of uncertainty in measurement",
            edition: "2008",
            locator: "clause 5.1.2, equation 10",
            standing: Standing::Memory,
        },
    ];
    type Outcome = KFactorMeasuredOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, r, t) = (self.bend_angle.value, self.inside_radius.value, self.thickness.value);
        let past = past_tangent_line(self.reference, self.above_ninety, a, r, t)
            .map_err(|reason| Error::inconsistent("reference, bend_angle", reason))?;
        let legs = self.first_leg.value + self.second_leg.value;
        if self.first_leg.value.min(self.second_leg.value) < past.distance {
            return Err(Error::inconsistent(
                "first_leg, second_leg",
                format!(
                    "a leg ends inside the bend; accepted: at least {:.4} mm for this reference",
                    past.distance * 1e3
                ),
            ));
        }
        let bend_deduction = legs - self.flat_length.value;
        let bend_allowance = self.flat_length.value - (legs - 2.0 * past.distance);
        let k = (bend_allowance / a - r) / t;
        if k <= 0.0 || k >= 1.0 {
            return Err(Error::inconsistent(
                "flat_length, first_leg, second_leg, inside_radius",
                format!(
                    "they put the neutral axis outside the sheet (K = {k:.3}); accepted: measurements that give K between 0 and 1"
                ),
            ));
        }
        if !(0.25..=0.5).contains(&k) {
            caveats.add(Caveat::UnusualKFactor);
        }
        if r < t / 2.0 {
            caveats.add(Caveat::SharpBend);
        }

        let from_flat_length = self.flat_length_uncertainty.value / (a * t);
        let from_each_leg = self.leg_uncertainty.value / (a * t);
        let from_bend_angle =
            ((2.0 * past.by_angle - bend_allowance / a) / (a * t)).abs() * self.bend_angle_uncertainty.value;
        let from_inside_radius =
            ((2.0 * past.by_radius / a - 1.0) / t).abs() * self.inside_radius_uncertainty.value;
        let from_thickness = ((2.0 * past.by_thickness / a - k) / t).abs() * self.thickness_uncertainty.value;
        let parts = [
            from_flat_length,
            from_each_leg,
            from_each_leg,
            from_bend_angle,
            from_inside_radius,
            from_thickness,
        ];

        Ok(KFactorMeasuredOutcome {
            k_factor: k,
            k_factor_uncertainty: parts.iter().map(|part| part * part).sum::<f64>().sqrt(),
            k_factor_worst_case: parts.iter().sum(),
            bend_allowance: si(bend_allowance),
            bend_deduction: si(bend_deduction),
            from_flat_length,
            from_each_leg,
            from_bend_angle,
            from_inside_radius,
            from_thickness,
        })
    }
}
