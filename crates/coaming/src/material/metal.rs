//! Sheet, screw and insert metals.

use super::agent::Family;
use super::entry::{estimate, minimum, typical};
use super::galvanic::GalvanicGroup;
use super::lookup::Row;
use super::record::{Flammability, Material, MaterialKind};
use super::sources::*;
use super::units::*;
use crate::prelude::*;

pub(super) const TABLE: &[Row] = &[
    ("aluminium_5052_h32", aluminium_5052_h32),
    ("aluminium_5754_h22", aluminium_5754_h22),
    ("aluminium_6061_t6", aluminium_6061_t6),
    ("aluminium_3003_h14", aluminium_3003_h14),
    ("steel_mild", steel_mild),
    ("stainless_304", stainless_304),
    ("stainless_316", stainless_316),
    ("stainless_a2_screw", stainless_a2_screw),
    ("titanium_grade_2", titanium_grade_2),
    ("brass_insert", brass_insert),
];

const NOT_COMBUSTIBLE: Option<Flammability> =
    Some(Flammability { note: "Sheet metal does not burn.", source: practice("sheet metal does not burn") });

fn metal(key: &'static str, name: &'static str, family: Family, group: GalvanicGroup) -> Material {
    Material {
        family: Some(family),
        galvanic_group: Some(group),
        flammability: NOT_COMBUSTIBLE,
        ..Material::new(key, name, MaterialKind::Metal)
    }
}

fn aluminium(key: &'static str, name: &'static str) -> Material {
    Material {
        emissivity: typical(0.09, place(EMISSIVITY_TABLE, "aluminium, as received, sheet"), "bare, 100 degC"),
        solar_absorptance: typical(0.15, place(SOLAR_TABLE, "aluminium sheet"), "bare"),
        ..metal(key, name, Family::Aluminium, GalvanicGroup::Aluminium)
    }
}

fn aluminium_5052_h32(key: &'static str) -> Material {
    let t = place(MIL_HDBK_5J, "table 3.5.1.0(b1), p. 3-220");
    let s_basis = "sheet and plate 0.43 to 50.8 mm, S basis";
    Material {
        designation: "AMS and ASTM 5052-H32; EN AW-5052".into(),
        note: "Minimum strengths of EN 485-2 are lower (Rm 210, Rp0.2 130 MPa): go by what is bought.".into(),
        density: typical(pound_per_cubic_inch(0.097), t, ""),
        youngs_modulus: typical(msi(10.1), t, "tension"),
        compression_modulus: typical(msi(10.2), t, ""),
        shear_modulus: typical(msi(3.85), t, ""),
        poisson_ratio: typical(0.33, t, ""),
        expansion: typical(
            micro_per_kelvin(23.8),
            place(ALUMINIUM_TYPICAL, "5052-H32"),
            "mean, 20 to 100 degC",
        ),
        yield_strength: minimum(ksi(22.0), t, s_basis),
        ultimate_strength: minimum(ksi(31.0), t, s_basis),
        elongation: typical(0.12, place(ALUMINIUM_TYPICAL, "5052-H32"), "1.6 mm"),
        compressive_yield_strength: minimum(ksi(22.0), t, s_basis),
        shear_strength: minimum(ksi(19.0), t, s_basis),
        bearing_strength: minimum(ksi(65.0), t, s_basis),
        bearing_yield_strength: minimum(ksi(37.0), t, s_basis),
        thermal_conductivity: typical(
            watt_per_meter_kelvin(138.0),
            place(ALUMINIUM_TYPICAL, "5052"),
            "20 degC",
        ),
        ..aluminium(key, "aluminium 5052-H32")
    }
}

