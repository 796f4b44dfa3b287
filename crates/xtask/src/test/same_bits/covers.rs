//! The reviews and order sheets of the covers in `examples/covers`, as Rust gives them.

use std::path::PathBuf;

use coaming_cover::calls::{Output, Units, order_sheet, review};

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

/// Lays down what the other languages have to give too.
pub(super) fn lay_down(workspace: &Workspace) -> Result<usize, String> {
    let folder = workspace.output_folder(super::FOLDER)?;
    let covers = all(workspace)?;
    for (name, file) in &covers {
        let document =
            std::fs::read_to_string(file).map_err(|error| format!("{}: {error}", file.display()))?;
        let texts = [
            ("review.txt", review(&document, Output::Text, Units::Shop)),
            ("review.json", review(&document, Output::Json, Units::Shop)),
            ("order_sheet.txt", order_sheet(&document, Output::Text, Units::Shop)),
        ];
        for (ending, text) in texts {
            let text = text.map_err(|error| format!("{name}: {error}"))?;
            workspace::write(&folder.join(format!("{name}.{ending}")), &text)?;
        }
    }
    Ok(covers.len())
}
