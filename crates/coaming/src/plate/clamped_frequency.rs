//! Kernel: first natural frequency of a clamped rectangle, by Ritz. Plain numbers: unit flexural rigidity and unit
//! mass per area.

use super::band::{Band, dot};
use super::clamped_ritz::{Rows, add_product, add_stiffness, side_matrices};
use super::legendre_bubble::{self as bubble, Parity};
#[cfg(test)]
use crate::math;

/// ω² of a clamped strip of unit span, (4.730 041)⁴: less than that of any clamped plate of that short side.
const STRIP: f64 = 500.563_901_740_434_2;

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
    let parity = Parity::Even;
    let (n, m) = (9, ((9.0 * ratio.sqrt()).ceil() as usize).min(60));
    let (p, q) = (4.0, 4.0 / (ratio * ratio));
    // Inverse iteration from just below: the stiffness less the strip's ω² times the mass stays positive.
    let mut matrix = Band::zero(n * m, 2 * n + 2);
    add_stiffness(&mut matrix, (p, parity, n), (q, parity, m));
    let [_, _, inner] = side_matrices(parity, n);
    let [_, _, outer] = side_matrices(parity, m);
    add_product(&mut matrix, -STRIP, &outer, &inner);
    matrix.factor();
    let mut shape = vec![0.0; n * m];
    if let Some(first) = shape.first_mut() {
        *first = 1.0;
    }
    let mut above = f64::MAX;
    for _ in 0..60 {
        let before = shape.clone();
        let loaded = mass(&before, &outer, &inner);
        shape.clone_from(&loaded);
        matrix.solve(&mut shape);
        let moved = mass(&shape, &outer, &inner);
        let squared = dot(&shape, &moved);
        let next = dot(&shape, &loaded) / squared;
        let scale = 1.0 / squared.sqrt();
        shape.iter_mut().for_each(|c| *c *= scale);
        let settled = (above - next).abs() <= 1e-14 * (STRIP + next);
        above = next;
        if settled {
            break;
        }
    }
    // Scaled so that the sum of φ² over −1..1 by −1..1 is 1; the area there is 4.
    let integral =
        bubble::first_integral() * bubble::first_integral() * shape.first().copied().unwrap_or(0.0);
    let along: Vec<f64> = bubble::at(parity, n, 0.0).iter().map(|v| v.value).collect();
    let centre: f64 = shape
        .chunks_exact(n)
        .zip(bubble::at(parity, m, 0.0))
        .map(|(row, o)| dot(row, &along) * o.value)
        .sum();
    FirstMode {
        parameter: (STRIP + above).sqrt(),
        effective_share: integral * integral / 4.0,
        centre_share: 0.25 / (centre * centre),
    }
}

/// The mass matrix times a vector.
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
