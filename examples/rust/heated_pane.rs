//! A pane that nothing lets grow: what damp presses it with, at what rise of temperature it buckles, how far it bows past that, and how
//! far a hand pushes it in. Run it from the root of the workspace.

use coaming_cover::document::Form;
use coaming_cover::panel::{LoadOf, Panel, go_on, read_panel};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let document = std::fs::read_to_string("examples/panels/heated-pane.toml")?;
    let mut pane = Panel::new(read_panel(&document, Form::Toml)?)?;
    let (sun, damp) = (pane.load_case_named("sun")?, pane.load_case_named("damp")?);

    // Growth is a load in the plane: the frame presses back.
    let pressed = pane.solve(LoadOf::Document(damp), &mut go_on)?;
    println!("damp presses with {:.3} N/mm", -pressed.largest_membrane_force.value.value * 1e-3);
    let ways = pane.buckling(2, LoadOf::Document(damp), &mut go_on)?;
    for way in &ways.modes {
        println!("damp times {:.3} makes it buckle", way.factor);
    }

    let rise = pane.critical_rise(LoadOf::Document(sun), &mut go_on)?;
    for layer in &rise.temperatures {
        println!("a rise of {:.3} K makes it buckle", layer.rise.value);
    }

    // Linear theory knows no bow past that; the load cases ask for the stretching that it brings.
    for name in ["sun", "hand"] {
        let case = pane.solve(LoadOf::Document(pane.load_case_named(name)?), &mut go_on)?;
        println!("{name} moves it by {:.3} mm", case.largest_deflection.value.value.abs() * 1e3);
    }

    // Keep well below the factors: a real pane bows from the start.
    for caution in &pane.solution(Vec::new()).cautions {
        println!("- {caution}");
    }
    Ok(())
}
