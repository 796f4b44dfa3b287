//! Annular plate (a ring) under uniform pressure and a force around its inner edge.

use super::PlateEdge;
use super::isotropic::{check_small, check_thin, face_stress, flexural_rigidity};
use crate::prelude::*;

/// Annular plate under uniform pressure and a force spread around its inner edge, each edge free, supported or clamped.
///
/// # Formula
/// w = c1 + c2 r² + c3 ln r + c4 r² ln r + q r⁴/(64 D), the four constants from two conditions at each edge: free M = 0 and
/// V given, supported w = 0 and M = 0, clamped w = 0 and w' = 0. M_r = −D (w'' + ν w'/r), M_t = −D (w'/r + ν w''),
/// V = −D (w'' + w'/r)'. σ = 6 M/t².
///
/// # Validity
/// Thin, flat, isotropic, elastic; small deflection. At least one edge is held. Largest values by search over the radius,
/// to 1e-6. The force acts on a free inner edge only. Caveats: deflection past t/2; t over 1/20 of the ring's width.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), art. 17.
///
/// # Example
/// A ring with an inner edge of next to nothing is a circular plate: supported, D = 10 kN·m, q = 1 kPa, a = 1 m. Its
/// largest deflection is that of the plate, (5 + ν)/(64 (1 + ν)) q a⁴/D = 6.370 mm.
/// ```
/// use coaming::plate::{AnnularPlate, PlateEdge};
/// use coaming::prelude::*;
///
/// let plate = AnnularPlate {
///     outer_radius: m(1.0),
///     inner_radius: mm(1.0),
///     thickness: mm(10.0),
///     youngs_modulus: gigapascal(109.2),
///     poissons_ratio: 0.3,
///     outer_edge: PlateEdge::Supported,
///     inner_edge: PlateEdge::Free,
///     pressure: kilopascal(1.0),
///     inner_force: None,
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.largest_deflection - mm(-6.370)).abs() < mm(0.001));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct AnnularPlate {
    /// Outer radius, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub outer_radius: Length,
    /// Inner radius, b; less than the outer one.
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
    #[possible(-0.99..=0.5)]
    #[tested(0.0..=0.5)]
    pub poissons_ratio: f64,
    /// How the outer edge is held.
    pub outer_edge: PlateEdge,
    /// How the inner edge is held.
    pub inner_edge: PlateEdge,
    /// Pressure on the ring, q: positive pushes it inward, away from the good face.
    pub pressure: Pressure,
    /// Force spread evenly around a free inner edge, positive inward; none if absent.
    pub inner_force: Option<Force>,
}

/// Outcome of [`AnnularPlate`]. Moments and stresses are those of the inner face, positive where it is in tension.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct AnnularPlateOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Deflection of the outer edge, outward positive.
    pub outer_deflection: Length,
    /// Deflection of the inner edge, outward positive.
    pub inner_deflection: Length,
    /// Deflection of the largest size, outward positive.
    pub largest_deflection: Length,
    /// Size of the largest deflection over the thickness.
    pub deflection_ratio: f64,
    /// Radial moment per length at the outer edge.
    pub outer_moment: Force,
    /// Radial moment per length at the inner edge.
    pub inner_moment: Force,
    /// Tangential moment per length at the inner edge.
    pub inner_tangential_moment: Force,
    /// Size of the largest stress, radial or tangential.
    #[shown_in("MPa")]
    pub largest_stress: Pressure,
    /// Reaction per length of the outer edge, outward positive; zero where free.
    pub outer_reaction: ForcePerLength,
    /// Reaction per length of the inner edge, outward positive; zero where free.
    pub inner_reaction: ForcePerLength,
}

/// What the four functions and the pressure's part give at a radius, for a = 1, D = 1: w, w', M_r, M_t, V.
fn parts(r: f64, nu: f64) -> [[f64; 5]; 5] {
    let l = math::ln(r);
    // w, w', w'', (∇²w)'
    let rows = [
        [1.0, 0.0, 0.0, 0.0],
        [r * r, 2.0 * r, 2.0, 0.0],
        [l, 1.0 / r, -1.0 / (r * r), 0.0],
        [r * r * l, r * (2.0 * l + 1.0), 2.0 * l + 3.0, 4.0 / r],
        [r * r * r * r / 64.0, r * r * r / 16.0, 3.0 * r * r / 16.0, 0.5 * r],
    ];
    rows.map(|[w, w1, w2, w3]| [w, w1, -(w2 + nu * w1 / r), -(w1 / r + nu * w2), -w3])
}

/// Solves four equations by elimination with the largest pivot; a row holds the coefficients and the right side.
pub(super) fn solve_four(mut rows: [[f64; 5]; 4]) -> [f64; 4] {
    for i in 0..4 {
        let mut best = i;
        for j in i..4 {
            if at(&rows, j, i).abs() > at(&rows, best, i).abs() {
                best = j;
            }
        }
        rows.swap(i, best);
        let pivot = rows.get(i).copied().unwrap_or_default();
        let head = at(&rows, i, i);
        for (j, row) in rows.iter_mut().enumerate() {
            if j == i {
                continue;
            }
            let share = row.get(i).copied().unwrap_or(0.0) / head;
            row.iter_mut().zip(pivot).for_each(|(entry, p)| *entry -= share * p);
        }
    }
    let mut solution = [0.0; 4];
    for (i, (value, row)) in solution.iter_mut().zip(&rows).enumerate() {
        let [.., right] = row;
        *value = right / at(&rows, i, i);
    }
    solution
}

