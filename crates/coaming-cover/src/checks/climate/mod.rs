//! Warmth and damp: how hot each layer gets, dew, and the pressure of a closed bay.

pub(super) mod faces;
pub(super) mod service_temperature;

use coaming::material::{Material, MaterialKind};
use coaming::prelude::*;
use coaming::thermal::{
    BayPressure, BayPressureOutcome, ContactTime, DewPoint, LayerTemperatures, LayerTemperaturesOutcome,
    ThermalLayer, TouchMaterial, TouchTemperature,
};

use crate::amount::{Amount, Measure, Phrase};
use crate::checks::pane::panes;
use crate::checks::{Check, Subject, latch_forces, name, whole};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin, Ruling};
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
        demand: closed_bay,
    },
    Check {
        key: "closed_bay_latch",
        title: "Latch under the pressure of a closed bay",
        case: Some(LoadKind::Hot),
        subjects: whole,
        demand: closed_bay_latch,
    },
    Check {
        key: "dew",
        title: "Dew on the inner face of the skin",
        case: Some(LoadKind::Cold),
        subjects: whole,
        demand: dew,
    },
    Check {
        key: "dew_pane",
        title: "Dew on the inner face of the pane",
        case: Some(LoadKind::Cold),
        subjects: panes,
        demand: |prepared, subject| {
            let pane = prepared.layer(name(subject, 0)?)?;
            let mut sheet = Worksheet::new();
            let faces = faces_in_damp(prepared, &mut sheet, &[pane])?;
            sheet.advise(
                "service.bay.humidity",
                "drier air, a second pane with air between, or drains for what runs down",
            );
            wet(prepared, sheet, [faces, faces])
        },
    },
    Check {
        key: "touch",
        title: "Outer face in the sun, to the touch",
        case: Some(LoadKind::Sun),
        subjects: whole,
        demand: |prepared, _| touch(prepared, Face::Outer),
    },
    Check {
        key: "touch_inner",
        title: "Inner face on opening, to the touch",
        case: Some(LoadKind::Opening),
        subjects: whole,
        demand: |prepared, _| touch(prepared, Face::Inner),
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

fn closed_bay(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let bay = bay(prepared)?;
    let vented = bay.vented.need(|| "service.bay.vented".to_owned())?;
    let mut sheet = Worksheet::new();
    let needs = "a bay that warms has a breather";
    let rule = Origin::Published(Source::common_practice("a bay that warms has a breather and a drain"));
    if vented {
        return Ok(sheet.rule("the bay breathes", needs, Ruling::Holds, rule));
    }
    let outcome = risen(prepared, bay, &mut sheet)?;
    sheet.note("rise by the dry gas", outcome.dry_gas_rise.value, Measure::PRESSURE);
    sheet.note("rise by the vapour", outcome.vapour_rise.value, Measure::PRESSURE);
    sheet.note("lift on the lid", outcome.lift.value, Measure::FORCE);
    sheet.note("lift on each latch", outcome.latch_lift.value, Measure::FORCE);
    sheet.note("force that throws the lid when the last latch lets go", outcome.lift.value, Measure::FORCE);
    sheet.advise("service.bay.vented", "a breather, and weep holes at the low points");
    let finds = Phrase::with(
        "closed, it rises by {} and lifts the lid with {}",
        [
            Amount { si: outcome.pressure_rise.value, measure: Measure::PRESSURE },
            Amount { si: outcome.lift.value, measure: Measure::FORCE },
        ],
    );
    let ruling = if outcome.pressure_rise.value > 0.0 { Ruling::Broken } else { Ruling::Holds };
    Ok(sheet.rule(finds, needs, ruling, rule))
}

/// The pressure of a bay that was closed and then warmed.
fn risen(
    prepared: &Prepared<'_>,
    bay: &Bay,
    sheet: &mut Worksheet,
) -> Result<BayPressureOutcome, NotChecked> {
    let closing_temperature = sheet.given("closed at", "service.bay.closed_at", bay.closed_at)?;
    let service_temperature = sheet.given("bay in operation", "service.bay.temperature", bay.temperature)?;
    let humidity = sheet.number("humidity in operation", "service.bay.humidity", bay.humidity)?;
    let path = prepared.seal()?.path.as_ref().ok_or_else(|| NotChecked::needs("seal.path"))?;
    let latches = prepared.cover.latches.as_ref().and_then(|latches| latches.count);
    sheet.run(&BayPressure {
        closing_temperature,
        closing_humidity: ambient_humidity(bay)?,
        closing_pressure: pascal(101_325.0),
        service_temperature,
        service_humidity: humidity,
        lid_area: si(path.area()),
        latches: latches.need(|| "latches.count".to_owned())?,
    })
}

/// What a latch carries while the bay is under pressure: its share of the gasket and of the lift.
fn closed_bay_latch(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let bay = bay(prepared)?;
    let vented = bay.vented.need(|| "service.bay.vented".to_owned())?;
    let mut sheet = Worksheet::new();
    if vented {
        let rule = Origin::Published(Source::common_practice("a bay that breathes does not lift its lid"));
        return Ok(sheet.rule("the bay breathes", "no lift on the latches", Ruling::Holds, rule));
    }
    let outcome = risen(prepared, bay, &mut sheet)?;
    let lift = outcome.latch_lift.value.max(0.0);
    sheet.note("lift on each latch", lift, Measure::FORCE);
    let forces = latch_forces(prepared, &mut sheet)?;
    let load = prepared.cover.latches.as_ref().and_then(|latches| latches.working_load);
    let load = sheet.given("maker's working load", "latches.working_load", load)?;
    let [low, high] = forces.map(|force| force.latch_force.value + lift);
    sheet.advise("service.bay.vented", "a breather, and weep holes at the low points");
    let bound = Bound::AtMost { limit: load.value, marginal_above: None };
    let finding = Finding::Number { low, high, measure: Measure::FORCE, bound };
    Ok(sheet.finish(finding, Origin::Maker("latches.working_load".to_owned())))
}

/// Humidity of the bay when it was closed.
fn ambient_humidity(bay: &Bay) -> Result<f64, NotChecked> {
    bay.closed_at_humidity.need(|| "service.bay.closed_at_humidity".to_owned())
}

/// The inner face of the skin, where a liner covers it and where it leaves it bare.
fn dew(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    sheet.advise("layers", "a liner, drier air, or drains for what runs down");
    let bare = faces_in_damp(prepared, &mut sheet, &layers_at(prepared, Lined::Bare)?)?;
    if liners(prepared).next().is_none() {
        return wet(prepared, sheet, [bare, bare]);
    }
    let lined = faces_in_damp(prepared, &mut sheet, &layers_at(prepared, Lined::Lined)?)?;
    sheet.note("inner face, lined", lined.value, Measure::TEMPERATURE);
    sheet.say("What the liner leaves bare, such as the rim and the seal line, is as cold as without it.");
    wet(prepared, sheet, [bare, lined])
}

/// Temperature of the inner face on a cool day with a damp bay, the sun away.
fn faces_in_damp(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    layers: &[&Layer],
) -> Result<Temperature, NotChecked> {
    let bay = bay(prepared)?;
    let inside = sheet.given("bay", "service.bay.dew_temperature", bay.dew_temperature)?;
    let outside = sheet.given("weather", "service.bay.dew_ambient", bay.dew_ambient)?;
    let sun = (watt_per_square_meter(0.0), 0.0);
    Ok(stack(prepared, sheet, (inside, outside), sun, layers)?.inner_face_temperature)
}

/// A face, between its coldest and its warmest place, against the dew point of the bay.
fn wet(
    prepared: &Prepared<'_>,
    mut sheet: Worksheet,
    [coldest, warmest]: [Temperature; 2],
) -> Result<Demand, NotChecked> {
    let bay = bay(prepared)?;
    let inside = sheet.given("bay", "service.bay.dew_temperature", bay.dew_temperature)?;
    let humidity = sheet.number("humidity", "service.bay.humidity", bay.humidity)?;
    let mut above = |face: Temperature| {
        let outcome = sheet.run(&DewPoint {
            air_temperature: inside,
            relative_humidity: humidity,
            face_temperature: Some(face),
        })?;
        let margin = outcome.face_margin.need(|| "service.bay".to_owned())?;
        Ok::<_, NotChecked>((margin.value, outcome.dew_point))
    };
    let (low, dew_point) = above(coldest)?;
    let (high, _) = above(warmest)?;
    sheet.note("dew point", dew_point.value, Measure::TEMPERATURE);
    sheet.note("inner face", coldest.value, Measure::TEMPERATURE);
    let temperature = |si: f64| Amount { si, measure: Measure::TEMPERATURE };
    let faces = [temperature(coldest.value), temperature(warmest.value), temperature(dew_point.value)];
    let [cold, _, dew] = faces;
    sheet.at(match coldest == warmest {
        true => Phrase::with("inner face above the dew point: {} and {}", [cold, dew]),
        false => Phrase::with("inner face above the dew point: bare {}, lined {}, and {}", faces),
    });
    let origin = Origin::Published(Source::common_practice("a face below the dew point gets wet"));
    let finding = Finding::Number {
        low: low.min(high),
        high: low.max(high),
        measure: Measure::DIFFERENCE,
        bound: Bound::AtLeast { limit: 0.0 },
    };
    Ok(sheet.finish(finding, origin))
}

/// A flag, never a pass: the shortest contact whose threshold is held is a minute, and a hand stays less or more.
fn touch(prepared: &Prepared<'_>, side: Face) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let touched = match side {
        Face::Outer => skin(prepared)?,
        // The hand finds the innermost layer: a liner where there is one.
        Face::Inner => {
            let liner = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Liner);
            liner.map_or_else(|| skin(prepared), Ok)?
        }
    };
    let face_material = match prepared.material_of(touched)?.kind {
        MaterialKind::Metal | MaterialKind::Laminate => TouchMaterial::Metal,
        _ => TouchMaterial::Plastic,
    };
    sheet.note_words("face", Choice::name(face_material));
    let bare = sunlit(prepared, &mut sheet, Lined::Bare)?;
    let lined = match liners(prepared).next() {
        Some(_) => sunlit(prepared, &mut sheet, Lined::Lined)?,
        None => bare.clone(),
    };
    let (face_temperature, words) = match side {
        Face::Outer => {
            let warmer = bare.outer_face_temperature.value.max(lined.outer_face_temperature.value);
            (si(warmer), "outer")
        }
        Face::Inner => (lined.inner_face_temperature, "inner"),
    };
    let outcome = sheet.run(&TouchTemperature {
        face_temperature,
        face_material,
        contact_time: ContactTime::OneMinute,
    })?;
    sheet.note("burn threshold, one minute", outcome.threshold.value, Measure::TEMPERATURE);
    let face = Amount { si: face_temperature.value, measure: Measure::TEMPERATURE };
    let past = Amount { si: outcome.margin.value.abs(), measure: Measure::DIFFERENCE };
    let over = if outcome.margin.value < 0.0 { "over" } else { "below" };
    sheet.advise("layers", "a lighter colour, shade, a label, or a handle that stays cool");
    let [source] = TouchTemperature::SOURCE else {
        return Err(NotChecked::not_calculated("a burn threshold without a source"));
    };
    Ok(sheet.rule(
        Phrase::with(
            format!("the {words} face reaches {{}}, {{}} {over} the burn threshold of one minute"),
            [face, past],
        ),
        "judged by ISO 13732-1 with material and contact time",
        Ruling::NeedsTest,
        Origin::Published(*source),
    ))
}
