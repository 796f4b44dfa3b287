//! Thermal and moisture mismatch: what grows, what it is held by, and how warm each layer gets.

mod bay_pressure;
mod bond_end_shear;
mod critical_rise;
mod dew_point;
mod flexible_bond_line;
mod hole_movement;
mod joint_slip;
mod lap_shear;
mod layer_growth;
mod layer_temperatures;
mod layered_bow;
mod moisture_strain;
mod restrained_growth;
mod sealant_joint;
mod shoulder_bush;
mod touch_temperature;
mod two_layer_bow;
mod vapour;

pub use bay_pressure::{BayPressure, BayPressureOutcome};
pub use bond_end_shear::{BondEndShear, BondEndShearOutcome};
pub use critical_rise::{CriticalRise, CriticalRiseOutcome};
pub use dew_point::{DewPoint, DewPointOutcome};
pub use flexible_bond_line::{FlexibleBondLine, FlexibleBondLineOutcome};
pub use hole_movement::{HoleMovement, HoleMovementOutcome, HoleRole, ToleranceStack};
pub use joint_slip::{JointSlip, JointSlipOutcome, SlipState};
pub use lap_shear::{LapShear, LapShearOutcome};
pub use layer_growth::{LayerGrowth, LayerGrowthOutcome};
pub use layer_temperatures::{LayerTemperature, LayerTemperatures, LayerTemperaturesOutcome, ThermalLayer};
pub use layered_bow::{BowLayer, LayerStress, LayeredBow, LayeredBowOutcome};
pub use moisture_strain::{MoisturePoint, MoistureStrain, MoistureStrainOutcome};
pub use restrained_growth::{RestrainedGrowth, RestrainedGrowthOutcome, Restraint};
pub use sealant_joint::{MovementClass, SealantJoint, SealantJointOutcome};
pub use shoulder_bush::{ShoulderBush, ShoulderBushOutcome};
pub use touch_temperature::{ContactTime, TouchMaterial, TouchTemperature, TouchTemperatureOutcome};
pub use two_layer_bow::{BowBody, TwoLayerBow, TwoLayerBowOutcome};
