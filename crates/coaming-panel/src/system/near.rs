//! Factors of a matrix near the one that is asked about: that of the closed panel, from which some latches may have let go.
//!
//! The panel with every latch holding is factored once for a mesh. A latch that lets go adds one equation, which is eliminated last: one
//! more solution with the factors that there are, and one row of a small matrix (bordering, or the Schur complement).

use super::sparse::{Factor, FreePart};
use super::symmetric::Symmetric;

/// Factors near those of a matrix.
pub(crate) struct Near<'a> {
    factor: Factor<'a>,
    released: Vec<Released>,
    /// Lower Cholesky factor of what is left of the released equations once all others are eliminated, row by row.
    rest: Vec<Vec<f64>>,
}

/// A freedom that is held in the factors and free in the matrix.
struct Released {
    place: usize,
    /// What couples it to the others.
    column: Vec<f64>,
    /// The solution for that.
    solved: Vec<f64>,
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

impl<'a> Near<'a> {
    /// Factors of the matrix itself.
    pub(crate) fn exact(factor: Factor<'a>) -> Self {
        Self { factor, released: Vec::new(), rest: Vec::new() }
    }

    /// Factors of the part of `matrix` that is free in `part`, from those of a part of it where more is held; `None` where that is not
    /// positive definite.
    pub(crate) fn released(
        factor: Factor<'a>,
        more_held: &FreePart,
        part: &FreePart,
        matrix: &Symmetric,
    ) -> Option<Self> {
        let places = part.free_beyond(more_held);
        let mut near = Self::exact(factor);
        if places.is_empty() {
            return Some(near);
        }
        let ordered = part.ordered(matrix);
        for (nth, &place) in places.iter().enumerate() {
            let mut unit = vec![0.0; ordered.size()];
            unit[place] = 1.0;
            let mut column = ordered.times(&unit);
            let mut row: Vec<f64> = places[..=nth].iter().map(|&p| column[p]).collect();
            for &p in &places {
                column[p] = 0.0;
            }
            let mut solved = column.clone();
            near.factor.solve_ordered(&mut solved);
            near.released.push(Released { place, column, solved });
            for (entry, other) in row.iter_mut().zip(&near.released) {
                *entry -= dot(&other.column, &near.released[nth].solved);
            }
            for k in 0..=nth {
                let known: f64 =
                    (0..k).map(|i| row[i] * if k < nth { near.rest[k][i] } else { row[i] }).sum();
                row[k] = if k < nth { (row[k] - known) / near.rest[k][k] } else { (row[k] - known).sqrt() };
            }
            if row[nth].is_nan() || row[nth] <= 0.0 {
                return None;
            }
            near.rest.push(row);
        }
        Some(near)
    }

    /// Solves in place in the order of elimination.
    pub(crate) fn solve(&self, rhs: &mut [f64]) {
        let mut last: Vec<f64> = self.released.iter().map(|r| rhs[r.place]).collect();
        for r in &self.released {
            rhs[r.place] = 0.0;
        }
        self.factor.solve_ordered(rhs);
        for (value, r) in last.iter_mut().zip(&self.released) {
            *value -= dot(&r.column, rhs);
        }
        for k in 0..last.len() {
            let known: f64 = (0..k).map(|i| self.rest[k][i] * last[i]).sum();
            last[k] = (last[k] - known) / self.rest[k][k];
        }
        for k in (0..last.len()).rev() {
            let known: f64 = ((k + 1)..last.len()).map(|i| self.rest[i][k] * last[i]).sum();
            last[k] = (last[k] - known) / self.rest[k][k];
        }
        for (r, value) in self.released.iter().zip(last) {
            for (x, s) in rhs.iter_mut().zip(&r.solved) {
                *x -= value * s;
            }
            rhs[r.place] = value;
        }
    }
}
