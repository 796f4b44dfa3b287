//! The verdict of a finding: one rule for every check.
//!
//! A band is judged by its worse end; one that straddles the limit needs a test. Caveats never change a verdict.

use crate::demand::{Bound, Finding, Ruling};

/// A verdict, the gravest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// The demand is past its limit.
    Fail,
    /// Something needed for it is missing, or is not calculated.
    NotChecked,
    /// Only a test can tell.
    NeedsTest,
    /// Within the limit by less than a tenth (common practice).
    Marginal,
    /// Within the limit, with the inputs given.
    Pass,
}

impl Verdict {
    /// All of them, the gravest first.
    pub const ALL: [Self; 5] = [Self::Fail, Self::NotChecked, Self::NeedsTest, Self::Marginal, Self::Pass];

    /// Its word, as data and people read it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fail => "fail",
            Self::NotChecked => "not checked",
            Self::NeedsTest => "needs test",
            Self::Marginal => "marginal",
            Self::Pass => "pass",
        }
    }
}

/// Below this margin a demand within its limit is marginal: common practice.
pub const MARGINAL: f64 = 0.10;

/// The margin of a finding: limit/demand − 1 for an upper limit, demand/limit − 1 for a lower, the smaller for a
/// window; of a band its worse end. None for a rule. A demand of nothing has all the margin there is, which is
/// given as none.
pub fn margin(finding: &Finding) -> Option<f64> {
    let Finding::Number { low, high, bound, .. } = finding else { return None };
    let margin = match *bound {
        Bound::AtMost { limit, .. } => upper(*high, limit),
        Bound::AtLeast { limit } => lower(*low, limit),
        Bound::Within { low: least, high: most } => lower(*low, least).min(upper(*high, most)),
    };
    if margin.is_finite() { Some(margin) } else { None }
}

fn upper(demand: f64, limit: f64) -> f64 {
    if demand <= 0.0 && limit >= 0.0 {
        f64::INFINITY
    } else if limit <= 0.0 {
        -1.0
    } else {
        limit / demand - 1.0
    }
}

fn lower(demand: f64, limit: f64) -> f64 {
    if limit > 0.0 {
        (demand / limit - 1.0).max(-1.0)
    } else if demand >= limit {
        f64::INFINITY
    } else {
        -1.0
    }
}

/// The verdict of a finding.
pub fn verdict(finding: &Finding) -> Verdict {
    match finding {
        Finding::Rule { ruling: Ruling::Holds, .. } => Verdict::Pass,
        Finding::Rule { ruling: Ruling::Broken, .. } => Verdict::Fail,
        Finding::Rule { ruling: Ruling::NeedsTest, .. } => Verdict::NeedsTest,
        Finding::Number { low, high, bound, .. } => match (holds(*low, *bound), holds(*high, *bound)) {
            (true, true) => {
                let close = margin(finding).is_some_and(|margin| margin < MARGINAL);
                let stepped =
                    matches!(bound, Bound::AtMost { marginal_above: Some(step), .. } if *high > *step);
                if close || stepped { Verdict::Marginal } else { Verdict::Pass }
            }
            (false, false) if same_side(*low, *high, *bound) => Verdict::Fail,
            _ => Verdict::NeedsTest,
        },
    }
}

fn holds(demand: f64, bound: Bound) -> bool {
    match bound {
        Bound::AtMost { limit, .. } => demand <= limit,
        Bound::AtLeast { limit } => demand >= limit,
        Bound::Within { low, high } => demand >= low && demand <= high,
    }
}

/// True where both ends of a failing band lie on the same side of a window: what lies between them fails too.
fn same_side(first: f64, last: f64, bound: Bound) -> bool {
    match bound {
        Bound::Within { low, high } => (first > high && last > high) || (first < low && last < low),
        _ => true,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::amount::Measure;

    fn number(low: f64, high: f64, bound: Bound) -> Finding {
        Finding::Number { low, high, measure: Measure::Number, bound }
    }

    const MOST: Bound = Bound::AtMost { limit: 1.0, marginal_above: None };
    const LEAST: Bound = Bound::AtLeast { limit: 1.0 };

    #[test]
    fn verdicts_follow_the_convention() {
        let cases = [
            (number(0.5, 0.5, MOST), Verdict::Pass, Some(1.0)),
            (number(0.95, 0.95, MOST), Verdict::Marginal, Some(1.0 / 0.95 - 1.0)),
            (number(1.0, 1.0, MOST), Verdict::Marginal, Some(0.0)),
            (number(1.25, 1.25, MOST), Verdict::Fail, Some(-0.2)),
            (number(0.8, 1.25, MOST), Verdict::NeedsTest, Some(-0.2)),
            (number(0.0, 0.0, MOST), Verdict::Pass, None),
            (number(1.5, 1.5, LEAST), Verdict::Pass, Some(0.5)),
            (number(0.0, 0.0, LEAST), Verdict::Fail, Some(-1.0)),
            (number(-0.4, -0.4, LEAST), Verdict::Fail, Some(-1.0)),
            (number(0.9, 1.5, LEAST), Verdict::NeedsTest, Some(0.9 - 1.0)),
            (number(0.4, 0.4, Bound::Within { low: 0.2, high: 0.35 }), Verdict::Fail, Some(0.35 / 0.4 - 1.0)),
            (number(0.1, 0.4, Bound::Within { low: 0.2, high: 0.35 }), Verdict::NeedsTest, Some(-0.5)),
            (number(0.4, 0.5, Bound::Within { low: 0.2, high: 0.35 }), Verdict::Fail, Some(0.35 / 0.5 - 1.0)),
            (number(0.25, 0.28, Bound::Within { low: 0.2, high: 0.35 }), Verdict::Pass, Some(0.25)),
            (
                number(0.7, 0.7, Bound::AtMost { limit: 0.8, marginal_above: Some(2.0 / 3.0) }),
                Verdict::Marginal,
                Some(0.8 / 0.7 - 1.0),
            ),
        ];
        for (finding, expected, expected_margin) in cases {
            let found = margin(&finding);
            assert!(
                match (found, expected_margin) {
                    (Some(found), Some(expected)) => (found - expected).abs() < 1e-12,
                    (None, None) => true,
                    _ => false,
                },
                "{finding:?}: margin {found:?}"
            );
            assert_eq!(verdict(&finding), expected, "{finding:?}");
        }
    }

    #[test]
    fn the_gravest_comes_first() {
        assert!(Verdict::ALL.windows(2).all(|pair| pair[0] < pair[1]));
    }
}
