//! The largest values of a symmetric eigenproblem that may be indefinite, by block Lanczos iteration.
//!
//! Of `matrix` x = value · stiffness x, with the stiffness factored, a block of vectors is multiplied by stiffness⁻¹ matrix again and again;
//! all products are made orthogonal in the stiffness, twice, and the problem is solved in the space that they span. A block finds values
//! that occur several times. Source: Golub and Underwood (1977); Golub and Van Loan, Matrix Computations, block Lanczos (from memory).

use super::sparse::{Factor, FreePart};
use super::symmetric::Symmetric;
use crate::error::PanelError;
use faer::{Mat, Side};

/// Vectors in a block beyond those asked for.
const SPARE: usize = 2;
/// Largest space before the iteration starts again from the best vectors found.
const LARGEST: usize = 160;
/// Most starts.
const STARTS: usize = 6;
/// Relative change of the values at which they have settled.
const SETTLED: f64 = 1e-10;
/// Largest part of a vector's product that may lie off the vector.
const RESIDUAL: f64 = 1e-4;

/// A value and its vector over the free freedoms.
pub(crate) type Pair = (f64, Vec<f64>);

struct Problem<'a> {
    part: &'a FreePart,
    factor: &'a Factor<'a>,
    stiffness: &'a Symmetric,
    matrix: &'a Symmetric,
}

/// The vectors found so far, orthogonal in the stiffness.
#[derive(Default)]
struct Space {
    vectors: Vec<Vec<f64>>,
    stiff: Vec<Vec<f64>>,
    /// Rows of the problem in the space, one for each vector that was multiplied, up to the diagonal.
    rows: Vec<Vec<f64>>,
}

