//! Choices: plain enums whose options are names in documents and numbers in C.

use core::fmt;
use serde::de::Deserializer;

use super::kind::Choices;
use super::nearest::nearest;
use super::reading::At;
use crate::error::Error;

/// A plain enum, derived.
pub trait Choice: Copy + fmt::Debug + Send + Sync + 'static {
    /// Its options, in the order of their numbers.
    const CHOICES: &'static Choices;

    /// The option's number, as C holds it.
    fn number(self) -> u32;

    /// The option of a number.
    fn from_number(number: u32) -> Option<Self>;

    /// The option's name, as documents hold it.
    fn name(self) -> &'static str {
        let place = usize::try_from(self.number()).unwrap_or(usize::MAX);
        Self::CHOICES.options.get(place).map_or("", |option| option.0)
    }

    /// The option of a name.
    fn from_name(name: &str) -> Option<Self> {
        let place = Self::CHOICES.options.iter().position(|option| option.0 == name)?;
        Self::from_number(u32::try_from(place).ok()?)
    }
}

/// Reads a choice by name.
///
/// # Errors
/// The format's error, with [`Error::NotAnOption`] on the desk.
pub fn read_choice<'de, C: Choice, D: Deserializer<'de>>(source: D, at: &At<'_>) -> Result<C, D::Error> {
    source.deserialize_any(ChoiceVisitor { at: *at, choice: core::marker::PhantomData })
}

struct ChoiceVisitor<'a, C> {
    at: At<'a>,
    choice: core::marker::PhantomData<C>,
}

impl<'de, C: Choice> serde::de::Visitor<'de> for ChoiceVisitor<'_, C> {
    type Value = C;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "one of {}", options::<C>())
    }

    fn visit_str<E: serde::de::Error>(self, name: &str) -> Result<C, E> {
        C::from_name(name).ok_or_else(|| {
            self.at.fail(Error::NotAnOption {
                field: self.at.path.to_string(),
                value: name.chars().take(60).collect(),
                accepted: options::<C>(),
                nearest: nearest(name, C::CHOICES.options.iter().map(|option| option.0)).map(str::to_owned),
            })
        })
    }

    super::refuse_all_but!(str, "the name of an option");
}

/// The options of a choice in words, the first forty of them.
fn options<C: Choice>() -> String {
    let names: Vec<&str> = C::CHOICES.options.iter().take(40).map(|option| option.0).collect();
    let more = C::CHOICES.options.len().saturating_sub(names.len());
    if more == 0 { names.join(", ") } else { format!("{} and {more} more", names.join(", ")) }
}

/// A number that is no option of a choice: C alone can give one.
pub fn not_a_number_of<C: Choice>(field: &str, number: u32) -> Error {
    Error::NotAnOption {
        field: field.to_owned(),
        value: number.to_string(),
        accepted: format!("0 to {} ({})", C::CHOICES.options.len().saturating_sub(1), options::<C>()),
        nearest: None,
    }
}
