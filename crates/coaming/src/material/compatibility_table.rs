//! The rows of the compatibility table, by what is acted on.

mod adhesives;
mod metals;
mod plastics;
mod rubbers;

use super::agent::{Agent, Family};
use super::compatibility::{Compatibility, CompatibilityRow};
use super::sources::{place, practice};
use crate::prelude::*;

const fn ok(family: Family, agent: Agent, reason: &'static str, source: Source) -> CompatibilityRow {
    CompatibilityRow { family, agent, verdict: Compatibility::Ok, reason, source }
}

const fn avoid(family: Family, agent: Agent, reason: &'static str, source: Source) -> CompatibilityRow {
    CompatibilityRow { family, agent, verdict: Compatibility::Avoid, reason, source }
}

const fn test(family: Family, agent: Agent, reason: &'static str, source: Source) -> CompatibilityRow {
    CompatibilityRow { family, agent, verdict: Compatibility::TestOnAStressedStrip, reason, source }
}

const fn read(title: &'static str) -> Source {
    Source { title, edition: "", locator: "", standing: Standing::Read }
}

const PC_RESISTANCE: Source = read("chemical resistance of polycarbonate sheet, supplier's note");
const PC_CLEANING: Source = read("cleaning guide for polycarbonate glazing");
const ACRYLIC_NOTE: Source = read("acrylic sheet, supplier's note on resistance");
const ACRYLIC_SEALANTS: Source = read("acrylic sheet maker's guide to glazing sealants");
const EPDM_PLASTICISERS: Source = read("acrylic and polycarbonate sheet maker's note on EPDM gaskets");
const PETG_NOTE: Source = read("PETG, page of a materials database");
const PA6_NOTE: Source = read("polyamide 6, plastics supplier's page");
const ANAEROBIC: Source = read("adhesives design guide for plastics, stress cracking");
const ANAEROBIC_THERMOSETS: Source =
    Source { edition: "2018", ..read("adhesives trade journal, answer on threadlockers in plastics") };
const D2000_CLASSES: Source = Source {
    title: "ASTM D2000",
    edition: "",
    locator: "class: swelling in oil",
    standing: Standing::SecondHand,
};
const CP: Source = practice("shop knowledge of plastics, sealants and gaskets");
const ACETIC: Source = place(CP, "acetic acid is set free while it cures");

use Agent as A;
use Family as F;

/// The whole table.
pub(super) const TABLES: [&[CompatibilityRow]; 4] =
    [plastics::ROWS, rubbers::ROWS, metals::ROWS, adhesives::ROWS];
