//! Area, centroid and second moments of plane shapes, for forces that vary over them.

use coaming::prelude::*;

use crate::document::{Outline, Point};

/// Integrals over a shape about the cover's origin: of 1, x, y, x² and y², in powers of metres.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Moments {
    pub(super) area: f64,
    pub(super) x: f64,
    pub(super) y: f64,
    pub(super) xx: f64,
    pub(super) yy: f64,
}

impl Moments {
    /// Those of a shape about its centre, or of a polygon in its own coordinates.
    pub(super) fn of(shape: &Outline, centre: Option<&Point>) -> Self {
        let (x, y) = centre.map_or((0.0, 0.0), |centre| (centre.x.value, centre.y.value));
        match shape {
            Outline::Rectangle(r) => {
                let (a, b) = (r.width.value / 2.0, r.height.value / 2.0);
                let radius = r.corner_radius.map_or(0.0, |radius| radius.value);
                let second = |a: f64, b: f64| 4.0 * a * a * a * b / 3.0 - 4.0 * corner(a, radius);
                Self::about_middle(shape.area(), second(a, b), second(b, a)).moved(x, y)
            }
            Outline::Circle(c) => {
                let d = c.diameter.value;
                let second = math::PI * d * d * d * d / 64.0;
                Self::about_middle(shape.area(), second, second).moved(x, y)
            }
            Outline::Polygon(p) => Self::of_polygon(&p.points),
        }
    }

    fn about_middle(area: f64, xx: f64, yy: f64) -> Self {
        Self { area, x: 0.0, y: 0.0, xx, yy }
    }

    fn moved(self, x: f64, y: f64) -> Self {
        let Self { area, xx, yy, .. } = self;
        Self { area, x: area * x, y: area * y, xx: xx + area * x * x, yy: yy + area * y * y }
    }

    /// By Green's theorem, side by side; counted as positive whichever way the corners run.
    fn of_polygon(points: &[Point]) -> Self {
        let next = points.iter().cycle().skip(1);
        let mut sum = Self::default();
        for (from, to) in points.iter().zip(next) {
            let ((ax, ay), (bx, by)) = ((from.x.value, from.y.value), (to.x.value, to.y.value));
            let cross = ax * by - bx * ay;
            sum.area += cross / 2.0;
            sum.x += cross * (ax + bx) / 6.0;
            sum.y += cross * (ay + by) / 6.0;
            sum.xx += cross * (ax * ax + ax * bx + bx * bx) / 12.0;
            sum.yy += cross * (ay * ay + ay * by + by * by) / 12.0;
        }
        if sum.area < 0.0 { Self::default().less(sum) } else { sum }
    }

    /// Those of the shape without another that lies within it.
    pub(super) fn less(self, hole: Self) -> Self {
        Self {
            area: self.area - hole.area,
            x: self.x - hole.x,
            y: self.y - hole.y,
            xx: self.xx - hole.xx,
            yy: self.yy - hole.yy,
        }
    }
}

/// Second moment, about the middle, of what rounding takes off one corner whose square reaches out to `a`.
fn corner(a: f64, r: f64) -> f64 {
    let c = a - r;
    let square = r * (a * a * a - c * c * c) / 3.0;
    let quarter =
        math::PI * r * r * c * c / 4.0 + 2.0 * c * r * r * r / 3.0 + math::PI * r * r * r * r / 16.0;
    square - quarter
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Circle, Polygon, Rectangle};

    fn close(found: f64, expected: f64) {
        assert!((found / expected - 1.0).abs() < 1e-12, "{found} {expected}");
    }

    /// Textbook: a rectangle's b h³/12, a circle's π d⁴/64, a right triangle's b h³/36 about its centroid.
    #[test]
    fn shapes_of_the_textbook() {
        let at = Point { x: m(0.1), y: m(-0.2) };
        let plain = Rectangle { width: m(0.4), height: m(0.3), corner_radius: None };
        let found = Moments::of(&Outline::Rectangle(plain.clone()), Some(&at));
        close(found.xx - found.area * 0.01, 0.3 * 0.4 * 0.4 * 0.4 / 12.0);
        close(found.yy - found.area * 0.04, 0.4 * 0.3 * 0.3 * 0.3 / 12.0);
        close(found.y, -0.2 * 0.12);
        // A square whose corners are rounded until it is a circle.
        let round = Rectangle { width: m(0.2), height: m(0.2), corner_radius: Some(m(0.1)) };
        let circle = Moments::of(&Outline::Circle(Circle { diameter: m(0.2) }), None);
        let rounded = Moments::of(&Outline::Rectangle(round), None);
        close(circle.xx, math::PI * 0.2 * 0.2 * 0.2 * 0.2 / 64.0);
        close(rounded.xx, circle.xx);
        close(rounded.yy, circle.yy);
        let corner = |x: f64, y: f64| Point { x: m(x), y: m(y) };
        let triangle = |points: Vec<Point>| Moments::of(&Outline::Polygon(Polygon { points }), None);
        let corners = vec![corner(1.0, 2.0), corner(1.6, 2.0), corner(1.0, 2.9)];
        let found = triangle(corners.clone());
        close(found.area, 0.27);
        close(found.x / found.area, 1.2);
        close(found.y / found.area, 2.3);
        close(found.yy - found.area * 2.3 * 2.3, 0.6 * 0.9 * 0.9 * 0.9 / 36.0);
        let turned = triangle(corners.into_iter().rev().collect());
        close(turned.xx, found.xx);
        // A hole is taken away.
        close(found.less(found).area + 1.0, 1.0);
    }
}
