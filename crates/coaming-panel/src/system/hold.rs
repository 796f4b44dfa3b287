//! Which freedoms the supports hold, and whether that is enough.

use super::attach::Attachments;
use super::basis::Basis;
use super::freedoms::Freedoms;
use super::straight::keep_straight;
use crate::error::PanelError;
use crate::geometry::curve::Curve;
use crate::geometry::point::Point;
use crate::mesh::Mesh;
use crate::mesh::edge::EdgeUse;
use crate::model::latch::LatchAction;
use crate::model::load::Load;
use crate::model::prepare::{Prepared, Role};
use crate::model::support::Hold;

/// Holds what the line and point supports hold. Latches come later: they may let go.
pub(crate) fn hold_supports(
    freedoms: &mut Freedoms,
    mesh: &Mesh,
    prepared: &Prepared,
) -> Result<(), PanelError> {
    for (e, edge) in mesh.edges.iter().enumerate() {
        for along in &edge.uses {
            if let Role::Support(i) = prepared.roles[along.feature] {
                hold_edge(freedoms, prepared, i, e, edge.ends, along);
                keep_edge_straight(freedoms, mesh, prepared, i, e, along)?;
            }
        }
    }
    for (support, &vertex) in prepared.panel.point_supports.iter().zip(&mesh.marks) {
        let reach = support.washer_radius * (1.0 + 1e-6);
        let under = (0..mesh.vertices.len())
            .filter(|&v| v == vertex || mesh.vertices[v].distance(support.at) <= reach);
        for v in under {
            if support.deflection == Hold::Fixed {
                freedoms.hold_deflection(v);
            }
            if support.slopes == Hold::Fixed {
                let pair = freedoms.slopes(v);
                freedoms.hold_direction(pair, Point::new(1.0, 0.0));
                freedoms.hold_direction(pair, Point::new(0.0, 1.0));
            }
            if support.in_plane {
                hold_in_plane(freedoms, v);
            }
        }
        if support.in_plane && support.washer_radius > 0.0 {
            let held = |v: usize| mesh.vertices[v].distance(support.at) <= reach;
            for (e, _) in mesh.edges.iter().enumerate().filter(|(_, edge)| edge.ends.into_iter().all(held)) {
                hold_in_plane(freedoms, freedoms.vertices + e);
            }
        }
    }
    pin_in_plane(freedoms, mesh, prepared);
    freedoms.settle()
}

/// Holds a node (vertices, then edges) in the plane, in every group.
fn hold_in_plane(freedoms: &mut Freedoms, node: usize) {
    for group in freedoms.membrane.clone() {
        if let Some(pair) = freedoms.at_vertex(group, node).filter(|&p| freedoms.is_used(p)) {
            freedoms.hold_direction(pair, Point::new(1.0, 0.0));
            freedoms.hold_direction(pair, Point::new(0.0, 1.0));
        }
    }
}

/// Keeps the line of a support straight in the plane where it is to be.
fn keep_edge_straight(
    freedoms: &mut Freedoms,
    mesh: &Mesh,
    prepared: &Prepared,
    support: usize,
    e: usize,
    along: &EdgeUse,
) -> Result<(), PanelError> {
    let held = &prepared.panel.line_supports[support];
    if !held.in_plane_straight || held.in_plane_across {
        return Ok(());
    }
    let feature = &prepared.features[along.feature];
    let Curve::Line { from, to } = feature.curves[along.curve] else {
        return Err(PanelError::Contradiction {
            part: feature.name.clone(),
            reason: "an arc cannot stay straight in the plane",
            at: feature.point(along.curve, along.from),
        });
    };
    for group in freedoms.membrane.clone() {
        keep_straight(freedoms, mesh, [support, along.curve, group], (to - from).unit().left(), e);
    }
    Ok(())
}

