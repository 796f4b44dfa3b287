//! Where things are, and how other programs are run.

use std::ffi::OsStr;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The workspace's folders, as cargo tells them.
pub(crate) struct Workspace {
    /// The folder of the workspace's `Cargo.toml`.
    pub(crate) root: PathBuf,
    /// The folder that everything built goes to.
    pub(crate) target: PathBuf,
}

impl Workspace {
    /// Asks cargo.
    pub(crate) fn find() -> Result<Self, String> {
        let mut command = cargo();
        command.args(["metadata", "--no-deps", "--format-version", "1"]);
        let text = output(&mut command)?;
        let metadata: serde_json::Value =
            serde_json::from_str(&text).map_err(|error| format!("cargo metadata: {error}"))?;
        let folder = |key: &str| {
            metadata[key].as_str().map(PathBuf::from).ok_or_else(|| format!("cargo metadata has no `{key}`"))
        };
        Ok(Self { root: folder("workspace_root")?, target: folder("target_directory")? })
    }

    /// A folder below the target folder, made if it is not there.
    pub(crate) fn output_folder(&self, name: &str) -> Result<PathBuf, String> {
        let folder = self.target.join(name);
        std::fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
        Ok(folder)
    }

    /// Cargo in the root of the workspace.
    pub(crate) fn cargo(&self) -> Command {
        let mut command = cargo();
        command.current_dir(&self.root);
        command
    }
}

fn cargo() -> Command {
    Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// Runs a program and gives what it printed; where it fails, that is shown. Standard error passes through.
pub(crate) fn output(command: &mut Command) -> Result<String, String> {
    let output = command.stderr(Stdio::inherit()).output().map_err(|error| not_started(command, &error))?;
    if output.status.success() {
        Ok(String::from_utf8_lossy(&output.stdout).into_owned())
    } else {
        print!("{}", String::from_utf8_lossy(&output.stdout));
        Err(format!("{}: {}", words(command), output.status))
    }
}

/// Runs a program, passes on each line that it prints, and gives all of them.
pub(crate) fn watch(command: &mut Command) -> Result<Vec<String>, String> {
    let mut child = command.stdout(Stdio::piped()).spawn().map_err(|error| not_started(command, &error))?;
    let mut lines = Vec::new();
    if let Some(stdout) = child.stdout.take() {
        for line in BufReader::new(stdout).lines() {
            let line = line.map_err(|error| format!("{}: {error}", words(command)))?;
            println!("{line}");
            lines.push(line);
        }
    }
    let status = child.wait().map_err(|error| format!("{}: {error}", words(command)))?;
    if status.success() { Ok(lines) } else { Err(format!("{}: {status}", words(command))) }
}

/// True where a program answers to `--version`.
pub(crate) fn is_installed(program: &OsStr) -> bool {
    let mut command = Command::new(program);
    command.arg("--version").stdout(Stdio::null()).stderr(Stdio::null());
    command.status().is_ok_and(|status| status.success())
}

/// Writes a file.
pub(crate) fn write(path: &Path, text: &str) -> Result<(), String> {
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    }
    std::fs::write(path, text).map_err(|error| format!("{}: {error}", path.display()))
}

fn not_started(command: &Command, error: &std::io::Error) -> String {
    format!("{}: {error}", words(command))
}

fn words(command: &Command) -> String {
    let parts = [command.get_program()].into_iter().chain(command.get_args());
    parts.map(|part| part.to_string_lossy().into_owned()).collect::<Vec<_>>().join(" ")
}
