//! Deflections that stretch the panel: strain energy, forces and tangent with the quadratic terms of the slopes (von Karman).
//!
//! Every group of layers stretches by its displacements in the plane and by the slopes common to all; beams likewise along their lines.
//! Warmth and other growth are part of the whole strain, so they act here and not among the loads. Slip between layers stays linear.

use super::assemble::add_dense;
use super::attach::BeamEdge;
use super::internal::{Internal, internal};
use super::level::Level;
use super::membrane::{Warmth, warmth};
use super::symmetric::Symmetric;
use crate::element::hermite::add_outer;
use crate::element::membrane::{
    AtMidsides, SlopePoint, slope_points, slope_strain, slope_strain_map, slopes_at, stress_stiffness,
};
use crate::element::quadrature::{GAUSS_4, MIDSIDE};
use crate::element::shape::{curvature_map, slope_map, strain_map};
use crate::element::stiffness::{BENDING, ElementMatrix, MEMBRANE};
use crate::element::triangle::Triangle;
use crate::model::growth::FreeStrain;
use crate::model::prepare::Prepared;

/// What one triangle needs to be strained by its slopes.
struct Strained {
    triangle: Triangle,
    list: Vec<usize>,
    points: [SlopePoint; 12],
    slopes: Vec<[f64; 2]>,
    /// Strain of the slopes at the midside points.
    stretch: AtMidsides,
    /// Linear strains in the plane of each group and curvature, at the midside points.
    plain: Vec<AtMidsides>,
    curvature: AtMidsides,
    warmth: Vec<Warmth>,
}

impl Strained {
    fn new(level: &Level, prepared: &Prepared, growth: &[FreeStrain], plane: &[f64], t: usize) -> Self {
        let (stack, groups) = (level.stacks.of(t), level.stacks.membrane(t));
        let list = level.freedoms.of_triangle(&level.mesh, t, groups);
        let triangle = Triangle::new(level.mesh.corners(t));
        let mut u: Vec<f64> = list.iter().map(|&d| plane[d]).collect();
        let tilt = [u[1], u[2]];
        super::internal::remove_rigid(&mut u, &triangle, groups, &prepared.groups.height);
        let points = slope_points(&triangle);
        let slopes = slopes_at(&points, &u[..BENDING], tilt);
        let stretch = slope_strain(&points, &slopes);
        let map = slope_map(&triangle);
        let mut curvature = [[0.0; 3]; 3];
        let mut plain = vec![[[0.0; 3]; 3]; groups.len()];
        for (m, (l, _)) in MIDSIDE.into_iter().enumerate() {
            let strain = strain_map(&triangle, l);
            curvature[m] =
                curvature_map(&strain, &map).map(|row| row.iter().zip(&u).map(|(c, v)| c * v).sum());
            for (p, values) in plain.iter_mut().enumerate() {
                let own = &u[BENDING + MEMBRANE * p..];
                values[m] = strain.map(|row| row.iter().zip(own).map(|(s, v)| s * v).sum());
            }
        }
        let warmth = groups.iter().map(|&g| warmth(prepared, growth, stack.cover, g)).collect();
        Self { triangle, list, points, slopes, stretch, plain, curvature, warmth }
    }

    /// Forces per length of every group at the midside points, all strains counted.
    fn forces(&self, level: &Level, t: usize) -> Vec<AtMidsides> {
        let (stack, groups) = (level.stacks.of(t), level.stacks.membrane(t));
        let force = |p: usize, m: usize| {
            let Some(part) = stack.groups.iter().find(|part| part.group == groups[p]) else {
                return [0.0; 3];
            };
            let mut force = [0.0; 3];
            for i in 0..3 {
                let elastic: f64 = (0..3)
                    .map(|j| {
                        part.a[i][j] * (self.plain[p][m][j] + self.stretch[m][j])
                            + part.b[i][j] * self.curvature[m][j]
                    })
                    .sum();
                force[i] = elastic - self.warmth[p].force[i];
            }
            force
        };
        (0..groups.len()).map(|p| [0, 1, 2].map(|m| force(p, m))).collect()
    }
}

