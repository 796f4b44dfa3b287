//! From a bend allowance or a bend deduction back to the K-factor.

use crate::prelude::*;

/// K-factor of a bend whose allowance is known.
///
/// # Formula
/// K = (BA/α − r) / t.
///
/// # Validity
/// The allowance must put the neutral line within the sheet: 0 < K < 1.
///
/// # Source
/// The inverse of the allowance in FAA-H-8083-31A, ch. 4, U-channel layout, step 4.
///
/// # Example
/// By hand: (π/2)(0.16 + 0.4467 × 0.04) = 0.2794 in.
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::KFactorFromAllowance;
///
/// let (outcome, _) = KFactorFromAllowance {
///     bend_angle: deg(90.0),
///     inside_radius: inch(0.16),
///     thickness: inch(0.04),
///     bend_allowance: inch(0.2794),
/// }
/// .calculate()?;
/// assert!((outcome.k_factor - 0.4467).abs() < 0.0005);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct KFactorFromAllowance {
    /// Bend angle, α: the angle that the sheet is turned through.
    #[possible(f64::MIN_POSITIVE..=PI)]
    #[also(included_angle, super::supplement)]
    pub bend_angle: Angle,
    /// Inside radius, r.
    #[possible(0.0..)]
    pub inside_radius: Length,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Length of the neutral line within the bend, BA.
    #[possible(f64::MIN_POSITIVE..)]
    pub bend_allowance: Length,
}

/// K-factor of a bend whose deduction is known.
///
/// # Formula
/// BA = 2 OSSB − BD with OSSB = tan(α/2) (r + t); K = (BA/α − r) / t.
///
/// # Validity
/// Legs given to the virtual sharp; the deduction must put the neutral line within the sheet: 0 < K < 1.
///
/// # Source
/// The inverse of the deduction that follows from FAA-H-8083-31A, ch. 4, U-channel layout, steps 2 to 5.
///
/// # Example
/// Derived by hand: r = 3.2 mm, t = 2.5 mm, 90°: 2 × 5.7 − (π/2)(3.2 + 0.43 × 2.5) = 4.685 mm.
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::KFactorFromDeduction;
///
/// let (outcome, _) = KFactorFromDeduction {
///     bend_angle: deg(90.0),
///     inside_radius: mm(3.2),
///     thickness: mm(2.5),
///     bend_deduction: mm(4.685),
/// }
/// .calculate()?;
/// assert!((outcome.k_factor - 0.43).abs() < 0.0005);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct KFactorFromDeduction {
    /// Bend angle, α: the angle that the sheet is turned through.
    #[possible(f64::MIN_POSITIVE..3.1395)]
    #[also(included_angle, super::supplement)]
    pub bend_angle: Angle,
    /// Inside radius, r.
    #[possible(0.0..)]
    pub inside_radius: Length,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// What is taken off the sum of the two legs, BD.
    pub bend_deduction: Length,
}

/// Outcome of [`KFactorFromAllowance`] and [`KFactorFromDeduction`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct KFactorOutcome {
    /// Distance of the neutral axis from the inside face over the thickness, K.
    #[tested(0.25..=0.5)]
    pub k_factor: f64,
    /// Length of the neutral line within the bend, BA.
    pub bend_allowance: Length,
}

const SOURCE: &[Source] = &[Source {
    title: "FAA-H-8083-31A, Aviation Maintenance Technician Handbook - Airframe, vol. 1",
    edition: "2018",
    locator: "ch. 4, U-channel layout, steps 2 to 5, solved for the neutral axis",
    standing: Standing::Computed,
}];

/// The K-factor that gives an allowance; none where the neutral line would lie outside the sheet.
fn k_factor(ba: f64, alpha: f64, r: f64, t: f64) -> Option<f64> {
    let k = (ba / alpha - r) / t;
    if k > 0.0 && k < 1.0 { Some(k) } else { None }
}

impl Calculation for KFactorFromAllowance {
    const NAME: &'static str = "k_factor_from_allowance";
    const SOURCE: &'static [Source] = SOURCE;
    type Outcome = KFactorOutcome;

    fn formula(&self, _: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (alpha, r, t) = (self.bend_angle.value, self.inside_radius.value, self.thickness.value);
        let ba = self.bend_allowance.value;
        let k = k_factor(ba, alpha, r, t).ok_or_else(|| {
            let within = format!(
                "between {} and {}, so that the neutral line lies within the sheet",
                si::<Length>(alpha * r).shown(),
                si::<Length>(alpha * (r + t)).shown()
            );
            self.impossible("bend_allowance", within)
        })?;
        Ok(KFactorOutcome { k_factor: k, bend_allowance: si(ba) })
    }
}

impl Calculation for KFactorFromDeduction {
    const NAME: &'static str = "k_factor_from_deduction";
    const SOURCE: &'static [Source] = SOURCE;
    type Outcome = KFactorOutcome;

    fn formula(&self, _: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (alpha, r, t) = (self.bend_angle.value, self.inside_radius.value, self.thickness.value);
        let setbacks = 2.0 * (r + t) * math::tan(alpha / 2.0);
        let ba = setbacks - self.bend_deduction.value;
        let k = k_factor(ba, alpha, r, t).ok_or_else(|| {
            let within = format!(
                "between {} and {}, so that the neutral line lies within the sheet",
                si::<Length>(setbacks - alpha * (r + t)).shown(),
                si::<Length>(setbacks - alpha * r).shown()
            );
            self.impossible("bend_deduction", within)
        })?;
        Ok(KFactorOutcome { k_factor: k, bend_allowance: si(ba) })
    }
}
