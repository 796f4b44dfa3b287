//! Kernel: large deflection of a circle under uniform pressure (von Kármán), by Ritz with u and w.
//!
//! Scales: lengths by the radius a, w by t, u by t²/a, energies by 2π D t²/a². With x = r/a and s = x² the energy is
//! ∫ (½ (k_r² + k_t² + 2 ν k_r k_t) + 6 (e_r² + e_t² + 2 ν e_r e_t) − Q w) ds/2, Q = q a⁴/(D t), k_r = −w'', k_t = −w'/x,
//! e_r = u' + ½ w'², e_t = u/x. Both functions are smooth in s: w = Σ c (1 − s)^p P(2 s − 1), u = x Σ d (1 − s)^h P(2 s − 1),
//! p = 1 supported, 2 clamped, h = 1 where the edge is held in the plane.

use super::band::Band;
use super::quadrature::gauss_legendre;

/// Functions for each of w and u.
const COUNT: usize = 18;

/// What the plate does at one radius, in the scales above.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Here {
    pub deflection: f64,
    /// k_r and k_t.
    pub bend: [f64; 2],
    /// e_r and e_t.
    pub stretch: [f64; 2],
    /// w'/x.
    slope_over_x: f64,
}

/// The solved plate.
#[derive(Debug, Clone)]
pub(crate) struct Circle {
    clamped: bool,
    held: bool,
    unknowns: Vec<f64>,
    pub settled: bool,
}

/// P_k(2 s − 1) times (1 − s)^power with the first two derivatives by s.
fn functions(s: f64, power: u32, count: usize) -> Vec<[f64; 3]> {
    let t = 2.0 * s - 1.0;
    let mut p: Vec<[f64; 3]> = vec![[1.0, 0.0, 0.0], [t, 1.0, 0.0]];
    for l in 1..count {
        let (Some([b, b1, b2]), Some([h, h1, _])) = (p.get(l - 1).copied(), p.get(l).copied()) else { break };
        let f = (2 * l + 1) as f64;
        // P' and P'' follow from P'_(l+1) = P'_(l-1) + (2 l + 1) P_l, which stays exact at the ends.
        p.push([(f * t * h - l as f64 * b) / (l + 1) as f64, b1 + f * h, b2 + f * h1]);
    }
    p.truncate(count);
    let g = 1.0 - s;
    p.into_iter()
        .map(|[v, d1, d2]| {
            // d/ds is twice d/dt.
            let (d1, d2) = (2.0 * d1, 4.0 * d2);
            match power {
                0 => [v, d1, d2],
                1 => [g * v, g * d1 - v, g * d2 - 2.0 * d1],
                _ => [g * g * v, g * g * d1 - 2.0 * g * v, g * g * d2 - 4.0 * g * d1 + 2.0 * v],
            }
        })
        .collect()
}

/// The functions at one radius.
struct Point {
    s: f64,
    weight: f64,
    /// w, w'/x, w''.
    bending: Vec<[f64; 3]>,
    /// u', u/x.
    drawing: Vec<[f64; 2]>,
}

impl Point {
    fn new(s: f64, weight: f64, clamped: bool, held: bool) -> Self {
        let bending = functions(s, if clamped { 2 } else { 1 }, COUNT)
            .into_iter()
            .map(|[v, d1, d2]| [v, 2.0 * d1, 2.0 * d1 + 4.0 * s * d2])
            .collect();
        let drawing = functions(s, u32::from(held), COUNT)
            .into_iter()
            .map(|[v, d1, _]| [v + 2.0 * s * d1, v])
            .collect();
        Self { s, weight, bending, drawing }
    }

    fn state(&self, unknowns: &[f64]) -> Here {
        let (bending, drawing) = unknowns.split_at(COUNT.min(unknowns.len()));
        let mut w = [0.0; 3];
        for (c, row) in bending.iter().zip(&self.bending) {
            w.iter_mut().zip(row).for_each(|(sum, value)| *sum += c * value);
        }
        let mut u = [0.0; 2];
        for (c, row) in drawing.iter().zip(&self.drawing) {
            u.iter_mut().zip(row).for_each(|(sum, value)| *sum += c * value);
        }
        let ([deflection, slope_over_x, second], [draw, hoop]) = (w, u);
        // w'²/2 = s (w'/x)²/2.
        let stretch = [draw + 0.5 * self.s * slope_over_x * slope_over_x, hoop];
        Here { deflection, bend: [-second, -slope_over_x], stretch, slope_over_x }
    }
}

