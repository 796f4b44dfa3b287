//! Warmth and damp: how hot each layer gets, dew, and the pressure of a closed bay.

mod closed_bay;
mod dew;
pub(super) mod faces;
pub(super) mod service_temperature;
mod touch;

use coaming::material::{Material, MaterialKind};
use coaming::prelude::*;
use coaming::thermal::{LayerTemperatures, LayerTemperaturesOutcome, ThermalLayer};

use crate::amount::Measure;
use crate::checks::pane::panes;
use crate::checks::{Check, Subject, name, whole};
use crate::demand::{Demand, Need, NotChecked, Origin};
use crate::document::{Ambient, Bay, Face, Layer, LayerRole, LoadKind};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The checks of warmth and damp.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "layer_temperature",
        title: "Layer against its service temperature",
        case: Some(LoadKind::Hot),
        subjects: can_soften,
        demand: layer_temperature,
    },
    Check {
        key: "skin_temperature",
        title: "Skin in the sun against its service temperature",
        case: Some(LoadKind::Sun),
        subjects: |prepared| {
            let skin = |subject: &Subject| {
                let layer = subject.first().and_then(|name| prepared.layer(name).ok());
                layer.is_some_and(|layer| layer.role == LayerRole::Skin)
            };
            can_soften(prepared).into_iter().filter(skin).collect()
        },
        demand: |prepared, subject| {
            let layer = prepared.layer(name(subject, 0)?)?;
            let material = prepared.material_of(layer)?;
            let mut sheet = Worksheet::new();
            let bare = sunlit(prepared, &mut sheet, Lined::Bare)?;
            let mut warmest = bare.outer_face_temperature.value.max(bare.inner_face_temperature.value);
            if liners(prepared).next().is_some() {
                let lined = sunlit(prepared, &mut sheet, Lined::Lined)?;
                warmest = warmest.max(lined.outer_face_temperature.value);
            }
            sheet.at("warmest face of the skin in the sun");
            against_service(prepared, sheet, &material, warmest)
        },
    },
    Check {
        key: "backing_temperature",
        title: "Adhesive backing of the gasket",
        case: Some(LoadKind::Sun),
        subjects: whole,
        demand: |prepared, _| {
            let backing = prepared.seal()?.backing.need(|| "seal.backing".to_owned())?;
            let material = prepared.material(&backing, "seal.backing")?;
            let mut sheet = Worksheet::new();
            // The gasket lies outside every liner, on the bare sheet.
            let outcome = sunlit(prepared, &mut sheet, Lined::Bare)?;
            let warmest = outcome.outer_face_temperature.value.max(outcome.inner_face_temperature.value);
            sheet.at("warmest face of the skin in the sun");
            against_service(prepared, sheet, &material, warmest)
        },
    },
    Check {
        key: "closed_bay",
        title: "Pressure of the closed bay",
        case: Some(LoadKind::Hot),
        subjects: whole,
        demand: closed_bay::closed_bay,
    },
    Check {
        key: "closed_bay_latch",
        title: "Latch under the pressure of a closed bay",
        case: Some(LoadKind::Hot),
        subjects: whole,
        demand: closed_bay::closed_bay_latch,
    },
    Check {
        key: "dew",
        title: "Dew on the inner face of the skin",
        case: Some(LoadKind::Cold),
        subjects: whole,
        demand: dew::dew,
    },
    Check {
        key: "dew_pane",
        title: "Dew on the inner face of the pane",
        case: Some(LoadKind::Cold),
        subjects: panes,
        demand: |prepared, subject| {
            let pane = prepared.layer(name(subject, 0)?)?;
            let mut sheet = Worksheet::new();
            let faces = dew::faces_in_damp(prepared, &mut sheet, &[pane])?;
            sheet.advise(
                "service.bay.humidity",
                "drier air, a second pane with air between, or drains for what runs down",
            );
            dew::wet(prepared, sheet, [faces, faces])
        },
    },
    Check {
        key: "touch",
        title: "Outer face in the sun, to the touch",
        case: Some(LoadKind::Sun),
        subjects: whole,
        demand: |prepared, _| touch::touch(prepared, Face::Outer),
    },
    Check {
        key: "touch_inner",
        title: "Inner face on opening, to the touch",
        case: Some(LoadKind::Opening),
        subjects: whole,
        demand: |prepared, _| touch::touch(prepared, Face::Inner),
    },
];

/// The weather side.
pub(super) fn ambient<'a>(prepared: &Prepared<'a>) -> Result<&'a Ambient, NotChecked> {
    let service = prepared.cover.service.as_ref();
    service.and_then(|service| service.ambient.as_ref()).ok_or_else(|| NotChecked::needs("service.ambient"))
}

/// The warm side.
pub(super) fn bay<'a>(prepared: &Prepared<'a>) -> Result<&'a Bay, NotChecked> {
    let service = prepared.cover.service.as_ref();
    service.and_then(|service| service.bay.as_ref()).ok_or_else(|| NotChecked::needs("service.bay"))
}

/// The sheet that closes the opening.
fn skin<'a>(prepared: &Prepared<'a>) -> Result<&'a Layer, NotChecked> {
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    skin.ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))
}

