//! Bonded joints: shear from mismatch, and metals beside carbon.

pub(super) mod pressed_strip;
pub(super) mod sealant_joint;

use coaming::material::{Exposure, Material, galvanic_pair};
use coaming::prelude::*;
use coaming::thermal::{BondEndShear, FlexibleBondLine};

use crate::amount::{Amount, Measure, Phrase};
use crate::checks::movement::growth;
use crate::checks::{Check, Subject, name};
use crate::demand::{Demand, Need, NotChecked, Origin, Ruling};
use crate::document::{Bond, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The bonds' checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "bond_shear",
        title: "Shear of the bond line from mismatch",
        case: Some(LoadKind::Hot),
        subjects: bonds,
        demand: |prepared, subject| shear(prepared, subject, LoadKind::Hot),
    },
    Check {
        key: "bond_shear_sun",
        title: "Shear of the bond line in the sun",
        case: Some(LoadKind::Sun),
        subjects: bonds,
        demand: |prepared, subject| shear(prepared, subject, LoadKind::Sun),
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

/// Shear strain at the end of the bond line from what the two layers grow apart, by shear lag. An adhesive stiffer than
/// a tenth of a gigapascal in shear is taken as rigid.
fn shear(prepared: &Prepared<'_>, subject: &Subject, kind: LoadKind) -> Result<Demand, NotChecked> {
    let bond = bond(prepared, subject)?;
    let path = format!("bonds.{}", bond.name);
    let mut sheet = Worksheet::new();
    let mut sides = Vec::new();
    for name in &bond.layers {
        let layer = prepared.layer(name)?;
        let material = prepared.material_of(layer)?;
        let thickness = sheet.given(
            &format!("thickness of {name}"),
            format!("layers.{name}.thickness"),
            layer.thickness,
        )?;
        let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
        let strain = growth(prepared, layer, &material, kind, &mut sheet)?;
        sides.push((thickness, youngs_modulus, strain));
    }
    let [first, second] = sides.as_slice() else { return Err(NotChecked::needs(format!("{path}.layers"))) };
    let adhesive_name = bond.adhesive.need(|| format!("{path}.adhesive"))?;
    let adhesive = prepared.material(&adhesive_name, &format!("{path}.adhesive"))?;
    let shear_modulus = sheet.property(&adhesive, "shear_modulus", &adhesive.shear_modulus)?;
    let thickness = sheet.given("bond line", format!("{path}.thickness"), bond.thickness)?;
    let rigid = shear_modulus.value > 1e8;
    // A rubbery bond line gives: there the ends are not judged by peel, and its modulus across is not Young's.
    let peel_modulus = adhesive.youngs_modulus.as_ref().filter(|_| rigid).map(|figure| figure.value);
    let situation = BondEndShear {
        bond_length: sheet.given("length of the bond", format!("{path}.length"), bond.length)?,
        first_thickness: first.0,
        first_youngs_modulus: first.1,
        first_growth_strain: first.2,
        second_thickness: second.0,
        second_youngs_modulus: second.1,
        second_growth_strain: second.2,
        bond_thickness: thickness,
        bond_shear_modulus: shear_modulus,
        bond_peel_modulus: peel_modulus,
    };
    let outcome = sheet.run(&situation)?;
    sheet.note("shear stress at the end", outcome.end_shear_stress.value.abs(), Measure::STRESS);
    if let Some(peel) = outcome.end_peel_stress {
        sheet.note("peel stress at the end", peel.value, Measure::STRESS);
    }
    sheet.say("Peel at the ends is shown, not judged: bevel them, or leave a fillet.");
    sheet.note_words("adhesive taken as", if rigid { "rigid" } else { "flexible" });
    let (limit, origin) = practice(if rigid {
        prepared.limits.rigid_bond_strain()
    } else {
        prepared.limits.flexible_bond_strain()
    });
    let advice = "a thicker bond line, a softer adhesive, or shorter pieces";
    sheet.advise(format!("{path}.thickness"), advice);
    let strain = outcome.end_shear_strain.abs();
    if rigid && strain <= limit {
        // A rigid bond line peels at its ends before it shears, and no limit of peel is held.
        let finds = Phrase::with(
            "end shear strain {}, stress {}",
            [
                Amount { si: strain, measure: Measure::Percent },
                Amount { si: outcome.end_shear_stress.value.abs(), measure: Measure::STRESS },
            ],
        );
        return Ok(sheet.rule(
            finds,
            "a rigid bond line is tested for peel at its ends",
            Ruling::NeedsTest,
            origin,
        ));
    }
    if strain > limit {
        let due = sheet.run(&FlexibleBondLine {
            bond_length: situation.bond_length,
            growth_difference: second.2 - first.2,
            first_thickness: first.0,
            first_youngs_modulus: first.1,
            second_thickness: second.0,
            second_youngs_modulus: second.1,
            bond_shear_modulus: shear_modulus,
            allowed_shear_strain: limit,
        })?;
        let (now, to) = (Amount::of(thickness), Amount::of(due.bond_thickness));
        sheet.cure(format!("{path}.thickness"), now, to, advice);
    }
    Ok(sheet.at_most(strain, Measure::Percent, limit, origin))
}

fn galvanic(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let bond = bond(prepared, subject)?;
    let mut metals = Vec::new();
    for layer in &bond.layers {
        metals.push(prepared.material_of(prepared.layer(layer)?)?);
    }
    let [first, second] = metals.as_slice() else {
        return Err(NotChecked::needs(format!("bonds.{}.layers", bond.name)));
    };
    let path = format!("bonds.{}.insulated", bond.name);
    pair(first, second, bond.insulated, path, "a glass scrim in the bond line, and sealed edges")
}

/// Two materials that touch outdoors, or are kept apart.
pub(super) fn pair(
    first: &Material,
    second: &Material,
    insulated: Option<bool>,
    path: String,
    advice: &str,
) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    sheet.note_words("one", first.name.to_string());
    sheet.note_words("the other", second.name.to_string());
    let rule = Origin::Published(Source::common_practice(
        "two metals, or metal and carbon, far apart in the galvanic table are kept apart",
    ));
    let needs = "a pair within its limit, or an insulating layer between";
    let (Some(one), Some(other)) = (first.galvanic_group, second.galvanic_group) else {
        return Ok(sheet.rule("one of the two is no conductor", needs, Ruling::Holds, rule));
    };
    let pair = galvanic_pair(one, other, Exposure::Harsh)
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
    let insulated = insulated.ok_or_else(|| NotChecked::needs(path.clone()))?;
    sheet.advise(path, advice);
    let (finds, ruling) = if insulated {
        ("a pair beyond its limit, kept apart", Ruling::Holds)
    } else {
        ("a pair beyond its limit, not kept apart", Ruling::Broken)
    };
    Ok(sheet.rule(finds, needs, ruling, Origin::Published(pair.source)))
}
