//! Strength of the screws: while they are tightened, and with what they carry in service.

use coaming::fastener::{
    CountersunkStandard, HeadBearing, HeadLoadability, ScrewStrength, ScrewStrengthOutcome, TensionAndShear,
    ThreadDesignation, ThreadStripping, TighteningTorque,
};
use coaming::material::MaterialKind;
use coaming::prelude::*;

use crate::amount::{Amount, Measure};
use crate::checks::movement::passed;
use crate::checks::screws::service_load;
use crate::checks::screws::{passes_that, patterns};
use crate::checks::{Check, Subject, name};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin};
use crate::document::{LayerRole, LoadKind, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// Shear strength of a ductile screw over its tensile strength, by the shear-strain-energy rule.
pub(super) const SHEAR_SHARE: f64 = 0.577;
/// Share of the yield strength that tightening may use (VDI 2230-1, recalled, unverified).
const TIGHTENING_SHARE: f64 = 0.9;

/// The checks of strength.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "screw_tightening",
        title: "Screw while it is tightened",
        case: None,
        subjects: patterns,
        demand: tightening,
    },
    Check {
        key: "screw_pull_lean",
        title: "Most loaded screw under a hand",
        case: Some(LoadKind::Lean),
        subjects: patterns,
        demand: |prepared, subject| pulled(prepared, subject, service_load::lean),
    },
    Check {
        key: "screw_pull_wind",
        title: "Screw in wind that pulls its pane away",
        case: Some(LoadKind::WindIn),
        subjects: patterns,
        demand: |prepared, subject| pulled(prepared, subject, service_load::wind),
    },
    Check {
        key: "screw_shake",
        title: "Screw shaken, pull and shear together",
        case: Some(LoadKind::AccelerationZ),
        subjects: patterns,
        demand: shaken,
    },
    Check {
        key: "screw_stripping",
        title: "Thread stripped from its insert",
        case: None,
        subjects: patterns,
        demand: stripping,
    },
    Check {
        key: "head_bearing",
        title: "Pressure under a head that stands on the surface",
        case: None,
        subjects: |prepared| {
            let flat = prepared.cover.screws.iter().flatten().filter(|pattern| pattern.flat_head.is_some());
            flat.filter_map(|pattern| {
                let first = pattern.passes.iter().flatten().next()?;
                Some(vec![pattern.name.clone(), first.layer.clone()])
            })
            .collect()
        },
        demand: bearing,
    },
    Check {
        key: "screw_pitch",
        title: "Pitch of the screws along a sheet that warms",
        case: Some(LoadKind::Sun),
        subjects: |prepared| {
            let skin = |subject: &Subject| {
                let layer = subject.get(1).and_then(|layer| prepared.layer(layer).ok());
                layer.is_some_and(|layer| layer.role == LayerRole::Skin)
            };
            passes_that(prepared, |_| true).into_iter().filter(skin).collect()
        },
        demand: pitch,
    },
];

/// The thread of a pattern: the coarse one of its size.
pub(super) fn thread(pattern: &ScrewPattern, sheet: &mut Worksheet) -> Result<ThreadDesignation, NotChecked> {
    let size = pattern.size.need(|| format!("screws.{}.size", pattern.name))?;
    let name = Choice::name(size);
    sheet.note_words("thread", format!("{name}, coarse"));
    ThreadDesignation::from_name(name).ok_or_else(|| {
        NotChecked::not_calculated(format!("the thread of a {name} screw: its size does not name the pitch"))
    })
}

pub(super) fn strength(
    pattern: &ScrewPattern,
    sheet: &mut Worksheet,
) -> Result<ScrewStrengthOutcome, NotChecked> {
    let strength_class = pattern.strength_class.need(|| format!("screws.{}.strength_class", pattern.name))?;
    sheet.note_words("strength class", Choice::name(strength_class));
    let head_loadability = match pattern.countersunk_head {
        Some(CountersunkStandard::Iso10642) => HeadLoadability::Reduced,
        _ => HeadLoadability::Full,
    };
    let thread = thread(pattern, sheet)?;
    let outcome = sheet.run(&ScrewStrength { strength_class, thread, head_loadability })?;
    sheet.note("stress area", outcome.stress_area.value, Measure::of::<Area>());
    sheet.note("yield strength or 0.2 % stress", outcome.yield_strength.value, Measure::STRESS);
    Ok(outcome)
}

