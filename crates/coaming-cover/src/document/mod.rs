//! The document of a cover, as text (TOML or JSON) and as types.
//!
//! Quantities are strings with units. Structural keys (`version`, `title`, `opening`, `layers`, and in each record those
//! whose type is not optional) must be there; every other may be absent, and then the checks that need it are `not
//! checked`. Unknown keys are refused. All points are in one plane, seen from outside, x to the right and y up; a
//! rectangle or circle without a place of its own is centred on the origin.

mod cover;
mod ends;
mod latches;
mod layer;
mod load_case;
mod locators;
mod material;
mod outline;
mod problems;
mod read;
mod screws;
mod seal;
mod service;

#[cfg(test)]
mod removal_tests;
#[cfg(test)]
mod tests;

pub use coaming::sheet::BendDirection;
pub use cover::{Bond, Cover, Hazard, HolePositions, Opening, SealantJoint, Tether, ThicknessMeans, Waiver};
pub use latches::{Fixing, Latches};
pub use layer::{Bend, Blank, CutOut, Edge, Face, Grain, Joining, Layer, LayerRole, Sealing};
pub use load_case::{LayerState, LoadCase, LoadKind};
pub use locators::{Locator, LocatorDirection};
pub use material::MaterialOverride;
pub(crate) use material::at as material_at;
pub use outline::{Circle, Outline, Point, Polygon, Rectangle};
pub(crate) use read::read_as;
pub use read::{Form, read, to_json, to_toml};
pub use screws::{
    AtPoints, Bush, Insert, InsertKind, OnRectangle, Passed, Positions, ScrewPattern, SlotDirection,
};
pub use seal::{CurvePoint, GapContribution, Seal, SealKind};
pub use service::{Ambient, Bay, Direction, Excitation, Service};
