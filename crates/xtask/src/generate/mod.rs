//! Sources that follow from the registry, and the table of proof: written by one command, committed, and checked for being current.

pub(crate) mod c;
mod python;

use std::path::{Path, PathBuf};

use crate::workspace::{self, Workspace};

/// A generated file.
pub(crate) struct GeneratedFile {
    /// Its path from the root of the workspace.
    pub(crate) path: PathBuf,
    /// Its text.
    pub(crate) text: String,
}

/// Folders that hold generated files alone: a file there that is no longer generated is stale too.
const FOLDERS: &[&str] = &["bindings/c/src/generated", "python/coaming/_solution"];

fn files(workspace: &Workspace) -> Result<Vec<GeneratedFile>, String> {
    let mut files = c::files(workspace)?;
    files.extend(python::files());
    files.push(GeneratedFile { path: "tests/PROOF.md".into(), text: coaming_tests::proof::text()? });
    Ok(files)
}

/// Writes every generated file that is not current.
pub(crate) fn write(workspace: &Workspace) -> Result<String, String> {
    let files = files(workspace)?;
    let mut written = 0;
    for file in &files {
        let path = workspace.root.join(&file.path);
        if !is_current(&path, &file.text) {
            workspace::write(&path, &file.text)?;
            written += 1;
        }
    }
    let left = left_behind(workspace, &files);
    for path in &left {
        std::fs::remove_file(path).map_err(|error| format!("{}: {error}", path.display()))?;
    }
    Ok(format!("generate: {} files, {written} written, {} removed", files.len(), left.len()))
}

/// Fails where a generated file is not current, and names it.
pub(crate) fn check(workspace: &Workspace) -> Result<String, String> {
    let files = files(workspace)?;
    let mut stale: Vec<PathBuf> = files
        .iter()
        .map(|file| (workspace.root.join(&file.path), file))
        .filter(|(path, file)| !is_current(path, &file.text))
        .map(|(path, _)| path)
        .collect();
    stale.extend(left_behind(workspace, &files));
    if stale.is_empty() {
        return Ok(format!("generate --check: {} files are current", files.len()));
    }
    let names: Vec<String> = stale.iter().map(|path| format!("  {}", path.display())).collect();
    Err(format!("stale; run `cargo xtask generate` and commit what it writes:\n{}", names.join("\n")))
}

fn is_current(path: &Path, text: &str) -> bool {
    std::fs::read_to_string(path).is_ok_and(|found| found == text)
}

/// Files in a generated folder that nothing generates.
fn left_behind(workspace: &Workspace, files: &[GeneratedFile]) -> Vec<PathBuf> {
    let known: Vec<PathBuf> = files.iter().map(|file| workspace.root.join(&file.path)).collect();
    let mut left: Vec<PathBuf> = FOLDERS
        .iter()
        .filter_map(|folder| std::fs::read_dir(workspace.root.join(folder)).ok())
        .flat_map(|entries| entries.filter_map(Result::ok).map(|entry| entry.path()))
        .filter(|path| path.is_file() && !known.contains(path))
        .collect();
    left.sort();
    left
}
