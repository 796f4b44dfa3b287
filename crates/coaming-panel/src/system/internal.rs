//! The forces with which the strained panel resists, triangle by triangle.
//!
//! Each triangle and beam edge first loses its own rigid motion, which strains nothing: what is left keeps its digits however small the
//! triangle, where a product with the whole stiffness would lose them.

use super::level::Level;
use crate::element::quadrature::{DEGREE_4, GAUSS_4, MIDSIDE};
use crate::element::shape::{quadratic, slope_map, slope_mismatch, strain_map};
use crate::element::stiffness::{BENDING, MEMBRANE, mean_share};
use crate::element::triangle::Triangle;
use crate::model::prepare::Prepared;
use crate::model::stack::{Matrix3, Stack};

/// Forces over all freedoms and the strain energy; both in x and y.
pub(crate) struct Internal {
    pub forces: Vec<f64>,
    pub energy: f64,
}

/// The forces that hold the panel in a deflected shape.
pub(crate) fn internal(level: &Level, prepared: &Prepared, plane: &[f64]) -> Internal {
    let mut found = Internal { forces: vec![0.0; plane.len()], energy: 0.0 };
    // An iteration starts from nothing as often as not.
    if plane.iter().all(|u| *u == 0.0) {
        return found;
    }
    for t in 0..level.mesh.triangles.len() {
        add_triangle(level, prepared, plane, t, &mut found);
    }
    for edge in &level.attachments.beams {
        add_beam(level, prepared, plane, edge, &mut found);
    }
    found
}

fn add_triangle(level: &Level, prepared: &Prepared, plane: &[f64], t: usize, found: &mut Internal) {
    let (stack, groups) = (level.stacks.of(t), level.stacks.membrane(t));
    let list = level.freedoms.of_triangle(&level.mesh, t, groups);
    let mut u: Vec<f64> = list.iter().map(|&d| plane[d]).collect();
    let triangle = Triangle::new(level.mesh.corners(t));
    remove_rigid(&mut u, &triangle, groups, &prepared.groups.height);
    let map = slope_map(&triangle);
    let mut slopes = [0.0; 12];
    for (s, row) in slopes.iter_mut().zip(&map) {
        *s = row.iter().zip(&u).map(|(m, v)| m * v).sum();
    }
    let mut forces = vec![0.0; u.len()];
    let mut slope_forces = [0.0; 12];
    for (l, weight) in MIDSIDE {
        let strain = strain_map(&triangle, l);
        let factor = weight * triangle.area;
        let curvature = times(&strain, &slopes).map(|v| -v);
        for part in &stack.groups {
            let at = groups.iter().position(|&g| g == part.group).map(|p| BENDING + MEMBRANE * p);
            let stretch = at.map_or([0.0; 3], |at| times(&strain, &u[at..at + MEMBRANE]));
            let normal = sum(product(&part.a, stretch), product(&part.b, curvature));
            let moment = sum(product(&part.b, stretch), product(&part.d, curvature));
            for i in 0..3 {
                found.energy += 0.5 * factor * (stretch[i] * normal[i] + curvature[i] * moment[i]);
                for (f, s) in slope_forces.iter_mut().zip(strain[i]) {
                    *f -= factor * s * moment[i];
                }
                if let Some(at) = at {
                    for (f, s) in forces[at..at + MEMBRANE].iter_mut().zip(strain[i]) {
                        *f += factor * s * normal[i];
                    }
                }
            }
        }
    }
    add_slips(&triangle, stack, groups, &map, &slopes, &u, &mut forces, &mut slope_forces, &mut found.energy);
    for (s, row) in slope_forces.iter().zip(&map) {
        for (f, m) in forces.iter_mut().zip(row) {
            *f += s * m;
        }
    }
    for (&d, f) in list.iter().zip(forces) {
        found.forces[d] += f;
    }
}

#[allow(clippy::too_many_arguments)]
pub(crate) fn add_slips(
    triangle: &Triangle,
    stack: &Stack,
    groups: &[usize],
    map: &[[f64; 9]; 12],
    slopes: &[f64; 12],
    u: &[f64],
    forces: &mut [f64],
    slope_forces: &mut [f64; 12],
    energy: &mut f64,
) {
    let offset = |group: usize| groups.iter().position(|&g| g == group).map(|p| BENDING + MEMBRANE * p);
    for slip in &stack.slips {
        let (Some(lower), Some(upper)) = (offset(slip.lower), offset(slip.upper)) else { continue };
        let mismatch = slope_mismatch(triangle, map);
        let share = mean_share(triangle, stack, slip);
        for direction in 0..2 {
            let row = mismatch[direction];
            let mean: f64 = share * row.iter().zip(u).map(|(m, v)| m * v).sum::<f64>();
            for (l, weight) in DEGREE_4 {
                let n = quadratic(l);
                let mut amount = -slip.arm * mean;
                for (node, n) in n.into_iter().enumerate() {
                    let at = 2 * node + direction;
                    amount += n * (u[upper + at] - u[lower + at] + slip.arm * slopes[at]);
                }
                let force = weight * triangle.area * slip.stiffness * amount;
                *energy += 0.5 * force * amount;
                for (node, n) in n.into_iter().enumerate() {
                    let at = 2 * node + direction;
                    forces[upper + at] += n * force;
                    forces[lower + at] -= n * force;
                    slope_forces[at] += n * slip.arm * force;
                }
                for (f, m) in forces.iter_mut().zip(row) {
                    *f -= slip.arm * share * m * force;
                }
            }
        }
    }
}

