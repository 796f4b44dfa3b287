use crate::prelude::*;

/// Pressure and line force of a sponge from the constants of a compressible hyperelastic foam (Ogden-Hill).
///
/// # Formula
/// λ = 1 − c the stretch across the gap, λ2 that of the side that is free to bulge:
/// ```text
/// W = Σ (2 μi/αi²) [λ^αi + λ2^αi + λ3^αi − 3 + (J^(−αi β) − 1)/β],  β = ν/(1 − 2 ν)
/// p = Σ (2 μi/αi) (λ2^αi − λ^αi) / λ            pressure on the free area, positive when pressed
/// free       λ2 = λ3 = λ^(−ν)                    both sides bulge
/// strip      λ2 = λ^(−ν/(1 − ν)), λ3 = 1         a long strip bulges to its sides only
/// q = p w,  k = w (dp/dc) / H
/// ```
/// One Poisson's ratio for all terms. Small strain: 2 (1 + ν) Σ μi is Young's modulus when free.
///
/// # Validity
/// Constants fitted to a measured curve, within the compression of that fit. The curve is walked from 0 to c:
/// a set of constants whose pressure falls anywhere there is refused. Slow closing, first loading, room
/// temperature.
///
/// # Source
/// B. Storåkers, On material representation and constitutive branching in finite compressible elasticity, J.
/// Mech. Phys. Solids 34 (1986) 125-145 (unverified).
///
/// # Example
/// One term with α = 2, ν = 0, μ = 10 kPa at 50 %: 2·10/2 · (1 − 0.25)/0.5 = 15 kPa (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::{FoamSides, FoamTerm, SpongeHyperelastic};
///
/// let (outcome, _) = SpongeHyperelastic {
///     terms: vec![FoamTerm { shear_modulus: kilopascal(10.0), exponent: 2.0 }],
///     poissons_ratio: 0.0,
///     sides: FoamSides::Strip,
///     compression: 0.50,
///     width: mm(12.0),
///     free_height: mm(10.0),
/// }
/// .calculate()?;
/// assert!((outcome.pressure.value - 15e3).abs() < 1e-6);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SpongeHyperelastic {
    /// Terms of the foam.
    pub terms: Vec<FoamTerm>,
    /// Poisson's ratio of the foam, ν.
    #[possible(0.0..0.5)]
    #[tested(0.0..=0.4)]
    pub poissons_ratio: f64,
    /// Which sides are free to bulge.
    pub sides: FoamSides,
    /// Compression, c: closed part of the free height.
    #[possible(0.0..=0.95)]
    #[tested(0.0..=0.6)]
    pub compression: f64,
    /// Width of the strip, w.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Free height of the strip, H.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_height: Length,
}

/// One term of the foam.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct FoamTerm {
    /// Shear modulus of the term, μi; a term may be negative.
    pub shear_modulus: Pressure,
    /// Exponent of the term, αi; not 0.
    #[possible(-50.0..=50.0)]
    pub exponent: f64,
}

/// Which sides of pressed foam are free.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum FoamSides {
    /// Both: a short piece.
    Free,
    /// One: a long strip.
    Strip,
}

/// Pressure, line force and stiffness.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SpongeHyperelasticOutcome {
    /// Pressure on the free area, p.
    pub pressure: Pressure,
    /// Slope of the curve, dp/dc.
    pub tangent_modulus: Pressure,
    /// Line force, q.
    pub line_force: ForcePerLength,
    /// Line stiffness, k: change of line force with closing (N/m for each m).
    #[shown_in("N/mm^2")]
    pub line_stiffness: Pressure,
    /// Stretch of the side that bulges, λ2.
    pub side_stretch: f64,
}

/// Steps in which the curve is walked to see that it rises.
const STEPS: u32 = 100;

impl SpongeHyperelastic {
    /// Exponent n of the side stretch λ2 = λ^(−n).
    fn bulge(&self) -> f64 {
        match self.sides {
            FoamSides::Free => self.poissons_ratio,
            FoamSides::Strip => self.poissons_ratio / (1.0 - self.poissons_ratio),
        }
    }

    /// Pressure and its slope over compression.
    fn curve(&self, compression: f64) -> (f64, f64) {
        let stretch = 1.0 - compression;
        let n = self.bulge();
        self.terms.iter().fold((0.0, 0.0), |(pressure, slope), term| {
            let (mu, alpha) = (term.shear_modulus.value, term.exponent);
            let pressed = math::pow(stretch, alpha - 1.0);
            let bulged = math::pow(stretch, 0.0 - n * alpha - 1.0);
            // p = (2 μ/α)(λ^(−nα−1) − λ^(α−1)), and d/dc = −d/dλ
            let rise = (n * alpha + 1.0) * bulged + (alpha - 1.0) * pressed;
            (pressure + 2.0 * mu / alpha * (bulged - pressed), slope + 2.0 * mu / alpha * rise / stretch)
        })
    }
}

impl Calculation for SpongeHyperelastic {
    const NAME: &'static str = "sponge_hyperelastic";
    const SOURCE: &'static [Source] = &[Source {
        title: "Storåkers, J. Mech. Phys. Solids 34",
        edition: "1986",
        locator: "pp. 125-145, compressible foam",
        standing: Standing::Memory,
    }];
    type Outcome = SpongeHyperelasticOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.terms.is_empty() {
            return Err(Error::inconsistent("terms", "one term or more is needed"));
        }
        if self.terms.iter().any(|term| term.exponent == 0.0) {
            return Err(Error::inconsistent("terms", "an exponent of 0 is no term; give another"));
        }
        let rises = (0..=STEPS).all(|step| {
            let (_, slope) = self.curve(self.compression * f64::from(step) / f64::from(STEPS));
            slope > 0.0
        });
        if !rises {
            return Err(Error::inconsistent(
                "terms, compression",
                "the pressure of these constants must rise all the way to this compression",
            ));
        }
        let (pressure, slope) = self.curve(self.compression);
        let w = self.width.value;
        Ok(SpongeHyperelasticOutcome {
            pressure: si(pressure),
            tangent_modulus: si(slope),
            line_force: si(pressure * w),
            line_stiffness: si(slope * w / self.free_height.value),
            side_stretch: math::pow(1.0 - self.compression, 0.0 - self.bulge()),
        })
    }
}
