//! Every check with a number on both sides of its limit, and every rule both kept and broken.
//!
//! Where the limit is one of common practice, the document's own `limits` put it just beside what the row finds, on
//! either side; nothing else moves. The other limits are crossed by one entry of the document, [`LEVERS`]; rules are
//! kept and broken by [`STATES`] and by the four covers themselves.

use std::collections::{BTreeMap, BTreeSet};

use coaming::declaration::Fields;

use super::*;
use crate::demand::{Demand, Origin};
use crate::limits::Limits;
use crossing_table::{LEVERS, Lever, STATES, State};

const COVERS: [&str; 4] = [FIRST_GUESS, FLANGED, HALF_FIX, REVISED];

/// Checks whose rows take the panel solver seconds: crossed by tests of their own.
const SOLVED: &[&str] = &[
    "latch_hand_force",
    "latch_missing",
    "latch_release",
    "latch_travel_cold",
    "latch_travel_hot",
    "latch_travel_sun",
    "latch_working_load",
    "latch_working_load_cold",
    "latch_working_load_hot",
    "latch_working_load_sun",
    "latch_working_load_wind",
    "lid_frequency",
    "lid_lean",
    "lid_wind_in",
    "lid_wind_in_stress",
    "lid_wind_out",
    "lid_wind_out_stress",
    "pane_acceleration_z",
    "pane_acceleration_z_stress",
    "pane_frequency",
    "pane_hand",
    "pane_hand_stress",
    "pane_wind_in",
    "pane_wind_in_stress",
    "pane_wind_out",
    "pane_wind_out_stress",
    "pressed_sheet_cold",
    "pressed_sheet_hot",
    "seal_acceleration_x",
    "seal_acceleration_y",
    "seal_acceleration_z",
    "seal_after_season",
    "seal_all_round",
    "seal_all_round_most",
    "seal_cold",
    "seal_hot",
    "seal_latch_missing",
    "seal_sliding_x",
    "seal_sliding_y",
    "seal_sun",
    "seal_wind_in",
    "seal_wind_out",
];

/// The band of a finding and its upper or lower limit; none where the other limit of a window is not held.
fn ends(demand: &Demand, upper: bool) -> Option<(f64, f64, f64)> {
    let Finding::Number { low, high, bound, .. } = demand.finding else { return None };
    match bound {
        Bound::AtMost { limit, .. } if upper => Some((low, high, limit)),
        Bound::AtLeast { limit } if !upper => Some((low, high, limit)),
        Bound::Within { low: least, high: limit } if upper && low >= least => Some((low, high, limit)),
        Bound::Within { low: limit, high: most } if !upper && high <= most => Some((low, high, limit)),
        _ => None,
    }
}

/// A cover with one limit replaced.
pub(super) fn with_limit(cover: &Cover, key: &str, value: f64) -> Reviewed {
    let mut cover = cover.clone();
    let place = Limits::place(key).unwrap();
    assert!(cover.limits.get_or_insert_default().set(place, value), "{key}");
    Reviewed(cover)
}

/// Crosses the limit of a row from common practice; false where that limit cannot be put beside the finding.
fn crossed(cover: &Cover, row: &Row, demand: &Demand, upper: bool) -> bool {
    let Origin::Practice(origin) = &demand.origin else { return false };
    let Some((low, high, bound)) = ends(demand, upper) else { return false };
    let place = Limits::place(origin.key).unwrap();
    let now = cover.limits.as_ref().and_then(|given| given.get(place));
    let now = now.or_else(|| Limits::common_practice().get(place)).unwrap();
    let at = |value: f64| {
        let moved = with_limit(cover, origin.key, value).row(&row.key)?;
        let found = moved.outcome.as_ref().ok().and_then(|demand| ends(demand, upper))?;
        Some((moved.verdict, found))
    };
    // What is due is a limit times something, or more: a straight line of it.
    let Some((_, (_, _, other))) = at(now * 1.01) else { return false };
    let slope = (other - bound) / (0.01 * now);
    if slope == 0.0 {
        return false;
    }
    let (worse, better) = if upper { (high, low) } else { (low, high) };
    let mut seen = 0;
    let judged = |beside: f64, within: bool| {
        let step = 1e-6 * beside.abs() * if upper == within { 1.0 } else { -1.0 };
        let value = now + (beside + step - bound) / slope;
        // A limit that may not be put there, such as one below nothing.
        let (least, most) = Limits::RECORD.fields[place].possible;
        if beside <= 0.0 || value < least || value > most {
            return None;
        }
        let (verdict, (l, h, moved)) = at(value)?;
        assert!((l, h) == (low, high), "{}: the finding moves with limits.{}", row.key, origin.key);
        close(moved, beside + step, 1e-9 * beside.abs());
        Some(verdict)
    };
    let best = if demand.unverified { Verdict::NeedsTest } else { Verdict::Marginal };
    if let Some(verdict) = judged(worse, true) {
        assert_eq!(verdict, best, "{} just within limits.{}", row.key, origin.key);
        seen += 1;
    }
    if let Some(verdict) = judged(better, false) {
        assert_eq!(verdict, Verdict::Fail, "{} just beyond limits.{}", row.key, origin.key);
        seen += 1;
    }
    if low < high
        && let Some(verdict) = judged(0.5 * (low + high), true)
    {
        assert_eq!(verdict, Verdict::NeedsTest, "{} with limits.{} inside the band", row.key, origin.key);
    }
    seen == 2
}

