//! The order of assembly: bends, inserts, bonds, sealant, screws, gasket, latches, each with its torque and its wait.

use coaming::prelude::*;

use super::adhesives::sealed;
use super::item::{Item, Line, given, hours, length, number, option, said, words};
use crate::amount::Phrase;
use crate::document::{Bond, Insert, InsertKind, Layer, ScrewPattern, Sealing};
use crate::prepared::Prepared;

/// One line for each step, in order.
pub(super) fn steps(prepared: &Prepared<'_>) -> Vec<Line> {
    let cover = prepared.cover;
    let mut steps: Vec<(String, Vec<Item>)> = Vec::new();
    let bent = cover.layers.iter().filter(|layer| layer.bends.iter().flatten().next().is_some());
    steps.extend(bent.map(bend));
    for pattern in cover.screws.iter().flatten() {
        steps.extend(pattern.insert.iter().map(|insert| set_inserts(pattern, insert)));
    }
    steps.extend(cover.bonds.iter().flatten().map(bond));
    let beads: Vec<String> = cover
        .layers
        .iter()
        .flat_map(|layer| sealed(layer).map(|(nth, _)| format!("cut-out {} in {}", nth + 1, layer.name)))
        .collect();
    if !beads.is_empty() {
        let what = format!("lay the bead round {}, and go on before it skins", beads.join(", "));
        steps.push(("Seal the cut-outs".to_owned(), vec![said("do", what), sealants(prepared)]));
    }
    steps.extend(cover.screws.iter().flatten().map(screw));
    let mut passed = cover.screws.iter().flatten().flat_map(|pattern| pattern.passes.iter().flatten());
    let wet = passed.any(|passed| passed.sealed_by == Some(Sealing::Sealant));
    if wet || !beads.is_empty() {
        let time = cover.service.as_ref().and_then(|service| service.sealant_cure_time);
        let wait = hours("wait", time, || "service.sealant_cure_time".to_owned());
        let what = "leave the cover lying until the sealant is cured, then check the screws by hand";
        steps.push(("Let the sealant cure".to_owned(), vec![said("do", what), wait]));
    }
    steps.extend(lay_gasket(prepared));
    steps.extend(fit_latches(prepared));
    steps.push((
        "Close and test".to_owned(),
        vec![said("do", "close the lid latch by latch, crosswise, then make the tests of this sheet")],
    ));
    let numbered = steps.into_iter().enumerate();
    numbered.map(|(nth, (title, items))| Line { part: format!("{}. {title}", nth + 1), items }).collect()
}

fn bend(layer: &Layer) -> (String, Vec<Item>) {
    let edges: Vec<&str> = layer.bends.iter().flatten().map(|bend| Choice::name(bend.edge)).collect();
    let words = format!(
        "bend a test strip of the same sheet first and compare its deduction; drill and deburr on the flat; then bend the {} \
         edge, as the brake allows",
        edges.join(", ")
    );
    (format!("Bend {}", layer.name), vec![said("do", words)])
}

fn set_inserts(pattern: &ScrewPattern, insert: &Insert) -> (String, Vec<Item>) {
    let at = |field: &str| format!("screws.{}.insert.{field}", pattern.name);
    let how = match insert.kind {
        Some(InsertKind::MouldedIn) => Some("mould them in, square to the face"),
        Some(InsertKind::HeatSet) => Some("set them hot and square, press flush with a flat plate, let cool"),
        Some(InsertKind::PressedIn) => Some("press them in square, without turning"),
        Some(InsertKind::SelfTapping) => Some("drive them in square, slowly, so that the plastic stays cool"),
        Some(InsertKind::RivetNut) => Some("set them with the maker's tool and stroke"),
        None => None,
    };
    let items = vec![
        words("do", how.map(str::to_owned), || at("kind")),
        number("inserts", pattern.count, || format!("screws.{}.count", pattern.name)),
        given("diameter of the hole", insert.hole_diameter, || at("hole_diameter")),
        given("depth of the hole", insert.hole_depth, || at("hole_depth")),
        said("check", "each is flush, and a screw turns in by hand to the full depth"),
    ];
    (format!("Set the inserts of {} in {}", pattern.name, insert.layer), items)
}

