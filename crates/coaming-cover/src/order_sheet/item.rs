//! What a section of the order sheet is made of: parts, each with items that are known, or unknown with the reason.

use coaming::prelude::*;

use crate::amount::{Amount, Measure, Phrase};
use crate::demand::NotChecked;
use crate::limits::LimitOrigin;

/// The value of one item.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A number with its unit.
    Amount(Amount),
    /// A number that is known as a band.
    Band {
        /// The lower end, in SI units.
        low: f64,
        /// The upper end.
        high: f64,
        /// What it measures.
        measure: Measure,
    },
    /// Words.
    Words(Phrase),
    /// Places in a plane, in metres, numbered from 1.
    Places(Vec<(f64, f64)>),
    /// Not known, and why.
    Unknown(NotChecked),
}

/// One item of a line, such as `flat width`.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// What it is.
    pub label: &'static str,
    /// Its value.
    pub value: Value,
}

/// One line of a section: a part with its items.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// The part.
    pub part: String,
    /// What is to be known of it.
    pub items: Vec<Item>,
}

/// One section.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Its title.
    pub title: &'static str,
    /// Its lines.
    pub lines: Vec<Line>,
}

/// An item that the document gives, or that is unknown.
pub(super) fn given<Q: Quantity>(
    label: &'static str,
    quantity: Option<Q>,
    path: impl FnOnce() -> String,
) -> Item {
    let value = match quantity {
        Some(quantity) => Value::Amount(Amount { si: quantity.to_si(), measure: sized(Measure::of::<Q>()) }),
        None => Value::Unknown(NotChecked::needs(path())),
    };
    Item { label, value }
}

/// A time that the document gives, in hours.
pub(super) fn hours(label: &'static str, time: Option<Time>, path: impl FnOnce() -> String) -> Item {
    let measure = Measure::Quantity(&Dimension::TIME, "h");
    found(label, measure, time.map(|time| time.value).ok_or_else(|| NotChecked::needs(path())))
}

/// An item that was calculated, or the reason why not.
pub(super) fn found(label: &'static str, measure: Measure, outcome: Result<f64, NotChecked>) -> Item {
    let value = match outcome {
        Ok(si) => Value::Amount(Amount { si, measure: sized(measure) }),
        Err(why) => Value::Unknown(why),
    };
    Item { label, value }
}

/// The measure as a sheet shows it: lengths are sizes to work by.
fn sized(measure: Measure) -> Measure {
    if measure == Measure::LENGTH { Measure::Size } else { measure }
}

/// A calculated band, or the reason why there is none.
pub(super) fn band(label: &'static str, measure: Measure, outcome: Result<(f64, f64), NotChecked>) -> Item {
    let value = match outcome {
        Ok((low, high)) => Value::Band { low, high, measure },
        Err(why) => Value::Unknown(why),
    };
    Item { label, value }
}

/// Places, or the reason why they are not known.
pub(super) fn places(label: &'static str, outcome: Result<Vec<(f64, f64)>, NotChecked>) -> Item {
    Item { label, value: outcome.map_or_else(Value::Unknown, Value::Places) }
}

/// An item in words, or what is missing for it.
pub(super) fn words(label: &'static str, words: Option<String>, path: impl FnOnce() -> String) -> Item {
    let value = match words {
        Some(words) => Value::Words(words.into()),
        None => Value::Unknown(NotChecked::needs(path())),
    };
    Item { label, value }
}

/// A count, or what is missing for it.
pub(super) fn number(label: &'static str, count: Option<u32>, path: impl FnOnce() -> String) -> Item {
    words(label, count.map(|count| count.to_string()), path)
}

/// The option of a choice in plain words, or what is missing for it.
pub(super) fn option<C: Choice>(
    label: &'static str,
    choice: Option<C>,
    path: impl FnOnce() -> String,
) -> Item {
    words(label, choice.map(|choice| Choice::name(choice).replace('_', " ")), path)
}

/// An item in words that is always known.
pub(super) fn said(label: &'static str, words: impl Into<Phrase>) -> Item {
    Item { label, value: Value::Words(words.into()) }
}

/// A limit that stands behind an item, with where it comes from.
pub(super) fn limit(label: &'static str, si: f64, measure: Measure, origin: LimitOrigin) -> Item {
    let whence = if origin.replaced { "given in the document" } else { "common practice" };
    said(label, Phrase::with(format!("{{}}, {whence} (limits.{})", origin.key), [Amount { si, measure }]))
}

/// A length, for a phrase.
pub(super) fn length(si: f64) -> Amount {
    Amount { si, measure: Measure::Size }
}
