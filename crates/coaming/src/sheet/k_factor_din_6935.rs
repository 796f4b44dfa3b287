//! The neutral axis as DIN 6935 places it.

use crate::prelude::*;

/// What the sheet is made of, as far as DIN 6935 is concerned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum BentMetal {
    /// Flat rolled steel: what DIN 6935 is made for.
    Steel,
    /// Any other metal: the correction is an estimate.
    Other,
}

/// K-factor from the correction factor of DIN 6935.
///
/// # Formula
/// k = 0.65 + 0.5 log10(r/s), and 1 above r/s = 5; K = k/2, because the standard measures k from the inside face in
/// halves of the thickness s.
///
/// # Validity
/// Cold bending of flat rolled steel; another metal carries a caveat. The printed values run from r/s = 0.5 to 8; below
/// 0.5 the result carries a caveat, and where k is no longer positive (r/s ≤ 0.0501) no number is given.
///
/// # Source
/// DIN 6935:2011-10, Cold bending of flat rolled steel, formula for k (second-hand).
///
/// # Example
/// r/s = 1 gives k = 0.6500 (DIN 6935, second-hand formula).
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::{BentMetal, KFactorDin6935};
///
/// let (outcome, _) =
///     KFactorDin6935 { inside_radius: mm(2.0), thickness: mm(2.0), metal: BentMetal::Steel }.calculate()?;
/// assert!((outcome.correction_factor - 0.65).abs() < 1e-12);
/// assert!((outcome.k_factor - 0.325).abs() < 1e-12);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct KFactorDin6935 {
    /// Inside radius, r.
    #[possible(f64::MIN_POSITIVE..)]
    pub inside_radius: Length,
    /// Thickness of the bare sheet, s.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// What the sheet is made of.
    pub metal: BentMetal,
}

/// Outcome of [`KFactorDin6935`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct KFactorDin6935Outcome {
    /// Correction factor, k, relative to half the thickness.
    pub correction_factor: f64,
    /// Distance of the neutral axis from the inside face over the thickness, K.
    pub k_factor: f64,
    /// Inside radius over thickness, r/s.
    pub radius_ratio: f64,
}

impl Calculation for KFactorDin6935 {
    const NAME: &'static str = "k_factor_din_6935";
    const SOURCE: &'static [Source] = &[Source {
        title: "DIN 6935, Cold bending of flat rolled steel",
        edition: "2011-10",
        locator: "formula for k",
        standing: Standing::SecondHand,
    }];
    type Outcome = KFactorDin6935Outcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let radius_ratio = self.inside_radius.value / self.thickness.value;
        if self.metal == BentMetal::Other {
            caveats.add(Caveat::NotSteel);
        }
        if radius_ratio < 0.5 {
            caveats.add(Caveat::SharpBend);
        }
        let k = if radius_ratio > 5.0 { 1.0 } else { 0.65 + 0.5 * math::log10(radius_ratio) };
        if k <= 0.0 {
            return Err(self.impossible(
                "inside_radius",
                "more than 0.0502 of the thickness: below it DIN 6935 has no K",
            ));
        }
        Ok(KFactorDin6935Outcome { correction_factor: k, k_factor: k / 2.0, radius_ratio })
    }
}
