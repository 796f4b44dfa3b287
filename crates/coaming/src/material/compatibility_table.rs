//! The rows of the compatibility table.

use super::agent::{Agent, Family};
use super::compatibility::{Compatibility, CompatibilityRow};
use super::sources::{place, practice};
use crate::prelude::*;

const fn ok(family: Family, agent: Agent, reason: &'static str, source: Source) -> CompatibilityRow {
    CompatibilityRow { family, agent, verdict: Compatibility::Ok, reason, source }
}

const fn avoid(family: Family, agent: Agent, reason: &'static str, source: Source) -> CompatibilityRow {
    CompatibilityRow { family, agent, verdict: Compatibility::Avoid, reason, source }
}

const fn test(family: Family, agent: Agent, reason: &'static str, source: Source) -> CompatibilityRow {
    CompatibilityRow { family, agent, verdict: Compatibility::TestOnAStressedStrip, reason, source }
}

const fn read(title: &'static str) -> Source {
    Source { title, edition: "", locator: "", standing: Standing::Read }
}

const PC_RESISTANCE: Source = read("chemical resistance of polycarbonate sheet, supplier's note");
const PC_CLEANING: Source = read("cleaning guide for polycarbonate glazing");
const ACRYLIC_NOTE: Source = read("acrylic sheet, supplier's note on resistance");
const ACRYLIC_SEALANTS: Source = read("acrylic sheet maker's guide to glazing sealants");
const EPDM_PLASTICISERS: Source = read("acrylic and polycarbonate sheet maker's note on EPDM gaskets");
const PETG_NOTE: Source = read("PETG, page of a materials database");
const PA6_NOTE: Source = read("polyamide 6, plastics supplier's page");
const ANAEROBIC: Source = read("adhesives design guide for plastics, stress cracking");
const ANAEROBIC_THERMOSETS: Source =
    Source { edition: "2018", ..read("adhesives trade journal, answer on threadlockers in plastics") };
const D2000_CLASSES: Source = Source {
    title: "ASTM D2000",
    edition: "",
    locator: "class: swelling in oil",
    standing: Standing::SecondHand,
};
const CP: Source = practice("shop knowledge of plastics, sealants and gaskets");
const ACETIC: Source = place(CP, "acetic acid is set free while it cures");

use Agent as A;
use Family as F;

