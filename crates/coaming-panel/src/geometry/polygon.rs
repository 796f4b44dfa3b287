//! Plain polygons: area, inside test, distance to a segment, crossing of segments.

use super::point::Point;

/// Signed area of a closed polygon; positive when it runs to the left.
pub(crate) fn area(polygon: &[Point]) -> f64 {
    let Some(&origin) = polygon.first() else { return 0.0 };
    let mut twice = 0.0;
    for (i, &a) in polygon.iter().enumerate() {
        let b = polygon[(i + 1) % polygon.len()];
        twice += (a - origin).cross(b - origin);
    }
    0.5 * twice
}

/// Whether a point lies in a closed polygon (even-odd rule).
pub(crate) fn contains(polygon: &[Point], p: Point) -> bool {
    let mut inside = false;
    for (i, &a) in polygon.iter().enumerate() {
        let b = polygon[(i + 1) % polygon.len()];
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * ((p.y - a.y) / (b.y - a.y)) {
            inside = !inside;
        }
    }
    inside
}

/// Fraction 0..=1 along a-b of the point nearest to p, and its distance.
pub(crate) fn nearest(a: Point, b: Point, p: Point) -> (f64, f64) {
    let d = b - a;
    let length2 = d.dot(d);
    let fraction = if length2 > 0.0 { ((p - a).dot(d) / length2).clamp(0.0, 1.0) } else { 0.0 };
    (fraction, a.toward(b, fraction).distance(p))
}

/// Distance from a point to the boundary of a closed polygon.
pub(crate) fn distance(polygon: &[Point], p: Point) -> f64 {
    let mut least = f64::INFINITY;
    for (i, &a) in polygon.iter().enumerate() {
        least = least.min(nearest(a, polygon[(i + 1) % polygon.len()], p).1);
    }
    least
}

/// Fractions along a-b and c-d of their crossing, if the open segments cross.
pub(crate) fn crossing(a: Point, b: Point, c: Point, d: Point) -> Option<(f64, f64)> {
    let (r, s) = (b - a, d - c);
    let det = r.cross(s);
    if det.abs() <= 1e-14 * r.length() * s.length() {
        return None;
    }
    let t = (c - a).cross(s) / det;
    let u = (c - a).cross(r) / det;
    (t > 0.0 && t < 1.0 && u > 0.0 && u < 1.0).then_some((t, u))
}

/// Cuts a convex polygon by the half plane to the left of a-b.
fn clip_left(polygon: &[Point], a: Point, b: Point) -> Vec<Point> {
    let side = |p: Point| (b - a).cross(p - a);
    let mut kept = Vec::with_capacity(polygon.len() + 1);
    for (i, &p) in polygon.iter().enumerate() {
        let q = polygon[(i + 1) % polygon.len()];
        let (sp, sq) = (side(p), side(q));
        if sp >= 0.0 {
            kept.push(p);
        }
        if (sp > 0.0 && sq < 0.0) || (sp < 0.0 && sq > 0.0) {
            kept.push(p.toward(q, sp / (sp - sq)));
        }
    }
    kept
}

/// The part of any simple polygon `subject` inside a convex polygon `window` that runs to the left.
pub(crate) fn clip(subject: &[Point], window: &[Point]) -> Vec<Point> {
    let mut kept = subject.to_vec();
    for (i, &a) in window.iter().enumerate() {
        kept = clip_left(&kept, a, window[(i + 1) % window.len()]);
        if kept.len() < 3 {
            return Vec::new();
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Unit square and triangle, by hand.
    #[test]
    fn area_inside_and_clip() {
        let square = [Point::new(0.0, 0.0), Point::new(1.0, 0.0), Point::new(1.0, 1.0), Point::new(0.0, 1.0)];
        assert_eq!(area(&square), 1.0);
        assert!(contains(&square, Point::new(0.5, 0.25)) && !contains(&square, Point::new(1.5, 0.25)));
        let triangle = [Point::new(0.5, 0.5), Point::new(2.5, 0.5), Point::new(0.5, 2.5)];
        assert!((area(&clip(&triangle, &square)) - 0.25).abs() < 1e-15);
        assert!((distance(&square, Point::new(2.0, 2.0)) - 2.0_f64.sqrt()).abs() < 1e-15);
    }
}
