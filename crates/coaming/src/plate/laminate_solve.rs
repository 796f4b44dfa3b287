//! Kernel: a 6 × 6 symmetric system of a laminate, and the rotation of a ply's stiffness.

use crate::math;

/// Stiffness Q11, Q12, Q22, Q66 of a ply along its fibres.
pub(crate) type OnAxis = [f64; 4];
/// Stiffness in the axes of the laminate: 11, 12, 22, 16, 26, 66.
pub(crate) type InAxes = [f64; 6];

/// Q of a ply turned by θ from its fibres to the laminate's x.
pub(crate) fn turned([q11, q12, q22, q66]: OnAxis, theta: f64) -> InAxes {
    let (c, s) = (math::cos(theta), math::sin(theta));
    let (c2, s2, cs) = (c * c, s * s, c * s);
    let (c4, s4, c2s2) = (c2 * c2, s2 * s2, c2 * s2);
    let mixed = q12 + 2.0 * q66;
    [
        q11 * c4 + 2.0 * mixed * c2s2 + q22 * s4,
        (q11 + q22 - 4.0 * q66) * c2s2 + q12 * (c4 + s4),
        q11 * s4 + 2.0 * mixed * c2s2 + q22 * c4,
        cs * ((q11 - q12 - 2.0 * q66) * c2 - (q22 - q12 - 2.0 * q66) * s2),
        cs * ((q11 - q12 - 2.0 * q66) * s2 - (q22 - q12 - 2.0 * q66) * c2),
        (q11 + q22 - 2.0 * q12 - 2.0 * q66) * c2s2 + q66 * (c4 + s4),
    ]
}

/// Strains x, y and shear in the axes of a ply turned by θ.
pub(crate) fn strains_along([x, y, shear]: [f64; 3], theta: f64) -> [f64; 3] {
    let (c, s) = (math::cos(theta), math::sin(theta));
    let (c2, s2, cs) = (c * c, s * s, c * s);
    [c2 * x + s2 * y + cs * shear, s2 * x + c2 * y - cs * shear, 2.0 * cs * (y - x) + (c2 - s2) * shear]
}

/// Strains along and across the fibres, without shear, in the axes of the laminate.
pub(crate) fn free_strains([along, across]: [f64; 2], theta: f64) -> [f64; 3] {
    let (c, s) = (math::cos(theta), math::sin(theta));
    [c * c * along + s * s * across, s * s * along + c * c * across, 2.0 * c * s * (along - across)]
}

/// Product with the matrix 11, 12, 22, 16, 26, 66.
pub(crate) fn times([m11, m12, m22, m16, m26, m66]: InAxes, [x, y, shear]: [f64; 3]) -> [f64; 3] {
    [m11 * x + m12 * y + m16 * shear, m12 * x + m22 * y + m26 * shear, m16 * x + m26 * y + m66 * shear]
}

/// The symmetric 6 × 6 matrix of A, B and D, factored by Cholesky; for lengths of the size of the thickness.
pub(crate) struct Factored {
    lower: [[f64; 6]; 6],
}

impl Factored {
    /// None where the matrix is not positive definite.
    pub(crate) fn new(a: InAxes, b: InAxes, d: InAxes) -> Option<Self> {
        let block =
            |[m11, m12, m22, m16, m26, m66]: InAxes| [[m11, m12, m16], [m12, m22, m26], [m16, m26, m66]];
        let (a, b, d) = (block(a), block(b), block(d));
        let mut full = [[0.0; 6]; 6];
        for (rows, (left, right)) in [(0, (a, b)), (3, (b, d))] {
            for (i, (l, r)) in left.iter().zip(&right).enumerate() {
                if let Some(row) = full.get_mut(rows + i) {
                    let ([l1, l2, l3], [r1, r2, r3]) = (l, r);
                    *row = [*l1, *l2, *l3, *r1, *r2, *r3];
                }
            }
        }
        let mut lower = [[0.0; 6]; 6];
        let at = |m: &[[f64; 6]; 6], i: usize, j: usize| {
            m.get(i).and_then(|row| row.get(j)).copied().unwrap_or(f64::NAN)
        };
        for i in 0..6 {
            for j in 0..=i {
                let mut sum = at(&full, i, j);
                for k in 0..j {
                    sum -= at(&lower, i, k) * at(&lower, j, k);
                }
                let value = if i == j { sum.sqrt() } else { sum / at(&lower, j, j) };
                if !value.is_finite() || i == j && value <= 0.0 {
                    return None;
                }
                if let Some(entry) = lower.get_mut(i).and_then(|row| row.get_mut(j)) {
                    *entry = value;
                }
            }
        }
        Some(Self { lower })
    }

    /// Strains and curvatures of the forces and moments.
    pub(crate) fn solve(&self, forces: [f64; 6]) -> [f64; 6] {
        let mut x = forces;
        let at =
            |i: usize, j: usize| self.lower.get(i).and_then(|row| row.get(j)).copied().unwrap_or(f64::NAN);
        let get = |x: &[f64; 6], i: usize| x.get(i).copied().unwrap_or(f64::NAN);
        for i in 0..6 {
            let sum: f64 = (0..i).map(|k| at(i, k) * get(&x, k)).sum();
            let value = (get(&x, i) - sum) / at(i, i);
            if let Some(entry) = x.get_mut(i) {
                *entry = value;
            }
        }
        for i in (0..6).rev() {
            let sum: f64 = (i + 1..6).map(|k| at(k, i) * get(&x, k)).sum();
            let value = (get(&x, i) - sum) / at(i, i);
            if let Some(entry) = x.get_mut(i) {
                *entry = value;
            }
        }
        x
    }
}
