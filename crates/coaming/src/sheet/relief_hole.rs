//! Relief hole where two bends meet in a corner.

use crate::prelude::*;

/// Smallest relief hole where two bends meet in the corner of a box of aluminium sheet.
///
/// # Formula
///
/// 1/8 in for sheet to 0.064 in, 3/16 in for thicker sheet to 0.128 in. The centre lies where the inside tangent lines of the two
/// bends cross, or outside of it towards the corner.
///
/// # Validity
///
/// Aluminium sheet to 0.128 in; thicker is an error. The source leaves the gap from 0.064 to 0.072 in: it takes the larger hole here.
///
/// # Source
///
/// FAA-H-8083-31A, vol. 1, ch. 4, folding a box (B014).
///
/// # Example
///
/// Sheet of 0.064 in: 0.125 in (B014).
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) = ReliefHole { thickness: inch(0.064) }.calculate()?;
/// assert_eq!(outcome.smallest_diameter, inch(0.125));
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ReliefHole {
    /// Thickness of the bare sheet.
    #[possible(f64::MIN_POSITIVE..=0.0032512)]
    pub thickness: Length,
}

/// Size of a relief hole.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ReliefHoleOutcome {
    /// Smallest diameter of the relief hole.
    pub smallest_diameter: Length,
}

impl Calculation for ReliefHole {
    const NAME: &'static str = "relief_hole";
    const SOURCE: &'static [Source] = &[Source {
        title: "FAA-H-8083-31A, Aviation Maintenance Technician Handbook - Airframe",
        edition: "2018",
        locator: "vol. 1, ch. 4, folding a box",
        standing: Standing::Read,
    }];
    type Outcome = ReliefHoleOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let diameter = if self.thickness.value <= 0.0016256 { 0.003175 } else { 0.0047625 };
        Ok(ReliefHoleOutcome { smallest_diameter: si(diameter) })
    }
}
