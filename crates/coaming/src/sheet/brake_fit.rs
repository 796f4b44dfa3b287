//! Which bends of a part a press brake can make.

use super::brake::{Brake, BrakeBend, BrakeLimit};
use super::die_opening;
use crate::prelude::*;

/// Whether a press brake can make each bend of a part, and how far each limit is used.
///
/// # Formula
///
/// A utilisation is demand over limit; above 1 the bend cannot be made. Force, smallest flange and inside radius follow
/// from the die opening as in `air_bend`.
///
/// - bed: length of the bend / bed length
/// - force: c Rm t² L / V / force limit; tools: c Rm t² / V / tool load limit
/// - flange: smallest flange of the die / flange
/// - throat: a part wider than the distance between columns may reach behind the bend line by the throat depth at most;
///   a narrower one passes between the columns and has no such limit
/// - daylight: (folded height + t) / (daylight − tool height)
///
/// A bend without a die opening of its own takes, among those at hand, the one nearest by ratio to the rule (6 t to 2.6 mm,
/// 8 t above) that fits and lies between 5 t and 12 t; if none fits, the nearest to the rule, so that the row shows
/// what is missing.
///
/// # Validity
///
/// As `air_bend`. The force is taken as centred on the bed. Collisions of a part with the punch or ram while it swings, and a
/// box deeper than the punch, are not looked at: they need the profile of the tools.
///
/// # Source
///
/// Common practice, as `air_bend`; the rest is geometry of the machine as given.
///
/// # Example
///
/// 2 mm mild steel, 1 m long over V = 16 mm needs 149.6 kN with k = 1.33 (B035): 37.4 % of 400 kN.
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let brake = Brake {
///     force_limit: kilonewton(400.0),
///     bed_length: mm(2000.0),
///     distance_between_columns: mm(1600.0),
///     throat_depth: mm(200.0),
///     daylight: mm(350.0),
///     tool_height: mm(230.0),
///     tool_load_limit: None,
///     die_openings: vec![mm(8.0), mm(16.0), mm(25.0)],
/// };
/// let bend = BrakeBend {
///     bend_length: mm(1000.0),
///     bend_angle: deg(90.0),
///     flange: mm(20.0),
///     die_opening: Some(mm(16.0)),
///     part_width: None,
///     reach_behind: None,
///     folded_height: None,
/// };
/// let (outcome, _) = BrakeFit {
///     brake,
///     thickness: mm(2.0),
///     ultimate_strength: megapascal(450.0),
///     force_factor: Some(1.33),
///     radius_factor: None,
///     flange_factor: None,
///     bends: vec![bend],
/// }
/// .calculate()?;
/// assert!(outcome.fits);
/// assert!((outcome.bends[0].force_utilisation - 149.6 / 400.0).abs() < 0.0003);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BrakeFit {
    /// The press brake.
    pub brake: Brake,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    #[tested(0.0005..=0.008)]
    pub thickness: Length,
    /// Ultimate tensile strength of the sheet, Rm.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub ultimate_strength: Pressure,
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
    /// The bends of the part; at least one.
    pub bends: Vec<BrakeBend>,
}

/// How far one bend uses each limit of the brake.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct BrakeBendOutcome {
    /// True where every limit is kept.
    pub fits: bool,
    /// The largest utilisation.
    pub largest_utilisation: f64,
    /// The limit that is broken, or used most.
    pub governed_by: BrakeLimit,
    /// Die opening that is taken, V.
    pub die_opening: Length,
    /// Inside radius that this die gives in mild steel.
    pub inside_radius: Length,
    /// Smallest flange of this die at this angle, outside to the virtual sharp.
    pub smallest_flange: Length,
    /// Largest force of the bend.
    #[shown_in("kN")]
    pub force: Force,
    /// Length of the bend over length of the bed.
    pub bed_utilisation: f64,
    /// Force of the bend over force of the ram.
    pub force_utilisation: f64,
    /// Force for each length over what the tools bear; absent where no such limit is given.
    pub tool_utilisation: Option<f64>,
    /// Smallest flange over flange.
    pub flange_utilisation: f64,
    /// Reach behind the bend over throat depth; absent where the part passes between the columns.
    pub throat_utilisation: Option<f64>,
    /// Height to pass over open height above the tools.
    pub daylight_utilisation: f64,
}

/// Whether a press brake can make the bends of a part.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct BrakeFitOutcome {
    /// True where every bend fits.
    pub fits: bool,
    /// The largest utilisation of all bends.
    pub largest_utilisation: f64,
    /// Each bend, in the order given.
    pub bends: Vec<BrakeBendOutcome>,
}

