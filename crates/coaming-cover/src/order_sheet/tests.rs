//! The order sheet of the revised cover against hand calculation, and what becomes of what its document does not give.

use super::*;
use crate::amount::{Measure, Phrase};
use crate::demand::NotChecked;
use crate::document::{Form, read};
use crate::render::{order_sheet_json, order_sheet_markdown, order_sheet_text};

const REVISED: &str = include_str!("../../../../examples/covers/revised.toml");

/// The sections that need no review, of a document.
fn sheet(text: &str) -> Vec<Section> {
    sections(&Prepared::new(&read(text, Form::Toml).unwrap()).unwrap())
}

/// Those of the revised cover with one piece of text replaced.
fn changed(from: &str, to: &str) -> Vec<Section> {
    assert!(REVISED.contains(from), "{from}");
    sheet(&REVISED.replace(from, to))
}

/// A whole sheet, with its review.
fn whole(text: &str) -> OrderSheet {
    order_sheet(&read(text, Form::Toml).unwrap()).unwrap()
}

fn line<'a>(sheet: &'a [Section], section: &str, part: &str) -> &'a Line {
    let section = sheet.iter().find(|known| known.title == section).expect(section);
    section
        .lines
        .iter()
        .find(|line| line.part == part)
        .unwrap_or_else(|| panic!("no {part} in {}", section.title))
}

fn item<'a>(sheet: &'a [Section], section: &str, part: &str, label: &str) -> &'a Value {
    let line = line(sheet, section, part);
    &line
        .items
        .iter()
        .find(|item| item.label == label)
        .unwrap_or_else(|| panic!("no {label} of {part}"))
        .value
}

/// A number of the sheet in SI units.
fn number(sheet: &[Section], section: &str, part: &str, label: &str) -> f64 {
    match item(sheet, section, part, label) {
        Value::Amount(amount) => amount.si,
        other => panic!("{part}, {label}: {other:?}"),
    }
}

fn points(sheet: &[Section], section: &str, part: &str, label: &str) -> Vec<(f64, f64)> {
    match item(sheet, section, part, label) {
        Value::Places(points) => points.clone(),
        other => panic!("{part}, {label}: {other:?}"),
    }
}

fn close(found: f64, by_hand: f64, within: f64) {
    assert!((found - by_hand).abs() <= within, "found {found}, by hand {by_hand}");
}

/// By hand: ten screws on 276 x 196 mm stand at the corners, two more on each long side at 92 mm and one in the middle of
/// each short side. The blank is 620.630 x 480.630 mm (its own test), so that its middle is at (310.315, 240.315) mm.
#[test]
fn every_hole_has_its_place_on_the_face_and_on_the_blank() {
    let sheet = sheet(REVISED);
    let part = "pane_screws in lid";
    let centres = points(&sheet, "Holes", part, "centres");
    let on_blank = points(&sheet, "Holes", part, "centres on the blank, from its left and lower edge");
    assert_eq!((centres.len(), on_blank.len()), (10, 10));
    for wanted in [(-138.0, -98.0), (138.0, 98.0), (-46.0, 98.0), (46.0, -98.0), (-138.0, 0.0), (138.0, 0.0)]
    {
        let near = |at: &(f64, f64)| (at.0 * 1e3 - wanted.0).abs() + (at.1 * 1e3 - wanted.1).abs() < 1e-9;
        let nth = centres.iter().position(near).unwrap_or_else(|| panic!("{wanted:?} in {centres:?}"));
        close(on_blank[nth].0, 0.310_315 + wanted.0 / 1e3, 1e-6);
        close(on_blank[nth].1, 0.240_315 + wanted.1 / 1e3, 1e-6);
    }
    assert_eq!(item(&sheet, "Holes", part, "role"), &Value::Words(Phrase::from("fixed")));
    // 5.9 mm over the sharp edge less 3.0 mm, halved: 1.45 mm (the row on the countersink has it too).
    close(number(&sheet, "Holes", part, "countersink, depth"), 1.45e-3, 1e-9);
    let aperture =
        points(&sheet, "Holes", "cut-out 1 in lid", "centres on the blank, from its left and lower edge");
    close(aperture[0].0, 0.310_315, 1e-6);
    assert_eq!(points(&sheet, "Holes", "drains", "centres"), [(-0.2, -0.175), (0.2, -0.175)]);
}

