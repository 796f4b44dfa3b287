//! That a reader can check each row with a number by hand: what the long text has to name.

use std::sync::LazyLock;

use coaming::prelude::*;

use super::Detail;
use super::words;
use crate::amount::Measure;
use crate::demand::{Demand, Finding, InputValue, NotChecked};
use crate::document::{Form, read};
use crate::held::{LARGE_DEFLECTION, PANEL_SOLVER};
use crate::review::{Review, Row, review};

const COVERS: [&str; 4] = [
    include_str!("../../../../examples/covers/first-guess.toml"),
    include_str!("../../../../examples/covers/first-guess-flanged.toml"),
    include_str!("../../../../examples/covers/half-fix.toml"),
    include_str!("../../../../examples/covers/revised.toml"),
];

static REVIEWS: LazyLock<Vec<Review>> =
    LazyLock::new(|| COVERS.iter().map(|text| review(&read(text, Form::Toml).unwrap()).unwrap()).collect());

/// The demand of a row that found a number, shown though it does not decide included.
fn numbered(row: &Row) -> Option<&Demand> {
    let demand = match &row.outcome {
        Ok(demand) => demand,
        Err(NotChecked::NotCalculated { shown: Some(demand), .. }) => demand.as_ref(),
        Err(_) => return None,
    };
    matches!(demand.finding, Finding::Number { .. }).then_some(demand)
}

/// What the long text of a row lacks for a reader who follows it by hand.
fn lacks(row: &Row, demand: &Demand) -> Vec<String> {
    let mut lacks = Vec::new();
    let lines = words::row(row, Detail::Full, System::Shop);
    let of = |label: &str| {
        lines.iter().filter(|line| line.0 == label).map(|line| line.1.as_str()).collect::<Vec<_>>()
    };
    let (formulas, sources, inputs) = (of("formula"), of("source"), of("input"));
    if demand.calculations.is_empty() && demand.formulas.is_empty() {
        lacks.push("a calculation or a formula".to_owned());
    }
    for (name, of) in &demand.calculations {
        if ![PANEL_SOLVER.0, LARGE_DEFLECTION.0].contains(name)
            && !formulas.iter().any(|line| line.starts_with(&format!("{name}: ")))
        {
            lacks.push(format!("the formula of {name}"));
        }
        if of.is_empty() || !sources.iter().any(|line| line.starts_with(&format!("{name}: "))) {
            lacks.push(format!("the source of {name}"));
        }
    }
    if inputs.is_empty() {
        lacks.push("its inputs".to_owned());
    }
    for input in &demand.inputs {
        let InputValue::Amount(amount) = &input.value else { continue };
        if let Measure::Quantity(..) = amount.measure {
            let shown = format!("{}: {}", input.label, amount.shown(System::Shop));
            let unit = shown.rsplit_once(' ').is_some_and(|(_, unit)| unit.parse::<f64>().is_err());
            if !unit || !inputs.contains(&shown.as_str()) {
                lacks.push(format!("the unit of {}", input.label));
            }
        }
    }
    lacks
}

#[test]
fn every_number_can_be_followed_by_hand() {
    let mut found = Vec::new();
    for review in REVIEWS.iter() {
        for row in &review.rows {
            let Some(demand) = numbered(row) else { continue };
            found.extend(lacks(row, demand).into_iter().map(|what| format!("{}: {what}", row.key)));
        }
    }
    found.sort();
    found.dedup();
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// The row that is solved on the mesh names the solver in its short text, and its theory in the long one.
#[test]
fn a_solved_row_names_the_solver() {
    let row = REVIEWS[3].row("seal_all_round").unwrap();
    let lines = words::row(row, Detail::Full, System::Shop);
    assert!(lines.iter().any(|line| line.0 == "from" && line.1.contains("panel_solver; ")), "{lines:?}");
    assert!(lines.iter().any(|line| line.0 == "source" && line.1.contains("Batoz")), "{lines:?}");
}

/// The formula of a calculation is read out of its documentation, a line each.
#[test]
fn a_formula_stands_line_by_line() {
    assert_eq!(
        words::formula("latch_force"),
        [
            "Fs = q L; force of the gasket",
            "Fp = −p A; force of the pressure; p > 0 pushes the lid onto its seal and eases the latches",
            "F = (Fs + Fp) / n; force on each latch",
            "N = j F / (i η); force of the hand on j latches worked at once",
            "The closing itself is done without the pressure: N is taken from the gasket's share alone, F0 = Fs/n.",
        ]
    );
    assert!(words::formula(PANEL_SOLVER.0).is_empty());
    for entry in coaming::ALL {
        assert!(!words::formula(entry.name).is_empty(), "{} has no formula", entry.name);
    }
}
