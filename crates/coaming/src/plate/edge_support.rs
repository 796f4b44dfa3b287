//! How a plate is held all round.

use crate::prelude::*;

/// How a plate is held along its whole edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum EdgeSupport {
    /// Held against deflection, free to turn, corners held down: the hard simple support.
    Supported,
    /// Held against deflection and against turning.
    Clamped,
}
