//! Parts, mass and centre of gravity.

use coaming::prelude::*;

use super::adhesives::{bead_volume, bond_volume, sealed};
use super::item::{Item, Line, Value, found, given, length, number, said, words};
use crate::amount::{Measure, Phrase};
use crate::checks::mass;
use crate::demand::{Need, NotChecked};
use crate::document::{Bush, ScrewPattern};
use crate::prepared::Prepared;
use crate::stack::{centre_of, height};
use crate::worksheet::Worksheet;

/// One part with its mass and its centre.
struct Part {
    name: String,
    /// What is said of it before its mass.
    items: Vec<Item>,
    mass: Result<f64, NotChecked>,
    plane: Result<(f64, f64), NotChecked>,
    z: Result<f64, NotChecked>,
    /// True for what the sum may leave out, by name.
    small: bool,
}

/// One line for each part, then the whole cover. z is measured from the inner face of the skin, outward.
pub(super) fn parts(prepared: &Prepared<'_>) -> Vec<Line> {
    let mut parts = layers(prepared);
    parts.extend(latches(prepared));
    parts.extend(gasket(prepared));
    parts.extend(bonds(prepared));
    parts.extend(beads(prepared));
    parts.extend(fasteners(prepared));
    parts.extend(prepared.cover.sealant_joints.iter().flatten().map(|joint| {
        let why = NotChecked::not_calculated("the mass and centre of a joint filled with sealant");
        let (mass, plane, z) = (Err(why.clone()), Err(why.clone()), Err(why));
        Part { name: format!("sealant joint {}", joint.name), items: Vec::new(), mass, plane, z, small: true }
    }));
    let cover = cover(&parts);
    let mut lines: Vec<Line> = parts.into_iter().map(line).collect();
    lines.push(cover);
    lines
}

fn line(part: Part) -> Line {
    let mut items = part.items;
    let known = part.mass.is_ok();
    items.push(found("mass", Measure::MASS, part.mass));
    if known {
        items.extend(centre(part.plane, part.z));
    }
    Line { part: part.name, items }
}

fn centre(plane: Result<(f64, f64), NotChecked>, z: Result<f64, NotChecked>) -> [Item; 3] {
    [
        found("centre of mass, x", Measure::LENGTH, plane.clone().map(|plane| plane.0)),
        found("centre of mass, y", Measure::LENGTH, plane.map(|plane| plane.1)),
        found("centre of mass, z", Measure::LENGTH, z),
    ]
}

fn layers(prepared: &Prepared<'_>) -> Vec<Part> {
    let of = |layer: &crate::document::Layer| {
        let path = |field: &str| format!("layers.{}.{field}", layer.name);
        let (width, height) = layer.outline.box_size();
        let centre = centre_of(prepared, layer);
        Part {
            name: layer.name.clone(),
            items: vec![
                number("pieces", Some(layer.pieces.unwrap_or(1)), String::new),
                words("material", layer.material.clone(), || path("material")),
                said("size over all", Phrase::with("{} x {}", [length(width), length(height)])),
                given("thickness", layer.thickness, || path("thickness")),
            ],
            mass: mass::of_layer(prepared, layer, &mut Worksheet::new()),
            plane: centre.plane,
            z: centre.z,
            small: false,
        }
    };
    prepared.cover.layers.iter().map(of).collect()
}

fn latches(prepared: &Prepared<'_>) -> Option<Part> {
    let latches = prepared.cover.latches.as_ref()?;
    let count = latches.count.need(|| "latches.count".to_owned());
    let each = latches.mass.need(|| "latches.mass".to_owned());
    let points = latches.positions.as_ref().filter(|points| !points.is_empty());
    let plane = points.ok_or_else(|| NotChecked::needs("latches.positions")).map(|points| {
        let number = points.len() as f64;
        let (x, y) = points.iter().fold((0.0, 0.0), |sum, at| (sum.0 + at.x.value, sum.1 + at.y.value));
        (x / number, y / number)
    });
    Some(Part {
        name: "latches".to_owned(),
        items: vec![number("pieces", latches.count, || "latches.count".to_owned())],
        mass: count.and_then(|count| Ok(f64::from(count) * each?.value)),
        plane,
        // Their height is not described; they sit at the edge of the sheet.
        z: Ok(0.0),
        small: false,
    })
}

