//! Points, curves, outlines, and what is checked about them before anything is meshed.

pub mod check;
pub mod curve;
pub mod outline;
pub mod path;
pub mod point;
pub mod polygon;