/// Equivalent stress of the greatest preload and the torsion of its thread, against nine tenths of the yield strength.
fn tightening(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let path = format!("screws.{}", pattern.name);
    let mut sheet = Worksheet::new();
    let strength = strength(pattern, &mut sheet)?;
    let preload = service_load::preload(pattern, &mut sheet)?;
    let friction =
        sheet.number("friction in the thread", format!("{path}.thread_friction"), pattern.thread_friction)?;
    let size = pattern.size.need(|| format!("{path}.size"))?.nominal_diameter();
    // The head's own friction turns the head and not the shank: its face is no part of the stress.
    let thread = thread(pattern, &mut sheet)?;
    let outcome = sheet.run(&TighteningTorque {
        thread,
        preload: preload.largest_preload,
        thread_friction: friction,
        head_friction: friction,
        bearing_outer_diameter: size * 2.0,
        bearing_inner_diameter: size,
        seat_half_angle: deg(90.0),
        prevailing_torque: si(0.0),
    })?;
    sheet.note("tension", outcome.tensile_stress.value, Measure::STRESS);
    sheet.note("torsion", outcome.torsional_stress.value, Measure::STRESS);
    sheet.advise(format!("{path}.torque"), "less torque, a stronger class, or a larger screw");
    let limit = TIGHTENING_SHARE * strength.yield_strength.value;
    let origin = Origin::Published(Source {
        title: "VDI 2230-1",
        edition: "2015",
        locator: "nine tenths of the yield strength while tightening",
        standing: Standing::Memory,
    });
    Ok(sheet.at_most(outcome.equivalent_stress.value, Measure::STRESS, limit, origin))
}

