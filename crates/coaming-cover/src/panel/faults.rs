//! The solver's refusals in the words of the document: its paths, its places and its units.

use crate::amount::Measure;
use coaming::prelude::*;
use coaming_panel::{FreeMotion, PanelError, Point};

/// Whose faults they are: a load case's, or the panel's own.
#[derive(Debug, Clone, Copy)]
pub(super) struct Faults<'a> {
    /// Path of the load case; empty for the panel's own.
    pub case: &'a str,
    /// How many pressures the load case has: the solver's further ones are its patches.
    pub pressures: usize,
    /// The path of each mark.
    pub marks: &'a [String],
}

/// The solver's words for the entries of its lists, and the document's.
const LISTS: &[(&str, &str)] = &[
    ("region of pressure ", "pressures"),
    ("washer of point support ", "point_supports"),
    ("point support ", "point_supports"),
    ("line support ", "line_supports"),
    ("point force ", "point_forces"),
    ("line force ", "line_forces"),
    ("edge moment ", "edge_moments"),
    ("edge force ", "edge_forces"),
    ("support movement ", "support_movements"),
    ("growth ", "growths"),
    ("temperature ", "temperatures"),
    ("pressure ", "pressures"),
    ("gasket ", "gaskets"),
    ("latch ", "latches"),
    ("joint ", "joints"),
    ("layer ", "layers"),
    ("beam ", "beams"),
    ("hole ", "holes"),
    ("stop ", "stops"),
    ("mass ", "masses"),
];

/// The lists of a load case.
const OF_A_CASE: &[&str] = &[
    "pressures",
    "point_forces",
    "line_forces",
    "edge_moments",
    "edge_forces",
    "support_movements",
    "temperatures",
    "growths",
    "missing_latches",
];

/// What the numbers that the solver names measure.
const MEASURES: &[(&str, Measure)] = &[
    ("coordinate", Measure::LENGTH),
    ("thickness", Measure::LENGTH),
    ("washer_radius", Measure::LENGTH),
    ("free_height", Measure::LENGTH),
    ("closed_gap", Measure::LENGTH),
    ("compression", Measure::LENGTH),
    ("first compression", Measure::LENGTH),
    ("distance along the path", Measure::LENGTH),
    ("force at no compression", Measure::of::<ForcePerLength>()),
];

