//! Latches: force, travel, and the hand that works them; hinges, stays and the swing of a lid.

mod hinge_closing;
mod hold_open;
mod latch_force;
mod latch_hold;
mod latch_missing;
mod latch_travel;
mod lid_slam;
mod lid_tether;
mod swing_clearance;

pub use hinge_closing::{HingeClosing, HingeClosingOutcome};
pub use hold_open::{HoldOpen, HoldOpenOutcome};
pub use latch_force::{LatchForce, LatchForceOutcome};
pub use latch_hold::{LatchHold, LatchHoldOutcome};
pub use latch_missing::{LatchMissing, LatchMissingOutcome};
pub use latch_travel::{LatchTravel, LatchTravelOutcome};
pub use lid_slam::{LidSlam, LidSlamOutcome};
pub use lid_tether::{LidTether, LidTetherOutcome};
pub use swing_clearance::{SwingClearance, SwingClearanceOutcome};
