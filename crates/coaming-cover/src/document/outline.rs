//! Plane shapes: the outline of a layer, of an opening, of a seal.

use coaming::prelude::*;

/// A point in the plane of the cover, seen from outside: x to the right, y up.
#[derive(Debug, Clone, Copy, PartialEq, Fields)]
pub struct Point {
    /// Distance to the right of the cover's origin.
    pub x: Length,
    /// Distance above the cover's origin.
    pub y: Length,
}

/// A rectangle with its sides along x and y.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Rectangle {
    /// Size along x.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Size along y.
    #[possible(f64::MIN_POSITIVE..)]
    pub height: Length,
    /// Radius of the corners; sharp if absent.
    #[possible(0.0..)]
    pub corner_radius: Option<Length>,
}

/// A circle.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Circle {
    /// Its diameter.
    #[possible(f64::MIN_POSITIVE..)]
    pub diameter: Length,
}

/// A closed polygon with straight sides.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Polygon {
    /// Its corners, in order round the shape; the last side closes it.
    pub points: Vec<Point>,
}

/// A closed plane shape. A rectangle or circle is centred on the origin, or on the point given beside it.
#[derive(Debug, Clone, PartialEq, OneOf)]
pub enum Outline {
    /// A rectangle, with or without rounded corners.
    Rectangle(Rectangle),
    /// A circle.
    Circle(Circle),
    /// A polygon, in the cover's coordinates.
    Polygon(Polygon),
}

impl Outline {
    /// Width and height of the smallest upright box around it, in metres.
    pub fn box_size(&self) -> (f64, f64) {
        match self {
            Self::Rectangle(r) => (r.width.value, r.height.value),
            Self::Circle(c) => (c.diameter.value, c.diameter.value),
            Self::Polygon(p) => {
                let span = |of: fn(&Point) -> f64| {
                    let (low, high) =
                        p.points.iter().map(of).fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), x| {
                            (low.min(x), high.max(x))
                        });
                    (high - low).max(0.0)
                };
                (span(|point| point.x.value), span(|point| point.y.value))
            }
        }
    }

    /// Enclosed area, in square metres.
    pub fn area(&self) -> f64 {
        match self {
            Self::Rectangle(r) => {
                let radius = r.corner_radius.map_or(0.0, |radius| radius.value);
                r.width.value * r.height.value - (4.0 - math::PI) * radius * radius
            }
            Self::Circle(c) => math::PI / 4.0 * c.diameter.value * c.diameter.value,
            Self::Polygon(p) => sides(&p.points).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>().abs() / 2.0,
        }
    }

    /// Length once round, in metres.
    pub fn perimeter(&self) -> f64 {
        match self {
            Self::Rectangle(r) => {
                let radius = r.corner_radius.map_or(0.0, |radius| radius.value);
                2.0 * (r.width.value + r.height.value) - (8.0 - 2.0 * math::PI) * radius
            }
            Self::Circle(c) => math::PI * c.diameter.value,
            Self::Polygon(p) => sides(&p.points).map(|(a, b)| math::hypot(b.0 - a.0, b.1 - a.1)).sum(),
        }
    }

    /// The corners of a rectangle, or the points of a polygon, in metres; none for a circle.
    pub fn corners(&self) -> Vec<(f64, f64)> {
        match self {
            Self::Rectangle(r) => {
                let (x, y) = (r.width.value / 2.0, r.height.value / 2.0);
                vec![(-x, -y), (x, -y), (x, y), (-x, y)]
            }
            Self::Circle(_) => Vec::new(),
            Self::Polygon(p) => p.points.iter().map(|point| (point.x.value, point.y.value)).collect(),
        }
    }

    /// What is wrong with the shape, if anything is: a radius that does not fit, a polygon that crosses itself.
    ///
    /// # Errors
    /// [`Error::Geometry`] or [`Error::Inconsistent`], with the place.
    pub fn check_shape(&self, path: &str) -> Result<(), Error> {
        match self {
            Self::Rectangle(r) => match r.corner_radius {
                Some(radius) if 2.0 * radius.value > r.width.value.min(r.height.value) => {
                    Err(Error::inconsistent(
                        format!("{path}.rectangle.corner_radius"),
                        format!("{} is more than half the shorter side", radius.shown()),
                    ))
                }
                _ => Ok(()),
            },
            Self::Circle(_) => Ok(()),
            Self::Polygon(p) => polygon_problem(&p.points).map_or(Ok(()), |(place, reason)| {
                Err(Error::Geometry { place: format!("{path}.polygon, {place}"), reason })
            }),
        }
    }
}

