//! Sparse Cholesky factors of the free part of a symmetric matrix; the symbolic part is kept.

use super::analysis::Analysis;
use super::factor_time::counted;
use super::lanes::Row;
use super::substitute::{substitute, substitute_lanes};
use super::symmetric::Symmetric;
use faer::Par;
use faer::dyn_stack::{MemBuffer, MemStack};
use faer::linalg::cholesky::llt::factor::LltRegularization;
use faer::sparse::SparseColMatRef;
use faer::sparse::linalg::cholesky::supernodal::{
    SymbolicSupernodalCholesky, factorize_supernodal_numeric_llt, factorize_supernodal_numeric_llt_scratch,
};
use std::sync::Arc;

/// No free number.
pub(crate) const HELD: usize = usize::MAX;

/// The free part of a matrix pattern, of which some freedoms may be held beyond those that were left out when it was analysed.
#[derive(Debug)]
pub(crate) struct FreePart {
    /// Free number of each freedom, or `HELD`.
    pub free: Vec<usize>,
    /// The freedom of each free number.
    pub freedoms: Vec<usize>,
    analysis: Arc<Analysis>,
    /// Place of each free number in the order of elimination.
    places: Vec<usize>,
    /// Entries beside the diagonal in rows and columns of freedoms that are held here, and those on it.
    cleared: Vec<usize>,
    ones: Vec<usize>,
}

/// Factors of one matrix.
pub(crate) struct Factor<'a> {
    part: &'a FreePart,
    values: Arc<Vec<f64>>,
}

impl FreePart {
    /// Takes the freedoms that were analysed, without those that are held here.
    pub(crate) fn new(analysis: Arc<Analysis>, is_held: impl Fn(usize) -> bool) -> Self {
        let mut free = vec![HELD; analysis.place.len()];
        let (mut freedoms, mut places) = (Vec::new(), Vec::new());
        let mut fixed = Vec::new();
        for (d, &place) in analysis.place.iter().enumerate().filter(|(_, p)| **p != HELD) {
            if is_held(d) {
                fixed.push(place);
            } else {
                free[d] = freedoms.len();
                freedoms.push(d);
                places.push(place);
            }
        }
        let (mut cleared, mut ones) = (Vec::new(), Vec::new());
        if !fixed.is_empty() {
            let pattern = analysis.pattern.as_ref();
            for (column, ends) in pattern.col_ptr().windows(2).enumerate() {
                for at in ends[0]..ends[1] {
                    let row = pattern.row_idx()[at];
                    match (row == column, fixed.contains(&row) || fixed.contains(&column)) {
                        (true, true) => ones.push(at),
                        (false, true) => cleared.push(at),
                        _ => {}
                    }
                }
            }
        }
        Self { free, freedoms, analysis, places, cleared, ones }
    }

    /// Number of free freedoms.
    pub(crate) fn size(&self) -> usize {
        self.freedoms.len()
    }

    /// Factors that were made before.
    pub(crate) fn again(&self, values: Arc<Vec<f64>>) -> Factor<'_> {
        Factor { part: self, values }
    }

    /// The free part of a matrix of this pattern in the order of elimination.
    pub(crate) fn ordered(&self, matrix: &Symmetric) -> Ordered<'_> {
        let mut entries: Vec<f64> = self.analysis.sources.iter().map(|&p| matrix.values[p]).collect();
        for &at in &self.cleared {
            entries[at] = 0.0;
        }
        for &at in &self.ones {
            entries[at] = 1.0;
        }
        Ordered { part: self, entries }
    }

    /// Factors the free part of a matrix of this pattern; `None` when it is not positive definite.
    pub(crate) fn factor(&self, matrix: &Symmetric) -> Option<Factor<'_>> {
        self.ordered(matrix).factor()
    }

    /// Place of a free freedom in the order of elimination.
    pub(crate) fn place(&self, freedom: usize) -> usize {
        self.analysis.place[freedom]
    }

    /// Places in the order of elimination of what is free here and held in another part of the same matrix.
    pub(crate) fn free_beyond(&self, other: &Self) -> Vec<usize> {
        let free = |(&place, &d): (&usize, &usize)| (other.free[d] == HELD).then_some(place);
        self.places.iter().zip(&self.freedoms).filter_map(free).collect()
    }

    /// Brings a vector over all freedoms into the order of elimination.
    pub(crate) fn gather(&self, full: &[f64]) -> Vec<f64> {
        let mut ordered = vec![0.0; self.analysis.size()];
        for (&place, &d) in self.places.iter().zip(&self.freedoms) {
            ordered[place] = full[d];
        }
        ordered
    }

    /// Brings a vector back from the order of elimination into that of the free numbers.
    pub(crate) fn scatter(&self, ordered: &[f64]) -> Vec<f64> {
        self.places.iter().map(|&place| ordered[place]).collect()
    }
}

