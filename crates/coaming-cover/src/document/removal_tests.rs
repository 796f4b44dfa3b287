//! What the review makes of a document with one optional entry taken away: the rows that need it are not checked and
//! name it, and nothing passes for its absence.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use coaming::calculation::read_node;
use coaming::declaration::{Field, Node, Value};

use super::tests::{REVISED, entries_of, path, without};
use super::{Cover, Form, read};
use crate::demand::NotChecked;
use crate::held::Solutions;
use crate::prepared::Prepared;
use crate::review::{Review, Row, review_of};
use crate::verdict::Verdict;

/// Stands in the table below for every row of the panel solver: their mesh follows every shape, so that all of them move.
const SOLVED: &str = "rows of the panel solver";

/// The rows of the panel solver.
const SOLVED_ROWS: &[&str] = &[
    "critical_rise",
    "latch_hand_force",
    "latch_missing",
    "latch_release",
    "latch_travel_cold",
    "latch_travel_hot",
    "latch_travel_sun",
    "latch_working_load",
    "latch_working_load_cold",
    "latch_working_load_hot",
    "latch_working_load_sun",
    "latch_working_load_wind",
    "lid_frequency",
    "lid_lean",
    "lid_wind_in",
    "lid_wind_in_stress",
    "lid_wind_out",
    "lid_wind_out_stress",
    "pane_acceleration_z",
    "pane_acceleration_z_stress",
    "pane_frequency",
    "pane_hand",
    "pane_hand_stress",
    "pane_stress_at_holes_lean",
    "pane_wind_in",
    "pane_wind_in_stress",
    "pane_wind_out",
    "pane_wind_out_stress",
    "pressed_sheet_cold",
    "pressed_sheet_hot",
    "seal_acceleration_x",
    "seal_acceleration_y",
    "seal_acceleration_z",
    "seal_after_season",
    "seal_all_round",
    "seal_all_round_most",
    "seal_cold",
    "seal_hot",
    "seal_latch_missing",
    "seal_sliding_x",
    "seal_sliding_y",
    "seal_sun",
    "seal_wind_in",
    "seal_wind_out",
    "latch_hold",
    "latch_pull_through",
    "keeper_pull_through",
];

/// An entry whose absence means something of its own (places left out of its path), the checks that it moves, and what
/// its absence means.
const MEANS: &[(&str, &[&str], &str)] = &[
    (
        "layers[].outline.rectangle.corner_radius",
        &[
            "mass",
            "tether",
            "screw_shake",
            "screw_stripping",
            "joint_slip",
            "joint_screw",
            "joint_closed_hot",
            "joint_closed_cold",
            "insert_estimate",
            SOLVED,
        ],
        "sharp corners, and so much more mass on the screws",
    ),
    ("layers[].cut_outs[].outline.rectangle.corner_radius", &["mass", "tether", SOLVED], "sharp corners"),
    ("layers[].at", &[SOLVED], "at the cover's origin"),
    (
        "layers[].cut_outs",
        &[
            "mass",
            "tether",
            "screw_shake",
            "screw_stripping",
            "joint_slip",
            "joint_screw",
            "joint_closed_hot",
            "joint_closed_cold",
            "insert_estimate",
            "leak_path_cut_out",
            SOLVED,
        ],
        "a whole sheet, and so much more mass on the screws",
    ),
    (
        "layers[].bends",
        &["mass", "tether", "flat_pattern", "hole_to_bend", "smallest_flange", "inside_radius", SOLVED],
        "a flat sheet",
    ),
    ("screws", &["bush_length"], "bushes stand in the patterns, all of whose other checks are not made"),
    (
        "screws[].bush",
        &[
            "bush_length",
            "clamp_friction",
            "hole_movement_hot",
            "hole_movement_cold",
            "insert_jack_out",
            "insert_estimate",
            "joint_screw",
            "screw_stripping",
            SOLVED,
            "joint_closed_hot",
            "joint_closed_cold",
            "joint_slip",
            "pane_engagement",
            "pane_stress_at_holes_hot",
            "pane_stress_at_holes_cold",
            "screw_engagement",
            "screw_tip_clearance",
        ],
        "no bush: the screw alone passes the hole",
    ),
    (
        "screws[].insert",
        &["locking", SOLVED],
        "no insert's layer beside the locking, nor behind the sheet; the insert's own checks are not made",
    ),
    ("seal.path.rectangle.corner_radius", &[SOLVED], "sharp corners"),
    ("seal.gap_contributions", &["seal_gap_least", "seal_gap_most", SOLVED], "no further deviations"),
    ("seal.pressure_at_25_percent", &["seal_spacing", SOLVED], "the band of the material's grade"),
    ("materials[].lowest_temperature", &["layer_cold"], "the value of the material that it is like"),
    (
        "materials[].thermal_conductivity",
        &["dew", "touch", "touch_inner"],
        "the value of the material that it is like",
    ),
    ("latches", &["mass", "tether"], "no latches to carry; the latches' own checks are not made"),
    ("seal", &["flammability"], "what is still named is flagged"),
    ("seal.backing", &["flammability"], "what is still named is flagged"),
    ("bonds", &["flammability"], "what is still named is flagged"),
    ("service", &["flammability"], "what is still named is flagged"),
    ("service.sealants", &["flammability"], "what is still named is flagged"),
];

