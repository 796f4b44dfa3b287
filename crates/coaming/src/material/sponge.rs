//! Sponges by their D1056 grade, and foam liners. The grade is a band at 25 % compression, no curve.

use super::agent::{Agent, Family};
use super::entry::{estimate, minimum, typical};
use super::lookup::Row;
use super::record::{Flammability, Material, MaterialKind};
use super::sources::*;
use crate::prelude::*;

pub(super) const TABLE: &[Row] = &[
    ("epdm_sponge_2a1", |key| sponge(key, EPDM, 1)),
    ("epdm_sponge_2a2", |key| sponge(key, EPDM, 2)),
    ("epdm_sponge_2a3", |key| sponge(key, EPDM, 3)),
    ("epdm_sponge_2a4", |key| sponge(key, EPDM, 4)),
    ("epdm_sponge_2a5", |key| sponge(key, EPDM, 5)),
    ("nitrile_sponge_2b1", |key| sponge(key, NITRILE, 1)),
    ("nitrile_sponge_2b2", |key| sponge(key, NITRILE, 2)),
    ("nitrile_sponge_2b3", |key| sponge(key, NITRILE, 3)),
    ("nitrile_sponge_2b4", |key| sponge(key, NITRILE, 4)),
    ("nitrile_sponge_2b5", |key| sponge(key, NITRILE, 5)),
    ("neoprene_sponge_2c1", |key| sponge(key, NEOPRENE, 1)),
    ("neoprene_sponge_2c2", |key| sponge(key, NEOPRENE, 2)),
    ("neoprene_sponge_2c3", |key| sponge(key, NEOPRENE, 3)),
    ("neoprene_sponge_2c4", |key| sponge(key, NEOPRENE, 4)),
    ("neoprene_sponge_2c5", |key| sponge(key, NEOPRENE, 5)),
    ("silicone_sponge_2d1", |key| sponge(key, SILICONE, 1)),
    ("silicone_sponge_2d2", |key| sponge(key, SILICONE, 2)),
    ("silicone_sponge_2d3", |key| sponge(key, SILICONE, 3)),
    ("silicone_sponge_2d4", |key| sponge(key, SILICONE, 4)),
    ("silicone_sponge_2d5", |key| sponge(key, SILICONE, 5)),
    ("foam_liner_elastomeric", foam_liner_elastomeric),
    ("foam_liner_polyethylene", foam_liner_polyethylene),
];

