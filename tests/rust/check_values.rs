//! The published figures of `check_values.csv`, how far each is to be believed, and the book kept on their use.

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;

/// One published figure.
#[derive(Debug, Deserialize)]
pub struct Row {
    /// Its id: a letter for the domain and three digits.
    pub id: String,
    /// The value as printed; several are parted by ` / `.
    pub value: String,
    /// The tolerance, in the value's unit, in per cent or in words.
    pub tolerance: String,
    /// How the figure was come by.
    pub status: String,
}

/// How far a figure is to be believed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Read in the source, or confirmed by an independent computation.
    Printed,
    /// Computed from the source's formula, which need not print it.
    Computed,
    /// Quoted by another text or recalled, and confirmed by nothing: it proves nothing.
    Unconfirmed,
}

impl Row {
    /// How far the figure is to be believed, by the first word of its status and by its confirmation.
    ///
    /// # Panics
    /// Where the status is in words that the table does not define.
    pub fn standing(&self) -> Standing {
        let status = self.status.as_str();
        if status.contains("confirmed by computation") || status.starts_with("READ") {
            Standing::Printed
        } else if status.starts_with("COMPUTED") || status.contains("value by computation") {
            Standing::Computed
        } else if status.starts_with("SECOND-HAND") || status.starts_with("MEMORY") {
            Standing::Unconfirmed
        } else {
            panic!("{}: the status `{status}` is not defined", self.id)
        }
    }
}

impl Row {
    /// The loosest relative tolerance that the row gives any of its values; none where it gives it in words.
    ///
    /// A tabulated figure (`exact`) stands for what rounds to its last digit.
    pub fn tolerance(&self) -> Option<f64> {
        let values = || self.value.split([';', '/']).filter_map(decimal).filter(|(value, _)| *value != 0.0);
        let loosest = |relative: &mut dyn Iterator<Item = f64>| relative.reduce(f64::max);
        if self.tolerance == "exact" {
            return loosest(&mut values().map(|(value, last)| 0.5 * last / value.abs()));
        }
        let parts = self.tolerance.split([';', '/']).map(|part| {
            let (number, _) = decimal(part)?;
            if part.contains('%') {
                Some(number / 100.0)
            } else {
                loosest(&mut values().map(|(value, _)| number / value.abs()))
            }
        });
        parts.collect::<Option<Vec<f64>>>().and_then(|parts| parts.into_iter().reduce(f64::max))
    }
}

/// The number that a text begins with and the worth of its last digit.
fn decimal(text: &str) -> Option<(f64, f64)> {
    let text = text.trim();
    let end = text
        .char_indices()
        .take_while(|&(place, c)| {
            c.is_ascii_digit()
                || ".e".contains(c)
                || "-+".contains(c) && (place == 0 || text[..place].ends_with('e'))
        })
        .map(|(place, c)| place + c.len_utf8())
        .last()?;
    let number = &text[..end];
    let value = number.parse().ok()?;
    let (digits, power) = number.split_once('e').unwrap_or((number, "0"));
    let places = digits.split_once('.').map_or(0, |(_, places)| places.len());
    let power = power.parse::<i64>().ok()? - i64::try_from(places).ok()?;
    Some((value, format!("1e{power}").parse().ok()?))
}

/// Every published figure, by its id.
///
/// # Panics
/// Where the table cannot be read or an id stands twice: the table is part of the source.
pub fn table() -> BTreeMap<String, Row> {
    let mut reader = csv::Reader::from_path(crate::folder().join("check_values.csv")).expect("the table");
    let mut rows = BTreeMap::new();
    for row in reader.deserialize() {
        let row: Row = row.expect("a row");
        let id = row.id.clone();
        assert!(rows.insert(id.clone(), row).is_none(), "{id} stands twice");
    }
    rows
}

/// Why nothing uses a figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reason {
    /// A band of practice, which no number can be compared with.
    Band,
    /// Confirmed by nothing: it would prove nothing.
    Unconfirmed,
    /// Nothing calculates it yet.
    Later,
    /// Nothing here is to calculate it.
    OutsideScope,
    /// The figure contradicts its own formula.
    Wrong,
}

/// Figures that nothing uses.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Unused {
    /// Why.
    pub reason: Reason,
    /// Their ids.
    pub ids: BTreeSet<String>,
    /// What would be calculated, or what is wrong, in words.
    pub note: String,
}

/// `check_values.toml`: what the cases do not tell by themselves.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Book {
    /// By file of the project, the figures that its tests use, each with what the file says of it: its id or its digits.
    pub elsewhere: BTreeMap<String, BTreeMap<String, String>>,
    /// Figures that nothing uses.
    pub unused: Vec<Unused>,
    /// Figures that are used though nothing confirms them.
    pub used_unconfirmed: BTreeSet<String>,
    /// Calculations that no printed or derived case proves, each with the reason.
    pub unproven: BTreeMap<String, String>,
}

/// The book.
///
/// # Panics
/// Where it cannot be read: it is part of the source.
pub fn book() -> Book {
    let text = std::fs::read_to_string(crate::folder().join("check_values.toml")).expect("the book");
    toml::from_str(&text).unwrap_or_else(|error| panic!("check_values.toml: {error}"))
}

/// The ids that a source names: a letter and three digits, within brackets.
pub fn ids(source: &str) -> Vec<String> {
    let inside = source.split('[').skip(1).filter_map(|rest| rest.split(']').next());
    let words = inside.flat_map(|words| words.split(|c: char| !c.is_ascii_alphanumeric()));
    let is_id = |word: &&str| {
        word.len() == 4
            && word.starts_with(|c: char| c.is_ascii_uppercase())
            && word.chars().skip(1).all(|c| c.is_ascii_digit())
    };
    words.filter(is_id).map(str::to_owned).collect()
}
