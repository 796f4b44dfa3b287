//! How far each hole of a folded profile moves when neutral axis, radius, angle, bend line or cut are off.

use super::folded_profile::{FoldedBend, Vector, fold, plus, times};
use super::profile::{Profile, ProfileOutcome};
use crate::prelude::*;

/// A hole of a profile, by its place on the flat strip.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ProfileHole {
    /// Centre of the hole, from the first edge of the flat strip.
    #[possible(0.0..)]
    pub flat_position: Length,
}

/// How the errors of neutral axis and radius go together from bend to bend.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
#[non_exhaustive]
pub enum AcrossBends {
    /// The same error at every bend: one sheet and one die.
    Common,
    /// An error of its own at every bend.
    Independent,
}

/// What moves a hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
#[non_exhaustive]
pub enum SpreadCause {
    /// The neutral axis lies elsewhere than assumed.
    KFactor,
    /// The inside radius comes out otherwise.
    InsideRadius,
    /// The bend angle comes out otherwise.
    BendAngle,
    /// The sheet lies against the back gauge with an error.
    BendLine,
    /// The hole is cut elsewhere than drawn.
    Cutting,
}

/// Effect of neutral axis, radius, angle, bend-line and cutting tolerance on the position of each folded hole of a profile.
///
/// # Formula
///
/// The flat strip is cut and its bend lines are set with the nominal values; then each bend comes out with its own K, r, α and
/// bend line b. With e the direction of a leg, ê that of the one before a bend, σ = +1 for up and −1 for down, n = r + K t, m = r + t/2,
/// Q the end of the bend, P the hole, and J a quarter turn to the left, the partial derivatives of P by the values of a bend before it are:
///
/// - ∂P/∂K = −(α t / 2)(ê + e)
/// - ∂P/∂r = −(α / 2)(ê + e) + c, with c the chord of the bend at mid thickness over m
/// - ∂P/∂α = −(n / 2)(ê + e) + m e + σ J (P − Q)
/// - ∂P/∂b = ê − e
/// - by its own place on the flat: e of its leg
///
/// An effect is the derivative times the tolerance. Worst case: sum of the sizes; root-sum-square beside it. With `common`, the effects
/// of K, and those of r, are added with their signs over the bends first.
///
/// # Validity
///
/// First order: tolerances small against the radius and one radian. Positions are at mid thickness, in the frame of the first leg:
/// along it from its edge, and above it towards the good face. A hole within a bend is an error. Along the bend line a hole only
/// moves with its cut.
///
/// # Source
///
/// Geometry; derivatives checked against finite differences of the folded profile (tests/independent/sheet.py).
///
/// # Example
///
/// By hand: a hole 50 mm past the bend, with the angle off by 1°, swings by 50 mm · π/180 and a little for the bend itself.
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let leg = |length| Leg { length, reference: LengthReference::Flat };
/// let profile = Profile {
///     thickness: mm(2.0),
///     legs: vec![leg(mm(40.0)), leg(mm(60.0))],
///     bends: vec![ProfileBend {
///         bend_angle: deg(90.0),
///         inside_radius: mm(2.0),
///         k_factor: 0.5,
///         direction: BendDirection::Up,
///     }],
///     above_ninety: AboveNinety::TangentPlane,
/// };
/// let (outcome, _) = ProfileSpread {
///     profile,
///     holes: vec![ProfileHole { flat_position: mm(94.712) }],
///     k_factor_tolerance: 0.0,
///     inside_radius_tolerance: mm(0.0),
///     bend_angle_tolerance: deg(1.0),
///     bend_line_tolerance: mm(0.0),
///     cutting_tolerance: mm(0.0),
///     across_bends: AcrossBends::Common,
/// }
/// .calculate()?;
/// let swing = outcome.holes[0].worst_case_along_first_leg.value;
/// assert!((swing - (0.05 + 0.0015) * PI / 180.0).abs() < 2e-6);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ProfileSpread {
    /// The profile.
    pub profile: Profile,
    /// The holes; at least one.
    pub holes: Vec<ProfileHole>,
    /// Tolerance of the neutral axis, ±K.
    #[possible(0.0..1.0)]
    pub k_factor_tolerance: f64,
    /// Tolerance of the inside radius, ±.
    #[possible(0.0..)]
    pub inside_radius_tolerance: Length,
    /// Tolerance of the bend angle, ±.
    #[possible(0.0..=PI)]
    pub bend_angle_tolerance: Angle,
    /// Tolerance of the place of a bend line on the flat, ±: back gauge and squareness.
    #[possible(0.0..)]
    pub bend_line_tolerance: Length,
    /// Tolerance of the place of a cut hole on the flat, ±.
    #[possible(0.0..)]
    pub cutting_tolerance: Length,
    /// How the errors of K and radius go together from bend to bend.
    pub across_bends: AcrossBends,
}