/// The liners, from the bay outward.
fn liners<'a>(prepared: &Prepared<'a>) -> impl Iterator<Item = &'a Layer> {
    prepared.cover.layers.iter().filter(|layer| layer.role == LayerRole::Liner)
}

/// Whether a face is looked at where the liner covers the skin, or where it leaves it bare.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lined {
    /// The skin alone.
    Bare,
    /// With every liner behind it.
    Lined,
}

/// The skin between the bay's air and the weather's, with the liners behind it or without.
fn layers_at<'a>(prepared: &Prepared<'a>, lined: Lined) -> Result<Vec<&'a Layer>, NotChecked> {
    let mut layers: Vec<&Layer> = match lined {
        Lined::Lined => liners(prepared).collect(),
        Lined::Bare => Vec::new(),
    };
    layers.push(skin(prepared)?);
    Ok(layers)
}

/// Layers between the bay's air and the weather's, from the bay outward.
fn stack(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    (inside, outside): (Temperature, Temperature),
    (irradiance, solar_absorptance): (HeatFlux, f64),
    layers: &[&Layer],
) -> Result<LayerTemperaturesOutcome, NotChecked> {
    let inner_film = sheet.given("film, inner face", "service.bay.film", bay(prepared)?.film)?;
    let outer_film = sheet.given("film, outer face", "service.ambient.film", ambient(prepared)?.film)?;
    let mut stacked = Vec::new();
    for layer in layers {
        let thickness = sheet.given(
            &format!("thickness of {}", layer.name),
            format!("layers.{}.thickness", layer.name),
            layer.thickness,
        )?;
        let material = prepared.material_of(layer)?;
        let conductivity =
            sheet.property(&material, "thermal_conductivity", &material.thermal_conductivity)?;
        stacked.push(ThermalLayer { name: layer.name.clone(), thickness, conductivity });
    }
    sheet.run(&LayerTemperatures {
        inner_air_temperature: inside,
        outer_air_temperature: outside,
        inner_film,
        outer_film,
        irradiance,
        solar_absorptance,
        inner_radiant_flux: watt_per_square_meter(0.0),
        layers: stacked,
    })
}

/// The skin in the sun on the hottest day, with the bay in operation.
pub(super) fn sunlit(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    lined: Lined,
) -> Result<LayerTemperaturesOutcome, NotChecked> {
    let inside = sheet.given("bay", "service.bay.temperature", bay(prepared)?.temperature)?;
    let outside = sheet.given("weather", "service.ambient.highest", ambient(prepared)?.highest)?;
    let sun = sheet.given("sun", "service.ambient.sun", ambient(prepared)?.sun)?;
    let skin = skin(prepared)?;
    let path = format!("layers.{}.solar_absorptance", skin.name);
    let absorptance = sheet.number("share of the sun taken up", path, skin.solar_absorptance)?;
    let layers = layers_at(prepared, lined)?;
    let outcome = stack(prepared, sheet, (inside, outside), (sun, absorptance), &layers)?;
    let place = match lined {
        Lined::Bare => "",
        Lined::Lined => ", lined",
    };
    sheet.note(&format!("outer face{place}"), outcome.outer_face_temperature.value, Measure::TEMPERATURE);
    sheet.note(&format!("inner face{place}"), outcome.inner_face_temperature.value, Measure::TEMPERATURE);
    Ok(outcome)
}

/// The layers that warmth can soften: every one but metal, and those whose material is not known.
pub(super) fn can_soften(prepared: &Prepared<'_>) -> Vec<Subject> {
    let soft = |layer: &&Layer| {
        prepared.material_of(layer).map_or(true, |material| material.kind != MaterialKind::Metal)
    };
    prepared.cover.layers.iter().filter(soft).map(|layer| vec![layer.name.clone()]).collect()
}

fn layer_temperature(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let material = prepared.material_of(layer)?;
    let mut sheet = Worksheet::new();
    let temperature = prepared.temperature(LoadKind::Hot, &layer.name)?;
    sheet.note("temperature of the layer", temperature.value, Measure::TEMPERATURE);
    against_service(prepared, sheet, &material, temperature.value)
}

/// A temperature against what a material stands for good. A ratio of absolute temperatures says nothing: the margin is
/// one of rises above the temperature at assembly.
pub(super) fn against_service(
    prepared: &Prepared<'_>,
    mut sheet: Worksheet,
    material: &Material,
    warmest: f64,
) -> Result<Demand, NotChecked> {
    let limit = sheet.property(material, "service_temperature", &material.service_temperature)?;
    let from = prepared.assembled_at()?.value;
    sheet.note("temperature at assembly", from, Measure::TEMPERATURE);
    sheet
        .reckon("rise = highest temperature − temperature at assembly; margin = (limit − assembly)/rise − 1");
    sheet.say("The margin is one of rises above the temperature at assembly.");
    sheet.advise("layers", "a lighter colour, shade, or a material that stands more");
    let origin = Origin::Design(format!("materials.{}.service_temperature", material.key));
    Ok(sheet.at_most(warmest - from, Measure::Risen { from }, limit.value - from, origin))
}
