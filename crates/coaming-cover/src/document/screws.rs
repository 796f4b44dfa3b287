//! Screw patterns: the screws, the layers they pass, and what they are screwed into.

use super::layer::Sealing;
use super::outline::Point;
use coaming::fastener::{
    BearingStandard, CountersunkStandard, LayerDirection, ScrewSize, StrengthClass, TighteningMethod,
};
use coaming::material::Agent;
use coaming::prelude::*;
use coaming::thermal::HoleRole;

/// Where the screws stand: on a rectangle.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct OnRectangle {
    /// Distance of the outermost screws along x.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Distance of the outermost screws along y.
    #[possible(f64::MIN_POSITIVE..)]
    pub height: Length,
}

/// Where the screws stand: point by point.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct AtPoints {
    /// The points.
    pub points: Vec<Point>,
}

/// Where the screws of a pattern stand.
#[derive(Debug, Clone, PartialEq, OneOf)]
pub enum Positions {
    /// Evenly on a rectangle about the origin.
    Rectangle(OnRectangle),
    /// At points.
    Points(AtPoints),
}

impl Positions {
    /// Distance in metres from the origin to the furthest screw along x and along y.
    pub fn reach(&self) -> (f64, f64) {
        match self {
            Self::Rectangle(r) => (r.width.value / 2.0, r.height.value / 2.0),
            Self::Points(p) => p.points.iter().fold((0.0, 0.0), |(x, y), point| {
                (f64::max(x, point.x.value.abs()), f64::max(y, point.y.value.abs()))
            }),
        }
    }
}

impl Positions {
    /// Where so many screws stand, in metres: the points as given, or one at each corner of the rectangle and the rest
    /// evenly along its sides, two and two, each pair where the pitch is longest. None where they cannot stand so.
    pub fn points(&self, count: u32) -> Option<Vec<(f64, f64)>> {
        let on = match self {
            Self::Points(at) => {
                return Some(at.points.iter().map(|point| (point.x.value, point.y.value)).collect());
            }
            Self::Rectangle(on) => on,
        };
        let (along, up) = between(on, count)?;
        let (w, h) = (on.width.value, on.height.value);
        let (x, y) = (w / 2.0, h / 2.0);
        let mut points = vec![(-x, -y), (x, -y), (x, y), (-x, y)];
        for nth in 1..=along {
            let place = w * f64::from(nth) / f64::from(along + 1) - x;
            points.extend([(place, -y), (place, y)]);
        }
        for nth in 1..=up {
            let place = h * f64::from(nth) / f64::from(up + 1) - y;
            points.extend([(-x, place), (x, place)]);
        }
        Some(points)
    }

    /// The longest distance from a screw to the next, in metres: along the sides of a rectangle, along a straight row of
    /// points, or from point to point round their middle. None where they cannot stand so, or stand alone.
    pub fn longest_pitch(&self, count: u32) -> Option<f64> {
        match self {
            Self::Rectangle(on) => {
                let (along, up) = between(on, count)?;
                Some((on.width.value / f64::from(along + 1)).max(on.height.value / f64::from(up + 1)))
            }
            Self::Points(_) => longest_step(&self.points(count)?),
        }
    }

    /// The shortest distance between two screws, in metres. None where they cannot stand so, or stand alone.
    pub fn shortest_pitch(&self, count: u32) -> Option<f64> {
        match self {
            Self::Rectangle(on) => {
                let (along, up) = between(on, count)?;
                Some((on.width.value / f64::from(along + 1)).min(on.height.value / f64::from(up + 1)))
            }
            Self::Points(_) => {
                let mut points = self.points(count)?;
                points.sort_by(|a, b| a.0.total_cmp(&b.0));
                let mut shortest = f64::INFINITY;
                for (nth, first) in points.iter().enumerate() {
                    for second in points.iter().skip(nth + 1) {
                        if second.0 - first.0 >= shortest {
                            break;
                        }
                        shortest = shortest.min(apart(*first, *second));
                    }
                }
                shortest.is_finite().then_some(shortest)
            }
        }
    }
}

fn apart(a: (f64, f64), b: (f64, f64)) -> f64 {
    math::hypot(a.0 - b.0, a.1 - b.1)
}

