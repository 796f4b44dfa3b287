//! Screw length from the grip, with engagement and tip clearance at the extremes.

use super::length_series::LengthSeries;
use crate::prelude::*;

/// How the screw's head sits: it decides what the nominal length is counted from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum HeadSeat {
    /// Flat under the head: the length is counted from the bearing face, and leaves the head out.
    UnderHead,
    /// Countersunk: the length is counted from the top of the head, and includes it.
    Countersunk,
}

/// One layer that the screw passes before it reaches its thread.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GripLayer {
    /// Nominal thickness.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// How much thinner it may be.
    #[possible(0.0..)]
    pub thinner_by: Length,
    /// How much thicker it may be.
    #[possible(0.0..)]
    pub thicker_by: Length,
}

/// Length of a screw from the stack that it grips: engagement and tip clearance at the tolerance extremes.
///
/// # Formula
/// Length past the grip x = L − Σ layers − Σ washers − protrusion. The protrusion of a countersunk head above the face counts
/// positive where it is proud: such a screw reaches less deep. Nominal: the mean of its extremes.
/// Tip clearance = hole depth − x. Engagement = min(x − point, recess + threaded length) − recess, not less than zero.
/// Extremes are the worst case: all tolerances add up. Without a length: the shortest of the series whose smallest
/// engagement reaches the one that is required.
///
/// # Validity
/// Depths are counted from the face that the last layer lies on. Give `recess` where an insert sits below that face, and
/// `point_length` where the first turns of the screw do not carry. A tip clearance below zero means that the screw bottoms
/// and does not clamp, by that amount. The unthreaded shank of a partly threaded screw is not looked at.
///
/// # Source
/// Geometry. Lengths: ISO 888 (unverified) and the stocked inch lengths (common practice).
///
/// # Example
/// M4 × 12, countersunk, through 1.6 mm and 3 mm into a hole of 7.0 mm: 7.4 mm reach in, so it bottoms by 0.4 mm (by hand).
/// ```
/// use coaming::fastener::{GripLayer, HeadSeat, LengthSeries, ScrewLength};
/// use coaming::prelude::*;
///
/// let layer = |thickness| GripLayer { thickness, thinner_by: mm(0.0), thicker_by: mm(0.0) };
/// let (screw, _) = ScrewLength {
///     head_seat: HeadSeat::Countersunk,
///     smallest_protrusion: None,
///     largest_protrusion: None,
///     layers: vec![layer(mm(1.6)), layer(mm(3.0))],
///     washers: vec![],
///     hole_depth: Some(mm(7.0)),
///     hole_depth_tolerance: mm(0.0),
///     recess: mm(0.0),
///     threaded_length: mm(6.0),
///     point_length: mm(0.0),
///     required_engagement: mm(6.0),
///     required_tip_clearance: mm(1.0),
///     series: LengthSeries::Iso888,
///     length: Some(mm(12.0)),
///     shorter_by: mm(0.0),
///     longer_by: mm(0.0),
/// }
/// .calculate()?;
/// assert!((screw.length_past_grip.value - 0.0074).abs() < 1e-12);
/// assert!(screw.bottoms);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ScrewLength {
    /// How the head sits.
    pub head_seat: HeadSeat,
    /// Smallest protrusion of a countersunk head above the face, negative below it; flush if absent.
    pub smallest_protrusion: Option<Length>,
    /// Largest protrusion of a countersunk head above the face, negative below it; flush if absent.
    pub largest_protrusion: Option<Length>,
    /// Layers that the screw passes, from the head.
    pub layers: Vec<GripLayer>,
    /// Washers under the head; none under a countersunk head.
    pub washers: Vec<GripLayer>,
    /// Depth of the hole below the last layer; absent for a through hole.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_depth: Option<Length>,
    /// Tolerance of the hole depth, plus and minus; zero for a through hole.
    #[possible(0.0..)]
    pub hole_depth_tolerance: Length,
    /// Depth from the face to the first full thread; zero for an insert that is flush.
    #[possible(0.0..)]
    pub recess: Length,
    /// Length of full thread in the hole, insert or nut.
    #[possible(f64::MIN_POSITIVE..)]
    pub threaded_length: Length,
    /// Length at the screw's tip that does not carry.
    #[possible(0.0..)]
    pub point_length: Length,
    /// Engagement that is required.
    #[possible(f64::MIN_POSITIVE..)]
    pub required_engagement: Length,
    /// Tip clearance that is required in a blind hole.
    #[possible(0.0..)]
    pub required_tip_clearance: Length,
    /// Series that the length is chosen from.
    pub series: LengthSeries,
    /// Length to be checked; chosen from the series if absent.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Option<Length>,
    /// How much shorter than nominal the screw may be.
    #[possible(0.0..)]
    pub shorter_by: Length,
    /// How much longer than nominal the screw may be.
    #[possible(0.0..)]
    pub longer_by: Length,
}

