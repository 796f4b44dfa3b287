//! A preloaded joint in service: what the screw feels, what clamps, separation, slip and fatigue amplitude.

use super::designation::ThreadDesignation;
use super::thread::ThreadGeometry;
use crate::prelude::*;

/// What the joint is made of: it decides whether VDI 2230 covers it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum JointMaterials {
    /// Steel screw of ISO 898-1, steel or iron layers.
    Steel,
    /// A plastic, foam or aluminium layer in the load path, or a stainless screw.
    Other,
}

/// A preloaded screw joint under axial and transverse load.
///
/// # Formula
/// Load factor Φ = n kS/(kS + kP), which is n δP/(δS + δP). Screw: FS = FV + Φ FA. Clamp: FK = FV − (1 − Φ) FA; separated below
/// zero, where the screw carries FA alone. Clamp that slip needs: FQ/(μ q). Slip safety = FK μ q/FQ.
/// Amplitude: σa = Φ (FA max − FA min)/(2 As), while the joint stays closed. Endurance of threads rolled before heat treatment:
/// σA = 0.85 (150 mm/d + 45) MPa.
///
/// # Validity
/// Concentric load, linear springs. Outside VDI 2230 (plastic, foam or aluminium in the load path, stainless screws) the same
/// springs are an estimate, with a caveat, and no endurance is given: no fatigue check passes on it. Endurance: from M6.
///
/// # Source
/// VDI 2230-1 (2015), sections 5.3 to 5.5.3 (endurance recalled, unverified); Shigley's Mechanical Engineering Design, ex. 8-4.
///
/// # Example
/// Shigley, example 8-4: C = 0.320, service stress 72.17 kpsi (unverified; confirmed by computation).
/// ```
/// use coaming::fastener::{JointLoad, JointMaterials, ThreadDesignation};
/// use coaming::prelude::*;
///
/// let (joint, _) = JointLoad {
///     thread: ThreadDesignation::Inch3_4_16Unf,
///     materials: JointMaterials::Steel,
///     bolt_stiffness: newton_per_mm(6.50e6 * 4.4482216152605 / 25.4),
///     member_stiffness: newton_per_mm(13.8e6 * 4.4482216152605 / 25.4),
///     load_introduction_factor: 1.0,
///     smallest_preload: pound_force(25_000.0),
///     largest_preload: pound_force(25_000.0),
///     largest_axial_load: pound_force(6000.0),
///     smallest_axial_load: pound_force(0.0),
///     transverse_load: pound_force(0.0),
///     friction: 0.15,
///     friction_faces: 1,
/// }
/// .calculate()?;
/// assert!((joint.load_factor - 0.320).abs() < 0.0005);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct JointLoad {
    /// Designation of the thread.
    pub thread: ThreadDesignation,
    /// What the joint is made of.
    pub materials: JointMaterials,
    /// Stiffness of the screw, kS.
    #[shown_in("kN/mm")]
    #[possible(f64::MIN_POSITIVE..)]
    pub bolt_stiffness: ForcePerLength,
    /// Stiffness of the layers, kP.
    #[shown_in("kN/mm")]
    #[possible(f64::MIN_POSITIVE..)]
    pub member_stiffness: ForcePerLength,
    /// Load introduction factor, n: 1 where the load enters at the bearing faces, less towards the joint face.
    #[possible(0.0..=1.0)]
    pub load_introduction_factor: f64,
    /// Smallest preload that remains in service, FV.
    #[possible(0.0..)]
    pub smallest_preload: Force,
    /// Largest preload.
    #[possible(f64::MIN_POSITIVE..)]
    pub largest_preload: Force,
    /// Largest axial load on the screw, FA; positive pulls the joint open.
    pub largest_axial_load: Force,
    /// Smallest axial load of the same cycle.
    pub smallest_axial_load: Force,
    /// Transverse load on the screw's joint, FQ.
    #[possible(0.0..)]
    pub transverse_load: Force,
    /// Smallest coefficient of friction between the layers, μ.
    #[possible(0.0..=1.0)]
    pub friction: f64,
    /// Faces that the transverse load must slip on, q.
    #[possible(1.0..)]
    pub friction_faces: u32,
}

