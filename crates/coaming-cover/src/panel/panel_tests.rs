#![allow(clippy::indexing_slicing, clippy::unwrap_used, clippy::panic)]

use super::*;
use crate::document::Form;
use crate::render::panel_text;
use coaming::prelude::*;
use core::ops::ControlFlow;

/// A square plate of 1 m on a knife edge all round, with a load case to each side.
const PLATE: &str = r#"
version = 1
title = "plate"
outline.rectangle = { width = "1 m", height = "1 m" }
[[layers]]
name = "sheet"
thickness = "5 mm"
density = "2700 kg/m^3"
material.isotropic = { youngs_modulus = "70 GPa", poissons_ratio = 0.3 }
[[line_supports]]
line.edge = {}
deflection = "fixed"
slope = "free"
[[load_cases]]
name = "wind in"
pressures = [{ pressure = "100 Pa" }]
[[load_cases]]
name = "leaning"
patches = [{ patch = { rectangle = { width = "100 mm", height = "100 mm" } }, force = "-300 N" }]
"#;

fn plate() -> Panel {
    Panel::new(read_panel(PLATE, Form::Toml).unwrap()).unwrap()
}

fn bits(case: &CaseSolution) -> Vec<u64> {
    case.field.deflection_m.iter().map(|deflection| deflection.to_bits()).collect()
}

#[test]
fn one_load_after_another_is_each_by_itself() {
    let together = solve(&read_panel(PLATE, Form::Toml).unwrap()).unwrap();
    let mut panel = plate();
    for nth in [1, 0, 1] {
        let alone = panel.solve(LoadOf::Document(nth), &mut go_on).unwrap();
        assert_eq!(alone, together.cases[nth]);
    }
    let first = panel.solve(LoadOf::Document(0), &mut go_on).unwrap();
    let again = panel.solution(vec![first]);
    assert!(again.cautions.iter().any(|caution| caution.contains("not a certificate")));
    assert_eq!(again.cases[0], together.cases[0]);
}

#[test]
fn another_load_is_solved_on_the_same_panel() {
    let given =
        read_load_case("name = \"wind out\"\npressures = [{ pressure = \"-100 Pa\" }]", Form::Toml).unwrap();
    let mut panel = plate();
    let inward = panel.solve(LoadOf::Document(0), &mut go_on).unwrap();
    let outward = panel.solve(LoadOf::Given(&given), &mut go_on).unwrap();
    assert_eq!(outward.name, "wind out");
    // A linear panel: the load turned round turns the deflection round, to the bit.
    assert_eq!(bits(&inward).len(), bits(&outward).len());
    for (one, other) in inward.field.deflection_m.iter().zip(&outward.field.deflection_m) {
        assert!(*one == -other, "{one} {other}");
    }
}

#[test]
fn a_fault_of_a_load_names_its_path() {
    let mut panel = plate();
    let error = panel.solve(LoadOf::Document(2), &mut go_on).unwrap_err();
    assert_eq!((error.name(), error.field(), error.value()), ("impossible", "load_case", Some(2.0)));
    assert!(error.to_string().contains("0 to 1"), "{error}");
    for (text, name, field) in [
        ("missing_latches = [\"left\"]", "not_an_option", "load.missing_latches[0]"),
        ("temperatures = [{ layer = \"sheet\", rise = \"10 K\" }]", "missing", "layers[0].expansion"),
        (
            "point_forces = [{ at = { x = \"2 m\", y = \"0 m\" }, force = \"1 N\" }]",
            "geometry",
            "load.point_forces[0] at (2000 mm, 0 mm)",
        ),
        (
            "patches = [{ patch = { rectangle = { width = \"1 mm\", height = \"1 mm\", centre = { x = \"2 m\", y = \"0 m\" } } }, force = \"1 N\" }]",
            "geometry",
            "load.patches[0]",
        ),
    ] {
        let given = read_load_case(&format!("name = \"a\"\n{text}"), Form::Toml).unwrap();
        let error = panel.solve(LoadOf::Given(&given), &mut go_on).unwrap_err();
        assert_eq!(error.name(), name, "{error}");
        assert!(error.to_string().starts_with(field), "{error}");
    }
    let error = read_load_case("name = \"a\"\npresures = []", Form::Toml).unwrap_err();
    assert_eq!((error.name(), error.field()), ("unknown_key", "presures"));
}