/// Outcome of [`ScrewLength`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ScrewLengthOutcome {
    /// Nominal length that was given or chosen, L.
    pub length: Length,
    /// True where the series has that length.
    pub in_series: bool,
    /// Nominal grip: layers and washers.
    pub grip: Length,
    /// Smallest grip.
    pub smallest_grip: Length,
    /// Largest grip.
    pub largest_grip: Length,
    /// Nominal length past the grip, x.
    pub length_past_grip: Length,
    /// Nominal engagement.
    pub engagement: Length,
    /// Smallest engagement.
    pub smallest_engagement: Length,
    /// Largest engagement.
    pub largest_engagement: Length,
    /// Nominal tip clearance; below zero the screw bottoms. Absent for a through hole.
    pub tip_clearance: Option<Length>,
    /// Smallest tip clearance.
    pub smallest_tip_clearance: Option<Length>,
    /// Largest tip clearance.
    pub largest_tip_clearance: Option<Length>,
    /// True where the smallest tip clearance is below zero.
    pub bottoms: bool,
    /// True where the smallest engagement reaches the one that is required.
    pub engagement_is_enough: bool,
    /// True where the smallest tip clearance reaches the one that is required, or the hole is through.
    pub tip_clearance_is_enough: bool,
}

/// A nanometre, so that a length that fits exactly is not refused by rounding.
const SLACK: f64 = 1e-9;

/// Nominal, smallest and largest of a length in m.
#[derive(Debug, Clone, Copy)]
struct Extremes {
    nominal: f64,
    smallest: f64,
    largest: f64,
}

/// The stack's thickness and its worst-case extremes.
fn stack<'a>(layers: impl Iterator<Item = &'a GripLayer>) -> Extremes {
    layers.fold(Extremes { nominal: 0.0, smallest: 0.0, largest: 0.0 }, |sum, layer| Extremes {
        nominal: sum.nominal + layer.thickness.value,
        smallest: sum.smallest + (layer.thickness.value - layer.thinner_by.value),
        largest: sum.largest + (layer.thickness.value + layer.thicker_by.value),
    })
}

impl ScrewLength {
    /// Protrusion of the head, which shortens the reach; zero for a flat-seated head.
    fn protrusion(&self) -> Result<(f64, f64), Error> {
        let given = self.smallest_protrusion.is_some() || self.largest_protrusion.is_some();
        if self.head_seat == HeadSeat::UnderHead {
            if given {
                return Err(Error::inconsistent(
                    "head_seat, smallest_protrusion, largest_protrusion",
                    "a protrusion goes with a countersunk head only",
                ));
            }
            return Ok((0.0, 0.0));
        }
        if !self.washers.is_empty() {
            return Err(Error::inconsistent("head_seat, washers", "a countersunk head takes no washer"));
        }
        let smallest = self.smallest_protrusion.map_or(0.0, |given| given.value);
        let largest = self.largest_protrusion.map_or(0.0, |given| given.value);
        if smallest > largest {
            return Err(Error::inconsistent(
                "smallest_protrusion, largest_protrusion",
                "the smallest must not exceed the largest",
            ));
        }
        Ok((smallest, largest))
    }

