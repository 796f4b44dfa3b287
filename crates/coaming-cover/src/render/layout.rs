//! Lines of at most 80 columns, in plain characters.

/// The width of a text output.
pub(super) const WIDTH: usize = 80;

/// Breaks words into lines, the first behind `first`, the others behind `rest`.
pub(super) fn wrapped(first: &str, rest: &str, words: &str) -> String {
    let mut lines = String::new();
    let mut line = first.to_owned();
    let mut empty = true;
    for word in words.split_whitespace() {
        let fits = line.chars().count() + usize::from(!empty) + word.chars().count() <= WIDTH;
        if !fits && !empty {
            lines.push_str(line.trim_end());
            lines.push('\n');
            line = rest.to_owned();
            empty = true;
        }
        if !empty {
            line.push(' ');
        }
        line.push_str(word);
        empty = false;
    }
    lines.push_str(line.trim_end());
    lines.push('\n');
    lines
}

/// A text cut to so many columns.
pub(super) fn cut(text: &str, columns: usize) -> String {
    if text.chars().count() <= columns {
        text.to_owned()
    } else {
        text.chars().take(columns.saturating_sub(3)).chain("...".chars()).collect()
    }
}

/// Two texts on one line, the second at the right edge; the first is cut where both do not fit.
pub(super) fn spread(left: &str, right: &str) -> String {
    let room = WIDTH.saturating_sub(right.chars().count() + 2);
    let left = cut(left, room);
    let gap = WIDTH.saturating_sub(left.chars().count() + right.chars().count());
    format!("{left}{}{right}", " ".repeat(gap)).trim_end().to_owned() + "\n"
}
