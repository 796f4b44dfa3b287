//! The one way in and out: every function of the module runs in [`guarded`], where a panic and an [`Error`] become a
//! `CoamingError`.

use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};

use coaming::Error;
use pyo3::exceptions::PyRuntimeError;
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyDict, PyType};

use crate::units::dimension;

/// Why a call failed: in the library's terms, or in the interpreter's.
pub(crate) enum Fault {
    Library(Error),
    Interpreter(PyErr),
}

impl From<Error> for Fault {
    fn from(error: Error) -> Self {
        Self::Library(error)
    }
}

impl From<PyErr> for Fault {
    fn from(error: PyErr) -> Self {
        Self::Interpreter(error)
    }
}

/// Runs a call; a panic, which Python's `except Exception` would miss, is caught here.
pub(crate) fn guarded<T>(py: Python<'_>, call: impl FnOnce() -> Result<T, Fault>) -> PyResult<T> {
    match catch_unwind(AssertUnwindSafe(call)) {
        Ok(Ok(done)) => Ok(done),
        Ok(Err(Fault::Library(error))) => Err(raised(py, &error)),
        Ok(Err(Fault::Interpreter(error))) => Err(error),
        Err(panic) => Err(panicked(py, panic.as_ref())),
    }
}

fn error_class(py: Python<'_>) -> PyResult<&Bound<'_, PyType>> {
    static CLASS: PyOnceLock<Py<PyType>> = PyOnceLock::new();
    CLASS.import(py, "coaming._error", "CoamingError")
}

/// The error as an exception.
fn raised(py: Python<'_>, error: &Error) -> PyErr {
    let make = || {
        let details = PyDict::new(py);
        details.set_item("code", error.code())?;
        details.set_item("name", error.name())?;
        details.set_item("field", error.field())?;
        details.set_item("value", error.value())?;
        details.set_item("row", error.row())?;
        details.set_item("line", error.position().map(|(line, _)| line))?;
        details.set_item("column", error.position().map(|(_, column)| column))?;
        details.set_item("cure", error.cure())?;
        error_class(py)?.call((error.to_string(),), Some(&details))
    };
    make().map_or_else(|failure| failure, PyErr::from_value)
}

/// A panic is a defect of the library: it has no permanent code, and so 0.
fn panicked(py: Python<'_>, panic: &(dyn Any + Send)) -> PyErr {
    let words = match (panic.downcast_ref::<&str>(), panic.downcast_ref::<String>()) {
        (Some(words), _) => (*words).to_owned(),
        (None, Some(words)) => words.clone(),
        (None, None) => "no message".to_owned(),
    };
    let message = format!("a defect of the library, not of the input: {words}");
    let make = || {
        let details = PyDict::new(py);
        details.set_item("name", "panicked")?;
        details.set_item("cure", "Report it with the input.")?;
        error_class(py)?.call((message.as_str(),), Some(&details))
    };
    make().map_or_else(|_| PyRuntimeError::new_err(message.clone()), PyErr::from_value)
}

/// Refuses a value of another type, in the library's words.
#[pyfunction]
pub(crate) fn refuse_type(py: Python<'_>, field: String, found: String, expected: String) -> PyResult<()> {
    guarded(py, || Err(Error::WrongType { field, found, expected }.into()))
}

/// Refuses what is no quantity of the dimension, in the library's words.
#[pyfunction]
pub(crate) fn refuse_quantity(
    py: Python<'_>,
    field: String,
    text: String,
    dimension_name: &str,
    reason: String,
) -> PyResult<()> {
    guarded(py, || {
        let due = dimension(dimension_name)?;
        let expected = format!("a {} such as {}", due.name, due.example);
        Err(Error::NotAQuantity { field, text, expected, reason }.into())
    })
}

/// Refuses fields that do not go together, in the library's words.
#[pyfunction]
pub(crate) fn refuse_inconsistent(py: Python<'_>, fields: String, reason: String) -> PyResult<()> {
    guarded(py, || Err(Error::Inconsistent { fields, reason }.into()))
}
