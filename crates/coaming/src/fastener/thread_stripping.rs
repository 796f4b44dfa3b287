//! Stripping of a thread pair: areas, forces and the engagement that the screw's own strength asks for.

use super::designation::ThreadDesignation;
use super::thread::ThreadGeometry;
use super::thread_limits::medium_limits;
use crate::prelude::*;

/// The thread that strips first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum WeakerThread {
    /// The screw's.
    External,
    /// The nut's, insert's or tapped hole's.
    Internal,
}

/// Strip areas and forces of a screw in a nut, insert or tapped hole, and the engagement at which the screw breaks first.
///
/// # Formula
/// n = 1/P. External: Ae = π n Le D1max [1/(2 n) + tan 30° (d2min − D1max)]. Internal: Ai = π n Le dmin [1/(2 n) + tan 30°
/// (dmin − D2max)]. Strip force = C1 Cs τ A. Required engagement: the one whose smaller strip force equals the screw's load.
/// C1 for a nut that widens, of width s: −(s/d)² + 3.8 (s/d) − 2.61 for 1.4 ≤ s/d < 1.9, and 1 from 1.9; without a width, 1.
/// Cs for threads that bend, with Rs = (τi Ai)/(τe Ae), where a width is given: external C2 = 0.897 for Rs ≤ 1, and
/// 5.594 − 13.682 Rs + 14.107 Rs² − 6.057 Rs³ + 0.9353 Rs⁴ to Rs = 2.2, 1.187 above; internal C3 = 0.728 + 1.769 Rs
/// − 2.896 Rs² + 1.296 Rs³ for Rs < 1, and 0.897 from 1. Without a width both are 1.
///
/// # Validity
/// Limits of the medium class (6H/6g, 2A/2B) at their worst. Even load over the engagement, which holds to about 1.5 d; full
/// threads only: take the point, the chamfer and the run-out off the length. C1 below s/d = 1.4 and C3 below Rs = 0.4 are
/// outside the tests behind them and carry a caveat. Plastic threads creep: use the sustained shear strength.
///
/// # Source
/// FED-STD-H28/2B, strip areas; Alexander (1977), as in VDI 2230-1, for the factors (unverified). Limits as `thread_limits`.
///
/// # Example
/// M5 at an engagement of 1 d: 35.366 mm² and 49.994 mm² (Bickford, 4th edition, metric strip-area table, second-hand).
/// ```
/// use coaming::fastener::{ThreadDesignation, ThreadStripping};
/// use coaming::prelude::*;
///
/// let (stripping, _) = ThreadStripping {
///     thread: ThreadDesignation::M5,
///     engagement: mm(5.0),
///     external_shear_strength: megapascal(480.0),
///     internal_shear_strength: megapascal(160.0),
///     screw_load: newton(11_350.0),
///     nut_width: None,
/// }
/// .calculate()?;
/// assert!((stripping.external_area.value * 1e6 - 35.366).abs() < 0.02);
/// assert!((stripping.internal_area.value * 1e6 - 49.994).abs() < 0.025);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ThreadStripping {
    /// Designation of the thread.
    pub thread: ThreadDesignation,
    /// Length of full thread that is engaged, Le.
    #[possible(f64::MIN_POSITIVE..)]
    pub engagement: Length,
    /// Shear strength of the screw, τe.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub external_shear_strength: Pressure,
    /// Shear strength of the nut, insert or tapped part, τi.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub internal_shear_strength: Pressure,
    /// Load that the thread must hold: the screw's tensile load, so that the screw breaks first, or the service load.
    #[possible(f64::MIN_POSITIVE..)]
    pub screw_load: Force,
    /// Width of the nut or boss across flats, s, for the factors of a nut that widens; absent for a body that does not.
    #[possible(f64::MIN_POSITIVE..)]
    pub nut_width: Option<Length>,
}

