//! One air bend on a press brake: die opening, inside radius, smallest flange and force.

use super::die_opening::{self, DieOpeningRounding};
use crate::prelude::*;

/// Air bend on a press brake: die opening, inside radius that comes of it, smallest flange and force.
///
/// # Formula
///
/// The die opening V is given, or chosen: 6 t for sheet to 2.6 mm, 8 t for thicker sheet, then rounded as asked.
///
/// - inside radius r = 0.16 V; a punch with a larger nose sets the radius instead
/// - smallest flange b = 0.70 V cos 45° / cos(α/2), outside to the virtual sharp, so that b = 0.70 V at a bend angle α of 90°
/// - force per length F' = c Rm t² / V with c = 1.42; force F = F' L for a bend of length L
///
/// The three factors can be replaced: stainless steel springs open to a larger radius than 0.16 V, and textbooks write the
/// force as k Rm L t² / W with k = 1.33. With sharp die shoulders geometry gives V / (2 cos(α/2)) for the flange, which is
/// 0.71 V at 90°; hence its dependence on α.
///
/// # Validity
///
/// Sheet of 0.5 to 8 mm, bends to 90°, 5 to 12 thicknesses of die opening. The chart that the factors were checked
/// against is for mild steel of 450 MPa at 90°: force within 12 % for 1 to 3 mm, radius within 0.1 mm and flange within
/// 0.5 mm for V from 8 to 50 mm. At t = 6 mm, V = 50 mm the chart reads 380 kN/m against 460 kN/m here. The inside radius
/// in air bending is set by the die opening, not by the punch. Bottoming and coining take several times this force.
///
/// # Source
///
/// Common practice for all three factors and for the rule; radius, flange and force checked against a press-tool maker's
/// air-bending force chart (B026–B028, B030–B034); the form k Rm L t² / W is Kalpakjian and Schmid's (B035).
///
/// # Example
///
/// The chart's row for V = 8 mm: radius 1.3 mm, flange 5.5 mm, 80 kN/m for 1 mm of mild steel (B026, B030).
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, caveats) = AirBend {
///     thickness: mm(1.0),
///     ultimate_strength: megapascal(450.0),
///     bend_length: mm(1000.0),
///     bend_angle: deg(90.0),
///     die_opening: Some(mm(8.0)),
///     die_opening_rounding: DieOpeningRounding::PreferredSeries,
///     punch_radius: None,
///     force_factor: None,
///     radius_factor: None,
///     flange_factor: None,
/// }
/// .calculate()?;
/// assert!((outcome.inside_radius.value - 0.0013).abs() < 0.0001);
/// assert!((outcome.smallest_flange.value - 0.0055).abs() < 0.0005);
/// assert!((outcome.force.value / 80e3 - 1.0).abs() < 0.12);
/// assert!(caveats.is_empty());
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct AirBend {
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    #[tested(0.0005..=0.008)]
    pub thickness: Length,
    /// Ultimate tensile strength of the sheet, Rm.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub ultimate_strength: Pressure,
    /// Length of the bend, along the bend line, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub bend_length: Length,
    /// Bend angle, α: the angle the sheet is turned through.
    #[possible(f64::MIN_POSITIVE..PI)]
    #[tested(f64::MIN_POSITIVE..=FRAC_PI_2)]
    #[also(included_angle, super::supplement)]
    pub bend_angle: Angle,
    /// Die opening, V; chosen by the rule if absent.
    #[possible(f64::MIN_POSITIVE..)]
    pub die_opening: Option<Length>,
    /// How a die opening chosen by the rule is rounded; a given one is not touched.
    pub die_opening_rounding: DieOpeningRounding,
    /// Nose radius of the punch; a sharp one if absent.
    #[possible(0.0..)]
    pub punch_radius: Option<Length>,
    /// Factor of the force formula, c; 1.42 (common practice) if absent.
    #[possible(f64::MIN_POSITIVE..)]
    #[tested(1.2..=1.6)]
    pub force_factor: Option<f64>,
    /// Inside radius over die opening; 0.16 (common practice, mild steel) if absent.
    #[possible(f64::MIN_POSITIVE..0.5)]
    pub radius_factor: Option<f64>,
    /// Smallest flange over die opening at 90°; 0.70 (common practice) if absent.
    #[possible(f64::MIN_POSITIVE..)]
    pub flange_factor: Option<f64>,
}

/// What an air bend needs and gives.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct AirBendOutcome {
    /// Die opening, given or chosen, V.
    pub die_opening: Length,
    /// Die opening over thickness, V/t.
    pub die_opening_ratio: f64,
    /// Inside radius that the bend takes, r.
    pub inside_radius: Length,
    /// Smallest flange, outside to the virtual sharp, b.
    pub smallest_flange: Length,
    /// Largest force for each length of bend, F'.
    pub force_per_length: ForcePerLength,
    /// Largest force of the whole bend, F.
    #[shown_in("kN")]
    pub force: Force,
    /// Factor of the force formula that was used, c.
    pub force_factor: f64,
    /// Inside radius over die opening that was used.
    pub radius_factor: f64,
    /// Smallest flange over die opening that was used.
    pub flange_factor: f64,
}

impl Calculation for AirBend {
    const NAME: &'static str = "air_bend";
    const SOURCE: &'static [Source] = &[
        Source::common_practice("die opening 6 t to 2.6 mm, 8 t to 8 mm"),
        Source::common_practice("inside radius 0.16 V, smallest flange 0.70 V, force 1.42 Rm t²/V"),
        Source {
            title: "press-tool maker's air-bending force chart",
            edition: "",
            locator: "mild steel, rows b min and ir",
            standing: Standing::Read,
        },
        Source {
            title: "Kalpakjian & Schmid, Manufacturing Processes for Engineering Materials",
            edition: "",
            locator: "V-die bending force",
            standing: Standing::Memory,
        },
    ];
    type Outcome = AirBendOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let t = self.thickness.value;
        let c = self.force_factor.unwrap_or(die_opening::FORCE_FACTOR);
        let radius_factor = self.radius_factor.unwrap_or(die_opening::RADIUS_FACTOR);
        let flange_factor = self.flange_factor.unwrap_or(die_opening::FLANGE_FACTOR);

        let v = match self.die_opening {
            Some(given) => given.value,
            None => die_opening::chosen(t, self.die_opening_rounding),
        };
        if v <= 2.0 * t {
            return Err(self.impossible(
                "die_opening",
                "more than twice the thickness, or the sheet cannot enter the die",
            ));
        }
        if !die_opening::is_usual(v, t) {
            caveats.add(Caveat::UnusualDieOpening);
        }

        let natural_radius = radius_factor * v;
        let punch_radius = self.punch_radius.map_or(0.0, |radius| radius.value);
        if punch_radius > natural_radius {
            caveats.add(Caveat::PunchSetsRadius);
        }
        let r = natural_radius.max(punch_radius);

        let force_per_length = die_opening::force_per_length(c, self.ultimate_strength.value, t, v);
        Ok(AirBendOutcome {
            die_opening: si(v),
            die_opening_ratio: v / t,
            inside_radius: si(r),
            smallest_flange: si(die_opening::smallest_flange(flange_factor, v, self.bend_angle.value)),
            force_per_length: si(force_per_length),
            force: si(force_per_length * self.bend_length.value),
            force_factor: c,
            radius_factor,
            flange_factor,
        })
    }
}
