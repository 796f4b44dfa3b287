//! Divides the triangles that are marked; new points on arcs are put on the arc.

use super::Mesh;
use super::edge::{EdgeUse, NONE, edges_of};
use super::feature::Feature;
use crate::geometry::point::Point;

/// Most rounds around vertices of a first mesh.
const MOST_ROUNDS: usize = 4;

/// Divides the marked triangles into four, and their neighbours as far as it takes for the mesh to conform. Old vertices keep their index.
///
/// A triangle with a divided side has its longest side divided too, so that no angle becomes smaller than half of the smallest of the
/// triangle that it came from. Source: Rivara, Int. J. Num. Meth. Eng. 20 (1984) 745-756.
pub(crate) fn refine_marked(mesh: &Mesh, features: &[Feature], marked: &[bool]) -> Mesh {
    let mut split = vec![false; mesh.edges.len()];
    let mut open: Vec<usize> = Vec::new();
    for (t, _) in marked.iter().enumerate().filter(|(_, m)| **m) {
        for e in mesh.triangle_edges[t] {
            mark(mesh, e, &mut split, &mut open);
        }
    }
    while let Some(t) = open.pop() {
        let longest = mesh.triangle_edges[t][longest_side(mesh, t)];
        mark(mesh, longest, &mut split, &mut open);
    }
    divide(mesh, features, &split)
}

/// Divides the triangles around some vertices until their sides are no longer than `longest`: a bare force or support there dents the
/// sheet over a short distance, and a first mesh that is coarse beside that distance would need several rounds to get there.
pub(crate) fn refine_around(mut mesh: Mesh, features: &[Feature], at: &[usize], longest: f64) -> Mesh {
    let mut wanted = vec![false; mesh.vertices.len()];
    for &v in at {
        wanted[v] = true;
    }
    for _ in 0..MOST_ROUNDS {
        let long = |t: &[usize; 3]| {
            let [a, b, c] = t.map(|v| mesh.vertices[v]);
            a.distance(b).max(b.distance(c)).max(c.distance(a)) > longest
        };
        let marked: Vec<bool> = mesh
            .triangles
            .iter()
            .map(|t| t.iter().any(|&v| v < wanted.len() && wanted[v]) && long(t))
            .collect();
        if !marked.contains(&true) {
            break;
        }
        mesh = refine_marked(&mesh, features, &marked);
    }
    mesh.halved = (mesh.vertices.len(), Vec::new());
    mesh.parents = Vec::new();
    mesh
}

fn mark(mesh: &Mesh, edge: usize, split: &mut [bool], open: &mut Vec<usize>) {
    if !split[edge] {
        split[edge] = true;
        open.extend(mesh.edges[edge].triangles.into_iter().filter(|&t| t != NONE));
    }
}

/// Which side of a triangle is longest; of two equal ones the one that both neighbours call so.
fn longest_side(mesh: &Mesh, t: usize) -> usize {
    let measure = |k: usize| {
        let e = mesh.triangle_edges[t][k];
        let [a, b] = mesh.edges[e].ends.map(|v| mesh.vertices[v]);
        let d = b - a;
        (d.dot(d), e)
    };
    let mut best = 0;
    for k in 1..3 {
        let ((length, e), (most, f)) = (measure(k), measure(best));
        // Lengths that differ by rounding are equal.
        if length > most * (1.0 + 1e-9) || (length > most * (1.0 - 1e-9) && e > f) {
            best = k;
        }
    }
    best
}

