//! Torque for a preload, in the long form.

use super::designation::ThreadDesignation;
use super::thread::ThreadGeometry;
use super::tightening::{Seat, Tightening};
use crate::prelude::*;

/// Torque that tightens a screw to a preload, in the long form.
///
/// # Formula
/// T = F (d2/2) tan(φ + ρ) + F μh Dm/(2 sin γ) + Tp, with tan φ = P/(π d2), tan ρ = μt/cos 30°, Dm = (Do + Di)/2.
/// γ is the half angle of the seat: 90° for a flat head, 45° for a 90° countersunk head.
/// Nut factor K = (T − Tp)/(F d). Stress: σ = F/As, τ = (thread torque + Tp)/(π d0³/12), σe = √(σ² + 3 τ²).
///
/// # Validity
/// One start, 60° thread, turned from the head or the nut without bending. Coefficients of friction from 0.04 to 0.40 are tested.
/// The torsional section is taken as fully plastic, as VDI 2230 does for its limit of 90 % of the yield strength; below
/// yield the outer fibre has 4/3 of the τ that is given. Countersunk heads: full contact of the cone.
///
/// # Source
/// VDI 2230-1 (2015), section 5.4.3; Budynas and Nisbett, Shigley's Mechanical Engineering Design, eq. 8-5 and 8-26.
///
/// # Example
/// Shigley, example 8-4: 3/4-16 UNF, 25 000 lbf, both frictions 0.15, mean collar diameter 1.25 d: 3551 lbf·in (unverified;
/// confirmed by computation), which is 401.2 N·m.
/// ```
/// use coaming::fastener::{ThreadDesignation, TighteningTorque};
/// use coaming::prelude::*;
///
/// let (tightening, _) = TighteningTorque {
///     thread: ThreadDesignation::Inch3_4_16Unf,
///     preload: newton(25_000.0 * 4.4482216152605),
///     thread_friction: 0.15,
///     head_friction: 0.15,
///     bearing_outer_diameter: inch(1.125),
///     bearing_inner_diameter: inch(0.75),
///     seat_half_angle: deg(90.0),
///     prevailing_torque: newton_meter(0.0),
/// }
/// .calculate()?;
/// assert!((tightening.torque.value - 401.2).abs() < 0.4);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct TighteningTorque {
    /// Designation of the thread.
    pub thread: ThreadDesignation,
    /// Preload that is wanted, F.
    #[possible(f64::MIN_POSITIVE..)]
    pub preload: Force,
    /// Coefficient of friction in the thread, μt.
    #[possible(0.0..=1.0)]
    #[tested(0.04..=0.4)]
    pub thread_friction: f64,
    /// Coefficient of friction under the turned head or nut, μh.
    #[possible(0.0..=1.0)]
    #[tested(0.04..=0.4)]
    pub head_friction: f64,
    /// Outer diameter of the bearing face, Do.
    #[possible(f64::MIN_POSITIVE..)]
    pub bearing_outer_diameter: Length,
    /// Inner diameter of the bearing face, Di: usually the clearance hole.
    #[possible(f64::MIN_POSITIVE..)]
    pub bearing_inner_diameter: Length,
    /// Half angle of the seat, γ: 90 deg for a flat head, 45 deg for a 90 deg countersunk head.
    #[possible(0.1..=FRAC_PI_2)]
    #[tested(0.6..=FRAC_PI_2)]
    pub seat_half_angle: Angle,
    /// Prevailing torque of a locking thread, Tp; zero where there is none.
    #[possible(0.0..)]
    pub prevailing_torque: Torque,
}

/// Outcome of [`TighteningTorque`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct TighteningTorqueOutcome {
    /// Tightening torque, T.
    pub torque: Torque,
    /// Part that stretches the screw, F P/(2 π).
    pub stretching_torque: Torque,
    /// Part in the thread, friction and stretch together.
    pub thread_torque: Torque,
    /// Part under the head.
    pub head_torque: Torque,
    /// Nut factor, K = (T − Tp)/(F d).
    pub nut_factor: f64,
    /// Tension in the stress area, σ.
    #[shown_in("MPa")]
    pub tensile_stress: Pressure,
    /// Torsional stress while tightening, τ.
    #[shown_in("MPa")]
    pub torsional_stress: Pressure,
    /// Equivalent stress while tightening, σe.
    #[shown_in("MPa")]
    pub equivalent_stress: Pressure,
}

impl Calculation for TighteningTorque {
    const NAME: &'static str = "tightening_torque";
    const SOURCE: &'static [Source] = SOURCE;
    type Outcome = TighteningTorqueOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let seat = Seat {
            outer: self.bearing_outer_diameter.value,
            inner: self.bearing_inner_diameter.value,
            half_angle: self.seat_half_angle.value,
        };
        if seat.outer <= seat.inner {
            return Err(self.impossible("bearing_outer_diameter", "more than the bearing inner diameter"));
        }
        let thread = ThreadGeometry::of(self.thread);
        let screw = Tightening::new(
            thread,
            self.thread_friction,
            self.head_friction,
            seat,
            self.prevailing_torque.value,
        );
        let preload = self.preload.value;
        let (tension, torsion, equivalent) = screw.stresses(preload);
        Ok(TighteningTorqueOutcome {
            torque: si(screw.torque(preload)),
            stretching_torque: si(preload * thread.pitch / (2.0 * PI)),
            thread_torque: si(preload * screw.thread_lever),
            head_torque: si(preload * screw.head_lever),
            nut_factor: (screw.thread_lever + screw.head_lever) / thread.diameter,
            tensile_stress: si(tension),
            torsional_stress: si(torsion),
            equivalent_stress: si(equivalent),
        })
    }
}

/// The sources of every calculation on tightening.
pub(crate) const SOURCE: &[Source] = &[
    Source { title: "VDI 2230-1", edition: "2015", locator: "section 5.4.3", standing: Standing::SecondHand },
    Source {
        title: "Budynas and Nisbett, Shigley's Mechanical Engineering Design",
        edition: "10th edition",
        locator: "eq. 8-5 and 8-26",
        standing: Standing::Memory,
    },
];
