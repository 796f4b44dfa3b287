//! The sources of the tables. A locator is added where a figure is written.

use crate::prelude::*;

/// A source with the place in it.
pub(super) const fn place(source: Source, locator: &'static str) -> Source {
    Source { locator, ..source }
}

/// The same source, its figure recalled and not looked up.
pub(super) const fn unverified(title: &'static str, locator: &'static str) -> Source {
    Source { title, edition: "", locator, standing: Standing::Memory }
}

/// A fact of the trade that no published source is known for.
pub(super) const fn practice(what: &'static str) -> Source {
    Source::common_practice(what)
}

const fn source(title: &'static str, edition: &'static str, standing: Standing) -> Source {
    Source { title, edition, locator: "", standing }
}

const READ: Standing = Standing::Read;
const SECOND_HAND: Standing = Standing::SecondHand;
const MEMORY: Standing = Standing::Memory;

// Metals.
pub(super) const MIL_HDBK_5J: Source = source("MIL-HDBK-5J", "2003", READ);
pub(super) const ALUMINIUM_TYPICAL: Source =
    source("Aluminum Association typical values, in a public materials database", "", SECOND_HAND);
pub(super) const EN_485_2: Source = source("EN 485-2", "", MEMORY);
pub(super) const EN_1999_1_1: Source = source("EN 1999-1-1", "2007", MEMORY);
pub(super) const EN_1993_1_1: Source = source("EN 1993-1-1", "2005", MEMORY);
pub(super) const EN_10088_1: Source = source("EN 10088-1, in a tube supplier's table", "", SECOND_HAND);
pub(super) const EN_10088_2: Source = source("EN 10088-2", "", MEMORY);
pub(super) const ASM_VOLUME_2: Source = source("ASM Handbook vol. 2", "1990", MEMORY);
pub(super) const ASTM_B265: Source = source("ASTM B265, in a metal supplier's table", "", SECOND_HAND);
pub(super) const TITANIUM_SHEET: Source = source("titanium grade 2, annealed, data sheet", "", READ);
pub(super) const BRASS_SHEET: Source = source("C36000 free-cutting brass (ASTM B16), data sheet", "", READ);
pub(super) const BRASS_DATABASE: Source =
    source("C36000 brass, half hard (H02), page of a materials database", "", READ);

// Surfaces.
pub(super) const EMISSIVITY_NOTES: Source = source(
    "J. R. Thome, Radiative heat transfer, lecture notes, EPFL, in a public table",
    "2008",
    SECOND_HAND,
);
pub(super) const EMISSIVITY_TABLE: Source =
    source("emissivity table of a thermal camera's manual, after published compilations", "", SECOND_HAND);
pub(super) const SOLAR_TABLE: Source =
    source("solar absorptivity of surfaces, table of a heat-transfer course", "", READ);
pub(super) const COATING_TABLE: Source =
    source("table of solar absorptance and emittance of coatings, in a journal paper on balloons", "", READ);

// Plastics.
pub(super) const PC_GLAZING: Source = source("polycarbonate glazing-sheet data sheet", "", READ);
pub(super) const PC_MULTIWALL: Source = source("polycarbonate multiwall-sheet data page", "", READ);
pub(super) const PC_STOCK_SHAPE: Source = source("polycarbonate stock-shape data sheet", "", READ);
pub(super) const PC_EXTRUSION: Source =
    source("UV-stabilised polycarbonate extrusion grade, data sheet", "", READ);
pub(super) const PMMA_STOCK_SHAPE: Source = source("cast acrylic stock-shape data sheet", "", READ);
pub(super) const PMMA_CAST: Source = source("cast acrylic sheet, ISO data sheet", "", READ);
pub(super) const PMMA_EXTRUDED: Source = source("extruded acrylic sheet, data sheet", "", READ);
pub(super) const UFGS_VIEWPORT: Source = source("UFGS 4-159-01 (viewports)", "", READ);
pub(super) const PETG_SHEET: Source = source("clear PETG sheet, data page", "", READ);
pub(super) const PETG_GENERIC: Source = source("generic PETG data, public materials database", "", READ);
pub(super) const PETG_DATABASE: Source = source("PETG, page of a materials database", "", READ);
pub(super) const PA6_ISO: Source =
    source("unfilled polyamide 6, dry and conditioned, ISO data sheet", "", READ);