    /// Length past the grip for a nominal length.
    fn past_grip(&self, length: f64, grip: Extremes, protrusion: (f64, f64)) -> Extremes {
        Extremes {
            nominal: length - grip.nominal - (protrusion.0 + protrusion.1) / 2.0,
            smallest: length - self.shorter_by.value - grip.largest - protrusion.1,
            largest: length + self.longer_by.value - grip.smallest - protrusion.0,
        }
    }

    /// Engaged thread for a length past the grip.
    fn engaged(&self, past: f64) -> f64 {
        let recess = self.recess.value;
        ((past - self.point_length.value).min(recess + self.threaded_length.value) - recess).max(0.0)
    }
}

impl Calculation for ScrewLength {
    const NAME: &'static str = "screw_length";
    const SOURCE: &'static [Source] = &[
        Source { title: "ISO 888", edition: "2012", locator: "nominal lengths", standing: Standing::Memory },
        Source::common_practice("stocked inch lengths"),
    ];
    type Outcome = ScrewLengthOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let protrusion = self.protrusion()?;
        if self.layers.is_empty() {
            return Err(Error::inconsistent("layers", "at least one layer is needed: the list is empty"));
        }
        let grip = stack(self.layers.iter().chain(&self.washers));
        if self.layers.iter().chain(&self.washers).any(|layer| layer.thinner_by >= layer.thickness) {
            return Err(Error::inconsistent("layers, washers", "thinner_by must be less than the thickness"));
        }
        let required = self.required_engagement.value;
        if required > self.threaded_length.value {
            return Err(self.impossible("required_engagement", "not more than the threaded length"));
        }
        if let Some(depth) = self.hole_depth {
            if self.hole_depth_tolerance >= depth {
                return Err(self.impossible("hole_depth_tolerance", "less than the hole depth"));
            }
            if self.recess.value + self.threaded_length.value
                > depth.value + self.hole_depth_tolerance.value + SLACK
            {
                return Err(Error::inconsistent(
                    "recess, threaded_length, hole_depth",
                    "the thread must end within the hole: recess and threaded length not more than the hole depth",
                ));
            }
        }
        let reaches = |value: f64, limit: f64| value >= limit - SLACK;
        let length = match self.length {
            Some(length) => length.value,
            None => self
                .series
                .lengths()
                .find(|length| {
                    reaches(self.engaged(self.past_grip(*length, grip, protrusion).smallest), required)
                })
                .ok_or_else(|| {
                    Error::inconsistent(
                        "series, required_engagement",
                        "no length of the series is long enough",
                    )
                })?,
        };
        let in_series = self.series.has(length);
        if !in_series {
            caveats.add(Caveat::NotStandardLength);
        }
        let past = self.past_grip(length, grip, protrusion);
        let tip = self.hole_depth.map(|depth| Extremes {
            nominal: depth.value - past.nominal,
            smallest: depth.value - self.hole_depth_tolerance.value - past.largest,
            largest: depth.value + self.hole_depth_tolerance.value - past.smallest,
        });
        let smallest_engagement = self.engaged(past.smallest);
        Ok(ScrewLengthOutcome {
            length: si(length),
            in_series,
            grip: si(grip.nominal),
            smallest_grip: si(grip.smallest),
            largest_grip: si(grip.largest),
            length_past_grip: si(past.nominal),
            engagement: si(self.engaged(past.nominal)),
            smallest_engagement: si(smallest_engagement),
            largest_engagement: si(self.engaged(past.largest)),
            tip_clearance: tip.map(|tip| si(tip.nominal)),
            smallest_tip_clearance: tip.map(|tip| si(tip.smallest)),
            largest_tip_clearance: tip.map(|tip| si(tip.largest)),
            bottoms: tip.is_some_and(|tip| !reaches(tip.smallest, 0.0)),
            engagement_is_enough: reaches(smallest_engagement, required),
            tip_clearance_is_enough: tip
                .is_none_or(|tip| reaches(tip.smallest, self.required_tip_clearance.value)),
        })
    }
}
