//! Deflection after a time under a lasting load, by a creep modulus factor.

use crate::prelude::*;

/// Deflection of a plastic part after a time under a lasting load, and its sustained stress against the limit.
///
/// # Formula
/// w(t) = w0/f, E(t) = f E0, f the creep modulus factor of the material for that time and temperature. The stress of a
/// part under a given load does not change while its modulus falls evenly: it is compared with the sustained limit as it is.
///
/// # Validity
/// Linear viscoelastic: stress below the sustained limit (a caveat past it), one material, load constant. After unloading
/// the part returns only slowly.
///
/// # Source
/// ISO 899-2 (creep modulus in bending, from memory, unverified); common practice.
///
/// # Example
/// f = 0.5 doubles the deflection: 2 mm become 4 mm (by the definition of the creep modulus).
/// ```
/// use coaming::plate::CreepDeflection;
/// use coaming::prelude::*;
///
/// let pane = CreepDeflection {
///     short_time_deflection: mm(2.0),
///     youngs_modulus: megapascal(2400.0),
///     creep_modulus_factor: 0.5,
///     sustained_stress: megapascal(5.0),
///     sustained_stress_limit: Some(megapascal(7.0)),
/// };
/// let (outcome, _) = pane.calculate()?;
/// assert!((outcome.deflection - mm(4.0)).abs() < mm(1e-9));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CreepDeflection {
    /// Deflection by the short-time modulus, w0; its sign is kept.
    pub short_time_deflection: Length,
    /// Short-time modulus at that temperature, E0.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Creep modulus over short-time modulus, f.
    #[possible(f64::MIN_POSITIVE..=1.0)]
    #[tested(0.1..=1.0)]
    pub creep_modulus_factor: f64,
    /// Stress under the lasting load.
    #[shown_in("MPa")]
    pub sustained_stress: Pressure,
    /// Sustained stress limit of the material; the margin is absent without it.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub sustained_stress_limit: Option<Pressure>,
}

/// Outcome of [`CreepDeflection`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct CreepDeflectionOutcome {
    /// Deflection after the time, w(t).
    pub deflection: Length,
    /// What creep adds.
    pub creep: Length,
    /// Creep modulus, E(t).
    #[shown_in("GPa")]
    pub creep_modulus: Pressure,
    /// Strain after the time, size of the stress over the creep modulus.
    pub creep_strain: f64,
    /// Sustained limit over the stress's size, less one; absent without a limit or a stress.
    pub margin: Option<f64>,
}

impl Calculation for CreepDeflection {
    const NAME: &'static str = "creep_deflection";
    const SOURCE: &'static [Source] = &[Source {
        title: "ISO 899-2",
        edition: "",
        locator: "definition of the flexural creep modulus",
        standing: Standing::Memory,
    }];
    type Outcome = CreepDeflectionOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (w0, f, stress) =
            (self.short_time_deflection.value, self.creep_modulus_factor, self.sustained_stress.value.abs());
        let modulus = f * self.youngs_modulus.value;
        let margin = match self.sustained_stress_limit {
            Some(limit) if stress > 0.0 => Some(limit.value / stress - 1.0),
            _ => None,
        };
        if margin.is_some_and(|margin| margin < 0.0) {
            caveats.add(Caveat::CreepNotLinear);
        }
        Ok(CreepDeflectionOutcome {
            deflection: si(w0 / f),
            creep: si(w0 / f - w0),
            creep_modulus: si(modulus),
            creep_strain: stress / modulus,
            margin,
        })
    }
}
