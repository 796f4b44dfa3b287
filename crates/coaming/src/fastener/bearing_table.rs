//! Outer diameters of the bearing face of flat-seated heads and washers, by standard and size. Data only, all unverified.
//!
//! The smallest diameter of each standard's tolerance, which gives the largest pressure.

use super::size::ScrewSize;
use crate::prelude::*;

/// Standard of a head or washer with a flat bearing face.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum BearingStandard {
    /// Pan head, cross-recessed (ISO 7045): smallest dk.
    #[option("iso_7045")]
    Iso7045,
    /// Button head, hexagon socket (ISO 7380-1): smallest dk.
    #[option("iso_7380_1")]
    Iso7380_1,
    /// Hexagon head, grade A (ISO 4017): smallest dw.
    #[option("iso_4017")]
    Iso4017,
    /// Socket head cap screw (ISO 4762): smallest dw.
    #[option("iso_4762")]
    Iso4762,
    /// Plain washer, normal (ISO 7089): smallest outer diameter.
    #[option("iso_7089")]
    Iso7089,
    /// Plain washer, large (ISO 7093-1): smallest outer diameter.
    #[option("iso_7093_1")]
    Iso7093_1,
    /// Pan head machine screw (ASME B18.6.3): smallest head diameter.
    #[option("asme_b18_6_3_pan")]
    AsmeB18_6_3Pan,
    /// Button head, hexagon socket (ASME B18.3): smallest head diameter.
    #[option("asme_b18_3_button")]
    AsmeB18_3Button,
}

impl BearingStandard {
    /// Outer diameter of the bearing face in m; none where the standard has no such size.
    pub(crate) fn outer_diameter(self, size: ScrewSize) -> Option<f64> {
        match self {
            Self::Iso7045 => iso_7045(size),
            Self::Iso7380_1 => iso_7380_1(size),
            Self::Iso4017 => iso_4017(size),
            Self::Iso4762 => iso_4762(size),
            Self::Iso7089 => iso_7089(size),
            Self::Iso7093_1 => iso_7093_1(size),
            Self::AsmeB18_6_3Pan => asme_b18_6_3_pan(size),
            Self::AsmeB18_3Button => asme_b18_3_button(size),
        }
    }
}

fn iso_7045(size: ScrewSize) -> Option<f64> {
    Some(match size {
        ScrewSize::M1_6 => 2.9e-3,
        ScrewSize::M2 => 3.7e-3,
        ScrewSize::M2_5 => 4.7e-3,
        ScrewSize::M3 => 5.3e-3,
        ScrewSize::M3_5 => 6.64e-3,
        ScrewSize::M4 => 7.64e-3,
        ScrewSize::M5 => 9.14e-3,
        ScrewSize::M6 => 11.57e-3,
        ScrewSize::M8 => 15.57e-3,
        ScrewSize::M10 => 19.48e-3,
        _ => return None,
    })
}

fn iso_7380_1(size: ScrewSize) -> Option<f64> {
    Some(match size {
        ScrewSize::M3 => 5.4e-3,
        ScrewSize::M4 => 7.24e-3,
        ScrewSize::M5 => 9.14e-3,
        ScrewSize::M6 => 10.07e-3,
        ScrewSize::M8 => 13.57e-3,
        ScrewSize::M10 => 17.07e-3,
        ScrewSize::M12 => 20.48e-3,
        _ => return None,
    })
}

fn iso_4017(size: ScrewSize) -> Option<f64> {
    Some(match size {
        ScrewSize::M1_6 => 2.27e-3,
        ScrewSize::M2 => 3.07e-3,
        ScrewSize::M2_5 => 4.07e-3,
        ScrewSize::M3 => 4.57e-3,
        ScrewSize::M3_5 => 5.07e-3,
        ScrewSize::M4 => 5.88e-3,
        ScrewSize::M5 => 6.88e-3,
        ScrewSize::M6 => 8.88e-3,
        ScrewSize::M8 => 11.63e-3,
        ScrewSize::M10 => 14.63e-3,
        ScrewSize::M12 => 16.63e-3,
        ScrewSize::M14 => 19.64e-3,
        ScrewSize::M16 => 22.49e-3,
        ScrewSize::M20 => 28.19e-3,
        ScrewSize::M24 => 33.61e-3,
        _ => return None,
    })
}

fn iso_4762(size: ScrewSize) -> Option<f64> {
    Some(match size {
        ScrewSize::M1_6 => 2.72e-3,
        ScrewSize::M2 => 3.48e-3,
        ScrewSize::M2_5 => 4.18e-3,
        ScrewSize::M3 => 5.07e-3,
        ScrewSize::M4 => 6.53e-3,
        ScrewSize::M5 => 8.03e-3,
        ScrewSize::M6 => 9.38e-3,
        ScrewSize::M8 => 12.33e-3,
        ScrewSize::M10 => 15.33e-3,
        ScrewSize::M12 => 17.23e-3,
        ScrewSize::M14 => 20.17e-3,
        ScrewSize::M16 => 23.17e-3,
        ScrewSize::M20 => 28.87e-3,
        ScrewSize::M24 => 34.81e-3,
        _ => return None,
    })
}

fn iso_7089(size: ScrewSize) -> Option<f64> {
    Some(match size {
        ScrewSize::M1_6 => 3.7e-3,
        ScrewSize::M2 => 4.7e-3,
        ScrewSize::M2_5 => 5.7e-3,
        ScrewSize::M3 => 6.64e-3,
        ScrewSize::M4 => 8.64e-3,
        ScrewSize::M5 => 9.64e-3,
        ScrewSize::M6 => 11.57e-3,
        ScrewSize::M8 => 15.57e-3,
        ScrewSize::M10 => 19.48e-3,
        ScrewSize::M12 => 23.48e-3,
        ScrewSize::M14 => 27.48e-3,
        ScrewSize::M16 => 29.48e-3,
        ScrewSize::M20 => 36.38e-3,
        ScrewSize::M24 => 43.38e-3,
        _ => return None,
    })
}

fn iso_7093_1(size: ScrewSize) -> Option<f64> {
    Some(match size {
        ScrewSize::M3 => 8.64e-3,
        ScrewSize::M4 => 11.57e-3,
        ScrewSize::M5 => 14.57e-3,
        ScrewSize::M6 => 17.57e-3,
        ScrewSize::M8 => 23.48e-3,
        ScrewSize::M10 => 29.48e-3,
        ScrewSize::M12 => 36.38e-3,
        _ => return None,
    })
}

fn asme_b18_6_3_pan(size: ScrewSize) -> Option<f64> {
    Some(match size {
        ScrewSize::No2 => 3.937e-3,       // 0.155 in
        ScrewSize::No4 => 5.207e-3,       // 0.205 in
        ScrewSize::No6 => 6.5024e-3,      // 0.256 in
        ScrewSize::No8 => 7.7724e-3,      // 0.306 in
        ScrewSize::No10 => 9.0678e-3,     // 0.357 in
        ScrewSize::Inch1_4 => 12.0142e-3, // 0.473 in
        _ => return None,
    })
}

fn asme_b18_3_button(size: ScrewSize) -> Option<f64> {
    Some(match size {
        ScrewSize::No4 => 5.1054e-3,      // 0.201 in
        ScrewSize::No6 => 6.35e-3,        // 0.25 in
        ScrewSize::No8 => 7.5692e-3,      // 0.298 in
        ScrewSize::No10 => 8.8138e-3,     // 0.347 in
        ScrewSize::Inch1_4 => 10.6426e-3, // 0.419 in
        _ => return None,
    })
}
