use crate::prelude::*;

/// Temperature rise at which a layer between its screws takes up its clearance, and at which it buckles.
///
/// # Formula
/// ```text
/// ΔTc = c / (L |α1 − α2|)          the clearance is taken up
/// ΔTb = εcr / |α1 − α2|            held growth strain at buckling
/// ΔT  = ΔTc + ΔTb                  critical rise
/// ```
/// Both layers warm alike. εcr is the growth strain at which the held layer buckles between its screws; it
/// comes from the plate calculations for its shape and edges.
///
/// # Validity
/// Only the differential growth counts, and only beyond the clearance. Layers at different temperatures: use
/// their growth strains (`layer_growth`) instead. Buckling of a pressed layer is for α1 > α2 on warming, α1 <
/// α2 on cooling.
///
/// # Source
/// Geometry; common practice.
///
/// # Example
/// Polycarbonate on aluminium, 276 mm, 0.5 mm of clearance: 43.8 K until it touches; a critical strain of
/// 2e-4 adds 4.8 K (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::CriticalRise;
///
/// let (outcome, _) = CriticalRise {
///     expansion: per_kelvin(65e-6),
///     other_expansion: per_kelvin(23.6e-6),
///     held_length: mm(276.0),
///     clearance: mm(0.5),
///     critical_strain: 2e-4,
/// }
/// .calculate()?;
/// assert!((outcome.rise_to_contact.value - 43.7583).abs() < 1e-3);
/// assert!((outcome.critical_rise.value - 48.5892).abs() < 1e-3);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CriticalRise {
    /// Coefficient of expansion of the layer, α1.
    #[possible(-1e-3..=1e-3)]
    pub expansion: Expansion,
    /// Coefficient of expansion of what holds it, α2.
    #[possible(-1e-3..=1e-3)]
    pub other_expansion: Expansion,
    /// Length between the holds, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub held_length: Length,
    /// Clearance over that length before the layer meets its holds, c: both ends together.
    #[possible(0.0..)]
    pub clearance: Length,
    /// Held growth strain at which the layer buckles, εcr.
    #[possible(0.0..=0.5)]
    pub critical_strain: f64,
}

/// Rises of temperature.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct CriticalRiseOutcome {
    /// Rise that takes up the clearance, ΔTc.
    pub rise_to_contact: TemperatureDifference,
    /// Rise beyond contact until it buckles, ΔTb.
    pub rise_beyond_contact: TemperatureDifference,
    /// Critical rise, ΔT: both together.
    pub critical_rise: TemperatureDifference,
}

impl Calculation for CriticalRise {
    const NAME: &'static str = "critical_rise";
    const SOURCE: &'static [Source] =
        &[Source::common_practice("differential growth counted beyond the clearance")];
    type Outcome = CriticalRiseOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let difference = (self.expansion.value - self.other_expansion.value).abs();
        if difference == 0.0 {
            return Err(Error::inconsistent(
                "expansion, other_expansion",
                "layers that expand alike never meet; give two different coefficients",
            ));
        }
        let contact = self.clearance.value / (self.held_length.value * difference);
        let beyond = self.critical_strain / difference;
        Ok(CriticalRiseOutcome {
            rise_to_contact: si(contact),
            rise_beyond_contact: si(beyond),
            critical_rise: si(contact + beyond),
        })
    }
}
