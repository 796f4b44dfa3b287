//! From a [`Node`] to Python's objects: quantities as SI floats, what is absent as None.

use coaming::declaration::Node;
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyList, PyString};

/// The value as a Python object.
pub(crate) fn object<'py>(py: Python<'py>, node: &Node) -> PyResult<Bound<'py, PyAny>> {
    Ok(match node {
        Node::Absent => py.None().into_bound(py),
        Node::Flag(flag) => PyBool::new(py, *flag).to_owned().into_any(),
        Node::Count(count) => count.into_pyobject(py)?.into_any(),
        Node::Number(number) | Node::Si(number) | Node::Quantity { si: number, .. } => {
            PyFloat::new(py, *number).into_any()
        }
        Node::Text(text) => PyString::new(py, text).into_any(),
        Node::List(entries) => {
            let list = PyList::empty(py);
            for entry in entries {
                list.append(object(py, entry)?)?;
            }
            list.into_any()
        }
        Node::Record(entries) => {
            let record = PyDict::new(py);
            for (key, entry) in entries {
                record.set_item(key.as_ref(), object(py, entry)?)?;
            }
            record.into_any()
        }
    })
}
