//! Elastic material of one layer, isotropic or orthotropic, in plane stress.

use super::stack::Matrix3;
use crate::error::{PanelError, checked, finite, not_negative, positive};
use crate::math::{cos, sin};

/// Elastic material of one layer in plane stress. Axis 1 lies at `axis_angle` to the x axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Material {
    /// Young's modulus along axis 1, Pa.
    pub youngs_modulus_1: f64,
    /// Young's modulus along axis 2, Pa.
    pub youngs_modulus_2: f64,
    /// Contraction along 2 over extension along 1.
    pub poissons_ratio_12: f64,
    /// Shear modulus in the plane, Pa.
    pub shear_modulus: f64,
    /// Angle from the x axis to axis 1, rad.
    pub axis_angle: f64,
    /// Density, kg/m3.
    pub density: f64,
    /// Thermal expansion along axis 1, 1/K.
    pub expansion_1: f64,
    /// Thermal expansion along axis 2, 1/K.
    pub expansion_2: f64,
}

impl Material {
    /// The same in every direction.
    pub fn isotropic(youngs_modulus: f64, poissons_ratio: f64, density: f64, expansion: f64) -> Self {
        Self {
            youngs_modulus_1: youngs_modulus,
            youngs_modulus_2: youngs_modulus,
            poissons_ratio_12: poissons_ratio,
            shear_modulus: youngs_modulus / (2.0 * (1.0 + poissons_ratio)),
            axis_angle: 0.0,
            density,
            expansion_1: expansion,
            expansion_2: expansion,
        }
    }

    /// Checks every number; `part` names the layer in messages.
    pub(crate) fn check(&self, part: &str) -> Result<(), PanelError> {
        positive(format!("{part}: youngs_modulus_1"), self.youngs_modulus_1)?;
        positive(format!("{part}: youngs_modulus_2"), self.youngs_modulus_2)?;
        let limit = (self.youngs_modulus_1 / self.youngs_modulus_2).sqrt();
        // Isotropic: -1 < nu <= 0.5 in a solid; plane stress alone allows up to 1.
        checked(
            format!("{part}: poissons_ratio_12"),
            self.poissons_ratio_12,
            "below sqrt(E1/E2) in size",
            |v| v.abs() < limit,
        )?;
        positive(format!("{part}: shear_modulus"), self.shear_modulus)?;
        finite(format!("{part}: axis_angle"), self.axis_angle)?;
        not_negative(format!("{part}: density"), self.density)?;
        finite(format!("{part}: expansion_1"), self.expansion_1)?;
        finite(format!("{part}: expansion_2"), self.expansion_2)?;
        Ok(())
    }

    /// Plane-stress stiffness in x and y: stress (xx, yy, xy) of strain (xx, yy, engineering xy).
    ///
    /// Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. (1999), eqs. 2.61 and 2.85; from memory.
    pub(crate) fn stiffness(&self) -> Matrix3 {
        let nu21 = self.poissons_ratio_12 * self.youngs_modulus_2 / self.youngs_modulus_1;
        let d = 1.0 - self.poissons_ratio_12 * nu21;
        let (q11, q22) = (self.youngs_modulus_1 / d, self.youngs_modulus_2 / d);
        let (q12, q66) = (self.poissons_ratio_12 * self.youngs_modulus_2 / d, self.shear_modulus);
        if self.axis_angle == 0.0 {
            return [[q11, q12, 0.0], [q12, q22, 0.0], [0.0, 0.0, q66]];
        }
        // Stress is Tᵀ Q T of strain, with T the turning of strains into the material's axes.
        let t = self.strain_turn();
        let q = [[q11, q12, 0.0], [q12, q22, 0.0], [0.0, 0.0, q66]];
        let mut out = [[0.0; 3]; 3];
        for (i, row) in out.iter_mut().enumerate() {
            for (j, value) in row.iter_mut().enumerate() {
                for (k, qk) in q.iter().enumerate() {
                    for (l, qkl) in qk.iter().enumerate() {
                        *value += t[k][i] * qkl * t[l][j];
                    }
                }
            }
        }
        out
    }

    /// Turns strains in x and y into strains along the material's axes.
    fn strain_turn(&self) -> Matrix3 {
        let (c, s) = (cos(self.axis_angle), sin(self.axis_angle));
        [[c * c, s * s, c * s], [s * s, c * c, -c * s], [-2.0 * c * s, 2.0 * c * s, c * c - s * s]]
    }

    /// Free strain (xx, yy, engineering xy) per kelvin.
    pub(crate) fn expansion(&self) -> [f64; 3] {
        self.in_plane(self.expansion_1, self.expansion_2)
    }

    /// Strains (xx, yy, engineering xy) of strains along axes 1 and 2.
    pub(crate) fn in_plane(&self, a1: f64, a2: f64) -> [f64; 3] {
        let (c, s) = (cos(self.axis_angle), sin(self.axis_angle));
        [a1 * c * c + a2 * s * s, a1 * s * s + a2 * c * c, 2.0 * (a1 - a2) * c * s]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NASA RP-1351 (Nettles), Basic Mechanics of Laminated Composite Plates: lamina at +45 degrees, lb/in2, printed digits.
    #[test]
    fn turned_lamina() {
        let material = Material {
            youngs_modulus_1: 20.01e6,
            youngs_modulus_2: 1.301e6,
            poissons_ratio_12: 0.3,
            shear_modulus: 1.001e6,
            axis_angle: std::f64::consts::FRAC_PI_4,
            density: 0.0,
            expansion_1: 0.0,
            expansion_2: 0.0,
        };
        let q = material.stiffness();
        // The printed values use a rounded nu21 of 0.02: agreement to 0.1 %.
        for (found, printed) in
            [(q[0][0], 6_557_237.0), (q[0][1], 4_555_238.0), (q[0][2], 4_705_483.0), (q[2][2], 5_163_582.0)]
        {
            assert!((found / printed - 1.0_f64).abs() < 1e-3, "{found} {printed}");
        }
    }
}
