//! Clearance holes by ISO 273 and ASME B18.2.8. Data only.
//!
//! `CHECKED` rows are held by the project's check values, which quote ISO 273 at second hand; the others are unverified.

use super::size::ScrewSize;

/// Held by the project's check values.
const CHECKED: bool = true;
/// Not held by them.
const UNVERIFIED: bool = false;

/// Fine, medium and coarse hole of ISO 273 in m, and whether the row is checked; none for inch sizes and sizes without a row.
pub(crate) fn iso_273(size: ScrewSize) -> Option<([f64; 3], bool)> {
    Some(match size {
        ScrewSize::M1_6 => ([1.7e-3, 1.8e-3, 2.0e-3], UNVERIFIED),
        ScrewSize::M1_8 => ([2.0e-3, 2.1e-3, 2.2e-3], UNVERIFIED),
        ScrewSize::M2 => ([2.2e-3, 2.4e-3, 2.6e-3], UNVERIFIED),
        ScrewSize::M2_5 => ([2.7e-3, 2.9e-3, 3.1e-3], UNVERIFIED),
        ScrewSize::M3 => ([3.2e-3, 3.4e-3, 3.6e-3], CHECKED),
        ScrewSize::M3_5 => ([3.7e-3, 3.9e-3, 4.2e-3], UNVERIFIED),
        ScrewSize::M4 => ([4.3e-3, 4.5e-3, 4.8e-3], CHECKED),
        ScrewSize::M4_5 => ([4.8e-3, 5.0e-3, 5.3e-3], UNVERIFIED),
        ScrewSize::M5 => ([5.3e-3, 5.5e-3, 5.8e-3], CHECKED),
        ScrewSize::M6 => ([6.4e-3, 6.6e-3, 7.0e-3], CHECKED),
        ScrewSize::M7 => ([7.4e-3, 7.6e-3, 8.0e-3], UNVERIFIED),
        ScrewSize::M8 => ([8.4e-3, 9.0e-3, 10.0e-3], CHECKED),
        ScrewSize::M10 => ([10.5e-3, 11.0e-3, 12.0e-3], CHECKED),
        ScrewSize::M12 => ([13.0e-3, 13.5e-3, 14.5e-3], CHECKED),
        ScrewSize::M14 => ([15.0e-3, 15.5e-3, 16.5e-3], UNVERIFIED),
        ScrewSize::M16 => ([17.0e-3, 17.5e-3, 18.5e-3], UNVERIFIED),
        ScrewSize::M18 => ([19.0e-3, 20.0e-3, 21.0e-3], UNVERIFIED),
        ScrewSize::M20 => ([21.0e-3, 22.0e-3, 24.0e-3], UNVERIFIED),
        ScrewSize::M22 => ([23.0e-3, 24.0e-3, 26.0e-3], UNVERIFIED),
        ScrewSize::M24 => ([25.0e-3, 26.0e-3, 28.0e-3], UNVERIFIED),
        _ => return None,
    })
}

/// Close, normal and loose hole of ASME B18.2.8 in m; none for metric sizes and sizes without a row.
pub(crate) fn asme_b18_2_8(size: ScrewSize) -> Option<([f64; 3], bool)> {
    Some(match size {
        ScrewSize::No0 => ([1.7018e-3, 1.9304e-3, 2.3876e-3], UNVERIFIED), // 0.067, 0.076, 0.094 in
        ScrewSize::No1 => ([2.0574e-3, 2.2606e-3, 2.6416e-3], UNVERIFIED), // 0.081, 0.089, 0.104 in
        ScrewSize::No2 => ([2.3876e-3, 2.5908e-3, 2.9464e-3], UNVERIFIED), // 0.094, 0.102, 0.116 in
        ScrewSize::No3 => ([2.6924e-3, 2.9464e-3, 3.2512e-3], UNVERIFIED), // 0.106, 0.116, 0.128 in
        ScrewSize::No4 => ([3.048e-3, 3.2512e-3, 3.6576e-3], UNVERIFIED),  // 0.12, 0.128, 0.144 in
        ScrewSize::No5 => ([3.5814e-3, 3.9624e-3, 4.3688e-3], UNVERIFIED), // 0.141, 0.156, 0.172 in
        ScrewSize::No6 => ([3.9116e-3, 4.318e-3, 4.699e-3], UNVERIFIED),   // 0.154, 0.17, 0.185 in
        ScrewSize::No8 => ([4.572e-3, 4.9784e-3, 5.4102e-3], UNVERIFIED),  // 0.18, 0.196, 0.213 in
        ScrewSize::No10 => ([5.2324e-3, 5.6134e-3, 6.0452e-3], UNVERIFIED), // 0.206, 0.221, 0.238 in
        ScrewSize::Inch1_4 => ([6.7564e-3, 7.1374e-3, 7.5438e-3], UNVERIFIED), // 0.266, 0.281, 0.297 in
        ScrewSize::Inch5_16 => ([8.3312e-3, 8.7376e-3, 9.1186e-3], UNVERIFIED), // 0.328, 0.344, 0.359 in
        ScrewSize::Inch3_8 => ([9.9314e-3, 10.3124e-3, 10.7188e-3], UNVERIFIED), // 0.391, 0.406, 0.422 in
        ScrewSize::Inch7_16 => ([11.5062e-3, 11.9126e-3, 12.2936e-3], UNVERIFIED), // 0.453, 0.469, 0.484 in
        ScrewSize::Inch1_2 => ([13.4874e-3, 14.2748e-3, 15.4686e-3], UNVERIFIED), // 0.531, 0.562, 0.609 in
        ScrewSize::Inch5_8 => ([16.6624e-3, 17.4752e-3, 18.6436e-3], UNVERIFIED), // 0.656, 0.688, 0.734 in
        ScrewSize::Inch3_4 => ([19.8374e-3, 20.6248e-3, 23.0124e-3], UNVERIFIED), // 0.781, 0.812, 0.906 in
        ScrewSize::Inch7_8 => ([23.0124e-3, 23.8252e-3, 26.1874e-3], UNVERIFIED), // 0.906, 0.938, 1.031 in
        ScrewSize::Inch1 => ([26.1874e-3, 27.7876e-3, 29.3624e-3], UNVERIFIED), // 1.031, 1.094, 1.156 in
        _ => return None,
    })
}
