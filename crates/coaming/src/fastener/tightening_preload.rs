//! Preload for a torque, in the long form.

use super::designation::ThreadDesignation;
use super::thread::ThreadGeometry;
use super::tightening::{Seat, Tightening};
use super::tightening_torque::SOURCE;
use crate::prelude::*;

/// Preload that a tightening torque gives, in the long form.
///
/// # Formula
/// The inverse of `tightening_torque`: F = (T − Tp)/[(d2/2) tan(φ + ρ) + μh Dm/(2 sin γ)].
///
/// # Validity
/// As `tightening_torque`. The torque must be more than the prevailing torque; below it the screw does not clamp.
///
/// # Source
/// VDI 2230-1 (2015), section 5.4.3; Budynas and Nisbett, Shigley's Mechanical Engineering Design, eq. 8-5 and 8-26.
///
/// # Example
/// VDI 2230-1, table A1: M8 of class 8.8, both frictions 0.12: 24.6 N·m give 18.6 kN (second-hand).
/// ```
/// use coaming::fastener::{ThreadDesignation, TighteningPreload};
/// use coaming::prelude::*;
///
/// let (tightening, _) = TighteningPreload {
///     thread: ThreadDesignation::M8,
///     torque: newton_meter(24.6),
///     thread_friction: 0.12,
///     head_friction: 0.12,
///     bearing_outer_diameter: mm(11.63),
///     bearing_inner_diameter: mm(9.0),
///     seat_half_angle: deg(90.0),
///     prevailing_torque: newton_meter(0.0),
/// }
/// .calculate()?;
/// assert!((tightening.preload.value - 18_600.0).abs() < 100.0);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct TighteningPreload {
    /// Designation of the thread.
    pub thread: ThreadDesignation,
    /// Tightening torque, T.
    #[possible(f64::MIN_POSITIVE..)]
    pub torque: Torque,
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

/// Outcome of [`TighteningPreload`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct TighteningPreloadOutcome {
    /// Preload, F.
    pub preload: Force,
    /// Part of the torque in the thread, friction and stretch together.
    pub thread_torque: Torque,
    /// Part of the torque under the head.
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

impl Calculation for TighteningPreload {
    const NAME: &'static str = "tightening_preload";
    const SOURCE: &'static [Source] = SOURCE;
    type Outcome = TighteningPreloadOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let seat = Seat {
            outer: self.bearing_outer_diameter.value,
            inner: self.bearing_inner_diameter.value,
            half_angle: self.seat_half_angle.value,
        };
        if seat.outer <= seat.inner {
            return Err(self.impossible("bearing_outer_diameter", "more than the bearing inner diameter"));
        }
        if self.torque.value <= self.prevailing_torque.value {
            return Err(self.impossible("torque", "more than the prevailing torque"));
        }
        let thread = ThreadGeometry::of(self.thread);
        let screw = Tightening::new(
            thread,
            self.thread_friction,
            self.head_friction,
            seat,
            self.prevailing_torque.value,
        );
        let preload = screw.preload(self.torque.value);
        let (tension, torsion, equivalent) = screw.stresses(preload);
        Ok(TighteningPreloadOutcome {
            preload: si(preload),
            thread_torque: si(preload * screw.thread_lever),
            head_torque: si(preload * screw.head_lever),
            nut_factor: (screw.thread_lever + screw.head_lever) / thread.diameter,
            tensile_stress: si(tension),
            torsional_stress: si(torsion),
            equivalent_stress: si(equivalent),
        })
    }
}
