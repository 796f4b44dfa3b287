//! Sparse Cholesky factors of the free part of a symmetric matrix; the symbolic part is kept.

use super::symmetric::Symmetric;
use crate::error::PanelError;
use crate::geometry::point::Point;
use faer::dyn_stack::{MemBuffer, MemStack};
use faer::linalg::cholesky::llt::factor::LltRegularization;
use faer::sparse::linalg::cholesky::{
    CholeskySymbolicParams, LltRef, SymbolicCholesky, SymmetricOrdering, factorize_symbolic_cholesky,
};
use faer::sparse::{SparseColMatRef, SymbolicSparseColMatRef};
use faer::{Conj, MatMut, Par, Side};
use std::sync::Arc;

/// No free number.
pub(crate) const HELD: usize = usize::MAX;

/// The free part of a matrix pattern, analysed once.
#[derive(Debug)]
pub(crate) struct FreePart {
    /// Free number of each freedom, or `HELD`.
    pub free: Vec<usize>,
    /// The freedom of each free number.
    pub freedoms: Vec<usize>,
    starts: Vec<usize>,
    rows: Vec<usize>,
    places: Vec<usize>,
    symbolic: Option<SymbolicCholesky<usize>>,
}

/// Factors of one matrix.
pub(crate) struct Factor<'a> {
    part: &'a FreePart,
    values: Arc<Vec<f64>>,
}

impl FreePart {
    /// Picks the free freedoms out of a pattern and orders them.
    pub(crate) fn new(matrix: &Symmetric, is_free: impl Fn(usize) -> bool) -> Result<Self, PanelError> {
        let mut free = vec![HELD; matrix.size()];
        let mut freedoms = Vec::new();
        for (d, number) in free.iter_mut().enumerate() {
            if is_free(d) {
                *number = freedoms.len();
                freedoms.push(d);
            }
        }
        let mut starts = vec![0];
        let (mut rows, mut places) = (Vec::new(), Vec::new());
        for &d in &freedoms {
            for place in matrix.starts[d]..matrix.starts[d + 1] {
                let number = free[matrix.rows[place]];
                if number != HELD {
                    rows.push(number);
                    places.push(place);
                }
            }
            starts.push(rows.len());
        }
        let n = freedoms.len();
        let symbolic = if n == 0 {
            None
        } else {
            let pattern = SymbolicSparseColMatRef::new_checked(n, n, &starts, None, &rows);
            let made = factorize_symbolic_cholesky(
                pattern,
                Side::Lower,
                SymmetricOrdering::Amd,
                CholeskySymbolicParams::default(),
            );
            Some(made.map_err(|_| PanelError::NotMeshed {
                reason: "the equations do not fit in memory",
                at: Point::default(),
            })?)
        };
        Ok(Self { free, freedoms, starts, rows, places, symbolic })
    }

    /// Number of free freedoms.
    pub(crate) fn size(&self) -> usize {
        self.freedoms.len()
    }

    /// Factors that were made before.
    pub(crate) fn again(&self, values: Arc<Vec<f64>>) -> Factor<'_> {
        Factor { part: self, values }
    }

    /// Factors the free part of a matrix of this pattern; `None` when it is not positive definite.
    pub(crate) fn factor(&self, matrix: &Symmetric) -> Option<Factor<'_>> {
        let Some(symbolic) = &self.symbolic else { return Some(self.again(Arc::default())) };
        let n = self.size();
        let entries: Vec<f64> = self.places.iter().map(|&p| matrix.values[p]).collect();
        let pattern = SymbolicSparseColMatRef::new_checked(n, n, &self.starts, None, &self.rows);
        let lower = SparseColMatRef::new(pattern, &entries);
        let mut values = vec![0.0; symbolic.len_val()];
        let mut memory =
            MemBuffer::try_new(symbolic.factorize_numeric_llt_scratch::<f64>(Par::Seq, Default::default()))
                .ok()?;
        symbolic
            .factorize_numeric_llt(
                &mut values,
                lower,
                Side::Lower,
                LltRegularization::default(),
                Par::Seq,
                MemStack::new(&mut memory),
                Default::default(),
            )
            .ok()?;
        values.iter().all(|v| v.is_finite()).then(|| self.again(Arc::new(values)))
    }
}

impl Factor<'_> {
    /// What [`FreePart::again`] takes.
    pub(crate) fn values(&self) -> Arc<Vec<f64>> {
        Arc::clone(&self.values)
    }

    /// Solves in place for some right-hand sides of free freedoms, one after the other.
    pub(crate) fn solve(&self, rhs: &mut [f64]) {
        let Some(symbolic) = &self.part.symbolic else { return };
        let n = self.part.size();
        let columns = rhs.len() / n;
        let Ok(mut memory) = MemBuffer::try_new(symbolic.solve_in_place_scratch::<f64>(columns, Par::Seq))
        else {
            return;
        };
        let factor = LltRef::<'_, usize, f64>::new(symbolic, &self.values);
        let target = MatMut::from_column_major_slice_mut(rhs, n, columns);
        factor.solve_in_place_with_conj(Conj::No, target, Par::Seq, MemStack::new(&mut memory));
    }
}
