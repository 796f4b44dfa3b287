//! Dimensional homogeneity: a formula that follows from mechanics holds in any system of units, so that inputs scaled by
//! powers of the base units give outcomes scaled alike. It sees a missing square, a wrong exponent or a constant that
//! hides a unit in any calculation, without knowing its formula.
//!
//! The inputs are those of the cases. The factors are powers of 64, whose square and cube roots are exact too.

use std::collections::{BTreeMap, BTreeSet};

use coaming::Entry;
use coaming::declaration::Node;
use coaming_tests::{Case, record};

/// The base units that are scaled: length, mass, time, temperature. An angle is a number here.
const BASES: [&str; 4] = ["length", "mass", "time", "temperature"];

/// What is not homogeneous, and why: constants of nature or of the trade that have a dimension of their own, and sizes that
/// a standard lists. Whoever adds one says which constant it is; one that is no longer needed fails the test.
const EXCEPTIONS: &[(&str, &[&str], &str)] = &[
    ("air_bend", &["length"], "preferred die openings; their choice steps at thicknesses in mm"),
    ("assembly_preload", &["length"], THREADS),
    (
        "bay_pressure",
        &["length", "mass", "time", "temperature"],
        "the atmosphere and the vapour pressure of water",
    ),
    ("bend_relief", &["length"], "common practice adds a length of its own"),
    ("bolt_stiffness", &["length"], THREADS),
    ("clearance_hole", &["length"], "the holes of the standards"),
    ("countersunk_head", &["length"], "the heads of the standards"),
    ("dew_point", &["length", "mass", "time", "temperature"], "the vapour pressure of water"),
    ("hold_open", &["length", "time"], GRAVITY),
    (
        "joint_load",
        &["length", "mass", "time"],
        "the threads, and the endurance limit of VDI 2230 in N/mm2 over d in mm",
    ),
    ("lid_slam", &["length", "time"], GRAVITY),
    ("lid_tether", &["length", "time"], GRAVITY),
    ("recommended_radius_by_advisory_circular", &["length"], "a table by thickness"),
    ("relief_hole", &["length"], "a smallest hole of 1/8 in"),
    ("screw_length", &["length"], "the lengths of the standards"),
    ("screw_strength", &["length", "mass", "time"], "the threads and the strengths of the standards"),
    ("shore_modulus", &["length", "mass", "time"], "the spring of the hardness tester"),
    ("smallest_radius_by_design_manual", &["length"], "a table by thickness"),
    ("sponge_grade", &["length", "mass", "time"], "the grades of the standard in psi"),
    ("thread", &["length"], THREADS),
    ("thread_limits", &["length"], "the tolerances of the standards"),
    ("thread_stripping", &["length"], THREADS),
    ("tightening_preload", &["length"], THREADS),
    ("tightening_scatter", &["length"], THREADS),
    ("tightening_torque", &["length"], THREADS),
    ("touch_temperature", &["temperature"], "the thresholds of skin"),
];

const THREADS: &str = "the threads of the standards";
const GRAVITY: &str = "standard gravity";

/// Series and Ritz solutions, which take up to seconds where nothing is optimised: one case of each.
const SLOW: &[&str] = &[
    "rectangular_plate",
    "rectangular_plate_frequency",
    "rectangular_plate_modes",
    "rectangular_plate_large_deflection",
    "rectangular_plate_patch",
    "heated_plate_buckling",
    "levy_plate",
    "circular_plate_large_deflection",
    "circular_plate_modes",
    "annular_plate_modes",
];

/// Every quantity of a node times factor^(its exponent of the base).
fn scaled(node: &Node, base: usize, factor: f64) -> Node {
    match node {
        Node::Quantity { si, dimension, unit } => {
            let power = i32::from(dimension.exponents[base]);
            let step = if power < 0 { 1.0 / factor } else { factor };
            let times = (0..power.abs()).fold(1.0, |product, _| product * step);
            Node::Quantity { si: si * times, dimension, unit }
        }
        Node::List(entries) => Node::List(entries.iter().map(|entry| scaled(entry, base, factor)).collect()),
        Node::Record(entries) => Node::Record(
            entries.iter().map(|(key, entry)| (key.clone(), scaled(entry, base, factor))).collect(),
        ),
        other => other.clone(),
    }
}

