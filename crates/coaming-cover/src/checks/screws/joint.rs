//! The joint of a screw over its life: what is left of the preload, and whether that keeps the joint closed.

use coaming::fastener::{JointLoad, JointLoadOutcome, JointMaterials, PreloadChange};
use coaming::prelude::*;

use crate::amount::Measure;
use crate::checks::screws::patterns;
use crate::checks::screws::service_load;
use crate::checks::screws::springs::{Springs, springs};
use crate::checks::screws::strength::{class, strength, thread};
use crate::checks::{Check, Subject, name};
use crate::demand::{Bound, Demand, Finding, NotChecked, Origin, Ruling};
use crate::document::{LoadKind, ScrewPattern};
use crate::prepared::Prepared;
use crate::verdict::{Verdict, verdict};
use crate::worksheet::Worksheet;

/// The checks of the joint.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "joint_closed_hot",
        title: "Preload left to keep the joint closed, hot",
        case: Some(LoadKind::Hot),
        subjects: patterns,
        demand: |prepared, subject| closed(prepared, subject, LoadKind::Hot),
    },
    Check {
        key: "joint_closed_cold",
        title: "Preload left to keep the joint closed, cold",
        case: Some(LoadKind::Cold),
        subjects: patterns,
        demand: |prepared, subject| closed(prepared, subject, LoadKind::Cold),
    },
    Check {
        key: "joint_slip",
        title: "Preload left against slipping on the road",
        case: Some(LoadKind::ClosedAfterSeason),
        subjects: patterns,
        demand: slip,
    },
    Check {
        key: "joint_screw",
        title: "Screw with warmth and pull on its preload",
        case: Some(LoadKind::Hot),
        subjects: patterns,
        demand: screw,
    },
];

/// What is left of the least preload, between the greatest and the least embedding.
struct Left {
    low: f64,
    high: f64,
    springs: Springs,
}

fn left(
    prepared: &Prepared<'_>,
    pattern: &ScrewPattern,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<Left, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let preload = service_load::preload(pattern, sheet)?.smallest_preload;
    let springs = springs(prepared, pattern, kind, sheet)?;
    let least = sheet.given("least embedding", format!("{path}.embedding_low"), pattern.embedding_low)?;
    let most = sheet.given("greatest embedding", format!("{path}.embedding_high"), pattern.embedding_high)?;
    let words = Choice::name(kind);
    let mut after = |embedding: Length| {
        sheet.run(&PreloadChange {
            preload,
            bolt_stiffness: springs.screw,
            member_stiffness: springs.clamped,
            member_stiffness_after_creep: springs.clamped_later,
            embedding,
            member_growth: springs.clamped_growth,
            bolt_growth: springs.screw_growth,
        })
    };
    let (with_least, with_most) = (after(least)?, after(most)?);
    sheet.note("loss by the least embedding", with_least.embedding_loss.value, Measure::FORCE);
    sheet.note("loss by the greatest embedding", with_most.embedding_loss.value, Measure::FORCE);
    sheet.note("loss by creep", with_most.creep_loss.value, Measure::FORCE);
    sheet.note(&format!("change by temperature, {words}"), with_most.thermal_change.value, Measure::FORCE);
    let (one, other) = (with_least.residual_preload.value, with_most.residual_preload.value);
    Ok(Left { low: one.min(other), high: one.max(other), springs })
}

/// Largest axial load and transverse load on a screw of a joint, with the outcome of each way of taking its springs.
fn loaded(
    pattern: &ScrewPattern,
    left: &Left,
    (pull, shear): (f64, f64),
    load_introduction_factor: f64,
    sheet: &mut Worksheet,
) -> Result<JointLoadOutcome, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let friction = sheet.number("least friction", format!("{path}.friction_low"), pattern.friction_low)?;
    let thread = thread(pattern, sheet)?;
    sheet.run(&JointLoad {
        thread,
        materials: JointMaterials::Other,
        bolt_stiffness: left.springs.screw,
        member_stiffness: left.springs.clamped,
        load_introduction_factor,
        smallest_preload: si(left.low),
        largest_preload: si(left.high.max(f64::MIN_POSITIVE)),
        largest_axial_load: si(pull),
        smallest_axial_load: newton(0.0),
        transverse_load: si(shear),
        friction,
        friction_faces: 1,
    })
}

