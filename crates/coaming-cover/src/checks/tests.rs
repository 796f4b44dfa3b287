//! The four covers of the demonstration: the verdicts that hand estimates made before the library existed expect, and
//! each of these checks on both sides of its limit and without its input.

mod all_round;
mod bends;
mod bonds_and_warmth;
mod claims;
mod crossing;
mod crossing_table;
mod edge;
mod held_latches;
mod held_lid;
mod held_pane;
mod held_seal;
mod held_sliding;
mod held_warm;
mod holes;
mod joint;
mod leaks;
mod long_term;
mod neighbours;
mod restraint;
mod screws;

use std::sync::Arc;

use super::PARTS;
use crate::demand::{Bound, Finding, InputValue, NotChecked};
use crate::document::{Cover, Form, read};
use crate::held::Solutions;
use crate::prepared::Prepared;
use crate::review::{Row, review_of, row};
use crate::verdict::Verdict;

const FIRST_GUESS: &str = include_str!("../../../../examples/covers/first-guess.toml");
const FLANGED: &str = include_str!("../../../../examples/covers/first-guess-flanged.toml");
const HALF_FIX: &str = include_str!("../../../../examples/covers/half-fix.toml");
const REVISED: &str = include_str!("../../../../examples/covers/revised.toml");

thread_local! {
    /// What the solver has found in this test: documents that differ in no panel share it.
    static SOLUTIONS: Arc<Solutions> = Arc::default();
}

/// A document whose rows are made one by one, as they are asked for.
struct Reviewed(Cover);

impl Reviewed {
    fn row(&self, key: &str) -> Option<Row> {
        let prepared = Prepared::with(&self.0, SOLUTIONS.with(Arc::clone)).unwrap();
        let wanted = key.split('(').next().unwrap();
        let checks = PARTS.iter().flat_map(|(part, checks)| checks.iter().map(move |check| (*part, check)));
        let mut rows = checks.filter(|(_, check)| check.key == wanted).flat_map(|(part, check)| {
            let subjects = (check.subjects)(&prepared);
            subjects.iter().map(|subject| (part, check, subject.clone())).collect::<Vec<_>>()
        });
        rows.find(|(_, check, subject)| {
            let named = format!("{}({})", check.key, subject.join(", "));
            key == named || (subject.is_empty() && key == check.key)
        })
        .map(|(part, check, subject)| row(&prepared, part, check, &subject))
    }
}

fn reviewed(text: &str) -> Reviewed {
    Reviewed(read(text, Form::Toml).unwrap())
}

/// The review of a document in which one piece of text is replaced, wherever it stands.
fn changed(text: &str, from: &str, to: &str) -> Reviewed {
    assert!(text.contains(from), "{from}");
    reviewed(&text.replace(from, to))
}

fn verdict(review: &Reviewed, key: &str) -> Verdict {
    review.row(key).unwrap_or_else(|| panic!("no row {key}")).verdict
}

/// The demand of a row, both ends, in SI units.
fn demand(review: &Reviewed, key: &str) -> (f64, f64) {
    match &review.row(key).unwrap().outcome {
        Ok(demand) => match demand.finding {
            Finding::Number { low, high, .. } => (low, high),
            ref other => panic!("{key}: {other:?}"),
        },
        Err(why) => panic!("{key}: {why:?}"),
    }
}

/// The limit of a row, in SI units.
fn limit(review: &Reviewed, key: &str) -> f64 {
    match review.row(key).unwrap().outcome.as_ref().map(|demand| &demand.finding) {
        Ok(Finding::Number { bound: Bound::AtMost { limit, .. } | Bound::AtLeast { limit }, .. }) => *limit,
        other => panic!("{key}: {other:?}"),
    }
}

/// A number that a row took or found on its way, in SI units.
fn input(review: &Reviewed, key: &str, label: &str) -> f64 {
    let outcome = review.row(key).unwrap().outcome.unwrap();
    match outcome.inputs.iter().find(|input| input.label == label).map(|input| &input.value) {
        Some(InputValue::Amount(amount)) => amount.si,
        other => panic!("{key}, {label}: {other:?}"),
    }
}

