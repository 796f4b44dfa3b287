//! What burns: a flag that is referred, never judged.

use coaming::material::MaterialKind;
use coaming::prelude::*;

use crate::checks::{Check, Subject, whole};
use crate::demand::{Demand, Need, NotChecked, Origin, Ruling};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The check of flammability.
pub(in crate::checks) const CHECKS: &[Check] = &[Check {
    key: "flammability",
    title: "Plastics, foams and adhesives that burn",
    case: None,
    subjects: whole,
    demand: flammability,
}];

/// Every material of the cover that is on record as burning, metals apart.
fn flammability(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let cover = prepared.cover;
    let mut named: Vec<(String, String)> = Vec::new();
    for layer in &cover.layers {
        let path = format!("layers.{}.material", layer.name);
        named.push((layer.material.need(|| path.clone())?, path));
    }
    if let Some(seal) = &cover.seal {
        named.push((seal.material.need(|| "seal.material".to_owned())?, "seal.material".to_owned()));
        named.extend(seal.backing.clone().map(|backing| (backing, "seal.backing".to_owned())));
    }
    for bond in cover.bonds.iter().flatten() {
        let path = format!("bonds.{}.adhesive", bond.name);
        named.push((bond.adhesive.need(|| path.clone())?, path));
    }
    for sealant in cover.service.iter().flat_map(|service| service.sealants.iter().flatten()) {
        named.push((sealant.clone(), "service.sealants".to_owned()));
    }
    let mut sheet = Worksheet::new();
    let mut burn: Vec<String> = Vec::new();
    for (name, path) in named {
        let material = prepared.material(&name, &path)?;
        let Some(flammability) = material.flammability.filter(|_| material.kind != MaterialKind::Metal)
        else {
            continue;
        };
        let words = material.name.to_string();
        if !burn.contains(&words) {
            sheet.say(format!("{words}: {}", flammability.note));
            burn.push(words);
        }
    }
    let rule = Origin::Published(Source::common_practice("what burns near heat or people is referred"));
    let needs = "referred: nothing here judges fire";
    if burn.is_empty() {
        return Ok(sheet.rule("no material is on record as burning", needs, Ruling::Holds, rule));
    }
    sheet.advise("layers", "ask for ratings at your thickness, and whoever answers for fire");
    Ok(sheet.rule(format!("on record as burning: {}", burn.join(", ")), needs, Ruling::NeedsTest, rule))
}
