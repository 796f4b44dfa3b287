//! The native module of the Python package.
use pyo3::prelude::*;
/// The native module.
#[pymodule]
mod _native {}
