//! Inserts: whether they jack out, pull out or turn, and the plastic round them.

use coaming::fastener::{
    InsertBoss, InsertBossOutcome, InsertKind as Setting, InsertLoad, InsertLoadOutcome, InsertPullOut,
    LayerDirection,
};
use coaming::material::MaterialKind;
use coaming::prelude::*;

use crate::amount::{Amount, Measure, Phrase};
use crate::checks::movement::passed;
use crate::checks::screws::patterns;
use crate::checks::screws::service_load;
use crate::checks::screws::strength::SHEAR_SHARE;
use crate::checks::{Check, Subject, name};
use crate::demand::{Demand, Need, NotChecked, Origin, Ruling};
use crate::document::{Insert, InsertKind, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The inserts' checks.
pub(in crate::checks) const CHECKS: &[Check] = &[
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
    Check {
        key: "insert_estimate",
        title: "Insert by the shear of its plastic, an estimate",
        case: None,
        subjects: |prepared| {
            let guessed = |pattern: &&ScrewPattern| {
                let known = |insert: &Insert| insert.pull_out.is_some() && insert.torque_out.is_some();
                pattern.insert.as_ref().is_none_or(|insert| !known(insert))
            };
            let patterns = prepared.cover.screws.iter().flatten().filter(guessed);
            patterns.map(|pattern| vec![pattern.name.clone()]).collect()
        },
        demand: estimate,
    },
    Check {
        key: "insert_boss",
        title: "Plastic round the insert",
        case: None,
        subjects: patterns,
        demand: boss,
    },
    Check {
        key: "insert_hole",
        title: "Depth of the insert's hole",
        case: None,
        subjects: patterns,
        demand: hole_depth,
    },
    Check {
        key: "insert_floor",
        title: "Plastic below the insert's hole",
        case: None,
        subjects: patterns,
        demand: floor,
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

/// What lies on the insert, the path of its hole, and the hole: the bush where there is one, or the last layer before it.
pub(super) fn on_insert(
    pattern: &ScrewPattern,
    insert: &Insert,
) -> Result<(&'static str, String, Option<Length>), NotChecked> {
    let path = format!("screws.{}", pattern.name);
    match &pattern.bush {
        Some(bush) => Ok(("bore of the bush", format!("{path}.bush.bore"), bush.bore)),
        None => {
            let last = pattern.passes.iter().flatten().rfind(|passed| passed.layer != insert.layer);
            let last = last.ok_or_else(|| NotChecked::needs(format!("{path}.passes")))?;
            let lever = format!("{path}.passes.{}.hole", last.layer);
            Ok(("hole in the clamped part", lever, passed(pattern, &last.layer)?.hole))
        }
    }
}

/// True where what is clamped bears on the insert itself: the insert is flush, and larger than the hole above it.
pub(super) fn bears(
    pattern: &ScrewPattern,
    insert: &Insert,
    hole: Option<Length>,
    sheet: &mut Worksheet,
) -> Result<bool, NotChecked> {
    let path = format!("screws.{}.insert", pattern.name);
    let (what, lever, _) = on_insert(pattern, insert)?;
    let hole = sheet.given(what, lever, hole)?;
    let outside = outside(insert, &path, sheet)?;
    let flush = insert.flush.need(|| format!("{path}.flush"))?;
    sheet.note_words("insert", if flush { "flush, or proud" } else { "below the face" });
    Ok(flush && hole < outside)
}

fn outside(insert: &Insert, path: &str, sheet: &mut Worksheet) -> Result<Length, NotChecked> {
    let label = "outside diameter of the insert";
    sheet.given(label, format!("{path}.outside_diameter"), insert.outside_diameter)
}

fn jack_out(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (pattern, insert, path) = insert(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let outside = outside(insert, &format!("{path}.insert"), &mut sheet)?;
    let (what, lever, hole) = on_insert(pattern, insert)?;
    let hole = sheet.given(what, lever, hole)?;
    if hole >= outside {
        // The hole may have to be as large as it is for the layer to float.
        sheet.cure(
            format!("{path}.insert.outside_diameter"),
            Amount::of(outside),
            Amount::of(hole),
            "an insert larger than the hole, or a shoulder bush that bears on it",
        );
    }
    sheet.reckon("the hole in what lies on the insert is compared with the insert's outside diameter");
    let origin =
        Origin::Published(Source::common_practice("the hole in the clamped part is smaller than the insert"));
    Ok(sheet.at_most(hole.value, Measure::LENGTH, outside.value.next_down(), origin))
}

/// Pull and torque on an insert that holds so much.
fn load(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    insert: &Insert,
    (pull_out, torque_out): (Force, Torque),
    sheet: &mut Worksheet,
) -> Result<InsertLoadOutcome, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let (what, lever, hole) = on_insert(pattern, insert)?;
    let clamped_hole_diameter = sheet.given(what, lever, hole)?;
    let bears_on_insert = bears(pattern, insert, hole, sheet)?;
    let insert_diameter = outside(insert, &format!("{path}.insert"), sheet)?;
    let tightening_torque = sheet.given("tightening torque", format!("{path}.torque"), pattern.torque)?;
    let preload = service_load::preload(pattern, sheet)?.largest_preload;
    let (pull, _) = service_load::worst(prepared, pattern, sheet)?;
    let (factor, _) = prepared.limits.insert_factor();
    sheet.note("factor on what it holds", factor, Measure::Number);
    let outcome = sheet.run(&InsertLoad {
        pull_out,
        torque_out,
        factor,
        insert_diameter,
        clamped_hole_diameter,
        bears_on_insert,
        preload,
        service_pull: si(pull),
        tightening_torque,
    })?;
    sheet.note("pull on the insert", outcome.pull.value, Measure::FORCE);
    sheet.say(match bears_on_insert {
        true => "What is clamped bears on the insert: the preload closes on its face, and the pull in service alone draws at the plastic. Pull-test a sample insert.",
        false => "What is clamped does not bear on the insert: greatest preload and pull in service draw at the plastic for good. Pull-test a sample insert.",
    });
    Ok(outcome)
}

/// What one insert must hold in newtons: the factor on what pulls at it.
fn factored(prepared: &Prepared<'_>, outcome: &InsertLoadOutcome) -> f64 {
    prepared.limits.insert_factor().0 * outcome.pull.value
}

/// What one insert of a pattern must hold in newtons, and whether what is clamped bears on it: for the row and for the bench.
pub(crate) fn insert_pull_due(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
) -> Result<(f64, bool), NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let insert = pattern.insert.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.insert")))?;
    let mut sheet = Worksheet::new();
    // What it holds has no part in what it must hold.
    let any = (newton(1.0), newton_meter(1.0));
    let outcome = load(prepared, pattern, insert, any, &mut sheet)?;
    let (_, _, hole) = on_insert(pattern, insert)?;
    let bears = bears(pattern, insert, hole, &mut sheet)? && !outcome.jacks_out;
    Ok((factored(prepared, &outcome), bears))
}

fn pull_out(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (pattern, insert, path) = insert(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let strength = sheet.given("maker's pull-out", format!("{path}.insert.pull_out"), insert.pull_out)?;
    // Turning has a row of its own.
    let any = newton_meter(1.0);
    let outcome = load(prepared, pattern, insert, (strength, any), &mut sheet)?;
    let due = factored(prepared, &outcome);
    if due > strength.value {
        sheet.advise(
            format!("{path}.insert.pull_out"),
            "a larger insert, one on which the clamped part bears, or less torque",
        );
    }
    Ok(sheet.at_most(due, Measure::FORCE, strength.value, Origin::Maker(format!("{path}.insert.pull_out"))))
}

fn torque_out(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (pattern, insert, path) = insert(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let at = format!("{path}.insert.torque_out");
    let strength = sheet.given("maker's torque-out", at.clone(), insert.torque_out)?;
    let torque = sheet.given("tightening torque", format!("{path}.torque"), pattern.torque)?;
    let (factor, _) = prepared.limits.insert_factor();
    sheet.note("factor on what it holds", factor, Measure::Number);
    sheet.reckon("factor × tightening torque is compared with the maker's torque-out");
    sheet.advise(format!("{path}.torque"), "less torque, or a larger insert");
    Ok(sheet.at_most(factor * torque.value, Measure::TORQUE, strength.value, Origin::Maker(at)))
}

/// What the shear of the plastic on the insert's cylinder would hold at the most: it can tell that an insert fails,
/// never that it passes.
fn estimate(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (pattern, insert, path) = insert(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let layer = prepared.layer(&insert.layer)?;
    let material = prepared.material_of(layer)?;
    let shear_strength: Pressure = match &material.shear_strength {
        Some(_) => sheet.property(&material, "shear_strength", &material.shear_strength)?,
        None => {
            sheet.say("The shear strength of the plastic is taken as 0.577 of its tensile strength.");
            let tensile = match &material.ultimate_strength {
                None if material.yield_strength.is_some() => {
                    sheet.property(&material, "yield_strength", &material.yield_strength)?
                }
                known => sheet.property(&material, "ultimate_strength", known)?,
            };
            tensile * SHEAR_SHARE
        }
    };
    let insert_path = format!("{path}.insert");
    let insert_diameter = outside(insert, &insert_path, &mut sheet)?;
    let insert_length =
        sheet.given("length of the insert", format!("{insert_path}.thread_length"), insert.thread_length)?;
    let cylinder =
        sheet.run(&InsertPullOut { shear_strength, insert_diameter, insert_length, reduction: 1.0 })?;
    sheet.note("shears out at the most at", cylinder.pull_out.value, Measure::FORCE);
    sheet.note("turns at the most at", cylinder.torque_out.value, Measure::TORQUE);
    let outcome = load(prepared, pattern, insert, (cylinder.pull_out, cylinder.torque_out), &mut sheet)?;
    let (pull, torque) = (outcome.pull_out_utilisation, outcome.torque_out_utilisation);
    sheet.advise(
        format!("{insert_path}.pull_out"),
        "the maker's figures for this plastic, a larger insert, or one on which the clamped part bears",
    );
    let share = |si| Amount { si, measure: Measure::Percent };
    let finds = Phrase::with(
        "with the factor, {} of the pull and {} of the torque that would shear it out",
        [share(pull), share(torque)],
    );
    let ruling = if pull > 1.0 || torque > 1.0 { Ruling::Broken } else { Ruling::NeedsTest };
    let origin = Origin::Published(Source::common_practice(
        "shear of the plastic on the insert's cylinder: an upper bound, no strength",
    ));
    Ok(sheet.rule(finds, "the maker's figures, or a pull test of a sample", ruling, origin))
}

/// The boss of an insert: what there is of plastic round and below it.
fn around(
    prepared: &Prepared<'_>,
    subject: &Subject,
    sheet: &mut Worksheet,
) -> Result<InsertBossOutcome, NotChecked> {
    let (pattern, insert, path) = insert(prepared, subject)?;
    let path = format!("{path}.insert");
    let kind = match insert.kind.need(|| format!("{path}.kind"))? {
        InsertKind::MouldedIn => Setting::MouldedIn,
        InsertKind::HeatSet => Setting::HeatSet,
        InsertKind::PressedIn => Setting::PressIn,
        InsertKind::SelfTapping => Setting::SelfTapping,
        InsertKind::RivetNut => {
            return Err(NotChecked::not_calculated("the sheet round a rivet nut: see the nut maker's sheet"));
        }
    };
    sheet.note_words("insert", Choice::name(kind).replace('_', " "));
    let layer = prepared.layer(&insert.layer)?;
    let layer_direction = match prepared.material_of(layer)?.kind {
        MaterialKind::PrintedPlastic => insert.printed_layers.need(|| format!("{path}.printed_layers"))?,
        _ => LayerDirection::NotLayered,
    };
    sheet.note_words("printed layers", Choice::name(layer_direction).replace('_', " "));
    let size = pattern.size.need(|| format!("screws.{}.size", pattern.name))?;
    let edge = sheet.given(
        "centre of the insert to the edge",
        format!("{path}.edge_distance"),
        insert.edge_distance,
    )?;
    let insert_diameter = outside(insert, &path, sheet)?;
    let insert_length =
        sheet.given("length of the insert", format!("{path}.thread_length"), insert.thread_length)?;
    let hole_diameter =
        sheet.given("hole before setting", format!("{path}.hole_diameter"), insert.hole_diameter)?;
    let hole_depth = sheet.given("depth of the hole", format!("{path}.hole_depth"), insert.hole_depth)?;
    let part_depth = sheet.given(
        &format!("thickness of {}", layer.name),
        format!("layers.{}.thickness", layer.name),
        layer.thickness,
    )?;
    let outcome = sheet.run(&InsertBoss {
        kind,
        layer_direction,
        screw_diameter: size.nominal_diameter(),
        insert_diameter,
        insert_length,
        hole_diameter,
        hole_depth,
        part_depth,
        boss_diameter: edge * 2.0,
        // The thread that the screw engages has a row of its own.
        engagement: insert_length,
        required_boss_ratio: prepared.limits.insert_boss().0.max(f64::MIN_POSITIVE),
        required_wall: insert_diameter,
        required_room_below: si(prepared.limits.insert_room().0),
        required_floor: si(prepared.limits.insert_floor().0),
        required_engagement_ratio: 1.0,
    })?;
    sheet.note("wall round the hole", outcome.wall.value, Measure::LENGTH);
    sheet.note("insert larger than its hole by", outcome.interference.value, Measure::LENGTH);
    Ok(outcome)
}

fn boss(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let outcome = around(prepared, subject, &mut sheet)?;
    let (limit, origin) = practice(prepared.limits.insert_boss());
    sheet.at("twice the distance to the edge, over the insert's diameter");
    let lever = format!("screws.{}.insert.edge_distance", name(subject, 0)?);
    sheet.advise(lever, "inserts further from the edge, a wider frame, or smaller inserts");
    Ok(sheet.at_least(outcome.boss_ratio, Measure::Number, limit, origin))
}

fn hole_depth(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let outcome = around(prepared, subject, &mut sheet)?;
    let (limit, origin) = practice(prepared.limits.insert_room());
    sheet.at("room below the insert");
    deeper(prepared, subject, limit - outcome.room_below.value, &mut sheet)?;
    Ok(sheet.at_least(outcome.room_below.value, Measure::LENGTH, limit, origin))
}

fn deeper(
    prepared: &Prepared<'_>,
    subject: &Subject,
    by: f64,
    sheet: &mut Worksheet,
) -> Result<(), NotChecked> {
    let (_, insert, path) = insert(prepared, subject)?;
    if let Some(depth) = insert.hole_depth.filter(|_| by > 0.0) {
        let to: Length = si(depth.value + by);
        let words = "a deeper hole, for the plastic that the insert pushes ahead of it and for the screw";
        sheet.cure(format!("{path}.insert.hole_depth"), Amount::of(depth), Amount::of(to), words);
    }
    Ok(())
}

fn floor(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let outcome = around(prepared, subject, &mut sheet)?;
    let (limit, origin) = practice(prepared.limits.insert_floor());
    let (_, insert, _) = insert(prepared, subject)?;
    let layer = prepared.layer(&insert.layer)?;
    if let Some(thickness) = layer.thickness.filter(|_| outcome.floor.value < limit) {
        let to: Length = si(thickness.value + limit - outcome.floor.value);
        let words = "a thicker part, or a shallower hole with a shorter screw";
        let lever = format!("layers.{}.thickness", layer.name);
        sheet.cure(lever, Amount::of(thickness), Amount::of(to), words);
    }
    sheet.say(
        "A hole that goes through is open to the bay: seal it, and give the floor as a limit of your own.",
    );
    Ok(sheet.at_least(outcome.floor.value, Measure::LENGTH, limit, origin))
}
