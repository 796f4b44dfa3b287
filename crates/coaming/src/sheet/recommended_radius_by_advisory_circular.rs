//! Recommended inside radius by the table of AC 43.13-1B.

use super::bend_radius_table::between_columns;
use crate::prelude::*;

/// Alloy and temper of table 4-6 of AC 43.13-1B.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
#[non_exhaustive]
pub enum AdvisoryCircularTemper {
    /// 2024-T3.
    #[option("2024-T3")]
    A2024T3,
    /// 5052-O.
    #[option("5052-O")]
    A5052O,
    /// 5052-H32.
    #[option("5052-H32")]
    A5052H32,
    /// 5052-H34.
    #[option("5052-H34")]
    A5052H34,
    /// 6061-T4.
    #[option("6061-T4")]
    A6061T4,
    /// 6061-T6.
    #[option("6061-T6")]
    A6061T6,
}

/// Columns 0.016, 0.032, 0.064, 0.128, 0.182 and 0.258 in, in metres.
const COLUMNS: [f64; 6] = [0.0004064, 0.0008128, 0.0016256, 0.0032512, 0.0046228, 0.0065532];

impl AdvisoryCircularTemper {
    /// Lower and upper end of the inside radius over thickness, one for each column.
    const fn factors(self) -> [[f64; 6]; 2] {
        match self {
            Self::A2024T3 => [[1.5, 2.0, 3.0, 4.0, 4.0, 5.0], [3.0, 4.0, 5.0, 6.0, 6.0, 7.0]],
            Self::A5052O => [[0.0, 0.0, 0.0, 0.0, 0.0, 0.0], [0.0, 0.0, 1.0, 1.0, 1.0, 1.0]],
            Self::A5052H32 => [[0.0, 0.0, 0.5, 0.5, 0.5, 0.5], [0.0, 0.0, 1.0, 1.5, 1.5, 1.5]],
            Self::A5052H34 => [[0.0, 0.0, 0.5, 1.5, 1.5, 2.0], [0.0, 0.0, 1.5, 2.5, 2.5, 3.0]],
            Self::A6061T4 => [[0.0, 0.0, 0.5, 1.0, 1.5, 2.5], [1.0, 1.0, 1.5, 2.0, 3.0, 4.0]],
            Self::A6061T6 => [[0.0, 0.5, 1.0, 1.5, 2.0, 3.0], [1.0, 1.5, 2.0, 3.0, 4.0, 4.0]],
        }
    }
}

/// Recommended inside radius for a bend of 90° by the table of AC 43.13-1B, as a band.
///
/// # Formula
///
/// R = f t, with the two factors f of the table for alloy and temper; between two columns of thickness on the straight line
/// between their factors.
///
/// # Validity
///
/// Columns from 0.016 to 0.258 in. Thinner sheet takes the first column, with a caveat; thicker is an error. The rows are from memory:
/// the outcome bears the caveat that it is unverified, besides that of a guide value.
///
/// # Source
///
/// FAA AC 43.13-1B, 1998, change 1, table 4-6, recommended radii for 90° bends in aluminium alloys: unverified. Its row for
/// 2024-T3 takes in the one value of another chart, 0.16 in for 0.040 in (B006).
///
/// # Example
///
/// 2024-T3 of 0.040 in: another chart's 0.16 in (B006) lies in the band.
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) =
///     RecommendedRadiusByAdvisoryCircular { temper: AdvisoryCircularTemper::A2024T3, thickness: inch(0.040) }.calculate()?;
/// assert!(outcome.lower_radius <= inch(0.16) && inch(0.16) <= outcome.upper_radius);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RecommendedRadiusByAdvisoryCircular {
    /// Alloy and temper.
    pub temper: AdvisoryCircularTemper,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..=0.0065532)]
    #[tested(0.0004064..=0.0065532)]
    pub thickness: Length,
}

/// Recommended inside radius by the table.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RecommendedRadiusByAdvisoryCircularOutcome {
    /// Lower end of the recommended inside radius.
    pub lower_radius: Length,
    /// Upper end of the recommended inside radius: the safe one.
    pub upper_radius: Length,
    /// Lower end over thickness.
    pub lower_ratio: f64,
    /// Upper end over thickness.
    pub upper_ratio: f64,
}

impl Calculation for RecommendedRadiusByAdvisoryCircular {
    const NAME: &'static str = "recommended_radius_by_advisory_circular";
    const SOURCE: &'static [Source] = &[Source {
        title: "FAA AC 43.13-1B",
        edition: "1998, change 1",
        locator: "table 4-6",
        standing: Standing::Memory,
    }];
    type Outcome = RecommendedRadiusByAdvisoryCircularOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let t = self.thickness.value;
        let [lower, upper] = self.temper.factors().map(|factors| between_columns(COLUMNS, factors, t));
        caveats.add(Caveat::GuideRadius);
        caveats.add(Caveat::UnverifiedDimension);
        Ok(RecommendedRadiusByAdvisoryCircularOutcome {
            lower_radius: si(lower * t),
            upper_radius: si(upper * t),
            lower_ratio: lower,
            upper_ratio: upper,
        })
    }
}
