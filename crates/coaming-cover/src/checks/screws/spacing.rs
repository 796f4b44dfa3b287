//! The pitch of the latches against the edge that must carry their force along the seal.

use coaming::gasket::GasketSpacing;
use coaming::prelude::*;

use crate::amount::{Amount, Measure};
use crate::checks::Subject;
use crate::checks::seal::gasket;
use crate::demand::{Bound, Demand, Finding, Need, NotChecked};
use crate::document::{LayerRole, Outline, Point};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// Compression between the latches over that at them when their pitch parameter is 2 (Hetényi).
const RATIO_AT_TWO: f64 = 0.852;

pub(in crate::checks) fn spacing(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let path = prepared.seal()?.path.as_ref().ok_or_else(|| NotChecked::needs("seal.path"))?;
    let positions = prepared.cover.latches.as_ref().and_then(|latches| latches.positions.as_ref());
    let positions = positions.ok_or_else(|| NotChecked::needs("latches.positions"))?;
    let pitch: Length = si(longest_pitch(path, positions)?);
    sheet.note("longest pitch along the seal", pitch.value, Measure::LENGTH);
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    let skin = skin.ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))?;
    let second_moment = sheet.given(
        "second moment of the edge",
        format!("layers.{}.edge_second_moment", skin.name),
        skin.edge_second_moment,
    )?;
    let material = prepared.material_of(skin)?;
    let youngs_modulus = sheet.property(&material, "youngs_modulus", &material.youngs_modulus)?;
    let gasket = gasket(prepared, &mut sheet)?;
    let compressed = gasket.compressed.value;
    if compressed <= 0.0 {
        return Err(NotChecked::Refused(Error::inconsistent(
            "seal.free_height, seal.stop_height",
            "the closed height must be below the free height",
        )));
    }
    // A sponge stiffens: from the softest secant to the stiffest of secant and tangent.
    let (secant_low, secant_high) = (gasket.line_force.0 / compressed, gasket.line_force.1 / compressed);
    let low = secant_low.min(gasket.line_stiffness.0);
    let high = secant_high.max(gasket.line_stiffness.1);
    let (limit, origin) = practice(prepared.limits.pitch_parameter());
    let mut ends = Vec::new();
    for line_stiffness in [low, high] {
        ends.push(sheet.run(&GasketSpacing {
            youngs_modulus,
            second_moment,
            line_stiffness: si(line_stiffness),
            pitch,
            mean_compressed: gasket.compressed,
            wanted_ratio: RATIO_AT_TWO,
        })?);
    }
    let [soft, stiff] = ends.as_slice() else { return Err(NotChecked::needs("seal")) };
    sheet.note("compression between over at the latches, stiffest", stiff.compression_ratio, Measure::Number);
    sheet.note("compressed between the latches, stiffest", stiff.compressed_between.value, Measure::LENGTH);
    sheet.say("The edge alone carries the force along the seal; the sheet behind it is left out. What lid, gasket and latches do together needs the panel solver.");
    sheet.at("pitch over the length on which the edge spreads a latch's force");
    if stiff.pitch_parameter > limit {
        let to: Length = si(limit / stiff.foundation_parameter.value);
        sheet.cure(
            "latches.positions",
            Amount::of(pitch),
            Amount::of(to),
            "latches closer together, a stiffer edge, or a softer gasket",
        );
    }
    let bound = Bound::AtMost { limit, marginal_above: None };
    let finding = Finding::Number {
        low: soft.pitch_parameter,
        high: stiff.pitch_parameter,
        measure: Measure::Number,
        bound,
    };
    Ok(sheet.finish(finding, origin))
}

/// The longest way along the seal from one latch to the next, in metres. Each latch stands at the point of the line
/// that is nearest to it, its corners taken as sharp; what their rounding cuts short comes off each way round one.
pub(in crate::checks) fn longest_pitch(path: &Outline, positions: &[Point]) -> Result<f64, NotChecked> {
    let corners = path.corners();
    if corners.is_empty() {
        return Err(NotChecked::not_calculated("the pitch along a round seal"));
    }
    let sharp: f64 = sides(&corners).map(length).sum();
    let cut = (sharp - path.perimeter()) / corners.len() as f64;
    let mut places: Vec<f64> =
        positions.iter().map(|point| place_along(&corners, (point.x.value, point.y.value), cut)).collect();
    places.sort_by(f64::total_cmp);
    let ends = places.first().copied().zip(places.last().copied());
    let (first, last) = ends.need(|| "latches.positions".to_owned())?;
    let round = path.perimeter() - last + first;
    Ok(places.iter().zip(places.iter().skip(1)).map(|(a, b)| b - a).fold(round, f64::max))
}

type Corner = (f64, f64);

fn sides(corners: &[Corner]) -> impl Iterator<Item = (Corner, Corner)> {
    corners.iter().copied().zip(corners.iter().copied().cycle().skip(1))
}

fn length((a, b): (Corner, Corner)) -> f64 {
    math::hypot(b.0 - a.0, b.1 - a.1)
}

/// Way along the line from its first corner to the place that is nearest to a point; each corner passed cuts it short.
fn place_along(corners: &[Corner], point: Corner, cut: f64) -> f64 {
    let (mut nearest, mut place, mut way) = (f64::INFINITY, 0.0, 0.0);
    for (a, b) in sides(corners) {
        let length = length((a, b));
        let (dx, dy) = ((b.0 - a.0) / length, (b.1 - a.1) / length);
        let along = ((point.0 - a.0) * dx + (point.1 - a.1) * dy).clamp(0.0, length);
        let distance = math::hypot(point.0 - a.0 - along * dx, point.1 - a.1 - along * dy);
        if distance < nearest {
            (nearest, place) = (distance, way + along);
        }
        way += length - cut;
    }
    place
}
