//! Divides every triangle into four; new points on arcs are put on the arc.

use super::Mesh;
use super::edge::{EdgeUse, edges_of};
use super::feature::Feature;
use crate::geometry::point::Point;

/// Divides every triangle into four. Old vertices keep their index; the middle of edge e becomes vertex n + e.
pub(crate) fn refine(mesh: &Mesh, features: &[Feature]) -> Mesh {
    let n = mesh.vertices.len();
    let mut vertices = mesh.vertices.clone();
    for edge in &mesh.edges {
        vertices.push(middle(mesh, edge.ends, &edge.uses, features));
    }
    let mut triangles = Vec::with_capacity(4 * mesh.triangles.len());
    let mut cover = Vec::with_capacity(4 * mesh.triangles.len());
    for (t, &[a, b, c]) in mesh.triangles.iter().enumerate() {
        let [ab, bc, ca] = mesh.triangle_edges[t].map(|e| n + e);
        triangles.extend([[a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]]);
        cover.extend([mesh.cover[t]; 4]);
    }
    let (mut edges, triangle_edges) = edges_of(&triangles);
    for edge in &mut edges {
        let [low, high] = edge.ends;
        // A half of an old edge joins an old vertex to that edge's middle.
        if low >= n || high < n {
            continue;
        }
        let old = &mesh.edges[high - n];
        let Some(side) = old.ends.iter().position(|&v| v == low) else { continue };
        for u in &old.uses {
            let half = 0.5 * (u.from + u.to);
            let end = if side == 0 { u.from } else { u.to };
            edge.uses.push(EdgeUse { from: end, to: half, ..*u });
        }
    }
    Mesh { vertices, triangles, triangle_edges, cover, edges, marks: mesh.marks.clone(), size: mesh.size }
}

fn middle(mesh: &Mesh, ends: [usize; 2], uses: &[EdgeUse], features: &[Feature]) -> Point {
    let [a, b] = ends.map(|v| mesh.vertices[v]);
    match uses.first() {
        Some(u) => {
            let on_curve = features[u.feature].point(u.curve, 0.5 * (u.from + u.to));
            let on_chord = (a + b) * 0.5;
            // A straight feature that passes through a snapped vertex must not be bent.
            if on_curve.distance(on_chord) < 0.1 * a.distance(b) { on_curve } else { on_chord }
        }
        None => (a + b) * 0.5,
    }
}
