//! First natural frequency of a rectangular plate, supported or clamped all round.

use super::isotropic::{check_thin, flexural_rigidity};
use super::{EdgeSupport, clamped_frequency};
use crate::prelude::*;

/// First natural frequency of a rectangular plate, with the band between supported and clamped edges.
///
/// # Formula
/// ω = λ/s² √(D/m), s the shorter side, m = ρ t + added mass per area, D = E t³/(12 (1 − ν²)). Supported:
/// λ = π² (1 + (s/l)²). Clamped: λ by Ritz with twice-integrated Legendre polynomials. Effective mass
/// m (∫ φ)²/∫ φ², participation ∫ φ/∫ φ² with φ = 1 at the centre.
///
/// # Validity
/// Thin, flat, isotropic, small amplitude, in vacuum: the air that moves along (for a sheet of 1 mm some per cent) is not
/// counted unless it is given as added mass. λ to 1e-8 for sides of 1:1 to 1:10. A real edge lies between supported and
/// clamped: the band is the answer where the support is not known. Caveat: t over 1/20 of the shorter side (at 1/10 the
/// supported frequency is 3.6 % too high).
///
/// # Source
/// A. W. Leissa, Vibration of Plates, NASA SP-160 (1969), ch. 4 (second-hand).
///
/// # Example
/// Supported square steel plate, 10 m, 50 mm: 2.377 Hz (NAFEMS E1261/R002, test FV13).
/// ```
/// use coaming::plate::{EdgeSupport, RectangularPlateFrequency};
/// use coaming::prelude::*;
///
/// let plate = RectangularPlateFrequency {
///     length: m(10.0),
///     width: m(10.0),
///     thickness: mm(50.0),
///     youngs_modulus: gigapascal(200.0),
///     poissons_ratio: 0.3,
///     mass_density: kilogram_per_cubic_meter(8000.0),
///     added_mass_per_area: None,
///     edge_support: EdgeSupport::Supported,
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.frequency - hertz(2.377)).abs() < hertz(0.001));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RectangularPlateFrequency {
    /// Length of the plate between its supports, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the plate between its supports, b; it may be the longer side.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Thickness, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Young's modulus, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Poisson's ratio, ν.
    #[possible(-0.99..=0.5)]
    #[tested(0.0..=0.5)]
    pub poissons_ratio: f64,
    /// Density of the plate, ρ.
    #[possible(f64::MIN_POSITIVE..)]
    pub mass_density: MassDensity,
    /// Mass per area that moves with the plate and does not stiffen it (foam, film, a layer of water); none if absent.
    #[possible(0.0..)]
    pub added_mass_per_area: Option<MassPerArea>,
    /// How the plate is held along its edge.
    pub edge_support: EdgeSupport,
}

/// Outcome of [`RectangularPlateFrequency`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RectangularPlateFrequencyOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Mass per area that moves, m.
    pub mass_per_area: MassPerArea,
    /// Mass of the plate with what is added.
    pub mass: Mass,
    /// Frequency parameter λ = ω s² √(m/D), s the shorter side.
    pub frequency_parameter: f64,
    /// First natural frequency with the stated support.
    pub frequency: Frequency,
    /// First natural frequency if supported: the low end of the band.
    pub supported_frequency: Frequency,
    /// First natural frequency if clamped: the high end of the band.
    pub clamped_frequency: Frequency,
    /// Effective mass of the first mode with the stated support: what it presses on its edge with per acceleration.
    pub effective_mass: Mass,
    /// Participation factor: the first mode's motion at the centre per motion of the shaken edge, before resonance
    /// magnifies it.
    pub participation_factor: f64,
}

impl Calculation for RectangularPlateFrequency {
    const NAME: &'static str = "rectangular_plate_frequency";
    const SOURCE: &'static [Source] = &[Source {
        title: "A. W. Leissa, Vibration of Plates, NASA SP-160",
        edition: "1969",
        locator: "ch. 4, SS-SS-SS-SS and C-C-C-C",
        standing: Standing::SecondHand,
    }];
    type Outcome = RectangularPlateFrequencyOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, t) = (self.length.value, self.width.value, self.thickness.value);
        let (short, long) = (a.min(b), a.max(b));
        let d = flexural_rigidity(self.youngs_modulus.value, t, self.poissons_ratio);
        let m = self.mass_density.value * t + self.added_mass_per_area.map_or(0.0, |added| added.value);
        let supported = PI * PI * (1.0 + math::square(short / long));
        let clamped = clamped_frequency::first_mode(long / short);
        let hertz = |lambda: f64| lambda / (short * short) * (d / m).sqrt() / (2.0 * PI);
        let (lambda, effective_share, centre_share) = match self.edge_support {
            // φ = sin sin: (∫ φ)² = (4/π²)² A², ∫ φ² = A/4.
            EdgeSupport::Supported => (supported, 64.0 / (PI * PI * PI * PI), 0.25),
            EdgeSupport::Clamped => (clamped.parameter, clamped.effective_share, clamped.centre_share),
        };
        check_thin(t, short, caveats);
        Ok(RectangularPlateFrequencyOutcome {
            flexural_rigidity: si(d),
            mass_per_area: si(m),
            mass: si(m * a * b),
            frequency_parameter: lambda,
            frequency: si(hertz(lambda)),
            supported_frequency: si(hertz(supported)),
            clamped_frequency: si(hertz(clamped.parameter)),
            effective_mass: si(m * a * b * effective_share),
            participation_factor: (effective_share / centre_share).sqrt(),
        })
    }
}
