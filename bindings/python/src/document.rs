//! The document calls: the text of a cover or of one panel in, text out; and what a document may hold.

use coaming::Error;
use coaming_cover::calls::{self, Output, Units};
use pyo3::prelude::*;

use crate::boundary::guarded;

/// Reviews a cover.
#[pyfunction]
pub(crate) fn review(py: Python<'_>, document: &str, output: &str, units: &str) -> PyResult<String> {
    called(py, calls::review, document, output, units)
}

/// The order sheet of a cover.
#[pyfunction]
pub(crate) fn order_sheet(py: Python<'_>, document: &str, output: &str, units: &str) -> PyResult<String> {
    called(py, calls::order_sheet, document, output, units)
}

/// Solves one panel.
#[pyfunction]
pub(crate) fn panel(py: Python<'_>, document: &str, output: &str, units: &str) -> PyResult<String> {
    called(py, calls::panel, document, output, units)
}

/// A call that takes a document and how the text is to be, while the interpreter is free.
pub(crate) fn called(
    py: Python<'_>,
    call: impl FnOnce(&str, Output, Units) -> Result<String, Error> + Send,
    document: &str,
    output: &str,
    units: &str,
) -> PyResult<String> {
    guarded(py, || {
        let (output, units) = (calls::choice("output", output)?, calls::choice("units", units)?);
        Ok(py.detach(|| call(document, output, units))?)
    })
}

/// What the numbers of a cover or of a panel are not for.
#[pyfunction]
pub(crate) fn cautions() -> Vec<&'static str> {
    coaming_cover::cautions::CAUTIONS.to_vec()
}

/// The JSON Schema of a document.
#[pyfunction]
pub(crate) fn schema(py: Python<'_>, of: &str) -> PyResult<String> {
    guarded(py, || Ok(calls::schema(calls::choice("of", of)?)?))
}
