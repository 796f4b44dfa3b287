//! Reviews covers: `cargo run --release --example review -- [options] FILE...`
//!
//! Options: `--json`, `--markdown`, `--full` (formula, inputs and sources of each row), `--inch`, `--order-sheet`, `--strict` (exit
//! status 1 where a row is worse than marginal). Exit status 0 when every document was reviewed, 2 for bad input.

use std::io::Write;
use std::process::ExitCode;

use coaming::prelude::*;
use coaming_cover::document::{Form, read};
use coaming_cover::order_sheet::order_sheet;
use coaming_cover::render::{
    Detail, order_sheet_json, order_sheet_markdown, order_sheet_text, review_json, review_markdown,
    review_text,
};
use coaming_cover::review::review;

/// What the command line asks for.
#[derive(Default)]
struct Options {
    json: bool,
    markdown: bool,
    full: bool,
    inch: bool,
    order_sheet: bool,
    strict: bool,
    files: Vec<String>,
}

fn options() -> Result<Options, String> {
    let mut options = Options::default();
    for word in std::env::args().skip(1) {
        match word.as_str() {
            "--json" => options.json = true,
            "--markdown" => options.markdown = true,
            "--full" => options.full = true,
            "--inch" => options.inch = true,
            "--order-sheet" => options.order_sheet = true,
            "--strict" => options.strict = true,
            unknown if unknown.starts_with("--") => return Err(format!("unknown option {unknown}")),
            file => options.files.push(file.to_owned()),
        }
    }
    if options.files.is_empty() {
        return Err("give the files of one or more covers".to_owned());
    }
    Ok(options)
}

/// One document's output, and whether every check passed.
fn reviewed(file: &str, options: &Options) -> Result<(String, bool), String> {
    let bytes = std::fs::read(file).map_err(|error| format!("{file}: {error}"))?;
    let text = String::from_utf8(bytes).map_err(|error| {
        format!("{file}: not UTF-8 text: byte {} cannot be read", error.utf8_error().valid_up_to())
    })?;
    let at = |error: Error| format!("{file}: {error}");
    let cover = read(&text, Form::of(&text)).map_err(at)?;
    let detail = if options.full { Detail::Full } else { Detail::Short };
    let system = if options.inch { System::Inch } else { System::Shop };
    if options.order_sheet {
        let sheet = order_sheet(&cover).map_err(at)?;
        let output = match (options.json, options.markdown) {
            (true, _) => order_sheet_json(&sheet).map_err(at)? + "\n",
            (false, true) => order_sheet_markdown(&sheet, system),
            (false, false) => order_sheet_text(&sheet, system),
        };
        return Ok((output, sheet.review.all_passed()));
    }
    let review = review(&cover).map_err(at)?;
    let output = match (options.json, options.markdown) {
        (true, _) => review_json(&review).map_err(at)? + "\n",
        (false, true) => review_markdown(&review, detail, system),
        (false, false) => review_text(&review, detail, system),
    };
    Ok((output, review.all_passed()))
}

fn main() -> ExitCode {
    let options = match options() {
        Ok(options) => options,
        Err(message) => {
            eprintln!("review: {message}");
            return ExitCode::from(2);
        }
    };
    let (mut bad_input, mut all_passed) = (false, true);
    for (nth, file) in options.files.iter().enumerate() {
        match reviewed(file, &options) {
            Ok((output, passed)) => {
                all_passed &= passed;
                let separator = if nth > 0 && !options.json { "\n" } else { "" };
                // A closed pipe is the reader's wish to stop.
                if write!(std::io::stdout(), "{separator}{output}").is_err() {
                    return ExitCode::SUCCESS;
                }
            }
            Err(message) => {
                bad_input = true;
                eprintln!("{message}");
            }
        }
    }
    match (bad_input, options.strict && !all_passed) {
        (true, _) => ExitCode::from(2),
        (false, true) => ExitCode::from(1),
        (false, false) => ExitCode::SUCCESS,
    }
}
