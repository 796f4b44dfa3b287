//! What the solver answers about one load.

use super::error_estimate::ErrorEstimate;
use super::field::Field;
use crate::geometry::point::Point;

/// A value and where it occurs.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Extreme {
    /// The value.
    pub value: f64,
    /// Where.
    pub at: Point,
}

/// Force and moment of one support on the panel.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Reaction {
    /// Force along z, N.
    pub force: f64,
    /// First moments of the force about the origin plus the moments that the support applies: what they do on unit slopes along x and y, N·m.
    pub moment: Point,
    /// Force in the plane, N; zero where nothing strains the panel there.
    pub in_plane: Point,
}

/// What a support does at one vertex.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NodalReaction {
    /// Where.
    pub at: Point,
    /// Force on the panel along z, N.
    pub force: f64,
    /// Moment on the panel: what it does on unit slopes along x and y, N·m.
    pub moment: Point,
}

/// State of one latch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LatchAnswer {
    /// Pull on the panel, N; zero when the latch is slack or missing.
    pub pull: f64,
    /// Deflection of the panel at the latch, m.
    pub deflection: f64,
}

/// One sample along a gasket.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasketSample {
    /// Distance along the path, m.
    pub along: f64,
    /// Where.
    pub at: Point,
    /// Compression, m; negative: an open gap.
    pub compression: f64,
    /// Force per length, N/m.
    pub force: f64,
}

/// State of one gasket.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct GasketAnswer {
    /// Samples along the path in order.
    pub samples: Vec<GasketSample>,
    /// Smallest compression and where.
    pub smallest: Extreme,
    /// Largest compression and where.
    pub largest: Extreme,
    /// Total force on the panel, N.
    pub force: f64,
    /// Length of path without contact, m.
    pub open_length: f64,
    /// Whether anywhere the compression lies past the last measured point of the law.
    pub beyond_law: bool,
}

/// What is left when all forces and moments are added.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Balance {
    /// Sum of all forces, over the sum of their sizes (of all moments over the size of the panel, if that is larger).
    pub force: f64,
    /// Sum of all moments, over the sum of the sizes of forces times the size of the panel.
    pub moment: f64,
    /// Sum of all forces in the plane, over the sum of their sizes (of their turning over the size of the panel, if that is larger).
    pub in_plane: f64,
}

/// The answer to one load.
#[derive(Debug, Clone)]
pub struct Answer {
    /// The solved field.
    pub field: Field,
    /// The largest deflection in size.
    pub largest_deflection: Extreme,
    /// The largest principal moment per length in size, N: the moments of all groups of layers, each about its own reference height, as in
    /// [`PointAnswer`](super::field::PointAnswer).
    pub largest_moment: Extreme,
    /// The largest principal force in the plane per length in size, N/m, of all groups of layers; 0 where nothing strains them there.
    pub largest_membrane_force: Extreme,
    /// Reaction of every line support.
    pub line_reactions: Vec<Reaction>,
    /// Reaction of every point support.
    pub point_reactions: Vec<Reaction>,
    /// Reactions at every held vertex.
    pub nodal_reactions: Vec<NodalReaction>,
    /// State of every latch.
    pub latches: Vec<LatchAnswer>,
    /// State of every gasket.
    pub gaskets: Vec<GasketAnswer>,
    /// Push of every stop, N.
    pub stops: Vec<f64>,
    /// Residual of the balance of forces and moments.
    pub balance: Balance,
    /// How far the answer may be from that of an infinitely fine mesh.
    pub error: ErrorEstimate,
    /// Newton steps on the finest mesh; 1 for a linear panel.
    pub newton_steps: usize,
}