/// What a base polymer brings to each of its grades.
struct Polymer {
    class: char,
    name: &'static str,
    family: Family,
    agent: Agent,
    highest: (f64, &'static str),
    /// With where it comes from: a figure that nobody looked up is an estimate.
    lowest: Option<(f64, Source)>,
}

const HEAT_AGEING: (f64, &str) = (70.0, "heat-ageing and set tests at 70 degC");
const EPDM: Polymer = Polymer {
    class: 'A',
    name: "EPDM sponge",
    family: Family::Epdm,
    agent: Agent::EpdmGasket,
    highest: HEAT_AGEING,
    lowest: Some((-40.0, unverified("EPDM sponge sheet, generic", "low temperature; ask for suffix F"))),
};
const NITRILE: Polymer = Polymer {
    class: 'B',
    name: "nitrile sponge",
    family: Family::Nitrile,
    agent: Agent::NitrileGasket,
    highest: HEAT_AGEING,
    lowest: None,
};
const NEOPRENE: Polymer = Polymer {
    class: 'C',
    name: "neoprene sponge",
    family: Family::Neoprene,
    agent: Agent::NeopreneGasket,
    highest: HEAT_AGEING,
    lowest: Some((-40.0, place(NEOPRENE_SPONGE, "flexible from -40 to 158 degF"))),
};
const SILICONE: Polymer = Polymer {
    class: 'D',
    name: "silicone sponge",
    family: Family::SiliconeRubber,
    agent: Agent::SiliconeGasket,
    highest: (175.0, "class D: -75 to 175 degC"),
    lowest: Some((-75.0, place(D1056, "class D: -75 to 175 degC"))),
};

/// The band of a grade at 25 % compression, in psi as the standard prints it.
const fn band(class: char, grade: u8) -> (f64, f64) {
    match (class, grade) {
        (_, 1) => (2.0, 5.0),
        (_, 2) => (5.0, 9.0),
        ('D', 3) => (9.0, 15.0),
        (_, 3) => (9.0, 13.0),
        ('D', 4) => (15.0, 22.0),
        (_, 4) => (13.0, 17.0),
        ('D', _) => (22.0, 30.0),
        _ => (17.0, 25.0),
    }
}

fn sponge(key: &'static str, polymer: Polymer, grade: u8) -> Material {
    let (low, high) = band(polymer.class, grade);
    let designation = format!("ASTM D1056 2{}{grade}", polymer.class);
    let t = place(D1056, "grade designation");
    Material {
        designation: designation.into(),
        note: "Closed cell. Density, set and the curve are the maker's: give them.".into(),
        family: Some(polymer.family),
        agent: Some(polymer.agent),
        flammability: Some(Flammability {
            note: "Burns unless its maker states a rating (suffix M).",
            source: practice("sponge rubber burns"),
        }),
        compression_deflection_low: minimum(psi(low), t, "lower limit of the grade, at 25 %"),
        compression_deflection_high: minimum(psi(high), t, "upper limit of the grade, at 25 %"),
        service_temperature: typical(celsius(polymer.highest.0), place(D1056, polymer.highest.1), ""),
        lowest_temperature: polymer.lowest.and_then(|(lowest, source)| {
            if source.standing.is_unverified() {
                estimate(celsius(lowest), source, "")
            } else {
                typical(celsius(lowest), source, "")
            }
        }),
        thermal_conductivity: estimate(
            watt_per_meter_kelvin(0.05),
            unverified("closed-cell sponge rubber, generic", ""),
            "",
        ),
        emissivity: estimate(0.90, unverified("handbook value for rubber", ""), ""),
        ..Material::new(key, format!("{}, grade {grade}", polymer.name), MaterialKind::Sponge)
    }
}

fn foam_liner_elastomeric(key: &'static str) -> Material {
    let page = ELASTOMERIC_FOAM;
    Material {
        designation: "flexible elastomeric foam (ASTM C534; EN 14304)".into(),
        note: "Range of the density 40 to 70 kg/m3. Not a seal: no compression figures.".into(),
        family: Some(Family::Nitrile),
        flammability: Some(Flammability {
            note: "Self-extinguishing grades exist; a class holds for the thickness tested: ask for it.",
            source: place(ELASTOMERIC_FOAM, "reaction to fire"),
        }),
        density: typical(kilogram_per_cubic_meter(55.0), place(page, "ASTM D1667, middle of range"), ""),
        service_temperature: typical(celsius(105.0), place(page, "ASTM C534"), ""),
        lowest_temperature: typical(celsius(-40.0), place(page, "hardens below"), ""),
        thermal_conductivity: typical(watt_per_meter_kelvin(0.034), place(page, "ASTM C518"), "mean 20 degC"),
        emissivity: estimate(0.90, unverified("handbook value for rubber", ""), ""),
        ..Material::new(key, "foam liner, elastomeric", MaterialKind::Sponge)
    }
}

fn foam_liner_polyethylene(key: &'static str) -> Material {
    let page = POLYETHYLENE_FOAM;
    Material {
        designation: "cross-linked polyethylene foam, 33 kg/m3".into(),
        flammability: Some(Flammability {
            note: "Burns; thicker sheet more slowly.",
            source: place(POLYETHYLENE_FOAM, "ISO 3582"),
        }),
        density: typical(kilogram_per_cubic_meter(33.0), place(page, "EN ISO 845"), ""),
        compression_deflection_low: typical(kilopascal(40.0), place(page, "EN ISO 3386-1"), "at 25 %"),
        compression_deflection_high: typical(kilopascal(40.0), place(page, "EN ISO 3386-1"), "at 25 %"),
        service_temperature: typical(celsius(105.0), place(page, "operating range"), ""),
        lowest_temperature: typical(celsius(-70.0), place(page, "operating range"), ""),
        thermal_conductivity: typical(watt_per_meter_kelvin(0.040), place(page, "ISO 8302"), "mean 10 degC"),
        emissivity: estimate(0.90, unverified("handbook value for plastics", ""), ""),
        ..Material::new(key, "foam liner, polyethylene", MaterialKind::Sponge)
    }
}
