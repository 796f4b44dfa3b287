//! The order in which equations are eliminated, and where the factors find their entries: found once for a pattern and what is held.

use super::sparse::HELD;
use super::symmetric::Symmetric;
use crate::error::PanelError;
use crate::geometry::point::Point;
use faer::dyn_stack::{MemBuffer, MemStack, StackReq};
use faer::sparse::linalg::amd;
use faer::sparse::linalg::cholesky::simplicial::{
    prefactorize_symbolic_cholesky, prefactorize_symbolic_cholesky_scratch,
};
use faer::sparse::linalg::cholesky::supernodal::{
    SymbolicSupernodalCholesky, factorize_supernodal_symbolic_cholesky,
    factorize_supernodal_symbolic_cholesky_scratch,
};
use faer::sparse::{SymbolicSparseColMat, SymbolicSparseColMatRef};
use std::sync::{Mutex, PoisonError};

/// The equations in the order in which they are eliminated.
#[derive(Debug)]
pub(crate) struct Analysis {
    /// Place of each freedom in that order, or `HELD`.
    pub place: Vec<usize>,
    /// The lower half of the reordered matrix.
    pub pattern: SymbolicSparseColMat<usize>,
    /// Where each of its entries stands in the matrix.
    pub sources: Vec<usize>,
    /// The pattern of the factors; `None` without free freedoms.
    pub symbolic: Option<SymbolicSupernodalCholesky<usize>>,
    /// Memory of factors that are no longer used.
    spare: Mutex<Vec<f64>>,
}

fn too_large() -> PanelError {
    PanelError::NotMeshed { reason: "the equations do not fit in memory", at: Point::default() }
}

impl Analysis {
    /// Orders the free freedoms of a pattern.
    ///
    /// Freedoms of one class have the same neighbours and follow each other; the order of the classes is that of approximate minimum
    /// degree (Amestoy, Davis and Duff, SIAM J. Matrix Anal. 17 (1996) 886-905).
    pub(crate) fn new(matrix: &Symmetric, is_free: impl Fn(usize) -> bool) -> Result<Self, PanelError> {
        let Order { place, reduced } = order(matrix, is_free)?;
        if reduced.ncols() == 0 {
            let (sources, symbolic, spare) = (Vec::new(), None, Mutex::default());
            return Ok(Self { place, pattern: reduced, sources, symbolic, spare });
        }
        let symbolic = supernodes(&reduced)?;
        let (pattern, sources) = reordered(matrix, &place, reduced.ncols());
        Ok(Self { place, pattern, sources, symbolic: Some(symbolic), spare: Mutex::default() })
    }
}

impl Analysis {
    /// Number of equations.
    pub(crate) fn size(&self) -> usize {
        self.pattern.ncols()
    }

    /// Memory for factors, of any length and content.
    pub(crate) fn spare(&self) -> Vec<f64> {
        std::mem::take(&mut *self.spare.lock().unwrap_or_else(PoisonError::into_inner))
    }

    /// Takes the memory of factors back.
    pub(crate) fn keep(&self, values: Vec<f64>) {
        *self.spare.lock().unwrap_or_else(PoisonError::into_inner) = values;
    }
}

/// The pattern of the factors, from the upper half of that of the matrix.
fn supernodes(upper: &SymbolicSparseColMat<usize>) -> Result<SymbolicSupernodalCholesky<usize>, PanelError> {
    let n = upper.ncols();
    let needed = StackReq::any_of(&[
        prefactorize_symbolic_cholesky_scratch::<usize>(n, upper.row_idx().len()),
        factorize_supernodal_symbolic_cholesky_scratch::<usize>(n),
    ]);
    let mut memory = MemBuffer::try_new(needed).map_err(|_| too_large())?;
    let stack = MemStack::new(&mut memory);
    let (mut tree, mut counts) = (vec![0; n], vec![0; n]);
    let tree = prefactorize_symbolic_cholesky(&mut tree, &mut counts, upper.as_ref(), stack);
    factorize_supernodal_symbolic_cholesky(upper.as_ref(), tree, &counts, stack, Default::default())
        .map_err(|_| too_large())
}

/// An order of elimination.
struct Order {
    /// Place of each freedom, or `HELD`.
    place: Vec<usize>,
    /// The upper half of a pattern that has the same factors as the reordered matrix: what is joined with the first freedom of a class
    /// fills the others of the class too.
    reduced: SymbolicSparseColMat<usize>,
}

