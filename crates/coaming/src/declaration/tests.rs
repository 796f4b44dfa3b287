//! The derives on a record that has one field of every kind.

use super::*;
use crate::calculation::read_node;
use crate::prelude::*;
use std::borrow::Cow;

/// How the edge is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
enum Edge {
    /// Free to turn.
    Supported,
    /// Held.
    #[option("held fast")]
    Clamped,
}

/// A leg.
#[derive(Debug, Clone, PartialEq, Fields)]
struct Leg {
    /// Its length.
    #[possible(f64::MIN_POSITIVE..)]
    #[tested(..=0.8)]
    length: Length,
}

/// What stands below.
#[derive(Debug, Clone, PartialEq, OneOf)]
enum Base {
    /// On a leg.
    Leg(Leg),
    /// On many.
    Table(Table),
}

/// Many legs.
#[derive(Debug, Clone, PartialEq, Fields)]
struct Table {
    /// The legs.
    legs: Vec<Leg>,
}

/// One field of every kind.
#[derive(Debug, Clone, PartialEq, Fields)]
struct Everything {
    /// A length.
    #[possible(f64::MIN_POSITIVE..0.5)]
    #[tested(0.001..=0.1)]
    length: Length,
    /// An angle.
    #[possible(0.0..=PI)]
    #[also(included_angle, |included| PI - included)]
    bend_angle: Angle,
    /// A ratio.
    ratio: f64,
    /// A number of things.
    #[possible(1.0..)]
    count: u32,
    /// A flag.
    flag: bool,
    /// Words.
    words: String,
    /// A choice.
    edge: Edge,
    /// Alternatives.
    base: Option<Base>,
    /// A stress.
    #[shown_in("MPa")]
    stress: Option<Pressure>,
    /// Legs.
    legs: Vec<Leg>,
}

const TEXT: &str = r#"{
 "length": "3 mm", "bend_angle": "90 deg", "ratio": "40 %", "count": 4, "flag": true, "words": "a b",
 "edge": "held fast", "base": {"table": {"legs": [{"length": "1 in"}]}}, "stress": null,
 "legs": [{"length": "700 mm"}, {"length": "0.7 m"}]
}"#;

fn everything() -> Everything {
    read_json(TEXT).unwrap()
}

/// The message for the text with one piece replaced.
fn refusal(from: &str, to: &str) -> String {
    assert!(TEXT.contains(from), "{from}");
    read_json::<Everything>(&TEXT.replacen(from, to, 1)).unwrap_err().to_string()
}

#[test]
fn a_document_is_read_and_written_back() {
    let read = everything();
    assert_eq!(read.length, mm(3.0));
    assert_eq!((read.ratio, read.count, read.flag, read.edge), (0.4, 4, true, Edge::Clamped));
    assert_eq!(read.base, Some(Base::Table(Table { legs: vec![Leg { length: inch(1.0) }] })));
    assert_eq!(read.stress, None);
    let written = read.write(&Field::ROOT);
    assert_eq!(read_json::<Everything>(&serde_json::to_string(&written).unwrap()), Ok(read.clone()));
    assert_eq!(read_node::<Everything>(written), Ok(read));
}

#[test]
fn faults_name_their_place() {
    let cases = [
        (
            "\"3 mm\"",
            "1.6",
            "line 2, column 14: length: `1.6` is not a length such as \"3 mm or 1/8 in\": it needs a unit",
        ),
        (
            "\"3 mm\"",
            "\"1.6 kg\"",
            "line 2, column 19: length: `1.6 kg` is not a length such as 3 mm or 1/8 in: unit `kg` does not measure length",
        ),
        (
            "\"3 mm\"",
            "\"-1 mm\"",
            "line 2, column 18: length: -1 mm is not possible; accepted: greater than 0 mm and less than 500 mm",
        ),
        (
            "\"3 mm\"",
            "\"500 mm\"",
            "line 2, column 19: length: 500 mm is not possible; accepted: greater than 0 mm and less than 500 mm",
        ),
        (
            "\"held fast\"",
            "\"held\"",
            "line 3, column 15: edge: `held` is not an option; accepted: supported, held fast; did you mean `held fast`?",
        ),
        ("\"count\": 4", "\"count\": 0", "count: 0 is not possible; accepted: at least 1"),
        ("\"count\": 4", "\"count\": 1.5", "count: `1.5` stands where a whole number of things is due"),
        ("\"flag\": true", "\"flag\": \"yes\"", "flag: `yes` stands where true or false is due"),
        ("\"flag\": true, ", "", "flag: missing; needed: A flag"),
        (
            "\"0.7 m\"",
            "\"0 m\"",
            "line 4, column 48: legs[1].length: 0 mm is not possible; accepted: greater than 0 mm",
        ),
        ("\"ratio\"", "\"raito\"", "line 2, column 50: raito: unknown key; did you mean `ratio`?"),
        (
            "\"table\"",
            "\"tabel\"",
            "base: `tabel` is not an option; accepted: leg, table; did you mean `table`?",
        ),
        ("\"words\": \"a b\"", "\"length\": \"1 mm\"", "length: given twice"),
        (
            "\"ratio\": \"40 %\"",
            "\"included_angle\": \"90 deg\"",
            "bend_angle, included_angle: one or the other is accepted, not both",
        ),
    ];
    for (from, to, expected) in cases {
        let message = refusal(from, to);
        assert!(message.contains(expected), "{to}: {message}");
    }
}

