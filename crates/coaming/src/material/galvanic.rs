//! Which metals, and carbon, may touch: groups of the galvanic table and the limit for a pair.

use crate::prelude::*;

/// A group of the galvanic table, the noblest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Choice)]
#[non_exhaustive]
pub enum GalvanicGroup {
    /// Carbon fibres and graphite.
    Carbon,
    /// Nickel, titanium and their alloys.
    NickelAndTitanium,
    /// Copper.
    Copper,
    /// Brasses rich in zinc, such as free-cutting brass.
    HighBrass,
    /// Stainless steel with 18 % chromium, passive.
    StainlessSteel,
    /// Chromium or tin plating, 12 % chromium steel.
    ChromiumAndTin,
    /// Wrought aluminium of the 2000 series.
    #[option("aluminium_2000")]
    Aluminium2000,
    /// Unalloyed and low-alloy steel, cast iron.
    CarbonSteel,
    /// Wrought aluminium other than the 2000 series.
    Aluminium,
    /// Zinc: hot-dip and electroplated.
    Zinc,
}

/// Where the pair lives.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Choice)]
#[non_exhaustive]
pub enum Exposure {
    /// Outdoors, wet or salty.
    Harsh,
    /// Indoors without control of temperature and humidity.
    Normal,
    /// Temperature and humidity controlled.
    Controlled,
}

/// A pair against its limit, all potentials in volts.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct GalvanicPair {
    /// Least difference of potential that the sources give.
    pub difference_low: f64,
    /// Largest difference of potential that the sources give: the one to judge by.
    pub difference_high: f64,
    /// Largest difference that common practice allows for the exposure.
    pub limit: f64,
    /// The group that corrodes; `None` where both are one group.
    pub corrodes: Option<GalvanicGroup>,
    /// Where the potentials come from.
    pub source: Source,
    /// Where the limit comes from.
    pub limit_source: Source,
}

impl GalvanicPair {
    /// True where the larger difference is within the limit.
    pub fn is_within_limit(&self) -> bool {
        self.difference_high <= self.limit
    }
}

struct Row {
    group: GalvanicGroup,
    /// Anodic index against gold, in volts, with how it was taken from the practice.
    index: Option<(f64, Standing)>,
    /// Corrosion potential in flowing seawater against the calomel electrode, low and high, in volts.
    seawater: Option<(f64, f64, Standing)>,
}

const fn row(
    group: GalvanicGroup,
    index: Option<(f64, Standing)>,
    seawater: Option<(f64, f64, Standing)>,
) -> Row {
    Row { group, index, seawater }
}

const SECOND_HAND: Standing = Standing::SecondHand;
const MEMORY: Standing = Standing::Memory;

const ROWS: &[Row] = &[
    row(GalvanicGroup::Carbon, None, Some((0.2, 0.3, SECOND_HAND))),
    row(GalvanicGroup::NickelAndTitanium, Some((-0.30, SECOND_HAND)), Some((-0.05, 0.06, MEMORY))),
    row(GalvanicGroup::Copper, Some((-0.35, SECOND_HAND)), Some((-0.37, -0.30, MEMORY))),
    row(GalvanicGroup::HighBrass, Some((-0.45, SECOND_HAND)), Some((-0.40, -0.30, MEMORY))),
    row(GalvanicGroup::StainlessSteel, Some((-0.50, SECOND_HAND)), Some((-0.10, -0.04, SECOND_HAND))),
    row(GalvanicGroup::ChromiumAndTin, Some((-0.60, SECOND_HAND)), None),
    row(GalvanicGroup::Aluminium2000, Some((-0.75, SECOND_HAND)), Some((-1.00, -0.76, SECOND_HAND))),
    row(GalvanicGroup::CarbonSteel, Some((-0.85, MEMORY)), Some((-0.72, -0.60, SECOND_HAND))),
    row(GalvanicGroup::Aluminium, Some((-0.90, MEMORY)), Some((-1.00, -0.76, SECOND_HAND))),
    row(GalvanicGroup::Zinc, Some((-1.20, MEMORY)), Some((-1.03, -0.98, MEMORY))),
];

const fn index_source(standing: Standing) -> Source {
    Source { title: "anodic-index practice after MIL-F-14072", edition: "", locator: "index table", standing }
}

const fn seawater_source(standing: Standing) -> Source {
    Source {
        title: "Australasian Corrosion Association, corrosion potentials in flowing seawater",
        edition: "",
        locator: "table",
        standing,
    }
}

/// The largest difference of anodic index that common practice allows: 0.15 V harsh, 0.25 V normal, 0.50 V
/// controlled, with its source.
pub const fn galvanic_limit(exposure: Exposure) -> (f64, Source) {
    let volts = match exposure {
        Exposure::Harsh => 0.15,
        Exposure::Normal => 0.25,
        Exposure::Controlled => 0.50,
    };
    let source = Source {
        title: "anodic-index practice after MIL-F-14072; see MIL-STD-889",
        edition: "",
        locator: "galvanic compatibility notes",
        standing: Standing::SecondHand,
    };
    (volts, source)
}

/// Two groups in contact, judged for an exposure.
///
/// By the anodic index where both have one; by the potentials in flowing seawater where carbon is one of them. `None`
/// where neither scale has both. What is insulated from the other (paint alone is not), or touches no water, is no
/// pair: that is for the caller to know. A small noble part in a large base one, a screw in a sheet, corrodes it
/// slowly; the other way round fast.
pub fn galvanic_pair(one: GalvanicGroup, other: GalvanicGroup, exposure: Exposure) -> Option<GalvanicPair> {
    let (limit, limit_source) = galvanic_limit(exposure);
    let find = |group| ROWS.iter().find(|row| row.group == group);
    let (first, second) = (find(one)?, find(other)?);
    let worse = |a: Standing, b: Standing| if a.is_unverified() { a } else { b };
    let pair = |low: f64, high: f64, corrodes: Option<GalvanicGroup>, source: Source| GalvanicPair {
        difference_low: low,
        difference_high: high,
        limit,
        corrodes,
        source,
        limit_source,
    };
    if one == other {
        return Some(pair(0.0, 0.0, None, Source::common_practice("one group against itself")));
    }
    let baser = Some(if one > other { one } else { other });
    if let (Some((a, a_standing)), Some((b, b_standing))) = (first.index, second.index) {
        let difference = (a - b).abs();
        let corrodes = if a == b {
            None
        } else if a < b {
            Some(one)
        } else {
            Some(other)
        };
        return Some(pair(difference, difference, corrodes, index_source(worse(a_standing, b_standing))));
    }
    let ((a_low, a_high, a_standing), (b_low, b_high, b_standing)) = (first.seawater?, second.seawater?);
    let high = (a_high - b_low).max(b_high - a_low);
    let low = (a_low - b_high).max(b_low - a_high).max(0.0);
    Some(pair(low, high, baser, seawater_source(worse(a_standing, b_standing))))
}
