//! A bonded strip that the sheet presses as the two grow apart: whether it buckles off its bond line.

use coaming::prelude::*;
use coaming::thermal::{BondEndShear, BondedStripBuckling};

use crate::amount::Measure;
use crate::checks::bonds::{bond, bonds};
use crate::checks::movement::growth;
use crate::checks::{Check, Subject};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin, Ruling};
use crate::document::{LayerRole, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The checks of pressed strips.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "bond_strip_hot",
        title: "Pressed strip on its bond line",
        case: Some(LoadKind::Hot),
        subjects: bonds,
        demand: |prepared, subject| pressed_strip(prepared, subject, LoadKind::Hot),
    },
    Check {
        key: "bond_strip_cold",
        title: "Pressed strip on its bond line",
        case: Some(LoadKind::Cold),
        subjects: bonds,
        demand: |prepared, subject| pressed_strip(prepared, subject, LoadKind::Cold),
    },
    Check {
        key: "bond_strip_sun",
        title: "Pressed strip on its bond line, in the sun",
        case: Some(LoadKind::Sun),
        subjects: bonds,
        demand: |prepared, subject| pressed_strip(prepared, subject, LoadKind::Sun),
    },
];

/// One layer of a bond.
struct Side {
    name: String,
    role: LayerRole,
    thickness: Length,
    youngs_modulus: Pressure,
    strain: f64,
}

/// Compression of the layer that grows more, at the middle of its bond, over that at which it buckles: between its ends on a bond
/// line that cannot draw in, and at a free end on one that can.
fn pressed_strip(prepared: &Prepared<'_>, subject: &Subject, kind: LoadKind) -> Result<Demand, NotChecked> {
    let bond = bond(prepared, subject)?;
    let path = format!("bonds.{}", bond.name);
    let mut sheet = Worksheet::new();
    let mut sides = Vec::new();
    for name in &bond.layers {
        let layer = prepared.layer(name)?;
        let material = prepared.material_of(layer)?;
        let label = format!("thickness of {name}");
        sides.push(Side {
            name: name.clone(),
            role: layer.role,
            thickness: sheet.given(&label, format!("layers.{name}.thickness"), layer.thickness)?,
            youngs_modulus: sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?,
            strain: growth(prepared, layer, &material, kind, &mut sheet)?,
        });
    }
    // The first of two that grow alike: neither is pressed.
    sides.sort_by(|one, other| other.strain.total_cmp(&one.strain));
    let [pressed, pulled] = sides.as_slice() else { return Err(NotChecked::needs(format!("{path}.layers"))) };
    let origin = Origin::Published(BondedStripBuckling::SOURCE.first().copied().need(|| path.clone())?);
    let needs = "a strip that is pressed stays on its bond line";
    if pressed.strain == pulled.strain || pressed.role == LayerRole::Skin {
        return Ok(sheet.rule(format!("`{}` is not pressed", pulled.name), needs, Ruling::Holds, origin));
    }
    sheet.note_words("layer that is pressed", pressed.name.clone());
    let adhesive_name = bond.adhesive.need(|| format!("{path}.adhesive"))?;
    let adhesive = prepared.material(&adhesive_name, &format!("{path}.adhesive"))?;
    let shear_modulus = sheet.property(&adhesive, "shear_modulus", &adhesive.shear_modulus)?;
    let bond_thickness = sheet.given("bond line", format!("{path}.thickness"), bond.thickness)?;
    let length = sheet.given("length of the bond", format!("{path}.length"), bond.length)?;
    let width = sheet.given("width of the bond", format!("{path}.width"), bond.width)?;
    let lag = sheet.run(&BondEndShear {
        bond_length: length,
        first_thickness: pressed.thickness,
        first_youngs_modulus: pressed.youngs_modulus,
        first_growth_strain: pressed.strain,
        second_thickness: pulled.thickness,
        second_youngs_modulus: pulled.youngs_modulus,
        second_growth_strain: pulled.strain,
        bond_thickness,
        bond_shear_modulus: shear_modulus,
        bond_peel_modulus: None,
    })?;
    let compression: ForcePerLength = si(lag.layer_force.value.abs());
    sheet.note("compression at the middle of the bond", compression.value, Measure::of::<ForcePerLength>());
    // No layer is softer across than one without contraction, none stiffer than one that keeps its volume between rigid faces.
    let shape = width.value / (2.0 * bond_thickness.value);
    let (soft, firm) = (2.0 * shear_modulus.value, 4.0 * shear_modulus.value * (1.0 + shape * shape));
    sheet.reckon("modulus across the bond line: from 2 G, free to draw in, to 4 G (1 + (width/(2 thickness))²), held to its volume");
    sheet.note("modulus across, least", soft, Measure::STRESS);
    sheet.note("modulus across, most", firm, Measure::STRESS);
    let mut on = |modulus: f64| {
        sheet.run(&BondedStripBuckling {
            strip_length: length,
            strip_thickness: pressed.thickness,
            strip_youngs_modulus: pressed.youngs_modulus,
            bond_thickness,
            bond_modulus: si(modulus),
            compression,
        })
    };
    let (softest, firmest) = (on(soft)?, on(firm)?);
    let per_width = Measure::of::<ForcePerLength>();
    sheet.note("buckles at a free end from", softest.critical_force_free_end.value, per_width);
    sheet.note("buckles between its ends at most at", firmest.critical_force.value, per_width);
    sheet.note("half wave, longest", softest.half_wave.value, Measure::LENGTH);
    sheet.say("The force at a free end grows from nothing: the end is taken to bear in full what the middle bears. A strip that is not flat lifts sooner; the sheet is taken as stiff.");
    sheet.at("compression over what makes the strip buckle");
    sheet.advise(
        format!("layers.{}.thickness", pressed.name),
        "a thicker strip, a thinner or stiffer bond line, or shorter pieces",
    );
    let bound = Bound::AtMost { limit: 1.0, marginal_above: None };
    let (low, high) = (firmest.utilisation, softest.utilisation_free_end.max(softest.utilisation));
    Ok(sheet.finish(Finding::Number { low, high, measure: Measure::Percent, bound }, origin))
}