/// By hand: 2 (540 + 400) - (8 - 2 pi) 40 = 1811.327 mm, a hundredth more to cut; the upper side is straight over 460 mm.
#[test]
fn the_gasket_is_cut_and_joined_away_from_corners_and_low_point() {
    let sheet = sheet(REVISED);
    let of = |label| number(&sheet, "Gasket", "gasket", label);
    close(of("length on the centre line"), 1.811_327, 1e-6);
    close(of("cut length, all pieces"), 1.829_441, 1e-6);
    close(of("from the joint to the next corner"), 0.062, 1e-12);
    // One strip width of 12 mm beside a latch at -180 mm.
    let joint = points(&sheet, "Gasket", "gasket", "joint");
    assert_eq!(joint.len(), 1);
    close(joint[0].0, -0.168, 1e-12);
    close(joint[0].1, 0.2, 1e-12);
    let mitred = changed("height = \"400 mm\", corner_radius = \"40 mm\"", "height = \"400 mm\"");
    // By hand: (540 + 12) 1.01 mm over the long edge.
    close(number(&mitred, "Gasket", "gasket", "two long pieces, over the long edge"), 0.557_52, 1e-9);
}

/// By hand: two pieces of 240 x 40 x 1 mm are 19.2 mL, a fifth more to order; the bead round 244 x 164 mm with radius 20 is
/// 2 x 408 - (8 - 2 pi) 20 = 781.664 mm long, 6 x 3 mm thick 14.070 mL.
#[test]
fn volumes_carry_their_waste() {
    let bead = "sealed_by = \"sealant\" }] # radius";
    let sheet =
        changed(bead, "sealed_by = \"sealant\", bead_width = \"6 mm\", bead_depth = \"3 mm\" }] # radius");
    let of = |part: &str, label: &str| number(&sheet, "Adhesives and sealants", part, label) * 1e6;
    close(of("strip_bond", "volume of the joint"), 19.2, 1e-9);
    close(of("strip_bond", "volume to order"), 23.04, 1e-9);
    close(of("bead round cut-out 1 in lid", "volume of the joint"), 14.070, 1e-3);
    // By hand: 3 x 4 x 900 mm.
    let rim = "sealant joint pane_seal";
    let width = "width = \"3 mm\" # chosen here\n";
    let filled = changed(width, &format!("{width}depth = \"4 mm\"\nlength = \"900 mm\"\n"));
    close(number(&filled, "Adhesives and sealants", rim, "volume of the joint") * 1e6, 10.8, 1e-9);
    let missing = ["depth", "length"].map(|size| format!("sealant_joints.pane_seal.{size}"));
    let why = Value::Unknown(NotChecked::Needs(missing.to_vec()));
    assert_eq!(item(&sheet, "Adhesives and sealants", rim, "volume of the joint"), &why);
    let replaced = changed("[opening]", "[limits]\nwaste = 1.5\n\n[opening]");
    let part = "volume to order";
    close(number(&replaced, "Adhesives and sealants", "strip_bond", part) * 1e6, 28.8, 1e-9);
}

/// The cover is the sum of what has a mass; what has none is named. By hand: lid, (255 200 - 244 x 164 + (4 - pi) 400 +
/// 51 000) mm^2 x 2.5 mm x 0.097 lb/in^3 (MIL-HDBK-5J, table 3.5.1.0(b1)); six latches of 60 g.
#[test]
fn the_cover_is_the_sum_of_its_parts_and_names_what_it_leaves_out() {
    let sheet = sheet(REVISED);
    let of = |part: &str, label: &str| number(&sheet, "Parts and mass", part, label);
    let density = 0.097 * 0.453_592_37 / (0.0254 * 0.0254 * 0.0254);
    let lid =
        (255_200.0 - 244.0 * 164.0 + (4.0 - core::f64::consts::PI) * 400.0 + 51_000.0) * 2.5e-9 * density;
    close(of("lid", "mass"), lid, 1e-9);
    close(of("latches", "mass"), 0.36, 1e-12);
    // Ten rings of 6 by 3.2 mm, 5.4 mm long, at 0.286 lb/in^3 (MIL-HDBK-5J, table 2.7.1.0(b)).
    let rings = 10.0 * core::f64::consts::PI / 4.0 * (36.0 - 10.24) * 5.4e-9;
    close(of("shoulder bushes of pane_screws", "mass"), rings * density * 0.286 / 0.097, 1e-12);
    let parts = &sheet.iter().find(|section| section.title == "Parts and mass").unwrap().lines;
    let (cover, parts) = parts.split_last().unwrap();
    let mut sums = [0.0; 4];
    for part in parts {
        let value =
            |label: &str| match part.items.iter().find(|item| item.label == label).map(|item| &item.value) {
                Some(Value::Amount(amount)) => Some(amount.si),
                _ => None,
            };
        let Some(mass) = value("mass") else { continue };
        sums[0] += mass;
        for (sum, axis) in sums[1..].iter_mut().zip(["x", "y", "z"]) {
            *sum += mass * value(&format!("centre of mass, {axis}")).unwrap();
        }
    }
    close(of("the whole cover", "mass"), sums[0], 1e-12);
    for (sum, axis) in sums[1..].iter().zip(["x", "y", "z"]) {
        close(of("the whole cover", &format!("centre of gravity, {axis}")), sum / sums[0], 1e-12);
    }
    // The strip at y = -150 mm alone is not symmetrical.
    close(of("the whole cover", "centre of gravity, x"), 0.0, 1e-12);
    assert!(of("the whole cover", "centre of gravity, y") < 0.0);
    let Some(Value::Words(left_out)) = cover.items.last().map(|item| &item.value) else {
        panic!("{cover:?}")
    };
    let left_out = left_out.shown(System::Shop);
    for name in ["screws of pane_screws", "inserts of pane_screws", "paint"] {
        assert!(left_out.contains(name), "{left_out}");
    }
    // Without the mass of a layer there is no sum.
    let unknown = changed("mass = \"60 g\" # chosen here\n", "");
    let why = Value::Unknown(NotChecked::needs("latches.mass"));
    assert_eq!(item(&unknown, "Parts and mass", "the whole cover", "mass"), &why);
}

