//! The first mesh: constrained Delaunay triangulation, refined to a smallest angle and a largest area.

use super::Mesh;
use super::arrange::{Arrangement, arrange};
use super::edge::{EdgeUse, edges_of};
use super::feature::Feature;
use crate::error::PanelError;
use crate::geometry::check::{Bounds, apart, extent};
use crate::geometry::curve::Curve;
use crate::geometry::point::Point;
use crate::geometry::polygon;
use spade::{AngleLimit, ConstrainedDelaunayTriangulation, Point2, RefinementParameters, Triangulation};
use std::f64::consts::PI;

/// Region of one layer or of the panel: a boundary feature and the features of its holes.
#[derive(Debug, Clone)]
pub(crate) struct Region {
    /// Index of the boundary's feature.
    pub boundary: usize,
    /// Indices of the holes' features.
    pub holes: Vec<usize>,
}

/// What the mesh must follow.
pub(crate) struct Plan<'a> {
    /// All features; those of the panel's own boundary first.
    pub features: &'a [Feature],
    /// The panel.
    pub panel: Region,
    /// The layers in order.
    pub layers: Vec<Region>,
    /// Points that must be vertices.
    pub marks: Vec<Point>,
    /// Places where the mesh starts finer: a point and the size there.
    pub fine: Vec<(Point, f64)>,
    /// Largest area of a triangle.
    pub largest_area: f64,
}

/// Largest turn of an arc along one edge of the first mesh.
const LARGEST_TURN: f64 = PI / 6.0;
/// The same where something else lies close to the arc, so that no chord cuts it off.
const TURN_IN_A_CROWD: f64 = PI / 12.0;
/// Closer than this share of its radius to an arc is close: three times what the longest chord cuts off.
const CROWD: f64 = 0.1;
/// Smallest angle of a triangle, where the features allow it, in degrees. Layers' outlines a few millimetres apart would fill a lid with
/// small triangles if it were near the 30 degrees that can be had.
const SMALLEST_ANGLE: f64 = 20.0;

/// Makes the first mesh.
pub(crate) fn triangulate(plan: &Plan<'_>) -> Result<Mesh, PanelError> {
    let outer: Vec<Point> = plan.features[plan.panel.boundary].curves.iter().map(|c| c.from()).collect();
    let outer_and_mid: Vec<Point> =
        plan.features[plan.panel.boundary].curves.iter().flat_map(|c| [c.from(), c.point(0.5)]).collect();
    let size = extent(&outer_and_mid).max(extent(&outer));
    let tolerance = 1e-7 * size;
    let longest = 1.6 * plan.largest_area.sqrt();
    let crowd = Crowd::new(plan.features);
    let arrangement = arrange(plan.features, &plan.marks, tolerance, |feature, c| {
        let curve = &feature.curves[c];
        graded(curve, longest, crowd.turn(curve), &plan.fine, tolerance)
    });
    let (points, triangles) = delaunay(&arrangement, plan, size)?;
    let mut mesh = assemble_mesh(&arrangement, plan, points, triangles, size)?;
    attach_features(&mut mesh, &arrangement, plan.features, tolerance)?;
    Ok(mesh)
}

/// All curves as short chords, to see what lies close to an arc.
struct Crowd {
    chords: Vec<(Curve, Point, Point)>,
}

impl Crowd {
    fn new(features: &[Feature]) -> Self {
        let mut chords = Vec::new();
        for curve in features.iter().flat_map(|f| &f.curves) {
            for pair in curve.divide(f64::INFINITY, TURN_IN_A_CROWD).windows(2) {
                chords.push((*curve, curve.point(pair[0]), curve.point(pair[1])));
            }
        }
        Self { chords }
    }

    /// How far a curve may turn along one edge. A curve that meets this one at an end, or is the same, does not count as close.
    fn turn(&self, curve: &Curve) -> f64 {
        let Curve::Arc { radius, .. } = *curve else { return LARGEST_TURN };
        let ends = [curve.from(), curve.to()];
        let meets = |other: &Curve| ends.contains(&other.from()) || ends.contains(&other.to());
        let points: Vec<Point> =
            curve.divide(f64::INFINITY, TURN_IN_A_CROWD).into_iter().map(|f| curve.point(f)).collect();
        let bounds = Bounds::of(&points);
        let close = self.chords.iter().any(|(other, c, d)| {
            !bounds.apart(&Bounds::of(&[*c, *d]), CROWD * radius)
                && !meets(other)
                && points.windows(2).any(|pair| !apart(pair[0], pair[1], *c, *d, CROWD * radius))
        });
        if close { TURN_IN_A_CROWD } else { LARGEST_TURN }
    }
}

