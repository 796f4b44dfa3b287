//! From Python's objects to a [`Node`]; what kind is due is left to the reader, which refuses in the same words as
//! every language.

use std::borrow::Cow;

use coaming::Error;
use coaming::declaration::{LONGEST_LIST, Node, short_enough};
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyList, PyString, PyTuple};

use crate::boundary::Fault;

/// Nesting deeper than this is refused.
const DEEPEST: usize = 64;

/// A number that is known to be in SI units: a bare one where a unit is due is refused, and this is not.
#[pyclass(frozen, module = "coaming._native")]
pub(crate) struct Si {
    pub(crate) value: f64,
}

#[pymethods]
impl Si {
    #[new]
    fn new(value: f64) -> Self {
        Self { value }
    }

    fn __repr__(&self) -> String {
        format!("Si({:e})", self.value)
    }
}

/// A step of the path to a value, on the stack, written out when an error needs it.
#[derive(Clone, Copy)]
enum Place<'a> {
    Root,
    Member(&'a Place<'a>, &'a str),
    Entry(&'a Place<'a>, usize),
}

impl Place<'_> {
    fn text(&self) -> String {
        match self {
            Self::Root => String::new(),
            Self::Member(Place::Root, name) => (*name).to_owned(),
            Self::Member(parent, name) => format!("{}.{name}", parent.text()),
            Self::Entry(parent, place) => format!("{}[{place}]", parent.text()),
        }
    }

    fn depth(&self) -> usize {
        match self {
            Self::Root => 0,
            Self::Member(parent, _) | Self::Entry(parent, _) => 1 + parent.depth(),
        }
    }

    fn wrong_type(&self, found: String) -> Fault {
        let expected = "text, a number, true or false, a list or a table of fields".to_owned();
        Error::WrongType { field: self.text(), found, expected }.into()
    }
}

/// The fields of a record.
pub(crate) fn record(values: &Bound<'_, PyDict>) -> Result<Vec<(Cow<'static, str>, Node)>, Fault> {
    members(values, &Place::Root)
}

fn members(values: &Bound<'_, PyDict>, place: &Place<'_>) -> Result<Vec<(Cow<'static, str>, Node)>, Fault> {
    let mut entries = Vec::with_capacity(values.len());
    for (key, value) in values {
        let key: String = match key.cast::<PyString>() {
            Ok(key) => key.to_str()?.to_owned(),
            Err(_) => return Err(place.wrong_type(format!("a key of type `{}`", key.get_type().name()?))),
        };
        let value = node(&value, &Place::Member(place, &key))?;
        entries.push((Cow::Owned(key), value));
    }
    Ok(entries)
}

fn node(value: &Bound<'_, PyAny>, place: &Place<'_>) -> Result<Node, Fault> {
    if value.is_none() {
        return Ok(Node::Absent);
    }
    if let Ok(text) = value.cast::<PyString>() {
        let Ok(text) = text.to_str() else {
            return Err(place.wrong_type("text with characters that stand alone for half of one".to_owned()));
        };
        short_enough(text)?;
        return Ok(Node::Text(text.to_owned()));
    }
    if let Ok(si) = value.cast::<Si>() {
        return Ok(Node::Si(si.get().value));
    }
    if let Ok(number) = value.cast::<PyFloat>() {
        return Ok(Node::Number(number.value()));
    }
    // A bool is an int in Python, so it comes first.
    if let Ok(flag) = value.cast::<PyBool>() {
        return Ok(Node::Flag(flag.is_true()));
    }
    if let Ok(whole) = value.cast::<PyInt>() {
        return whole_number(whole, place);
    }
    if place.depth() >= DEEPEST {
        return Err(Error::TooLarge {
            field: place.text(),
            found: "deeper nesting".to_owned(),
            accepted: format!("at most {DEEPEST} levels"),
        }
        .into());
    }
    if let Ok(record) = value.cast::<PyDict>() {
        return Ok(Node::Record(members(record, place)?));
    }
    if let Ok(list) = value.cast::<PyList>() {
        return entries(list.len(), list.iter(), place);
    }
    if let Ok(list) = value.cast::<PyTuple>() {
        return entries(list.len(), list.iter(), place);
    }
    Err(place.wrong_type(format!("a value of type `{}`", value.get_type().name()?)))
}

fn whole_number(whole: &Bound<'_, PyInt>, place: &Place<'_>) -> Result<Node, Fault> {
    if let Ok(count) = whole.extract::<u64>() {
        return Ok(Node::Count(count));
    }
    // Negative, or past 64 bits: rounded to the nearest number, as Python itself does.
    match whole.extract::<f64>() {
        Ok(number) => Ok(Node::Number(number)),
        Err(_) => Err(place.wrong_type("a whole number larger than any that can be held".to_owned())),
    }
}

fn entries<'py>(
    length: usize,
    list: impl Iterator<Item = Bound<'py, PyAny>>,
    place: &Place<'_>,
) -> Result<Node, Fault> {
    if length > LONGEST_LIST {
        return Err(Error::TooLarge {
            field: place.text(),
            found: format!("{length} entries"),
            accepted: format!("at most {LONGEST_LIST} entries"),
        }
        .into());
    }
    let entries = list.enumerate().map(|(at, value)| node(&value, &Place::Entry(place, at)));
    Ok(Node::List(entries.collect::<Result<_, _>>()?))
}
