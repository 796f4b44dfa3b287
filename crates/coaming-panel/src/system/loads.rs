//! The load vector, and independently of it the resultant of what is applied.

use super::in_plane::PlaneResultant;
use super::level::Level;
use crate::element::quadrature::MIDSIDE;
use crate::element::quadrature::{DEGREE_4, GAUSS_4};
use crate::element::shape::{cubic, curvature_map, slope_map, strain_map};
use crate::element::triangle::Triangle;
use crate::error::PanelError;
use crate::geometry::check::{Bounds, Loop};
use crate::geometry::curve::Curve;
use crate::geometry::point::Point;
use crate::geometry::polygon::{area, clip};
use crate::math::sin;
use crate::mesh::Mesh;
use crate::mesh::edge::EdgeUse;
use crate::model::growth::{FreeStrain, free_strains};
use crate::model::latch::LatchAction;
use crate::model::line::Line;
use crate::model::load::{EdgeMoment, Load};
use crate::model::prepare::{Prepared, Role};
use std::f64::consts::PI;

/// Sum of forces, of their first moments about `origin`, and of their sizes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Resultant {
    pub origin: Point,
    pub force: f64,
    pub moment: Point,
    pub size: f64,
    pub moment_size: f64,
}

impl Resultant {
    /// Nothing yet.
    pub(crate) fn about(origin: Point) -> Self {
        Self { origin, ..Self::default() }
    }

    /// Adds a force at a point.
    pub(crate) fn add(&mut self, force: f64, at: Point) {
        let arm = at - self.origin;
        self.force += force;
        self.moment = self.moment + arm * force;
        self.size += force.abs();
        self.moment_size += force.abs() * arm.length();
    }

    /// Adds a moment: the work it does on slopes.
    pub(crate) fn add_moment(&mut self, moment: Point) {
        self.moment = self.moment + moment;
        self.moment_size += moment.length();
    }
}

/// The load vector over all freedoms, in x and y.
pub(crate) struct Applied {
    pub vector: Vec<f64>,
    pub resultant: Resultant,
    /// What pulls in the plane.
    pub in_plane: PlaneResultant,
    /// Held freedoms that are moved, in the axes of the pairs.
    pub moved: Vec<(usize, f64)>,
}

/// Puts all loads on a mesh.
pub(crate) fn apply(level: &Level, prepared: &Prepared, load: &Load) -> Result<Applied, PanelError> {
    let mut applied = Applied {
        vector: vec![0.0; level.freedoms.size()],
        resultant: Resultant::about(level.mesh.vertices[0]),
        in_plane: PlaneResultant::about(level.mesh.vertices[0]),
        moved: Vec::new(),
    };
    apply_pressures(&mut applied, level, load)?;
    apply_weight(&mut applied, level, prepared, load.normal_acceleration);
    for (i, p) in load.point_forces.iter().enumerate() {
        let mut near = 0;
        add_force(&mut applied, level, p.at, p.force, &mut near)
            .ok_or_else(|| PanelError::NoMaterial { part: format!("point force {i}"), at: p.at })?;
    }
    for (i, line_force) in load.line_forces.iter().enumerate() {
        let name = format!("line force {i}");
        let curves = line_force.line.curves(&name, &prepared.outline, &prepared.holes)?;
        let mut near = 0;
        for curve in curves {
            let fractions = curve.divide(0.02 * level.mesh.size, 0.05);
            for pair in fractions.windows(2) {
                for (s, weight) in GAUSS_4 {
                    let at = curve.point(pair[0] + (pair[1] - pair[0]) * s);
                    let force = line_force.force * weight * curve.length() * (pair[1] - pair[0]);
                    add_force(&mut applied, level, at, force, &mut near)
                        .ok_or_else(|| PanelError::NoMaterial { part: name.clone(), at })?;
                }
            }
        }
    }
    for (i, moment) in load.edge_moments.iter().enumerate() {
        apply_edge_moment(&mut applied, level, prepared, moment, &format!("edge moment {i}"))?;
    }
    super::in_plane::apply_edge_forces(&mut applied, level, prepared, load)?;
    applied.moved = super::in_plane::moved(level, prepared, load)?;
    for strain in &free_strains(load, &prepared.panel.layers) {
        apply_free_strain(&mut applied, level, prepared, strain);
    }
    for (i, latch) in prepared.panel.latches.iter().enumerate() {
        if let (LatchAction::Force(force), false) = (latch.action, load.missing_latches.contains(&i)) {
            let vertex = level.attachments.latches[i];
            applied.vector[level.freedoms.deflection(vertex)] -= force;
            applied.resultant.add(-force, level.mesh.vertices[vertex]);
        }
    }
    Ok(applied)
}

