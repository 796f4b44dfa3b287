//! Where in a value one stands: `legs[0].length`. Kept on the stack, written out only when an error needs it.

use core::fmt;

/// A place in a value.
#[derive(Debug, Clone, Copy)]
pub struct Path<'a> {
    parent: Option<&'a Path<'a>>,
    step: Step,
}

#[derive(Debug, Clone, Copy)]
enum Step {
    Root,
    Member(&'static str),
    Entry(usize),
}

impl<'a> Path<'a> {
    /// The whole value.
    pub const ROOT: Self = Self { parent: None, step: Step::Root };

    /// A field of the record that stands here.
    pub const fn member(&'a self, name: &'static str) -> Path<'a> {
        Path { parent: Some(self), step: Step::Member(name) }
    }

    /// An entry of the list that stands here.
    pub const fn entry(&'a self, place: usize) -> Path<'a> {
        Path { parent: Some(self), step: Step::Entry(place) }
    }

    /// The path to a key below this place, as text.
    pub fn below(&self, key: &str) -> String {
        let here = self.to_string();
        if here.is_empty() { key.to_owned() } else { format!("{here}.{key}") }
    }
}

impl fmt::Display for Path<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let has_words = match self.parent {
            Some(parent) => {
                parent.fmt(f)?;
                !matches!(parent.step, Step::Root)
            }
            None => false,
        };
        match self.step {
            Step::Root => Ok(()),
            Step::Member(name) if has_words => write!(f, ".{name}"),
            Step::Member(name) => f.write_str(name),
            Step::Entry(place) => write!(f, "[{place}]"),
        }
    }
}
