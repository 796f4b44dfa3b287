//! Window sheet. Sustained limits hold at room temperature and without an aggressive chemical.

use super::agent::Family;
use super::entry::{creep, curve, estimate, minimum, typical};
use super::lookup::Row;
use super::record::{Flammability, Material, MaterialKind};
use super::sources::*;
use super::units::*;
use crate::prelude::*;

pub(super) const TABLE: &[Row] =
    &[("polycarbonate", polycarbonate), ("acrylic_cast", acrylic_cast), ("petg_sheet", petg_sheet)];

fn clear(key: &'static str, name: &'static str, family: Family) -> Material {
    Material {
        family: Some(family),
        flammability: Some(Flammability {
            note: "Burns. A UL 94 rating belongs to the thickness tested: ask for it.",
            source: unverified("UL 94; IEC 60695-11-10", "rating with thickness"),
        }),
        emissivity: estimate(0.90, unverified("handbook value for plastics", ""), ""),
        solar_absorptance: estimate(
            0.12,
            unverified("what clear sheet neither passes nor reflects", ""),
            "clear",
        ),
        ..Material::new(key, name, MaterialKind::ClearPlastic)
    }
}

fn polycarbonate(key: &'static str) -> Material {
    let memory = unverified("polycarbonate design data, generic", "modulus over temperature");
    let long = unverified("polycarbonate design data, generic", "creep");
    let water = unverified("estimate from acrylic and polyamides", "0.25 of the uptake");
    Material {
        designation: "PC".into(),
        note: "Cracks under sustained stress, sooner at holes and in chemicals. No countersinks; round every edge.".into(),
        density: typical(kilogram_per_cubic_meter(1200.0), place(PC_GLAZING, "typical properties"), ""),
        youngs_modulus: typical(megapascal(2300.0), place(PC_GLAZING, "typical properties"), "tension, 23 degC"),
        poisson_ratio: typical(0.38, place(PC_STOCK_SHAPE, "machine-grade rod"), ""),
        expansion: typical(micro_per_kelvin(65.0), place(PC_MULTIWALL, "ASTM D696"), "moulded bars 70e-6 1/K"),
        yield_strength: typical(megapascal(60.0), place(PC_GLAZING, "typical properties"), "short-time, 23 degC"),
        ultimate_strength: typical(megapascal(65.0), place(PC_EXTRUSION, "ISO 527-2, break"), "short-time, 23 degC"),
        elongation: typical(1.0, place(PC_EXTRUSION, "ISO 527-2, break"), "short-time, 23 degC"),
        sustained_stress: estimate(megapascal(7.0), practice("sustained stress in polycarbonate, up to 10 MPa"), "23 degC"),
        sustained_strain: estimate(0.003, practice("sustained strain in polycarbonate"), "23 degC"),
        service_temperature: typical(celsius(115.0), place(PC_STOCK_SHAPE, "20 000 h in air"), "little load"),
        lowest_temperature: typical(celsius(-40.0), place(PC_GLAZING, "impact range"), ""),
        softening_temperature: typical(celsius(145.0), place(PC_GLAZING, "Vicat B/120"), "Vicat B/120"),
        swelling: estimate(0.25, water, ""),
        thermal_conductivity: typical(watt_per_meter_kelvin(0.21), place(PC_GLAZING, "DIN 52612"), ""),
        modulus_over_temperature: curve(vec![
            (celsius(-40.0), estimate(megapascal(2500.0), memory, "")),
            (celsius(0.0), estimate(megapascal(2400.0), memory, "")),
            (celsius(23.0), typical(megapascal(2300.0), place(PC_GLAZING, "typical properties"), "")),
            (celsius(60.0), estimate(megapascal(2100.0), memory, "")),
            (celsius(80.0), estimate(megapascal(2000.0), memory, "")),
            (celsius(100.0), estimate(megapascal(1850.0), memory, "")),
            (celsius(120.0), estimate(megapascal(1600.0), memory, "")),
        ]),
        creep: vec![
            creep(23.0, vec![
                (1.0, typical(2200.0 / 2400.0, place(PC_EXTRUSION, "ISO 899-1, 1 h: 2200 of 2400 MPa"), "")),
                (1000.0, typical(1900.0 / 2400.0, place(PC_EXTRUSION, "ISO 899-1, 1000 h: 1900 of 2400 MPa"), "")),
                (100_000.0, estimate(0.65, long, "below 7 MPa")),
            ]),
            creep(60.0, vec![
                (1.0, estimate(0.88, long, "below 7 MPa")),
                (1000.0, estimate(0.68, long, "below 7 MPa")),
                (100_000.0, estimate(0.50, long, "below 7 MPa")),
            ]),
        ],
        moisture_uptake: curve(vec![
            (0.0, typical(0.0, practice("dry by definition"), "")),
            (0.5, typical(0.0012, place(PC_EXTRUSION, "ISO 62, 23 degC, 50 %"), "")),
            (1.0, typical(0.0035, place(PC_GLAZING, "ASTM D570, equilibrium"), "in water")),
        ]),
        ..clear(key, "polycarbonate sheet", Family::Polycarbonate)
    }
}

