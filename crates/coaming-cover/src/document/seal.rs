//! The gasket, and what closes it to its height.

use super::outline::Outline;
use coaming::prelude::*;

/// The kinds of gasket, each with its own window of compression.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum SealKind {
    /// Closed-cell sponge.
    ClosedCell,
    /// Open-cell foam.
    OpenCell,
    /// Solid rubber.
    Solid,
}

/// A measured point of a gasket's curve.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CurvePoint {
    /// Compression over free height.
    #[possible(0.0..1.0)]
    pub compression: f64,
    /// Pressure at that compression.
    #[possible(0.0..)]
    pub pressure: Pressure,
}

/// One more deviation in the gap.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GapContribution {
    /// What it is.
    pub name: String,
    /// Largest deviation either way.
    #[possible(0.0..)]
    pub deviation: Length,
}

/// The seal.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Seal {
    /// What kind it is.
    pub kind: Option<SealKind>,
    /// Name of its material.
    pub material: Option<String>,
    /// Its centre line.
    pub path: Option<Outline>,
    /// Height before it is compressed.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_height: Option<Length>,
    /// Largest deviation of the free height.
    #[possible(0.0..)]
    pub height_tolerance: Option<Length>,
    /// Width.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Option<Length>,
    /// Height of the stops that the lid comes down on.
    #[possible(f64::MIN_POSITIVE..)]
    pub stop_height: Option<Length>,
    /// Largest deviation of the stops' height.
    #[possible(0.0..)]
    pub stop_tolerance: Option<Length>,
    /// Height at which the latches hold the lid where there are no stops.
    #[possible(f64::MIN_POSITIVE..)]
    pub closed_height: Option<Length>,
    /// Further deviations of the gap: coating, settling, latch setting.
    pub gap_contributions: Option<Vec<GapContribution>>,
    /// Pressure at 25 % compression, where it is known better than by its grade.
    #[possible(f64::MIN_POSITIVE..)]
    pub pressure_at_25_percent: Option<Pressure>,
    /// Measured curve, rising.
    pub curve: Option<Vec<CurvePoint>>,
    /// Compression set over one season as a share of the deflection (ASTM D395 B).
    #[possible(0.0..=1.0)]
    pub set_of_deflection: Option<f64>,
    /// Compression set over one season as a share of the thickness (ISO 1856).
    #[possible(0.0..=1.0)]
    pub set_of_thickness: Option<f64>,
    /// Temperature at which the set was measured.
    pub set_temperature: Option<Temperature>,
    /// Time for which it was compressed when the set was measured.
    #[possible(f64::MIN_POSITIVE..)]
    pub set_time: Option<Time>,
    /// Compression at which the set was measured.
    #[possible(f64::MIN_POSITIVE..1.0)]
    pub set_compression: Option<f64>,
    /// Time that it had to recover before its height was measured.
    #[possible(0.0..)]
    pub set_recovery_time: Option<Time>,
    /// Least friction coefficient of its face on what it slides on, wet or dirty.
    #[possible(0.0..=2.0)]
    pub friction_low: Option<f64>,
    /// Greatest friction coefficient of its face on what it slides on.
    #[possible(0.0..=2.0)]
    pub friction_high: Option<f64>,
    /// Name of the adhesive that backs it.
    pub backing: Option<String>,
}
