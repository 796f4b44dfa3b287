//! Theoretical sharp diameters of countersunk heads, by standard and size. Data only.
//!
//! A row is `CHECKED` where the reference values of the project hold it, `UNVERIFIED` where it was read at second hand or
//! recalled. The metric rows agree with the head heights of their standards by k = (dk − d)/2, those of ASME B18.3 likewise
//! with 82°; those of ASME B18.6.3 agree within 0.002 in with its gauging dimensions by G + 2 F tan 40°.

use super::countersunk_head::CountersunkStandard;
use super::size::ScrewSize;

/// Held by the project's check values.
const CHECKED: bool = true;
/// Not held by them.
const UNVERIFIED: bool = false;

/// Theoretical sharp diameter in m and whether it is checked; none where the standard has no such size.
pub(crate) fn sharp_diameter(standard: CountersunkStandard, size: ScrewSize) -> Option<(f64, bool)> {
    match standard {
        CountersunkStandard::Iso10642 => iso_10642(size),
        CountersunkStandard::Iso7046_1 => iso_7721(size),
        CountersunkStandard::AsmeB18_6_3 => asme_b18_6_3(size),
        CountersunkStandard::AsmeB18_3 => asme_b18_3(size),
        CountersunkStandard::AsmeB18_6_3Deg100 => asme_b18_6_3_100_deg(size),
    }
}

/// ISO 10642, dk theoretical, largest; in m, and whether it is checked.
fn iso_10642(size: ScrewSize) -> Option<(f64, bool)> {
    Some(match size {
        ScrewSize::M3 => (6.72e-3, CHECKED),
        ScrewSize::M4 => (8.96e-3, CHECKED),
        ScrewSize::M5 => (11.2e-3, CHECKED),
        ScrewSize::M6 => (13.44e-3, CHECKED),
        ScrewSize::M8 => (17.92e-3, CHECKED),
        ScrewSize::M10 => (22.4e-3, CHECKED),
        ScrewSize::M12 => (26.88e-3, CHECKED),
        ScrewSize::M14 => (30.8e-3, UNVERIFIED),
        ScrewSize::M16 => (33.6e-3, UNVERIFIED),
        ScrewSize::M20 => (40.32e-3, UNVERIFIED),
        _ => return None,
    })
}

/// ISO 7046-1 by the geometry of ISO 7721, dk theoretical, largest.
fn iso_7721(size: ScrewSize) -> Option<(f64, bool)> {
    Some(match size {
        ScrewSize::M1_6 => (3.6e-3, UNVERIFIED),
        ScrewSize::M2 => (4.4e-3, UNVERIFIED),
        ScrewSize::M2_5 => (5.5e-3, UNVERIFIED),
        ScrewSize::M3 => (6.3e-3, UNVERIFIED),
        ScrewSize::M3_5 => (8.2e-3, UNVERIFIED),
        ScrewSize::M4 => (9.4e-3, UNVERIFIED),
        ScrewSize::M5 => (10.4e-3, UNVERIFIED),
        ScrewSize::M6 => (12.6e-3, UNVERIFIED),
        ScrewSize::M8 => (17.3e-3, UNVERIFIED),
        ScrewSize::M10 => (20.0e-3, UNVERIFIED),
        _ => return None,
    })
}