/// The longest step from each point to the next: along the row where they stand in one, otherwise round their middle.
/// Points within a ring of others lengthen the steps, which is the safe side.
fn longest_step(points: &[(f64, f64)]) -> Option<f64> {
    if points.len() < 2 {
        return None;
    }
    let count = points.len() as f64;
    let sum = points.iter().fold((0.0, 0.0), |sum, point| (sum.0 + point.0, sum.1 + point.1));
    let middle = (sum.0 / count, sum.1 / count);
    let far = |from: (f64, f64)| {
        points.iter().copied().max_by(|a, b| apart(*a, from).total_cmp(&apart(*b, from))).unwrap_or(from)
    };
    // The ends of a row are the points that are furthest from each other.
    let first = far(middle);
    let last = far(first);
    let length = apart(first, last);
    let off = |point: &(f64, f64)| {
        ((last.0 - first.0) * (point.1 - first.1) - (last.1 - first.1) * (point.0 - first.0)).abs()
    };
    let in_a_row = points.iter().all(|point| off(point) <= 1e-6 * length * length);
    let mut ordered = points.to_vec();
    if in_a_row {
        ordered.sort_by(|a, b| apart(*a, first).total_cmp(&apart(*b, first)));
    } else {
        let angle = |point: &(f64, f64)| math::atan2(point.1 - middle.1, point.0 - middle.0);
        ordered.sort_by(|a, b| {
            angle(a).total_cmp(&angle(b)).then(apart(*a, middle).total_cmp(&apart(*b, middle)))
        });
        ordered.extend(ordered.first().copied());
    }
    let steps = ordered.iter().zip(ordered.iter().skip(1)).map(|(a, b)| apart(*a, *b));
    Some(steps.fold(0.0, f64::max))
}

/// The most screws that are laid out on a rectangle: as many as a list may hold.
const MOST: u32 = 10_000;

/// How many screws stand between the corners along each horizontal and each upright side.
fn between(on: &OnRectangle, count: u32) -> Option<(u32, u32)> {
    let rest = count.checked_sub(4).filter(|rest| rest % 2 == 0 && *rest <= MOST)?;
    let (mut along, mut up) = (0, 0);
    for _ in 0..rest / 2 {
        if on.width.value / f64::from(along + 1) >= on.height.value / f64::from(up + 1) {
            along += 1;
        } else {
            up += 1;
        }
    }
    Some((along, up))
}

/// The way along which slots run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum SlotDirection {
    /// Along x.
    AlongX,
    /// Along y.
    AlongY,
    /// Each towards the fixed hole of its layer.
    TowardsFixed,
}

/// A layer that the screws pass, in order from the head.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Passed {
    /// Name of the layer.
    pub layer: String,
    /// Diameter of the hole in it.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole: Option<Length>,
    /// What the holes have to do.
    pub role: Option<HoleRole>,
    /// Along which way a slot runs.
    pub slot_direction: Option<SlotDirection>,
    /// Length of a slot over all.
    #[possible(f64::MIN_POSITIVE..)]
    pub slot_length: Option<Length>,
    /// True where the head is sunk into this layer.
    pub countersunk: Option<bool>,
    /// What seals the hole.
    pub sealed_by: Option<Sealing>,
    /// True where a coating, a sleeve or sealant keeps screw and layer apart as metals.
    pub insulated: Option<bool>,
    /// Distance from the centre of the hole to the nearest edge.
    #[possible(f64::MIN_POSITIVE..)]
    pub edge_distance: Option<Length>,
}

/// What holds the thread.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum InsertKind {
    /// Moulded in.
    MouldedIn,
    /// Set by heat or ultrasound.
    HeatSet,
    /// Pressed in.
    PressedIn,
    /// Cuts its own thread.
    SelfTapping,
    /// A rivet nut in sheet.
    RivetNut,
}