fn gasket(prepared: &Prepared<'_>) -> Option<Part> {
    let seal = prepared.cover.seal.as_ref()?;
    let volume = || {
        let path = seal.path.as_ref().ok_or_else(|| NotChecked::needs("seal.path"))?;
        let height = seal.free_height.need(|| "seal.free_height".to_owned())?;
        let width = seal.width.need(|| "seal.width".to_owned())?;
        Ok(path.perimeter() * height.value * width.value)
    };
    let closed = seal.stop_height.or(seal.closed_height);
    let closed = closed.need(|| "seal.stop_height or seal.closed_height".to_owned());
    Some(Part {
        name: "gasket".to_owned(),
        items: vec![words("material", seal.material.clone(), || "seal.material".to_owned())],
        mass: of_material(prepared, seal.material.as_deref(), "seal.material", volume()),
        plane: match &seal.path {
            // A closed line that is symmetrical about the origin; of a polygon the centre of its line is not calculated.
            Some(crate::document::Outline::Polygon(_)) => {
                Err(NotChecked::not_calculated("the centre of a gasket along a polygon"))
            }
            Some(_) => Ok((0.0, 0.0)),
            None => Err(NotChecked::needs("seal.path")),
        },
        z: closed.map(|closed| -closed.value / 2.0),
        small: true,
    })
}

/// Mass in kilograms of a volume of a material by name.
fn of_material(
    prepared: &Prepared<'_>,
    name: Option<&str>,
    path: &str,
    volume: Result<f64, NotChecked>,
) -> Result<f64, NotChecked> {
    let name = name.ok_or_else(|| NotChecked::needs(path))?;
    let material = prepared.material(name, path)?;
    let density = Worksheet::new().property(&material, "density", &material.density)?;
    Ok(volume? * density.value)
}

fn bonds(prepared: &Prepared<'_>) -> Vec<Part> {
    let of = |bond: &crate::document::Bond| {
        // The bond line lies where the last of its layers does, on the face towards the other.
        let layer = bond.layers.last().and_then(|name| prepared.layer(name).ok());
        let unknown = || NotChecked::needs(format!("bonds.{}.layers", bond.name));
        let z = layer.ok_or_else(unknown).and_then(|layer| {
            let (low, high) = height(prepared, layer)?;
            Ok(if low.abs() < high.abs() { low } else { high })
        });
        let plane = layer.ok_or_else(unknown).and_then(|layer| centre_of(prepared, layer).plane);
        let path = format!("bonds.{}.adhesive", bond.name);
        Part {
            name: format!("adhesive of {}", bond.name),
            items: vec![words("material", bond.adhesive.clone(), || path.clone())],
            mass: of_material(prepared, bond.adhesive.as_deref(), &path, bond_volume(prepared, bond)),
            plane,
            z,
            small: true,
        }
    };
    prepared.cover.bonds.iter().flatten().map(of).collect()
}

/// The beads round cut-outs; with one sealant named they are of it.
fn beads(prepared: &Prepared<'_>) -> Vec<Part> {
    let sealants = prepared.cover.service.as_ref().and_then(|service| service.sealants.as_deref());
    let sealant = match sealants {
        Some([one]) => Some(one.as_str()),
        _ => None,
    };
    let mut parts = Vec::new();
    for layer in &prepared.cover.layers {
        for (nth, cut) in sealed(layer) {
            parts.push(Part {
                name: format!("bead round cut-out {} in {}", nth + 1, layer.name),
                items: Vec::new(),
                mass: of_material(
                    prepared,
                    sealant,
                    "one name in service.sealants",
                    bead_volume(layer, nth, cut),
                ),
                plane: Ok(cut.at.as_ref().map_or((0.0, 0.0), |at| (at.x.value, at.y.value))),
                z: height(prepared, layer).map(|(low, _)| low),
                small: true,
            });
        }
    }
    parts
}

