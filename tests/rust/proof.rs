//! The table of proof: by topic, which cases prove each calculation, how far off it was, and where its formula comes from.
//!
//! `cargo xtask generate` writes it to `tests/PROOF.md`, and `--check` says whether it is current.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use coaming::{Entry, Topic};

use crate::comparing::{Difference, run};
use crate::{Case, Origin, check_values};

const HEAD: &str = "\
# What proves the calculations

Made by `cargo xtask generate` from the registry and from `tests/cases`; not edited by hand.

- **printed**: digits read in a source, or confirmed by an independent computation. **derived**: by hand or by an independent
  method, such as the scripts in `tests/independent`. Only these two prove anything.
- **unconfirmed**: digits quoted by another text or recalled. **pinned**: our own output. They guard against change and prove
  nothing.
- Behind the number of cases stands the worst difference seen between what was calculated and what was expected, as a part
  of the expected value, over every number that has a tolerance and is not zero; an absolute temperature counts in kelvin. A
  printed figure can be no closer than its last digit. `exact` means that nothing had or needed a tolerance; cases that expect a
  refusal are counted, and have no difference.
- The panel solver and the checks of the review are proven in the tests of their own crates.
";

/// The cases of one calculation by origin: how many, and the worst difference.
type Tally = BTreeMap<Origin, (usize, Difference)>;

/// The text of the table.
///
/// # Errors
/// Where a case does not hold.
pub fn text() -> Result<String, String> {
    let cases = crate::all();
    let mut tallies: BTreeMap<&str, Tally> = BTreeMap::new();
    for (_, case) in &cases {
        let seen = run(case).map_err(|fault| format!("{} ({}): {fault}", case.calculation, case.source))?;
        let tally = tallies.entry(case.calculation.as_str()).or_default();
        let (count, worst) = tally.entry(case.origin).or_default();
        *count += 1;
        *worst = worst.with(seen);
    }
    let unproven = check_values::book().unproven;
    let mut text = HEAD.to_owned();
    summary(&mut text, &tallies);
    for topic in Topic::ALL {
        let entries = of(*topic);
        if entries.is_empty() {
            continue;
        }
        let _ = write!(text, "\n## {} {}\n\n", topic.id(), topic.words());
        text.push_str("| calculation | printed | derived | unconfirmed | pinned | proven by |\n|---|---|---|---|---|---|\n");
        for entry in &entries {
            let empty = Tally::new();
            let tally = tallies.get(entry.name).unwrap_or(&empty);
            let _ = write!(text, "| `{}` |", entry.name);
            for origin in Origin::ALL {
                let _ = write!(text, " {} |", cell(tally.get(origin)));
            }
            let by = match unproven.get(entry.name) {
                Some(reason) => format!("**unproven.** {reason}"),
                None => proven_by(entry, &cases),
            };
            let _ = writeln!(text, " {by} |");
        }
        text.push_str("\nFormulas:\n");
        let sources: BTreeSet<String> =
            entries.iter().flat_map(|entry| entry.source).map(ToString::to_string).collect();
        for source in sources {
            let _ = writeln!(text, "- {source}");
        }
    }
    Ok(text)
}

fn of(topic: Topic) -> Vec<&'static Entry> {
    coaming::ALL.iter().filter(|entry| entry.topic == topic).collect()
}

fn summary(text: &mut String, tallies: &BTreeMap<&str, Tally>) {
    text.push_str("\n| topic | | calculations | printed | derived | unconfirmed | pinned |\n|---|---|---|---|---|---|---|\n");
    let mut total = Tally::new();
    let mut number = 0;
    for topic in Topic::ALL {
        let entries = of(*topic);
        number += entries.len();
        let mut sum = Tally::new();
        for (origin, found) in entries.iter().filter_map(|entry| tallies.get(entry.name)).flatten() {
            for tally in [&mut sum, &mut total] {
                let (count, worst) = tally.entry(*origin).or_default();
                *count += found.0;
                *worst = worst.with(found.1);
            }
        }
        let _ = write!(text, "| {} | {} |", topic.id(), topic.words());
        if entries.is_empty() {
            text.push_str(" none yet | | | | |\n");
        } else {
            row(text, entries.len(), &sum);
        }
    }
    text.push_str("| | all |");
    row(text, number, &total);
}

fn row(text: &mut String, number: usize, tally: &Tally) {
    let _ = write!(text, " {number} |");
    for origin in Origin::ALL {
        let _ = write!(text, " {} |", cell(tally.get(origin)));
    }
    text.push('\n');
}

/// `12 (3e-4)`: the number of cases and the worst difference, to one digit.
///
/// A difference near the last bit is given by its bound, so that the text is the same on every platform.
fn cell(found: Option<&(usize, Difference)>) -> String {
    let Some((count, worst)) = found else { return "-".to_owned() };
    match worst {
        Difference { numbers: 0, .. } => count.to_string(),
        Difference { relative: 0.0, .. } => format!("{count} (exact)"),
        Difference { relative, .. } if *relative < 1e-12 => format!("{count} (< 1e-12)"),
        Difference { relative, .. } => format!("{count} ({relative:.0e})"),
    }
}

/// What the cases that prove a calculation name: the published figures by their ids and the independent scripts; else
/// the cases' own words.
fn proven_by(entry: &Entry, cases: &[(String, Case)]) -> String {
    let proving = || {
        cases
            .iter()
            .map(|(_, case)| case)
            .filter(|case| case.calculation == entry.name && case.origin.proves() && !case.expect.is_empty())
    };
    let ids: BTreeSet<String> = proving().flat_map(|case| check_values::ids(&case.source)).collect();
    let scripts: BTreeSet<String> = proving().filter_map(|case| script(&case.source)).collect();
    let mut by: Vec<String> = Vec::new();
    if !ids.is_empty() {
        by.push(ids.into_iter().collect::<Vec<_>>().join(" "));
    }
    by.extend(scripts.iter().map(|script| format!("`{script}`")));
    let by_hand: BTreeSet<&str> = proving()
        .map(|case| case.source.as_str())
        .filter(|source| check_values::ids(source).is_empty() && script(source).is_none())
        .collect();
    match by_hand.len() {
        0 => {}
        1..=3 => by.extend(by_hand.iter().map(|source| source.replace('|', "\\|"))),
        more => by.push(format!("{more} sources or derivations that the cases name")),
    }
    by.join("; ")
}

/// The script in `tests/independent` that a source names.
fn script(source: &str) -> Option<String> {
    let (_, rest) = source.split_once("tests/independent/")?;
    let (name, _) = rest.split_once(".py")?;
    Some(format!("{name}.py"))
}
