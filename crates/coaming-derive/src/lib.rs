//! The derives behind coaming: a field's doc line, type and range become one row of the field table, and from that
//! table follow the reader, the writer and the check.
//!
//! A type, field or option without a doc comment does not compile.
#![forbid(unsafe_code)]

mod attributes;
mod choice;
mod fields;
mod one_of;

use proc_macro::TokenStream;
use syn::{DeriveInput, parse_macro_input};

/// Makes a record of a struct with named fields.
///
/// Attributes of a field: `#[possible(a..=b)]`, `#[tested(a..b)]` (SI numbers), `#[shown_in("MPa")]`,
/// `#[also(name, conversion)]`.
#[proc_macro_derive(Fields, attributes(possible, tested, shown_in, also))]
pub fn derive_fields(input: TokenStream) -> TokenStream {
    let input = parse_macro_input!(input as DeriveInput);
    fields::derive(&input).unwrap_or_else(|error| error.to_compile_error()).into()
}

/// Makes a choice of a plain enum; an option is the variant's name in snake case, or `#[option("M2.5")]`.
#[proc_macro_derive(Choice, attributes(option))]
pub fn derive_choice(input: TokenStream) -> TokenStream {
    let input = parse_macro_input!(input as DeriveInput);
    choice::derive(&input).unwrap_or_else(|error| error.to_compile_error()).into()
}

/// Makes alternatives of an enum whose every variant holds one record.
#[proc_macro_derive(OneOf, attributes(option))]
pub fn derive_one_of(input: TokenStream) -> TokenStream {
    let input = parse_macro_input!(input as DeriveInput);
    one_of::derive(&input).unwrap_or_else(|error| error.to_compile_error()).into()
}