/// What one cause does to one hole.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SpreadEffect {
    /// The cause.
    pub cause: SpreadCause,
    /// The bend it is at, from 0; absent for the cut of the hole itself.
    pub bend: Option<u32>,
    /// Movement along the first leg for a positive tolerance.
    pub along_first_leg: Length,
    /// Movement towards the good face of the first leg for a positive tolerance.
    pub above_first_leg: Length,
}

/// Where one hole comes to lie, and how far it moves.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ProfileHoleOutcome {
    /// The leg that the hole is in, from 0.
    pub leg: u32,
    /// Position along the first leg from its edge, at mid thickness.
    pub along_first_leg: Length,
    /// Position above the middle of the first leg, towards its good face, at mid thickness.
    pub above_first_leg: Length,
    /// Largest movement along the first leg, ±.
    pub worst_case_along_first_leg: Length,
    /// Largest movement above the first leg, ±.
    pub worst_case_above_first_leg: Length,
    /// Root sum of squares of the movements along the first leg, ±.
    pub root_sum_square_along_first_leg: Length,
    /// Root sum of squares of the movements above the first leg, ±.
    pub root_sum_square_above_first_leg: Length,
    /// Each effect, bend by bend, the cut last.
    pub effects: Vec<SpreadEffect>,
}

/// How far each hole moves.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ProfileSpreadOutcome {
    /// The holes, in the order given.
    pub holes: Vec<ProfileHoleOutcome>,
}

/// The most pairs of a hole and a bend in one call: each has its own rows in the outcome.
const MOST_PAIRS: usize = 100_000;

/// A refusal of the profile, with the paths that its fields have here.
fn within_profile(error: Error) -> Error {
    match error {
        Error::Inconsistent { fields, reason } => {
            let paths: Vec<String> = fields.split(", ").map(|field| format!("profile.{field}")).collect();
            Error::inconsistent(paths.join(", "), reason)
        }
        other => other,
    }
}

impl ProfileSpread {
    /// The effects of one bend on a point past it.
    fn effects_of_bend(&self, folded: &FoldedBend<'_>, point: Vector) -> [(SpreadCause, Vector); 4] {
        let t = self.profile.thickness.value;
        let (a, r) = (folded.bend.bend_angle.value, folded.bend.inside_radius.value);
        let (n, m) = (r + folded.bend.k_factor * t, r + t / 2.0);
        let both = plus(folded.before, folded.after);
        let arm = plus(point, times(-1.0, folded.end));
        let by_k = times(-a * t / 2.0, both);
        let by_radius = plus(times(-a / 2.0, both), folded.unit_chord);
        let by_angle =
            plus(plus(times(-n / 2.0, both), times(m, folded.after)), times(folded.turn, [-arm[1], arm[0]]));
        let by_line = plus(folded.before, times(-1.0, folded.after));
        [
            (SpreadCause::KFactor, times(self.k_factor_tolerance, by_k)),
            (SpreadCause::InsideRadius, times(self.inside_radius_tolerance.value, by_radius)),
            (SpreadCause::BendAngle, times(self.bend_angle_tolerance.value, by_angle)),
            (SpreadCause::BendLine, times(self.bend_line_tolerance.value, by_line)),
        ]
    }

