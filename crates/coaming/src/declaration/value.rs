//! [`Value`]: what every field type can do, and the plain types that have it.

use core::fmt;
use core::marker::PhantomData;
use serde::de::{self, Deserializer, Visitor};

use super::check::check_number;
use super::kind::{Field, Kind};
use super::node::Node;
use super::path::Path;
use super::reading::{At, ListVisitor};
use crate::caveat::Caveats;
use crate::error::Error;
use crate::quantity::read_number;

/// A type that a field can have.
pub trait Value: Clone + fmt::Debug + Send + Sync + 'static {
    /// What it is, as constant data.
    const KIND: Kind;

    /// Reads it from a document or a node; numbers are checked against the field's range at once.
    ///
    /// # Errors
    /// The format's error, with the typed one on the desk.
    fn read<'de, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<Self, D::Error>;

    /// Writes it, quantities in the field's unit.
    fn write(&self, field: &'static Field) -> Node;

    /// The number in SI units: quantities and plain numbers only.
    fn si(&self) -> Option<f64> {
        None
    }

    /// From a number in SI units: quantities and plain numbers only.
    fn from_si(_si: f64) -> Option<Self> {
        None
    }

    /// What an absent field means: nothing, unless the type is optional.
    fn absent() -> Option<Self> {
        None
    }

    /// Checks it against the field's ranges; records check their own table, lists each entry.
    ///
    /// # Errors
    /// The first fault, with its path.
    fn check_within(
        &self,
        _field: &'static Field,
        _path: &Path<'_>,
        _caveats: &mut Caveats,
    ) -> Result<(), Error> {
        Ok(())
    }
}

/// The visitor methods that refuse every type but the named one.
macro_rules! refuse_all_but {
    (@ bool $expected:expr) => {
        fn visit_bool<E: serde::de::Error>(self, found: bool) -> Result<Self::Value, E> {
            Err(self.at.wrong_type(format!("`{found}`"), $expected))
        }
    };
    (@ number $expected:expr) => {
        fn visit_i64<E: serde::de::Error>(self, found: i64) -> Result<Self::Value, E> {
            Err(self.at.wrong_type(format!("`{found}`"), $expected))
        }
        fn visit_u64<E: serde::de::Error>(self, found: u64) -> Result<Self::Value, E> {
            Err(self.at.wrong_type(format!("`{found}`"), $expected))
        }
        fn visit_f64<E: serde::de::Error>(self, found: f64) -> Result<Self::Value, E> {
            Err(self.at.wrong_type(format!("`{found}`"), $expected))
        }
    };
    (@ str $expected:expr) => {
        fn visit_str<E: serde::de::Error>(self, found: &str) -> Result<Self::Value, E> {
            let short: String = found.chars().take(60).collect();
            Err(self.at.wrong_type(format!("`{short}`"), $expected))
        }
    };
    (@ bytes $expected:expr) => {
        fn visit_bytes<E: serde::de::Error>(self, _: &[u8]) -> Result<Self::Value, E> {
            Err(self.at.wrong_type("a quantity", $expected))
        }
    };
    (@ unit $expected:expr) => {
        fn visit_unit<E: serde::de::Error>(self) -> Result<Self::Value, E> {
            Err(self.at.wrong_type("nothing", $expected))
        }
    };
    (@ seq $expected:expr) => {
        fn visit_seq<A: serde::de::SeqAccess<'de>>(self, _: A) -> Result<Self::Value, A::Error> {
            Err(self.at.wrong_type("a list", $expected))
        }
    };
    (@ map $expected:expr) => {
        fn visit_map<A: serde::de::MapAccess<'de>>(self, _: A) -> Result<Self::Value, A::Error> {
            Err(self.at.wrong_type("a table", $expected))
        }
    };
    (@@ $expected:expr; $($kind:ident)+) => { $( $crate::declaration::refuse_all_but!(@ $kind $expected); )+ };
    (map, $e:expr) => { $crate::declaration::refuse_all_but!(@@ $e; bool number str bytes unit seq); };
    (seq, $e:expr) => { $crate::declaration::refuse_all_but!(@@ $e; bool number str bytes unit map); };
    (str, $e:expr) => { $crate::declaration::refuse_all_but!(@@ $e; bool number bytes unit seq map); };
    (bool, $e:expr) => { $crate::declaration::refuse_all_but!(@@ $e; number str bytes unit seq map); };
    (number, $e:expr) => { $crate::declaration::refuse_all_but!(@@ $e; bool bytes unit seq map); };
    (quantity, $e:expr) => { $crate::declaration::refuse_all_but!(@@ $e; bool unit seq map); };
}
pub(crate) use refuse_all_but;

