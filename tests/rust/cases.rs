//! Every case of `tests/cases`, through the registry.

use coaming::declaration::{Field, Kind, Node};
use coaming::{Entry, quantity};
use coaming_tests::{Case, Expected, Origin, node, record};

#[test]
fn every_case_holds() {
    let cases = coaming_tests::all();
    let faults: Vec<String> = cases
        .iter()
        .filter_map(|(module, case)| {
            let fault = run(case).err()?;
            Some(format!(
                "{module}: {} ({})\n  input {:?}\n  {fault}",
                case.calculation, case.source, case.input
            ))
        })
        .collect();
    assert!(!cases.is_empty());
    assert!(faults.is_empty(), "{} of {} cases fail:\n{}", faults.len(), cases.len(), faults.join("\n"));
}

#[test]
fn every_calculation_has_a_case_that_proves() {
    let cases = coaming_tests::all();
    for entry in coaming::ALL {
        let proves = |case: &Case| {
            case.calculation == entry.name && case.origin != Origin::Pinned && !case.expect.is_empty()
        };
        assert!(cases.iter().any(|(_, case)| proves(case)), "{} has no printed or derived case", entry.name);
        assert!(!entry.source.is_empty(), "{} names no source", entry.name);
    }
}

#[test]
fn cases_stand_in_the_file_of_their_module() {
    for (module, case) in coaming_tests::all() {
        let entry = coaming::entry(&case.calculation).unwrap_or_else(|error| panic!("{module}: {error}"));
        assert_eq!(entry.module(), module, "{}", case.calculation);
    }
}

/// The ids in brackets that cases cite are rows of `tests/check_values.csv`, which holds the published figures.
#[test]
fn cited_check_values_exist() {
    let table =
        std::fs::read_to_string(coaming_tests::folder().join("check_values.csv")).expect("the check values");
    let known: Vec<&str> = table.lines().filter_map(|line| line.split_once(',')).map(|(id, _)| id).collect();
    let cases = coaming_tests::all();
    let mut cited = 0;
    for (module, case) in &cases {
        for id in ids(&case.source) {
            assert!(
                known.contains(&id.as_str()),
                "{module}: {} cites {id}, which is no check value",
                case.calculation
            );
            cited += 1;
        }
    }
    assert!(cited > 100, "{cited} ids are cited");
}

/// The ids of a source: a letter and three digits, within brackets.
fn ids(source: &str) -> Vec<String> {
    let inside = source.split('[').skip(1).filter_map(|rest| rest.split(']').next());
    let words = inside.flat_map(|words| words.split(|c: char| !c.is_ascii_alphanumeric()));
    let is_id = |word: &&str| {
        word.len() == 4
            && word.starts_with(|c: char| c.is_ascii_uppercase())
            && word.chars().skip(1).all(|c| c.is_ascii_digit())
    };
    words.filter(is_id).map(str::to_owned).collect()
}

fn run(case: &Case) -> Result<(), String> {
    let entry = coaming::entry(&case.calculation).map_err(|error| error.to_string())?;
    match ((entry.calculate)(record(&case.input)), &case.error) {
        (Ok((outcome, caveats)), None) => {
            let names: Vec<&str> = caveats.iter().map(coaming::Caveat::name).collect();
            let mut expected: Vec<&str> = case.caveats.iter().map(String::as_str).collect();
            expected.sort_by_key(|name| names.iter().position(|known| known == name));
            if names != expected {
                return Err(format!("caveats {names:?}, expected {expected:?}"));
            }
            case.expect.iter().try_for_each(|(name, expected)| compare_field(entry, &outcome, name, expected))
        }
        (Err(error), Some(expected)) if error.name() == expected.code && error.field() == expected.field => {
            Ok(())
        }
        (Err(error), _) => Err(format!("refused: {} at `{}`: {error}", error.name(), error.field())),
        (Ok((outcome, _)), Some(expected)) => Err(format!("expected {expected:?}, found {outcome:?}")),
    }
}

fn compare_field(entry: &Entry, outcome: &Node, name: &str, expected: &Expected) -> Result<(), String> {
    let field =
        entry.outcome.fields.iter().find(|field| field.name == name).ok_or(format!("no outcome `{name}`"))?;
    let found = outcome.entry(name).ok_or(format!("no outcome `{name}`"))?;
    compare(field, &field.kind, found, &expected.value, expected.within.as_ref())
        .map_err(|fault| format!("{name}: {fault}"))
}

/// Compares one value; lists entry by entry, records key by key, each number within the same tolerance.
fn compare(
    field: &Field,
    kind: &Kind,
    found: &Node,
    expected: &toml::Value,
    within: Option<&toml::Value>,
) -> Result<(), String> {
    match (kind, found, expected) {
        (Kind::Optional(_), Node::Absent, toml::Value::String(word)) if word == "absent" => Ok(()),
        (Kind::Optional(inner), _, _) => compare(field, inner, found, expected, within),
        (Kind::List(inner), Node::List(entries), toml::Value::Array(wanted)) => {
            if entries.len() != wanted.len() {
                return Err(format!("{} entries, expected {}", entries.len(), wanted.len()));
            }
            entries
                .iter()
                .zip(wanted)
                .try_for_each(|(found, expected)| compare(field, inner, found, expected, within))
        }
        (Kind::Record(of), _, toml::Value::Table(wanted)) => wanted.iter().try_for_each(|(key, expected)| {
            let field =
                of.fields.iter().find(|field| field.name == key).ok_or(format!("no field `{key}`"))?;
            let found = found.entry(key).ok_or(format!("no field `{key}`"))?;
            compare(field, &field.kind, found, expected, within).map_err(|fault| format!("{key}: {fault}"))
        }),
        _ => match found.si() {
            Some(found) => {
                let expected = number(kind, expected)?;
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