/// The review's row of an insert and its pull test ask for the same. By hand: T/(K d) = 0.45/(0.2 x 0.003) = 750 N, which a
/// torque wrench may exceed; an insert on which nothing bears has to hold three times the greatest of it besides.
#[test]
fn the_pull_test_of_an_insert_asks_for_what_its_row_asks_for() {
    let asked = |flush: &str| {
        let depth = "hole_depth = \"9.5 mm\"";
        let text =
            REVISED.replace(depth, &format!("{depth}\npull_out = \"9 kN\"")).replace("flush = true", flush);
        let cover = read(&text, Form::Toml).unwrap();
        let prepared = Prepared::new(&cover).unwrap();
        let mut checks = crate::checks::PARTS.iter().flat_map(|part| part.1);
        let check = checks.find(|check| check.key == "insert_pull_out").unwrap();
        let found = (check.demand)(&prepared, &vec!["pane_screws".to_owned()]).unwrap().finding;
        let crate::demand::Finding::Number { low, .. } = found else { panic!("{found:?}") };
        let lines = bench::tests(&prepared);
        let line = lines.iter().find(|line| line.part == "Insert pull, pane_screws").unwrap();
        let passes = line.items.iter().find(|item| item.label == "passes when each holds at least").unwrap();
        let Value::Amount(amount) = &passes.value else { panic!("{passes:?}") };
        assert_eq!(amount.si.to_bits(), low.to_bits(), "{flush}");
        low
    };
    let besides = asked("flush = false") - asked("flush = true");
    assert!(besides > 3.0 * 750.0 && besides < 3.0 * 1.6 * 750.0, "{besides}");
}

/// By hand: three times 0.45 N·m; 10 mm of sponge between 15 and 45 %.
#[test]
fn each_test_of_the_bench_says_what_passes() {
    let sheet = sheet(REVISED);
    let of = |part: &str, label: &str| number(&sheet, "Tests of every cover", part, label);
    close(of("Insert torque, pane_screws", "passes when each holds at least"), 1.35, 1e-12);
    let gap =
        item(&sheet, "Tests of every cover", "Gap round the seal", "passes when every height lies within");
    let Value::Band { low, high, measure: Measure::LENGTH } = gap else { panic!("{gap:?}") };
    close(*low, 5.5e-3, 1e-12);
    close(*high, 8.5e-3, 1e-12);
    let tests = sheet.iter().find(|section| section.title == "Tests of every cover").unwrap();
    let parts: Vec<&str> = tests.lines.iter().map(|line| line.part.as_str()).collect();
    for part in ["Bend strip of lid", "Tap test of lid", "Tap test of pane", "Paper strip round the seal"] {
        assert!(parts.contains(&part), "{parts:?}");
    }
    for line in &tests.lines {
        let labels: Vec<&str> = line.items.iter().map(|item| item.label).collect();
        assert_eq!(labels[..3], ["what to do", "how to measure", "write down"], "{}", line.part);
        assert!(labels.iter().any(|label| label.starts_with("passes when")), "{labels:?}");
        assert_eq!(labels[labels.len() - 2..], ["measured", "date and name"]);
    }
}

