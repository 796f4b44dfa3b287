use super::rubber_block::{RubberFaces, STIFF_SHAPE};
use crate::prelude::*;

/// Compression of a long solid rubber strip: plane strain.
///
/// # Formula
/// ```text
/// S  = w / (2 t)
/// Ea = (4/3) E (1 + k S²)        faces bonded, or held by friction
/// Ea = (4/3) E                   faces lubricated
/// p  = Ea c,  q = p w,  line stiffness = Ea w / t
/// ```
///
/// # Validity
/// Length at least ten times the width; compression to about 15 %; shape factors to 5 (above it a caveat).
/// Not for sponge, which gives way inside.
///
/// # Source
/// A. N. Gent and P. B. Lindley, Proc. IMechE 173 (1959) 111-122; the pressure p = 4 G c ((w/2)² − x²) 3/(2
/// t²) under bonded faces and the modulus 4 G of plane strain give the formula with k = 1.
///
/// # Example
/// E = 3 MPa, 12 × 3 mm, k = 1, bonded: S = 2, Ea = 4 · 5 = 20 MPa (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::{RubberFaces, RubberStrip};
///
/// let (outcome, _) = RubberStrip {
///     youngs_modulus: megapascal(3.0),
///     stiffening: 1.0,
///     width: mm(12.0),
///     thickness: mm(3.0),
///     faces: RubberFaces::Bonded,
///     compression: 0.10,
/// }
/// .calculate()?;
/// assert!((outcome.apparent_modulus.value - 20e6).abs() < 1.0);
/// assert!((outcome.line_force.value - 24e3).abs() < 1e-6);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RubberStrip {
    /// Young's modulus of the rubber, E.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Stiffening constant of the compound, k.
    #[possible(0.0..=1.5)]
    #[tested(0.5..=1.0)]
    pub stiffening: f64,
    /// Width of the strip, w.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Thickness of the strip, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// How its faces are held.
    pub faces: RubberFaces,
    /// Compression, c: closed part of the thickness.
    #[possible(0.0..=0.9)]
    #[tested(0.0..=0.15)]
    pub compression: f64,
}

/// Stiffness and line force.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RubberStripOutcome {
    /// Shape factor, S.
    pub shape_factor: f64,
    /// Apparent modulus, Ea.
    #[shown_in("MPa")]
    pub apparent_modulus: Pressure,
    /// Mean pressure, p.
    #[shown_in("MPa")]
    pub pressure: Pressure,
    /// Line force, q.
    pub line_force: ForcePerLength,
    /// Line stiffness: change of line force with closing (N/m for each m).
    #[shown_in("N/mm^2")]
    pub line_stiffness: Pressure,
}

impl Calculation for RubberStrip {
    const NAME: &'static str = "rubber_strip";
    const SOURCE: &'static [Source] = &[Source {
        title: "Gent and Lindley, Proc. IMechE 173",
        edition: "1959",
        locator: "pp. 111-122, long strip",
        standing: Standing::Computed,
    }];
    type Outcome = RubberStripOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (w, t) = (self.width.value, self.thickness.value);
        let s = 0.5 * w / t;
        if s > STIFF_SHAPE {
            caveats.add(Caveat::RubberVolumeChange);
        }
        let plane = 4.0 / 3.0 * self.youngs_modulus.value;
        let modulus = match self.faces {
            RubberFaces::Bonded => plane * (1.0 + self.stiffening * s * s),
            RubberFaces::Lubricated => plane,
        };
        let pressure = modulus * self.compression;
        Ok(RubberStripOutcome {
            shape_factor: s,
            apparent_modulus: si(modulus),
            pressure: si(pressure),
            line_force: si(pressure * w),
            line_stiffness: si(modulus * w / t),
        })
    }
}
