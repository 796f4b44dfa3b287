//! Printed plastics. Unless a figure says so it is of moulded bars: an upper bound for what a printer makes.

use super::agent::Family;
use super::curve::Curve;
use super::entry::{creep, curve, estimate, typical};
use super::lookup::Row;
use super::record::{Flammability, Material, MaterialKind};
use super::sources::*;
use super::units::*;
use crate::prelude::*;

pub(super) const TABLE: &[Row] = &[
    ("pa6_dry", pa6_dry),
    ("pa6_conditioned", pa6_conditioned),
    ("pa6_carbon_fibre", pa6_carbon_fibre),
    ("pa12_powder_bed", pa12_powder_bed),
    ("asa_printed", asa_printed),
    ("abs_printed", abs_printed),
    ("petg_printed", petg_printed),
];

fn printed(key: &'static str, name: &'static str, family: Family) -> Material {
    Material {
        family: Some(family),
        flammability: Some(Flammability {
            note: "Burns. A UL 94 rating belongs to the thickness and the printed build tested: ask for it.",
            source: unverified("UL 94; IEC 60695-11-10", "rating with thickness"),
        }),
        emissivity: estimate(0.90, unverified("handbook value for plastics", ""), ""),
        ..Material::new(key, name, MaterialKind::PrintedPlastic)
    }
}

fn pa6_uptake() -> Option<Curve<f64, f64>> {
    curve(vec![
        (0.0, typical(0.0, practice("dry by definition"), "")),
        (0.5, typical(0.030, place(PA6_SUPPLIER, "23 degC, 50 %"), "")),
        (0.6, typical(0.035, place(PA_SORPTION, "section I, 23 degC, 60 %"), "")),
        (0.95, typical(0.083, place(PA6_SORPTION_NOTE, "figure, 95 %"), "")),
        (1.0, typical(0.095, place(PA6_SUPPLIER, "saturated in water"), "")),
    ])
}

/// What PA6 is, dry or conditioned.
fn pa6(key: &'static str, name: &'static str) -> Material {
    Material {
        density: typical(kilogram_per_cubic_meter(1130.0), place(PA6_ISO, "ISO 1183"), ""),
        poisson_ratio: estimate(0.39, unverified("polyamide design data, generic", ""), ""),
        expansion: typical(
            micro_per_kelvin(100.0),
            place(PA6_ISO, "ISO 11359-2, transverse, 23 to 55 degC"),
            "printed nylon 114 to 175e-6 1/K was measured",
        ),
        service_temperature: typical(
            celsius(100.0),
            place(PA6_GENERIC, "long-term"),
            "little load; limp well before",
        ),
        swelling: estimate(0.25, place(PA_BROCHURE, "0.2 to 0.3 % per 1 %"), "isotropic"),
        thermal_conductivity: estimate(
            watt_per_meter_kelvin(0.28),
            unverified("polyamide design data, generic", ""),
            "",
        ),
        moisture_uptake: pa6_uptake(),
        ..printed(key, name, Family::Polyamide6)
    }
}

fn pa6_dry(key: &'static str) -> Material {
    let memory = unverified("polyamide 6 design data, generic", "dry");
    Material {
        designation: "PA6, dry as moulded (below 0.2 % water)".into(),
        note: "Dry only in its bag: in use it becomes conditioned within weeks, grows and softens.".into(),
        youngs_modulus: typical(megapascal(3200.0), place(PA_GENERIC, "dry"), "23 degC, moulded"),
        yield_strength: typical(megapascal(80.0), place(PA6_ISO, "ISO 527-2, dry"), "23 degC, moulded"),
        elongation: typical(0.045, place(PA6_ISO, "ISO 527-2, dry, at yield"), "at yield"),
        modulus_over_temperature: curve(vec![
            (celsius(-20.0), estimate(megapascal(3500.0), memory, "")),
            (celsius(23.0), typical(megapascal(3200.0), place(PA_GENERIC, "dry"), "")),
            (celsius(40.0), estimate(megapascal(2600.0), memory, "")),
            (celsius(60.0), estimate(megapascal(1400.0), memory, "")),
            (celsius(80.0), estimate(megapascal(800.0), memory, "")),
            (celsius(100.0), estimate(megapascal(600.0), memory, "")),
        ]),
        creep: vec![creep(
            23.0,
            vec![
                (1.0, estimate(0.85, memory, "")),
                (1000.0, estimate(0.60, memory, "")),
                (100_000.0, estimate(0.45, memory, "")),
            ],
        )],
        ..pa6(key, "PA6, dry")
    }
}

