//! The deflection along an edge: the cubic between the values and slopes at its ends.

use crate::geometry::point::Point;

/// The deflection along an edge from `a` to `b` as a linear map of (w, slope x, slope y) at both ends.
#[derive(Debug, Clone, Copy)]
pub(crate) struct EdgeLine {
    /// Unit vector along the edge.
    pub along: Point,
    /// Length of the edge.
    pub length: f64,
}

impl EdgeLine {
    /// The edge from `a` to `b`.
    pub(crate) fn new(a: Point, b: Point) -> Self {
        Self { along: (b - a).unit(), length: a.distance(b) }
    }

    fn spread(&self, first: [f64; 2], second: [f64; 2]) -> [f64; 6] {
        let t = self.along;
        [first[0], first[1] * t.x, first[1] * t.y, second[0], second[1] * t.x, second[1] * t.y]
    }

    /// Deflection at a fraction of the length.
    pub(crate) fn deflection(&self, s: f64) -> [f64; 6] {
        let (r, h) = (1.0 - s, self.length);
        self.spread([r * r * (1.0 + 2.0 * s), h * s * r * r], [s * s * (3.0 - 2.0 * s), -h * s * s * r])
    }

    /// Slope along the edge at a fraction of its length.
    pub(crate) fn slope_along(&self, s: f64) -> [f64; 6] {
        let (r, h) = (1.0 - s, self.length);
        self.spread([-6.0 * s * r / h, r * (1.0 - 3.0 * s)], [6.0 * s * r / h, s * (3.0 * s - 2.0)])
    }

    /// Stretch along the edge from the displacements along it at both ends and in the middle.
    pub(crate) fn stretch(&self, s: f64) -> [f64; 3] {
        let h = self.length;
        [(4.0 * s - 3.0) / h, (4.0 * s - 1.0) / h, (4.0 - 8.0 * s) / h]
    }

    /// Second derivative along the edge.
    pub(crate) fn second_derivative(&self, s: f64) -> [f64; 6] {
        let h = self.length;
        self.spread(
            [(12.0 * s - 6.0) / (h * h), (6.0 * s - 4.0) / h],
            [(6.0 - 12.0 * s) / (h * h), (6.0 * s - 2.0) / h],
        )
    }

    /// Slope across the edge, linear between the ends; positive to the left of the edge.
    pub(crate) fn slope_across(&self, s: f64) -> [f64; 6] {
        let n = self.along.left();
        [0.0, (1.0 - s) * n.x, (1.0 - s) * n.y, 0.0, s * n.x, s * n.y]
    }

    /// Change of the slope across per length: the twist.
    pub(crate) fn twist(&self) -> [f64; 6] {
        let n = self.along.left() * (1.0 / self.length);
        [0.0, -n.x, -n.y, 0.0, n.x, n.y]
    }
}

/// Adds `factor` times the outer product of `row` with itself to a square matrix.
pub(crate) fn add_outer<const N: usize>(matrix: &mut [[f64; N]; N], row: &[f64; N], factor: f64) {
    for (i, out) in matrix.iter_mut().enumerate() {
        for (value, r) in out.iter_mut().zip(row) {
            *value += factor * row[i] * r;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A cubic along the edge is exact: w = s^3 on a length of 2.
    #[test]
    fn cubic_is_exact() {
        let line = EdgeLine::new(Point::new(1.0, 1.0), Point::new(1.0, 3.0));
        let nodal = [0.0, 9.0, 0.0, 8.0, -4.0, 12.0];
        let apply = |row: [f64; 6]| row.iter().zip(nodal).map(|(a, b)| a * b).sum::<f64>();
        assert!((apply(line.deflection(0.25)) - 0.125).abs() < 1e-15);
        assert!((apply(line.slope_along(0.25)) - 0.75).abs() < 1e-15);
        assert!((apply(line.second_derivative(0.25)) - 3.0).abs() < 1e-14);
        assert!((apply(line.slope_across(0.5)) - -2.5).abs() < 1e-15);
        assert!((apply(line.twist()) - 6.5).abs() < 1e-15);
    }
}