/// Where two outcomes differ by more than rounding; none where they are the same.
fn difference(left: &Node, right: &Node) -> Option<String> {
    match (left, right) {
        (Node::List(left), Node::List(right)) => {
            if left.len() != right.len() {
                return Some(format!("{} and {} entries", left.len(), right.len()));
            }
            left.iter().zip(right).find_map(|(left, right)| difference(left, right))
        }
        (Node::Record(left), Node::Record(right)) => {
            left.iter().zip(right).find_map(|((key, left), (_, right))| {
                difference(left, right).map(|fault| format!("{key}: {fault}"))
            })
        }
        _ => match (left.si(), right.si()) {
            (Some(left), Some(right)) => {
                let room = 1e-9 * left.abs().max(right.abs());
                ((left - right).abs() > room).then(|| format!("{left:e} and {right:e}"))
            }
            _ => (left != right).then(|| format!("{left:?} and {right:?}")),
        },
    }
}

/// What was seen of one calculation and one base unit.
#[derive(Default)]
struct Seen {
    agreed: usize,
    /// Where it did not scale.
    fault: Option<String>,
    /// Where the scaled input was out of a field's or a table's range, which contradicts nothing.
    refused: Option<String>,
}

impl Seen {
    /// What speaks against the calculation: a difference, or that nothing could be compared.
    fn against(self) -> Option<String> {
        self.fault.or(if self.agreed == 0 { self.refused } else { None })
    }
}

fn look(entry: &Entry, case: &Case, base: usize, seen: &mut Seen) {
    let Ok(input) = (entry.read)(record(&case.input)) else { return };
    let Ok((outcome, _)) = (entry.calculate)(input.clone()) else { return };
    for factor in [64.0, 1.0 / 64.0] {
        match (entry.calculate)(scaled(&input, base, factor)) {
            Ok((found, _)) => match difference(&scaled(&outcome, base, factor), &found) {
                None => seen.agreed += 1,
                Some(fault) => seen.fault = Some(format!("{fault}, with {} times {factor}", BASES[base])),
            },
            Err(error) => seen.refused = Some(error.to_string()),
        }
    }
}

#[test]
fn every_formula_holds_in_any_system_of_units() {
    let cases = coaming_tests::all();
    let mut found: BTreeMap<&str, BTreeMap<usize, String>> = BTreeMap::new();
    let mut agreed = 0;
    for entry in coaming::ALL {
        let most = if SLOW.contains(&entry.name) { 1 } else { 20 };
        let of_entry = cases
            .iter()
            .map(|(_, case)| case)
            .filter(|case| case.calculation == entry.name && case.error.is_none());
        let mut all: [Seen; 4] = Default::default();
        for case in of_entry.take(most) {
            for (base, seen) in all.iter_mut().enumerate() {
                look(entry, case, base, seen);
            }
        }
        for (base, seen) in all.into_iter().enumerate() {
            agreed += seen.agreed;
            assert!(
                seen.agreed > 0 || seen.refused.is_some() || seen.fault.is_some(),
                "{} has no case",
                entry.name
            );
            if let Some(fault) = seen.against() {
                found.entry(entry.name).or_default().insert(base, fault);
            }
        }
    }
    let excepted: BTreeSet<(&str, &str)> =
        EXCEPTIONS.iter().flat_map(|(name, bases, _)| bases.iter().map(move |base| (*name, *base))).collect();
    let mut faults: Vec<String> = Vec::new();
    for (name, bases) in &found {
        for (base, fault) in bases {
            if !excepted.contains(&(*name, BASES[*base])) {
                faults.push(format!("{name} does not scale with {}: {fault}", BASES[*base]));
            }
        }
    }
    for (name, base) in &excepted {
        let place = BASES.iter().position(|known| known == base).expect("a base unit");
        if !found.get(name).is_some_and(|bases| bases.contains_key(&place)) {
            faults.push(format!("{name} scales with {base}: its exception is not needed"));
        }
    }
    assert!(EXCEPTIONS.iter().all(|(.., reason)| !reason.is_empty()));
    assert!(agreed > 3000, "{agreed} comparisons");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
