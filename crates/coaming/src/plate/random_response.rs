//! Response of one mode to random shaking, by Miles' equation.

use crate::prelude::*;

/// Response of one mode to random shaking of its base, by Miles' equation.
///
/// # Formula
/// g_rms = √(π/2 f Q W), W the acceleration spectral density at f; three times that is met or stayed under 99.7 % of the time.
/// Relative movement rms g_rms/(2 π f)².
///
/// # Validity
/// One lightly damped mode (Q over 5; caveat below), density flat about f for some half-power widths, long shaking. The
/// motion of the mode itself at its mass; a plate's centre moves more by its participation factor.
///
/// # Source
/// NASA GSFC FEMCI, R. Simmons, Miles' Equation (2001), equation.
///
/// # Example
/// 100 Hz, Q = 10, 0.2 gn²/Hz: 17.72 gn rms (the equation, with its page's inputs).
/// ```
/// use coaming::plate::RandomResponse;
/// use coaming::prelude::*;
///
/// let mode = RandomResponse {
///     natural_frequency: hertz(100.0),
///     amplification: 10.0,
///     acceleration_spectral_density: standard_gravity_squared_per_hertz(0.2),
/// };
/// let (outcome, _) = mode.calculate()?;
/// assert!((outcome.rms_acceleration - standard_gravity(17.72)).abs() < standard_gravity(0.01));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RandomResponse {
    /// Natural frequency of the mode, f.
    #[possible(f64::MIN_POSITIVE..)]
    pub natural_frequency: Frequency,
    /// Amplification at resonance, Q = 1/(2 ζ).
    #[possible(0.5..)]
    #[tested(5.0..=100.0)]
    pub amplification: f64,
    /// Acceleration spectral density of the base at f, W.
    #[possible(0.0..)]
    pub acceleration_spectral_density: AccelerationSpectralDensity,
}

/// Outcome of [`RandomResponse`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RandomResponseOutcome {
    /// Root mean square of the mode's acceleration.
    #[shown_in("gn")]
    pub rms_acceleration: Acceleration,
    /// Three times that.
    #[shown_in("gn")]
    pub three_sigma_acceleration: Acceleration,
    /// Root mean square of the movement against the base.
    pub rms_movement: Length,
    /// Three times that.
    pub three_sigma_movement: Length,
}

impl Calculation for RandomResponse {
    const NAME: &'static str = "random_response";
    const SOURCE: &'static [Source] = &[Source {
        title: "NASA GSFC FEMCI, R. Simmons, Miles' Equation",
        edition: "2001",
        locator: "equation",
        standing: Standing::Read,
    }];
    type Outcome = RandomResponseOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (f, q, w) =
            (self.natural_frequency.value, self.amplification, self.acceleration_spectral_density.value);
        let rms = (0.5 * PI * f * q * w).sqrt();
        let movement = rms / math::square(2.0 * PI * f);
        Ok(RandomResponseOutcome {
            rms_acceleration: si(rms),
            three_sigma_acceleration: si(3.0 * rms),
            rms_movement: si(movement),
            three_sigma_movement: si(3.0 * movement),
        })
    }
}
