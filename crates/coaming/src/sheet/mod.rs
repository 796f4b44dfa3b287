//! Sheet bending: from the drawing to the flat pattern, and whether a press brake can make it.
//!
//! Angles here are bend angles: the angle that the sheet is turned through, 0–180°. The included angle between the
//! faces is 180° less that, and is accepted under its own name.

mod air_bend;
mod bend_allowance;
mod bend_radius_table;
mod bend_relief;
mod brake;
mod brake_fit;
mod die_opening;
mod flat_panel;
mod flat_positions;
mod folded_panel;
mod folded_profile;
mod hole_to_bend;
mod k_factor_conversions;
mod k_factor_din_6935;
mod k_factor_measured;
mod length_reference;
mod outer_fibre_strain;
mod over_bend;
mod panel_faces;
mod profile;
mod profile_spread;
mod recommended_radius_by_advisory_circular;
mod relief_hole;
mod return_flange;
mod smallest_radius_by_design_manual;
mod smallest_radius_by_reduction;
mod smallest_radius_by_strain;
mod springback;

pub use air_bend::{AirBend, AirBendOutcome};
pub use bend_allowance::{BendAllowance, BendAllowanceOutcome, LegReference};
pub use bend_relief::{BendRelief, BendReliefOutcome};
pub use brake::{Brake, BrakeBend, BrakeLimit};
pub use brake_fit::{BrakeBendOutcome, BrakeFit, BrakeFitOutcome};
pub use die_opening::DieOpeningRounding;
pub use flat_panel::{FlatBend, FlatHole, FlatPanel, FlatPlace};
pub use flat_positions::{FlatPositions, FlatPositionsOutcome};
pub use folded_panel::{FoldedFace, FoldedHole, FoldedPanel, FoldedPanelOutcome, SpacePlace};
pub use hole_to_bend::{HoleDistanceReference, HoleToBend, HoleToBendOutcome};
pub use k_factor_conversions::{KFactorFromAllowance, KFactorFromDeduction, KFactorOutcome};
pub use k_factor_din_6935::{BentMetal, KFactorDin6935, KFactorDin6935Outcome};
pub use k_factor_measured::{KFactorMeasured, KFactorMeasuredOutcome};
pub use length_reference::{AboveNinety, LengthReference};
pub use outer_fibre_strain::{OuterFibreStrain, OuterFibreStrainOutcome};
pub use over_bend::{OverBend, OverBendOutcome};
pub use profile::{BendDirection, Leg, LegOutcome, Profile, ProfileBend, ProfileBendOutcome, ProfileOutcome};
pub use profile_spread::{
    AcrossBends, ProfileHole, ProfileHoleOutcome, ProfileSpread, ProfileSpreadOutcome, SpreadCause,
    SpreadEffect,
};
pub use recommended_radius_by_advisory_circular::{
    AdvisoryCircularTemper, RecommendedRadiusByAdvisoryCircular, RecommendedRadiusByAdvisoryCircularOutcome,
};
pub use relief_hole::{ReliefHole, ReliefHoleOutcome};
pub use return_flange::{ReturnFlange, ReturnFlangeOutcome};
pub use smallest_radius_by_design_manual::{
    AluminumDesignManualTemper, SmallestRadiusByDesignManual, SmallestRadiusByDesignManualOutcome,
};
pub use smallest_radius_by_reduction::{SmallestRadiusByReduction, SmallestRadiusByReductionOutcome};
pub use smallest_radius_by_strain::{SmallestRadiusByStrain, SmallestRadiusByStrainOutcome};
pub use springback::{Springback, SpringbackOutcome};

use crate::math::PI;
use crate::quantity::{Angle, si};

/// The bend angle of a bend whose faces enclose the given angle.
///
/// ```
/// use coaming::prelude::*;
/// let bend_angle = coaming::sheet::included_angle(deg(60.0));
/// assert!((bend_angle - deg(120.0)).abs() < deg(1e-9));
/// ```
pub fn included_angle(included: Angle) -> Angle {
    si(supplement(included.value))
}

/// 180° less an angle, in radians: from an included angle to a bend angle, and back.
pub fn supplement(angle: f64) -> f64 {
    PI - angle
}
