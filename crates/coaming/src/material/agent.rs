//! What meets what: the families of materials and the agents that act on them.

use crate::prelude::*;

/// A family of materials that chemicals treat alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Choice)]
#[non_exhaustive]
pub enum Family {
    /// Polycarbonate: amorphous, cracks under stress in many chemicals.
    Polycarbonate,
    /// Acrylic (PMMA): amorphous, crazes.
    Acrylic,
    /// PETG: amorphous copolyester.
    Petg,
    /// ABS: amorphous, with a rubber that weathers.
    Abs,
    /// ASA: amorphous, weather-resistant.
    Asa,
    /// Polyamide 6.
    #[option("polyamide_6")]
    Polyamide6,
    /// Polyamide 12.
    #[option("polyamide_12")]
    Polyamide12,
    /// EPDM rubber, solid or sponge.
    Epdm,
    /// Chloroprene rubber, solid or sponge.
    Neoprene,
    /// Nitrile rubber, solid or sponge.
    Nitrile,
    /// Silicone rubber, solid or sponge.
    SiliconeRubber,
    /// Aluminium alloys.
    Aluminium,
    /// Unalloyed steel.
    CarbonSteel,
    /// Austenitic stainless steel.
    StainlessSteel,
    /// Brass and copper.
    CopperAlloy,
    /// Epoxy laminates, carbon or glass.
    EpoxyLaminate,
    /// Epoxy, cured in a bond line.
    EpoxyAdhesive,
    /// Polyurethane, cured in a bond line.
    PolyurethaneAdhesive,
    /// Acrylic pressure-sensitive tape and backing.
    AcrylicAdhesive,
    /// Rubber-based pressure-sensitive backing.
    RubberAdhesive,
}

/// A chemical, or a neighbouring material that acts as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Choice)]
#[non_exhaustive]
pub enum Agent {
    /// Water with neutral detergent.
    NeutralDetergent,
    /// Strongly alkaline cleaner.
    AlkalineCleaner,
    /// Sodium hypochlorite solution and its vapour.
    Hypochlorite,
    /// Isopropyl alcohol, for wiping.
    IsopropylAlcohol,
    /// Acetone and other ketones.
    Ketones,
    /// Toluene, xylene, paint thinners.
    AromaticSolvents,
    /// Dichloromethane and other chlorinated solvents.
    ChlorinatedSolvents,
    /// Petrol.
    Petrol,
    /// Diesel fuel, mineral oil and grease.
    MineralOil,
    /// Ammonia and amines.
    Ammonia,
    /// Dilute mineral acid.
    DiluteAcid,
    /// Salt water and spray.
    SaltWater,
    /// Water for long above 60 degC.
    HotWater,
    /// Sun and ozone outdoors.
    Weather,
    /// Anaerobic threadlocker, not cured.
    AnaerobicThreadlocker,
    /// Cyanoacrylate adhesive.
    Cyanoacrylate,
    /// Dry nylon patch on a thread, applied before.
    NylonPatch,
    /// Silicone that cures with acetic acid.
    AcetoxySilicone,
    /// Silicone of neutral cure.
    NeutralSilicone,
    /// Polyurethane adhesive or sealant.
    PolyurethaneAdhesive,
    /// Epoxy adhesive, its amine hardener before cure included.
    EpoxyAdhesive,
    /// Rubber-based pressure-sensitive adhesive.
    RubberBasedAdhesive,
    /// Acrylic pressure-sensitive adhesive.
    AcrylicAdhesive,
    /// Plasticised PVC: edging, tape, cable sheath.
    PlasticisedPvc,
    /// EPDM gasket against it.
    EpdmGasket,
    /// Chloroprene gasket against it.
    NeopreneGasket,
    /// Nitrile gasket against it.
    NitrileGasket,
    /// Silicone gasket against it.
    SiliconeGasket,
}
