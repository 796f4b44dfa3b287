//! Alternatives: an enum whose every variant holds one record. In a document the variant is an outer key:
//! `edge = { elastic = { stiffness = "2 N/mm" } }`.

use core::fmt;
use core::marker::PhantomData;
use serde::de::{self, DeserializeSeed, Deserializer, MapAccess, Visitor};

use super::kind::{Alternatives, Field};
use super::nearest::nearest;
use super::path::Path;
use super::reading::At;
use super::value::Value;
use crate::error::Error;

/// An enum with data, derived.
pub trait OneOf: Value {
    /// Its alternatives.
    const ALTERNATIVES: &'static Alternatives;

    /// Reads the record behind the key of the alternative at `place`.
    ///
    /// # Errors
    /// The format's error, with the typed one on the desk.
    fn read_alternative<'de, M: MapAccess<'de>>(
        place: usize,
        map: &mut M,
        at: &At<'_>,
    ) -> Result<Self, M::Error>;
}

/// Reads the value behind an alternative's key.
///
/// # Errors
/// The format's error, with the typed one on the desk.
pub fn read_behind<'de, T: Value, M: MapAccess<'de>>(
    map: &mut M,
    at: &At<'_>,
    name: &'static str,
) -> Result<T, M::Error> {
    let here: At<'_> = At { path: at.path.member(name), field: &Field::ROOT, desk: at.desk };
    map.next_value_seed(super::reading::Seed::new(here))
}

/// Reads one of several alternatives.
///
/// # Errors
/// The format's error, with the typed one on the desk.
pub fn read_one_of<'de, T: OneOf, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<T, D::Error> {
    source.deserialize_map(OneOfVisitor { at: *at, value: PhantomData })
}

struct OneOfVisitor<'a, T> {
    at: At<'a>,
    value: PhantomData<T>,
}

impl<'de, T: OneOf> Visitor<'de> for OneOfVisitor<'_, T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "a table with one key of {}", keys(T::ALTERNATIVES))
    }

    fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<T, M::Error> {
        let key = AlternativeSeed { at: self.at, alternatives: T::ALTERNATIVES };
        let Some(place) = map.next_key_seed(key)? else {
            return Err(self
                .at
                .wrong_type("an empty table", &format!("one key of {}", keys(T::ALTERNATIVES))));
        };
        let value = T::read_alternative(place, &mut map, &self.at)?;
        let again = AlternativeSeed { at: self.at, alternatives: T::ALTERNATIVES };
        if map.next_key_seed(again)?.is_some() {
            return Err(self
                .at
                .fail(Error::inconsistent(self.at.path.to_string(), "one key is accepted, not two")));
        }
        Ok(value)
    }

    super::refuse_all_but!(map, "a table with one key");
}

fn keys(alternatives: &Alternatives) -> String {
    let names: Vec<&str> = alternatives.options.iter().map(|option| option.0).collect();
    names.join(", ")
}

struct AlternativeSeed<'a> {
    at: At<'a>,
    alternatives: &'static Alternatives,
}

impl<'de> DeserializeSeed<'de> for AlternativeSeed<'_> {
    type Value = usize;
    fn deserialize<D: Deserializer<'de>>(self, source: D) -> Result<usize, D::Error> {
        source.deserialize_identifier(self)
    }
}

impl Visitor<'_> for AlternativeSeed<'_> {
    type Value = usize;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a key")
    }

    fn visit_str<E: de::Error>(self, key: &str) -> Result<usize, E> {
        let known = self.alternatives.options.iter().map(|option| option.0);
        known.clone().position(|name| name == key).ok_or_else(|| {
            self.at.fail(Error::NotAnOption {
                field: self.at.path.to_string(),
                value: key.chars().take(60).collect(),
                accepted: keys(self.alternatives),
                nearest: nearest(key, known).map(str::to_owned),
            })
        })
    }
}

/// The path of an alternative's record.
pub fn path_behind<'a>(path: &'a Path<'a>, name: &'static str) -> Path<'a> {
    path.member(name)
}