#[test]
fn a_second_convention_gives_the_same_field() {
    let read: Everything =
        read_json(&TEXT.replacen("\"bend_angle\": \"90 deg\"", "\"included_angle\": \"60 deg\"", 1)).unwrap();
    approx::assert_relative_eq!(read.bend_angle.value, 2.0 * PI / 3.0, max_relative = 1e-15);
    let message = refusal("\"bend_angle\": \"90 deg\"", "\"included_angle\": \"-10 deg\"");
    assert!(
        message.contains(
            "included_angle: 190 deg is not possible; accepted: at least 0 deg and at most 180 deg"
        ),
        "{message}"
    );
}

#[test]
fn ranges_are_checked_by_calculate_too() {
    let mut value = everything();
    let mut caveats = Caveats::NONE;
    assert_eq!(value.check(&Path::ROOT, &mut caveats), Ok(()));
    assert!(caveats.is_empty());
    value.length = mm(200.0);
    assert_eq!(value.check(&Path::ROOT, &mut caveats), Ok(()));
    assert!(caveats.has(Caveat::OutsideTested));
    for wrong in [f64::NAN, f64::INFINITY, -0.0] {
        value.length = si(wrong);
        let error = value.check(&Path::ROOT, &mut caveats).unwrap_err();
        assert_eq!((error.name(), error.field()), ("impossible", "length"), "{error}");
    }
    value.length = mm(3.0);
    value.legs[1].length = si(f64::NAN);
    assert_eq!(value.check(&Path::ROOT, &mut caveats).unwrap_err().field(), "legs[1].length");
}

#[test]
fn the_table_says_what_was_declared() {
    let fields = Everything::RECORD.fields;
    let row = |name: &str| &fields[Everything::place(name).unwrap()];
    assert_eq!(row("length").doc, "A length.");
    assert_eq!(row("length").possible, (f64::MIN_POSITIVE, 0.5f64.next_down()));
    assert_eq!(row("stress").unit, "MPa");
    assert_eq!(row("length").unit, "mm");
    assert_eq!(row("stress").kind, Kind::Optional(&Kind::Quantity(&Dimension::PRESSURE)));
    assert!(!Kind::Record(Everything::RECORD).is_flat_record());
    assert!(Kind::Record(Leg::RECORD).is_flat_record());
    let mut value = everything();
    assert!(value.set(0, 0.002) && value.get(0) == Some(0.002));
    assert!(!value.set(4, 1.0) && value.get(4).is_none() && value.get(99).is_none());
}

#[test]
fn a_node_in_si_units_keeps_its_bits() {
    let odd = 0.1 + 0.2;
    let node = Node::Record(vec![(Cow::Borrowed("length"), Node::Si(odd))]);
    assert_eq!(read_node::<Leg>(node).map(|leg| leg.length.value.to_bits()), Ok(odd.to_bits()));
    let bare = Node::Record(vec![(Cow::Borrowed("length"), Node::Number(3.0))]);
    assert_eq!(read_node::<Leg>(bare).unwrap_err().name(), "not_a_quantity");
}

#[test]
fn numbers_outside_the_tested_range_are_named() {
    let mut value = everything();
    value.length = mm(200.0);
    value.base = Some(Base::Table(Table { legs: vec![Leg { length: m(1.0) }, Leg { length: m(0.5) }] }));
    value.legs[1].length = m(0.9);
    let paths = outside_tested(Everything::RECORD, &value.write(&Field::ROOT));
    assert_eq!(paths, ["length", "base.table.legs[0].length", "legs[1].length"]);
}

#[test]
fn hostile_texts_are_refused() {
    for text in ["", "{", "[]", "null", "{\"length\": [[[[", "{\"length\": {}}", "\u{0}"] {
        assert!(read_json::<Leg>(text).is_err(), "{text:?}");
    }
    let deep = format!("{{\"length\": {}1{}}}", "[".repeat(1000), "]".repeat(1000));
    assert!(read_json::<Leg>(&deep).is_err());
    let long = format!("{{\"legs\": [{}]}}", vec!["{\"length\": \"1 mm\"}"; LONGEST_LIST + 1].join(","));
    assert_eq!(read_json::<Table>(&long).unwrap_err().name(), "too_large");
    assert_eq!(read_json::<Leg>(&" ".repeat(LONGEST_TEXT + 1)).unwrap_err().name(), "too_large");
}
