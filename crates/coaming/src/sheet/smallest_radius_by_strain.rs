//! Smallest inside radius for an allowed strain of the outer fibre.

use super::outer_fibre_strain::KALPAKJIAN;
use crate::prelude::*;

/// Smallest inside radius that keeps the strain of the outer fibre below a limit.
///
/// # Formula
///
/// With the allowed strain e and thickness t: R/t = (1/e − 1) / 2, the inverse of `outer_fibre_strain`.
///
/// # Validity
///
/// An estimate, and bears that caveat, as `outer_fibre_strain`. Elongation printed for a gauge length of 50 mm or 80 mm spreads a local
/// neck over that length: a bend, which is short, bears more. So the radius is on the safe side with such a figure.
///
/// # Source
///
/// Kalpakjian and Schmid, Manufacturing Processes for Engineering Materials, sheet-metal bending; follows from geometry.
///
/// # Example
///
/// An allowed strain of 20 % needs R = 2 t: the outer fibre of 2.5 π t / 2 may grow to 3 π t / 2.
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) = SmallestRadiusByStrain { allowed_strain: 0.2, thickness: mm(2.0) }.calculate()?;
/// assert!((outcome.smallest_radius.value - 0.004).abs() < 1e-12);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SmallestRadiusByStrain {
    /// Engineering strain that the outer fibre may take, e.
    #[possible(f64::MIN_POSITIVE..=1.0)]
    pub allowed_strain: f64,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
}

/// Smallest inside radius for a strain.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SmallestRadiusByStrainOutcome {
    /// Smallest inside radius, R.
    pub smallest_radius: Length,
    /// Smallest inside radius over thickness, R/t.
    pub radius_ratio: f64,
}

impl Calculation for SmallestRadiusByStrain {
    const NAME: &'static str = "smallest_radius_by_strain";
    const SOURCE: &'static [Source] = &[KALPAKJIAN];
    type Outcome = SmallestRadiusByStrainOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let ratio = (1.0 / self.allowed_strain - 1.0) / 2.0;
        caveats.add(Caveat::Estimate);
        Ok(SmallestRadiusByStrainOutcome {
            smallest_radius: si(ratio * self.thickness.value),
            radius_ratio: ratio,
        })
    }
}
