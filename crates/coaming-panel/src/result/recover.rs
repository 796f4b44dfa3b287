//! Strains of a state as the triangles have them, and a smoother and better field recovered from them.
//!
//! For answers: around every vertex, over triangles that no feature parts, polynomials of third degree are fitted to the slopes at the
//! vertices, and their derivatives at the vertex are the curvature. Source: Zhang and Naga, SIAM J. Sci. Comput. 26 (2005) 1192-1213
//! (polynomial-preserving recovery). The patches reach inward from an edge, so that edges come out as well as the inside: an average of
//! the triangles' own curvature is off by half a triangle there.
//!
//! For indicators, and for strains in the plane: surfaces fitted to the values at the middles of the triangles, where they are best, over
//! smaller patches, which stay sober on coarse meshes. Source: Zienkiewicz and Zhu, Int. J. Num. Meth. Eng. 33 (1992) 1331-1364
//! (superconvergent patch recovery).

use crate::element::membrane::slope_strain_at_corners;
use crate::element::shape::{corner_strains, node_slopes};
use crate::element::stiffness::MEMBRANE;
use crate::element::triangle::Triangle;
use crate::geometry::point::Point;
use crate::mesh::Mesh;
use crate::mesh::edge::NONE;
use crate::system::level::Level;

/// Three components of a strain: xx, yy and xy.
pub(crate) type Strains = [f64; 3];

/// Fewest triangles of a patch for a fit to their middles, where as many hang together.
const FEWEST_MIDDLES: usize = 10;
/// Fewest triangles of a patch for a fit to slopes: two rings round a vertex.
const FEWEST_SLOPES: usize = 20;
/// Most by which a fit to middles may magnify the variance of what it is fitted to.
const MOST_MAGNIFIED: f64 = 4.0;
/// Most by which derivatives of a fit to slopes may magnify it, the size of the patch being 1.
const MOST_MAGNIFIED_SLOPES: f64 = 300.0;

/// Strains at the corners of every triangle, linear between them: of bending, and of every group with freedoms in the plane.
#[derive(Debug, Clone)]
pub(crate) struct Strained {
    pub curvature: Vec<[Strains; 3]>,
    pub membrane: Vec<(usize, Vec<[Strains; 3]>)>,
}

/// The strains of a state, triangle by triangle; with the stretch that slopes bring, where they do.
pub(crate) fn raw(level: &Level, plane: &[f64], slopes_stretch: bool) -> Strained {
    let mesh = &level.mesh;
    let count = mesh.triangles.len();
    let mut curvature = Vec::with_capacity(count);
    let mut membrane: Vec<(usize, Vec<[Strains; 3]>)> =
        level.freedoms.membrane.iter().map(|&g| (g, vec![[[0.0; 3]; 3]; count])).collect();
    for t in 0..count {
        let triangle = Triangle::new(mesh.corners(t));
        let groups_here = level.stacks.membrane(t);
        let list = level.freedoms.of_triangle(mesh, t, groups_here);
        let nine: [f64; 9] = std::array::from_fn(|k| plane[list[k]]);
        let stretch = if slopes_stretch { slope_strain_at_corners(&triangle, &nine) } else { [[0.0; 3]; 3] };
        let corners = corner_strains(&triangle, &node_slopes(&triangle, &nine)).map(|s| s.map(|v| -v));
        for (g, values) in &mut membrane {
            if let Some(p) = groups_here.iter().position(|h| h == g) {
                let from = 9 + MEMBRANE * p;
                let at = |k: usize| Point::new(plane[list[from + 2 * k]], plane[list[from + 2 * k + 1]]);
                values[t] = corner_strains(&triangle, &std::array::from_fn(at));
                for (value, more) in values[t].iter_mut().flatten().zip(stretch.iter().flatten()) {
                    *value += more;
                }
            }
        }
        curvature.push(corners);
    }
    Strained { curvature, membrane }
}

/// How the recovered values at every corner follow from slopes at vertices and from values at the middles of triangles.
#[derive(Debug)]
pub(crate) struct Patches {
    /// Patch of each corner of each triangle.
    of: Vec<usize>,
    slopes: Vec<Fit<[f64; 2]>>,
    middles: Vec<Fit<f64>>,
}