/// Fractions that divide a curve, finer toward the fine places at its ends.
fn graded(curve: &Curve, longest: f64, turn: f64, fine: &[(Point, f64)], tolerance: f64) -> Vec<f64> {
    let end_size = |p: Point| {
        fine.iter().filter(|(q, _)| q.distance(p) <= tolerance).map(|&(_, h)| h).fold(f64::INFINITY, f64::min)
    };
    let length = curve.length();
    let grow = |mut h: f64| {
        let mut at = Vec::new();
        let mut s = h;
        while h < longest && s < 0.45 * length {
            at.push(s / length);
            h *= 1.8;
            s += h;
        }
        at
    };
    let head = grow(end_size(curve.from()));
    let tail = grow(end_size(curve.to()));
    let (start, end) = (head.last().copied().unwrap_or(0.0), 1.0 - tail.last().copied().unwrap_or(0.0));
    let middle = end - start;
    let pieces = curve.divide(longest / middle, turn / middle).len().saturating_sub(1).max(1);
    let mut fractions = vec![0.0];
    fractions.extend(&head);
    fractions.extend((1..pieces).map(|i| start + middle * (i as f64 / pieces as f64)));
    fractions.extend(tail.iter().rev().map(|f| 1.0 - f));
    fractions.push(1.0);
    fractions
}

type Raw = (Vec<Point>, Vec<[usize; 3]>);

fn delaunay(arrangement: &Arrangement, plan: &Plan<'_>, size: f64) -> Result<Raw, PanelError> {
    let anywhere = arrangement.points.first().copied().unwrap_or_default();
    let fault = |reason| PanelError::NotMeshed { reason, at: anywhere };
    // Local coordinates of order one keep all digits far from the origin.
    let to_local = |p: &Point| Point2::new((p.x - anywhere.x) / size, (p.y - anywhere.y) / size);
    let mut vertices: Vec<_> = arrangement.points.iter().map(to_local).collect();
    // A box around the panel: without it, points on a slanted edge that are not quite in line would leave slivers outside that no
    // refinement can mend.
    let outline = &arrangement.polygons[plan.panel.boundary];
    let margin = 0.3 * polygon::area(outline).abs() / size;
    let (mut low, mut high) = (outline[0], outline[0]);
    for p in outline {
        low = Point::new(low.x.min(p.x), low.y.min(p.y));
        high = Point::new(high.x.max(p.x), high.y.max(p.y));
    }
    for (x, y) in [(low.x, low.y), (high.x, low.y), (high.x, high.y), (low.x, high.y)] {
        let away = |v: f64, lowest: f64| if v == lowest { v - margin } else { v + margin };
        vertices.push(to_local(&Point::new(away(x, low.x), away(y, low.y))));
    }
    let edges = arrangement.pieces.iter().map(|p| p.ends).collect();
    let mut conflicts = 0_usize;
    let mut cdt: ConstrainedDelaunayTriangulation<_> =
        ConstrainedDelaunayTriangulation::try_bulk_load_cdt(vertices, edges, |_| conflicts += 1)
            .map_err(|_| fault("a coordinate cannot be triangulated"))?;
    if conflicts > 0 {
        return Err(fault("boundaries or paths cross too closely"));
    }
    let parameters = RefinementParameters::<f64>::new()
        .with_angle_limit(AngleLimit::from_deg(SMALLEST_ANGLE))
        .with_max_allowed_area(plan.largest_area / (size * size))
        .with_max_additional_vertices(60_000);
    if !cdt.refine(parameters).refinement_complete {
        return Err(fault("features too small or too close for a mesh of 60 000 points"));
    }
    let points = cdt
        .vertices()
        .enumerate()
        .map(|(i, v)| match arrangement.points.get(i) {
            Some(&exact) => exact,
            None => Point::new(v.position().x * size + anywhere.x, v.position().y * size + anywhere.y),
        })
        .collect();
    let triangles = cdt.inner_faces().map(|f| f.vertices().map(|v| v.fix().index())).collect();
    Ok((points, triangles))
}

fn inside(region: &Region, arrangement: &Arrangement, bounds: &[Bounds], p: Point) -> bool {
    let within = |f: usize| bounds[f].contains(p) && polygon::contains(&arrangement.polygons[f], p);
    within(region.boundary) && !region.holes.iter().any(|&h| within(h))
}

