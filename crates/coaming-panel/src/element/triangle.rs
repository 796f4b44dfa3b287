//! The measures of one triangle.

use crate::geometry::point::Point;

/// The measures of one triangle, in coordinates relative to its first corner.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Triangle {
    /// Sides: side k runs from corner k to corner k + 1.
    pub sides: [Point; 3],
    /// Area.
    pub area: f64,
    /// Gradients of the three area coordinates.
    pub gradients: [Point; 3],
}

impl Triangle {
    /// Measures a triangle whose corners run to the left.
    pub(crate) fn new([a, b, c]: [Point; 3]) -> Self {
        let sides = [b - a, c - b, a - c];
        let area = 0.5 * sides[0].cross(c - a);
        // The gradient of an area coordinate is the opposite side turned left, over twice the area.
        let gradient = |opposite: Point| opposite.left() * (0.5 / area);
        Self { sides, area, gradients: [gradient(sides[1]), gradient(sides[2]), gradient(sides[0])] }
    }
}
