//! Where contact changes the stiffness: the entries of gasket edges, spring latches and stops, which are few.

use super::level::Level;
use super::sparse::{FreePart, HELD};
use super::symmetric::Symmetric;
use crate::model::latch::LatchAction;
use crate::model::prepare::Prepared;

/// The entries that contact may change: their places among the values of the matrix, with row and column, each once.
#[derive(Debug)]
pub(crate) struct Touched(Vec<(usize, [usize; 2])>);

impl Touched {
    /// Finds them on a mesh.
    pub(crate) fn new(level: &Level, prepared: &Prepared) -> Self {
        let mut found = Vec::new();
        let mut add = |row: usize, column: usize| {
            if let Some(place) = level.stiffness.place(row, column) {
                found.push((place, [row, column]));
            }
        };
        for edge in &level.attachments.gaskets {
            let list = level.freedoms.targets(&level.freedoms.of_ends(edge.ends));
            for (nth, &row) in list.iter().enumerate() {
                list[..=nth].iter().for_each(|&column| add(row, column));
            }
        }
        let springs = prepared.panel.latches.iter().zip(&level.attachments.latches);
        let springs = springs.filter(|(latch, _)| matches!(latch.action, LatchAction::Spring { .. }));
        for &vertex in springs.map(|(_, vertex)| vertex).chain(&level.attachments.stops) {
            let d = level.freedoms.deflection(vertex);
            add(d, d);
        }
        found.sort_unstable();
        found.dedup();
        Self(found)
    }

    /// Puts what stands there in one matrix into another.
    pub(crate) fn copy(&self, from: &Symmetric, to: &mut Symmetric) {
        for &(place, _) in &self.0 {
            to.values[place] = from.values[place];
        }
    }

    /// What stands there.
    pub(crate) fn values(&self, matrix: &Symmetric) -> Vec<f64> {
        self.0.iter().map(|&(place, _)| matrix.values[place]).collect()
    }

    /// How the free part of a matrix differs from one of which these are the values there.
    pub(crate) fn change(&self, part: &FreePart, matrix: &Symmetric, from: &[f64]) -> Change {
        let mut entries = Vec::new();
        for (&(place, [row, column]), before) in self.0.iter().zip(from) {
            let value = matrix.values[place] - before;
            if value != 0.0 && part.free[row] != HELD && part.free[column] != HELD {
                entries.push((part.place(row), part.place(column), value));
            }
        }
        Change(entries)
    }
}

/// A symmetric matrix of few entries in the order of elimination, one half of it.
pub(crate) struct Change(Vec<(usize, usize, f64)>);

impl Change {
    /// Adds the product with a vector to another.
    pub(crate) fn add_times(&self, x: &[f64], y: &mut [f64]) {
        for &(row, column, value) in &self.0 {
            y[row] += value * x[column];
            if row != column {
                y[column] += value * x[row];
            }
        }
    }
}
