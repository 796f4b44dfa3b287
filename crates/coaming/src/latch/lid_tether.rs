use crate::prelude::*;

/// Force in the tether of a lid that falls into it.
///
/// # Formula
/// ```text
/// W = m g
/// F = W (1 + sqrt(1 + 2 h k / W))        largest force
/// x = F / k                              largest stretch
/// U = W (h + x)                          energy that it takes up
/// ```
/// h free fall until the tether is taut, k its stiffness with all that it hangs on. A taut tether (h = 0)
/// still sees twice the weight.
///
/// # Validity
/// A linear tether without damping, falling straight; the lid stays whole. A slack chain is far stiffer than
/// a cord: measure k, or leave no slack.
///
/// # Source
/// Energy of a falling weight on a spring (Roark's Formulas for Stress and Strain, 7th ed., ch. 16, suddenly
/// applied and impact loading, unverified); standard gravity 9.80665 m/s².
///
/// # Example
/// A taut tether on a lid of 3.25 kg: twice its weight of 31.87 N (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::latch::LidTether;
///
/// let (outcome, _) = LidTether {
///     mass: kilogram(3.25),
///     free_fall: mm(0.0),
///     stiffness: newton_per_mm(5.0),
///     working_load: None,
/// }
/// .calculate()?;
/// assert!((outcome.largest_force.value - 63.743).abs() < 1e-3);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LidTether {
    /// Mass of the lid, m.
    #[possible(f64::MIN_POSITIVE..)]
    pub mass: Mass,
    /// Free fall until the tether is taut, h.
    #[possible(0.0..)]
    pub free_fall: Length,
    /// Stiffness of the tether with its ends, k.
    #[possible(f64::MIN_POSITIVE..)]
    pub stiffness: ForcePerLength,
    /// Maker's working load of the tether.
    #[possible(f64::MIN_POSITIVE..)]
    pub working_load: Option<Force>,
}

/// Force, stretch and energy.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LidTetherOutcome {
    /// Weight of the lid, W.
    pub weight: Force,
    /// Largest force in the tether, F.
    pub largest_force: Force,
    /// Largest stretch of the tether, x.
    pub largest_stretch: Length,
    /// Energy that it takes up, U (J).
    #[shown_in("J")]
    pub energy: Torque,
    /// Largest force over the working load.
    pub working_load_ratio: Option<f64>,
}

impl Calculation for LidTether {
    const NAME: &'static str = "lid_tether";
    const SOURCE: &'static [Source] = &[Source {
        title: "Roark's Formulas for Stress and Strain",
        edition: "7th ed.",
        locator: "ch. 16, impact of a falling weight",
        standing: Standing::Memory,
    }];
    type Outcome = LidTetherOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (fall, k) = (self.free_fall.value, self.stiffness.value);
        let weight = self.mass.value * standard_gravity(1.0).value;
        let force = weight * (1.0 + (1.0 + 2.0 * fall * k / weight).sqrt());
        let stretch = force / k;
        Ok(LidTetherOutcome {
            weight: si(weight),
            largest_force: si(force),
            largest_stretch: si(stretch),
            energy: si(weight * (fall + stretch)),
            working_load_ratio: self.working_load.map(|load| force / load.value),
        })
    }
}