/// The text of a document without a piece.
fn without_text(text: &str, piece: &str) -> String {
    assert!(text.contains(piece), "{piece}");
    text.replace(piece, "\n")
}

/// The review of a document without a piece of its text.
fn without(text: &str, piece: &str) -> Reviewed {
    reviewed(&without_text(text, piece))
}

/// Asserts that a row is not made, for want of a path.
fn needs(review: &Reviewed, key: &str, path: &str) {
    match &review.row(key).unwrap().outcome {
        Err(NotChecked::Needs(paths)) => assert!(paths.iter().any(|p| p.contains(path)), "{key}: {paths:?}"),
        other => panic!("{key}: {other:?}"),
    }
}

/// Asserts that a row is not made, for want of a calculation.
fn not_calculated(review: &Reviewed, key: &str) {
    let outcome = &review.row(key).unwrap().outcome;
    assert!(matches!(outcome, Err(NotChecked::NotCalculated { .. })), "{key}: {outcome:?}");
}

fn close(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "found {found}, expected {expected}");
}

#[test]
fn the_first_guess_fails_where_the_estimates_say() {
    let review = reviewed(FIRST_GUESS);
    for key in [
        "lid_wind_in(lid)",
        "seal_nominal",
        "seal_gap_most",
        "seal_recovery",
        "latch_travel",
        "countersink_depth(pane_screws, lid)",
        "screw_tip_clearance(pane_screws)",
        "hole_movement_hot(pane_screws, pane)",
        "insert_jack_out(pane_screws)",
        "locking(pane_screws, pane)",
        "sealant(pane, silicone_acetoxy)",
        "frame_growth(frame)",
        "bond_galvanic(strip_bond)",
        "backing_temperature",
        "closed_bay",
        "dew",
    ] {
        assert_eq!(verdict(&review, key), Verdict::Fail, "{key}");
    }
    // By hand: (9.4 - 4.5)/2 = 2.45 mm in 1.6 mm.
    close(demand(&review, "countersink_depth(pane_screws, lid)").0, 2.45 / 1.6, 1e-9);
    // By hand: (10 - 6)/10.
    close(demand(&review, "seal_nominal").0, 0.40, 1e-12);
    // By hand: 4.0 + 2 + 0.6 + 0.5 + 1.5 mm.
    close(demand(&review, "latch_travel").0, 8.6e-3, 1e-12);
    // By hand: 0.45 of 4.0 mm comes back.
    close(demand(&review, "seal_recovery").0, 1.8e-3, 1e-9);
    // By hand: hole 7.0 less 12 - (1.6 + 0.1 less + 3 + 0.2 less): bottoms by 0.7 mm at the extreme, 0.4 nominal.
    close(demand(&review, "screw_tip_clearance(pane_screws)").0, -0.7e-3, 1e-9);
}

#[test]
fn the_flanged_guess_fails_on_its_flat_pattern_and_on_holes_beside_bends() {
    let review = reviewed(FLANGED);
    assert_eq!(verdict(&review, "flat_pattern(lid)"), Verdict::Fail);
    // By hand: 2 (6.4 - (pi/2)(1.6 + 0.43 x 1.6)) = 5.61 mm too large.
    close(demand(&review, "flat_pattern(lid)").0, 5.61e-3, 0.01e-3);
    for edge in ["left", "right", "top", "bottom"] {
        assert_eq!(verdict(&review, &format!("hole_to_bend(lid, {edge})")), Verdict::Fail);
    }
}

#[test]
fn the_half_fix_fails_on_hand_force() {
    let review = reviewed(HALF_FIX);
    assert_eq!(verdict(&review, "latch_hand_force"), Verdict::Fail);
    assert_eq!(verdict(&review, "flat_pattern(lid)"), Verdict::Pass);
}

