//! Lowest eigenvalues of a symmetric positive definite matrix, by simultaneous inverse iteration.

use super::band::{Band, dot};

/// A dense symmetric matrix by rows.
pub(crate) type Rows = Vec<Vec<f64>>;

/// The `wanted` lowest eigenvalues in rising order; fewer where the matrix is smaller.
pub(crate) fn lowest(matrix: &Rows, wanted: usize) -> Vec<f64> {
    let order = matrix.len();
    let mut factor = Band::zero(order, order.saturating_sub(1));
    for (i, row) in matrix.iter().enumerate() {
        for (j, value) in row.iter().take(i + 1).enumerate() {
            factor.add(i, j, *value);
        }
    }
    factor.factor();
    // More vectors than wanted: the speed is set by the gap to the first one left out.
    let count = (wanted + 8).min(order);
    // Start from the functions of least stiffness.
    let mut by_size: Vec<(usize, f64)> =
        matrix.iter().enumerate().map(|(i, row)| (i, row.get(i).copied().unwrap_or(f64::NAN))).collect();
    by_size.sort_by(|a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)));
    let mut vectors: Rows = by_size.iter().take(count).map(|(place, _)| unit(order, *place)).collect();
    let mut values = vec![f64::MAX; count];
    for _ in 0..80 {
        for vector in &mut vectors {
            factor.solve(vector);
        }
        orthonormalise(&mut vectors);
        // The inverse within the space: its largest eigenvalues are the lowest sought.
        let solved: Rows = vectors
            .iter()
            .map(|vector| {
                let mut solved = vector.clone();
                factor.solve(&mut solved);
                solved
            })
            .collect();
        let small: Rows = vectors.iter().map(|v| solved.iter().map(|s| dot(v, s)).collect()).collect();
        let (inverse, turn) = jacobi(small);
        vectors = turn
            .iter()
            .map(|column| {
                let mut sum = vec![0.0; order];
                for (c, v) in column.iter().zip(&vectors) {
                    sum.iter_mut().zip(v).for_each(|(s, v)| *s += c * v);
                }
                sum
            })
            .collect();
        let next: Vec<f64> = inverse.iter().map(|value| 1.0 / value).collect();
        let settled =
            values.iter().zip(&next).take(wanted).all(|(old, new)| (old - new).abs() <= 1e-12 * new.abs());
        values = next;
        if settled {
            break;
        }
    }
    values.truncate(wanted);
    values
}

fn unit(order: usize, place: usize) -> Vec<f64> {
    (0..order).map(|i| if i == place { 1.0 } else { 0.0 }).collect()
}

/// Gram–Schmidt, twice, in order.
fn orthonormalise(vectors: &mut [Vec<f64>]) {
    for i in 0..vectors.len() {
        let (done, rest) = vectors.split_at_mut(i);
        let Some(vector) = rest.first_mut() else { return };
        for _ in 0..2 {
            for other in done.iter() {
                let c = dot(vector, other);
                vector.iter_mut().zip(other).for_each(|(v, o)| *v -= c * o);
            }
        }
        let scale = 1.0 / dot(vector, vector).sqrt();
        vector.iter_mut().for_each(|v| *v *= scale);
    }
}

/// Eigenvalues in falling order and their vectors, by Jacobi's rotations.
fn jacobi(mut a: Rows) -> (Vec<f64>, Rows) {
    let n = a.len();
    let mut vectors: Rows = (0..n).map(|i| unit(n, i)).collect();
    let at = |a: &Rows, i: usize, j: usize| a.get(i).and_then(|row| row.get(j)).copied().unwrap_or(0.0);
    for _ in 0..30 {
        let mut off = 0.0;
        for p in 0..n {
            for q in p + 1..n {
                let apq = at(&a, p, q);
                off += apq * apq;
                if apq == 0.0 {
                    continue;
                }
                let theta = (at(&a, q, q) - at(&a, p, p)) / (2.0 * apq);
                let t = theta.signum() / (theta.abs() + (theta * theta + 1.0).sqrt());
                let c = 1.0 / (t * t + 1.0).sqrt();
                let s = t * c;
                for row in &mut a {
                    rotate(row, p, q, c, s);
                }
                rotate_rows(&mut a, p, q, c, s);
                rotate_rows(&mut vectors, p, q, c, s);
            }
        }
        let size: f64 = (0..n).map(|i| at(&a, i, i) * at(&a, i, i)).sum();
        if off <= 1e-32 * size {
            break;
        }
    }
    let mut pairs: Vec<(f64, Vec<f64>)> =
        vectors.into_iter().enumerate().map(|(i, vector)| (at(&a, i, i), vector)).collect();
    pairs.sort_by(|x, y| y.0.total_cmp(&x.0));
    pairs.into_iter().unzip()
}

/// Turns entries p and q of a row.
fn rotate(row: &mut [f64], p: usize, q: usize, c: f64, s: f64) {
    let (x, y) = (row.get(p).copied().unwrap_or(0.0), row.get(q).copied().unwrap_or(0.0));
    if let Some(entry) = row.get_mut(p) {
        *entry = c * x - s * y;
    }
    if let Some(entry) = row.get_mut(q) {
        *entry = s * x + c * y;
    }
}

/// Turns rows p and q, p before q.
fn rotate_rows(rows: &mut [Vec<f64>], p: usize, q: usize, c: f64, s: f64) {
    let (low, high) = rows.split_at_mut(q);
    if let (Some(first), Some(second)) = (low.get_mut(p), high.first_mut()) {
        for (x, y) in first.iter_mut().zip(second) {
            let (old_x, old_y) = (*x, *y);
            *x = c * old_x - s * old_y;
            *y = s * old_x + c * old_y;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chain_of_springs_has_its_known_frequencies() {
        // Tridiagonal −1, 2, −1 of order n: 4 sin²(k π/(2 (n + 1))).
        let n = 40;
        let matrix: Rows = (0..n)
            .map(|i: usize| {
                (0..n)
                    .map(|j: usize| match i.abs_diff(j) {
                        0 => 2.0,
                        1 => -1.0,
                        _ => 0.0,
                    })
                    .collect()
            })
            .collect();
        for (k, value) in lowest(&matrix, 6).into_iter().enumerate() {
            let sine = crate::math::sin((k + 1) as f64 * core::f64::consts::PI / (2.0 * (n + 1) as f64));
            assert!((value - 4.0 * sine * sine).abs() < 1e-11 * value, "{k} {value}");
        }
    }
}
