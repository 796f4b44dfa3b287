//! The standard series of screw lengths. Data only.

use crate::prelude::*;

/// Series of nominal screw lengths.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum LengthSeries {
    /// ISO 888, 2 mm to 200 mm, without the lengths in brackets (unverified).
    #[option("iso_888")]
    Iso888,
    /// Inch lengths, 1/8 in to 6 in, as they are commonly stocked (common practice).
    Inch,
}

/// Lengths of ISO 888 in m.
const ISO_888: &[f64] = &[
    2.0e-3, 2.5e-3, 3.0e-3, 4.0e-3, 5.0e-3, 6.0e-3, 8.0e-3, 10.0e-3, 12.0e-3, 16.0e-3, 20.0e-3, 25.0e-3,
    30.0e-3, 35.0e-3, 40.0e-3, 45.0e-3, 50.0e-3, 55.0e-3, 60.0e-3, 65.0e-3, 70.0e-3, 80.0e-3, 90.0e-3,
    100.0e-3, 110.0e-3, 120.0e-3, 130.0e-3, 140.0e-3, 150.0e-3, 160.0e-3, 180.0e-3, 200.0e-3,
];

/// Stocked inch lengths in m: 1/8 to 7/16 by 1/16, to 1 by 1/8, to 3 by 1/4, to 6 by 1/2.
const INCH: &[f64] = &[
    3.175e-3, 4.7625e-3, 6.35e-3, 7.9375e-3, 9.525e-3, 11.1125e-3, 12.7e-3, 15.875e-3, 19.05e-3, 22.225e-3,
    25.4e-3, 31.75e-3, 38.1e-3, 44.45e-3, 50.8e-3, 57.15e-3, 63.5e-3, 69.85e-3, 76.2e-3, 88.9e-3, 101.6e-3,
    114.3e-3, 127.0e-3, 139.7e-3, 152.4e-3,
];

impl LengthSeries {
    /// The lengths in m, from the shortest.
    pub(crate) fn lengths(self) -> impl Iterator<Item = f64> {
        match self {
            Self::Iso888 => ISO_888,
            Self::Inch => INCH,
        }
        .iter()
        .copied()
    }

    /// True where the series has this length, to a micrometre.
    pub(crate) fn has(self, length: f64) -> bool {
        self.lengths().any(|listed| (listed - length).abs() < 1e-6)
    }
}