    /// One hole.
    fn hole(
        &self,
        place: usize,
        hole: &ProfileHole,
        flat: &ProfileOutcome,
    ) -> Result<ProfileHoleOutcome, Error> {
        let s = hole.flat_position;
        let Some((leg, on_leg)) =
            flat.legs.iter().enumerate().find(|(_, leg)| leg.start <= s && s <= leg.end)
        else {
            return Err(Error::inconsistent(
                format!("holes[{place}].flat_position"),
                format!(
                    "{:.4} mm lies in a bend or past the strip of {:.4} mm; accepted: a place on a flat",
                    s.value * 1e3,
                    flat.flat_length.value * 1e3
                ),
            ));
        };
        let folded = fold(&self.profile, flat, leg);
        let point = plus(folded.start, times(s.value - on_leg.start.value, folded.along));

        let mut effects = Vec::with_capacity(4 * folded.bends.len() + 1);
        for (number, bend) in (0u32..).zip(&folded.bends) {
            effects
                .extend(self.effects_of_bend(bend, point).map(|(cause, moved)| (cause, Some(number), moved)));
        }
        effects.push((SpreadCause::Cutting, None, times(self.cutting_tolerance.value, folded.along)));

        let [worst, root_sum_square] = self.combined(&effects);
        Ok(ProfileHoleOutcome {
            leg: u32::try_from(leg).unwrap_or(u32::MAX),
            along_first_leg: si(point[0]),
            above_first_leg: si(point[1]),
            worst_case_along_first_leg: si(worst[0]),
            worst_case_above_first_leg: si(worst[1]),
            root_sum_square_along_first_leg: si(root_sum_square[0]),
            root_sum_square_above_first_leg: si(root_sum_square[1]),
            effects: effects
                .into_iter()
                .map(|(cause, bend, moved)| SpreadEffect {
                    cause,
                    bend,
                    along_first_leg: si(moved[0]),
                    above_first_leg: si(moved[1]),
                })
                .collect(),
        })
    }

    /// Worst case and root sum of squares of the effects.
    fn combined(&self, effects: &[(SpreadCause, Option<u32>, Vector)]) -> [Vector; 2] {
        let is_common = |cause: SpreadCause| {
            self.across_bends == AcrossBends::Common
                && matches!(cause, SpreadCause::KFactor | SpreadCause::InsideRadius)
        };
        let common = [SpreadCause::KFactor, SpreadCause::InsideRadius].map(|cause| {
            effects
                .iter()
                .filter(|effect| effect.0 == cause && is_common(cause))
                .fold([0.0, 0.0], |sum, effect| plus(sum, effect.2))
        });
        let own = effects.iter().filter(|effect| !is_common(effect.0)).map(|effect| effect.2);
        let (mut worst, mut squares) = ([0.0, 0.0], [0.0, 0.0]);
        for moved in own.chain(common) {
            worst = plus(worst, [moved[0].abs(), moved[1].abs()]);
            squares = plus(squares, [moved[0] * moved[0], moved[1] * moved[1]]);
        }
        [worst, [squares[0].sqrt(), squares[1].sqrt()]]
    }
}

impl Calculation for ProfileSpread {
    const NAME: &'static str = "profile_spread";
    const SOURCE: &'static [Source] = &[Source {
        title: "geometry of the folded profile",
        edition: "",
        locator: "partial derivatives of the position of a hole",
        standing: Standing::Computed,
    }];
    type Outcome = ProfileSpreadOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.holes.is_empty() {
            return Err(Error::inconsistent("holes", "an empty list; accepted: at least one hole"));
        }
        let pairs = self.holes.len().saturating_mul(self.profile.bends.len());
        if pairs > MOST_PAIRS {
            return Err(Error::TooLarge {
                field: "holes, profile.bends".to_owned(),
                found: format!("{} holes with {} bends", self.holes.len(), self.profile.bends.len()),
                accepted: format!("at most {MOST_PAIRS} pairs of a hole and a bend; split the list of holes"),
            });
        }
        let flat = self.profile.formula(caveats).map_err(within_profile)?;
        let holes = self
            .holes
            .iter()
            .enumerate()
            .map(|(place, hole)| self.hole(place, hole, &flat))
            .collect::<Result<Vec<_>, Error>>()?;
        Ok(ProfileSpreadOutcome { holes })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::{AboveNinety, BendDirection, Leg, LengthReference, ProfileBend};

    #[test]
    fn an_outcome_too_large_to_hold_is_refused() {
        let leg = Leg { length: mm(10.0), reference: LengthReference::Flat };
        let bend = ProfileBend {
            bend_angle: deg(10.0),
            inside_radius: mm(2.0),
            k_factor: 0.4,
            direction: BendDirection::Up,
        };
        let spread = ProfileSpread {
            profile: Profile {
                thickness: mm(1.0),
                legs: vec![leg; 401],
                bends: vec![bend; 400],
                above_ninety: AboveNinety::TangentPlane,
            },
            holes: vec![ProfileHole { flat_position: mm(5.0) }; 251],
            k_factor_tolerance: 0.0,
            inside_radius_tolerance: mm(0.0),
            bend_angle_tolerance: deg(0.0),
            bend_line_tolerance: mm(0.0),
            cutting_tolerance: mm(0.1),
            across_bends: AcrossBends::Common,
        };
        let error = spread.calculate().unwrap_err();
        assert_eq!((error.name(), error.field()), ("too_large", "holes, profile.bends"));
    }
}