fn bond(bond: &Bond) -> (String, Vec<Item>) {
    let at = |field: &str| format!("bonds.{}.{field}", bond.name);
    let items = vec![
        said(
            "do",
            "clean, abrade and prime both faces as the adhesive's data sheet says; spread on one, join, clamp evenly",
        ),
        words("adhesive", bond.adhesive.clone(), || at("adhesive")),
        given("spacers that keep the bond line", bond.thickness, || at("thickness")),
        hours("wait, clamped", bond.cure_time, || at("cure_time")),
    ];
    (format!("Bond {}: {}", bond.name, bond.layers.join(" and ")), items)
}

fn sealants(prepared: &Prepared<'_>) -> Item {
    let sealants = prepared.cover.service.as_ref().and_then(|service| service.sealants.as_ref());
    let names = sealants.filter(|names| !names.is_empty()).map(|names| names.join(", "));
    words("sealant", names, || "service.sealants".to_owned())
}

fn screw(pattern: &ScrewPattern) -> (String, Vec<Item>) {
    let at = |field: &str| format!("screws.{}.{field}", pattern.name);
    let passed = pattern.passes.as_ref().map(|passes| {
        let mut names: Vec<String> = passes.iter().map(|passed| passed.layer.clone()).collect();
        names.extend(pattern.insert.iter().map(|insert| format!("the inserts in {}", insert.layer)));
        names.join(", then ")
    });
    let mut items = vec![words("through, from the head", passed, || at("passes"))];
    if let Some(bush) = &pattern.bush {
        items.push(said("bushes", format!("put a shoulder bush into every hole of {} first", bush.layer)));
    }
    let wet: Vec<&str> = pattern
        .passes
        .iter()
        .flatten()
        .filter(|passed| passed.sealed_by == Some(Sealing::Sealant))
        .map(|passed| passed.layer.as_str())
        .collect();
    if !wet.is_empty() {
        items.push(said("sealant", format!("set each screw wet in {}", wet.join(", "))));
    }
    items.extend([
        number("screws", pattern.count, || at("count")),
        option("size", pattern.size, || at("size")),
        given("length", pattern.length, || at("length")),
        option("locking", pattern.locking, || at("locking")),
        given("tighten to", pattern.torque, || at("torque")),
        said("do", "turn all in by hand; tighten crosswise from the middle outward, first to half the torque, then to all of it"),
    ]);
    (format!("Screw {}", pattern.name), items)
}

fn lay_gasket(prepared: &Prepared<'_>) -> Option<(String, Vec<Item>)> {
    let seal = prepared.cover.seal.as_ref()?;
    let items = vec![
        said(
            "do",
            "clean and dry the face; lay the strip without stretching it, press it down, cut the joint square and glue it",
        ),
        words("backing", seal.backing.clone(), || "seal.backing".to_owned()),
        said("joint", "as the section on the gasket says: away from corners and the low point"),
    ];
    Some(("Lay the gasket".to_owned(), items))
}

fn fit_latches(prepared: &Prepared<'_>) -> Option<(String, Vec<Item>)> {
    let latches = prepared.cover.latches.as_ref()?;
    let seal = prepared.cover.seal.as_ref();
    let (stop, closed) = (seal.and_then(|seal| seal.stop_height), seal.and_then(|seal| seal.closed_height));
    let mut items = vec![number("latches", latches.count, || "latches.count".to_owned())];
    items.push(match (stop, closed) {
        (Some(stop), _) => {
            let words = "set each until the lid just rests on the stops of {}, no further";
            said("do", Phrase::with(words, [length(stop.value)]))
        }
        (None, Some(closed)) => {
            let words = "set each until the gasket is closed to {} there";
            said("do", Phrase::with(words, [length(closed.value)]))
        }
        (None, None) => words("do", None, || "seal.stop_height or seal.closed_height".to_owned()),
    });
    items.push(given("adjustment either way", latches.adjustment, || "latches.adjustment".to_owned()));
    Some(("Fit and set the latches".to_owned(), items))
}
