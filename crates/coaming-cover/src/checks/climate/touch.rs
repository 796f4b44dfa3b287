//! A hand on a warm face.

use coaming::material::MaterialKind;
use coaming::prelude::*;
use coaming::thermal::{ContactTime, TouchMaterial, TouchTemperature};

use super::{Lined, liners, skin, sunlit};
use crate::amount::{Amount, Measure, Phrase};
use crate::demand::{Demand, NotChecked, Origin, Ruling};
use crate::document::{Face, LayerRole};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// A flag, never a pass: the shortest contact whose threshold is held is a minute, and a hand stays less or more.
pub(super) fn touch(prepared: &Prepared<'_>, side: Face) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let touched = match side {
        Face::Outer => skin(prepared)?,
        // The hand finds the innermost layer: a liner where there is one.
        Face::Inner => {
            let liner = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Liner);
            liner.map_or_else(|| skin(prepared), Ok)?
        }
    };
    let face_material = match prepared.material_of(touched)?.kind {
        MaterialKind::Metal | MaterialKind::Laminate => TouchMaterial::Metal,
        _ => TouchMaterial::Plastic,
    };
    sheet.note_words("face", Choice::name(face_material));
    let bare = sunlit(prepared, &mut sheet, Lined::Bare)?;
    let lined = match liners(prepared).next() {
        Some(_) => sunlit(prepared, &mut sheet, Lined::Lined)?,
        None => bare.clone(),
    };
    let (face_temperature, words) = match side {
        Face::Outer => {
            let warmer = bare.outer_face_temperature.value.max(lined.outer_face_temperature.value);
            (si(warmer), "outer")
        }
        Face::Inner => (lined.inner_face_temperature, "inner"),
    };
    let outcome = sheet.run(&TouchTemperature {
        face_temperature,
        face_material,
        contact_time: ContactTime::OneMinute,
    })?;
    sheet.note("burn threshold, one minute", outcome.threshold.value, Measure::TEMPERATURE);
    let face = Amount { si: face_temperature.value, measure: Measure::TEMPERATURE };
    let past = Amount { si: outcome.margin.value.abs(), measure: Measure::DIFFERENCE };
    let over = if outcome.margin.value < 0.0 { "over" } else { "below" };
    sheet.advise("layers", "a lighter colour, shade, a label, or a handle that stays cool");
    let [source] = TouchTemperature::SOURCE else {
        return Err(NotChecked::not_calculated("a burn threshold without a source"));
    };
    Ok(sheet.rule(
        Phrase::with(
            format!("the {words} face reaches {{}}, {{}} {over} the burn threshold of one minute"),
            [face, past],
        ),
        "judged by ISO 13732-1 with material and contact time",
        Ruling::NeedsTest,
        Origin::Published(*source),
    ))
}
