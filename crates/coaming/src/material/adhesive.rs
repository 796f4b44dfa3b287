//! Adhesives, sealants, tapes and the backings of gaskets.

use super::agent::{Agent, Family};
use super::entry::{estimate, typical};
use super::lookup::Row;
use super::record::{Flammability, Material, MaterialKind};
use super::sources::*;
use crate::prelude::*;

pub(super) const TABLE: &[Row] = &[
    ("epoxy_rigid", epoxy_rigid),
    ("epoxy_toughened", epoxy_toughened),
    ("polyurethane_structural", polyurethane_structural),
    ("polyurethane_flexible", polyurethane_flexible),
    ("silicone_neutral", silicone_neutral),
    ("silicone_acetoxy", silicone_acetoxy),
    ("acrylic_foam_tape", acrylic_foam_tape),
    ("adhesive_backing_rubber", adhesive_backing_rubber),
    ("adhesive_backing_acrylic", adhesive_backing_acrylic),
];

fn adhesive(key: &'static str, name: &'static str, agent: Agent) -> Material {
    // What it is once cured.
    let family = match agent {
        Agent::EpoxyAdhesive => Some(Family::EpoxyAdhesive),
        Agent::PolyurethaneAdhesive => Some(Family::PolyurethaneAdhesive),
        Agent::NeutralSilicone | Agent::AcetoxySilicone => Some(Family::SiliconeRubber),
        Agent::AcrylicAdhesive => Some(Family::AcrylicAdhesive),
        Agent::RubberBasedAdhesive => Some(Family::RubberAdhesive),
        _ => None,
    };
    Material {
        family,
        agent: Some(agent),
        flammability: Some(Flammability {
            note: "Burns; what is not yet cured may be flammable: see its safety data sheet.",
            source: practice("adhesives and sealants burn"),
        }),
        ..Material::new(key, name, MaterialKind::Adhesive)
    }
}

const RIGID_STRAIN: Source = practice("shear strain of a rigid bond line, 0.03 to 0.05");
const FLEXIBLE_STRAIN: Source = practice("cyclic shear strain of a flexible bond line, 0.15 to 0.25");

fn epoxy_rigid(key: &'static str) -> Material {
    let t = place(VIANA, "table 1, brittle epoxy");
    Material {
        designation: "two-part epoxy, brittle".into(),
        note: "Cures at room temperature. Peels and breaks where the parts grow apart.".into(),
        density: typical(kilogram_per_cubic_meter(1300.0), place(EPOXY_NOTES, "epoxy"), ""),
        youngs_modulus: typical(gigapascal(4.89), t, "±0.81"),
        shear_modulus: typical(gigapascal(1.81), t, "estimated there from the modulus"),
        poisson_ratio: typical(0.35, t, ""),
        expansion: typical(per_kelvin(60e-6), place(EPOXY_NOTES, "epoxy"), ""),
        ultimate_strength: typical(megapascal(39.45), t, "tension, ±3.18"),
        elongation: typical(0.0121, t, "tension, ±0.0010"),
        shear_strength: typical(megapascal(30.2), t, "thick adherends, ±0.40"),
        cyclic_shear_strain: estimate(0.03, RIGID_STRAIN, ""),
        service_temperature: estimate(
            celsius(60.0),
            unverified("epoxies cured at room temperature, generic", "glass transition near 60 degC"),
            "",
        ),
        ..adhesive(key, "epoxy, rigid", Agent::EpoxyAdhesive)
    }
}

