//! A triangle mesh that conforms to every outline, path and marked point of the panel.

pub(crate) mod arrange;
pub(crate) mod edge;
pub(crate) mod feature;
pub(crate) mod refine;
pub(crate) mod triangulate;

use crate::geometry::point::Point;
use edge::Edge;

/// A conforming triangle mesh.
#[derive(Debug, Clone)]
pub(crate) struct Mesh {
    /// Corners of the triangles.
    pub vertices: Vec<Point>,
    /// Three vertices per triangle, running to the left.
    pub triangles: Vec<[usize; 3]>,
    /// Edge k of a triangle joins its corners k and k + 1.
    pub triangle_edges: Vec<[usize; 3]>,
    /// Which layers cover each triangle, one bit per layer.
    pub cover: Vec<u64>,
    /// All edges.
    pub edges: Vec<Edge>,
    /// The vertex at each marked point.
    pub marks: Vec<usize>,
    /// Size of the panel, for tolerances.
    pub size: f64,
    /// The mesh from which this one was refined: how many vertices it had, and between which two of them each further vertex lies.
    pub halved: (usize, Vec<[usize; 2]>),
    /// Of which triangle of that mesh each one is a part; empty where there was none.
    pub parents: Vec<usize>,
}

impl Mesh {
    /// The corners of a triangle.
    pub(crate) fn corners(&self, triangle: usize) -> [Point; 3] {
        self.triangles[triangle].map(|v| self.vertices[v])
    }

    /// Area of a triangle.
    pub(crate) fn area(&self, triangle: usize) -> f64 {
        let [a, b, c] = self.corners(triangle);
        0.5 * (b - a).cross(c - a)
    }

    /// The triangle that holds a point, with its area coordinates. The lowest index wins on a shared edge.
    pub(crate) fn locate(&self, p: Point) -> Option<(usize, [f64; 3])> {
        let slack = 1e-9;
        (0..self.triangles.len()).find_map(|t| {
            let area_coordinates = self.area_coordinates(t, p);
            area_coordinates.iter().all(|&l| l >= -slack).then_some((t, area_coordinates))
        })
    }

    /// Area coordinates of a point with respect to a triangle.
    pub(crate) fn area_coordinates(&self, triangle: usize, p: Point) -> [f64; 3] {
        let [a, b, c] = self.corners(triangle);
        let whole = (b - a).cross(c - a);
        let first = (b - p).cross(c - p) / whole;
        let second = (c - p).cross(a - p) / whole;
        [first, second, 1.0 - first - second]
    }
}
