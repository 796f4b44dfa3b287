//! One calculation over many rows, with arrays for columns.

use std::borrow::Cow;

use coaming::batch::{Column, Wanted};
use coaming::declaration::nearest::nearest;
use coaming::declaration::{Field, Node};
use coaming::{Entry, Error};
use numpy::{IntoPyArray, PyArray1, PyArrayMethods, PyReadonlyArray1};
use pyo3::prelude::*;
use pyo3::types::PyDict;

use crate::boundary::{Fault, guarded};
use crate::from_python;

/// The outcome's columns by name, and the union of the caveats' bits.
type Columns<'py> = (Bound<'py, PyDict>, u64);

/// Calculates every row of the given columns (SI, one dimension, of one length); the template holds the other fields.
/// The outcome has one array for each field wanted. The interpreter is free meanwhile: the arrays given must not be
/// changed until the call returns.
#[pyfunction]
pub(crate) fn batch<'py>(
    py: Python<'py>,
    name: &str,
    template: &Bound<'py, PyDict>,
    given: &Bound<'py, PyDict>,
    wanted: Vec<String>,
) -> PyResult<Columns<'py>> {
    guarded(py, || {
        let entry = coaming::entry(name)?;
        let mut template = from_python::record(template)?;
        let columns = read_columns(entry, given)?;
        let rows = columns.first().map_or(0, |column| column.values().len());
        for column in &columns {
            let field = column.field;
            template.push((Cow::Borrowed(field.name), stand_in(field)));
        }
        let places =
            wanted.iter().map(|name| outcome_place(entry, name)).collect::<Result<Vec<_>, Fault>>()?;
        let mut found: Vec<Vec<f64>> = places.iter().map(|_| vec![f64::NAN; rows]).collect();
        let columns: Vec<Column<'_>> =
            columns.iter().map(|column| Column { place: column.place, values: column.values() }).collect();
        let mut room: Vec<Wanted<'_>> =
            places.iter().zip(&mut found).map(|(place, values)| Wanted { place: *place, values }).collect();
        let caveats = py.detach(|| (entry.batch)(Node::Record(template), &columns, &mut room))?;
        let outcome = PyDict::new(py);
        for (name, values) in wanted.iter().zip(found) {
            outcome.set_item(name, values.into_pyarray(py))?;
        }
        Ok((outcome, caveats.bits()))
    })
}

/// A column as it was given, or converted from a second convention.
struct Given<'py> {
    place: usize,
    field: &'static Field,
    array: Contents<'py>,
}

enum Contents<'py> {
    Array(PyReadonlyArray1<'py, f64>),
    Converted(Vec<f64>),
}

impl Given<'_> {
    fn values(&self) -> &[f64] {
        match &self.array {
            // Always contiguous: `read_columns` refused any other.
            Contents::Array(array) => array.as_slice().unwrap_or_default(),
            Contents::Converted(values) => values,
        }
    }
}

fn read_columns<'py>(entry: &Entry, given: &Bound<'py, PyDict>) -> Result<Vec<Given<'py>>, Fault> {
    let fields = entry.input.fields;
    let mut columns = Vec::with_capacity(given.len());
    for (key, value) in given {
        let key: String = key.extract()?;
        let found = fields.iter().enumerate().find_map(|(place, field)| {
            let also = field.also.filter(|also| also.name == key);
            (field.name == key || also.is_some()).then_some((place, field, also))
        });
        let (place, field, also) = found.ok_or_else(|| Error::UnknownKey {
            nearest: nearest(&key, fields.iter().map(|field| field.name)).map(str::to_owned),
            field: key.clone(),
        })?;
        if !field.kind.is_scalar() {
            return Err(one_value_only(key));
        }
        let array: PyReadonlyArray1<'py, f64> =
            value.cast::<PyArray1<f64>>().map_err(PyErr::from)?.readonly();
        let values = array.as_slice().map_err(PyErr::from)?;
        let array = match also {
            Some(also) => Contents::Converted(values.iter().map(|si| (also.convert)(*si)).collect()),
            None => Contents::Array(array),
        };
        columns.push(Given { place, field, array });
    }
    Ok(columns)
}

fn one_value_only(field: String) -> Fault {
    let expected = "one value (quantities and plain numbers alone may be arrays)".to_owned();
    Error::WrongType { field, found: "an array".to_owned(), expected }.into()
}

/// A value within the field's range, for the template: each row replaces it.
fn stand_in(field: &Field) -> Node {
    let (low, high) = field.possible;
    let candidates = [field.tested.0, field.tested.1, low, high, 1.0, 0.0];
    let within = |si: &&f64| si.is_finite() && **si >= low && **si <= high;
    let si = candidates.iter().find(within).copied().unwrap_or(1.0);
    if field.kind.dimension().is_some() { Node::Si(si) } else { Node::Number(si) }
}

fn outcome_place(entry: &Entry, name: &str) -> Result<usize, Fault> {
    let fields = entry.outcome.fields;
    let place = fields.iter().position(|field| field.name == name && field.kind.is_scalar());
    place.ok_or_else(|| {
        let numbers = fields.iter().filter(|field| field.kind.is_scalar()).map(|field| field.name);
        let nearest = nearest(name, numbers).map(str::to_owned);
        Error::UnknownKey { field: name.to_owned(), nearest }.into()
    })
}