/// The largest positive values, largest first; fewer than `count` where there are not as many.
pub(crate) fn largest(
    part: &FreePart,
    factor: &Factor<'_>,
    stiffness: &Symmetric,
    matrix: &Symmetric,
    count: usize,
) -> Result<Vec<Pair>, PanelError> {
    let problem = Problem { part, factor, stiffness, matrix };
    let n = part.size();
    let width = (count + SPARE).min(n);
    let mut block: Vec<Vec<f64>> = (0..width).map(|k| problem.product(&start(n, k)).1).collect();
    let mut best: Vec<Pair> = Vec::new();
    for _ in 0..STARTS {
        let (found, settled) = problem.iterate(block, count)?;
        best = found;
        if settled {
            break;
        }
        block = best.iter().map(|(_, x)| x.clone()).collect();
        block.extend((block.len()..width).map(|k| problem.product(&start(n, k + width)).1));
    }
    let size = best.first().map_or(0.0, |p| p.0);
    for (value, x) in &best {
        let residual = problem.residual(*value, x);
        if residual.is_nan() || residual > RESIDUAL * size {
            return Err(PanelError::NotConverged { steps: STARTS * LARGEST, residual: residual / size });
        }
    }
    Ok(best)
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

fn take(x: &mut [f64], factor: f64, from: &[f64]) {
    for (v, f) in x.iter_mut().zip(from) {
        *v -= factor * f;
    }
}

impl Problem<'_> {
    fn times(&self, matrix: &Symmetric, x: &[f64]) -> Vec<f64> {
        let mut full = vec![0.0; matrix.size()];
        for (&d, v) in self.part.freedoms.iter().zip(x) {
            full[d] = *v;
        }
        let y = matrix.times(&full);
        self.part.freedoms.iter().map(|&d| y[d]).collect()
    }

    /// matrix · x, and stiffness⁻¹ of it.
    fn product(&self, x: &[f64]) -> (Vec<f64>, Vec<f64>) {
        let product = self.times(self.matrix, x);
        let mut solved = product.clone();
        self.factor.solve(&mut solved);
        (product, solved)
    }

    /// Size in the stiffness of what the product has beside the vector, for a vector of size 1.
    fn residual(&self, value: f64, x: &[f64]) -> f64 {
        let (_, mut solved) = self.product(x);
        take(&mut solved, value, x);
        let size = dot(x, &self.times(self.stiffness, x));
        (dot(&solved, &self.times(self.stiffness, &solved)) / size).max(0.0).sqrt()
    }

    /// Makes a vector orthogonal to the space and adds it, unless nothing is left of it.
    fn add(&self, space: &mut Space, mut x: Vec<f64>) {
        let before = dot(&x, &self.times(self.stiffness, &x)).max(0.0).sqrt();
        if before.is_nan() || before <= 0.0 {
            return;
        }
        for _ in 0..2 {
            for (v, kv) in space.vectors.iter().zip(&space.stiff) {
                let share = dot(&x, kv);
                take(&mut x, share, v);
            }
        }
        let kx = self.times(self.stiffness, &x);
        let size = dot(&x, &kx).max(0.0).sqrt();
        if size.is_nan() || size <= 1e-9 * before {
            return;
        }
        space.vectors.push(x.iter().map(|v| v / size).collect());
        space.stiff.push(kx.iter().map(|v| v / size).collect());
    }

    fn iterate(&self, block: Vec<Vec<f64>>, count: usize) -> Result<(Vec<Pair>, bool), PanelError> {
        let mut space = Space::default();
        for x in block {
            self.add(&mut space, x);
        }
        let mut known: Vec<f64> = Vec::new();
        loop {
            let from = space.rows.len();
            let mut next = Vec::new();
            for j in from..space.vectors.len() {
                let (product, solved) = self.product(&space.vectors[j]);
                space.rows.push(space.vectors[..=j].iter().map(|v| dot(v, &product)).collect());
                next.push(solved);
            }
            let (values, weights) = ritz(&space.rows, count)?;
            let settled = values.len() == known.len()
                && values.iter().zip(&known).all(|(v, k)| (v - k).abs() <= SETTLED * v.abs());
            known.clone_from(&values);
            let grown = space.vectors.len() + next.len() <= LARGEST;
            let held = space.vectors.len();
            if grown {
                for x in next {
                    self.add(&mut space, x);
                }
            }
            let added = space.vectors.len() > held;
            // A space that cannot grow though it may holds all there is.
            if (settled && !known.is_empty()) || !added {
                let vector = |weight: &Vec<f64>| {
                    let mut x = vec![0.0; self.part.size()];
                    for (v, share) in space.vectors.iter().zip(weight) {
                        take(&mut x, -share, v);
                    }
                    x
                };
                let pairs = values.into_iter().zip(weights.iter().map(vector)).collect();
                return Ok((pairs, settled || grown));
            }
        }
    }
}

/// The problem solved in the space: the largest positive values, and the shares of the space's vectors in theirs.
fn ritz(rows: &[Vec<f64>], count: usize) -> Result<(Vec<f64>, Vec<Vec<f64>>), PanelError> {
    let m = rows.len();
    if m == 0 {
        return Ok((Vec::new(), Vec::new()));
    }
    let h = Mat::from_fn(m, m, |i, j| rows[i.max(j)][i.min(j)]);
    let eigen =
        h.self_adjoint_eigen(Side::Lower).map_err(|_| PanelError::NotFinite { name: "a buckling factor" })?;
    let values: Vec<f64> = (0..m).map(|j| eigen.S().column_vector()[j]).collect();
    let size = values.iter().fold(0.0_f64, |a, v| a.max(v.abs()));
    let mut order: Vec<usize> = (0..m).filter(|&j| values[j] > 1e-9 * size).collect();
    order.sort_by(|&a, &b| values[b].total_cmp(&values[a]));
    order.truncate(count);
    let weights = order.iter().map(|&j| (0..m).map(|i| eigen.U()[(i, j)]).collect()).collect();
    Ok((order.iter().map(|&j| values[j]).collect(), weights))
}

/// A fixed start that favours no symmetry.
fn start(n: usize, k: usize) -> Vec<f64> {
    let step = [0.618_033_988_749_894_9, 0.754_877_666_246_692_7, 0.569_840_290_998_053_3][k % 3];
    let mut x = 0.137 * (k as f64 + 1.0);
    (0..n)
        .map(|_| {
            x += step + 0.013 * k as f64;
            x -= x.floor();
            x - 0.5
        })
        .collect()
}
