//! Numbering of the unknowns, the axes in which each pair of them is counted, and which are held.

use super::straight::StraightLines;
use crate::error::PanelError;
use crate::geometry::point::Point;
use crate::mesh::Mesh;

/// Two directions closer than this are one (rad); corners flatter than this are smooth.
const SAME_DIRECTION: f64 = 0.01;

/// Numbering of the unknowns.
///
/// First the deflection of every vertex; then pairs: the slopes of every vertex; then, for every group that has membrane freedoms, the
/// displacements in the plane at every vertex and at the middle of every edge.
#[derive(Debug, Clone)]
pub(crate) struct Freedoms {
    pub vertices: usize,
    pub edges: usize,
    /// Groups that have membrane freedoms.
    pub membrane: Vec<usize>,
    /// First axis of each pair; (1, 0) unless a held direction turned it.
    pub axes: Vec<Point>,
    /// Which freedoms are held.
    pub held: Vec<bool>,
    /// Which freedoms any triangle uses.
    pub used: Vec<bool>,
    /// The freedom that stands for each one in the equations: itself, but for lines that stay straight.
    pub target: Vec<usize>,
    /// Lines that stay straight in the plane.
    pub straight: StraightLines,
    /// Pairs that are pinned in the plane only because nothing else holds them there, with the directions.
    pub pins: Vec<(usize, Point)>,
    directions: Vec<Vec<Point>>,
}

impl Freedoms {
    /// Numbers the freedoms of a mesh; `covers(group, triangle)` tells where a group is.
    pub(crate) fn new(mesh: &Mesh, membrane: Vec<usize>, covers: impl Fn(usize, usize) -> bool) -> Self {
        let (vertices, edges) = (mesh.vertices.len(), mesh.edges.len());
        let pairs = vertices + membrane.len() * (vertices + edges);
        let size = vertices + 2 * pairs;
        let mut made = Self {
            vertices,
            edges,
            membrane,
            axes: vec![Point::new(1.0, 0.0); pairs],
            held: vec![false; size],
            used: vec![false; size],
            target: (0..size).collect(),
            straight: StraightLines::default(),
            pins: Vec::new(),
            directions: vec![Vec::new(); pairs],
        };
        for t in 0..mesh.triangles.len() {
            let groups: Vec<usize> = made.membrane.iter().copied().filter(|&g| covers(g, t)).collect();
            for d in made.of_triangle(mesh, t, &groups) {
                made.used[d] = true;
            }
        }
        made
    }

    /// Number of freedoms, held and unused ones included.
    pub(crate) fn size(&self) -> usize {
        self.held.len()
    }

    /// Number of the deflection of a vertex.
    pub(crate) fn deflection(&self, vertex: usize) -> usize {
        vertex
    }

    /// Pair of the slopes of a vertex.
    pub(crate) fn slopes(&self, vertex: usize) -> usize {
        vertex
    }

    /// Pair of the displacements in the plane at a vertex, for a group.
    pub(crate) fn at_vertex(&self, group: usize, vertex: usize) -> Option<usize> {
        let m = self.membrane.iter().position(|&g| g == group)?;
        Some(self.vertices + m * (self.vertices + self.edges) + vertex)
    }

    /// Pair of the displacements in the plane at the middle of an edge, for a group.
    pub(crate) fn at_edge(&self, group: usize, edge: usize) -> Option<usize> {
        self.at_vertex(group, self.vertices + edge)
    }

    /// The two freedoms of a pair.
    pub(crate) fn pair(&self, pair: usize) -> [usize; 2] {
        [self.vertices + 2 * pair, self.vertices + 2 * pair + 1]
    }

    /// Whether anything uses a pair.
    pub(crate) fn is_used(&self, pair: usize) -> bool {
        self.used[self.pair(pair)[0]]
    }

    /// The freedoms of a triangle: w and slopes at its corners, then twelve for each of `groups`.
    pub(crate) fn of_triangle(&self, mesh: &Mesh, triangle: usize, groups: &[usize]) -> Vec<usize> {
        let mut list = Vec::with_capacity(9 + 12 * groups.len());
        for v in mesh.triangles[triangle] {
            list.push(self.deflection(v));
            list.extend(self.pair(self.slopes(v)));
        }
        for &group in groups {
            let nodes = mesh.triangles[triangle]
                .into_iter()
                .chain(mesh.triangle_edges[triangle].map(|e| self.vertices + e));
            for pair in nodes.filter_map(|n| self.at_vertex(group, n)) {
                list.extend(self.pair(pair));
            }
        }
        list
    }

