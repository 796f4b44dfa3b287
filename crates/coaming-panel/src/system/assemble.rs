//! Assembly of the stiffness and of the mass.

use super::attach::{Attachments, BeamEdge};
use super::freedoms::Freedoms;
use super::level::Stacks;
use super::symmetric::Symmetric;
use crate::element::hermite::add_outer;
use crate::element::quadrature::{DEGREE_6, GAUSS_4};
use crate::element::shape::cubic;
use crate::element::stiffness::stiffness;
use crate::element::triangle::Triangle;
use crate::mesh::Mesh;
use crate::model::prepare::Prepared;

/// The stiffness of triangles and beams. Rigid motions strain neither.
pub(crate) fn assemble_stiffness(
    mesh: &Mesh,
    prepared: &Prepared,
    stacks: &Stacks,
    freedoms: &Freedoms,
    attachments: &Attachments,
) -> Symmetric {
    let lists: Vec<Vec<usize>> =
        (0..mesh.triangles.len()).map(|t| freedoms.of_triangle(mesh, t, stacks.membrane(t))).collect();
    let joined: Vec<Vec<usize>> = lists.iter().map(|list| freedoms.targets(list)).collect();
    let mut matrix = Symmetric::pattern(freedoms.size(), &joined);
    for (t, list) in lists.iter().enumerate() {
        let mut k = stiffness(&Triangle::new(mesh.corners(t)), stacks.of(t), stacks.membrane(t));
        freedoms.turn_matrix(list, &mut k.values);
        let n = list.len();
        matrix.add_block(&joined[t], |i, j| k.values[i * n + j]);
    }
    for beam in &attachments.beams {
        add_beam(&mut matrix, prepared, freedoms, beam);
    }
    matrix
}

/// Adds a dense matrix given in x and y.
pub(crate) fn add_dense<const N: usize>(
    matrix: &mut Symmetric,
    freedoms: &Freedoms,
    list: &[usize; N],
    k: &[[f64; N]; N],
) {
    let mut values: Vec<f64> = k.iter().flatten().copied().collect();
    freedoms.turn_matrix(list, &mut values);
    matrix.add_block(&freedoms.targets(list), |i, j| values[i * N + j]);
}

/// Stiffness of one beam edge: stretching at the centroid u' - e w'', bending of its own, and twist.
fn add_beam(matrix: &mut Symmetric, prepared: &Prepared, freedoms: &Freedoms, edge: &BeamEdge) {
    let beam = &prepared.panel.beams[edge.beam];
    let group = prepared.groups.of_layer[beam.layer];
    let arm = beam.centroid_height - prepared.groups.height[group];
    let mut bending = [[0.0; 6]; 6];
    for (s, weight) in GAUSS_4 {
        let factor = weight * edge.length * beam.youngs_modulus * beam.second_moment_of_area;
        add_outer(&mut bending, &edge.line.second_derivative(s), factor);
    }
    add_outer(&mut bending, &edge.line.twist(), edge.length * beam.shear_modulus * beam.torsion_constant);
    let ends = freedoms.of_ends(edge.ends);
    add_dense(matrix, freedoms, &ends, &bending);
    let nodes = [
        freedoms.at_vertex(group, edge.ends[0]),
        freedoms.at_vertex(group, edge.ends[1]),
        freedoms.at_edge(group, edge.edge),
    ];
    let [Some(a), Some(b), Some(m)] = nodes else { return };
    let ([a0, a1], [b0, b1], [m0, m1]) = (freedoms.pair(a), freedoms.pair(b), freedoms.pair(m));
    let list = [ends[0], ends[1], ends[2], ends[3], ends[4], ends[5], a0, a1, b0, b1, m0, m1];
    let mut stretching = [[0.0; 12]; 12];
    let (t, h) = (edge.line.along, edge.line.length);
    for (s, weight) in GAUSS_4 {
        let mut row = [0.0; 12];
        for (r, v) in row.iter_mut().zip(edge.line.second_derivative(s)) {
            *r = -arm * v;
        }
        for (k, slope) in
            [(4.0 * s - 3.0) / h, (4.0 * s - 1.0) / h, (4.0 - 8.0 * s) / h].into_iter().enumerate()
        {
            row[6 + 2 * k] = slope * t.x;
            row[7 + 2 * k] = slope * t.y;
        }
        add_outer(&mut stretching, &row, weight * edge.length * beam.youngs_modulus * beam.area);
    }
    add_dense(matrix, freedoms, &list, &stretching);
}

/// The mass that moves with the deflection: consistent for layers and beams, added at points. Motion in the plane and the turning of
/// the section carry none.
pub(crate) fn assemble_mass(
    pattern: &Symmetric,
    mesh: &Mesh,
    prepared: &Prepared,
    stacks: &Stacks,
    freedoms: &Freedoms,
    attachments: &Attachments,
) -> Symmetric {
    let mut matrix = pattern.zero();
    for t in 0..mesh.triangles.len() {
        let triangle = Triangle::new(mesh.corners(t));
        let mass = triangle.area * (stacks.of(t).mass_per_area + attachments.spread_over(t));
        let mut m = [[0.0; 9]; 9];
        for (l, weight) in DEGREE_6 {
            add_outer(&mut m, &cubic(&triangle, l), weight * mass);
        }
        let mut values: Vec<f64> = m.iter().flatten().copied().collect();
        let list = freedoms.of_triangle(mesh, t, &[]);
        freedoms.turn_matrix(&list, &mut values);
        matrix.add_block(&list, |i, j| values[9 * i + j]);
    }
    for edge in &attachments.beams {
        let beam = &prepared.panel.beams[edge.beam];
        let mut m = [[0.0; 6]; 6];
        for (s, weight) in GAUSS_4 {
            add_outer(&mut m, &edge.line.deflection(s), weight * edge.length * beam.area * beam.density);
        }
        add_dense(&mut matrix, freedoms, &freedoms.of_ends(edge.ends), &m);
    }
    for (mass, &vertex) in prepared.panel.masses.iter().zip(&attachments.masses) {
        let d = freedoms.deflection(vertex);
        matrix.add(d, d, mass.mass);
    }
    matrix
}
