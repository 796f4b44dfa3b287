//! The die opening of a press brake: the rule of the trade, the series, and what follows from the opening alone.

use crate::prelude::*;

/// What is done to a die opening that the rule gives.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
#[non_exhaustive]
pub enum DieOpeningRounding {
    /// Take the opening of the preferred series that is nearest by ratio: 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50,
    /// 63, 80, 100 mm.
    PreferredSeries,
    /// Take the opening that the rule gives, to the last digit.
    Exact,
}

/// The preferred series of die openings, in metres.
const PREFERRED_SERIES: [f64; 15] =
    [0.004, 0.005, 0.006, 0.008, 0.010, 0.012, 0.016, 0.020, 0.025, 0.032, 0.040, 0.050, 0.063, 0.080, 0.100];

/// The thickness up to which the rule takes six thicknesses, in metres.
const SIX_TIMES_TO: f64 = 0.0026;

/// Thickness factors between which a die opening is usual; outside them a result bears a caveat.
const USUAL_RATIO: core::ops::RangeInclusive<f64> = 5.0..=12.0;

/// Inside radius over die opening, common practice for mild steel.
pub(super) const RADIUS_FACTOR: f64 = 0.16;
/// Smallest flange over die opening for a bend of 90°, common practice.
pub(super) const FLANGE_FACTOR: f64 = 0.70;
/// Factor of the force formula, common practice.
pub(super) const FORCE_FACTOR: f64 = 1.42;

/// The die opening that the rule gives: 6 t to 2.6 mm, 8 t above.
pub(super) fn by_rule(thickness: f64) -> f64 {
    if thickness <= SIX_TIMES_TO { 6.0 * thickness } else { 8.0 * thickness }
}

/// How far two lengths are apart as a ratio, at least 1.
pub(super) fn ratio_apart(one: f64, other: f64) -> f64 {
    if one > other { one / other } else { other / one }
}

/// The die opening that the rule gives, rounded as asked.
pub(super) fn chosen(thickness: f64, rounding: DieOpeningRounding) -> f64 {
    let wanted = by_rule(thickness);
    match rounding {
        DieOpeningRounding::Exact => wanted,
        DieOpeningRounding::PreferredSeries => PREFERRED_SERIES
            .into_iter()
            .reduce(
                |best, next| if ratio_apart(next, wanted) <= ratio_apart(best, wanted) { next } else { best },
            )
            .unwrap_or(wanted),
    }
}

/// True where a die opening lies within the usual range for its thickness.
pub(super) fn is_usual(die_opening: f64, thickness: f64) -> bool {
    USUAL_RATIO.contains(&(die_opening / thickness))
}

/// Smallest flange, outside to the virtual sharp, that still bridges the die when the bend is closed.
pub(super) fn smallest_flange(flange_factor: f64, die_opening: f64, bend_angle: f64) -> f64 {
    flange_factor * die_opening * (math::cos(PI / 4.0) / math::cos(bend_angle / 2.0))
}

/// Largest force of an air bend for each length of bend.
pub(super) fn force_per_length(
    force_factor: f64,
    ultimate_strength: f64,
    thickness: f64,
    die_opening: f64,
) -> f64 {
    force_factor * ultimate_strength * thickness * thickness / die_opening
}
