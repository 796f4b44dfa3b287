//! The review as text: 80 columns, plain characters, the answer first.

use coaming::prelude::*;

use super::alike::{Told, told};
use super::layout::{spread, wrapped};
use super::words;
use crate::cautions::CAUTIONS;
use crate::review::Review;
use crate::verdict::Verdict;

/// How much a review tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Detail {
    /// At most four lines a row; rows that say the same of parts alike are told once.
    #[default]
    Short,
    /// Formula, inputs and sources too: enough to check each row by hand.
    Full,
}

/// The review as text, in shop or inch units.
pub fn review_text(review: &Review, detail: Detail, system: System) -> String {
    let mut text = String::new();
    text.push_str(&spread(&words::title(review), &words::standing(review)));
    text.push_str(&wrapped("", "", &words::counts(review)));
    if review.all_passed() {
        text.push_str(&wrapped("", "", words::ALL_PASSED));
    }
    text.push('\n');
    text.push_str(&first_changes(review, system));
    for verdict in Verdict::ALL {
        for told in told(&review.rows, verdict, detail, system) {
            text.push_str(&row_text(&told));
            text.push('\n');
        }
    }
    text.push_str(&provenance(review, system));
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
    for (nth, words) in words::first_changes(review, system).iter().enumerate() {
        text.push_str(&wrapped(&format!("  {}. ", nth + 1), "     ", words));
    }
    text.push('\n');
    text
}

fn row_text(Told { row, heading, lines }: &Told<'_>) -> String {
    let case = row.case.map_or_else(String::new, |case| format!("[{}]", words::case(case)));
    let mut text = spread(&format!("{:<11} {heading}", words::verdict(row)), &case);
    for (label, words) in lines {
        text.push_str(&wrapped(&format!("  {label:<7} "), "          ", words));
    }
    text
}

fn provenance(review: &Review, system: System) -> String {
    let mut text = "What this rests on\n".to_owned();
    for (nth, words) in words::provenance(review, system).iter().enumerate() {
        text.push_str(&wrapped("  ", if nth == 0 { "  " } else { "    " }, words));
    }
    text
}
