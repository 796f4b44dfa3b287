//! The largest values of matrix · x = value · stiffness · x, by block Lanczos iteration: with the mass, the lowest modes of vibration; with
//! what forces in the plane take from the stiffness, the lowest factors of buckling.
//!
//! Four vectors are multiplied by stiffness⁻¹ matrix again and again; all that come up are made orthogonal, twice, and the problem is
//! solved in the space that they span. A block finds values that occur up to four times, as those of the three rigid motions of a free panel
//! do. A mass is positive, and vectors are made orthogonal in it; what forces take may be negative, and there they are made orthogonal in
//! the stiffness, whose product with a new vector is the matrix times the last one. Sources: Ericsson and Ruhe, Math. Comp. 35
//! (1980) 1251-1268 (the inverse); Golub and Van Loan, Matrix Computations, block Lanczos (from memory).

use super::lanes::{Compact, LANES, Row, Square, cholesky, divide, multiply, products, sum, take};
use super::sparse::Factor;
use crate::error::PanelError;
use crate::progress::Watch;
use faer::{Mat, Side};

/// Largest part of a vector's product that lies off the space, over the product, for the vector to have settled. Its value is off
/// by about the square of that.
const SETTLED: f64 = 1e-6;
/// What is left of a vector once it is orthogonal to the others, over the largest value, below which there is nothing left.
const NOTHING: f64 = 1e-9;
/// Values smaller than this share of the largest in size are none.
const NONE: f64 = 1e-9;
/// Vectors in the space at most: this many times those asked for, and as many more.
const MOST: (usize, usize) = (5, 160);

/// A value and its vector in the order of elimination.
pub(crate) type Pair = (f64, Vec<f64>);

/// A matrix over the stiffness.
pub(crate) enum Pencil<'a> {
    /// A mass: no value is negative, and vectors have a modal mass of 1.
    Mass(&'a Compact),
    /// A matrix that may be indefinite; vectors have a stiffness of 1.
    Indefinite(&'a Compact),
}

/// Four vectors, and what weighs them times them: the mass, or the stiffness.
struct Block {
    vectors: Vec<Row>,
    heavy: Vec<Row>,
}

impl Pencil<'_> {
    /// A block to begin from.
    fn begin(&self, vectors: Vec<Row>) -> Block {
        let heavy = match self {
            Self::Mass(mass) => mass.times(&vectors),
            Self::Indefinite(_) => Vec::new(),
        };
        Block { vectors, heavy }
    }

    /// stiffness⁻¹ matrix times a block; its weight where that is known by then.
    fn product(&self, factor: &Factor<'_>, block: &Block) -> Block {
        let (mut vectors, heavy) = match self {
            Self::Mass(_) => (block.heavy.clone(), Vec::new()),
            Self::Indefinite(matrix) => {
                let product = matrix.times(&block.vectors);
                (product.clone(), product)
            }
        };
        factor.solve_lanes(&mut vectors);
        Block { vectors, heavy }
    }

    /// Weighs a block that is not weighed yet.
    fn weigh(&self, block: &mut Block) {
        if let Self::Mass(mass) = self {
            block.heavy = mass.times(&block.vectors);
        }
    }
}

