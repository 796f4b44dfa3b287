//! A sparse symmetric matrix, lower half by columns.

/// The pattern and the values of a sparse symmetric matrix: the lower half, column by column, rows rising.
#[derive(Debug, Clone)]
pub(crate) struct Symmetric {
    pub starts: Vec<usize>,
    pub rows: Vec<usize>,
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
        let mut starts = Vec::with_capacity(size + 1);
        let mut rows = Vec::new();
        let mut column: Vec<usize> = Vec::new();
        starts.push(0);
        for d in 0..size {
            column.clear();
            for &l in &lists_of[counts[d]..counts[d + 1]] {
                column.extend(lists[l].iter().filter(|&&r| r >= d));
            }
            column.sort_unstable();
            column.dedup();
            rows.extend_from_slice(&column);
            starts.push(rows.len());
        }
        let values = vec![0.0; rows.len()];
        Self { starts, rows, values }
    }

    /// Number of rows.
    pub(crate) fn size(&self) -> usize {
        self.starts.len() - 1
    }

    /// Place of an entry; the pattern holds it by construction.
    fn place(&self, row: usize, column: usize) -> Option<usize> {
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

    /// Value of one diagonal entry.
    pub(crate) fn diagonal(&self, row: usize) -> f64 {
        self.place(row, row).map_or(0.0, |p| self.values[p])
    }

    /// Adds a small dense matrix at some freedoms.
    pub(crate) fn add_block(&mut self, freedoms: &[usize], values: impl Fn(usize, usize) -> f64) {
        for (j, &column) in freedoms.iter().enumerate() {
            for (i, &row) in freedoms.iter().enumerate() {
                if row >= column {
                    self.add(row, column, values(i, j));
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
