//! The nominal sizes of screws, without their pitch.

use crate::prelude::*;

/// Nominal size of a screw, whatever its pitch: M1.6 to M24, or #0 to 1 in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum ScrewSize {
    /// 1.6 mm.
    #[option("M1.6")]
    M1_6,
    /// 1.8 mm.
    #[option("M1.8")]
    M1_8,
    /// 2 mm.
    #[option("M2")]
    M2,
    /// 2.2 mm.
    #[option("M2.2")]
    M2_2,
    /// 2.5 mm.
    #[option("M2.5")]
    M2_5,
    /// 3 mm.
    #[option("M3")]
    M3,
    /// 3.5 mm.
    #[option("M3.5")]
    M3_5,
    /// 4 mm.
    #[option("M4")]
    M4,
    /// 4.5 mm.
    #[option("M4.5")]
    M4_5,
    /// 5 mm.
    #[option("M5")]
    M5,
    /// 6 mm.
    #[option("M6")]
    M6,
    /// 7 mm.
    #[option("M7")]
    M7,
    /// 8 mm.
    #[option("M8")]
    M8,
    /// 10 mm.
    #[option("M10")]
    M10,
    /// 12 mm.
    #[option("M12")]
    M12,
    /// 14 mm.
    #[option("M14")]
    M14,
    /// 16 mm.
    #[option("M16")]
    M16,
    /// 18 mm.
    #[option("M18")]
    M18,
    /// 20 mm.
    #[option("M20")]
    M20,
    /// 22 mm.
    #[option("M22")]
    M22,
    /// 24 mm.
    #[option("M24")]
    M24,
    /// 0.06 in.
    #[option("#0")]
    No0,
    /// 0.073 in.
    #[option("#1")]
    No1,
    /// 0.086 in.
    #[option("#2")]
    No2,
    /// 0.099 in.
    #[option("#3")]
    No3,
    /// 0.112 in.
    #[option("#4")]
    No4,
    /// 0.125 in.
    #[option("#5")]
    No5,
    /// 0.138 in.
    #[option("#6")]
    No6,
    /// 0.164 in.
    #[option("#8")]
    No8,
    /// 0.19 in.
    #[option("#10")]
    No10,
    /// 0.216 in.
    #[option("#12")]
    No12,
    /// 0.25 in.
    #[option("1/4 in")]
    Inch1_4,
    /// 0.3125 in.
    #[option("5/16 in")]
    Inch5_16,
    /// 0.375 in.
    #[option("3/8 in")]
    Inch3_8,
    /// 0.4375 in.
    #[option("7/16 in")]
    Inch7_16,
    /// 0.5 in.
    #[option("1/2 in")]
    Inch1_2,
    /// 0.5625 in.
    #[option("9/16 in")]
    Inch9_16,
    /// 0.625 in.
    #[option("5/8 in")]
    Inch5_8,
    /// 0.75 in.
    #[option("3/4 in")]
    Inch3_4,
    /// 0.875 in.
    #[option("7/8 in")]
    Inch7_8,
    /// 1.0 in.
    #[option("1 in")]
    Inch1,
}

impl ScrewSize {
    /// Nominal diameter of the screw.
    pub fn nominal_diameter(self) -> Length {
        si(self.diameter())
    }

    /// Nominal diameter in m.
    pub(crate) fn diameter(self) -> f64 {
        match self {
            Self::M1_6 => 1.6e-3,
            Self::M1_8 => 1.8e-3,
            Self::M2 => 2.0e-3,
            Self::M2_2 => 2.2e-3,
            Self::M2_5 => 2.5e-3,
            Self::M3 => 3.0e-3,
            Self::M3_5 => 3.5e-3,
            Self::M4 => 4.0e-3,
            Self::M4_5 => 4.5e-3,
            Self::M5 => 5.0e-3,
            Self::M6 => 6.0e-3,
            Self::M7 => 7.0e-3,
            Self::M8 => 8.0e-3,
            Self::M10 => 10.0e-3,
            Self::M12 => 12.0e-3,
            Self::M14 => 14.0e-3,
            Self::M16 => 16.0e-3,
            Self::M18 => 18.0e-3,
            Self::M20 => 20.0e-3,
            Self::M22 => 22.0e-3,
            Self::M24 => 24.0e-3,
            Self::No0 => 1.524e-3,        // 0.06 in
            Self::No1 => 1.8542e-3,       // 0.073 in
            Self::No2 => 2.1844e-3,       // 0.086 in
            Self::No3 => 2.5146e-3,       // 0.099 in
            Self::No4 => 2.8448e-3,       // 0.112 in
            Self::No5 => 3.175e-3,        // 0.125 in
            Self::No6 => 3.5052e-3,       // 0.138 in
            Self::No8 => 4.1656e-3,       // 0.164 in
            Self::No10 => 4.826e-3,       // 0.19 in
            Self::No12 => 5.4864e-3,      // 0.216 in
            Self::Inch1_4 => 6.35e-3,     // 0.25 in
            Self::Inch5_16 => 7.9375e-3,  // 0.3125 in
            Self::Inch3_8 => 9.525e-3,    // 0.375 in
            Self::Inch7_16 => 11.1125e-3, // 0.4375 in
            Self::Inch1_2 => 12.7e-3,     // 0.5 in
            Self::Inch9_16 => 14.2875e-3, // 0.5625 in
            Self::Inch5_8 => 15.875e-3,   // 0.625 in
            Self::Inch3_4 => 19.05e-3,    // 0.75 in
            Self::Inch7_8 => 22.225e-3,   // 0.875 in
            Self::Inch1 => 25.4e-3,       // 1.0 in
        }
    }
}
