//! The boss that holds an insert or a self-tapping screw: diameter, wall, hole depth, floor and engagement.

use crate::prelude::*;

/// How the thread is made in the plastic.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum InsertKind {
    /// Moulded in.
    MouldedIn,
    /// Set by heat or ultrasound.
    HeatSet,
    /// Pressed in.
    PressIn,
    /// A self-tapping screw, without an insert.
    SelfTapping,
}

/// How printed layers lie to the screw.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum LayerDirection {
    /// Not printed in layers: moulded or machined.
    NotLayered,
    /// Layers across the screw's axis: pull-out peels them apart.
    AcrossAxis,
    /// Layers along the screw's axis: setting or tapping splits them.
    AlongAxis,
}

/// Boss of an insert or a self-tapping screw: its ratios against those that are required, and the room in its hole.
///
/// # Formula
/// Boss ratio = boss diameter/insert diameter. Wall = (boss − hole)/2 and its ratio to the insert diameter.
/// Room below the insert = hole depth − insert length. Floor = part depth − hole depth. Engagement ratio = engagement/screw
/// diameter. Each adequacy is what there is over what is required: below 1 it is too small.
///
/// # Validity
/// A round boss, or the shortest distance to an edge taken as half the boss diameter. For a self-tapping screw the insert
/// diameter is the screw's, and the insert length its engagement. Printed layers carry a caveat: bosses tear between layers
/// long before the ratios say so.
///
/// # Source
/// Ratios are inputs. Guidance: screw maker's boss guidance for thread-forming screws (diameter 2.0 to 2.5 d, depth 2.7 d);
/// Lincoln, Gomes and Braden, Mechanical Fastening of Plastics (engagement 2 to 3 d).
///
/// # Example
/// By hand: a boss of 9.2 mm round an insert of 4.6 mm is 2.0 times as wide.
/// ```
/// use coaming::fastener::{InsertBoss, InsertKind, LayerDirection};
/// use coaming::prelude::*;
///
/// let (boss, _) = InsertBoss {
///     kind: InsertKind::HeatSet,
///     layer_direction: LayerDirection::NotLayered,
///     screw_diameter: mm(3.0),
///     insert_diameter: mm(4.6),
///     insert_length: mm(5.7),
///     hole_diameter: mm(4.0),
///     hole_depth: mm(7.2),
///     part_depth: mm(12.0),
///     boss_diameter: mm(9.2),
///     engagement: mm(5.0),
///     required_boss_ratio: 2.0,
///     required_wall: mm(2.0),
///     required_room_below: mm(1.0),
///     required_floor: mm(1.5),
///     required_engagement_ratio: 1.5,
/// }
/// .calculate()?;
/// assert!((boss.boss_ratio - 2.0).abs() < 1e-12);
/// assert!((boss.wall.value - 0.0026).abs() < 1e-12);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct InsertBoss {
    /// How the thread is made.
    pub kind: InsertKind,
    /// How printed layers lie.
    pub layer_direction: LayerDirection,
    /// Nominal diameter of the screw.
    #[possible(f64::MIN_POSITIVE..)]
    pub screw_diameter: Length,
    /// Outer diameter of the insert; of the screw for self-tapping.
    #[possible(f64::MIN_POSITIVE..)]
    pub insert_diameter: Length,
    /// Length of the insert; the engagement for self-tapping.
    #[possible(f64::MIN_POSITIVE..)]
    pub insert_length: Length,
    /// Diameter of the hole in the plastic before setting.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_diameter: Length,
    /// Depth of the hole.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_depth: Length,
    /// Depth of the part at the hole, from the same face.
    #[possible(f64::MIN_POSITIVE..)]
    pub part_depth: Length,
    /// Diameter of the boss, or twice the distance from the hole's centre to the nearest edge.
    #[possible(f64::MIN_POSITIVE..)]
    pub boss_diameter: Length,
    /// Thread that the screw engages.
    #[possible(f64::MIN_POSITIVE..)]
    pub engagement: Length,
    /// Boss diameter over insert diameter that is required.
    #[possible(f64::MIN_POSITIVE..)]
    pub required_boss_ratio: f64,
    /// Wall round the hole that is required.
    #[possible(f64::MIN_POSITIVE..)]
    pub required_wall: Length,
    /// Room below the insert that is required, for displaced plastic and the screw's tip.
    #[possible(0.0..)]
    pub required_room_below: Length,
    /// Floor below the hole that is required; zero where the hole may go through.
    #[possible(0.0..)]
    pub required_floor: Length,
    /// Engagement over screw diameter that is required.
    #[possible(f64::MIN_POSITIVE..)]
    pub required_engagement_ratio: f64,
}

