//! [`Value`]: what every field type can do, and the plain types that have it.

use core::fmt;
use core::marker::PhantomData;
use serde::de::Deserializer;

use super::check::check_number;
use super::kind::{Field, Kind};
use super::node::Node;
use super::path::Path;
use super::reading::{At, ListVisitor};
use super::visitors::{FlagVisitor, NumberVisitor, OptionVisitor, TextVisitor};
use crate::caveat::Caveats;
use crate::error::Error;

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

impl Value for bool {
    const KIND: Kind = Kind::Flag;

    fn read<'de, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<Self, D::Error> {
        source.deserialize_any(FlagVisitor { at: *at })
    }

    fn write(&self, _: &'static Field) -> Node {
        Node::Flag(*self)
    }
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
