//! What every calculation of an isotropic plate shares: its flexural rigidity, and where thin-plate theory strains.

use crate::prelude::*;

/// Flexural rigidity D = E t³/(12 (1 − ν²)).
pub(crate) fn flexural_rigidity(youngs_modulus: f64, thickness: f64, poissons_ratio: f64) -> f64 {
    youngs_modulus * math::cube(thickness) / (12.0 * (1.0 - poissons_ratio * poissons_ratio))
}

/// Bending stress at a face from a moment per length, 6 M/t².
pub(crate) fn face_stress(moment: f64, thickness: f64) -> f64 {
    6.0 * moment / (thickness * thickness)
}

/// Adds the caveat of a plate too thick for thin-plate theory: t over 1/20 of the smallest span.
pub(crate) fn check_thin(thickness: f64, smallest_span: f64, caveats: &mut Caveats) {
    if thickness > 0.05 * smallest_span {
        caveats.add(Caveat::ThickPlate);
    }
}

/// Adds the caveat of a deflection past half the thickness, where the middle surface stretches.
pub(crate) fn check_small(deflection: f64, thickness: f64, caveats: &mut Caveats) {
    if deflection.abs() > 0.5 * thickness {
        caveats.add(Caveat::LargeDeflection);
    }
}
