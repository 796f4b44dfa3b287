//! Gaskets: what a compressed strip pushes back with, and whether the gap keeps it within its window.

mod gasket_gap;
mod monotone_curve;
mod sponge_curve;
mod sponge_grade;

pub use gasket_gap::{ClosedBy, GapContribution, GasketGap, GasketGapOutcome};
pub use sponge_curve::{SpongeCurve, SpongeCurveOutcome, SpongePoint};
pub use sponge_grade::{DeflectionGrade, PublishedLimits, SpongeClass, SpongeGrade, SpongeGradeOutcome};
