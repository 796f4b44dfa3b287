//! Gaskets: what a compressed strip pushes back with, and whether the gap keeps it within its window.

mod cord_groove;
mod gasket_gap;
mod gasket_set;
mod gasket_spacing;
mod gasket_strip;
mod gasket_tightness;
mod monotone_curve;
mod rubber_block;
mod rubber_strip;
mod section_curve;
mod shore_modulus;
mod sponge_curve;
mod sponge_grade;
mod sponge_hyperelastic;

pub use cord_groove::{CordGroove, CordGrooveOutcome};
pub use gasket_gap::{ClosedBy, GapContribution, GasketGap, GasketGapOutcome};
pub use gasket_set::{GasketSet, GasketSetOutcome, SetBasis};
pub use gasket_spacing::{GasketSpacing, GasketSpacingOutcome};
pub use gasket_strip::{GasketCorner, GasketStrip, GasketStripOutcome};
pub use gasket_tightness::{GasketTightness, GasketTightnessOutcome};
pub use rubber_block::{RubberBlock, RubberBlockOutcome, RubberFaces};
pub use rubber_strip::{RubberStrip, RubberStripOutcome};
pub use section_curve::{SectionCurve, SectionCurveOutcome, SectionPoint};
pub use shore_modulus::{ShoreModulus, ShoreModulusOutcome};
pub use sponge_curve::{SpongeCurve, SpongeCurveOutcome, SpongePoint};
pub use sponge_grade::{DeflectionGrade, PublishedLimits, SpongeClass, SpongeGrade, SpongeGradeOutcome};
pub use sponge_hyperelastic::{FoamSides, FoamTerm, SpongeHyperelastic, SpongeHyperelasticOutcome};
