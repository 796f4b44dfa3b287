//! Bent sheet: the flat pattern, holes beside bends, flanges on the press brake.

use coaming::prelude::*;

use super::flat::{Flat, flat};
use super::{Check, Subject, layers_that, name};
use crate::amount::{Amount, Measure, Phrase};
use crate::demand::{Bound, Demand, Finding, NotChecked, Origin};
use crate::document::{Bend, Layer};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The sheet's checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "flat_pattern",
        title: "Flat pattern against its bends",
        case: None,
        subjects: bent,
        demand: flat_pattern,
    },
    Check {
        key: "hole_to_bend",
        title: "Hole beside a bend",
        case: None,
        subjects: bends,
        demand: hole_to_bend,
    },
    Check {
        key: "smallest_flange",
        title: "Flange long enough for the die",
        case: None,
        subjects: bends,
        demand: smallest_flange,
    },
];

fn bent(prepared: &Prepared<'_>) -> Vec<Subject> {
    layers_that(prepared, |layer| layer.bends.iter().flatten().next().is_some())
}

fn bends(prepared: &Prepared<'_>) -> Vec<Subject> {
    let of_layer = |layer: &Layer| -> Vec<Subject> {
        let name = layer.name.clone();
        layer
            .bends
            .iter()
            .flatten()
            .map(|bend| vec![name.clone(), Choice::name(bend.edge).to_owned()])
            .collect()
    };
    prepared.cover.layers.iter().flat_map(of_layer).collect()
}

/// The bend of a subject, with its path.
fn bend<'a>(prepared: &Prepared<'a>, subject: &Subject) -> Result<(&'a Layer, &'a Bend, String), NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let edge = name(subject, 1)?;
    let path = format!("layers.{}.bends.{edge}", layer.name);
    let mut bends = layer.bends.iter().flatten();
    let bend =
        bends.find(|bend| Choice::name(bend.edge) == edge).ok_or_else(|| NotChecked::needs(path.clone()))?;
    Ok((layer, bend, path))
}

/// General tolerance of ISO 2768-1, class m, for a length in metres; none past the table.
fn general_tolerance(length: f64) -> Option<f64> {
    const STEPS: [(f64, f64); 7] =
        [(0.003, 0.1), (0.006, 0.1), (0.03, 0.2), (0.12, 0.3), (0.4, 0.5), (1.0, 0.8), (2.0, 1.2)];
    STEPS.iter().find(|step| length <= step.0).map(|step| step.1 / 1e3)
}

const ISO_2768: Source = Source {
    title: "ISO 2768-1",
    edition: "1989",
    locator: "table 1, class m",
    standing: Standing::SecondHand,
};

fn flat_pattern(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let path = format!("layers.{}", layer.name);
    let blank = layer.blank.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.blank")))?;
    let mut sheet = Worksheet::new();
    let Flat { width, height, deduction, spread } = flat(prepared, layer, &mut sheet)?;
    sheet.note("flat width due", width, Measure::LENGTH);
    sheet.note("flat height due", height, Measure::LENGTH);
    sheet.note("flat width drawn", blank.width.value, Measure::LENGTH);
    sheet.note("flat height drawn", blank.height.value, Measure::LENGTH);
    sheet.note("by DIN 6935 instead, each deduction differs by", spread, Measure::LENGTH);
    let (off_width, off_height) = ((blank.width.value - width).abs(), (blank.height.value - height).abs());
    let off = off_width.max(off_height);
    let limit = general_tolerance(width.max(height))
        .ok_or_else(|| NotChecked::not_calculated("general tolerances above 2000 mm"))?;
    let length = |si: f64| Amount { si, measure: Measure::LENGTH };
    sheet.at(Phrase::with(
        "{} x {} drawn, {} x {} due",
        [length(blank.width.value), length(blank.height.value), length(width), length(height)],
    ));
    sheet.say("Bend a test strip of the same sheet and take its K-factor before the blanks are cut.");
    let (lever, now, to) = if off_width >= off_height {
        ("width", blank.width.value, width)
    } else {
        ("height", blank.height.value, height)
    };
    if off > limit {
        let words = deduction.map_or_else(String::new, |bd| {
            format!("deduct {} for each bend", Measure::LENGTH.shown(bd, System::Shop))
        });
        sheet.cure(format!("{path}.blank.{lever}"), length(now), length(to), words);
    }
    Ok(sheet.at_most(off, Measure::LENGTH, limit, Origin::Published(ISO_2768)))
}

fn hole_to_bend(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (layer, bend, path) = bend(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let distance =
        sheet.given("hole edge to bent-up face", format!("{path}.nearest_hole"), bend.nearest_hole)?;
    let thickness = sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
    let radius = sheet.given("inside radius", format!("{path}.inside_radius"), bend.inside_radius)?;
    let (thicknesses, origin) = practice(prepared.limits.hole_to_bend());
    let due = thicknesses * thickness.value + radius.value;
    if distance.value < due {
        let lever = format!("{path}.nearest_hole");
        sheet.cure(
            lever,
            Amount::of(distance),
            Amount::of(si::<Length>(due)),
            "move the hole away, or drill it after bending",
        );
    }
    Ok(sheet.at_least(distance.value, Measure::LENGTH, due, origin))
}

fn smallest_flange(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let (_, bend, path) = bend(prepared, subject)?;
    let mut sheet = Worksheet::new();
    let flange = sheet.given("flange", format!("{path}.flange"), bend.flange)?;
    let die = sheet.given("die opening", format!("{path}.die_opening"), bend.die_opening)?;
    let (share, origin) = practice(prepared.limits.flange_over_die());
    let due = share * die.value;
    if flange.value < due {
        let lever = format!("{path}.flange");
        sheet.cure(
            lever,
            Amount::of(flange),
            Amount::of(si::<Length>(due)),
            "longer flange, or a narrower die",
        );
    }
    let finding = Finding::Number {
        low: flange.value,
        high: flange.value,
        measure: Measure::LENGTH,
        bound: Bound::AtLeast { limit: due },
    };
    Ok(sheet.finish(finding, origin))
}
