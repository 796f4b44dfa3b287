//! The table for Python, `cases.json`: a list of
//!
//! ```text
//! { "module": "sheet", "calculation": "bend_allowance", "source": "...",
//!   "input": { "thickness": "1 mm", ... },               quantities as text; every field under its own name
//!   "outcome": { "bend_allowance": "0x1.8p-9", "setback": null, ... },
//!   "caveats": ["outside_tested"] }
//! ```
//!
//! or, where the calculation refuses, `"error": { "code": 1, "name": "impossible", "field": "thickness" }` in place of
//! outcome and caveats. An outcome holds SI numbers as hexadecimal floats, counts as numbers, flags as booleans, choices
//! and words as text, lists as lists, records as objects, null for what is absent. An input that is refused while it is
//! read stands as its case gives it.

use coaming::declaration::Node;
use coaming::{Caveat, Error};
use serde_json::{Value, json};

use super::hex::hex;
use super::row::Row;

/// The table.
pub(super) fn text(rows: &[Row]) -> Result<String, String> {
    let rows = rows.iter().map(object).collect::<Result<Vec<_>, _>>()?;
    serde_json::to_string_pretty(&rows).map_err(|error| error.to_string())
}

fn object(row: &Row) -> Result<Value, String> {
    let input: Value = serde_json::from_str(&row.document).map_err(|error| error.to_string())?;
    let mut object = json!({
        "module": row.entry.module(), "calculation": row.entry.name, "source": row.title, "input": input,
    });
    match &row.answer {
        Ok((outcome, caveats)) => {
            object["outcome"] = value(outcome);
            object["caveats"] = caveats.iter().map(Caveat::name).collect();
        }
        Err(error) => object["error"] = cause(error),
    }
    Ok(object)
}

fn cause(error: &Error) -> Value {
    json!({ "code": error.code(), "name": error.name(), "field": error.field() })
}

/// A value to the bit.
pub(super) fn value(node: &Node) -> Value {
    match node {
        Node::Absent => Value::Null,
        Node::Flag(flag) => json!(flag),
        Node::Count(count) => json!(count),
        Node::Number(si) | Node::Si(si) | Node::Quantity { si, .. } => json!(hex(*si)),
        Node::Text(text) => json!(text),
        Node::List(entries) => entries.iter().map(value).collect(),
        Node::Record(entries) => {
            Value::Object(entries.iter().map(|(key, entry)| (key.to_string(), value(entry))).collect())
        }
    }
}
