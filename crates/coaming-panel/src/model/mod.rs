//! What the caller describes: layers, joints, beams, supports, gasket, latches, stops and loads.

pub mod beam;
pub mod gasket;
pub mod growth;
pub mod in_plane;
pub mod latch;
pub mod law;
pub mod line;
pub mod load;
pub mod material;
pub mod panel;
pub(crate) mod prepare;
pub(crate) mod shape;
pub(crate) mod size;
pub mod spread_mass;
pub(crate) mod stack;
pub mod support;
