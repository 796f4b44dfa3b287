//! Gasket and latches.

use coaming::gasket::{GasketCorner, GasketStrip, GasketStripOutcome};
use coaming::prelude::*;

use super::gasket_joint::{JointPlace, joint_place};
use super::item::Value;
use super::item::{Item, Line, band, found, given, length, limit, number, places, said, words};
use crate::amount::{Measure, Phrase};
use crate::checks::{latch_forces, line_force, most_loaded_latch, needed_travel};
use crate::demand::{Need, NotChecked};
use crate::document::{Outline, Rectangle, Seal};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The gasket: its section, pieces, corners, joint, stops and the force that closes it.
pub(super) fn gasket(prepared: &Prepared<'_>) -> Vec<Line> {
    let Some(seal) = &prepared.cover.seal else { return Vec::new() };
    let at = |field: &str| format!("seal.{field}");
    let mut items = vec![
        words("material", seal.material.clone(), || at("material")),
        given("free height", seal.free_height, || at("free_height")),
        given("width", seal.width, || at("width")),
    ];
    items.extend(strip(prepared, seal));
    items.extend([
        given("height of the stops", seal.stop_height, || at("stop_height")),
        given("deviation of the stops", seal.stop_tolerance, || at("stop_tolerance")),
        band(
            "line force when closed",
            Measure::Quantity(&Dimension::FORCE_PER_LENGTH, "N/mm"),
            line_force(prepared, &mut Worksheet::new()),
        ),
        words("adhesive backing", seal.backing.clone(), || at("backing")),
    ]);
    vec![Line { part: "gasket".to_owned(), items }]
}

/// What to cut: along a rectangle by its corners, along any other line its length alone.
fn strip(prepared: &Prepared<'_>, seal: &Seal) -> Vec<Item> {
    let path = match &seal.path {
        Some(Outline::Rectangle(path)) => path,
        Some(other) => {
            let corners = NotChecked::not_calculated("corners and joints along a line that is no rectangle");
            return vec![
                found("length on the centre line", Measure::LENGTH, Ok(other.perimeter())),
                Item { label: "corners and joint", value: Value::Unknown(corners) },
            ];
        }
        None => {
            return vec![found(
                "length on the centre line",
                Measure::LENGTH,
                Err(NotChecked::needs("seal.path")),
            )];
        }
    };
    let radius = path.corner_radius.map_or(0.0, |radius| radius.value);
    let strip = seal.width.need(|| "seal.width".to_owned()).and_then(|width| {
        let (ratio, _) = prepared.limits.gasket_corner();
        let (extra, whence) = prepared.limits.gasket_extra_length();
        let strip = GasketStrip {
            length: path.width,
            width: path.height,
            strip_width: width,
            corner: if radius > 0.0 { GasketCorner::Bent } else { GasketCorner::Mitred },
            corner_radius: si(radius),
            smallest_radius_ratio: ratio,
            extra_length: extra,
        };
        Ok((strip.calculate().map_err(NotChecked::Refused)?.0, (extra, whence)))
    });
    let (strip, (extra, whence)) = match strip {
        Ok(found) => found,
        Err(why) => return vec![found("cut length", Measure::LENGTH, Err(why))],
    };
    let mut items = vec![
        found("length on the centre line", Measure::LENGTH, Ok(strip.path_length.value)),
        found("cut length, all pieces", Measure::LENGTH, Ok(strip.cut_length.value)),
        limit("of which extra, so that the joint is pressed", extra, Measure::Percent, whence),
        number("pieces", Some(strip.pieces), String::new),
    ];
    items.extend(corners(prepared, &strip, radius));
    items.extend(joint(prepared, path, &strip, seal));
    items
}

