//! What the solver answers, and how sure it is.

pub mod answer;
pub mod buckling;
pub(crate) mod collect;
pub mod error_estimate;
pub mod field;
pub(crate) mod in_plane;
pub(crate) mod indicator;
pub mod modes;
pub(crate) mod recover;
