//! The calculations of coaming for C and C++.
//!
//! `boundary` is written by hand and is the one place for NULL, panics and errors; `generated` has a struct for each
//! flat input and outcome, with a conversion both ways, and is made by `cargo xtask generate`.
#![deny(unsafe_code)]

#[allow(unsafe_code)]
pub mod boundary;
#[allow(unsafe_code)]
pub mod generated;
