//! Laminates and plies.

use super::agent::Family;
use super::entry::{estimate, minimum, typical};
use super::galvanic::GalvanicGroup;
use super::lookup::Row;
use super::record::{Flammability, Material, MaterialKind};
use super::sources::*;
use super::units::*;
use crate::prelude::*;

pub(super) const TABLE: &[Row] = &[
    ("carbon_quasi_isotropic", carbon_quasi_isotropic),
    ("carbon_ply", carbon_ply),
    ("glass_laminate", glass_laminate),
];

fn laminate(key: &'static str, name: &'static str) -> Material {
    Material {
        family: Some(Family::EpoxyLaminate),
        flammability: Some(Flammability {
            note: "The resin burns unless it is a flame-retardant grade.",
            source: practice("epoxy laminates burn"),
        }),
        emissivity: estimate(0.88, unverified("handbook value for laminates", ""), ""),
        ..Material::new(key, name, MaterialKind::Laminate)
    }
}

/// What the carbon laminates share; the resin sets the temperature.
fn carbon(key: &'static str, name: &'static str) -> Material {
    Material {
        galvanic_group: Some(GalvanicGroup::Carbon),
        density: estimate(
            kilogram_per_cubic_meter(1600.0),
            unverified("carbon/epoxy design data, generic", ""),
            "",
        ),
        service_temperature: estimate(
            celsius(80.0),
            unverified("epoxy cured at 120 degC, generic", ""),
            "by its resin",
        ),
        solar_absorptance: estimate(0.90, unverified("handbook value for black surfaces", ""), "bare"),
        ..laminate(key, name)
    }
}

fn carbon_quasi_isotropic(key: &'static str) -> Material {
    let theory = place(RP_1351_COMPUTED, "laminate [0/45/-45/90]s of the ply of ex. 9");
    Material {
        designation: "carbon/epoxy [0/45/-45/90]s".into(),
        note: "In bending it is not alike in all directions: use the plies. Carbon corrodes aluminium: insulate.".into(),
        youngs_modulus: typical(msi(7.929), theory, "in the plane"),
        shear_modulus: typical(msi(3.082), theory, "in the plane"),
        poisson_ratio: typical(0.2864, theory, "in the plane"),
        expansion: typical(per_fahrenheit(2.414e-6), theory, "in the plane"),
        thermal_conductivity: estimate(watt_per_meter_kelvin(0.7), unverified("carbon/epoxy design data, generic", ""), "through the thickness"),
        ..carbon(key, "carbon laminate, quasi-isotropic")
    }
}

fn carbon_ply(key: &'static str) -> Material {
    let ply = place(RP_1351, "ex. 1 and 9, PDF pp. 46 and 82");
    Material {
        designation: "unidirectional carbon/epoxy ply".into(),
        note: "Elastic constants of the worked examples; no strengths are taken from there.".into(),
        youngs_modulus_1: typical(msi(20.01), ply, ""),
        youngs_modulus_2: typical(msi(1.301), ply, ""),
        shear_modulus_12: typical(msi(1.001), ply, ""),
        poisson_ratio_12: typical(0.3, ply, ""),
        expansion_1: typical(per_fahrenheit(-0.072e-6), ply, ""),
        expansion_2: typical(per_fahrenheit(32.4e-6), ply, ""),
        ..carbon(key, "carbon ply, unidirectional")
    }
}

fn glass_laminate(key: &'static str) -> Material {
    let chart = place(NEMA_LAMINATE, "G-10/FR-4");
    Material {
        designation: "NEMA G-10/FR-4".into(),
        note: "Woven glass: 18.6 GPa lengthwise and 15.2 GPa crosswise in bending; the record has the lower."
            .into(),
        density: typical(kilogram_per_cubic_meter(1850.0), chart, ""),
        youngs_modulus: minimum(ksi(2200.0), chart, "in bending, crosswise"),
        youngs_modulus_1: minimum(ksi(2700.0), chart, "in bending, lengthwise"),
        youngs_modulus_2: minimum(ksi(2200.0), chart, "in bending, crosswise"),
        poisson_ratio: estimate(0.14, unverified("woven glass/epoxy, generic", ""), "in the plane"),
        expansion: typical(
            micro_per_kelvin(9.0),
            place(NEMA_LAMINATE, "technical data, 0.9e-5 1/K"),
            "in the plane",
        ),
        ultimate_strength: minimum(psi(35_000.0), chart, "tension, crosswise"),
        shear_strength: minimum(psi(19_000.0), place(NEMA_LAMINATE, "technical data"), ""),
        service_temperature: typical(fahrenheit(285.0), place(NEMA_LAMINATE, "FR-4, approximate limit"), ""),
        thermal_conductivity: estimate(
            watt_per_meter_kelvin(0.3),
            unverified("glass/epoxy, generic", ""),
            "through the thickness",
        ),
        ..laminate(key, "glass/epoxy laminate")
    }
}
