use crate::prelude::*;

/// Force on the remaining latches when one is open or broken.
///
/// # Formula
/// ```text
/// even share   F n / (n − 1)        a stiff lid: all others take the missing share alike
/// neighbours   1.5 F                a soft lid: its two neighbours take it alone
/// largest      the greater of the two
/// ```
///
/// # Validity
/// An estimate for three latches or more that are evenly spaced and share alike when all are closed; no bound. Where the
/// spacing is uneven a neighbour of the missing latch can take more than 1.5 F. The panel solver gives each latch's pull, and
/// what the gasket does at the open place.
///
/// # Source
/// Balance of forces; common practice.
///
/// # Example
/// Six latches of 115 N: 138 N each on a stiff lid, 172.5 N on the two neighbours of a soft one (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::latch::LatchMissing;
///
/// let (outcome, _) = LatchMissing { latch_force: newton(115.0), latches: 6, working_load: None }.calculate()?;
/// assert!((outcome.even_share.value - 138.0).abs() < 1e-9);
/// assert!((outcome.neighbour_share.value - 172.5).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LatchMissing {
    /// Force on each latch when all are closed, F.
    #[possible(0.0..)]
    pub latch_force: Force,
    /// Number of latches, n.
    #[possible(3.0..=10_000.0)]
    pub latches: u32,
    /// Maker's working load of one latch.
    #[possible(f64::MIN_POSITIVE..)]
    pub working_load: Option<Force>,
}

/// Force on the others.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LatchMissingOutcome {
    /// Force on each other latch of a stiff lid.
    pub even_share: Force,
    /// Force on the two neighbours of a soft lid.
    pub neighbour_share: Force,
    /// The greater of the two.
    pub largest_latch_force: Force,
    /// The greater over the working load.
    pub working_load_ratio: Option<f64>,
}

impl Calculation for LatchMissing {
    const NAME: &'static str = "latch_missing";
    const SOURCE: &'static [Source] =
        &[Source::common_practice("share of a missing latch, stiff and soft lid")];
    type Outcome = LatchMissingOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (force, n) = (self.latch_force.value, f64::from(self.latches));
        let even = force * n / (n - 1.0);
        let neighbour = 1.5 * force;
        let largest = even.max(neighbour);
        Ok(LatchMissingOutcome {
            even_share: si(even),
            neighbour_share: si(neighbour),
            largest_latch_force: si(largest),
            working_load_ratio: self.working_load.map(|load| largest / load.value),
        })
    }
}
