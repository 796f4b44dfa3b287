//! The lowest modes, by block Lanczos iteration on the inverse of the stiffness.
//!
//! Four vectors are multiplied by stiffness⁻¹ mass again and again; all that come up are made orthogonal in the mass, twice, and the
//! problem is solved in the space that they span. A block finds frequencies that occur up to four times, as the three rigid motions of a
//! free panel do. Sources: Ericsson and Ruhe, Math. Comp. 35 (1980) 1251-1268 (the inverse); Golub and Van Loan, Matrix Computations,
//! block Lanczos (from memory).

use super::lanes::{Compact, LANES, Row, Square, products, take};
use super::sparse::Factor;
use crate::error::PanelError;
use crate::progress::Watch;
use faer::{Mat, Side};

/// Largest part of a vector's product that lies off the space, over the product, for the vector to have settled.
const SETTLED: f64 = 1e-6;
/// What is left of a vector once it is orthogonal to the others, over the largest value, below which there is nothing left.
const NOTHING: f64 = 1e-9;
/// Vectors in the space at most: this many times those asked for, and as many more.
const MOST: (usize, usize) = (5, 120);

/// The largest values of mass over stiffness with their vectors in the order of elimination, each of a modal mass of 1; fewer than
/// `count` where there are not as many.
pub(crate) fn vibrations(
    factor: &Factor<'_>,
    mass: &Compact,
    size: usize,
    count: usize,
    watch: &mut Watch<'_>,
) -> Result<Vec<(f64, Vec<f64>)>, PanelError> {
    let mut space = Space::default();
    let first: Vec<Row> = start(size);
    let mut next = mass.times(&first);
    factor.solve_lanes(&mut next);
    let _ = space.add(next, mass, f64::INFINITY);
    let mut residual = f64::INFINITY;
    while space.blocks.len() * LANES <= MOST.0 * count + MOST.1 {
        watch.step()?;
        let Some(last) = space.blocks.last() else { break };
        let mut next = last.heavy.clone();
        factor.solve_lanes(&mut next);
        let coupling = space.orthogonal(&mut next);
        space.within.push(coupling);
        let pairs = space.pairs()?;
        let largest = pairs.first().map_or(0.0, |p| p.0);
        let beyond = space.add(next, mass, largest);
        let off = |(value, weights): &(f64, Vec<f64>)| {
            let tail = &weights[weights.len() - LANES..];
            let part = |row: usize| (0..LANES).map(|k| beyond[row][k] * tail[k]).sum::<f64>();
            (0..LANES).map(|row| part(row) * part(row)).sum::<f64>().sqrt() / value
        };
        let wanted = &pairs[..count.min(pairs.len())];
        residual = wanted.iter().map(off).fold(0.0, f64::max);
        let complete = wanted.len() == count && residual <= SETTLED;
        // Where nothing is left to add, the space holds all there is.
        if complete || beyond.iter().flatten().all(|b| *b == 0.0) {
            return Ok(wanted.iter().map(|(value, weights)| (*value, space.vector(weights))).collect());
        }
    }
    Err(PanelError::NotConverged { steps: space.blocks.len(), residual })
}

/// Four vectors of the space and the mass times them.
struct Block {
    vectors: Vec<Row>,
    heavy: Vec<Row>,
}

/// The vectors found so far, orthogonal in the mass, and the problem in the space that they span.
#[derive(Default)]
struct Space {
    blocks: Vec<Block>,
    /// What the product of each block has of that block.
    within: Vec<Square>,
    /// What the product of each block has of the next.
    beyond: Vec<Square>,
}

impl Space {
    /// Takes the space out of four vectors, twice; gives what they had of the last block.
    fn orthogonal(&self, x: &mut [Row]) -> Square {
        let mut last = [[0.0; LANES]; LANES];
        for _ in 0..2 {
            let mut shares = last;
            for block in &self.blocks {
                shares = products(&block.heavy, x);
                take(x, &block.vectors, &shares);
            }
            last = sum(last, shares);
        }
        last
    }

