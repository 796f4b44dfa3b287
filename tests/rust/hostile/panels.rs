//! Panels that cannot be: each is refused at once by a typed error that names the place in the document's own coordinates.

use std::time::{Duration, Instant};

use coaming_cover::document::Form;
use coaming_cover::panel::{LoadOf, Panel, go_on, read_panel};
use coaming_tests::fuzzing;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

const OUTLINE: &str = "outline.rectangle = { width = \"400 mm\", height = \"300 mm\" }";
const LAYER: &str = "[[layers]]\nname = \"sheet\"\nthickness = \"2 mm\"\nexpansion = \"23e-6 1/K\"\nmaterial.isotropic = { youngs_modulus = \"70 GPa\", poissons_ratio = 0.3 }";
const HELD: &str = "[[line_supports]]\nline.edge = {}\ndeflection = \"fixed\"\nslope = \"free\"";
const LOAD: &str = "[[load_cases]]\nname = \"wind\"\npressures = [{ pressure = \"1 kPa\" }]";

fn document(outline: &str, layer: &str, held: &str, load: &str) -> String {
    format!("version = 1\ntitle = \"hostile\"\n{outline}\n{layer}\n{held}\n{load}\n")
}

/// The name and the words of a refusal, which must come soon.
fn refused(text: &str) -> (&'static str, String) {
    let begun = Instant::now();
    let solved = read_panel(text, Form::Toml).and_then(Panel::new);
    let solved = solved.and_then(|mut panel| panel.solve(LoadOf::Document(0), &mut go_on));
    // An unoptimised build on a busy computer; each takes milliseconds otherwise.
    assert!(begun.elapsed() < Duration::from_secs(60), "{:?}: {text}", begun.elapsed());
    match solved {
        Ok(case) => panic!("solved: {:?}: {text}", case.largest_deflection),
        Err(error) => (error.name(), error.to_string()),
    }
}

fn points(corners: &[(f64, f64)]) -> String {
    let points: Vec<String> =
        corners.iter().map(|(x, y)| format!("{{ x = \"{x} mm\", y = \"{y} mm\" }}")).collect();
    points.join(", ")
}

fn polygon(corners: &[(f64, f64)]) -> String {
    format!("outline.polygon.points = [{}]", points(corners))
}

fn circle(x: f64, y: f64, diameter: f64) -> String {
    format!(
        "{{ circle = {{ diameter = \"{diameter} mm\", centre = {{ x = \"{x} mm\", y = \"{y} mm\" }} }} }}"
    )
}

