//! Where the pane rings, as it is held.

use coaming::material::Material;
use coaming::plate::{EdgeSupport, RectangularPlateFrequency};
use coaming::prelude::*;

use crate::amount::Measure;
use crate::checks::pane::span;
use crate::checks::pane::states::limits;
use crate::checks::{Subject, name, orders};
use crate::demand::{Demand, NotChecked};
use crate::document::{Layer, LoadKind};
use crate::held;
use crate::prepared::{Prepared, property};
use crate::worksheet::Worksheet;

/// The lowest mode of the pane as a band: over both limits of how it is held, as stiff as it is cold and hot.
pub(super) fn frequency(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    orders::excitations(prepared)?;
    let material = prepared.material_of(layer)?;
    let density = sheet.property(&material, "density", &material.density)?;
    let (mut low, mut high) = (f64::INFINITY, 0.0);
    for (stiffness, youngs_modulus) in stiffness_range(prepared, layer, &material, &mut sheet)? {
        for limit in limits(prepared, layer, held::Rest::SpanAlone, youngs_modulus, &mut sheet)? {
            let (frequency, error) = held::pane_mode(prepared, &limit.panel)?;
            sheet.note(&format!("first mode, {}{stiffness}", limit.name), frequency, Measure::FREQUENCY);
            sheet.note(&format!("its error, {}{stiffness}", limit.name), error, Measure::Percent);
            low = f64::min(low, frequency * (1.0 - error));
            high = f64::max(high, frequency * (1.0 + error));
        }
        beside(layer, &material, (youngs_modulus, density), stiffness, &mut sheet);
    }
    sheet.solved(held::PANEL_SOLVER);
    sheet.say("A pane that plays in its lap rings lower the harder it is shaken, down to its softest limit.");
    sheet.say("Panel solver: the pane by itself, between its free span alone, supported, and its lap flat. Sheet and frame are taken as stiff.");
    let (lever, words) = (
        format!("layers.{}.thickness", layer.name),
        "another thickness or span; thicker can move it onto the next order",
    );
    orders::against(prepared, sheet, (low, high), lever, words)
}

/// The closed form beside the solver's number, for the long story: what it refuses takes nothing from the row.
fn beside(
    layer: &Layer,
    material: &Material,
    (youngs_modulus, mass_density): (Pressure, MassDensity),
    stiffness: &str,
    sheet: &mut Worksheet,
) {
    let (Ok((length, width)), Some(thickness)) = (span(layer, sheet), layer.thickness) else { return };
    let Ok(poissons_ratio) = sheet.property(material, "poisson_ratio", &material.poisson_ratio) else {
        return;
    };
    let outcome = sheet.run(&RectangularPlateFrequency {
        length,
        width,
        thickness,
        youngs_modulus,
        poissons_ratio,
        mass_density,
        added_mass_per_area: None,
        edge_support: EdgeSupport::Supported,
    });
    if let Ok(outcome) = outcome {
        let label = format!("supported plate, first mode{stiffness}");
        sheet.note(&label, outcome.frequency.value, Measure::FREQUENCY);
    }
}

/// Young's modulus cold and hot where the material's is known over temperature and the load cases give the pane's own
/// temperatures; the one at room temperature otherwise.
fn stiffness_range(
    prepared: &Prepared<'_>,
    layer: &Layer,
    material: &Material,
    sheet: &mut Worksheet,
) -> Result<Vec<(&'static str, Pressure)>, NotChecked> {
    let mut known = Vec::new();
    for (words, kind) in [(", cold", LoadKind::Cold), (", hot", LoadKind::Hot)] {
        if let Ok(temperature) = prepared.temperature(kind, &layer.name)
            && let Some(figure) = material.youngs_modulus_at(temperature)
        {
            known.push((words, sheet.figure(material, "youngs_modulus", figure)));
        }
    }
    if known.is_empty() {
        sheet.say("Stiffness at room temperature: a warm pane rings lower.");
        let figure = property(material, "youngs_modulus", &material.youngs_modulus)?;
        known.push(("", sheet.figure(material, "youngs_modulus", figure)));
    }
    Ok(known)
}
