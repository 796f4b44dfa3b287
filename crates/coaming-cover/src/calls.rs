//! The document calls as every language has them: a document's text in, text out.

use coaming::prelude::*;

use crate::document::{Form, read};
use crate::order_sheet::OrderSheet;
use crate::panel::{PanelSolution, read_panel};
use crate::render::{
    Detail, order_sheet_json, order_sheet_markdown, order_sheet_text, panel_json, panel_text, review_json,
    review_markdown, review_text,
};

use crate::review::Review;
use crate::reviewer::Reviewer;

pub use crate::schema::Described;

/// The form of an output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Output {
    /// Text of 80 columns.
    Text,
    /// Text with formula, inputs and sources of each row.
    FullText,
    /// Markdown: CommonMark, with tables in the order sheet.
    Markdown,
    /// Markdown with formula, inputs and sources of each row.
    FullMarkdown,
    /// JSON; its quantities are in shop units and read back to the same bits.
    Json,
}

/// The units of a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Units {
    /// mm, N, N·m, kPa, degC, deg.
    Shop,
    /// in, lbf, lbf·in, psi, degF, deg.
    Inch,
}

impl Units {
    fn system(self) -> System {
        match self {
            Self::Shop => System::Shop,
            Self::Inch => System::Inch,
        }
    }
}

/// Reviews a document, TOML or JSON.
///
/// # Errors
/// As [`read`] and [`review`](crate::review::review()) give them.
pub fn review(document: &str, output: Output, units: Units) -> Result<String, Error> {
    reviewed(&crate::review::review(&read(document, Form::of(document))?)?, output, units)
}

/// Reviews a document with what a reviewer has kept; after a document that is refused it can be used on.
///
/// # Errors
/// As [`review`].
pub fn review_with(
    reviewer: &mut Reviewer,
    document: &str,
    output: Output,
    units: Units,
) -> Result<String, Error> {
    reviewed(&reviewer.review(&read(document, Form::of(document))?)?, output, units)
}

fn reviewed(review: &Review, output: Output, units: Units) -> Result<String, Error> {
    match output {
        Output::Text => Ok(review_text(review, Detail::Short, units.system())),
        Output::FullText => Ok(review_text(review, Detail::Full, units.system())),
        Output::Markdown => Ok(review_markdown(review, Detail::Short, units.system())),
        Output::FullMarkdown => Ok(review_markdown(review, Detail::Full, units.system())),
        Output::Json => review_json(review),
    }
}

/// The order sheet of a document, TOML or JSON.
///
/// # Errors
/// As [`read`] and [`order_sheet`](crate::order_sheet::order_sheet()) give them.
pub fn order_sheet(document: &str, output: Output, units: Units) -> Result<String, Error> {
    ordered(&crate::order_sheet::order_sheet(&read(document, Form::of(document))?)?, output, units)
}

/// The order sheet of a document with what a reviewer has kept. As [`review_with`] otherwise.
///
/// # Errors
/// As [`order_sheet`].
pub fn order_sheet_with(
    reviewer: &mut Reviewer,
    document: &str,
    output: Output,
    units: Units,
) -> Result<String, Error> {
    ordered(&reviewer.order_sheet(&read(document, Form::of(document))?)?, output, units)
}

fn ordered(sheet: &OrderSheet, output: Output, units: Units) -> Result<String, Error> {
    match output {
        Output::Text | Output::FullText => Ok(order_sheet_text(sheet, units.system())),
        Output::Markdown | Output::FullMarkdown => Ok(order_sheet_markdown(sheet, units.system())),
        Output::Json => order_sheet_json(sheet),
    }
}

/// Solves the panel of a document, TOML or JSON.
///
/// # Errors
/// As [`read_panel`] and [`solve`](crate::panel::solve) give them.
pub fn panel(document: &str, output: Output, units: Units) -> Result<String, Error> {
    panel_solution(&crate::panel::solve(&read_panel(document, Form::of(document))?)?, output, units)
}

/// The solution of a panel in words or as JSON.
///
/// # Errors
/// [`Error::NotAnOption`] for Markdown, which it does not have.
pub fn panel_solution(solution: &PanelSolution, output: Output, units: Units) -> Result<String, Error> {
    match output {
        Output::Text | Output::FullText => Ok(panel_text(solution, units.system())),
        Output::Json => panel_json(solution),
        Output::Markdown | Output::FullMarkdown => Err(Error::NotAnOption {
            field: "output".to_owned(),
            value: Choice::name(output).to_owned(),
            accepted: "text, full_text, json".to_owned(),
            nearest: None,
        }),
    }
}

/// The JSON Schema (2020-12) of a document, for editors.
///
/// # Errors
/// As [`schema`](crate::schema::schema()) gives them.
pub fn schema(of: Described) -> Result<String, Error> {
    crate::schema::schema(of)
}

/// A choice by its name, for callers that pass text.
///
/// # Errors
/// [`Error::NotAnOption`] with the options.
pub fn choice<C: Choice>(field: &str, name: &str) -> Result<C, Error> {
    C::from_name(name).ok_or_else(|| {
        let options: Vec<&str> = C::CHOICES.options.iter().map(|option| option.0).collect();
        Error::NotAnOption {
            field: field.to_owned(),
            value: name.chars().take(60).collect(),
            nearest: coaming::declaration::nearest::nearest(name, options.iter().copied()).map(str::to_owned),
            accepted: options.join(", "),
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cautions::{CAUTIONS, WORKSHOP_CAUTIONS};

    const REVISED: &str = include_str!("../../../examples/covers/revised.toml");
    const PANEL: &str = include_str!("../../../examples/panels/revised-lid.toml");

    fn options<C: Choice>() -> impl Iterator<Item = C> {
        (0..).map_while(C::from_number)
    }

    /// Asserts that an output holds cautions, however its form breaks lines and escapes marks.
    fn carries(output: &str, cautions: &[&str], what: &str) {
        let plain = output.replace('\\', "").split_whitespace().collect::<Vec<_>>().join(" ");
        for caution in cautions {
            assert!(plain.contains(caution), "{what} without: {caution}");
        }
    }

    /// Every form that a caller can ask for, in both unit systems: a new one is looked at as soon as it is there.
    #[test]
    fn every_output_carries_its_cautions() {
        let sheet = crate::order_sheet::order_sheet(&read(REVISED, Form::Toml).unwrap()).unwrap();
        let solution = crate::panel::solve(&read_panel(PANEL, Form::Toml).unwrap()).unwrap();
        let mut seen = 0;
        for (output, units) in
            options::<Output>().flat_map(|output| options::<Units>().map(move |of| (output, of)))
        {
            let what = format!("{} in {} units", Choice::name(output), Choice::name(units));
            carries(&reviewed(&sheet.review, output, units).unwrap(), CAUTIONS, &format!("review as {what}"));
            let ordered = ordered(&sheet, output, units).unwrap();
            carries(&ordered, CAUTIONS, &format!("order sheet as {what}"));
            carries(&ordered, WORKSHOP_CAUTIONS, &format!("order sheet as {what}"));
            match panel_solution(&solution, output, units) {
                Ok(panel) => carries(&panel, CAUTIONS, &format!("panel as {what}")),
                // A panel has no Markdown: refused, not left without its cautions.
                Err(error) => assert!(matches!(error, Error::NotAnOption { .. }), "{what}: {error}"),
            }
            seen += 1;
        }
        assert_eq!(seen, 10);
    }
}
