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
pub mod topic;

pub use calculation::{Calculation, Entry, entry};
pub use caveat::{Caveat, Caveats};
pub use error::Error;
#[doc(hidden)]
pub use serde;
pub use source::{Source, Standing};
pub use topic::Topic;
pub use uom;

registry! {
    F1 fastener::Thread,
    F3 fastener::TighteningTorque,
    F3 fastener::TighteningPreload,
    F3 fastener::TighteningScatter,
    F3 fastener::PreloadScatter,
    F3 fastener::AssemblyPreload,
    F7 fastener::CountersunkHead,
    F7 fastener::HeadBearing,
    F8 fastener::ClearanceHole,
    F8 fastener::HoleEdge,
    F9 fastener::ScrewLength,
    F2 fastener::ScrewStrength,
    F2 fastener::TensionAndShear,
    F5 fastener::ThreadLimits,
    F5 fastener::ThreadStripping,
    F6 fastener::InsertLoad,
    F6 fastener::InsertPullOut,
    F6 fastener::InsertBoss,
    F4 fastener::BoltStiffness,
    F4 fastener::MemberStiffness,
    F4 fastener::PreloadChange,
    F4 fastener::JointLoad,
    F10 fastener::FastenerPattern,
    F11 fastener::HoleStress,
    S2 sheet::BendAllowance,
    S1 sheet::KFactorDin6935,
    S2 sheet::KFactorFromAllowance,
    S2 sheet::KFactorFromDeduction,
    S5 sheet::AirBend,
    S5 sheet::BrakeFit,
    S7 sheet::Profile,
    P1 plate::RectangularPlate,
    P1 plate::RectangularPlatePatch,
    P1 plate::LevyPlate,
    P2 plate::RectangularPlateFrequency,
    P2 plate::RectangularPlateModes,
    P6 plate::RectangularPlateLargeDeflection,
    P1 plate::CircularPlate,
    P6 plate::CircularPlateLargeDeflection,
    P2 plate::CircularPlateModes,
    P1 plate::AnnularPlate,
    P2 plate::AnnularPlateModes,
    P1 plate::EllipticalPlate,
    P3 plate::Laminate,
    P4 plate::PlateTemperatureGradient,
    P4 plate::HeatedPlateBuckling,
    P5 plate::CreepDeflection,
    P7 plate::RandomResponse,
    P7 plate::SinusoidResponse,
    P7 plate::OrderMargin,
    T1 thermal::HoleMovement,
    T1 thermal::LayerGrowth,
    T1 thermal::MoistureStrain,
    T5 thermal::BayPressure,
    T4 thermal::BondEndShear,
    T4 thermal::BondedStripBuckling,
    T2 thermal::CriticalRise,
    T5 thermal::DewPoint,
    T4 thermal::FlexibleBondLine,
    T2 thermal::JointSlip,
    T4 thermal::LapShear,
    T5 thermal::LayerTemperatures,
    T3 thermal::LayeredBow,
    T2 thermal::RestrainedGrowth,
    T4 thermal::SealantJoint,
    T2 thermal::ShoulderBush,
    T5 thermal::TouchTemperature,
    T3 thermal::TwoLayerBow,
    T6 thermal::PaneEngagement,
    G4 gasket::GasketGap,
    G1 gasket::SpongeCurve,
    G1 gasket::SpongeGrade,
    G2 gasket::CordGroove,
    G3 gasket::GasketSet,
    G5 gasket::GasketSpacing,
    G7 gasket::GasketStrip,
    G6 gasket::GasketTightness,
    G2 gasket::RubberBlock,
    G2 gasket::RubberStrip,
    G2 gasket::ShoreModulus,
    G2 gasket::SectionCurve,
    G1 gasket::SpongeHyperelastic,
    L1 latch::LatchForce,
    L1 latch::LatchHold,
    L1 latch::LatchTravel,
    S1 sheet::KFactorMeasured,
    S3 sheet::Springback,
    S3 sheet::OverBend,
    S4 sheet::SmallestRadiusByDesignManual,
    S4 sheet::RecommendedRadiusByAdvisoryCircular,
    S4 sheet::SmallestRadiusByReduction,
    S4 sheet::OuterFibreStrain,
    S4 sheet::SmallestRadiusByStrain,
    S6 sheet::HoleToBend,
    S6 sheet::BendRelief,
    S6 sheet::ReliefHole,
    S8 sheet::FoldedPanel,
    S8 sheet::FlatPositions,
    S9 sheet::ProfileSpread,
    S10 sheet::ReturnFlange,
    L1 latch::LatchMissing,
    L1 latch::LidTether,
    L2 latch::HingeClosing,
    L2 latch::SwingClearance,
    L2 latch::LidSlam,
    L2 latch::HoldOpen,
}