fn acrylic_cast(key: &'static str) -> Material {
    let memory = unverified("acrylic design data, generic", "modulus over temperature");
    let long = unverified("acrylic design data, generic", "creep");
    Material {
        designation: "PMMA, ISO 7823-1".into(),
        note: "Brittle: no countersinks, large clear holes, polished edges. Range of the modulus 2800 to 3200 MPa, of \
               the strength 67 to 75 MPa."
            .into(),
        density: typical(kilogram_per_cubic_meter(1190.0), place(PMMA_CAST, "ISO 1183"), ""),
        youngs_modulus: typical(megapascal(3000.0), place(PMMA_STOCK_SHAPE, "ISO 527, middle of range"), "23 degC"),
        poisson_ratio: typical(0.37, place(PMMA_CAST, "ISO 527-1"), "23 degC"),
        expansion: typical(micro_per_kelvin(72.0), place(PMMA_EXTRUDED, "ASTM D696"), "of extruded sheet"),
        ultimate_strength: minimum(megapascal(62.0), place(UFGS_VIEWPORT, "table 3-1"), "viewport grade, short-time"),
        shear_strength: minimum(megapascal(55.0), place(UFGS_VIEWPORT, "table 3-1"), "viewport grade, short-time"),
        elongation: typical(0.04, place(PMMA_STOCK_SHAPE, "ISO 527, low end"), "short-time"),
        sustained_stress: estimate(psi(750.0), unverified("acrylic sheet design practice", "750 psi continuous"), "23 degC"),
        service_temperature: typical(celsius(71.0), place(PMMA_EXTRUDED, "recommended continuous"), "of extruded sheet"),
        lowest_temperature: typical(celsius(-40.0), place(PMMA_CAST, "lowest test"), ""),
        softening_temperature: typical(celsius(100.0), place(PMMA_STOCK_SHAPE, "Vicat B, low end"), "Vicat B"),
        swelling: typical(0.005 / 0.021, place(PMMA_CAST, "0.50 % expansion at 2.1 % uptake"), "at saturation"),
        thermal_conductivity: typical(watt_per_meter_kelvin(0.19), place(PMMA_STOCK_SHAPE, "DIN 52612"), ""),
        modulus_over_temperature: curve(vec![
            (celsius(-40.0), estimate(megapascal(4500.0), memory, "")),
            (celsius(0.0), estimate(megapascal(3600.0), memory, "")),
            (celsius(23.0), typical(megapascal(3000.0), place(PMMA_STOCK_SHAPE, "ISO 527, middle of range"), "")),
            (celsius(40.0), estimate(megapascal(2600.0), memory, "")),
            (celsius(60.0), estimate(megapascal(2000.0), memory, "")),
            (celsius(80.0), estimate(megapascal(1200.0), memory, "")),
        ]),
        creep: vec![creep(23.0, vec![
            (1.0, estimate(0.85, long, "below 5 MPa")),
            (1000.0, estimate(0.60, long, "below 5 MPa")),
            (100_000.0, estimate(0.40, long, "below 5 MPa")),
        ])],
        moisture_uptake: curve(vec![
            (0.0, typical(0.0, practice("dry by definition"), "")),
            (0.5, estimate(0.0085, unverified("acrylic design data, generic", "moisture"), "")),
            (1.0, typical(0.021, place(PMMA_CAST, "ISO 62, saturation"), "in water")),
        ]),
        ..clear(key, "cast acrylic sheet", Family::Acrylic)
    }
}

fn petg_sheet(key: &'static str) -> Material {
    let memory = unverified("PETG design data, generic", "");
    Material {
        designation: "PETG".into(),
        note: "Softens early: not for a hot bay or a dark frame in the sun.".into(),
        density: typical(kilogram_per_cubic_meter(1270.0), place(PETG_SHEET, "specific gravity"), ""),
        youngs_modulus: typical(megapascal(2200.0), place(PETG_GENERIC, "tension"), "23 degC"),
        poisson_ratio: estimate(0.38, memory, "as polycarbonate"),
        expansion: typical(micro_per_kelvin(68.0), place(PETG_GENERIC, "thermal expansion"), ""),
        ultimate_strength: typical(psi(7700.0), place(PETG_SHEET, "ASTM D638"), "short-time"),
        service_temperature: estimate(
            celsius(60.0),
            place(PETG_SHEET, "deflection under load 60 to 71 degC, low end; 70 degC at most"),
            "",
        ),
        lowest_temperature: typical(celsius(-40.0), place(PETG_SHEET, "brittleness"), ""),
        softening_temperature: typical(
            celsius(69.0),
            place(PETG_GENERIC, "deflection under 1.82 MPa"),
            "1.82 MPa",
        ),
        thermal_conductivity: typical(watt_per_meter_kelvin(0.24), PETG_DATABASE, ""),
        modulus_over_temperature: curve(vec![
            (celsius(-20.0), estimate(megapascal(2400.0), memory, "")),
            (celsius(23.0), typical(megapascal(2200.0), place(PETG_GENERIC, "tension"), "")),
            (celsius(50.0), estimate(megapascal(1900.0), memory, "")),
            (celsius(60.0), estimate(megapascal(1700.0), memory, "")),
        ]),
        creep: vec![creep(
            23.0,
            vec![
                (1.0, estimate(0.90, memory, "below 5 MPa")),
                (1000.0, estimate(0.70, memory, "below 5 MPa")),
            ],
        )],
        ..clear(key, "PETG sheet", Family::Petg)
    }
}
