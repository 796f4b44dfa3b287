//! Shapes of the document as the solver's.

use super::shape::{Edge, Line, PathOfSegments, PlacedCircle, PlacedRectangle, Shape};
use crate::document::Polygon;
use coaming::prelude::*;
use coaming_panel as solver;
use coaming_panel::geometry::curve::Curve;
use coaming_panel::geometry::path::Segment;

pub(super) fn point(point: &crate::document::Point) -> solver::Point {
    solver::Point::new(point.x.value, point.y.value)
}

fn centre(given: Option<&crate::document::Point>) -> solver::Point {
    given.map_or_else(solver::Point::default, point)
}

pub(super) fn outline(shape: &Shape, path: &str) -> Result<solver::Outline, Error> {
    match shape {
        Shape::Rectangle(shape) => rectangle(shape, path),
        Shape::Circle(shape) => Ok(circle(shape)),
        Shape::Polygon(shape) => Ok(polygon(shape)),
        Shape::Path(shape) => Ok(solver::Outline(chain(shape))),
    }
}

fn rectangle(shape: &PlacedRectangle, path: &str) -> Result<solver::Outline, Error> {
    let (width, height, at) = (shape.width.value, shape.height.value, centre(shape.centre.as_ref()));
    let (x, y) = (at.x - width / 2.0, at.y - height / 2.0);
    let Some(radius) = shape.corner_radius.filter(|radius| radius.value > 0.0) else {
        return Ok(solver::Outline::rectangle(x, y, width, height));
    };
    // With a radius of half a side that side has no straight piece left.
    if 2.0 * radius.value >= width.min(height) {
        return Err(Error::inconsistent(
            format!("{path}.rectangle.corner_radius"),
            format!("{} is half the shorter side or more; draw such a shape as a path", radius.shown()),
        ));
    }
    Ok(solver::Outline::rounded_rectangle(x, y, width, height, radius.value))
}

fn circle(shape: &PlacedCircle) -> solver::Outline {
    let at = centre(shape.centre.as_ref());
    solver::Outline::circle(at.x, at.y, shape.diameter.value / 2.0)
}

fn polygon(shape: &Polygon) -> solver::Outline {
    solver::Outline::polygon(&shape.points.iter().map(point).collect::<Vec<_>>())
}

fn chain(shape: &PathOfSegments) -> solver::Path {
    let segment = |segment: &super::shape::PathSegment| {
        let end = point(&segment.to);
        match &segment.through {
            Some(through) => Segment::Arc { through: point(through), end },
            None => Segment::Line { end },
        }
    };
    solver::Path { start: point(&shape.start), segments: shape.segments.iter().map(segment).collect() }
}

/// A closed outline as a path that ends where it starts.
pub(crate) fn closed(outline: solver::Outline) -> solver::Line {
    let mut path = outline.0;
    let end = path.segments.last().map(|last| match *last {
        Segment::Line { end } | Segment::Arc { end, .. } => end,
    });
    if end.is_some_and(|end| end != path.start) {
        path.segments.push(Segment::Line { end: path.start });
    }
    solver::Line::Path(path)
}

pub(super) fn edge(edge: &Edge) -> solver::Line {
    match (edge.hole, edge.edge) {
        (None, None) => solver::Line::Outline,
        (None, Some(edge)) => solver::Line::OutlineEdge(edge as usize),
        (Some(hole), None) => solver::Line::Hole(hole as usize),
        (Some(hole), Some(edge)) => solver::Line::HoleEdge { hole: hole as usize, edge: edge as usize },
    }
}

pub(super) fn line(line: &Line, path: &str) -> Result<solver::Line, Error> {
    Ok(match line {
        Line::Edge(given) => edge(given),
        Line::Rectangle(shape) => closed(rectangle(shape, path)?),
        Line::Circle(shape) => closed(circle(shape)),
        Line::Polygon(shape) => closed(polygon(shape)),
        Line::Path(shape) => solver::Line::Path(chain(shape)),
    })
}

/// Area inside an outline: of the polygon through the ends of its pieces, and the segments of circles beyond its chords.
///
/// Exact for straight sides and circular arcs (Gauss's area formula; a segment of angle a has r² (a - sin a) / 2).
pub(super) fn area(outline: &solver::Outline) -> f64 {
    let start = outline.0.start;
    let mut from = start;
    let mut twice = 0.0;
    for segment in &outline.0.segments {
        let end = match *segment {
            Segment::Line { end } => end,
            Segment::Arc { through, end } => {
                if let Some(Curve::Arc { radius, sweep, .. }) = Curve::arc(from, through, end) {
                    twice += radius * radius * (sweep - math::sin(sweep));
                }
                end
            }
        };
        // From the start, so that a place far from the origin costs no figures.
        twice += (from - start).cross(end - start);
        from = end;
    }
    twice.abs() / 2.0
}
