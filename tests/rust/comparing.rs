//! A case compared with what the library gives, and how far off it was.

use coaming::declaration::{Field, Kind, Node};
use coaming::{Entry, quantity};

use crate::{Case, Expected, node, record};

/// The largest difference seen between what was found and what was expected.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Difference {
    /// As a part of the expected value, over those numbers that have a tolerance and are not zero; an absolute
    /// temperature counts in kelvin.
    pub relative: f64,
    /// How many numbers were compared.
    pub numbers: usize,
}

impl Difference {
    /// The larger of two, the numbers of both.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self { relative: self.relative.max(other.relative), numbers: self.numbers + other.numbers }
    }

    fn add(&mut self, found: f64, expected: f64, has_tolerance: bool) {
        self.numbers += 1;
        if has_tolerance && expected != 0.0 {
            self.relative = self.relative.max((found - expected).abs() / expected.abs());
        }
    }
}

/// Runs a case and gives the largest difference that it saw.
///
/// # Errors
/// What does not hold, in words.
pub fn run(case: &Case) -> Result<Difference, String> {
    let mut seen = Difference::default();
    run_into(case, &mut seen).map(|()| seen)
}

fn run_into(case: &Case, seen: &mut Difference) -> Result<(), String> {
    let entry = coaming::entry(&case.calculation).map_err(|error| error.to_string())?;
    match ((entry.calculate)(record(&case.input)), &case.error) {
        (Ok((outcome, caveats)), None) => {
            let names: Vec<&str> = caveats.iter().map(coaming::Caveat::name).collect();
            let mut expected: Vec<&str> = case.caveats.iter().map(String::as_str).collect();
            expected.sort_by_key(|name| names.iter().position(|known| known == name));
            if names != expected {
                return Err(format!("caveats {names:?}, expected {expected:?}"));
            }
            case.expect
                .iter()
                .try_for_each(|(name, expected)| compare_field(entry, &outcome, name, expected, seen))
        }
        (Err(error), Some(expected)) if error.name() == expected.code && error.field() == expected.field => {
            Ok(())
        }
        (Err(error), _) => Err(format!("refused: {} at `{}`: {error}", error.name(), error.field())),
        (Ok((outcome, _)), Some(expected)) => Err(format!("expected {expected:?}, found {outcome:?}")),
    }
}

fn compare_field(
    entry: &Entry,
    outcome: &Node,
    name: &str,
    expected: &Expected,
    seen: &mut Difference,
) -> Result<(), String> {
    let field =
        entry.outcome.fields.iter().find(|field| field.name == name).ok_or(format!("no outcome `{name}`"))?;
    let found = outcome.entry(name).ok_or(format!("no outcome `{name}`"))?;
    compare(field, &field.kind, found, &expected.value, expected.within.as_ref(), seen)
        .map_err(|fault| format!("{name}: {fault}"))
}

/// Compares one value; lists entry by entry, records key by key, each number within the same tolerance.
fn compare(
    field: &Field,
    kind: &Kind,
    found: &Node,
    expected: &toml::Value,
    within: Option<&toml::Value>,
    seen: &mut Difference,
) -> Result<(), String> {
    match (kind, found, expected) {
        (Kind::Optional(_), Node::Absent, toml::Value::String(word)) if word == "absent" => Ok(()),
        (Kind::Optional(inner), _, _) => compare(field, inner, found, expected, within, seen),
        (Kind::List(inner), Node::List(entries), toml::Value::Array(wanted)) => {
            if entries.len() != wanted.len() {
                return Err(format!("{} entries, expected {}", entries.len(), wanted.len()));
            }
            entries
                .iter()
                .zip(wanted)
                .try_for_each(|(found, expected)| compare(field, inner, found, expected, within, seen))
        }
        (Kind::Record(of), _, toml::Value::Table(wanted)) => wanted.iter().try_for_each(|(key, expected)| {
            let field =
                of.fields.iter().find(|field| field.name == key).ok_or(format!("no field `{key}`"))?;
            let found = found.entry(key).ok_or(format!("no field `{key}`"))?;
            compare(field, &field.kind, found, expected, within, seen)
                .map_err(|fault| format!("{key}: {fault}"))
        }),
        _ => match found.si() {
            Some(found) => {
                let expected = number(kind, expected)?;
                seen.add(found, expected, within.is_some());
                let room = match within {
                    None => 0.0,
                    Some(toml::Value::String(text)) if text.trim_end().ends_with('%') => {
                        quantity::read_number(text).map_err(|error| error.to_string())? * expected.abs()
                    }
                    Some(within) => difference(kind, within)?,
                };
                if (found - expected).abs() <= room {
                    Ok(())
                } else {
                    Err(format!(
                        "found {}, expected {} within {room:e} (off by {:e})",
                        coaming::declaration::shown(found, field),
                        coaming::declaration::shown(expected, field),
                        found - expected
                    ))
                }
            }
            // `4.0` and `4` are the same count.
            None if *found == node(expected) => Ok(()),
            None => match (found, node(expected)) {
                (Node::Count(found), Node::Number(expected)) if *found as f64 == expected => Ok(()),
                (found, expected) => Err(format!("found {found:?}, expected {expected:?}")),
            },
        },
    }
}

fn number(kind: &Kind, value: &toml::Value) -> Result<f64, String> {
    match (kind, value) {
        (Kind::Quantity(dimension), toml::Value::String(text)) => {
            quantity::read(text, dimension).map_err(|error| error.to_string())
        }
        (Kind::Number, toml::Value::String(text)) => {
            quantity::read_number(text).map_err(|error| error.to_string())
        }
        (Kind::Number, toml::Value::Float(number)) => Ok(*number),
        (Kind::Number, toml::Value::Integer(number)) => Ok(*number as f64),
        (kind, value) => Err(format!("`{value}` is no {kind:?}")),
    }
}

/// A tolerance: of a temperature, a difference.
fn difference(kind: &Kind, value: &toml::Value) -> Result<f64, String> {
    match kind {
        Kind::Quantity(dimension) if dimension.is_absolute_temperature => {
            number(&Kind::Quantity(&quantity::Dimension::TEMPERATURE_DIFFERENCE), value)
        }
        other => number(other, value),
    }
}
