//! The chores of this workspace: `cargo xtask generate [--check]`.

mod generate;

use std::process::ExitCode;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let done = match words.as_slice() {
        ["generate"] => generate::write(),
        ["generate", "--check"] => generate::check(),
        _ => Err("usage: cargo xtask generate [--check]".to_owned()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            eprintln!("{fault}");
            ExitCode::FAILURE
        }
    }
}