/// Outcome of [`ThreadStripping`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ThreadStrippingOutcome {
    /// Strip area of the screw's thread, Ae.
    pub external_area: Area,
    /// Strip area of the nut's thread, Ai.
    pub internal_area: Area,
    /// Factor for a nut that widens, C1.
    pub dilation_factor: f64,
    /// Factor for bending of the screw's thread, C2.
    pub external_bending_factor: f64,
    /// Factor for bending of the nut's thread, C3.
    pub internal_bending_factor: f64,
    /// Force that strips the screw's thread.
    pub external_strip_force: Force,
    /// Force that strips the nut's thread.
    pub internal_strip_force: Force,
    /// The thread that strips first.
    pub weaker_thread: WeakerThread,
    /// Load over the smaller strip force; above 1 the thread strips.
    pub utilisation: f64,
    /// Engagement at which the smaller strip force equals the load.
    pub required_engagement: Length,
}

impl Calculation for ThreadStripping {
    const NAME: &'static str = "thread_stripping";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "FED-STD-H28/2B",
            edition: "1991",
            locator: "strip areas",
            standing: Standing::SecondHand,
        },
        Source {
            title: "Alexander, Analysis and Design of Threaded Assemblies",
            edition: "1977",
            locator: "C1, C2, C3",
            standing: Standing::Memory,
        },
        Source {
            title: "ISO 965-1 and ASME B1.1",
            edition: "",
            locator: "6H/6g, 2A/2B",
            standing: Standing::Memory,
        },
    ];
    type Outcome = ThreadStrippingOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let thread = ThreadGeometry::of(self.thread);
        let limits = medium_limits(self.thread)?;
        if !limits.confirmed {
            caveats.add(Caveat::UnverifiedDimension);
        }
        let (engagement, pitch) = (self.engagement.value, thread.pitch);
        let tan_30 = 1.0 / 3.0_f64.sqrt();
        let [d_min, _] = limits.external_major;
        let [d2_min, _] = limits.external_pitch;
        let [_, d2_max_internal] = limits.internal_pitch;
        let [_, d1_max] = limits.internal_minor;
        let external = PI / pitch * engagement * d1_max * (pitch / 2.0 + tan_30 * (d2_min - d1_max));
        let internal = PI / pitch * engagement * d_min * (pitch / 2.0 + tan_30 * (d_min - d2_max_internal));
        let (tau_e, tau_i) = (self.external_shear_strength.value, self.internal_shear_strength.value);
        let (c1, c2, c3) = match self.nut_width {
            None => (1.0, 1.0, 1.0),
            Some(width) => {
                let ratio = width.value / thread.diameter;
                if ratio <= 1.0 {
                    return Err(self.impossible("nut_width", "more than the thread's diameter"));
                }
                let strength_ratio = tau_i * internal / (tau_e * external);
                if ratio < 1.4 || strength_ratio < 0.4 {
                    caveats.add(Caveat::OutsideTested);
                }
                (dilation(ratio), external_bending(strength_ratio), internal_bending(strength_ratio))
            }
        };
        let external_force = c1 * c2 * tau_e * external;
        let internal_force = c1 * c3 * tau_i * internal;
        let smaller = external_force.min(internal_force);
        let load = self.screw_load.value;
        Ok(ThreadStrippingOutcome {
            external_area: si(external),
            internal_area: si(internal),
            dilation_factor: c1,
            external_bending_factor: c2,
            internal_bending_factor: c3,
            external_strip_force: si(external_force),
            internal_strip_force: si(internal_force),
            weaker_thread: if external_force < internal_force {
                WeakerThread::External
            } else {
                WeakerThread::Internal
            },
            utilisation: load / smaller,
            required_engagement: si(engagement * load / smaller),
        })
    }
}

/// C1 of a nut of width over diameter s/d.
fn dilation(ratio: f64) -> f64 {
    if ratio >= 1.9 { 1.0 } else { -ratio * ratio + 3.8 * ratio - 2.61 }
}

/// C2 for the ratio of strip strengths Rs.
fn external_bending(rs: f64) -> f64 {
    if rs <= 1.0 {
        0.897
    } else if rs < 2.2 {
        5.594 + rs * (-13.682 + rs * (14.107 + rs * (-6.057 + rs * 0.9353)))
    } else {
        1.187
    }
}

/// C3 for the ratio of strip strengths Rs.
fn internal_bending(rs: f64) -> f64 {
    if rs < 1.0 { 0.728 + rs * (1.769 + rs * (-2.896 + rs * 1.296)) } else { 0.897 }
}
