//! JSON in and out: the form in which C and other tools pass what is not flat.

use serde_json::error::Category;

use super::reading::{At, Desk, LONGEST_TEXT};
use super::value::Value;
use crate::error::Error;

/// Reads a value from JSON text.
///
/// # Errors
/// The first fault, as [`Error::InDocument`] with its line and column.
pub fn read_json<T: Value>(text: &str) -> Result<T, Error> {
    short_enough(text)?;
    let desk = Desk::default();
    let mut source = serde_json::Deserializer::from_str(text);
    let value = T::read(&mut source, &At::root(&desk)).and_then(|value| source.end().map(|()| value));
    value.map_err(|error| {
        let (line, column) = (error.line() as u64, error.column() as u64);
        let reason = match error.classify() {
            Category::Eof if text.trim().is_empty() => "the text is empty".to_owned(),
            _ => error.to_string(),
        };
        let cause = desk.take().unwrap_or(Error::Unreadable { reason });
        Error::InDocument { line: line.max(1), column: column.max(1), cause: Box::new(cause) }
    })
}

/// Refuses a text that is too long to be read.
///
/// # Errors
/// [`Error::TooLarge`].
pub fn short_enough(text: &str) -> Result<(), Error> {
    if text.len() > LONGEST_TEXT {
        return Err(Error::TooLarge {
            field: "the text".to_owned(),
            found: format!("{} bytes", text.len()),
            accepted: format!("at most {LONGEST_TEXT} bytes (16 MiB)"),
        });
    }
    Ok(())
}
