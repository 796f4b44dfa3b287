//! One case with what Rust makes of it.

use std::borrow::Cow;

use coaming::declaration::{Field, Kind, Node};
use coaming::{Caveats, Entry, Error, quantity};
use coaming_tests::Case;

use super::json_table::value;

/// What a calculation gave.
pub(super) type Answer = Result<(Node, Caveats), Error>;

/// A case as the runners get it.
pub(super) struct Row {
    /// The calculation.
    pub(super) entry: &'static Entry,
    /// The case's source.
    pub(super) title: String,
    /// The input as JSON: every field under its own name, in the order of the table, where it can be read.
    pub(super) document: String,
    /// What Rust makes of the document.
    pub(super) answer: Answer,
    /// What Rust's text call makes of the document.
    pub(super) text: Result<String, Error>,
    /// The input as a C struct holds it, and what Rust makes of it; none where no struct can.
    pub(super) flat: Option<(Node, Answer)>,
}

impl Row {
    /// The row of a case.
    pub(super) fn of(case: &Case) -> Result<Self, String> {
        let entry = coaming::entry(&case.calculation).map_err(|error| error.to_string())?;
        let given = coaming_tests::record(&case.input);
        let canonical = (entry.read)(given.clone()).unwrap_or_else(|_| given.clone());
        let document = serde_json::to_string(&canonical).map_err(|error| error.to_string())?;
        let answer = (entry.calculate_json)(&document);
        let flat = flat_input(entry, &case.input);
        let flat = flat.map(|input| (input.clone(), (entry.calculate)(input)));
        let row = Self {
            entry,
            title: case.source.clone(),
            text: (entry.calculate_text)(&document),
            document,
            answer,
            flat,
        };
        // As the case gives it, as its document and as its SI values: the same bits in Rust to begin with.
        let as_given = (entry.calculate)(given);
        let of_struct = row.flat.as_ref().is_none_or(|flat| same(&flat.1, &row.answer));
        match of_struct && same(&as_given, &row.answer) {
            true => Ok(row),
            false => {
                Err(format!("{}: {}: text, document and SI values differ in Rust", entry.name, row.title))
            }
        }
    }
}

/// True for the same bits, or for refusals: a document is refused at its first fault, a struct in the order of fields.
fn same(one: &Answer, other: &Answer) -> bool {
    match (one, other) {
        (Ok((one, caveats)), Ok((other, others))) => value(one) == value(other) && caveats == others,
        (one, other) => one.is_err() && other.is_err(),
    }
}

/// The input as a C struct can hold it: SI values in the order of the fields, ranges unchecked.
fn flat_input(entry: &Entry, given: &toml::Table) -> Option<Node> {
    let fields = entry.input.fields;
    let known = |key: &String| {
        fields.iter().any(|field| field.name == key || field.also.is_some_and(|also| also.name == key))
    };
    if !entry.is_flat() || !given.keys().all(known) {
        return None;
    }
    let entries = fields.iter().map(|field| Some((Cow::Borrowed(field.name), flat_value(field, given)?)));
    entries.collect::<Option<Vec<_>>>().map(Node::Record)
}

fn flat_value(field: &'static Field, given: &toml::Table) -> Option<Node> {
    let second = field.also.and_then(|also| Some((also.convert, given.get(also.name)?)));
    match (given.get(field.name), second) {
        (Some(_), Some(_)) => None,
        (None, None) => matches!(field.kind, Kind::Optional(_)).then_some(Node::Absent),
        (Some(given), None) => flat_node(&field.kind, given),
        (None, Some((convert, given))) => Some(Node::Si(convert(flat_node(&field.kind, given)?.si()?))),
    }
}

fn flat_node(kind: &Kind, given: &toml::Value) -> Option<Node> {
    match (kind, given) {
        (Kind::Optional(inner), _) => flat_node(inner, given),
        (Kind::Quantity(dimension), toml::Value::String(text)) => {
            quantity::read(text, dimension).ok().map(Node::Si)
        }
        (Kind::Number, toml::Value::String(text)) => quantity::read_number(text).ok().map(Node::Number),
        (Kind::Number, toml::Value::Float(number)) => Some(Node::Number(*number)),
        (Kind::Number, toml::Value::Integer(number)) => Some(Node::Number(*number as f64)),
        (Kind::Count, toml::Value::Integer(count)) => {
            u32::try_from(*count).ok().map(|n| Node::Count(n.into()))
        }
        (Kind::Flag, toml::Value::Boolean(flag)) => Some(Node::Flag(*flag)),
        (Kind::Choice(choices), toml::Value::String(name)) => {
            choices.options.iter().any(|option| option.0 == name).then(|| Node::Text(name.clone()))
        }
        _ => None,
    }
}