/// The finding on a preload that is left, against what is needed of it.
fn enough(
    pattern: &ScrewPattern,
    left: &Left,
    needed: f64,
    origin: Origin,
    mut sheet: Worksheet,
) -> Result<Demand, NotChecked> {
    sheet.say("The least preload of the tightening, less embedding and creep; the pull is taken from the clamp whole.");
    let lever = format!("screws.{}.embedding_high", pattern.name);
    let words = match pattern.bush {
        Some(_) => "retighten once after a day, more torque, or a longer bush under a longer screw",
        None => "shoulder bushes on the inserts, retighten after a day, or a spring washer",
    };
    sheet.advise(lever, words);
    // A joint that nothing pulls at must be closed all the same.
    let bound = Bound::AtLeast { limit: needed.max(f64::MIN_POSITIVE) };
    let finding = Finding::Number { low: left.low, high: left.high, measure: Measure::FORCE, bound };
    let demand = sheet.finish(finding, origin);
    match &left.springs.at_best {
        Some(layer) if verdict(&demand.finding) != Verdict::Fail => Err(NotChecked::NotCalculated {
            what: format!("the creep of `{layer}` at its warmest is not in its record; at best"),
            shown: Some(Box::new(demand)),
        }),
        _ => Ok(demand),
    }
}

/// Preload that is left against the largest pull in service.
fn closed(prepared: &Prepared<'_>, subject: &Subject, kind: LoadKind) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let left = left(prepared, pattern, kind, &mut sheet)?;
    let (pull, _) = service_load::worst(prepared, pattern, &mut sheet)?;
    let outcome = loaded(pattern, &left, (pull, 0.0), 0.0, &mut sheet)?;
    sheet.note("clamp left under the pull", outcome.residual_clamp.value, Measure::FORCE);
    sheet.at("least preload at its worst");
    let origin = Origin::Design(format!("largest pull in service on screws.{}", pattern.name));
    enough(pattern, &left, pull, origin, sheet)
}

/// Preload that is left, hot or cold, against the pull and the shear of the road.
fn slip(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let hot = left(prepared, pattern, LoadKind::Hot, &mut sheet)?;
    let cold = left(prepared, pattern, LoadKind::Cold, &mut sheet)?;
    let left = if hot.low < cold.low { hot } else { cold };
    let road = service_load::shake(prepared, pattern, &mut sheet)?;
    let outcome = loaded(pattern, &left, road, 0.0, &mut sheet)?;
    let origin = Origin::Design(format!("pull and shear of the road on screws.{}", pattern.name));
    let holds = outcome.clamp_against_slip.map(|clamp| clamp.value);
    let Some(clamp) = holds.or((road.1 == 0.0).then_some(0.0)) else {
        let needs = "friction between the layers, or a pin that carries the shear";
        return Ok(sheet.rule("nothing rubs", needs, Ruling::Broken, origin));
    };
    sheet.note("clamp that the shear needs", clamp, Measure::FORCE);
    sheet.at("least preload at its worst, one face that rubs");
    sheet.say(
        "The most loaded screw is taken to hold its own share; past that the screws bear in their holes.",
    );
    enough(pattern, &left, road.0 + clamp, origin, sheet)
}

/// The greatest preload, fresh, with what warmth or cold adds and the whole pull on top.
fn screw(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let strength = strength(pattern, &mut sheet)?;
    let preload = service_load::preload(pattern, &mut sheet)?.largest_preload;
    let (pull, _) = service_load::worst(prepared, pattern, &mut sheet)?;
    let (mut low, mut high) = (0.0_f64, 0.0_f64);
    for kind in [LoadKind::Hot, LoadKind::Cold] {
        let springs = springs(prepared, pattern, kind, &mut sheet)?;
        let mut with = |member_stiffness_after_creep: ForcePerLength| {
            sheet.run(&PreloadChange {
                preload,
                bolt_stiffness: springs.screw,
                member_stiffness: springs.clamped,
                member_stiffness_after_creep,
                embedding: mm(0.0),
                member_growth: springs.clamped_growth,
                bolt_growth: springs.screw_growth,
            })
        };
        // Warmth comes in a day and creep in a season: what it adds lies between the layers as stiff and as soft.
        let (soft, stiff) = (with(springs.clamped_later)?, with(springs.clamped)?);
        let (one, other) = (soft.residual_preload.value, stiff.residual_preload.value);
        let words = Choice::name(kind);
        sheet.note(&format!("preload, {words}, layers as soft as after a season"), one, Measure::FORCE);
        sheet.note(&format!("preload, {words}, layers as stiff as when tightened"), other, Measure::FORCE);
        let mut left = Left { low: one, high: one, springs };
        low = low.max(loaded(pattern, &left, (pull, 0.0), 1.0, &mut sheet)?.largest_screw_force.value);
        (left.low, left.high) = (other, other);
        high = high.max(loaded(pattern, &left, (pull, 0.0), 1.0, &mut sheet)?.largest_screw_force.value);
    }
    sheet.say("Nothing is taken off for embedding.");
    sheet.advise(format!("screws.{}.torque", pattern.name), "less torque, or a stronger class");
    let bound = Bound::AtMost { limit: strength.yield_load.value, marginal_above: None };
    let finding = Finding::Number { low: low.min(high), high: high.max(low), measure: Measure::FORCE, bound };
    Ok(sheet.finish(finding, class(pattern)))
}
