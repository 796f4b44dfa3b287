//! The text call: a calculation's input as JSON, its outcome as JSON, in one form for every language.
//!
//! ```
//! let input = r#"{ "inside_radius": "0.16 in", "thickness": "0.04 in", "bend_angle": "90 deg", "k_factor": 0.6,
//!     "leg_reference": "to_virtual_sharp" }"#;
//! let text = coaming::text::calculate("bend_allowance", input)?;
//! let answer: serde_json::Value = serde_json::from_str(&text)?;
//! // (pi/2) (0.16 in + 0.6 * 0.04 in) = 0.28903 in = 7.3413 mm, by hand
//! assert!(answer["outcome"]["bend_allowance"].as_str().is_some_and(|text| text.starts_with("7.341")));
//! assert_eq!(answer["caveats"][0]["name"], "outside_tested");
//! assert_eq!(answer["caveats"][0]["fields"][0], "k_factor");
//! # Ok::<(), Box<dyn core::error::Error>>(())
//! ```
//!
//! `outcome` holds the outcome's fields, quantities as text that reads back to the same bits, absent ones left out;
//! `caveats` is a list of `name`, `text` and `cure`, and for `outside_tested` the `fields` that are.

use std::borrow::Cow;

use crate::calculation::{Calculation, entry};
use crate::caveat::{Caveat, Caveats};
use crate::declaration::{Field, Fields, Node, Value, outside_tested, read_json};
use crate::error::Error;

/// Calculates from JSON text and gives JSON text.
///
/// # Errors
/// [`Error::UnknownCalculation`], a fault of the text with its line and column, and what the calculation refuses.
pub fn calculate(name: &str, input: &str) -> Result<String, Error> {
    (entry(name)?.calculate_text)(input)
}

/// The text call of one calculation.
///
/// # Errors
/// A fault of the text with its line and column, and what the calculation refuses.
pub(crate) fn of<C: Calculation>(input: &str) -> Result<String, Error> {
    let input: C = read_json(input)?;
    let (outcome, caveats) = input.calculate()?;
    let outcome = outcome.write(&Field::ROOT);
    let mut outside = outside_tested(C::RECORD, &input.write(&Field::ROOT));
    outside.extend(outside_tested(<C::Outcome as Fields>::RECORD, &outcome));
    let answer = record([("outcome", outcome), ("caveats", list_of(caveats, outside))]);
    serde_json::to_string(&answer).map_err(|error| Error::Unreadable { reason: error.to_string() })
}

fn list_of(caveats: Caveats, outside: Vec<String>) -> Node {
    let mut outside = Some(outside);
    let of_one = |caveat: Caveat| {
        let fields = match caveat {
            Caveat::OutsideTested => outside.take().unwrap_or_default(),
            _ => Vec::new(),
        };
        let fields = match fields.is_empty() {
            true => Node::Absent,
            false => Node::List(fields.into_iter().map(Node::Text).collect()),
        };
        let words = |text: &str| Node::Text(text.to_owned());
        record([
            ("name", words(caveat.name())),
            ("text", words(caveat.text())),
            ("cure", words(caveat.cure())),
            ("fields", fields),
        ])
    };
    Node::List(caveats.iter().map(of_one).collect())
}

fn record<const N: usize>(entries: [(&'static str, Node); N]) -> Node {
    Node::Record(entries.into_iter().map(|(key, node)| (Cow::Borrowed(key), node)).collect())
}