/// Reads a quantity: from text with a unit, or from eight bytes that hold it in SI units.
pub(crate) struct QuantityVisitor<'a> {
    pub(crate) at: At<'a>,
    pub(crate) dimension: &'static crate::quantity::Dimension,
}

impl QuantityVisitor<'_> {
    fn bare<E: de::Error>(&self, found: String) -> E {
        self.at.fail(Error::NotAQuantity {
            field: self.at.path.to_string(),
            text: found,
            expected: format!("a {} such as \"{}\"", self.dimension.name, self.dimension.example),
            reason: "it needs a unit".to_owned(),
        })
    }
}

impl<'de> Visitor<'de> for QuantityVisitor<'_> {
    type Value = f64;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "a {} such as {}", self.dimension.name, self.dimension.example)
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<f64, E> {
        match crate::quantity::read(text, self.dimension) {
            Ok(si) => self.at.checked(si),
            Err(error) => Err(self.at.fail(self.at.named(error))),
        }
    }

    fn visit_bytes<E: de::Error>(self, bytes: &[u8]) -> Result<f64, E> {
        match bytes.try_into() {
            Ok(eight) => self.at.checked(f64::from_le_bytes(eight)),
            Err(_) => Err(self.at.wrong_type("bytes", "a quantity as text")),
        }
    }

    fn visit_i64<E: de::Error>(self, found: i64) -> Result<f64, E> {
        Err(self.bare(found.to_string()))
    }

    fn visit_u64<E: de::Error>(self, found: u64) -> Result<f64, E> {
        Err(self.bare(found.to_string()))
    }

    fn visit_f64<E: de::Error>(self, found: f64) -> Result<f64, E> {
        Err(self.bare(found.to_string()))
    }

    refuse_all_but!(quantity, "a quantity as text, such as \"3 mm\"");
}

/// [`Value`] for a quantity type.
macro_rules! quantity_value {
    ($name:ident) => {
        impl $crate::declaration::Value for $name {
            const KIND: $crate::declaration::Kind =
                $crate::declaration::Kind::Quantity(<$name as $crate::quantity::Quantity>::DIMENSION);

            fn read<'de, D: serde::de::Deserializer<'de>>(
                source: D,
                at: &$crate::declaration::At<'_>,
            ) -> Result<Self, D::Error> {
                let dimension = <$name as $crate::quantity::Quantity>::DIMENSION;
                source
                    .deserialize_any($crate::declaration::QuantityVisitor { at: *at, dimension })
                    .map($crate::quantity::Quantity::from_si)
            }

            fn write(&self, field: &'static $crate::declaration::Field) -> $crate::declaration::Node {
                let dimension = <$name as $crate::quantity::Quantity>::DIMENSION;
                let unit = if field.unit.is_empty() { dimension.shop } else { field.unit };
                $crate::declaration::Node::Quantity { si: self.value, dimension, unit }
            }

            #[inline]
            fn si(&self) -> Option<f64> {
                Some(self.value)
            }

            #[inline]
            fn from_si(si: f64) -> Option<Self> {
                Some($crate::quantity::Quantity::from_si(si))
            }

            #[inline(always)]
            fn check_within(
                &self,
                field: &'static $crate::declaration::Field,
                path: &$crate::declaration::Path<'_>,
                caveats: &mut $crate::Caveats,
            ) -> Result<(), $crate::Error> {
                $crate::declaration::check_number(self.value, field, path, caveats)
            }
        }
    };
}
pub(crate) use quantity_value;

struct NumberVisitor<'a> {
    at: At<'a>,
}

impl<'de> Visitor<'de> for NumberVisitor<'_> {
    type Value = f64;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a number")
    }

    fn visit_f64<E: de::Error>(self, number: f64) -> Result<f64, E> {
        self.at.checked(number)
    }

    fn visit_i64<E: de::Error>(self, number: i64) -> Result<f64, E> {
        self.at.checked(number as f64)
    }

    fn visit_u64<E: de::Error>(self, number: u64) -> Result<f64, E> {
        self.at.checked(number as f64)
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<f64, E> {
        match read_number(text) {
            Ok(number) => self.at.checked(number),
            Err(error) => Err(self.at.fail(self.at.named(error))),
        }
    }

    refuse_all_but!(number, "a plain number");
}

impl Value for f64 {
    const KIND: Kind = Kind::Number;

    fn read<'de, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<Self, D::Error> {
        source.deserialize_any(NumberVisitor { at: *at })
    }

    fn write(&self, _: &'static Field) -> Node {
        Node::Number(*self)
    }

    #[inline]
    fn si(&self) -> Option<f64> {
        Some(*self)
    }

    #[inline]
    fn from_si(si: f64) -> Option<Self> {
        Some(si)
    }

    #[inline(always)]
    fn check_within(
        &self,
        field: &'static Field,
        path: &Path<'_>,
        caveats: &mut Caveats,
    ) -> Result<(), Error> {
        check_number(*self, field, path, caveats)
    }
}