/// Adds the work of a force per area over a triangle or a part of it, given as a polygon.
fn add_over(applied: &mut Applied, level: &Level, t: usize, part: &[Point], pressure: impl Fn(Point) -> f64) {
    let triangle = Triangle::new(level.mesh.corners(t));
    let list = level.freedoms.of_triangle(&level.mesh, t, &[]);
    let Some(&first) = part.first() else { return };
    for pair in part.windows(2).skip(1) {
        let area = 0.5 * (pair[0] - first).cross(pair[1] - first);
        for (l, weight) in DEGREE_4 {
            let at = first * l[0] + pair[0] * l[1] + pair[1] * l[2];
            let force = weight * area * pressure(at);
            let shape = cubic(&triangle, level.mesh.area_coordinates(t, at));
            for (&d, n) in list.iter().zip(shape) {
                applied.vector[d] += n * force;
            }
            applied.resultant.add(force, at);
        }
    }
}

fn apply_pressures(applied: &mut Applied, level: &Level, load: &Load) -> Result<(), PanelError> {
    for (i, pressure) in load.pressures.iter().enumerate() {
        let region = match &pressure.region {
            Some(outline) => Some(Patch::new(Loop::new(&format!("region of pressure {i}"), outline)?)),
            None => None,
        };
        let mut loaded = 0.0;
        for t in 0..level.mesh.triangles.len() {
            let corners = level.mesh.corners(t);
            match &region {
                None => add_over(applied, level, t, &corners, |p| pressure.at(p)),
                Some(region) => {
                    if region.bounds.apart(&Bounds::of(&corners), 0.0) {
                        continue;
                    }
                    let part = clip(&region.polygon, &corners);
                    loaded += area(&part).abs();
                    add_over(applied, level, t, &part, |p| region.factor * pressure.at(p));
                }
            }
        }
        if let Some(region) = region.filter(|_| loaded == 0.0) {
            return Err(PanelError::NoMaterial { part: region.name, at: region.polygon[0] });
        }
    }
    Ok(())
}

/// The region of a pressure as a polygon, and what the pressure on it is to be multiplied with: 1 or -1 for the way it runs, more where
/// chords cut off arcs, so that the whole force is exact.
struct Patch {
    name: String,
    polygon: Vec<Point>,
    bounds: Bounds,
    factor: f64,
}

impl Patch {
    fn new(region: Loop) -> Self {
        let fractions = |c: &Curve| c.divide(f64::INFINITY, PI / 36.0).into_iter().filter(|&f| f < 1.0);
        let polygon: Vec<Point> =
            region.curves.iter().flat_map(|c| fractions(c).map(|f| c.point(f)).collect::<Vec<_>>()).collect();
        let corners: Vec<Point> = region.curves.iter().map(Curve::from).collect();
        let segments: f64 = (region.curves.iter())
            .map(|c| match *c {
                Curve::Line { .. } => 0.0,
                Curve::Arc { radius, sweep, .. } => 0.5 * radius * radius * (sweep - sin(sweep)),
            })
            .sum();
        let factor = (area(&corners) + segments) / area(&polygon).abs();
        Self { name: region.name, bounds: Bounds::of(&polygon), polygon, factor }
    }
}

