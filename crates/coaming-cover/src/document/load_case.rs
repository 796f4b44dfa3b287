//! Load cases: what acts, for how long, and how warm each layer then is.

use coaming::prelude::*;

/// The kinds of load case.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum LoadKind {
    /// Closed, as made.
    ClosedNew,
    /// Closed, after a season.
    ClosedAfterSeason,
    /// Wind that presses the lid onto its seal.
    WindIn,
    /// Wind that lifts it.
    WindOut,
    /// A hand at the worst place of a layer.
    Lean,
    /// Acceleration along the cover's x axis.
    AccelerationX,
    /// Acceleration along the cover's y axis.
    AccelerationY,
    /// Acceleration along z, outward from the bay.
    AccelerationZ,
    /// The warmest state.
    Hot,
    /// The coldest state.
    Cold,
    /// In the sun.
    Sun,
    /// Being opened.
    Opening,
}

/// How warm and damp a layer is in a load case.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LayerState {
    /// Name of the layer.
    pub layer: String,
    /// Its temperature.
    pub temperature: Option<Temperature>,
    /// Relative humidity that it is in balance with.
    #[possible(0.0..=1.0)]
    pub humidity: Option<f64>,
}

/// One load case.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LoadCase {
    /// What kind it is.
    pub kind: LoadKind,
    /// How long it lasts.
    #[possible(0.0..)]
    pub duration: Option<Time>,
    /// Pressure, as a positive number; its direction follows from the kind.
    #[possible(0.0..)]
    pub pressure: Option<Pressure>,
    /// The layer that is leaned on.
    pub layer: Option<String>,
    /// Force of a hand.
    #[possible(0.0..)]
    pub force: Option<Force>,
    /// Side of the square patch that it acts on.
    #[possible(f64::MIN_POSITIVE..)]
    pub patch: Option<Length>,
    /// Acceleration, either way.
    #[possible(0.0..)]
    pub acceleration: Option<Acceleration>,
    /// Factor on the loads.
    #[possible(f64::MIN_POSITIVE..)]
    pub factor: Option<f64>,
    /// State of the layers.
    pub states: Option<Vec<LayerState>>,
}
