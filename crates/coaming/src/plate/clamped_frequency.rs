//! Kernel: first natural frequency and buckling of a clamped rectangle, by Ritz. Plain numbers: unit flexural rigidity
//! and unit mass per area.

use super::band::{Band, dot};
use super::clamped_ritz::{Rows, add_product, add_stiffness, side_matrices};
use super::legendre_bubble::{self as bubble, Parity};
#[cfg(test)]
use crate::math;
use core::f64::consts::PI;

/// ω² of a clamped strip of unit span, (4.730 041)⁴: less than that of any clamped plate of that short side.
const STRIP: f64 = 500.563_901_740_434_2;

/// Less than the buckling coefficient of any clamped plate: that of an endless strip, in waves of 1.3 spans, is 3.757.
const STRIP_BUCKLING: f64 = 3.75;

/// The first mode.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FirstMode {
    /// ω a² √(m/D), a the short side.
    pub parameter: f64,
    /// (∫ φ)²/(A ∫ φ²): the part of the mass that moves with the mode when the edge is shaken.
    pub effective_share: f64,
    /// ∫ φ²/A for φ = 1 at the centre: the part of the mass that stands for the plate at its centre.
    pub centre_share: f64,
}

/// First mode of a clamped rectangle with the ratio of its sides, 1 or more.
pub(crate) fn first_mode(ratio: f64) -> FirstMode {
    let plate = Plate::new(ratio, Parity::Even);
    let [_, _, inner] = side_matrices(Parity::Even, plate.n);
    let [_, _, outer] = side_matrices(Parity::Even, plate.m);
    let (above, shape) = plate.lowest(STRIP, &[(1.0, outer, inner)]);
    let (n, m) = (plate.n, plate.m);
    // Scaled so that the sum of φ² over −1..1 by −1..1 is 1; the area there is 4.
    let integral =
        bubble::first_integral() * bubble::first_integral() * shape.first().copied().unwrap_or(0.0);
    let along: Vec<f64> = bubble::at(Parity::Even, n, 0.0).iter().map(|v| v.value).collect();
    let across = bubble::at(Parity::Even, m, 0.0);
    let centre: f64 = shape.chunks_exact(n).zip(across).map(|(row, o)| dot(row, &along) * o.value).sum();
    FirstMode {
        parameter: above.sqrt(),
        effective_share: integral * integral / 4.0,
        centre_share: 0.25 / (centre * centre),
    }
}

/// k = N s²/(π² D) at which a clamped rectangle buckles under the same compression N both ways, s the short side.
pub(crate) fn buckling_coefficient(ratio: f64) -> f64 {
    // A long plate buckles in several waves: whether their number is odd or even changes with the ratio.
    let lowest = |parity| {
        let plate = Plate::new(ratio, parity);
        let [_, slope_i, value_i] = side_matrices(Parity::Even, plate.n);
        let [_, slope_o, value_o] = side_matrices(parity, plate.m);
        let squeeze = [(plate.p, value_o, slope_i), (plate.q, slope_o, value_i)];
        plate.lowest(STRIP_BUCKLING * PI * PI, &squeeze).0 / (PI * PI)
    };
    lowest(Parity::Even).min(lowest(Parity::Odd))
}

/// A clamped rectangle of short side 1 and its functions.
struct Plate {
    n: usize,
    m: usize,
    p: f64,
    q: f64,
    /// Even or odd along the long side; always even along the short one.
    parity: Parity,
}

impl Plate {
    fn new(ratio: f64, parity: Parity) -> Self {
        let m = ((9.0 * ratio.sqrt()).ceil() as usize).min(60);
        Self { n: 9, m, p: 4.0, q: 4.0 / (ratio * ratio), parity }
    }

    /// Lowest λ of K x = λ G x and x with xᵀ G x = 1, G a sum of products; `below` is less than λ, so that K − below G
    /// stays positive.
    fn lowest(&self, below: f64, g: &[(f64, Rows, Rows)]) -> (f64, Vec<f64>) {
        let (n, m) = (self.n, self.m);
        let mut matrix = Band::zero(n * m, 2 * n + 2);
        add_stiffness(&mut matrix, (self.p, Parity::Even, n), (self.q, self.parity, m));
        for (factor, outer, inner) in g {
            add_product(&mut matrix, -below * factor, outer, inner);
        }
        matrix.factor();
        let apply = |vector: &[f64]| {
            let mut sum = vec![0.0; vector.len()];
            for (factor, outer, inner) in g {
                sum.iter_mut().zip(mass(vector, outer, inner)).for_each(|(s, v)| *s += factor * v);
            }
            sum
        };
        let mut shape = vec![0.0; n * m];
        if let Some(first) = shape.first_mut() {
            *first = 1.0;
        }
        let mut above = f64::MAX;
        for _ in 0..60 {
            let loaded = apply(&shape);
            shape.clone_from(&loaded);
            matrix.solve(&mut shape);
            let moved = apply(&shape);
            let squared = dot(&shape, &moved);
            let next = dot(&shape, &loaded) / squared;
            let scale = 1.0 / squared.sqrt();
            shape.iter_mut().for_each(|c| *c *= scale);
            let settled = (above - next).abs() <= 1e-14 * (below + next);
            above = next;
            if settled {
                break;
            }
        }
        (below + above, shape)
    }
}

/// A product of two matrices of the sides, times a vector.
fn mass(vector: &[f64], outer: &Rows, inner: &Rows) -> Vec<f64> {
    let n = inner.len();
    let along: Vec<f64> = vector.chunks_exact(n).flat_map(|row| times(inner, row)).collect();
    // Across: the same for each column.
    let mut product = vec![0.0; vector.len()];
    for (o, row) in outer.iter().enumerate() {
        for (s, value) in row.iter().enumerate() {
            add_row(&mut product, o + s, &along, o, *value, n);
            if s > 0 {
                add_row(&mut product, o, &along, o + s, *value, n);
            }
        }
    }
    product
}

/// Adds `value` × row `from` to row `to`, if both are there.
fn add_row(product: &mut [f64], to: usize, along: &[f64], from: usize, value: f64, n: usize) {
    if let (Some(target), Some(source)) =
        (product.get_mut(to * n..(to + 1) * n), along.get(from * n..(from + 1) * n))
    {
        for (t, s) in target.iter_mut().zip(source) {
            *t += value * s;
        }
    }
}

/// A symmetric banded matrix times a vector.
fn times(rows: &Rows, vector: &[f64]) -> Vec<f64> {
    let mut product = vec![0.0; vector.len()];
    for (i, row) in rows.iter().enumerate() {
        for (s, value) in row.iter().enumerate() {
            add_row(&mut product, i + s, vector, i, *value, 1);
            if s > 0 {
                add_row(&mut product, i, vector, i + s, *value, 1);
            }
        }
    }
    product
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_plate_tends_to_the_strip() {
        // Clamped strip: (4.730 041)² = 22.373 29 (Leissa, SP-160, beam table; the value is the root of cos cosh = 1).
        let root = 4.730_040_744_862_704_f64;
        assert!((math::cos(root) * math::cosh(root) - 1.0).abs() < 1e-12);
        let mode = first_mode(200.0);
        assert!(mode.parameter > root * root && mode.parameter < root * root * 1.0001, "{mode:?}");
    }
}
