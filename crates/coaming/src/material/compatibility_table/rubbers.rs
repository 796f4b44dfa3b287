//! Rubbers, solid and sponge.

use super::*;

pub(super) const ROWS: &[CompatibilityRow] = &[
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
    ok(F::SiliconeRubber, A::Weather, "resists ozone and sun", crate::material::sources::SILICONE_GUIDE),
    avoid(F::SiliconeRubber, A::Petrol, "swells strongly", CP),
    test(F::SiliconeRubber, A::MineralOil, "swells moderately in oil, class C to E", D2000_CLASSES),
    test(F::SiliconeRubber, A::Hypochlorite, "strength and time decide", CP),
    ok(F::Epdm, A::SaltWater, "at room temperature", CP),
    ok(F::Epdm, A::HotWater, "within its service temperature", CP),
    ok(F::Neoprene, A::SaltWater, "at room temperature", CP),
    ok(F::Nitrile, A::NeutralDetergent, "at room temperature", CP),
    ok(F::Nitrile, A::SaltWater, "at room temperature", CP),
    ok(F::SiliconeRubber, A::SaltWater, "at room temperature", CP),
    avoid(F::SiliconeRubber, A::AlkalineCleaner, "strong alkali breaks the chain down", CP),
    avoid(F::SiliconeRubber, A::AcrylicAdhesive, "acrylic tape does not hold on silicone: use silicone", CP),
];