/// ASME B18.6.3, 82°, largest sharp diameter.
fn asme_b18_6_3(size: ScrewSize) -> Option<(f64, bool)> {
    Some(match size {
        ScrewSize::No0 => (3.0226e-3, UNVERIFIED),       // 0.119 in
        ScrewSize::No1 => (3.7084e-3, UNVERIFIED),       // 0.146 in
        ScrewSize::No2 => (4.3688e-3, UNVERIFIED),       // 0.172 in
        ScrewSize::No3 => (5.0546e-3, UNVERIFIED),       // 0.199 in
        ScrewSize::No4 => (5.715e-3, UNVERIFIED),        // 0.225 in
        ScrewSize::No5 => (6.4008e-3, UNVERIFIED),       // 0.252 in
        ScrewSize::No6 => (7.0866e-3, UNVERIFIED),       // 0.279 in
        ScrewSize::No8 => (8.4328e-3, UNVERIFIED),       // 0.332 in
        ScrewSize::No10 => (9.779e-3, UNVERIFIED),       // 0.385 in
        ScrewSize::No12 => (11.1252e-3, UNVERIFIED),     // 0.438 in
        ScrewSize::Inch1_4 => (12.8778e-3, UNVERIFIED),  // 0.507 in
        ScrewSize::Inch5_16 => (16.129e-3, UNVERIFIED),  // 0.635 in
        ScrewSize::Inch3_8 => (19.3548e-3, UNVERIFIED),  // 0.762 in
        ScrewSize::Inch7_16 => (20.6248e-3, UNVERIFIED), // 0.812 in
        ScrewSize::Inch1_2 => (22.225e-3, UNVERIFIED),   // 0.875 in
        ScrewSize::Inch9_16 => (25.4e-3, UNVERIFIED),    // 1. in
        ScrewSize::Inch5_8 => (28.575e-3, UNVERIFIED),   // 1.125 in
        ScrewSize::Inch3_4 => (34.925e-3, UNVERIFIED),   // 1.375 in
        _ => return None,
    })
}

/// ASME B18.3, 82°, largest theoretical sharp diameter.
fn asme_b18_3(size: ScrewSize) -> Option<(f64, bool)> {
    Some(match size {
        ScrewSize::No0 => (3.5052e-3, UNVERIFIED),       // 0.138 in
        ScrewSize::No1 => (4.2672e-3, UNVERIFIED),       // 0.168 in
        ScrewSize::No2 => (5.0038e-3, UNVERIFIED),       // 0.197 in
        ScrewSize::No3 => (5.7404e-3, UNVERIFIED),       // 0.226 in
        ScrewSize::No4 => (6.477e-3, UNVERIFIED),        // 0.255 in
        ScrewSize::No5 => (7.1374e-3, UNVERIFIED),       // 0.281 in
        ScrewSize::No6 => (7.7978e-3, UNVERIFIED),       // 0.307 in
        ScrewSize::No8 => (9.1186e-3, UNVERIFIED),       // 0.359 in
        ScrewSize::No10 => (10.4394e-3, UNVERIFIED),     // 0.411 in
        ScrewSize::Inch1_4 => (13.4874e-3, UNVERIFIED),  // 0.531 in
        ScrewSize::Inch5_16 => (16.6624e-3, UNVERIFIED), // 0.656 in
        ScrewSize::Inch3_8 => (19.8374e-3, UNVERIFIED),  // 0.781 in
        ScrewSize::Inch7_16 => (21.4376e-3, UNVERIFIED), // 0.844 in
        ScrewSize::Inch1_2 => (23.8252e-3, UNVERIFIED),  // 0.938 in
        ScrewSize::Inch5_8 => (30.1752e-3, UNVERIFIED),  // 1.188 in
        ScrewSize::Inch3_4 => (36.5252e-3, UNVERIFIED),  // 1.438 in
        ScrewSize::Inch7_8 => (42.8752e-3, UNVERIFIED),  // 1.688 in
        ScrewSize::Inch1 => (49.2252e-3, UNVERIFIED),    // 1.938 in
        _ => return None,
    })
}

/// ASME B18.6.3, 100°, largest sharp diameter.
fn asme_b18_6_3_100_deg(size: ScrewSize) -> Option<(f64, bool)> {
    Some(match size {
        ScrewSize::No4 => (5.715e-3, UNVERIFIED),       // 0.225 in
        ScrewSize::No6 => (7.0866e-3, UNVERIFIED),      // 0.279 in
        ScrewSize::No8 => (8.4328e-3, UNVERIFIED),      // 0.332 in
        ScrewSize::No10 => (9.779e-3, UNVERIFIED),      // 0.385 in
        ScrewSize::Inch1_4 => (12.8778e-3, UNVERIFIED), // 0.507 in
        ScrewSize::Inch5_16 => (16.129e-3, UNVERIFIED), // 0.635 in
        ScrewSize::Inch3_8 => (19.3548e-3, UNVERIFIED), // 0.762 in
        _ => return None,
    })
}
