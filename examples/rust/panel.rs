//! Solves one panel, a lid on its seal, and tells where the seal is compressed least, what each latch pulls and where the lid
//! rings first: `panel [FILE]`. Exit status 2 for bad input.

use std::ops::ControlFlow;
use std::process::ExitCode;

use coaming::prelude::*;
use coaming_cover::document::Form;
use coaming_cover::panel::{LoadOf, Panel, Progress, read_panel};
use coaming_cover::render::panel_text;

/// The lid of the demonstration, where no file is given; from the root of the workspace.
const REVISED_LID: &str = "examples/panels/revised-lid.toml";

/// Told when a mesh is begun and before every step on it; `Break` would stop the work.
fn hear(now: Progress) -> ControlFlow<()> {
    if now.step == 0 {
        eprintln!("{}: mesh {} of {} triangles", now.work.name(), now.mesh, now.triangles);
    }
    ControlFlow::Continue(())
}

fn solved(file: &str) -> Result<String, String> {
    let at = |error: Error| format!("{file}: {error}\n{}", error.cure());
    let document = std::fs::read_to_string(file).map_err(|error| format!("{file}: {error}"))?;
    let mut panel = Panel::new(read_panel(&document, Form::of(&document)).map_err(at)?).map_err(at)?;
    let case = panel.solve(LoadOf::Document(0), &mut hear).map_err(at)?;

    let millimetres = |length: Length| length.value * 1e3;
    let mut text = String::new();
    for seal in &case.gaskets {
        text += &format!(
            "seal compressed least: {:.3} mm at ({:.0} mm, {:.0} mm), most: {:.3} mm\n",
            millimetres(seal.smallest.value),
            millimetres(seal.smallest.at.x),
            millimetres(seal.smallest.at.y),
            millimetres(seal.largest.value)
        );
    }
    for latch in &case.latches {
        text += &format!("latch {} pulls {:.1} N\n", latch.name, latch.pull.value);
    }
    if let Some(first) = case.modes.as_ref().and_then(|found| found.modes.first()) {
        text += &format!("first mode: {:.1} Hz\n", first.frequency.value);
    }
    text += match case.error.met {
        true => "the mesh meets the tolerance\n",
        false => "THE MESH DOES NOT MEET THE TOLERANCE\n",
    };
    // The whole of it in words, with the cautions.
    text.push('\n');
    text += &panel_text(&panel.solution(vec![case]), System::Shop);
    Ok(text)
}

fn main() -> ExitCode {
    let file = std::env::args().nth(1);
    match solved(file.as_deref().unwrap_or(REVISED_LID)) {
        Ok(text) => {
            print!("{text}");
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}
