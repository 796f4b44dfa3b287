//! Where a formula or a figure comes from, as data: documentation, checks and records quote it.

/// How the figure or formula was taken from its source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Standing {
    /// Read in the source's own text or table.
    Read,
    /// Read in another public text that quotes the source.
    SecondHand,
    /// Recalled from the source and not looked up: unverified.
    Memory,
    /// Follows from the theory of the source by computation; the source may not print it.
    Computed,
    /// Common practice of the trade, with no published source.
    CommonPractice,
}

impl Standing {
    /// True where nobody has yet looked the figure up in its source.
    pub const fn is_unverified(self) -> bool {
        matches!(self, Self::Memory)
    }

    /// The standing in a few words, as it is printed behind a source.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Read => "read in the source",
            Self::SecondHand => "second-hand",
            Self::Memory => "unverified",
            Self::Computed => "computed from the theory",
            Self::CommonPractice => "common practice",
        }
    }
}

/// One published source (or common practice), with the place in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Source {
    /// Author and title, or the standard's number.
    pub title: &'static str,
    /// Edition or year; empty where there is none.
    pub edition: &'static str,
    /// Equation, table, section or page; empty where the whole is meant.
    pub locator: &'static str,
    /// How it was taken from there.
    pub standing: Standing,
}

impl Source {
    /// A fact of the trade that no published source is known for.
    pub const fn common_practice(what: &'static str) -> Self {
        Self { title: "common practice", edition: "", locator: what, standing: Standing::CommonPractice }
    }
}

impl core::fmt::Display for Source {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.title)?;
        for part in [self.edition, self.locator] {
            if !part.is_empty() {
                write!(f, ", {part}")?;
            }
        }
        match self.standing {
            Standing::Read | Standing::CommonPractice => Ok(()),
            other => write!(f, " ({})", other.words()),
        }
    }
}
