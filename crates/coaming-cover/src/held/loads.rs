//! What acts on the lid, as the solver takes it: positive outward.

use coaming_panel::{Line, LineForce, Load, Outline, Pressure};

use super::places::{Over, over};
use super::setup::Joined;
use crate::document::{Layer, LayerRole};
use crate::prepared::Prepared;

/// Wind on the outer face; a pressure below zero lifts. What acts on a window over a cut-out comes to the sheet at the
/// edge of the cut-out: a sheet alone takes it there, evenly along that edge.
pub(crate) fn wind(prepared: &Prepared<'_>, joined: Joined, pressure: f64) -> Load {
    let mut load = Load::uniform_pressure(-pressure);
    let skins = prepared.cover.layers.iter().filter(|layer| layer.role == LayerRole::Skin);
    let Some(skin) = skins.into_iter().next().filter(|_| joined == Joined::SheetAlone) else { return load };
    for (hole, cut) in skin.cut_outs.iter().flatten().enumerate() {
        let covers = |layer: &&Layer| layer.name != skin.name && over(layer, cut) == Over::Covers;
        if prepared.cover.layers.iter().any(|layer| covers(&layer)) {
            let force = -pressure * cut.outline.area() / cut.outline.perimeter();
            load.line_forces.push(LineForce { line: Line::Hole(hole), force });
        }
    }
    load
}

/// A hand on a square patch, leaning inward.
pub(crate) fn lean((x, y): (f64, f64), force: f64, side: f64) -> Load {
    let region = Some(Outline::rectangle(x - side / 2.0, y - side / 2.0, side, side));
    let even = Pressure { region, ..Pressure::uniform(-force / (side * side)) };
    Load { pressures: vec![even], ..Load::default() }
}
