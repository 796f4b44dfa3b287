//! [`Fields`]: a record that knows its own table. Derived, never written by hand.

use super::check::shown;
use super::kind::{Field, Record};
use super::path::Path;
use super::value::Value;
use crate::caveat::Caveats;
use crate::error::Error;

/// A record whose fields are declared once: the derive makes the table, the reader, the writer and the check from it.
pub trait Fields: Value {
    /// Name, doc comment and fields.
    const RECORD: &'static Record;

    /// The number of the field at a place, in SI units: quantities and numbers only, absent ones none.
    fn get(&self, place: usize) -> Option<f64>;

    /// Sets the number of the field at a place; false where it holds no number.
    fn set(&mut self, place: usize, si: f64) -> bool;

    /// Checks each field: outside its possible range is an error, outside the tested one a caveat.
    ///
    /// # Errors
    /// The first fault, with its path.
    fn check(&self, path: &Path<'_>, caveats: &mut Caveats) -> Result<(), Error>;

    /// The place of a field by its name.
    fn place(name: &str) -> Option<usize> {
        Self::RECORD.fields.iter().position(|field| field.name == name)
    }

    /// Refuses the value of a field for a reason that its range does not hold: names the field, its value and what is
    /// accepted.
    fn impossible(&self, name: &str, accepted: impl Into<String>) -> Error {
        let place = Self::place(name);
        let field: Option<&Field> = place.and_then(|place| Self::RECORD.fields.get(place));
        let value = place.and_then(|place| self.get(place));
        Error::Impossible {
            field: name.to_owned(),
            value: value.unwrap_or(f64::NAN),
            shown: value.zip(field).map_or_else(|| "this value".to_owned(), |(si, field)| shown(si, field)),
            accepted: accepted.into(),
        }
    }
}
