//! A named chain of curves that the mesh must follow: an outline, a gasket's path, a beam's line.

use crate::geometry::curve::Curve;
use crate::geometry::point::Point;

/// A named chain of curves that the mesh must follow.
#[derive(Debug, Clone)]
pub(crate) struct Feature {
    /// What it is, for messages.
    pub name: String,
    /// Its curves in order.
    pub curves: Vec<Curve>,
    /// Distance along the path at which each curve starts; one more than curves, the last is the whole length.
    pub starts: Vec<f64>,
    /// Whether the end meets the start.
    pub closed: bool,
}

impl Feature {
    /// Measures a chain of curves.
    pub(crate) fn new(name: impl Into<String>, curves: Vec<Curve>) -> Self {
        let mut starts = vec![0.0];
        let mut along = 0.0;
        for curve in &curves {
            along += curve.length();
            starts.push(along);
        }
        let closed = match (curves.first(), curves.last()) {
            (Some(first), Some(last)) => first.from() == last.to(),
            _ => false,
        };
        Self { name: name.into(), curves, starts, closed }
    }

    /// Point at a distance along one curve of the path.
    pub(crate) fn point(&self, curve: usize, along: f64) -> Point {
        self.curves[curve].point(self.fraction(curve, along))
    }

    /// Unit tangent at a distance along one curve of the path.
    pub(crate) fn tangent(&self, curve: usize, along: f64) -> Point {
        self.curves[curve].tangent(self.fraction(curve, along))
    }

    fn fraction(&self, curve: usize, along: f64) -> f64 {
        let (from, to) = (self.starts[curve], self.starts[curve + 1]);
        ((along - from) / (to - from)).clamp(0.0, 1.0)
    }
}
