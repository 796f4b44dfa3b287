//! Fasteners: threads, tightening, heads and countersinks, holes, screw lengths.

mod assembly_preload;
mod bearing_table;
mod clearance_hole;
mod clearance_hole_table;
mod countersunk_head;
mod countersunk_head_table;
mod designation;
mod head_bearing;
mod hole_edge;
mod length_series;
mod preload_scatter;
mod screw_length;
mod size;
mod thread;
mod tightening;
mod tightening_preload;
mod tightening_scatter;
mod tightening_torque;

pub use assembly_preload::{AssemblyPreload, AssemblyPreloadOutcome};
pub use bearing_table::BearingStandard;
pub use clearance_hole::{ClearanceFit, ClearanceHole, ClearanceHoleOutcome};
pub use countersunk_head::{CountersunkHead, CountersunkHeadOutcome, CountersunkStandard};
pub use designation::ThreadDesignation;
pub use head_bearing::{HeadBearing, HeadBearingOutcome};
pub use hole_edge::{HoleEdge, HoleEdgeOutcome};
pub use length_series::LengthSeries;
pub use preload_scatter::{PreloadScatter, PreloadScatterOutcome, TighteningMethod};
pub use screw_length::{GripLayer, HeadSeat, ScrewLength, ScrewLengthOutcome};
pub use size::ScrewSize;
pub use thread::{Thread, ThreadForm, ThreadOutcome};
pub use tightening_preload::{TighteningPreload, TighteningPreloadOutcome};
pub use tightening_scatter::{TighteningScatter, TighteningScatterOutcome};
pub use tightening_torque::{TighteningTorque, TighteningTorqueOutcome};
