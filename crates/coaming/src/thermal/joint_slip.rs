use crate::prelude::*;

/// Whether a clamped layer slides under its screws when it grows, or is locked by friction.
///
/// # Formula
/// ```text
/// Rmin = n j μmin Fmin     least friction of the clamped layer
/// Rmax = n j μmax Fmax     greatest friction
/// slides  if the restrained force is above Rmax
/// locked  if it is below Rmin
/// band    between them: it may do either
/// ```
/// F preload of one screw, n screws that hold the layer against movement to one side, j faces that rub.
///
/// # Validity
/// Preload bears on the layer itself. Under a shoulder bush it does not, and the layer floats with no
/// friction but the seal's. The restrained force is that of the layer held without slip
/// (`restrained_growth`). Friction is a band because it is not known better: paint, oil, dust and wear change
/// it by a factor of two.
///
/// # Source
/// Coulomb friction; the band is the caller's (common practice).
///
/// # Example
/// Ten screws at 2 kN and a friction of 0.2 hold 4 kN; 1.1 kN of growth does not move them (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::{JointSlip, SlipState};
///
/// let (outcome, _) = JointSlip {
///     preload_min: kilonewton(2.0),
///     preload_max: kilonewton(2.0),
///     screws: 10,
///     friction_faces: 1,
///     friction_min: 0.2,
///     friction_max: 0.2,
///     restrained_force: kilonewton(1.1),
/// }
/// .calculate()?;
/// assert_eq!(outcome.slip, SlipState::Locked);
/// assert!((outcome.friction_force_min.value - 4000.0).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct JointSlip {
    /// Least preload of one screw on the layer, Fmin.
    #[possible(0.0..)]
    pub preload_min: Force,
    /// Greatest preload of one screw on the layer, Fmax.
    #[possible(0.0..)]
    pub preload_max: Force,
    /// Screws that hold the layer, n.
    #[possible(1.0..=10_000.0)]
    pub screws: u32,
    /// Faces of the layer that rub, j: 1 or 2.
    #[possible(1.0..=2.0)]
    pub friction_faces: u32,
    /// Least friction coefficient, μmin.
    #[possible(0.0..=2.0)]
    pub friction_min: f64,
    /// Greatest friction coefficient, μmax.
    #[possible(0.0..=2.0)]
    pub friction_max: f64,
    /// Force of the layer when it is held without slip.
    #[possible(0.0..)]
    pub restrained_force: Force,
}

/// Whether a clamped layer slides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum SlipState {
    /// It slides even at the greatest friction.
    Slides,
    /// It may slide or lock: the force lies between least and greatest friction.
    Band,
    /// It is locked even at the least friction.
    Locked,
}

/// Friction against growth.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct JointSlipOutcome {
    /// Least friction force, Rmin.
    pub friction_force_min: Force,
    /// Greatest friction force, Rmax.
    pub friction_force_max: Force,
    /// Whether it slides.
    pub slip: SlipState,
    /// Greatest force that can stay in the layer: the smaller of growth and greatest friction.
    pub held_force: Force,
}

impl Calculation for JointSlip {
    const NAME: &'static str = "joint_slip";
    const SOURCE: &'static [Source] =
        &[Source::common_practice("Coulomb friction with a band of coefficients")];
    type Outcome = JointSlipOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.preload_max < self.preload_min {
            return Err(Error::inconsistent(
                "preload_min, preload_max",
                "the least is not above the greatest",
            ));
        }
        if self.friction_max < self.friction_min {
            return Err(Error::inconsistent(
                "friction_min, friction_max",
                "the least is not above the greatest",
            ));
        }
        let faces = f64::from(self.screws) * f64::from(self.friction_faces);
        let least = faces * self.friction_min * self.preload_min.value;
        let greatest = faces * self.friction_max * self.preload_max.value;
        let force = self.restrained_force.value;
        let slip = if force > greatest {
            SlipState::Slides
        } else if force < least {
            SlipState::Locked
        } else {
            SlipState::Band
        };
        Ok(JointSlipOutcome {
            friction_force_min: si(least),
            friction_force_max: si(greatest),
            slip,
            held_force: si(force.min(greatest)),
        })
    }
}
