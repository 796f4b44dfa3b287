//! Pressure under flat-seated heads and washers.

use super::bearing_table::BearingStandard;
use super::size::ScrewSize;
use crate::prelude::*;

/// Pressure under a flat-seated head or washer on the layer beneath, against that layer's limit.
///
/// # Formula
/// Bearing area A = (π/4)(Do² − Di²); pressure p = F/A; utilisation p/limit; largest force = limit × A.
///
/// # Validity
/// Even pressure over the ring: a thin washer, or one much wider than the head on it, presses less at its rim than this says.
/// Di is the hole in the layer with its edge break, or the washer's bore where that is larger. The force is the largest
/// preload together with the service load. In plastics the limit is the sustained one.
///
/// # Source
/// Definition of pressure. Diameters: ISO 7045, ISO 7380-1, ISO 4017, ISO 4762, ISO 7089, ISO 7093-1, ASME B18.6.3, ASME B18.3,
/// the smallest of each tolerance; every row is unverified and carries a caveat unless the diameter is given.
///
/// # Example
/// Hexagon head M8 (dw 11.63 mm) on a 9.0 mm hole: area 42.6 mm² by hand; 18.6 kN press with 436 MPa.
/// ```
/// use coaming::fastener::{BearingStandard, HeadBearing, ScrewSize};
/// use coaming::prelude::*;
///
/// let (bearing, _) = HeadBearing {
///     standard: BearingStandard::Iso4017,
///     size: ScrewSize::M8,
///     bearing_outer_diameter: None,
///     bearing_inner_diameter: mm(9.0),
///     force: kilonewton(18.6),
///     pressure_limit: megapascal(490.0),
/// }
/// .calculate()?;
/// assert!((bearing.bearing_area.value * 1e6 - 42.6).abs() < 0.05);
/// assert!((bearing.pressure.value / 1e6 - 436.4).abs() < 0.5);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct HeadBearing {
    /// Standard of the head or washer.
    pub standard: BearingStandard,
    /// Nominal size of the screw.
    pub size: ScrewSize,
    /// Outer diameter of the bearing face, Do, as measured or read in the standard; replaces the table.
    #[possible(f64::MIN_POSITIVE..)]
    pub bearing_outer_diameter: Option<Length>,
    /// Inner diameter of the bearing face, Di: the hole with its edge break, or the washer's bore if that is larger.
    #[possible(f64::MIN_POSITIVE..)]
    pub bearing_inner_diameter: Length,
    /// Force on the face, F.
    #[possible(0.0..)]
    pub force: Force,
    /// Pressure that the layer beneath may bear.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub pressure_limit: Pressure,
}

/// Outcome of [`HeadBearing`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct HeadBearingOutcome {
    /// Outer diameter that was used, Do.
    pub bearing_outer_diameter: Length,
    /// True where the outer diameter came from an unverified row of the table.
    pub dimension_unverified: bool,
    /// Bearing area, A.
    pub bearing_area: Area,
    /// Pressure on the layer beneath, p.
    #[shown_in("MPa")]
    pub pressure: Pressure,
    /// Pressure over its limit.
    pub utilisation: f64,
    /// Force at which the pressure reaches its limit.
    pub largest_force: Force,
}

impl Calculation for HeadBearing {
    const NAME: &'static str = "head_bearing";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "ISO 7045, ISO 7380-1, ISO 4017, ISO 4762",
            edition: "",
            locator: "dk or dw, smallest",
            standing: Standing::Memory,
        },
        Source {
            title: "ISO 7089 and ISO 7093-1",
            edition: "",
            locator: "outer diameter, smallest",
            standing: Standing::Memory,
        },
        Source {
            title: "ASME B18.6.3 and ASME B18.3",
            edition: "",
            locator: "head diameter, smallest",
            standing: Standing::Memory,
        },
    ];
    type Outcome = HeadBearingOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (outer, unverified) = match self.bearing_outer_diameter {
            Some(given) => (given.value, false),
            None => {
                let outer = self.standard.outer_diameter(self.size).ok_or_else(|| {
                    Error::inconsistent(
                        "standard, size",
                        "the standard's table has no row of this size; give bearing_outer_diameter, or another size",
                    )
                })?;
                caveats.add(Caveat::UnverifiedDimension);
                (outer, true)
            }
        };
        let inner = self.bearing_inner_diameter.value;
        if inner < self.size.diameter() {
            return Err(
                self.impossible("bearing_inner_diameter", "not less than the nominal diameter of the screw")
            );
        }
        if outer <= inner {
            return Err(Error::inconsistent(
                "bearing_outer_diameter, bearing_inner_diameter",
                "the head would fall through: the hole must be smaller than the head",
            ));
        }
        let area = PI / 4.0 * (outer - inner) * (outer + inner);
        let pressure = self.force.value / area;
        let limit = self.pressure_limit.value;
        Ok(HeadBearingOutcome {
            bearing_outer_diameter: si(outer),
            dimension_unverified: unverified,
            bearing_area: si(area),
            pressure: si(pressure),
            utilisation: pressure / limit,
            largest_force: si(limit * area),
        })
    }
}