fn epoxy_toughened(key: &'static str) -> Material {
    let t = place(VIANA, "table 1, ductile epoxy");
    Material {
        designation: "two-part epoxy, toughened".into(),
        density: typical(kilogram_per_cubic_meter(1300.0), place(EPOXY_NOTES, "epoxy"), ""),
        youngs_modulus: typical(gigapascal(1.85), t, "±0.21"),
        shear_modulus: typical(gigapascal(0.70), t, "estimated there from the modulus"),
        poisson_ratio: typical(0.33, t, ""),
        ultimate_strength: typical(megapascal(21.63), t, "tension, ±1.61"),
        elongation: typical(0.0477, t, "tension, ±0.0015"),
        shear_strength: typical(megapascal(17.9), t, "thick adherends, ±1.8"),
        cyclic_shear_strain: estimate(0.05, RIGID_STRAIN, ""),
        service_temperature: estimate(
            celsius(60.0),
            unverified("epoxies cured at room temperature, generic", "glass transition near 60 degC"),
            "",
        ),
        ..adhesive(key, "epoxy, toughened", Agent::EpoxyAdhesive)
    }
}

fn polyurethane_structural(key: &'static str) -> Material {
    let t = place(VIANA, "table 1, ductile polyurethane");
    Material {
        designation: "two-part polyurethane, structural".into(),
        youngs_modulus: typical(gigapascal(0.49), t, "±0.09"),
        shear_modulus: typical(gigapascal(0.19), t, "estimated there from the modulus"),
        poisson_ratio: typical(0.30, t, ""),
        ultimate_strength: typical(megapascal(11.48), t, "tension, ±0.25"),
        elongation: typical(0.1918, t, "tension, ±0.0140"),
        shear_strength: typical(megapascal(10.17), t, "thick adherends, ±0.64"),
        cyclic_shear_strain: estimate(0.05, RIGID_STRAIN, ""),
        service_temperature: typical(
            celsius(80.0),
            place(POLYURETHANE_NOTES, "most types below 80 degC"),
            "",
        ),
        ..adhesive(key, "polyurethane, structural", Agent::PolyurethaneAdhesive)
    }
}

fn polyurethane_flexible(key: &'static str) -> Material {
    Material {
        designation: "one-part moisture-curing polyurethane, elastic".into(),
        note: "For thick bond lines that must give. Not for bare faces in the sun: prime and cover.".into(),
        density: estimate(
            kilogram_per_cubic_meter(1250.0),
            unverified("elastic polyurethane adhesives, generic", ""),
            "",
        ),
        youngs_modulus: estimate(megapascal(2.456), GENT, "from 50 Shore A"),
        shear_modulus: estimate(megapascal(2.456 / 3.0), GENT, "a third of the modulus, volume kept"),
        poisson_ratio: estimate(0.499, practice("rubber keeps its volume"), ""),
        elongation: typical(2.0, place(POLYURETHANE_GLOSSARY, "200 to 600 %, low end"), ""),
        shore_a_hardness: estimate(
            50.0,
            unverified("elastic polyurethane adhesives, generic", "40 to 60"),
            "",
        ),
        cyclic_shear_strain: estimate(0.15, FLEXIBLE_STRAIN, ""),
        service_temperature: typical(
            celsius(80.0),
            place(POLYURETHANE_GLOSSARY, "-40 to 80 degC, standard"),
            "",
        ),
        lowest_temperature: typical(
            celsius(-40.0),
            place(POLYURETHANE_GLOSSARY, "-40 to 80 degC, standard"),
            "",
        ),
        ..adhesive(key, "polyurethane, flexible", Agent::PolyurethaneAdhesive)
    }
}

