//! What the length of a bent leg is measured to, and how far that lies past the tangent line.

use crate::prelude::*;

/// What the length of a leg is measured to, at each of its ends that has a bend.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
#[non_exhaustive]
pub enum LengthReference {
    /// Over the outside, the convex side of the bend: to where the outside faces meet; `above_ninety` says what past 90°.
    Outside,
    /// On the inside, the hollow side of the bend: to where the inside faces meet; `above_ninety` says what past 90°.
    Inside,
    /// At mid thickness: to where the middle planes meet; `above_ninety` says what past 90°.
    Mid,
    /// To the virtual sharp corner, where the outside faces meet, at any bend angle below 180°.
    ToVirtualSharp,
    /// To the tangent plane of the bend, the furthest extent of the outside face; from 90° on only.
    ToTangent,
    /// The flat itself: to the tangent line, where the bend begins.
    Flat,
}

/// What outside, inside and mid lengths go to at a bend of more than 90°, where the faces meet far out in the air.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
#[non_exhaustive]
pub enum AboveNinety {
    /// To the tangent plane square to the leg, as a caliper over the bend reads and as DIN 6935 measures.
    TangentPlane,
    /// To where the faces meet, as for smaller angles.
    VirtualSharp,
}

/// How far a length goes past the tangent line, with its derivatives.
#[derive(Debug, Clone, Copy)]
pub(super) struct PastTangentLine {
    /// The distance, z.
    pub(super) distance: f64,
    /// ∂z/∂r.
    pub(super) by_radius: f64,
    /// ∂z/∂t.
    pub(super) by_thickness: f64,
    /// ∂z/∂α.
    pub(super) by_angle: f64,
}

/// Past this bend angle two faces meet a thousand radii away, and no drawing shows it.
const LARGEST_SHARP: f64 = PI - 0.002;

/// An angle within this of a limit is at the limit: a converted included angle may be off in its last digit.
const ROUNDING: f64 = 1e-12;

/// How far a length to `reference` goes past the tangent line of a bend; the reason, where it goes nowhere.
pub(super) fn past_tangent_line(
    reference: LengthReference,
    above_ninety: AboveNinety,
    bend_angle: f64,
    inside_radius: f64,
    thickness: f64,
) -> Result<PastTangentLine, &'static str> {
    let share = match reference {
        LengthReference::Flat => {
            return Ok(PastTangentLine { distance: 0.0, by_radius: 0.0, by_thickness: 0.0, by_angle: 0.0 });
        }
        LengthReference::Outside | LengthReference::ToVirtualSharp | LengthReference::ToTangent => 1.0,
        LengthReference::Mid => 0.5,
        LengthReference::Inside => 0.0,
    };
    let depth = inside_radius + share * thickness;
    let to_plane = match reference {
        LengthReference::ToTangent if bend_angle < FRAC_PI_2 - ROUNDING => {
            return Err(
                "to_tangent goes with a bend of 90 deg or more; accepted below: outside, inside, mid, \
                        to_virtual_sharp, flat",
            );
        }
        LengthReference::ToTangent => true,
        LengthReference::ToVirtualSharp => false,
        _ => above_ninety == AboveNinety::TangentPlane && bend_angle > FRAC_PI_2,
    };
    if to_plane {
        return Ok(PastTangentLine { distance: depth, by_radius: 1.0, by_thickness: share, by_angle: 0.0 });
    }
    if bend_angle > LARGEST_SHARP {
        return Err(
            "the faces beside a bend of 180 deg never meet; accepted: to_tangent, flat, or outside, inside or mid \
                    with above_ninety = tangent_plane",
        );
    }
    let tangent = math::tan(bend_angle / 2.0);
    Ok(PastTangentLine {
        distance: depth * tangent,
        by_radius: tangent,
        by_thickness: share * tangent,
        by_angle: depth * (1.0 + tangent * tangent) / 2.0,
    })
}
