//! Reading a value from a document or a node, field by field, so that a fault is raised at its own place.

use core::cell::RefCell;
use core::fmt;
use core::marker::PhantomData;
use serde::de::{self, DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};

use super::check::check_number;
use super::kind::{Also, Field};
use super::nearest::nearest;
use super::path::Path;
use super::value::Value;
use crate::caveat::Caveats;
use crate::error::Error;

/// A list longer than this is refused.
pub const LONGEST_LIST: usize = 10_000;

/// A text longer than this is refused, in bytes.
pub const LONGEST_TEXT: usize = 16 << 20;

/// Where the first typed fault of one reading is laid down, while the format's own error carries its position.
#[derive(Debug, Default)]
pub struct Desk {
    fault: RefCell<Option<Error>>,
}

impl Desk {
    /// The fault of this reading, if there was one.
    pub fn take(&self) -> Option<Error> {
        self.fault.borrow_mut().take()
    }
}

/// The place at which a value is read: its path, its field, and the desk for a fault.
#[derive(Debug, Clone, Copy)]
pub struct At<'a> {
    /// The path to it.
    pub path: Path<'a>,
    /// Its row of the field table.
    pub field: &'static Field,
    /// Where a fault is laid down.
    pub desk: &'a Desk,
}

impl<'a> At<'a> {
    /// The whole of what is read.
    pub const fn root(desk: &'a Desk) -> Self {
        Self { path: Path::ROOT, field: &Field::ROOT, desk }
    }

    /// Lays down a typed fault and gives the format's error for it.
    pub fn fail<E: de::Error>(&self, error: Error) -> E {
        let message = error.to_string();
        self.desk.fault.borrow_mut().get_or_insert(error);
        E::custom(message)
    }

    /// Refuses a value of another type.
    pub fn wrong_type<E: de::Error>(&self, found: impl Into<String>, expected: &str) -> E {
        self.fail(Error::WrongType {
            field: self.path.to_string(),
            found: found.into(),
            expected: expected.to_owned(),
        })
    }

    /// Checks a number against the range of the field that is read.
    ///
    /// # Errors
    /// The format's error, with [`Error::Impossible`] on the desk.
    pub fn checked<E: de::Error>(&self, si: f64) -> Result<f64, E> {
        match check_number(si, self.field, &self.path, &mut Caveats::NONE.clone()) {
            Ok(()) => Ok(si),
            Err(error) => Err(self.fail(error)),
        }
    }

    /// Names the field in a fault of the quantity reader.
    pub fn named(&self, error: Error) -> Error {
        match error {
            Error::NotAQuantity { text, expected, reason, .. } => {
                Error::NotAQuantity { field: self.path.to_string(), text, expected, reason }
            }
            other => other,
        }
    }
}

/// Reads one value at its place.
pub(crate) struct Seed<'a, T> {
    at: At<'a>,
    value: PhantomData<T>,
}

impl<'a, T> Seed<'a, T> {
    pub(crate) const fn new(at: At<'a>) -> Self {
        Self { at, value: PhantomData }
    }
}

impl<'de, T: Value> DeserializeSeed<'de> for Seed<'_, T> {
    type Value = T;
    fn deserialize<D: Deserializer<'de>>(self, source: D) -> Result<T, D::Error> {
        T::read(source, &self.at)
    }
}

/// The half-read record that a derive declares: one slot for each field.
pub trait Slots: Default {
    /// The record that the slots are of.
    type Record;

