//! The unit table and the reader, for the Python layer.

use coaming::Error;
use coaming::quantity::{self, Conversion, Dimension};
use numpy::{IntoPyArray, PyArray1, PyReadonlyArray1};
use pyo3::prelude::*;

use crate::boundary::{Fault, guarded};

/// The dimension of a name, as the field tables have it.
pub(crate) fn dimension(name: &str) -> Result<&'static Dimension, Fault> {
    let found = Dimension::ALL.iter().find(|dimension| dimension.name == name);
    Ok(found.ok_or_else(|| Error::WrongType {
        field: "dimension".to_owned(),
        found: format!("`{name}`"),
        expected: "the name of a dimension".to_owned(),
    })?)
}

/// Names the field in a fault of the unit table.
fn at(field: &str, error: Error) -> Error {
    match error {
        Error::NotAQuantity { text, expected, reason, .. } => {
            Error::NotAQuantity { field: field.to_owned(), text, expected, reason }
        }
        other => other,
    }
}

fn conversion(unit: &str, dimension_name: &str, field: &str) -> Result<Conversion, Fault> {
    Ok(Conversion::new(unit, dimension(dimension_name)?).map_err(|error| at(field, error))?)
}

/// Reads a quantity to its SI value.
#[pyfunction]
pub(crate) fn read(py: Python<'_>, text: &str, dimension_name: &str, field: &str) -> PyResult<f64> {
    guarded(py, || Ok(quantity::read(text, dimension(dimension_name)?).map_err(|error| at(field, error))?))
}

/// True where the unit is known and measures the dimension.
#[pyfunction]
pub(crate) fn knows_unit(py: Python<'_>, unit: &str, dimension_name: &str) -> PyResult<bool> {
    guarded(py, || Ok(Conversion::new(unit, dimension(dimension_name)?).is_ok()))
}

/// Exponents of metre, kilogram, second, kelvin and radian.
#[pyfunction]
pub(crate) fn exponents(py: Python<'_>, dimension_name: &str) -> PyResult<(i8, i8, i8, i8, i8)> {
    guarded(py, || Ok(dimension(dimension_name)?.exponents.into()))
}

/// The SI unit of a dimension.
#[pyfunction]
pub(crate) fn si_unit(py: Python<'_>, dimension_name: &str) -> PyResult<&'static str> {
    guarded(py, || Ok(dimension(dimension_name)?.si))
}

/// The SI value of a number of the unit.
#[pyfunction]
pub(crate) fn to_si(
    py: Python<'_>,
    number: f64,
    unit: &str,
    dimension_name: &str,
    field: &str,
) -> PyResult<f64> {
    guarded(py, || Ok(conversion(unit, dimension_name, field)?.to_si(number)))
}

/// The number of the unit for an SI value.
#[pyfunction]
pub(crate) fn from_si(py: Python<'_>, si: f64, unit: &str, dimension_name: &str) -> PyResult<f64> {
    guarded(py, || Ok(conversion(unit, dimension_name, "")?.from_si(si)))
}

/// The SI values of an array's numbers, each taken as the binary value that it is and rounded once.
#[pyfunction]
pub(crate) fn to_si_array<'py>(
    py: Python<'py>,
    numbers: PyReadonlyArray1<'py, f64>,
    unit: &str,
    dimension_name: &str,
    field: &str,
) -> PyResult<Bound<'py, PyArray1<f64>>> {
    guarded(py, || {
        let conversion = conversion(unit, dimension_name, field)?;
        each(py, &numbers, |number| conversion.to_si(number))
    })
}

/// The numbers of the unit for an array of SI values.
#[pyfunction]
pub(crate) fn from_si_array<'py>(
    py: Python<'py>,
    si: PyReadonlyArray1<'py, f64>,
    unit: &str,
    dimension_name: &str,
) -> PyResult<Bound<'py, PyArray1<f64>>> {
    guarded(py, || {
        let conversion = conversion(unit, dimension_name, "")?;
        each(py, &si, |si| conversion.from_si(si))
    })
}

fn each<'py>(
    py: Python<'py>,
    numbers: &PyReadonlyArray1<'py, f64>,
    convert: impl Fn(f64) -> f64 + Sync,
) -> Result<Bound<'py, PyArray1<f64>>, Fault> {
    let numbers = numbers.as_slice().map_err(PyErr::from)?;
    let converted: Vec<f64> = py.detach(|| numbers.iter().map(|number| convert(*number)).collect());
    Ok(converted.into_pyarray(py))
}

/// A quantity as people read it: four figures in the unit.
#[pyfunction]
pub(crate) fn shown(py: Python<'_>, si: f64, unit: &str, dimension_name: &str) -> PyResult<String> {
    guarded(py, || {
        let number = conversion(unit, dimension_name, "")?.from_si(si);
        Ok(format!("{} {unit}", quantity::rounded(number, 4)))
    })
}
