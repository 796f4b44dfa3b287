//! The cases of `tests/cases`, as every runner reads them.
//!
//! A case names its origin: `printed` (a source's digits), `derived` (by hand or by an independent method), `unconfirmed`
//! (a source's digits at second hand or from memory) or `pinned` (our own output). The last two guard and prove nothing.
#![forbid(unsafe_code)]

pub mod check_values;
pub mod comparing;
pub mod drawing;
pub mod fuzzing;
pub mod panels;
pub mod proof;
pub mod refusals;

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use coaming::declaration::Node;
use serde::Deserialize;

/// One file of cases.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct File {
    /// Its cases.
    pub case: Vec<Case>,
}

/// Where the expected numbers of a case come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Origin {
    /// Digits as a source prints them.
    Printed,
    /// By hand or by an independent method.
    Derived,
    /// A source's digits, quoted by another text or recalled, that nothing confirms: they guard, and prove nothing.
    Unconfirmed,
    /// Our own output: it guards, and proves nothing.
    Pinned,
}

/// One input with what is expected of it: an outcome or an error.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Case {
    /// The calculation's name.
    pub calculation: String,
    /// Where the numbers come from.
    pub origin: Origin,
    /// The source, with the place in it.
    pub source: String,
    /// Why a tolerance is wider than that of the published figure.
    pub wider: Option<String>,
    /// The input, as a document gives it.
    pub input: toml::Table,
    /// Expected fields of the outcome.
    #[serde(default)]
    pub expect: BTreeMap<String, Expected>,
    /// The expected error instead.
    pub error: Option<ExpectedError>,
    /// The caveats expected, all of them.
    #[serde(default)]
    pub caveats: Vec<String>,
}

impl Origin {
    /// Every origin: those that prove come first.
    pub const ALL: &'static [Self] = &[Self::Printed, Self::Derived, Self::Unconfirmed, Self::Pinned];

    /// Whether a case of this origin is proof.
    pub fn proves(self) -> bool {
        matches!(self, Self::Printed | Self::Derived)
    }
}

/// An expected field, with its tolerance: `"0.1 %"`, or absolute in the field's dimension.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Expected {
    /// The value: a quantity, number, flag, choice or list.
    pub value: toml::Value,
    /// How far off it may be; left out for what is exact.
    pub within: Option<toml::Value>,
}

/// An expected error.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExpectedError {
    /// The error's name.
    pub code: String,
    /// The field's path.
    pub field: String,
}

/// The folder of the tests.
pub fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every case with the module that it belongs to, in the order of the files.
///
/// # Panics
/// Where a file cannot be read: the cases are part of the source.
pub fn all() -> Vec<(String, Case)> {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder().join("cases"))
        .expect("tests/cases")
        .map(|entry| entry.expect("entry").path())
        .collect();
    files.sort();
    files.iter().flat_map(|file| of_file(file)).collect()
}

fn of_file(file: &Path) -> Vec<(String, Case)> {
    let module = file.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    let text = std::fs::read_to_string(file).expect("a case file");
    let cases: File = toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
    cases.case.into_iter().map(|case| (module.clone(), case)).collect()
}

/// A TOML value as a node.
pub fn node(value: &toml::Value) -> Node {
    match value {
        toml::Value::String(text) => Node::Text(text.clone()),
        toml::Value::Integer(number) => Node::Number(*number as f64),
        toml::Value::Float(number) => Node::Number(*number),
        toml::Value::Boolean(flag) => Node::Flag(*flag),
        toml::Value::Datetime(datetime) => Node::Text(datetime.to_string()),
        toml::Value::Array(entries) => Node::List(entries.iter().map(node).collect()),
        toml::Value::Table(table) => record(table),
    }
}

/// A TOML table as a node.
pub fn record(table: &toml::Table) -> Node {
    Node::Record(table.iter().map(|(key, value)| (Cow::Owned(key.clone()), node(value))).collect())
}