fn hold_edge(
    freedoms: &mut Freedoms,
    prepared: &Prepared,
    support: usize,
    e: usize,
    ends: [usize; 2],
    along: &EdgeUse,
) {
    let held = &prepared.panel.line_supports[support];
    let tangent = |s: f64| prepared.features[along.feature].tangent(along.curve, s);
    for (vertex, s) in [(ends[0], along.from), (ends[1], along.to)] {
        let pair = freedoms.slopes(vertex);
        if held.deflection == Hold::Fixed {
            freedoms.hold_deflection(vertex);
            freedoms.hold_direction(pair, tangent(s));
        }
        if held.slope_across == Hold::Fixed {
            freedoms.hold_direction(pair, tangent(s).left());
        }
    }
    for group in freedoms.membrane.clone() {
        let nodes = [
            (freedoms.at_vertex(group, ends[0]), along.from),
            (freedoms.at_vertex(group, ends[1]), along.to),
            (freedoms.at_edge(group, e), 0.5 * (along.from + along.to)),
        ];
        for (pair, s) in nodes {
            let Some(pair) = pair.filter(|&p| freedoms.is_used(p)) else { continue };
            if held.in_plane_along {
                freedoms.hold_direction(pair, tangent(s));
            }
            if held.in_plane_across {
                freedoms.hold_direction(pair, tangent(s).left());
            }
        }
    }
}

/// Pins what the supports leave free to slide in the plane, at as few points as it takes. Loads in the plane that balance leave nothing
/// to the pins; whether they do is checked once the forces are known.
fn pin_in_plane(freedoms: &mut Freedoms, mesh: &Mesh, prepared: &Prepared) {
    for members in sliding_parts(freedoms, mesh, prepared) {
        // Best is a point that nothing else holds.
        let loose = |&&(group, v): &&(usize, usize)| {
            let pair = freedoms.at_vertex(group, v);
            pair.is_some_and(|p| freedoms.held_directions(p).is_empty() && !freedoms.straight.holds(p))
        };
        let Some(&(first_group, first)) = members.iter().find(loose).or(members.first()) else { continue };
        let start = mesh.vertices[first];
        let (mut far, mut reach) = (members[0], 0.0);
        for &(m, v) in &members {
            let d = mesh.vertices[v].distance(start);
            if d > reach {
                (far, reach) = ((m, v), d);
            }
        }
        let row = |p: Point, d: Point| [d.x, d.y, (p - start).cross(d) / mesh.size];
        let mut basis = Basis::default();
        for &(group, v) in &members {
            let Some(pair) = freedoms.at_vertex(group, v) else { continue };
            for &d in freedoms.held_directions(pair) {
                basis.add(row(mesh.vertices[v], d));
            }
        }
        if members.iter().any(|&(group, _)| freedoms.straight.guides(group)) {
            basis.add([0.0, 0.0, 1.0]);
        }
        let across = (mesh.vertices[far.1] - start).left().unit();
        for ((group, v), d) in [
            ((first_group, first), Point::new(1.0, 0.0)),
            ((first_group, first), Point::new(0.0, 1.0)),
            (far, across),
        ] {
            if let (true, Some(pair)) = (basis.add(row(mesh.vertices[v], d)), freedoms.at_vertex(group, v)) {
                freedoms.hold_direction(pair, d);
                freedoms.pins.push((pair, d));
            }
        }
    }
}

