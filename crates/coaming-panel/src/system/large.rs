//! Deflections that stretch the panel: strain energy, forces and tangent with the quadratic terms of the slopes (von Karman).
//!
//! Every group of layers stretches by its displacements in the plane and by the slopes common to all; beams likewise along their lines.
//! Warmth and other growth are part of the whole strain, so they act here and not among the loads. Slip between layers stays linear.

use super::assemble::add_dense;
use super::attach::BeamEdge;
use super::ground::Ground;
use super::internal::{Internal, add_beam, add_slips, remove_rigid};
use super::level::Level;
use super::membrane::{Warmth, warmth};
use super::symmetric::Symmetric;
use crate::element::hermite::add_outer;
use crate::element::membrane::{
    AtMidsides, NodeSlopes, slope_strain, slope_strain_map, slopes_at, stress_stiffness,
};
use crate::element::quadrature::GAUSS_4;
use crate::element::shape::slope_map;
use crate::element::shaped::Shaped;
use crate::element::stiffness::{BENDING, ElementMatrix, MEMBRANE};
use crate::geometry::point::Point;
use crate::model::growth::FreeStrain;
use crate::model::prepare::Prepared;
use crate::model::stack::{GroupPart, Matrix3, Stack};

/// One triangle with what its state strains it by.
struct Strained<'a> {
    stack: &'a Stack,
    groups: &'a [usize],
    shaped: &'a Shaped,
    list: &'a [usize],
    /// Freedoms without the motion of the first corner.
    u: Vec<f64>,
    slopes: NodeSlopes,
    /// Strain of the slopes at the midside points.
    stretch: AtMidsides,
    curvature: AtMidsides,
}

impl<'a> Strained<'a> {
    /// The state of a triangle, in memory that was used before.
    fn new(
        level: &'a Level,
        ground: &'a Ground,
        prepared: &Prepared,
        plane: &[f64],
        t: usize,
        mut u: Vec<f64>,
    ) -> Self {
        let (stack, groups) = (level.stacks.of(t), level.stacks.membrane(t));
        let (shaped, list) = (ground.shaped(t), ground.list(t));
        u.clear();
        u.extend(list.iter().map(|&d| plane[d]));
        let tilt = [u[1], u[2]];
        remove_rigid(&mut u, &shaped.triangle, groups, &prepared.groups.height);
        let nine: [f64; 9] = std::array::from_fn(|k| u[k]);
        let slopes = slopes_at(&shaped.middles, &nine, tilt);
        let curvature = shaped.bend.each_ref().map(|bend| times(bend, &nine));
        let stretch = slope_strain(&slopes);
        Self { stack, groups, shaped, list, u, slopes, stretch, curvature }
    }

    /// Where the freedoms of a group begin.
    fn at(&self, group: usize) -> Option<usize> {
        self.groups.iter().position(|&g| g == group).map(|p| BENDING + MEMBRANE * p)
    }

    /// All strains in the plane of a group, at the midside points. A group that has no freedoms there is not strained.
    fn strains(&self, at: Option<usize>) -> AtMidsides {
        let Some(at) = at else { return [[0.0; 3]; 3] };
        let own: [f64; MEMBRANE] = std::array::from_fn(|k| self.u[at + k]);
        std::array::from_fn(|m| sum(self.shaped.strain(m, &own), self.stretch[m]))
    }