/// What is put in place of the outline, the layer, what holds it or the load; the error's name; words of its message.
type Case = (String, &'static str, &'static [&'static str]);

#[test]
fn shapes_that_cannot_be_are_named_with_their_place() {
    let of = |outline: String| document(&outline, LAYER, HELD, LOAD);
    let holes = |holes: &[String]| of(format!("{OUTLINE}\nholes = [{}]", holes.join(", ")));
    let region = |region: &str| document(OUTLINE, &format!("{LAYER}\nregion.outline = {region}"), HELD, LOAD);
    let cases: &[Case] = &[
        (
            of(polygon(&[(0.0, 0.0), (90.0, 90.0), (90.0, 0.0), (0.0, 90.0)])),
            "geometry",
            &["outline at (45 mm, 45 mm)", "crosses itself"],
        ),
        (
            of(polygon(&[(0.0, 0.0), (90.0, 0.0), (45.0, 45.0), (90.0, 90.0), (0.0, 90.0), (45.0, 45.0)])),
            "geometry",
            &["outline at (45 mm, 45 mm)", "touches itself"],
        ),
        (
            of(polygon(&[(0.0, 0.0), (90.0, 0.0), (90.0, 0.0), (0.0, 90.0)])),
            "geometry",
            &["outline at (90 mm, 0 mm)", "coincide"],
        ),
        (
            of(polygon(&[(0.0, 0.0), (1000.0, 0.0), (1000.0, 10.0)])),
            "geometry",
            &["outline at (0 mm, 0 mm)", "3 degrees"],
        ),
        (of(polygon(&[(0.0, 0.0), (900.0, 0.0), (900.0, 1e-4), (0.0, 1e-4)])), "geometry", &["outline at"]),
        (of(polygon(&[(0.0, 0.0), (90.0, 0.0)])), "inconsistent", &["outline"]),
        (holes(&[circle(1000.0, 0.0, 50.0)]), "geometry", &["holes[0] at", "outside outline"]),
        (holes(&[circle(180.0, 0.0, 40.0)]), "geometry", &["holes[0] at (200 mm, 0 mm)"]),
        (holes(&[circle(190.0, 0.0, 40.0)]), "geometry", &["at (200 mm,"]),
        (holes(&[circle(0.0, 0.0, 50.0), circle(40.0, 0.0, 50.0)]), "geometry", &["holes[", "crosses"]),
        (holes(&[circle(0.0, 0.0, 50.0), circle(0.0, 0.0, 20.0)]), "geometry", &["holes["]),
        (holes(&[circle(0.0, 0.0, 50.0), circle(0.0, 0.0, 50.0)]), "geometry", &["holes["]),
        (region(&circle(200.0, 0.0, 50.0)), "geometry", &["layers[0] at (225 mm, 0 mm)", "outside outline"]),
        (region(&circle(900.0, 0.0, 50.0)), "geometry", &["layers[0] at", "outside outline"]),
        (region(&circle(0.0, 0.0, 50.0)), "geometry", &["has no material"]),
    ];
    for (text, name, says) in cases {
        is_refused(text, name, says);
    }
}

fn is_refused(text: &str, name: &str, says: &[&str]) {
    let (found, message) = refused(text);
    assert_eq!(found, name, "{message}: {text}");
    for words in says {
        assert!(message.contains(words), "`{words}` is due: {message}");
    }
}

#[test]
fn what_holds_and_loads_a_panel_is_named() {
    let held = |held: &str| document(OUTLINE, LAYER, held, LOAD);
    let load = |load: &str| document(OUTLINE, LAYER, HELD, &format!("{LOAD}\n{load}"));
    let support = "deflection = \"fixed\"\nslope = \"free\"";
    let pin = |x: f64, y: f64| format!("[[point_supports]]\nat = {}\n{support}\n", points(&[(x, y)]));
    let gasket = |law: &str| {
        format!(
            "{HELD}\n[[gaskets]]\nline.circle = {{ diameter = \"200 mm\" }}\nfree_height = \"10 mm\"\nclosed_gap = \"7 mm\"\n{law}\n"
        )
    };
    let measured = |last: &str| {
        format!(
            "law.measured.points = [{{ compression = \"0 mm\", force = \"0 N/mm\" }}, {{ compression = \"2 mm\", force = \"1 N/mm\" }}, {last}]"
        )
    };
    let cases: &[Case] = &[
        (held(""), "singular", &["moves freely along its normal"]),
        (
            held(&(pin(-100.0, 0.0) + &pin(100.0, 0.0))),
            "singular",
            &["turns freely about the line", "(1, 0)"],
        ),
        (held(&pin(0.0, 0.0)), "singular", &["turns freely"]),
        (held(&(pin(0.0, 0.0) + &pin(0.0, 0.0))), "singular", &["turns freely", "through (0 mm, 0 mm)"]),
        (
            held(&(HELD.to_owned() + "\n" + &pin(300.0, 0.0))),
            "geometry",
            &["point_supports[0] at (300 mm, 0 mm)"],
        ),
        (
            document(
                &format!("{OUTLINE}\nholes = [{}]", circle(0.0, 0.0, 100.0)),
                LAYER,
                &format!("{HELD}\n{}", pin(0.0, 0.0)),
                LOAD,
            ),
            "geometry",
            &["point_supports[0] at (0 mm, 0 mm)", "no material"],
        ),
        (
            held(&format!(
                "{HELD}\n[[line_supports]]\nline.path = {{ start = {}, segments = [{{ to = {} }}] }}\n{support}",
                points(&[(0.0, 0.0)]),
                points(&[(500.0, 0.0)])
            )),
            "geometry",
            &["line_supports[1]"],
        ),
        (
            held(&gasket(&measured("{ compression = \"4 mm\", force = \"0.5 N/mm\" }"))),
            "inconsistent",
            &["gaskets[0].law", "falls at a compression of 4 mm"],
        ),
        (
            held(&gasket(&measured("{ compression = \"1 mm\", force = \"2 N/mm\" }"))),
            "impossible",
            &["gaskets[0]"],
        ),
        (held(&gasket("law.measured.points = []")), "inconsistent", &["gaskets[0]"]),
        (held(&gasket("law.linear.stiffness = \"0 MPa\"")), "impossible", &["stiffness"]),
        (
            load("point_forces = [{ at = { x = \"1 m\", y = \"0 m\" }, force = \"1 N\" }]"),
            "geometry",
            &["load_cases[0].point_forces[0] at (1000 mm, 0 mm)"],
        ),
        (
            load("edge_moments = [{ edge = { edge = 9 }, moment = \"1 N\" }]"),
            "inconsistent",
            &["load_cases[0].edge_moments[0]"],
        ),
        (
            load("edge_moments = [{ edge = { hole = 0 }, moment = \"1 N\" }]"),
            "inconsistent",
            &["load_cases[0].edge_moments[0]"],
        ),
        (
            load("temperatures = [{ layer = \"pane\", rise = \"1 K\" }]"),
            "not_an_option",
            &["load_cases[0].temperatures[0].layer"],
        ),
        (
            document(OUTLINE, &LAYER.replace("2 mm", "0 mm"), HELD, LOAD),
            "impossible",
            &["layers[0].thickness", "greater than 0 mm"],
        ),
        (
            document(OUTLINE, &LAYER.replace("2 mm", "nan mm"), HELD, LOAD),
            "not_a_quantity",
            &["layers[0].thickness"],
        ),
        (
            document(OUTLINE, &LAYER.replace("2 mm", "inf mm"), HELD, LOAD),
            "not_a_quantity",
            &["layers[0].thickness"],
        ),
        (document(OUTLINE, &LAYER.replace("0.3 }", "nan }"), HELD, LOAD), "impossible", &["poissons_ratio"]),
        (
            document(OUTLINE, &LAYER.replace("70 GPa", "-70 GPa"), HELD, LOAD),
            "impossible",
            &["youngs_modulus"],
        ),
    ];
    for (text, name, says) in cases {
        is_refused(text, name, says);
    }
}

/// A lid that only a gasket carries is blown off by pressure from within: the motion is named.
#[test]
fn a_lid_that_is_blown_off_is_told_so() {
    let held = "[[gaskets]]\nline.circle = { diameter = \"200 mm\" }\nfree_height = \"10 mm\"\nclosed_gap = \"7 mm\"\nlaw.linear.stiffness = \"0.1 MPa\"";
    let outward = LOAD.replace("1 kPa", "-1 kPa");
    is_refused(
        &document(OUTLINE, LAYER, held, &outward),
        "singular",
        &["contact is lost", "along its normal"],
    );
}

#[test]
fn more_than_can_be_solved_is_refused_at_once() {
    let holes = |count: usize, segments: usize| {
        let hole = match segments {
            0 => circle(0.0, 0.0, 1.0),
            _ => format!("{{ polygon.points = [{}] }}", points(&vec![(0.0, 0.0); segments])),
        };
        document(&format!("{OUTLINE}\nholes = [{}]", vec![hole; count].join(", ")), LAYER, HELD, LOAD)
    };
    let cases = [
        holes(300, 0),
        holes(10_001, 0),
        holes(2, 9_000),
        document(OUTLINE, &[LAYER; 61].join("\n"), HELD, LOAD),
        document(OUTLINE, LAYER, HELD, &[LOAD; 101].join("\n")),
        document(
            OUTLINE,
            LAYER,
            HELD,
            &format!(
                "{LOAD}\nline_forces = [{}]",
                vec!["{ line.edge = {}, force = \"1 N/m\" }"; 1_001].join(", ")
            ),
        ),
    ];
    for text in &cases {
        let (name, message) = refused(text);
        assert!(matches!(name, "too_large" | "inconsistent" | "impossible"), "{message}");
    }
}

/// How many panels are drawn, and from which seed: `COAMING_RANDOM_PANELS="5000 7"` searches on.
fn random_panels() -> (u32, u64) {
    let given = std::env::var("COAMING_RANDOM_PANELS").unwrap_or_default();
    let mut numbers = given.split(' ').map(str::parse::<u64>);
    let cases = numbers.next().and_then(Result::ok).and_then(|cases| u32::try_from(cases).ok());
    (cases.unwrap_or(150), numbers.next().and_then(Result::ok).unwrap_or(20_260_102))
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: random_panels().0,
        rng_seed: RngSeed::Fixed(random_panels().1),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn random_panels_are_solved_or_refused(bytes in prop::collection::vec(any::<u8>(), 40..220)) {
        fuzzing::panel(&[&[1], bytes.as_slice()].concat());
    }
}

/// The seeds of the corpus reach the solver: what is drawn is not refused every time.
#[test]
fn some_of_what_is_drawn_is_solved() {
    let folder = coaming_tests::folder().join("fuzz/corpus/panel");
    let files = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let solved = |file: &std::path::PathBuf| {
        let solved = fuzzing::solved_cases(&std::fs::read(file).unwrap());
        println!("{}: {solved} load cases", file.display());
        solved > 0
    };
    let solved = files.filter(solved).count();
    assert!(solved >= 8, "{solved}");
}
