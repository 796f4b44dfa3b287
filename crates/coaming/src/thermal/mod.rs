//! Thermal and moisture mismatch: what grows, what it is held by, and how warm each layer gets.

mod hole_movement;
mod layer_growth;
mod moisture_strain;

pub use hole_movement::{HoleMovement, HoleMovementOutcome, HoleRole, ToleranceStack};
pub use layer_growth::{LayerGrowth, LayerGrowthOutcome};
pub use moisture_strain::{MoisturePoint, MoistureStrain, MoistureStrainOutcome};
