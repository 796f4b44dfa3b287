//! The order sheet as text.

use coaming::prelude::*;

use super::layout::{spread, wrapped};
use super::words;
use crate::amount::Measure;
use crate::order_sheet::{Item, OrderSheet, Value};

/// A value of the sheet, for people.
pub(super) fn shown(value: &Value, system: System) -> String {
    match value {
        Value::Amount(amount) => amount.shown(system),
        Value::Band { low, high, measure } => measure.shown_band(*low, *high, system),
        Value::Words(words) => words.shown(system),
        Value::Places(points) => places(points, system),
        Value::Unknown(why) => format!("UNKNOWN, {}", words::not_checked(why, system)),
    }
}

/// Places, numbered: `1 (-138 mm, 98 mm); 2 (...)`.
fn places(points: &[(f64, f64)], system: System) -> String {
    let place = |(nth, point): (usize, &(f64, f64))| {
        let [x, y] = [point.0, point.1].map(|si| Measure::Size.shown(si, system));
        format!("{} ({x}, {y})", nth + 1)
    };
    points.iter().enumerate().map(place).collect::<Vec<_>>().join("; ")
}

/// What stands at the head of every section while anything fails.
pub(super) fn failing(sheet: &OrderSheet) -> Option<String> {
    let failures = sheet.failures();
    if failures.is_empty() { None } else { Some(format!("FAILS: {}", failures.join(", "))) }
}

/// The order sheet as text, in shop or inch units. Every section is headed by what stands against ordering.
pub fn order_sheet_text(sheet: &OrderSheet, system: System) -> String {
    let warnings = sheet.warnings();
    let mut text = spread(&format!("ORDER SHEET  {}", sheet.review.title), &words::standing(&sheet.review));
    if let Some(revision) = &sheet.review.revision {
        text.push_str(&wrapped("", "", revision));
    }
    if warnings.is_empty() {
        text.push_str(&wrapped("", "", words::ALL_PASSED));
    } else {
        text.push_str(&wrapped("DO NOT ORDER YET: ", "  ", &warnings.join("; ")));
    }
    for item in &sheet.conventions {
        text.push_str(&line(item, "", system));
    }
    for section in &sheet.sections {
        text.push('\n');
        let mark = if warnings.is_empty() { String::new() } else { words::standing(&sheet.review) };
        text.push_str(&spread(section.title, &mark));
        if let Some(failing) = failing(sheet) {
            text.push_str(&wrapped("  ", "  ", &failing));
        }
        for part in &section.lines {
            text.push_str(&wrapped("  ", "    ", &part.part));
            for item in &part.items {
                text.push_str(&line(item, "    ", system));
            }
        }
    }
    text.push_str(&format!("\ncoaming {}, document\n{}\n", sheet.review.version, sheet.review.input_hash));
    text.push_str("\nCautions\n");
    for caution in OrderSheet::cautions() {
        text.push_str(&wrapped("  - ", "    ", caution));
    }
    text
}

fn line(item: &Item, indent: &str, system: System) -> String {
    let rest = format!("{indent}  ");
    wrapped(indent, &rest, &format!("{}: {}", item.label, shown(&item.value, system)))
}
