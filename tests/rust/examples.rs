//! The example that solves a panel, as a user runs it.

use std::process::{Command, Output};

fn run(file: &str) -> Output {
    let root = coaming_tests::folder().join("..");
    Command::new(env!("CARGO_BIN_EXE_panel")).arg(file).current_dir(root).output().unwrap()
}

/// The number between two pieces of a text.
fn between(text: &str, before: &str, after: &str) -> f64 {
    let (_, rest) = text.split_once(before).unwrap_or_else(|| panic!("`{before}` is due: {text}"));
    let (number, _) = rest.split_once(after).unwrap_or_else(|| panic!("`{after}` is due: {text}"));
    number.trim().parse().unwrap()
}

/// The lid is stiff beside its seal: drawn down by 3 mm all round it gives that nearly everywhere, and its latches share what
/// a stiff lid's seal would push, by hand: 0.353 N/mm at 3 mm (between the measured 0.288 at 2.5 mm and 0.9 at 5 mm, by a
/// line 0.41), over 1811 mm, by six.
#[test]
fn the_panel_example_tells_of_seal_latches_and_mode() {
    let output = run("examples/panels/revised-lid.toml");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let text = String::from_utf8(output.stdout).unwrap();
    let least = between(&text, "seal compressed least: ", " mm at");
    assert!(least > 2.7 && least < 3.0, "{least}");
    let pulls: f64 = text
        .lines()
        .filter(|line| line.starts_with("latch "))
        .map(|line| between(line, " pulls ", " N"))
        .sum();
    assert!(pulls > 0.30 * 1811.0 && pulls < 0.41 * 1811.0, "{pulls}");
    assert!(between(&text, "first mode: ", " Hz") > 0.0);
    assert!(text.contains("the mesh meets the tolerance") && text.contains("\nCautions\n"));
    assert!(String::from_utf8_lossy(&output.stderr).starts_with("equilibrium: mesh 0 of "));
}

#[test]
fn the_panel_example_refuses_bad_input() {
    let output = run("examples/panels/none.toml");
    assert_eq!(output.status.code(), Some(2));
    let output = run("examples/covers/revised.toml");
    let message = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(2), "{message}");
    assert!(message.starts_with("examples/covers/revised.toml: line "), "{message}");
}
