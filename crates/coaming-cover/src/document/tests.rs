//! The document there and back, and with each of its entries taken away.

use std::borrow::Cow;

use coaming::calculation::read_node;
use coaming::declaration::{Field, Fields, Kind, Node, Value};

use super::{Cover, Form, read, to_json, to_toml};
use crate::review::input_hash;

const COVERS: [(&str, &str); 4] = [
    ("first-guess", include_str!("../../../../examples/covers/first-guess.toml")),
    ("first-guess-flanged", include_str!("../../../../examples/covers/first-guess-flanged.toml")),
    ("half-fix", include_str!("../../../../examples/covers/half-fix.toml")),
    ("revised", REVISED),
];

pub(super) const REVISED: &str = include_str!("../../../../examples/covers/revised.toml");

fn cover(text: &str) -> Cover {
    read(text, Form::Toml).unwrap()
}

#[test]
fn a_document_survives_both_forms() {
    for (name, text) in COVERS {
        let cover = cover(text);
        let (toml, json) = (to_toml(&cover).unwrap(), to_json(&cover).unwrap());
        assert_eq!(read(&toml, Form::Toml).as_ref(), Ok(&cover), "{name}: {toml}");
        assert_eq!(read(&json, Form::Json).as_ref(), Ok(&cover), "{name}: {json}");
        assert_eq!((Form::of(&toml), Form::of(&json)), (Form::Toml, Form::Json), "{name}");
        let hash = input_hash(&cover).unwrap();
        assert_eq!(hash.len(), 64);
        for again in [read(&toml, Form::Toml), read(&json, Form::Json)] {
            assert_eq!(input_hash(&again.unwrap()).as_ref(), Ok(&hash), "{name}");
        }
        // Written once more, it is the same text: nothing drifts.
        assert_eq!(to_toml(&read(&json, Form::Json).unwrap()).as_ref(), Ok(&toml), "{name}");
    }
}

#[test]
fn a_byte_order_mark_is_no_part_of_the_text() {
    let plain = cover(REVISED);
    for text in [to_toml(&plain).unwrap(), to_json(&plain).unwrap()] {
        let marked = format!("\u{feff}{text}");
        assert_eq!(Form::of(&marked), Form::of(&text));
        assert_eq!(read(&marked, Form::of(&marked)).as_ref(), Ok(&plain));
    }
}

#[test]
fn the_hash_counts_values_and_not_layout() {
    let hash = |text: &str| input_hash(&cover(text)).unwrap();
    let plain = hash(REVISED);
    assert_eq!(
        plain,
        hash(&format!("# a comment\n{}", REVISED.replace(" = ", "=").replace("2.5 mm", "0.25 cm")))
    );
    assert_ne!(plain, hash(&REVISED.replace("free_height = \"10 mm\"", "free_height = \"10.01 mm\"")));
    let all: Vec<String> = COVERS.iter().map(|(_, text)| hash(text)).collect();
    assert!(all.iter().enumerate().all(|(nth, one)| !all[..nth].contains(one)));
}

/// One entry of a document: the keys and places that lead to it, and whether its table calls it optional.
pub(super) struct Entry {
    pub(super) steps: Vec<Step>,
    pub(super) optional: bool,
}

#[derive(Clone, PartialEq)]
pub(super) enum Step {
    Key(Cow<'static, str>),
    Place(usize),
}

pub(super) fn path(steps: &[Step]) -> String {
    steps.iter().fold(String::new(), |path, step| match step {
        Step::Key(key) if path.is_empty() => key.to_string(),
        Step::Key(key) => format!("{path}.{key}"),
        Step::Place(place) => format!("{path}[{place}]"),
    })
}

/// Every entry that a document has, outermost first.
fn entries(node: &Node, kind: &'static Kind, steps: &mut Vec<Step>, found: &mut Vec<Entry>) {
    match (kind, node) {
        (Kind::Optional(inner), _) => entries(node, inner, steps, found),
        (Kind::Record(record), _) => {
            for field in record.fields {
                let Some(entry) = node.entry(field.name).filter(|entry| **entry != Node::Absent) else {
                    continue;
                };
                steps.push(Step::Key(Cow::Borrowed(field.name)));
                found.push(Entry { steps: steps.clone(), optional: matches!(field.kind, Kind::Optional(_)) });
                entries(entry, &field.kind, steps, found);
                steps.pop();
            }
        }
        (Kind::OneOf(alternatives), Node::Record(held)) => {
            for (key, entry) in held {
                let option = alternatives.options.iter().find(|option| option.0 == key).unwrap();
                steps.push(Step::Key(key.clone()));
                entries(entry, &option.2, steps, found);
                steps.pop();
            }
        }
        (Kind::List(inner), Node::List(list)) => {
            for (place, entry) in list.iter().enumerate() {
                steps.push(Step::Place(place));
                entries(entry, inner, steps, found);
                steps.pop();
            }
        }
        _ => {}
    }
}

pub(super) fn entries_of(written: &Node) -> Vec<Entry> {
    static COVER: Kind = Kind::Record(Cover::RECORD);
    let mut found = Vec::new();
    entries(written, &COVER, &mut Vec::new(), &mut found);
    found
}

pub(super) fn without(node: &Node, steps: &[Step]) -> Node {
    match (node, steps) {
        (Node::Record(entries), [Step::Key(key), rest @ ..]) => Node::Record(
            entries
                .iter()
                .filter(|entry| !rest.is_empty() || entry.0 != *key)
                .map(|(name, entry)| {
                    (name.clone(), if name == key { without(entry, rest) } else { entry.clone() })
                })
                .collect(),
        ),
        (Node::List(entries), [Step::Place(place), rest @ ..]) => Node::List(
            entries
                .iter()
                .enumerate()
                .map(|(nth, entry)| if nth == *place { without(entry, rest) } else { entry.clone() })
                .collect(),
        ),
        _ => panic!("no {}", path(steps)),
    }
}

#[test]
fn a_structural_entry_that_is_absent_is_named() {
    let written = cover(REVISED).write(&Field::ROOT);
    let structural: Vec<Entry> = entries_of(&written).into_iter().filter(|entry| !entry.optional).collect();
    assert!(structural.len() > 60, "{}", structural.len());
    for entry in structural {
        let name = path(&entry.steps);
        let less = without(&written, &entry.steps);
        let error = read_node::<Cover>(less.clone()).unwrap_err();
        assert_eq!((error.name(), error.field()), ("missing", name.as_str()), "{error}");
        let text = serde_json::to_string_pretty(&less).unwrap();
        let error = read(&text, Form::Json).unwrap_err();
        assert_eq!((error.name(), error.field()), ("missing", name.as_str()), "{error}");
    }
}

#[test]
fn what_overflows_is_not_checked() {
    // 0.2 m² of 1e308 m at 2680 kg/m³ is more than an f64 holds.
    let cover = cover(&REVISED.replace("thickness = \"2.5 mm\"", "thickness = \"1e308 m\""));
    let review = crate::review::review(&cover).unwrap();
    let mass = review.row("mass").unwrap();
    assert_eq!(mass.verdict, crate::verdict::Verdict::NotChecked);
    let refused = matches!(&mass.outcome, Err(crate::demand::NotChecked::Refused(error)) if error.name() == "not_finite");
    assert!(refused, "{:?}", mass.outcome);
    assert!(!crate::render::review_json(&review).unwrap().contains("null"));
}
