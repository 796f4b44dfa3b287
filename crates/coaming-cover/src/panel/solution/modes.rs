//! The natural modes of a panel, and what makes it buckle.
//!
//! Values over a mesh are plain SI numbers, with the unit in the name, ready to be plotted.

use coaming::prelude::*;

/// One natural mode.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct NaturalMode {
    /// Its frequency.
    pub frequency: Frequency,
    /// Estimated error of the frequency, as a share; absent where no finer mesh was allowed to compare with.
    pub error: Option<f64>,
    /// True where that meets the tolerance.
    pub met: bool,
    /// Deflection at the modes' vertices for a modal mass of 1 kg, m.
    pub shape_m: Vec<f64>,
}

/// The lowest natural modes about an equilibrium, on a mesh of their own.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct NaturalModes {
    /// The modes, lowest first.
    pub modes: Vec<NaturalMode>,
    /// Vertices: x, m.
    pub x_m: Vec<f64>,
    /// Vertices: y, m.
    pub y_m: Vec<f64>,
    /// Triangles: indices of three vertices each, one after another.
    pub triangles: Vec<u32>,
}

/// One way to buckle.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BucklingMode {
    /// What acts in the plane times this makes the panel buckle.
    pub factor: f64,
    /// Estimated error of the factor, as a share; absent where no finer mesh was allowed to compare with.
    pub error: Option<f64>,
    /// Deflection at the vertices, scaled so that the largest in size is 1.
    pub shape: Vec<f64>,
}

/// The lowest ways to buckle, on a mesh of their own. Linear theory of the flat panel: one that bows under its load from the start has no
/// sudden buckling, and there the factor only tells where bowing becomes large. Real panels are never quite flat: keep a factor in hand.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Buckling {
    /// The ways to buckle, lowest factor first; empty where nothing presses the panel together.
    pub modes: Vec<BucklingMode>,
    /// True where every factor meets the tolerance.
    pub met: bool,
    /// Vertices: x, m.
    pub x_m: Vec<f64>,
    /// Vertices: y, m.
    pub y_m: Vec<f64>,
    /// Triangles: indices of three vertices each, one after another.
    pub triangles: Vec<u32>,
}

/// Temperature of one layer at which the panel buckles, above the one at which it is flat and free of stress.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CriticalTemperature {
    /// Name of the layer.
    pub layer: String,
    /// Rise at the middle of the layer.
    pub rise: TemperatureDifference,
    /// Outer face minus inner face.
    pub gradient: TemperatureDifference,
}

/// Temperatures at which the panel buckles, in proportion to those of the load case. They count from where the supports begin to hold in
/// the plane: a hole with clearance first uses that up.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CriticalRise {
    /// The load case's temperatures times this make the panel buckle; absent where they press nothing together.
    pub factor: Option<f64>,
    /// Estimated error of the factor, as a share; absent where no finer mesh was allowed to compare with.
    pub error: Option<f64>,
    /// True where the factor meets the tolerance.
    pub met: bool,
    /// The temperatures times the factor; none where there is no factor.
    pub temperatures: Vec<CriticalTemperature>,
}
