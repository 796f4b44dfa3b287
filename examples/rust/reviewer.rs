//! Reviews a cover, changes it, and reviews it again without solving anew what the change does not touch:
//! `reviewer FILE OLD NEW` prints the first lines of the reviews before and after `OLD` is replaced by `NEW`. Exit status 2 for bad input.

use std::process::ExitCode;

use coaming_cover::calls::{Output, Units, review_with};
use coaming_cover::reviewer::Reviewer;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [file, old, new] = words.as_slice() else {
        eprintln!("give the file of a cover, a piece of it, and what replaces that");
        return ExitCode::from(2);
    };
    let document = match std::fs::read_to_string(file) {
        Ok(document) => document,
        Err(error) => {
            eprintln!("{file}: {error}");
            return ExitCode::from(2);
        }
    };
    let mut reviewer = Reviewer::new();
    for text in [document.clone(), document.replacen(old, new, 1)] {
        match review_with(&mut reviewer, &text, Output::Text, Units::Shop) {
            Ok(review) => review.lines().take(2).for_each(|line| println!("{line}")),
            Err(error) => {
                eprintln!("{file}: {error}\n{}", error.cure());
                return ExitCode::from(2);
            }
        }
    }
    ExitCode::SUCCESS
}
