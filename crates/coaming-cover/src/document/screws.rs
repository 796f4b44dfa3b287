//! Screw patterns: the screws, the layers they pass, and what they are screwed into.

use super::layer::Sealing;
use super::outline::Point;
use coaming::fastener::{BearingStandard, CountersunkStandard, ScrewSize};
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
