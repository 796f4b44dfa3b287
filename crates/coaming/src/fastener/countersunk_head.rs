//! Countersinks and heads proud or below, by the standard of the head.

use super::countersunk_head_table::sharp_diameter;
use super::size::ScrewSize;
use crate::prelude::*;

/// Standard of a countersunk head: it fixes the angle and the sharp diameter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum CountersunkStandard {
    /// Hexagon socket countersunk head, 90° (ISO 10642).
    #[option("iso_10642")]
    Iso10642,
    /// Cross-recessed countersunk flat head, 90° (ISO 7046-1, geometry of ISO 7721; also ISO 2009 and ISO 14581).
    #[option("iso_7046_1")]
    Iso7046_1,
    /// Flat countersunk machine screw, 82° (ASME B18.6.3).
    #[option("asme_b18_6_3")]
    AsmeB18_6_3,
    /// Hexagon socket flat countersunk head, 82° (ASME B18.3).
    #[option("asme_b18_3")]
    AsmeB18_3,
    /// Flat countersunk machine screw, 100° (ASME B18.6.3).
    #[option("asme_b18_6_3_100_deg")]
    AsmeB18_6_3Deg100,
}

impl CountersunkStandard {
    /// Included angle of the head's cone, in rad.
    pub(crate) fn included_angle(self) -> f64 {
        match self {
            Self::Iso10642 | Self::Iso7046_1 => FRAC_PI_2,
            Self::AsmeB18_6_3 | Self::AsmeB18_3 => 82.0 / 180.0 * PI,
            Self::AsmeB18_6_3Deg100 => 100.0 / 180.0 * PI,
        }
    }
}

/// Countersink for a head of a named standard: flush diameter and depth, the land left, the head proud or below.
///
/// # Formula
/// Depth of a cone from diameter D down to the hole: (D − Dh)/(2 tan(α/2)), with α the included angle.
/// Flush: D is the theoretical sharp diameter dk of the largest head. Head height k = (dk − d)/(2 tan(α/2)).
/// Land left = t − depth. Protrusion of the head above the face: (dk − D)/(2 tan(α/2)), positive is proud;
/// extremes: largest head in the smallest countersink, smallest head in the largest.
///
/// # Validity
/// The cone of the head and of the countersink have the same angle, and the head seats on its cone.
/// A depth at or past the sheet's thickness breaks through: the edge is a knife, the hole is larger than drilled, and the
/// head may stand on the layer beneath. The sheet's thickness is the one that is given: give the smallest for the worst case.
///
/// # Source
/// ISO 10642 (2004), dk theoretical; ISO 7721 geometry for ISO 7046-1; ASME B18.6.3 and ASME B18.3, sharp diameters.
/// Rows outside the project's check values are unverified and carry a caveat.
///
/// # Example
/// ISO 10642, M4: dk theoretical 8.96 mm, k 2.48 mm (second-hand).
/// ```
/// use coaming::fastener::{CountersunkHead, CountersunkStandard, ScrewSize};
/// use coaming::prelude::*;
///
/// let (head, caveats) = CountersunkHead {
///     standard: CountersunkStandard::Iso10642,
///     size: ScrewSize::M4,
///     head_sharp_diameter: None,
///     head_tolerance: mm(0.0),
///     hole_diameter: mm(4.5),
///     sheet_thickness: mm(3.0),
///     countersink_diameter: None,
///     countersink_tolerance: mm(0.0),
/// }
/// .calculate()?;
/// assert!(caveats.is_empty());
/// assert!((head.head_height.value - 0.002_48).abs() < 1e-9);
/// assert!((head.flush_depth.value - 0.002_23).abs() < 1e-9);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CountersunkHead {
    /// Standard of the head.
    pub standard: CountersunkStandard,
    /// Nominal size of the screw.
    pub size: ScrewSize,
    /// Theoretical sharp diameter of the largest head, dk, as measured or read in the standard; replaces the table.
    #[possible(f64::MIN_POSITIVE..)]
    pub head_sharp_diameter: Option<Length>,
    /// How much smaller the sharp diameter of the smallest head may be.
    #[possible(0.0..)]
    pub head_tolerance: Length,
    /// Diameter of the through hole, Dh.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_diameter: Length,
    /// Thickness of the countersunk sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub sheet_thickness: Length,
    /// Diameter of the countersink at the face, D; the head's sharp diameter if absent, which sets the head flush.
    #[possible(f64::MIN_POSITIVE..)]
    pub countersink_diameter: Option<Length>,
    /// Tolerance of the countersink's diameter, plus and minus.
    #[possible(0.0..)]
    pub countersink_tolerance: Length,
}

