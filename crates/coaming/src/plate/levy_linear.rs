//! Kernel: Lévy's series for a rectangle 1 × b under a pressure that varies linearly, D = 1; the edges x = 0 and x = 1 are
//! supported, y = 0 and y = b held in any way.
//!
//! w = Σ (4/k⁵) (q(y) + h(y)) sin k x, k = m π, h = (A + B s) e^(−s) + (C + E r) e^(−r), s = k y, r = k (b − y). The load
//! is q(y) (odd m) or q (1 − 2 x) (even m). On an edge the terms fall only as powers of 1/m: there the solution of the
//! half-plane is summed in closed form, and what is left falls exponentially.

use super::PlateEdge;
use super::annular_plate::solve_four;
use super::field::Field;
use crate::math;
use core::f64::consts::PI;

/// One part of the load.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Load {
    /// Odd terms: the same along x. Even terms: times 1 − 2 x.
    pub odd: bool,
    /// q at y = 0 and its slope.
    pub start: f64,
    pub slope: f64,
}

/// The plate.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Levy {
    pub b: f64,
    pub nu: f64,
    pub ends: [PlateEdge; 2],
    pub load: Load,
}

/// Σ ± m^(−s) over odd m with alternating signs, for s = 2 to 6 (Dirichlet's beta function; β(2) is Catalan's constant).
fn beta(s: usize) -> f64 {
    match s {
        2 => 0.915_965_594_177_219,
        3 => PI * PI * PI / 32.0,
        4 => 0.988_944_551_741_105_3,
        5 => 5.0 * PI * PI * PI * PI * PI / 1536.0,
        _ => 0.998_685_222_218_438_1,
    }
}

/// Σ m^(−s) over all m, for s = 2 to 4 (Riemann's zeta function).
fn zeta(s: usize) -> f64 {
    match s {
        2 => PI * PI / 6.0,
        3 => 1.202_056_903_159_594_3,
        _ => PI * PI * PI * PI / 90.0,
    }
}

/// x^n for a small whole n.
fn power(x: f64, n: usize) -> f64 {
    (0..n).fold(1.0, |product, _| product * x)
}

/// Where along x a sum is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Along {
    /// sin k x in the middle.
    Middle,
    /// cos k x at x = 0.
    Start,
}

/// A half-plane's edge: derivatives 0 to 3 by k y of the solution, for q = 1 and for a slope of 1.
type Edge = [[f64; 4]; 2];

/// The two conditions on derivatives 0 to 3 of h at an edge, and the right sides for q and its slope over k.
fn conditions(end: PlateEdge, nu: f64, q: f64, slope: f64) -> [([f64; 4], f64); 2] {
    match end {
        PlateEdge::Supported => [([1.0, 0.0, 0.0, 0.0], -q), ([0.0, 0.0, 1.0, 0.0], 0.0)],
        PlateEdge::Clamped => [([1.0, 0.0, 0.0, 0.0], -q), ([0.0, 1.0, 0.0, 0.0], -slope)],
        PlateEdge::Free => [([-nu, 0.0, 1.0, 0.0], nu * q), ([0.0, nu - 2.0, 0.0, 1.0], (2.0 - nu) * slope)],
    }
}

/// Derivatives 0 to 3 by k y of e^(−s) and s e^(−s) (near) or of e^(−r) and r e^(−r) (far) at a distance d.
fn derivatives(d: f64, near: bool) -> [[f64; 4]; 2] {
    let e = math::exp(-d);
    let sign = if near { -1.0 } else { 1.0 };
    let mut rows = [[0.0; 4]; 2];
    let [plain, times] = &mut rows;
    let mut s = 1.0;
    for (n, (p, t)) in plain.iter_mut().zip(times.iter_mut()).enumerate() {
        *p = s * e;
        *t = s * (d - n as f64) * e;
        s *= sign;
    }
    rows
}

