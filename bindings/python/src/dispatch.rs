//! One call by name for every calculation.

use coaming::declaration::Node;
use pyo3::prelude::*;
use pyo3::types::PyDict;

use crate::boundary::guarded;
use crate::{from_python, to_python};

/// Calculates one situation: its fields in, the outcome's fields (quantities as SI floats) and the caveats' bits out.
#[pyfunction]
pub(crate) fn calculate<'py>(
    py: Python<'py>,
    name: &str,
    values: &Bound<'py, PyDict>,
) -> PyResult<(Bound<'py, PyAny>, u64)> {
    guarded(py, || {
        let entry = coaming::entry(name)?;
        let input = Node::Record(from_python::record(values)?);
        let (outcome, caveats) = py.detach(|| (entry.calculate)(input))?;
        Ok((to_python::object(py, &outcome)?, caveats.bits()))
    })
}
