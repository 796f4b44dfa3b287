//! The declaration of a record, written once: each field's name, doc line, kind and ranges, from which the readers,
//! writers and checks of every language follow.

mod check;
mod choice;
mod fields;
mod json;
mod kind;
pub mod nearest;
mod node;
mod one_of;
mod outside;
mod path;
mod reading;
mod value;
mod visitors;

#[cfg(test)]
mod tests;

pub use check::{accepted, check_number, shown};
pub use choice::{Choice, not_a_number_of, read_choice};
pub use fields::Fields;
pub use json::{read_json, short_enough};
pub use kind::{Also, Alternatives, Choices, Field, Kind, Record, UNBOUNDED};
pub use node::Node;
pub use one_of::{OneOf, path_behind, read_behind, read_one_of};
pub use outside::outside_tested;
pub use path::Path;
pub use reading::{At, Desk, LONGEST_LIST, LONGEST_TEXT, Slots, put_converted, put_into, read_record, take};
pub use value::Value;
pub(crate) use value::quantity_value;
pub(crate) use visitors::{QuantityVisitor, refuse_all_but};
