//! Inserts: whether they jack out, pull out or turn.

use coaming::prelude::*;

use super::movement::passed;
use super::{Check, Subject, fasteners::patterns, name};
use crate::amount::{Amount, Measure};
use crate::demand::{Demand, NotChecked, Origin};
use crate::document::{Insert, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The inserts' checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "insert_jack_out",
        title: "Insert against jacking out",
        case: None,
        subjects: patterns,
        demand: jack_out,
    },
    Check {
        key: "insert_pull_out",
        title: "Insert pull-out",
        case: None,
        subjects: patterns,
        demand: pull_out,
    },
    Check {
        key: "insert_torque_out",
        title: "Insert against turning",
        case: None,
        subjects: patterns,
        demand: torque_out,
    },
];

/// The insert of a pattern.
fn insert<'a>(
    prepared: &Prepared<'a>,
    subject: &Subject,
) -> Result<(&'a ScrewPattern, &'a Insert, String), NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let path = format!("screws.{}", pattern.name);
    let insert = pattern.insert.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.insert")))?;
    Ok((pattern, insert, path))
}

fn jack_out(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (pattern, insert, path) = insert(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let outside = sheet.given(
        "outside diameter of the insert",
        format!("{path}.insert.outside_diameter"),
        insert.outside_diameter,
    )?;
    // The part that lies on the insert: the bush where there is one, or the last layer before it.
    let (what, lever, hole) = match &pattern.bush {
        Some(bush) => {
            sheet.say("The shoulder bush lies on the insert; its bore clears the screw alone.");
            let size = pattern.size.ok_or_else(|| NotChecked::needs(format!("{path}.size")))?;
            let bore = Some(size.nominal_diameter());
            ("bore of the bush, at least the screw", format!("{path}.bush.{}", bush.layer), bore)
        }
        None => {
            let last = pattern.passes.iter().flatten().rfind(|passed| passed.layer != insert.layer);
            let last = last.ok_or_else(|| NotChecked::needs(format!("{path}.passes")))?;
            let lever = format!("{path}.passes.{}.hole", last.layer);
            ("hole in the clamped part", lever, passed(pattern, &last.layer)?.hole)
        }
    };
    let hole = sheet.given(what, lever.clone(), hole)?;
    if hole >= outside {
        sheet.cure(
            lever,
            Amount::of(hole),
            Amount::of(outside),
            "a hole smaller than the insert, so that the clamped part bears on it",
        );
    }
    sheet.reckon("the hole in what lies on the insert is compared with the insert's outside diameter");
    let origin =
        Origin::Published(Source::common_practice("the hole in the clamped part is smaller than the insert"));
    Ok(sheet.at_most(hole.value, Measure::LENGTH, outside.value.next_down(), origin))
}

fn pull_out(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (pattern, insert, path) = insert(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let strength = sheet.given("maker's pull-out", format!("{path}.insert.pull_out"), insert.pull_out)?;
    let torque = sheet.given("tightening torque", format!("{path}.torque"), pattern.torque)?;
    let nut_factor = sheet.number("nut factor", format!("{path}.nut_factor"), pattern.nut_factor)?;
    let size = pattern.size.ok_or_else(|| NotChecked::needs(format!("{path}.size")))?;
    let preload = torque.value / (nut_factor * size.nominal_diameter().value);
    sheet.note("preload, T/(K d)", preload, Measure::FORCE);
    sheet.say("Preload alone; the service load that the joint adds is not yet part of this row. Pull-test a sample insert.");
    let (factor, origin) = practice(prepared.limits.insert_factor());
    sheet.note("factor", factor, Measure::Number);
    sheet.reckon("preload = T/(K d); factor × preload is compared with the maker's pull-out");
    sheet.advise(format!("{path}.torque"), "less torque, or a larger insert");
    Ok(sheet.at_most(factor * preload, Measure::FORCE, strength.value, origin))
}

fn torque_out(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (pattern, insert, path) = insert(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let strength =
        sheet.given("maker's torque-out", format!("{path}.insert.torque_out"), insert.torque_out)?;
    let torque = sheet.given("tightening torque", format!("{path}.torque"), pattern.torque)?;
    let (factor, origin) = practice(prepared.limits.insert_factor());
    sheet.note("factor", factor, Measure::Number);
    sheet.reckon("factor × tightening torque is compared with the maker's torque-out");
    sheet.advise(format!("{path}.torque"), "less torque, or a larger insert");
    Ok(sheet.at_most(factor * torque.value, Measure::TORQUE, strength.value, origin))
}