/// The free part of a matrix in the order of elimination; freedoms held beyond the analysed ones have ones on the diagonal.
pub(crate) struct Ordered<'a> {
    part: &'a FreePart,
    entries: Vec<f64>,
}

impl<'a> Ordered<'a> {
    /// Factors the matrix; `None` when it is not positive definite.
    pub(crate) fn factor(&self) -> Option<Factor<'a>> {
        let (part, analysis) = (self.part, &self.part.analysis);
        let Some(symbolic) = &analysis.symbolic else { return Some(part.again(Arc::default())) };
        let given = SparseColMatRef::new(analysis.pattern.as_ref(), &self.entries);

        let mut values = analysis.spare();
        if values.len() != symbolic.len_val() {
            values = vec![0.0; symbolic.len_val()];
        }
        let made = counted(|| factor_into(symbolic, given, &mut values));
        if made.is_none() || !values.iter().all(|v| v.is_finite()) {
            analysis.keep(values);
            return None;
        }
        Some(part.again(Arc::new(values)))
    }

    /// With nothing on the diagonal of freedoms held here: as they do not move, they have no mass either.
    pub(crate) fn without_held(mut self) -> Self {
        for &at in &self.part.ones {
            self.entries[at] = 0.0;
        }
        self
    }

    /// Rows and values of the lower half of one column.
    pub(crate) fn column(&self, column: usize) -> impl Iterator<Item = (usize, f64)> {
        let pattern = self.part.analysis.pattern.as_ref();
        let range = pattern.col_ptr()[column]..pattern.col_ptr()[column + 1];
        pattern.row_idx()[range.clone()].iter().copied().zip(self.entries[range].iter().copied())
    }

    /// Number of equations, those of freedoms held here included.
    pub(crate) fn size(&self) -> usize {
        self.part.analysis.size()
    }

    /// The product with a vector in the order of elimination.
    pub(crate) fn times(&self, x: &[f64]) -> Vec<f64> {
        let mut y = vec![0.0; x.len()];
        let pattern = self.part.analysis.pattern.as_ref();
        for (j, ends) in pattern.col_ptr().windows(2).enumerate() {
            let (mut sum, xj) = (0.0, x[j]);
            for (&i, v) in pattern.row_idx()[ends[0]..ends[1]].iter().zip(&self.entries[ends[0]..ends[1]]) {
                sum += v * x[i];
                if i != j {
                    y[i] += v * xj;
                }
            }
            y[j] += sum;
        }
        y
    }
}

fn factor_into(
    symbolic: &SymbolicSupernodalCholesky<usize>,
    given: SparseColMatRef<'_, usize, f64>,
    values: &mut [f64],
) -> Option<()> {
    let params = Default::default();
    let needed = factorize_supernodal_numeric_llt_scratch::<usize, f64>(symbolic, Par::Seq, params);
    let mut memory = MemBuffer::try_new(needed).ok()?;
    let (plain, stack) = (LltRegularization::default(), MemStack::new(&mut memory));
    factorize_supernodal_numeric_llt(values, given, plain, symbolic, Par::Seq, stack, params).ok()?;
    Some(())
}

impl Factor<'_> {
    /// What [`FreePart::again`] takes.
    pub(crate) fn values(&self) -> Arc<Vec<f64>> {
        Arc::clone(&self.values)
    }

    /// Solves in place for some right-hand sides of free freedoms, one after the other.
    pub(crate) fn solve(&self, rhs: &mut [f64]) {
        let (n, size) = (self.part.size(), self.part.analysis.size());
        let columns = rhs.len().checked_div(n).unwrap_or(0);
        let mut ordered = vec![0.0; size * columns];
        for (from, to) in rhs.chunks_exact(n).zip(ordered.chunks_exact_mut(size)) {
            for (&place, &value) in self.part.places.iter().zip(from) {
                to[place] = value;
            }
        }
        self.solve_ordered(&mut ordered);
        for (to, from) in rhs.chunks_exact_mut(n).zip(ordered.chunks_exact(size)) {
            for (&place, value) in self.part.places.iter().zip(to) {
                *value = from[place];
            }
        }
    }

    /// Solves in place for four right-hand sides in the order of elimination.
    pub(crate) fn solve_lanes(&self, rhs: &mut [Row]) {
        if let Some(symbolic) = &self.part.analysis.symbolic {
            substitute_lanes(symbolic, &self.values, rhs);
        }
    }

    /// The same for any number, in the order of elimination.
    pub(crate) fn solve_ordered(&self, rhs: &mut [f64]) {
        let Some(symbolic) = &self.part.analysis.symbolic else { return };
        let size = symbolic.nrows();
        rhs.chunks_exact_mut(size).for_each(|x| substitute(symbolic, &self.values, x));
    }
}

impl Drop for Factor<'_> {
    fn drop(&mut self) {
        if let Some(values) = Arc::get_mut(&mut self.values) {
            self.part.analysis.keep(std::mem::take(values));
        }
    }
}
