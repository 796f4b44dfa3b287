//! The words of a row, the same for every format.

use coaming::prelude::*;

use super::Detail;
use crate::demand::{Bound, Cure, Demand, Finding, InputValue, NotChecked, Origin};
use crate::document::LoadKind;
use crate::review::{Review, Row};
use crate::verdict::Verdict;

/// What the head says where all is well.
pub(super) const ALL_PASSED: &str =
    "All checks passed this screening, with the inputs given. Not a certificate.";

/// The title of a review with its revision.
pub(super) fn title(review: &Review) -> String {
    match &review.revision {
        Some(revision) => format!("{}, {revision}", review.title),
        None => review.title.clone(),
    }
}

/// The levers that help most rows, each with its cure and how many rows it helps.
pub(super) fn first_changes(review: &Review, system: System) -> Vec<String> {
    let words = |lever: &crate::review::Lever| {
        let rows = match lever.rows.len() {
            1 => "helps 1 row".to_owned(),
            many => format!("helps {many} rows"),
        };
        let place =
            if lever.cure.change.is_some() { String::new() } else { format!("{}: ", lever.cure.lever) };
        format!("{place}{}  [{rows}]", cure(&lever.cure, system))
    };
    review.levers.iter().take(5).map(words).collect()
}

/// A load case, for people.
pub(super) fn case(case: LoadKind) -> String {
    Choice::name(case).replace('_', " ")
}

/// The title of a check with its subject.
pub(super) fn check(row: &Row) -> String {
    if row.subject.is_empty() { row.title.to_owned() } else { format!("{} ({})", row.title, row.subject) }
}

/// The lines of a row, each with its label: the same in text and Markdown.
pub(super) fn row(row: &Row, detail: Detail, system: System) -> Vec<(&'static str, String)> {
    let mut lines = Vec::new();
    match &row.outcome {
        Ok(demand) => {
            let margin = row
                .margin
                .map_or_else(String::new, |margin| format!("; margin {} %", rounded(margin * 100.0, 3)));
            let (finds, needs) = (finds(demand, system), needs(demand, system));
            let due = if matches!(demand.finding, Finding::Rule { .. }) { "rule:" } else { "needs" };
            lines.push(("finds", format!("{finds}; {due} {needs}{margin}")));
            lines.push(("from", format!("{}{}", calculations(demand), origin(demand))));
            if let (Some(known), false) = (&demand.cure, row.verdict == Verdict::Pass) {
                lines.push(("cure", cure(known, system)));
            }
        }
        Err(why) => lines.push(("why", not_checked(why, system))),
    }
    if let Some((who, reason)) = &row.waiver {
        lines.push(("accepted", format!("by {who}: {reason}")));
    }
    if detail == Detail::Full {
        lines.push(("key", row.key.clone()));
        lines.extend(long_story(row, system));
    }
    lines
}

fn calculations(demand: &Demand) -> String {
    let names: Vec<&str> = demand.calculations.iter().map(|done| done.0).collect();
    if names.is_empty() { String::new() } else { format!("{}; ", names.join(", ")) }
}

fn long_story(row: &Row, system: System) -> Vec<(&'static str, String)> {
    let demand = match &row.outcome {
        Ok(demand) => demand,
        Err(NotChecked::NotCalculated { shown: Some(demand), .. }) => demand.as_ref(),
        Err(_) => return Vec::new(),
    };
    let mut lines = Vec::new();
    for given in &demand.inputs {
        lines.push(("input", format!("{}: {}", given.label, input(&given.value, system))));
    }
    lines.extend(demand.formulas.iter().map(|formula| ("formula", formula.clone())));
    for (name, sources) in &demand.calculations {
        lines.extend(formula(name).into_iter().map(|line| ("formula", format!("{name}: {line}"))));
        lines.extend(sources.iter().map(|source| ("source", format!("{name}: {source}"))));
    }
    for caveat in demand.caveats.iter() {
        lines.push(("caveat", format!("{} {}", caveat.text(), caveat.cure())));
    }
    lines.extend(demand.weak.iter().map(|weak| ("weak", weak.clone())));
    lines.extend(demand.notes.iter().map(|note| ("note", note.clone())));
    lines
}

/// The formula of a calculation as its documentation has it, line by line; none for the panel solver.
pub(super) fn formula(name: &str) -> Vec<String> {
    let Some(entry) = coaming::ALL.iter().find(|entry| entry.name == name) else { return Vec::new() };
    let section = entry.input.doc.lines().skip_while(|line| line.trim() != "# Formula").skip(1);
    let (mut lines, mut fenced, mut begins) = (Vec::<String>::new(), false, true);
    for line in section.take_while(|line| !line.trim_start().starts_with("# ")) {
        let words = line.trim();
        if words.starts_with("```") {
            fenced = !fenced;
            begins = true;
        } else if words.is_empty() {
            begins = true;
        } else {
            // Within a fence columns stand apart by blanks; in prose a line goes on until the next item.
            let begins_here = begins || fenced || words.starts_with("- ");
            let words = words.strip_prefix("- ").unwrap_or(words);
            match lines.last_mut().filter(|_| !begins_here) {
                Some(last) => last.push_str(&format!(" {words}")),
                None => lines.push(columns(words)),
            }
            begins = false;
        }
    }
    lines
}

