//! The page on the four covers claims a verdict and a finding for each of its rows: the reviews say the same.

use super::*;
use crate::render::finds;
use coaming::prelude::System;

const PAGE: &str = include_str!("../../../../../examples/covers/README.md");

/// A row of the page's table: which cover, which row of its review, and what that is said to find.
struct Claim<'a> {
    cover: &'a str,
    key: &'a str,
    finds: &'a str,
    verdict: &'a str,
}

fn claims() -> Vec<Claim<'static>> {
    let cells = |line: &'static str| -> Vec<&'static str> {
        line.trim().trim_matches('|').split('|').map(str::trim).collect()
    };
    let lines = PAGE.lines().skip_while(|line| !line.starts_with("| item | cover |")).skip(2);
    let table = lines.take_while(|line| line.starts_with('|')).map(cells);
    table
        .map(|cells| {
            let [_, cover, key, _, finds, verdict, _] = cells.as_slice() else {
                panic!("seven cells: {cells:?}")
            };
            Claim { cover, key: key.trim_matches('`'), finds, verdict }
        })
        .collect()
}

/// What a row says that it finds, in the words of the text review.
fn said(row: &Row) -> String {
    match &row.outcome {
        Ok(demand) => finds(demand, System::Shop),
        Err(NotChecked::NotCalculated { shown: Some(demand), .. }) => finds(demand, System::Shop),
        Err(NotChecked::Needs(paths)) => format!("needs {}", paths.join(", ")),
        Err(_) => String::new(),
    }
}

fn judged(row: &Row) -> String {
    match &row.waiver {
        Some((who, why)) => format!("{} (accepted by {who}: {why})", row.verdict.word()),
        None => row.verdict.word().to_owned(),
    }
}

#[test]
fn the_page_says_what_the_reviews_say() {
    let covers = [
        ("first guess", reviewed(FIRST_GUESS)),
        ("flanged", reviewed(FLANGED)),
        ("half fix", reviewed(HALF_FIX)),
        ("revised", reviewed(REVISED)),
    ];
    let claims = claims();
    assert!(claims.len() > 40, "{} rows", claims.len());
    let mut stale = Vec::new();
    for Claim { cover, key, finds, verdict } in claims {
        let (_, review) =
            covers.iter().find(|known| known.0 == cover).unwrap_or_else(|| panic!("no cover {cover}"));
        let row = review.row(key).unwrap_or_else(|| panic!("{cover}: no row {key}"));
        let (now, judged) = (said(&row), judged(&row));
        if (now.as_str(), judged.as_str()) != (finds, verdict) {
            stale.push(format!("{cover} | {key} | {now} | {judged}"));
        }
    }
    assert!(stale.is_empty(), "the page is stale; the reviews say\n{}", stale.join("\n"));
}