type Corner = (f64, f64);

/// The sides of a polygon, each as its two ends.
fn sides(points: &[Point]) -> impl Iterator<Item = (Corner, Corner)> {
    let corner = |point: &Point| (point.x.value, point.y.value);
    let next = points.iter().cycle().skip(1);
    points.iter().zip(next).map(move |(a, b)| (corner(a), corner(b)))
}

fn polygon_problem(points: &[Point]) -> Option<(String, String)> {
    let named = |nth: usize| {
        let nth = nth % points.len().max(1);
        points
            .get(nth)
            .map_or_else(String::new, |p| format!("point {nth} ({}, {})", p.x.shown(), p.y.shown()))
    };
    if points.len() < 3 {
        return Some((format!("{} points", points.len()), "a polygon has at least three".to_owned()));
    }
    let sides: Vec<(Corner, Corner)> = scaled(sides(points).collect());
    if let Some(nth) = sides.iter().position(|(a, b)| a == b) {
        return Some((named(nth), "the same point stands twice in a row".to_owned()));
    }
    let turns_back = |(first, second): (&(Corner, Corner), &(Corner, Corner))| {
        let ahead = (first.1.0 - first.0.0) * (second.1.0 - second.0.0)
            + (first.1.1 - first.0.1) * (second.1.1 - second.0.1);
        turn(first.0, first.1, second.1) == 0.0 && ahead < 0.0
    };
    if let Some(nth) = sides.iter().zip(sides.iter().cycle().skip(1)).position(turns_back) {
        return Some((named(nth + 1), "the outline runs back here on the side that it came by".to_owned()));
    }
    for (i, first) in sides.iter().enumerate() {
        for (j, second) in sides.iter().enumerate().skip(i + 1) {
            let neighbours = j == i + 1 || (i == 0 && j + 1 == sides.len());
            if !neighbours && cross(first, second) {
                return Some((named(i), format!("the side from here crosses the side from {}", named(j))));
            }
        }
    }
    None
}

/// The sides in units of a power of two near the largest coordinate: exact, and no product of two overflows or vanishes.
fn scaled(sides: Vec<(Corner, Corner)>) -> Vec<(Corner, Corner)> {
    let largest = sides.iter().fold(0.0, |largest, (a, _)| f64::max(largest, f64::max(a.0.abs(), a.1.abs())));
    // The exponent's bits alone are the power of two at or below the number.
    let power = f64::from_bits(largest.to_bits() & (0x7FF << 52));
    if power == 0.0 {
        return sides;
    }
    let corner = |corner: Corner| (corner.0 / power, corner.1 / power);
    sides.into_iter().map(|(a, b)| (corner(a), corner(b))).collect()
}

/// Twice the area of a triangle, positive where it is gone round to the left.
fn turn(a: Corner, b: Corner, c: Corner) -> f64 {
    (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0)
}

/// True where two sides meet. The cost is the square of the number of sides: a list holds at most ten thousand.
fn cross(first: &(Corner, Corner), second: &(Corner, Corner)) -> bool {
    let (a, b) = *first;
    let (c, d) = *second;
    let (t1, t2, t3, t4) = (turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b));
    let on = |a: Corner, b: Corner, c: Corner, turn: f64| {
        turn == 0.0
            && c.0 >= a.0.min(b.0)
            && c.0 <= a.0.max(b.0)
            && c.1 >= a.1.min(b.1)
            && c.1 <= a.1.max(b.1)
    };
    (t1 * t2 < 0.0 && t3 * t4 < 0.0)
        || on(a, b, c, t1)
        || on(a, b, d, t2)
        || on(c, d, a, t3)
        || on(c, d, b, t4)
}
