//! A value outside its type: what crosses to Python, and what is written as JSON.

use serde::de::{self, IntoDeserializer, value};
use serde::ser::{Serialize, SerializeMap, SerializeSeq, Serializer};
use std::borrow::Cow;

use crate::quantity::{Dimension, for_data};

/// A value of any kind.
#[derive(Debug, Clone, PartialEq)]
pub enum Node {
    /// An optional value that is not there.
    Absent,
    /// Yes or no.
    Flag(bool),
    /// A whole number.
    Count(u64),
    /// A plain number.
    Number(f64),
    /// A quantity already in SI units, whose dimension the reader knows.
    Si(f64),
    /// A quantity in SI units, with the dimension and the unit that it is shown in.
    Quantity {
        /// The value in SI units.
        si: f64,
        /// Its dimension.
        dimension: &'static Dimension,
        /// The unit that it is shown in.
        unit: &'static str,
    },
    /// Words, a choice, or a quantity as text.
    Text(String),
    /// A list.
    List(Vec<Node>),
    /// A record, in the order of its fields.
    Record(Vec<(Cow<'static, str>, Node)>),
}

impl Node {
    /// The entry of a record under a key.
    pub fn entry(&self, key: &str) -> Option<&Self> {
        match self {
            Self::Record(entries) => entries.iter().find(|entry| entry.0 == key).map(|entry| &entry.1),
            _ => None,
        }
    }

    /// The number behind a quantity (in SI units) or a plain number.
    pub fn si(&self) -> Option<f64> {
        match self {
            Self::Si(si) | Self::Quantity { si, .. } | Self::Number(si) => Some(*si),
            _ => None,
        }
    }
}

/// Data form: quantities as text that reads back to the same bits; what is absent is left out.
impl Serialize for Node {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Absent => serializer.serialize_none(),
            Self::Flag(flag) => serializer.serialize_bool(*flag),
            Self::Count(count) => serializer.serialize_u64(*count),
            Self::Number(number) | Self::Si(number) => serializer.serialize_f64(*number),
            Self::Quantity { si, dimension, unit } => {
                serializer.serialize_str(&for_data(*si, dimension, unit))
            }
            Self::Text(text) => serializer.serialize_str(text),
            Self::List(entries) => {
                let mut list = serializer.serialize_seq(Some(entries.len()))?;
                for entry in entries {
                    list.serialize_element(entry)?;
                }
                list.end()
            }
            Self::Record(entries) => {
                let mut map = serializer.serialize_map(None)?;
                for (key, entry) in entries {
                    if *entry != Self::Absent {
                        map.serialize_entry(key, entry)?;
                    }
                }
                map.end()
            }
        }
    }
}

/// A node is read by the same visitors as a text, so that every language is refused in the same words. A quantity in
/// SI units travels as its eight bytes, which no text format can produce.
impl<'de> de::Deserializer<'de> for Node {
    type Error = value::Error;

    fn deserialize_any<V: de::Visitor<'de>>(self, visitor: V) -> Result<V::Value, Self::Error> {
        match self {
            Self::Absent => visitor.visit_unit(),
            Self::Flag(flag) => visitor.visit_bool(flag),
            Self::Count(count) => visitor.visit_u64(count),
            Self::Number(number) => visitor.visit_f64(number),
            Self::Si(si) | Self::Quantity { si, .. } => visitor.visit_bytes(&si.to_le_bytes()),
            Self::Text(text) => visitor.visit_string(text),
            Self::List(entries) => visitor.visit_seq(value::SeqDeserializer::new(entries.into_iter())),
            Self::Record(entries) => visitor.visit_map(value::MapDeserializer::new(
                entries.into_iter().map(|(key, entry)| (key.into_owned(), entry)),
            )),
        }
    }

    fn deserialize_option<V: de::Visitor<'de>>(self, visitor: V) -> Result<V::Value, Self::Error> {
        match self {
            Self::Absent => visitor.visit_none(),
            some => visitor.visit_some(some),
        }
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf unit unit_struct
        newtype_struct seq tuple tuple_struct map struct enum identifier ignored_any
    }
}

impl<'de> IntoDeserializer<'de, value::Error> for Node {
    type Deserializer = Self;
    fn into_deserializer(self) -> Self {
        self
    }
}