/// Screws, inserts, washers and bushes: their number; of these the mass of bushes alone is calculated.
fn fasteners(prepared: &Prepared<'_>) -> Vec<Part> {
    let mut parts = Vec::new();
    for pattern in prepared.cover.screws.iter().flatten() {
        let kinds = [
            ("screws", true),
            ("inserts", pattern.insert.is_some()),
            ("sealing washers", super::holes::sealing_washers(pattern)),
        ];
        for (kind, _) in kinds.into_iter().filter(|kind| kind.1) {
            let why = NotChecked::not_calculated(format!("the mass of {kind}"));
            parts.push(Part {
                name: format!("{kind} of {}", pattern.name),
                items: vec![number("pieces", pattern.count, || format!("screws.{}.count", pattern.name))],
                mass: Err(why.clone()),
                plane: Err(why.clone()),
                z: Err(why),
                small: true,
            });
        }
        parts.extend(pattern.bush.iter().map(|bush| bushes(prepared, pattern, bush)));
    }
    parts
}

/// The bushes of a pattern: rings, in the middle of the layer that floats on them.
fn bushes(prepared: &Prepared<'_>, pattern: &ScrewPattern, bush: &Bush) -> Part {
    let at = |field: &str| format!("screws.{}.{field}", pattern.name);
    let volume = || {
        let outside = bush.outside_diameter.need(|| at("bush.outside_diameter"))?.value;
        let bore = bush.bore.need(|| at("bush.bore"))?.value;
        let length = bush.length.need(|| at("bush.length"))?.value;
        let count = pattern.count.need(|| at("count"))?;
        let ring = math::PI / 4.0 * (outside * outside - bore * bore).max(0.0) * length;
        Ok(f64::from(count) * ring)
    };
    let mean = |points: Vec<(f64, f64)>| {
        let number = points.len().max(1) as f64;
        let (x, y) = points.iter().fold((0.0, 0.0), |sum, point| (sum.0 + point.0, sum.1 + point.1));
        (x / number, y / number)
    };
    let middle = |layer| height(prepared, layer).map(|(low, high)| f64::midpoint(low, high));
    Part {
        name: format!("shoulder bushes of {}", pattern.name),
        items: vec![number("pieces", pattern.count, || at("count"))],
        mass: of_material(prepared, bush.material.as_deref(), &at("bush.material"), volume()),
        plane: super::holes::points(pattern).map(mean),
        z: prepared.layer(&bush.layer).and_then(middle),
        small: true,
    }
}

/// The sum of the parts. Without the mass of a layer or of the latches there is no sum; small parts are left out by name.
fn cover(parts: &[Part]) -> Line {
    let counted: Vec<&Part> = parts.iter().filter(|part| part.mass.is_ok() || !part.small).collect();
    let mass: Result<f64, NotChecked> = counted.iter().map(|part| part.mass.clone()).sum();
    let moment = |of: &dyn Fn(&Part) -> Result<f64, NotChecked>| -> Result<f64, NotChecked> {
        let total = mass.clone()?;
        let sum: Result<f64, NotChecked> =
            counted.iter().map(|part| Ok(part.mass.clone()? * of(part)?)).sum();
        if total > 0.0 { Ok(sum? / total) } else { Err(NotChecked::not_calculated("the centre of no mass")) }
    };
    let along = |pick: fn((f64, f64)) -> f64| moment(&|part: &Part| part.plane.clone().map(pick));
    let left_out = parts.iter().filter(|part| part.mass.is_err() && part.small);
    let mut names: Vec<&str> = left_out.map(|part| part.name.as_str()).collect();
    names.push("paint");
    let mut items = vec![found("mass", Measure::MASS, mass.clone())];
    items.extend([
        found("centre of gravity, x", Measure::LENGTH, along(|plane| plane.0)),
        found("centre of gravity, y", Measure::LENGTH, along(|plane| plane.1)),
        found("centre of gravity, z", Measure::LENGTH, moment(&|part: &Part| part.z.clone())),
    ]);
    items.push(said(
        "z is measured",
        "from the inner face of the skin, outward; the latches are taken to lie there",
    ));
    items.push(Item { label: "not counted", value: Value::Words(names.join(", ").into()) });
    Line { part: "the whole cover".to_owned(), items }
}
