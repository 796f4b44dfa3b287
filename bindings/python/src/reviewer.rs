//! A cover reviewed again and again while it is worked on.

use std::sync::Mutex;

use coaming::Error;
use coaming_cover::calls::{self, Output, Units};
use coaming_cover::reviewer;
use pyo3::prelude::*;

use crate::boundary::guarded;
use crate::document::called;
use crate::handle;

/// What was solved for the covers reviewed so far.
#[pyclass(frozen, module = "coaming._native")]
pub(crate) struct Reviewer {
    reviewer: Mutex<reviewer::Reviewer>,
}

#[pymethods]
impl Reviewer {
    #[new]
    fn new(py: Python<'_>) -> PyResult<Self> {
        guarded(py, || Ok(Self { reviewer: Mutex::new(reviewer::Reviewer::new()) }))
    }

    /// Reviews a cover.
    fn review(&self, py: Python<'_>, document: &str, output: &str, units: &str) -> PyResult<String> {
        called(py, self.asked(calls::review_with), document, output, units)
    }

    /// The order sheet of a cover.
    fn order_sheet(&self, py: Python<'_>, document: &str, output: &str, units: &str) -> PyResult<String> {
        called(py, self.asked(calls::order_sheet_with), document, output, units)
    }
}

/// A call that takes a reviewer, a document and how the text is to be.
type Call = fn(&mut reviewer::Reviewer, &str, Output, Units) -> Result<String, Error>;

impl Reviewer {
    /// The call with this reviewer, which nobody else may be using.
    fn asked(&self, call: Call) -> impl FnOnce(&str, Output, Units) -> Result<String, Error> + Send {
        move |document, output, units| {
            handle::with(&self.reviewer, "reviewer", |reviewer| call(reviewer, document, output, units))
        }
    }
}