/// The threaded insert that a screw goes into.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Insert {
    /// Name of the layer that it sits in.
    pub layer: String,
    /// How it is held.
    pub kind: Option<InsertKind>,
    /// Name of its material.
    pub material: Option<String>,
    /// Outside diameter.
    #[possible(f64::MIN_POSITIVE..)]
    pub outside_diameter: Option<Length>,
    /// Length of its thread.
    #[possible(f64::MIN_POSITIVE..)]
    pub thread_length: Option<Length>,
    /// Depth of the hole below the face that the screw enters.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_depth: Option<Length>,
    /// Diameter of its hole in the plastic before it is set.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_diameter: Option<Length>,
    /// Distance from its centre to the nearest edge of the plastic.
    #[possible(f64::MIN_POSITIVE..)]
    pub edge_distance: Option<Length>,
    /// True where it ends flush with the face or proud of it, so that what is clamped can bear on it.
    pub flush: Option<bool>,
    /// How the layers of a printed part lie to the screw.
    pub printed_layers: Option<LayerDirection>,
    /// Force at which it pulls out: the maker's figure for this plastic.
    #[possible(f64::MIN_POSITIVE..)]
    pub pull_out: Option<Force>,
    /// Torque at which it turns: the maker's figure for this plastic.
    #[possible(f64::MIN_POSITIVE..)]
    pub torque_out: Option<Torque>,
}

/// A shoulder bush (compression limiter) that lets a layer float.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Bush {
    /// Name of the layer that floats on it.
    pub layer: String,
    /// Outside diameter.
    #[possible(f64::MIN_POSITIVE..)]
    pub outside_diameter: Option<Length>,
    /// Diameter of its bore.
    #[possible(f64::MIN_POSITIVE..)]
    pub bore: Option<Length>,
    /// Name of its material.
    pub material: Option<String>,
    /// Length of the shoulder.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Option<Length>,
    /// Largest deviation of its length.
    #[possible(0.0..)]
    pub length_tolerance: Option<Length>,
}

/// A pattern of like screws.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ScrewPattern {
    /// Its name.
    pub name: String,
    /// Nominal size.
    pub size: Option<ScrewSize>,
    /// Standard of a countersunk head.
    pub countersunk_head: Option<CountersunkStandard>,
    /// Standard of a head that stands on the surface.
    pub flat_head: Option<BearingStandard>,
    /// Strength class.
    pub strength_class: Option<StrengthClass>,
    /// Nominal length: of a countersunk screw with its head, of others without.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Option<Length>,
    /// How many there are.
    #[possible(1.0..)]
    pub count: Option<u32>,
    /// Where they stand.
    pub positions: Option<Positions>,
    /// Largest deviation of a hole's position, drilling included.
    #[possible(0.0..)]
    pub position_tolerance: Option<Length>,
    /// Name of their material.
    pub material: Option<String>,
    /// The layers that they pass, in order from the head.
    pub passes: Option<Vec<Passed>>,
    /// The insert that they go into.
    pub insert: Option<Insert>,
    /// The bush that lets a layer float.
    pub bush: Option<Bush>,
    /// Tightening torque.
    #[possible(f64::MIN_POSITIVE..)]
    pub torque: Option<Torque>,
    /// How they are tightened, which scatters their preload.
    pub tightening: Option<TighteningMethod>,
    /// Scatter of the preload either way, as a part of it; for `stated` tightening only.
    #[possible(0.0..1.0)]
    pub tightening_uncertainty: Option<f64>,
    /// Least embedding of head, thread and every face between them, all together.
    #[possible(0.0..)]
    pub embedding_low: Option<Length>,
    /// Greatest embedding of head, thread and every face between them, all together.
    #[possible(0.0..)]
    pub embedding_high: Option<Length>,
    /// Coefficient of friction in the thread.
    #[possible(f64::MIN_POSITIVE..=1.0)]
    pub thread_friction: Option<f64>,
    /// Nut factor of the tightening.
    #[possible(f64::MIN_POSITIVE..)]
    pub nut_factor: Option<f64>,
    /// Least friction coefficient between the layers that they clamp.
    #[possible(0.0..=2.0)]
    pub friction_low: Option<f64>,
    /// Greatest friction coefficient between the layers that they clamp.
    #[possible(0.0..=2.0)]
    pub friction_high: Option<f64>,
    /// What keeps them from turning loose.
    pub locking: Option<Agent>,
}
