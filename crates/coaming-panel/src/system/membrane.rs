//! Membrane forces of a solved state, and the stiffness that they lend to the deflection.

use super::assemble::add_dense;
use super::level::Level;
use super::loads::held_back;
use super::symmetric::Symmetric;
use crate::element::hermite::add_outer;
use crate::element::membrane::{AtMidsides, middle_slopes, stress_stiffness};
use crate::element::quadrature::{GAUSS_4, MIDSIDE};
use crate::element::shape::{curvature_map, slope_map, strain_map};
use crate::element::stiffness::{BENDING, MEMBRANE};
use crate::element::triangle::Triangle;
use crate::model::growth::FreeStrain;
use crate::model::prepare::Prepared;

/// Forces per length and moments per length with which layers that are warm or grow would spread and bend a group if nothing held them.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Warmth {
    pub force: [f64; 3],
    pub moment: [f64; 3],
}

/// What growth does to one group where `cover` lies.
pub(crate) fn warmth(prepared: &Prepared, growth: &[FreeStrain], cover: u64, group: usize) -> Warmth {
    let mut found = Warmth::default();
    for given in growth {
        if cover >> given.layer & 1 == 0 || prepared.groups.of_layer[given.layer] != group {
            continue;
        }
        let (force, moment) = held_back(prepared, given);
        for i in 0..3 {
            found.force[i] += force[i];
            found.moment[i] += moment[i];
        }
    }
    found
}

/// Forces that are no more than this of what they are the difference of are rounding: a free panel that is warm has none.
const ROUNDING: f64 = 1e-9;

/// Membrane forces of the whole stack at the midside points of one triangle, in a linear state given in x and y, and the largest term
/// of which they are the sum.
fn forces_of(
    level: &Level,
    prepared: &Prepared,
    growth: &[FreeStrain],
    plane: &[f64],
    t: usize,
) -> (AtMidsides, f64) {
    let (stack, groups) = (level.stacks.of(t), level.stacks.membrane(t));
    let list = level.freedoms.of_triangle(&level.mesh, t, groups);
    let triangle = Triangle::new(level.mesh.corners(t));
    let map = slope_map(&triangle);
    let (mut forces, mut largest) = ([[0.0; 3]; 3], 0.0_f64);
    for (force, (l, _)) in forces.iter_mut().zip(MIDSIDE) {
        let strain = strain_map(&triangle, l);
        let curvature = curvature_map(&strain, &map)
            .map(|row| row.iter().zip(&list).map(|(c, &d)| c * plane[d]).sum::<f64>());
        for part in &stack.groups {
            let Some(p) = groups.iter().position(|&g| g == part.group) else { continue };
            let from = BENDING + MEMBRANE * p;
            let stretch =
                strain.map(|row| row.iter().zip(&list[from..]).map(|(s, &d)| s * plane[d]).sum::<f64>());
            let warm = warmth(prepared, growth, stack.cover, part.group);
            for i in 0..3 {
                let elastic: f64 =
                    (0..3).map(|j| part.a[i][j] * stretch[j] + part.b[i][j] * curvature[j]).sum();
                force[i] += elastic - warm.force[i];
                largest = largest.max(elastic.abs()).max(warm.force[i].abs());
            }
        }
    }
    (forces, largest)
}

/// The stiffness that the membrane forces of a linear state lend to the deflection: of layers and of beams along their lines.
pub(crate) fn stress_stiffness_of(
    level: &Level,
    prepared: &Prepared,
    growth: &[FreeStrain],
    plane: &[f64],
) -> Symmetric {
    let mut matrix = level.stiffness.zero();
    let all: Vec<(AtMidsides, f64)> =
        (0..level.mesh.triangles.len()).map(|t| forces_of(level, prepared, growth, plane, t)).collect();
    let largest = all.iter().fold(0.0_f64, |a, (_, size)| a.max(*size));
    for (t, (forces, _)) in all.into_iter().enumerate() {
        let triangle = Triangle::new(level.mesh.corners(t));
        let forces = forces.map(|row| row.map(|f| if f.abs() > ROUNDING * largest { f } else { 0.0 }));
        let k = stress_stiffness(&triangle, &middle_slopes(&triangle), &forces);
        let list = level.freedoms.of_triangle(&level.mesh, t, &[]);
        let mut values: Vec<f64> = k.iter().flatten().copied().collect();
        level.freedoms.turn_matrix(&list, &mut values);
        matrix.add_block(&level.freedoms.targets(&list), |i, j| values[9 * i + j]);
    }
    for edge in &level.attachments.beams {
        let beam = &prepared.panel.beams[edge.beam];
        let group = prepared.groups.of_layer[beam.layer];
        let arm = beam.centroid_height - prepared.groups.height[group];
        let nodes = [
            level.freedoms.at_vertex(group, edge.ends[0]),
            level.freedoms.at_vertex(group, edge.ends[1]),
            level.freedoms.at_edge(group, edge.edge),
        ];
        let [Some(a), Some(b), Some(m)] = nodes else { continue };
        let axis = edge.line.along;
        let along = [a, b, m].map(|pair| {
            let [x, y] = level.freedoms.pair(pair);
            plane[x] * axis.x + plane[y] * axis.y
        });
        let list = level.freedoms.of_ends(edge.ends);
        let mut k = [[0.0; 6]; 6];
        for (s, weight) in GAUSS_4 {
            let bend: f64 = edge.line.second_derivative(s).iter().zip(list).map(|(n, d)| n * plane[d]).sum();
            let rates = edge.line.stretch(s);
            let stretch: f64 = rates.iter().zip(along).map(|(r, u)| r * u).sum::<f64>() - arm * bend;
            let pull = beam.youngs_modulus * beam.area * stretch;
            add_outer(&mut k, &edge.line.slope_along(s), weight * edge.length * pull);
        }
        add_dense(&mut matrix, &level.freedoms, &list, &k);
    }
    matrix
}
