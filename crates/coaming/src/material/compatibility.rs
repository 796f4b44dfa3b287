//! Families of materials against chemicals, adhesives and neighbours. What no row says is not known.

use super::agent::{Agent, Family};
use super::compatibility_table::TABLES;
use crate::prelude::*;

/// The verdict of a row. There is no bare yes: every row carries the condition it holds under.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Choice)]
#[non_exhaustive]
pub enum Compatibility {
    /// No harm is reported under the condition of the row.
    Ok,
    /// Harm is reported: use something else.
    Avoid,
    /// Harm depends on product, stress and temperature: bend a strip over a former, wet it, watch for cracks.
    TestOnAStressedStrip,
}

/// One row of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CompatibilityRow {
    /// What is acted on.
    pub family: Family,
    /// What acts on it.
    pub agent: Agent,
    /// The verdict.
    pub verdict: Compatibility,
    /// The condition of an `ok`, or the harm, in one sentence.
    pub reason: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// The row for a family and an agent; `None` where nothing is known, which is not a yes.
pub fn compatibility(family: Family, agent: Agent) -> Option<&'static CompatibilityRow> {
    compatibility_rows().find(|row| row.family == family && row.agent == agent)
}

/// All rows, in the order of the table.
pub fn compatibility_rows() -> impl Iterator<Item = &'static CompatibilityRow> {
    TABLES.into_iter().flatten()
}
