//! Edges of the mesh, and which features run along them.

/// No triangle.
pub(crate) const NONE: usize = usize::MAX;

/// One passage of a feature along an edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct EdgeUse {
    /// Index of the feature.
    pub feature: usize,
    /// Index of the curve within the feature.
    pub curve: usize,
    /// Distance along the feature at the edge's first vertex.
    pub from: f64,
    /// Distance along the feature at the edge's second vertex.
    pub to: f64,
}

/// An edge of the mesh.
#[derive(Debug, Clone)]
pub(crate) struct Edge {
    /// Its two vertices, the lower index first.
    pub ends: [usize; 2],
    /// The triangles beside it; the second is missing on a boundary.
    pub triangles: [usize; 2],
    /// The features that run along it.
    pub uses: Vec<EdgeUse>,
}

impl Edge {
    /// Whether the edge lies on the boundary of the material.
    pub(crate) fn is_boundary(&self) -> bool {
        self.triangles[1] == NONE
    }
}

/// Lists the edges of some triangles in a fixed order. Edge k of a triangle joins its corners k and k + 1.
pub(crate) fn edges_of(triangles: &[[usize; 3]]) -> (Vec<Edge>, Vec<[usize; 3]>) {
    let mut sides: Vec<([usize; 2], usize, usize)> = Vec::with_capacity(3 * triangles.len());
    for (t, corners) in triangles.iter().enumerate() {
        for k in 0..3 {
            let (a, b) = (corners[k], corners[(k + 1) % 3]);
            sides.push(([a.min(b), a.max(b)], t, k));
        }
    }
    sides.sort_unstable();
    let mut edges: Vec<Edge> = Vec::with_capacity(sides.len() / 2 + 1);
    let mut triangle_edges = vec![[NONE; 3]; triangles.len()];
    for (ends, t, k) in sides {
        match edges.last_mut() {
            Some(last) if last.ends == ends => last.triangles[1] = t,
            _ => edges.push(Edge { ends, triangles: [t, NONE], uses: Vec::new() }),
        }
        triangle_edges[t][k] = edges.len() - 1;
    }
    (edges, triangle_edges)
}
