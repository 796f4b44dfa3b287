use crate::prelude::*;

/// Compression of a solid rubber block between two plates.
///
/// # Formula
/// ```text
/// S  = a b / (2 t (a + b))        shape factor: loaded area over the area free to bulge
/// Ea = E (1 + 2 k S²)             faces bonded, or held by friction
/// Ea = E                          faces lubricated
/// p  = Ea c,  F = p a b,  stiffness = Ea a b / t
/// ```
///
/// # Validity
/// Compression c up to about 15 %, where force and compression are proportional; past it rubber stiffens.
/// Shape factors to 5; above, rubber's own volume change softens the block and a caveat says so. k falls from
/// 1 (soft gum) to about 0.5 (hard, filled). A dry face that is only pressed lies between bonded and
/// lubricated.
///
/// # Source
/// A. N. Gent and P. B. Lindley, Proc. IMechE 173 (1959) 111-122 (second-hand); k by P. B. Lindley,
/// Engineering Design with Natural Rubber, 4th ed. 1978 (unverified).
///
/// # Example
/// 50 × 50 × 10 mm, E = 2 MPa, k = 1: S = 1.25, Ea = 8.25 MPa (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::{RubberBlock, RubberFaces};
///
/// let (outcome, _) = RubberBlock {
///     youngs_modulus: megapascal(2.0),
///     stiffening: 1.0,
///     length: mm(50.0),
///     width: mm(50.0),
///     thickness: mm(10.0),
///     faces: RubberFaces::Bonded,
///     compression: 0.10,
/// }
/// .calculate()?;
/// assert!((outcome.shape_factor - 1.25).abs() < 1e-12);
/// assert!((outcome.apparent_modulus.value - 8.25e6).abs() < 1.0);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RubberBlock {
    /// Young's modulus of the rubber, E.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Stiffening constant of the compound, k.
    #[possible(0.0..=1.5)]
    #[tested(0.5..=1.0)]
    pub stiffening: f64,
    /// Length of the block, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the block, b.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Thickness between the plates, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// How its faces are held.
    pub faces: RubberFaces,
    /// Compression, c: closed part of the thickness.
    #[possible(0.0..=0.9)]
    #[tested(0.0..=0.15)]
    pub compression: f64,
}

/// How the faces of pressed rubber are held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum RubberFaces {
    /// Bonded, or held by friction without slip.
    Bonded,
    /// Lubricated: free to spread.
    Lubricated,
}

/// Stiffness and force.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RubberBlockOutcome {
    /// Shape factor, S.
    pub shape_factor: f64,
    /// Apparent modulus, Ea.
    #[shown_in("MPa")]
    pub apparent_modulus: Pressure,
    /// Mean pressure, p.
    #[shown_in("MPa")]
    pub pressure: Pressure,
    /// Force, F.
    pub force: Force,
    /// Stiffness: force for each length of closing.
    pub stiffness: ForcePerLength,
}

/// Shape factor above which rubber's own volume change counts.
pub(crate) const STIFF_SHAPE: f64 = 5.0;

impl Calculation for RubberBlock {
    const NAME: &'static str = "rubber_block";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Gent and Lindley, Proc. IMechE 173",
            edition: "1959",
            locator: "pp. 111-122, Ea = E (1 + 2 k S^2)",
            standing: Standing::SecondHand,
        },
        Source {
            title: "Lindley, Engineering Design with Natural Rubber",
            edition: "4th ed. 1978",
            locator: "hardness and elastic moduli table",
            standing: Standing::Memory,
        },
    ];
    type Outcome = RubberBlockOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, t) = (self.length.value, self.width.value, self.thickness.value);
        let s = a * b / (2.0 * t * (a + b));
        if s > STIFF_SHAPE {
            caveats.add(Caveat::RubberVolumeChange);
        }
        let modulus = match self.faces {
            RubberFaces::Bonded => self.youngs_modulus.value * (1.0 + 2.0 * self.stiffening * s * s),
            RubberFaces::Lubricated => self.youngs_modulus.value,
        };
        let pressure = modulus * self.compression;
        Ok(RubberBlockOutcome {
            shape_factor: s,
            apparent_modulus: si(modulus),
            pressure: si(pressure),
            force: si(pressure * a * b),
            stiffness: si(modulus * a * b / t),
        })
    }
}
