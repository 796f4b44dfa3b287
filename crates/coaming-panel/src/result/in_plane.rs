//! What supports do in the plane, and whether it balances.

use crate::error::PanelError;
use crate::geometry::point::Point;
use crate::model::prepare::{Prepared, Role};
use crate::system::equilibrium::State;
use crate::system::in_plane::PlaneResultant;
use crate::system::level::Level;
use crate::system::slide::free_in_plane;

/// Of all that pulls in the plane, the share that pins alone may carry: more, and nothing balances it.
const UNBALANCED: f64 = 1e-6;

/// Forces in the plane of line and point supports, and what is left when all is added.
pub(crate) struct InPlane {
    pub lines: Vec<Point>,
    pub points: Vec<Point>,
    /// Sum of forces, over the sum of their sizes (of their turning, over that times the size of the panel, if it is larger).
    pub balance: f64,
}

/// Gathers the reactions in the plane.
pub(crate) fn gather(level: &Level, prepared: &Prepared, state: &State, applied: PlaneResultant) -> InPlane {
    let (mesh, freedoms) = (&level.mesh, &level.freedoms);
    let nodes = mesh.vertices.len() + mesh.edges.len();
    let lines = prepared.panel.line_supports.len();
    let supports = lines + prepared.panel.point_supports.len();
    let mut forces = vec![Point::default(); supports];
    let mut sum = applied;
    let holders = if freedoms.membrane.is_empty() { Vec::new() } else { holders(level, prepared) };
    for &group in &freedoms.membrane {
        for node in 0..nodes {
            let Some(pair) = freedoms.at_vertex(group, node) else { continue };
            let [x, y] = freedoms.pair(pair).map(|d| state.reactions[d]);
            let whole = Point::new(x, y);
            let mut force = whole;
            // What pins carry is rounding: `check_pins` has seen to that.
            for (_, pin) in freedoms.pins.iter().filter(|(p, _)| *p == pair) {
                force = force - *pin * force.dot(*pin);
            }
            if force.length() <= 1e-9 * whole.length() {
                continue;
            }
            let at = match mesh.vertices.get(node) {
                Some(&vertex) => vertex,
                None => {
                    let [a, b] = mesh.edges[node - mesh.vertices.len()].ends.map(|v| mesh.vertices[v]);
                    (a + b) * 0.5
                }
            };
            sum.add(force, at);
            share(force, &holders[node], &mut forces);
        }
    }
    let reach = sum.size * mesh.size;
    let left = (sum.force.length() * mesh.size).max(sum.turning.abs());
    let points = forces.split_off(lines);
    InPlane { lines: forces, points, balance: if reach > 0.0 { left / reach } else { 0.0 } }
}

/// A support and a direction in which it holds a node.
type Holder = (usize, Point);

/// Splits a force into the directions in which its node is held, and each part evenly over the supports that hold it there.
fn share(force: Point, holders: &[Holder], forces: &mut [Point]) {
    let Some(&(_, first)) = holders.first() else { return };
    let is_first = |d: Point| d.cross(first).abs() < 0.01;
    let (along_first, rest) = match holders.iter().find(|(_, d)| !is_first(*d)) {
        None => (force, Point::default()),
        Some(&(_, second)) => {
            let along_first = first * (force.cross(second) / first.cross(second));
            (along_first, force - along_first)
        }
    };
    for (part, belongs) in [(along_first, true), (rest, false)] {
        let sharers = || holders.iter().filter(|(_, d)| is_first(*d) == belongs);
        for &(support, _) in sharers() {
            forces[support] = forces[support] + part * (1.0 / sharers().count() as f64);
        }
    }
}

/// The supports that hold each node (vertices, then edges) in the plane.
fn holders(level: &Level, prepared: &Prepared) -> Vec<Vec<Holder>> {
    let mesh = &level.mesh;
    let count = mesh.vertices.len();
    let mut holders: Vec<Vec<Holder>> = vec![Vec::new(); count + mesh.edges.len()];
    let lines = prepared.panel.line_supports.len();
    let mut add = |node: usize, support: usize, direction: Point| {
        let known = |&(s, d): &Holder| s == support && d.cross(direction).abs() < 0.01;
        if !holders[node].iter().any(known) {
            holders[node].push((support, direction));
        }
    };
    for (e, edge) in mesh.edges.iter().enumerate() {
        for along in &edge.uses {
            let Role::Support(i) = prepared.roles[along.feature] else { continue };
            let support = &prepared.panel.line_supports[i];
            let places = [
                (edge.ends[0], along.from),
                (edge.ends[1], along.to),
                (count + e, 0.5 * (along.from + along.to)),
            ];
            for (node, s) in places {
                let tangent = prepared.features[along.feature].tangent(along.curve, s);
                for (is_held, direction) in
                    [(support.in_plane_along, tangent), (support.in_plane_across, tangent.left())]
                {
                    if is_held {
                        add(node, i, direction);
                    }
                }
            }
        }
    }
    for (i, support) in prepared.panel.point_supports.iter().enumerate().filter(|(_, s)| s.in_plane) {
        let reach = support.washer_radius * (1.0 + 1e-6);
        let under =
            |v: usize| v == mesh.marks[i] || (reach > 0.0 && mesh.vertices[v].distance(support.at) <= reach);
        let edges =
            mesh.edges.iter().enumerate().filter(|(_, edge)| reach > 0.0 && edge.ends.into_iter().all(under));
        for node in (0..count).filter(|&v| under(v)).chain(edges.map(|(e, _)| count + e)) {
            add(node, lines + i, Point::new(1.0, 0.0));
            add(node, lines + i, Point::new(0.0, 1.0));
        }
    }
    holders
}

/// An error where loads in the plane do not balance and only pins that stand for nothing real hold the panel.
pub(crate) fn check_pins(
    level: &Level,
    prepared: &Prepared,
    state: &State,
    applied: PlaneResultant,
) -> Result<(), PanelError> {
    if applied.size == 0.0 {
        return Ok(());
    }
    for &(pair, direction) in &level.freedoms.pins {
        let [x, y] = level.freedoms.pair(pair).map(|d| state.reactions[d]);
        if Point::new(x, y).dot(direction).abs() > UNBALANCED * applied.size {
            return Err(PanelError::Mechanism { motion: free_in_plane(level, prepared, state, pair) });
        }
    }
    Ok(())
}
