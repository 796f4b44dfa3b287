//! Source that follows from the registry: one file for each module and language, committed.

mod python;

use std::path::{Path, PathBuf};

/// A generated file: its path from the root of the workspace, and its whole text.
pub(crate) struct GeneratedFile {
    /// Path from the root of the workspace.
    pub(crate) path: PathBuf,
    /// The whole text.
    pub(crate) text: String,
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// Writes every generated file whose text has changed.
pub(crate) fn write() -> Result<(), String> {
    for file in python::files() {
        let path = root().join(&file.path);
        if std::fs::read_to_string(&path).ok().as_deref() != Some(file.text.as_str()) {
            std::fs::write(&path, &file.text).map_err(|error| format!("{}: {error}", path.display()))?;
            println!("wrote {}", file.path.display());
        }
    }
    Ok(())
}

/// Fails where a generated file is not what generation gives now.
pub(crate) fn check() -> Result<(), String> {
    let stale: Vec<String> = python::files()
        .into_iter()
        .filter(|file| std::fs::read_to_string(root().join(&file.path)).ok().as_deref() != Some(&file.text))
        .map(|file| file.path.display().to_string())
        .collect();
    if stale.is_empty() {
        Ok(())
    } else {
        Err(format!("run `cargo xtask generate`; stale: {}", stale.join(", ")))
    }
}
