//! Strain of the outer fibre of a bend.

use crate::prelude::*;

/// Strain of the outer fibre of a bend.
///
/// # Formula
///
/// With inside radius R and thickness t: e = 1 / (1 + 2 R/t).
///
/// # Validity
///
/// An estimate, and bears that caveat: engineering strain with the neutral axis at mid thickness, which holds for large radii; in a sharp
/// bend the axis moves inwards and the strain is larger.
///
/// # Source
///
/// Kalpakjian and Schmid, Manufacturing Processes for Engineering Materials, sheet-metal bending; follows from geometry.
///
/// # Example
///
/// R = 2 t: the outer fibre of 2.5 π t / 2 has grown to 3 π t / 2, by one part in five.
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) = OuterFibreStrain { inside_radius: mm(4.0), thickness: mm(2.0) }.calculate()?;
/// assert!((outcome.outer_fibre_strain - 0.2).abs() < 1e-12);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct OuterFibreStrain {
    /// Inside radius, R.
    #[possible(0.0..)]
    pub inside_radius: Length,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
}

/// Strain of the outer fibre.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct OuterFibreStrainOutcome {
    /// Engineering strain of the outer fibre, e.
    pub outer_fibre_strain: f64,
    /// Inside radius over thickness, R/t.
    pub radius_ratio: f64,
}

/// The source of the estimate.
pub(super) const KALPAKJIAN: Source = Source {
    title: "Kalpakjian & Schmid, Manufacturing Processes for Engineering Materials",
    edition: "",
    locator: "sheet-metal bending, strain of the outer fibre",
    standing: Standing::Memory,
};

impl Calculation for OuterFibreStrain {
    const NAME: &'static str = "outer_fibre_strain";
    const SOURCE: &'static [Source] = &[KALPAKJIAN];
    type Outcome = OuterFibreStrainOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let ratio = self.inside_radius.value / self.thickness.value;
        caveats.add(Caveat::Estimate);
        Ok(OuterFibreStrainOutcome { outer_fibre_strain: 1.0 / (1.0 + 2.0 * ratio), radius_ratio: ratio })
    }
}