#[test]
fn the_revision_passes_where_the_estimates_say() {
    let review = reviewed(REVISED);
    for key in [
        "seal_nominal",
        "seal_gap_most",
        "seal_gap_least",
        "latch_hand_force",
        "latch_travel",
        "hole_movement_hot(pane_screws, pane)",
        "hole_movement_cold(pane_screws, pane)",
        "insert_jack_out(pane_screws)",
        "flat_pattern(lid)",
        "hole_to_bend(lid, left)",
        "frame_growth(frame)",
        "bush_length(pane_screws)",
        "layer_temperature(pane)",
        "bond_shear(strip_bond)",
        "bond_galvanic(strip_bond)",
        "backing_temperature",
        "closed_bay",
        "mass",
        "guard",
    ] {
        assert!(verdict(&review, key) >= Verdict::Marginal, "{key}: {:?}", verdict(&review, key));
    }
    // 58 % of the sheet; no check value holds the sharp diameter of this head, so a test is asked for.
    close(demand(&review, "countersink_depth(pane_screws, lid)").0, 1.45 / 2.5, 1e-9);
    assert_eq!(verdict(&review, "countersink_depth(pane_screws, lid)"), Verdict::NeedsTest);
    let row = review.row("countersink_depth(pane_screws, lid)").unwrap();
    let cure = row.outcome.unwrap().cure.unwrap().words.shown(coaming::prelude::System::Shop);
    assert!(cure.contains("confirms the sharp diameter of iso_7046_1 M3: measure it"), "{cure}");
    // By hand: deduction 2 x 5.7 - (pi/2)(3.2 + 0.43 x 2.5) = 4.685 mm; blank 580 + 2 (25 - 4.685).
    close(demand(&review, "flat_pattern(lid)").1, 0.03e-3, 0.03e-3);
    // Hand estimate 20 to 28 N.
    let (low, high) = demand(&review, "latch_hand_force");
    assert!(low > 20.0 && high < 28.0, "{low} {high}");
}

#[test]
fn each_limit_is_crossed_by_one_change() {
    let cases = [
        ("latch_travel", "travel = \"12 mm\"", "travel = \"7 mm\"", Verdict::Fail),
        ("seal_nominal", "stop_height = \"7.0 mm\"", "stop_height = \"8.5 mm\"", Verdict::Fail),
        ("seal_gap_most", "flatness = \"0.5 mm\"", "flatness = \"2.5 mm\"", Verdict::Fail),
        (
            "countersink_depth(pane_screws, lid)",
            "thickness = \"2.5 mm\"",
            "thickness = \"1.8 mm\"",
            Verdict::Fail,
        ),
        ("screw_tip_clearance(pane_screws)", "length = \"16 mm\"", "length = \"18 mm\"", Verdict::Fail),
        ("screw_engagement(pane_screws)", "length = \"16 mm\"", "length = \"10 mm\"", Verdict::Fail),
        ("hole_movement_hot(pane_screws, pane)", "hole = \"8.0 mm\"", "hole = \"7.0 mm\"", Verdict::Fail),
        (
            "hole_to_bend(lid, left)",
            "nearest_hole = \"12.75 mm\"",
            "nearest_hole = \"9.4 mm\"",
            Verdict::Fail,
        ),
        (
            "hole_to_bend(lid, left)",
            "nearest_hole = \"12.75 mm\"",
            "nearest_hole = \"9.5 mm\"",
            Verdict::Marginal,
        ),
        ("smallest_flange(lid, left)", "flange = \"25 mm\"", "flange = \"11 mm\"", Verdict::Fail),
        ("flat_pattern(lid)", "width = \"620.6 mm\"", "width = \"622 mm\"", Verdict::Fail),
        ("frame_growth(frame)", "piece_gap = \"2 mm\"", "piece_gap = \"1 mm\"", Verdict::Fail),
        ("bond_shear(strip_bond)", "thickness = \"1.0 mm\"", "thickness = \"0.3 mm\"", Verdict::Fail),
        ("bond_galvanic(strip_bond)", "insulated = true", "insulated = false", Verdict::Fail),
        ("closed_bay", "vented = true", "vented = false", Verdict::Fail),
        ("bush_length(pane_screws)", "length = \"5.4 mm\"", "length = \"5.1 mm\"", Verdict::Fail),
        (
            "layer_temperature(frame)",
            "temperature = \"55 degC\", humidity = 0.9",
            "temperature = \"150 degC\", humidity = 0.9",
            Verdict::Fail,
        ),
        ("guard", "guard_needs_tool = true", "guard_needs_tool = false", Verdict::Fail),
        ("mass", "mass = \"60 g\"", "mass = \"1.3 kg\"", Verdict::Fail),
        ("latch_hand_force", "lever_ratio = 5.8", "lever_ratio = 2.0", Verdict::Fail),
        (
            "edge_distance(pane_screws, lid)",
            "edge_distance = \"16 mm\"",
            "edge_distance = \"6 mm\"",
            Verdict::Fail,
        ),
    ];
    for (key, from, to, expected) in cases {
        assert_eq!(verdict(&changed(REVISED, from, to), key), expected, "{key}: {from} -> {to}");
    }
}

