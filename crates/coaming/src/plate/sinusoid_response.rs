//! Response of one mode to a sinusoid of its base.

use crate::prelude::*;

/// Response of one mode to a sinusoidal shaking of its base.
///
/// # Formula
/// r = f/f_n, H = 1/√((1 − r²)² + (2 ζ r)²). Movement against the base Γ A H/(2 π f_n)², A the base's acceleration and Γ the
/// participation factor; transmissibility of a single mass √(1 + (2 ζ r)²) H.
///
/// # Validity
/// One mode, light viscous damping, steady state. Other modes are left out: near a resonance theirs is small, far below it
/// the sum over all modes tends to the static deflection under A.
///
/// # Source
/// Common practice (the driven oscillator of any textbook on vibration).
///
/// # Example
/// At resonance with ζ = 0.05 the mode moves ten times what it would at rest: H = 1/(2 ζ).
/// ```
/// use coaming::plate::SinusoidResponse;
/// use coaming::prelude::*;
///
/// let mode = SinusoidResponse {
///     natural_frequency: hertz(50.0),
///     excitation_frequency: hertz(50.0),
///     damping_ratio: 0.05,
///     base_acceleration: standard_gravity(1.0),
///     participation_factor: None,
/// };
/// let (outcome, _) = mode.calculate()?;
/// assert!((outcome.magnification - 10.0).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SinusoidResponse {
    /// Natural frequency of the mode, f_n.
    #[possible(f64::MIN_POSITIVE..)]
    pub natural_frequency: Frequency,
    /// Frequency of the shaking, f.
    #[possible(f64::MIN_POSITIVE..)]
    pub excitation_frequency: Frequency,
    /// Damping over critical damping, ζ.
    #[possible(f64::MIN_POSITIVE..1.0)]
    #[tested(0.0..=0.2)]
    pub damping_ratio: f64,
    /// Amplitude of the base's acceleration, A.
    #[shown_in("gn")]
    #[possible(0.0..)]
    pub base_acceleration: Acceleration,
    /// Participation factor of the mode at the place asked for, Γ; 1 (a single mass) if absent.
    #[possible(0.0..)]
    pub participation_factor: Option<f64>,
}

/// Outcome of [`SinusoidResponse`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SinusoidResponseOutcome {
    /// Frequency ratio, r.
    pub frequency_ratio: f64,
    /// Magnification of the movement, H.
    pub magnification: f64,
    /// Transmissibility of a single mass.
    pub transmissibility: f64,
    /// Amplitude of the movement against the base.
    pub movement: Length,
    /// Amplitude of the mode's acceleration against the base.
    #[shown_in("gn")]
    pub relative_acceleration: Acceleration,
}

impl Calculation for SinusoidResponse {
    const NAME: &'static str = "sinusoid_response";
    const SOURCE: &'static [Source] =
        &[Source::common_practice("steady state of the driven, damped oscillator")];
    type Outcome = SinusoidResponseOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (natural, f, zeta) =
            (self.natural_frequency.value, self.excitation_frequency.value, self.damping_ratio);
        let r = f / natural;
        let damped = 2.0 * zeta * r;
        let h = 1.0 / math::hypot((1.0 - r) * (1.0 + r), damped);
        let movement = self.participation_factor.unwrap_or(1.0) * self.base_acceleration.value * h
            / math::square(2.0 * PI * natural);
        Ok(SinusoidResponseOutcome {
            frequency_ratio: r,
            magnification: h,
            transmissibility: h * math::hypot(1.0, damped),
            movement: si(movement),
            relative_acceleration: si(movement * math::square(2.0 * PI * f)),
        })
    }
}
