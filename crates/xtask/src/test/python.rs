//! The tests in Python, in an environment of their own.

use std::process::Command;

use super::rust::count;
use super::{Done, same_bits};
use crate::workspace::{Workspace, is_installed, output, watch};

/// Makes `.venv`, installs what the tests need and the package, runs pytest and mypy.
pub(super) fn run(workspace: &Workspace, all: bool) -> Result<Done, String> {
    if !workspace.root.join("python/pyproject.toml").is_file() {
        let words = "skipped: python (the folder python holds no package)".to_owned();
        return if all { Err(words) } else { Ok(Done { passed: 0, words }) };
    }
    let system = std::env::var_os("PYTHON").unwrap_or_else(|| "python3".into());
    if !is_installed(&system) {
        return Err(
            "install Python 3.11 or later, on Debian with `apt-get install python3 python3-venv`".to_owned()
        );
    }
    let folder = workspace.root.join(".venv");
    let python = folder.join("bin/python");
    if !is_installed(python.as_os_str()) {
        let made = output(Command::new(system).args(["-m", "venv", "--clear"]).arg(&folder));
        made.map_err(|_| "install Python's venv, on Debian with `apt-get install python3-venv`".to_owned())?;
    }
    let module = |name: &str, arguments: &[&str]| {
        let mut command = Command::new(&python);
        command.current_dir(&workspace.root).args(["-m", name]).args(arguments);
        command
    };
    let pip = ["install", "--quiet", "--disable-pip-version-check"];
    output(module("pip", &pip).args(["-r", "tests/python/requirements.txt"]))?;
    output(module("pip", &pip).arg("./python"))?;
    let lines = watch(
        module("pytest", &["-q", "tests/python"]).env(same_bits::VARIABLE, same_bits::table_path(workspace)?),
    )?;
    let summary = lines.last().map_or("", String::as_str);
    let (passed, skipped) = (count(summary, "passed"), count(summary, "skipped"));
    if passed == 0 || skipped > 0 {
        return Err(format!("pytest passed {passed} tests and skipped {skipped}; each is to run"));
    }
    output(&mut module("mypy", &["--strict", "python/coaming", "tests/python"]))?;
    Ok(Done { passed, words: format!("{passed} tests hold, mypy finds no fault") })
}
