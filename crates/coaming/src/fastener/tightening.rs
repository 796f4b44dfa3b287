//! What the tightening calculations share: levers of the two friction faces, and the stress in the shank.

use super::thread::ThreadGeometry;
use crate::prelude::*;

/// A screw while it is tightened: torque = preload × (thread lever + head lever) + prevailing torque.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tightening {
    pub thread: ThreadGeometry,
    /// Torque in the thread for each newton of preload, in m.
    pub thread_lever: f64,
    /// Torque under the head for each newton of preload, in m.
    pub head_lever: f64,
    /// Prevailing torque, in N·m.
    pub prevailing: f64,
}

/// The bearing face of the head, in m and rad.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Seat {
    pub outer: f64,
    pub inner: f64,
    pub half_angle: f64,
}

impl Tightening {
    /// Levers by the screw's inclined plane and by the mean diameter of the seat.
    pub(crate) fn new(
        thread: ThreadGeometry,
        thread_friction: f64,
        head_friction: f64,
        seat: Seat,
        prevailing: f64,
    ) -> Self {
        let tan_phi = thread.lead();
        let tan_rho = thread_friction / (3.0_f64.sqrt() / 2.0);
        let thread_lever = thread.pitch_diameter / 2.0 * (tan_phi + tan_rho) / (1.0 - tan_phi * tan_rho);
        let mean_diameter = (seat.outer + seat.inner) / 2.0;
        let head_lever = head_friction * mean_diameter / (2.0 * math::sin(seat.half_angle));
        Self { thread, thread_lever, head_lever, prevailing }
    }

    /// Torque for a preload.
    pub(crate) fn torque(&self, preload: f64) -> f64 {
        preload * (self.thread_lever + self.head_lever) + self.prevailing
    }

    /// Preload for a torque; negative where the torque does not reach the prevailing torque.
    pub(crate) fn preload(&self, torque: f64) -> f64 {
        (torque - self.prevailing) / (self.thread_lever + self.head_lever)
    }

    /// Tension, torsional stress and equivalent stress in the stress section.
    pub(crate) fn stresses(&self, preload: f64) -> (f64, f64, f64) {
        let tension = preload / self.thread.stress_area;
        let torsion = (preload * self.thread_lever + self.prevailing) / self.torsion_section();
        (tension, torsion, (tension * tension + 3.0 * torsion * torsion).sqrt())
    }

    /// Section modulus in torsion of the stress section, fully plastic: π d0³/12.
    pub(crate) fn torsion_section(&self) -> f64 {
        PI / 12.0 * math::cube(self.thread.stress_diameter)
    }
}
