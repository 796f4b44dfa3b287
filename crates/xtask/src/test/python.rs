//! The tests in Python, in an environment of their own.

use std::path::PathBuf;
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
    let environment = environment(workspace)?;
    let lines = watch(
        environment
            .module("pytest", &["-q", "tests/python"])
            .env(same_bits::VARIABLE, same_bits::table_path(workspace)?),
    )?;
    let summary = lines.last().map_or("", String::as_str);
    let (passed, skipped) = (count(summary, "passed"), count(summary, "skipped"));
    if passed == 0 || skipped > 0 {
        return Err(format!("pytest passed {passed} tests and skipped {skipped}; each is to run"));
    }
    output(&mut environment.module("mypy", &["--strict", "python/coaming", "tests/python"]))?;
    Ok(Done { passed, words: format!("{passed} tests hold, mypy finds no fault") })
}

/// The project's own Python environment.
pub(crate) struct Environment {
    root: PathBuf,
    python: PathBuf,
}

impl Environment {
    /// Its interpreter, in the root of the workspace.
    pub(crate) fn python(&self) -> Command {
        let mut command = Command::new(&self.python);
        command.current_dir(&self.root);
        command
    }

    fn module(&self, name: &str, arguments: &[&str]) -> Command {
        let mut command = self.python();
        command.args(["-m", name]).args(arguments);
        command
    }
}

/// The environment with what the tests need and the package itself.
pub(crate) fn environment(workspace: &Workspace) -> Result<Environment, String> {
    let environment = requirements(workspace)?;
    output(environment.module("pip", &PIP_INSTALL).arg("./python"))?;
    Ok(environment)
}

const PIP_INSTALL: [&str; 3] = ["install", "--quiet", "--disable-pip-version-check"];

/// Makes `.venv` where it is not there yet, and installs what the tests need besides the package itself.
pub(crate) fn requirements(workspace: &Workspace) -> Result<Environment, String> {
    let system = std::env::var_os("PYTHON").unwrap_or_else(|| "python3".into());
    if !is_installed(&system) {
        return Err(
            "install Python 3.11 or later, on Debian with `apt-get install python3 python3-venv`".to_owned()
        );
    }
    let folder = workspace.root.join(".venv");
    let environment = Environment { root: workspace.root.clone(), python: folder.join("bin/python") };
    if !is_installed(environment.python.as_os_str()) {
        let made = output(Command::new(system).args(["-m", "venv", "--clear"]).arg(&folder));
        made.map_err(|_| "install Python's venv, on Debian with `apt-get install python3-venv`".to_owned())?;
    }
    output(environment.module("pip", &PIP_INSTALL).args(["-r", "tests/python/requirements.txt"]))?;
    Ok(environment)
}
