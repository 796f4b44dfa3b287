//! First six natural frequencies of a rectangular plate with any edges.

use super::isotropic::{check_thin, flexural_rigidity};
use super::plate_modes::{self, End};
use crate::prelude::*;

/// How one edge of a plate is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum PlateEdge {
    /// Not held at all.
    Free,
    /// Held against deflection, free to turn.
    Supported,
    /// Held against deflection and against turning.
    Clamped,
}

impl PlateEdge {
    pub(super) fn end(self) -> End {
        match self {
            Self::Free => End::Free,
            Self::Supported => End::Supported,
            Self::Clamped => End::Clamped,
        }
    }
}

/// First six natural frequencies of a rectangular plate, each edge free, supported or clamped.
///
/// # Formula
/// ω = λ/a² √(D/m), a the length, m = ρ t + added mass per area, D = E t³/(12 (1 − ν²)). λ by Ritz: products of
/// (1 + t)^p (1 − t)^q P_k(t) along the two sides, P_k Jacobi polynomials, p and q 0, 1, 2 for a free, supported, clamped
/// edge.
///
/// # Validity
/// Thin, flat, isotropic, small amplitude, in vacuum. All 21 combinations of edges; λ settles to 1e-3 for sides of 1:1 to
/// 1:5, to 1e-5 where no clamped edge meets a free one, from above. Past 1:5 the result carries a caveat. Motions that
/// strain nothing (three of a free plate, one of a plate on a single supported edge) have no frequency and are left out.
///
/// # Source
/// A. W. Leissa, Vibration of Plates, NASA SP-160 (1969), ch. 4; A. W. Leissa, J. Sound Vib. 31 (1973) 257–293.
///
/// # Example
/// Cantilever square of NAFEMS test FV16 (10 m, 50 mm, steel): 0.421 Hz.
/// ```
/// use coaming::plate::{PlateEdge, RectangularPlateModes};
/// use coaming::prelude::*;
///
/// let plate = RectangularPlateModes {
///     length: m(10.0),
///     width: m(10.0),
///     thickness: mm(50.0),
///     youngs_modulus: gigapascal(200.0),
///     poissons_ratio: 0.3,
///     mass_density: kilogram_per_cubic_meter(8000.0),
///     added_mass_per_area: None,
///     first_length_edge: PlateEdge::Free,
///     second_length_edge: PlateEdge::Free,
///     first_width_edge: PlateEdge::Clamped,
///     second_width_edge: PlateEdge::Free,
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.first_frequency - hertz(0.421)).abs() < hertz(0.005));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RectangularPlateModes {
    /// Length of the plate, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the plate, b; it may be the longer side.
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
    /// Mass per area that moves with the plate and does not stiffen it; none if absent.
    #[possible(0.0..)]
    pub added_mass_per_area: Option<MassPerArea>,
    /// How one of the edges that run along the length is held.
    pub first_length_edge: PlateEdge,
    /// How the edge opposite to it is held.
    pub second_length_edge: PlateEdge,
    /// How one of the edges that run along the width is held.
    pub first_width_edge: PlateEdge,
    /// How the edge opposite to it is held.
    pub second_width_edge: PlateEdge,
}

/// Outcome of [`RectangularPlateModes`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RectangularPlateModesOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Mass per area that moves, m.
    pub mass_per_area: MassPerArea,
    /// Motions of the whole plate that strain nothing and have no frequency.
    pub free_motions: u32,
    /// First natural frequency.
    pub first_frequency: Frequency,
    /// The first six natural frequencies, rising.
    pub frequencies: Vec<Frequency>,
    /// Their frequency parameters λ = ω a² √(m/D), a the length.
    pub frequency_parameters: Vec<f64>,
}

impl Calculation for RectangularPlateModes {
    const NAME: &'static str = "rectangular_plate_modes";
    const SOURCE: &'static [Source] = &[Source {
        title: "A. W. Leissa, Vibration of Plates, NASA SP-160",
        edition: "1969",
        locator: "ch. 4",
        standing: Standing::SecondHand,
    }];
    type Outcome = RectangularPlateModesOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, t, nu) = (self.length.value, self.width.value, self.thickness.value, self.poissons_ratio);
        let d = flexural_rigidity(self.youngs_modulus.value, t, nu);
        let m = self.mass_density.value * t + self.added_mass_per_area.map_or(0.0, |added| added.value);
        let x_ends = (self.first_width_edge.end(), self.second_width_edge.end());
        let y_ends = (self.first_length_edge.end(), self.second_length_edge.end());
        let parameters = plate_modes::parameters(x_ends, (b / a, y_ends), nu, 6);
        let hertz = |lambda: f64| lambda / (a * a) * (d / m).sqrt() / (2.0 * PI);
        check_thin(t, a.min(b), caveats);
        if a.max(b) > 5.0 * a.min(b) {
            caveats.add(Caveat::OutsideTested);
        }
        Ok(RectangularPlateModesOutcome {
            flexural_rigidity: si(d),
            mass_per_area: si(m),
            free_motions: plate_modes::free_motions(x_ends, y_ends) as u32,
            first_frequency: si(hertz(parameters.first().copied().unwrap_or(f64::NAN))),
            frequencies: parameters.iter().map(|lambda| si(hertz(*lambda))).collect(),
            frequency_parameters: parameters,
        })
    }
}
