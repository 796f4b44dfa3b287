//! Substitution with supernodal Cholesky factors, forward and back.
//!
//! Columns of one supernode have the same rows below them and lie one after the other, so that the rows are looked up once for all of them.
//! Source: Davis, Direct Methods for Sparse Linear Systems (2006), chapter 3, with supernodes as in chapter 4.

use super::lanes::{LANES, Row};
use faer::sparse::linalg::cholesky::supernodal::SymbolicSupernodalCholesky;

/// Columns taken at a time.
const TOGETHER: usize = 4;

/// Solves L Lᵀ x = x in place for one right-hand side.
pub(crate) fn substitute(symbolic: &SymbolicSupernodalCholesky<usize>, values: &[f64], x: &mut [f64]) {
    let mut below = Vec::new();
    for s in 0..symbolic.n_supernodes() {
        let block = Block::new(symbolic, values, s);
        block.forward(x, &mut below);
    }
    for s in (0..symbolic.n_supernodes()).rev() {
        let block = Block::new(symbolic, values, s);
        block.back(x, &mut below);
    }
}

/// The same for four right-hand sides.
pub(crate) fn substitute_lanes(symbolic: &SymbolicSupernodalCholesky<usize>, values: &[f64], x: &mut [Row]) {
    let mut below = Vec::new();
    for s in 0..symbolic.n_supernodes() {
        Block::new(symbolic, values, s).forward_lanes(x, &mut below);
    }
    for s in (0..symbolic.n_supernodes()).rev() {
        Block::new(symbolic, values, s).back_lanes(x, &mut below);
    }
}

/// One supernode: some columns, of which the first rows are their own.
struct Block<'a> {
    start: usize,
    width: usize,
    height: usize,
    /// Rows below its own.
    pattern: &'a [usize],
    /// Column by column.
    values: &'a [f64],
}

impl<'a> Block<'a> {
    fn new(symbolic: &'a SymbolicSupernodalCholesky<usize>, values: &'a [f64], s: usize) -> Self {
        let supernode = symbolic.supernode(s);
        let pattern = supernode.pattern();
        let width = symbolic.supernode_end()[s] - supernode.start();
        let places = symbolic.col_ptr_for_val();
        let values = &values[places[s]..places[s + 1]];
        Self { start: supernode.start(), width, height: width + pattern.len(), pattern, values }
    }

    fn column(&self, j: usize) -> &'a [f64] {
        &self.values[j * self.height..(j + 1) * self.height]
    }

    fn forward(&self, x: &mut [f64], below: &mut Vec<f64>) {
        let own = &mut x[self.start..self.start + self.width];
        for j in 0..self.width {
            let column = &self.column(j)[..self.width];
            own[j] /= column[j];
            let known = own[j];
            for (x, l) in own[j + 1..].iter_mut().zip(&column[j + 1..]) {
                *x -= l * known;
            }
        }
        below.clear();
        below.resize(self.pattern.len(), 0.0);
        let mut j = 0;
        while j + TOGETHER <= self.width {
            let [a, b, c, d] = [0, 1, 2, 3].map(|k| &self.column(j + k)[self.width..]);
            let [p, q, r, s] = [0, 1, 2, 3].map(|k| own[j + k]);
            for ((((sum, a), b), c), d) in below.iter_mut().zip(a).zip(b).zip(c).zip(d) {
                *sum += (a * p + b * q) + (c * r + d * s);
            }
            j += TOGETHER;
        }
        for j in j..self.width {
            let known = own[j];
            for (sum, l) in below.iter_mut().zip(&self.column(j)[self.width..]) {
                *sum += l * known;
            }
        }
        for (&row, sum) in self.pattern.iter().zip(&*below) {
            x[row] -= sum;
        }
    }

    fn back(&self, x: &mut [f64], below: &mut Vec<f64>) {
        below.clear();
        below.extend(self.pattern.iter().map(|&row| x[row]));
        let own = &mut x[self.start..self.start + self.width];
        for j in (0..self.width).rev() {
            let column = self.column(j);
            let (mine, rest) = column.split_at(self.width);
            let sum = dot(rest, below) + dot(&mine[j + 1..], &own[j + 1..]);
            own[j] = (own[j] - sum) / mine[j];
        }
    }

    fn forward_lanes(&self, x: &mut [Row], below: &mut Vec<Row>) {
        let own = &mut x[self.start..self.start + self.width];
        for j in 0..self.width {
            let column = &self.column(j)[..self.width];
            let known = own[j].map(|v| v / column[j]);
            own[j] = known;
            for (x, &l) in own[j + 1..].iter_mut().zip(&column[j + 1..]) {
                take(x, l, &known);
            }
        }
        below.clear();
        below.resize(self.pattern.len(), [0.0; LANES]);
        let mut j = 0;
        while j + 1 < self.width {
            let (a, b) = (&self.column(j)[self.width..], &self.column(j + 1)[self.width..]);
            let (p, q) = (own[j], own[j + 1]);
            for ((sum, a), b) in below.iter_mut().zip(a).zip(b) {
                for k in 0..LANES {
                    sum[k] += a * p[k] + b * q[k];
                }
            }
            j += 2;
        }
        if j < self.width {
            let known = own[j];
            for (sum, &l) in below.iter_mut().zip(&self.column(j)[self.width..]) {
                take(sum, -l, &known);
            }
        }
        for (&row, sum) in self.pattern.iter().zip(&*below) {
            take(&mut x[row], 1.0, sum);
        }
    }

    fn back_lanes(&self, x: &mut [Row], below: &mut Vec<Row>) {
        below.clear();
        below.extend(self.pattern.iter().map(|&row| x[row]));
        let own = &mut x[self.start..self.start + self.width];
        for j in (0..self.width).rev() {
            let (mine, rest) = self.column(j).split_at(self.width);
            let mut value = own[j];
            for (&l, known) in rest.iter().zip(&*below) {
                take(&mut value, l, known);
            }
            for (&l, known) in mine[j + 1..].iter().zip(&own[j + 1..]) {
                take(&mut value, l, known);
            }
            own[j] = value.map(|v| v / mine[j]);
        }
    }
}

/// Takes `share` times four values from four others.
fn take(from: &mut Row, share: f64, what: &Row) {
    for k in 0..LANES {
        from[k] -= share * what[k];
    }
}

/// Sum of products in four strands, in an order of its own.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut strands = [0.0; TOGETHER];
    let (a, b) = (a.chunks_exact(TOGETHER), b.chunks_exact(TOGETHER));
    let rest: f64 = a.remainder().iter().zip(b.remainder()).map(|(x, y)| x * y).sum();
    for (a, b) in a.zip(b) {
        for k in 0..TOGETHER {
            strands[k] += a[k] * b[k];
        }
    }
    (strands[0] + strands[1]) + (strands[2] + strands[3]) + rest
}
