//! Latches: force, travel, and the hand that works them.
