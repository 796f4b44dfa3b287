use crate::prelude::*;

/// Contact left between lid and frame under acceleration, and the largest force on a latch.
///
/// # Formula
/// ```text
/// Fi = m a               inertia of the lid
/// Fc = n F               force of all latches when closed and at rest
/// R  = Fc − Fi           contact left while the lid is thrown outward
/// Fl = F + Fi / n        largest force on each latch
/// ```
/// R < 0: the lid lifts off and rattles.
///
/// # Validity
/// Both results are bounds. A lid pulled onto stiff stops sheds contact one for one, and the latches feel
/// little of it; a lid on soft sponge alone leaves nearly all of the acceleration to the latches. The truth
/// lies between. The latches share alike. Acceleration acts straight outward and is steady; at a resonance of
/// the lid it is larger there than at the frame. Where weight pulls outward (a lid overhead), add 1 g.
///
/// # Source
/// Balance of forces (Newton's second law); standard gravity 9.80665 m/s² (ISO 80000-3:2019).
///
/// # Example
/// A lid of 3.25 kg at 3 g on six latches of 115 N: inertia 95.61 N, contact left 594.39 N (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::latch::LatchHold;
///
/// let (outcome, _) = LatchHold {
///     mass: kilogram(3.25),
///     acceleration: meter_per_second_squared(3.0 * 9.80665),
///     latches: 6,
///     latch_force: newton(115.0),
///     working_load: None,
/// }
/// .calculate()?;
/// assert!((outcome.residual_contact.value - 594.385).abs() < 1e-3);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LatchHold {
    /// Mass of all that the latches hold, m.
    #[possible(f64::MIN_POSITIVE..)]
    pub mass: Mass,
    /// Acceleration that throws the lid outward, a.
    #[possible(0.0..)]
    pub acceleration: Acceleration,
    /// Number of latches, n.
    #[possible(1.0..=10_000.0)]
    pub latches: u32,
    /// Force on each latch when closed and at rest, F.
    #[possible(0.0..)]
    pub latch_force: Force,
    /// Maker's working load of one latch.
    #[possible(f64::MIN_POSITIVE..)]
    pub working_load: Option<Force>,
}

/// Contact left and force on the latches.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LatchHoldOutcome {
    /// Inertia of the lid, Fi.
    pub inertia_force: Force,
    /// Force of all latches at rest, Fc.
    pub closing_force: Force,
    /// Contact left, R; below zero the lid lifts off.
    pub residual_contact: Force,
    /// Contact left over the force at rest; absent when there is no force at rest.
    pub residual_share: Option<f64>,
    /// Largest force on each latch, Fl.
    pub largest_latch_force: Force,
    /// Largest force on each latch over the working load.
    pub working_load_ratio: Option<f64>,
}

impl Calculation for LatchHold {
    const NAME: &'static str = "latch_hold";
    const SOURCE: &'static [Source] = &[Source {
        title: "ISO 80000-3",
        edition: "2019",
        locator: "standard gravity; balance of forces by Newton's second law",
        standing: Standing::Memory,
    }];
    type Outcome = LatchHoldOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let n = f64::from(self.latches);
        let inertia = self.mass.value * self.acceleration.value;
        let closing = n * self.latch_force.value;
        let residual = closing - inertia;
        let largest = self.latch_force.value + inertia / n;
        Ok(LatchHoldOutcome {
            inertia_force: si(inertia),
            closing_force: si(closing),
            residual_contact: si(residual),
            residual_share: (closing > 0.0).then(|| residual / closing),
            largest_latch_force: si(largest),
            working_load_ratio: self.working_load.map(|load| largest / load.value),
        })
    }
}
