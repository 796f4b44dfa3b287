//! The review as text: 80 columns, plain characters, the answer first.

use coaming::prelude::*;

use super::layout::{spread, wrapped};
use super::words;
use crate::cautions::CAUTIONS;
use crate::demand::NotChecked;
use crate::review::{Review, Row};
use crate::verdict::Verdict;

/// How much a review tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Detail {
    /// At most four lines a row.
    #[default]
    Short,
    /// Formula, inputs and sources too: enough to check each row by hand.
    Full,
}

/// The review as text, in shop or inch units.
pub fn review_text(review: &Review, detail: Detail, system: System) -> String {
    let mut text = String::new();
    let title = match &review.revision {
        Some(revision) => format!("{}, {revision}", review.title),
        None => review.title.clone(),
    };
    text.push_str(&spread(&title, &words::standing(review)));
    text.push_str(&wrapped("", "", &words::counts(review)));
    if review.all_passed() {
        text.push_str(&wrapped(
            "",
            "",
            "All checks passed this screening, with the inputs given. Not a certificate.",
        ));
    }
    text.push('\n');
    text.push_str(&first_changes(review, system));
    for verdict in Verdict::ALL {
        for row in review.rows.iter().filter(|row| row.verdict == verdict) {
            text.push_str(&row_text(row, detail, system));
            text.push('\n');
        }
    }
    text.push_str(&provenance(review));
    text.push_str("\nCautions\n");
    for caution in CAUTIONS {
        text.push_str(&wrapped("  - ", "    ", caution));
    }
    text
}

fn first_changes(review: &Review, system: System) -> String {
    if review.levers.is_empty() {
        return String::new();
    }
    let mut text = "What to change first (the document itself is not changed)\n".to_owned();
    for (nth, lever) in review.levers.iter().take(5).enumerate() {
        let rows = match lever.rows.len() {
            1 => "helps 1 row".to_owned(),
            many => format!("helps {many} rows"),
        };
        let first = format!("  {}. ", nth + 1);
        let place =
            if lever.cure.change.is_some() { String::new() } else { format!("{}: ", lever.cure.lever) };
        text.push_str(&wrapped(
            &first,
            "     ",
            &format!("{place}{}  [{rows}]", words::cure(&lever.cure, system)),
        ));
    }
    text.push('\n');
    text
}

fn row_text(row: &Row, detail: Detail, system: System) -> String {
    let subject = if row.subject.is_empty() { String::new() } else { format!(" ({})", row.subject) };
    let case =
        row.case.map_or_else(String::new, |case| format!("[{}]", Choice::name(case).replace('_', " ")));
    let mut text = spread(&format!("{:<12}{}{subject}", words::verdict(row), row.title), &case);
    let mut line =
        |label: &str, words: &str| text.push_str(&wrapped(&format!("  {label:<8}"), "          ", words));
    match &row.outcome {
        Ok(demand) => {
            let margin = row
                .margin
                .map_or_else(String::new, |margin| format!("; margin {} %", rounded(margin * 100.0, 3)));
            line(
                "finds",
                &format!("{}; needs {}{margin}", words::finds(demand, system), words::needs(demand, system)),
            );
            line("from", &format!("{}{}", calculations(demand), words::origin(demand)));
            if let (Some(cure), false) = (&demand.cure, row.verdict == Verdict::Pass) {
                line("cure", &words::cure(cure, system));
            }
        }
        Err(why) => line("why", &words::not_checked(why, system)),
    }
    if let Some((who, reason)) = &row.waiver {
        line("accepted", &format!("by {who}: {reason}"));
    }
    if detail == Detail::Full {
        text.push_str(&long_story(row, system));
    }
    text
}

fn calculations(demand: &crate::demand::Demand) -> String {
    let names: Vec<&str> = demand.calculations.iter().map(|done| done.0).collect();
    if names.is_empty() { String::new() } else { format!("{}; ", names.join(", ")) }
}

fn long_story(row: &Row, system: System) -> String {
    let demand = match &row.outcome {
        Ok(demand) => demand,
        Err(NotChecked::NotCalculated { shown: Some(demand), .. }) => demand,
        Err(_) => return format!("  {:<8}{}\n", "key", row.key),
    };
    let mut text = String::new();
    let mut line =
        |label: &str, words: &str| text.push_str(&wrapped(&format!("  {label:<8}"), "          ", words));
    line("key", &row.key);
    for input in &demand.inputs {
        line("input", &format!("{}: {}", input.label, words::input(&input.value, system)));
    }
    for (name, sources) in &demand.calculations {
        for source in *sources {
            line("source", &format!("{name}: {source}"));
        }
    }
    for caveat in demand.caveats.iter() {
        line("caveat", &format!("{} {}", caveat.text(), caveat.cure()));
    }
    for weak in &demand.weak {
        line("weak", weak);
    }
    for note in &demand.notes {
        line("note", note);
    }
    text
}

fn provenance(review: &Review) -> String {
    let mut text = "What this rests on\n".to_owned();
    text.push_str(&wrapped(
        "  ",
        "  ",
        &format!("coaming {}, document {}", review.version, review.input_hash),
    ));
    for limit in &review.replaced_limits {
        let words = format!("limit replaced: {} = {} instead of {}", limit.key, limit.given, limit.practice);
        text.push_str(&wrapped("  ", "    ", &words));
    }
    let mut weak: Vec<&str> = Vec::new();
    for demand in review.rows.iter().filter_map(|row| row.outcome.as_ref().ok()) {
        for words in &demand.weak {
            if !weak.contains(&words.as_str()) {
                weak.push(words);
            }
        }
    }
    if !weak.is_empty() {
        text.push_str(&wrapped(
            "  ",
            "    ",
            &format!("typical, estimated or unverified values: {}", weak.join("; ")),
        ));
    }
    text
}