fn apply_weight(applied: &mut Applied, level: &Level, prepared: &Prepared, acceleration: f64) {
    if acceleration == 0.0 {
        return;
    }
    for t in 0..level.mesh.triangles.len() {
        let mass_per_area = level.stacks.of(t).mass_per_area + level.attachments.spread_over(t);
        let pressure = mass_per_area * acceleration;
        let corners = level.mesh.corners(t);
        add_over(applied, level, t, &corners, |_| pressure);
    }
    for edge in &level.attachments.beams {
        let beam = &prepared.panel.beams[edge.beam];
        let list = level.freedoms.of_ends(edge.ends);
        let [a, b] = edge.ends.map(|v| level.mesh.vertices[v]);
        for (s, weight) in GAUSS_4 {
            let force = weight * edge.length * beam.area * beam.density * acceleration;
            for (&d, n) in list.iter().zip(edge.line.deflection(s)) {
                applied.vector[d] += n * force;
            }
            applied.resultant.add(force, a.toward(b, s));
        }
    }
    for (mass, &vertex) in prepared.panel.masses.iter().zip(&level.attachments.masses) {
        let force = mass.mass * acceleration;
        applied.vector[level.freedoms.deflection(vertex)] += force;
        applied.resultant.add(force, level.mesh.vertices[vertex]);
    }
}

/// Adds a force at a point, looking first in the triangle `near`; `None` when the point is off the material.
fn add_force(applied: &mut Applied, level: &Level, at: Point, force: f64, near: &mut usize) -> Option<()> {
    let (t, l) = find(&level.mesh, at, *near)?;
    *near = t;
    let triangle = Triangle::new(level.mesh.corners(t));
    let list = level.freedoms.of_triangle(&level.mesh, t, &[]);
    for (d, n) in list.into_iter().zip(cubic(&triangle, l)) {
        applied.vector[d] += n * force;
    }
    applied.resultant.add(force, at);
    Some(())
}

fn find(mesh: &Mesh, at: Point, near: usize) -> Option<(usize, [f64; 3])> {
    let here = mesh.area_coordinates(near, at);
    if here.iter().all(|&l| l >= 0.0) {
        return Some((near, here));
    }
    mesh.locate(at).or_else(|| nearest_on_boundary(mesh, at))
}

/// A point of an arc lies a sagitta off the mesh: it belongs to the nearest boundary triangle.
fn nearest_on_boundary(mesh: &Mesh, at: Point) -> Option<(usize, [f64; 3])> {
    let mut best: Option<(f64, usize)> = None;
    for edge in mesh.edges.iter().filter(|e| e.is_boundary() && !e.uses.is_empty()) {
        let [a, b] = edge.ends.map(|v| mesh.vertices[v]);
        let distance = crate::geometry::polygon::nearest(a, b, at).1;
        if distance < 0.07 * a.distance(b) && best.is_none_or(|(d, _)| distance < d) {
            best = Some((distance, edge.triangles[0]));
        }
    }
    best.map(|(_, t)| (t, mesh.area_coordinates(t, at)))
}

fn apply_edge_moment(
    applied: &mut Applied,
    level: &Level,
    prepared: &Prepared,
    moment: &EdgeMoment,
    name: &str,
) -> Result<(), PanelError> {
    for EdgePiece { edge, along, outward } in
        edge_pieces(level, prepared, &moment.line, name, "an edge moment")?
    {
        let length = (along.to - along.from).abs();
        for vertex in level.mesh.edges[edge].ends {
            let share = outward * (0.5 * length * moment.moment);
            let [x, y] = level.freedoms.pair(level.freedoms.slopes(vertex));
            applied.vector[x] += share.x;
            applied.vector[y] += share.y;
            applied.resultant.add_moment(share);
        }
    }
    Ok(())
}

