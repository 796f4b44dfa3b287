//! Markdown (CommonMark, with tables): the same lines in the same order as the text.

use coaming::prelude::*;

use super::Detail;
use super::alike::{Told, told};
use super::order_text::{failing, shown};
use super::words::{self, ALL_PASSED};
use crate::cautions::CAUTIONS;
use crate::order_sheet::{Item, OrderSheet};
use crate::review::Review;
use crate::verdict::Verdict;

/// Words that stand as they are: what Markdown or HTML would read as markup is escaped, and lines are joined.
///
/// Each line begins with words of our own (a label, a path, a part of the table), so marks that count only at the start of a line stand as they are.
fn escaped(words: &str) -> String {
    let mut text = String::with_capacity(words.len());
    let mut before = ' ';
    let mut letters = words.chars().peekable();
    while let Some(letter) = letters.next() {
        let mark = match letter {
            '\\' | '`' | '*' | '[' | ']' | '<' | '#' | '|' | '~' | '&' | '$' => true,
            // Within a word an underscore is no emphasis: keys and paths stay readable.
            '_' => !(before.is_alphanumeric() && letters.peek().is_some_and(|next| next.is_alphanumeric())),
            _ => false,
        };
        if mark {
            text.push('\\');
        }
        let blank = letter.is_control() || matches!(letter, '\u{2028}' | '\u{2029}');
        text.push(if blank { ' ' } else { letter });
        before = letter;
    }
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The review as Markdown, in shop or inch units.
pub fn review_markdown(review: &Review, detail: Detail, system: System) -> String {
    let mut text = format!("# Review: {}\n\n", escaped(&words::title(review)));
    text.push_str(&format!("**{}**\n\n", escaped(&words::standing(review))));
    text.push_str(&format!("{}\n\n", escaped(&words::counts(review))));
    if review.all_passed() {
        text.push_str(&format!("{ALL_PASSED}\n\n"));
    }
    let changes = words::first_changes(review, system);
    if !changes.is_empty() {
        text.push_str("## What to change first (the document itself is not changed)\n\n");
        for (nth, change) in changes.iter().enumerate() {
            text.push_str(&format!("{}. {}\n", nth + 1, escaped(change)));
        }
        text.push('\n');
    }
    text.push_str("## Checks\n\n");
    for verdict in Verdict::ALL {
        for told in told(&review.rows, verdict, detail, system) {
            text.push_str(&row_markdown(&told));
        }
    }
    text.push_str("## What this rests on\n\n");
    for words in words::provenance(review, system) {
        text.push_str(&format!("- {}\n", escaped(&words)));
    }
    text.push_str(&cautions(CAUTIONS.iter().copied()));
    text
}

fn row_markdown(Told { row, heading, lines }: &Told<'_>) -> String {
    let case = row.case.map_or_else(String::new, |case| format!(" [{}]", words::case(case)));
    let head = escaped(&format!("{heading}{case}"));
    let mut text = format!("**{}** {head}\n\n", escaped(&words::verdict(row)));
    for (label, words) in lines {
        text.push_str(&format!("- {label}: {}\n", escaped(words)));
    }
    text.push('\n');
    text
}

/// The order sheet as Markdown, in shop or inch units. Every section is headed by what stands against ordering.
pub fn order_sheet_markdown(sheet: &OrderSheet, system: System) -> String {
    let warnings = sheet.warnings();
    let standing = escaped(&words::standing(&sheet.review));
    let mut text = format!("# Order sheet: {}\n\n**{standing}**\n\n", escaped(&words::title(&sheet.review)));
    if warnings.is_empty() {
        text.push_str(&format!("{ALL_PASSED}\n\n"));
    } else {
        text.push_str(&format!("**DO NOT ORDER YET:** {}\n\n", escaped(&warnings.join("; "))));
    }
    for item in &sheet.conventions {
        text.push_str(&format!("- {}: {}\n", item.label, escaped(&shown(&item.value, system))));
    }
    for section in &sheet.sections {
        text.push_str(&format!("\n## {}\n\n", section.title));
        if !warnings.is_empty() {
            text.push_str(&format!("**DO NOT ORDER YET:** {standing}\n\n"));
        }
        if let Some(failing) = failing(sheet) {
            text.push_str(&format!("{}\n\n", escaped(&failing)));
        }
        text.push_str("| part | what | value |\n|---|---|---|\n");
        for line in &section.lines {
            for item in &line.items {
                text.push_str(&table_row(&line.part, item, system));
            }
        }
    }
    let (version, hash) = (sheet.review.version, &sheet.review.input_hash);
    text.push_str(&format!("\n## What this rests on\n\n- coaming {version}, document {hash}\n"));
    text.push_str(&cautions(OrderSheet::cautions()));
    text
}

fn table_row(part: &str, item: &Item, system: System) -> String {
    format!("| {} | {} | {} |\n", escaped(part), escaped(item.label), escaped(&shown(&item.value, system)))
}

fn cautions<'a>(cautions: impl Iterator<Item = &'a str>) -> String {
    let lines = cautions.map(|caution| format!("- {}\n", escaped(caution)));
    format!("\n## Cautions\n\n{}", lines.collect::<String>())
}

#[cfg(test)]
#[path = "markdown_tests.rs"]
mod tests;
