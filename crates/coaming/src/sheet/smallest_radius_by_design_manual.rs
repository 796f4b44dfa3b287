//! Smallest inside radius by the table of the Aluminum Design Manual.

use super::bend_radius_table::between_columns;
use crate::prelude::*;

/// Alloy and temper of table 3-1 of the Aluminum Design Manual.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
#[non_exhaustive]
pub enum AluminumDesignManualTemper {
    /// 3003-O.
    #[option("3003-O")]
    A3003O,
    /// 3003-H14.
    #[option("3003-H14")]
    A3003H14,
    /// 5052-O.
    #[option("5052-O")]
    A5052O,
    /// 5052-H32.
    #[option("5052-H32")]
    A5052H32,
    /// 5052-H34.
    #[option("5052-H34")]
    A5052H34,
    /// 6061-O.
    #[option("6061-O")]
    A6061O,
    /// 6061-T4.
    #[option("6061-T4")]
    A6061T4,
    /// 6061-T6.
    #[option("6061-T6")]
    A6061T6,
}

/// Columns 1/64, 1/32, 1/16, 1/8, 3/16, 1/4, 3/8 and 1/2 in, in metres.
const COLUMNS: [f64; 8] =
    [0.000396875, 0.00079375, 0.0015875, 0.003175, 0.0047625, 0.00635, 0.009525, 0.0127];

impl AluminumDesignManualTemper {
    /// Inside radius over thickness, one for each column.
    const fn factors(self) -> [f64; 8] {
        match self {
            Self::A3003O => [0.0, 0.0, 0.0, 0.0, 0.5, 1.0, 1.0, 1.5],
            Self::A3003H14 => [0.0, 0.0, 0.0, 1.0, 1.0, 1.5, 2.0, 2.5],
            Self::A5052O => [0.0, 0.0, 0.0, 0.5, 1.0, 1.0, 1.5, 1.5],
            Self::A5052H32 => [0.0, 0.0, 1.0, 1.5, 1.5, 1.5, 1.5, 2.0],
            Self::A5052H34 => [0.0, 1.0, 1.5, 2.0, 2.0, 2.5, 2.5, 3.0],
            Self::A6061O => [0.0, 0.0, 0.0, 1.0, 1.0, 1.0, 1.5, 2.0],
            Self::A6061T4 => [0.0, 0.0, 1.0, 1.5, 2.5, 3.0, 3.5, 4.0],
            Self::A6061T6 => [1.0, 1.0, 1.5, 2.5, 3.0, 3.5, 4.5, 5.0],
        }
    }
}

/// Smallest inside radius for a cold bend of 90° by the table of the Aluminum Design Manual.
///
/// # Formula
///
/// R = f t, with the factor f of the table for alloy and temper; between two columns of thickness on the straight line
/// between their factors.
///
/// # Validity
///
/// Columns from 1/64 to 1/2 in. Thinner sheet takes the first column, with a caveat; thicker is an error. A guide value, not a
/// limit, and bears that caveat. For 90°, cold; along the grain, past 90° or with a rough edge take more.
///
/// # Source
///
/// Aluminum Association, Aluminum Design Manual, January 2005, part VII, table 3-1, p. VII-78: second-hand, from public
/// copies; 5052-H32, 6061-T4 and 6061-T6 are (B011–B013).
///
/// # Example
///
/// 5052-H32 of 1/8 in takes 1.5 t (B011).
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) =
///     SmallestRadiusByDesignManual { temper: AluminumDesignManualTemper::A5052H32, thickness: inch(0.125) }.calculate()?;
/// assert!((outcome.radius_ratio - 1.5).abs() < 1e-12);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SmallestRadiusByDesignManual {
    /// Alloy and temper.
    pub temper: AluminumDesignManualTemper,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..=0.0127)]
    #[tested(0.000396875..=0.0127)]
    pub thickness: Length,
}

/// Smallest inside radius by the table.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SmallestRadiusByDesignManualOutcome {
    /// Smallest inside radius, R.
    pub smallest_radius: Length,
    /// Smallest inside radius over thickness, R/t.
    pub radius_ratio: f64,
}

impl Calculation for SmallestRadiusByDesignManual {
    const NAME: &'static str = "smallest_radius_by_design_manual";
    const SOURCE: &'static [Source] = &[Source {
        title: "Aluminum Association, Aluminum Design Manual",
        edition: "January 2005",
        locator: "part VII, table 3-1, p. VII-78",
        standing: Standing::SecondHand,
    }];
    type Outcome = SmallestRadiusByDesignManualOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let t = self.thickness.value;
        let ratio = between_columns(COLUMNS, self.temper.factors(), t);
        caveats.add(Caveat::GuideRadius);
        Ok(SmallestRadiusByDesignManualOutcome { smallest_radius: si(ratio * t), radius_ratio: ratio })
    }
}