fn assemble_mesh(
    arrangement: &Arrangement,
    plan: &Plan<'_>,
    points: Vec<Point>,
    triangles: Vec<[usize; 3]>,
    size: f64,
) -> Result<Mesh, PanelError> {
    let mut kept = Vec::new();
    let mut cover = Vec::new();
    let bounds: Vec<Bounds> = arrangement.polygons.iter().map(|p| Bounds::of(p)).collect();
    for t in triangles {
        let [a, b, c] = t.map(|v| points[v]);
        let center = (a + b + c) * (1.0 / 3.0);
        if !inside(&plan.panel, arrangement, &bounds, center) {
            continue;
        }
        let mut bits = 0_u64;
        for (k, layer) in plan.layers.iter().enumerate() {
            if inside(layer, arrangement, &bounds, center) {
                bits |= 1 << k;
            }
        }
        if bits == 0 {
            return Err(PanelError::NoMaterial { part: "panel".into(), at: center });
        }
        kept.push(t);
        cover.push(bits);
    }
    let polygon_area = |f: usize| polygon::area(&arrangement.polygons[f]).abs();
    let due =
        polygon_area(plan.panel.boundary) - plan.panel.holes.iter().map(|&h| polygon_area(h)).sum::<f64>();
    let found: f64 = kept.iter().map(|t| polygon::area(&t.map(|v| points[v]))).sum();
    if kept.is_empty() || (found - due).abs() > 1e-6 * due {
        return Err(PanelError::NotMeshed {
            reason: "the triangles do not add up to the panel's area",
            at: arrangement.points[0],
        });
    }
    let mut new_index = vec![usize::MAX; points.len()];
    let mut vertices = Vec::new();
    for v in kept.iter_mut().flatten() {
        if new_index[*v] == usize::MAX {
            new_index[*v] = vertices.len();
            vertices.push(points[*v]);
        }
        *v = new_index[*v];
    }
    let marks = arrangement.marks.iter().map(|&m| new_index[m]).collect();
    let (edges, triangle_edges) = edges_of(&kept);
    let halved = (vertices.len(), Vec::new());
    Ok(Mesh {
        vertices,
        triangles: kept,
        triangle_edges,
        cover,
        edges,
        marks,
        size,
        halved,
        parents: Vec::new(),
    })
}

/// Writes on every mesh edge which features run along it, and moves added vertices onto their arcs.
fn attach_features(
    mesh: &mut Mesh,
    arrangement: &Arrangement,
    features: &[Feature],
    tolerance: f64,
) -> Result<(), PanelError> {
    let mut moved: Vec<Option<Point>> = vec![None; mesh.vertices.len()];
    // By their left ends, and no wider than the widest: few edges have to be looked at for a piece.
    let spans: Vec<(f64, f64)> = (mesh.edges.iter())
        .map(|edge| {
            let [p, q] = edge.ends.map(|v| mesh.vertices[v].x);
            (p.min(q), (p - q).abs())
        })
        .collect();
    let mut order: Vec<usize> = (0..spans.len()).collect();
    order.sort_by(|&i, &j| spans[i].0.total_cmp(&spans[j].0).then(i.cmp(&j)));
    let widest = spans.iter().fold(0.0_f64, |w, s| w.max(s.1));
    for piece in &arrangement.pieces {
        let [a, b] = piece.ends.map(|i| arrangement.points[i]);
        let (from, to) = (a.x.min(b.x) - widest - tolerance, a.x.max(b.x) + tolerance);
        let first = order.partition_point(|&e| spans[e].0 < from);
        for &e in order[first..].iter().take_while(|&&e| spans[e].0 <= to) {
            let edge = &mut mesh.edges[e];
            let [p, q] = edge.ends.map(|v| mesh.vertices[v]);
            if apart(p, q, a, b, tolerance) {
                continue;
            }
            let ((fp, dp), (fq, dq)) = (polygon::nearest(a, b, p), polygon::nearest(a, b, q));
            if dp > tolerance || dq > tolerance || (fp - fq).abs() * a.distance(b) < 0.5 * p.distance(q) {
                continue;
            }
            for along in &piece.uses {
                let at = |f: f64| along.from + (along.to - along.from) * f;
                let new_use = EdgeUse { from: at(fp), to: at(fq), ..*along };
                for (vertex, fraction, s) in
                    [(edge.ends[0], fp, new_use.from), (edge.ends[1], fq, new_use.to)]
                {
                    let added = fraction > 0.0 && fraction < 1.0;
                    if added && moved[vertex].is_none() {
                        moved[vertex] = Some(features[along.feature].point(along.curve, s));
                    }
                }
                edge.uses.push(new_use);
            }
        }
    }
    for (vertex, place) in moved.into_iter().enumerate() {
        if let Some(place) = place {
            mesh.vertices[vertex] = place;
        }
    }
    match (0..mesh.triangles.len()).find(|&t| mesh.area(t) <= 0.0) {
        Some(t) => Err(PanelError::NotMeshed {
            reason: "an arc is too close to another boundary",
            at: mesh.corners(t)[0],
        }),
        None => Ok(()),
    }
}
