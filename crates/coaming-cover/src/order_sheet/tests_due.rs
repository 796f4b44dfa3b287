//! The test sheet: one line for each row of the review that only a test can settle.

use super::bench::blanks;
use super::item::{Item, Line, Value, said};
use crate::amount::{Amount, Phrase};
use crate::demand::{Bound, Demand, Finding, NotChecked};
use crate::review::{Review, Row};
use crate::verdict::Verdict;

/// One line for each row that needs a test, in the order of the review.
pub(super) fn tests(review: &Review) -> Vec<Line> {
    let due = review.rows.iter().filter(|row| row.verdict == Verdict::NeedsTest);
    due.filter_map(|row| Some(line(row, row.outcome.as_ref().ok()?))).collect()
}

fn line(row: &Row, demand: &Demand) -> Line {
    let part = if row.subject.is_empty() {
        row.title.to_owned()
    } else {
        format!("{} ({})", row.title, row.subject)
    };
    let mut items = vec![said("row of the review", row.key.clone())];
    match procedure(&row.key) {
        Some(words) => {
            let labels = ["what to do", "how to measure", "write down"];
            items.extend(labels.into_iter().zip(words).map(|(label, words)| said(label, words)));
        }
        None => {
            let why = NotChecked::not_calculated("a test for this row is not described");
            items.push(Item { label: "what to do", value: Value::Unknown(why) });
        }
    }
    if demand.unverified {
        items.push(said("why", "a dimension behind the row is unverified against its standard"));
    }
    items.extend(demand.notes.iter().map(|note| said("note", note.clone())));
    if let Some(cure) = demand.cure.as_ref().filter(|cure| !cure.words.is_empty()) {
        items.push(said("instead of a test", cure.words.clone()));
    }
    items.extend(criteria(demand));
    items.extend(blanks());
    Line { part, items }
}

/// What was calculated, and what passes.
fn criteria(demand: &Demand) -> Vec<Item> {
    match &demand.finding {
        Finding::Number { low, high, measure, bound } => {
            let amount = |si: f64| Value::Amount(Amount { si, measure: *measure });
            let band = |low: f64, high: f64| Value::Band { low, high, measure: *measure };
            let passes = match *bound {
                Bound::AtMost { limit, .. } => Item { label: "passes when at most", value: amount(limit) },
                Bound::AtLeast { limit } => Item { label: "passes when at least", value: amount(limit) },
                Bound::Within { low, high } => Item { label: "passes within", value: band(low, high) },
            };
            vec![Item { label: "calculated", value: band(*low, *high) }, passes]
        }
        Finding::Rule { needs, .. } => {
            vec![Item { label: "passes when", value: Value::Words(Phrase::from(needs.clone())) }]
        }
    }
}

