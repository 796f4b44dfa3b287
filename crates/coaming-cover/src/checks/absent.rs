//! Checks whose subjects stand in a list that the document does not give: they must not vanish from the review, for
//! what is not named is not checked. An empty list says that there are none.

use crate::checks::{Check, Subject};
use crate::document::{Bond, Cover, Joining, Layer, ScrewPattern};

/// The subjects of a check that the document leaves unnamed, each with the path of what is missing.
pub(crate) fn unnamed(check: &Check, cover: &Cover) -> Vec<(Subject, String)> {
    let joined = |joining: Joining| cover.layers.iter().any(|layer| layer.joining == Some(joining));
    let whole = |path: &str| vec![(Subject::new(), path.to_owned())];
    let service = cover.service.as_ref();
    match check.key {
        "agent" | "gasket_agent" | "adhesive_agent"
            if service.is_none_or(|service| service.agents.is_none()) =>
        {
            whole("service.agents")
        }
        "gasket_agent" | "gasket_weather" if cover.seal.is_none() => whole("seal"),
        "sealant_joint" if cover.sealant_joints.is_none() => whole("sealant_joints"),
        "sealant" if service.is_none_or(|service| service.sealants.is_none()) => whole("service.sealants"),
        key if BONDS.contains(&key) => match &cover.bonds {
            None if joined(Joining::Bonded) => whole("bonds"),
            bonds => unbonded(cover, bonds.as_deref().unwrap_or_default()),
        },
        key if SCREWS.contains(&key) || PASSES.contains(&key) => match &cover.screws {
            None if joined(Joining::Screwed) => whole("screws"),
            screws if PASSES.contains(&key) => {
                screws.iter().flatten().filter_map(|pattern| of_pattern(key, pattern)).collect()
            }
            _ => Vec::new(),
        },
        _ => Vec::new(),
    }
}

/// The bonded layers that no bond names.
fn unbonded(cover: &Cover, bonds: &[Bond]) -> Vec<(Subject, String)> {
    let named = |layer: &Layer| bonds.iter().any(|bond| bond.layers.contains(&layer.name));
    let layers = cover.layers.iter().filter(|layer| layer.joining == Some(Joining::Bonded) && !named(layer));
    layers
        .map(|layer| (vec![layer.name.clone()], format!("bonds (layers with \"{}\")", layer.name)))
        .collect()
}

/// Checks of each bond.
const BONDS: &[&str] = &[
    "bond_shear",
    "bond_shear_sun",
    "bond_strip_hot",
    "bond_strip_cold",
    "bond_strip_sun",
    "bond_galvanic",
    "adhesive_agent",
    "adhesive_neighbour",
    "adhesive_temperature",
    "adhesive_cold",
];

/// Checks of each screw pattern.
const SCREWS: &[&str] = &[
    "screw_tip_clearance",
    "screw_engagement",
    "screw_tightening",
    "screw_pull_lean",
    "screw_pull_wind",
    "screw_shake",
    "screw_stripping",
    "joint_closed_hot",
    "joint_closed_cold",
    "joint_slip",
    "joint_screw",
    "insert_jack_out",
    "insert_pull_out",
    "insert_torque_out",
    "insert_estimate",
    "insert_boss",
    "insert_hole",
    "insert_floor",
];

/// Checks of the layers that a screw pattern passes.
const PASSES: &[&str] = &[
    "countersink_depth",
    "countersink_in_plastic",
    "edge_distance",
    "screw_galvanic",
    "hole_movement_hot",
    "hole_movement_cold",
    "countersunk_float",
    "clamp_friction",
    "critical_rise",
    "pressed_sheet_hot",
    "pressed_sheet_cold",
    "locking",
    "leak_path_screws",
    "screw_pitch",
    "pane_stress_at_holes_closed",
    "pane_stress_at_holes_hot",
    "pane_stress_at_holes_cold",
    "pane_stress_at_holes_lean",
];

fn of_pattern(key: &str, pattern: &ScrewPattern) -> Option<(Subject, String)> {
    let path = format!("screws.{}.passes", pattern.name);
    let path = match &pattern.passes {
        None => path,
        // A countersunk head is sunk into some layer: the first that does not say otherwise.
        Some(passes) if key == "countersink_depth" && pattern.countersunk_head.is_some() => {
            if passes.iter().any(|passed| passed.countersunk == Some(true)) {
                return None;
            }
            let open = passes.iter().find(|passed| passed.countersunk.is_none())?;
            format!("{path}.{}.countersunk", open.layer)
        }
        Some(_) => return None,
    };
    Some((vec![pattern.name.clone()], path))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::PARTS;

    #[test]
    fn every_key_is_one_of_a_check() {
        let keys: Vec<&str> = PARTS.iter().flat_map(|part| part.1).map(|check| check.key).collect();
        for key in BONDS.iter().chain(SCREWS).chain(PASSES).chain(&[
            "agent",
            "sealant",
            "sealant_joint",
            "gasket_agent",
            "gasket_weather",
        ]) {
            assert!(keys.contains(key), "{key}");
        }
    }
}
