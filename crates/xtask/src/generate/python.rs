//! The Python classes.

use super::GeneratedFile;

/// The Python sources; none yet.
pub(crate) fn files() -> Vec<GeneratedFile> {
    Vec::new()
}