/// Sets of (group, vertex) that hang together in the plane.
pub(crate) fn sliding_parts(
    freedoms: &Freedoms,
    mesh: &Mesh,
    prepared: &Prepared,
) -> Vec<Vec<(usize, usize)>> {
    let n = mesh.vertices.len();
    let slot = |group: usize, v: usize| freedoms.membrane.iter().position(|&g| g == group).map(|m| m * n + v);
    let mut parent: Vec<usize> = (0..freedoms.membrane.len() * n).collect();
    fn root(parent: &mut [usize], mut i: usize) -> usize {
        while parent[i] != i {
            parent[i] = parent[parent[i]];
            i = parent[i];
        }
        i
    }
    let mut join = |a: usize, b: usize| {
        let (a, b) = (root(&mut parent, a), root(&mut parent, b));
        parent[a.max(b)] = a.min(b);
    };
    let has = |t: usize, layer: usize| mesh.cover[t] >> layer & 1 == 1;
    for (t, corners) in mesh.triangles.iter().enumerate() {
        for (layer, &group) in prepared.groups.of_layer.iter().enumerate().filter(|&(layer, _)| has(t, layer))
        {
            let _ = layer;
            if let (Some(a), Some(b), Some(c)) =
                (slot(group, corners[0]), slot(group, corners[1]), slot(group, corners[2]))
            {
                join(a, b);
                join(a, c);
            }
        }
        for joint in prepared.panel.joints.iter().filter(|j| has(t, j.lower) && has(t, j.upper)) {
            let resists = match joint.kind {
                crate::model::panel::JointKind::Slipping { shear_stiffness } => shear_stiffness > 0.0,
                crate::model::panel::JointKind::Bonded => true,
            };
            let [lower, upper] =
                [joint.lower, joint.upper].map(|l| slot(prepared.groups.of_layer[l], corners[0]));
            if let (true, Some(a), Some(b)) = (resists, lower, upper) {
                join(a, b);
            }
        }
    }
    let mut sets: Vec<(usize, Vec<(usize, usize)>)> = Vec::new();
    let mut place = vec![usize::MAX; parent.len()];
    for (m, &group) in freedoms.membrane.iter().enumerate() {
        for v in 0..n {
            let used = freedoms.at_vertex(group, v).is_some_and(|p| freedoms.is_used(p));
            if !used {
                continue;
            }
            let r = root(&mut parent, m * n + v);
            if place[r] == usize::MAX {
                place[r] = sets.len();
                sets.push((r, Vec::new()));
            }
            sets[place[r]].1.push((group, v));
        }
    }
    sets.into_iter().map(|(_, members)| members).collect()
}

/// Checks that the supports, with gasket, latches and stops at their best, leave no rigid motion free.
pub(crate) fn check_enough(
    freedoms: &Freedoms,
    mesh: &Mesh,
    prepared: &Prepared,
    attachments: &Attachments,
    load: &Load,
) -> Result<(), PanelError> {
    let mut basis = Basis::default();
    let (center, size) = (mesh.vertices[0], mesh.size);
    held_motions(&mut basis, freedoms, mesh, attachments, center);
    let mut at = |v: usize| {
        let p = (mesh.vertices[v] - center) * (1.0 / size);
        basis.add([1.0, p.x, p.y]);
    };
    for gasket in &attachments.gaskets {
        gasket.ends.into_iter().for_each(&mut at);
    }
    for (i, latch) in prepared.panel.latches.iter().enumerate() {
        if !load.missing_latches.contains(&i) && !matches!(latch.action, LatchAction::Force(_)) {
            at(attachments.latches[i]);
        }
    }
    attachments.stops.iter().for_each(|&v| at(v));
    match basis.free_motion(center, size) {
        Some(motion) if !basis.is_complete() => Err(PanelError::Mechanism { motion }),
        _ => Ok(()),
    }
}

/// Adds the motions that supports resist in both directions.
pub(crate) fn held_motions(
    basis: &mut Basis,
    freedoms: &Freedoms,
    mesh: &Mesh,
    attachments: &Attachments,
    center: Point,
) {
    for (v, &place) in mesh.vertices.iter().enumerate() {
        if basis.is_complete() {
            return;
        }
        let p = (place - center) * (1.0 / mesh.size);
        if freedoms.held[freedoms.deflection(v)] {
            basis.add([1.0, p.x, p.y]);
        }
        let slopes = freedoms.slopes(v);
        for d in freedoms.held_directions(slopes) {
            basis.add([0.0, d.x, d.y]);
        }
    }
    for spring in &attachments.springs {
        for v in spring.ends {
            let p = (mesh.vertices[v] - center) * (1.0 / mesh.size);
            if spring.deflection > 0.0 {
                basis.add([1.0, p.x, p.y]);
            }
            if spring.turning > 0.0 {
                let d = spring.line.along.left();
                basis.add([0.0, d.x, d.y]);
            }
        }
    }
    for point in &attachments.point_springs {
        let p = (mesh.vertices[point.vertex] - center) * (1.0 / mesh.size);
        if point.deflection > 0.0 {
            basis.add([1.0, p.x, p.y]);
        }
        if point.turning > 0.0 {
            basis.add([0.0, 1.0, 0.0]);
            basis.add([0.0, 0.0, 1.0]);
        }
    }
}