fn pa6_conditioned(key: &'static str) -> Material {
    let memory = unverified("polyamide 6 design data, generic", "conditioned");
    Material {
        designation: "PA6, conditioned at 23 degC and 50 % relative humidity".into(),
        note:
            "The state to design for. Another data sheet gives 1500 MPa conditioned for a 2900 MPa dry grade."
                .into(),
        youngs_modulus: typical(
            megapascal(1100.0),
            place(PA_GENERIC, "conditioned, 50 %"),
            "23 degC, moulded",
        ),
        yield_strength: typical(
            megapascal(50.0),
            place(PA6_ISO, "ISO 527-2, conditioned"),
            "23 degC, moulded",
        ),
        modulus_over_temperature: curve(vec![
            (celsius(-20.0), estimate(megapascal(2700.0), memory, "")),
            (celsius(0.0), estimate(megapascal(2000.0), memory, "")),
            (celsius(23.0), typical(megapascal(1100.0), place(PA_GENERIC, "conditioned, 50 %"), "")),
            (celsius(40.0), estimate(megapascal(750.0), memory, "")),
            (celsius(60.0), estimate(megapascal(550.0), memory, "")),
            (celsius(80.0), estimate(megapascal(450.0), memory, "")),
        ]),
        creep: vec![creep(
            23.0,
            vec![
                (1.0, estimate(0.80, memory, "")),
                (1000.0, estimate(0.55, memory, "")),
                (100_000.0, estimate(0.40, memory, "")),
            ],
        )],
        ..pa6(key, "PA6, conditioned")
    }
}

fn pa6_carbon_fibre(key: &'static str) -> Material {
    let moulded = place(PA6_CF_TABLE, "dry, 30 % carbon fibre");
    let paper = place(PRINTED_NYLON_PAPER, "abstract");
    Material {
        designation: "PA6 with 30 % carbon fibre, dry".into(),
        note: "Moulded figures: an upper bound. Printed, it is far weaker upright to the layers, and grows mostly upright.".into(),
        density: typical(kilogram_per_cubic_meter(1300.0), moulded, "moulded"),
        youngs_modulus: typical(gigapascal(16.0), moulded, "moulded, along the flow: upper bound"),
        ultimate_strength: typical(megapascal(210.0), moulded, "moulded, along the flow: upper bound"),
        expansion: typical(micro_per_kelvin(22.0), paper, "printed, along the strand; another nylon"),
        expansion_2: typical(micro_per_kelvin(248.0), paper, "printed, upright; another nylon"),
        service_temperature: typical(celsius(100.0), place(PA6_GENERIC, "long-term"), "of unfilled PA6"),
        ..printed(key, "PA6-CF", Family::Polyamide6)
    }
}

fn pa12_powder_bed(key: &'static str) -> Material {
    let table = place(PA12_TABLE, "laser-sintered, as built");
    let memory = unverified("PA12 powder-bed design data, generic", "");
    Material {
        designation: "PA12 by powder-bed fusion".into(),
        note:
            "Nearly the same in all directions; porous unless sealed. Range of the modulus 1700 to 1900 MPa."
                .into(),
        density: typical(kilogram_per_cubic_meter(930.0), table, "880 to 960 kg/m3"),
        youngs_modulus: typical(
            megapascal(1700.0),
            place(PA12_GENERIC, "low end of 1.7 to 1.9 GPa"),
            "23 degC",
        ),
        poisson_ratio: estimate(0.39, memory, "as other polyamides"),
        expansion: typical(micro_per_kelvin(110.0), memory, "23 to 80 degC"),
        ultimate_strength: typical(megapascal(44.0), table, "low end of 44 to 52 MPa"),
        elongation: typical(0.08, table, "low end of 8 to 25 %"),
        service_temperature: estimate(celsius(80.0), memory, "deflection under 0.45 MPa at 95 degC"),
        softening_temperature: typical(
            celsius(95.0),
            place(PA12_GENERIC, "deflection under 0.45 MPa"),
            "0.45 MPa",
        ),
        swelling: typical(0.002 / 0.014, place(PA12_CAST, "0.2 % growth at 1.4 % uptake"), "cast PA12"),
        thermal_conductivity: typical(watt_per_meter_kelvin(0.2), table, ""),
        modulus_over_temperature: curve(vec![
            (celsius(-20.0), estimate(megapascal(2000.0), memory, "")),
            (
                celsius(23.0),
                typical(megapascal(1700.0), place(PA12_GENERIC, "low end of 1.7 to 1.9 GPa"), ""),
            ),
            (celsius(40.0), estimate(megapascal(1250.0), memory, "")),
            (celsius(60.0), estimate(megapascal(750.0), memory, "")),
            (celsius(80.0), estimate(megapascal(500.0), memory, "")),
        ]),
        creep: vec![creep(
            23.0,
            vec![
                (1.0, estimate(0.75, memory, "")),
                (1000.0, estimate(0.45, memory, "")),
                (100_000.0, estimate(0.30, memory, "")),
            ],
        )],
        moisture_uptake: curve(vec![
            (0.0, typical(0.0, practice("dry by definition"), "")),
            (0.5, estimate(0.007, memory, "23 degC; another page says 0.9 %")),
            (1.0, typical(0.014, place(PA12_CAST, "submerged, at most"), "cast PA12")),
        ]),
        ..printed(key, "PA12, powder-bed fusion", Family::Polyamide12)
    }
}

