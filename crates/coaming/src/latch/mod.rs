//! Latches: force, travel, and the hand that works them.

mod latch_force;
mod latch_hold;
mod latch_travel;

pub use latch_force::{LatchForce, LatchForceOutcome};
pub use latch_hold::{LatchHold, LatchHoldOutcome};
pub use latch_travel::{LatchTravel, LatchTravelOutcome};
