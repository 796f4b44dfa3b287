//! The designations of screw threads: a closed list, each with its nominal diameter and pitch.

use super::thread::ThreadForm;
use crate::prelude::*;

/// One inch in m.
const INCH: f64 = 0.0254;

/// Designation of a screw thread: ISO 261 and ISO 262 (M1.6 to M24), or ASME B1.1 (#2 to 1 in).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum ThreadDesignation {
    /// ISO metric coarse, 1.6 mm by 0.35 mm.
    #[option("M1.6")]
    M1_6,
    /// ISO metric coarse, 1.8 mm by 0.35 mm.
    #[option("M1.8")]
    M1_8,
    /// ISO metric coarse, 2 mm by 0.4 mm.
    #[option("M2")]
    M2,
    /// ISO metric coarse, 2.2 mm by 0.45 mm.
    #[option("M2.2")]
    M2_2,
    /// ISO metric coarse, 2.5 mm by 0.45 mm.
    #[option("M2.5")]
    M2_5,
    /// ISO metric coarse, 3 mm by 0.5 mm.
    #[option("M3")]
    M3,
    /// ISO metric coarse, 3.5 mm by 0.6 mm.
    #[option("M3.5")]
    M3_5,
    /// ISO metric coarse, 4 mm by 0.7 mm.
    #[option("M4")]
    M4,
    /// ISO metric coarse, 4.5 mm by 0.75 mm.
    #[option("M4.5")]
    M4_5,
    /// ISO metric coarse, 5 mm by 0.8 mm.
    #[option("M5")]
    M5,
    /// ISO metric coarse, 6 mm by 1 mm.
    #[option("M6")]
    M6,
    /// ISO metric coarse, 7 mm by 1 mm.
    #[option("M7")]
    M7,
    /// ISO metric coarse, 8 mm by 1.25 mm.
    #[option("M8")]
    M8,
    /// ISO metric coarse, 10 mm by 1.5 mm.
    #[option("M10")]
    M10,
    /// ISO metric coarse, 12 mm by 1.75 mm.
    #[option("M12")]
    M12,
    /// ISO metric coarse, 14 mm by 2 mm.
    #[option("M14")]
    M14,
    /// ISO metric coarse, 16 mm by 2 mm.
    #[option("M16")]
    M16,
    /// ISO metric coarse, 18 mm by 2.5 mm.
    #[option("M18")]
    M18,
    /// ISO metric coarse, 20 mm by 2.5 mm.
    #[option("M20")]
    M20,
    /// ISO metric coarse, 22 mm by 2.5 mm.
    #[option("M22")]
    M22,
    /// ISO metric coarse, 24 mm by 3 mm.
    #[option("M24")]
    M24,
    /// ISO metric fine, 1.6 mm by 0.2 mm.
    #[option("M1.6x0.2")]
    M1_6x0_2,
    /// ISO metric fine, 2 mm by 0.25 mm.
    #[option("M2x0.25")]
    M2x0_25,
    /// ISO metric fine, 2.5 mm by 0.35 mm.
    #[option("M2.5x0.35")]
    M2_5x0_35,
    /// ISO metric fine, 3 mm by 0.35 mm.
    #[option("M3x0.35")]
    M3x0_35,
    /// ISO metric fine, 3.5 mm by 0.35 mm.
    #[option("M3.5x0.35")]
    M3_5x0_35,
    /// ISO metric fine, 4 mm by 0.5 mm.
    #[option("M4x0.5")]
    M4x0_5,
    /// ISO metric fine, 4.5 mm by 0.5 mm.
    #[option("M4.5x0.5")]
    M4_5x0_5,
    /// ISO metric fine, 5 mm by 0.5 mm.
    #[option("M5x0.5")]
    M5x0_5,
    /// ISO metric fine, 6 mm by 0.75 mm.
    #[option("M6x0.75")]
    M6x0_75,
    /// ISO metric fine, 7 mm by 0.75 mm.
    #[option("M7x0.75")]
    M7x0_75,
    /// ISO metric fine, 8 mm by 1 mm.
    #[option("M8x1")]
    M8x1,
    /// ISO metric fine, 8 mm by 0.75 mm.
    #[option("M8x0.75")]
    M8x0_75,
    /// ISO metric fine, 10 mm by 1.25 mm.
    #[option("M10x1.25")]
    M10x1_25,
    /// ISO metric fine, 10 mm by 1 mm.
    #[option("M10x1")]
    M10x1,
    /// ISO metric fine, 10 mm by 0.75 mm.
    #[option("M10x0.75")]
    M10x0_75,
    /// ISO metric fine, 12 mm by 1.5 mm.
    #[option("M12x1.5")]
    M12x1_5,
    /// ISO metric fine, 12 mm by 1.25 mm.
    #[option("M12x1.25")]
    M12x1_25,
    /// ISO metric fine, 12 mm by 1 mm.
    #[option("M12x1")]
    M12x1,
    /// ISO metric fine, 14 mm by 1.5 mm.
    #[option("M14x1.5")]
    M14x1_5,
    /// ISO metric fine, 14 mm by 1 mm.
    #[option("M14x1")]
    M14x1,
    /// ISO metric fine, 16 mm by 1.5 mm.
    #[option("M16x1.5")]
    M16x1_5,
    /// ISO metric fine, 16 mm by 1 mm.
    #[option("M16x1")]
    M16x1,
    /// ISO metric fine, 18 mm by 2 mm.
    #[option("M18x2")]
    M18x2,
    /// ISO metric fine, 18 mm by 1.5 mm.
    #[option("M18x1.5")]
    M18x1_5,
    /// ISO metric fine, 18 mm by 1 mm.
    #[option("M18x1")]
    M18x1,
    /// ISO metric fine, 20 mm by 2 mm.
    #[option("M20x2")]
    M20x2,
    /// ISO metric fine, 20 mm by 1.5 mm.
    #[option("M20x1.5")]
    M20x1_5,
    /// ISO metric fine, 20 mm by 1 mm.
    #[option("M20x1")]
    M20x1,
    /// ISO metric fine, 22 mm by 2 mm.
    #[option("M22x2")]
    M22x2,
    /// ISO metric fine, 22 mm by 1.5 mm.
    #[option("M22x1.5")]
    M22x1_5,
    /// ISO metric fine, 22 mm by 1 mm.
    #[option("M22x1")]
    M22x1,
    /// ISO metric fine, 24 mm by 2 mm.
    #[option("M24x2")]
    M24x2,
    /// ISO metric fine, 24 mm by 1.5 mm.
    #[option("M24x1.5")]
    M24x1_5,
    /// ISO metric fine, 24 mm by 1 mm.
    #[option("M24x1")]
    M24x1,
    /// Unified coarse, #2, 56 threads to the inch.
    #[option("#2-56 UNC")]
    No2_56Unc,
    /// Unified coarse, #3, 48 threads to the inch.
    #[option("#3-48 UNC")]
    No3_48Unc,
    /// Unified coarse, #4, 40 threads to the inch.
    #[option("#4-40 UNC")]
    No4_40Unc,
    /// Unified coarse, #5, 40 threads to the inch.
    #[option("#5-40 UNC")]
    No5_40Unc,
    /// Unified coarse, #6, 32 threads to the inch.
    #[option("#6-32 UNC")]
    No6_32Unc,
    /// Unified coarse, #8, 32 threads to the inch.
    #[option("#8-32 UNC")]
    No8_32Unc,
    /// Unified coarse, #10, 24 threads to the inch.
    #[option("#10-24 UNC")]
    No10_24Unc,
    /// Unified coarse, #12, 24 threads to the inch.
    #[option("#12-24 UNC")]
    No12_24Unc,
    /// Unified coarse, 1/4 in, 20 threads to the inch.
    #[option("1/4-20 UNC")]
    Inch1_4_20Unc,
    /// Unified coarse, 5/16 in, 18 threads to the inch.
    #[option("5/16-18 UNC")]
    Inch5_16_18Unc,
    /// Unified coarse, 3/8 in, 16 threads to the inch.
    #[option("3/8-16 UNC")]
    Inch3_8_16Unc,
    /// Unified coarse, 7/16 in, 14 threads to the inch.
    #[option("7/16-14 UNC")]
    Inch7_16_14Unc,
    /// Unified coarse, 1/2 in, 13 threads to the inch.
    #[option("1/2-13 UNC")]
    Inch1_2_13Unc,
    /// Unified coarse, 9/16 in, 12 threads to the inch.
    #[option("9/16-12 UNC")]
    Inch9_16_12Unc,
    /// Unified coarse, 5/8 in, 11 threads to the inch.
    #[option("5/8-11 UNC")]
    Inch5_8_11Unc,
    /// Unified coarse, 3/4 in, 10 threads to the inch.
    #[option("3/4-10 UNC")]
    Inch3_4_10Unc,
    /// Unified coarse, 7/8 in, 9 threads to the inch.
    #[option("7/8-9 UNC")]
    Inch7_8_9Unc,
    /// Unified coarse, 1 in, 8 threads to the inch.
    #[option("1-8 UNC")]
    Inch1_8Unc,
    /// Unified fine, #2, 64 threads to the inch.
    #[option("#2-64 UNF")]
    No2_64Unf,
    /// Unified fine, #3, 56 threads to the inch.
    #[option("#3-56 UNF")]
    No3_56Unf,
    /// Unified fine, #4, 48 threads to the inch.
    #[option("#4-48 UNF")]
    No4_48Unf,
    /// Unified fine, #5, 44 threads to the inch.
    #[option("#5-44 UNF")]
    No5_44Unf,
    /// Unified fine, #6, 40 threads to the inch.
    #[option("#6-40 UNF")]
    No6_40Unf,
    /// Unified fine, #8, 36 threads to the inch.
    #[option("#8-36 UNF")]
    No8_36Unf,
    /// Unified fine, #10, 32 threads to the inch.
    #[option("#10-32 UNF")]
    No10_32Unf,
    /// Unified fine, #12, 28 threads to the inch.
    #[option("#12-28 UNF")]
    No12_28Unf,
    /// Unified fine, 1/4 in, 28 threads to the inch.
    #[option("1/4-28 UNF")]
    Inch1_4_28Unf,
    /// Unified fine, 5/16 in, 24 threads to the inch.
    #[option("5/16-24 UNF")]
    Inch5_16_24Unf,
    /// Unified fine, 3/8 in, 24 threads to the inch.
    #[option("3/8-24 UNF")]
    Inch3_8_24Unf,
    /// Unified fine, 7/16 in, 20 threads to the inch.
    #[option("7/16-20 UNF")]
    Inch7_16_20Unf,
    /// Unified fine, 1/2 in, 20 threads to the inch.
    #[option("1/2-20 UNF")]
    Inch1_2_20Unf,
    /// Unified fine, 9/16 in, 18 threads to the inch.
    #[option("9/16-18 UNF")]
    Inch9_16_18Unf,
    /// Unified fine, 5/8 in, 18 threads to the inch.
    #[option("5/8-18 UNF")]
    Inch5_8_18Unf,
    /// Unified fine, 3/4 in, 16 threads to the inch.
    #[option("3/4-16 UNF")]
    Inch3_4_16Unf,
    /// Unified fine, 7/8 in, 14 threads to the inch.
    #[option("7/8-14 UNF")]
    Inch7_8_14Unf,
    /// Unified fine, 1 in, 12 threads to the inch.
    #[option("1-12 UNF")]
    Inch1_12Unf,
}