/// Outcome of [`JointLoad`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct JointLoadOutcome {
    /// Load factor, Φ.
    pub load_factor: f64,
    /// Largest force on the screw.
    pub largest_screw_force: Force,
    /// Stress of that force in the stress area.
    #[shown_in("MPa")]
    pub largest_screw_stress: Pressure,
    /// Stress of the largest preload alone.
    #[shown_in("MPa")]
    pub preload_stress: Pressure,
    /// Smallest clamp force that remains; zero where the joint opens.
    pub residual_clamp: Force,
    /// Axial load at which the joint opens at its smallest preload; absent where no axial load opens it (Φ = 1).
    pub separation_load: Option<Force>,
    /// True where the joint opens.
    pub separates: bool,
    /// Clamp force that the transverse load needs; absent without a transverse load or with no friction.
    pub clamp_against_slip: Option<Force>,
    /// Residual clamp's hold over the transverse load; below 1 it slips. Absent without a transverse load.
    pub slip_safety: Option<f64>,
    /// Stress amplitude, σa.
    #[shown_in("MPa")]
    pub stress_amplitude: Pressure,
    /// Endurance amplitude, σA; absent outside VDI 2230, below M6, or where the joint opens.
    #[shown_in("MPa")]
    pub endurance_amplitude: Option<Pressure>,
}

impl Calculation for JointLoad {
    const NAME: &'static str = "joint_load";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "VDI 2230-1",
            edition: "2015",
            locator: "sections 5.3 to 5.5.3",
            standing: Standing::Memory,
        },
        Source {
            title: "Budynas and Nisbett, Shigley's Mechanical Engineering Design",
            edition: "10th edition",
            locator: "ex. 8-4",
            standing: Standing::Memory,
        },
    ];
    type Outcome = JointLoadOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (largest, smallest) = (self.largest_axial_load.value, self.smallest_axial_load.value);
        if smallest > largest {
            return Err(self.impossible("smallest_axial_load", "not more than the largest axial load"));
        }
        if self.smallest_preload > self.largest_preload {
            return Err(self.impossible("smallest_preload", "not more than the largest preload"));
        }
        let covered = self.materials == JointMaterials::Steel;
        if !covered {
            caveats.add(Caveat::OutsideVdi2230);
        }
        let thread = ThreadGeometry::of(self.thread);
        let (bolt, members) = (self.bolt_stiffness.value, self.member_stiffness.value);
        let phi = self.load_introduction_factor * bolt / (bolt + members);
        let preload = self.smallest_preload.value;
        let clamp = preload - (1.0 - phi) * largest.max(0.0);
        let separates = clamp < 0.0;
        // Force on the screw for a preload and an axial load: the axial load alone once the joint is open.
        let screw = |preload: f64, load: f64| {
            let clamp = preload - (1.0 - phi) * load;
            if clamp < 0.0 { load } else { preload + phi * load }
        };
        let largest_force = screw(self.largest_preload.value, largest.max(0.0)).max(screw(preload, largest));
        let area = thread.stress_area;
        let amplitude = (screw(preload, largest) - screw(preload, smallest)) / (2.0 * area);
        let hold = clamp.max(0.0) * self.friction * f64::from(self.friction_faces);
        let transverse = self.transverse_load.value;
        let needed = transverse / (self.friction * f64::from(self.friction_faces));
        let diameter_mm = thread.diameter * 1e3;
        let endurance =
            (covered && !separates && diameter_mm > 5.9).then(|| 0.85 * (150.0 / diameter_mm + 45.0) * 1e6);
        Ok(JointLoadOutcome {
            load_factor: phi,
            largest_screw_force: si(largest_force),
            largest_screw_stress: si(largest_force / area),
            preload_stress: si(self.largest_preload.value / area),
            residual_clamp: si(clamp.max(0.0)),
            separation_load: (phi < 1.0).then(|| si(preload / (1.0 - phi))),
            separates,
            clamp_against_slip: (transverse > 0.0 && self.friction > 0.0).then(|| si(needed)),
            slip_safety: (transverse > 0.0).then(|| hold / transverse),
            stress_amplitude: si(amplitude),
            endurance_amplitude: endurance.map(si),
        })
    }
}
