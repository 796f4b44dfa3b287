//! How much of a table is guaranteed, typical, estimated, unverified.

use super::figure::Basis;
use super::record::Material;
use crate::prelude::*;

/// Counts of the figures of some records: each figure has one basis, and beside it one standing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
#[non_exhaustive]
pub struct Shares {
    /// All figures.
    pub total: usize,
    /// Guaranteed by a standard.
    pub minimum: usize,
    /// Typical.
    pub typical: usize,
    /// Estimated.
    pub estimate: usize,
    /// Given by the caller: maker's or measured.
    pub given: usize,
    /// Read in the source's own text.
    pub read: usize,
    /// Read in another text that quotes the source.
    pub second_hand: usize,
    /// Computed from the theory of the source.
    pub computed: usize,
    /// Common practice.
    pub common_practice: usize,
    /// Unverified: recalled and not looked up.
    pub unverified: usize,
}

impl Shares {
    /// A count as a share of all figures, from 0 to 1; 0 where there are none.
    pub fn of_total(&self, count: usize) -> f64 {
        if self.total == 0 { 0.0 } else { count as f64 / self.total as f64 }
    }
}

/// Counts the figures of the records by basis and by standing.
pub fn shares(materials: &[Material]) -> Shares {
    let mut counts = Shares::default();
    for figure in materials.iter().flat_map(Material::figures) {
        counts.total += 1;
        match figure.figure.basis {
            Basis::Minimum => counts.minimum += 1,
            Basis::Typical => counts.typical += 1,
            Basis::Estimate => counts.estimate += 1,
            Basis::Maker | Basis::Measured => counts.given += 1,
        }
        match figure.figure.source.standing {
            Standing::Read => counts.read += 1,
            Standing::SecondHand => counts.second_hand += 1,
            Standing::Computed => counts.computed += 1,
            Standing::CommonPractice => counts.common_practice += 1,
            Standing::Memory => counts.unverified += 1,
        }
    }
    counts
}