/// Takes away the motion of the first corner: rise, tilt (with what it does in the plane at each group's height), and displacement.
pub(crate) fn remove_rigid(u: &mut [f64], triangle: &Triangle, groups: &[usize], heights: &[f64]) {
    let (rise, along_x, along_y) = (u[0], u[1], u[2]);
    let from_first = [crate::geometry::point::Point::default(), triangle.sides[0], triangle.sides[2] * -1.0];
    for (k, p) in from_first.into_iter().enumerate() {
        u[3 * k] -= rise + along_x * p.x + along_y * p.y;
        u[3 * k + 1] -= along_x;
        u[3 * k + 2] -= along_y;
    }
    let mut base = None;
    for (p, &group) in groups.iter().enumerate() {
        let from = BENDING + MEMBRANE * p;
        let height = heights[group];
        let (x, y) = *base.get_or_insert((u[from] + height * along_x, u[from + 1] + height * along_y));
        for pair in u[from..from + MEMBRANE].chunks_exact_mut(2) {
            pair[0] += height * along_x - x;
            pair[1] += height * along_y - y;
        }
    }
}

pub(crate) fn add_beam(
    level: &Level,
    prepared: &Prepared,
    plane: &[f64],
    edge: &super::attach::BeamEdge,
    found: &mut Internal,
) {
    let beam = &prepared.panel.beams[edge.beam];
    let group = prepared.groups.of_layer[beam.layer];
    let arm = beam.centroid_height - prepared.groups.height[group];
    let list = level.freedoms.of_ends(edge.ends);
    let mut u = list.map(|d| plane[d]);
    let (rise, along_x, along_y) = (u[0], u[1], u[2]);
    let t = edge.line.along;
    u[3] -= rise + edge.line.length * (along_x * t.x + along_y * t.y);
    u[0] = 0.0;
    for (value, tilt) in [(1, along_x), (2, along_y), (4, along_x), (5, along_y)] {
        u[value] -= tilt;
    }
    let nodes = [
        level.freedoms.at_vertex(group, edge.ends[0]),
        level.freedoms.at_vertex(group, edge.ends[1]),
        level.freedoms.at_edge(group, edge.edge),
    ]
    .map(|pair| pair.map(|p| level.freedoms.pair(p)));
    let along = nodes.map(|pair| pair.map_or(0.0, |[x, y]| plane[x] * t.x + plane[y] * t.y));
    let mut add = |row: [f64; 6], force: f64| {
        for (&d, r) in list.iter().zip(row) {
            found.forces[d] += r * force;
        }
    };
    let value = |row: [f64; 6]| row.iter().zip(u).map(|(r, v)| r * v).sum::<f64>();
    let twist = value(edge.line.twist());
    let torque = edge.length * beam.shear_modulus * beam.torsion_constant * twist;
    add(edge.line.twist(), torque);
    let mut energy = 0.5 * torque * twist;
    let mut pulls = [0.0; 3];
    for (s, weight) in GAUSS_4 {
        let row = edge.line.second_derivative(s);
        let bend = value(row);
        let factor = weight * edge.length * beam.youngs_modulus;
        let moment = factor * beam.second_moment_of_area * bend;
        let h = edge.line.length;
        let rates = [(4.0 * s - 3.0) / h, (4.0 * s - 1.0) / h, (4.0 - 8.0 * s) / h];
        let held = nodes.iter().all(Option::is_some);
        // Differences from the first end: a common displacement strains nothing.
        let stretch = if held {
            rates[1] * (along[1] - along[0]) + rates[2] * (along[2] - along[0]) - arm * bend
        } else {
            0.0
        };
        let force = factor * beam.area * stretch;
        energy += 0.5 * (moment * bend + force * stretch);
        add(row, moment - arm * force);
        for (pull, rate) in pulls.iter_mut().zip(rates) {
            *pull += rate * force;
        }
    }
    found.energy += energy;
    for (pair, pull) in nodes.into_iter().zip(pulls) {
        if let Some([x, y]) = pair {
            found.forces[x] += pull * t.x;
            found.forces[y] += pull * t.y;
        }
    }
}

fn times(strain: &[[f64; 12]; 3], nodal: &[f64]) -> [f64; 3] {
    strain.map(|row| row.iter().zip(nodal).map(|(s, v)| s * v).sum())
}

fn product(matrix: &Matrix3, v: [f64; 3]) -> [f64; 3] {
    matrix.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
}

fn sum(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}
