//! Reviews and order sheets as text, Markdown and JSON, solved panels as text and JSON: the same content in the same order.

mod alike;
mod json;
mod layout;
mod markdown;
mod order_json;
mod order_text;
mod panel;
mod text;
mod words;

#[cfg(test)]
mod by_hand_tests;

pub use json::review_json;
pub use markdown::{order_sheet_markdown, review_markdown};
pub use order_json::order_sheet_json;
pub use order_text::order_sheet_text;
pub use panel::{panel_json, panel_text};
pub use text::{Detail, review_text};
#[cfg(test)]
pub(crate) use words::finds;