/// The rows that become better without an entry, because the entry itself is their reason.
const BETTER: &[(&str, &str, &str)] = &[
    ("layers[].cut_outs", "lid_wind_in", "a sheet without its cut-out is a stiffer one"),
    ("layers[].cut_outs", "lid_wind_out", "a sheet without its cut-out is a stiffer one"),
];

/// What the panel solver reads, one of each kind.
const READ_BY_SOLVER: &[&str] = &[
    "good_face",
    "latches",
    "latches.positions",
    "layers[0].bends",
    "layers[0].bends[0].bend_angle",
    "layers[0].bends[0].bend_direction",
    "layers[0].bends[0].flange",
    "layers[0].cut_outs",
    "layers[0].cut_outs[0].outline.rectangle.corner_radius",
    "layers[0].material",
    "layers[0].thickness",
    "layers[1].face",
    "layers[1].material",
    "layers[1].outline.rectangle.corner_radius",
    "layers[1].thickness",
    "layers[2].cut_outs",
    "layers[3].at",
    "layers[3].joining",
    "screws[0].insert",
    "screws[0].passes[1].role",
    "seal",
    "seal.free_height",
    "seal.friction_low",
    "seal.gap_contributions",
    "seal.kind",
    "seal.material",
    "seal.path",
    "seal.path.rectangle.corner_radius",
    "seal.pressure_at_25_percent",
    "seal.stop_height",
    "seal.width",
    "service.gravity",
];

/// What the rows of the pane read, and those of screws that are shaken, that no other pass takes away.
const READ_BY_PANE: &[&str] = &[
    "layers[2].cut_outs",
    "layers[1].outline.rectangle.corner_radius",
    "layers[1].joining",
    "layers[1].material",
    "layers[1].thickness",
    "layers[1].free_width",
    "layers[1].free_height",
    "screws[0].bush",
    "screws[0].bush.length",
    "screws[0].count",
    "screws[0].insert",
    "screws[0].passes",
    "screws[0].passes[1].hole",
    "screws[0].passes[1].role",
    "screws[0].positions",
    "service.excitations",
];

/// The check as the table names it.
fn in_table(check: &str) -> &str {
    if SOLVED_ROWS.contains(&check) { SOLVED } else { check }
}

fn check_of(key: &str) -> &str {
    key.split('(').next().unwrap_or(key)
}

/// The review of a document on what the solver has found so far.
fn reviewed(cover: &Cover, solutions: &Arc<Solutions>) -> Result<Review, coaming::error::Error> {
    review_of(&Prepared::with(cover, Arc::clone(solutions))?)
}

fn by_key(review: Review) -> BTreeMap<String, Row> {
    review.rows.into_iter().map(|row| (row.key.clone(), row)).collect()
}

/// True where the row says that it needs the entry of that key.
fn names(row: &Row, key: &str) -> bool {
    matches!(&row.outcome, Err(NotChecked::Needs(paths)) if paths.iter().any(|path| path.contains(key)))
}