#[test]
fn a_missing_input_is_named_and_never_passes() {
    let cases = [
        ("latch_travel", "travel = \"12 mm\"\n", "latches.travel"),
        ("seal_gap_most", "flatness = \"0.5 mm\"\n", "opening.flatness"),
        ("seal_recovery", "set_of_deflection = 0.5\n", "seal.set_of_deflection"),
        ("latch_hand_force", "lever_ratio = 5.8\n", "latches.lever_ratio"),
        ("screw_tip_clearance(pane_screws)", "length = \"16 mm\"\n", "screws.pane_screws.length"),
        ("mass", "one_handed = true\n", "service.one_handed"),
        ("guard", "guard_needs_tool = true\n", "hazard.guard_needs_tool"),
        ("closed_bay", "vented = true\n", "service.bay.vented"),
        ("bond_galvanic(strip_bond)", "insulated = true\n", "bonds.strip_bond.insulated"),
    ];
    for (key, piece, path) in cases {
        let review = changed(REVISED, piece, "\n");
        let row = review.row(key).unwrap();
        let Err(NotChecked::Needs(paths)) = &row.outcome else { panic!("{key}: {:?}", row.outcome) };
        assert!(paths.iter().any(|needed| needed.contains(path)), "{key}: {paths:?}");
    }
}

#[test]
fn a_lever_helps_no_row_that_asks_for_the_other_way() {
    // 8 mm through 4.6 mm of grip engage 3.4 mm, too little; in a hole of 4 mm they leave 0.3 mm at the tip, too little too.
    let text = FIRST_GUESS.replace("length = \"12 mm\"", "length = \"8 mm\"");
    let text = text.replace("thread_length = \"6 mm\"", "thread_length = \"4 mm\"");
    let text = text.replace("hole_depth = \"7.0 mm\"", "hole_depth = \"4 mm\"");
    let cover = read(&text, Form::Toml).unwrap();
    let review = review_of(&Prepared::with(&cover, Arc::new(Solutions::coarse())).unwrap()).unwrap();
    for lever in &review.levers {
        let Some((now, to)) = lever.cure.change else { continue };
        for key in &lever.rows {
            let row = review.row(key).unwrap();
            let cure = row.outcome.as_ref().unwrap().cure.as_ref().unwrap();
            if let Some((from, wanted)) = cure.change {
                assert!((to.si - now.si) * (wanted.si - from.si) >= 0.0, "{key}: {}", cure.lever);
            }
        }
    }
    let lengths = review.levers.iter().filter(|lever| lever.cure.lever == "screws.pane_screws.length");
    assert_eq!(lengths.count(), 2);
}

#[test]
fn a_waiver_never_makes_a_pass() {
    let waived = format!(
        "{REVISED}\n[[waivers]]\ncheck = \"dew\"\naccepted_by = \"the shop\"\nreason = \"drained\"\n"
    );
    let cover = read(&waived, Form::Toml).unwrap();
    let review = review_of(&Prepared::with(&cover, Arc::new(Solutions::coarse())).unwrap()).unwrap();
    let row = review.row("dew").unwrap();
    assert_eq!((row.verdict, row.waiver.is_some()), (Verdict::Fail, true));
    assert!(!review.all_passed());
    let unknown = waived.replace("check = \"dew\"", "check = \"dewy\"");
    let error = review_error(&unknown);
    assert!(error.contains("waivers[0].check") && error.contains("did you mean `dew`"), "{error}");
}

fn review_error(text: &str) -> String {
    let cover = read(text, Form::Toml).unwrap();
    review_of(&Prepared::with(&cover, Arc::new(Solutions::coarse())).unwrap()).unwrap_err().to_string()
}
