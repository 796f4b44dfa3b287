//! Bonded joints: shear from mismatch, and metals beside carbon.

use coaming::material::{Exposure, galvanic_pair};
use coaming::prelude::*;

use super::{Check, Subject, name};
use crate::demand::{Demand, NotChecked, Origin, Ruling};
use crate::document::{Bond, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The bonds' checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "bond_shear",
        title: "Shear of the bond line from mismatch",
        case: Some(LoadKind::Hot),
        subjects: bonds,
        demand: |_, _| Err(NotChecked::not_calculated("shear and peel of a bond line")),
    },
    Check {
        key: "bond_galvanic",
        title: "Galvanic pair across a bond",
        case: None,
        subjects: bonds,
        demand: galvanic,
    },
];

fn bonds(prepared: &Prepared<'_>) -> Vec<Subject> {
    prepared.cover.bonds.iter().flatten().map(|bond| vec![bond.name.clone()]).collect()
}

fn bond<'a>(prepared: &Prepared<'a>, subject: &Subject) -> Result<&'a Bond, NotChecked> {
    let name = name(subject, 0)?;
    let mut bonds = prepared.cover.bonds.iter().flatten();
    bonds.find(|bond| bond.name == name).ok_or_else(|| NotChecked::needs(format!("bonds.{name}")))
}

fn galvanic(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let bond = bond(prepared, subject)?;
    let mut groups = Vec::new();
    let mut sheet = Worksheet::new();
    for layer in &bond.layers {
        let material = prepared.material_of(prepared.layer(layer)?)?;
        sheet.note_words(layer, material.name.to_string());
        groups.push(material.galvanic_group);
    }
    let rule = Origin::Published(Source::common_practice(
        "a metal and a carbon laminate are kept apart by an insulating layer",
    ));
    let needs = "a pair within its limit, or an insulating layer between";
    let (Some(Some(first)), Some(Some(second))) = (groups.first(), groups.get(1)) else {
        return Ok(sheet.rule("one of the two is no conductor", needs, Ruling::Holds, rule));
    };
    let pair = galvanic_pair(*first, *second, Exposure::Harsh)
        .ok_or_else(|| NotChecked::not_calculated("this galvanic pair is not in the table"))?;
    sheet.note_words(
        "difference",
        format!(
            "{:.2} to {:.2} V, limit {:.2} V outdoors",
            pair.difference_low, pair.difference_high, pair.limit
        ),
    );
    if pair.is_within_limit() {
        return Ok(sheet.rule(
            "a pair within its limit",
            needs,
            Ruling::Holds,
            Origin::Published(pair.source),
        ));
    }
    let insulated =
        bond.insulated.ok_or_else(|| NotChecked::needs(format!("bonds.{}.insulated", bond.name)))?;
    sheet
        .advise(format!("bonds.{}.insulated", bond.name), "a glass scrim in the bond line, and sealed edges");
    let (finds, ruling) = if insulated {
        ("a pair beyond its limit, kept apart", Ruling::Holds)
    } else {
        ("a pair beyond its limit, not kept apart", Ruling::Broken)
    };
    Ok(sheet.rule(finds, needs, ruling, Origin::Published(pair.source)))
}
