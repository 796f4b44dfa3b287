//! Basic dimensions of screw threads.

use super::designation::ThreadDesignation;
use crate::prelude::*;

/// Form and series of a screw thread.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum ThreadForm {
    /// ISO metric, coarse pitch.
    MetricCoarse,
    /// ISO metric, fine pitch.
    MetricFine,
    /// Unified, coarse (UNC).
    UnifiedCoarse,
    /// Unified, fine (UNF).
    UnifiedFine,
}

impl ThreadForm {
    /// True for the two unified (inch) series.
    pub(crate) fn is_unified(self) -> bool {
        matches!(self, Self::UnifiedCoarse | Self::UnifiedFine)
    }
}

/// Basic dimensions of a screw thread, computed from its nominal diameter and pitch.
///
/// # Formula
/// H = (√3/2) P; d2 = d − (3/4) H; d1 = d − (5/4) H.
/// Metric root: d3 = d − (17/12) H. Unified root (UNR form): d3 = d − (11/8) H.
/// Metric stress area: As = (π/4) ((d2 + d3)/2)². Unified: As = (π/4) (d − (9/8) H)², printed as d − 0.9743 P.
/// Stress diameter d0 = √(4 As/π); lead angle φ = atan(P/(π d2)).
///
/// # Validity
/// Threads of 60° with one start. Basic sizes: tolerances and coating are not in them.
/// The root of a unified thread is that of the UNR form; older tables give d − 1.2269 P, which is deeper.
///
/// # Source
/// ISO 68-1 (profile), ISO 261 and ISO 262 (diameters and pitches), ISO 724 (basic dimensions), ISO 898-1 (stress area);
/// ASME B1.1 for the unified series.
///
/// # Example
/// The stress area of M4 is 8.78 mm² (ISO 898-1, table 4, second-hand).
/// ```
/// use coaming::fastener::{Thread, ThreadDesignation};
/// use coaming::prelude::*;
///
/// let (thread, _) = Thread { designation: ThreadDesignation::M4 }.calculate()?;
/// assert!((thread.stress_area.value * 1e6 - 8.78).abs() < 0.005);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Thread {
    /// Designation of the thread.
    pub designation: ThreadDesignation,
}

/// Outcome of [`Thread`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ThreadOutcome {
    /// Form and series.
    pub form: ThreadForm,
    /// Nominal (major) diameter, d.
    pub nominal_diameter: Length,
    /// Pitch, P.
    pub pitch: Length,
    /// Height of the fundamental triangle, H.
    pub triangle_height: Length,
    /// Height of the external thread from crest to root, h3 = (d − d3)/2.
    pub thread_height: Length,
    /// Pitch diameter, d2.
    pub pitch_diameter: Length,
    /// Minor diameter of the internal thread, d1 (also D1).
    pub minor_diameter: Length,
    /// Root diameter of the external thread, d3.
    pub root_diameter: Length,
    /// Diameter of the stress area, d0.
    pub stress_diameter: Length,
    /// Stress area, As.
    pub stress_area: Area,
    /// Lead angle at the pitch diameter, φ.
    pub lead_angle: Angle,
}

/// The thread's dimensions in m and m², for the other calculations.
#[derive(Debug, Clone, Copy)]
pub(crate) struct ThreadGeometry {
    pub form: ThreadForm,
    pub diameter: f64,
    pub pitch: f64,
    pub triangle_height: f64,
    pub pitch_diameter: f64,
    pub minor_diameter: f64,
    pub root_diameter: f64,
    pub stress_diameter: f64,
    pub stress_area: f64,
}

impl ThreadGeometry {
    pub(crate) fn of(designation: ThreadDesignation) -> Self {
        let (form, d, p) = designation.dimensions();
        let h = 3.0_f64.sqrt() / 2.0 * p;
        let d2 = d - 0.75 * h;
        let d3 = if form.is_unified() { d - 11.0 / 8.0 * h } else { d - 17.0 / 12.0 * h };
        let d0 = if form.is_unified() { d - 9.0 / 8.0 * h } else { (d2 + d3) / 2.0 };
        Self {
            form,
            diameter: d,
            pitch: p,
            triangle_height: h,
            pitch_diameter: d2,
            minor_diameter: d - 1.25 * h,
            root_diameter: d3,
            stress_diameter: d0,
            stress_area: PI / 4.0 * d0 * d0,
        }
    }

    /// Tangent of the lead angle at the pitch diameter.
    pub(crate) fn lead(&self) -> f64 {
        self.pitch / (PI * self.pitch_diameter)
    }
}

impl Calculation for Thread {
    const NAME: &'static str = "thread";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "ISO 68-1, ISO 261, ISO 724",
            edition: "",
            locator: "basic profile and dimensions",
            standing: Standing::Memory,
        },
        Source {
            title: "ISO 898-1",
            edition: "2013",
            locator: "stress area, table 4",
            standing: Standing::SecondHand,
        },
        Source {
            title: "ASME B1.1",
            edition: "2003",
            locator: "basic dimensions; stress area",
            standing: Standing::SecondHand,
        },
    ];
    type Outcome = ThreadOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let thread = ThreadGeometry::of(self.designation);
        Ok(ThreadOutcome {
            form: thread.form,
            nominal_diameter: si(thread.diameter),
            pitch: si(thread.pitch),
            triangle_height: si(thread.triangle_height),
            thread_height: si((thread.diameter - thread.root_diameter) / 2.0),
            pitch_diameter: si(thread.pitch_diameter),
            minor_diameter: si(thread.minor_diameter),
            root_diameter: si(thread.root_diameter),
            stress_diameter: si(thread.stress_diameter),
            stress_area: si(thread.stress_area),
            lead_angle: si(math::atan(thread.lead())),
        })
    }
}
