//! Adhesives and tapes once cured, in a bond line whose edge is open.

use super::*;

pub(super) const ROWS: &[CompatibilityRow] = &[
    // Epoxy.
    ok(F::EpoxyAdhesive, A::NeutralDetergent, "at room temperature", CP),
    ok(F::EpoxyAdhesive, A::MineralOil, "at room temperature", CP),
    ok(F::EpoxyAdhesive, A::Petrol, "at room temperature", CP),
    test(F::EpoxyAdhesive, A::AlkalineCleaner, "creeps along the face of an aluminium bond", CP),
    test(F::EpoxyAdhesive, A::Hypochlorite, "strength and time decide", CP),
    test(F::EpoxyAdhesive, A::SaltWater, "the metal corrodes under the edge of the bond", CP),
    test(F::EpoxyAdhesive, A::HotWater, "a warm, wet bond on aluminium loses strength without a primer", CP),
    test(F::EpoxyAdhesive, A::Weather, "damp and heat age the bond: prime the metal, seal the edge", CP),
    test(F::EpoxyAdhesive, A::Ketones, "softens the edge where it stays", CP),
    avoid(F::EpoxyAdhesive, A::ChlorinatedSolvents, "strips it", CP),
    // Polyurethane.
    ok(F::PolyurethaneAdhesive, A::NeutralDetergent, "at room temperature", CP),
    ok(F::PolyurethaneAdhesive, A::SaltWater, "at room temperature, on a primed face", CP),
    ok(F::PolyurethaneAdhesive, A::MineralOil, "at room temperature", CP),
    test(F::PolyurethaneAdhesive, A::Hypochlorite, "oxidising solutions embrittle it in time", CP),
    test(
        F::PolyurethaneAdhesive,
        A::Weather,
        "the sun chalks it and loosens it behind glass: cover the bead",
        CP,
    ),
    test(F::PolyurethaneAdhesive, A::Petrol, "swells where it stays", CP),
    test(F::PolyurethaneAdhesive, A::IsopropylAlcohol, "stops the cure of a fresh bead", CP),
    avoid(F::PolyurethaneAdhesive, A::HotWater, "warm water breaks it down in time", CP),
    avoid(F::PolyurethaneAdhesive, A::Ketones, "swells and softens it", CP),
    avoid(F::PolyurethaneAdhesive, A::ChlorinatedSolvents, "swells and softens it", CP),
    // Acrylic, pressure-sensitive.
    ok(F::AcrylicAdhesive, A::NeutralDetergent, "after three days of bonding", CP),
    ok(F::AcrylicAdhesive, A::Weather, "resists sun and ozone", CP),
    ok(F::AcrylicAdhesive, A::IsopropylAlcohol, "for wiping; edges not soaked", CP),
    test(F::AcrylicAdhesive, A::Hypochlorite, "strength and time decide", CP),
    test(F::AcrylicAdhesive, A::MineralOil, "softens at the edges", CP),
    test(F::AcrylicAdhesive, A::Petrol, "splashes are borne, soaking is not", CP),
    avoid(F::AcrylicAdhesive, A::Ketones, "dissolves it", CP),
    avoid(F::AcrylicAdhesive, A::AromaticSolvents, "dissolves it", CP),
    avoid(F::AcrylicAdhesive, A::ChlorinatedSolvents, "dissolves it", CP),
    // Rubber-based, pressure-sensitive.
    ok(F::RubberAdhesive, A::NeutralDetergent, "at room temperature", CP),
    avoid(F::RubberAdhesive, A::Weather, "sun and ozone dry it out", CP),
    avoid(F::RubberAdhesive, A::MineralOil, "softens it", CP),
    avoid(F::RubberAdhesive, A::Petrol, "dissolves it", CP),
    avoid(F::RubberAdhesive, A::Hypochlorite, "oxidises it", CP),
    avoid(F::RubberAdhesive, A::Ketones, "dissolves it", CP),
];
