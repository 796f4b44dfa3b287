//! The test sheet: one line for each row of the review that only a test can settle.

use coaming::prelude::*;

use super::{Item, Line, Value};
use crate::amount::Amount;
use crate::demand::{Bound, Demand, Finding};
use crate::review::{Review, Row};
use crate::verdict::Verdict;

/// One line for each row that needs a test, in the order of the review.
pub(super) fn tests(review: &Review) -> Vec<Line> {
    let due = review.rows.iter().filter(|row| row.verdict == Verdict::NeedsTest);
    due.filter_map(|row| Some(line(row, row.outcome.as_ref().ok()?))).collect()
}

fn line(row: &Row, demand: &Demand) -> Line {
    let part = if row.subject.is_empty() {
        row.title.to_owned()
    } else {
        format!("{} ({})", row.title, row.subject)
    };
    let mut items = vec![Item { label: "row of the review", value: Value::Words(row.key.clone()) }];
    items.push(Item {
        label: "what to do",
        value: procedure(&row.key).map_or_else(
            || Value::Unknown("this version describes no test for this row".to_owned()),
            |words| Value::Words(words.to_owned()),
        ),
    });
    let notes = demand.notes.iter().map(|note| Item { label: "note", value: Value::Words(note.clone()) });
    items.extend(notes);
    if let Some(cure) = demand.cure.as_ref().filter(|cure| !cure.words.is_empty()) {
        items.push(Item { label: "instead of a test", value: Value::Words(cure.words.shown(System::Shop)) });
    }
    items.extend(criteria(demand));
    // What the bench fills in: a blank is no result.
    for label in ["measured", "date and name"] {
        items.push(Item { label, value: Value::Words("__________".to_owned()) });
    }
    Line { part, items }
}

/// What was calculated, and what passes.
fn criteria(demand: &Demand) -> Vec<Item> {
    match &demand.finding {
        Finding::Number { low, high, measure, bound } => {
            let amount = |si: f64| Value::Amount(Amount { si, measure: *measure });
            let band = |low: f64, high: f64| Value::Band { low, high, measure: *measure };
            let passes = match *bound {
                Bound::AtMost { limit, .. } => Item { label: "passes when at most", value: amount(limit) },
                Bound::AtLeast { limit } => Item { label: "passes when at least", value: amount(limit) },
                Bound::Within { low, high } => Item { label: "passes within", value: band(low, high) },
            };
            vec![Item { label: "calculated", value: band(*low, *high) }, passes]
        }
        Finding::Rule { needs, .. } => {
            vec![Item { label: "passes when", value: Value::Words(needs.clone()) }]
        }
    }
}

/// How a row is tested, how it is measured and what to write down: common practice.
fn procedure(key: &str) -> Option<&'static str> {
    match key.split('(').next()? {
        "inside_radius" => Some(
            "Bend a strip of the same sheet over the same radius, with the grain as in the part. Look along the \
             outside of the bend with a magnifier. Write down radius, die opening, direction of the grain and every crack.",
        ),
        "agent" | "sealant" => Some(
            "Hold a strip of the same material bent to its strain in service, wetted as in service; beside it a strip \
             bent alike and left dry. Look for crazes, cracks and softening. Write down strain, time and what is seen on both.",
        ),
        _ => None,
    }
}
