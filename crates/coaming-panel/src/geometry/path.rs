//! An open or closed chain of straight and circular segments, as the caller writes it.

use super::curve::Curve;
use super::point::Point;
use crate::error::PanelError;

/// One segment of a path; it starts where the one before ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Segment {
    /// Straight to `end`.
    Line {
        /// Where the segment ends.
        end: Point,
    },
    /// Along the circle over `through` to `end`.
    Arc {
        /// A point of the arc between its ends.
        through: Point,
        /// Where the segment ends.
        end: Point,
    },
}

/// A chain of straight and circular segments.
#[derive(Debug, Clone, PartialEq)]
pub struct Path {
    /// Where the path starts.
    pub start: Point,
    /// Its segments in order.
    pub segments: Vec<Segment>,
}

impl Path {
    /// A path that starts at a point and has no segment yet.
    pub fn start(x: f64, y: f64) -> Self {
        Self { start: Point::new(x, y), segments: Vec::new() }
    }

    /// Straight lines through the given points.
    pub fn polyline(points: &[Point]) -> Self {
        let start = points.first().copied().unwrap_or_default();
        let segments = points.iter().skip(1).map(|&end| Segment::Line { end }).collect();
        Self { start, segments }
    }

    /// Goes on straight to (x, y).
    #[must_use]
    pub fn line_to(mut self, x: f64, y: f64) -> Self {
        self.segments.push(Segment::Line { end: Point::new(x, y) });
        self
    }

    /// Goes on along a circle over `through` to `end`.
    #[must_use]
    pub fn arc_to(mut self, through: Point, end: Point) -> Self {
        self.segments.push(Segment::Arc { through, end });
        self
    }

    /// The curves of the path; coincident points and straight arcs are errors that name the place.
    pub(crate) fn curves(&self, part: &str) -> Result<Vec<Curve>, PanelError> {
        if self.segments.is_empty() {
            return Err(PanelError::Missing { name: part.into(), reason: "has no segment".into() });
        }
        let mut from = self.start;
        check_finite(part, from)?;
        let mut curves = Vec::with_capacity(self.segments.len());
        for segment in &self.segments {
            let curve = match *segment {
                Segment::Line { end } => {
                    check_finite(part, end)?;
                    Curve::Line { from, to: end }
                }
                Segment::Arc { through, end } => {
                    check_finite(part, through)?;
                    check_finite(part, end)?;
                    for (a, b) in [(from, through), (through, end), (from, end)] {
                        if a == b {
                            return Err(PanelError::DuplicatePoint { part: part.into(), at: a });
                        }
                    }
                    Curve::arc(from, through, end)
                        .ok_or_else(|| PanelError::StraightArc { part: part.into(), at: through })?
                }
            };
            from = curve.to();
            curves.push(curve);
        }
        let size = curves.iter().map(Curve::length).sum::<f64>();
        for curve in &curves {
            if curve.length() <= 1e-7 * size {
                return Err(PanelError::DuplicatePoint { part: part.into(), at: curve.from() });
            }
        }
        Ok(curves)
    }
}

fn check_finite(part: &str, point: Point) -> Result<(), PanelError> {
    for value in [point.x, point.y] {
        crate::error::checked(format!("{part}: coordinate"), value, "a finite number within 1e6 m", |v| {
            v.abs() <= 1e6
        })?;
    }
    Ok(())
}
