#![allow(clippy::indexing_slicing, clippy::unwrap_used, clippy::panic)]
//! What acts in the plane, buckling and large deflection, from the document to the words.

use super::*;
use crate::document::Form;
use crate::render::{panel_json, panel_text};
use coaming::prelude::*;

/// A square plate of 1 m and 5 mm on a knife edge all round, held in the plane or not.
fn plate(held: &str, case: &str) -> String {
    format!(
        r#"
version = 1
title = "plate"
outline.rectangle = {{ width = "1 m", height = "1 m" }}
[[layers]]
name = "sheet"
thickness = "5 mm"
expansion = "23.6e-6 1/K"
material.isotropic = {{ youngs_modulus = "70 GPa", poissons_ratio = 0.3 }}
[[line_supports]]
line.edge = {{}}
deflection = "fixed"
slope = "free"
{held}
[[load_cases]]
name = "case"
{case}
"#
    )
}

const HELD: &str = "held_in_plane = true";

fn solved(held: &str, case: &str) -> Result<CaseSolution, Error> {
    let mut panel = Panel::new(read_panel(&plate(held, case), Form::Toml)?)?;
    panel.solve(LoadOf::Document(0), &mut go_on)
}

fn near(found: f64, exact: f64, within: f64) {
    assert!((found / exact - 1.0).abs() < within, "{found} against {exact}");
}

/// Bryan (1891): N = 4 pi^2 D / b^2, 31 633 N/m here by hand; pulls of 1 N/mm inward on two edges.
#[test]
fn pressed_plate_buckles() {
    let case = solved(
        "",
        r#"edge_forces = [
  { edge = { edge = 1 }, layer = "sheet", outward = "-1 N/mm" },
  { edge = { edge = 3 }, layer = "sheet", along_x = "1 N/mm" },
]
buckling = 2"#,
    )
    .unwrap();
    let found = case.buckling.as_ref().unwrap();
    assert!(found.met && found.modes.len() == 2);
    near(found.modes[0].factor, 31.633, 0.005);
    assert_eq!(found.modes[0].shape.len(), found.x_m.len());
    near(case.largest_membrane_force.value.to_si(), -1000.0, 1e-6);
    near(case.field.membrane_xx_n_per_m[0], -1000.0, 1e-6);
    assert!(case.balance.in_plane < 1e-9 && !case.large_deflection);
}

/// Held in its plane: the rise is pi^2 t^2 (1 / a^2 + 1 / b^2) / (12 (1 + nu) alpha) = 1.34044 K (Boley and Weiner, ch. 13, from memory;
/// by hand). Below it the plate is flat, with -E alpha dT t / (1 - nu) = -11 800 N/m for 1 K in every direction.
#[test]
fn heated_plate_buckles() {
    let warm = "temperatures = [{ layer = \"sheet\", rise = \"1 K\" }]\ncritical_rise = true";
    let case = solved(HELD, warm).unwrap();
    let found = case.critical_rise.unwrap();
    near(found.factor.unwrap(), 1.340_44, 0.005);
    near(found.temperatures[0].rise.to_si(), 1.340_44, 0.005);
    assert!(found.met && found.temperatures[0].layer == "sheet");
    near(case.largest_membrane_force.value.to_si(), -11_800.0, 1e-9);
    // Free in its plane it only grows.
    let free = solved("", warm).unwrap().critical_rise.unwrap();
    assert_eq!((free.factor, free.temperatures.len()), (None, 0));
    // Damp instead of warm: the same strain, the same force.
    let damp = solved(HELD, "growths = [{ layer = \"sheet\", strain = 23.6e-6 }]").unwrap();
    near(damp.largest_membrane_force.value.to_si(), -11_800.0, 1e-9);
}

/// p a^4 / (E t^4) = 10, held in its plane: w / t = 0.37067 (Ritz, tests/independent/panel_large.py); by linear theory 0.4437.
#[test]
fn large_deflection_is_stiffer() {
    let pressed = "pressures = [{ pressure = \"437.5 Pa\" }]";
    let large = solved(HELD, &format!("{pressed}\nlarge_deflection = true")).unwrap();
    near(large.largest_deflection.value.to_si(), -0.370_67 * 0.005, 0.005);
    assert!(large.large_deflection && large.error.met && large.error.membrane_force.is_some());
    assert!(large.largest_membrane_force.value.to_si() > 0.0);
    let linear = solved(HELD, pressed).unwrap();
    near(linear.largest_deflection.value.to_si(), -0.443_7 * 0.005, 0.006);
}