fn silicone_neutral(key: &'static str) -> Material {
    let t = SEALANT_25LM;
    Material {
        designation: "ISO 11600 F and G, class 25LM".into(),
        note: "Neutral cure. Ask for its release on the plastic that it touches.".into(),
        density: typical(kilogram_per_cubic_meter(1520.0), place(t, "specific gravity"), ""),
        youngs_modulus: typical(
            megapascal(0.35),
            place(t, "ISO 8339 joint, secant at 100 %"),
            "secant at 100 %",
        ),
        ultimate_strength: typical(megapascal(0.75), place(t, "ISO 8339 joint"), "in the joint"),
        elongation: typical(3.8, place(t, "ISO 8339 joint"), "in the joint"),
        shore_a_hardness: typical(30.0, t, ""),
        movement_capability: typical(0.25, place(t, "ISO 9047, ±25 %"), "of the joint's width"),
        cyclic_shear_strain: estimate(0.25, FLEXIBLE_STRAIN, ""),
        service_temperature: typical(
            celsius(150.0),
            place(NEUTRAL_SILICONE, "-40 to 150 degC after cure"),
            "",
        ),
        lowest_temperature: typical(
            celsius(-40.0),
            place(NEUTRAL_SILICONE, "-40 to 150 degC after cure"),
            "",
        ),
        ..adhesive(key, "silicone, neutral cure", Agent::NeutralSilicone)
    }
}

fn silicone_acetoxy(key: &'static str) -> Material {
    let t = SEALANT_20HM;
    Material {
        designation: "ISO 11600 F and G, class 20HM".into(),
        note: "Sets acetic acid free while it cures: not on polycarbonate, brass, bare steel or aluminium."
            .into(),
        density: typical(kilogram_per_cubic_meter(1030.0), place(t, "specific gravity"), ""),
        movement_capability: typical(0.20, place(t, "class 20"), "of the joint's width"),
        cyclic_shear_strain: estimate(0.20, FLEXIBLE_STRAIN, ""),
        service_temperature: typical(celsius(177.0), place(SILICONE_GUIDE, "-56 to 177 degC, most"), ""),
        lowest_temperature: typical(celsius(-56.0), place(SILICONE_GUIDE, "-56 to 177 degC, most"), ""),
        ..adhesive(key, "silicone, acetoxy cure", Agent::AcetoxySilicone)
    }
}

fn acrylic_foam_tape(key: &'static str) -> Material {
    let memory = unverified("acrylic foam tape, generic", "");
    Material {
        designation: "acrylic foam tape".into(),
        note: "Bears short shear strains of up to three times its thickness; creeps under a standing load."
            .into(),
        density: estimate(kilogram_per_cubic_meter(720.0), memory, ""),
        shear_modulus: estimate(megapascal(0.3), memory, "slow, 23 degC"),
        cyclic_shear_strain: estimate(0.25, FLEXIBLE_STRAIN, "the maker's limit is far higher"),
        elongation: typical(3.0, place(GLAZING_TAPE, "shear strain, short"), "in shear"),
        service_temperature: estimate(celsius(90.0), memory, "long-term"),
        thermal_conductivity: estimate(watt_per_meter_kelvin(0.12), memory, ""),
        ..adhesive(key, "acrylic foam tape", Agent::AcrylicAdhesive)
    }
}

fn adhesive_backing_rubber(key: &'static str) -> Material {
    let t = place(ADHESIVES_HANDBOOK, "table 8.6, rubbers");
    Material {
        designation: "rubber-based pressure-sensitive adhesive".into(),
        note: "Poor ageing and a limited upper temperature (Handbook of Adhesives and Sealants, table 8.6)."
            .into(),
        service_temperature: estimate(
            celsius(60.0),
            practice("rubber-based backings soften above some 60 degC"),
            "",
        ),
        flammability: Some(Flammability { note: "Burns.", source: t }),
        ..adhesive(key, "gasket backing, rubber-based", Agent::RubberBasedAdhesive)
    }
}

fn adhesive_backing_acrylic(key: &'static str) -> Material {
    let t = place(ADHESIVES_HANDBOOK, "table 8.6, acrylates, -45 to 121 degC");
    Material {
        designation: "acrylic pressure-sensitive adhesive".into(),
        note: "Wants a primed face on EPDM. Grows to its full strength in days.".into(),
        service_temperature: typical(celsius(121.0), t, "hardly loaded"),
        lowest_temperature: typical(celsius(-45.0), t, ""),
        ..adhesive(key, "gasket backing, acrylic", Agent::AcrylicAdhesive)
    }
}