/// Words that stand in columns, with a semicolon between two of them; blanks that only align an equals sign go.
fn columns(words: &str) -> String {
    let mut text = String::new();
    for piece in words.split("  ").map(str::trim).filter(|piece| !piece.is_empty()) {
        if !text.is_empty() {
            let goes_on =
                text.ends_with([',', ';', ':', '=']) || piece.starts_with(['=', '≤', '≥', '<', '>', '+']);
            text.push_str(if goes_on { " " } else { "; " });
        }
        text.push_str(piece);
    }
    text
}

/// What a review rests on: the version, the document, limits that were replaced, and weak values.
pub(super) fn provenance(review: &Review, system: System) -> Vec<String> {
    let mut lines = vec![format!("coaming {}, document {}", review.version, review.input_hash)];
    for limit in &review.replaced_limits {
        let (given, practice) = (limit.given.shown(system), limit.practice.shown(system));
        lines.push(format!("limit replaced: {} = {given} instead of {practice}", limit.key));
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
        lines.push(format!("typical, estimated or unverified values: {}", weak.join("; ")));
    }
    lines
}

/// What was found, for people.
pub(crate) fn finds(demand: &Demand, system: System) -> String {
    let found = match &demand.finding {
        Finding::Number { low, high, measure, .. } => measure.shown_band(*low, *high, system),
        Finding::Rule { finds, .. } => finds.shown(system),
    };
    match &demand.place {
        Some(place) => format!("{found} ({})", place.shown(system)),
        None => found,
    }
}

/// What is needed, for people.
pub(crate) fn needs(demand: &Demand, system: System) -> String {
    match &demand.finding {
        Finding::Number { measure, bound, .. } => match *bound {
            Bound::AtMost { limit, .. } if !measure.is_reversed() => {
                format!("at most {}", measure.shown(limit, system))
            }
            Bound::AtLeast { limit } if measure.is_reversed() => {
                format!("at most {}", measure.shown(limit, system))
            }
            Bound::AtMost { limit, .. } | Bound::AtLeast { limit } => {
                format!("at least {}", measure.shown(limit, system))
            }
            Bound::Within { low, high } => measure.shown_band(low, high, system),
        },
        Finding::Rule { needs, .. } => needs.clone(),
    }
}

/// Where the limit comes from.
pub(crate) fn origin(demand: &Demand) -> String {
    match &demand.origin {
        Origin::Practice(limit) if limit.replaced => {
            format!("limit given in the document (limits.{})", limit.key)
        }
        Origin::Practice(limit) => format!("limit by common practice (limits.{})", limit.key),
        Origin::Published(source) => source.to_string(),
        Origin::Maker(path) => format!("the maker's figure ({path})"),
        Origin::Design(path) => format!("the design itself ({path})"),
    }
}

/// A cure, for people.
pub(crate) fn cure(cure: &Cure, system: System) -> String {
    match &cure.change {
        Some((now, to)) => {
            let words = cure.words.shown(system);
            format!("{} {} -> {}: {words}", cure.lever, now.shown(system), to.shown(system))
        }
        None => cure.words.shown(system),
    }
}

/// Why a row is not checked.
pub(crate) fn not_checked(why: &NotChecked, system: System) -> String {
    match why {
        NotChecked::Needs(paths) => format!("needs {}", paths.join(", ")),
        NotChecked::NotCalculated { what, shown: None } => format!("not calculated by this version: {what}"),
        NotChecked::NotCalculated { what, shown: Some(demand) } => format!(
            "not calculated by this version: {what} {} against {}",
            finds(demand, system),
            needs(demand, system)
        ),
        NotChecked::Refused(error) => format!("refused: {error}"),
    }
}

/// The verdict's word in capitals, an accepted failure with who accepts it.
pub(crate) fn verdict(row: &Row) -> String {
    match &row.waiver {
        Some((who, _)) => format!("FAIL (accepted by {who})"),
        None => row.verdict.word().to_uppercase(),
    }
}

/// An input, for people.
pub(crate) fn input(value: &InputValue, system: System) -> String {
    match value {
        InputValue::Amount(amount) => amount.shown(system),
        InputValue::Words(words) => words.clone(),
    }
}

/// The head of a review: one line that says how it stands.
pub(crate) fn standing(review: &Review) -> String {
    let fails = review.count(Verdict::Fail);
    let not_all = [
        (fails, "FAIL", "FAILS"),
        (review.count(Verdict::NotChecked), "NOT CHECKED", "NOT CHECKED"),
        (review.count(Verdict::NeedsTest), "NEED A TEST", "NEEDS A TEST"),
    ];
    match not_all.iter().find(|count| count.0 > 0) {
        Some((1, _, one)) => format!("1 CHECK {one}"),
        Some((many, word, _)) => format!("{many} CHECKS {word}"),
        None => "ALL CHECKS PASSED THIS SCREENING".to_owned(),
    }
}

/// How many rows have each verdict, in one sentence.
pub(crate) fn counts(review: &Review) -> String {
    let accepted = review.rows.iter().filter(|row| row.waiver.is_some()).count();
    let mut words: Vec<String> = Verdict::ALL
        .iter()
        .map(|verdict| (review.count(*verdict), verdict.word()))
        .filter(|(count, _)| *count > 0)
        .map(|(count, word)| format!("{count} {word}"))
        .collect();
    if accepted > 0 {
        words.push(format!("{accepted} of the failing accepted by the shop"));
    }
    format!("{} checks: {}", review.rows.len(), words.join(", "))
}
