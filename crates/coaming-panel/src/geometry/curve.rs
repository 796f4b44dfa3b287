//! One straight or circular piece of a boundary, measured by its arc length.

use super::point::Point;
use crate::math::{atan2, cos, sin};
use std::f64::consts::{PI, TAU};

/// One straight or circular piece of a boundary.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Curve {
    /// A straight piece.
    Line {
        /// Where it starts.
        from: Point,
        /// Where it ends.
        to: Point,
    },
    /// A circular piece.
    Arc {
        /// Where it starts.
        from: Point,
        /// Where it ends.
        to: Point,
        /// Centre of the circle.
        center: Point,
        /// Radius of the circle.
        radius: f64,
        /// Angle of the start, seen from the centre.
        start_angle: f64,
        /// Angle turned through, positive to the left.
        sweep: f64,
    },
}

impl Curve {
    /// The arc from `from` over `through` to `to`; `None` when the three lie on a line.
    pub fn arc(from: Point, through: Point, to: Point) -> Option<Self> {
        let a = through - from;
        let b = to - from;
        let twice_area = 2.0 * a.cross(b);
        let scale = a.length().max(b.length());
        if twice_area.abs() <= 1e-9 * scale * scale {
            return None;
        }
        let center_offset = Point::new(
            (b.y * a.dot(a) - a.y * b.dot(b)) / twice_area,
            (a.x * b.dot(b) - b.x * a.dot(a)) / twice_area,
        );
        let center = from + center_offset;
        let radius = center_offset.length();
        let angle = |p: Point| atan2(p.y - center.y, p.x - center.x);
        let start_angle = angle(from);
        let mut sweep = angle(to) - start_angle;
        let left = twice_area > 0.0;
        if left && sweep <= 0.0 {
            sweep += TAU;
        }
        if !left && sweep >= 0.0 {
            sweep -= TAU;
        }
        Some(Self::Arc { from, to, center, radius, start_angle, sweep })
    }

    /// Where the curve starts.
    pub fn from(&self) -> Point {
        match *self {
            Self::Line { from, .. } | Self::Arc { from, .. } => from,
        }
    }

    /// Where the curve ends.
    pub fn to(&self) -> Point {
        match *self {
            Self::Line { to, .. } | Self::Arc { to, .. } => to,
        }
    }

    /// Length along the curve.
    pub fn length(&self) -> f64 {
        match *self {
            Self::Line { from, to } => from.distance(to),
            Self::Arc { radius, sweep, .. } => radius * sweep.abs(),
        }
    }

    /// Angle turned through from start to end, without sign.
    pub fn turn(&self) -> f64 {
        match *self {
            Self::Line { .. } => 0.0,
            Self::Arc { sweep, .. } => sweep.abs(),
        }
    }

    /// The point at a fraction 0..=1 of the length; the ends are exact.
    pub fn point(&self, fraction: f64) -> Point {
        if fraction <= 0.0 {
            return self.from();
        }
        if fraction >= 1.0 {
            return self.to();
        }
        match *self {
            Self::Line { from, to } => from.toward(to, fraction),
            Self::Arc { center, radius, start_angle, sweep, .. } => {
                let angle = start_angle + sweep * fraction;
                center + Point::new(cos(angle), sin(angle)) * radius
            }
        }
    }

    /// Unit tangent at a fraction 0..=1 of the length, in the direction of travel.
    pub fn tangent(&self, fraction: f64) -> Point {
        match *self {
            Self::Line { from, to } => (to - from).unit(),
            Self::Arc { start_angle, sweep, .. } => {
                let angle = start_angle + sweep * fraction;
                let left = Point::new(-sin(angle), cos(angle));
                if sweep > 0.0 { left } else { left * -1.0 }
            }
        }
    }

    /// Fractions 0, ..., 1 that cut the curve into pieces no longer than `longest` and turning no more than `turn`.
    pub fn divide(&self, longest: f64, turn: f64) -> Vec<f64> {
        let by_length = (self.length() / longest).ceil();
        let by_turn = (self.turn() / turn.min(PI)).ceil();
        let pieces = by_length.max(by_turn).clamp(1.0, 1.0e5) as usize;
        (0..=pieces).map(|i| i as f64 / pieces as f64).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Half and quarter circles by elementary geometry.
    #[test]
    fn arc_through_three_points() {
        let arc = Curve::arc(Point::new(1.0, 0.0), Point::new(0.0, 1.0), Point::new(-1.0, 0.0));
        let arc = arc.filter(|a| (a.length() - PI).abs() < 1e-14);
        assert!(arc.is_some_and(|a| a.point(0.5).distance(Point::new(0.0, 1.0)) < 1e-15));
        let clockwise = Curve::arc(
            Point::new(0.0, 2.0),
            Point::new(2.0_f64.sqrt(), 2.0_f64.sqrt()),
            Point::new(2.0, 0.0),
        );
        assert!(clockwise.is_some_and(
            |a| (a.length() - PI).abs() < 1e-14 && a.tangent(1.0).distance(Point::new(0.0, -1.0)) < 1e-14
        ));
        assert!(Curve::arc(Point::new(0.0, 0.0), Point::new(1.0, 1.0), Point::new(2.0, 2.0)).is_none());
    }
}