fn asa_printed(key: &'static str) -> Material {
    let generic = place(ABS_GENERIC, "ABS and ASA");
    Material {
        designation: "ASA".into(),
        density: typical(kilogram_per_cubic_meter(1070.0), unverified("generic ASA data sheets", ""), ""),
        youngs_modulus: estimate(megapascal(2300.0), generic, "23 degC, ±20 %"),
        poisson_ratio: estimate(0.36, generic, ""),
        expansion: estimate(micro_per_kelvin(90.0), generic, "±20 %"),
        service_temperature: estimate(
            celsius(75.0),
            unverified("generic ASA data sheets", "some 25 K below its glass transition"),
            "",
        ),
        softening_temperature: typical(
            celsius(100.0),
            place(ASA_NOTE, "glass transition"),
            "glass transition",
        ),
        ..printed(key, "ASA, printed", Family::Asa)
    }
}

fn abs_printed(key: &'static str) -> Material {
    let generic = place(ABS_GENERIC, "ABS and ASA");
    Material {
        designation: "ABS".into(),
        density: typical(kilogram_per_cubic_meter(1040.0), place(ABS_SHEET, "ASTM D792"), ""),
        youngs_modulus: estimate(megapascal(2300.0), generic, "23 degC, ±20 %"),
        poisson_ratio: estimate(0.36, generic, ""),
        expansion: estimate(micro_per_kelvin(90.0), generic, "±20 %"),
        ultimate_strength: typical(psi(5500.0), place(ABS_SHEET, "ASTM D638"), "moulded: upper bound"),
        elongation: typical(0.20, place(ABS_SHEET, "ASTM D638"), "moulded"),
        service_temperature: typical(fahrenheit(160.0), place(ABS_SHEET, "continuous, in air"), ""),
        softening_temperature: typical(fahrenheit(220.0), place(ABS_SHEET, "Vicat"), "Vicat"),
        ..printed(key, "ABS, printed", Family::Abs)
    }
}

fn petg_printed(key: &'static str) -> Material {
    let table = place(PETG_PRINTED, "as built");
    Material {
        designation: "PETG by material extrusion".into(),
        note:
            "Ranges: modulus 2 to 3 GPa, strength 44 to 56 MPa in the layers, 25 to 38 MPa upright to them."
                .into(),
        density: typical(kilogram_per_cubic_meter(1270.0), table, "1250 to 1290 kg/m3, solid"),
        youngs_modulus: typical(gigapascal(2.0), table, "in the layers, low end"),
        poisson_ratio: estimate(0.38, unverified("PETG design data, generic", ""), "as polycarbonate"),
        expansion: typical(micro_per_kelvin(68.0), place(PETG_GENERIC, "thermal expansion"), ""),
        ultimate_strength: typical(megapascal(44.0), table, "in the layers, low end"),
        upright_strength: typical(megapascal(25.0), table, "low end"),
        elongation: typical(0.05, table, "upright, low end"),
        service_temperature: estimate(
            celsius(60.0),
            place(PETG_SHEET, "deflection under load 60 to 71 degC, low end; 70 degC at most"),
            "",
        ),
        softening_temperature: typical(celsius(75.0), table, "glass transition, low end"),
        ..printed(key, "PETG, printed", Family::Petg)
    }
}
