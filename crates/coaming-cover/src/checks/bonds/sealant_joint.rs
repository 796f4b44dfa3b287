//! Joints filled with sealant: their width against what the layers move.

use coaming::prelude::*;
use coaming::thermal::{MovementClass, SealantJoint as Width};

use crate::amount::{Amount, Measure};
use crate::checks::movement::growth;
use crate::checks::{Check, Subject, name};
use crate::demand::{Demand, Need, NotChecked, Origin};
use crate::document::{Layer, LoadKind, SealantJoint};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The check of sealant joints.
pub(in crate::checks) const CHECKS: &[Check] = &[Check {
    key: "sealant_joint",
    title: "Width of a sealant joint against its movement",
    case: Some(LoadKind::Hot),
    subjects: |prepared| {
        let joints = prepared.cover.sealant_joints.iter().flatten();
        joints.map(|joint| vec![joint.name.clone()]).collect()
    },
    demand: width,
}];

fn width(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let wanted = name(subject, 0)?;
    let mut joints = prepared.cover.sealant_joints.iter().flatten();
    let joint = joints.find(|joint| joint.name == wanted);
    let joint = joint.ok_or_else(|| NotChecked::needs("sealant_joints"))?;
    let path = format!("sealant_joints.{}", joint.name);
    let mut sheet = Worksheet::new();
    let movement_class = class(prepared, joint, &path, &mut sheet)?;
    let given = sheet.given("width of the joint", format!("{path}.width"), joint.width)?;
    let width_tolerance =
        sheet.given("deviation of the width", format!("{path}.width_tolerance"), joint.width_tolerance)?;
    let (hot, cold) = (
        apart(prepared, joint, LoadKind::Hot, &mut sheet)?,
        apart(prepared, joint, LoadKind::Cold, &mut sheet)?,
    );
    // Growth closes the joint on one side and opens it on the other: the greater of both is taken each way.
    let moves = hot.abs().max(cold.abs());
    sheet.note("movement", moves, Measure::LENGTH);
    let outcome = sheet.run(&Width {
        movement_class,
        opening: si(moves),
        closing: si(moves),
        width_tolerance,
        width: None,
    })?;
    sheet.say("From the middle of the layers outward. Movement along the joint, which shears it, strains it less than the same across it.");
    if outcome.needed_width > given {
        let lever = format!("{path}.width");
        let words = "a wider joint, or a sealant of a higher class";
        sheet.cure(lever, Amount::of(given), Amount::of(outcome.needed_width), words);
    }
    let origin = Origin::Design(format!("{path}.width"));
    Ok(sheet.at_most(outcome.needed_width.value, Measure::LENGTH, given.value, origin))
}

/// The movement class of the joint's sealant.
fn class(
    prepared: &Prepared<'_>,
    joint: &SealantJoint,
    path: &str,
    sheet: &mut Worksheet,
) -> Result<MovementClass, NotChecked> {
    let at = format!("{path}.sealant");
    let sealant = prepared.material(&joint.sealant.need(|| at.clone())?, &at)?;
    let capability = sheet.property(&sealant, "movement_capability", &sealant.movement_capability)?;
    // The highest class that does not promise more than the record.
    let classes = [
        (0.5, MovementClass::Class50),
        (0.25, MovementClass::Class25),
        (0.2, MovementClass::Class20),
        (0.125, MovementClass::Class12p5),
        (0.075, MovementClass::Class7p5),
    ];
    let class = classes.into_iter().find(|(share, _)| *share <= capability * (1.0 + 1e-9));
    let (_, class) = class
        .ok_or_else(|| NotChecked::not_calculated(format!("{} moves less than any class", sealant.name)))?;
    sheet.note_words("movement class", Choice::name(class));
    Ok(class)
}

/// What the end of the first layer moves against the second, in metres, from assembly to a state.
fn apart(
    prepared: &Prepared<'_>,
    joint: &SealantJoint,
    kind: LoadKind,
    sheet: &mut Worksheet,
) -> Result<f64, NotChecked> {
    let [first, second] = joint.layers.as_slice() else {
        return Err(NotChecked::needs(format!("sealant_joints.{}.layers", joint.name)));
    };
    let (first, second) = (prepared.layer(first)?, prepared.layer(second)?);
    let own = growth(prepared, first, &*prepared.material_of(first)?, kind, sheet)?;
    let other = growth(prepared, second, &*prepared.material_of(second)?, kind, sheet)?;
    let longest = |layer: &Layer| {
        let (width, height) = layer.outline.box_size();
        width.max(height)
    };
    // The joint runs along the edge of the smaller layer.
    let half = longest(first).min(longest(second)) / 2.0;
    sheet.note("from its middle to its end", half, Measure::LENGTH);
    Ok((own - other) * half)
}
