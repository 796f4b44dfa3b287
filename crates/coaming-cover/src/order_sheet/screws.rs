//! The hole list, screws and inserts.

use coaming::prelude::*;

use super::{Item, Line, Value, found, given, words};
use crate::amount::Measure;
use crate::checks::countersink;
use crate::demand::NotChecked;
use crate::document::ScrewPattern;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Every pattern of the cover.
fn patterns<'a>(prepared: &Prepared<'a>) -> impl Iterator<Item = &'a ScrewPattern> {
    prepared.cover.screws.iter().flatten()
}

fn number(label: &'static str, count: Option<u32>, path: impl FnOnce() -> String) -> Item {
    words(label, count.map(|count| count.to_string()), path)
}

/// One line for each layer that a pattern passes: the holes with their role, and the countersink.
pub(super) fn holes(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for pattern in patterns(prepared) {
        let path = format!("screws.{}", pattern.name);
        for passed in pattern.passes.iter().flatten() {
            let at = |field: &str| format!("{path}.passes.{}.{field}", passed.layer);
            let mut items = vec![
                number("holes", pattern.count, || format!("{path}.count")),
                given("diameter", passed.hole, || at("hole")),
                words("role", passed.role.map(|role| Choice::name(role).to_owned()), || at("role")),
            ];
            if passed.countersunk == Some(true) {
                let sunk = countersink(prepared, pattern, passed, &mut Worksheet::new());
                let of = |pick: fn(&coaming::fastener::CountersunkHeadOutcome) -> f64| {
                    sunk.as_ref().map(pick).map_err(Clone::clone)
                };
                items.push(found(
                    "countersink, diameter at the face",
                    Measure::LENGTH,
                    &of(|sunk| sunk.countersink_diameter.value),
                ));
                items.push(found(
                    "countersink, depth",
                    Measure::LENGTH,
                    &of(|sunk| sunk.countersink_depth.value),
                ));
                items.push(found(
                    "countersink, included angle",
                    Measure::of::<Angle>(),
                    &of(|sunk| sunk.included_angle.value),
                ));
            }
            lines.push(Line { part: format!("{} in {}", pattern.name, passed.layer), items });
        }
        if let Some(insert) = &pattern.insert {
            let at = |field: &str| format!("{path}.insert.{field}");
            let hole: Result<f64, NotChecked> =
                Err(NotChecked::needs("the maker's hole for this insert in this plastic"));
            lines.push(Line {
                part: format!("inserts of {} in {}", pattern.name, insert.layer),
                items: vec![
                    number("holes", pattern.count, || format!("{path}.count")),
                    given("depth", insert.hole_depth, || at("hole_depth")),
                    given("outside diameter of the insert", insert.outside_diameter, || {
                        at("outside_diameter")
                    }),
                    found("diameter of the hole", Measure::LENGTH, &hole),
                ],
            });
        }
    }
    lines
}

/// One line for each pattern: the screw, and its tightening.
pub(super) fn screws(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for pattern in patterns(prepared) {
        let at = |field: &str| format!("screws.{}.{field}", pattern.name);
        let head = pattern.countersunk_head.map(Choice::name).or(pattern.flat_head.map(Choice::name));
        lines.push(Line {
            part: pattern.name.clone(),
            items: vec![
                number("screws", pattern.count, || at("count")),
                words("size", pattern.size.map(|size| Choice::name(size).to_owned()), || at("size")),
                given("length", pattern.length, || at("length")),
                words("head", head.map(str::to_owned), || at("countersunk_head or flat_head")),
                words("material", pattern.material.clone(), || at("material")),
                given("tightening torque", pattern.torque, || at("torque")),
                words(
                    "locking",
                    pattern.locking.map(|locking| Choice::name(locking).replace('_', " ")),
                    || at("locking"),
                ),
            ],
        });
        if let Some(insert) = &pattern.insert {
            let kind = insert.kind.map(|kind| Choice::name(kind).replace('_', " "));
            lines.push(Line {
                part: format!("inserts of {}", pattern.name),
                items: vec![
                    number("inserts", pattern.count, || at("count")),
                    words("kind", kind, || at("insert.kind")),
                    words("material", insert.material.clone(), || at("insert.material")),
                    given("length of thread", insert.thread_length, || at("insert.thread_length")),
                ],
            });
        }
        if let Some(bush) = &pattern.bush {
            lines.push(Line {
                part: format!("shoulder bushes of {}", pattern.name),
                items: vec![
                    number("bushes", pattern.count, || at("count")),
                    given("outside diameter", bush.outside_diameter, || at("bush.outside_diameter")),
                    given("length", bush.length, || at("bush.length")),
                    Item { label: "carries", value: Value::Words(bush.layer.clone()) },
                ],
            });
        }
    }
    lines
}