impl Circle {
    /// The plate under Q = q a⁴/(D t), positive.
    pub(crate) fn solve(load: f64, poissons_ratio: f64, clamped: bool, held: bool) -> Self {
        let points: Vec<Point> = gauss_legendre(2 * COUNT + 8)
            .into_iter()
            .map(|(t, weight)| Point::new(0.5 * (1.0 + t), 0.25 * weight, clamped, held))
            .collect();
        let mut circle = Self { clamped, held, unknowns: vec![0.0; 2 * COUNT], settled: load == 0.0 };
        // From a load at which the plate bends more than it stretches, by doubling: Newton's rule then starts close.
        let mut part = load;
        let mut doublings = 0;
        while part > 8.0 && doublings < 60 {
            part *= 0.5;
            doublings += 1;
        }
        for step in 0..=doublings {
            if step > 0 {
                part *= 2.0;
            }
            circle.settled = load == 0.0 || newton(&points, &mut circle.unknowns, part, poissons_ratio);
            if !circle.settled {
                break;
            }
        }
        circle
    }

    /// What the plate does at x = r/a.
    pub(crate) fn at(&self, x: f64) -> Here {
        Point::new(x * x, 1.0, self.clamped, self.held).state(&self.unknowns)
    }
}

/// Newton's rule for one load; true where it settles.
fn newton(points: &[Point], unknowns: &mut [f64], load: f64, nu: f64) -> bool {
    let order = unknowns.len();
    for _ in 0..60 {
        let mut tangent = Band::zero(order, order.saturating_sub(1));
        let mut residual = vec![0.0; order];
        for p in points {
            add(p, unknowns, load, nu, &mut tangent, &mut residual);
        }
        tangent.factor();
        tangent.solve(&mut residual);
        let change = residual.iter().fold(0.0, |m: f64, r| m.max(r.abs()));
        if !change.is_finite() {
            return false;
        }
        unknowns.iter_mut().zip(&residual).for_each(|(u, r)| *u -= r);
        let size = unknowns.iter().fold(0.0, |m: f64, u| m.max(u.abs()));
        if change <= 1e-10 * size {
            return true;
        }
    }
    false
}

/// Adds one Gauss point to residual and tangent.
fn add(p: &Point, unknowns: &[f64], load: f64, nu: f64, tangent: &mut Band, residual: &mut [f64]) {
    let here = p.state(unknowns);
    let [er, et] = here.stretch;
    let (nr, nt) = (12.0 * (er + nu * et), 12.0 * (et + nu * er));
    let [kr, kt] = here.bend;
    let (mr, mt) = (kr + nu * kt, kt + nu * kr);
    // First variations of k_r, k_t, e_r, e_t for each unknown.
    let rows: Vec<[f64; 4]> = p
        .bending
        .iter()
        .map(|[_, over, second]| [-second, -over, p.s * here.slope_over_x * over, 0.0])
        .chain(p.drawing.iter().map(|[draw, hoop]| [0.0, 0.0, *draw, *hoop]))
        .collect();
    for (i, [a, b, c, d]) in rows.iter().enumerate() {
        let work = p.bending.get(i).map_or(0.0, |[w, ..]| load * w);
        if let Some(entry) = residual.get_mut(i) {
            *entry += p.weight * (mr * a + mt * b + nr * c + nt * d - work);
        }
        let moments = (a + nu * b, b + nu * a);
        let forces = (12.0 * (c + nu * d), 12.0 * (d + nu * c));
        for (j, [a2, b2, c2, d2]) in rows.iter().take(i + 1).enumerate() {
            let mut value = moments.0 * a2 + moments.1 * b2 + forces.0 * c2 + forces.1 * d2;
            if let (Some([_, f, _]), Some([_, g, _])) = (p.bending.get(i), p.bending.get(j)) {
                value += nr * p.s * f * g;
            }
            tangent.add(i, j, p.weight * value);
        }
    }
}
