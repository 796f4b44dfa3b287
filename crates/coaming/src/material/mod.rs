//! Materials: records in which every number carries its basis and its source.
//!
//! ```text
//! figure.rs   one number: value, basis, source, condition
//! curve.rs    points over temperature, time or humidity, and what lies between them
//! record.rs   the record of one material and the list of its properties
//! behaviour.rs, listing.rs   what a record says at a temperature, time, humidity; all its figures for printing
//! metal.rs, clear_plastic.rs, printed_plastic.rs, laminate.rs, sponge.rs, rubber.rs, adhesive.rs   the data
//! finish.rs   painted and bare surfaces: emissivity and solar absorptance
//! lookup.rs   a record by its key, with the nearest keys where there is none
//! shares.rs   how many figures are minimum, typical, estimated, unverified
//! agent.rs, compatibility.rs   plastics, rubbers and metals against chemicals, adhesives and sealants
//! galvanic.rs groups of the galvanic table and the limit for a pair
//! ```
//!
//! A property that no source could be named for is absent: the checks that need it are then not checked.

mod adhesive;
mod agent;
mod behaviour;
mod clear_plastic;
mod compatibility;
mod compatibility_table;
mod curve;
mod entry;
mod figure;
mod finish;
mod galvanic;
mod laminate;
mod listing;
mod lookup;
mod metal;
mod printed_plastic;
mod record;
mod rubber;
mod shares;
mod sources;
mod sponge;
mod units;

pub use agent::{Agent, Family};
pub use compatibility::{Compatibility, CompatibilityRow, compatibility, compatibility_rows};
pub use curve::{Curve, Point};
pub use figure::{Basis, Figure};
pub use finish::{Finish, finish, finishes};
pub use galvanic::{Exposure, GalvanicGroup, GalvanicPair, galvanic_limit, galvanic_pair};
pub use listing::NamedFigure;
pub use lookup::{all, find, keys};
pub use record::{CreepLine, Flammability, Material, MaterialKind, Property};
pub use shares::{Shares, shares};

#[cfg(test)]
mod material_tests;
#[cfg(test)]
mod printed_figures_tests;
