//! First six natural frequencies of an annular plate (a ring).

use super::PlateEdge;
use super::isotropic::{check_thin, flexural_rigidity};
use super::plate_modes::{End, functions};
use super::quadrature::gauss_legendre;
use super::symmetric::{self, Rows};
use crate::prelude::*;

/// First six natural frequencies of an annular plate, each edge free, supported or clamped.
///
/// # Formula
/// ω = λ/a² √(D/m), m = ρ t + added mass per area. λ² by Ritz for each number n of nodal diameters: w = cos n θ Σ c f(r)/√r, f
/// products of (r − b)^p (a − r)^q and Jacobi polynomials, p and q 0, 1, 2 for a free, supported, clamped edge, in the energy
/// ∫ ((∇²w)² − 2 (1 − ν) (w_rr (w_r/r + w_θθ/r²) − ((w_θ/r)_r)²)) r dr dθ. Modes with n > 0 are double and counted once.
///
/// # Validity
/// Thin, flat, isotropic, small amplitude, in vacuum; λ to 1e-7 for b/a from 0.05 to 0.95, which is accepted. Motions that
/// strain nothing have no frequency and are left out. Caveat: t over 1/20 of the ring's width.
///
/// # Source
/// A. W. Leissa, Vibration of Plates, NASA SP-160 (1969), ch. 2.2.
///
/// # Example
/// Both edges clamped, b/a = 0.5: λ = 89.251 (roots of the Bessel functions, tests/independent/plate_ring.py; SP-160 gives
/// 89.2, from memory).
/// ```
/// use coaming::plate::{AnnularPlateModes, PlateEdge};
/// use coaming::prelude::*;
///
/// let plate = AnnularPlateModes {
///     outer_radius: mm(150.0),
///     inner_radius: mm(75.0),
///     thickness: mm(2.0),
///     youngs_modulus: gigapascal(70.0),
///     poissons_ratio: 0.3,
///     mass_density: kilogram_per_cubic_meter(2700.0),
///     added_mass_per_area: None,
///     outer_edge: PlateEdge::Clamped,
///     inner_edge: PlateEdge::Clamped,
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.frequency_parameters[0] - 89.251).abs() < 0.001);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct AnnularPlateModes {
    /// Outer radius, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub outer_radius: Length,
    /// Inner radius, b; 0.05 to 0.95 of the outer one.
    #[possible(f64::MIN_POSITIVE..)]
    pub inner_radius: Length,
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
    /// How the outer edge is held.
    pub outer_edge: PlateEdge,
    /// How the inner edge is held.
    pub inner_edge: PlateEdge,
}

/// Outcome of [`AnnularPlateModes`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct AnnularPlateModesOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Mass per area that moves, m.
    pub mass_per_area: MassPerArea,
    /// First natural frequency.
    pub first_frequency: Frequency,
    /// The first six natural frequencies, rising.
    pub frequencies: Vec<Frequency>,
    /// Their frequency parameters λ = ω a² √(m/D).
    pub frequency_parameters: Vec<f64>,
    /// Their numbers of nodal diameters, n.
    pub nodal_diameters: Vec<u32>,
}

/// Functions for each number of nodal diameters.
const COUNT: usize = 24;
/// Numbers of nodal diameters that are looked at: the six lowest modes of a narrow ring have 2 to 7.
const DIAMETERS: u32 = 9;

/// Parts of the energy of one function at one radius: L, w'', G and H, with L = w'' + G, G = w'/r − n² w/r²,
/// H = w'/r − w/r².
fn parts([f, f1, f2]: [f64; 3], r: f64, half: f64, n: f64) -> [f64; 4] {
    // w = f/√r, f over −1..1, so that d/dr is 1/half of d/dt.
    let (f1, f2) = (f1 / half, f2 / (half * half));
    let root = 1.0 / (r.sqrt() * half.sqrt());
    let w = root * f;
    let w1 = root * (f1 - f / (2.0 * r));
    let w2 = root * (f2 - f1 / r + 0.75 * f / (r * r));
    let g = w1 / r - n * n * w / (r * r);
    [w2 + g, w2, g, w1 / r - w / (r * r)]
}

/// λ for n nodal diameters, rising, of a ring from b to 1.
fn parameters(b: f64, nu: f64, (inner, outer): (End, End), n: u32) -> Vec<f64> {
    let half = 0.5 * (1.0 - b);
    let order = f64::from(n);
    let mut matrix: Rows = vec![vec![0.0; COUNT]; COUNT];
    for (t, weight) in gauss_legendre(2 * COUNT + 16) {
        let r = b + half * (1.0 + t);
        let rows: Vec<[f64; 4]> =
            functions(inner, outer, COUNT, t).into_iter().map(|f| parts(f, r, half, order)).collect();
        let weight = weight * half * r;
        for (row, [l, w2, g, h]) in matrix.iter_mut().zip(&rows) {
            for (entry, [m, v2, k, i]) in row.iter_mut().zip(&rows) {
                *entry += weight
                    * (l * m - (1.0 - nu) * (w2 * k + g * v2) + 2.0 * (1.0 - nu) * order * order * h * i);
            }
        }
    }
    let rigid = usize::from(inner == End::Free && outer == End::Free && n < 2);
    // A small stiffness against the free motions keeps the matrix positive; it is taken off again.
    let shift = if rigid > 0 { 1.0 } else { 0.0 };
    for (i, row) in matrix.iter_mut().enumerate() {
        if let Some(entry) = row.get_mut(i) {
            *entry += shift;
        }
    }
    let squares = symmetric::lowest(&matrix, 6 + rigid).into_iter().skip(rigid);
    squares.map(|square| (square - shift).max(0.0).sqrt()).collect()
}

impl Calculation for AnnularPlateModes {
    const NAME: &'static str = "annular_plate_modes";
    const SOURCE: &'static [Source] = &[Source {
        title: "A. W. Leissa, Vibration of Plates, NASA SP-160",
        edition: "1969",
        locator: "ch. 2.2",
        standing: Standing::Memory,
    }];
    type Outcome = AnnularPlateModesOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, t, nu) = (self.outer_radius.value, self.thickness.value, self.poissons_ratio);
        let b = self.inner_radius.value / a;
        if !(0.05..=0.95).contains(&b) {
            return Err(self.impossible("inner_radius", "0.05 to 0.95 of outer_radius"));
        }
        let d = flexural_rigidity(self.youngs_modulus.value, t, nu);
        let m = self.mass_density.value * t + self.added_mass_per_area.map_or(0.0, |added| added.value);
        let ends = (self.inner_edge.end(), self.outer_edge.end());
        let mut modes: Vec<(f64, u32)> = (0..DIAMETERS)
            .flat_map(|n| parameters(b, nu, ends, n).into_iter().map(move |lambda| (lambda, n)))
            .collect();
        modes.sort_by(|x, y| x.0.total_cmp(&y.0));
        modes.truncate(6);
        check_thin(t, a - self.inner_radius.value, caveats);
        let frequencies: Vec<Frequency> =
            modes.iter().map(|(lambda, _)| si(lambda / (a * a) * (d / m).sqrt() / (2.0 * PI))).collect();
        Ok(AnnularPlateModesOutcome {
            flexural_rigidity: si(d),
            mass_per_area: si(m),
            first_frequency: frequencies.first().copied().unwrap_or(si(f64::NAN)),
            frequencies,
            frequency_parameters: modes.iter().map(|(lambda, _)| *lambda).collect(),
            nodal_diameters: modes.iter().map(|(_, n)| *n).collect(),
        })
    }
}
