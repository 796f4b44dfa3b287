//! Ritz kernel: clamped rectangle. Plain numbers: unit flexural rigidity, unit pressure.
//!
//! w(ξ, η) = Σ c_ij φ_i(ξ) φ_j(η) on −1..1 by −1..1; the energy ½∫∫(∇²w)² gives
//! (2/a)⁴ I⊗M + 2 (2/a)²(2/b)² B⊗B + (2/b)⁴ M⊗I, banded in these functions, one system for each pair
//! of parities.

use super::band::{Band, dot};
use super::field::{Bending, Field};
use super::legendre_bubble::{self as bubble, Parity};

/// Places looked at along half a line before Newton's rule.
const PEAK_PLACES: u32 = 24;

/// Entries s = 0, 1, 2 right of the diagonal, row by row, of a symmetric matrix along one side.
pub(crate) type Rows = Vec<[f64; 3]>;

/// The three matrices of a side: ∫ φ'' φ'' (the identity), ∫ φ' φ', ∫ φ φ.
pub(crate) fn side_matrices(parity: Parity, count: usize) -> [Rows; 3] {
    let slopes = |i| {
        let [same, next] = bubble::slopes(parity, i);
        [same, next, 0.0]
    };
    [
        vec![[1.0, 0.0, 0.0]; count],
        (0..count).map(slopes).collect(),
        (0..count).map(|i| bubble::products(parity, i)).collect(),
    ]
}

/// Adds factor × outer ⊗ inner to the lower half.
pub(crate) fn add_product(matrix: &mut Band, factor: f64, outer: &Rows, inner: &Rows) {
    let n = inner.len();
    for (o, row_o) in outer.iter().enumerate() {
        for (s, value_o) in row_o.iter().enumerate() {
            if *value_o == 0.0 || o + s >= outer.len() {
                continue;
            }
            for (i, row_i) in inner.iter().enumerate() {
                for (t, value_i) in row_i.iter().enumerate() {
                    if *value_i == 0.0 || i + t >= n {
                        continue;
                    }
                    let value = factor * value_o * value_i;
                    matrix.add((o + s) * n + i + t, o * n + i, value);
                    if s > 0 && t > 0 {
                        matrix.add((o + s) * n + i, o * n + i + t, value);
                    }
                }
            }
        }
    }
}

/// Adds the stiffness, with p = (2/a)² of the inner side and q = (2/b)² of the outer one.
pub(crate) fn add_stiffness(
    matrix: &mut Band,
    (p, inner_parity, inner_count): (f64, Parity, usize),
    (q, outer_parity, outer_count): (f64, Parity, usize),
) {
    let [bend_i, slope_i, value_i] = side_matrices(inner_parity, inner_count);
    let [bend_o, slope_o, value_o] = side_matrices(outer_parity, outer_count);
    add_product(matrix, p * p, &value_o, &bend_i);
    add_product(matrix, 2.0 * p * q, &slope_o, &slope_i);
    add_product(matrix, q * q, &bend_o, &value_i);
}

/// One system: functions of one parity along each side, the longer side outermost.
#[derive(Debug, Clone)]
pub(crate) struct Clamped {
    pub inner: f64,
    pub outer: f64,
    pub inner_parity: Parity,
    pub outer_parity: Parity,
    pub inner_count: usize,
    pub outer_count: usize,
    matrix: Band,
}

impl Clamped {
    /// Factored stiffness for sides `inner` (the shorter) and `outer`.
    pub(crate) fn new(
        (inner, inner_parity, inner_count): (f64, Parity, usize),
        (outer, outer_parity, outer_count): (f64, Parity, usize),
    ) -> Self {
        let (p, q) = (4.0 / (inner * inner), 4.0 / (outer * outer));
        let mut matrix = Band::zero(inner_count * outer_count, 2 * inner_count + 1);
        add_stiffness(&mut matrix, (p, inner_parity, inner_count), (q, outer_parity, outer_count));
        matrix.factor();
        Self { inner, outer, inner_parity, outer_parity, inner_count, outer_count, matrix }
    }

    /// Coefficients under unit pressure all over (even functions only).
    pub(crate) fn uniform(&self) -> Vec<f64> {
        let mut c = vec![0.0; self.inner_count * self.outer_count];
        if let Some(first) = c.first_mut() {
            *first = bubble::first_integral() * bubble::first_integral();
        }
        self.matrix.solve(&mut c);
        c
    }

    /// Solves for a given right-hand side, in place.
    pub(crate) fn solve(&self, right: &mut [f64]) {
        self.matrix.solve(right);
    }

