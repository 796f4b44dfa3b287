//! Calculations for layered removable covers, to be made before the parts are ordered: sheet bending, plates, thermal
//! and moisture mismatch, fasteners, gaskets, latches.
//!
//! Each calculation is a struct whose public fields are the situation; [`Calculation::calculate`] gives its outcome and
//! the caveats that strain it. Quantities are SI inside (`uom`, `f64`) and are made by constructors that round once
//! (`mm(0.07)`), or read as people write them (`Length::read("1/8 in")`).
//!
//! | module | what it answers |
//! |---|---|
//! | [`sheet`] | bend allowance and deduction, neutral axis, press brake, profiles |
//! | [`plate`] | deflection, stress and frequency of panels |
//! | [`thermal`] | growth, movement at holes, temperatures, bonded joints |
//! | [`fastener`] | threads, tightening, heads, holes, screw lengths |
//! | [`gasket`] | sponge and rubber, gaps, spacing |
//! | [`latch`] | force, travel, residual contact |
//! | [`material`] | records with basis and source |
//! | [`quantity`] | dimensions, units, reading and writing |
//! | [`declaration`] | what a field is; what the derives make of it |
//!
//! The results are screenings with the inputs given, not a certificate: where failure could injure, local law and codes
//! hold, and a competent engineer decides.
#![forbid(unsafe_code)]
#![cfg_attr(
    not(test),
    deny(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing,
        clippy::string_slice
    )
)]

extern crate self as coaming;

pub mod batch;
pub mod calculation;
pub mod caveat;
pub mod declaration;
pub mod error;
pub mod fastener;
pub mod gasket;
pub mod latch;
pub mod material;
pub mod math;
pub mod plate;
pub mod prelude;
pub mod quantity;
pub mod sheet;
pub mod source;
pub mod text;
pub mod thermal;

pub use calculation::{Calculation, Entry, entry};
pub use caveat::{Caveat, Caveats};
pub use error::Error;
#[doc(hidden)]
pub use serde;
pub use source::{Source, Standing};
pub use uom;

registry! {
    fastener::Thread,
    fastener::TighteningTorque,
    fastener::TighteningPreload,
    fastener::TighteningScatter,
    fastener::PreloadScatter,
    fastener::AssemblyPreload,
    fastener::CountersunkHead,
    fastener::HeadBearing,
    fastener::ClearanceHole,
    fastener::HoleEdge,
    fastener::ScrewLength,
    fastener::ScrewStrength,
    fastener::TensionAndShear,
    fastener::ThreadLimits,
    fastener::ThreadStripping,
    fastener::InsertLoad,
    fastener::InsertPullOut,
    fastener::InsertBoss,
    fastener::BoltStiffness,
    fastener::MemberStiffness,
    fastener::PreloadChange,
    fastener::JointLoad,
    fastener::FastenerPattern,
    fastener::HoleStress,
    sheet::BendAllowance,
    sheet::KFactorDin6935,
    sheet::KFactorFromAllowance,
    sheet::KFactorFromDeduction,
    sheet::AirBend,
    sheet::BrakeFit,
    sheet::Profile,
    plate::RectangularPlate,
    plate::RectangularPlatePatch,
    plate::RectangularPlateFrequency,
    plate::RectangularPlateModes,
    plate::RectangularPlateLargeDeflection,
    plate::CircularPlate,
    plate::CircularPlateModes,
    plate::AnnularPlate,
    plate::PlateTemperatureGradient,
    plate::HeatedPlateBuckling,
    plate::CreepDeflection,
    plate::RandomResponse,
    plate::SinusoidResponse,
    plate::OrderMargin,
    thermal::HoleMovement,
    thermal::LayerGrowth,
    thermal::MoistureStrain,
    thermal::BayPressure,
    thermal::BondEndShear,
    thermal::CriticalRise,
    thermal::DewPoint,
    thermal::FlexibleBondLine,
    thermal::JointSlip,
    thermal::LapShear,
    thermal::LayerTemperatures,
    thermal::LayeredBow,
    thermal::RestrainedGrowth,
    thermal::SealantJoint,
    thermal::ShoulderBush,
    thermal::TouchTemperature,
    thermal::TwoLayerBow,
    thermal::PaneEngagement,
    gasket::GasketGap,
    gasket::SpongeCurve,
    gasket::SpongeGrade,
    gasket::CordGroove,
    gasket::GasketSet,
    gasket::GasketSpacing,
    gasket::GasketStrip,
    gasket::GasketTightness,
    gasket::RubberBlock,
    gasket::RubberStrip,
    gasket::ShoreModulus,
    gasket::SectionCurve,
    gasket::SpongeHyperelastic,
    latch::LatchForce,
    latch::LatchHold,
    latch::LatchTravel,
    sheet::KFactorMeasured,
    sheet::Springback,
    sheet::OverBend,
    sheet::SmallestRadiusByDesignManual,
    sheet::RecommendedRadiusByAdvisoryCircular,
    sheet::SmallestRadiusByReduction,
    sheet::OuterFibreStrain,
    sheet::SmallestRadiusByStrain,
    sheet::HoleToBend,
    sheet::BendRelief,
    sheet::ReliefHole,
    sheet::ProfileSpread,
    latch::LatchMissing,
    latch::LidTether,
}