fn aluminium_5754_h22(key: &'static str) -> Material {
    let en = place(EN_485_2, "alloy 5754 table");
    let t = place(EN_1999_1_1, "3.2.5");
    Material {
        designation: "EN AW-5754 H22".into(),
        density: typical(kilogram_per_cubic_meter(2700.0), t, "all aluminium alloys"),
        youngs_modulus: typical(megapascal(70_000.0), t, "all aluminium alloys"),
        poisson_ratio: typical(0.3, t, "all aluminium alloys"),
        expansion: typical(micro_per_kelvin(23.0), t, "all aluminium alloys"),
        yield_strength: minimum(megapascal(130.0), en, "sheet"),
        ultimate_strength: minimum(megapascal(220.0), en, "sheet"),
        elongation: minimum(0.08, en, "sheet 1.5 to 3 mm"),
        thermal_conductivity: typical(
            watt_per_meter_kelvin(132.0),
            unverified("alloy data sheets", "5754"),
            "",
        ),
        ..aluminium(key, "aluminium 5754-H22")
    }
}

fn aluminium_6061_t6(key: &'static str) -> Material {
    let t = place(MIL_HDBK_5J, "table 3.6.2.0(b1), p. 3-264");
    let a_basis = "sheet 0.25 to 6.3 mm, A basis";
    Material {
        designation: "AMS and ASTM 6061-T6; EN AW-6061".into(),
        note: "Cracks in tight bends: large inside radius, or bend as T4.".into(),
        density: typical(pound_per_cubic_inch(0.098), t, ""),
        youngs_modulus: typical(msi(9.9), t, "tension"),
        compression_modulus: typical(msi(10.1), t, ""),
        shear_modulus: typical(msi(3.8), t, ""),
        poisson_ratio: typical(0.33, t, ""),
        expansion: typical(
            micro_per_kelvin(23.6),
            place(ASM_VOLUME_2, "alloy data sheets"),
            "mean, 20 to 100 degC",
        ),
        yield_strength: minimum(ksi(35.0), t, a_basis),
        ultimate_strength: minimum(ksi(42.0), t, a_basis),
        compressive_yield_strength: minimum(ksi(35.0), t, a_basis),
        shear_strength: minimum(ksi(27.0), t, a_basis),
        bearing_strength: minimum(ksi(88.0), t, a_basis),
        bearing_yield_strength: minimum(ksi(58.0), t, a_basis),
        thermal_conductivity: typical(
            watt_per_meter_kelvin(167.0),
            unverified("ASM Handbook vol. 2", "6061-T6"),
            "",
        ),
        ..aluminium(key, "aluminium 6061-T6")
    }
}

fn aluminium_3003_h14(key: &'static str) -> Material {
    let en = place(EN_485_2, "alloy 3003 table");
    let t = place(EN_1999_1_1, "3.2.5");
    Material {
        designation: "EN AW-3003 H14".into(),
        density: typical(kilogram_per_cubic_meter(2700.0), t, "all aluminium alloys"),
        youngs_modulus: typical(megapascal(70_000.0), t, "all aluminium alloys"),
        poisson_ratio: typical(0.3, t, "all aluminium alloys"),
        expansion: typical(micro_per_kelvin(23.0), t, "all aluminium alloys"),
        yield_strength: minimum(megapascal(125.0), en, "sheet"),
        ultimate_strength: minimum(megapascal(145.0), en, "sheet"),
        thermal_conductivity: typical(
            watt_per_meter_kelvin(159.0),
            unverified("ASM Handbook vol. 2", "3003-H14"),
            "",
        ),
        ..aluminium(key, "aluminium 3003-H14")
    }
}

