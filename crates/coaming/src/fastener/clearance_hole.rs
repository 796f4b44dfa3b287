//! Clearance holes by their standard.

use super::clearance_hole_table::{asme_b18_2_8, iso_273};
use super::size::ScrewSize;
use crate::prelude::*;

/// Series of a clearance hole, in the words of its standard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum ClearanceFit {
    /// Fine (ISO 273, H12); metric sizes.
    Fine,
    /// Medium (ISO 273, H13); metric sizes.
    Medium,
    /// Coarse (ISO 273, H14); metric sizes.
    Coarse,
    /// Close (ASME B18.2.8, H12); inch sizes.
    Close,
    /// Normal (ASME B18.2.8, H13); inch sizes.
    Normal,
    /// Loose (ASME B18.2.8, H14); inch sizes.
    Loose,
}

/// Clearance hole of a screw by its standard, and the clearance that it leaves.
///
/// # Formula
/// Diametral clearance = hole − d; radial clearance = half of it.
///
/// # Validity
/// The hole is the standard's smallest; its tolerance (H12, H13, H14) makes it larger. The clearance is to the nominal
/// diameter of the screw, whose own tolerance makes it larger too. Position errors are not in it.
///
/// # Source
/// ISO 273 (1979), table 1; ASME B18.2.8 (1999), smallest holes. Rows outside the project's check values are unverified.
///
/// # Example
/// ISO 273, medium, M4: 4.5 mm (second-hand).
/// ```
/// use coaming::fastener::{ClearanceFit, ClearanceHole, ScrewSize};
/// use coaming::prelude::*;
///
/// let (hole, _) = ClearanceHole { size: ScrewSize::M4, fit: ClearanceFit::Medium }.calculate()?;
/// assert_eq!(hole.hole_diameter, mm(4.5));
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ClearanceHole {
    /// Nominal size of the screw.
    pub size: ScrewSize,
    /// Series of the hole.
    pub fit: ClearanceFit,
}

/// Outcome of [`ClearanceHole`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ClearanceHoleOutcome {
    /// Diameter of the hole, the standard's smallest.
    pub hole_diameter: Length,
    /// True where no check value holds the diameter.
    pub dimension_unverified: bool,
    /// Clearance on the diameter.
    pub diametral_clearance: Length,
    /// Clearance on the radius: what the screw can move from the middle of the hole.
    pub radial_clearance: Length,
}

impl Calculation for ClearanceHole {
    const NAME: &'static str = "clearance_hole";
    const SOURCE: &'static [Source] = &[
        Source { title: "ISO 273", edition: "1979", locator: "table 1", standing: Standing::SecondHand },
        Source {
            title: "ASME B18.2.8",
            edition: "1999",
            locator: "smallest clearance holes",
            standing: Standing::Memory,
        },
    ];
    type Outcome = ClearanceHoleOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let row = match self.fit {
            ClearanceFit::Fine | ClearanceFit::Medium | ClearanceFit::Coarse => iso_273(self.size),
            ClearanceFit::Close | ClearanceFit::Normal | ClearanceFit::Loose => asme_b18_2_8(self.size),
        };
        let ([narrow, middle, wide], checked) = row.ok_or_else(|| {
            Error::inconsistent(
                "size, fit",
                "no such row: fine, medium and coarse go with the metric sizes of ISO 273, close, normal and loose with the inch sizes of ASME B18.2.8",
            )
        })?;
        let hole = match self.fit {
            ClearanceFit::Fine | ClearanceFit::Close => narrow,
            ClearanceFit::Medium | ClearanceFit::Normal => middle,
            ClearanceFit::Coarse | ClearanceFit::Loose => wide,
        };
        if !checked {
            caveats.add(Caveat::UnverifiedDimension);
        }
        let clearance = hole - self.size.diameter();
        Ok(ClearanceHoleOutcome {
            hole_diameter: si(hole),
            dimension_unverified: !checked,
            diametral_clearance: si(clearance),
            radial_clearance: si(clearance / 2.0),
        })
    }
}