#[test]
fn a_caller_can_stop_it() {
    let mut panel = plate();
    let mut told = Vec::new();
    let error = panel.solve(LoadOf::Document(0), &mut |now| {
        told.push(now);
        if now.step == 1 { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    });
    assert_eq!(error, Err(Error::Cancelled));
    assert_eq!((told.len(), told[1].work, told[1].mesh), (2, Work::Equilibrium, 0));
    assert_eq!(panel.modes(1, LoadOf::Document(0), &mut |_| ControlFlow::Break(())), Err(Error::Cancelled));
    let solved = panel.solve(LoadOf::Document(0), &mut go_on).unwrap();
    assert_eq!(bits(&solved), bits(&plate().solve(LoadOf::Document(0), &mut go_on).unwrap()));
}

/// Blevins, Formulas for Natural Frequency and Mode Shape, table 11-4, simply supported rectangle: lambda^2 = pi^2 (i^2 + j^2 a^2/b^2), f =
/// lambda^2 / (2 pi a^2) sqrt(D / (rho h)); the exact solution for thin plates.
#[test]
fn modes_of_a_plate() {
    let mut panel = plate();
    let found = panel.modes(3, LoadOf::Document(0), &mut go_on).unwrap();
    let stiffness: f64 = 70e9 * 0.005 * 0.005 * 0.005 / (12.0 * (1.0 - 0.3 * 0.3));
    let unit = PI / 2.0 * (stiffness / (2700.0 * 0.005)).sqrt();
    for (mode, sum) in found.modes.iter().zip([2.0, 5.0, 5.0]) {
        let (frequency, exact) = (mode.frequency.to_si(), unit * sum);
        assert!((frequency / exact - 1.0).abs() < 0.005, "{frequency} {exact}");
        assert_eq!(mode.shape_m.len(), found.x_m.len());
    }
    assert_eq!(found.x_m.len(), found.y_m.len());
    assert_eq!(found.triangles.iter().max().copied(), Some(found.x_m.len() as u32 - 1));
    assert!(found.modes.iter().all(|mode| mode.met && mode.error.is_some_and(|error| error < 0.005)));
    let error = panel.modes(0, LoadOf::Document(0), &mut go_on).unwrap_err();
    assert_eq!(error.name(), "impossible");
    // The same in a load case that asks for them.
    let given = read_load_case("name = \"still\"\nmodes = 3", Form::Toml).unwrap();
    let solved = panel.solve(LoadOf::Given(&given), &mut go_on).unwrap();
    assert_eq!(solved.modes.as_ref(), Some(&found));
    let text = panel_text(&panel.solution(vec![solved]), System::Shop);
    assert!(text.contains("mode 3") && text.contains("Hz"), "{text}");
}

/// Where no second mesh is allowed there is nothing to compare with: the numbers stand, their errors are absent, and the text says so.
#[test]
fn one_mesh_alone_has_no_estimate_but_of_its_modes() {
    let text = PLATE.replace("[[layers]]", "settings.most_triangles = 64\n[[layers]]");
    let mut panel = Panel::new(read_panel(&text, Form::Toml).unwrap()).unwrap();
    let given = read_load_case("name = \"still\"\nmodes = 1", Form::Toml).unwrap();
    let case = panel.solve(LoadOf::Given(&given), &mut go_on).unwrap();
    let mode = &case.modes.as_ref().unwrap().modes[0];
    // A mode's own field tells what its mesh leaves out.
    assert!(mode.error.is_some_and(|error| error > 0.0) && mode.frequency.to_si() > 0.0);
    assert!(case.error.deflection.is_none() && case.error.moment.is_none() && !case.error.met);
    let text = panel_text(&panel.solution(vec![case]), System::Shop);
    assert!(text.contains("no finer mesh was allowed: error unknown"), "{text}");
    assert!(text.contains("THE TOLERANCE IS NOT MET"), "{text}");
}
