//! A document from text and back.

use coaming::declaration::{At, Desk, Field, read_json, short_enough};
use coaming::prelude::*;

use super::Cover;

/// The form of a document's text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// TOML.
    Toml,
    /// JSON.
    Json,
}

impl Form {
    /// JSON where the text begins with a brace, TOML otherwise.
    pub fn of(text: &str) -> Self {
        if unmarked(text).trim_start().starts_with('{') { Self::Json } else { Self::Toml }
    }
}

/// Reads a document and checks the relations within it.
///
/// # Errors
/// The first fault of syntax, key, unit or range, as [`Error::InDocument`] with line and column; for a document that
/// reads, the first of its [`problems`](Cover::problems).
pub fn read(text: &str, form: Form) -> Result<Cover, Error> {
    let cover: Cover = read_as(text, form)?;
    match cover.problems().into_iter().next() {
        Some(problem) => Err(problem),
        None => Ok(cover),
    }
}

/// Reads a document of any record.
pub(crate) fn read_as<T: Value>(text: &str, form: Form) -> Result<T, Error> {
    short_enough(text)?;
    let text = unmarked(text);
    match form {
        Form::Json => read_json(text),
        Form::Toml => read_toml(text),
    }
}

/// The text without the byte-order mark that some editors put before it.
fn unmarked(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

fn read_toml<T: Value>(text: &str) -> Result<T, Error> {
    if text.trim().is_empty() {
        return Err(located(text, 0, Error::Unreadable { reason: "the text is empty".to_owned() }));
    }
    let source = toml::Deserializer::parse(text).map_err(|error| unreadable(text, &error))?;
    let desk = Desk::default();
    T::read(source, &At::root(&desk)).map_err(|error| match desk.take() {
        Some(fault) => located(text, error.span().map_or(0, |span| span.start), fault),
        None => unreadable(text, &error),
    })
}

fn unreadable(text: &str, error: &toml::de::Error) -> Error {
    let reason = error.message().replace('\n', ", ");
    located(text, error.span().map_or(0, |span| span.start), Error::Unreadable { reason })
}

/// A fault with the line and column of a byte of the text.
fn located(text: &str, byte: usize, cause: Error) -> Error {
    let before = text.get(..byte).unwrap_or(text);
    let line = before.bytes().filter(|byte| *byte == b'\n').count() as u64 + 1;
    let column = before.rsplit('\n').next().map_or(0, |last| last.chars().count()) as u64 + 1;
    Error::InDocument { line, column, cause: Box::new(cause) }
}

/// The document as JSON: reads back to equal types.
///
/// # Errors
/// [`Error::Unreadable`] where the text cannot be written.
pub fn to_json(cover: &Cover) -> Result<String, Error> {
    serde_json::to_string_pretty(&cover.write(&Field::ROOT))
        .map_err(|error| Error::Unreadable { reason: error.to_string() })
}

/// The document as TOML: reads back to equal types.
///
/// # Errors
/// [`Error::Unreadable`] where the text cannot be written.
pub fn to_toml(cover: &Cover) -> Result<String, Error> {
    toml::to_string(&cover.write(&Field::ROOT))
        .map_err(|error| Error::Unreadable { reason: error.to_string() })
}
