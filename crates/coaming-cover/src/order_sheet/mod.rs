//! The order sheet: all that is needed to order and to work from.
//!
//! It refuses to look final: while anything fails or is not checked, its head says so. What the document does not give
//! stands as unknown, with the path that is missing, and is never left out.

mod adhesives;
mod assembly;
mod bench;
mod blank;
mod blanks;
mod gasket_joint;
mod holes;
mod item;
mod mass;
mod screws;
mod seal_and_latches;
mod tests_due;

#[cfg(test)]
mod tests;

use coaming::prelude::*;

use crate::cautions::{CAUTIONS, WORKSHOP_CAUTIONS};
use crate::document::Cover;
use crate::prepared::Prepared;
use crate::review::{Review, review_of};
use crate::verdict::Verdict;

pub use item::{Item, Line, Section, Value};
use item::{option, said};

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
    /// What fails, a key each; an accepted failure with who accepts it.
    pub fn failures(&self) -> Vec<String> {
        let failing = self.review.rows.iter().filter(|row| row.verdict == Verdict::Fail);
        failing
            .map(|row| match &row.waiver {
                Some((who, _)) => format!("{} (accepted by {who})", row.key),
                None => row.key.clone(),
            })
            .collect()
    }

    /// What stands against ordering: what fails, then how many rows are open.
    pub fn warnings(&self) -> Vec<String> {
        let mut warnings = self.failures();
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
/// As [`review`](crate::review::review()) gives them.
pub fn order_sheet(cover: &Cover) -> Result<OrderSheet, Error> {
    order_sheet_of(&Prepared::new(cover)?)
}

/// The order sheet of a cover that is made ready.
///
/// # Errors
/// As [`order_sheet`].
pub(crate) fn order_sheet_of(prepared: &Prepared<'_>) -> Result<OrderSheet, Error> {
    let cover = prepared.cover;
    let review = review_of(prepared)?;
    let mut sections = sections(prepared);
    sections.push(Section { title: "Tests to make", lines: tests_due::tests(&review) });
    let sections = sections.into_iter().filter(|section| !section.lines.is_empty()).collect();
    Ok(OrderSheet { review, conventions: conventions(cover), sections })
}

/// The sections that follow from the document alone.
fn sections(prepared: &Prepared<'_>) -> Vec<Section> {
    vec![
        Section { title: "Blanks", lines: blanks::blanks(prepared) },
        Section { title: "Bend lines", lines: blanks::bends(prepared) },
        Section { title: "Holes", lines: holes::holes(prepared) },
        Section { title: "Screws and inserts", lines: screws::screws(prepared) },
        Section { title: "Gasket", lines: seal_and_latches::gasket(prepared) },
        Section { title: "Latches", lines: seal_and_latches::latches(prepared) },
        Section { title: "Adhesives and sealants", lines: adhesives::adhesives(prepared) },
        Section { title: "Parts and mass", lines: mass::parts(prepared) },
        Section { title: "Assembly", lines: assembly::steps(prepared) },
        Section { title: "Tests of every cover", lines: bench::tests(prepared) },
    ]
}

fn conventions(cover: &Cover) -> Vec<Item> {
    vec![
        said("places are", "from the cover's origin, x to the right and y up as seen from outside"),
        option("hole positions are", cover.hole_positions, || "hole_positions".to_owned()),
        option("a thickness is", cover.thickness_means, || "thickness_means".to_owned()),
        option("good face", cover.good_face, || "good_face".to_owned()),
    ]
}
