//! Formatting.

use super::Done;
use crate::workspace::{Workspace, output};

/// `cargo fmt --check`.
pub(super) fn run(workspace: &Workspace, _all: bool) -> Result<Done, String> {
    let differences = output(workspace.cargo().args(["fmt", "--all", "--check", "--", "-l"]))
        .map_err(|_| "run `cargo fmt --all`".to_owned())?;
    match differences.is_empty() {
        true => Ok(Done { passed: 0, words: "every Rust file is formatted".to_owned() }),
        false => Err(format!("run `cargo fmt --all`:\n{differences}")),
    }
}
