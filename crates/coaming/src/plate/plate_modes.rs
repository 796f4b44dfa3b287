//! Kernel: natural frequencies of a rectangle with any supported, clamped or free edges, by Ritz. Plain numbers: unit
//! flexural rigidity and unit mass per area.
//!
//! Along each side the functions are (1 + t)^p (1 − t)^q P_k, with p and q 0, 1, 2 for a free, supported, clamped end and
//! P_k the Jacobi polynomials that make them orthonormal: the mass matrix is the identity.

use super::quadrature::gauss_legendre;
use super::symmetric::{self, Rows};

/// How one end of a side is held: the order to which the functions vanish there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum End {
    Free,
    Supported,
    Clamped,
}

impl End {
    fn order(self) -> u8 {
        match self {
            Self::Free => 0,
            Self::Supported => 1,
            Self::Clamped => 2,
        }
    }
}

/// Matrices along one side of −1..1: ∫ f'' f'', ∫ f' f', ∫ f f''.
struct Side {
    bend: Rows,
    slope: Rows,
    mixed: Rows,
    count: usize,
}

impl Side {
    fn new((low, high): (End, End), count: usize) -> Self {
        let zero = || vec![vec![0.0; count]; count];
        let mut side = Self { bend: zero(), slope: zero(), mixed: zero(), count };
        // The products have degree 2 (count + 3) at most.
        for (t, weight) in gauss_legendre(count + 4) {
            let functions = functions(low, high, count, t);
            for (i, [_, d1, d2]) in functions.iter().enumerate() {
                let rows = (side.bend.get_mut(i), side.slope.get_mut(i));
                let (Some(bend), Some(slope)) = rows else { continue };
                for ((b, s), [_, e1, e2]) in bend.iter_mut().zip(slope).zip(&functions) {
                    *b += weight * d2 * e2;
                    *s += weight * d1 * e1;
                }
                let [v, _, _] = functions.get(i).copied().unwrap_or_default();
                if let Some(mixed) = side.mixed.get_mut(i) {
                    for (m, [_, _, e2]) in mixed.iter_mut().zip(&functions) {
                        *m += weight * v * e2;
                    }
                }
            }
        }
        side
    }
}

/// Value and two derivatives of the orthonormal functions at t.
pub(crate) fn functions(low: End, high: End, count: usize, t: f64) -> Vec<[f64; 3]> {
    // Jacobi polynomials P_k^(alpha, beta), weight (1 − t)^alpha (1 + t)^beta = the square of the front factor.
    let (alpha, beta) = (2.0 * f64::from(high.order()), 2.0 * f64::from(low.order()));
    let front = product(power(1.0, t, low.order()), power(-1.0, t, high.order()));
    let mut out = Vec::with_capacity(count);
    let mut before = [0.0; 3];
    let mut here = [1.0, 0.0, 0.0];
    for k in 0..count {
        let n = k as f64;
        let s = 2.0 * n + alpha + beta;
        let scale = 1.0 / norm_squared(k, alpha, beta).sqrt();
        let [v, d1, d2] = product(front, here);
        out.push([scale * v, scale * d1, scale * d2]);
        // 2 (n+1)(n+a+b+1)(s) P_(n+1) = (s+1)((s+2) s t + a² − b²) P_n − 2 (n+a)(n+b)(s+2) P_(n−1)
        let (c, slope, level, back) = if k == 0 {
            (2.0, alpha + beta + 2.0, alpha - beta, 0.0)
        } else {
            (
                2.0 * (n + 1.0) * (n + alpha + beta + 1.0) * s,
                (s + 1.0) * (s + 2.0) * s,
                (s + 1.0) * (alpha * alpha - beta * beta),
                2.0 * (n + alpha) * (n + beta) * (s + 2.0),
            )
        };
        let [p, p1, p2] = here;
        let [b, b1, b2] = before;
        let line = slope * t + level;
        before = here;
        here = [
            (line * p - back * b) / c,
            (line * p1 + slope * p - back * b1) / c,
            (line * p2 + 2.0 * slope * p1 - back * b2) / c,
        ];
    }
    out
}

/// ∫ (1 − t)^a (1 + t)^b P_k² over −1..1, a and b even whole numbers.
fn norm_squared(k: usize, alpha: f64, beta: f64) -> f64 {
    let n = k as f64;
    // 2^(a+b+1)/(2n+a+b+1) Γ(n+a+1) Γ(n+b+1)/(n! Γ(n+a+b+1)): the ratio of the Γs is a product of b factors each.
    let mut ratio = 1.0;
    let mut i = 1.0;
    while i <= beta {
        ratio *= (n + i) / (n + alpha + i);
        i += 1.0;
    }
    let mut two = 2.0;
    let mut j = 0.0;
    while j < alpha + beta {
        two *= 2.0;
        j += 1.0;
    }
    two / (2.0 * n + alpha + beta + 1.0) * ratio
}

/// (1 + sign t)^order and two derivatives.
fn power(sign: f64, t: f64, order: u8) -> [f64; 3] {
    let u = 1.0 + sign * t;
    match order {
        0 => [1.0, 0.0, 0.0],
        1 => [u, sign, 0.0],
        _ => [u * u, 2.0 * sign * u, 2.0],
    }
}