fn order(matrix: &Symmetric, is_free: impl Fn(usize) -> bool) -> Result<Order, PanelError> {
    let classes = &matrix.classes;
    let mut number = vec![HELD; matrix.size()];
    // The first free freedom of a class stands for it.
    let (mut first, mut count) = (Vec::new(), Vec::new());
    for d in (0..matrix.size()).filter(|&d| is_free(d)) {
        let class = classes[d];
        if number[class] == HELD {
            number[class] = first.len();
            first.push(d);
            count.push(0_usize);
        }
        count[number[class]] += 1;
    }
    let n = first.len();
    let (mut starts, mut rows) = (vec![0], Vec::new());
    for &d in &first {
        for &row in &matrix.rows[matrix.starts[d]..matrix.starts[d + 1]] {
            let other = number[classes[row]];
            if other != HELD && first[other] == row {
                rows.push(other);
            }
        }
        starts.push(rows.len());
    }
    let sequence = least_degree(n, &starts, &rows)?;
    let mut begins = vec![0; n];
    let mut size = 0;
    for &class in &sequence {
        begins[class] = size;
        size += count[class];
    }
    let mut before: Vec<Vec<usize>> = vec![Vec::new(); n];
    for (class, range) in starts.windows(2).enumerate() {
        for &other in &rows[range[0]..range[1]] {
            let (early, late) = if begins[class] < begins[other] { (class, other) } else { (other, class) };
            if early != late {
                before[late].push(begins[early]);
            }
        }
    }
    let (mut starts, mut rows) = (vec![0], Vec::new());
    for &class in &sequence {
        for nth in 0..count[class] {
            rows.extend_from_slice(&before[class]);
            rows.extend((nth > 0).then_some(begins[class]));
            rows.push(begins[class] + nth);
            starts.push(rows.len());
        }
    }
    let reduced = SymbolicSparseColMat::new_unsorted_checked(size, size, starts, None, rows);
    let mut place = vec![HELD; matrix.size()];
    for d in (0..matrix.size()).filter(|&d| is_free(d)) {
        let next = &mut begins[number[classes[d]]];
        place[d] = *next;
        *next += 1;
    }
    Ok(Order { place, reduced })
}

/// The order of approximate minimum degree of a graph given by one half of its matrix.
fn least_degree(n: usize, starts: &[usize], rows: &[usize]) -> Result<Vec<usize>, PanelError> {
    let (mut sequence, mut inverse) = (vec![0; n], vec![0; n]);
    let pattern = SymbolicSparseColMatRef::new_checked(n, n, starts, None, rows);
    let needed = amd::order_maybe_unsorted_scratch::<usize>(n, rows.len());
    let mut memory = MemBuffer::try_new(needed).map_err(|_| too_large())?;
    let (control, stack) = (amd::Control::default(), MemStack::new(&mut memory));
    amd::order_maybe_unsorted(&mut sequence, &mut inverse, pattern, control, stack)
        .map_err(|_| too_large())?;
    Ok(sequence)
}

/// The lower half of the matrix in the order of elimination, and where its entries come from.
fn reordered(matrix: &Symmetric, place: &[usize], size: usize) -> (SymbolicSparseColMat<usize>, Vec<usize>) {
    let mut starts = vec![0_usize; size + 1];
    let visit = |found: &mut dyn FnMut(usize, usize, usize)| {
        for (d, &here) in place.iter().enumerate().filter(|(_, p)| **p != HELD) {
            for at in matrix.starts[d]..matrix.starts[d + 1] {
                let other = place[matrix.rows[at]];
                if other != HELD {
                    found(at, here.max(other), here.min(other));
                }
            }
        }
    };
    visit(&mut |_, _, column| starts[column + 1] += 1);
    for i in 0..size {
        starts[i + 1] += starts[i];
    }
    let mut next = starts.clone();
    let (mut rows, mut sources) = (vec![0; starts[size]], vec![0; starts[size]]);
    visit(&mut |at, row, column| {
        rows[next[column]] = row;
        sources[next[column]] = at;
        next[column] += 1;
    });
    (SymbolicSparseColMat::new_unsorted_checked(size, size, starts, None, rows), sources)
}
