//! Assembly preload by the use of the screw's yield strength.

use super::designation::ThreadDesignation;
use super::thread::ThreadGeometry;
use super::tightening::{Seat, Tightening};
use super::tightening_torque::SOURCE;
use crate::prelude::*;

/// Assembly preload that uses a stated part of the screw's yield strength while it is tightened, and its torque.
///
/// # Formula
/// √(σ² + 3 τ²) = ν Rp, with σ = F/As and τ = (F (d2/2) tan(φ + ρ) + Tp)/(π d0³/12), solved for F.
/// The torque is that of `tightening_torque`. Smallest preload by the tightening factor αA: Fmin = F/αA.
///
/// # Validity
/// The screw's own limit only: head, thread in the part and the clamped layers have theirs. VDI 2230 uses ν = 0.9.
/// The torsional section is fully plastic. Above ν = 1 the screw yields, which is not tested.
///
/// # Source
/// VDI 2230-1 (2015), section 5.5.1 and tables A1 to A4.
///
/// # Example
/// VDI 2230-1, table A1: M4 of class 8.8 (640 MPa), friction 0.12: 4.42 kN and 3.0 N·m (unverified; confirmed by computation).
/// ```
/// use coaming::fastener::{AssemblyPreload, ThreadDesignation};
/// use coaming::prelude::*;
///
/// let (tightening, _) = AssemblyPreload {
///     thread: ThreadDesignation::M4,
///     yield_strength: megapascal(640.0),
///     utilisation: 0.9,
///     thread_friction: 0.12,
///     head_friction: 0.12,
///     bearing_outer_diameter: mm(5.88),
///     bearing_inner_diameter: mm(4.5),
///     seat_half_angle: deg(90.0),
///     prevailing_torque: newton_meter(0.0),
///     tightening_factor: None,
/// }
/// .calculate()?;
/// assert!((tightening.assembly_preload.value - 4420.0).abs() < 20.0);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct AssemblyPreload {
    /// Designation of the thread.
    pub thread: ThreadDesignation,
    /// Yield strength or 0.2 % proof strength of the screw, Rp.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub yield_strength: Pressure,
    /// Part of the yield strength that tightening may use, ν: 0.9 in VDI 2230.
    #[possible(f64::MIN_POSITIVE..)]
    #[tested(0.1..=1.0)]
    pub utilisation: f64,
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
    /// Tightening factor, αA: largest over smallest preload of the method.
    #[possible(1.0..)]
    #[tested(1.0..=4.0)]
    pub tightening_factor: Option<f64>,
}

/// Outcome of [`AssemblyPreload`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct AssemblyPreloadOutcome {
    /// Largest assembly preload, F.
    pub assembly_preload: Force,
    /// Its tightening torque, T.
    pub torque: Torque,
    /// Smallest preload, F/αA; absent without a tightening factor.
    pub smallest_preload: Option<Force>,
    /// Tension in the stress area, σ.
    #[shown_in("MPa")]
    pub tensile_stress: Pressure,
    /// Torsional stress while tightening, τ.
    #[shown_in("MPa")]
    pub torsional_stress: Pressure,
}

impl Calculation for AssemblyPreload {
    const NAME: &'static str = "assembly_preload";
    const SOURCE: &'static [Source] = SOURCE;
    type Outcome = AssemblyPreloadOutcome;

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
        let allowed = self.utilisation * self.yield_strength.value;
        // σ = a F and τ = b F + c, so (a² + 3 b²) F² + 6 b c F + 3 c² − allowed² = 0.
        let a = 1.0 / thread.stress_area;
        let b = screw.thread_lever / screw.torsion_section();
        let c = self.prevailing_torque.value / screw.torsion_section();
        let square = a * a + 3.0 * b * b;
        let constant = allowed * allowed - 3.0 * c * c;
        if constant <= 0.0 {
            return Err(self.impossible(
                "prevailing_torque",
                "less than the torque that alone uses up the allowed stress",
            ));
        }
        let half = 3.0 * b * c;
        // The positive root, written without the difference of two near numbers.
        let preload = constant / (half + (half * half + square * constant).sqrt());
        let (tension, torsion, _) = screw.stresses(preload);
        Ok(AssemblyPreloadOutcome {
            assembly_preload: si(preload),
            torque: si(screw.torque(preload)),
            smallest_preload: self.tightening_factor.map(|factor| si(preload / factor)),
            tensile_stress: si(tension),
            torsional_stress: si(torsion),
        })
    }
}