type Pull = fn(&Prepared<'_>, &ScrewPattern, &mut Worksheet) -> Result<f64, NotChecked>;

pub(super) fn class(pattern: &ScrewPattern) -> Origin {
    Origin::Design(format!("yield load of screws.{}.strength_class", pattern.name))
}

/// Greatest preload with the whole pull on top, as if the layers gave nothing.
fn pulled(prepared: &Prepared<'_>, subject: &Subject, pull: Pull) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let strength = strength(pattern, &mut sheet)?;
    let preload = service_load::preload(pattern, &mut sheet)?;
    let pull = pull(prepared, pattern, &mut sheet)?;
    sheet.say("The parts that the screws join are taken as rigid, and the whole pull is laid on top of the preload.");
    sheet.advise(format!("screws.{}.count", pattern.name), "more or larger screws, or less preload");
    let force = preload.largest_preload.value + pull;
    Ok(sheet.at_most(force, Measure::FORCE, strength.yield_load.value, class(pattern)))
}

fn shaken(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    let strength = strength(pattern, &mut sheet)?;
    let preload = service_load::preload(pattern, &mut sheet)?;
    let (pull, shear) = service_load::shake(prepared, pattern, &mut sheet)?;
    let outcome = sheet.run(&TensionAndShear {
        tension: preload.largest_preload + si(pull),
        allowed_tension: strength.yield_load,
        shear: si(shear),
        allowed_shear: strength.yield_load * SHEAR_SHARE,
    })?;
    sheet.note("tension over what it may carry", outcome.tension_ratio, Measure::Percent);
    sheet.note("shear over what it may carry", outcome.shear_ratio, Measure::Percent);
    sheet.say("Friction of the clamp carries the shear first; here the screw carries it all.");
    sheet.at("its share in pull squared and its share in shear cubed, together");
    sheet.advise(format!("screws.{}.count", pattern.name), "more or larger screws, or less preload");
    Ok(sheet.at_most(outcome.interaction, Measure::Number, 1.0, class(pattern)))
}

/// Greatest preload and largest pull against what strips screw or insert.
fn stripping(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let path = format!("screws.{}", pattern.name);
    let mut sheet = Worksheet::new();
    let insert = pattern.insert.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.insert")))?;
    let insert_path = format!("{path}.insert.material");
    let material = prepared.material(&insert.material.need(|| insert_path.clone())?, &insert_path)?;
    let internal = sheet.property(&material, "shear_strength", &material.shear_strength)?;
    let strength = strength(pattern, &mut sheet)?;
    let preload = service_load::preload(pattern, &mut sheet)?;
    let (pull, _) = service_load::worst(prepared, pattern, &mut sheet)?;
    let screw = crate::checks::screws::screw(prepared, subject, &mut sheet)?;
    let load = preload.largest_preload.value + pull;
    let thread = thread(pattern, &mut sheet)?;
    let outcome = sheet.run(&ThreadStripping {
        thread,
        engagement: screw.smallest_engagement,
        external_shear_strength: strength.tensile_strength * SHEAR_SHARE,
        internal_shear_strength: internal,
        screw_load: si(load),
        nut_width: None,
    })?;
    sheet.note("strips the screw", outcome.external_strip_force.value, Measure::FORCE);
    sheet.note("strips the insert", outcome.internal_strip_force.value, Measure::FORCE);
    sheet.advise(format!("{path}.length"), "more engagement");
    let weaker = outcome.external_strip_force.value.min(outcome.internal_strip_force.value);
    Ok(sheet.at_most(load, Measure::FORCE, weaker, Origin::Design(format!("engaged thread of {path}"))))
}

fn bearing(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let path = format!("screws.{}", pattern.name);
    let mut sheet = Worksheet::new();
    let standard = pattern.flat_head.need(|| format!("{path}.flat_head"))?;
    let size = pattern.size.need(|| format!("{path}.size"))?;
    let hole = passed(pattern, &layer.name)?.hole;
    let hole = sheet.given("hole", format!("{path}.passes.{}.hole", layer.name), hole)?;
    let preload = service_load::preload(pattern, &mut sheet)?;
    let (pull, _) = service_load::worst(prepared, pattern, &mut sheet)?;
    let material = prepared.material_of(layer)?;
    let (limit, property) = match material.kind {
        MaterialKind::Metal => (
            sheet.property(&material, "compressive_yield_strength", &material.compressive_yield_strength)?,
            "compressive_yield_strength",
        ),
        _ => {
            sheet.say("A head presses for good; the sustained limit in tension is taken, which is on the safe side.");
            (sheet.property(&material, "sustained_stress", &material.sustained_stress)?, "sustained_stress")
        }
    };
    let outcome = sheet.run(&HeadBearing {
        standard,
        size,
        bearing_outer_diameter: None,
        bearing_inner_diameter: hole,
        force: preload.largest_preload + si(pull),
        pressure_limit: limit,
    })?;
    if outcome.dimension_unverified {
        sheet.unverified(&format!("bearing face of {} {}", Choice::name(standard), Choice::name(size)));
    }
    sheet.advise(format!("{path}.flat_head"), "a wider head or washer, or less torque");
    let origin = Origin::Design(format!("materials.{}.{property}", material.key));
    Ok(sheet.at_most(outcome.pressure.value, Measure::STRESS, limit.value, origin))
}

/// Pitch of the screws over the thickness of the sheet, which waves between screws that are further apart.
fn pitch(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = prepared.layer(name(subject, 1)?)?;
    let path = format!("screws.{}", pattern.name);
    let mut sheet = Worksheet::new();
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let positions =
        pattern.positions.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.positions")))?;
    let count = pattern.count.need(|| format!("{path}.count"))?;
    let pitch = positions.longest_pitch(count).ok_or_else(|| {
        NotChecked::not_calculated(format!("the pitch of {count} screws on a rectangle; give them as points"))
    })?;
    sheet.note("longest pitch", pitch, Measure::LENGTH);
    let (limit, origin) = practice(prepared.limits.screw_pitch_fail());
    let (pass, _) = prepared.limits.screw_pitch_pass();
    let ratio = pitch / thickness.value;
    if ratio > limit {
        let length = |si| Amount { si, measure: Measure::LENGTH };
        sheet.cure(
            format!("{path}.positions"),
            length(pitch),
            length(limit * thickness.value),
            "screws closer together, or a thicker sheet",
        );
    }
    sheet.reckon("longest pitch/thickness");
    sheet.at("pitch over thickness");
    let bound = Bound::AtMost { limit, marginal_above: Some(pass) };
    Ok(sheet.finish(Finding::Number { low: ratio, high: ratio, measure: Measure::Number, bound }, origin))
}
