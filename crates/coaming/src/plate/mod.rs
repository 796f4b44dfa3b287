//! Plates: deflection, moments and natural frequencies of flat panels in closed form or by converged series.
//!
//! z points outward; positive pressure pushes inward, so that it makes the deflection negative. Moments and stresses
//! are those of the inner face, positive where it is in tension.

mod annular_plate;
mod annular_plate_modes;
mod band;
mod circle_stretching;
mod circular_plate;
mod circular_plate_large_deflection;
mod circular_plate_modes;
mod clamped_frequency;
mod clamped_patch;
mod clamped_ritz;
mod creep_deflection;
mod edge_support;
mod elliptical_plate;
mod field;
mod heated_plate_buckling;
mod isotropic;
mod laminate;
mod laminate_plies;
mod laminate_solve;
mod legendre_bubble;
mod levy_linear;
mod levy_patch;
mod levy_plate;
mod levy_terms;
mod order_margin;
mod plate_modes;
mod plate_stretching;
mod plate_temperature_gradient;
mod quadrature;
mod random_response;
mod rectangle_patch;
mod rectangle_uniform;
mod rectangular_plate;
mod rectangular_plate_frequency;
mod rectangular_plate_large_deflection;
mod rectangular_plate_modes;
mod rectangular_plate_patch;
#[cfg(test)]
mod series_tests;
mod sinusoid_response;
mod symmetric;

pub use annular_plate::{AnnularPlate, AnnularPlateOutcome};
pub use annular_plate_modes::{AnnularPlateModes, AnnularPlateModesOutcome};
pub use circular_plate::{CircularPlate, CircularPlateOutcome};
pub use circular_plate_large_deflection::{
    CircularPlateLargeDeflection, CircularPlateLargeDeflectionOutcome,
};
pub use circular_plate_modes::{CircularPlateModes, CircularPlateModesOutcome};
pub use creep_deflection::{CreepDeflection, CreepDeflectionOutcome};
pub use edge_support::EdgeSupport;
pub use elliptical_plate::{EllipticalPlate, EllipticalPlateOutcome};
pub use heated_plate_buckling::{HeatedPlateBuckling, HeatedPlateBucklingOutcome};
pub use laminate::{Laminate, LaminateOutcome, Ply, PlyStress};
pub use levy_plate::{LevyPlate, LevyPlateOutcome, PlateDirection};
pub use order_margin::{OrderMargin, OrderMarginOutcome};
pub use plate_temperature_gradient::{PlateTemperatureGradient, PlateTemperatureGradientOutcome};
pub use random_response::{RandomResponse, RandomResponseOutcome};
pub use rectangular_plate::{RectangularPlate, RectangularPlateOutcome};
pub use rectangular_plate_frequency::{RectangularPlateFrequency, RectangularPlateFrequencyOutcome};
pub use rectangular_plate_large_deflection::{
    InPlaneSupport, RectangularPlateLargeDeflection, RectangularPlateLargeDeflectionOutcome,
};
pub use rectangular_plate_modes::{PlateEdge, RectangularPlateModes, RectangularPlateModesOutcome};
pub use rectangular_plate_patch::{RectangularPlatePatch, RectangularPlatePatchOutcome};
pub use sinusoid_response::{SinusoidResponse, SinusoidResponseOutcome};
