use crate::prelude::*;

/// Height that a gasket comes back to after a time in its gap, and what it still presses and follows with.
///
/// # Formula
/// H free height, h closed height:
/// ```text
/// of deflection (ASTM D395 B)   Hr = H − s (H − h)
/// of thickness (ISO 1856)       Hr = H (1 − s)
/// recovered travel  = Hr − h                     what it can follow when the gap opens
/// residual compression = (Hr − h) / Hr           at the closed height, counted on what is left
/// follow ratio = recovered travel / opening
/// ```
///
/// # Validity
/// The set was measured at a temperature, for a time, at a compression and after a time of recovery. A service
/// that is hotter, longer or more compressed takes more set than the number says, and a gap that opens faster than
/// the sample recovered is followed by less: a caveat tells so.
///
/// # Source
/// ASTM D395, method B (set as a part of the deflection); ISO 1856 (set as a part of the thickness).
/// Unverified.
///
/// # Example
/// 4 mm of deflection with a set of 0.55 of it: 1.8 mm come back (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::{GasketSet, SetBasis};
///
/// let (outcome, _) = GasketSet {
///     free_height: mm(10.0),
///     closed_height: mm(6.0),
///     set: 0.55,
///     set_basis: SetBasis::OfDeflection,
///     test_temperature: celsius(70.0),
///     test_time: hour(22.0),
///     test_compression: 0.5,
///     recovery_time: hour(0.5),
///     service_temperature: celsius(55.0),
///     service_time: hour(22.0),
///     opening: mm(1.0),
///     opening_time: None,
/// }
/// .calculate()?;
/// assert!((outcome.recovered_travel.value - 1.8e-3).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GasketSet {
    /// Free height when new, H.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_height: Length,
    /// Closed height, h.
    #[possible(f64::MIN_POSITIVE..)]
    pub closed_height: Length,
    /// Set as measured, s.
    #[possible(0.0..=1.0)]
    pub set: f64,
    /// What the set is a part of.
    pub set_basis: SetBasis,
    /// Temperature of the measurement.
    #[possible(0.0..)]
    pub test_temperature: Temperature,
    /// Time of the measurement.
    #[possible(f64::MIN_POSITIVE..)]
    #[shown_in("h")]
    pub test_time: Time,
    /// Compression of the measurement.
    #[possible(f64::MIN_POSITIVE..=0.99)]
    pub test_compression: f64,
    /// Time that the sample had to recover before its height was measured.
    #[possible(0.0..)]
    #[shown_in("h")]
    pub recovery_time: Time,
    /// Temperature in service.
    #[possible(0.0..)]
    pub service_temperature: Temperature,
    /// Time in service at that temperature.
    #[possible(f64::MIN_POSITIVE..)]
    #[shown_in("h")]
    pub service_time: Time,
    /// Opening of the gap that it must follow: bow, opening and tolerance together.
    #[possible(0.0..)]
    pub opening: Length,
    /// Time over which the gap opens; without it, speed is not judged.
    #[possible(0.0..)]
    #[shown_in("h")]
    pub opening_time: Option<Time>,
}

/// What a set is a part of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum SetBasis {
    /// Of the deflection (ASTM D395, method B).
    OfDeflection,
    /// Of the free thickness (ISO 1856).
    OfThickness,
}

/// What is left of the gasket.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct GasketSetOutcome {
    /// Recovered height, Hr.
    pub recovered_height: Length,
    /// Recovered travel; below zero: it no longer reaches the closed height.
    pub recovered_travel: Length,
    /// Residual compression, counted on the recovered height.
    pub residual_compression: f64,
    /// Set as a part of the deflection.
    pub set_of_deflection: f64,
    /// Set as a part of the free thickness.
    pub set_of_thickness: f64,
    /// Recovered travel over the opening; absent when nothing opens.
    pub follow_ratio: Option<f64>,
}

impl Calculation for GasketSet {
    const NAME: &'static str = "gasket_set";
    const SOURCE: &'static [Source] = &[
        Source { title: "ASTM D395", edition: "", locator: "method B", standing: Standing::Memory },
        Source { title: "ISO 1856", edition: "", locator: "definition of set", standing: Standing::Memory },
    ];
    type Outcome = GasketSetOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (free, closed) = (self.free_height.value, self.closed_height.value);
        let deflection = free - closed;
        if deflection <= 0.0 {
            return Err(Error::inconsistent(
                "free_height, closed_height",
                "the closed height must be below the free height: without deflection there is no set",
            ));
        }
        let lost = match self.set_basis {
            SetBasis::OfDeflection => self.set * deflection,
            SetBasis::OfThickness => self.set * free,
        };
        let recovered = free - lost;
        if recovered <= 0.0 {
            return Err(self.impossible("set", "less than the whole free height"));
        }
        if self.service_temperature > self.test_temperature
            || self.service_time > self.test_time
            || deflection > self.test_compression * free * (1.0 + 1e-9)
        {
            caveats.add(Caveat::SetBeyondTest);
        }
        if self.opening_time.is_some_and(|time| time < self.recovery_time) {
            caveats.add(Caveat::OpensFaster);
        }
        let travel = recovered - closed;
        let opening = self.opening.value;
        Ok(GasketSetOutcome {
            recovered_height: si(recovered),
            recovered_travel: si(travel),
            residual_compression: travel / recovered,
            set_of_deflection: lost / deflection,
            set_of_thickness: lost / free,
            follow_ratio: (opening > 0.0).then(|| travel / opening),
        })
    }
}
