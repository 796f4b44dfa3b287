//! A point or vector in the plane of the panel.

use std::fmt;
use std::ops::{Add, Mul, Sub};

/// A point or vector in the plane of the panel, in metres.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// First coordinate.
    pub x: f64,
    /// Second coordinate.
    pub y: f64,
}

impl Point {
    /// The point (x, y).
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// Scalar product.
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// Third component of the vector product: positive when `other` lies to the left.
    pub fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// Length of the vector.
    pub fn length(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// Distance to another point.
    pub fn distance(self, other: Self) -> f64 {
        (self - other).length()
    }

    /// The vector turned left by a right angle.
    pub fn left(self) -> Self {
        Self::new(-self.y, self.x)
    }

    /// The point a fraction of the way to another; exact at both ends.
    pub fn toward(self, other: Self, fraction: f64) -> Self {
        if fraction >= 1.0 {
            return other;
        }
        self + (other - self) * fraction
    }

    /// The vector scaled to length 1; a zero vector stays as it is.
    pub fn unit(self) -> Self {
        let length = self.length();
        if length > 0.0 { self * (1.0 / length) } else { self }
    }

    /// Whether both coordinates are finite.
    pub fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite()
    }
}

impl Add for Point {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Point {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor)
    }
}

impl fmt::Display for Point {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "({}, {})", self.x, self.y)
    }
}
