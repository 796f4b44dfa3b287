//! The review: every check that applies, each with demand, limit, margin, verdict, source, caveats and cure.

use coaming::prelude::*;
use sha2::{Digest, Sha256};

use crate::amount::{Amount, Measure};
use crate::checks::{Check, PARTS, Subject, solve_ahead, unnamed};
use crate::demand::{Cure, Demand, NotChecked};
use crate::document::{Cover, LoadKind, to_json};
use crate::prepared::Prepared;
use crate::verdict::{Verdict, margin, verdict};

/// One row of the review.
#[derive(Debug, Clone)]
pub struct Row {
    /// Key with its subject, such as `countersink_depth(pane_screws, lid)`: the same from revision to revision.
    pub key: String,
    /// Part of the cover.
    pub part: &'static str,
    /// Title.
    pub title: &'static str,
    /// What it speaks of, such as `pane_screws, lid`; empty for the whole cover.
    pub subject: String,
    /// Load case; none for what holds at all times.
    pub case: Option<LoadKind>,
    /// Verdict.
    pub verdict: Verdict,
    /// Margin, where a number decides.
    pub margin: Option<f64>,
    /// Who accepts a failing row, and why.
    pub waiver: Option<(String, String)>,
    /// What was found, or why nothing was.
    pub outcome: Result<Demand, NotChecked>,
}

/// A cure that several rows share, the one that cures most first.
#[derive(Debug, Clone)]
pub struct Lever {
    /// The cure, with the furthest setting that any of its rows asks for.
    pub cure: Cure,
    /// Keys of the rows that name it.
    pub rows: Vec<String>,
}

/// The review of one cover.
#[derive(Debug, Clone)]
pub struct Review {
    /// The cover's title.
    pub title: String,
    /// The design's revision.
    pub revision: Option<String>,
    /// Version of this library.
    pub version: &'static str,
    /// SHA-256 of the document in its canonical form, in hexadecimal.
    pub input_hash: String,
    /// The rows, in the order of the parts.
    pub rows: Vec<Row>,
    /// Limits that the document replaced: key, its value, the common practice.
    pub replaced_limits: Vec<ReplacedLimit>,
    /// What to change first.
    pub levers: Vec<Lever>,
}

/// A limit that the document replaced.
#[derive(Debug, Clone)]
pub struct ReplacedLimit {
    /// Its key under `limits`.
    pub key: &'static str,
    /// The document's value.
    pub given: Amount,
    /// The common practice.
    pub practice: Amount,
}

impl Review {
    /// How many rows have a verdict; a failing row that is accepted still fails.
    pub fn count(&self, verdict: Verdict) -> usize {
        self.rows.iter().filter(|row| row.verdict == verdict).count()
    }

    /// True where every check passed or is marginal: nothing fails, is accepted, untested or unchecked.
    pub fn all_passed(&self) -> bool {
        self.rows.iter().all(|row| matches!(row.verdict, Verdict::Pass | Verdict::Marginal))
    }

    /// The row of a key.
    pub fn row(&self, key: &str) -> Option<&Row> {
        self.rows.iter().find(|row| row.key == key)
    }
}

/// Reviews a cover.
///
/// # Errors
/// The first of the document's [`problems`](Cover::problems), and [`Error::UnknownKey`] for a waiver of a check that
/// does not exist.
pub fn review(cover: &Cover) -> Result<Review, Error> {
    review_of(&Prepared::new(cover)?)
}

/// Reviews a cover that is made ready.
///
/// # Errors
/// As [`review`].
pub(crate) fn review_of(prepared: &Prepared<'_>) -> Result<Review, Error> {
    let cover = prepared.cover;
    let rows = rows(prepared);
    for (nth, waiver) in cover.waivers.iter().flatten().enumerate() {
        if !rows.iter().any(|row| row.key == waiver.check) {
            let known = rows.iter().map(|row| row.key.as_str());
            return Err(Error::UnknownKey {
                field: format!("waivers[{nth}].check `{}`", waiver.check),
                nearest: coaming::declaration::nearest::nearest(&waiver.check, known).map(str::to_owned),
            });
        }
    }
    let replaced = prepared.limits.replaced().into_iter().map(|(field, given, practice)| ReplacedLimit {
        key: field.name,
        given: Amount { si: given, measure: Measure::of_field(field) },
        practice: Amount { si: practice, measure: Measure::of_field(field) },
    });
    Ok(Review {
        title: cover.title.clone(),
        revision: cover.revision.clone(),
        version: env!("CARGO_PKG_VERSION"),
        input_hash: input_hash(cover)?,
        levers: levers(&rows),
        replaced_limits: replaced.collect(),
        rows,
    })
}

/// SHA-256 of the document as canonical JSON: comments and layout do not count, every value does.
///
/// # Errors
/// [`Error::Unreadable`] where the document cannot be written.
pub fn input_hash(cover: &Cover) -> Result<String, Error> {
    let digest = Sha256::digest(to_json(cover)?.as_bytes());
    Ok(digest.iter().map(|byte| format!("{byte:02x}")).collect())
}

/// Parts that ask the solver about panels that no other part asks about: they are reviewed beside the rest, and in whichever order
/// the two come the numbers are the same.
const BY_THEMSELVES: [&str; 2] = ["Pane", "Holes and movement"];

