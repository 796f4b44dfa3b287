//! Panels that cannot be: each is refused at once by a typed error that names the place in the document's own coordinates.

use std::time::{Duration, Instant};

use coaming_cover::document::Form;
use coaming_cover::panel::{LoadOf, Panel, go_on, read_panel};
use coaming_tests::{fuzzing, refusals};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

const OUTLINE: &str = "outline.rectangle = { width = \"400 mm\", height = \"300 mm\" }";
const LAYER: &str = "[[layers]]\nname = \"sheet\"\nthickness = \"2 mm\"\nexpansion = \"23e-6 1/K\"\nmaterial.isotropic = { youngs_modulus = \"70 GPa\", poissons_ratio = 0.3 }";
const HELD: &str = "[[line_supports]]\nline.edge = {}\ndeflection = \"fixed\"\nslope = \"free\"";
const LOAD: &str = "[[load_cases]]\nname = \"wind\"\npressures = [{ pressure = \"1 kPa\" }]";

fn document(outline: &str, layer: &str, held: &str, load: &str) -> String {
    format!("version = 1\ntitle = \"hostile\"\n{outline}\n{layer}\n{held}\n{load}\n")
}

/// An unoptimised build on a busy computer; each takes milliseconds otherwise.
const LONGEST: Duration = Duration::from_secs(60);

/// The name and the words of a refusal, which must come soon.
fn refused(text: &str) -> (&'static str, String) {
    let begun = Instant::now();
    let solved = refusals::solved(text);
    assert!(begun.elapsed() < LONGEST, "{:?}: {text}", begun.elapsed());
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

fn circle(x: f64, y: f64, diameter: f64) -> String {
    format!(
        "{{ circle = {{ diameter = \"{diameter} mm\", centre = {{ x = \"{x} mm\", y = \"{y} mm\" }} }} }}"
    )
}

/// Each comes soon: an unoptimised build on a busy computer takes milliseconds for most.
#[test]
fn panels_that_cannot_be_are_refused_with_their_place() {
    let (sound, refusals) = refusals::all();
    let solved = refusals::solved(&sound).unwrap();
    assert!(solved.largest_deflection.value.value < 0.0);
    assert!(refusals.len() > 100);
    let faults: Vec<String> = (refusals.iter())
        .filter_map(|refusal| {
            let begun = Instant::now();
            let refused = refusal.refused();
            let late = begun.elapsed() > LONGEST;
            refused.err().or_else(|| late.then(|| format!("{}: {:?}", refusal.what, begun.elapsed())))
        })
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// What the calls by themselves are given, past what a document can hold.
#[test]
fn counts_that_cannot_be_are_refused() {
    let (sound, _) = refusals::all();
    let mut panel = Panel::new(read_panel(&sound, Form::Toml).unwrap()).unwrap();
    let load = LoadOf::Document(0);
    for count in [0, 21, u32::MAX] {
        let error = panel.buckling(count, load, &mut go_on).unwrap_err();
        assert_eq!(error.name(), "impossible", "{error}");
    }
    for count in [0, 101, u32::MAX] {
        let error = panel.modes(count, load, &mut go_on).unwrap_err();
        assert_eq!(error.name(), "impossible", "{error}");
    }
    assert_eq!(panel.critical_rise(load, &mut go_on).unwrap_err().name(), "missing");
    assert!(panel.solve(load, &mut go_on).is_ok());
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
