//! Latches: force, travel, and the hand that works them.

mod latch_force;
mod latch_hold;
mod latch_missing;
mod latch_travel;
mod lid_tether;

pub use latch_force::{LatchForce, LatchForceOutcome};
pub use latch_hold::{LatchHold, LatchHoldOutcome};
pub use latch_missing::{LatchMissing, LatchMissingOutcome};
pub use latch_travel::{LatchTravel, LatchTravelOutcome};
pub use lid_tether::{LidTether, LidTetherOutcome};