/// Divides every triangle by its split edges.
fn divide(mesh: &Mesh, features: &[Feature], split: &[bool]) -> Mesh {
    let n = mesh.vertices.len();
    let mut vertices = mesh.vertices.clone();
    let mut middles = vec![NONE; mesh.edges.len()];
    let mut halved = Vec::new();
    for (e, edge) in mesh.edges.iter().enumerate().filter(|&(e, _)| split[e]) {
        middles[e] = vertices.len();
        vertices.push(middle(mesh, edge.ends, &edge.uses, features));
        halved.push(e);
    }
    let mut triangles = Vec::with_capacity(mesh.triangles.len() + 3 * halved.len());
    let mut cover = Vec::with_capacity(triangles.capacity());
    let mut parents = Vec::with_capacity(triangles.capacity());
    for t in 0..mesh.triangles.len() {
        let before = triangles.len();
        divide_one(mesh, t, &middles, &mut triangles);
        keep_upright(mesh, &halved, n, &triangles[before..], &mut vertices);
        cover.resize(triangles.len(), mesh.cover[t]);
        parents.resize(triangles.len(), t);
    }
    let (mut edges, triangle_edges) = edges_of(&triangles);
    pass_on_uses(mesh, &halved, &middles, n, &mut edges);
    let halves = halved.iter().map(|&e| mesh.edges[e].ends).collect();
    Mesh {
        vertices,
        triangles,
        triangle_edges,
        cover,
        edges,
        marks: mesh.marks.clone(),
        size: mesh.size,
        halved: (n, halves),
        parents,
    }
}

/// The parts of one triangle.
fn divide_one(mesh: &Mesh, t: usize, middles: &[usize], triangles: &mut Vec<[usize; 3]>) {
    let [a, b, c] = mesh.triangles[t];
    let [ab, bc, ca] = mesh.triangle_edges[t].map(|e| middles[e]);
    match [ab, bc, ca].iter().filter(|&&m| m != NONE).count() {
        0 => triangles.push([a, b, c]),
        3 => triangles.extend([[a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]]),
        _ => {
            // Turned so that the longest side is the first: it is divided, and perhaps one other.
            let k = longest_side(mesh, t);
            let corner = |i: usize| mesh.triangles[t][(k + i) % 3];
            let side = |i: usize| middles[mesh.triangle_edges[t][(k + i) % 3]];
            let (a, b, c, ab) = (corner(0), corner(1), corner(2), side(0));
            match (side(1), side(2)) {
                (NONE, NONE) => triangles.extend([[a, ab, c], [ab, b, c]]),
                (bc, NONE) => triangles.extend([[a, ab, c], [ab, b, bc], [ab, bc, c]]),
                (_, ca) => triangles.extend([[a, ab, ca], [ab, c, ca], [ab, b, c]]),
            }
        }
    }
}

/// A middle that was moved onto an arc goes back to its chord where a triangle beside it would be turned over.
fn keep_upright(mesh: &Mesh, halved: &[usize], n: usize, parts: &[[usize; 3]], vertices: &mut [Point]) {
    for part in parts {
        let [a, b, c] = part.map(|v| vertices[v]);
        let (ab, ac) = (b - a, c - a);
        if ab.cross(ac) > 0.02 * ab.dot(ab).max(ac.dot(ac)) {
            continue;
        }
        for &v in part.iter().filter(|&&v| v >= n) {
            let [a, b] = mesh.edges[halved[v - n]].ends.map(|v| mesh.vertices[v]);
            vertices[v] = (a + b) * 0.5;
        }
    }
}

/// Gives the features along old edges to the new ones.
fn pass_on_uses(mesh: &Mesh, halved: &[usize], middles: &[usize], n: usize, edges: &mut [super::edge::Edge]) {
    let mut whole = mesh.edges.iter().enumerate().filter(|&(e, _)| middles[e] == NONE).peekable();
    for edge in edges {
        let [low, high] = edge.ends;
        if high < n {
            // Old edges that stay whole are listed in the same order as they come up here.
            while whole.next_if(|(_, old)| old.ends < edge.ends).is_some() {}
            if let Some((_, old)) = whole.next_if(|(_, old)| old.ends == edge.ends) {
                edge.uses.clone_from(&old.uses);
            }
        } else if low < n {
            // A half of an old edge joins an old vertex to that edge's middle.
            let old = &mesh.edges[halved[high - n]];
            let Some(side) = old.ends.iter().position(|&v| v == low) else { continue };
            for u in &old.uses {
                let half = 0.5 * (u.from + u.to);
                let end = if side == 0 { u.from } else { u.to };
                edge.uses.push(EdgeUse { from: end, to: half, ..*u });
            }
        }
    }
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
