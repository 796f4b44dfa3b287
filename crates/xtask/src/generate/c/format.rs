//! Generated Rust in the project's own form.

use std::io::Write;
use std::process::{Command, Stdio};

use crate::workspace::Workspace;

/// The source as `rustfmt` lays it out.
pub(super) fn formatted(workspace: &Workspace, source: &str) -> Result<String, String> {
    let mut child = Command::new("rustfmt")
        .args(["--edition", "2024", "--emit", "stdout", "--config-path"])
        .arg(&workspace.root)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|error| format!("rustfmt: {error}; install it with `rustup component add rustfmt`"))?;
    let failed = |error: std::io::Error| format!("rustfmt: {error}");
    // Dropped before the wait: rustfmt reads to the end of its input.
    let written = child.stdin.take().map_or(Ok(()), |mut stdin| stdin.write_all(source.as_bytes()));
    let output = child.wait_with_output().map_err(failed)?;
    written.map_err(failed)?;
    if !output.status.success() {
        return Err(format!("rustfmt: {}; the generated source was:\n{source}", output.status));
    }
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}