fn steel_mild(key: &'static str) -> Material {
    let t = place(MIL_HDBK_5J, "table 2.2.1.0(b), p. 2-8");
    let s_basis = "AISI 1025 annealed sheet, S basis";
    Material {
        designation: "AISI 1025, for mild sheet steel".into(),
        note: "Stock mild steel of another grade may be weaker (deep-drawing sheet yields from 140 MPa): give its grade.".into(),
        density: typical(pound_per_cubic_inch(0.284), t, ""),
        youngs_modulus: typical(msi(29.0), t, "tension"),
        compression_modulus: typical(msi(29.0), t, ""),
        shear_modulus: typical(msi(11.0), t, ""),
        poisson_ratio: typical(0.32, t, ""),
        expansion: typical(micro_per_kelvin(12.0), place(EN_1993_1_1, "3.2.6"), "structural steel"),
        yield_strength: minimum(ksi(36.0), t, s_basis),
        ultimate_strength: minimum(ksi(55.0), t, s_basis),
        compressive_yield_strength: minimum(ksi(36.0), t, s_basis),
        shear_strength: minimum(ksi(35.0), t, s_basis),
        bearing_strength: minimum(ksi(90.0), t, s_basis),
        thermal_conductivity: typical(watt_per_meter_kelvin(52.0), unverified("handbook value", "AISI 1025"), ""),
        ..metal(key, "mild steel", Family::CarbonSteel, GalvanicGroup::CarbonSteel)
    }
}

fn stainless(key: &'static str, name: &'static str) -> Material {
    Material {
        emissivity: typical(0.16, place(EMISSIVITY_TABLE, "stainless steel, look-up list"), "bare"),
        solar_absorptance: typical(0.33, place(SOLAR_TABLE, "stainless steel, polished"), "bare, polished"),
        ..metal(key, name, Family::StainlessSteel, GalvanicGroup::StainlessSteel)
    }
}

fn stainless_304(key: &'static str) -> Material {
    let t = place(MIL_HDBK_5J, "table 2.7.1.0(b), p. 2-223");
    let s_basis = "annealed sheet; the table is AISI 301, its note extends it to 304, S basis";
    Material {
        designation: "AISI 304; EN 1.4301".into(),
        note: "Expansion by the other convention is 17.2e-6 1/K over 0 to 100 degC (AISI, unverified)."
            .into(),
        density: typical(pound_per_cubic_inch(0.286), t, ""),
        youngs_modulus: typical(msi(29.0), t, "tension"),
        compression_modulus: typical(msi(28.0), t, ""),
        shear_modulus: typical(msi(11.2), t, ""),
        poisson_ratio: typical(0.27, t, ""),
        expansion: typical(micro_per_kelvin(16.0), place(EN_10088_1, "1.4301"), "mean, 20 to 100 degC"),
        yield_strength: minimum(ksi(26.0), t, s_basis),
        ultimate_strength: minimum(ksi(73.0), t, s_basis),
        compressive_yield_strength: minimum(ksi(23.0), t, s_basis),
        shear_strength: minimum(ksi(50.0), t, s_basis),
        bearing_strength: minimum(ksi(162.0), t, s_basis),
        bearing_yield_strength: minimum(ksi(55.0), t, s_basis),
        thermal_conductivity: typical(watt_per_meter_kelvin(15.0), place(EN_10088_1, "1.4301"), "20 degC"),
        ..stainless(key, "stainless steel 304")
    }
}

fn stainless_316(key: &'static str) -> Material {
    let t = place(EN_10088_1, "1.4401");
    let en = place(EN_10088_2, "1.4401, cold-rolled strip");
    Material {
        designation: "AISI 316; EN 1.4401".into(),
        density: typical(kilogram_per_cubic_meter(8000.0), t, ""),
        youngs_modulus: typical(gigapascal(200.0), t, "20 degC"),
        poisson_ratio: typical(0.27, place(MIL_HDBK_5J, "table 2.7.1.0(b), p. 2-223"), "of AISI 301"),
        expansion: typical(micro_per_kelvin(16.0), t, "mean, 20 to 100 degC"),
        yield_strength: minimum(megapascal(240.0), en, "up to 8 mm"),
        ultimate_strength: minimum(megapascal(530.0), en, "up to 8 mm"),
        thermal_conductivity: typical(watt_per_meter_kelvin(15.0), t, "20 degC"),
        ..stainless(key, "stainless steel 316")
    }
}