pub(super) const PA6_GENERIC: Source = source("polyamide 6, generic data page", "", READ);
pub(super) const PA6_SUPPLIER: Source = source("polyamide 6, plastics supplier's page", "", READ);
pub(super) const PA_SORPTION: Source = source("polyamide data sheet, water absorption", "", READ);
pub(super) const PA6_SORPTION_NOTE: Source =
    source("laboratory application note, sorption of polyamide", "", READ);
pub(super) const PA_BROCHURE: Source = source("polyamide maker's brochure, dimensional change", "", MEMORY);
pub(super) const PA_GENERIC: Source = source("generic PA6 data sheets (ISO 527)", "", MEMORY);
pub(super) const PA6_CF_TABLE: Source = source("online material table, PA6-CF30 dry", "", READ);
pub(super) const PRINTED_NYLON_PAPER: Source =
    source("Faust et al., Polymers 13 (2021) 3637, printed nylon with and without carbon fibre", "", READ);
pub(super) const PA12_TABLE: Source = source("open materials table, PA12 by powder-bed fusion", "", READ);
pub(super) const PA12_GENERIC: Source = source("PA12 powder-bed fusion, generic data page", "", READ);
pub(super) const PA12_CAST: Source = source("cast PA12, note on moisture absorption", "", READ);
pub(super) const PETG_PRINTED: Source = source("open materials table, PETG", "", READ);
pub(super) const ABS_GENERIC: Source = source("generic ABS and ASA data sheets", "", MEMORY);
pub(super) const ABS_SHEET: Source = source("ABS, data page with ASTM methods", "", READ);
pub(super) const ASA_NOTE: Source = source("ASA for printing, engineering article", "", READ);

// Laminates.
pub(super) const RP_1351: Source = source("NASA RP-1351, A. T. Nettles", "1994", READ);
pub(super) const RP_1351_COMPUTED: Source = source("NASA RP-1351, A. T. Nettles", "1994", Standing::Computed);
pub(super) const NEMA_LAMINATE: Source =
    source("NEMA grade G-10/FR-4, laminate supplier's data chart", "", READ);

// Sponges, rubbers, insulation.
pub(super) const D1056: Source = source("ASTM D1056, in suppliers' explanations", "", SECOND_HAND);
pub(super) const NEOPRENE_SPONGE: Source =
    source("closed-cell neoprene sponge, gasket supplier's page", "", READ);
pub(super) const D2000: Source = source("ASTM D2000, in suppliers' explanations", "", SECOND_HAND);
pub(super) const GENT: Source =
    source("A. N. Gent, Trans. IRI 34 (1958) 46-57, modulus from hardness", "", Standing::Computed);
pub(super) const ELASTOMERIC_FOAM: Source =
    source("closed-cell elastomeric foam insulation, data page with ASTM methods", "", READ);
pub(super) const POLYETHYLENE_FOAM: Source =
    source("cross-linked polyethylene foam 33 kg/m3, data sheet with ISO methods", "", READ);

// Adhesives and sealants.
pub(super) const VIANA: Source =
    source("Viana et al., Frattura ed Integrita Strutturale 48 (2019) 286-303", "", READ);
pub(super) const SEALANT_25LM: Source =
    source("neutral-cure silicone, ISO 11600 class 25LM, data sheet", "", READ);
pub(super) const NEUTRAL_SILICONE: Source =
    source("one-part neutral-cure silicone sealant, data sheet", "", READ);
pub(super) const SEALANT_20HM: Source =
    source("acetoxy-cure silicone, ISO 11600 class 20HM, data page", "", READ);
pub(super) const SILICONE_GUIDE: Source = source("silicone sealants, selection guide", "", READ);
pub(super) const POLYURETHANE_NOTES: Source = source("polyurethane adhesives, review text", "", READ);
pub(super) const POLYURETHANE_GLOSSARY: Source =
    source("polyurethane adhesive, glossary of an adhesives portal", "", READ);
pub(super) const ADHESIVES_HANDBOOK: Source = source("Handbook of Adhesives and Sealants", "", READ);
pub(super) const EPOXY_NOTES: Source =
    source("Budinski and Budinski, Engineering Materials, in a university's glossary", "1999", SECOND_HAND);
pub(super) const GLAZING_TAPE: Source = source("acrylic foam glazing tape, architects' course", "", READ);
