//! Printed nylon in damp air: whether it is counted as stiff as it was dry.

use coaming::material::Family;
use coaming::prelude::*;

use crate::amount::{Amount, Measure, Phrase};
use crate::checks::{Check, Subject, name};
use crate::demand::{Demand, NotChecked, Origin, Ruling};
use crate::document::LoadKind;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The check of damp nylon.
pub(in crate::checks) const CHECKS: &[Check] = &[Check {
    key: "damp_stiffness",
    title: "Stiffness of nylon in damp air",
    case: Some(LoadKind::Hot),
    subjects: |prepared| {
        let nylon = |layer: &&crate::document::Layer| {
            prepared.material_of(layer).map_or(true, |material| is_nylon(material.family))
        };
        prepared.cover.layers.iter().filter(nylon).map(|layer| vec![layer.name.clone()]).collect()
    },
    demand: damp,
}];

fn is_nylon(family: Option<Family>) -> bool {
    matches!(family, Some(Family::Polyamide6 | Family::Polyamide12))
}

/// Above this relative humidity a nylon is no longer dry: common practice.
const DRY: f64 = 0.2;

fn damp(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let path = format!("layers.{}.material", layer.name);
    let material = prepared.material_of(layer)?;
    let mut sheet = Worksheet::new();
    let humidity = prepared.humidity(LoadKind::Hot, &layer.name)?;
    sheet.note("humidity", humidity, Measure::Percent);
    let counted = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let stands = Amount { si: humidity, measure: Measure::Percent };
    // The record of the same nylon in the other state, where the table holds one.
    let conditioned = material
        .key
        .strip_suffix("_dry")
        .and_then(|stem| coaming::material::find(&format!("{stem}_conditioned")).ok());
    let (finds, ruling) = match (&conditioned, material.key.ends_with("_conditioned")) {
        _ if humidity <= DRY => (Phrase::with("dry air, at {}", [stands]), Ruling::Holds),
        (Some(other), _) => {
            let soft = sheet.property(other, "youngs_modulus", &other.youngs_modulus)?;
            let words = format!("count with {}, or take a plastic that takes up little water", other.key);
            sheet.advise(path, words);
            let modulus = |si| Amount { si, measure: Measure::STRESS };
            let words = "counted as dry, {}; at {} it has about {}";
            (Phrase::with(words, [modulus(counted.value), stands, modulus(soft.value)]), Ruling::Broken)
        }
        (None, true) => (Phrase::with("counted as conditioned, at {}", [stands]), Ruling::Holds),
        (None, false) if material.family == Some(Family::Polyamide12) => {
            sheet.say("Polyamide 12 takes up little water; its record is of parts as they lie in a room.");
            (Phrase::with("takes up little water, at {}", [stands]), Ruling::Holds)
        }
        (None, false) => {
            sheet.advise(path, "a strip of the same print, bent after a month at that humidity");
            (Phrase::with("its stiffness at {} is not in its record", [stands]), Ruling::NeedsTest)
        }
    };
    let origin = Origin::Published(Source::common_practice("nylon is designed for as stiff as it is damp"));
    Ok(sheet.rule(finds, "the stiffness that it has when it has taken up its water", ruling, origin))
}
