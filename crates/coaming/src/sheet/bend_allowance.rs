//! Bend allowance, setback and deduction (the K-factor is an input; its own calculations stand beside).

use crate::prelude::*;

/// Where the lengths of the legs end at a bend: that decides what is deducted from their sum.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum LegReference {
    /// At the virtual sharp corner, where the outside faces would meet.
    ToVirtualSharp,
    /// At the tangent plane of the bend: the furthest extent of the outside face.
    ToTangent,
    /// As DIN 6935 measures: to the tangent planes for included angles to 90°, to the virtual sharp above, and no
    /// correction at all above 165°.
    #[option("din_6935")]
    Din6935,
}

/// Bend allowance, outside setback and bend deduction of one bend.
///
/// # Formula
/// BA = α (r + K t); OSSB = tan(α/2) (r + t); BD = 2 OSSB − BA; the flat length is the sum of the legs less BD.
/// To the tangent planes the setback is r + t at 90° and above. DIN 6935 (β = 180° − α, the included angle):
/// v = α (r + K t) − 2 (r + t) for β ≤ 90°, v = α (r + K t) − 2 (r + t) tan(α/2) for 90° < β ≤ 165°, v = 0 above;
/// BD = −v.
///
/// # Validity
/// A bend of constant inside radius and unthinned sheet. K from 0.25 to 0.5 is what is met in practice; outside it the
/// result carries a caveat. The virtual sharp of a bend of 180° lies at infinity: `to_tangent` or `din_6935` is accepted
/// there. Below 90° the tangent plane of a leg's end is the virtual sharp's own face, so `to_tangent` is accepted from
/// 90° on only.
///
/// # Source
/// FAA-H-8083-31A, ch. 4, U-channel layout (allowance and setback); DIN 6935:2011-10, formula for v (second-hand).
///
/// # Example
/// The first bend of the U-channel in FAA-H-8083-31A, ch. 4: setback 0.2 in (step 2), allowance 0.279 in (step 4).
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::{BendAllowance, LegReference};
///
/// let bend = BendAllowance {
///     bend_angle: deg(90.0),
///     inside_radius: inch(0.16),
///     thickness: inch(0.04),
///     k_factor: 0.4467,
///     leg_reference: LegReference::ToVirtualSharp,
/// };
/// let (outcome, caveats) = bend.calculate()?;
/// assert!(outcome.setback.is_some_and(|setback| (setback - inch(0.2)).abs() < inch(0.0005)));
/// assert!((outcome.bend_allowance - inch(0.2791)).abs() < inch(0.0005));
/// assert!(caveats.is_empty());
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BendAllowance {
    /// Bend angle, α: the angle that the sheet is turned through.
    #[possible(0.0..=PI)]
    #[also(included_angle, super::supplement)]
    pub bend_angle: Angle,
    /// Inside radius, r.
    #[possible(0.0..)]
    pub inside_radius: Length,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Distance of the neutral axis from the inside face over the thickness, K.
    #[possible(f64::MIN_POSITIVE..1.0)]
    #[tested(0.25..=0.5)]
    pub k_factor: f64,
    /// Where the lengths of the legs end.
    pub leg_reference: LegReference,
}

/// Outcome of [`BendAllowance`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct BendAllowanceOutcome {
    /// Length of the neutral line within the bend, BA.
    pub bend_allowance: Length,
    /// What one leg's length reaches past its tangent line, OSSB for the virtual sharp; none where DIN 6935 makes no
    /// correction.
    pub setback: Option<Length>,
    /// What is taken off the sum of the two legs, BD = 2 setback − BA; negative where the flat is longer than that sum.
    pub bend_deduction: Length,
    /// Radius of the neutral line, r + K t.
    pub neutral_radius: Length,
}

impl BendAllowance {
    /// The setback in metres; none where DIN 6935 makes no correction.
    fn setback(&self, alpha: f64, r: f64, t: f64) -> Result<Option<f64>, Error> {
        let sharp = || (r + t) * math::tan(alpha / 2.0);
        let included = PI - alpha;
        match self.leg_reference {
            LegReference::ToVirtualSharp if alpha > LARGEST_SHARP => Err(self.impossible(
                "bend_angle",
                "less than 180 deg where legs are given to the virtual sharp; use to_tangent or din_6935",
            )),
            LegReference::ToVirtualSharp => Ok(Some(sharp())),
            LegReference::ToTangent if alpha < FRAC_PI_2 - ROUNDING => Err(self.impossible(
                "bend_angle",
                "90 deg or more where legs are given to the tangent plane; use to_virtual_sharp",
            )),
            LegReference::ToTangent => Ok(Some(r + t)),
            LegReference::Din6935 if included <= FRAC_PI_2 + ROUNDING => Ok(Some(r + t)),
            LegReference::Din6935 if included <= math::PI * (165.0 / 180.0) + ROUNDING => Ok(Some(sharp())),
            LegReference::Din6935 => Ok(None),
        }
    }
}

/// An angle within this of a limit is at the limit: a converted included angle may be off in its last digit.
const ROUNDING: f64 = 1e-12;

/// Past this bend angle the virtual sharp is a thousand radii away and no drawing shows it.
const LARGEST_SHARP: f64 = PI - 0.002;

impl Calculation for BendAllowance {
    const NAME: &'static str = "bend_allowance";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "FAA-H-8083-31A, Aviation Maintenance Technician Handbook - Airframe, vol. 1",
            edition: "2018",
            locator: "ch. 4, U-channel layout, steps 2 to 5",
            standing: Standing::Read,
        },
        Source {
            title: "DIN 6935",
            edition: "2011-10",
            locator: "formula for v",
            standing: Standing::SecondHand,
        },
    ];
    type Outcome = BendAllowanceOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (alpha, r, t) = (self.bend_angle.value, self.inside_radius.value, self.thickness.value);
        if r < 0.5 * t {
            caveats.add(Caveat::SharpBend);
        }
        let neutral_radius = r + self.k_factor * t;
        let ba = alpha * neutral_radius;
        let setback = self.setback(alpha, r, t)?;
        let bd = setback.map_or(0.0, |setback| 2.0 * setback - ba);
        Ok(BendAllowanceOutcome {
            bend_allowance: si(ba),
            setback: setback.map(si),
            bend_deduction: si(bd),
            neutral_radius: si(neutral_radius),
        })
    }
}