/// The largest positive values with their vectors; fewer than `count` where there are not as many.
pub(crate) fn largest(
    factor: &Factor<'_>,
    pencil: &Pencil<'_>,
    size: usize,
    count: usize,
    watch: &mut Watch<'_>,
) -> Result<Vec<Pair>, PanelError> {
    let mut space = Space::default();
    let first = pencil.product(factor, &pencil.begin(start(size)));
    let _ = space.add(first, pencil, f64::INFINITY);
    let mut residual = f64::INFINITY;
    let mut found = Vec::new();
    while space.blocks.len() * LANES <= MOST.0 * count + MOST.1 {
        watch.step()?;
        let Some(last) = space.blocks.last() else { break };
        let mut next = pencil.product(factor, last);
        let coupling = space.orthogonal(&mut next);
        space.within.push(coupling);
        let Pairs { pairs, size } = space.pairs()?;
        let beyond = space.add(next, pencil, size);
        let off = |(value, weights): &Pair| {
            let tail = &weights[weights.len() - LANES..];
            let part = |row: usize| (0..LANES).map(|k| beyond[row][k] * tail[k]).sum::<f64>();
            (0..LANES).map(|row| part(row) * part(row)).sum::<f64>().sqrt() / value
        };
        found = pairs;
        found.truncate(count);
        residual = found.iter().map(off).fold(0.0, f64::max);
        let complete = found.len() == count && residual <= SETTLED;
        // Where nothing is left to add, the space holds all there is.
        if complete || beyond.iter().flatten().all(|b| *b == 0.0) {
            residual = 0.0;
            break;
        }
    }
    if residual > SETTLED {
        return Err(PanelError::NotConverged { steps: space.blocks.len(), residual });
    }
    Ok(found.into_iter().map(|(value, weights)| (value, space.vector(&weights))).collect())
}

/// The vectors found so far, orthogonal to each other, and the problem in the space that they span.
#[derive(Default)]
struct Space {
    blocks: Vec<Block>,
    /// What the product of each block has of that block.
    within: Vec<Square>,
    /// What the product of each block has of the next.
    beyond: Vec<Square>,
}

/// What the problem in the space gives: positive values, largest first, with the shares of the space's vectors in theirs; and the
/// largest value in size.
struct Pairs {
    pairs: Vec<Pair>,
    size: f64,
}

impl Space {
    /// Takes the space out of four vectors, twice; gives what they had of the last block.
    fn orthogonal(&self, next: &mut Block) -> Square {
        let mut last = [[0.0; LANES]; LANES];
        for _ in 0..2 {
            let mut shares = last;
            for block in &self.blocks {
                shares = products(&block.heavy, &next.vectors);
                take(&mut next.vectors, &block.vectors, &shares);
                take(&mut next.heavy, &block.heavy, &shares);
            }
            last = sum(last, shares);
        }
        last
    }

    /// Makes four vectors orthogonal to each other and adds them; gives the triangle that leads back to them. One of which nothing is left
    /// becomes nothing.
    fn add(&mut self, mut next: Block, pencil: &Pencil<'_>, largest: f64) -> Square {
        let mut back = [[0.0; LANES]; LANES];
        for (k, row) in back.iter_mut().enumerate() {
            row[k] = 1.0;
        }
        pencil.weigh(&mut next);
        for pass in 0..2 {
            let gram = products(&next.vectors, &next.heavy);
            let least = if largest.is_finite() { NOTHING * largest } else { 0.0 };
            let triangle = cholesky(&gram, if pass == 0 { least * least } else { 0.25 });
            divide(&mut next.vectors, &triangle);
            divide(&mut next.heavy, &triangle);
            back = multiply(&triangle, &back);
        }
        if largest.is_finite() {
            self.beyond.push(back);
        }
        self.blocks.push(next);
        back
    }

    fn pairs(&self) -> Result<Pairs, PanelError> {
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
        let fault = |_| PanelError::NotFinite { name: "a natural frequency or a factor of buckling" };
        let eigen = h.self_adjoint_eigen(Side::Lower).map_err(fault)?;
        let values: Vec<f64> = (0..n).map(|j| eigen.S().column_vector()[j]).collect();
        let size = values.iter().fold(0.0_f64, |size, value| size.max(value.abs()));
        let mut order: Vec<usize> = (0..n).filter(|&j| values[j] > NONE * size).collect();
        order.sort_by(|&a, &b| values[b].total_cmp(&values[a]));
        let weights = |j: usize| (0..n).map(|i| eigen.U()[(i, j)]).collect();
        Ok(Pairs { pairs: order.into_iter().map(|j| (values[j], weights(j))).collect(), size })
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
