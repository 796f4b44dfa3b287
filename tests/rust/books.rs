//! What proves what: each published figure is used or says why not, and each case claims no more than its source bears.

use std::collections::{BTreeMap, BTreeSet};

use coaming_tests::check_values::{self, Reason, Row, Standing};
use coaming_tests::{Case, Expected, Origin};

/// Words by which a source says that its digits were not read in it.
const NOT_READ: &[&str] = &["second-hand", "unverified", "from memory"];

fn cited() -> BTreeSet<String> {
    coaming_tests::all().iter().flat_map(|(_, case)| check_values::ids(&case.source)).collect()
}

#[test]
fn every_calculation_is_proven_or_says_why_not() {
    let cases = coaming_tests::all();
    let proves =
        |case: &Case, name: &str| case.calculation == name && case.origin.proves() && !case.expect.is_empty();
    let mut unproven = BTreeSet::new();
    for entry in coaming::ALL {
        assert!(!entry.source.is_empty(), "{} names no source", entry.name);
        if !cases.iter().any(|(_, case)| proves(case, entry.name)) {
            unproven.insert(entry.name.to_owned());
            let guarded =
                cases.iter().any(|(_, case)| case.calculation == entry.name && !case.expect.is_empty());
            assert!(guarded, "{} has no case", entry.name);
        }
    }
    let book = check_values::book();
    assert_eq!(unproven, book.unproven.keys().cloned().collect(), "against `unproven` of check_values.toml");
    assert!(book.unproven.values().all(|reason| !reason.is_empty()));
}

/// Every figure is used by a case, used by a named test, or listed with the reason, and only one of the last two.
#[test]
fn every_published_figure_is_used_or_says_why_not() {
    let (table, book, cited) = (check_values::table(), check_values::book(), cited());
    assert!(table.len() > 200);
    let known = |id: &String| assert!(table.contains_key(id), "{id} is no check value");
    cited.iter().for_each(known);
    let mut used = cited;
    for (file, ids) in &book.elsewhere {
        let text = std::fs::read_to_string(coaming_tests::folder().join("..").join(file)).expect(file);
        for (id, said) in ids {
            known(id);
            assert!(
                !said.is_empty() && text.contains(said.as_str()),
                "{file} does not say `{said}` for {id}"
            );
            used.insert(id.clone());
        }
    }
    let mut unused = BTreeSet::new();
    for part in &book.unused {
        for id in &part.ids {
            known(id);
            assert!(!part.note.is_empty());
            assert!(unused.insert(id.clone()), "{id} is listed twice");
            assert!(!used.contains(id), "{id} is used, and listed as unused");
            let standing = table[id].standing();
            assert_eq!(
                part.reason == Reason::Unconfirmed,
                standing == Standing::Unconfirmed,
                "{id} is {standing:?}, and listed under {:?}",
                part.reason
            );
        }
    }
    let left: Vec<&String> = table.keys().filter(|id| !used.contains(*id) && !unused.contains(*id)).collect();
    assert!(left.is_empty(), "neither used nor listed: {left:?}");
    let unconfirmed =
        used.into_iter().filter(|id| table[id].standing() == Standing::Unconfirmed).collect::<BTreeSet<_>>();
    assert_eq!(unconfirmed, book.used_unconfirmed, "against `used_unconfirmed` of check_values.toml");
}

/// A case claims no more than its source bears: digits that nobody read in it are `unconfirmed`, whatever the formula.
#[test]
fn cases_claim_no_more_than_their_sources_bear() {
    let table = check_values::table();
    let faults: Vec<String> = coaming_tests::all()
        .iter()
        .filter_map(|(module, case)| {
            let fault = claim(case, &table).err()?;
            Some(format!("{module}: {} ({}): {fault}", case.calculation, case.source))
        })
        .collect();
    assert!(faults.is_empty(), "{} cases claim too much or too little:\n{}", faults.len(), faults.join("\n"));
}

fn claim(case: &Case, table: &BTreeMap<String, Row>) -> Result<(), String> {
    let ids = check_values::ids(&case.source);
    let standings: Vec<Standing> = ids.iter().filter_map(|id| Some(table.get(id)?.standing())).collect();
    // A figure that its row confirms by computation is proof, though its digits were recalled.
    let not_read = standings.contains(&Standing::Unconfirmed)
        || standings.is_empty() && NOT_READ.iter().any(|words| case.source.contains(words));
    match case.origin {
        Origin::Printed if not_read => Err("its digits were not read in the source: unconfirmed".to_owned()),
        Origin::Printed if standings.contains(&Standing::Computed) => {
            Err("its digits were computed from the source's formula: derived".to_owned())
        }
        Origin::Unconfirmed if !not_read => Err("nothing says that its digits were not read".to_owned()),
        _ => Ok(()),
    }
}

/// The tolerance of a case is no wider than that of the figure that it cites, unless it says why.
#[test]
fn tolerances_are_no_wider_than_the_published_figures() {
    let table = check_values::table();
    let (mut compared, mut faults) = (0, Vec::new());
    for (module, case) in coaming_tests::all() {
        let ids = check_values::ids(&case.source);
        let Some(room) = ids.iter().filter_map(|id| table.get(id)?.tolerance()).reduce(f64::max) else {
            assert!(case.wider.is_none(), "{module}: {} has no figure to be wider than", case.calculation);
            continue;
        };
        let widest = case.expect.values().filter_map(relative).reduce(f64::max).unwrap_or(0.0);
        compared += 1;
        // The last bit of a quotient is no difference.
        if (widest > room * (1.0 + 1e-9)) != case.wider.is_some() {
            faults.push(format!(
                "{module}: {} ({}): within {widest:e}, the figure within {room:e}, reason {:?}",
                case.calculation, case.source, case.wider
            ));
        }
    }
    assert!(compared > 150, "{compared} cases are compared");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// The tolerance of an expected value as a part of it; none of a list, a flag or a zero.
///
/// Value and tolerance are taken to be in one unit unless the tolerance is in per cent, which is checked.
fn relative(expected: &Expected) -> Option<f64> {
    let parted = |value: &toml::Value| match value {
        toml::Value::Integer(number) => Some((*number as f64, String::new())),
        toml::Value::Float(number) => Some((*number, String::new())),
        toml::Value::String(text) => {
            let (number, unit) = text.split_once(' ')?;
            Some((number.parse().ok()?, unit.trim().to_owned()))
        }
        _ => None,
    };
    let Some(within) = &expected.within else { return Some(0.0) };
    let (room, unit_of_room) = parted(within)?;
    if unit_of_room == "%" {
        return Some(room / 100.0);
    }
    let (value, unit) = parted(&expected.value)?;
    let same = unit == unit_of_room || unit == "degC" && unit_of_room == "K";
    assert!(same, "{expected:?}: the tolerance is in another unit than the value");
    (value != 0.0).then(|| room / value.abs())
}
