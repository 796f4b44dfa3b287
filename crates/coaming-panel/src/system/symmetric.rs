//! A sparse symmetric matrix, lower half by columns.

use std::sync::Arc;

/// The pattern and the values of a sparse symmetric matrix: the lower half, column by column, rows rising.
#[derive(Debug, Clone)]
pub(crate) struct Symmetric {
    pub starts: Arc<Vec<usize>>,
    pub rows: Arc<Vec<usize>>,
    /// Freedoms of one class have the same neighbours; the class has the number of its first freedom.
    pub classes: Arc<Vec<usize>>,
    pub values: Vec<f64>,
}

impl Symmetric {
    /// A zero matrix whose pattern joins all freedoms that appear together in a list.
    pub(crate) fn pattern(size: usize, lists: &[Vec<usize>]) -> Self {
        let mut counts = vec![0_usize; size + 1];
        for &d in lists.iter().flatten() {
            counts[d + 1] += 1;
        }
        for i in 0..size {
            counts[i + 1] += counts[i];
        }
        let mut lists_of = vec![0_usize; counts[size]];
        let mut next = counts.clone();
        for (l, list) in lists.iter().enumerate() {
            for &d in list {
                lists_of[next[d]] = l;
                next[d] += 1;
            }
        }
        let of = |d: usize| &lists_of[counts[d]..counts[d + 1]];
        let mut classes: Vec<usize> = (0..size).collect();
        for d in 0..size {
            let Some(&l) = of(d).first() else { continue };
            let same = |&&e: &&usize| e < d && classes[e] == e && of(e) == of(d);
            if let Some(&first) = lists[l].iter().find(same) {
                classes[d] = first;
            }
        }
        // The neighbours of each class, rising; found when its first freedom comes.
        let mut neighbours: Vec<usize> = Vec::new();
        let mut ranges = vec![0..0; size];
        let mut seen = vec![usize::MAX; size];
        let mut starts = Vec::with_capacity(size + 1);
        let mut rows = Vec::new();
        starts.push(0);
        for d in 0..size {
            let class = classes[d];
            if class == d {
                let from = neighbours.len();
                for &l in of(d) {
                    for &r in &lists[l] {
                        if seen[r] != d {
                            seen[r] = d;
                            neighbours.push(r);
                        }
                    }
                }
                neighbours[from..].sort_unstable();
                ranges[d] = from..neighbours.len();
            }
            let all = &neighbours[ranges[class].clone()];
            rows.extend_from_slice(&all[all.partition_point(|&r| r < d)..]);
            starts.push(rows.len());
        }
        let values = vec![0.0; rows.len()];
        Self { starts: Arc::new(starts), rows: Arc::new(rows), classes: Arc::new(classes), values }
    }

    /// A zero matrix of the same pattern.
    pub(crate) fn zero(&self) -> Self {
        Self {
            starts: Arc::clone(&self.starts),
            rows: Arc::clone(&self.rows),
            classes: Arc::clone(&self.classes),
            values: vec![0.0; self.values.len()],
        }
    }

    /// Number of rows.
    pub(crate) fn size(&self) -> usize {
        self.starts.len() - 1
    }

    /// Place of an entry; the pattern holds it by construction.
    pub(crate) fn place(&self, row: usize, column: usize) -> Option<usize> {
        let (row, column) = (row.max(column), row.min(column));
        let (from, to) = (self.starts[column], self.starts[column + 1]);
        self.rows[from..to].binary_search(&row).ok().map(|p| from + p)
    }

    /// Adds to one entry; call once per pair of mirrored entries.
    pub(crate) fn add(&mut self, row: usize, column: usize, value: f64) {
        if let Some(place) = self.place(row, column) {
            self.values[place] += value;
        }
    }

    /// Value of one diagonal entry: the first of its column.
    pub(crate) fn diagonal(&self, row: usize) -> f64 {
        let first = self.starts[row];
        if self.rows.get(first) == Some(&row) { self.values[first] } else { 0.0 }
    }

    /// Adds a small dense matrix at some freedoms.
    pub(crate) fn add_block(&mut self, freedoms: &[usize], values: impl Fn(usize, usize) -> f64) {
        let mut order: Vec<(usize, usize)> = freedoms.iter().copied().zip(0..).collect();
        order.sort_unstable();
        let mut first = 0;
        for (nth, &(column, j)) in order.iter().enumerate() {
            if order[first].0 < column {
                first = nth;
            }
            // Rows rise both in the column and in the block: each is looked for from where the one before was found.
            let range = self.starts[column]..self.starts[column + 1];
            let (rows, values_here) = (&self.rows[range.clone()], &mut self.values[range]);
            let mut at = 0;
            for &(row, i) in &order[first..] {
                while at < rows.len() && rows[at] < row {
                    at += 1;
                }
                if at < rows.len() && rows[at] == row {
                    values_here[at] += values(i, j);
                }
            }
        }
    }

    /// The product with a vector.
    pub(crate) fn times(&self, x: &[f64]) -> Vec<f64> {
        let mut y = vec![0.0; self.size()];
        for (j, &xj) in x.iter().enumerate() {
            let mut sum = 0.0;
            for p in self.starts[j]..self.starts[j + 1] {
                let (i, v) = (self.rows[p], self.values[p]);
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
