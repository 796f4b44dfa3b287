//! Vectors by fours, row by row: what is read of a matrix is used four times.

use super::sparse::Ordered;

/// Vectors together.
pub(crate) const LANES: usize = 4;
/// One row of four vectors.
pub(crate) type Row = [f64; LANES];
/// A small square matrix between four vectors and four others.
pub(crate) type Square = [Row; LANES];

/// Products of each of four vectors with each of four others.
pub(crate) fn products(a: &[Row], b: &[Row]) -> Square {
    let mut sums = [[0.0; LANES]; LANES];
    for (a, b) in a.iter().zip(b) {
        for i in 0..LANES {
            for j in 0..LANES {
                sums[i][j] += a[i] * b[j];
            }
        }
    }
    sums
}

/// Takes four vectors, each times its share, from each of four others.
pub(crate) fn take(from: &mut [Row], what: &[Row], shares: &Square) {
    for (x, v) in from.iter_mut().zip(what) {
        for i in 0..LANES {
            for j in 0..LANES {
                x[j] -= v[i] * shares[i][j];
            }
        }
    }
}

/// The sum of two.
pub(crate) fn sum(a: Square, b: Square) -> Square {
    let mut c = a;
    for (c, b) in c.iter_mut().flatten().zip(b.iter().flatten()) {
        *c += b;
    }
    c
}

/// Upper triangle R with Rᵀ R the given matrix; rows whose pivot is no more than `least` are nothing.
pub(crate) fn cholesky(matrix: &Square, least: f64) -> Square {
    let mut r = [[0.0; LANES]; LANES];
    for i in 0..LANES {
        let pivot = matrix[i][i] - (0..i).map(|k| r[k][i] * r[k][i]).sum::<f64>();
        if pivot.is_nan() || pivot <= least || pivot <= 1e-14 * matrix[i][i] {
            continue;
        }
        r[i][i] = pivot.sqrt();
        for j in (i + 1)..LANES {
            let known: f64 = (0..i).map(|k| r[k][i] * r[k][j]).sum();
            r[i][j] = (matrix[i][j] - known) / r[i][i];
        }
    }
    r
}

/// Four vectors times the inverse of an upper triangle; nothing where the pivot is nothing.
pub(crate) fn divide(x: &mut [Row], r: &Square) {
    let inverse: Row = std::array::from_fn(|k| if r[k][k] > 0.0 { 1.0 / r[k][k] } else { 0.0 });
    for row in x {
        for j in 0..LANES {
            let known: f64 = (0..j).map(|k| row[k] * r[k][j]).sum();
            row[j] = (row[j] - known) * inverse[j];
        }
    }
}

/// The product of two.
pub(crate) fn multiply(a: &Square, b: &Square) -> Square {
    std::array::from_fn(|i| std::array::from_fn(|j| (0..LANES).map(|k| a[i][k] * b[k][j]).sum()))
}

/// A sparse symmetric matrix in the order of elimination: the entries of its lower half that are not zero.
pub(crate) struct Compact {
    starts: Vec<usize>,
    rows: Vec<usize>,
    values: Vec<f64>,
    diagonal: Vec<f64>,
}

impl Compact {
    /// Takes what is not zero.
    pub(crate) fn new(matrix: &Ordered<'_>) -> Self {
        let n = matrix.size();
        let mut made = Self {
            starts: Vec::with_capacity(n + 1),
            rows: Vec::new(),
            values: Vec::new(),
            diagonal: vec![0.0; n],
        };
        made.starts.push(0);
        for j in 0..n {
            for (row, value) in matrix.column(j).filter(|(_, value)| *value != 0.0) {
                if row == j {
                    made.diagonal[j] = value;
                } else {
                    made.rows.push(row);
                    made.values.push(value);
                }
            }
            made.starts.push(made.rows.len());
        }
        made
    }

    /// The products with four vectors.
    pub(crate) fn times(&self, x: &[Row]) -> Vec<Row> {
        let mut y = vec![[0.0; LANES]; x.len()];
        for (j, ends) in self.starts.windows(2).enumerate() {
            let own = x[j];
            let mut sum = own.map(|v| self.diagonal[j] * v);
            let (rows, values) = (&self.rows[ends[0]..ends[1]], &self.values[ends[0]..ends[1]]);
            for (&i, &value) in rows.iter().zip(values) {
                let (other, target) = (x[i], &mut y[i]);
                for k in 0..LANES {
                    sum[k] += value * other[k];
                    target[k] += value * own[k];
                }
            }
            for k in 0..LANES {
                y[j][k] += sum[k];
            }
        }
        y
    }
}