    /// Makes four vectors orthogonal to each other in the mass and adds them; gives the triangle that leads back to them. One of which
    /// nothing is left becomes nothing.
    fn add(&mut self, mut x: Vec<Row>, mass: &Compact, largest: f64) -> Square {
        let mut back = [[0.0; LANES]; LANES];
        for (k, row) in back.iter_mut().enumerate() {
            row[k] = 1.0;
        }
        let mut heavy = mass.times(&x);
        for pass in 0..2 {
            let gram = products(&x, &heavy);
            let least = if largest.is_finite() { NOTHING * largest } else { 0.0 };
            let triangle = cholesky(&gram, if pass == 0 { least * least } else { 0.25 });
            divide(&mut x, &triangle);
            divide(&mut heavy, &triangle);
            back = multiply(&triangle, &back);
        }
        if largest.is_finite() {
            self.beyond.push(back);
        }
        self.blocks.push(Block { vectors: x, heavy });
        back
    }

    /// Values of the problem in the space, largest first, and the shares of the space's vectors in theirs.
    fn pairs(&self) -> Result<Vec<(f64, Vec<f64>)>, PanelError> {
        let n = self.within.len() * LANES;
        let h = Mat::from_fn(n, n, |i, j| {
            let (high, low) = (i.max(j), i.min(j));
            let (row, column) = (high % LANES, low % LANES);
            match high / LANES - low / LANES {
                0 => 0.5 * (self.within[low / LANES][row][column] + self.within[low / LANES][column][row]),
                1 => self.beyond[low / LANES][row][column],
                _ => 0.0,
            }
        });
        let fault = |_| PanelError::NotFinite { name: "a natural frequency" };
        let eigen = h.self_adjoint_eigen(Side::Lower).map_err(fault)?;
        let values: Vec<f64> = (0..n).map(|j| eigen.S().column_vector()[j]).collect();
        let mut order: Vec<usize> = (0..n).filter(|&j| values[j] > 0.0).collect();
        order.sort_by(|&a, &b| values[b].total_cmp(&values[a]));
        Ok(order.into_iter().map(|j| (values[j], (0..n).map(|i| eigen.U()[(i, j)]).collect())).collect())
    }

    fn vector(&self, weights: &[f64]) -> Vec<f64> {
        let mut x = vec![0.0; self.blocks.first().map_or(0, |b| b.vectors.len())];
        for (block, shares) in self.blocks.iter().zip(weights.chunks_exact(LANES)) {
            for (x, v) in x.iter_mut().zip(&block.vectors) {
                *x += (v[0] * shares[0] + v[1] * shares[1]) + (v[2] * shares[2] + v[3] * shares[3]);
            }
        }
        x
    }
}

fn sum(a: Square, b: Square) -> Square {
    let mut c = a;
    for (c, b) in c.iter_mut().flatten().zip(b.iter().flatten()) {
        *c += b;
    }
    c
}

/// Upper triangle R with Rᵀ R the given matrix; rows whose pivot is no more than `least` are nothing.
fn cholesky(matrix: &Square, least: f64) -> Square {
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
fn divide(x: &mut [Row], r: &Square) {
    let inverse: Row = std::array::from_fn(|k| if r[k][k] > 0.0 { 1.0 / r[k][k] } else { 0.0 });
    for row in x {
        for j in 0..LANES {
            let known: f64 = (0..j).map(|k| row[k] * r[k][j]).sum();
            row[j] = (row[j] - known) * inverse[j];
        }
    }
}

fn multiply(a: &Square, b: &Square) -> Square {
    std::array::from_fn(|i| std::array::from_fn(|j| (0..LANES).map(|k| a[i][k] * b[k][j]).sum()))
}

/// A fixed start that favours no symmetry: plain sequences of low discrepancy.
fn start(size: usize) -> Vec<Row> {
    let steps =
        [0.618_033_988_749_894_9, 0.754_877_666_246_692_7, 0.569_840_290_998_053_3, 0.819_172_513_396_164_4];
    let mut x: Row = [0.137, 0.274, 0.411, 0.548];
    (0..size)
        .map(|_| {
            for (x, step) in x.iter_mut().zip(steps) {
                *x = (*x + step).fract();
            }
            x.map(|x| x - 0.5)
        })
        .collect()
}
