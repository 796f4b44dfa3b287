//! Reviews and order sheets as text and JSON: the same content in the same order.

mod json;
mod layout;
mod text;
mod words;

pub use json::review_json;
pub use text::{Detail, review_text};
