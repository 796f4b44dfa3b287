//! Clippy and the documentation, with every warning an error.

use super::Done;
use crate::workspace::{Workspace, output};

/// `cargo clippy` and `cargo doc`.
pub(super) fn run(workspace: &Workspace, _all: bool) -> Result<Done, String> {
    let clippy = ["clippy", "--quiet", "--workspace", "--all-targets", "--", "-D", "warnings"];
    output(workspace.cargo().args(clippy))?;
    let doc = ["doc", "--quiet", "--workspace", "--no-deps"];
    output(workspace.cargo().args(doc).env("RUSTDOCFLAGS", "-D warnings"))?;
    Ok(Done { passed: 0, words: "no warning of clippy or rustdoc".to_owned() })
}