fn corners(prepared: &Prepared<'_>, strip: &GasketStripOutcome, radius: f64) -> Vec<Item> {
    if let (Some(long), Some(short)) = (strip.long_piece, strip.short_piece) {
        return vec![
            said("corners", "mitred at 45 degrees, bonded and sealed"),
            found("two long pieces, over the long edge", Measure::LENGTH, Ok(long.value)),
            found("two short pieces, over the long edge", Measure::LENGTH, Ok(short.value)),
        ];
    }
    let template = match strip.corner_bends {
        Some(false) => {
            "bent round a radius of {} on the centre line, where a strip of this width buckles: cut the corners from sheet \
             instead"
        }
        _ => "bent round a radius of {} on the centre line",
    };
    let (ratio, whence) = prepared.limits.gasket_corner();
    vec![
        said("corners", Phrase::with(template, [length(radius)])),
        limit("smallest radius that bends, over the width", ratio, Measure::Number, whence),
    ]
}

/// Where the joint of a bent strip lies, and why there.
fn joint(prepared: &Prepared<'_>, path: &Rectangle, strip: &GasketStripOutcome, seal: &Seal) -> Vec<Item> {
    if strip.joints > 1 {
        return vec![
            number("joints", Some(strip.joints), String::new),
            said("joints lie", "at the corners: seal those at the low point first"),
        ];
    }
    let width = seal.width.need(|| "seal.width".to_owned());
    let place = width.and_then(|width| joint_place(prepared, path, width));
    let why = match &place {
        Ok(JointPlace { beside: Some(nth), .. }) => format!(
            "on the highest straight side, one strip width beside latch {nth}: pressed most there, away from corners and the low point"
        ),
        _ => "in the middle of the highest straight side, away from corners and the low point".to_owned(),
    };
    let (at, to_corner) = match place {
        Ok(place) => (Ok(vec![place.at]), Ok(place.to_corner)),
        Err(why) => (Err(why.clone()), Err(why)),
    };
    vec![
        number("joints", Some(strip.joints), String::new),
        places("joint", at),
        found("from the joint to the next corner", Measure::LENGTH, to_corner),
        said("joint lies", why),
    ]
}

/// The latches: number, places, grip, force, hand force and travel.
pub(super) fn latches(prepared: &Prepared<'_>) -> Vec<Line> {
    let Some(latches) = &prepared.cover.latches else { return Vec::new() };
    let at = |field: &str| format!("latches.{field}");
    let forces = latch_forces(prepared, &mut Worksheet::new());
    let pair = |pick: fn(&coaming::latch::LatchForceOutcome) -> Force| {
        forces.as_ref().map(|[low, high]| (pick(low).value, pick(high).value)).map_err(Clone::clone)
    };
    let [pull, hand] = most_loaded_latch(prepared);
    let even = pair(|outcome| outcome.latch_force);
    // What the solver refuses is told beside the even share; what the document lacks leaves the line open.
    let hand = match hand {
        Err(why @ (NotChecked::Refused(_) | NotChecked::NotCalculated { .. })) => vec![
            band("hand force on the most loaded latch", Measure::FORCE, Err(why)),
            band("hand force, shared evenly", Measure::FORCE, pair(|outcome| outcome.hand_force)),
        ],
        known => vec![band("hand force on the most loaded latch", Measure::FORCE, known)],
    };
    let positions = latches.positions.as_ref().ok_or_else(|| NotChecked::needs(at("positions")));
    let positions =
        positions.map(|points| points.iter().map(|point| (point.x.value, point.y.value)).collect());
    let closed = prepared.cover.seal.as_ref().and_then(|seal| seal.stop_height.or(seal.closed_height));
    let mut items = vec![
        number("latches", latches.count, || at("count")),
        places("centres of pull", positions),
        given("grip: gap that each holds closed", closed, || {
            "seal.stop_height or seal.closed_height".to_owned()
        }),
        given("stand-off between lid and frame besides", latches.stand_off, || at("stand_off")),
        given("travel", latches.travel, || at("travel")),
        found("travel needed to close", Measure::LENGTH, needed_travel(prepared, &mut Worksheet::new())),
        given("adjustment either way", latches.adjustment, || at("adjustment")),
        band("force on the most loaded latch", Measure::FORCE, pull),
        band("force on each if they shared evenly", Measure::FORCE, even),
        given("the maker's working load", latches.working_load, || at("working_load")),
    ];
    items.extend(hand);
    items.push(given("mass of each with its keeper", latches.mass, || at("mass")));
    vec![Line { part: "latches".to_owned(), items }]
}
