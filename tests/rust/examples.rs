//! The examples that solve panels and review a cover again and again, as a user runs them.

use std::process::{Command, Output};

fn run(file: &str) -> Output {
    ran(env!("CARGO_BIN_EXE_panel"), &[file])
}

fn ran(program: &str, words: &[&str]) -> Output {
    let root = coaming_tests::folder().join("..");
    Command::new(program).args(words).current_dir(root).output().unwrap()
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

/// By hand: -E t strain / (1 - nu) = 2.190 N/mm; Boley and Weiner, ch. 13, from memory: a rise of pi^2 t^2 (1/a^2 + 1/b^2) / (12 (1 + nu)
/// alpha) = 3.0017 K, at which heat presses 0.9756 times as hard as the damp.
#[test]
fn the_heated_pane_buckles_where_the_closed_form_says() {
    let output = ran(env!("CARGO_BIN_EXE_heated_pane"), &[]);
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let text = String::from_utf8(output.stdout).unwrap();
    let near =
        |found: f64, due: f64| assert!((found / due - 1.0).abs() < 0.005, "{found}, not {due}: {text}");
    near(between(&text, "damp presses with ", " N/mm"), 2.190);
    near(between(&text, "damp times ", " makes it buckle"), 0.9756);
    near(between(&text, "a rise of ", " K makes it buckle"), 3.0017);
    assert!(between(&text, "hand moves it by ", " mm") > 0.0 && text.contains("not a certificate"), "{text}");
}

/// 8.5 mm in a hole of 9.5 mm, and 4 mm more: one check fails that did not.
#[test]
fn the_reviewer_sees_what_a_change_does() {
    let (old, new) = ("length = \"16 mm\"", "length = \"20 mm\"");
    let output = ran(env!("CARGO_BIN_EXE_reviewer"), &["examples/covers/revised.toml", old, new]);
    let text = String::from_utf8(output.stdout).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    let [_, before, _, after] = lines.as_slice() else { panic!("four lines are due: {text}") };
    assert_eq!(between(after, " checks: ", " fail"), between(before, " checks: ", " fail") + 1.0, "{text}");
    assert_eq!(
        ran(env!("CARGO_BIN_EXE_reviewer"), &["examples/covers/none.toml", "a", "b"]).status.code(),
        Some(2)
    );
    assert_eq!(
        ran(env!("CARGO_BIN_EXE_reviewer"), &["examples/panels/heated-pane.toml", "a", "b"]).status.code(),
        Some(2)
    );
    assert_eq!(ran(env!("CARGO_BIN_EXE_reviewer"), &[]).status.code(), Some(2));
}
