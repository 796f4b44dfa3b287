//! The order sheet: all that is needed to order and to work from.
//!
//! It refuses to look final: while anything fails or is not checked, its head says so. What the document does not give
//! stands as unknown, with the path that is missing, and is never left out.

mod gasket;
mod parts;
mod screws;
mod sheet;
mod tests_due;

use coaming::prelude::*;

use crate::amount::{Amount, Measure};
use crate::cautions::{CAUTIONS, WORKSHOP_CAUTIONS};
use crate::demand::NotChecked;
use crate::document::Cover;
use crate::prepared::Prepared;
use crate::review::{Review, review};
use crate::verdict::Verdict;

/// The value of one item.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A number with its unit.
    Amount(Amount),
    /// A number that is known as a band.
    Band {
        /// The lower end, in SI units.
        low: f64,
        /// The upper end.
        high: f64,
        /// What it measures.
        measure: Measure,
    },
    /// Words.
    Words(String),
    /// Not known, and why.
    Unknown(String),
}

/// One item of a line, such as `flat width`.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// What it is.
    pub label: &'static str,
    /// Its value.
    pub value: Value,
}

/// One line of a section: a part with its items.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// The part.
    pub part: String,
    /// What is to be known of it.
    pub items: Vec<Item>,
}

/// One section.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Its title.
    pub title: &'static str,
    /// Its lines.
    pub lines: Vec<Line>,
}

/// The order sheet of one cover.
#[derive(Debug, Clone)]
pub struct OrderSheet {
    /// The review that it goes with.
    pub review: Review,
    /// Where positions of holes are measured, what a thickness includes, which face shows: said once.
    pub conventions: Vec<Item>,
    /// The sections.
    pub sections: Vec<Section>,
}

impl OrderSheet {
    /// What stands against ordering: a line for each row that fails, then how many are open.
    pub fn warnings(&self) -> Vec<String> {
        let failing = self.review.rows.iter().filter(|row| row.verdict == Verdict::Fail);
        let mut warnings: Vec<String> = failing
            .map(|row| match &row.waiver {
                Some((who, _)) => format!("{} (accepted by {who})", row.key),
                None => row.key.clone(),
            })
            .collect();
        for verdict in [Verdict::NotChecked, Verdict::NeedsTest] {
            let count = self.review.count(verdict);
            if count > 0 {
                warnings.push(format!("{count} more: {}", verdict.word()));
            }
        }
        warnings
    }

    /// The cautions of the sheet: those of every output and those of the workshop.
    pub fn cautions() -> impl Iterator<Item = &'static str> {
        CAUTIONS.iter().chain(WORKSHOP_CAUTIONS).copied()
    }
}

/// The order sheet of a cover.
///
/// # Errors
/// As [`review`] gives them.
pub fn order_sheet(cover: &Cover) -> Result<OrderSheet, Error> {
    let review = review(cover)?;
    let prepared = Prepared::new(cover)?;
    let sections = vec![
        Section { title: "Blanks and bends", lines: sheet::blanks(&prepared) },
        Section { title: "Bend lines", lines: sheet::bends(&prepared) },
        Section { title: "Holes", lines: screws::holes(&prepared) },
        Section { title: "Screws and inserts", lines: screws::screws(&prepared) },
        Section { title: "Gasket", lines: gasket::gasket(&prepared) },
        Section { title: "Latches", lines: gasket::latches(&prepared) },
        Section { title: "Adhesives and sealants", lines: parts::adhesives(&prepared) },
        Section { title: "Parts and mass", lines: parts::parts(&prepared) },
        Section { title: "Tests to make", lines: tests_due::tests(&review) },
    ];
    let sections = sections.into_iter().filter(|section| !section.lines.is_empty()).collect();
    Ok(OrderSheet { review, conventions: conventions(cover), sections })
}

fn conventions(cover: &Cover) -> Vec<Item> {
    let choice = |name: Option<&'static str>, path: &str| match name {
        Some(name) => Value::Words(name.replace('_', " ")),
        None => Value::Unknown(format!("needs {path}")),
    };
    vec![
        Item {
            label: "hole positions are",
            value: choice(cover.hole_positions.map(Choice::name), "hole_positions"),
        },
        Item {
            label: "a thickness is",
            value: choice(cover.thickness_means.map(Choice::name), "thickness_means"),
        },
        Item { label: "good face", value: choice(cover.good_face.map(Choice::name), "good_face") },
    ]
}

/// An item that the document gives, or that is unknown.
fn given<Q: Quantity>(label: &'static str, quantity: Option<Q>, path: impl FnOnce() -> String) -> Item {
    let value = match quantity {
        Some(quantity) => Value::Amount(Amount::of(quantity)),
        None => Value::Unknown(format!("needs {}", path())),
    };
    Item { label, value }
}

/// An item that was calculated, or the reason why not.
fn found(label: &'static str, measure: Measure, outcome: &Result<f64, NotChecked>) -> Item {
    let value = match outcome {
        Ok(si) => Value::Amount(Amount { si: *si, measure }),
        Err(why) => Value::Unknown(crate::render::why_not(why)),
    };
    Item { label, value }
}

/// An item in words, or what is missing for it.
fn words(label: &'static str, words: Option<String>, path: impl FnOnce() -> String) -> Item {
    let value = words.map_or_else(|| Value::Unknown(format!("needs {}", path())), Value::Words);
    Item { label, value }
}