pub(super) const ROWS: &[CompatibilityRow] = &[
    // Polycarbonate.
    ok(
        F::Polycarbonate,
        A::NeutralDetergent,
        "mild soap in lukewarm water, rinsed off and dried",
        PC_CLEANING,
    ),
    avoid(
        F::Polycarbonate,
        A::AlkalineCleaner,
        "strong alkali attacks the surface and cracks it under stress",
        PC_RESISTANCE,
    ),
    test(
        F::Polycarbonate,
        A::Hypochlorite,
        "oxidising salts are borne, but the solution is alkaline: strength, time and stress decide",
        CP,
    ),
    ok(
        F::Polycarbonate,
        A::IsopropylAlcohol,
        "for wiping at room temperature, unstressed, left to dry",
        PC_CLEANING,
    ),
    avoid(F::Polycarbonate, A::Ketones, "dissolves and cracks it", PC_RESISTANCE),
    avoid(F::Polycarbonate, A::AromaticSolvents, "swells and cracks it", PC_RESISTANCE),
    avoid(F::Polycarbonate, A::ChlorinatedSolvents, "dissolves it", PC_RESISTANCE),
    avoid(F::Polycarbonate, A::Petrol, "aromatics in petrol crack it under stress", PC_CLEANING),
    test(
        F::Polycarbonate,
        A::MineralOil,
        "many oils and greases are borne, additives crack it: each product differs",
        PC_RESISTANCE,
    ),
    avoid(F::Polycarbonate, A::Ammonia, "ammonia and amines break the polymer down", PC_RESISTANCE),
    ok(F::Polycarbonate, A::DiluteAcid, "dilute mineral acid at room temperature, unstressed", PC_RESISTANCE),
    ok(F::Polycarbonate, A::SaltWater, "neutral salt solutions at room temperature", PC_RESISTANCE),
    avoid(F::Polycarbonate, A::HotWater, "degrades for long above 60 degC", PC_RESISTANCE),
    test(
        F::Polycarbonate,
        A::Weather,
        "yellows and embrittles unless the sheet is UV-protected: ask for the protected side",
        CP,
    ),
    avoid(
        F::Polycarbonate,
        A::AnaerobicThreadlocker,
        "the uncured liquid cracks stressed polycarbonate",
        ANAEROBIC,
    ),
    avoid(F::Polycarbonate, A::Cyanoacrylate, "the monomer crazes stressed polycarbonate", CP),
    ok(F::Polycarbonate, A::NylonPatch, "dry patch, nothing liquid reaches the sheet", CP),
    avoid(
        F::Polycarbonate,
        A::AcetoxySilicone,
        "acetic acid and trapped vapour craze stressed edges; metal beside it corrodes",
        ACETIC,
    ),
    test(
        F::Polycarbonate,
        A::NeutralSilicone,
        "alkoxy or oxime cure differ: use one that its maker releases for polycarbonate",
        CP,
    ),
    test(F::Polycarbonate, A::PolyurethaneAdhesive, "solvent and primer decide", CP),
    avoid(
        F::Polycarbonate,
        A::EpoxyAdhesive,
        "amine hardener attacks it, and a rigid bond cracks it in the cold",
        PC_RESISTANCE,
    ),
    test(F::Polycarbonate, A::RubberBasedAdhesive, "tackifiers and plasticisers migrate", CP),
    ok(
        F::Polycarbonate,
        A::AcrylicAdhesive,
        "tape released by its maker for polycarbonate, on dry sheet",
        CP,
    ),
    avoid(F::Polycarbonate, A::PlasticisedPvc, "plasticiser migrates and cracks it", CP),
    test(
        F::Polycarbonate,
        A::EpdmGasket,
        "plasticiser of the compound may migrate: ask for a non-migrating one",
        EPDM_PLASTICISERS,
    ),
    test(F::Polycarbonate, A::NeopreneGasket, "oils of the compound may migrate", CP),
    avoid(F::Polycarbonate, A::NitrileGasket, "plasticisers of nitrile compounds crack it", CP),
    ok(F::Polycarbonate, A::SiliconeGasket, "fully cured solid or sponge, without oil bleeding", CP),
    // Acrylic.
    ok(F::Acrylic, A::NeutralDetergent, "at room temperature, rinsed off", ACRYLIC_NOTE),
    test(
        F::Acrylic,
        A::AlkalineCleaner,
        "dilute alkali is borne unstressed; strong cleaners craze stressed edges",
        ACRYLIC_NOTE,
    ),
    test(F::Acrylic, A::Hypochlorite, "dilute solution is borne unstressed", CP),
    avoid(F::Acrylic, A::IsopropylAlcohol, "alcohols craze stressed acrylic", CP),
    avoid(F::Acrylic, A::Ketones, "dissolves it", ACRYLIC_NOTE),
    avoid(F::Acrylic, A::AromaticSolvents, "crazes and dissolves it", ACRYLIC_NOTE),
    avoid(F::Acrylic, A::ChlorinatedSolvents, "dissolves it", ACRYLIC_NOTE),
    avoid(F::Acrylic, A::Petrol, "aromatics in petrol craze it", ACRYLIC_NOTE),
    test(F::Acrylic, A::MineralOil, "aliphatic oils are borne; additives differ", ACRYLIC_NOTE),
    ok(F::Acrylic, A::DiluteAcid, "dilute inorganic acid at room temperature", ACRYLIC_NOTE),
    ok(F::Acrylic, A::SaltWater, "at room temperature", CP),
    ok(F::Acrylic, A::Weather, "clear cast sheet outdoors", CP),
    avoid(
        F::Acrylic,
        A::AnaerobicThreadlocker,
        "the uncured liquid cracks plastics prone to stress cracking",
        ANAEROBIC,
    ),
    avoid(F::Acrylic, A::Cyanoacrylate, "the monomer crazes stressed acrylic", CP),
    ok(F::Acrylic, A::NylonPatch, "dry patch, nothing liquid reaches the sheet", CP),
    avoid(F::Acrylic, A::AcetoxySilicone, "acetic acid crazes stressed edges", ACETIC),
    test(F::Acrylic, A::NeutralSilicone, "use one released for acrylic, without primer", ACRYLIC_SEALANTS),
    test(
        F::Acrylic,
        A::PolyurethaneAdhesive,
        "use one released for acrylic, without primer",
        ACRYLIC_SEALANTS,
    ),
    avoid(F::Acrylic, A::PlasticisedPvc, "plasticiser migrates and crazes it", CP),
    test(
        F::Acrylic,
        A::EpdmGasket,
        "plasticiser of the compound may migrate: ask for a non-migrating one",
        EPDM_PLASTICISERS,
    ),
    ok(F::Acrylic, A::NeopreneGasket, "closed-cell gasket released for acrylic", ACRYLIC_SEALANTS),
    // PETG.
    ok(F::Petg, A::NeutralDetergent, "soaps at room temperature", PETG_NOTE),
    avoid(F::Petg, A::AlkalineCleaner, "only dilute alkali is borne", PETG_NOTE),
    ok(F::Petg, A::IsopropylAlcohol, "for wiping at room temperature, unstressed", PETG_NOTE),
    avoid(F::Petg, A::Ketones, "attacks or dissolves it", PETG_NOTE),
    avoid(F::Petg, A::AromaticSolvents, "attacks or dissolves it", PETG_NOTE),
    avoid(F::Petg, A::ChlorinatedSolvents, "attacks or dissolves it", PETG_NOTE),
    avoid(F::Petg, A::Petrol, "aromatics in petrol attack it", PETG_NOTE),
    ok(F::Petg, A::MineralOil, "oil and aliphatic hydrocarbons at room temperature", PETG_NOTE),
    ok(F::Petg, A::DiluteAcid, "dilute acid at room temperature", PETG_NOTE),
    ok(F::Petg, A::SaltWater, "salt solutions at room temperature", PETG_NOTE),
    test(F::Petg, A::Hypochlorite, "strength and time decide", CP),
    avoid(
        F::Petg,
        A::AnaerobicThreadlocker,
        "the uncured liquid cracks plastics prone to stress cracking",
        ANAEROBIC,
    ),
    test(F::Petg, A::AcetoxySilicone, "acetic acid under stress", ACETIC),
    test(F::Petg, A::NeutralSilicone, "use one released for PETG", CP),
    avoid(F::Petg, A::PlasticisedPvc, "plasticiser migrates", CP),
    // ABS and ASA.
    ok(F::Abs, A::NeutralDetergent, "at room temperature", CP),
    avoid(F::Abs, A::Ketones, "dissolves it", CP),
    avoid(F::Abs, A::AromaticSolvents, "dissolves it", CP),
    avoid(F::Abs, A::ChlorinatedSolvents, "dissolves it", CP),
    avoid(F::Abs, A::Petrol, "cracks it under stress", CP),
    test(F::Abs, A::MineralOil, "cracks under stress with some oils", CP),
    test(F::Abs, A::Hypochlorite, "strength and time decide", CP),
    avoid(F::Abs, A::AnaerobicThreadlocker, "the uncured liquid cracks it", ANAEROBIC),
    avoid(F::Abs, A::Weather, "its rubber embrittles in the sun: use ASA, or paint it", CP),
    avoid(F::Abs, A::PlasticisedPvc, "plasticiser migrates", CP),
    ok(F::Asa, A::NeutralDetergent, "at room temperature", CP),
    avoid(F::Asa, A::Ketones, "dissolves it", CP),
    avoid(F::Asa, A::AromaticSolvents, "dissolves it", CP),
    avoid(F::Asa, A::ChlorinatedSolvents, "dissolves it", CP),
    avoid(F::Asa, A::Petrol, "cracks it under stress", CP),
    test(F::Asa, A::MineralOil, "cracks under stress with some oils", CP),
    test(F::Asa, A::Hypochlorite, "strength and time decide", CP),
    avoid(F::Asa, A::AnaerobicThreadlocker, "the uncured liquid cracks it", ANAEROBIC),
    ok(F::Asa, A::Weather, "saturated rubber, made for outdoors", super::sources::ASA_NOTE),
    avoid(F::Asa, A::PlasticisedPvc, "plasticiser migrates", CP),
    // Polyamides.
    ok(F::Polyamide6, A::NeutralDetergent, "at room temperature; it swells with the water it takes up", CP),
    avoid(F::Polyamide6, A::AlkalineCleaner, "not resistant to alkali", PA6_NOTE),
    avoid(F::Polyamide6, A::Hypochlorite, "oxidising chlorine solutions embrittle polyamide", CP),
    avoid(F::Polyamide6, A::DiluteAcid, "not resistant to acids", PA6_NOTE),
    ok(F::Polyamide6, A::AromaticSolvents, "hydrocarbons at room temperature", PA6_NOTE),
    ok(F::Polyamide6, A::Petrol, "hydrocarbons at room temperature", PA6_NOTE),
    ok(F::Polyamide6, A::MineralOil, "oils and greases", PA6_NOTE),
    ok(F::Polyamide6, A::Ketones, "for wiping at room temperature", CP),
    test(F::Polyamide6, A::SaltWater, "road salts other than common salt crack stressed PA6", CP),
    test(
        F::Polyamide6,
        A::AnaerobicThreadlocker,
        "semi-crystalline and less prone, but printed layers hold the liquid",
        CP,
    ),
    ok(F::Polyamide6, A::NylonPatch, "dry patch", CP),
    ok(F::Polyamide6, A::NeutralSilicone, "on a clean, dry surface; adhesion is to be tried", CP),
    avoid(
        F::Polyamide6,
        A::AcetoxySilicone,
        "acetic acid attacks polyamide, and brass inserts in it corrode",
        ACETIC,
    ),
    ok(F::Polyamide12, A::NeutralDetergent, "at room temperature", CP),
    test(F::Polyamide12, A::Hypochlorite, "oxidising chlorine solutions embrittle polyamide in time", CP),
    ok(F::Polyamide12, A::MineralOil, "oils and greases", CP),
    ok(F::Polyamide12, A::Petrol, "at room temperature; it swells a little", CP),
    test(F::Polyamide12, A::DiluteAcid, "dilute acid attacks it slowly", CP),
    ok(F::Polyamide12, A::SaltWater, "at room temperature", CP),
    test(F::Polyamide12, A::AnaerobicThreadlocker, "pores of a powder-bed part hold the liquid", CP),
    ok(F::Polyamide12, A::NylonPatch, "dry patch", CP),
    ok(F::Polyamide12, A::NeutralSilicone, "on a clean, dry surface; adhesion is to be tried", CP),
    test(F::Polyamide12, A::AcetoxySilicone, "acetic acid, and brass inserts in it corrode", ACETIC),
    // Rubbers, solid and sponge.
    ok(F::Epdm, A::NeutralDetergent, "at room temperature", CP),
    ok(F::Epdm, A::AlkalineCleaner, "dilute, at room temperature", CP),
    ok(F::Epdm, A::Hypochlorite, "dilute solution and vapour at room temperature", CP),
    avoid(F::Epdm, A::MineralOil, "swells without limit: class A has no requirement in oil", D2000_CLASSES),
    avoid(F::Epdm, A::Petrol, "swells without limit", D2000_CLASSES),
    ok(F::Epdm, A::Weather, "ozone and sun, carbon-black compound", CP),
    avoid(
        F::Epdm,
        A::RubberBasedAdhesive,
        "bleeding oil and heat soften the adhesive: use acrylic on a primed face",
        CP,
    ),
    ok(
        F::Epdm,
        A::AcrylicAdhesive,
        "on a primed or treated face only: the rubber's surface is poor to bond",
        CP,
    ),
    ok(F::Neoprene, A::NeutralDetergent, "at room temperature", CP),
    test(F::Neoprene, A::MineralOil, "swells moderately in oil, class C to E", D2000_CLASSES),
    avoid(F::Neoprene, A::Petrol, "swells strongly in aromatics", CP),
    ok(F::Neoprene, A::Weather, "resists ozone and sun", CP),
    avoid(F::Neoprene, A::Hypochlorite, "oxidising solutions harden it", CP),
    ok(F::Nitrile, A::MineralOil, "made for oil, class F to K", D2000_CLASSES),
    ok(F::Nitrile, A::Petrol, "made for fuel; aromatic fuels swell it some", CP),
    avoid(F::Nitrile, A::Weather, "cracks in ozone unless blended or shielded", CP),
    avoid(F::Nitrile, A::Ketones, "swells strongly", CP),
    avoid(F::Nitrile, A::Hypochlorite, "oxidising solutions harden it", CP),
    ok(F::SiliconeRubber, A::NeutralDetergent, "at room temperature", CP),
    ok(F::SiliconeRubber, A::Weather, "resists ozone and sun", super::sources::SILICONE_GUIDE),
    avoid(F::SiliconeRubber, A::Petrol, "swells strongly", CP),
    test(F::SiliconeRubber, A::MineralOil, "swells moderately in oil, class C to E", D2000_CLASSES),
    test(F::SiliconeRubber, A::Hypochlorite, "strength and time decide", CP),
    // Metals beside sealants and cleaners.
    avoid(F::Aluminium, A::AlkalineCleaner, "alkali dissolves the oxide and the metal", CP),
    avoid(F::Aluminium, A::Hypochlorite, "pits it", CP),
    avoid(F::Aluminium, A::AcetoxySilicone, "acetic acid stains and corrodes bare metal at the bond", ACETIC),
    ok(F::Aluminium, A::NeutralSilicone, "on a clean or painted face", CP),
    ok(F::Aluminium, A::AnaerobicThreadlocker, "metal parts only; activator on passive surfaces", CP),
    avoid(F::CarbonSteel, A::AcetoxySilicone, "acetic acid rusts it under the bead", ACETIC),
    avoid(F::CarbonSteel, A::Hypochlorite, "rusts it", CP),
    avoid(F::CopperAlloy, A::AcetoxySilicone, "acetic acid corrodes copper and brass", ACETIC),
    avoid(F::CopperAlloy, A::Ammonia, "cracks stressed brass", CP),
    avoid(
        F::StainlessSteel,
        A::Hypochlorite,
        "chlorides with an oxidiser pit it; rinse, or shield it from the vapour",
        CP,
    ),
    ok(F::StainlessSteel, A::NeutralDetergent, "rinsed off", CP),
    ok(F::StainlessSteel, A::AnaerobicThreadlocker, "metal parts only; activator on passive surfaces", CP),
    ok(F::EpoxyLaminate, A::AnaerobicThreadlocker, "cured thermosets bear it", ANAEROBIC_THERMOSETS),
    ok(F::EpoxyLaminate, A::NeutralDetergent, "at room temperature, edges sealed", CP),
    avoid(F::EpoxyLaminate, A::ChlorinatedSolvents, "strips and softens the resin", CP),
];
