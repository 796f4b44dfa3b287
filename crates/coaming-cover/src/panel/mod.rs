//! One panel by itself: its document, and its solution with units.
//!
//! The document's conventions are those of the cover's: points in one plane as seen from outside, z and deflections
//! positive outward, pressures positive where they push the panel onto its seal, compression positive closing.

mod answer;
mod convert;
mod convert_shape;
mod faults;
mod holding;
mod layers;
mod loads;
mod problem;
mod progress;
mod shape;
mod solution;
mod solve;

#[cfg(test)]
mod in_plane_tests;
#[cfg(test)]
mod panel_tests;
#[cfg(test)]
mod tests;

pub(crate) use convert_shape::closed;
pub use holding::{
    DrawnSpring, GapError, GasketAlong, GasketLaw, HeldHeight, Hold, LatchAction, LatchAt, LawPoint,
    LinearLaw, MassAt, MeasuredLaw, PulledForce, StopAt, SupportAlong, SupportAt,
};
pub use layers::{
    BeamAlong, Bonded, Elasticity, IsotropicMaterial, LayerJoint, OrthotropicMaterial, PanelLayer, Region,
    Slipping,
};
pub use loads::{
    EdgeForceAlong, EdgeMomentAlong, ForceAlong, ForceAt, LayerGrowth, LayerRise, PanelLoadCase, PatchForce,
    PressureOn, SupportMovement,
};
pub use problem::{PanelProblem, PanelSettings, read_load_case, read_panel};
pub use progress::{Progress, Tell, Work, go_on};
pub use shape::{Edge, Line, PathOfSegments, PathSegment, PlacedCircle, PlacedRectangle, Shape};
pub use solution::{
    BalanceLeft, Buckling, BucklingMode, CaseSolution, CriticalRise, CriticalTemperature, GasketState,
    LatchState, LayerStresses, LengthAt, MembraneForceAt, MeshError, MeshField, MomentAt, NaturalMode,
    NaturalModes, OpeningTravel, PanelSolution, StressAt, SupportReaction,
};
pub use solve::{LoadOf, Panel, solve};