/// An edge that moves inward by d: E t d / a with the sides free to slide, as the reaction of the edge that stays.
#[test]
fn edge_that_moves() {
    let text = plate("", "support_movements = [{ support = 1, along_x = \"-0.01 mm\" }]");
    let edges: String = [1, 3]
        .map(|edge| {
            format!(
                "[[line_supports]]\nline.edge = {{ edge = {edge} }}\ndeflection = \"fixed\"\nslope = \"free\"\nheld_across_in_plane = true\n"
            )
        })
        .concat();
    let text = text.replace("[[load_cases]]", &format!("{edges}[[load_cases]]"));
    let mut panel = Panel::new(read_panel(&text, Form::Toml).unwrap()).unwrap();
    let case = panel.solve(LoadOf::Document(0), &mut go_on).unwrap();
    let force = 70e9 * 0.005 * 1e-5;
    near(case.line_reactions[1].in_plane_x.to_si(), -force, 1e-8);
    near(case.line_reactions[2].in_plane_x.to_si(), force, 1e-8);
}

#[test]
fn what_does_not_go_together_is_named() {
    let refused = |held: &str, case: &str| solved(held, case).unwrap_err();
    for (case, name, words) in [
        ("critical_rise = true", "missing", "load_cases[0].temperatures"),
        (
            "growths = [{ layer = \"shet\", strain = 0.001 }]",
            "not_an_option",
            "load_cases[0].growths[0].layer",
        ),
        (
            "edge_forces = [{ edge = {}, layer = \"foam\", outward = \"1 N/mm\" }]",
            "not_an_option",
            "edge_forces[0].layer",
        ),
        (
            "edge_forces = [{ edge = { hole = 2 }, layer = \"sheet\", outward = \"1 N/mm\" }]",
            "inconsistent",
            "load_cases[0].edge_forces[0]",
        ),
        (
            "support_movements = [{ support = 4, along_x = \"1 mm\" }]",
            "inconsistent",
            "load_cases[0].support_movements[0]",
        ),
        (
            "support_movements = [{ support = 0, along_x = \"1 mm\" }]",
            "geometry",
            "load_cases[0].support_movements[0]",
        ),
        (
            "edge_forces = [{ edge = { edge = 1 }, layer = \"sheet\", outward = \"1 N/mm\" }]",
            "singular",
            "in its plane",
        ),
    ] {
        let error = refused("", case);
        assert_eq!(error.name(), name, "{error}: {case}");
        assert!(error.to_string().contains(words), "`{words}` is due: {error}");
    }
    for case in ["buckling = 0", "buckling = 21", "growths = [{ layer = \"sheet\", strain = 0.5 }]"] {
        assert_eq!(refused("", case).name(), "impossible", "{case}");
    }
    let mut panel = Panel::new(read_panel(&plate("", ""), Form::Toml).unwrap()).unwrap();
    assert_eq!(panel.buckling(0, LoadOf::Document(0), &mut go_on).unwrap_err().name(), "impossible");
}

/// Every printed form says which theory it is by, and that a factor is one of a flat panel.
#[test]
fn words_say_what_a_factor_is_worth() {
    let warm = "temperatures = [{ layer = \"sheet\", rise = \"1 K\" }]\ncritical_rise = true\nbuckling = 1";
    let text = plate(HELD, &format!("{warm}\nlarge_deflection = true"));
    let solution = solve(&read_panel(&text, Form::Toml).unwrap()).unwrap();
    let words = panel_text(&solution, System::Shop);
    let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
    for due in [
        "buckles at 1.3",
        "keep well below it",
        "large deflections",
        "begin to hold in the plane",
        "not a certificate",
    ] {
        assert!(words.contains(due), "`{due}` is due:\n{words}");
    }
    let json = panel_json(&solution).unwrap();
    assert!(json.contains("\"critical_rise\"") && json.contains("\"large_deflection\":true"));
}
