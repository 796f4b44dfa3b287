//! Stress at a hole: membrane, bending, pin, wedging head and restrained movement, as a band against a sustained limit.

use crate::prelude::*;

/// A countersunk head that wedges the hole open.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct WedgingHead {
    /// Axial force on the cone.
    #[possible(0.0..)]
    pub force: Force,
    /// Half angle of the cone: 45 deg for a 90 deg head.
    #[possible(0.1..FRAC_PI_2)]
    pub half_angle: Angle,
    /// Coefficient of friction on the cone.
    #[possible(0.0..=1.0)]
    pub friction: f64,
    /// Depth of the cone that bears.
    #[possible(f64::MIN_POSITIVE..)]
    pub depth: Length,
}

/// Peak stress at a round hole in a plate, from all that loads it, as a band against a sustained limit.
///
/// # Formula
/// x = d/W. Membrane, on the gross stress: Km = (3 − 3.13 x + 3.66 x² − 1.53 x³)/(1 − x).
/// Bending, on the gross surface stress, with s = d/t: Kb = [1.79 + 0.25/(0.39 + s) + 0.81/(1 + s²) − 0.26/(1 + s³)]
/// [1 − 1.04 x + 1.22 x²]/(1 − x).
/// Pin, on F/(d t): a close pin presses as a cosine and gives 8/π²; a loose pin touches in a line and gives up to
/// (2/π)(5 − ν)/2 beside it; both over (1 − x) for the net section.
/// Wedging head: ring pressure F/(π d h tan(γ + ρ)), hoop stress equal to it; h the thickness or, as the worse, the cone's depth.
/// Restrained movement: its membrane stress × Km.
/// Band: smallest, the largest of the single peaks; largest, the sum of all, as if they met in one point.
///
/// # Validity
/// Elastic, uniaxial stress, one hole in a strip of width W (or at a pitch W), ν near 0.3 in bending. x to 0.5 is tested for the
/// membrane, to 0.3 for bending. Cracks, crazes and machining marks are not in it: the limit must be the sustained one of
/// that plastic in its chemical. A countersink in a craze-prone layer fails by rule, whatever this says.
///
/// # Source
/// Membrane and bending: Young and Budynas, Roark's Formulas for Stress and Strain, 7th ed., table 17.1 (second-hand; its factor
/// for finite width in bending unverified), after Howland and Peterson. Against exact solutions the membrane fit is up to 0.7 %
/// low, the bending fit up to 2.9 % at ν = 0.3 and about 4 % at ν = 0.4.
/// Pin and head: derived from Michell's solution for a hole in an infinite plate.
///
/// # Example
/// A hole in a very wide strip under membrane stress alone: 3 times (Kirsch).
/// ```
/// use coaming::fastener::HoleStress;
/// use coaming::prelude::*;
///
/// let (hole, _) = HoleStress {
///     hole_diameter: mm(4.0),
///     width: m(4.0),
///     thickness: mm(5.0),
///     poissons_ratio: 0.37,
///     membrane_stress: megapascal(2.0),
///     bending_stress: megapascal(0.0),
///     pin_force: newton(0.0),
///     restrained_stress: megapascal(0.0),
///     wedging_head: None,
///     sustained_limit: megapascal(7.0),
/// }
/// .calculate()?;
/// assert!((hole.largest_stress.value / 1e6 - 6.0).abs() < 0.01);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct HoleStress {
    /// Diameter of the hole, d.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_diameter: Length,
    /// Width of the strip, twice the edge distance, or the pitch of the holes, W.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Thickness of the plate, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Poisson's ratio, ν.
    #[possible(0.0..0.5)]
    pub poissons_ratio: f64,
    /// Membrane stress away from the hole.
    #[shown_in("MPa")]
    #[possible(0.0..)]
    pub membrane_stress: Pressure,
    /// Surface stress by bending away from the hole.
    #[shown_in("MPa")]
    #[possible(0.0..)]
    pub bending_stress: Pressure,
    /// In-plane force of the screw on the hole, F.
    #[possible(0.0..)]
    pub pin_force: Force,
    /// Membrane stress of a movement that the screw restrains.
    #[shown_in("MPa")]
    #[possible(0.0..)]
    pub restrained_stress: Pressure,
    /// Countersunk head that wedges the hole; absent for a flat seat.
    pub wedging_head: Option<WedgingHead>,
    /// Stress that the material may bear for years in its chemical.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub sustained_limit: Pressure,
}

