//! Equations solved with the factors of a matrix near theirs.
//!
//! Conjugate gradients with those factors as the preconditioner: as the gasket moves, the stiffness changes along a few lines only, so that
//! most of the spectrum is 1 and a few steps do. The product with the matrix is that with the one that was factored, which follows from
//! the residuals, and that with the few entries that changed. Source: Golub and Van Loan, Matrix Computations, preconditioned conjugate gradients.

use super::near::Near;
use super::touched::Change;

/// More steps than this cost about as much as factors of the matrix itself.
const MOST_STEPS: usize = 16;

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

/// The solution for a right-hand side in the order of elimination, of a matrix that differs by `change` from the one that was factored, with a
/// residual of no more than `share` of it; `None` where that takes too many steps, or where the matrix is not positive definite.
pub(crate) fn conjugate(change: &Change, near: &Near<'_>, rhs: &[f64], share: f64) -> Option<Vec<f64>> {
    let mut x = vec![0.0; rhs.len()];
    let mut residual = rhs.to_vec();
    let mut better = residual.clone();
    near.solve(&mut better);
    let mut square = dot(&residual, &better);
    let aim = share * share * dot(rhs, rhs);
    if square == 0.0 {
        return Some(x);
    }
    let mut way = better.clone();
    // The product of the way with the matrix that was factored.
    let mut unchanged = residual.clone();
    for _ in 0..MOST_STEPS {
        let mut pull = unchanged.clone();
        change.add_times(&way, &mut pull);
        let curve = dot(&way, &pull);
        if curve.is_nan() || curve <= 0.0 {
            return None;
        }
        let length = square / curve;
        for (((x, w), r), p) in x.iter_mut().zip(&way).zip(&mut residual).zip(&pull) {
            *x += length * w;
            *r -= length * p;
        }
        if dot(&residual, &residual) <= aim {
            return Some(x);
        }
        better.copy_from_slice(&residual);
        near.solve(&mut better);
        let next = dot(&residual, &better);
        let keep = next / square;
        square = next;
        for (w, b) in way.iter_mut().zip(&better) {
            *w = b + keep * *w;
        }
        for (u, r) in unchanged.iter_mut().zip(&residual) {
            *u = r + keep * *u;
        }
    }
    None
}
