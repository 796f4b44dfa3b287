//! The native module of the Python package: one dispatch over the registry, and the unit table for arrays.
//!
//! Everything typed is in Python: generated classes hand their fields over as a plain dict and get one back.

mod batch;
mod boundary;
mod dispatch;
mod document;
mod from_python;
mod handle;
mod panel;
mod reviewer;
mod solution;
mod to_python;
mod units;

use pyo3::prelude::*;

/// What the Python package calls; not for use by itself.
#[pymodule]
mod _native {
    use pyo3::prelude::*;

    #[pymodule_export]
    use crate::batch::batch;
    #[pymodule_export]
    use crate::boundary::{refuse_inconsistent, refuse_quantity, refuse_type};
    #[pymodule_export]
    use crate::dispatch::calculate;
    #[pymodule_export]
    use crate::document::{cautions, order_sheet, panel, review, schema};
    #[pymodule_export]
    use crate::from_python::Si;
    #[pymodule_export]
    use crate::panel::Panel;
    #[pymodule_export]
    use crate::reviewer::Reviewer;
    #[pymodule_export]
    use crate::units::{
        exponents, from_si, from_si_array, knows_unit, read, shown, si_unit, to_si, to_si_array,
    };

    #[pymodule_init]
    fn init(module: &Bound<'_, PyModule>) -> PyResult<()> {
        module.add("__version__", env!("CARGO_PKG_VERSION"))
    }
}
