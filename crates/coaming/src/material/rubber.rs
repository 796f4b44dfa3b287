//! Solid rubbers by hardness. The modulus follows from the hardness by Gent's relation, ±20 % and more.

use super::agent::{Agent, Family};
use super::entry::{estimate, typical};
use super::lookup::Row;
use super::record::{Flammability, Material, MaterialKind};
use super::sources::*;
use crate::prelude::*;

pub(super) const TABLE: &[Row] = &[
    ("epdm_solid_40", |key| rubber(key, EPDM, 0)),
    ("epdm_solid_50", |key| rubber(key, EPDM, 1)),
    ("epdm_solid_60", |key| rubber(key, EPDM, 2)),
    ("epdm_solid_70", |key| rubber(key, EPDM, 3)),
    ("epdm_solid_80", |key| rubber(key, EPDM, 4)),
    ("nitrile_solid_40", |key| rubber(key, NITRILE, 0)),
    ("nitrile_solid_50", |key| rubber(key, NITRILE, 1)),
    ("nitrile_solid_60", |key| rubber(key, NITRILE, 2)),
    ("nitrile_solid_70", |key| rubber(key, NITRILE, 3)),
    ("nitrile_solid_80", |key| rubber(key, NITRILE, 4)),
    ("silicone_solid_40", |key| rubber(key, SILICONE, 0)),
    ("silicone_solid_50", |key| rubber(key, SILICONE, 1)),
    ("silicone_solid_60", |key| rubber(key, SILICONE, 2)),
    ("silicone_solid_70", |key| rubber(key, SILICONE, 3)),
    ("silicone_solid_80", |key| rubber(key, SILICONE, 4)),
];

/// What a base polymer brings to each of its hardnesses.
struct Polymer {
    name: &'static str,
    family: Family,
    agent: Agent,
    density: f64,
    highest: (f64, &'static str),
    lowest: f64,
}

const EPDM: Polymer = Polymer {
    name: "EPDM, solid",
    family: Family::Epdm,
    agent: Agent::EpdmGasket,
    density: 1150.0,
    highest: (100.0, "BA, 70 h of ageing; peroxide-cured CA 125 degC"),
    lowest: -40.0,
};
const NITRILE: Polymer = Polymer {
    name: "nitrile, solid",
    family: Family::Nitrile,
    agent: Agent::NitrileGasket,
    density: 1250.0,
    highest: (100.0, "BF and BG, 70 h of ageing"),
    lowest: -25.0,
};
const SILICONE: Polymer = Polymer {
    name: "silicone, solid",
    family: Family::SiliconeRubber,
    agent: Agent::SiliconeGasket,
    density: 1150.0,
    highest: (200.0, "FC and FE, 70 h of ageing"),
    lowest: -60.0,
};

/// Hardness in Shore A, and Young's modulus by Gent in MPa, E = 0.0981 (56 + 7.62336 S) / (0.137505 (254 − 2.54 S)).
const GENT_MODULUS: [(f64, f64); 5] =
    [(40.0, 1.690), (50.0, 2.456), (60.0, 3.605), (70.0, 5.521), (80.0, 9.351)];

fn rubber(key: &'static str, polymer: Polymer, row: usize) -> Material {
    let by_hardness = GENT_MODULUS.get(row);
    let shore_a = by_hardness.map_or(f64::NAN, |pair| pair.0);
    Material {
        designation: "ASTM D2000".into(),
        note: "The true modulus of a compound differs by 20 % and more: ask, or measure.".into(),
        family: Some(polymer.family),
        agent: Some(polymer.agent),
        flammability: Some(Flammability { note: "Burns.", source: practice("solid rubber burns") }),
        density: estimate(
            kilogram_per_cubic_meter(polymer.density),
            unverified("rubber compounds, generic", "density"),
            "compounds differ by 15 %",
        ),
        youngs_modulus: by_hardness.and_then(|pair| estimate(megapascal(pair.1), GENT, "small strain")),
        poisson_ratio: estimate(0.499, practice("rubber keeps its volume"), ""),
        shore_a_hardness: typical(shore_a, practice("nominal, ±5"), "nominal"),
        service_temperature: typical(celsius(polymer.highest.0), place(D2000, polymer.highest.1), ""),
        lowest_temperature: estimate(
            celsius(polymer.lowest),
            unverified("rubber compounds, generic", "low temperature"),
            "",
        ),
        thermal_conductivity: estimate(
            watt_per_meter_kelvin(0.25),
            unverified("rubber compounds, generic", "conductivity"),
            "",
        ),
        emissivity: estimate(0.90, unverified("handbook value for rubber", ""), ""),
        ..Material::new(key, format!("{} {shore_a} Shore A", polymer.name), MaterialKind::SolidRubber)
    }
}