/// The steps of the revised cover in their order.
#[test]
fn the_assembly_runs_from_the_brake_to_the_latches() {
    let sheet = sheet(REVISED);
    let steps = sheet.iter().find(|section| section.title == "Assembly").unwrap();
    let titles: Vec<&str> = steps.lines.iter().map(|line| line.part.as_str()).collect();
    assert_eq!(
        titles,
        [
            "1. Bend lid",
            "2. Set the inserts of pane_screws in frame",
            "3. Bond strip_bond: lid and strip",
            "4. Seal the cut-outs",
            "5. Screw pane_screws",
            "6. Let the sealant cure",
            "7. Lay the gasket",
            "8. Fit and set the latches",
            "9. Close and test",
        ]
    );
    close(number(&sheet, "Assembly", "5. Screw pane_screws", "tighten to"), 0.45, 1e-12);
    assert_eq!(
        item(&sheet, "Assembly", "3. Bond strip_bond: lid and strip", "wait, clamped"),
        &Value::Unknown(NotChecked::needs("bonds.strip_bond.cure_time"))
    );
}

/// What the document does not give stands there as unknown, with its path.
#[test]
fn what_is_missing_is_unknown_with_its_path() {
    let cases = [
        ("torque = \"0.45 N·m\"\n", "screws.pane_screws.torque", "Screws and inserts"),
        ("torque = \"0.45 N·m\"\n", "screws.pane_screws.torque", "Assembly"),
        ("torque = \"0.45 N·m\"\n", "screws.pane_screws.torque", "Tests of every cover"),
        ("count = 10\n", "screws.pane_screws.count", "Holes"),
        ("good_face = \"outer\"\n", "good_face", "Blanks"),
        ("good_face = \"outer\"\n", "good_face", "Parts and mass"),
        ("stop_height = \"7.0 mm\"\n", "seal.stop_height", "Assembly"),
        ("gravity = { x = 0, y = -1, z = 0 } # a vertical side panel\n", "service.gravity", "Gasket"),
        ("# pull_out and", "layers.lid.grain", "Blanks"),
        ("# pull_out and", "layers.lid.burr_face", "Blanks"),
        ("hole_diameter = \"4.0 mm\" # chosen here\n", "screws.pane_screws.insert.hole_diameter", "Holes"),
        ("# pull_out and", "layers.lid.cut_outs[0].bead_width", "Adhesives and sealants"),
        ("# pull_out and", "service.bay.drain_diameter", "Holes"),
        ("# pull_out and", "service.sealant_cure_time", "Assembly"),
    ];
    for (piece, path, section) in cases {
        let sheet = changed(piece, "#");
        let section = sheet.iter().find(|known| known.title == section).expect(section);
        let unknown = section.lines.iter().flat_map(|line| &line.items).any(|item| match &item.value {
            Value::Unknown(NotChecked::Needs(paths)) => paths.iter().any(|needed| needed.contains(path)),
            _ => false,
        });
        assert!(unknown, "without {piece}: {path} in {}", section.title);
    }
}

/// Each section is a page of its own on the bench: while anything fails it is headed by what fails.
#[test]
fn every_section_is_headed_by_what_fails() {
    let sheet = whole(&REVISED.replace("travel = \"12 mm\"", "travel = \"7 mm\""));
    assert!(sheet.failures().contains(&"latch_travel".to_owned()));
    let text = order_sheet_text(&sheet, System::Shop);
    let markdown = order_sheet_markdown(&sheet, System::Inch);
    for output in [text, markdown.replace('\\', "")] {
        let heads = output.lines().filter(|line| line.trim_start().starts_with("FAILS: ")).count();
        assert_eq!(heads, sheet.sections.len());
        assert!(output.contains("latch_travel"));
    }
}

/// A place in data is two lengths with their units.
#[test]
fn places_are_data_too() {
    let json: serde_json::Value = serde_json::from_str(&order_sheet_json(&whole(REVISED)).unwrap()).unwrap();
    let holes =
        json["sections"].as_array().unwrap().iter().find(|section| section["title"] == "Holes").unwrap();
    let items = holes["lines"][0]["items"].as_array().unwrap();
    let centres = items.iter().find(|item| item["label"] == "centres").unwrap();
    assert_eq!(centres["places"][0], serde_json::json!({ "x": "-138 mm", "y": "-98 mm" }));
}
