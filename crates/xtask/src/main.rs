//! The project's own commands.
//!
//! ```text
//! cargo xtask generate [--check]   writes the sources that follow from the registry, or says which are stale
//! cargo xtask test [--all]         runs every test in every language; --all adds formatting, lints and Valgrind
//! cargo xtask test STAGE...        runs some stages alone, such as `same-bits c`
//! cargo xtask bench                measures calculations in every language
//! cargo xtask bench panel          measures the panel solver beside two general-purpose packages
//! cargo xtask bench review         measures a whole review, and one after a number changed
//! ```
#![forbid(unsafe_code)]

mod bench;
mod generate;
mod test;
mod workspace;

use std::process::ExitCode;

use workspace::Workspace;

const USAGE: &str = "usage: cargo xtask generate [--check] | cargo xtask test [--all | STAGE...] | cargo xtask bench [panel | review]";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let done = match arguments.as_slice() {
        ["generate"] => Workspace::find().and_then(|workspace| generate::write(&workspace)),
        ["generate", "--check"] => Workspace::find().and_then(|workspace| generate::check(&workspace)),
        ["test", "--all"] => Workspace::find().and_then(|workspace| test::run(&workspace, true, &[])),
        ["test", stages @ ..] => Workspace::find().and_then(|workspace| test::run(&workspace, false, stages)),
        ["bench"] => Workspace::find().and_then(|workspace| bench::run(&workspace)),
        ["bench", "panel"] => Workspace::find().and_then(|workspace| bench::panel(&workspace)),
        ["bench", "review"] => Workspace::find().and_then(|workspace| bench::review(&workspace)),
        _ => Err(USAGE.to_owned()),
    };
    match done {
        Ok(line) => {
            println!("{line}");
            ExitCode::SUCCESS
        }
        Err(fault) => {
            eprintln!("{fault}");
            ExitCode::FAILURE
        }
    }
}