impl BrakeFit {
    /// One bend over one die opening.
    fn with_die(&self, bend: &BrakeBend, v: f64) -> BrakeBendOutcome {
        let (t, brake) = (self.thickness.value, &self.brake);
        let length = bend.bend_length.value;
        let flange = bend.flange.value;
        let c = self.force_factor.unwrap_or(die_opening::FORCE_FACTOR);
        let radius_factor = self.radius_factor.unwrap_or(die_opening::RADIUS_FACTOR);
        let flange_factor = self.flange_factor.unwrap_or(die_opening::FLANGE_FACTOR);

        let force_per_length = die_opening::force_per_length(c, self.ultimate_strength.value, t, v);
        let force = force_per_length * length;
        let smallest_flange = die_opening::smallest_flange(flange_factor, v, bend.bend_angle.value);
        let part_width = bend.part_width.map_or(length, |width| width.value);
        let reach = bend.reach_behind.map_or(flange, |reach| reach.value);
        let height = bend.folded_height.map_or(0.0, |height| height.value) + t;

        let bed_utilisation = length / brake.bed_length.value;
        let force_utilisation = force / brake.force_limit.value;
        let tool_utilisation = brake.tool_load_limit.map(|limit| force_per_length / limit.value);
        let flange_utilisation = smallest_flange / flange;
        let throat_utilisation =
            (part_width > brake.distance_between_columns.value).then(|| reach / brake.throat_depth.value);
        let daylight_utilisation = height / (brake.daylight.value - brake.tool_height.value);

        let (governed_by, largest_utilisation) = [
            (BrakeLimit::BedLength, Some(bed_utilisation)),
            (BrakeLimit::Force, Some(force_utilisation)),
            (BrakeLimit::ToolLoad, tool_utilisation),
            (BrakeLimit::Flange, Some(flange_utilisation)),
            (BrakeLimit::Throat, throat_utilisation),
            (BrakeLimit::Daylight, Some(daylight_utilisation)),
        ]
        .into_iter()
        .filter_map(|(limit, utilisation)| utilisation.map(|used| (limit, used)))
        .fold(
            (BrakeLimit::BedLength, bed_utilisation),
            |most, next| if next.1 > most.1 { next } else { most },
        );

        BrakeBendOutcome {
            fits: largest_utilisation <= 1.0,
            largest_utilisation,
            governed_by,
            die_opening: si(v),
            inside_radius: si(radius_factor * v),
            smallest_flange: si(smallest_flange),
            force: si(force),
            bed_utilisation,
            force_utilisation,
            tool_utilisation,
            flange_utilisation,
            throat_utilisation,
            daylight_utilisation,
        }
    }

    /// One bend over the die it names, or the most fitting one at hand.
    fn one(&self, bend: &BrakeBend) -> Option<BrakeBendOutcome> {
        let t = self.thickness.value;
        let at_hand = || self.brake.die_openings.iter().map(|die| die.value);
        if let Some(named) = bend.die_opening {
            let mut outcome = self.with_die(bend, named.value);
            if !at_hand().any(|v| v == named.value) {
                outcome.fits = false;
                outcome.governed_by = BrakeLimit::DieOpening;
            }
            return Some(outcome);
        }
        let wanted = die_opening::by_rule(t);
        let apart = |v: f64| die_opening::ratio_apart(v, wanted);
        let nearest = |best: f64, next: f64| if apart(next) < apart(best) { next } else { best };
        let fitting = at_hand()
            .filter(|v| die_opening::is_usual(*v, t) && self.with_die(bend, *v).fits)
            .reduce(nearest);
        fitting.or_else(|| at_hand().reduce(nearest)).map(|v| self.with_die(bend, v))
    }
}

impl Calculation for BrakeFit {
    const NAME: &'static str = "brake_fit";
    const SOURCE: &'static [Source] = &[
        Source::common_practice("die opening 6 t to 2.6 mm, 8 t to 8 mm"),
        Source::common_practice("inside radius 0.16 V, smallest flange 0.70 V, force 1.42 Rm t²/V"),
    ];
    type Outcome = BrakeFitOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let t = self.thickness.value;
        if self.brake.tool_height >= self.brake.daylight {
            return Err(Error::inconsistent(
                "brake.tool_height, brake.daylight",
                "the tools fill the daylight; accepted: a tool height below the daylight",
            ));
        }
        if self.bends.is_empty() {
            return Err(Error::inconsistent("bends", "an empty list; accepted: at least one bend"));
        }
        let mut bends = Vec::with_capacity(self.bends.len());
        for (place, bend) in self.bends.iter().enumerate() {
            if bend.part_width.is_some_and(|width| width < bend.bend_length) {
                return Err(Error::inconsistent(
                    format!("bends[{place}].part_width, bends[{place}].bend_length"),
                    "the part is narrower than its bend; accepted: a part width of at least the bend length",
                ));
            }
            let Some(outcome) = self.one(bend) else {
                return Err(Error::inconsistent(
                    "brake.die_openings",
                    "an empty list; accepted: at least one die opening",
                ));
            };
            if outcome.die_opening.value <= 2.0 * t {
                return Err(Error::inconsistent(
                    format!("bends[{place}].die_opening, thickness"),
                    "the sheet cannot enter the die; accepted: a die opening of more than twice the thickness",
                ));
            }
            if !die_opening::is_usual(outcome.die_opening.value, t) {
                caveats.add(Caveat::UnusualDieOpening);
            }
            bends.push(outcome);
        }
        Ok(BrakeFitOutcome {
            fits: bends.iter().all(|bend| bend.fits),
            largest_utilisation: bends.iter().fold(0.0, |most, bend| bend.largest_utilisation.max(most)),
            bends,
        })
    }
}
