//! Hostile documents, through the review command as a user runs it: exit status 2, a message that names file, line and
//! field, and never a panic.

mod faults;
mod files;
mod panels;
mod relations;
mod values;

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// A sound document: the faults are put into it one by one.
pub(crate) const SOUND: &str = include_str!("sound.toml");

/// The beginning of a second document, in JSON.
pub(crate) const SOUND_JSON: &str = r#"{
  "version": 1,
  "title": "Lid",
  "opening": { "outline": { "rectangle": { "width": "500 mm", "height": "360 mm" } } },
  "layers": [
    { "name": "lid", "role": "skin",
      "outline": { "rectangle": { "width": "580 mm", "height": "440 mm" } },
      "thickness": "2.5 mm" }
  ]
}
"#;

pub(crate) fn scratch(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("hostile");
    std::fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}

pub(crate) fn written(name: &str, text: impl AsRef<[u8]>) -> PathBuf {
    let path = scratch(name);
    std::fs::write(&path, text).unwrap();
    path
}

pub(crate) fn reviewed(path: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_review")).arg(path).output().unwrap()
}

/// Runs the command on a bad file; gives its message without the file's name, which must lead it.
pub(crate) fn refused(path: &Path) -> String {
    let output = reviewed(path);
    let message = String::from_utf8(output.stderr).unwrap();
    let name = path.display().to_string();
    assert!(!message.contains("panicked"), "{name}: {message}");
    assert_eq!(output.status.code(), Some(2), "{name}: {message}");
    assert!(output.stdout.is_empty(), "{name} prints a review");
    assert!(message.lines().count() == 1, "{name}: one line is due: {message}");
    assert!(message.len() < 2_000 + name.len(), "{name}: a message of {} bytes", message.len());
    let rest = message.strip_prefix(&format!("{name}: "));
    rest.unwrap_or_else(|| panic!("{name} is not named: {message}")).trim_end().to_owned()
}