/// Outcome of [`HoleStress`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct HoleStressOutcome {
    /// Concentration of membrane stress, Km, on the gross stress.
    pub membrane_concentration: f64,
    /// Concentration of bending stress, Kb, on the gross stress.
    pub bending_concentration: f64,
    /// Peak by membrane stress.
    #[shown_in("MPa")]
    pub membrane_peak: Pressure,
    /// Peak by bending.
    #[shown_in("MPa")]
    pub bending_peak: Pressure,
    /// Peak by a close pin.
    #[shown_in("MPa")]
    pub smallest_pin_peak: Pressure,
    /// Peak by a loose pin.
    #[shown_in("MPa")]
    pub largest_pin_peak: Pressure,
    /// Peak by the wedging head, spread over the thickness.
    #[shown_in("MPa")]
    pub smallest_wedging_peak: Pressure,
    /// Peak by the wedging head, over the cone's depth.
    #[shown_in("MPa")]
    pub largest_wedging_peak: Pressure,
    /// Peak by restrained movement.
    #[shown_in("MPa")]
    pub restrained_peak: Pressure,
    /// Lower end of the band: the largest single peak.
    #[shown_in("MPa")]
    pub smallest_stress: Pressure,
    /// Upper end of the band: the sum of all peaks.
    #[shown_in("MPa")]
    pub largest_stress: Pressure,
    /// Lower end over the sustained limit.
    pub smallest_utilisation: f64,
    /// Upper end over the sustained limit.
    pub largest_utilisation: f64,
}

impl Calculation for HoleStress {
    const NAME: &'static str = "hole_stress";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Young and Budynas, Roark's Formulas for Stress and Strain",
            edition: "7th edition",
            locator: "table 17.1",
            standing: Standing::SecondHand,
        },
        Source {
            title: "Michell's solution for a hole in an infinite plate",
            edition: "",
            locator: "",
            standing: Standing::Computed,
        },
    ];
    type Outcome = HoleStressOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (d, w, t) = (self.hole_diameter.value, self.width.value, self.thickness.value);
        if w <= d {
            return Err(self.impossible("width", "more than the hole diameter"));
        }
        let (x, s) = (d / w, d / t);
        if x > 0.5 || (x > 0.3 && self.bending_stress.value > 0.0) {
            caveats.add(Caveat::OutsideTested);
        }
        let gross = 1.0 / (1.0 - x);
        let km = (3.0 + x * (-3.13 + x * (3.66 - 1.53 * x))) * gross;
        let wide = 1.79 + 0.25 / (0.39 + s) + 0.81 / (1.0 + s * s) - 0.26 / (1.0 + math::cube(s));
        let kb = wide * (1.0 + x * (-1.04 + 1.22 * x)) * gross;
        let membrane = km * self.membrane_stress.value;
        let bending = kb * self.bending_stress.value;
        let restrained = km * self.restrained_stress.value;
        let bearing = self.pin_force.value / (d * t) * gross;
        let (close, loose) = (8.0 / (PI * PI) * bearing, (5.0 - self.poissons_ratio) / PI * bearing);
        let (spread, local) = match &self.wedging_head {
            None => (0.0, 0.0),
            Some(head) => {
                if head.depth.value > t {
                    return Err(Error::inconsistent(
                        "wedging_head.depth, thickness",
                        "the cone must not be deeper than the plate",
                    ));
                }
                // A cone steeper than its friction angle allows does not wedge: tan(γ + ρ) has passed its pole.
                let slope = head.half_angle.value + math::atan(head.friction);
                let radial = if slope < FRAC_PI_2 { head.force.value / math::tan(slope) } else { 0.0 };
                (radial / (PI * d * t), radial / (PI * d * head.depth.value))
            }
        };
        let smallest = membrane.max(bending).max(close).max(spread).max(restrained);
        let largest = membrane + bending + loose + local + restrained;
        let limit = self.sustained_limit.value;
        Ok(HoleStressOutcome {
            membrane_concentration: km,
            bending_concentration: kb,
            membrane_peak: si(membrane),
            bending_peak: si(bending),
            smallest_pin_peak: si(close),
            largest_pin_peak: si(loose),
            smallest_wedging_peak: si(spread),
            largest_wedging_peak: si(local),
            restrained_peak: si(restrained),
            smallest_stress: si(smallest),
            largest_stress: si(largest),
            smallest_utilisation: smallest / limit,
            largest_utilisation: largest / limit,
        })
    }
}