/// Outcome of [`CountersunkHead`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct CountersunkHeadOutcome {
    /// Included angle of the cone, α.
    pub included_angle: Angle,
    /// Theoretical sharp diameter of the largest head, dk: also the flush diameter of the countersink.
    pub sharp_diameter: Length,
    /// True where no check value holds the sharp diameter that was used.
    pub dimension_unverified: bool,
    /// Height of the head from the sharp diameter to the shank, k.
    pub head_height: Length,
    /// Depth of the flush countersink, from the face to the hole.
    pub flush_depth: Length,
    /// Diameter of the countersink that was used, D.
    pub countersink_diameter: Length,
    /// Depth of that countersink.
    pub countersink_depth: Length,
    /// Its depth at the largest diameter.
    pub largest_depth: Length,
    /// Depth over thickness.
    pub depth_ratio: f64,
    /// Depth over thickness at the largest diameter.
    pub largest_depth_ratio: f64,
    /// Cylindrical land left below the countersink; negative where it breaks through.
    pub land_left: Length,
    /// Land left at the largest diameter.
    pub smallest_land: Length,
    /// True where the countersink at its largest leaves no land.
    pub breaks_through: bool,
    /// Diameter of the opening in the far face: the hole, or the cone where it breaks through.
    pub far_face_diameter: Length,
    /// Largest protrusion of the head; positive is proud of the face, negative below it.
    pub largest_protrusion: Length,
    /// Smallest protrusion of the head.
    pub smallest_protrusion: Length,
}

impl Calculation for CountersunkHead {
    const NAME: &'static str = "countersunk_head";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "ISO 10642",
            edition: "2004",
            locator: "dk theoretical",
            standing: Standing::SecondHand,
        },
        Source {
            title: "ISO 7721-1 and ISO 7046-1",
            edition: "",
            locator: "dk theoretical",
            standing: Standing::SecondHand,
        },
        Source {
            title: "ASME B18.3",
            edition: "",
            locator: "flat countersunk heads, sharp diameter",
            standing: Standing::SecondHand,
        },
        Source {
            title: "ASME B18.6.3",
            edition: "",
            locator: "flat countersunk heads, sharp diameter",
            standing: Standing::Memory,
        },
    ];
    type Outcome = CountersunkHeadOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let d = self.size.diameter();
        let (dk, checked) = match self.head_sharp_diameter {
            Some(given) => (given.value, true),
            None => sharp_diameter(self.standard, self.size).ok_or_else(|| {
                Error::inconsistent(
                    "standard, size",
                    "the standard has no head of this size; give head_sharp_diameter, or another size",
                )
            })?,
        };
        if !checked {
            caveats.add(Caveat::UnverifiedDimension);
        }
        let hole = self.hole_diameter.value;
        if hole < d {
            return Err(self.impossible("hole_diameter", "not less than the nominal diameter of the screw"));
        }
        if dk - self.head_tolerance.value <= hole {
            return Err(Error::inconsistent(
                "hole_diameter, head_sharp_diameter, head_tolerance",
                "the head would fall through: the hole must be smaller than the smallest head",
            ));
        }
        let diameter = self.countersink_diameter.map_or(dk, |given| given.value);
        let tolerance = self.countersink_tolerance.value;
        if diameter - tolerance <= hole {
            return Err(Error::inconsistent(
                "countersink_diameter, countersink_tolerance, hole_diameter",
                "the countersink must be larger than the hole at its tolerance",
            ));
        }
        let included = self.standard.included_angle();
        let slope = 2.0 * math::tan(included / 2.0);
        let t = self.sheet_thickness.value;
        let depth = (diameter - hole) / slope;
        let largest_depth = (diameter + tolerance - hole) / slope;
        Ok(CountersunkHeadOutcome {
            included_angle: si(included),
            sharp_diameter: si(dk),
            dimension_unverified: !checked,
            head_height: si((dk - d) / slope),
            flush_depth: si((dk - hole) / slope),
            countersink_diameter: si(diameter),
            countersink_depth: si(depth),
            largest_depth: si(largest_depth),
            depth_ratio: depth / t,
            largest_depth_ratio: largest_depth / t,
            land_left: si(t - depth),
            smallest_land: si(t - largest_depth),
            breaks_through: largest_depth >= t,
            far_face_diameter: si(hole.max(diameter - slope * t)),
            largest_protrusion: si((dk - (diameter - tolerance)) / slope),
            smallest_protrusion: si((dk - self.head_tolerance.value - (diameter + tolerance)) / slope),
        })
    }
}