    /// Coefficients of the outer functions along the line ξ = t, of the value or a derivative by ξ.
    pub(crate) fn line(&self, coefficients: &[f64], t: f64, pick: fn(&bubble::Values) -> f64) -> Vec<f64> {
        let along: Vec<f64> = bubble::at(self.inner_parity, self.inner_count, t).iter().map(pick).collect();
        coefficients.chunks_exact(self.inner_count).map(|row| dot(row, &along)).collect()
    }

    /// Value of the largest size along such a line, ends included.
    pub(crate) fn peak(&self, line: &[f64]) -> f64 {
        let at = |t: f64| {
            let mut sums = [0.0; 3];
            for (c, v) in line.iter().zip(bubble::at(self.outer_parity, self.outer_count, t)) {
                let [w, w1, w2] = &mut sums;
                *w += c * v.value;
                *w1 += c * v.first;
                *w2 += c * v.second;
            }
            sums
        };
        // The functions are even or odd: half the line is enough. Places crowd towards the end, as the
        // waves of a long plate do.
        let (mut best, mut place) = (at(0.0), 0.0);
        for step in 1..PEAK_PLACES {
            let u = 1.0 - f64::from(step) / f64::from(PEAK_PLACES);
            let t = 1.0 - u * u;
            let here = at(t);
            if here[0].abs() > best[0].abs() {
                (best, place) = (here, t);
            }
        }
        // Newton on the slope from there, kept only while it gains.
        for _ in 0..6 {
            let [w, w1, w2] = best;
            let t = place - w1 / w2;
            if !(0.0..=1.0).contains(&t) {
                break;
            }
            let here = at(t);
            if here[0].abs() <= w.abs() {
                break;
            }
            (best, place) = (here, t);
        }
        best[0]
    }

    /// Deflection and derivatives at (x, y) from the centre, x along `inner`.
    pub(crate) fn field(&self, coefficients: &[f64], x: f64, y: f64) -> Field {
        let (sx, sy) = (2.0 / self.inner, 2.0 / self.outer);
        let along = bubble::at(self.inner_parity, self.inner_count, x * sx);
        let across = bubble::at(self.outer_parity, self.outer_count, y * sy);
        let mut f = Field::default();
        for (row, o) in coefficients.chunks_exact(self.inner_count).zip(&across) {
            let [mut w, mut w1, mut w2, mut w3] = [0.0; 4];
            for (c, i) in row.iter().zip(&along) {
                w += c * i.value;
                w1 += c * i.first;
                w2 += c * i.second;
                w3 += c * i.third;
            }
            f.w += w * o.value;
            f.wx += w1 * o.value;
            f.wy += w * o.first;
            f.wxx += w2 * o.value;
            f.wxy += w1 * o.first;
            f.wyy += w * o.second;
            f.wxxx += w3 * o.value;
            f.wxxy += w2 * o.first;
            f.wxyy += w1 * o.second;
            f.wyyy += w * o.third;
        }
        f.wx *= sx;
        f.wy *= sy;
        f.wxx *= sx * sx;
        f.wxy *= sx * sy;
        f.wyy *= sy * sy;
        f.wxxx *= sx * sx * sx;
        f.wxxy *= sx * sx * sy;
        f.wxyy *= sx * sy * sy;
        f.wyyy *= sy * sy * sy;
        f
    }

    /// The same without the third derivatives.
    pub(crate) fn bending(&self, coefficients: &[f64], x: f64, y: f64) -> Bending {
        let (sx, sy) = (2.0 / self.inner, 2.0 / self.outer);
        let along = bubble::at(self.inner_parity, self.inner_count, x * sx);
        let across = bubble::at(self.outer_parity, self.outer_count, y * sy);
        let mut f = Bending::default();
        for (row, o) in coefficients.chunks_exact(self.inner_count).zip(&across) {
            let [mut w, mut w1, mut w2] = [0.0; 3];
            for (c, i) in row.iter().zip(&along) {
                w += c * i.value;
                w1 += c * i.first;
                w2 += c * i.second;
            }
            f.w += w * o.value;
            f.wx += w1 * o.value;
            f.wy += w * o.first;
            f.wxx += w2 * o.value;
            f.wxy += w1 * o.first;
            f.wyy += w * o.second;
        }
        f.wx *= sx;
        f.wy *= sy;
        f.wxx *= sx * sx;
        f.wxy *= sx * sy;
        f.wyy *= sy * sy;
        f
    }
}
