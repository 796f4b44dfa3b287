//! The visitors that read plain values: each takes what it can and refuses the rest with a typed fault.

use core::fmt;
use core::marker::PhantomData;
use serde::de::{self, Deserializer, Visitor};

use super::reading::At;
use super::value::Value;
use crate::error::Error;
use crate::quantity::read_number;

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

/// Reads a plain number, also from text such as `40 %`.
pub(super) struct NumberVisitor<'a> {
    pub(super) at: At<'a>,
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

/// Reads yes or no.
pub(super) struct FlagVisitor<'a> {
    pub(super) at: At<'a>,
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

/// Reads words.
pub(super) struct TextVisitor<'a> {
    pub(super) at: At<'a>,
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

/// Reads a value that may be written as null.
pub(super) struct OptionVisitor<'a, T> {
    pub(super) at: At<'a>,
    pub(super) value: PhantomData<T>,
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
