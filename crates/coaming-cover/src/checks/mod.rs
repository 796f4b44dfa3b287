//! The checks of the review, one folder for each part of the cover.
//!
//! A check is constant data and two functions: which parts of a document it speaks of, and the demand of one of them.
//! `demand` gives numbers only; the verdict follows from them by one rule.

mod absent;
mod ahead;
mod bonds;
mod bow;
mod centre;
mod chemicals;
mod climate;
mod frame;
mod hazard;
mod latches;
mod lid;
pub(crate) mod mass;
mod movement;
mod orders;
mod pane;
mod screws;
mod seal;
pub(crate) mod sheet;
mod solved;

#[cfg(test)]
mod tests;

pub(crate) use absent::unnamed;
pub(crate) use ahead::solve_ahead;
pub(crate) use latches::pulls::most_loaded as most_loaded_latch;
pub(crate) use latches::{forces as latch_forces, needed_travel};
pub(crate) use screws::countersink;
pub(crate) use screws::inserts::insert_pull_due;
pub(crate) use seal::{extremes as seal_extremes, grade as seal_grade, line_force};

use crate::demand::{Demand, NotChecked};
use crate::document::LoadKind;
use crate::prepared::Prepared;

/// The names behind a row's key, such as a screw pattern and a layer.
pub type Subject = Vec<String>;

/// One check.
pub struct Check {
    /// Its key: with the subject, permanent from revision to revision.
    pub key: &'static str,
    /// Its title.
    pub title: &'static str,
    /// The load case that it belongs to; none for what holds at all times.
    pub case: Option<LoadKind>,
    /// Which parts of the document it speaks of, one row for each.
    pub subjects: fn(&Prepared<'_>) -> Vec<Subject>,
    /// What it finds there.
    pub demand: fn(&Prepared<'_>, &Subject) -> Result<Demand, NotChecked>,
}

impl core::fmt::Debug for Check {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_tuple("Check").field(&self.key).finish()
    }
}

/// The parts of the cover with their checks, in the order of the review.
pub const PARTS: &[(&str, &[Check])] = &[
    ("Lid", lid::CHECKS),
    ("Sheet", sheet::CHECKS),
    ("Seal", seal::CHECKS),
    ("Seal", seal::warm::CHECKS),
    ("Seal", seal::sliding::CHECKS),
    ("Seal", seal::leaks::CHECKS),
    ("Latches", latches::CHECKS),
    ("Latches", latches::warm::CHECKS),
    ("Latches", latches::fixing::CHECKS),
    ("Pane", pane::CHECKS),
    ("Pane", pane::lap::CHECKS),
    ("Pane", pane::creep::CHECKS),
    ("Holes and movement", movement::CHECKS),
    ("Screws", screws::CHECKS),
    ("Screws", screws::strength::CHECKS),
    ("Screws", screws::joint::CHECKS),
    ("Inserts", screws::inserts::CHECKS),
    ("Frame", frame::CHECKS),
    ("Frame", frame::damp::CHECKS),
    ("Bonds", bonds::CHECKS),
    ("Bonds", bonds::pressed_strip::CHECKS),
    ("Bonds", bonds::sealant_joint::CHECKS),
    ("Chemicals", chemicals::CHECKS),
    ("Chemicals", chemicals::neighbours::CHECKS),
    ("Warmth and damp", climate::CHECKS),
    ("Warmth and damp", climate::service_temperature::CHECKS),
    ("Mass", mass::CHECKS),
    ("Hazard", hazard::CHECKS),
    ("Hazard", hazard::flammability::CHECKS),
];

/// The one subject of a check that speaks of the whole cover.
fn whole(_: &Prepared<'_>) -> Vec<Subject> {
    vec![Vec::new()]
}

/// The layers of a role, one subject each.
fn layers_that(prepared: &Prepared<'_>, is: fn(&crate::document::Layer) -> bool) -> Vec<Subject> {
    prepared.cover.layers.iter().filter(|layer| is(layer)).map(|layer| vec![layer.name.clone()]).collect()
}

/// The name at a place of a subject.
fn name(subject: &Subject, place: usize) -> Result<&str, NotChecked> {
    subject.get(place).map(String::as_str).ok_or_else(|| NotChecked::needs("the name of a part"))
}
