//! The panels of `tests/hostile/panels.toml`, which each language refuses in the same words.

use coaming::Error;
use coaming_cover::document::Form;
use coaming_cover::panel::{CaseSolution, LoadOf, Panel, go_on, read_panel};
use serde::Deserialize;

/// The file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    sound: Pieces,
    cases: Vec<Case>,
}

/// What a document is made of.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Pieces {
    outline: String,
    layers: String,
    held: String,
    case: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    what: String,
    outline: Option<String>,
    layers: Option<String>,
    held: Option<String>,
    case: Option<String>,
    error: String,
    says: Vec<String>,
}

/// A panel that cannot be.
#[derive(Debug)]
pub struct Refusal {
    /// What is wrong with it.
    pub what: String,
    /// Its document, TOML.
    pub document: String,
    /// The name of the error that is due.
    pub error: String,
    /// Words that are due in its message.
    pub says: Vec<String>,
}

impl Refusal {
    /// The error that Rust gives.
    ///
    /// # Errors
    /// In one sentence, where the panel is solved, or refused for another cause or in other words.
    pub fn refused(&self) -> Result<Error, String> {
        let what = &self.what;
        let error = match solved(&self.document) {
            Ok(case) => return Err(format!("{what}: solved: {:?}", case.largest_deflection)),
            Err(error) => error,
        };
        let message = error.to_string();
        if error.name() != self.error {
            return Err(format!("{what}: `{}` is due, not `{}`: {message}", self.error, error.name()));
        }
        match self.says.iter().find(|words| !message.contains(*words)) {
            Some(words) => Err(format!("{what}: `{words}` is due: {message}")),
            None => Ok(error),
        }
    }
}

/// The sound panel's document, and every panel that cannot be.
///
/// # Panics
/// Where the file cannot be read.
pub fn all() -> (String, Vec<Refusal>) {
    let path = crate::folder().join("hostile/panels.toml");
    let text = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let file: File = toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let document = |outline: &str, layers: &str, held: &str, case: &str| {
        format!(
            "version = 1\ntitle = \"hostile\"\n{outline}\n{layers}\n{held}\n[[load_cases]]\nname = \"case\"\n{case}\n"
        )
    };
    let sound = &file.sound;
    let refusals = file.cases.iter().map(|case| Refusal {
        what: case.what.clone(),
        document: document(
            case.outline.as_ref().unwrap_or(&sound.outline),
            case.layers.as_ref().unwrap_or(&sound.layers),
            case.held.as_ref().unwrap_or(&sound.held),
            case.case.as_ref().unwrap_or(&sound.case),
        ),
        error: case.error.clone(),
        says: case.says.clone(),
    });
    (document(&sound.outline, &sound.layers, &sound.held, &sound.case), refusals.collect())
}

/// Solves the first load case of a panel.
///
/// # Errors
/// As the library gives them.
pub fn solved(document: &str) -> Result<CaseSolution, Error> {
    let mut panel = Panel::new(read_panel(document, Form::of(document))?)?;
    panel.solve(LoadOf::Document(0), &mut go_on)
}
