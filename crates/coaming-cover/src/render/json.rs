//! The review as JSON: quantities as text that reads back to the same bits.

use coaming::declaration::Node;
use coaming::prelude::*;
use std::borrow::Cow;

use super::words;
use crate::cautions::CAUTIONS;
use crate::demand::{Bound, Cure, Demand, Finding, InputValue, NotChecked};
use crate::review::{Review, Row};
use crate::verdict::Verdict;

pub(super) fn record(entries: Vec<(&'static str, Node)>) -> Node {
    Node::Record(entries.into_iter().map(|(key, node)| (Cow::Borrowed(key), node)).collect())
}

pub(super) fn text(words: impl Into<String>) -> Node {
    Node::Text(words.into())
}

pub(super) fn texts<T: AsRef<str>>(words: impl IntoIterator<Item = T>) -> Node {
    Node::List(words.into_iter().map(|word| text(word.as_ref())).collect())
}

fn count(number: usize) -> Node {
    Node::Count(number as u64)
}

/// The review as JSON text.
///
/// # Errors
/// [`Error::Unreadable`] where it cannot be written.
pub fn review_json(review: &Review) -> Result<String, Error> {
    serde_json::to_string_pretty(&review_node(review))
        .map_err(|error| Error::Unreadable { reason: error.to_string() })
}

fn review_node(review: &Review) -> Node {
    let counts =
        Verdict::ALL.iter().map(|verdict| (Cow::Borrowed(verdict.word()), count(review.count(*verdict))));
    let levers = review
        .levers
        .iter()
        .map(|lever| record(vec![("cure", cure(&lever.cure)), ("rows", texts(&lever.rows))]));
    let replaced = review.replaced_limits.iter().map(|limit| {
        record(vec![
            ("key", text(limit.key)),
            ("given", limit.given.node()),
            ("common_practice", limit.practice.node()),
        ])
    });
    record(vec![
        ("title", text(&review.title)),
        ("revision", review.revision.as_ref().map_or(Node::Absent, text)),
        ("version", text(review.version)),
        ("input_hash", text(&review.input_hash)),
        ("standing", text(words::standing(review))),
        ("all_passed", Node::Flag(review.all_passed())),
        ("counts", Node::Record(counts.collect())),
        ("change_first", Node::List(levers.collect())),
        ("replaced_limits", Node::List(replaced.collect())),
        ("checks", Node::List(review.rows.iter().map(row).collect())),
        ("cautions", texts(CAUTIONS)),
    ])
}

fn row(row: &Row) -> Node {
    let mut entries = vec![
        ("key", text(&row.key)),
        ("part", text(row.part)),
        ("title", text(row.title)),
        ("subject", if row.subject.is_empty() { Node::Absent } else { text(&row.subject) }),
        ("load_case", row.case.map_or(Node::Absent, |case| text(Choice::name(case)))),
        ("verdict", text(row.verdict.word())),
        ("margin", row.margin.map_or(Node::Absent, Node::Number)),
    ];
    if let Some((who, reason)) = &row.waiver {
        entries.push(("accepted_by", text(who)));
        entries.push(("accepted_because", text(reason)));
    }
    match &row.outcome {
        Ok(demand) => entries.extend(demand_entries(demand)),
        Err(NotChecked::Needs(paths)) => entries.push(("needs", texts(paths))),
        Err(NotChecked::NotCalculated { what, shown }) => {
            entries.push(("not_calculated", text(what)));
            if let Some(demand) = shown {
                entries.push(("linear", record(demand_entries(demand))));
            }
        }
        Err(NotChecked::Refused(error)) => entries.push(("refused", text(error.to_string()))),
    }
    record(entries)
}

fn demand_entries(demand: &Demand) -> Vec<(&'static str, Node)> {
    let mut entries = match &demand.finding {
        Finding::Number { low, high, measure, bound } => {
            let ends = |low: f64, high: f64| {
                let (low, high) = if measure.is_reversed() { (high, low) } else { (low, high) };
                (measure.node(low), measure.node(high))
            };
            let limits = match *bound {
                Bound::AtMost { limit, .. } if !measure.is_reversed() => {
                    vec![("at_most", measure.node(limit))]
                }
                Bound::AtLeast { limit } if measure.is_reversed() => vec![("at_most", measure.node(limit))],
                Bound::AtMost { limit, .. } | Bound::AtLeast { limit } => {
                    vec![("at_least", measure.node(limit))]
                }
                Bound::Within { low, high } => {
                    let (least, most) = ends(low, high);
                    vec![("at_least", least), ("at_most", most)]
                }
            };
            let (least, most) = ends(*low, *high);
            let mut entries = vec![("demand_low", least), ("demand_high", most)];
            entries.extend(limits);
            entries
        }
        Finding::Rule { finds, needs, .. } => {
            vec![("finds", text(finds.shown(System::Shop))), ("rule", text(needs))]
        }
    };
    let input = |input: &crate::demand::Input| {
        let value = match &input.value {
            InputValue::Amount(amount) => amount.measure.node(amount.si),
            InputValue::Words(words) => text(words),
        };
        record(vec![("label", text(&input.label)), ("value", value)])
    };
    let calculation = |(name, sources): &(&'static str, &'static [Source])| {
        let sources = Node::List(sources.iter().map(|source| text(source.to_string())).collect());
        record(vec![("name", text(*name)), ("formula", texts(words::formula(name))), ("sources", sources)])
    };
    entries.extend([
        ("place", demand.place.as_ref().map_or(Node::Absent, |place| text(place.shown(System::Shop)))),
        ("limit_from", text(words::origin(demand))),
        ("calculations", Node::List(demand.calculations.iter().map(calculation).collect())),
        ("formulas", texts(&demand.formulas)),
        ("inputs", Node::List(demand.inputs.iter().map(input).collect())),
        ("caveats", texts(demand.caveats.iter().map(Caveat::name))),
        ("weak", texts(&demand.weak)),
        ("notes", texts(&demand.notes)),
        ("cure", demand.cure.as_ref().map_or(Node::Absent, cure)),
    ]);
    entries
}

fn cure(cure: &Cure) -> Node {
    let mut entries = vec![("lever", text(&cure.lever))];
    if let Some((now, to)) = &cure.change {
        entries.push(("from", now.measure.node(now.si)));
        entries.push(("to", to.measure.node(to.si)));
    }
    entries.push(("words", text(cure.words.shown(System::Shop))));
    record(entries)
}
