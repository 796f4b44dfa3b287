//! Quantities: dimensions, exact unit factors, reading and writing as people do, and the types that hold them.
//!
//! A quantity is (decimal + offset) × factor, computed exactly and rounded once, so that `1.6 mm`, `0.16 cm` and
//! `0.0016 m` are the same bits. Factors are exact: inch 0.0254 m, pound 0.45359237 kg, pound-force
//! 4.4482216152605 N, standard gravity 9.80665 m/s².

mod convert;
mod dimension;
mod exact;
mod gauge;
mod read;
mod types;
mod unit;
mod write;

#[cfg(test)]
mod tests;

pub use convert::Conversion;
pub use dimension::{Dimension, Exponents};
pub use read::{read, read_number};
pub use types::*;
pub use write::{System, counterpart, for_data, for_people, rounded};