/// The rows of all parts.
fn rows(prepared: &Prepared<'_>) -> Vec<Row> {
    let by_itself = |part: &str| BY_THEMSELVES.contains(&part);
    let (mut beside, mut rest) = std::thread::scope(|scope| {
        let of_them = || rows_of(prepared, by_itself);
        let other = std::thread::Builder::new().spawn_scoped(scope, of_them).ok();
        solve_ahead(prepared);
        let rest = rows_of(prepared, |part| !by_itself(part));
        // A thread that could not be had leaves its work to this one.
        let beside = other.and_then(|other| other.join().ok()).unwrap_or_else(of_them);
        (beside.into_iter(), rest.into_iter())
    });
    let mut next = |part: &str| if by_itself(part) { beside.next() } else { rest.next() };
    PARTS.iter().filter_map(|(part, _)| next(part)).flatten().collect()
}

/// The rows of some parts, each by itself.
fn rows_of(prepared: &Prepared<'_>, is_asked: impl Fn(&str) -> bool) -> Vec<Vec<Row>> {
    let of_check = |part: &'static str, check: &Check| -> Vec<Row> {
        let subjects = (check.subjects)(prepared);
        let named = subjects.iter().map(|subject| row(prepared, part, check, subject));
        let unnamed = unnamed(check, prepared.cover)
            .into_iter()
            .map(|(subject, path)| row_of(prepared, part, check, &subject, Err(NotChecked::needs(path))));
        named.chain(unnamed).collect()
    };
    let asked = PARTS.iter().filter(|(part, _)| is_asked(part));
    asked.map(|(part, checks)| checks.iter().flat_map(|check| of_check(part, check)).collect()).collect()
}

/// One row: one check of one subject.
pub(crate) fn row(prepared: &Prepared<'_>, part: &'static str, check: &Check, subject: &Subject) -> Row {
    row_of(prepared, part, check, subject, (check.demand)(prepared, subject))
}

fn row_of(
    prepared: &Prepared<'_>,
    part: &'static str,
    check: &Check,
    subject: &Subject,
    found: Result<Demand, NotChecked>,
) -> Row {
    let key = if subject.is_empty() {
        check.key.to_owned()
    } else {
        format!("{}({})", check.key, subject.join(", "))
    };
    // What overflowed is no finding: infinity passes one limit and fails the other.
    let mut outcome = found.and_then(|found| match found.is_finite() {
        true => Ok(found),
        false => Err(NotChecked::Refused(Error::NotFinite { field: key.clone() })),
    });
    let (verdict, margin) = match &mut outcome {
        Ok(demand) => {
            let judged = verdict(&demand.finding);
            // A dimension that nobody confirmed can be no better than `needs test`.
            if demand.unverified && judged > Verdict::NeedsTest {
                demand.cure = Some(confirm(demand));
            }
            (if demand.unverified { judged.min(Verdict::NeedsTest) } else { judged }, margin(&demand.finding))
        }
        Err(_) => (Verdict::NotChecked, None),
    };
    let waiver = prepared
        .cover
        .waivers
        .iter()
        .flatten()
        .find(|waiver| waiver.check == key && verdict == Verdict::Fail);
    Row {
        part,
        title: check.title,
        subject: subject.join(", "),
        case: check.case,
        verdict,
        margin,
        waiver: waiver.map(|waiver| (waiver.accepted_by.clone(), waiver.reason.clone())),
        outcome,
        key,
    }
}

/// What a row asks for that holds its limit, but rests on dimensions that nobody confirmed.
fn confirm(demand: &Demand) -> Cure {
    let unverified = demand.weak.iter().filter_map(|words| words.strip_suffix(": unverified"));
    let named = unverified.collect::<Vec<_>>().join(", ");
    Cure {
        lever: "unverified".to_owned(),
        change: None,
        words: format!(
            "it holds, but nothing here confirms the {named}: measure it, or read it in its standard"
        )
        .into(),
    }
}

/// The cures of failing rows, those of one lever together.
fn levers(rows: &[Row]) -> Vec<Lever> {
    let mut levers: Vec<Lever> = Vec::new();
    for row in rows.iter().filter(|row| row.verdict == Verdict::Fail && row.waiver.is_none()) {
        let Some(cure) = row.outcome.as_ref().ok().and_then(|demand| demand.cure.as_ref()) else { continue };
        match levers.iter_mut().find(|lever| lever.cure.lever == cure.lever && !opposed(cure, &lever.cure)) {
            Some(lever) => {
                lever.rows.push(row.key.clone());
                if further(cure, &lever.cure) {
                    lever.cure = cure.clone();
                }
            }
            None => levers.push(Lever { cure: cure.clone(), rows: vec![row.key.clone()] }),
        }
    }
    // A stable sort: levers that cure as many rows stay in the order of the parts.
    levers.sort_by_key(|lever| core::cmp::Reverse(lever.rows.len()));
    levers
}

/// True where one cure asks for more of a lever and the other for less: neither helps the other's rows.
fn opposed(cure: &Cure, other: &Cure) -> bool {
    match (&cure.change, &other.change) {
        (Some((now, to)), Some((_, known))) => (to.si - now.si) * (known.si - now.si) < 0.0,
        _ => false,
    }
}

/// True where a cure asks for a further setting of the same lever than another.
fn further(cure: &Cure, other: &Cure) -> bool {
    match (&cure.change, &other.change) {
        (Some((now, to)), Some((_, known))) => (to.si - now.si).abs() > (known.si - now.si).abs(),
        (Some(_), None) => true,
        _ => false,
    }
}
