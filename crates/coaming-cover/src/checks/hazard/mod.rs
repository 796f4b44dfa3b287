//! The hazard behind the cover, and the guard that covers it.

pub(super) mod flammability;

use coaming::prelude::*;

use crate::checks::{Check, Subject, whole};
use crate::demand::{Demand, Need, NotChecked, Origin, Ruling};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The checks of the hazard.
pub(super) const CHECKS: &[Check] = &[Check {
    key: "guard",
    title: "Guard of the hazard behind the cover",
    case: None,
    subjects: whole,
    demand: guard,
}];

fn guard(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let hazard = prepared.cover.hazard.as_ref().ok_or_else(|| NotChecked::needs("hazard"))?;
    let mut sheet = Worksheet::new();
    let description = hazard.description.need(|| "hazard.description".to_owned())?;
    sheet.note_words("hazard", description);
    let guard = hazard.guard.need(|| "hazard.guard".to_owned())?;
    sheet.note_words("guard", guard);
    let needs_tool = hazard.guard_needs_tool.need(|| "hazard.guard_needs_tool".to_owned())?;
    sheet.say("A cover that opens without a tool is never a fixed guard (ISO 14120). Over a hazard it is a movable guard that needs interlocking (ISO 14119) and distance (ISO 13855, ISO 13857), decided by a risk assessment (ISO 12100).");
    sheet.advise(
        "hazard.guard_needs_tool",
        "a guard of its own behind the cover that needs a tool, or interlocking",
    );
    let (finds, ruling) = if needs_tool {
        ("the hazard has a fixed guard of its own that needs a tool", Ruling::Holds)
    } else {
        ("the hazard's guard opens without a tool", Ruling::Broken)
    };
    let source =
        Source { title: "ISO 14120", edition: "2015", locator: "fixed guards", standing: Standing::Memory };
    Ok(sheet.rule(
        finds,
        "a fixed guard behind a cover that opens without a tool",
        ruling,
        Origin::Published(source),
    ))
}
