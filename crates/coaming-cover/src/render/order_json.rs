//! The order sheet as JSON.

use coaming::declaration::Node;
use coaming::prelude::*;

use super::json::{record, text, texts};
use super::words;
use crate::amount::Measure;
use crate::demand::NotChecked;
use crate::order_sheet::{Item, OrderSheet, Value};

/// The order sheet as JSON text.
///
/// # Errors
/// [`Error::Unreadable`] where it cannot be written.
pub fn order_sheet_json(sheet: &OrderSheet) -> Result<String, Error> {
    let sections = sheet.sections.iter().map(|section| {
        let lines = section.lines.iter().map(|line| {
            record(vec![
                ("part", text(&line.part)),
                ("items", Node::List(line.items.iter().map(item).collect())),
            ])
        });
        record(vec![("title", text(section.title)), ("lines", Node::List(lines.collect()))])
    });
    let node = record(vec![
        ("title", text(&sheet.review.title)),
        ("revision", sheet.review.revision.as_ref().map_or(Node::Absent, text)),
        ("version", text(sheet.review.version)),
        ("input_hash", text(&sheet.review.input_hash)),
        ("standing", text(words::standing(&sheet.review))),
        ("all_passed", Node::Flag(sheet.review.all_passed())),
        ("warnings", texts(sheet.warnings())),
        ("conventions", Node::List(sheet.conventions.iter().map(item).collect())),
        ("sections", Node::List(sections.collect())),
        ("cautions", texts(OrderSheet::cautions())),
    ]);
    serde_json::to_string_pretty(&node).map_err(|error| Error::Unreadable { reason: error.to_string() })
}

fn item(item: &Item) -> Node {
    let mut entries = vec![("label", text(item.label))];
    match &item.value {
        Value::Amount(amount) => entries.push(("value", amount.measure.node(amount.si))),
        Value::Band { low, high, measure } => {
            entries.push(("value_low", measure.node(*low)));
            entries.push(("value_high", measure.node(*high)));
        }
        Value::Words(words) => entries.push(("value", text(words.shown(System::Shop)))),
        Value::Places(points) => {
            let place = |point: &(f64, f64)| {
                record(vec![("x", Measure::LENGTH.node(point.0)), ("y", Measure::LENGTH.node(point.1))])
            };
            entries.push(("places", Node::List(points.iter().map(place).collect())));
        }
        Value::Unknown(why) => {
            entries.push(("unknown", text(words::not_checked(why, System::Shop))));
            if let NotChecked::Needs(paths) = why {
                entries.push(("needs", texts(paths)));
            }
        }
    }
    record(entries)
}
