//! Screws, washers, inserts and bushes.

use coaming::prelude::*;

use super::holes::sealing_washers;
use super::item::{Line, given, number, option, said, words};
use crate::prepared::Prepared;

/// One line for each pattern: the screw, and its tightening.
pub(super) fn screws(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for pattern in prepared.cover.screws.iter().flatten() {
        let at = |field: &str| format!("screws.{}.{field}", pattern.name);
        let head = pattern.countersunk_head.map(Choice::name).or(pattern.flat_head.map(Choice::name));
        lines.push(Line {
            part: pattern.name.clone(),
            items: vec![
                number("screws", pattern.count, || at("count")),
                option("size", pattern.size, || at("size")),
                given("length", pattern.length, || at("length")),
                words("head", head.map(str::to_owned), || at("countersunk_head or flat_head")),
                words("material", pattern.material.clone(), || at("material")),
                given("tightening torque", pattern.torque, || at("torque")),
                option("locking", pattern.locking, || at("locking")),
            ],
        });
        if let Some(insert) = &pattern.insert {
            lines.push(Line {
                part: format!("inserts of {}", pattern.name),
                items: vec![
                    number("inserts", pattern.count, || at("count")),
                    option("kind", insert.kind, || at("insert.kind")),
                    words("material", insert.material.clone(), || at("insert.material")),
                    given("outside diameter", insert.outside_diameter, || at("insert.outside_diameter")),
                    given("length of thread", insert.thread_length, || at("insert.thread_length")),
                    given("hole, diameter", insert.hole_diameter, || at("insert.hole_diameter")),
                    given("hole, depth", insert.hole_depth, || at("insert.hole_depth")),
                ],
            });
        }
        if let Some(bush) = &pattern.bush {
            lines.push(Line {
                part: format!("shoulder bushes of {}", pattern.name),
                items: vec![
                    number("bushes", pattern.count, || at("count")),
                    words("material", bush.material.clone(), || at("bush.material")),
                    given("outside diameter", bush.outside_diameter, || at("bush.outside_diameter")),
                    given("bore", bush.bore, || at("bush.bore")),
                    given("length", bush.length, || at("bush.length")),
                    given("deviation of the length", bush.length_tolerance, || at("bush.length_tolerance")),
                    said("carries", bush.layer.clone()),
                ],
            });
        }
        let washers = match sealing_washers(pattern) {
            true => number("sealing washers", pattern.count, || at("count")),
            false => said("washers", "none described"),
        };
        lines.push(Line { part: format!("washers of {}", pattern.name), items: vec![washers] });
    }
    lines
}
