//! Gasket and latches.

use coaming::gasket::{GasketCorner, GasketStrip, GasketStripOutcome};
use coaming::prelude::*;

use super::item::Value;
use super::item::{Item, Line, band, found, given, length, limit, number, places, said, words};
use crate::amount::{Measure, Phrase};
use crate::checks::{latch_forces, line_force, most_loaded_latch, needed_travel};
use crate::demand::{Need, NotChecked};
use crate::document::{Direction, Outline, Rectangle, Seal};
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
    items.extend(joint(prepared, path, &strip, radius));
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

/// Where the joint of a bent strip lies: in the middle of a straight side, away from the low point where water stands.
fn joint(prepared: &Prepared<'_>, path: &Rectangle, strip: &GasketStripOutcome, radius: f64) -> Vec<Item> {
    if strip.joints > 1 {
        return vec![
            number("joints", Some(strip.joints), String::new),
            said("joints lie", "at the corners: seal those at the low point first"),
        ];
    }
    let gravity = prepared.cover.service.as_ref().and_then(|service| service.gravity.as_ref());
    let place = gravity.ok_or_else(|| NotChecked::needs("service.gravity")).and_then(|gravity| {
        let of = "a straight side for the joint: the corners leave none";
        side(path, radius, gravity).ok_or_else(|| NotChecked::not_calculated(of))
    });
    let (at, to_corner) = match place {
        Ok((at, straight)) => (Ok(vec![at]), Ok(straight / 2.0)),
        Err(why) => (Err(why.clone()), Err(why)),
    };
    vec![
        number("joints", Some(strip.joints), String::new),
        places("joint, in the middle of a straight side away from the low point", at),
        found("from the joint to the next corner", Measure::LENGTH, to_corner),
    ]
}

/// The middle of the straight side that lies highest, and its length; of sides as high as each other the longest.
fn side(path: &Rectangle, radius: f64, gravity: &Direction) -> Option<((f64, f64), f64)> {
    let (w, h) = (path.width.value, path.height.value);
    let sides = [((0.0, h / 2.0), w), ((0.0, -h / 2.0), w), ((w / 2.0, 0.0), h), ((-w / 2.0, 0.0), h)];
    let height = |at: (f64, f64)| -(at.0 * gravity.x + at.1 * gravity.y);
    let straight = sides.into_iter().map(|(at, side)| (at, side - 2.0 * radius)).filter(|side| side.1 > 0.0);
    straight.reduce(|best, other| {
        let (a, b) = (height(best.0), height(other.0));
        if b > a || (b == a && other.1 > best.1) { other } else { best }
    })
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

#[cfg(test)]
mod tests {
    use super::*;

    /// By eye: of an upright cover the joint lies in the middle of the upper side, 230 mm from where the corners begin.
    #[test]
    fn the_joint_lies_high_and_away_from_corners() {
        let path = Rectangle { width: mm(540.0), height: mm(400.0), corner_radius: Some(mm(40.0)) };
        let down = |x, y, z| Direction { x, y, z };
        assert_eq!(side(&path, 0.04, &down(0.0, -1.0, 0.0)), Some(((0.0, 0.2), 0.54 - 0.08)));
        assert_eq!(side(&path, 0.04, &down(1.0, 0.0, 0.0)), Some(((-0.27, 0.0), 0.4 - 0.08)));
        // Lying flat no side is low: a long one.
        assert_eq!(side(&path, 0.04, &down(0.0, 0.0, -1.0)), Some(((0.0, 0.2), 0.54 - 0.08)));
        assert_eq!(side(&path, 0.2, &down(0.0, 1.0, 0.0)).map(|side| side.0), Some((0.0, -0.2)));
    }
}
