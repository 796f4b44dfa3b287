//! The references of the panel solver made anew by the other elements that they come from, and compared with what is committed.

use super::{Done, python};
use crate::workspace::{Workspace, output};

/// Scripts of `tests/independent` with the file of the panel solver's tests that each writes; those that take minutes or need more than
/// Python's packages are left to whoever changes them.
const REFERENCES: &[(&str, &str)] = &[("panel_skew.py", "skew.csv"), ("panel_cover.py", "cover.csv")];

/// How far a number made anew may lie from the committed one, as a share: another machine's arithmetic, on equations whose condition costs
/// up to ten digits.
const SHARE: f64 = 1e-5;

/// Runs the scripts in the tests' own Python environment.
pub(super) fn run(workspace: &Workspace, _all: bool) -> Result<Done, String> {
    let environment = python::requirements(workspace)?;
    let mut passed = 0;
    for (script, file) in REFERENCES {
        let mut command = environment.python();
        command.env("OMP_NUM_THREADS", "1").arg(workspace.root.join("tests/independent").join(script));
        let made = output(&mut command)?;
        let path = workspace.root.join("crates/coaming-panel/tests/reference").join(file);
        let committed = std::fs::read_to_string(&path).map_err(|error| format!("{file}: {error}"))?;
        passed += compare(&made, &committed).map_err(|fault| format!("{file}: {fault}"))?;
    }
    Ok(Done { passed, words: format!("{passed} numbers come out as they are committed") })
}

/// Counts the numbers that agree, or tells the first place that does not.
fn compare(made: &str, committed: &str) -> Result<u64, String> {
    let [made, committed] = [made, committed].map(|text| text.lines().map(str::trim).collect::<Vec<_>>());
    if made.len() != committed.len() {
        return Err(format!("{} lines where {} are committed", made.len(), committed.len()));
    }
    let mut counted = 0;
    for (made, committed) in made.iter().zip(&committed) {
        let fault = || format!("`{made}` where `{committed}` is committed");
        let (new, old): (Vec<&str>, Vec<&str>) = (made.split(',').collect(), committed.split(',').collect());
        if new.len() != old.len() {
            return Err(fault());
        }
        for (new, old) in new.iter().zip(&old) {
            match (new.parse::<f64>(), old.parse::<f64>()) {
                (Ok(new), Ok(old)) if (new - old).abs() <= SHARE * old.abs() => counted += 1,
                (Err(_), Err(_)) if new == old => {}
                _ => return Err(fault()),
            }
        }
    }
    Ok(counted)
}

#[cfg(test)]
mod tests {
    use super::compare;

    #[test]
    fn numbers_agree_to_their_share_and_words_to_the_letter() {
        assert_eq!(compare("a,b\nx,1.000001,2\n", "a,b\nx,1.0,2\n"), Ok(2));
        assert!(compare("x,1.001", "x,1.0").is_err());
        assert!(compare("y,1.0", "x,1.0").is_err());
        assert!(compare("x,nan", "x,1.0").is_err());
        assert!(compare("x,1.0\nx,1.0", "x,1.0").is_err());
        assert!(compare("x,1.0", "x,1.0,2.0").is_err());
    }
}
