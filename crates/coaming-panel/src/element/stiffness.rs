//! Stiffness of one triangle: membrane and bending coupled through A, B and D of every bonded group, and slip between groups.

use super::quadrature::{DEGREE_4, MIDSIDE};
use super::shape::{curvature_map, quadratic, slope_map, slope_mismatch, strain_map};
use super::triangle::Triangle;
use crate::model::stack::{Matrix3, Slip, Stack};

/// Freedoms of the bending part: w, slope x, slope y at three corners.
pub(crate) const BENDING: usize = 9;
/// Freedoms of one group's membrane part: u, v at six nodes.
pub(crate) const MEMBRANE: usize = 12;

/// A square matrix of one element.
#[derive(Debug, Clone)]
pub(crate) struct ElementMatrix {
    /// Number of rows.
    pub size: usize,
    /// Rows one after the other.
    pub values: Vec<f64>,
}

impl ElementMatrix {
    /// A zero matrix.
    pub(crate) fn zeros(size: usize) -> Self {
        Self { size, values: vec![0.0; size * size] }
    }

    /// Makes it a zero matrix of this size, in the memory that there is.
    pub(crate) fn clear(&mut self, size: usize) {
        self.size = size;
        self.values.clear();
        self.values.resize(size * size, 0.0);
    }

    /// Copies what stands in the first `columns` columns below those rows to the right of them.
    pub(crate) fn mirror(&mut self, columns: usize) {
        for i in columns..self.size {
            for j in 0..columns {
                self.values[j * self.size + i] = self.values[i * self.size + j];
            }
        }
    }

    /// Adds to one entry.
    pub(crate) fn add(&mut self, row: usize, column: usize, value: f64) {
        self.values[row * self.size + column] += value;
    }

    /// Adds factor · leftᵀ · middle · right at an offset; `left` and `right` have three rows.
    pub(crate) fn add_product<const L: usize, const R: usize>(
        &mut self,
        at: [usize; 2],
        left: &[[f64; L]; 3],
        middle: &Matrix3,
        right: &[[f64; R]; 3],
        factor: f64,
    ) {
        let mut products = [[0.0; R]; 3];
        for (product, row) in products.iter_mut().zip(middle) {
            for j in 0..R {
                product[j] = factor * (row[0] * right[0][j] + row[1] * right[1][j] + row[2] * right[2][j]);
            }
        }
        for i in 0..L {
            let from = (at[0] + i) * self.size + at[1];
            let [a, b, c] = [left[0][i], left[1][i], left[2][i]];
            for (j, value) in self.values[from..from + R].iter_mut().enumerate() {
                *value += a * products[0][j] + b * products[1][j] + c * products[2][j];
            }
        }
    }
}

/// Stiffness of one triangle. Its freedoms are the bending ones, then twelve for each group in `membrane` in order.
pub(crate) fn stiffness(triangle: &Triangle, stack: &Stack, membrane: &[usize]) -> ElementMatrix {
    let mut k = ElementMatrix::zeros(BENDING + MEMBRANE * membrane.len());
    let slopes = slope_map(triangle);
    let offset = |group: usize| membrane.iter().position(|&g| g == group).map(|p| BENDING + MEMBRANE * p);
    for (l, weight) in MIDSIDE {
        let strain = strain_map(triangle, l);
        let curvature = curvature_map(&strain, &slopes);
        let factor = weight * triangle.area;
        for part in &stack.groups {
            k.add_product([0, 0], &curvature, &part.d, &curvature, factor);
            if let Some(at) = offset(part.group) {
                k.add_product([at, at], &strain, &part.a, &strain, factor);
                k.add_product([at, 0], &strain, &part.b, &curvature, factor);
                k.add_product([0, at], &curvature, &part.b, &strain, factor);
            }
        }
    }
    for slip in &stack.slips {
        if let (Some(lower), Some(upper)) = (offset(slip.lower), offset(slip.upper)) {
            add_slip(
                &mut k,
                triangle,
                &slopes,
                [lower, upper],
                slip.arm,
                slip.stiffness,
                mean_share(triangle, stack, slip),
            );
        }
    }
    k
}

/// How far the mean slope in the slip is to be that of the deflection itself, 0..=1.
///
/// The discrete-Kirchhoff slopes have the right mean only if bending ties the corner slopes to the deflection. Where the joint is soft
/// on the scale of the triangle nothing else does, and the mean must be put right; where it is stiff, putting it right would lock.
/// The measure is joint stiffness × area over the membrane stiffness that slips.
pub(crate) fn mean_share(triangle: &Triangle, stack: &Stack, slip: &Slip) -> f64 {
    let membrane = |group: usize| {
        stack.groups.iter().find(|p| p.group == group).map_or(0.0, |p| 0.5 * (p.a[0][0] + p.a[1][1]))
    };
    let (lower, upper) = (membrane(slip.lower), membrane(slip.upper));
    let together = lower * upper / (lower + upper);
    together / (together + slip.stiffness * triangle.area)
}

/// Adds the energy of the slip u(upper) - u(lower) + arm · slope, per direction.
fn add_slip(
    k: &mut ElementMatrix,
    triangle: &Triangle,
    slopes: &[[f64; 9]; 12],
    at: [usize; 2],
    arm: f64,
    stiffness: f64,
    mean_share: f64,
) {
    let mismatch = slope_mismatch(triangle, slopes);
    for (l, weight) in DEGREE_4 {
        let n = quadratic(l);
        let factor = weight * triangle.area * stiffness;
        for direction in 0..2 {
            let mut row: Vec<(usize, f64)> = Vec::with_capacity(BENDING + 12);
            for column in 0..BENDING {
                let slope: f64 = (0..6).map(|node| n[node] * slopes[2 * node + direction][column]).sum();
                row.push((column, arm * (slope - mean_share * mismatch[direction][column])));
            }
            for (node, value) in n.into_iter().enumerate() {
                row.push((at[0] + 2 * node + direction, -value));
                row.push((at[1] + 2 * node + direction, value));
            }
            for &(i, a) in &row {
                for &(j, b) in &row {
                    k.add(i, j, factor * a * b);
                }
            }
        }
    }
}
