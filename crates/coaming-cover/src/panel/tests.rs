#![allow(clippy::indexing_slicing, clippy::unwrap_used, clippy::panic)]

use super::*;
use crate::calls::{self, Output, Units};
use crate::document::Form;
use coaming::prelude::*;
use coaming_panel as solver;

const REVISED: &str = include_str!("../../../../examples/panels/revised-lid.toml");

/// A square plate of 1 m on a knife edge all round, with what a test adds.
const PLATE: &str = r#"
version = 1
title = "plate"
outline.rectangle = { width = "1 m", height = "1 m" }
[[layers]]
name = "sheet"
thickness = "5 mm"
density = "2700 kg/m^3"
expansion = "23e-6 1/K"
material.isotropic = { youngs_modulus = "70 GPa", poissons_ratio = 0.3 }
"#;
const SUPPORT: &str = "[[line_supports]]\nline.edge = {}\ndeflection = \"fixed\"\nslope = \"free\"\n";

fn solved(text: &str) -> Result<PanelSolution, Error> {
    solve(&read_panel(text, Form::of(text))?)
}

fn refused(text: &str) -> Error {
    match solved(text) {
        Ok(solution) => panic!("solved: {:?}", solution.cases[0].largest_deflection),
        Err(error) => error,
    }
}

fn plate(more: &str) -> String {
    format!("{PLATE}{SUPPORT}{more}")
}

/// Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table 8: 0.00406 q a^4 / D at the middle of a simply
/// supported square (printed to three figures); the pressure is positive inward, the deflection outward.
#[test]
fn pressure_pushes_inward() {
    let solution =
        solved(&plate("[[load_cases]]\nname = \"wind\"\npressures = [{ pressure = \"100 Pa\" }]\n"));
    let case = &solution.unwrap().cases[0];
    let stiffness = 70e9 * 0.005 * 0.005 * 0.005 / (12.0 * (1.0 - 0.3 * 0.3));
    let printed = -0.00406 * 100.0 / stiffness;
    let found = case.largest_deflection.value.to_si();
    assert!((found / printed - 1.0).abs() < 0.005, "{found} {printed}");
    assert!(case.error.met && case.balance.force < 1e-8);
    // The support holds against all of the pressure: 100 N outward.
    assert!((case.line_reactions[0].force.to_si() - 100.0).abs() < 1e-6);
    // The same table: 0.0479 q a² in the middle; pressed in, the inner face is stretched.
    let stress = case.stresses[0].inner.value.to_si();
    let printed = 6.0 * 0.0479 * 100.0 / (0.005 * 0.005);
    assert!((stress / printed - 1.0).abs() < 0.02, "{stress} {printed}");
}

/// An increase along x of the pressure alone: no net force on the square, whose centre is the origin. A patch all over the square is the
/// pressure turned round; its area is exact for arcs too.
#[test]
fn gradients_and_patches_have_their_signs() {
    let load = |words: &str| solved(&plate(&format!("[[load_cases]]\nname = \"a\"\n{words}\n"))).unwrap();
    let tilted = load("pressures = [{ pressure = \"0 Pa\", increase_along_x = \"1 kPa/m\" }]");
    let case = &tilted.cases[0];
    assert!(case.line_reactions[0].force.to_si().abs() < 1e-6);
    // Where x is positive the panel is pushed in.
    let at = case.largest_deflection.at.x.to_si();
    assert!(at * case.largest_deflection.value.to_si() < 0.0);
    // First moment of the load about y: -1 kPa/m on x² over the square, 1/12 m^4; the support holds against it.
    assert!((case.line_reactions[0].moment_along_x.to_si() - 1000.0 / 12.0).abs() < 1e-3);
    let disc = load("patches = [{ patch = { circle = { diameter = \"200 mm\" } }, force = \"30 N\" }]");
    // The solver loads a polygon of 36 sides in the circle: its area is 0.5 % less.
    assert!((disc.cases[0].line_reactions[0].force.to_si() + 30.0).abs() < 0.2);
    assert!(disc.cases[0].largest_deflection.value.to_si() > 0.0);
}

