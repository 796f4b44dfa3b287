//! Shapes of a panel: closed outlines with straight and circular sides, and the lines to which things are attached.

use crate::document::{Point, Polygon};
use coaming::prelude::*;

/// A rectangle with its sides along x and y.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PlacedRectangle {
    /// Size along x.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Size along y.
    #[possible(f64::MIN_POSITIVE..)]
    pub height: Length,
    /// Radius of the corners; sharp if absent.
    #[possible(0.0..)]
    pub corner_radius: Option<Length>,
    /// Its centre; the origin if absent.
    pub centre: Option<Point>,
}

/// A circle.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PlacedCircle {
    /// Its diameter.
    #[possible(f64::MIN_POSITIVE..)]
    pub diameter: Length,
    /// Its centre; the origin if absent.
    pub centre: Option<Point>,
}

/// One straight or circular piece of a path; it starts where the one before ended.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PathSegment {
    /// Where it ends.
    pub to: Point,
    /// A point of the arc between its ends; a straight piece if absent.
    pub through: Option<Point>,
}

/// A chain of straight and circular pieces.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PathOfSegments {
    /// Where it starts.
    pub start: Point,
    /// Its pieces in order.
    pub segments: Vec<PathSegment>,
}

/// A closed plane shape.
#[derive(Debug, Clone, PartialEq, OneOf)]
pub enum Shape {
    /// A rectangle. Edges in order: lower, right, upper, left; with rounded corners a corner follows each edge.
    Rectangle(PlacedRectangle),
    /// A circle, as two half circles.
    Circle(PlacedCircle),
    /// A polygon with straight sides; the last side closes it.
    Polygon(Polygon),
    /// Straight and circular pieces; a straight one closes it where the last does not end at the start.
    Path(PathOfSegments),
}

/// An edge of the outline or of a hole.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Edge {
    /// Which hole, counted from 0 in the order of the list; the outline if absent.
    pub hole: Option<u32>,
    /// Which edge, counted from 0 in the order in which the boundary is drawn; the whole boundary if absent.
    pub edge: Option<u32>,
}

/// A line on the panel.
#[derive(Debug, Clone, PartialEq, OneOf)]
pub enum Line {
    /// An edge of the outline or of a hole, or the whole boundary.
    Edge(Edge),
    /// Once round a rectangle.
    Rectangle(PlacedRectangle),
    /// Once round a circle.
    Circle(PlacedCircle),
    /// Once round a polygon.
    Polygon(Polygon),
    /// Along a path, which may be open.
    Path(PathOfSegments),
}
