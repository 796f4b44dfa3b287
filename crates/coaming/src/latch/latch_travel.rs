use crate::prelude::*;

/// Travel that a latch needs to close a lid and to let it go, against the travel it has.
///
/// # Formula
/// ```text
/// needed  = δ + a + b + t + r
/// rebound = (1 − s) δ + b
/// release = rebound + r
/// ```
/// δ compressed length of the gasket, a stand-off between lid and frame, b bow that the latch must pull flat,
/// t tolerance of all parts, r clearance at which the hook passes its keeper, s set as part of the
/// deflection. On opening, gasket and lid spring after the hook by the rebound before it is slack.
///
/// # Validity
/// Lengths along the latch's pull. A new gasket has s = 0, which asks the most of the release. Adjustment of
/// the hook shifts its range and adds no travel.
///
/// # Source
/// Sum of lengths (common practice). Set of the deflection as in ASTM D395, method B.
///
/// # Example
/// 3 mm of compression, 2 mm stand-off, 0.5 bow, 1.0 tolerance, 1.5 clearance: 8 mm (sum by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::latch::LatchTravel;
///
/// let (outcome, _) = LatchTravel {
///     compressed: mm(3.0),
///     stand_off: mm(2.0),
///     bow: mm(0.5),
///     tolerance: mm(1.0),
///     release_clearance: mm(1.5),
///     set_of_deflection: 0.0,
///     travel: mm(12.0),
///     release_travel: None,
/// }
/// .calculate()?;
/// assert!((outcome.needed_travel.value - 8e-3).abs() < 1e-12);
/// assert!((outcome.travel_left.value - 4e-3).abs() < 1e-12);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LatchTravel {
    /// Compressed length of the gasket, δ.
    #[possible(0.0..)]
    pub compressed: Length,
    /// Stand-off between lid and frame that the latch takes up, a.
    #[possible(0.0..)]
    pub stand_off: Length,
    /// Bow of lid and frame at the latch, b.
    #[possible(0.0..)]
    pub bow: Length,
    /// Tolerance of all parts along the pull, t.
    #[possible(0.0..)]
    pub tolerance: Length,
    /// Clearance at which the hook passes its keeper, r.
    #[possible(0.0..)]
    pub release_clearance: Length,
    /// Set of the gasket as a part of its deflection, s; 0 when new.
    #[possible(0.0..=1.0)]
    pub set_of_deflection: f64,
    /// Travel of the latch.
    #[possible(f64::MIN_POSITIVE..)]
    pub travel: Length,
    /// Travel of the latch on release, if it differs from the travel.
    #[possible(f64::MIN_POSITIVE..)]
    pub release_travel: Option<Length>,
}

/// Travel needed and left.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LatchTravelOutcome {
    /// Travel needed to close.
    pub needed_travel: Length,
    /// Travel left, negative if there is too little.
    pub travel_left: Length,
    /// Travel by which gasket and lid spring after the hook.
    pub rebound: Length,
    /// Travel needed to let go.
    pub needed_release_travel: Length,
    /// Travel left on release, negative if the hook does not let go.
    pub release_travel_left: Length,
}

impl Calculation for LatchTravel {
    const NAME: &'static str = "latch_travel";
    const SOURCE: &'static [Source] = &[Source {
        title: "common practice",
        edition: "",
        locator: "sum of lengths along the pull",
        standing: Standing::CommonPractice,
    }];
    type Outcome = LatchTravelOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (compressed, bow) = (self.compressed.value, self.bow.value);
        let clearance = self.release_clearance.value;
        let needed = compressed + self.stand_off.value + bow + self.tolerance.value + clearance;
        let rebound = (1.0 - self.set_of_deflection) * compressed + bow;
        let release = rebound + clearance;
        let given_release = self.release_travel.unwrap_or(self.travel).value;
        Ok(LatchTravelOutcome {
            needed_travel: si(needed),
            travel_left: si(self.travel.value - needed),
            rebound: si(rebound),
            needed_release_travel: si(release),
            release_travel_left: si(given_release - release),
        })
    }
}