fn stainless_a2_screw(key: &'static str) -> Material {
    let t = place(EN_10088_1, "1.4301");
    Material {
        designation: "ISO 3506-1 A2".into(),
        note: "Strength goes by the property class (50, 70, 80) and is not in this record. Galls: lubricate."
            .into(),
        density: typical(kilogram_per_cubic_meter(7900.0), t, ""),
        youngs_modulus: typical(gigapascal(200.0), t, "20 degC"),
        poisson_ratio: typical(0.27, place(MIL_HDBK_5J, "table 2.7.1.0(b), p. 2-223"), "of AISI 301"),
        expansion: typical(micro_per_kelvin(16.0), t, "mean, 20 to 100 degC"),
        thermal_conductivity: typical(watt_per_meter_kelvin(15.0), t, "20 degC"),
        ..stainless(key, "stainless steel A2, screws")
    }
}

fn titanium_grade_2(key: &'static str) -> Material {
    let b265 = place(ASTM_B265, "grade 2");
    Material {
        designation: "ASTM B265 grade 2; UNS R50400".into(),
        density: typical(kilogram_per_cubic_meter(4510.0), TITANIUM_SHEET, ""),
        youngs_modulus: typical(gigapascal(102.0), TITANIUM_SHEET, "tension"),
        shear_modulus: typical(gigapascal(38.0), TITANIUM_SHEET, ""),
        poisson_ratio: typical(0.34, TITANIUM_SHEET, ""),
        expansion: typical(micro_per_kelvin(8.6), TITANIUM_SHEET, "mean, 20 to 93 degC"),
        yield_strength: minimum(megapascal(275.0), b265, "sheet and plate, annealed"),
        ultimate_strength: minimum(megapascal(345.0), b265, "sheet and plate, annealed"),
        elongation: minimum(0.20, b265, "in 50 mm"),
        bearing_strength: typical(megapascal(930.0), TITANIUM_SHEET, "tensile strength 430 MPa"),
        thermal_conductivity: typical(
            watt_per_meter_kelvin(16.4),
            unverified("titanium data sheets", "grade 2"),
            "",
        ),
        flammability: Some(Flammability {
            note: "Sheet does not burn; chips and dust do.",
            source: practice("titanium chips burn"),
        }),
        ..Material {
            galvanic_group: Some(GalvanicGroup::NickelAndTitanium),
            ..Material::new(key, "titanium grade 2", MaterialKind::Metal)
        }
    }
}

fn brass_insert(key: &'static str) -> Material {
    let b = BRASS_SHEET;
    Material {
        designation: "C36000 (ASTM B16), close to CuZn39Pb3".into(),
        note: "The strength of an insert in plastic is the maker's figure for insert and plastic, not this metal's.".into(),
        density: typical(pound_per_cubic_inch(0.307), b, "20 degC"),
        youngs_modulus: typical(ksi(14_000.0), b, "tension"),
        poisson_ratio: typical(0.31, b, "computed there"),
        expansion: typical(per_fahrenheit(11.4e-6), b, "mean, 20 to 300 degC"),
        yield_strength: typical(ksi(45.0), b, "25 mm rod, half hard"),
        ultimate_strength: typical(ksi(58.0), b, "25 mm rod, half hard"),
        shear_strength: typical(
            ksi(32.0),
            place(BRASS_DATABASE, "shear strength, 32 ksi"),
            "half hard; 30 ksi in soft rod",
        ),
        elongation: typical(0.25, b, "25 mm rod, half hard"),
        thermal_conductivity: typical(btu_per_hour_foot_fahrenheit(67.0), b, "20 degC"),
        emissivity: estimate(0.22, place(EMISSIVITY_NOTES, "brass, dull plate"), "dull"),
        ..metal(key, "brass, inserts", Family::CopperAlloy, GalvanicGroup::HighBrass)
    }
}
