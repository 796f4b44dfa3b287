//! One cover reviewed again and again while it is worked on.

use std::sync::Arc;

use coaming::prelude::*;

use crate::document::Cover;
use crate::held::Solutions;
use crate::order_sheet::{OrderSheet, order_sheet_of};
use crate::prepared::Prepared;
use crate::review::{Review, review_of};

/// Reviews a cover after each change, and solves anew only what the change touches.
///
/// What the panel solver found is kept from one review to the next: a lid that did not change is not solved again, and its rows
/// are the same to the bit; a lid of the same shape with other numbers, such as another thickness, gasket or mass, is solved on
/// the meshes that there are. Such meshes were refined for the numbers before, so that its rows may differ from those of
/// [`review`](crate::review::review()) within the errors that they print, by which each is widened as there.
///
/// What the latest document does not use is let go, so that memory does not grow with the number of changes.
///
/// # Example
/// ```
/// use coaming_cover::document::{Form, read};
/// use coaming_cover::reviewer::Reviewer;
///
/// let text = include_str!("../../../examples/covers/revised.toml");
/// let mut reviewer = Reviewer::new();
/// let first = reviewer.review(&read(text, Form::Toml)?)?;
/// let longer = text.replace("length = \"16 mm\"", "length = \"20 mm\"");
/// let second = reviewer.review(&read(&longer, Form::Toml)?)?;
/// let bottoms = |review: &coaming_cover::review::Review| {
///     review.row("screw_tip_clearance(pane_screws)").map(|row| row.verdict.word())
/// };
/// // 8.5 mm in a hole of 9.5 mm, and 4 mm more.
/// assert_eq!((bottoms(&first), bottoms(&second)), (Some("pass"), Some("fail")));
/// # Ok::<(), coaming::error::Error>(())
/// ```
#[derive(Debug, Default)]
pub struct Reviewer {
    solutions: Arc<Solutions>,
}

impl Reviewer {
    /// Nothing reviewed yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Reviews a cover.
    ///
    /// # Errors
    /// As [`review`](crate::review::review()).
    pub fn review(&mut self, cover: &Cover) -> Result<Review, Error> {
        let review = review_of(&Prepared::with(cover, Arc::clone(&self.solutions))?);
        self.solutions.forget_unused();
        review
    }

    /// The order sheet of a cover, with its review.
    ///
    /// # Errors
    /// As [`order_sheet`](crate::order_sheet::order_sheet()).
    pub fn order_sheet(&mut self, cover: &Cover) -> Result<OrderSheet, Error> {
        let sheet = order_sheet_of(&Prepared::with(cover, Arc::clone(&self.solutions))?);
        self.solutions.forget_unused();
        sheet
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calls::{self, Output, Units, order_sheet_with, review_with};
    use crate::demand::Finding;
    use crate::document::{Form, read};
    use crate::render::{Detail, review_text};
    use crate::review::review;

    const REVISED: &str = include_str!("../../../examples/covers/revised.toml");

    fn cover(text: &str) -> Cover {
        read(text, Form::Toml).unwrap()
    }

    fn text(review: &Review) -> String {
        review_text(review, Detail::Full, System::Shop)
    }

    /// A screw that changes leaves the lid as it is: the rows are those of a review from nothing, to the last digit that is
    /// shown, and the shapes that are kept are the two limits of how the layers join in and the two of what bows the lid. The latter are
    /// as stiff as their warmth makes them: that of the plastic frame in three load cases, that of the glued strip in none. The pane
    /// is kept as it rests, between edges, as its span alone, which rings cold and hot, and flat in its lap, where it rings too.
    #[test]
    fn what_did_not_change_is_not_solved_again() {
        let mut reviewer = Reviewer::new();
        let first = reviewer.review(&cover(REVISED)).unwrap();
        assert_eq!(reviewer.solutions.counts(), (8, 15));
        let turned = cover(&REVISED.replace("torque = \"0.45 N·m\"", "torque = \"0.4 N·m\""));
        let solved = reviewer.solutions.solved();
        let second = reviewer.review(&turned).unwrap();
        assert_eq!(reviewer.solutions.solved(), solved);
        assert_ne!(text(&first), text(&second));
        let fresh = review(&turned).unwrap();
        assert_eq!(text(&second), text(&fresh));
        for (row, known) in second.rows.iter().zip(&fresh.rows) {
            assert_eq!(row.outcome, known.outcome, "{}", row.key);
        }
    }

    /// As the other languages ask: the second review of an unchanged cover is a fresh one to the last digit, and what is refused is
    /// refused in the same words, also where that is found only when the rows are known; the lid is not solved again after it.
    #[test]
    fn what_is_refused_changes_nothing() {
        let json =
            |reviewer: &mut Reviewer, text: &str| review_with(reviewer, text, Output::Json, Units::Shop);
        let mut reviewer = Reviewer::new();
        let fresh = calls::review(REVISED, Output::Json, Units::Shop).unwrap();
        assert_eq!(json(&mut reviewer, REVISED).unwrap(), fresh);
        let solved = reviewer.solutions.solved();
        for (from, to) in [
            (REVISED, ""),
            (REVISED, "{"),
            ("thickness = \"2.5 mm\"", "thickness = 2.5"),
            ("thickness = \"2.5 mm\"", "thickness = \"0 mm\""),
            ("title =", "titel ="),
            ("check = \"dew\"", "check = \"dwe\""),
        ] {
            let wrong = REVISED.replace(from, to);
            let due = calls::review(&wrong, Output::Json, Units::Shop).unwrap_err();
            assert_eq!(json(&mut reviewer, &wrong), Err(due));
        }
        assert_eq!(json(&mut reviewer, REVISED).unwrap(), fresh);
        let sheet = order_sheet_with(&mut reviewer, REVISED, Output::Json, Units::Shop).unwrap();
        assert_eq!(sheet, calls::order_sheet(REVISED, Output::Json, Units::Shop).unwrap());
        assert_eq!(reviewer.solutions.solved(), solved);
    }

    /// A firmer gasket on the meshes that there are: every band overlaps that of a review from nothing, no verdict differs, and
    /// what is no longer used is let go.
    #[test]
    fn another_number_is_solved_on_the_same_meshes() {
        let mut reviewer = Reviewer::new();
        reviewer.review(&cover(REVISED)).unwrap();
        let firmer = cover(
            &REVISED.replace("pressure_at_25_percent = \"24 kPa\"", "pressure_at_25_percent = \"30 kPa\""),
        );
        let second = reviewer.review(&firmer).unwrap();
        assert_eq!(reviewer.solutions.counts(), (8, 15));
        let fresh = review(&firmer).unwrap();
        assert_eq!(second.rows.len(), fresh.rows.len());
        for (row, known) in second.rows.iter().zip(&fresh.rows) {
            assert_eq!((&row.key, row.verdict), (&known.key, known.verdict));
            let (Ok(one), Ok(other)) = (&row.outcome, &known.outcome) else { continue };
            let (Finding::Number { low, high, .. }, Finding::Number { low: least, high: most, .. }) =
                (&one.finding, &other.finding)
            else {
                continue;
            };
            // Where one end alone stands, with its error on top, the two differ by what those errors do.
            let slack = if low == high { 0.05 * high.abs() } else { 0.0 };
            assert!(
                *low <= most + slack && *least <= high + slack,
                "{}: {low} to {high}, {least} to {most}",
                row.key
            );
        }
    }
}
