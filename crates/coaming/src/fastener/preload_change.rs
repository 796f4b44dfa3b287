//! What becomes of a preload: embedding, creep of soft layers, temperature.

use crate::prelude::*;

/// Preload that remains after embedding, creep and a change of temperature.
///
/// # Formula
/// Screw and layers keep fitting each other: F (1/kS + 1/kP∞) = F0 (1/kS + 1/kP) − fz + (ΔlP − ΔlS).
/// kS, kP: stiffness of screw and layers; kP∞: of the layers after creep; fz: embedding of all faces; ΔlP, ΔlS: growth of the
/// layers and of the screw within the grip, from the temperature of tightening. Each loss alone is shown beside the sum.
/// A sum below zero means that the joint is loose: no preload.
///
/// # Validity
/// Linear springs, with the moduli of the final temperature taken for both. Creep is relaxation at a fixed fit: the layers are
/// `creep factor` times softer for their time. The allowance of 5 % for embedding in metal joints (NSTS 08307) is an input here.
///
/// # Source
/// VDI 2230-1 (2015), section 5.4.2 (embedding, thermal change; second-hand); compatibility of two springs for creep.
///
/// # Example
/// By hand: kS 100, kP 400 kN/mm, embedding 5 µm: the loss is 5e-3/(1/100 + 1/400) = 0.4 kN.
/// ```
/// use coaming::fastener::PreloadChange;
/// use coaming::prelude::*;
///
/// let (joint, _) = PreloadChange {
///     preload: kilonewton(5.0),
///     bolt_stiffness: newton_per_mm(100e3),
///     member_stiffness: newton_per_mm(400e3),
///     member_stiffness_after_creep: newton_per_mm(400e3),
///     embedding: mm(0.005),
///     member_growth: mm(0.0),
///     bolt_growth: mm(0.0),
/// }
/// .calculate()?;
/// assert!((joint.residual_preload.value - 4600.0).abs() < 1e-6);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PreloadChange {
    /// Preload as tightened, F0.
    #[possible(f64::MIN_POSITIVE..)]
    pub preload: Force,
    /// Stiffness of the screw, kS.
    #[shown_in("kN/mm")]
    #[possible(f64::MIN_POSITIVE..)]
    pub bolt_stiffness: ForcePerLength,
    /// Stiffness of the layers, kP.
    #[shown_in("kN/mm")]
    #[possible(f64::MIN_POSITIVE..)]
    pub member_stiffness: ForcePerLength,
    /// Stiffness of the layers after creep, kP∞.
    #[shown_in("kN/mm")]
    #[possible(f64::MIN_POSITIVE..)]
    pub member_stiffness_after_creep: ForcePerLength,
    /// Embedding of all faces and threads, fz.
    #[possible(0.0..)]
    pub embedding: Length,
    /// Growth of the layers from the temperature of tightening, ΔlP; negative where they shrink.
    pub member_growth: Length,
    /// Growth of the screw over the same length, ΔlS; negative where it shrinks.
    pub bolt_growth: Length,
}

/// Outcome of [`PreloadChange`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct PreloadChangeOutcome {
    /// Preload that remains, F; zero where the joint is loose.
    pub residual_preload: Force,
    /// The sum before it is cut off at zero: negative by how much the joint is loose.
    pub balance: Force,
    /// True where nothing remains.
    pub loose: bool,
    /// What remains over what was tightened.
    pub residual_ratio: f64,
    /// Loss by embedding alone.
    pub embedding_loss: Force,
    /// Loss by creep alone.
    pub creep_loss: Force,
    /// Change by temperature alone; positive is a gain.
    pub thermal_change: Force,
}

impl Calculation for PreloadChange {
    const NAME: &'static str = "preload_change";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "VDI 2230-1",
            edition: "2015",
            locator: "section 5.4.2",
            standing: Standing::SecondHand,
        },
        Source {
            title: "compatibility of two springs",
            edition: "",
            locator: "",
            standing: Standing::Computed,
        },
    ];
    type Outcome = PreloadChangeOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (bolt, members) = (1.0 / self.bolt_stiffness.value, 1.0 / self.member_stiffness.value);
        let later = 1.0 / self.member_stiffness_after_creep.value;
        if later < members {
            return Err(self.impossible("member_stiffness_after_creep", "not more than the member stiffness"));
        }
        let f0 = self.preload.value;
        let growth = self.member_growth.value - self.bolt_growth.value;
        let balance = (f0 * (bolt + members) - self.embedding.value + growth) / (bolt + later);
        Ok(PreloadChangeOutcome {
            residual_preload: si(balance.max(0.0)),
            balance: si(balance),
            loose: balance <= 0.0,
            residual_ratio: balance.max(0.0) / f0,
            embedding_loss: si(self.embedding.value / (bolt + members)),
            creep_loss: si(f0 * (later - members) / (bolt + later)),
            thermal_change: si(growth / (bolt + members)),
        })
    }
}
