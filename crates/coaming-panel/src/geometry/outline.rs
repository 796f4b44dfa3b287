//! A closed outline of straight and circular segments.

use super::curve::Curve;
use super::path::{Path, Segment};
use super::point::Point;
use crate::error::PanelError;

/// A closed outline. If the last segment does not end where the first starts, a straight one closes it.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline(pub Path);

impl Outline {
    /// A polygon through the given corners.
    pub fn polygon(corners: &[Point]) -> Self {
        Self(Path::polyline(corners))
    }

    /// A rectangle with its lower left corner at (x, y). Edges in order: lower, right, upper, left.
    pub fn rectangle(x: f64, y: f64, width: f64, height: f64) -> Self {
        Self(Path::start(x, y).line_to(x + width, y).line_to(x + width, y + height).line_to(x, y + height))
    }

    /// A rectangle with its corners rounded. Edges in order: lower, corner, right, corner, upper, corner, left, corner.
    pub fn rounded_rectangle(x: f64, y: f64, width: f64, height: f64, radius: f64) -> Self {
        let (r, d) = (radius, radius * (1.0 - 0.5_f64.sqrt()));
        let (u, v) = (x + width, y + height);
        Self(
            Path::start(x + r, y)
                .line_to(u - r, y)
                .arc_to(Point::new(u - d, y + d), Point::new(u, y + r))
                .line_to(u, v - r)
                .arc_to(Point::new(u - d, v - d), Point::new(u - r, v))
                .line_to(x + r, v)
                .arc_to(Point::new(x + d, v - d), Point::new(x, v - r))
                .line_to(x, y + r)
                .arc_to(Point::new(x + d, y + d), Point::new(x + r, y)),
        )
    }

    /// A circle, as two half circles.
    pub fn circle(x: f64, y: f64, radius: f64) -> Self {
        let r = radius;
        Self(
            Path::start(x + r, y)
                .arc_to(Point::new(x, y + r), Point::new(x - r, y))
                .arc_to(Point::new(x, y - r), Point::new(x + r, y)),
        )
    }

    /// The curves of the outline, closed.
    pub(crate) fn curves(&self, part: &str) -> Result<Vec<Curve>, PanelError> {
        let mut path = self.0.clone();
        let end = path.segments.last().map(|s| match *s {
            Segment::Line { end } | Segment::Arc { end, .. } => end,
        });
        if let Some(end) = end {
            let straight = path.segments.iter().all(|s| matches!(s, Segment::Line { .. }));
            let closed = end == path.start;
            let sides = path.segments.len() + usize::from(!closed);
            if sides < if straight { 3 } else { 2 } {
                return Err(PanelError::Missing {
                    name: part.into(),
                    reason: "has too few sides to enclose an area".into(),
                });
            }
            if !closed {
                path.segments.push(Segment::Line { end: path.start });
            }
        }
        path.curves(part)
    }
}
