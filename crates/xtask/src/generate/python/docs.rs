//! Doc comments as docstrings.

use coaming::declaration::{Field, UNBOUNDED, accepted};

/// The longest line of generated code.
const WIDTH: usize = 110;

/// A Python string literal.
pub(crate) fn literal(text: &str) -> String {
    format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\"").replace('\n', "\\n"))
}

/// A string literal that is broken into pieces where it would be too long.
pub(crate) fn wrapped_literal(text: &str, indent: usize) -> String {
    if indent + literal(text).chars().count() < WIDTH {
        return literal(text);
    }
    let lines = fill(text, WIDTH - indent - 8);
    let blanks = " ".repeat(indent);
    let last = lines.len() - 1;
    let pieces: Vec<String> = lines
        .iter()
        .enumerate()
        .map(|(nth, line)| {
            let blank = if nth == last { "" } else { " " };
            format!("{blanks}    {}\n", literal(&format!("{line}{blank}")))
        })
        .collect();
    format!("(\n{}{blanks})", pieces.concat())
}

/// A docstring with its indentation and a line end.
pub(crate) fn quoted(text: &str, indent: usize) -> String {
    let blanks = " ".repeat(indent);
    let text = text.trim().replace('\\', "\\\\").replace("\"\"\"", "\\\"\\\"\\\"");
    // The opening quotes are filled in like a word's beginning, so that the first line leaves room for them.
    let lines = reflowed(&format!("\"\"\"{text}"), WIDTH - indent);
    // A quote at the end would run into the closing ones.
    if lines.len() == 1 && lines[0].chars().count() + 3 + indent <= WIDTH && !text.ends_with('"') {
        return format!("{blanks}{}\"\"\"\n", lines[0]);
    }
    let mut quoted = String::new();
    for line in lines {
        if !line.is_empty() {
            quoted += &blanks;
        }
        quoted += &line;
        quoted.push('\n');
    }
    format!("{quoted}{blanks}\"\"\"\n")
}

/// The doc comment of a type: headings underlined, links as names, blocks indented, without the example in Rust.
pub(crate) fn of_type(doc: &str) -> String {
    let mut lines: Vec<String> = Vec::new();
    let (mut is_example, mut is_code) = (false, false);
    for line in doc.lines() {
        if line.starts_with("```") {
            is_code = !is_code;
            if !is_example && lines.last().is_some_and(|last| !last.is_empty()) {
                lines.push(String::new());
            }
        } else if let Some(heading) = line.strip_prefix("# ").filter(|_| !is_code) {
            is_example = heading.trim() == "Example";
            if !is_example {
                lines.push(heading.trim().to_owned());
                lines.push("-".repeat(heading.trim().chars().count()));
            }
        } else if !is_example {
            let indent = if is_code { "    " } else { "" };
            lines.push(format!("{indent}{}", unlinked(line)).trim_end().to_owned());
        }
    }
    lines.join("\n").trim().to_owned()
}

/// The first sentence or paragraph of a doc comment, on one line.
pub(crate) fn first_paragraph(doc: &str) -> String {
    let lines: Vec<String> = doc.lines().take_while(|line| !line.trim().is_empty()).map(unlinked).collect();
    lines.join(" ")
}

/// The doc line of a field with its unit and ranges.
pub(crate) fn of_field(field: &Field, is_input: bool) -> String {
    let doc: Vec<String> = field.doc.lines().map(unlinked).collect();
    let mut text = doc.join(" ").trim().trim_end_matches('.').to_owned();
    if !field.unit.is_empty() {
        text += &format!(" [{}]", field.unit);
    }
    text.push('.');
    if is_input && field.possible != UNBOUNDED {
        text += &format!(" Accepted: {}.", accepted(field));
    }
    if is_input && field.tested != UNBOUNDED {
        text += &format!(" Tested: {}.", accepted(&Field { possible: field.tested, ..*field }));
    }
    text
}

/// Links of the Rust documentation as plain names.
fn unlinked(line: &str) -> String {
    let mut plain = String::new();
    let mut rest = line;
    while let Some((before, after)) = rest.split_once("[`") {
        plain += before;
        let Some((name, behind)) = after.split_once("`]") else {
            plain += "[`";
            rest = after;
            continue;
        };
        plain += &format!("`{name}`");
        rest = match behind.strip_prefix('(').and_then(|target| target.split_once(')')) {
            Some((_, behind)) => behind,
            None => behind,
        };
    }
    plain + rest
}

/// Paragraphs filled to the width; tables, lists, code and headings stay line by line.
fn reflowed(text: &str, width: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut paragraph = String::new();
    let all: Vec<&str> = text.lines().collect();
    for (nth, line) in all.iter().enumerate() {
        let is_underlined = all.get(nth + 1).is_some_and(|next| next.starts_with("---"));
        let is_own = line.trim().is_empty()
            || is_underlined
            || line.starts_with([' ', '|', '-', '*', '`'])
            || line.starts_with(|c: char| c.is_ascii_digit()) && line.contains(". ");
        if is_own {
            lines.extend(fill(&std::mem::take(&mut paragraph), width));
            // Indented lines are formulas and tables, set by hand.
            if line.chars().count() <= width || line.starts_with("    ") {
                lines.push(line.trim_end().to_owned());
            } else {
                // What does not fit of a list's entry stands below its words.
                let hanging = if line.starts_with("- ") { "  " } else { "" };
                let filled = fill(line, width - hanging.len());
                let hang =
                    |(nth, line): (usize, String)| if nth > 0 { hanging.to_owned() + &line } else { line };
                lines.extend(filled.into_iter().enumerate().map(hang));
            }
        } else {
            if !paragraph.is_empty() {
                paragraph.push(' ');
            }
            paragraph += line.trim();
        }
    }
    lines.extend(fill(&paragraph, width));
    lines
}

/// Words filled into lines of the width.
fn fill(text: &str, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        if !line.is_empty() && line.chars().count() + 1 + word.chars().count() > width {
            lines.push(std::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line += word;
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}
