//! The panels in `examples/panels`, solved in Rust: as JSON for Python, and as a list of numbers for C.
//!
//! The list has one line for each thing: `values <load case> <which> <index> <count>` with that many hexadecimal floats in
//! the lines that follow, `latch <load case> <index> <pull> <deflection>`, `mode <load case> <index> <frequency> <error>`,
//! `buckling <load case> <index> <factor> <error>`, `critical <load case> <index> <rise> <gradient>` and
//! `support <load case> <index> <x> <y>` with the forces in the plane of the supports along lines. `which` is a number of `COAMING_VALUES_...` in `bindings/c/src/boundary/values.rs`.

use std::path::PathBuf;

use coaming::quantity::Quantity;
use coaming_cover::document::Form;
use coaming_cover::panel::{CaseSolution, read_panel, solve};
use coaming_cover::render::panel_json;

use super::covers::documents;
use super::hex::hex;
use crate::workspace::{self, Workspace};

/// The panels of the examples: name without ending, and file.
pub(in crate::test) fn all(workspace: &Workspace) -> Result<Vec<(String, PathBuf)>, String> {
    documents(workspace, "examples/panels")
}

/// Lays down what the other languages have to give too.
pub(super) fn lay_down(workspace: &Workspace) -> Result<usize, String> {
    let folder = workspace.output_folder(super::FOLDER)?;
    let panels = all(workspace)?;
    for (name, file) in &panels {
        let document =
            std::fs::read_to_string(file).map_err(|error| format!("{}: {error}", file.display()))?;
        let solved = read_panel(&document, Form::of(&document)).and_then(|problem| solve(&problem));
        let solution = solved.map_err(|error| format!("{name}: {error}"))?;
        let json = panel_json(&solution).map_err(|error| format!("{name}: {error}"))?;
        workspace::write(&folder.join(format!("{name}.panel.json")), &json)?;
        let mut list = String::new();
        solution.cases.iter().enumerate().for_each(|(nth, case)| numbers(&mut list, nth, case));
        workspace::write(&folder.join(format!("{name}.panel.txt")), &list)?;
    }
    Ok(panels.len())
}

fn numbers(list: &mut String, nth: usize, case: &CaseSolution) {
    let mut values = |which: u32, index: usize, values: &[f64]| {
        *list += &format!("values {nth} {which} {index} {}\n", values.len());
        values.iter().for_each(|value| *list += &format!("{}\n", hex(*value)));
    };
    let field = &case.field;
    let columns = [&field.x_m, &field.y_m, &field.deflection_m, &field.slope_x, &field.slope_y];
    let moments = [&field.moment_xx_n, &field.moment_yy_n, &field.moment_xy_n];
    let membrane = [&field.membrane_xx_n_per_m, &field.membrane_yy_n_per_m, &field.membrane_xy_n_per_m];
    for (which, column) in (0..).zip(columns.into_iter().chain(moments).chain(membrane)) {
        values(which, 0, column);
    }
    for (index, gasket) in case.gaskets.iter().enumerate() {
        let columns =
            [&gasket.along_m, &gasket.x_m, &gasket.y_m, &gasket.compression_m, &gasket.force_n_per_m];
        (16..).zip(columns).for_each(|(which, column)| values(which, index, column));
    }
    for (index, layer) in case.stresses.iter().enumerate() {
        let columns = [
            &layer.inner_larger_pa,
            &layer.inner_smaller_pa,
            &layer.outer_larger_pa,
            &layer.outer_smaller_pa,
        ];
        (32..).zip(columns).for_each(|(which, column)| values(which, index, column));
    }
    if let Some(modes) = &case.modes {
        values(48, 0, &modes.x_m);
        values(49, 0, &modes.y_m);
        modes.modes.iter().enumerate().for_each(|(index, mode)| values(50, index, &mode.shape_m));
    }
    if let Some(found) = &case.buckling {
        values(64, 0, &found.x_m);
        values(65, 0, &found.y_m);
        found.modes.iter().enumerate().for_each(|(index, mode)| values(66, index, &mode.shape));
    }
    let mut pair = |what: &str, index: usize, first: f64, second: f64| {
        *list += &format!("{what} {nth} {index} {} {}\n", hex(first), hex(second));
    };
    for (index, mode) in case.buckling.iter().flat_map(|found| &found.modes).enumerate() {
        pair("buckling", index, mode.factor, mode.error.unwrap_or(0.0));
    }
    for (index, layer) in case.critical_rise.iter().flat_map(|found| &found.temperatures).enumerate() {
        pair("critical", index, layer.rise.to_si(), layer.gradient.to_si());
    }
    for (index, support) in case.line_reactions.iter().enumerate() {
        pair("support", index, support.in_plane_x.to_si(), support.in_plane_y.to_si());
    }
    for (index, latch) in case.latches.iter().enumerate() {
        let (pull, deflection) = (latch.pull.to_si(), latch.deflection.to_si());
        *list += &format!("latch {nth} {index} {} {}\n", hex(pull), hex(deflection));
    }
    for (index, mode) in case.modes.iter().flat_map(|found| &found.modes).enumerate() {
        *list += &format!(
            "mode {nth} {index} {} {}\n",
            hex(mode.frequency.to_si()),
            hex(mode.error.unwrap_or(0.0))
        );
    }
}
