//! Tolerances of threads: ISO 965-1, 6H/6g, as tabulated; ASME B1.1, 2A/2B, by its formulas. In m.

use super::thread::{ThreadForm, ThreadGeometry};
use crate::prelude::*;

/// Limits of an external and an internal thread that work together, in m.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Limits {
    pub external_major: [f64; 2],
    pub external_pitch: [f64; 2],
    pub internal_pitch: [f64; 2],
    pub internal_minor: [f64; 2],
    /// True where printed strip areas confirm the limits.
    pub confirmed: bool,
}

/// ISO 965-1 by pitch in mm: es of g, Td of grade 6, TD1 of grade 6, all in µm.
const BY_PITCH: &[(f64, f64, f64, f64)] = &[
    (0.2, 17.0, 56.0, 60.0),
    (0.25, 18.0, 67.0, 71.0),
    (0.35, 19.0, 85.0, 100.0),
    (0.4, 19.0, 95.0, 112.0),
    (0.45, 20.0, 100.0, 125.0),
    (0.5, 20.0, 106.0, 140.0),
    (0.6, 21.0, 125.0, 160.0),
    (0.7, 22.0, 140.0, 180.0),
    (0.75, 22.0, 140.0, 190.0),
    (0.8, 24.0, 150.0, 200.0),
    (1.0, 26.0, 180.0, 236.0),
    (1.25, 28.0, 212.0, 265.0),
    (1.5, 32.0, 236.0, 300.0),
    (1.75, 34.0, 265.0, 335.0),
    (2.0, 38.0, 280.0, 375.0),
    (2.5, 42.0, 335.0, 450.0),
    (3.0, 48.0, 375.0, 500.0),
];

/// ISO 965-1 by largest diameter of the range and pitch, in mm: Td2 and TD2 of grade 6, in µm.
const BY_DIAMETER: &[(f64, f64, f64, f64)] = &[
    (2.8, 0.2, 50.0, 0.0),
    (2.8, 0.25, 60.0, 0.0),
    (2.8, 0.35, 63.0, 85.0),
    (2.8, 0.4, 67.0, 90.0),
    (2.8, 0.45, 71.0, 95.0),
    (5.6, 0.35, 67.0, 90.0),
    (5.6, 0.5, 75.0, 100.0),
    (5.6, 0.6, 85.0, 112.0),
    (5.6, 0.7, 90.0, 118.0),
    (5.6, 0.75, 90.0, 118.0),
    (5.6, 0.8, 95.0, 125.0),
    (11.2, 0.75, 100.0, 132.0),
    (11.2, 1.0, 112.0, 150.0),
    (11.2, 1.25, 118.0, 160.0),
    (11.2, 1.5, 132.0, 180.0),
    (22.4, 1.0, 118.0, 160.0),
    (22.4, 1.25, 132.0, 180.0),
    (22.4, 1.5, 140.0, 190.0),
    (22.4, 1.75, 150.0, 200.0),
    (22.4, 2.0, 160.0, 212.0),
    (22.4, 2.5, 170.0, 224.0),
    (45.0, 1.0, 125.0, 170.0),
    (45.0, 1.5, 150.0, 200.0),
    (45.0, 2.0, 170.0, 224.0),
    (45.0, 3.0, 200.0, 265.0),
];

impl Limits {
    /// Limits of the medium class of the thread's standard; none where the tables have no row.
    pub(crate) fn medium(thread: &ThreadGeometry) -> Option<Self> {
        match thread.form {
            ThreadForm::MetricCoarse | ThreadForm::MetricFine => Self::iso_6h_6g(thread),
            ThreadForm::UnifiedCoarse | ThreadForm::UnifiedFine => Some(Self::asme_2a_2b(thread)),
        }
    }

    fn iso_6h_6g(thread: &ThreadGeometry) -> Option<Self> {
        let (d, p) = (thread.diameter * 1e3, thread.pitch * 1e3);
        let same = |listed: f64| (listed - p).abs() < 1e-6;
        let (_, es, major, minor) = BY_PITCH.iter().copied().find(|row| same(row.0))?;
        let (_, _, external, internal) = BY_DIAMETER.iter().copied().find(|row| d <= row.0 && same(row.1))?;
        if internal == 0.0 {
            return None; // ISO 965-1 has no grade 6 for the pitch diameter of an internal thread this fine.
        }
        let um = 1e-6;
        // ISO 724 prints the basic diameters to 0.001 mm, and the limits are counted from the printed figures.
        let basic = |diameter: f64| (diameter * 1e6).round() * um;
        let (d2, d1) = (basic(thread.pitch_diameter), basic(thread.minor_diameter));
        Some(Self {
            external_major: [thread.diameter - (es + major) * um, thread.diameter - es * um],
            external_pitch: [d2 - (es + external) * um, d2 - es * um],
            internal_pitch: [d2, d2 + internal * um],
            internal_minor: [d1, d1 + minor * um],
            confirmed: [5.0, 6.0, 8.0, 10.0].contains(&d.round())
                && thread.form == ThreadForm::MetricCoarse
                && (d - d.round()).abs() < 1e-6,
        })
    }

    /// The formulas of ASME B1.1 are in inches; length of engagement is one diameter.
    fn asme_2a_2b(thread: &ThreadGeometry) -> Self {
        let inch = 0.0254;
        let (d, p) = (thread.diameter / inch, thread.pitch / inch);
        let two_thirds = math::cbrt(p * p);
        let external = 0.0015 * (math::cbrt(d) + d.sqrt() + 10.0 * two_thirds);
        let allowance = 0.3 * external;
        let major = 0.06 * two_thirds;
        let fine_limit = 0.25 * p - 0.4 * p * p;
        let minor = if d < 0.2499 {
            (0.05 * two_thirds + 0.03 * p / d - 0.002).min(0.394 * p).max(fine_limit)
        } else {
            fine_limit
        };
        Self {
            external_major: [
                thread.diameter - (allowance + major) * inch,
                thread.diameter - allowance * inch,
            ],
            external_pitch: [
                thread.pitch_diameter - (allowance + external) * inch,
                thread.pitch_diameter - allowance * inch,
            ],
            internal_pitch: [thread.pitch_diameter, thread.pitch_diameter + 1.3 * external * inch],
            internal_minor: [thread.minor_diameter, thread.minor_diameter + minor * inch],
            confirmed: false,
        }
    }
}