/// What each vertex or triangle of a patch counts for.
type Fit<T> = Vec<(usize, T)>;

impl Patches {
    /// Makes the fits of a mesh.
    pub(crate) fn new(mesh: &Mesh) -> Self {
        let (sectors, neighbours) = (sectors(mesh), neighbours(mesh));
        let mut place = vec![NONE; sectors.len()];
        let mut members: Vec<(usize, Vec<usize>)> = Vec::new();
        for (corner, &root) in sectors.iter().enumerate() {
            if place[root] == NONE {
                place[root] = members.len();
                members.push((mesh.triangles[corner / 3][corner % 3], Vec::new()));
            }
            members[place[root]].1.push(corner / 3);
        }
        let of = sectors.iter().map(|&root| place[root]).collect();
        let (mut slopes, mut middles) =
            (Vec::with_capacity(members.len()), Vec::with_capacity(members.len()));
        let mut seen = vec![NONE; mesh.triangles.len()];
        let mut scratch = Scratch { seen: vec![NONE; mesh.vertices.len()], ..Scratch::default() };
        for (stamp, (vertex, mut near)) in members.into_iter().enumerate() {
            let (own, at) = (near.len(), mesh.vertices[vertex]);
            for &t in &near {
                seen[t] = stamp;
            }
            let ring = grow(&neighbours, &mut near, &mut seen, stamp, 0, FEWEST_MIDDLES);
            middles.push(middle_fit(mesh, at, &near, own, &mut scratch));
            grow(&neighbours, &mut near, &mut seen, stamp, ring, FEWEST_SLOPES);
            slopes.push(slope_fit(mesh, at, &near, stamp, &mut scratch));
        }
        Self { of, slopes, middles }
    }

    /// The field for answers: curvature from the slopes, strains in the plane from the middles.
    pub(crate) fn smooth(&self, level: &Level, plane: &[f64], sober: &Strained) -> Strained {
        let mut made = sober.clone();
        let fitted: Vec<Option<Strains>> =
            self.slopes.iter().map(|f| (!f.is_empty()).then(|| curvature(level, plane, f))).collect();
        for (corner, value) in made.curvature.iter_mut().flatten().enumerate() {
            *value = fitted[self.of[corner]].unwrap_or(*value);
        }
        made
    }

    /// The field for indicators, from the middles.
    pub(crate) fn sober(&self, raw: &Strained) -> Strained {
        Strained {
            curvature: self.spread(&self.by_middles(&raw.curvature)),
            membrane: raw.membrane.iter().map(|(g, v)| (*g, self.spread(&self.by_middles(v)))).collect(),
        }
    }

    fn spread(&self, fitted: &[Strains]) -> Vec<[Strains; 3]> {
        self.of.chunks_exact(3).map(|corners| [0, 1, 2].map(|k| fitted[corners[k]])).collect()
    }

    fn by_middles(&self, values: &[[Strains; 3]]) -> Vec<Strains> {
        let middles: Vec<Strains> =
            values.iter().map(|[a, b, c]| [0, 1, 2].map(|i| (a[i] + b[i] + c[i]) / 3.0)).collect();
        let sum = |fit: &Fit<f64>| {
            let mut sum = [0.0; 3];
            for &(t, share) in fit {
                for (s, m) in sum.iter_mut().zip(middles[t]) {
                    *s += share * m;
                }
            }
            sum
        };
        self.middles.iter().map(sum).collect()
    }
}

/// The curvature from the slopes of a patch.
fn curvature(level: &Level, plane: &[f64], fit: &Fit<[f64; 2]>) -> Strains {
    let mut k = [0.0; 3];
    for &(v, [dx, dy]) in fit {
        let [x, y] = level.freedoms.pair(level.freedoms.slopes(v)).map(|d| plane[d]);
        k[0] -= dx * x;
        k[1] -= dy * y;
        k[2] -= dy * x + dx * y;
    }
    k
}