fn at(rows: &[[f64; 5]; 4], i: usize, j: usize) -> f64 {
    rows.get(i).and_then(|row| row.get(j)).copied().unwrap_or(f64::NAN)
}

impl Calculation for AnnularPlate {
    const NAME: &'static str = "annular_plate";
    const SOURCE: &'static [Source] = &[Source {
        title: "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells",
        edition: "2nd ed., 1959",
        locator: "art. 17",
        standing: Standing::Memory,
    }];
    type Outcome = AnnularPlateOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, t) = (self.outer_radius.value, self.inner_radius.value, self.thickness.value);
        let (nu, q) = (self.poissons_ratio, self.pressure.value);
        if b >= a {
            return Err(self.impossible("inner_radius", "less than the outer radius"));
        }
        if self.outer_edge == PlateEdge::Free && self.inner_edge == PlateEdge::Free {
            return Err(Error::inconsistent(
                "outer_edge, inner_edge",
                "a ring that is free at both edges floats away: at least one is supported or clamped",
            ));
        }
        if self.inner_force.is_some() && self.inner_edge != PlateEdge::Free {
            return Err(Error::inconsistent(
                "inner_force, inner_edge",
                "a force on a held edge goes into its support: the inner edge is free where a force is given",
            ));
        }
        let d = flexural_rigidity(self.youngs_modulus.value, t, nu);
        // Radii by a, moments by q a², V by q a; the force by q too, so that q = 0 is no special case.
        let force = self.inner_force.map_or(0.0, |force| force.value);
        let inner = parts(b / a, nu);
        let outer = parts(1.0, nu);
        // Inward force per length at the inner edge that the shear V carries: V > 0 is a support's push outward at r = b.
        let edge_line = -force / (2.0 * PI * b) / a;
        let mut rows = [[0.0; 5]; 4];
        let conditions = [(&outer, self.outer_edge, 0.0), (&inner, self.inner_edge, edge_line)];
        for ((edge, held, line), pair) in conditions.into_iter().zip(rows.chunks_exact_mut(2)) {
            let [c1, c2, c3, c4, load] = edge;
            let (first, second) = match held {
                PlateEdge::Free => (2, 4),
                PlateEdge::Supported => (0, 2),
                PlateEdge::Clamped => (0, 1),
            };
            for (row, which) in pair.iter_mut().zip([first, second]) {
                let pick = |part: &[f64; 5]| part.get(which).copied().unwrap_or(f64::NAN);
                let given = if which == 4 { line } else { 0.0 };
                *row = [pick(c1), pick(c2), pick(c3), pick(c4), given - q * pick(load)];
            }
        }
        let c = solve_four(rows);
        let value = |part: &[[f64; 5]; 5]| {
            let [functions @ .., load] = part;
            let mut sum = load.map(|value| q * value);
            for (c, function) in c.iter().zip(functions) {
                sum.iter_mut().zip(function).for_each(|(s, f)| *s += c * f);
            }
            sum
        };
        let (scale_w, scale_m) = (a * a * a * a / d, a * a);
        let ([w_out, _, m_out, _, v_out], [w_in, _, m_in, t_in, v_in]) = (value(&outer), value(&inner));
        let (mut largest_w, mut largest_m) = (0.0_f64, 0.0_f64);
        for step in 0..=PLACES {
            let r = b / a + (1.0 - b / a) * f64::from(step) / f64::from(PLACES);
            let [w, _, m_r, m_t, _] = value(&parts(r, nu));
            if w.abs() > largest_w.abs() {
                largest_w = w;
            }
            largest_m = largest_m.max(m_r.abs()).max(m_t.abs());
        }
        let largest = scale_w * largest_w;
        check_thin(t, a - b, caveats);
        check_small(largest, t, caveats);
        let held = |edge: PlateEdge, reaction: f64| if edge == PlateEdge::Free { 0.0 } else { reaction };
        Ok(AnnularPlateOutcome {
            flexural_rigidity: si(d),
            outer_deflection: si(-scale_w * w_out),
            inner_deflection: si(-scale_w * w_in),
            largest_deflection: si(-largest),
            deflection_ratio: (largest / t).abs(),
            outer_moment: si(scale_m * m_out),
            inner_moment: si(scale_m * m_in),
            inner_tangential_moment: si(scale_m * t_in),
            largest_stress: si(face_stress(scale_m * largest_m, t)),
            outer_reaction: si(held(self.outer_edge, -a * v_out)),
            inner_reaction: si(held(self.inner_edge, a * v_in)),
        })
    }
}

/// Places looked at over the radius: a quadratic peak between two of them is missed by less than 1e-6 of its size.
const PLACES: u32 = 1000;
