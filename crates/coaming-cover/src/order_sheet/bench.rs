//! The tests to make on every cover, before the blanks are cut and after the lid is hung: common practice of the bench.

use coaming::prelude::*;

use super::item::{Item, Line, Value, length, limit, said};
use crate::amount::{Amount, Measure, Phrase};
use crate::checks::sheet::flat::deduction;
use crate::checks::{insert_pull_due, seal_extremes};
use crate::demand::{Need, NotChecked};
use crate::document::{Layer, LayerRole, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// One line for each test.
pub(super) fn tests(prepared: &Prepared<'_>) -> Vec<Line> {
    let cover = prepared.cover;
    let bent = cover.layers.iter().filter(|layer| layer.bends.iter().flatten().next().is_some());
    let mut lines: Vec<Line> = bent.map(bend_strip).collect();
    for pattern in cover.screws.iter().flatten().filter(|pattern| pattern.insert.is_some()) {
        lines.push(insert_pull(prepared, pattern));
        lines.push(insert_torque(prepared, pattern));
    }
    let orders = orders(prepared);
    if !orders.is_empty() {
        let of = |role| cover.layers.iter().find(|layer| layer.role == role);
        let tapped = [LayerRole::Skin, LayerRole::Pane].into_iter().filter_map(of);
        lines.extend(tapped.map(|layer| tap(prepared, layer, &orders)));
    }
    if cover.seal.is_some() {
        lines.push(paper_strip());
        lines.push(putty(prepared));
    }
    if cover.latches.is_some() {
        lines.push(hand_force(prepared));
    }
    lines
}

/// A test: what to do, how to measure, what to write down, what passes, and room for it.
fn test(part: String, [do_it, measure, write]: [&str; 3], passes: Vec<Item>) -> Line {
    let mut items =
        vec![said("what to do", do_it), said("how to measure", measure), said("write down", write)];
    items.extend(passes);
    items.extend(blanks());
    Line { part, items }
}

/// What the bench fills in: a blank is no result.
pub(super) fn blanks() -> [Item; 2] {
    ["measured", "date and name"].map(|label| said(label, "__________"))
}

fn unknown(label: &'static str, why: NotChecked) -> Item {
    Item { label, value: Value::Unknown(why) }
}

fn bend_strip(layer: &Layer) -> Line {
    let mut due: Vec<Item> = Vec::new();
    for bend in layer.bends.iter().flatten() {
        let path = format!("layers.{}.bends.{}", layer.name, Choice::name(bend.edge));
        let item = match deduction(&mut Worksheet::new(), layer, bend, &path) {
            Ok((due, _)) => {
                let words =
                    "its deduction is {}, as on this sheet; otherwise correct k_factor and review anew";
                said("passes when", Phrase::with(words, [length(due)]))
            }
            Err(why) => unknown("passes when", why),
        };
        if !due.contains(&item) {
            due.push(item);
        }
    }
    due.push(said("passes when", "no crack shows on the outside under a magnifier"));
    let words = [
        "Cut a strip of the same sheet, about 20 thicknesses wide, with the grain as in the part. Bend it once in the \
         middle, with the die, punch and angle of the part.",
        "Measure the strip's length before; after, both legs over the outside and the angle. Deduction = leg + leg - length.",
        "Sheet and heat number, die opening, punch, grain, length, both legs, angle, inside radius, cracks.",
    ];
    test(format!("Bend strip of {}", layer.name), words, due)
}

fn at_least(measure: Measure, outcome: Result<f64, NotChecked>) -> Vec<Item> {
    let label = "passes when each holds at least";
    vec![match outcome {
        Ok(si) => Item { label, value: Value::Amount(Amount { si, measure }) },
        Err(why) => unknown(label, why),
    }]
}

fn insert_pull(prepared: &Prepared<'_>, pattern: &ScrewPattern) -> Line {
    let (factor, origin) = prepared.limits.insert_factor();
    let words = [
        "Set five inserts in a piece of the same plastic, made the same way and in the same direction, dried or damp as in \
         service. Pull each out by a screw through a plate with a hole twice the insert's diameter.",
        "Raise the force slowly with a spring balance, press or lever, and read the greatest. Stand aside; wear eye protection.",
        "Plastic, direction of its layers, hole diameter, force of each of the five, and whether insert or plastic gave way.",
    ];
    // The same number as the review's row of this insert.
    let due = insert_pull_due(prepared, pattern);
    let counted = due.as_ref().ok().map(|(_, bears)| match bears {
        true => "the pull in service alone, for what is clamped bears on the insert",
        false => {
            "the greatest preload and the pull in service, for what is clamped does not bear on the insert"
        }
    });
    let mut passes = at_least(Measure::FORCE, due.map(|(due, _)| due));
    passes.extend(counted.map(|words| said("what is counted", words)));
    passes.push(limit("factor on the pull", factor, Measure::Number, origin));
    test(format!("Insert pull, {}", pattern.name), words, passes)
}

fn insert_torque(prepared: &Prepared<'_>, pattern: &ScrewPattern) -> Line {
    let (factor, origin) = prepared.limits.insert_factor();
    let torque = pattern.torque.need(|| format!("screws.{}.torque", pattern.name));
    let words = [
        "Turn a screw with a nut locked on it against five inserts set as above, until each turns in the plastic.",
        "Read the greatest torque with a torque wrench.",
        "Torque of each of the five, and whether insert or plastic gave way.",
    ];
    let mut passes = at_least(Measure::TORQUE, torque.map(|torque| factor * torque.value));
    passes.push(limit("factor on the tightening torque", factor, Measure::Number, origin));
    test(format!("Insert torque, {}", pattern.name), words, passes)
}

/// The frequencies that shake, in hertz, in rising order.
fn orders(prepared: &Prepared<'_>) -> Vec<f64> {
    let service = prepared.cover.service.as_ref();
    let excitations = service.and_then(|service| service.excitations.as_ref()).into_iter().flatten();
    let mut orders: Vec<f64> = excitations
        .flat_map(|excitation| excitation.orders.iter().map(|order| order * excitation.speed.value))
        .collect();
    orders.sort_by(f64::total_cmp);
    orders.dedup();
    orders
}

fn tap(prepared: &Prepared<'_>, layer: &Layer, orders: &[f64]) -> Line {
    let (separation, origin) = prepared.limits.order_separation();
    let mut amounts = vec![Amount { si: separation, measure: Measure::Percent }];
    amounts.extend(orders.iter().map(|si| Amount { si: *si, measure: Measure::FREQUENCY }));
    let places = vec!["{}"; orders.len()].join(", ");
    let passes = Phrase::with(format!("no ringing lies within {{}} of {places}"), amounts);
    let words = [
        "Close the cover on its gasket. Tap the middle with a knuckle, with everything else at rest.",
        "Record it near the sheet with a phone; read the lowest clear peak of the spectrum. Tap three times.",
        "The frequency of each tap, and the temperature.",
    ];
    test(
        format!("Tap test of {}", layer.name),
        words,
        vec![said("passes when", passes), limit("separation", separation, Measure::Percent, origin)],
    )
}

fn paper_strip() -> Line {
    let words = [
        "Lay strips of thin paper, two fingers wide, across the gasket: at each latch, halfway between latches, at each \
         corner and at the joint. Close all latches.",
        "Pull each strip slowly by hand.",
        "A sketch of the seal with each place: held, drags or slips.",
    ];
    test(
        "Paper strip round the seal".to_owned(),
        words,
        vec![said(
            "passes when",
            "every strip is held or tears; one that slips marks a place without compression",
        )],
    )
}

fn putty(prepared: &Prepared<'_>) -> Line {
    let window = prepared.seal().and_then(|seal| {
        let free = seal.free_height.need(|| "seal.free_height".to_owned())?.value;
        Ok((free, seal_extremes(prepared, seal.kind.need(|| "seal.kind".to_owned())?)))
    });
    let label = "passes when every height lies within";
    let passes = match window {
        Ok((free, [least, most])) => {
            let (low, high) = (free * (1.0 - most.0), free * (1.0 - least.0));
            vec![
                Item { label, value: Value::Band { low, high, measure: Measure::LENGTH } },
                limit("least compression", least.0, Measure::Percent, least.1),
                limit("most compression", most.0, Measure::Percent, most.1),
            ]
        }
        Err(why) => vec![unknown(label, why)],
    };
    let words = [
        "Take the gasket off, or before it is laid: put balls of soft putty on its line at the same places, wrapped in film. \
         Close all latches, open again.",
        "Measure the height of each flattened ball with a depth gauge or calipers.",
        "A sketch of the seal with the height at each place.",
    ];
    test("Gap round the seal".to_owned(), words, passes)
}

fn hand_force(prepared: &Prepared<'_>) -> Line {
    let (most, origin) = prepared.limits.hand_force();
    let words = [
        "Close and open each latch with a spring balance hooked to the end of its handle, the gasket laid, all others closed.",
        "Pull square to the handle and read the greatest force.",
        "The force of each latch, closing and opening.",
    ];
    let passes = limit("passes when each is at most", most, Measure::FORCE, origin);
    test("Hand force of each latch".to_owned(), words, vec![passes])
}
