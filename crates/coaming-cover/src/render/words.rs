//! The words of a row, the same for every format.

use coaming::prelude::*;

use crate::demand::{Bound, Cure, Demand, Finding, InputValue, NotChecked, Origin};
use crate::review::Row;
use crate::verdict::Verdict;

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
            Bound::AtMost { limit, .. } => format!("at most {}", measure.shown(limit, system)),
            Bound::AtLeast { limit } => format!("at least {}", measure.shown(limit, system)),
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
            format!("{} {} -> {}: {}", cure.lever, now.shown(system), to.shown(system), cure.words)
        }
        None => cure.words.clone(),
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
pub(crate) fn standing(review: &crate::review::Review) -> String {
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
pub(crate) fn counts(review: &crate::review::Review) -> String {
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
