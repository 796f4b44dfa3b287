//! The whole cover: its document, the review with every check, and the order sheet.
//!
//! | module | what it holds |
//! |---|---|
//! | [`document`] | one description of a cover, as types and as TOML or JSON |
//! | [`review`], [`reviewer`] | every check of a cover; the same again and again while it is worked on |
//! | [`panel`] | one panel by itself, solved: outline, layers, what holds it, loads |
//! | [`limits`] | the limits by common practice, all replaceable |
//! | [`schema`] | the documents' JSON Schema, for editors |
#![forbid(unsafe_code)]
#![cfg_attr(
    not(test),
    deny(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing,
        clippy::string_slice
    )
)]

pub mod amount;
pub mod calls;
pub mod cautions;
pub mod checks;
pub mod demand;
pub mod document;
mod held;
pub mod limits;
pub mod order_sheet;
pub mod panel;
pub mod prepared;
pub mod render;
pub mod review;
pub mod reviewer;
pub mod schema;
mod stack;
pub mod verdict;
mod worksheet;