/// Crosses the limit of a row by one entry: it holds up to the limit and fails from there on.
fn crosses(&Lever(key, document, from, to, holds, breaks): &Lever) {
    let at = |value: f64| {
        let row = changed(document, from, &to.replace("{}", &format!("{value:?}"))).row(key).unwrap();
        let demand = row.outcome.unwrap_or_else(|why| panic!("{key} at {value}: {why:?}"));
        (row.verdict, demand)
    };
    let fails = |value: f64| at(value).0 == Verdict::Fail;
    assert!(!fails(holds) && fails(breaks), "{key}");
    let (mut within, mut beyond) = (holds, breaks);
    for _ in 0..40 {
        let middle = 0.5 * (within + beyond);
        *(if fails(middle) { &mut beyond } else { &mut within }) = middle;
    }
    for value in [within, beyond] {
        let (_, demand) = at(value);
        let (low, high, limit, better) = match demand.finding {
            Finding::Number { low, high, bound: Bound::AtMost { limit, .. }, .. } => (low, high, limit, low),
            Finding::Number { low, high, bound: Bound::AtLeast { limit }, .. } => (low, high, limit, high),
            ref other => panic!("{key}: {other:?}"),
        };
        let scale = low.abs().max(high.abs()).max(limit.abs());
        assert!(
            (better - limit).abs() <= 1e-6 * scale.max(1e-3),
            "{key} fails at {value}, away from its limit"
        );
    }
}

#[test]
fn a_limit_is_crossed_where_it_stands() {
    LEVERS.iter().for_each(crosses);
}

/// Checks that never pass: they flag what is judged elsewhere, or rest on heads that are not confirmed.
const FLAGS: &[&str] = &["flammability", "touch", "touch_inner", "head_bearing", "insert_estimate"];

#[test]
fn every_check_is_seen_on_both_sides_of_its_limit() {
    let check_of = |key: &'static str| key.split('(').next().unwrap();
    let mut over: BTreeSet<&str> = LEVERS.iter().map(|lever| check_of(lever.0)).collect();
    let mut verdicts: BTreeMap<&str, BTreeSet<Verdict>> = BTreeMap::new();
    for &State(key, document, changes, expected) in STATES {
        let text = changes.iter().fold(document.to_owned(), |text, (from, to)| {
            assert!(text.contains(from), "{from}");
            text.replace(from, to)
        });
        assert_eq!(verdict(&reviewed(&text), key), expected, "{key}: {changes:?}");
        verdicts.entry(check_of(key)).or_default().insert(expected);
    }
    for text in COVERS {
        let cover = read(text, Form::Toml).unwrap();
        let prepared = Prepared::new(&cover).unwrap();
        for (part, check) in PARTS.iter().flat_map(|(part, all)| all.iter().map(move |check| (*part, check)))
        {
            if SOLVED.contains(&check.key) {
                continue;
            }
            for subject in (check.subjects)(&prepared) {
                let row = row(&prepared, part, check, &subject);
                verdicts.entry(check.key).or_default().insert(row.verdict);
                if over.contains(check.key) {
                    continue;
                }
                if let Ok(demand) = &row.outcome
                    && [true, false].into_iter().any(|upper| crossed(&cover, &row, demand, upper))
                {
                    over.insert(check.key);
                }
            }
        }
    }
    let seen = |key: &str, fails: bool| {
        let bad = |verdict: &Verdict| matches!(verdict, Verdict::Fail | Verdict::NeedsTest);
        let good = |verdict: &Verdict| matches!(verdict, Verdict::Pass | Verdict::Marginal);
        verdicts.get(key).is_some_and(|seen| seen.iter().any(|v| if fails { bad(v) } else { good(v) }))
    };
    let missing: Vec<&str> = PARTS
        .iter()
        .flat_map(|(_, checks)| checks.iter().map(|check| check.key))
        .filter(|key| !SOLVED.contains(key) && !over.contains(key))
        .filter(|key| !(seen(key, true) && (seen(key, false) || FLAGS.contains(key))))
        .collect();
    assert!(missing.is_empty(), "never seen on both sides: {missing:?}");
}
