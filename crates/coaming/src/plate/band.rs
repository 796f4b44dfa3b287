//! Symmetric banded matrix, positive definite: factor and solve. Row i keeps columns i − width ..= i.

/// Lower half of a symmetric banded matrix, by rows.
#[derive(Debug, Clone)]
pub(crate) struct Band {
    width: usize,
    rows: Vec<f64>,
}

impl Band {
    /// Zero matrix of `order` rows that reaches `width` places left of the diagonal.
    pub(crate) fn zero(order: usize, width: usize) -> Self {
        Self { width, rows: vec![0.0; order * (width + 1)] }
    }

    /// Adds to the entry in row `i`, column `j` (`j` not past `i`, within the band; others are left out).
    pub(crate) fn add(&mut self, i: usize, j: usize, value: f64) {
        let place = (i * (self.width + 1) + self.width + j).checked_sub(i);
        if let Some(entry) = place.and_then(|place| self.rows.get_mut(place)) {
            *entry += value;
        }
    }

    /// The entries of row `i` that the band holds, from its first column to the diagonal.
    pub(crate) fn row(&mut self, i: usize) -> &mut [f64] {
        let size = self.width + 1;
        let outside = self.width.saturating_sub(i);
        self.rows.get_mut(i * size + outside..(i + 1) * size).unwrap_or(&mut [])
    }

    /// Replaces the matrix by its Cholesky factor. A matrix that is not positive definite leaves NaN.
    pub(crate) fn factor(&mut self) {
        let (width, size) = (self.width, self.width + 1);
        let order = self.rows.len() / size;
        for i in 0..order {
            let (done, rest) = self.rows.split_at_mut(i * size);
            let (row, _) = rest.split_at_mut(size);
            let first = i.saturating_sub(width);
            // Place p of row i is column i - width + p.
            for j in first..i {
                let p = width + j - i;
                let start = width + first - i;
                let other = done.get(j * size..(j + 1) * size).unwrap_or(&[]);
                let offset = i - j;
                let s = dot(
                    row.get(start..p).unwrap_or(&[]),
                    other.get(start + offset..p + offset).unwrap_or(&[]),
                );
                let diagonal = other.last().copied().unwrap_or(f64::NAN);
                if let Some(entry) = row.get_mut(p) {
                    *entry = (*entry - s) / diagonal;
                }
            }
            let (last, left) = match row.split_last_mut() {
                Some(parts) => parts,
                None => return,
            };
            *last = (*last - dot(left, left)).sqrt();
        }
    }

    /// Solves with the factored matrix, in place.
    pub(crate) fn solve(&self, right: &mut [f64]) {
        let (width, size) = (self.width, self.width + 1);
        for (i, row) in self.rows.chunks_exact(size).enumerate() {
            let first = i.saturating_sub(width);
            let Some((diagonal, left)) = row.split_last() else { return };
            let s = dot(left.get(width + first - i..).unwrap_or(&[]), right.get(first..i).unwrap_or(&[]));
            if let Some(entry) = right.get_mut(i) {
                *entry = (*entry - s) / diagonal;
            }
        }
        for (i, row) in self.rows.chunks_exact(size).enumerate().rev() {
            let first = i.saturating_sub(width);
            let Some((diagonal, left)) = row.split_last() else { return };
            let (before, rest) = right.split_at_mut(i);
            let Some(entry) = rest.first_mut() else { return };
            *entry /= diagonal;
            let value = *entry;
            let left = left.get(width + first - i..).unwrap_or(&[]);
            for (target, l) in before.get_mut(first..).unwrap_or(&mut []).iter_mut().zip(left) {
                *target -= value * l;
            }
        }
    }
}

/// Scalar product in a fixed order, four sums side by side.
pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let (pa, pb) = (a.chunks_exact(4), b.chunks_exact(4));
    let tail: f64 = pa.remainder().iter().zip(pb.remainder()).map(|(x, y)| x * y).sum();
    let mut sums = [0.0; 4];
    for (x, y) in pa.zip(pb) {
        for ((s, x), y) in sums.iter_mut().zip(x).zip(y) {
            *s += x * y;
        }
    }
    let [s0, s1, s2, s3] = sums;
    (s0 + s1) + (s2 + s3) + tail
}
