//! The documents' JSON Schema (2020-12), made from the same field tables that read them: for editors, which then name
//! each key, its unit and its range as one writes, and mark what is wrong.
//!
//! What follows from two fields together, a polygon that crosses itself and a name that nothing bears are for the reader
//! to find; so is a unit of another dimension.

use std::borrow::Cow;

use coaming::declaration::{
    Alternatives, Choices, Field, Fields, Kind, LONGEST_LIST, Node, Record, UNBOUNDED, accepted,
};
use coaming::prelude::*;

use crate::document::Cover;
use crate::panel::PanelProblem;

/// A document that has a schema.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Described {
    /// The document of a cover.
    Cover,
    /// The document of one panel.
    Panel,
}

/// The schema of a document, as JSON text.
///
/// # Errors
/// [`Error::Unreadable`] where it cannot be written.
pub fn schema(of: Described) -> Result<String, Error> {
    let node = match of {
        Described::Cover => document(Cover::RECORD),
        Described::Panel => document(PanelProblem::RECORD),
    };
    serde_json::to_string_pretty(&node).map_err(|error| Error::Unreadable { reason: error.to_string() })
}

/// A plain number as text: a decimal, a fraction or per cent, without a unit.
const NUMBER: &str = r"^\s*[-+]?[0-9.][-+0-9./eE ]*%?\s*$";

/// A quantity as text: a number, and behind it what is no part of one, its unit.
const QUANTITY: &str = r"^\s*[-+]?[0-9.].*[^-+0-9.,/eE\s]";

type Entries = Vec<(Cow<'static, str>, Node)>;

fn entry(key: &'static str, node: Node) -> (Cow<'static, str>, Node) {
    (Cow::Borrowed(key), node)
}

fn text(words: impl Into<String>) -> Node {
    Node::Text(words.into())
}

fn texts<T: Into<String>>(words: impl IntoIterator<Item = T>) -> Node {
    Node::List(words.into_iter().map(|word| text(word)).collect())
}

/// A whole document: its own record, and every other one under `$defs`.
fn document(record: &'static Record) -> Node {
    let mut defined = Vec::new();
    let mut entries = vec![
        entry("$schema", text("https://json-schema.org/draft/2020-12/schema")),
        entry("title", text(record.name)),
    ];
    entries.extend(of_record(record, &mut defined));
    entries.push(entry("$defs", Node::Record(defined)));
    Node::Record(entries)
}

/// Defines a named type once, and gives the reference to it.
fn reference(
    name: &'static str,
    defined: &mut Entries,
    make: impl FnOnce(&mut Entries) -> Entries,
) -> Entries {
    if !defined.iter().any(|known| known.0 == name) {
        // The place is taken before what it refers to is defined, so that the order is that of the document.
        let place = defined.len();
        defined.push(entry(name, Node::Absent));
        let made = Node::Record(make(defined));
        if let Some(known) = defined.get_mut(place) {
            known.1 = made;
        }
    }
    vec![entry("$ref", text(format!("#/$defs/{name}")))]
}

fn of_record(record: &'static Record, defined: &mut Entries) -> Entries {
    let mut properties = Entries::new();
    let mut required = Vec::new();
    let mut rules = Vec::new();
    for field in record.fields {
        let is_required = !matches!(field.kind, Kind::Optional(_));
        properties.push(entry(field.name, of_field(field, &field.kind, describe(field), defined)));
        match field.also {
            None if is_required => required.push(field.name),
            None => {}
            Some(also) => {
                let words = format!("Another convention for `{}`: give one of the two.", field.name);
                // Its own range follows from the field's, and is for the reader to check.
                let other = Field { name: also.name, possible: UNBOUNDED, tested: UNBOUNDED, ..*field };
                properties.push(entry(also.name, of_field(&other, &field.kind, words, defined)));
                let one = |name| Node::Record(vec![entry("required", texts([name]))]);
                let both = Node::Record(vec![entry("required", texts([field.name, also.name]))]);
                if is_required {
                    let either = Node::List(vec![one(field.name), one(also.name)]);
                    rules.push(Node::Record(vec![entry("oneOf", either)]));
                } else {
                    rules.push(Node::Record(vec![entry("not", both)]));
                }
            }
        }
    }
    let mut entries = vec![
        entry("description", text(record.doc)),
        entry("type", text("object")),
        entry("properties", Node::Record(properties)),
    ];
    if !required.is_empty() {
        entries.push(entry("required", texts(required)));
    }
    if !rules.is_empty() {
        entries.push(entry("allOf", Node::List(rules)));
    }
    entries.push(entry("additionalProperties", Node::Flag(false)));
    entries
}

/// A field's doc line with its unit and ranges.
fn describe(field: &Field) -> String {
    let mut words = field.doc.to_owned();
    if let Some(dimension) = dimension(&field.kind) {
        let article = if dimension.name.starts_with(['a', 'e', 'o']) { "An" } else { "A" };
        words.push_str(&format!(" {article} {} with its unit, shown in {}", dimension.name, field.unit));
    } else if field.possible != UNBOUNDED || field.tested != UNBOUNDED {
        words.push_str(" Accepted");
    }
    if field.possible != UNBOUNDED {
        words.push_str(&format!(": {}", accepted(field)));
    }
    if field.tested != UNBOUNDED {
        words.push_str(&format!("; tested: {}", accepted(&Field { possible: field.tested, ..*field })));
    }
    if !words.ends_with('.') {
        words.push('.');
    }
    words
}

/// The dimension of a quantity, one that may be absent, or the entries of a list.
fn dimension(kind: &Kind) -> Option<&'static Dimension> {
    match kind {
        Kind::Quantity(dimension) => Some(dimension),
        Kind::Optional(inner) | Kind::List(inner) => dimension(inner),
        _ => None,
    }
}