/// The same panel written for the solver itself gives the same numbers; the lid is pressed on all round by about 3 mm, and the latches pull what
/// the gasket pushes.
#[test]
fn the_revised_lid() {
    let problem = read_panel(REVISED, Form::Toml).unwrap();
    let solution = solve(&problem).unwrap();
    let case = &solution.cases[0];
    let gasket = &case.gaskets[0];
    assert!(gasket.smallest.value.to_si() > 0.0027 && gasket.open_length.to_si() == 0.0);
    let pulls: f64 = case.latches.iter().map(|latch| latch.pull.to_si()).sum();
    assert!((pulls / gasket.force.to_si() - 1.0).abs() < 1e-8);
    assert!(case.modes.as_ref().unwrap().modes.len() == 3);
    let opening = case.opening.as_ref().unwrap().travel.to_si();
    assert!((opening - 0.003).abs() < 0.0003, "{opening}");
    let missing = &solution.cases[1];
    assert!(missing.latches[0].pull.to_si() == 0.0 && missing.latches[0].deflection.to_si() > 0.0);
    assert!(missing.latches[5].pull.to_si() > case.latches[5].pull.to_si());
    // Straight from the solver, by its own types.
    let aluminium = solver::Material::isotropic(70e9, 0.33, 2680.0, 23.6e-6);
    // From the centres, as the document has them: another last bit of a corner would give another mesh.
    let outline = solver::Outline::rectangle(0.29 - 0.58 / 2.0, 0.22 - 0.44 / 2.0, 0.58, 0.44);
    let mut panel = solver::Panel::new(outline, solver::Layer::whole(0.0025, aluminium));
    panel.gaskets.push(solver::Gasket {
        line: solver::Line::Path(
            solver::Outline::rounded_rectangle(0.29 - 0.54 / 2.0, 0.22 - 0.40 / 2.0, 0.54, 0.40, 0.04).0,
        ),
        law: solver::Law::Points(vec![(0.0, 0.0), (0.0025, 288.0), (0.005, 900.0)]),
        free_height: 0.010,
        closed_gap: 0.007,
        gap_error: Vec::new(),
    });
    for (x, y) in [(0.15, 0.01), (0.43, 0.01), (0.57, 0.22), (0.43, 0.43), (0.15, 0.43), (0.01, 0.22)] {
        let action = solver::LatchAction::Height(0.0);
        panel.latches.push(solver::Latch { at: solver::Point::new(x, y), action });
    }
    let (height, thickness) = (0.025, 0.0025);
    for edge in 0..4 {
        panel.beams.push(solver::Beam {
            line: solver::Line::OutlineEdge(edge),
            layer: 0,
            youngs_modulus: 70e9,
            shear_modulus: 26e9,
            area: height * thickness,
            second_moment_of_area: thickness * height * height * height / 12.0,
            torsion_constant: height * thickness * thickness * thickness / 3.0,
            centroid_height: -height / 2.0,
            density: 2680.0,
        });
    }
    let mut direct = solver::Solver::new(&panel, solver::Settings::default()).unwrap();
    let answer = direct.solve(&solver::Load::default()).unwrap();
    for (found, latch) in answer.latches.iter().zip(&case.latches) {
        assert!((found.pull / latch.pull.to_si() - 1.0).abs() < 1e-6, "{} {:?}", found.pull, latch);
    }
    assert!((answer.gaskets[0].smallest.value - gasket.smallest.value.to_si()).abs() < 1e-8);
}

#[test]
fn text_and_json_carry_the_numbers_and_the_cautions() {
    let text = calls::panel(REVISED, Output::Text, Units::Shop).unwrap();
    assert!(text.lines().all(|line| line.chars().count() <= 80));
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("front left pulls") && text.contains("not a certificate"));
    assert!(text.contains("no shield against bursting parts"));
    let json = calls::panel(REVISED, Output::Json, Units::Shop).unwrap();
    let data: serde_json::Value = serde_json::from_str(&json).unwrap();
    let case = &data["cases"][0];
    assert_eq!(data["cautions"].as_array().unwrap().len(), crate::cautions::CAUTIONS.len());
    let count = case["field"]["x_m"].as_array().unwrap().len();
    assert_eq!(case["field"]["deflection_m"].as_array().unwrap().len(), count);
    // The same bits as the types have.
    let solution = solved(REVISED).unwrap();
    let pull = case["latches"][0]["pull"].as_str().unwrap();
    assert_eq!(
        <Force as Quantity>::read(pull).unwrap().to_si().to_bits(),
        solution.cases[0].latches[0].pull.to_si().to_bits()
    );
    let deflection = case["field"]["deflection_m"][7].as_f64().unwrap();
    assert_eq!(deflection.to_bits(), solution.cases[0].field.deflection_m[7].to_bits());
}

const LOAD: &str = "[[load_cases]]\nname = \"a\"\npressures = [{ pressure = \"100 Pa\" }]\n";