/// A mesh edge on the boundary, with the way out of the material.
pub(crate) struct EdgePiece {
    pub edge: usize,
    pub along: EdgeUse,
    pub outward: Point,
}

/// The mesh edges along an edge of the outline or of a hole.
pub(crate) fn edge_pieces(
    level: &Level,
    prepared: &Prepared,
    line: &Line,
    name: &str,
    what: &str,
) -> Result<Vec<EdgePiece>, PanelError> {
    let _ = line.curves(name, &prepared.outline, &prepared.holes)?;
    let (boundary, only) = match *line {
        Line::Outline => (0, None),
        Line::OutlineEdge(edge) => (0, Some(edge)),
        Line::Hole(hole) => (1 + hole, None),
        Line::HoleEdge { hole, edge } => (1 + hole, Some(edge)),
        Line::Path(_) => {
            return Err(PanelError::Missing {
                name: name.into(),
                reason: format!("{what} acts on an edge of the outline or of a hole"),
            });
        }
    };
    let mut pieces = Vec::new();
    for (e, edge) in level.mesh.edges.iter().enumerate().filter(|(_, e)| e.is_boundary()) {
        for along in &edge.uses {
            let here = prepared.roles[along.feature] == Role::Boundary(boundary)
                && only.is_none_or(|o| o == along.curve);
            if !here {
                continue;
            }
            let [a, b] = edge.ends.map(|v| level.mesh.vertices[v]);
            let triangle = level.mesh.corners(edge.triangles[0]);
            let center = (triangle[0] + triangle[1] + triangle[2]) * (1.0 / 3.0);
            let left = (b - a).left().unit();
            let outward = if left.dot(center - a) > 0.0 { left * -1.0 } else { left };
            pieces.push(EdgePiece { edge: e, along: *along, outward });
        }
    }
    Ok(pieces)
}

fn apply_free_strain(applied: &mut Applied, level: &Level, prepared: &Prepared, given: &FreeStrain) {
    let group = prepared.groups.of_layer[given.layer];
    let (force, moment) = held_back(prepared, given);
    for index in 0..level.mesh.triangles.len() {
        if level.mesh.cover[index] >> given.layer & 1 == 0 {
            continue;
        }
        let membrane: Vec<usize> =
            level.stacks.membrane(index).iter().copied().filter(|&g| g == group).collect();
        let list = level.freedoms.of_triangle(&level.mesh, index, &membrane);
        let triangle = Triangle::new(level.mesh.corners(index));
        let slopes = slope_map(&triangle);
        for (l, weight) in MIDSIDE {
            let strain = strain_map(&triangle, l);
            let curvature = curvature_map(&strain, &slopes);
            let factor = weight * triangle.area;
            for i in 0..3 {
                for (&d, c) in list.iter().zip(curvature[i]) {
                    applied.vector[d] += factor * c * moment[i];
                }
                for (&d, c) in list.iter().skip(9).zip(strain[i]) {
                    applied.vector[d] += factor * c * force[i];
                }
            }
        }
    }
}

/// Force and moment per length that would hold a layer that grows flat and unstretched, about its group's height.
pub(crate) fn held_back(prepared: &Prepared, given: &FreeStrain) -> ([f64; 3], [f64; 3]) {
    let layer = &prepared.panel.layers[given.layer];
    let group = prepared.groups.of_layer[given.layer];
    let (q, t) = (layer.material.stiffness(), layer.thickness);
    let arm = layer.middle() - prepared.groups.height[group];
    let stress = |strain: [f64; 3]| q.map(|row| row[0] * strain[0] + row[1] * strain[1] + row[2] * strain[2]);
    let (middle, difference) = (stress(given.middle), stress(given.difference));
    let moment = [0, 1, 2].map(|i: usize| middle[i] * t * arm + difference[i] * t * t / 12.0);
    (middle.map(|s| s * t), moment)
}