/// Corners of triangles around the same vertex that no feature parts: each has the same root.
fn sectors(mesh: &Mesh) -> Vec<usize> {
    let mut parent: Vec<usize> = (0..3 * mesh.triangles.len()).collect();
    fn root(parent: &mut [usize], mut i: usize) -> usize {
        while parent[i] != i {
            parent[i] = parent[parent[i]];
            i = parent[i];
        }
        i
    }
    for edge in mesh.edges.iter().filter(|e| e.uses.is_empty() && e.triangles[1] != NONE) {
        for v in edge.ends {
            let corner = |t: usize| mesh.triangles[t].iter().position(|&w| w == v).map(|k| 3 * t + k);
            if let (Some(a), Some(b)) = (corner(edge.triangles[0]), corner(edge.triangles[1])) {
                let (a, b) = (root(&mut parent, a), root(&mut parent, b));
                parent[a.max(b)] = a.min(b);
            }
        }
    }
    (0..parent.len()).map(|i| root(&mut parent, i)).collect()
}

/// The neighbours of every triangle that no feature parts from it.
fn neighbours(mesh: &Mesh) -> Vec<[usize; 3]> {
    let across = |(t, edges): (usize, &[usize; 3])| {
        edges.map(|e| match &mesh.edges[e] {
            edge if !edge.uses.is_empty() => NONE,
            edge if edge.triangles[0] == t => edge.triangles[1],
            edge => edge.triangles[0],
        })
    };
    mesh.triangle_edges.iter().enumerate().map(across).collect()
}

/// Adds whole rings of neighbours until there are enough; gives where the last ring starts.
fn grow(
    neighbours: &[[usize; 3]],
    near: &mut Vec<usize>,
    seen: &mut [usize],
    stamp: usize,
    mut from: usize,
    fewest: usize,
) -> usize {
    while near.len() < fewest && from < near.len() {
        let ring = near.len();
        for i in from..ring {
            for t in neighbours[near[i]] {
                if t != NONE && seen[t] != stamp {
                    seen[t] = stamp;
                    near.push(t);
                }
            }
        }
        from = ring;
    }
    from
}

/// Terms of a polynomial of third degree.
const CUBIC: usize = 10;
/// Terms of a polynomial of second degree.
const QUADRATIC: usize = 6;
/// Terms of a plane.
const LINEAR: usize = 3;

/// Powers of x and y in the terms of a polynomial.
const POWERS: [(usize, usize); CUBIC] =
    [(0, 0), (1, 0), (0, 1), (2, 0), (1, 1), (0, 2), (3, 0), (2, 1), (1, 2), (0, 3)];

/// What the fits of all patches use one after the other.
#[derive(Default)]
struct Scratch {
    /// The last patch that each vertex was found in.
    seen: Vec<usize>,
    nodes: Vec<usize>,
    offsets: Vec<Point>,
    rows: Vec<[f64; CUBIC]>,
}

impl Scratch {
    /// Finds the terms of a polynomial at the offsets, over the largest of them, which is given back.
    fn find_terms(&mut self) -> f64 {
        let size = self.offsets.iter().fold(0.0_f64, |s, p| s.max(p.length()));
        self.rows.clear();
        self.rows.extend(self.offsets.iter().map(|p| {
            let (x, y) = (p.x / size, p.y / size);
            let (xx, xy, yy) = (x * x, x * y, y * y);
            [1.0, x, y, xx, xy, yy, xx * x, xx * y, x * yy, yy * y]
        }));
        size
    }
}

/// The normal matrix of the first `N` terms: sums of powers of x and y, each found once, of which `P` at most matter.
fn normal<const N: usize, const P: usize>(rows: &[[f64; CUBIC]]) -> [[f64; N]; N] {
    // Sums of powers, x by row and y by column, up to twice the degree.
    let mut sums = [[0.0; P]; P];
    for row in rows {
        let (mut x, mut y) = ([1.0; P], [1.0; P]);
        for k in 1..P {
            (x[k], y[k]) = (x[k - 1] * row[1], y[k - 1] * row[2]);
        }
        for a in 0..P {
            for b in 0..P - a {
                sums[a][b] += x[a] * y[b];
            }
        }
    }
    std::array::from_fn(|i| {
        std::array::from_fn(|j| {
            let ((a, b), (c, d)) = (POWERS[i], POWERS[j]);
            sums[a + c][b + d]
        })
    })
}