/// What to do, how to measure and what to write down: common practice of the bench.
fn procedure(key: &str) -> Option<[&'static str; 3]> {
    Some(match key.split('(').next()? {
        "inside_radius" => [
            "Bend a strip of the same sheet over the same radius, with the grain as in the part.",
            "Look along the outside of the bend with a magnifier.",
            "Radius, die opening, direction of the grain, every crack.",
        ],
        "flat_pattern" | "hole_to_bend" | "smallest_flange" | "edge_distance" | "screw_pitch" => [
            "Bend one sample with its holes before the parts are cut.",
            "Measure it over the outside, and the holes beside the bend across and along it.",
            "Every length, and how far a hole is out of round.",
        ],
        "agent" | "adhesive_agent" | "gasket_agent" | "sealant" | "locking" | "adhesive_neighbour"
        | "gasket_neighbour" | "backing_neighbour" | "weather" | "gasket_weather" => [
            "Hold a strip of the same material bent to its strain in service, wetted or covered as in service; beside it a \
             strip bent alike and left dry.",
            "Look for crazes, cracks, softening, stains and what lets go, daily for a week.",
            "Strain, temperature, time, and what is seen on both.",
        ],
        "countersink_depth" | "countersunk_float" | "head_bearing" => [
            "Countersink and fit one screw in a piece of scrap of the same sheet.",
            "Measure how far the head stands proud or below with a depth gauge, and the land that is left.",
            "Screw, tool, depth, land.",
        ],
        "screw_engagement" | "screw_tip_clearance" => [
            "Screw one of the lot into a sample of the stack without the lid.",
            "Count the turns until it is tight, and probe the depth that is left behind the tip.",
            "Turns, length of the screw, depth left.",
        ],
        "screw_tightening" | "screw_stripping" | "screw_pull_wind" | "screw_pull_lean" | "screw_shake"
        | "joint_closed_hot" | "joint_closed_cold" | "joint_screw" | "joint_slip" | "clamp_friction" => [
            "Assemble three samples of the joint, tighten as ordered, let them stand for a week as warm as in service.",
            "Read the torque at which each screw begins to turn on, then turn one until it fails.",
            "Torque when made, after the week, and at failure.",
        ],
        "insert_pull_out" | "insert_torque_out" | "insert_jack_out" | "insert_boss" | "insert_estimate"
        | "insert_floor" | "insert_hole" => [
            "Set five inserts in the same plastic, made the same way; pull them out, and turn them out.",
            "Read the greatest force or torque of each.",
            "The five figures, and what gave way.",
        ],
        "lid_frequency" | "pane_frequency" => [
            "Tap the middle with a knuckle, the cover closed on its gasket and everything else at rest.",
            "Record it near the sheet with a phone; read the lowest clear peak of the spectrum.",
            "The frequency of three taps, and the temperature.",
        ],
        key if key.starts_with("lid_")
            || key.starts_with("pane_")
            || key == "critical_rise"
            || key.starts_with("pressed_sheet") =>
        {
            [
                "Load the closed cover as the row's load case says: sandbags for wind, a block under a weight for a hand, a heater \
             for warmth.",
                "Read a dial gauge in the middle and at the worst place, before, under load and after.",
                "Load, time, temperature, all three readings, every craze or crack at a hole.",
            ]
        }
        key if key.starts_with("seal_") => [
            "Close the cover on strips of paper and on balls of putty laid along the seal.",
            "Pull each strip; measure the height of each ball.",
            "A sketch of the seal with what was found at each place.",
        ],
        key if key.starts_with("latch_") || key.starts_with("closed_bay") => [
            "Work each latch with a spring balance at the end of its handle, the gasket laid.",
            "Read the greatest force and the travel from touching to closed.",
            "Force and travel of each latch, closing and opening.",
        ],
        key if key.starts_with("bond_") => [
            "Bond two strips as the part is bonded and let them cure; warm and cool them as in service ten times, then pull \
             them apart and peel one.",
            "Read the force; look whether the adhesive tore or let go.",
            "Surface, thickness of the bond line, force, share of the area that let go.",
        ],
        "layer_temperature"
        | "layer_cold"
        | "adhesive_temperature"
        | "adhesive_cold"
        | "gasket_temperature"
        | "gasket_cold"
        | "skin_temperature"
        | "backing_temperature"
        | "touch"
        | "touch_inner"
        | "dew"
        | "dew_pane" => [
            "Let the closed cover reach its steady temperature, warm side, cold side and sun as in service.",
            "Read a thermocouple taped to the place; for dew look and wipe.",
            "Temperatures of bay, air and place, sun, time, what is wet.",
        ],
        "keeper_pull_out" | "keeper_pull_through" | "tether" => [
            "Fasten one as ordered in a piece of the same sheet, and pull it in the direction of service.",
            "Raise the force slowly to the limit of this row and hold it for a minute, then on until it gives way. Stand \
             aside; wear eye protection.",
            "Sheet, thickness, fastener, force at which it moved and at which it let go.",
        ],
        "sealant_joint" => [
            "Fill a joint of the same width between two pieces of the same layers and let it cure; open and close it by the \
             movement ten times.",
            "Look for tears in the sealant and for edges that let go.",
            "Width, movement, temperature, what is seen.",
        ],
        "hole_movement_hot" | "hole_movement_cold" | "frame_growth" | "bush_length" | "damp_stiffness" => [
            "Warm and damp a sample of the layer as in service until it no longer grows.",
            "Measure between two scribed lines, and the play at the furthest hole.",
            "Length before and after, temperature, humidity, time.",
        ],
        "drain" | "leak_path_screws" | "leak_path_cut_out" => [
            "Pour water over the closed cover as it hangs.",
            "Look inside, and where water stands, after ten minutes.",
            "Where it came in, where it stands, how much.",
        ],
        "flammability" => [
            "Ask a specialist: how plastics, foams and adhesives burn is never judged here.",
            "By the test that the use asks for.",
            "Who decided, by which standard.",
        ],
        _ => return None,
    })
}
