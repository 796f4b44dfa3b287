//! Every test in every language, stage by stage; each prints one line when it is done.

pub(crate) mod c;
mod format;
mod generated;
mod lint;
pub(crate) mod python;
mod references;
mod rust;
mod same_bits;
mod valgrind;

use crate::workspace::Workspace;

/// What a stage did: how many checks held, and in words.
pub(crate) struct Done {
    /// Checks that held, as the stage's own programs counted them.
    pub(crate) passed: u64,
    /// What was done; begins with `skipped:` where nothing was.
    pub(crate) words: String,
}

/// A stage: done, or why not in one plain sentence.
type Stage = fn(&Workspace, all: bool) -> Result<Done, String>;

/// The stages in order; the flag is set for those that `--all` adds.
const STAGES: &[(&str, bool, Stage)] = &[
    ("format", true, format::run),
    ("generated", false, generated::run),
    ("rust", false, rust::run),
    ("same bits", false, same_bits::run),
    ("c", false, c::run),
    ("python", false, python::run),
    ("references", true, references::run),
    ("lint", true, lint::run),
    ("valgrind", false, valgrind::run),
];

/// Runs the stages up to the first that fails; only those that are named, with a `-` for a blank, where some are.
pub(crate) fn run(workspace: &Workspace, all: bool, named: &[&str]) -> Result<String, String> {
    let is_named = |name: &str| named.iter().any(|word| word.replace('-', " ") == name);
    if let Some(word) =
        named.iter().find(|word| !STAGES.iter().any(|stage| word.replace('-', " ") == stage.0))
    {
        let stages: Vec<String> = STAGES.iter().map(|stage| stage.0.replace(' ', "-")).collect();
        return Err(format!("no stage `{word}`; there are {}", stages.join(", ")));
    }
    let mut passed = 0;
    for (name, only_with_all, stage) in STAGES {
        let wanted = if named.is_empty() { all || !only_with_all } else { is_named(name) };
        if !wanted {
            continue;
        }
        let done =
            stage(workspace, all || !named.is_empty()).map_err(|fault| format!("{name}: FAILED: {fault}"))?;
        match done.words.starts_with("skipped:") {
            true => println!("{}", done.words),
            false => println!("{name}: {}", done.words),
        }
        passed += done.passed;
    }
    Ok(format!("{passed} passed, 0 failed"))
}
