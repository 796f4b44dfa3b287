//! Fasteners: threads, tightening, heads and countersinks, holes, screw lengths.

mod designation;
mod size;
mod thread;

pub use designation::ThreadDesignation;
pub use size::ScrewSize;
pub use thread::{Thread, ThreadForm, ThreadOutcome};
