//! Band of preload by the scatter of friction and tool.

use super::designation::ThreadDesignation;
use super::thread::ThreadGeometry;
use super::tightening::{Seat, Tightening};
use super::tightening_torque::SOURCE;
use crate::prelude::*;

/// Smallest, nominal and largest preload for a torque, by the scatter of friction and of the tool.
///
/// # Formula
/// F = (T − Tp)/[(d2/2) tan(φ + ρ) + μh Dm/(2 sin γ)] at three states:
/// smallest: T (1 − a), largest friction, largest Tp; nominal; largest: T (1 + a), smallest friction, smallest Tp.
/// Tightening factor αA = Fmax/Fmin. Equivalent stress at the largest preload, as in `tightening_torque`.
///
/// # Validity
/// As `tightening_torque`. The worst of tool and friction fall together: the band is wider than a statistical one.
///
/// # Source
/// VDI 2230-1 (2015), section 5.4.3.
///
/// # Example
/// M8 at 24.6 N·m, friction 0.10 to 0.14, tool ±5 %: derived by hand from the formula, 15.5 kN to 22.8 kN.
/// ```
/// use coaming::fastener::{ThreadDesignation, TighteningScatter};
/// use coaming::prelude::*;
///
/// let (scatter, _) = TighteningScatter {
///     thread: ThreadDesignation::M8,
///     torque: newton_meter(24.6),
///     torque_tolerance: 0.05,
///     thread_friction_smallest: 0.10,
///     thread_friction_nominal: 0.12,
///     thread_friction_largest: 0.14,
///     head_friction_smallest: 0.10,
///     head_friction_nominal: 0.12,
///     head_friction_largest: 0.14,
///     bearing_outer_diameter: mm(11.63),
///     bearing_inner_diameter: mm(9.0),
///     seat_half_angle: deg(90.0),
///     prevailing_torque_smallest: newton_meter(0.0),
///     prevailing_torque_largest: newton_meter(0.0),
/// }
/// .calculate()?;
/// assert!((scatter.nominal_preload.value - 18_600.0).abs() < 100.0);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct TighteningScatter {
    /// Designation of the thread.
    pub thread: ThreadDesignation,
    /// Tightening torque that is set, T.
    #[possible(f64::MIN_POSITIVE..)]
    pub torque: Torque,
    /// Tolerance of the tool as a part of the torque, a.
    #[possible(0.0..1.0)]
    pub torque_tolerance: f64,
    /// Smallest coefficient of friction in the thread.
    #[possible(0.0..=1.0)]
    #[tested(0.04..=0.4)]
    pub thread_friction_smallest: f64,
    /// Nominal coefficient of friction in the thread.
    #[possible(0.0..=1.0)]
    #[tested(0.04..=0.4)]
    pub thread_friction_nominal: f64,
    /// Largest coefficient of friction in the thread.
    #[possible(0.0..=1.0)]
    #[tested(0.04..=0.4)]
    pub thread_friction_largest: f64,
    /// Smallest coefficient of friction under the head.
    #[possible(0.0..=1.0)]
    #[tested(0.04..=0.4)]
    pub head_friction_smallest: f64,
    /// Nominal coefficient of friction under the head.
    #[possible(0.0..=1.0)]
    #[tested(0.04..=0.4)]
    pub head_friction_nominal: f64,
    /// Largest coefficient of friction under the head.
    #[possible(0.0..=1.0)]
    #[tested(0.04..=0.4)]
    pub head_friction_largest: f64,
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
    /// Smallest prevailing torque of a locking thread; zero where there is none.
    #[possible(0.0..)]
    pub prevailing_torque_smallest: Torque,
    /// Largest prevailing torque of a locking thread; the nominal one is the mean of the two.
    #[possible(0.0..)]
    pub prevailing_torque_largest: Torque,
}

/// Outcome of [`TighteningScatter`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct TighteningScatterOutcome {
    /// Smallest preload, Fmin.
    pub smallest_preload: Force,
    /// Nominal preload.
    pub nominal_preload: Force,
    /// Largest preload, Fmax.
    pub largest_preload: Force,
    /// Tightening factor, αA = Fmax/Fmin.
    pub tightening_factor: f64,
    /// Equivalent stress while tightening to the largest preload.
    #[shown_in("MPa")]
    pub largest_equivalent_stress: Pressure,
}

impl Calculation for TighteningScatter {
    const NAME: &'static str = "tightening_scatter";
    const SOURCE: &'static [Source] = SOURCE;
    type Outcome = TighteningScatterOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let seat = Seat {
            outer: self.bearing_outer_diameter.value,
            inner: self.bearing_inner_diameter.value,
            half_angle: self.seat_half_angle.value,
        };
        if seat.outer <= seat.inner {
            return Err(self.impossible("bearing_outer_diameter", "more than the bearing inner diameter"));
        }
        if !(self.thread_friction_smallest <= self.thread_friction_nominal
            && self.thread_friction_nominal <= self.thread_friction_largest)
        {
            return Err(Error::inconsistent(
                "thread_friction_smallest, thread_friction_nominal, thread_friction_largest",
                "must rise in this order",
            ));
        }
        if !(self.head_friction_smallest <= self.head_friction_nominal
            && self.head_friction_nominal <= self.head_friction_largest)
        {
            return Err(Error::inconsistent(
                "head_friction_smallest, head_friction_nominal, head_friction_largest",
                "must rise in this order",
            ));
        }
        let (tp_smallest, tp_largest) =
            (self.prevailing_torque_smallest.value, self.prevailing_torque_largest.value);
        if tp_smallest > tp_largest {
            return Err(
                self.impossible("prevailing_torque_largest", "not less than the smallest prevailing torque")
            );
        }
        let (t, a) = (self.torque.value, self.torque_tolerance);
        if t * (1.0 - a) <= tp_largest {
            return Err(self.impossible(
                "torque",
                "more than the largest prevailing torque, at the tool's lower tolerance",
            ));
        }
        let thread = ThreadGeometry::of(self.thread);
        let (thread_friction, head_friction) = (self.thread_friction_largest, self.head_friction_largest);
        let tight = Tightening::new(thread, thread_friction, head_friction, seat, tp_largest);
        let smallest = tight.preload(t * (1.0 - a));
        let (thread_friction, head_friction) = (self.thread_friction_nominal, self.head_friction_nominal);
        let mean =
            Tightening::new(thread, thread_friction, head_friction, seat, (tp_smallest + tp_largest) / 2.0);
        let nominal = mean.preload(t);
        let (thread_friction, head_friction) = (self.thread_friction_smallest, self.head_friction_smallest);
        let loose = Tightening::new(thread, thread_friction, head_friction, seat, tp_smallest);
        let largest = loose.preload(t * (1.0 + a));
        let (_, _, equivalent) = loose.stresses(largest);
        Ok(TighteningScatterOutcome {
            smallest_preload: si(smallest),
            nominal_preload: si(nominal),
            largest_preload: si(largest),
            tightening_factor: largest / smallest,
            largest_equivalent_stress: si(equivalent),
        })
    }
}
