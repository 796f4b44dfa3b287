//! Kernel: clamped rectangle under a rectangular patch. Unit flexural rigidity, unit pressure.
//!
//! w = Lévy solution + lift + clamped functions. The Lévy solution carries the load, clamped at the
//! pair of edges that the patch is nearer to (y = 0, b here) and supported at the other pair. The lift
//! takes its slopes off that other pair: quadratic and cubic in x times the slope along y. The clamped
//! functions then make lift + functions biharmonic. The load sits in the series alone, so that what the
//! functions have to follow is smooth.

use super::clamped_ritz::Clamped;
use super::field::Bending;
use super::legendre_bubble::{self as bubble, Parity};
use super::levy_patch::{Ends, Patch};
use super::quadrature::gauss_legendre;

/// One pair of parities. The direction with fewer functions is the inner one of the system.
#[derive(Debug, Clone)]
struct Part {
    system: Clamped,
    coefficients: Vec<f64>,
}

/// The whole solution.
#[derive(Debug, Clone)]
pub(crate) struct ClampedPatch {
    patch: Patch,
    parts: Vec<Part>,
    /// The Lévy solution runs along the other side than the caller's x.
    turned: bool,
    /// The functions along the series are the inner ones.
    along_inside: bool,
    /// The whole plate is loaded: no series, no lift, the clamped functions carry the load.
    whole: bool,
}

/// Slopes to be added at the edges x = 0 and x = a, by ξ, at the nodes along y.
struct Slopes {
    node: f64,
    weight: f64,
    even: f64,
    odd: f64,
}

impl ClampedPatch {
    /// Solves with `nx` functions of each parity along x and `ny` along y.
    pub(crate) fn new(patch: Patch, nx: usize, ny: usize) -> Self {
        if patch.is_whole() {
            return Self::whole(patch, nx, ny);
        }
        let x_gap = patch.x1.min(patch.a - patch.x2);
        let y_gap = patch.y1.min(patch.b - patch.y2);
        let turned = x_gap * patch.a < y_gap * patch.b;
        let p = Patch { ends: Ends::Clamped, ..if turned { patch.turned() } else { patch } };
        let (nx, ny) = if turned { (ny, nx) } else { (nx, ny) };
        let along_inside = nx <= ny;
        let slopes = edge_slopes(&p, ny);
        let mut parts = Vec::with_capacity(4);
        for x_parity in Parity::BOTH {
            for y_parity in Parity::BOTH {
                let g = moments(&slopes, x_parity, y_parity, ny);
                let (along, across) = ((p.a, x_parity, nx), (p.b, y_parity, ny));
                let system =
                    if along_inside { Clamped::new(along, across) } else { Clamped::new(across, along) };
                let mut coefficients = right_side(&p, x_parity, nx, &g, along_inside);
                system.solve(&mut coefficients);
                parts.push(Part { system, coefficients });
            }
        }
        Self { patch: p, parts, turned, along_inside, whole: false }
    }

    /// The whole plate loaded.
    fn whole(patch: Patch, nx: usize, ny: usize) -> Self {
        let (along, across) = ((patch.a, Parity::Even, nx), (patch.b, Parity::Even, ny));
        let along_inside = nx <= ny;
        let system = if along_inside { Clamped::new(along, across) } else { Clamped::new(across, along) };
        let coefficients = system.uniform();
        Self { patch, parts: vec![Part { system, coefficients }], turned: false, along_inside, whole: true }
    }

    /// Deflection, slopes and curvatures at (x, y) from the corner.
    pub(crate) fn at(&self, x: f64, y: f64) -> Bending {
        let (x, y) = if self.turned { (y, x) } else { (x, y) };
        let p = &self.patch;
        let mut f = if self.whole { Bending::default() } else { self.series_and_lift(x, y) };
        let (u, v) = (x - 0.5 * p.a, y - 0.5 * p.b);
        for part in &self.parts {
            f.add(&if self.along_inside {
                part.system.bending(&part.coefficients, u, v)
            } else {
                part.system.bending(&part.coefficients, v, u).turned()
            });
        }
        if self.turned { f.turned() } else { f }
    }

    /// The Lévy solution and what takes its slopes off the supported edges.
    fn series_and_lift(&self, x: f64, y: f64) -> Bending {
        let p = &self.patch;
        let mut f = p.along_x(x, y).bending();
        let (low, high) = (p.along_x(0.0, y), p.along_x(p.a, y));
        let (s, t) = (0.5 * p.a, 2.0 * x / p.a - 1.0);
        for (parity, sign) in [(Parity::Even, -1.0), (Parity::Odd, 1.0)] {
            let [h0, h1, h2] = bubble::lift(parity, t);
            let g = -0.5 * s * (high.wx + sign * low.wx);
            let g1 = -0.5 * s * (high.wxy + sign * low.wxy);
            let g2 = -0.5 * s * (high.wxyy + sign * low.wxyy);
            f.w += h0 * g;
            f.wx += h1 * g / s;
            f.wxx += h2 * g / (s * s);
            f.wy += h0 * g1;
            f.wxy += h1 * g1 / s;
            f.wyy += h0 * g2;
        }
        f
    }
}

/// Slopes of the Lévy solution, turned round, split by parity of the lift.
fn edge_slopes(p: &Patch, ny: usize) -> Vec<Slopes> {
    let s = 0.5 * p.a;
    gauss_legendre(2 * ny + 8)
        .into_iter()
        .map(|(node, weight)| {
            let y = 0.5 * p.b * (1.0 + node);
            let (low, high) = (p.along_x(0.0, y).wx, p.along_x(p.a, y).wx);
            Slopes { node, weight, even: -0.5 * s * (high - low), odd: -0.5 * s * (high + low) }
        })
        .collect()
}

/// ∫ g φ_j'' and ∫ g φ_j'''' for each function along y, where φ_j'' is a scaled P_j.
fn moments(slopes: &[Slopes], x_parity: Parity, y_parity: Parity, ny: usize) -> Vec<[f64; 2]> {
    let mut sums = vec![[0.0; 2]; ny];
    for s in slopes {
        let g = s.weight * if x_parity == Parity::Even { s.even } else { s.odd };
        bubble::for_each_legendre(y_parity, s.node, &mut sums, |sum, p, p2| {
            let [first, second] = sum;
            *first += g * p;
            *second += g * p2;
        });
    }
    for (j, sum) in sums.iter_mut().enumerate() {
        let norm = bubble::norm(y_parity.degree(j));
        let [first, second] = sum;
        *first *= norm;
        *second *= norm;
    }
    sums
}

/// Minus the energy product of the lift with each clamped function, inner ones first.
fn right_side(p: &Patch, x_parity: Parity, nx: usize, g: &[[f64; 2]], along_inside: bool) -> Vec<f64> {
    let (sx, sy) = (4.0 / (p.a * p.a), 4.0 / (p.b * p.b));
    let (curved, [first, second]) = bubble::lift_products(x_parity);
    let entry = |i: usize, [g2, g4]: [f64; 2]| match i {
        0 => -(2.0 * sx * sy * curved * g2 + sy * sy * first * g4),
        1 => -(sy * sy * second * g4),
        _ => 0.0,
    };
    if along_inside {
        g.iter().flat_map(|gj| (0..nx).map(move |i| entry(i, *gj))).collect()
    } else {
        (0..nx).flat_map(|i| g.iter().map(move |gj| entry(i, *gj))).collect()
    }
}
