//! What acts in the plane, put on a mesh: forces along edges, and supports that have moved.

use super::level::Level;
use super::loads::{Applied, EdgePiece, edge_pieces};
use crate::error::PanelError;
use crate::geometry::point::Point;
use crate::model::load::Load;
use crate::model::prepare::{Prepared, Role};

/// Sum of forces in the plane, of their turning about `origin`, and of their sizes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct PlaneResultant {
    pub origin: Point,
    pub force: Point,
    pub turning: f64,
    pub size: f64,
}

impl PlaneResultant {
    /// Nothing yet.
    pub(crate) fn about(origin: Point) -> Self {
        Self { origin, ..Self::default() }
    }

    /// Adds a force at a point.
    pub(crate) fn add(&mut self, force: Point, at: Point) {
        self.force = self.force + force;
        self.turning += (at - self.origin).cross(force);
        self.size += force.length();
    }
}

/// Puts the forces along edges on a mesh: a sixth at each end of a mesh edge and two thirds at its middle, as its quadratic displacement
/// has it. The force acts at the middle of its layer: off the group's reference height it also turns the edge.
pub(crate) fn apply_edge_forces(
    applied: &mut Applied,
    level: &Level,
    prepared: &Prepared,
    load: &Load,
) -> Result<(), PanelError> {
    let (mesh, freedoms) = (&level.mesh, &level.freedoms);
    for (i, given) in load.edge_forces.iter().enumerate() {
        let name = format!("edge force {i}");
        let group = prepared.groups.of_layer[given.layer];
        let middle = prepared.panel.layers[given.layer].middle();
        let arm = middle - prepared.groups.height[group];
        for EdgePiece { edge, outward, .. } in
            edge_pieces(level, prepared, &given.line, &name, "an edge force")?
        {
            let ends = mesh.edges[edge].ends;
            let [a, b] = ends.map(|v| mesh.vertices[v]);
            let missing = || PanelError::NoMaterial {
                part: format!("{name}, on layer {},", given.layer),
                at: (a + b) * 0.5,
            };
            if mesh.cover[mesh.edges[edge].triangles[0]] >> given.layer & 1 == 0 {
                return Err(missing());
            }
            let whole = (outward * given.outward + given.force) * a.distance(b);
            let nodes = [
                (freedoms.at_vertex(group, ends[0]), a, 1.0 / 6.0),
                (freedoms.at_vertex(group, ends[1]), b, 1.0 / 6.0),
                (freedoms.at_edge(group, edge), (a + b) * 0.5, 2.0 / 3.0),
            ];
            for (pair, at, share) in nodes {
                let [x, y] = freedoms.pair(pair.ok_or_else(missing)?);
                let force = whole * share;
                applied.vector[x] += force.x;
                applied.vector[y] += force.y;
                applied.in_plane.add(force, at);
            }
            for vertex in ends {
                let share = whole * (-0.5 * arm);
                let [x, y] = freedoms.pair(freedoms.slopes(vertex));
                applied.vector[x] += share.x;
                applied.vector[y] += share.y;
            }
            applied.resultant.add_moment(whole * -middle);
        }
    }
    Ok(())
}

/// What a support says about one pair: a direction, and how far the pair moves along it.
type Demand = (Point, f64);

/// The held freedoms that supports which have moved carry along, in the axes of the pairs.
pub(crate) fn moved(
    level: &Level,
    prepared: &Prepared,
    load: &Load,
) -> Result<Vec<(usize, f64)>, PanelError> {
    let freedoms = &level.freedoms;
    let mut demands: Vec<Vec<Demand>> = vec![Vec::new(); freedoms.axes.len()];
    for (i, given) in load.support_movements.iter().enumerate() {
        let name = format!("support movement {i}");
        let Some(support) = prepared.panel.line_supports.get(given.support) else {
            return Err(PanelError::Missing {
                name,
                reason: format!("there is no line support {}", given.support),
            });
        };
        let (along, across) = (support.in_plane_along, support.in_plane_across);
        for (pair, at, tangent) in nodes_of(level, prepared, given.support) {
            for (is_held, direction) in [(along, tangent), (across, tangent.left())] {
                let movement = given.movement.dot(direction);
                if !is_held {
                    if movement.abs() > 1e-9 * given.movement.length() {
                        return Err(PanelError::Contradiction {
                            part: name,
                            reason: "the support does not hold the panel in the direction in which it moves",
                            at,
                        });
                    }
                    continue;
                }
                let list = &mut demands[pair];
                match list.iter().find(|(d, _)| d.cross(direction).abs() < 1e-6) {
                    Some((d, m))
                        if (m - movement * d.dot(direction)).abs() > 1e-9 * given.movement.length() =>
                    {
                        return Err(PanelError::Contradiction {
                            part: name,
                            reason: "another support moves the same point elsewhere",
                            at,
                        });
                    }
                    Some(_) => {}
                    None => list.push((direction, movement)),
                }
            }
        }
    }
    let mut values = Vec::new();
    for (pair, mut list) in demands.into_iter().enumerate().filter(|(_, list)| !list.is_empty()) {
        // Where a support that stands still holds the same point too, it holds it in the directions that are left.
        list.extend(freedoms.held_directions(pair).iter().map(|&d| (d, 0.0)));
        let (d, m) = list[0];
        let movement = match list.iter().find(|(e, _)| d.cross(*e).abs() > 1e-6) {
            None => d * m,
            Some(&(e, n)) => {
                let whole = d.cross(e);
                Point::new((m * e.y - n * d.y) / whole, (n * d.x - m * e.x) / whole)
            }
        };
        let axis = freedoms.axes[pair];
        for (number, amount) in
            freedoms.pair(pair).into_iter().zip([movement.dot(axis), movement.dot(axis.left())])
        {
            if freedoms.held[number] {
                values.push((number, amount));
            }
        }
    }
    Ok(values)
}

/// The nodes on the line of a support: pair, place and the line's tangent there.
fn nodes_of(level: &Level, prepared: &Prepared, support: usize) -> Vec<(usize, Point, Point)> {
    let (mesh, freedoms) = (&level.mesh, &level.freedoms);
    let mut found = Vec::new();
    for (e, edge) in mesh.edges.iter().enumerate() {
        for along in edge.uses.iter().filter(|u| prepared.roles[u.feature] == Role::Support(support)) {
            let feature = &prepared.features[along.feature];
            let [a, b] = edge.ends.map(|v| mesh.vertices[v]);
            for &group in &freedoms.membrane {
                let nodes = [
                    (freedoms.at_vertex(group, edge.ends[0]), a, along.from),
                    (freedoms.at_vertex(group, edge.ends[1]), b, along.to),
                    (freedoms.at_edge(group, e), (a + b) * 0.5, 0.5 * (along.from + along.to)),
                ];
                for (pair, at, s) in nodes {
                    if let Some(pair) = pair.filter(|&p| freedoms.is_used(p)) {
                        found.push((pair, at, feature.tangent(along.curve, s)));
                    }
                }
            }
        }
    }
    found
}
