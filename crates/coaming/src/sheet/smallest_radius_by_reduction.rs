//! Smallest inside radius from the reduction of area of a tensile test.

use crate::prelude::*;

/// Smallest inside radius from the reduction of area of a tensile test.
///
/// # Formula
///
/// With the reduction of area r in per cent and thickness t: R/t = 50/r − 1. From 50 % on the sheet can be folded on itself: R = 0.
///
/// # Validity
///
/// Reduction of area, not elongation. Tested to 50 %; above, R stays 0, with a caveat. The derivation sets the true strain of the outer fibre
/// equal to the true strain at fracture; a rough edge, a bend along the grain or a wide sheet needs more.
///
/// # Source
///
/// Kalpakjian and Schmid, Manufacturing Processes for Engineering Materials, sheet-metal bending, from memory: unverified.
///
/// # Example
///
/// The printed rule at r = 20 %: R/t = 50/20 − 1 = 1.5.
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) = SmallestRadiusByReduction { reduction_of_area: 0.20, thickness: mm(2.0) }.calculate()?;
/// assert!((outcome.radius_ratio - 1.5).abs() < 1e-12);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SmallestRadiusByReduction {
    /// Reduction of area at fracture in a tensile test, r, as a ratio: 0.20 or 20 %.
    #[possible(f64::MIN_POSITIVE..1.0)]
    #[tested(0.0..=0.5)]
    pub reduction_of_area: f64,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
}

/// Smallest inside radius for a reduction of area.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SmallestRadiusByReductionOutcome {
    /// Smallest inside radius, R.
    pub smallest_radius: Length,
    /// Smallest inside radius over thickness, R/t.
    pub radius_ratio: f64,
    /// True where the sheet can be folded on itself.
    pub folds_on_itself: bool,
}

impl Calculation for SmallestRadiusByReduction {
    const NAME: &'static str = "smallest_radius_by_reduction";
    const SOURCE: &'static [Source] = &[Source {
        title: "Kalpakjian & Schmid, Manufacturing Processes for Engineering Materials",
        edition: "",
        locator: "sheet-metal bending, R/t = 50/r - 1",
        standing: Standing::Memory,
    }];
    type Outcome = SmallestRadiusByReductionOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let r = self.reduction_of_area;
        let folds_on_itself = r >= 0.5;
        let ratio = if folds_on_itself { 0.0 } else { 0.5 / r - 1.0 };
        Ok(SmallestRadiusByReductionOutcome {
            smallest_radius: si(ratio * self.thickness.value),
            radius_ratio: ratio,
            folds_on_itself,
        })
    }
}
