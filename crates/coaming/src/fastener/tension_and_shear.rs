//! Tension and shear together on one screw.

use crate::prelude::*;

/// Tension and shear together on one screw, by the interaction of their ratios.
///
/// # Formula
/// Rt = tension/allowed tension, Rs = shear/allowed shear; the screw holds where Rt² + Rs³ ≤ 1.
/// Allowed Rt beside the shear that is there: √(1 − Rs³); zero where the shear alone uses the screw up.
///
/// # Validity
/// Steel screws with the shear plane in the full shank or in the thread, each with its own allowed shear; no bending.
///
/// # Source
/// NASA RP-1228, Fastener Design Manual (1990), combined loading of bolts (exponents unverified).
///
/// # Example
/// At Rs = 0.6 the tension may use 0.8854 of its limit (confirmed by computation).
/// ```
/// use coaming::fastener::TensionAndShear;
/// use coaming::prelude::*;
///
/// let (screw, _) = TensionAndShear {
///     tension: newton(500.0),
///     allowed_tension: newton(1000.0),
///     shear: newton(600.0),
///     allowed_shear: newton(1000.0),
/// }
/// .calculate()?;
/// assert!((screw.allowed_tension_ratio - 0.8854).abs() < 0.0001);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct TensionAndShear {
    /// Tension on the screw.
    #[possible(0.0..)]
    pub tension: Force,
    /// Tension that it may carry alone.
    #[possible(f64::MIN_POSITIVE..)]
    pub allowed_tension: Force,
    /// Shear on the screw.
    #[possible(0.0..)]
    pub shear: Force,
    /// Shear that it may carry alone.
    #[possible(f64::MIN_POSITIVE..)]
    pub allowed_shear: Force,
}

/// Outcome of [`TensionAndShear`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct TensionAndShearOutcome {
    /// Tension ratio, Rt.
    pub tension_ratio: f64,
    /// Shear ratio, Rs.
    pub shear_ratio: f64,
    /// Interaction, Rt² + Rs³: holds up to 1.
    pub interaction: f64,
    /// Tension ratio that is allowed beside this shear.
    pub allowed_tension_ratio: f64,
}

impl Calculation for TensionAndShear {
    const NAME: &'static str = "tension_and_shear";
    const SOURCE: &'static [Source] = &[Source {
        title: "NASA RP-1228, Fastener Design Manual",
        edition: "1990",
        locator: "combined loading of bolts",
        standing: Standing::Memory,
    }];
    type Outcome = TensionAndShearOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let rt = self.tension.value / self.allowed_tension.value;
        let rs = self.shear.value / self.allowed_shear.value;
        Ok(TensionAndShearOutcome {
            tension_ratio: rt,
            shear_ratio: rs,
            interaction: rt * rt + math::cube(rs),
            allowed_tension_ratio: (1.0 - math::cube(rs)).max(0.0).sqrt(),
        })
    }
}
