//! A profile: legs and bends in a row, and the flat strip that it is bent from.

use super::die_opening;
use super::length_reference::{AboveNinety, LengthReference, past_tangent_line};
use crate::prelude::*;

/// The side that a bend turns to, seen with the named good face up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum BendDirection {
    /// Towards the good face: it becomes the inside.
    Up,
    /// Away from the good face: it becomes the outside.
    Down,
}

/// One leg of a profile.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Leg {
    /// Length of the leg.
    #[possible(0.0..)]
    pub length: Length,
    /// What the length is measured to.
    pub reference: LengthReference,
}

/// One bend of a profile, between two legs.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ProfileBend {
    /// Bend angle, α: the angle the sheet is turned through.
    #[possible(0.0..=PI)]
    #[also(included_angle, super::supplement)]
    pub bend_angle: Angle,
    /// Inside radius, r.
    #[possible(0.0..)]
    pub inside_radius: Length,
    /// Neutral axis, K: its distance from the inside face over the thickness.
    #[possible(f64::MIN_POSITIVE..1.0)]
    #[tested(0.25..=0.5)]
    pub k_factor: f64,
    /// The side that the bend turns to.
    pub direction: BendDirection,
}

/// Flat length, bend lines and tangent lines of a profile of legs and bends.
///
/// # Formula
///
/// At a bend of angle α, inside radius r and thickness t, with the neutral axis at K t from the inside:
///
/// - bend allowance BA = α (r + K t)
/// - a flat ends at the tangent line; the length of its leg goes past that line by (r + e) tan(α/2), with e = t for `outside`
///   and `to_virtual_sharp`, t/2 for `mid`, 0 for `inside`; by r + e at a bend past 90° with `tangent_plane`; by r + t for
///   `to_tangent`; by nothing for `flat`
/// - flat of a leg f = length − what goes past at its one or two bends
/// - flat length = Σ f + Σ BA; tangent lines lie at its partial sums; the bend line is midway between two tangent lines
/// - setback OSSB = (r + t) tan(α/2), or r + t past 90° with `tangent_plane`; deduction BD = 2 OSSB − BA
///
/// # Validity
///
/// Bends parallel to each other, straight and full width; one thickness. The sheet is taken as not thinned in the bend. A
/// leg too short for its bends is an error that names the leg. A leg below the smallest flange that common practice gives for
/// 90° (0.70 V outside, V by the rule of `air_bend`) bears a caveat, and so does an inside radius below t/2. DIN 6935 also counts a
/// bend below 15° as none: that is not done here.
///
/// # Source
///
/// Geometry. Worked example: FAA-H-8083-31A, ch. 4, U-channel layout (B001–B005). Lengths to tangent planes past 90°: DIN 6935.
///
/// # Example
///
/// The handbook's U-channel: R 0.16 in, T 0.04 in, outside 1.00 × 2.00 × 1.00 in, developed width 3.758 in (B005).
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let leg = |length| Leg { length, reference: LengthReference::Outside };
/// let bend = ProfileBend {
///     bend_angle: deg(90.0),
///     inside_radius: inch(0.16),
///     k_factor: 0.4467,
///     direction: BendDirection::Up,
/// };
/// let (outcome, _) = Profile {
///     thickness: inch(0.04),
///     legs: vec![leg(inch(1.0)), leg(inch(2.0)), leg(inch(1.0))],
///     bends: vec![bend.clone(), bend],
///     above_ninety: AboveNinety::TangentPlane,
/// }
/// .calculate()?;
/// assert!((outcome.flat_length.value / 0.0254 - 3.758).abs() < 0.005);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Profile {
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// The legs, in order along the flat; one more than there are bends.
    pub legs: Vec<Leg>,
    /// The bends, in order along the flat; the first is between the first two legs.
    pub bends: Vec<ProfileBend>,
    /// What outside, inside and mid lengths go to at a bend of more than 90°.
    pub above_ninety: AboveNinety,
}

/// One leg on the flat strip.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LegOutcome {
    /// Length of the flat, between tangent lines or edge, f.
    pub flat: Length,
    /// Where the flat begins, from the first edge of the strip.
    pub start: Length,
    /// Where the flat ends, from the first edge of the strip.
    pub end: Length,
}

/// One bend on the flat strip.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ProfileBendOutcome {
    /// Length of the neutral line in the bend, BA.
    pub bend_allowance: Length,
    /// What an outside length reaches past the tangent line, OSSB; absent where the faces never meet.
    pub setback: Option<Length>,
    /// What two outside lengths exceed the flat by, BD; absent where the faces never meet.
    pub bend_deduction: Option<Length>,
    /// First tangent line, from the first edge of the strip.
    pub tangent_start: Length,
    /// Bend line, from the first edge of the strip.
    pub bend_line: Length,
    /// Second tangent line, from the first edge of the strip.
    pub tangent_end: Length,
    /// The side that the bend turns to.
    pub direction: BendDirection,
}

