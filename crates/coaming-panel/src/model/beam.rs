//! A beam along a line of the panel: return flange, hem, rib or bar.

use super::line::Line;
use crate::error::{PanelError, finite, not_negative, positive};

/// A straight or curved beam that shares the panel's freedoms. Its offset acts through the membrane field of the layer it is
/// attached to, so that the effective width of the sheet is an outcome.
///
/// A beam keeps the shape of its section and does not shear. Against shells, flanges folded down along both long sides of a sheet between
/// its ends or on its corners (600 mm long, 1.5 mm thick, `tests/reference/flange.csv`) come out like this, the fold on the stiff side:
///
/// | height of the flange | middle of the sheet | fold |
/// |---|---|---|
/// | up to a twenty-fourth of the span | 1.5 % | 2 % |
/// | a twelfth of the span | 4 % | 8 % |
///
/// Past a twentieth of the span the fold of a flange is no longer good to 5 %: its shear and its bending sideways count. A flange that
/// buckles or trips under compression is not seen at all.
#[derive(Debug, Clone, PartialEq)]
pub struct Beam {
    /// Where it runs.
    pub line: Line,
    /// The layer it is attached to.
    pub layer: usize,
    /// Young's modulus, Pa.
    pub youngs_modulus: f64,
    /// Shear modulus, Pa.
    pub shear_modulus: f64,
    /// Area of the section, m2.
    pub area: f64,
    /// Second moment of area about the section's own axis parallel to the panel, m4.
    pub second_moment_of_area: f64,
    /// Torsion constant, m4.
    pub torsion_constant: f64,
    /// Height of the section's centroid in the same coordinate as the layers' faces, m.
    pub centroid_height: f64,
    /// Density, kg/m3.
    pub density: f64,
}

impl Beam {
    pub(crate) fn check(&self, name: &str) -> Result<(), PanelError> {
        positive(format!("{name}: youngs_modulus"), self.youngs_modulus)?;
        not_negative(format!("{name}: shear_modulus"), self.shear_modulus)?;
        not_negative(format!("{name}: area"), self.area)?;
        not_negative(format!("{name}: second_moment_of_area"), self.second_moment_of_area)?;
        not_negative(format!("{name}: torsion_constant"), self.torsion_constant)?;
        finite(format!("{name}: centroid_height"), self.centroid_height)?;
        not_negative(format!("{name}: density"), self.density).map(|_| ())
    }
}
