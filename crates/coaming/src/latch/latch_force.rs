use crate::prelude::*;

/// Force on each latch of a closed lid, and on the hand that closes it.
///
/// # Formula
/// ```text
/// Fs = q L                    force of the gasket
/// Fp = −p A                   force of the pressure; p > 0 pushes the lid onto its seal and eases the latches
/// F  = (Fs + Fp) / n          force on each latch
/// N  = j F / (i η)            force of the hand on j latches worked at once
/// ```
/// The closing itself is done without the pressure: N is taken from the gasket's share alone, F0 = Fs/n.
///
/// # Validity
/// All latches pull alike: the line force is even and the latches stand evenly along it. A lid that bows
/// gives uneven shares; take those from the panel. Without stops q is the line force at the closed height;
/// stops that carry part of the pull add their share. The lever ratio is that at the hardest point of the
/// stroke.
///
/// # Source
/// Balance of forces; lever ratio and efficiency as the maker of the latch states them (common practice).
///
/// # Example
/// 0.37 N/mm along 1811 mm, six latches, lever ratio 5.8 at 0.9: 111.7 N each, 21.4 N at the hand (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::latch::LatchForce;
///
/// let (outcome, _) = LatchForce {
///     line_force: newton_per_mm(0.37),
///     path_length: mm(1811.0),
///     latches: 6,
///     pressure: kilopascal(0.0),
///     sealed_area: square_mm(0.0),
///     lever_ratio: 5.8,
///     efficiency: 0.9,
///     worked_at_once: 1,
///     hand_force_limit: newton(60.0),
///     working_load: None,
/// }
/// .calculate()?;
/// assert!((outcome.latch_force.value - 111.678).abs() < 1e-3);
/// assert!((outcome.hand_force.value - 21.394).abs() < 1e-3);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LatchForce {
    /// Line force of the gasket at the closed height, q.
    #[possible(0.0..)]
    pub line_force: ForcePerLength,
    /// Length of the gasket's path, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub path_length: Length,
    /// Number of latches, n.
    #[possible(1.0..=10_000.0)]
    pub latches: u32,
    /// Pressure outside over that in the bay, p; positive pushes the lid onto its seal.
    pub pressure: Pressure,
    /// Area on which the pressure acts, A.
    #[possible(0.0..)]
    pub sealed_area: Area,
    /// Lever ratio of the latch, i: hand travel over hook travel.
    #[possible(f64::MIN_POSITIVE..)]
    pub lever_ratio: f64,
    /// Efficiency of the lever, η.
    #[possible(f64::MIN_POSITIVE..=1.0)]
    pub efficiency: f64,
    /// Latches worked at once by one hand, j.
    #[possible(1.0..=10_000.0)]
    pub worked_at_once: u32,
    /// Largest force of the hand that is allowed.
    #[possible(f64::MIN_POSITIVE..)]
    pub hand_force_limit: Force,
    /// Maker's working load of one latch.
    #[possible(f64::MIN_POSITIVE..)]
    pub working_load: Option<Force>,
}

/// Forces on latch and hand.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LatchForceOutcome {
    /// Force of the gasket along its whole path, Fs.
    pub gasket_force: Force,
    /// Force of the pressure, Fp; positive loads the latches.
    pub pressure_force: Force,
    /// Force on each latch while closing, F0: the gasket's share.
    pub closing_force: Force,
    /// Force on each latch, F; below zero the pressure holds the lid and the latch is slack.
    pub latch_force: Force,
    /// Force of the hand, N.
    pub hand_force: Force,
    /// Force of the hand over its limit.
    pub hand_force_ratio: f64,
    /// Larger of closing force and latch force over the working load.
    pub working_load_ratio: Option<f64>,
}

impl Calculation for LatchForce {
    const NAME: &'static str = "latch_force";
    const SOURCE: &'static [Source] = &[Source {
        title: "common practice",
        edition: "",
        locator: "balance of forces; lever ratio and efficiency",
        standing: Standing::CommonPractice,
    }];
    type Outcome = LatchForceOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.worked_at_once > self.latches {
            return Err(Error::inconsistent(
                "worked_at_once, latches",
                "no more are worked at once than there are",
            ));
        }
        let n = f64::from(self.latches);
        let gasket = self.line_force.value * self.path_length.value;
        let pressure = 0.0 - self.pressure.value * self.sealed_area.value;
        let closing = gasket / n;
        let latch = (gasket + pressure) / n;
        if latch < 0.0 {
            caveats.add(Caveat::LatchSlack);
        }
        let hand = f64::from(self.worked_at_once) * closing / (self.lever_ratio * self.efficiency);
        Ok(LatchForceOutcome {
            gasket_force: si(gasket),
            pressure_force: si(pressure),
            closing_force: si(closing),
            latch_force: si(latch),
            hand_force: si(hand),
            hand_force_ratio: hand / self.hand_force_limit.value,
            working_load_ratio: self.working_load.map(|load| latch.max(closing) / load.value),
        })
    }
}
