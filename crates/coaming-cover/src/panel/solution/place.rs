//! A value of a solved panel, and where it is found.

use crate::document::Point;
use coaming::prelude::*;

/// A deflection or compression, and where.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LengthAt {
    /// The value.
    pub value: Length,
    /// Where.
    pub at: Point,
}

/// A stress, and where.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct StressAt {
    /// The value.
    #[shown_in("MPa")]
    pub value: Pressure,
    /// Where.
    pub at: Point,
}

/// A moment per length, and where.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MomentAt {
    /// The value, a moment over a length (N·m/m is N); positive stretches the outer face.
    pub value: Force,
    /// Where.
    pub at: Point,
}

/// A force in the plane per length, and where.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MembraneForceAt {
    /// The value, positive in tension.
    pub value: ForcePerLength,
    /// Where.
    pub at: Point,
}