impl Faults<'_> {
    /// The path of what the solver names, and what follows the name.
    fn path<'w>(&self, words: &'w str) -> (String, &'w str) {
        let (head, tail) = words.split_once(": ").unwrap_or((words, ""));
        let path = |list: &str, nth: usize| match list {
            "pressures" if nth >= self.pressures => {
                format!("{}.patches[{}]", self.case, nth - self.pressures)
            }
            list if OF_A_CASE.contains(&list) => format!("{}.{list}[{nth}]", self.case),
            list => format!("{list}[{nth}]"),
        };
        if let Some(nth) = head.strip_prefix("mark ").and_then(number) {
            return (self.marks.get(nth.0).cloned().unwrap_or_else(|| head.to_owned()), tail);
        }
        for (words, list) in LISTS {
            let Some((nth, rest)) = head.strip_prefix(words).and_then(number) else { continue };
            let path = path(list, nth);
            return match rest.strip_prefix(" hole ").and_then(number) {
                Some((hole, _)) => (format!("{path}.region.holes[{hole}]"), tail),
                None => (path, tail),
            };
        }
        (head.to_owned(), tail)
    }

    fn place(&self, part: &str, at: Point) -> String {
        format!("{} at {}", self.path(part).0, shown(at))
    }

    fn geometry(&self, part: &str, at: Point, reason: impl Into<String>) -> Error {
        Error::Geometry { place: self.place(part, at), reason: reason.into() }
    }

    /// The error of the library.
    pub(super) fn error(&self, fault: PanelError) -> Error {
        let other = |words: &str| {
            if words == "itself" { words.to_owned() } else { self.path(words).0 }
        };
        match fault {
            PanelError::Impossible { name, value, accepted } => self.impossible(&name, value, accepted),
            PanelError::Missing { name, reason } => {
                let (path, tail) = self.path(&name);
                let fields = if path.is_empty() { tail.to_owned() } else { path };
                Error::Inconsistent { fields, reason }
            }
            PanelError::TooLarge { name, found, accepted } => Error::TooLarge {
                field: self.path(&name).0,
                found: found.to_string(),
                accepted: format!("at most {accepted}"),
            },
            PanelError::DuplicatePoint { part, at } => {
                self.geometry(&part, at, "two points that follow each other coincide")
            }
            PanelError::StraightArc { part, at } => self.geometry(
                &part,
                at,
                "the three points of an arc lie on a line; give a straight piece instead",
            ),
            PanelError::Crossing { part, other: with, at } => {
                self.geometry(&part, at, format!("crosses {}", other(&with)))
            }
            PanelError::Touching { part, other: with, at, least } => self.geometry(
                &part,
                at,
                format!(
                    "touches {}; keep them apart by more than {}, or join them",
                    other(&with),
                    length(least)
                ),
            ),
            PanelError::Outside { part, of, at } => {
                self.geometry(&part, at, format!("lies outside {}", other(&of)))
            }
            PanelError::Sliver { part, at, reason } => self.geometry(&part, at, reason),
            PanelError::NoMaterial { part, at } => {
                self.geometry(&part, at, "has no material under it; the layers must reach it")
            }
            PanelError::LayersOverlap { lower, upper, at } => Error::Geometry {
                place: format!("layers[{lower}], layers[{upper}] at {}", shown(at)),
                reason: "overlap through the thickness".to_owned(),
            },
            PanelError::LawFalls { part, compression } => Error::inconsistent(
                format!("{}.law", self.path(&part).0),
                format!("the force falls at a compression of {}; it must grow or stay", length(compression)),
            ),
            PanelError::Contradiction { part, reason, at } => self.geometry(&part, at, reason),
            PanelError::NotMeshed { reason, at } => Error::Geometry {
                place: format!("outline at {}", shown(at)),
                reason: format!("could not be meshed: {reason}"),
            },
            PanelError::Mechanism { motion } => Error::Singular { motion: moved(motion) },
            PanelError::ContactLost { motion } => {
                Error::Singular { motion: format!("all contact is lost, and {}", moved(motion)) }
            }
            PanelError::NotConverged { residual, .. } => Error::NotConverged {
                what: format!("the equilibrium of {}", self.case),
                // One where none was found at all: a share of the load, and a number.
                residual: if residual.is_finite() { residual } else { 1.0 },
            },
            PanelError::Cancelled => Error::Cancelled,
            PanelError::NotFinite { name } => Error::NotFinite { field: format!("{}: {name}", self.case) },
            unknown => Error::inconsistent("panel", unknown.to_string()),
        }
    }

    fn impossible(&self, name: &str, value: f64, accepted: &str) -> Error {
        let (path, tail) = self.path(name);
        let field = match tail {
            "" | "coordinate" | "number" | "number of segments" => path,
            tail => format!("{path}, {tail}"),
        };
        let words = tail.rsplit(", ").next().unwrap_or(tail);
        let measure = MEASURES.iter().find(|row| row.0 == words).map_or(Measure::Number, |row| row.1);
        let shown = if value.is_finite() { measure.shown(value, System::Shop) } else { "not finite".into() };
        Error::Impossible { field, value, shown, accepted: accepted.to_owned() }
    }
}

/// A whole number at the start of a text, and what follows it.
fn number(text: &str) -> Option<(usize, &str)> {
    let end = text.find(|letter: char| !letter.is_ascii_digit()).unwrap_or(text.len());
    let (digits, rest) = text.split_at_checked(end)?;
    Some((digits.parse().ok()?, rest))
}

fn length(si: f64) -> String {
    Measure::LENGTH.shown(si, System::Shop)
}

/// A place for people.
pub(crate) fn shown(at: Point) -> String {
    // Below a picometre there is rounding alone.
    let tidy = |si: f64| length(if si.abs() < 1e-12 { 0.0 } else { si });
    format!("({}, {})", tidy(at.x), tidy(at.y))
}

/// A direction for people.
fn along(direction: Point) -> String {
    // Along an axis, rounding leaves next to nothing of the other component.
    let tidy = |part: f64| rounded(if part.abs() < 1e-6 { 0.0 } else { part }, 3);
    format!("({}, {})", tidy(direction.x), tidy(direction.y))
}

fn moved(motion: FreeMotion) -> String {
    match motion {
        FreeMotion::Lift => "the panel moves freely along its normal".to_owned(),
        FreeMotion::Turn { through, direction } => {
            let (through, direction) = (shown(through), along(direction));
            format!("the panel turns freely about the line through {through} along {direction}")
        }
        FreeMotion::Slide { direction } => format!(
            "the panel, or a layer of it, slides freely in its plane along {}: nothing balances what pulls it",
            along(direction)
        ),
        FreeMotion::TurnInPlane { about } => format!(
            "the panel, or a layer of it, turns freely in its plane about {}: nothing balances what turns it",
            shown(about)
        ),
        FreeMotion::Local { at } => format!("a part of the panel moves freely near {}", shown(at)),
        other => other.to_string(),
    }
}