    /// Forces and moments per length of a group at a midside point, under these strains in its plane.
    fn forces(&self, part: &GroupPart, m: usize, strain: [f64; 3], warm: &Warmth) -> [[f64; 3]; 2] {
        let bend = self.curvature[m];
        let less = |a: [f64; 3], b: [f64; 3]| [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
        let force = sum(product(&part.a, strain), product(&part.b, bend));
        let moment = sum(product(&part.b, strain), product(&part.d, bend));
        [less(force, warm.force), less(moment, warm.moment)]
    }
}

fn times<const N: usize>(rows: &[[f64; N]; 3], v: &[f64; N]) -> [f64; 3] {
    rows.each_ref().map(|row| row.iter().zip(v).map(|(r, v)| r * v).sum())
}

fn product(matrix: &Matrix3, v: [f64; 3]) -> [f64; 3] {
    matrix.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
}

fn sum(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// Adds `factor` times the strain rows, each times its force, to some forces.
fn add_rows<const N: usize>(forces: &mut [f64], rows: &[[f64; N]; 3], force: [f64; 3], factor: f64) {
    for (row, force) in rows.iter().zip(force) {
        for (f, r) in forces.iter_mut().zip(row) {
            *f += factor * force * r;
        }
    }
}

/// Forces over all freedoms and the strain energy, in x and y.
pub(crate) fn internal_large(
    level: &Level,
    ground: &Ground,
    prepared: &Prepared,
    growth: &[FreeStrain],
    plane: &[f64],
) -> Internal {
    let mut found = Internal { forces: vec![0.0; plane.len()], energy: 0.0 };
    let (mut forces, mut memory) = (Vec::new(), Vec::new());
    for t in 0..level.mesh.triangles.len() {
        let here = Strained::new(level, ground, prepared, plane, t, memory);
        let shaped = here.shaped;
        let change = slope_strain_map(&shaped.middles, &here.slopes);
        let third = shaped.triangle.area / 3.0;
        forces.clear();
        forces.resize(here.list.len(), 0.0);
        for part in &here.stack.groups {
            let at = here.at(part.group);
            let strains = here.strains(at);
            let warm = warmth(prepared, growth, here.stack.cover, part.group);
            for m in 0..3 {
                let (strain, bend) = (strains[m], here.curvature[m]);
                let [force, moment] = here.forces(part, m, strain, &warm);
                // Half of what is elastic; what is held back counts whole.
                let twice = dot(sum(force, scaled(warm.force, -1.0)), strain)
                    + dot(sum(moment, scaled(warm.moment, -1.0)), bend);
                found.energy += 0.5 * third * twice;
                add_rows(&mut forces[..BENDING], &shaped.bend[m], moment, third);
                if let Some(at) = at {
                    add_rows(&mut forces[..BENDING], &change[m], force, third);
                    shaped.add_pull(m, force, third, &mut forces[at..at + MEMBRANE]);
                }
            }
        }
        if !here.stack.slips.is_empty() {
            add_slipping(&here, &mut forces, &mut found.energy);
        }
        for (&d, f) in here.list.iter().zip(&forces) {
            found.forces[d] += f;
        }
        memory = here.u;
    }
    for edge in &level.attachments.beams {
        add_beam(level, prepared, plane, edge, &mut found);
        add_beam_forces(level, prepared, plane, edge, &mut found);
    }
    found
}

fn scaled(v: [f64; 3], factor: f64) -> [f64; 3] {
    v.map(|v| factor * v)
}

/// Slip between layers stays linear.
fn add_slipping(here: &Strained<'_>, forces: &mut [f64], energy: &mut f64) {
    let (stack, groups, triangle) = (here.stack, here.groups, &here.shaped.triangle);
    let map = slope_map(triangle);
    let slopes: [f64; 12] = std::array::from_fn(|k| map[k].iter().zip(&here.u).map(|(m, v)| m * v).sum());
    let mut by_slopes = [0.0; 12];
    add_slips(triangle, stack, groups, &map, &slopes, &here.u, forces, &mut by_slopes, energy);
    for (s, row) in by_slopes.iter().zip(&map) {
        for (f, m) in forces.iter_mut().zip(row) {
            *f += s * m;
        }
    }
}

/// The tangent in the axes of the pairs, without gasket, latches, stops and springs.
pub(crate) fn tangent(
    level: &Level,
    ground: &Ground,
    prepared: &Prepared,
    growth: &[FreeStrain],
    plane: &[f64],
) -> Symmetric {
    let mut matrix = level.stiffness.clone();
    let mut k = ElementMatrix::zeros(0);
    let mut memory = Vec::new();
    for t in 0..level.mesh.triangles.len() {
        let here = Strained::new(level, ground, prepared, plane, t, memory);
        let shaped = here.shaped;
        let change = slope_strain_map(&shaped.middles, &here.slopes);
        let third = shaped.triangle.area / 3.0;
        k.clear(here.list.len());
        let mut whole = [[0.0; 3]; 3];
        for part in &here.stack.groups {
            let Some(at) = here.at(part.group) else { continue };
            let strains = here.strains(Some(at));
            let warm = warmth(prepared, growth, here.stack.cover, part.group);
            let coupled = part.b.iter().flatten().any(|&b| b != 0.0);
            for m in 0..3 {
                let [force, _] = here.forces(part, m, strains[m], &warm);
                whole[m] = sum(whole[m], force);
                k.add_product([0, 0], &change[m], &part.a, &change[m], third);
                add_coupling(&mut k, at, &shaped.gradients[m], &part.a, &change[m], third);
                if coupled {
                    k.add_product([0, 0], &change[m], &part.b, &shaped.bend[m], third);
                    k.add_product([0, 0], &shaped.bend[m], &part.b, &change[m], third);
                }
            }
        }
        for (i, row) in stress_stiffness(&shaped.triangle, &shaped.middles, &whole).iter().enumerate() {
            for (j, value) in row.iter().enumerate() {
                k.add(i, j, *value);
            }
        }
        // The other half of what couples the slopes to the displacements in the plane.
        k.mirror(BENDING);
        level.freedoms.turn_matrix(here.list, &mut k.values);
        ground.add(&mut matrix, t, &k);
        memory = here.u;
    }
    for edge in &level.attachments.beams {
        add_beam_tangent(level, prepared, plane, edge, &mut matrix);
    }
    matrix
}

/// Adds what the change of the slopes' strain does to the displacements in the plane, below the freedoms of bending.
fn add_coupling(
    k: &mut ElementMatrix,
    at: usize,
    gradients: &[Point; 6],
    stiffness: &Matrix3,
    change: &[[f64; 9]; 3],
    factor: f64,
) {
    let pulls: [[f64; 9]; 3] = stiffness.map(|row| {
        std::array::from_fn(|j| {
            factor * (row[0] * change[0][j] + row[1] * change[1][j] + row[2] * change[2][j])
        })
    });
    for (node, g) in gradients.iter().enumerate() {
        let from = (at + 2 * node) * k.size;
        let (x, y) = k.values[from..].split_at_mut(k.size);
        for j in 0..BENDING {
            x[j] += g.x * pulls[0][j] + g.y * pulls[2][j];
            y[j] += g.y * pulls[1][j] + g.x * pulls[2][j];
        }
    }
}

/// A beam edge strained by its slope, the strain projected onto linear functions as in the triangles.
struct StrainedBeam {
    list: [usize; 12],
    /// Change of the projected strain with the freedoms of the ends, and the strain: mean part and linear part.
    change: [[f64; 6]; 2],
    stretch: [f64; 2],
    /// Linear strain rows over all twelve freedoms, at the points of the rule.
    rows: [[f64; 12]; 4],
    u: [f64; 12],
}

impl StrainedBeam {
    fn new(level: &Level, prepared: &Prepared, plane: &[f64], edge: &BeamEdge) -> Option<Self> {
        let beam = &prepared.panel.beams[edge.beam];
        let group = prepared.groups.of_layer[beam.layer];
        let arm = beam.centroid_height - prepared.groups.height[group];
        let freedoms = &level.freedoms;
        let ends = freedoms.of_ends(edge.ends);
        let [a, b, m] = [
            freedoms.at_vertex(group, edge.ends[0])?,
            freedoms.at_vertex(group, edge.ends[1])?,
            freedoms.at_edge(group, edge.edge)?,
        ]
        .map(|pair| freedoms.pair(pair));
        let list = [ends[0], ends[1], ends[2], ends[3], ends[4], ends[5], a[0], a[1], b[0], b[1], m[0], m[1]];
        let u = list.map(|d| plane[d]);
        let (mut change, mut stretch, mut rows) = ([[0.0; 6]; 2], [0.0; 2], [[0.0; 12]; 4]);
        for ((s, weight), row) in GAUSS_4.into_iter().zip(&mut rows) {
            let along = edge.line.slope_along(s);
            let slope: f64 = along.iter().zip(u).map(|(n, v)| n * v).sum();
            for (part, shape) in [weight, 3.0 * weight * (2.0 * s - 1.0)].into_iter().enumerate() {
                stretch[part] += 0.5 * shape * slope * slope;
                for (c, n) in change[part].iter_mut().zip(along) {
                    *c += shape * slope * n;
                }
            }
            for (r, v) in row.iter_mut().zip(edge.line.second_derivative(s)) {
                *r = -arm * v;
            }
            for (k, rate) in edge.line.stretch(s).into_iter().enumerate() {
                row[6 + 2 * k] = rate * edge.line.along.x;
                row[7 + 2 * k] = rate * edge.line.along.y;
            }
        }
        Some(Self { list, change, stretch, rows, u })
    }

    /// Strain of the slope at a fraction of the length, and its change with the freedoms of the ends.
    fn at(&self, s: f64) -> (f64, [f64; 6]) {
        let tilt = 2.0 * s - 1.0;
        let mut change = self.change[0];
        for (c, more) in change.iter_mut().zip(self.change[1]) {
            *c += tilt * more;
        }
        (self.stretch[0] + tilt * self.stretch[1], change)
    }

    fn linear(&self, point: usize) -> f64 {
        self.rows[point].iter().zip(self.u).map(|(r, v)| r * v).sum()
    }
}

fn add_beam_forces(level: &Level, prepared: &Prepared, plane: &[f64], edge: &BeamEdge, found: &mut Internal) {
    let Some(here) = StrainedBeam::new(level, prepared, plane, edge) else { return };
    let beam = &prepared.panel.beams[edge.beam];
    for (point, (s, weight)) in GAUSS_4.into_iter().enumerate() {
        let factor = weight * edge.length * beam.youngs_modulus * beam.area;
        let (slope, change) = here.at(s);
        let linear = here.linear(point);
        found.energy += factor * slope * (linear + 0.5 * slope);
        for (&d, r) in here.list.iter().zip(here.rows[point]) {
            found.forces[d] += factor * slope * r;
        }
        for (&d, c) in here.list.iter().zip(change) {
            found.forces[d] += factor * (linear + slope) * c;
        }
    }
}

fn add_beam_tangent(
    level: &Level,
    prepared: &Prepared,
    plane: &[f64],
    edge: &BeamEdge,
    matrix: &mut Symmetric,
) {
    let Some(here) = StrainedBeam::new(level, prepared, plane, edge) else { return };
    let beam = &prepared.panel.beams[edge.beam];
    let mut k = [[0.0; 12]; 12];
    let (mut mean, mut uneven) = (0.0, 0.0);
    for (point, (s, weight)) in GAUSS_4.into_iter().enumerate() {
        let factor = weight * edge.length * beam.youngs_modulus * beam.area;
        let (slope, change) = here.at(s);
        let mut whole = here.rows[point];
        for (w, c) in whole.iter_mut().zip(change) {
            *w += c;
        }
        add_outer(&mut k, &whole, factor);
        add_outer(&mut k, &here.rows[point], -factor);
        let pull = factor * (here.linear(point) + slope);
        mean += pull;
        uneven += 3.0 * pull * (2.0 * s - 1.0);
    }
    for (s, weight) in GAUSS_4 {
        let mut along = [0.0; 12];
        along[..6].copy_from_slice(&edge.line.slope_along(s));
        add_outer(&mut k, &along, weight * (mean + uneven * (2.0 * s - 1.0)));
    }
    add_dense(matrix, &level.freedoms, &here.list, &k);
}