/// Product of two functions, with two derivatives.
fn product([f, f1, f2]: [f64; 3], [g, g1, g2]: [f64; 3]) -> [f64; 3] {
    [f * g, f1 * g + f * g1, f2 * g + 2.0 * f1 * g1 + f * g2]
}

/// The plate's free motions: a free plate has three, one held at a single supported edge has one.
pub(crate) fn free_motions(x_ends: (End, End), y_ends: (End, End)) -> usize {
    let ends = [x_ends.0, x_ends.1, y_ends.0, y_ends.1];
    let held = ends.iter().filter(|end| **end != End::Free).count();
    match held {
        0 => 3,
        1 if !ends.contains(&End::Clamped) => 1,
        _ => 0,
    }
}

/// ω a² √(m/D), a the length of the first side (1) and `width` that of the second: the lowest elastic modes, rising.
pub(crate) fn parameters(
    x_ends: (End, End),
    (width, y_ends): (f64, (End, End)),
    poissons_ratio: f64,
    wanted: usize,
) -> Vec<f64> {
    // More functions along the longer side: the six lowest modes lie along it.
    let root = width.max(1.0 / width).sqrt();
    let long = (12.0 * root).min(26.0).ceil() as usize;
    let short = (13.0 / root.sqrt()).max(8.0).ceil() as usize;
    let counts = if width >= 1.0 { (short, long) } else { (long, short) };
    with_counts(x_ends, (width, y_ends), poissons_ratio, wanted, counts)
}

/// The same with a given number of functions along each side.
fn with_counts(
    x_ends: (End, End),
    (width, y_ends): (f64, (End, End)),
    poissons_ratio: f64,
    wanted: usize,
    (nx, ny): (usize, usize),
) -> Vec<f64> {
    let (x, y) = (Side::new(x_ends, nx), Side::new(y_ends, ny));
    let (p, q) = (4.0, 4.0 / (width * width));
    let rigid = free_motions(x_ends, y_ends);
    // A small stiffness against the free motions keeps the matrix positive; it is taken off again.
    let shift = if rigid > 0 { 0.5 * (p * q).min(p * p).min(q * q) } else { 0.0 };
    let mut matrix = Vec::with_capacity(x.count * y.count);
    for (i, (xb, (xs, xm))) in x.bend.iter().zip(x.slope.iter().zip(&x.mixed)).enumerate() {
        for (j, (yb, (ys, ym))) in y.bend.iter().zip(y.slope.iter().zip(&y.mixed)).enumerate() {
            let mut row = Vec::with_capacity(x.count * y.count);
            for (k, ((xb, xs), xm)) in xb.iter().zip(xs).zip(xm).enumerate() {
                let xm_back = x.mixed.get(k).and_then(|row| row.get(i)).copied().unwrap_or(0.0);
                for (l, ((yb, ys), ym)) in yb.iter().zip(ys).zip(ym).enumerate() {
                    let ym_back = y.mixed.get(l).and_then(|row| row.get(j)).copied().unwrap_or(0.0);
                    let mut value = poissons_ratio * p * q * (xm * ym_back + xm_back * ym)
                        + 2.0 * (1.0 - poissons_ratio) * p * q * xs * ys;
                    if j == l {
                        value += p * p * xb;
                    }
                    if i == k {
                        value += q * q * yb;
                    }
                    if i == k && j == l {
                        value += shift;
                    }
                    row.push(value);
                }
            }
            matrix.push(row);
        }
    }
    symmetric::lowest(&matrix, wanted + rigid)
        .into_iter()
        .skip(rigid)
        .map(|square| (square - shift).max(0.0).sqrt())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_combination_settles_to_a_thousandth() {
        const ENDS: [End; 3] = [End::Free, End::Supported, End::Clamped];
        let pairs: Vec<(End, End)> = ENDS
            .iter()
            .enumerate()
            .flat_map(|(i, low)| ENDS.iter().skip(i).map(|high| (*low, *high)))
            .collect();
        let mut combinations = 0;
        for (i, x) in pairs.iter().enumerate() {
            for y in pairs.iter().skip(i) {
                combinations += 1;
                // Long plates for some of them: their matrices are larger.
                let widths: &[(f64, (usize, usize))] = match combinations % 10 {
                    1 => &[(1.0, (14, 14)), (0.2, (28, 10))],
                    5 => &[(1.0, (14, 14)), (2.5, (12, 20))],
                    _ => &[(1.0, (14, 14))],
                };
                for (width, counts) in widths.iter().copied() {
                    let found = parameters(*x, (width, *y), 0.3, 6);
                    let fine = with_counts(*x, (width, *y), 0.3, 6, counts);
                    assert_eq!(found.len(), 6);
                    for (f, g) in found.iter().zip(&fine) {
                        assert!((f / g - 1.0).abs() < 1e-3, "{x:?} {y:?} {width}: {found:?} {fine:?}");
                    }
                }
            }
        }
        assert_eq!(combinations, 21);
    }
}
