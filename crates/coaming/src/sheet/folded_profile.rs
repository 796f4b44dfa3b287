//! A profile folded in its plane, at mid thickness, in the frame of its first leg.

use super::profile::{BendDirection, Profile, ProfileBend, ProfileOutcome};
use crate::prelude::*;

/// A vector in the plane of the profile: along the first leg, and above it.
pub(super) type Vector = [f64; 2];

/// The sum of two vectors.
pub(super) fn plus(one: Vector, other: Vector) -> Vector {
    [one[0] + other[0], one[1] + other[1]]
}

/// A vector times a factor.
pub(super) fn times(factor: f64, vector: Vector) -> Vector {
    [factor * vector[0], factor * vector[1]]
}

/// The direction at an angle from the first leg.
fn direction(angle: f64) -> Vector {
    [math::cos(angle), math::sin(angle)]
}

/// One bend, folded.
pub(super) struct FoldedBend<'a> {
    /// The bend.
    pub(super) bend: &'a ProfileBend,
    /// 1 for up, −1 for down.
    pub(super) turn: f64,
    /// Direction of the leg before it.
    pub(super) before: Vector,
    /// Direction of the leg after it.
    pub(super) after: Vector,
    /// Its chord at mid thickness over its radius there.
    pub(super) unit_chord: Vector,
    /// Where it ends.
    pub(super) end: Vector,
}

/// A leg with the bends before it, folded.
pub(super) struct FoldedLeg<'a> {
    /// The bends before the leg, in order.
    pub(super) bends: Vec<FoldedBend<'a>>,
    /// Where the leg begins.
    pub(super) start: Vector,
    /// Its direction.
    pub(super) along: Vector,
}

/// Folds the bends before a leg.
pub(super) fn fold<'a>(profile: &'a Profile, flat: &ProfileOutcome, leg: usize) -> FoldedLeg<'a> {
    let t = profile.thickness.value;
    let (mut at, mut angle) = ([0.0, 0.0], 0.0);
    let mut bends = Vec::with_capacity(leg);
    for (bend, flat) in profile.bends.iter().zip(&flat.legs).take(leg) {
        let turn = if bend.direction == BendDirection::Up { 1.0 } else { -1.0 };
        let a = bend.bend_angle.value;
        let (before, after) = (direction(angle), direction(angle + turn * a));
        let unit_chord = times(2.0 * math::sin(a / 2.0), direction(angle + turn * a / 2.0));
        at = plus(at, times(flat.flat.value, before));
        at = plus(at, times(bend.inside_radius.value + t / 2.0, unit_chord));
        angle += turn * a;
        bends.push(FoldedBend { bend, turn, before, after, unit_chord, end: at });
    }
    FoldedLeg { bends, start: at, along: direction(angle) }
}