impl Value for u32 {
    const KIND: Kind = Kind::Count;

    fn read<'de, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<Self, D::Error> {
        let number = source.deserialize_any(NumberVisitor { at: *at })?;
        if number.fract() == 0.0 && (0.0..=f64::from(Self::MAX)).contains(&number) {
            Ok(number as Self)
        } else {
            Err(at.wrong_type(format!("`{number}`"), "a whole number of things"))
        }
    }

    fn write(&self, _: &'static Field) -> Node {
        Node::Count(u64::from(*self))
    }

    fn check_within(
        &self,
        field: &'static Field,
        path: &Path<'_>,
        caveats: &mut Caveats,
    ) -> Result<(), Error> {
        check_number(f64::from(*self), field, path, caveats)
    }
}

struct FlagVisitor<'a> {
    at: At<'a>,
}

impl<'de> Visitor<'de> for FlagVisitor<'_> {
    type Value = bool;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("true or false")
    }

    fn visit_bool<E: de::Error>(self, flag: bool) -> Result<bool, E> {
        Ok(flag)
    }

    refuse_all_but!(bool, "true or false");
}

impl Value for bool {
    const KIND: Kind = Kind::Flag;

    fn read<'de, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<Self, D::Error> {
        source.deserialize_any(FlagVisitor { at: *at })
    }

    fn write(&self, _: &'static Field) -> Node {
        Node::Flag(*self)
    }
}

struct TextVisitor<'a> {
    at: At<'a>,
}

impl<'de> Visitor<'de> for TextVisitor<'_> {
    type Value = String;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("words in quotes")
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<String, E> {
        Ok(text.to_owned())
    }

    refuse_all_but!(str, "words in quotes");
}

impl Value for String {
    const KIND: Kind = Kind::Text;

    fn read<'de, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<Self, D::Error> {
        source.deserialize_any(TextVisitor { at: *at })
    }

    fn write(&self, _: &'static Field) -> Node {
        Node::Text(self.clone())
    }
}

/// Reads a value that may be written as null.
struct OptionVisitor<'a, T> {
    at: At<'a>,
    value: PhantomData<T>,
}

impl<'de, T: Value> Visitor<'de> for OptionVisitor<'_, T> {
    type Value = Option<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value or nothing")
    }

    fn visit_none<E: de::Error>(self) -> Result<Option<T>, E> {
        Ok(None)
    }

    fn visit_unit<E: de::Error>(self) -> Result<Option<T>, E> {
        Ok(None)
    }

    fn visit_some<D: Deserializer<'de>>(self, source: D) -> Result<Option<T>, D::Error> {
        T::read(source, &self.at).map(Some)
    }
}

impl<T: Value> Value for Option<T> {
    const KIND: Kind = Kind::Optional(&T::KIND);

    fn read<'de, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<Self, D::Error> {
        source.deserialize_option(OptionVisitor { at: *at, value: PhantomData })
    }

    fn write(&self, field: &'static Field) -> Node {
        self.as_ref().map_or(Node::Absent, |value| value.write(field))
    }

    #[inline]
    fn si(&self) -> Option<f64> {
        self.as_ref().and_then(Value::si)
    }

    #[inline]
    fn from_si(si: f64) -> Option<Self> {
        T::from_si(si).map(Some)
    }

    fn absent() -> Option<Self> {
        Some(None)
    }

    #[inline(always)]
    fn check_within(
        &self,
        field: &'static Field,
        path: &Path<'_>,
        caveats: &mut Caveats,
    ) -> Result<(), Error> {
        match self {
            Some(value) => value.check_within(field, path, caveats),
            None => Ok(()),
        }
    }
}

impl<T: Value> Value for Vec<T> {
    const KIND: Kind = Kind::List(&T::KIND);

    fn read<'de, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<Self, D::Error> {
        source.deserialize_any(ListVisitor { at: *at, entries: PhantomData })
    }

    fn write(&self, field: &'static Field) -> Node {
        Node::List(self.iter().map(|entry| entry.write(field)).collect())
    }

    fn check_within(
        &self,
        field: &'static Field,
        path: &Path<'_>,
        caveats: &mut Caveats,
    ) -> Result<(), Error> {
        if self.len() > super::reading::LONGEST_LIST {
            return Err(Error::TooLarge {
                field: path.to_string(),
                found: format!("{} entries", self.len()),
                accepted: format!("at most {} entries", super::reading::LONGEST_LIST),
            });
        }
        for (place, entry) in self.iter().enumerate() {
            entry.check_within(field, &path.entry(place), caveats)?;
        }
        Ok(())
    }
}
