//! Leak paths: what pierces the outer layer within the seal line, and where water that comes in all the same runs out.

use coaming::prelude::*;

use crate::amount::{Amount, Measure};
use crate::checks::movement::passed;
use crate::checks::screws::passes_that;
use crate::checks::{Check, Subject, name, whole};
use crate::demand::{Demand, Need, NotChecked, Origin, Ruling};
use crate::document::{Direction, LayerRole, Outline, Point, Positions, Sealing};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// Below this share of gravity in its plane a cover is taken as lying flat.
const FLAT: f64 = 0.1;

/// The checks of leak paths.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "leak_path_screws",
        title: "Screw holes through the outer layer",
        case: None,
        subjects: |prepared| {
            let through_skin = |subject: &Subject| {
                let layer = subject.get(1).and_then(|layer| prepared.layer(layer).ok());
                layer.is_some_and(|layer| layer.role == LayerRole::Skin)
            };
            passes_that(prepared, |_| true).into_iter().filter(through_skin).collect()
        },
        demand: screw_holes,
    },
    Check {
        key: "leak_path_cut_out",
        title: "Cut-out through the outer layer",
        case: None,
        subjects: |prepared| {
            let skins = prepared.cover.layers.iter().filter(|layer| layer.role == LayerRole::Skin);
            skins
                .flat_map(|layer| {
                    let count = layer.cut_outs.iter().flatten().count();
                    (1..=count).map(|nth| vec![layer.name.clone(), nth.to_string()])
                })
                .collect()
        },
        demand: cut_out,
    },
    Check { key: "drain", title: "Drain at the low point", case: None, subjects: whole, demand: drain },
];

const NEEDS: &str = "each hole within the seal line is sealed itself";

fn rule() -> Origin {
    Origin::Published(Source::common_practice(
        "a hole through the outer layer lies outside the seal line or is sealed",
    ))
}

/// True where every one of some points surely lies outside a line. Only a rectangle is looked at: within any other a
/// point may lie, and then it is taken to.
fn all_outside(path: &Outline, points: &[(f64, f64)]) -> bool {
    let Outline::Rectangle(line) = path else { return false };
    let (x, y) = (line.width.value / 2.0, line.height.value / 2.0);
    points.iter().all(|point| point.0.abs() > x || point.1.abs() > y)
}

fn screw_holes(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let pattern = prepared.pattern(name(subject, 0)?)?;
    let layer = name(subject, 1)?;
    let path = prepared.seal()?.path.as_ref().ok_or_else(|| NotChecked::needs("seal.path"))?;
    let positions = pattern.positions.as_ref();
    let positions =
        positions.ok_or_else(|| NotChecked::needs(format!("screws.{}.positions", pattern.name)))?;
    let outside = match positions {
        // The screws stand along the sides, not at the corners alone: a side within the line leaves some within.
        Positions::Rectangle(on) => {
            let (x, y) = (on.width.value / 2.0, on.height.value / 2.0);
            all_outside(path, &[(x, 0.0), (0.0, y)])
        }
        Positions::Points(at) => {
            let points: Vec<(f64, f64)> =
                at.points.iter().map(|point| (point.x.value, point.y.value)).collect();
            all_outside(path, &points)
        }
    };
    let sheet = Worksheet::new();
    if outside {
        return Ok(sheet.rule("they lie outside the seal line", NEEDS, Ruling::Holds, rule()));
    }
    let path = format!("screws.{}.passes.{layer}.sealed_by", pattern.name);
    sealed(sheet, passed(pattern, layer)?.sealed_by, path, "sealant or a sealing washer under each head")
}

fn cut_out(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let nth: usize = name(subject, 1)?.parse().map_err(|_| NotChecked::needs("the place of a cut-out"))?;
    let path = format!("layers.{}.cut_outs[{}]", layer.name, nth.saturating_sub(1));
    let cut_out = layer.cut_outs.iter().flatten().nth(nth.saturating_sub(1));
    let cut_out = cut_out.ok_or_else(|| NotChecked::needs(path.clone()))?;
    let advice = "a bead of sealant or a gasket between pane and sheet";
    sealed(Worksheet::new(), cut_out.sealed_by, format!("{path}.sealed_by"), advice)
}

/// A hole within the seal line with what seals it.
fn sealed(
    mut sheet: Worksheet,
    by: Option<Sealing>,
    path: String,
    advice: &str,
) -> Result<Demand, NotChecked> {
    let by = by.need(|| path.clone())?;
    sheet.advise(path, advice);
    let (finds, ruling) = match by {
        Sealing::Nothing => ("within the seal line, and open".to_owned(), Ruling::Broken),
        by => {
            (format!("within the seal line, sealed by {}", Choice::name(by).replace('_', " ")), Ruling::Holds)
        }
    };
    Ok(sheet.rule(finds, NEEDS, ruling, rule()))
}

/// How far a place lies down the way of gravity in the cover's plane.
fn depth(gravity: &Direction, (x, y): (f64, f64)) -> f64 {
    let size = math::hypot(gravity.x, gravity.y);
    (x * gravity.x + y * gravity.y) / size
}

/// The lowest drain above the lowest point of the opening, as the cover hangs.
fn drain(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let service = prepared.cover.service.as_ref();
    let gravity = service.and_then(|service| service.gravity.as_ref());
    let gravity = gravity.ok_or_else(|| NotChecked::needs("service.gravity"))?;
    let drains = service.and_then(|service| service.bay.as_ref()).and_then(|bay| bay.drains.as_ref());
    let drains = drains.ok_or_else(|| NotChecked::needs("service.bay.drains"))?;
    let mut sheet = Worksheet::new();
    sheet.advise("service.bay.drains", "weep holes at the low points of the opening");
    let practice_rule =
        || Origin::Published(Source::common_practice("water that gets in runs out at the low point"));
    if math::hypot(gravity.x, gravity.y) <= FLAT * math::hypot(math::hypot(gravity.x, gravity.y), gravity.z) {
        let finds = "the cover lies flat: water stands where it bows";
        return Ok(sheet.rule(finds, "poured on, no water stands", Ruling::NeedsTest, practice_rule()));
    }
    if drains.is_empty() {
        return Ok(sheet.rule("no drain", "a drain at the low point", Ruling::Broken, practice_rule()));
    }
    let outline = &prepared.cover.opening.outline;
    let corners = outline.corners();
    let low = match corners.is_empty() {
        true => outline.box_size().0 / 2.0,
        false => corners.iter().map(|corner| depth(gravity, *corner)).fold(f64::NEG_INFINITY, f64::max),
    };
    let at = |point: &Point| depth(gravity, (point.x.value, point.y.value));
    let lowest = drains.iter().map(at).fold(f64::NEG_INFINITY, f64::max);
    let (limit, origin) = practice(prepared.limits.drain_height());
    let above = (low - lowest).max(0.0);
    if above > limit {
        let length = |si| Amount { si, measure: Measure::LENGTH };
        sheet.cure("service.bay.drains", length(above), length(limit), "weep holes lower down");
    }
    sheet.note_words("gravity along x, y, z", format!("{}, {}, {}", gravity.x, gravity.y, gravity.z));
    sheet.note("low point of the opening, from the origin along gravity", low, Measure::LENGTH);
    sheet.note("lowest drain, from the origin along gravity", lowest, Measure::LENGTH);
    sheet.reckon("height of the drain = low point − lowest drain, both along gravity in the cover's plane");
    sheet.at("lowest drain above the low point of the opening");
    Ok(sheet.at_most(above, Measure::LENGTH, limit, origin))
}