/// The schema of a field's value, with its description.
fn of_field(field: &Field, kind: &Kind, words: String, defined: &mut Entries) -> Node {
    let mut entries = vec![entry("description", text(words))];
    entries.extend(of_kind(field, kind, defined));
    Node::Record(entries)
}

fn of_kind(field: &Field, kind: &Kind, defined: &mut Entries) -> Entries {
    let is = |name: &'static str| entry("type", text(name));
    match kind {
        Kind::Quantity(dimension) => vec![
            is("string"),
            entry("pattern", text(QUANTITY)),
            entry("examples", texts(dimension.example.split(" or "))),
        ],
        Kind::Number => {
            let mut entries =
                vec![entry("type", texts(["number", "string"])), entry("pattern", text(NUMBER))];
            entries.extend(bounds(field.possible));
            entries
        }
        Kind::Count => {
            let (low, high) = field.possible;
            let mut entries = vec![is("integer")];
            entries.extend(bounds((low.max(0.0), high.min(f64::from(u32::MAX)))));
            entries
        }
        Kind::Flag => vec![is("boolean")],
        Kind::Text => vec![is("string")],
        Kind::Choice(choices) => reference(choices.name, defined, |_| of_choice(choices)),
        Kind::OneOf(alternatives) => {
            reference(alternatives.name, defined, |defined| of_alternatives(alternatives, defined))
        }
        Kind::Record(record) => reference(record.name, defined, |defined| of_record(record, defined)),
        Kind::List(inner) => vec![
            is("array"),
            entry("items", Node::Record(of_kind(field, inner, defined))),
            entry("maxItems", Node::Count(LONGEST_LIST as u64)),
        ],
        Kind::Optional(inner) => of_kind(field, inner, defined),
    }
}

/// The bounds of a plain number; a text such as `40 %` is for the reader to check.
fn bounds((low, high): (f64, f64)) -> Entries {
    let mut entries = Entries::new();
    if low == f64::MIN_POSITIVE {
        entries.push(entry("exclusiveMinimum", Node::Count(0)));
    } else if low.is_finite() {
        entries.push(entry("minimum", whole(low)));
    }
    if high.is_finite() {
        entries.push(entry("maximum", whole(high)));
    }
    entries
}

/// A whole number without a point.
fn whole(number: f64) -> Node {
    let is_whole = number >= 0.0 && number.fract() == 0.0 && number <= f64::from(u32::MAX);
    if is_whole { Node::Count(number as u64) } else { Node::Number(number) }
}

fn of_choice(choices: &'static Choices) -> Entries {
    let mut words = choices.doc.to_owned();
    for (name, doc) in choices.options {
        words.push_str(&format!("\n- {name}: {doc}"));
    }
    vec![
        entry("description", text(words)),
        entry("enum", texts(choices.options.iter().map(|option| option.0))),
    ]
}

/// Exactly one of the keys, with the record behind it.
fn of_alternatives(alternatives: &'static Alternatives, defined: &mut Entries) -> Entries {
    let of_option = |(key, doc, kind): &(&'static str, &'static str, Kind)| {
        entry(key, of_field(&Field::ROOT, kind, (*doc).to_owned(), defined))
    };
    let properties: Entries = alternatives.options.iter().map(of_option).collect();
    vec![
        entry("description", text(alternatives.doc)),
        entry("type", text("object")),
        entry("properties", Node::Record(properties)),
        entry("additionalProperties", Node::Flag(false)),
        entry("minProperties", Node::Count(1)),
        entry("maxProperties", Node::Count(1)),
    ]
}

#[cfg(test)]
#[path = "schema_tests.rs"]
mod tests;