impl ThreadDesignation {
    /// Form, nominal diameter and pitch in m: all that the designation says.
    pub(crate) fn dimensions(self) -> (ThreadForm, f64, f64) {
        match self {
            Self::M1_6 => (ThreadForm::MetricCoarse, 1.6e-3, 0.35e-3),
            Self::M1_8 => (ThreadForm::MetricCoarse, 1.8e-3, 0.35e-3),
            Self::M2 => (ThreadForm::MetricCoarse, 2.0e-3, 0.4e-3),
            Self::M2_2 => (ThreadForm::MetricCoarse, 2.2e-3, 0.45e-3),
            Self::M2_5 => (ThreadForm::MetricCoarse, 2.5e-3, 0.45e-3),
            Self::M3 => (ThreadForm::MetricCoarse, 3.0e-3, 0.5e-3),
            Self::M3_5 => (ThreadForm::MetricCoarse, 3.5e-3, 0.6e-3),
            Self::M4 => (ThreadForm::MetricCoarse, 4.0e-3, 0.7e-3),
            Self::M4_5 => (ThreadForm::MetricCoarse, 4.5e-3, 0.75e-3),
            Self::M5 => (ThreadForm::MetricCoarse, 5.0e-3, 0.8e-3),
            Self::M6 => (ThreadForm::MetricCoarse, 6.0e-3, 1.0e-3),
            Self::M7 => (ThreadForm::MetricCoarse, 7.0e-3, 1.0e-3),
            Self::M8 => (ThreadForm::MetricCoarse, 8.0e-3, 1.25e-3),
            Self::M10 => (ThreadForm::MetricCoarse, 10.0e-3, 1.5e-3),
            Self::M12 => (ThreadForm::MetricCoarse, 12.0e-3, 1.75e-3),
            Self::M14 => (ThreadForm::MetricCoarse, 14.0e-3, 2.0e-3),
            Self::M16 => (ThreadForm::MetricCoarse, 16.0e-3, 2.0e-3),
            Self::M18 => (ThreadForm::MetricCoarse, 18.0e-3, 2.5e-3),
            Self::M20 => (ThreadForm::MetricCoarse, 20.0e-3, 2.5e-3),
            Self::M22 => (ThreadForm::MetricCoarse, 22.0e-3, 2.5e-3),
            Self::M24 => (ThreadForm::MetricCoarse, 24.0e-3, 3.0e-3),
            Self::M1_6x0_2 => (ThreadForm::MetricFine, 1.6e-3, 0.2e-3),
            Self::M2x0_25 => (ThreadForm::MetricFine, 2.0e-3, 0.25e-3),
            Self::M2_5x0_35 => (ThreadForm::MetricFine, 2.5e-3, 0.35e-3),
            Self::M3x0_35 => (ThreadForm::MetricFine, 3.0e-3, 0.35e-3),
            Self::M3_5x0_35 => (ThreadForm::MetricFine, 3.5e-3, 0.35e-3),
            Self::M4x0_5 => (ThreadForm::MetricFine, 4.0e-3, 0.5e-3),
            Self::M4_5x0_5 => (ThreadForm::MetricFine, 4.5e-3, 0.5e-3),
            Self::M5x0_5 => (ThreadForm::MetricFine, 5.0e-3, 0.5e-3),
            Self::M6x0_75 => (ThreadForm::MetricFine, 6.0e-3, 0.75e-3),
            Self::M7x0_75 => (ThreadForm::MetricFine, 7.0e-3, 0.75e-3),
            Self::M8x1 => (ThreadForm::MetricFine, 8.0e-3, 1.0e-3),
            Self::M8x0_75 => (ThreadForm::MetricFine, 8.0e-3, 0.75e-3),
            Self::M10x1_25 => (ThreadForm::MetricFine, 10.0e-3, 1.25e-3),
            Self::M10x1 => (ThreadForm::MetricFine, 10.0e-3, 1.0e-3),
            Self::M10x0_75 => (ThreadForm::MetricFine, 10.0e-3, 0.75e-3),
            Self::M12x1_5 => (ThreadForm::MetricFine, 12.0e-3, 1.5e-3),
            Self::M12x1_25 => (ThreadForm::MetricFine, 12.0e-3, 1.25e-3),
            Self::M12x1 => (ThreadForm::MetricFine, 12.0e-3, 1.0e-3),
            Self::M14x1_5 => (ThreadForm::MetricFine, 14.0e-3, 1.5e-3),
            Self::M14x1 => (ThreadForm::MetricFine, 14.0e-3, 1.0e-3),
            Self::M16x1_5 => (ThreadForm::MetricFine, 16.0e-3, 1.5e-3),
            Self::M16x1 => (ThreadForm::MetricFine, 16.0e-3, 1.0e-3),
            Self::M18x2 => (ThreadForm::MetricFine, 18.0e-3, 2.0e-3),
            Self::M18x1_5 => (ThreadForm::MetricFine, 18.0e-3, 1.5e-3),
            Self::M18x1 => (ThreadForm::MetricFine, 18.0e-3, 1.0e-3),
            Self::M20x2 => (ThreadForm::MetricFine, 20.0e-3, 2.0e-3),
            Self::M20x1_5 => (ThreadForm::MetricFine, 20.0e-3, 1.5e-3),
            Self::M20x1 => (ThreadForm::MetricFine, 20.0e-3, 1.0e-3),
            Self::M22x2 => (ThreadForm::MetricFine, 22.0e-3, 2.0e-3),
            Self::M22x1_5 => (ThreadForm::MetricFine, 22.0e-3, 1.5e-3),
            Self::M22x1 => (ThreadForm::MetricFine, 22.0e-3, 1.0e-3),
            Self::M24x2 => (ThreadForm::MetricFine, 24.0e-3, 2.0e-3),
            Self::M24x1_5 => (ThreadForm::MetricFine, 24.0e-3, 1.5e-3),
            Self::M24x1 => (ThreadForm::MetricFine, 24.0e-3, 1.0e-3),
            Self::No2_56Unc => (ThreadForm::UnifiedCoarse, 2.1844e-3, INCH / 56.0),
            Self::No3_48Unc => (ThreadForm::UnifiedCoarse, 2.5146e-3, INCH / 48.0),
            Self::No4_40Unc => (ThreadForm::UnifiedCoarse, 2.8448e-3, INCH / 40.0),
            Self::No5_40Unc => (ThreadForm::UnifiedCoarse, 3.175e-3, INCH / 40.0),
            Self::No6_32Unc => (ThreadForm::UnifiedCoarse, 3.5052e-3, INCH / 32.0),
            Self::No8_32Unc => (ThreadForm::UnifiedCoarse, 4.1656e-3, INCH / 32.0),
            Self::No10_24Unc => (ThreadForm::UnifiedCoarse, 4.826e-3, INCH / 24.0),
            Self::No12_24Unc => (ThreadForm::UnifiedCoarse, 5.4864e-3, INCH / 24.0),
            Self::Inch1_4_20Unc => (ThreadForm::UnifiedCoarse, 6.35e-3, INCH / 20.0),
            Self::Inch5_16_18Unc => (ThreadForm::UnifiedCoarse, 7.9375e-3, INCH / 18.0),
            Self::Inch3_8_16Unc => (ThreadForm::UnifiedCoarse, 9.525e-3, INCH / 16.0),
            Self::Inch7_16_14Unc => (ThreadForm::UnifiedCoarse, 11.1125e-3, INCH / 14.0),
            Self::Inch1_2_13Unc => (ThreadForm::UnifiedCoarse, 12.7e-3, INCH / 13.0),
            Self::Inch9_16_12Unc => (ThreadForm::UnifiedCoarse, 14.2875e-3, INCH / 12.0),
            Self::Inch5_8_11Unc => (ThreadForm::UnifiedCoarse, 15.875e-3, INCH / 11.0),
            Self::Inch3_4_10Unc => (ThreadForm::UnifiedCoarse, 19.05e-3, INCH / 10.0),
            Self::Inch7_8_9Unc => (ThreadForm::UnifiedCoarse, 22.225e-3, INCH / 9.0),
            Self::Inch1_8Unc => (ThreadForm::UnifiedCoarse, 25.4e-3, INCH / 8.0),
            Self::No2_64Unf => (ThreadForm::UnifiedFine, 2.1844e-3, INCH / 64.0),
            Self::No3_56Unf => (ThreadForm::UnifiedFine, 2.5146e-3, INCH / 56.0),
            Self::No4_48Unf => (ThreadForm::UnifiedFine, 2.8448e-3, INCH / 48.0),
            Self::No5_44Unf => (ThreadForm::UnifiedFine, 3.175e-3, INCH / 44.0),
            Self::No6_40Unf => (ThreadForm::UnifiedFine, 3.5052e-3, INCH / 40.0),
            Self::No8_36Unf => (ThreadForm::UnifiedFine, 4.1656e-3, INCH / 36.0),
            Self::No10_32Unf => (ThreadForm::UnifiedFine, 4.826e-3, INCH / 32.0),
            Self::No12_28Unf => (ThreadForm::UnifiedFine, 5.4864e-3, INCH / 28.0),
            Self::Inch1_4_28Unf => (ThreadForm::UnifiedFine, 6.35e-3, INCH / 28.0),
            Self::Inch5_16_24Unf => (ThreadForm::UnifiedFine, 7.9375e-3, INCH / 24.0),
            Self::Inch3_8_24Unf => (ThreadForm::UnifiedFine, 9.525e-3, INCH / 24.0),
            Self::Inch7_16_20Unf => (ThreadForm::UnifiedFine, 11.1125e-3, INCH / 20.0),
            Self::Inch1_2_20Unf => (ThreadForm::UnifiedFine, 12.7e-3, INCH / 20.0),
            Self::Inch9_16_18Unf => (ThreadForm::UnifiedFine, 14.2875e-3, INCH / 18.0),
            Self::Inch5_8_18Unf => (ThreadForm::UnifiedFine, 15.875e-3, INCH / 18.0),
            Self::Inch3_4_16Unf => (ThreadForm::UnifiedFine, 19.05e-3, INCH / 16.0),
            Self::Inch7_8_14Unf => (ThreadForm::UnifiedFine, 22.225e-3, INCH / 14.0),
            Self::Inch1_12Unf => (ThreadForm::UnifiedFine, 25.4e-3, INCH / 12.0),
        }
    }
}