fn dot(a: &[f64; 4], b: &[f64; 4]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

impl Levy {
    /// True where there is no load.
    pub(crate) fn is_idle(&self) -> bool {
        self.load.start == 0.0 && self.load.slope == 0.0
    }

    /// A, B, C, E for one k.
    fn constants(&self, k: f64) -> [f64; 4] {
        let q = |y: f64| self.load.start + self.load.slope * y;
        let slope = self.load.slope / k;
        let far = k * self.b;
        let [first, second] = self.ends;
        let (at_0, at_b) =
            (conditions(first, self.nu, q(0.0), slope), conditions(second, self.nu, q(self.b), slope));
        let row = |(condition, right): ([f64; 4], f64), near: f64, far: f64| {
            let ([a, b], [c, e]) = (derivatives(near, true), derivatives(far, false));
            [dot(&condition, &a), dot(&condition, &b), dot(&condition, &c), dot(&condition, &e), right]
        };
        let ([u, v], [x, y]) = (at_0, at_b);
        solve_four([row(u, 0.0, far), row(v, 0.0, far), row(x, far, 0.0), row(y, far, 0.0)])
    }

    /// Derivatives 0 to 3 by k y of q + h at y.
    fn at_term(&self, k: f64, [a, b, c, e]: [f64; 4], y: f64) -> [f64; 4] {
        let ([n0, n1], [f0, f1]) = (derivatives(k * y, true), derivatives(k * (self.b - y), false));
        let particular = [self.load.start + self.load.slope * y, self.load.slope / k, 0.0, 0.0];
        let mut sum = particular;
        for (i, value) in sum.iter_mut().enumerate() {
            let part = |row: &[f64; 4]| row.get(i).copied().unwrap_or(f64::NAN);
            *value += a * part(&n0) + b * part(&n1) + c * part(&f0) + e * part(&f1);
        }
        sum
    }

    /// The edge of a half-plane that begins at y = 0 (`near`) or ends at y = b.
    fn half_plane(&self, near: bool) -> Edge {
        let [first, second] = self.ends;
        let end = if near { first } else { second };
        let [plain, times] = derivatives(0.0, near);
        [(1.0, 0.0), (0.0, 1.0)].map(|(q, slope)| {
            let [(c1, r1), (c2, r2)] = conditions(end, self.nu, q, slope);
            let (a11, a12, a21, a22) =
                (dot(&c1, &plain), dot(&c1, &times), dot(&c2, &plain), dot(&c2, &times));
            let determinant = a11 * a22 - a12 * a21;
            let (a, b) = ((r1 * a22 - r2 * a12) / determinant, (a11 * r2 - a21 * r1) / determinant);
            let mut edge = [q, slope, 0.0, 0.0];
            for (value, (p, t)) in edge.iter_mut().zip(plain.iter().zip(&times)) {
                *value += a * p + b * t;
            }
            edge
        })
    }

    /// Σ (4/k^s) times sin k x or cos k x, in closed form.
    fn closed(&self, s: usize, along: Along) -> f64 {
        let sum = match (along, self.load.odd) {
            (Along::Middle, true) => beta(s),
            // sin k/2 is zero for even m.
            (Along::Middle, false) => 0.0,
            (Along::Start, true) => zeta(s) * (1.0 - 1.0 / power(2.0, s)),
            (Along::Start, false) => zeta(s) / power(2.0, s),
        };
        4.0 * sum / power(PI, s)
    }

    /// Terms m with their sign at the place.
    fn terms(&self, along: Along) -> impl Iterator<Item = (f64, f64)> {
        let first = if self.load.odd { 1_u32 } else { 2 };
        let odd = self.load.odd;
        (0..4000_u32).map(move |i| {
            let m = first + 2 * i;
            let sign = match along {
                Along::Start => 1.0,
                Along::Middle if !odd => 0.0,
                Along::Middle if i % 2 == 0 => 1.0,
                Along::Middle => -1.0,
            };
            (f64::from(m) * PI, sign)
        })
    }

    /// Σ (4/k^(s)) d_n at y = 0, y = b or, where `y` is neither, inside, at the place along x; s = 5 − n − `across`, where
    /// `across` counts the derivatives by x.
    pub(crate) fn sum(&self, y: f64, n: usize, across: usize, along: Along) -> f64 {
        let s = 5 - n - across;
        let part = |row: &[f64; 4]| row.get(n).copied().unwrap_or(f64::NAN);
        let q = self.load.start + self.load.slope * y;
        let edge = if y <= 0.0 {
            Some(self.half_plane(true))
        } else if y >= self.b {
            Some(self.half_plane(false))
        } else {
            None
        };
        // What does not fall exponentially: on an edge the half-plane's solution, inside the particular one.
        let [by_q, by_slope] = edge.unwrap_or([[1.0, 0.0, 0.0, 0.0], [0.0, 1.0, 0.0, 0.0]]);
        let (by_q, by_slope) = (part(&by_q), part(&by_slope));
        let mut sum = 0.0;
        if by_q != 0.0 {
            sum += by_q * q * self.closed(s, along);
        }
        if by_slope != 0.0 {
            sum += by_slope * self.load.slope * self.closed(s + 1, along);
        }
        let reach = if edge.is_some() { self.b } else { y.min(self.b - y) };
        for (k, sign) in self.terms(along) {
            let full = part(&self.at_term(k, self.constants(k), y));
            let rest = full - by_q * q - by_slope * self.load.slope / k;
            sum += sign * 4.0 / power(k, s) * rest;
            if k * reach > 45.0 {
                break;
            }
        }
        sum
    }

    /// The constants of the first terms, for values anywhere.
    pub(crate) fn tabulated(self, count: usize) -> Tabulated {
        let terms = self.terms(Along::Start).take(count).map(|(k, _)| (k, self.constants(k))).collect();
        Tabulated { plate: self, terms }
    }
}

/// A plate with the constants of its first terms.
#[derive(Debug, Clone)]
pub(crate) struct Tabulated {
    plate: Levy,
    terms: Vec<(f64, [f64; 4])>,
}

impl Tabulated {
    /// Adds what the plate does at x, y: the particular part as the polynomial of a beam, the rest term by term.
    pub(crate) fn add(&self, x: f64, y: f64, field: &mut Field) {
        let Levy { load, .. } = self.plate;
        let (q, slope) = (load.start + load.slope * y, load.slope);
        let [v, v1, v2, v3] = if load.odd {
            // Under 1.
            [
                x * (1.0 + x * x * (x - 2.0)) / 24.0,
                (1.0 + x * x * (4.0 * x - 6.0)) / 24.0,
                x * (x - 1.0) / 2.0,
                x - 0.5,
            ]
        } else {
            // Under 1 − 2 x.
            let (x2, x3) = (x * x, x * x * x);
            [
                x / 360.0 - x3 / 36.0 + x2 * x2 / 24.0 - x2 * x3 / 60.0,
                1.0 / 360.0 - x2 / 12.0 + x3 / 6.0 - x2 * x2 / 12.0,
                -x / 6.0 + x2 / 2.0 - x3 / 3.0,
                -1.0 / 6.0 + x - x2,
            ]
        };
        field.w += q * v;
        field.wx += q * v1;
        field.wxx += q * v2;
        field.wxxx += q * v3;
        field.wy += slope * v;
        field.wxy += slope * v1;
        for (k, [a, b, c, e]) in &self.terms {
            let ([n0, n1], [f0, f1]) = (derivatives(k * y, true), derivatives(k * (self.plate.b - y), false));
            let mut h = [0.0; 4];
            for (value, (((p0, p1), p2), p3)) in h.iter_mut().zip(n0.iter().zip(&n1).zip(&f0).zip(&f1)) {
                *value = a * p0 + b * p1 + c * p2 + e * p3;
            }
            let [h0, h1, h2, h3] = h;
            let (s, co) = (math::sin(k * x), math::cos(k * x));
            let k2 = 4.0 / (k * k);
            let (k3, k4, k5) = (k2 / k, k2 / (k * k), k2 / (k * k * k));
            field.w += k5 * h0 * s;
            field.wx += k4 * h0 * co;
            field.wy += k4 * h1 * s;
            field.wxx -= k3 * h0 * s;
            field.wxy += k3 * h1 * co;
            field.wyy += k3 * h2 * s;
            field.wxxx -= k2 * h0 * co;
            field.wyyy += k2 * h3 * s;
        }
    }
}