/// Each shape that cannot be is refused with its path and its place in millimetres.
#[test]
fn hostile_shapes_are_refused_with_their_place() {
    let swap = |from: &str, to: &str| format!("{PLATE}{SUPPORT}{LOAD}").replace(from, to);
    let square = "outline.rectangle = { width = \"1 m\", height = \"1 m\" }";
    let with_hole = |hole: &str| swap(square, &format!("holes = [{hole}]\n{square}"));
    let corner = |x: f64, y: f64| format!("{{ x = \"{x} mm\", y = \"{y} mm\" }}");
    let polygon = |corners: &[(f64, f64)]| {
        let points: Vec<String> = corners.iter().map(|at| corner(at.0, at.1)).collect();
        format!("outline.polygon.points = [{}]", points.join(", "))
    };
    let cases = [
        (
            swap(square, &polygon(&[(0.0, 0.0), (100.0, 100.0), (100.0, 0.0), (0.0, 100.0)])),
            "outline at (50 mm, 50 mm)",
            "itself",
        ),
        (
            swap(square, &polygon(&[(0.0, 0.0), (0.0, 0.0), (100.0, 0.0), (0.0, 100.0)])),
            "outline at (0 mm, 0 mm)",
            "coincide",
        ),
        (swap(square, &polygon(&[(0.0, 0.0), (1000.0, 0.0), (500.0, 1.0)])), "outline at", "3 degrees"),
        (
            with_hole("{ circle = { diameter = \"100 mm\", centre = { x = \"2 m\", y = \"0 mm\" } } }"),
            "holes[0] at",
            "outside outline",
        ),
        (with_hole("{ circle = { diameter = \"1 m\" } }"), "holes[0] at", "outline"),
        (
            swap(
                "[[line_supports]]",
                "region.outline.circle = { diameter = \"100 mm\", centre = { x = \"1 m\", y = \"0 mm\" } }\n[[line_supports]]",
            ),
            "layers[0] at",
            "outside outline",
        ),
        (
            swap(
                LOAD,
                &format!(
                    "[[latches]]\nname = \"far\"\nat = {}\naction.force.pull = \"1 N\"\n{LOAD}",
                    corner(900.0, 0.0)
                ),
            ),
            "latches[0] at (900 mm, 0 mm)",
            "",
        ),
        (
            swap(
                square,
                "outline.path = { start = { x = \"0 mm\", y = \"0 mm\" }, segments = [{ through = { x = \"1 mm\", y = \"0 mm\" }, to = { x = \"2 mm\", y = \"0 mm\" } }, { to = { x = \"0 mm\", y = \"2 mm\" } }] }",
            ),
            "outline at (1 mm, 0 mm)",
            "line",
        ),
    ];
    for (text, place, reason) in &cases {
        let error = refused(text);
        let words = error.to_string();
        assert_eq!(error.name(), "geometry", "{words}");
        assert!(words.contains(place) && words.contains(reason), "{words}");
    }
}

#[test]
fn what_is_not_held_is_named() {
    let error = refused(&format!("{PLATE}{LOAD}"));
    assert_eq!(error.name(), "singular");
    let pins = "[[point_supports]]\nat = { x = \"-400 mm\", y = \"0 mm\" }\ndeflection = \"fixed\"\nslope = \"free\"\n[[point_supports]]\nat = { x = \"400 mm\", y = \"0 mm\" }\ndeflection = \"fixed\"\nslope = \"free\"\n";
    let words = refused(&format!("{PLATE}{pins}{LOAD}")).to_string();
    assert!(words.contains("turns freely about the line") && words.contains("mm"), "{words}");
}

#[test]
fn hostile_laws_and_names_are_refused_with_their_path() {
    let falls = REVISED.replace("0.9 N/mm", "0.1 N/mm");
    let error = refused(&falls);
    assert_eq!((error.name(), error.field()), ("inconsistent", "gaskets[0].law"));
    assert!(error.to_string().contains("5 mm"), "{error}");
    for (from, to, name, field) in [
        (
            "\"2.5 mm\", force",
            "\"-2.5 mm\", force",
            "impossible",
            "gaskets[0].law.measured.points[1].compression",
        ),
        ("layer = \"lid\"", "layer = \"lit\"", "not_an_option", "beams[0].layer"),
        ("[\"front left\"]", "[\"front\"]", "not_an_option", "load_cases[1].missing_latches[0]"),
        (
            "name = \"front right\"",
            "name = \"front left\"",
            "inconsistent",
            "latches[0].name, latches[1].name",
        ),
        (
            "corner_radius = \"40 mm\"",
            "corner_radius = \"200 mm\"",
            "inconsistent",
            "gaskets[0].line.rectangle.corner_radius",
        ),
        ("line.edge.edge = 1", "line.edge.edge = 9", "inconsistent", "beams[1]"),
        ("thickness = \"2.5 mm\"", "thickness = \"0 mm\"", "impossible", "layers[0].thickness"),
    ] {
        let error = refused(&REVISED.replacen(from, to, 1));
        assert_eq!((error.name(), error.field()), (name, field), "{error}");
    }
    let springs = plate(LOAD).replace("\"fixed\"", "\"elastic\"");
    assert_eq!(refused(&springs).field(), "line_supports[0].deflection_stiffness");
}

/// An area by arcs: a circle, and a square with two half circles on opposite sides, one out and one in.
#[test]
fn areas_with_arcs() {
    let circle = solver::Outline::circle(3.0, -2.0, 0.5);
    assert!((super::convert_shape::area(&circle) - PI / 4.0).abs() < 1e-14);
    let p = solver::Point::new;
    let bent = solver::Path::start(0.0, 0.0)
        .line_to(1.0, 0.0)
        .arc_to(p(1.5, 0.5), p(1.0, 1.0))
        .line_to(0.0, 1.0)
        .arc_to(p(0.5, 0.5), p(0.0, 0.0));
    assert!((super::convert_shape::area(&solver::Outline(bent)) - 1.0).abs() < 1e-14);
}