    /// Reads the value behind the key of the field at `place`; places past the last field are second conventions.
    ///
    /// # Errors
    /// The format's error, with the typed one on the desk.
    fn put<'de, M: MapAccess<'de>>(&mut self, place: usize, map: &mut M, at: &At<'_>)
    -> Result<(), M::Error>;

    /// The record, once every key has been read.
    ///
    /// # Errors
    /// The format's error, with [`Error::Missing`] on the desk.
    fn finish<E: de::Error>(self, at: &At<'_>) -> Result<Self::Record, E>;
}

/// Reads the next value of a map into its slot, at the place of its field.
///
/// # Errors
/// The format's error, with the typed one on the desk.
pub fn put_into<'de, T: Value, M: MapAccess<'de>>(
    slot: &mut Option<T>,
    map: &mut M,
    at: &At<'_>,
    field: &'static Field,
) -> Result<(), M::Error> {
    let here = At { path: at.path.member(field.name), field, desk: at.desk };
    if slot.is_some() {
        return Err(here.fail(Error::Repeated { field: here.path.to_string() }));
    }
    *slot = Some(map.next_value_seed(Seed::new(here))?);
    Ok(())
}

/// Reads a field that is given in its second convention.
///
/// # Errors
/// The format's error, with the typed one on the desk.
pub fn put_converted<'de, T: Value, M: MapAccess<'de>>(
    slot: &mut Option<T>,
    map: &mut M,
    at: &At<'_>,
    field: &'static Field,
    also: &'static Also,
) -> Result<(), M::Error> {
    let second = At { path: at.path.member(also.name), field: &Field::ROOT, desk: at.desk };
    if slot.is_some() {
        let both = format!("{}, {}", at.path.below(field.name), second.path);
        return Err(at.fail(Error::inconsistent(both, "one or the other is accepted, not both")));
    }
    let given: T = map.next_value_seed(Seed::new(second))?;
    let converted = given.si().and_then(|si| T::from_si((also.convert)(si)));
    let value = converted.ok_or_else(|| second.wrong_type("no number", "a quantity"))?;
    let here = At { path: second.path, field, desk: at.desk };
    if let Some(si) = value.si() {
        here.checked(si)?;
    }
    *slot = Some(value);
    Ok(())
}

/// The value of a slot, or what an absent field means.
///
/// # Errors
/// The format's error, with [`Error::Missing`] on the desk, where the field is required.
pub fn take<T: Value, E: de::Error>(slot: Option<T>, at: &At<'_>, field: &'static Field) -> Result<T, E> {
    slot.or_else(T::absent).ok_or_else(|| {
        at.fail(Error::Missing {
            field: at.path.below(field.name),
            needed: field.doc.trim_end_matches('.').to_owned(),
        })
    })
}

/// Reads a record: each key is looked up as it comes, and an unknown one refused at its own place. An absent one is
/// found while the record is still open, so that the format gives its position and not that of what follows.
///
/// # Errors
/// The format's error, with the typed one on the desk.
pub fn read_record<'de, S: Slots, D: Deserializer<'de>>(
    source: D,
    at: &At<'_>,
    fields: &'static [Field],
) -> Result<S::Record, D::Error> {
    source.deserialize_map(RecordVisitor::<'_, S> { at: *at, fields, slots: PhantomData })
}

struct RecordVisitor<'a, S> {
    at: At<'a>,
    fields: &'static [Field],
    slots: PhantomData<S>,
}

impl<'de, S: Slots> Visitor<'de> for RecordVisitor<'_, S> {
    type Value = S::Record;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a table of keys and values")
    }

    fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<S::Record, M::Error> {
        let mut slots = S::default();
        while let Some(place) = map.next_key_seed(KeySeed { at: self.at, fields: self.fields })? {
            slots.put(place, &mut map, &self.at)?;
        }
        slots.finish(&self.at)
    }

    super::refuse_all_but!(map, "a table of keys and values");
}

/// Finds a key in the field table.
struct KeySeed<'a> {
    at: At<'a>,
    fields: &'static [Field],
}

impl<'de> DeserializeSeed<'de> for KeySeed<'_> {
    type Value = usize;
    fn deserialize<D: Deserializer<'de>>(self, source: D) -> Result<usize, D::Error> {
        source.deserialize_identifier(self)
    }
}

impl Visitor<'_> for KeySeed<'_> {
    type Value = usize;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a key")
    }

    fn visit_str<E: de::Error>(self, key: &str) -> Result<usize, E> {
        if let Some(place) = self.fields.iter().position(|field| field.name == key) {
            return Ok(place);
        }
        let mut also = self.fields.iter().filter_map(|field| field.also);
        if let Some(place) = also.position(|also| also.name == key) {
            return Ok(self.fields.len() + place);
        }
        let known = self
            .fields
            .iter()
            .flat_map(|field| [Some(field.name), field.also.map(|also| also.name)])
            .flatten();
        let nearest = nearest(key, known).map(str::to_owned);
        Err(self.at.fail(Error::UnknownKey { field: self.at.path.below(key), nearest }))
    }
}

/// Reads a list, entry by entry, up to its limit.
pub(crate) struct ListVisitor<'a, T> {
    pub(crate) at: At<'a>,
    pub(crate) entries: PhantomData<T>,
}

impl<'de, T: Value> Visitor<'de> for ListVisitor<'_, T> {
    type Value = Vec<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a list")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Vec<T>, A::Error> {
        let mut entries = Vec::new();
        loop {
            let here = At { path: self.at.path.entry(entries.len()), ..self.at };
            let Some(entry) = list.next_element_seed(Seed::new(here))? else { break };
            if entries.len() == LONGEST_LIST {
                return Err(self.at.fail(Error::TooLarge {
                    field: self.at.path.to_string(),
                    found: format!("more than {LONGEST_LIST} entries"),
                    accepted: format!("at most {LONGEST_LIST} entries"),
                }));
            }
            entries.push(entry);
        }
        Ok(entries)
    }

    super::refuse_all_but!(seq, "a list");
}
