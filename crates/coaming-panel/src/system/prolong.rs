//! A state carried from a mesh to the one refined from it, to start the iteration there.

use super::level::Level;
use crate::element::shape::{cubic, quadratic, slope_map};
use crate::element::stiffness::{BENDING, MEMBRANE};
use crate::element::triangle::Triangle;
use crate::mesh::Mesh;

/// The freedoms on the finer mesh, in x and y, of a state on the coarser.
pub(crate) fn prolong(coarse: &Level, fine: &Level, plane: &[f64]) -> Vec<f64> {
    let mut out = vec![0.0; fine.freedoms.size()];
    for (part, &t) in fine.mesh.parents.iter().enumerate() {
        let groups = coarse.stacks.membrane(t);
        let u: Vec<f64> =
            coarse.freedoms.of_triangle(&coarse.mesh, t, groups).into_iter().map(|d| plane[d]).collect();
        let triangle = Triangle::new(coarse.mesh.corners(t));
        let slopes: Vec<f64> = slope_map(&triangle)
            .iter()
            .map(|row| row.iter().zip(&u[..BENDING]).map(|(m, v)| m * v).sum())
            .collect();
        let vertices = fine.mesh.triangles[part];
        let edges = fine.mesh.triangle_edges[part];
        let corners = vertices.map(|v| place(&coarse.mesh.triangles[t], &fine.mesh, v));
        for (&vertex, l) in vertices.iter().zip(corners) {
            out[fine.freedoms.deflection(vertex)] =
                cubic(&triangle, l).iter().zip(&u).map(|(n, v)| n * v).sum();
            let n = quadratic(l);
            for (direction, d) in fine.freedoms.pair(fine.freedoms.slopes(vertex)).into_iter().enumerate() {
                out[d] = (0..6).map(|node| n[node] * slopes[2 * node + direction]).sum();
            }
        }
        let middle = |k: usize| {
            let (a, b) = (corners[k], corners[(k + 1) % 3]);
            [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1]), 0.5 * (a[2] + b[2])]
        };
        for (p, &group) in groups.iter().enumerate() {
            let own = &u[BENDING + MEMBRANE * p..];
            let nodes = (0..3)
                .map(|k| (vertices[k], corners[k]))
                .chain((0..3).map(|k| (fine.freedoms.vertices + edges[k], middle(k))));
            for (node, l) in nodes {
                let Some(pair) = fine.freedoms.at_vertex(group, node) else { continue };
                let n = quadratic(l);
                for (direction, d) in fine.freedoms.pair(pair).into_iter().enumerate() {
                    out[d] = (0..6).map(|k| n[k] * own[2 * k + direction]).sum();
                }
            }
        }
    }
    out
}

/// Area coordinates, in the triangle that a part came from, of a corner of the part: one of the triangle's own, or the middle of a side.
fn place(parent: &[usize; 3], fine: &Mesh, vertex: usize) -> [f64; 3] {
    let (old, halves) = &fine.halved;
    match vertex.checked_sub(*old).and_then(|k| halves.get(k)) {
        None => parent.map(|v| if v == vertex { 1.0 } else { 0.0 }),
        Some(ends) => parent.map(|v| if ends.contains(&v) { 0.5 } else { 0.0 }),
    }
}