/// The flat strip of a profile.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ProfileOutcome {
    /// Length of the flat strip.
    pub flat_length: Length,
    /// The legs, in order.
    pub legs: Vec<LegOutcome>,
    /// The bends, in order.
    pub bends: Vec<ProfileBendOutcome>,
}

/// Rounding of a sum of lengths in metres that is no overlap: a picometre.
const ROUNDING: f64 = 1e-12;

impl Profile {
    /// How far a length goes past the tangent line of a bend.
    fn past(&self, bend: &ProfileBend, reference: LengthReference) -> Result<f64, &'static str> {
        let (a, r, t) = (bend.bend_angle.value, bend.inside_radius.value, self.thickness.value);
        past_tangent_line(reference, self.above_ninety, a, r, t).map(|past| past.distance)
    }

    /// The flat of one leg.
    fn flat(&self, place: usize) -> Result<f64, Error> {
        let Some(leg) = self.legs.get(place) else {
            return Err(Error::inconsistent("legs", "accepted: one leg more than there are bends"));
        };
        let ends = [place.checked_sub(1).and_then(|before| self.bends.get(before)), self.bends.get(place)];
        let mut flat = leg.length.value;
        for bend in ends.into_iter().flatten() {
            let past = self
                .past(bend, leg.reference)
                .map_err(|reason| Error::inconsistent(format!("legs[{place}].reference"), reason))?;
            flat -= past;
        }
        if flat < -ROUNDING {
            return Err(Error::inconsistent(
                format!("legs[{place}].length"),
                format!(
                    "the bends beside this leg need {:.4} mm more than its length; accepted: a longer leg, a smaller inside \
                     radius or bend angle",
                    -flat * 1e3
                ),
            ));
        }
        Ok(flat)
    }

    /// Adds the caveats of one bend between two flats.
    fn caution(&self, bend: &ProfileBend, flats: [f64; 2], caveats: &mut Caveats) {
        let (t, a, r) = (self.thickness.value, bend.bend_angle.value, bend.inside_radius.value);
        if a > 0.0 && r < t / 2.0 {
            caveats.add(Caveat::SharpBend);
        }
        let smallest = die_opening::FLANGE_FACTOR * die_opening::by_rule(t);
        let setback = (r + t) * math::tan(a.min(FRAC_PI_2) / 2.0);
        if a > 0.0 && flats.into_iter().any(|flat| flat + setback < smallest) {
            caveats.add(Caveat::ShortFlange);
        }
    }
}

impl Calculation for Profile {
    const NAME: &'static str = "profile";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "FAA-H-8083-31A, Aviation Maintenance Technician Handbook - Airframe",
            edition: "2018",
            locator: "vol. 1, ch. 4, U-channel layout",
            standing: Standing::Read,
        },
        Source {
            title: "DIN 6935",
            edition: "2011",
            locator: "lengths past 90°: tangent planes",
            standing: Standing::SecondHand,
        },
    ];
    type Outcome = ProfileOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.legs.len() != self.bends.len() + 1 {
            return Err(Error::inconsistent(
                "legs, bends",
                format!(
                    "{} legs with {} bends; accepted: one leg more than there are bends",
                    self.legs.len(),
                    self.bends.len()
                ),
            ));
        }
        let t = self.thickness.value;
        let flats =
            (0..self.legs.len()).map(|place| self.flat(place)).collect::<Result<Vec<f64>, Error>>()?;

        let mut at = 0.0;
        let mut legs = Vec::with_capacity(flats.len());
        let mut bends = Vec::with_capacity(self.bends.len());
        for (place, flat) in flats.iter().enumerate() {
            legs.push(LegOutcome { flat: si(*flat), start: si(at), end: si(at + flat) });
            at += flat;
            let Some(bend) = self.bends.get(place) else { continue };
            let allowance = bend.bend_angle.value * (bend.inside_radius.value + bend.k_factor * t);
            let setback = self.past(bend, LengthReference::Outside).ok();
            bends.push(ProfileBendOutcome {
                bend_allowance: si(allowance),
                setback: setback.map(si),
                bend_deduction: setback.map(|setback| si(2.0 * setback - allowance)),
                tangent_start: si(at),
                bend_line: si(at + allowance / 2.0),
                tangent_end: si(at + allowance),
                direction: bend.direction,
            });
            at += allowance;
            if let Some(next) = flats.get(place + 1) {
                self.caution(bend, [*flat, *next], caveats);
            }
        }
        Ok(ProfileOutcome { flat_length: si(at), legs, bends })
    }
}
