//! What acts on the panel as it moves: elastic supports, gasket, spring latches and stops.

use super::assemble::add_dense;
use super::attach::Attachments;
use super::level::Level;
use super::symmetric::Symmetric;
use crate::element::hermite::add_outer;
use crate::element::quadrature::{GAUSS_4, gauss_on_quarters};
use crate::model::latch::LatchAction;
use crate::model::load::Load;
use crate::model::prepare::Prepared;

/// What elastic supports, gasket, spring latches and stops do at a state.
pub(crate) struct Contact {
    /// Energy stored.
    pub energy: f64,
    /// Forces on the panel over all freedoms, in x and y.
    pub forces: Vec<f64>,
    /// Sum of the sizes of those forces.
    pub size: f64,
}

/// Evaluates elastic supports, gasket, spring latches and stops; adds their tangent to `matrix` when given.
pub(crate) fn contact(
    level: &Level,
    prepared: &Prepared,
    load: &Load,
    plane: &[f64],
    mut matrix: Option<&mut Symmetric>,
) -> Contact {
    let mut found = Contact { energy: 0.0, forces: vec![0.0; plane.len()], size: 0.0 };
    add_elastic_supports(level, plane, &mut found, matrix.as_deref_mut());
    for edge in &level.attachments.gaskets {
        let gasket = &prepared.panel.gaskets[edge.gasket];
        let list = level.freedoms.of_ends(edge.ends);
        let mut tangent = [[0.0; 6]; 6];
        let mut stiff = false;
        for (s, weight) in gauss_on_quarters() {
            let shape = edge.line.deflection(s);
            let deflection: f64 = list.iter().zip(shape).map(|(&d, n)| n * plane[d]).sum();
            let law = prepared.laws[edge.gasket].at(gasket.compression(edge.along(s), deflection));
            let factor = weight * edge.length();
            found.energy += factor * law.energy;
            found.size += factor * law.force;
            for (&d, n) in list.iter().zip(shape) {
                found.forces[d] += factor * law.force * n;
            }
            if law.tangent > 0.0 && matrix.is_some() {
                add_outer(&mut tangent, &shape, factor * law.tangent);
                stiff = true;
            }
        }
        if let (true, Some(matrix)) = (stiff, matrix.as_deref_mut()) {
            add_dense(matrix, &level.freedoms, &list, &tangent);
        }
    }
    let mut spring = |vertex: usize, stretch: f64, stiffness: f64, sign: f64| {
        if stretch > 0.0 {
            let d = level.freedoms.deflection(vertex);
            found.energy += 0.5 * stiffness * stretch * stretch;
            found.forces[d] += sign * stiffness * stretch;
            found.size += stiffness * stretch;
            if let Some(matrix) = matrix.as_deref_mut() {
                matrix.add(d, d, stiffness);
            }
        }
    };
    for (i, (latch, &vertex)) in prepared.panel.latches.iter().zip(&level.attachments.latches).enumerate() {
        if let (LatchAction::Spring { stiffness, draw }, false) =
            (latch.action, load.missing_latches.contains(&i))
        {
            spring(vertex, plane[level.freedoms.deflection(vertex)] + draw, stiffness, -1.0);
        }
    }
    for (stop, &vertex) in prepared.panel.stops.iter().zip(&level.attachments.stops) {
        spring(vertex, stop.height - plane[level.freedoms.deflection(vertex)], stop.stiffness, 1.0);
    }
    found
}

/// Evaluates supports that spring both ways.
fn add_elastic_supports(
    level: &Level,
    plane: &[f64],
    found: &mut Contact,
    mut matrix: Option<&mut Symmetric>,
) {
    let freedoms = &level.freedoms;
    for spring in &level.attachments.springs {
        let list = freedoms.of_ends(spring.ends);
        let mut k = [[0.0; 6]; 6];
        for (s, weight) in GAUSS_4 {
            add_outer(&mut k, &spring.line.deflection(s), weight * spring.length * spring.deflection);
            add_outer(&mut k, &spring.line.slope_across(s), weight * spring.length * spring.turning);
        }
        for (&d, row) in list.iter().zip(&k) {
            let force: f64 = row.iter().zip(list).map(|(v, e)| v * plane[e]).sum();
            found.forces[d] -= force;
            found.energy += 0.5 * force * plane[d];
            found.size += if d < freedoms.vertices { force.abs() } else { 0.0 };
        }
        if let Some(matrix) = matrix.as_deref_mut() {
            add_dense(matrix, freedoms, &list, &k);
        }
    }
    for point in &level.attachments.point_springs {
        let w = freedoms.deflection(point.vertex);
        let [x, y] = freedoms.pair(freedoms.slopes(point.vertex));
        for (d, k) in [(w, point.deflection), (x, point.turning), (y, point.turning)] {
            found.forces[d] -= k * plane[d];
            found.energy += 0.5 * k * plane[d] * plane[d];
            found.size += if d == w { (k * plane[d]).abs() } else { 0.0 };
            if let Some(matrix) = matrix.as_deref_mut() {
                matrix.add(d, d, k);
            }
        }
    }
}

/// Whether anything acts that can let go.
pub(crate) fn has_contact(attachments: &Attachments, prepared: &Prepared) -> bool {
    let sprung = prepared.panel.latches.iter().any(|l| matches!(l.action, LatchAction::Spring { .. }));
    !attachments.gaskets.is_empty() || !attachments.stops.is_empty() || sprung
}