/// What the slopes at the vertices of a patch count for in their derivatives along x and y at a point; nothing where they do not
/// determine them.
fn slope_fit(mesh: &Mesh, at: Point, near: &[usize], stamp: usize, scratch: &mut Scratch) -> Fit<[f64; 2]> {
    scratch.nodes.clear();
    for v in near.iter().flat_map(|&t| mesh.triangles[t]) {
        if scratch.seen[v] != stamp {
            scratch.seen[v] = stamp;
            scratch.nodes.push(v);
        }
    }
    scratch.offsets.clear();
    scratch.offsets.extend(scratch.nodes.iter().map(|&v| mesh.vertices[v] - at));
    let size = scratch.find_terms();
    let rows = &scratch.rows;
    let shares = fit::<CUBIC, 2, 7>(rows, [1, 2], MOST_MAGNIFIED_SLOPES)
        .or_else(|| fit::<QUADRATIC, 2, 5>(rows, [1, 2], MOST_MAGNIFIED_SLOPES))
        .unwrap_or_default();
    scratch.nodes.iter().zip(shares).map(|(&v, share)| (v, share.map(|s| s / size))).collect()
}

/// What the values at the middles of a patch count for at a point: the mean of the first `own` where the middles determine no more.
fn middle_fit(mesh: &Mesh, at: Point, near: &[usize], own: usize, scratch: &mut Scratch) -> Fit<f64> {
    let offset = |&t: &usize| {
        let [a, b, c] = mesh.corners(t);
        (a + b + c) * (1.0 / 3.0) - at
    };
    scratch.offsets.clear();
    scratch.offsets.extend(near.iter().map(offset));
    scratch.find_terms();
    let rows = &scratch.rows;
    let shares = fit::<QUADRATIC, 1, 5>(rows, [0], MOST_MAGNIFIED)
        .or_else(|| fit::<LINEAR, 1, 3>(rows, [0], MOST_MAGNIFIED))
        .unwrap_or_else(|| (0..near.len()).map(|i| [if i < own { 1.0 / own as f64 } else { 0.0 }]).collect());
    near.iter().copied().zip(shares.into_iter().map(|[s]| s)).collect()
}

/// Shares of the values in some coefficients of the fit of least squares with the first `N` terms; `None` where the points do not
/// determine it, or where it would magnify errors too much.
fn fit<const N: usize, const M: usize, const P: usize>(
    rows: &[[f64; CUBIC]],
    wanted: [usize; M],
    most_magnified: f64,
) -> Option<Vec<[f64; M]>> {
    if rows.len() < N + N / 5 {
        return None;
    }
    let mut normal = normal::<N, P>(rows);
    let mut x = [[0.0; M]; N];
    for (k, &w) in wanted.iter().enumerate() {
        x[w][k] = 1.0;
    }
    // By elimination in the upper half; the diagonal of a normal matrix needs no exchange of rows.
    for i in 0..N {
        if normal[i][i] < 1e-8 * rows.len() as f64 {
            return None;
        }
        let inverse = 1.0 / normal[i][i];
        for k in (i + 1)..N {
            let factor = normal[i][k] * inverse;
            for j in k..N {
                normal[k][j] -= factor * normal[i][j];
            }
            for m in 0..M {
                x[k][m] -= factor * x[i][m];
            }
        }
    }
    for i in (0..N).rev() {
        for m in 0..M {
            let sum: f64 = ((i + 1)..N).map(|j| normal[i][j] * x[j][m]).sum();
            x[i][m] = (x[i][m] - sum) / normal[i][i];
        }
    }
    let share = |row: &[f64; CUBIC]| {
        let mut share = [0.0; M];
        for (r, x) in row.iter().zip(&x) {
            for m in 0..M {
                share[m] += r * x[m];
            }
        }
        share
    };
    let shares: Vec<[f64; M]> = rows.iter().map(share).collect();
    let magnified = (0..M).map(|m| shares.iter().map(|s| s[m] * s[m]).sum::<f64>()).fold(0.0, f64::max);
    (magnified < most_magnified).then_some(shares)
}
