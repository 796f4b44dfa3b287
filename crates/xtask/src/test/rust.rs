//! The tests in Rust: units, examples of the documentation, cases.

use super::Done;
use crate::workspace::{Workspace, watch};

/// `cargo test --workspace`.
pub(super) fn run(workspace: &Workspace, _all: bool) -> Result<Done, String> {
    let lines = watch(workspace.cargo().args(["test", "--workspace", "--quiet"]))?;
    let (mut passed, mut ignored) = (0, 0);
    for line in lines.iter().filter(|line| line.starts_with("test result: ok.")) {
        passed += count(line, "passed");
        ignored += count(line, "ignored");
    }
    // No case is ignored by default: an ignored one would be counted by nobody.
    match (passed, ignored) {
        (0, _) => Err("cargo test ran no test".to_owned()),
        (_, 0) => Ok(Done { passed, words: format!("{passed} tests hold") }),
        (_, ignored) => Err(format!("{ignored} tests are ignored")),
    }
}

/// The number before a word: `25 passed`.
pub(super) fn count(line: &str, word: &str) -> u64 {
    let words: Vec<&str> = line.split([' ', ';', ',']).filter(|word| !word.is_empty()).collect();
    let pair = words.windows(2).find(|pair| pair[1] == word);
    pair.and_then(|pair| pair[0].parse().ok()).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::count;

    #[test]
    fn counts_are_read() {
        let cargo =
            "test result: ok. 25 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.03s";
        assert_eq!((count(cargo, "passed"), count(cargo, "ignored")), (25, 1));
        let pytest = "====== 13 passed, 2 skipped in 1.2s ======";
        assert_eq!((count(pytest, "passed"), count(pytest, "skipped"), count(pytest, "failed")), (13, 2, 0));
    }
}
