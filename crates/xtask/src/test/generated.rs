//! The generated files are current.

use super::Done;
use crate::generate;
use crate::workspace::Workspace;

/// `cargo xtask generate --check`.
pub(super) fn run(workspace: &Workspace, _all: bool) -> Result<Done, String> {
    generate::check(workspace).map(|words| Done { passed: 0, words })
}
