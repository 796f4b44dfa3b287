//! The reviews and order sheets of the covers in `examples/covers`, as Rust gives them.

use std::path::PathBuf;

use coaming_cover::calls::{self, Output, Units};
use coaming_cover::reviewer::Reviewer;

use crate::workspace::{self, Workspace};

/// The covers of the examples: name without ending, and file.
pub(in crate::test) fn all(workspace: &Workspace) -> Result<Vec<(String, PathBuf)>, String> {
    documents(workspace, "examples/covers")
}

/// The TOML documents of a folder: name without ending, and file.
pub(super) fn documents(workspace: &Workspace, folder: &str) -> Result<Vec<(String, PathBuf)>, String> {
    let folder = workspace.root.join(folder);
    let entries = std::fs::read_dir(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let files = entries.filter_map(Result::ok).map(|entry| entry.path());
    let mut documents: Vec<(String, PathBuf)> = files
        .filter(|file| file.extension().is_some_and(|ending| ending == "toml"))
        .filter_map(|file| Some((file.file_stem()?.to_string_lossy().into_owned(), file)))
        .collect();
    documents.sort();
    Ok(documents)
}

/// What each language gives of a cover: the call, the form and the units, and the ending of the file that holds it.
pub(in crate::test) const OUTPUTS: &[[&str; 4]] = &[
    ["review", "text", "shop", "review.txt"],
    ["review", "full_text", "inch", "review.full.inch.txt"],
    ["review", "markdown", "inch", "review.inch.md"],
    ["review", "full_markdown", "shop", "review.full.md"],
    ["review", "json", "shop", "review.json"],
    ["order_sheet", "text", "shop", "order_sheet.txt"],
    ["order_sheet", "text", "inch", "order_sheet.inch.txt"],
    ["order_sheet", "markdown", "shop", "order_sheet.md"],
    ["order_sheet", "markdown", "inch", "order_sheet.inch.md"],
    ["order_sheet", "json", "shop", "order_sheet.json"],
];

/// The documents whose schema each language gives.
pub(in crate::test) const SCHEMAS: &[&str] = &["cover", "panel"];

/// What a reviewer gives. It solves a cover once for all its outputs; that one which has kept something gives the bits of one
/// that has not is a test of its own; C begins anew for each, Python for data.
fn given(
    reviewer: &mut Reviewer,
    [call, output, units, _]: [&str; 4],
    document: &str,
) -> Result<String, coaming::Error> {
    let output: Output = calls::choice("output", output)?;
    let units: Units = calls::choice("units", units)?;
    match call {
        "order_sheet" => calls::order_sheet_with(reviewer, document, output, units),
        _ => calls::review_with(reviewer, document, output, units),
    }
}

/// Lays down what the other languages have to give too, and the list of it.
pub(super) fn lay_down(workspace: &Workspace) -> Result<usize, String> {
    let folder = workspace.output_folder(super::FOLDER)?;
    let covers = all(workspace)?;
    for (name, file) in &covers {
        let document =
            std::fs::read_to_string(file).map_err(|error| format!("{}: {error}", file.display()))?;
        let mut reviewer = Reviewer::new();
        for output in OUTPUTS {
            let text =
                given(&mut reviewer, *output, &document).map_err(|error| format!("{name}: {error}"))?;
            workspace::write(&folder.join(format!("{name}.{}", output[3])), &text)?;
        }
    }
    for of in SCHEMAS {
        let schema =
            calls::choice("of", of).and_then(calls::schema).map_err(|error| format!("{of}: {error}"))?;
        workspace::write(&folder.join(format!("{of}.schema.json")), &schema)?;
    }
    let list = serde_json::to_string(OUTPUTS).map_err(|error| error.to_string())?;
    workspace::write(&folder.join("outputs.json"), &list)?;
    Ok(covers.len())
}