/// Takes away each of the entries that are `taken`, and compares the rows; gives how many rows moved. What the solver has
/// found of the whole document is kept for the others.
fn take_away(written: &Node, taken: impl Fn(&str) -> bool, used: &mut BTreeSet<(String, String)>) -> usize {
    let solutions = Arc::new(Solutions::coarse());
    let before = by_key(reviewed(&read_node::<Cover>(written.clone()).unwrap(), &solutions).unwrap());
    let (mut moved, mut faults) = (0, Vec::new());
    for entry in entries_of(written).into_iter().filter(|entry| entry.optional) {
        let name = path(&entry.steps);
        if !taken(&name) {
            continue;
        }
        let less = read_node::<Cover>(without(written, &entry.steps))
            .unwrap_or_else(|error| panic!("{name}: {error}"));
        // Other shapes need solvers of their own, which would fill the memory: only loads share.
        let alike = name.starts_with("load_cases[");
        let own = if alike { Arc::clone(&solutions) } else { Arc::new(solutions.coarse_beside()) };
        let after = match reviewed(&less, &own) {
            Ok(review) => by_key(review),
            // A layer whose material nothing describes any more is refused whole.
            Err(error) => {
                assert!(["unknown_material", "missing"].contains(&error.name()), "without {name}: {error}");
                assert!(name.starts_with("materials"), "without {name}: {error}");
                continue;
            }
        };
        let key = name.rsplit('.').next().unwrap();
        let placeless: String = name.chars().filter(|c| !c.is_ascii_digit()).collect();
        let placeless = if name.contains("_25_") { name.clone() } else { placeless };
        let means = MEANS.iter().find(|row| row.0 == placeless).map_or(&[][..], |row| row.1);
        for (row_key, row) in &before {
            let check = check_of(row_key);
            let now = after.get(row_key);
            if now.is_some_and(|now| now.outcome == row.outcome) {
                continue;
            }
            moved += 1;
            // A check whose subjects are no longer named stands there once, and names the list.
            let instead = || after.values().any(|now| check_of(&now.key) == check && names(now, key));
            let says_so = now.map_or_else(instead, |now| names(now, key));
            if !says_so {
                if !means.contains(&in_table(check)) {
                    let outcome: String =
                        format!("{:?}", now.map(|now| &now.outcome)).chars().take(300).collect();
                    faults.push(format!("without {name}: {row_key} is {outcome}"));
                }
                used.insert((placeless.clone(), in_table(check).to_owned()));
            }
            let better = now.is_some_and(|now| now.verdict > row.verdict && now.verdict >= Verdict::Marginal);
            if better {
                let because = BETTER.iter().any(|(entry, key, _)| *entry == placeless && *key == check);
                assert!(
                    because,
                    "without {name}: {row_key} goes from {:?} to {:?}",
                    row.verdict,
                    now.map(|now| now.verdict)
                );
            }
        }
        for (row_key, row) in after.iter().filter(|(row_key, _)| !before.contains_key(*row_key)) {
            assert_eq!(row.verdict, Verdict::NotChecked, "without {name}: {row_key} is new");
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    moved
}

#[test]
fn nothing_passes_for_what_is_absent() {
    let whole = read(REVISED, Form::Toml).unwrap().write(&Field::ROOT);
    // The panel solver takes a while for each load: first every entry without places of latches, then what it reads of the
    // closed lid, and last what it reads of all loads.
    let mut calm = whole.clone();
    let loads = ["pressure", "acceleration", "duration", "force"];
    for entry in entries_of(&whole) {
        let name = path(&entry.steps);
        let load = name.starts_with("load_cases[") && loads.iter().any(|load| name.ends_with(load));
        if load || name == "service.excitations" {
            calm = without(&calm, &entry.steps);
        }
    }
    let mut loose = whole.clone();
    for entry in entries_of(&whole) {
        let name = path(&entry.steps);
        let load = name.starts_with("load_cases[") && loads.iter().any(|load| name.ends_with(load));
        let of_pane = load && !name.ends_with("duration");
        if name == "latches.positions" || name == "service.excitations" || of_pane {
            loose = without(&loose, &entry.steps);
        }
    }
    let mut unlatched = whole.clone();
    for entry in entries_of(&whole) {
        if path(&entry.steps) == "latches.positions" {
            unlatched = without(&unlatched, &entry.steps);
        }
    }
    let mut used = BTreeSet::new();
    let moved = take_away(&loose, |_| true, &mut used);
    assert!(moved > 250, "{moved}");
    let moved = take_away(&calm, |name| READ_BY_SOLVER.contains(&name), &mut used);
    assert!(moved > 20, "{moved}");
    let of_pane = |name: &str| READ_BY_PANE.contains(&name) || name.starts_with("load_cases");
    let moved = take_away(&unlatched, of_pane, &mut used);
    assert!(moved > 20, "{moved}");
    let read_by_loads = ["layers[0].cut_outs", "layers[0].bends", "seal.path"];
    let of_a_load =
        |name: &str| name.starts_with("load_cases[") && loads.iter().any(|load| name.ends_with(load));
    let moved = take_away(&whole, |name| read_by_loads.contains(&name) || of_a_load(name), &mut used);
    assert!(moved > 30, "{moved}");
    let mut stale = Vec::new();
    for (entry, checks, _) in MEANS {
        for check in *checks {
            if !used.contains(&((*entry).to_owned(), (*check).to_owned())) {
                stale.push(format!("{entry} no longer moves {check}"));
            }
        }
    }
    assert!(stale.is_empty(), "{}", stale.join("\n"));
}
