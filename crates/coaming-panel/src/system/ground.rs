//! What every step of large deflection needs of a mesh: the shapes of its triangles, and where the entries of their matrices stand in that
//! of the mesh. Found once.

use super::level::Level;
use super::symmetric::Symmetric;
use crate::element::shaped::Shaped;
use crate::element::stiffness::ElementMatrix;
use crate::element::triangle::Triangle;

/// What every step of large deflection needs of a mesh.
#[derive(Debug)]
pub(crate) struct Ground {
    shapes: Vec<Shaped>,
    lists: Vec<Vec<usize>>,
    /// Where the places of each triangle begin.
    starts: Vec<usize>,
    /// Places of the lower halves of the triangles' matrices, row by row.
    places: Vec<u32>,
    /// Freedoms of triangles of which two are one, as along a line that stays straight: these are looked up each time.
    merged: Vec<Option<Vec<usize>>>,
}

impl Ground {
    /// Finds all for a mesh.
    pub(crate) fn new(level: &Level) -> Self {
        let count = level.mesh.triangles.len();
        let mut made = Self {
            shapes: (0..count).map(|t| Shaped::new(Triangle::new(level.mesh.corners(t)))).collect(),
            lists: Vec::with_capacity(count),
            starts: vec![0],
            places: Vec::new(),
            merged: Vec::with_capacity(count),
        };
        let mut order: Vec<(usize, usize)> = Vec::new();
        for t in 0..count {
            let list = level.freedoms.of_triangle(&level.mesh, t, level.stacks.membrane(t));
            let targets = level.freedoms.targets(&list);
            order.clear();
            order.extend(targets.iter().copied().zip(0..));
            order.sort_unstable();
            if order.windows(2).any(|pair| pair[0].0 == pair[1].0) {
                made.merged.push(Some(targets));
            } else {
                made.merged.push(None);
                made.add_places(&level.stiffness, &order);
            }
            made.starts.push(made.places.len());
            made.lists.push(list);
        }
        made
    }

    /// The shape of a triangle.
    pub(crate) fn shaped(&self, t: usize) -> &Shaped {
        &self.shapes[t]
    }

    /// The freedoms of a triangle.
    pub(crate) fn list(&self, t: usize) -> &[usize] {
        &self.lists[t]
    }

    fn add_places(&mut self, matrix: &Symmetric, order: &[(usize, usize)]) {
        let from = self.places.len();
        let n = order.len();
        self.places.resize(from + n * (n + 1) / 2, 0);
        for (nth, &(column, j)) in order.iter().enumerate() {
            // Rows rise both in the column and in the block.
            let mut at = matrix.starts[column];
            for &(row, i) in &order[nth..] {
                while matrix.rows[at] < row {
                    at += 1;
                }
                let (high, low) = (i.max(j), i.min(j));
                self.places[from + high * (high + 1) / 2 + low] = at as u32;
            }
        }
    }

    /// Adds the matrix of a triangle, of which the lower half is read.
    pub(crate) fn add(&self, matrix: &mut Symmetric, t: usize, k: &ElementMatrix) {
        if let Some(targets) = &self.merged[t] {
            return matrix.add_block(targets, |i, j| k.values[i * k.size + j]);
        }
        let mut places = self.places[self.starts[t]..self.starts[t + 1]].iter();
        for (i, row) in k.values.chunks_exact(k.size).enumerate() {
            for (value, &place) in row[..=i].iter().zip(places.by_ref()) {
                matrix.values[place as usize] += value;
            }
        }
    }
}