    /// The freedoms (w, slopes) of the two ends of an edge.
    pub(crate) fn of_ends(&self, ends: [usize; 2]) -> [usize; 6] {
        let [a, b] = ends.map(|v| self.pair(self.slopes(v)));
        [self.deflection(ends[0]), a[0], a[1], self.deflection(ends[1]), b[0], b[1]]
    }

    /// Holds the deflection of a vertex.
    pub(crate) fn hold_deflection(&mut self, vertex: usize) {
        let d = self.deflection(vertex);
        self.held[d] = true;
    }

    /// Holds one direction of a pair.
    pub(crate) fn hold_direction(&mut self, pair: usize, direction: Point) {
        let known = &mut self.directions[pair];
        if known.iter().all(|d| d.cross(direction).abs() > SAME_DIRECTION) {
            known.push(direction.unit());
        }
    }

    /// The directions held in a pair.
    pub(crate) fn held_directions(&self, pair: usize) -> &[Point] {
        &self.directions[pair]
    }

    /// Turns the axes of every pair to what is held, once all is said.
    pub(crate) fn settle(&mut self) -> Result<(), PanelError> {
        for pair in 0..self.axes.len() {
            let [first, second] = self.pair(pair);
            match self.directions[pair].as_slice() {
                [] => {}
                [only] => {
                    self.axes[pair] = *only;
                    self.held[first] = true;
                }
                _ => {
                    self.held[first] = true;
                    self.held[second] = true;
                }
            }
        }
        super::straight::settle(self)
    }

    /// Freedoms in the equations of a list of freedoms.
    pub(crate) fn targets(&self, list: &[usize]) -> Vec<usize> {
        list.iter().map(|&d| self.target[d]).collect()
    }

    /// Axis of the pair that a freedom belongs to, if it is turned.
    fn turned(&self, freedom: usize) -> Option<Point> {
        let pair = freedom.checked_sub(self.vertices)? / 2;
        self.axes.get(pair).copied().filter(|a| *a != Point::new(1.0, 0.0))
    }

    /// Turns a small matrix from x and y into the axes of the pairs. Both freedoms of a pair follow each other in the list.
    pub(crate) fn turn_matrix(&self, list: &[usize], values: &mut [f64]) {
        let n = list.len();
        for (i, &freedom) in list.iter().enumerate() {
            let first = freedom >= self.vertices && (freedom - self.vertices).is_multiple_of(2);
            let Some(a) = self.turned(freedom).filter(|_| first) else { continue };
            for k in 0..n {
                let (p, q) = (values[i * n + k], values[(i + 1) * n + k]);
                values[i * n + k] = a.x * p + a.y * q;
                values[(i + 1) * n + k] = -a.y * p + a.x * q;
            }
            for k in 0..n {
                let (p, q) = (values[k * n + i], values[k * n + i + 1]);
                values[k * n + i] = a.x * p + a.y * q;
                values[k * n + i + 1] = -a.y * p + a.x * q;
            }
        }
    }

    /// Turns forces over all freedoms from x and y into the axes of the pairs; what moves as one is pulled by the sum.
    pub(crate) fn to_axes(&self, vector: &mut [f64]) {
        for (pair, a) in self.axes.iter().enumerate() {
            let [i, j] = self.pair(pair);
            let (p, q) = (vector[i], vector[j]);
            vector[i] = a.x * p + a.y * q;
            vector[j] = -a.y * p + a.x * q;
        }
        for &(follower, leader) in &self.straight.followers {
            vector[leader] += vector[follower];
            vector[follower] = 0.0;
        }
    }

    /// Turns displacements over all freedoms from x and y into the axes of the pairs.
    pub(crate) fn displacements_to_axes(&self, vector: &mut [f64]) {
        for (pair, a) in self.axes.iter().enumerate() {
            let [i, j] = self.pair(pair);
            let (p, q) = (vector[i], vector[j]);
            vector[i] = a.x * p + a.y * q;
            vector[j] = -a.y * p + a.x * q;
        }
        for &(follower, _) in &self.straight.followers {
            vector[follower] = 0.0;
        }
    }

    /// Turns a vector over all freedoms from the axes of the pairs into x and y.
    pub(crate) fn to_plane(&self, vector: &mut [f64]) {
        for &(follower, leader) in &self.straight.followers {
            vector[follower] = vector[leader];
        }
        for (pair, a) in self.axes.iter().enumerate() {
            let [i, j] = self.pair(pair);
            let (p, q) = (vector[i], vector[j]);
            vector[i] = a.x * p - a.y * q;
            vector[j] = a.y * p + a.x * q;
        }
    }
}
