//! The same bits in every language: each case of `tests/cases` is calculated in Rust, and what came out is laid down
//! as two tables, a C source and a JSON file, that the runners of C and Python compare with.

mod c_table;
pub(super) mod covers;
mod hex;
mod json_table;
pub(super) mod panels;
mod refusals;
mod row;

use std::path::PathBuf;

use super::Done;
use crate::workspace::{self, Workspace};
use row::Row;

/// The environment variable that tells the runners where the table is.
pub(super) const VARIABLE: &str = "COAMING_SAME_BITS";

/// The folder of the tables, below the target folder.
pub(super) const FOLDER: &str = "same-bits";

/// Where the table for Python stands.
pub(super) fn table_path(workspace: &Workspace) -> Result<PathBuf, String> {
    Ok(workspace.output_folder(FOLDER)?.join("cases.json"))
}

/// Writes both tables.
pub(super) fn run(workspace: &Workspace, _all: bool) -> Result<Done, String> {
    let rows = coaming_tests::all().iter().map(|(_, case)| Row::of(case)).collect::<Result<Vec<_>, _>>()?;
    let folder = workspace.output_folder(FOLDER)?;
    workspace::write(&folder.join("same_bits_table.h"), &c_table::text(&rows))?;
    workspace::write(&table_path(workspace)?, &json_table::text(&rows)?)?;
    let covers = covers::lay_down(workspace)?;
    let panels = panels::lay_down(workspace)?;
    let refusals = refusals::lay_down(workspace)?;
    let flat = rows.iter().filter(|row| row.flat.is_some()).count();
    Ok(Done {
        passed: 0,
        words: format!(
            "{} cases laid down, {flat} of them for C structs, {covers} covers, {panels} panels and {refusals} panels that cannot be",
            rows.len()
        ),
    })
}