/// Outcome of [`InsertBoss`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct InsertBossOutcome {
    /// Boss diameter over insert diameter.
    pub boss_ratio: f64,
    /// That ratio over the one that is required.
    pub boss_adequacy: f64,
    /// Wall of plastic round the hole.
    pub wall: Length,
    /// Wall over the one that is required.
    pub wall_adequacy: f64,
    /// How much the insert is larger than its hole, on the diameter; negative where it is loose.
    pub interference: Length,
    /// Room below the insert.
    pub room_below: Length,
    /// True where the room below is what is required, or more.
    pub room_below_is_enough: bool,
    /// Floor below the hole; zero or less where the hole goes through.
    pub floor: Length,
    /// True where the floor is what is required, or more.
    pub floor_is_enough: bool,
    /// Engagement over screw diameter.
    pub engagement_ratio: f64,
    /// That ratio over the one that is required.
    pub engagement_adequacy: f64,
}

impl Calculation for InsertBoss {
    const NAME: &'static str = "insert_boss";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "screw maker's boss guidance for thread-forming screws in plastics",
            edition: "",
            locator: "boss design",
            standing: Standing::Read,
        },
        Source {
            title: "Lincoln, Gomes and Braden, Mechanical Fastening of Plastics",
            edition: "",
            locator: "chapter abstract",
            standing: Standing::Read,
        },
    ];
    type Outcome = InsertBossOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (insert, hole) = (self.insert_diameter.value, self.hole_diameter.value);
        let (boss, screw) = (self.boss_diameter.value, self.screw_diameter.value);
        if insert < screw {
            return Err(self.impossible("insert_diameter", "not less than the screw diameter"));
        }
        if boss <= insert.max(hole) {
            return Err(self.impossible("boss_diameter", "more than the insert and its hole"));
        }
        if self.engagement.value > self.insert_length.value {
            return Err(self.impossible("engagement", "not more than the insert length"));
        }
        if self.kind != InsertKind::MouldedIn && hole >= insert {
            return Err(
                self.impossible("hole_diameter", "less than the insert diameter: insert or screw must bite")
            );
        }
        if self.layer_direction != LayerDirection::NotLayered {
            caveats.add(Caveat::PrintedLayers);
        }
        let wall = (boss - hole) / 2.0;
        let room = self.hole_depth.value - self.insert_length.value;
        let floor = self.part_depth.value - self.hole_depth.value;
        let engagement_ratio = self.engagement.value / screw;
        // A nanometre of slack, so that a length that fits exactly is not refused by rounding.
        let reaches = |value: f64, limit: f64| value >= limit - 1e-9;
        Ok(InsertBossOutcome {
            boss_ratio: boss / insert,
            boss_adequacy: boss / insert / self.required_boss_ratio,
            wall: si(wall),
            wall_adequacy: wall / self.required_wall.value,
            interference: si(insert - hole),
            room_below: si(room),
            room_below_is_enough: reaches(room, self.required_room_below.value),
            floor: si(floor),
            floor_is_enough: reaches(floor, self.required_floor.value),
            engagement_ratio,
            engagement_adequacy: engagement_ratio / self.required_engagement_ratio,
        })
    }
}