/// Forces over all freedoms and the strain energy, in x and y: linear theory's and what slopes and warmth add.
pub(crate) fn internal_large(
    level: &Level,
    prepared: &Prepared,
    growth: &[FreeStrain],
    plane: &[f64],
) -> Internal {
    let mut found = internal(level, prepared, plane);
    for t in 0..level.mesh.triangles.len() {
        let here = Strained::new(level, prepared, growth, plane, t);
        let (stack, groups) = (level.stacks.of(t), level.stacks.membrane(t));
        let map = slope_map(&here.triangle);
        let change = slope_strain_map(&here.points, &here.slopes);
        let all = here.forces(level, t);
        let third = here.triangle.area / 3.0;
        let mut forces = vec![0.0; here.list.len()];
        for (m, (l, _)) in MIDSIDE.into_iter().enumerate() {
            let strain = strain_map(&here.triangle, l);
            let bend = curvature_map(&strain, &map);
            for (p, &group) in groups.iter().enumerate() {
                let Some(part) = stack.groups.iter().find(|part| part.group == group) else { continue };
                let (warm, slope) = (here.warmth[p], here.stretch[m]);
                for i in 0..3 {
                    // Linear theory has a · plain + b · curvature already; the slopes add a · slope to it, and b · slope to the moments.
                    let more: f64 = (0..3).map(|j| part.a[i][j] * slope[j]).sum::<f64>() - warm.force[i];
                    let moment: f64 = (0..3).map(|j| part.b[i][j] * slope[j]).sum::<f64>() - warm.moment[i];
                    let whole = all[p][m][i];
                    let half = 0.5 * (0..3).map(|j| part.a[i][j] * slope[j]).sum::<f64>();
                    let linear = whole - more;
                    found.energy += third
                        * (slope[i] * (linear + half)
                            - warm.force[i] * (here.plain[p][m][i] + slope[i])
                            - warm.moment[i] * here.curvature[m][i]);
                    for (f, s) in forces[BENDING + MEMBRANE * p..].iter_mut().zip(strain[i]) {
                        *f += third * more * s;
                    }
                    for (k, f) in forces[..BENDING].iter_mut().enumerate() {
                        *f += third * (moment * bend[i][k] + whole * change[m][i][k]);
                    }
                }
            }
        }
        for (&d, f) in here.list.iter().zip(forces) {
            found.forces[d] += f;
        }
    }
    for edge in &level.attachments.beams {
        add_beam_forces(level, prepared, plane, edge, &mut found);
    }
    found
}

/// The tangent in the axes of the pairs, without gasket, latches, stops and springs.
pub(crate) fn tangent(level: &Level, prepared: &Prepared, growth: &[FreeStrain], plane: &[f64]) -> Symmetric {
    let mut matrix = level.stiffness.clone();
    for t in 0..level.mesh.triangles.len() {
        let here = Strained::new(level, prepared, growth, plane, t);
        let (stack, groups) = (level.stacks.of(t), level.stacks.membrane(t));
        let map = slope_map(&here.triangle);
        let change = slope_strain_map(&here.points, &here.slopes);
        let third = here.triangle.area / 3.0;
        let n = here.list.len();
        let mut k = ElementMatrix::zeros(n);
        for (m, (l, _)) in MIDSIDE.into_iter().enumerate() {
            let strain = strain_map(&here.triangle, l);
            let bend = curvature_map(&strain, &map);
            for (p, &group) in groups.iter().enumerate() {
                let Some(part) = stack.groups.iter().find(|part| part.group == group) else { continue };
                let at = BENDING + MEMBRANE * p;
                k.add_product([0, 0], &change[m], &part.a, &change[m], third);
                k.add_product([at, 0], &strain, &part.a, &change[m], third);
                k.add_product([0, at], &change[m], &part.a, &strain, third);
                if part.b.iter().flatten().any(|&b| b != 0.0) {
                    k.add_product([0, 0], &change[m], &part.b, &bend, third);
                    k.add_product([0, 0], &bend, &part.b, &change[m], third);
                }
            }
        }
        let mut whole = [[0.0; 3]; 3];
        for forces in here.forces(level, t) {
            for (sum, force) in whole.iter_mut().flatten().zip(forces.into_iter().flatten()) {
                *sum += force;
            }
        }
        for (i, row) in stress_stiffness(&here.triangle, &here.points, &whole).iter().enumerate() {
            for (j, value) in row.iter().enumerate() {
                k.add(i, j, *value);
            }
        }
        level.freedoms.turn_matrix(&here.list, &mut k.values);
        matrix.add_block(&level.freedoms.targets(&here.list), |i, j| k.values[i * n + j]);
    }
    for edge in &level.attachments.beams {
        add_beam_tangent(level, prepared, plane, edge, &mut matrix);
    }
    matrix
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
