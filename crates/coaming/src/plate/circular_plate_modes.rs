//! First six natural frequencies of a circular plate.

use super::PlateEdge;
use super::isotropic::{check_thin, flexural_rigidity};
use crate::prelude::*;

/// First six natural frequencies of a circular plate, its edge free, supported or clamped.
///
/// # Formula
/// ω = λ²/a² √(D/m), m = ρ t + added mass per area; λ are the roots, for n nodal diameters, of the determinant of the two
/// edge conditions for w = J_n(λ r/a) + C I_n(λ r/a), found by scanning and bisection. Modes with n > 0 are double and
/// counted once.
///
/// # Validity
/// Thin, flat, isotropic, small amplitude, in vacuum; exact within thin-plate theory, λ² to 1e-9. Caveat: t over 1/20 of
/// the diameter.
///
/// # Source
/// A. W. Leissa, Vibration of Plates, NASA SP-160 (1969), ch. 2.
///
/// # Example
/// Clamped: λ² = 10.2158 for the first mode (SP-160, ch. 2, from memory, unverified; confirmed by Bessel roots).
/// ```
/// use coaming::plate::{CircularPlateModes, PlateEdge};
/// use coaming::prelude::*;
///
/// let plate = CircularPlateModes {
///     radius: mm(150.0),
///     thickness: mm(2.0),
///     youngs_modulus: gigapascal(70.0),
///     poissons_ratio: 0.33,
///     mass_density: kilogram_per_cubic_meter(2700.0),
///     added_mass_per_area: None,
///     edge: PlateEdge::Clamped,
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.frequency_parameters[0] - 10.2158).abs() < 0.0001);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CircularPlateModes {
    /// Radius of the plate, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub radius: Length,
    /// Thickness, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Young's modulus, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Poisson's ratio, ν.
    #[possible(0.0..=0.5)]
    pub poissons_ratio: f64,
    /// Density of the plate, ρ.
    #[possible(f64::MIN_POSITIVE..)]
    pub mass_density: MassDensity,
    /// Mass per area that moves with the plate and does not stiffen it; none if absent.
    #[possible(0.0..)]
    pub added_mass_per_area: Option<MassPerArea>,
    /// How the edge is held.
    pub edge: PlateEdge,
}

/// Outcome of [`CircularPlateModes`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct CircularPlateModesOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Mass per area that moves, m.
    pub mass_per_area: MassPerArea,
    /// First natural frequency.
    pub first_frequency: Frequency,
    /// The first six natural frequencies, rising.
    pub frequencies: Vec<Frequency>,
    /// Their frequency parameters λ² = ω a² √(m/D).
    pub frequency_parameters: Vec<f64>,
    /// Their numbers of nodal diameters, n.
    pub nodal_diameters: Vec<u32>,
}

/// J_n(x) or, with sign = 1, I_n(x), by the power series; good to 1e-11 for x to 10.
fn bessel(n: u32, x: f64, sign: f64) -> f64 {
    let half = 0.5 * x;
    let mut term = 1.0;
    for i in 1..=n {
        term *= half / f64::from(i);
    }
    let (mut sum, mut k) = (term, 0.0);
    loop {
        k += 1.0;
        term *= sign * half * half / (k * (k + f64::from(n)));
        sum += term;
        if term.abs() <= 1e-18 * sum.abs() || k > 200.0 {
            return sum;
        }
    }
}

/// Determinant of the edge conditions at r = a.
fn determinant(edge: PlateEdge, n: u32, lambda: f64, nu: f64) -> f64 {
    let order = f64::from(n);
    let squared = order * order;
    // w, w', M, V for J (its Laplacian is −λ² times itself) and for I (λ²); derivatives by r/a.
    let rows = [-1.0, 1.0].map(|sign| {
        let (w, next) = (bessel(n, lambda, sign), bessel(n + 1, lambda, sign));
        let slope = order * w + sign * lambda * next;
        let (laplace, laplace_slope) = (sign * lambda * lambda * w, sign * lambda * lambda * slope);
        let moment = laplace - (1.0 - nu) * (slope - squared * w);
        let shear = laplace_slope - (1.0 - nu) * squared * (slope - w);
        match edge {
            PlateEdge::Clamped => (w, slope),
            PlateEdge::Supported => (w, moment),
            PlateEdge::Free => (moment, shear),
        }
    });
    let [(j1, j2), (i1, i2)] = rows;
    j1 * i2 - i1 * j2
}

/// The first roots λ for n nodal diameters, up to λ = 9.
fn roots(edge: PlateEdge, n: u32, nu: f64) -> Vec<f64> {
    let mut found = Vec::new();
    let (mut low, mut before) = (0.6, determinant(edge, n, 0.6, nu));
    while low < 9.0 {
        let high = low + 0.1;
        let after = determinant(edge, n, high, nu);
        if (before < 0.0) != (after < 0.0) {
            let (mut a, mut b) = (low, high);
            for _ in 0..60 {
                let middle = 0.5 * (a + b);
                if (determinant(edge, n, middle, nu) < 0.0) == (before < 0.0) {
                    a = middle;
                } else {
                    b = middle;
                }
            }
            found.push(0.5 * (a + b));
        }
        (low, before) = (high, after);
    }
    found
}

impl Calculation for CircularPlateModes {
    const NAME: &'static str = "circular_plate_modes";
    const SOURCE: &'static [Source] = &[Source {
        title: "A. W. Leissa, Vibration of Plates, NASA SP-160",
        edition: "1969",
        locator: "ch. 2",
        standing: Standing::Memory,
    }];
    type Outcome = CircularPlateModesOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, t, nu) = (self.radius.value, self.thickness.value, self.poissons_ratio);
        let d = flexural_rigidity(self.youngs_modulus.value, t, nu);
        let m = self.mass_density.value * t + self.added_mass_per_area.map_or(0.0, |added| added.value);
        let mut modes: Vec<(f64, u32)> = (0..7)
            .flat_map(|n| roots(self.edge, n, nu).into_iter().map(move |root| (root * root, n)))
            .collect();
        modes.sort_by(|x, y| x.0.total_cmp(&y.0));
        modes.truncate(6);
        let hertz = |parameter: f64| parameter / (a * a) * (d / m).sqrt() / (2.0 * PI);
        check_thin(t, 2.0 * a, caveats);
        let frequencies: Vec<Frequency> = modes.iter().map(|(parameter, _)| si(hertz(*parameter))).collect();
        Ok(CircularPlateModesOutcome {
            flexural_rigidity: si(d),
            mass_per_area: si(m),
            first_frequency: frequencies.first().copied().unwrap_or(si(f64::NAN)),
            frequencies,
            frequency_parameters: modes.iter().map(|(parameter, _)| *parameter).collect(),
            nodal_diameters: modes.iter().map(|(_, n)| *n).collect(),
        })
    }
}
