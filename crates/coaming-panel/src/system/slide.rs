//! The motion in the plane that nothing resists, where loads drive one.

use super::basis::Basis;
use super::equilibrium::State;
use super::hold::sliding_parts;
use super::level::Level;
use crate::error::FreeMotion;
use crate::geometry::point::Point;
use crate::geometry::polygon::area;
use crate::model::prepare::Prepared;

/// Turns about a point further away than this many times the size of what turns are called slides.
const FAR: f64 = 1e3;

/// How the part that a pin belongs to begins to move under what its pins carry, though they stand for nothing real: as a rigid body
/// whose mass is spread evenly over the triangles, held by what the supports hold.
pub(crate) fn free_in_plane(level: &Level, prepared: &Prepared, state: &State, pin: usize) -> FreeMotion {
    let (freedoms, mesh) = (&level.freedoms, &level.mesh);
    let pair_of = |&(group, v): &(usize, usize)| freedoms.at_vertex(group, v);
    let mut parts = sliding_parts(freedoms, mesh, prepared).into_iter();
    let members = parts.find(|members| members.iter().any(|m| pair_of(m) == Some(pin))).unwrap_or_default();
    let mut weights = vec![0.0; mesh.vertices.len()];
    for corners in &mesh.triangles {
        let area = area(&corners.map(|v| mesh.vertices[v]));
        corners.iter().for_each(|&v| weights[v] += area / 3.0);
    }
    let masses = || members.iter().map(|&(_, v)| (mesh.vertices[v], weights[v]));
    let mass: f64 = masses().map(|(_, m)| m).sum();
    let middle = masses().fold(Point::default(), |sum, (p, m)| sum + p * (m / mass));
    let gyration = (masses().map(|(p, m)| m * (p - middle).dot(p - middle)).sum::<f64>() / mass).sqrt();
    // A motion is a shift of the middle and a turn to the left times the radius of gyration, so that each counts by its mass.
    let row = |p: Point, d: Point| [d.x, d.y, (p - middle).cross(d) / gyration];
    let (mut held, mut driven) = (Basis::default(), [0.0; 3]);
    for member in &members {
        let Some(pair) = pair_of(member) else { continue };
        let place = mesh.vertices[member.1];
        let pins = || freedoms.pins.iter().filter(|p| p.0 == pair).map(|p| p.1);
        for &direction in freedoms.held_directions(pair) {
            if pins().all(|pin| pin.cross(direction).abs() > 1e-6) {
                held.add(row(place, direction));
            }
        }
        let [x, y] = freedoms.pair(pair).map(|d| state.reactions[d]);
        for direction in pins() {
            let carried = Point::new(x, y).dot(direction);
            for (sum, part) in driven.iter_mut().zip(row(place, direction)) {
                *sum -= carried * part;
            }
        }
    }
    if members.iter().any(|&(group, _)| freedoms.straight.guides(group)) {
        held.add([0.0, 0.0, 1.0]);
    }
    let [x, y, turn] = held.rest(driven).unwrap_or(driven);
    let shift = Point::new(x, y);
    if turn.abs() * FAR <= shift.length() {
        return FreeMotion::Slide { direction: shift.unit() };
    }
    FreeMotion::TurnInPlane { about: middle + shift.left() * (gyration / turn) }
}
