//! What the cover has to stand: climate, bay, engine orders, agents.

use super::outline::Point;
use coaming::material::Agent;
use coaming::prelude::*;

/// The weather side.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Ambient {
    /// Lowest temperature.
    pub lowest: Option<Temperature>,
    /// Highest temperature.
    pub highest: Option<Temperature>,
    /// Sun on the outer face.
    #[possible(0.0..)]
    pub sun: Option<HeatFlux>,
    /// Film coefficient of the outer face.
    #[possible(f64::MIN_POSITIVE..)]
    pub film: Option<HeatTransferCoefficient>,
}

/// The warm side.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Bay {
    /// Temperature in operation.
    pub temperature: Option<Temperature>,
    /// Relative humidity.
    #[possible(0.0..=1.0)]
    pub humidity: Option<f64>,
    /// Film coefficient of the inner face.
    #[possible(f64::MIN_POSITIVE..)]
    pub film: Option<HeatTransferCoefficient>,
    /// True where it breathes.
    pub vented: Option<bool>,
    /// Where it drains, in the cover's plane; an empty list says nowhere.
    pub drains: Option<Vec<Point>>,
    /// Diameter of a drain.
    #[possible(f64::MIN_POSITIVE..)]
    pub drain_diameter: Option<Length>,
    /// Name of the layer that the drains go through.
    pub drain_layer: Option<String>,
    /// Temperature at which it was closed.
    pub closed_at: Option<Temperature>,
    /// Relative humidity at which it was closed.
    #[possible(0.0..=1.0)]
    pub closed_at_humidity: Option<f64>,
    /// Weather at which condensation is looked at.
    pub dew_ambient: Option<Temperature>,
    /// Bay temperature at which condensation is looked at.
    pub dew_temperature: Option<Temperature>,
}

/// A direction in the cover's axes: x to the right and y up as seen from outside, z outward. Its length does not count.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Direction {
    /// Along x.
    pub x: f64,
    /// Along y.
    pub y: f64,
    /// Along z.
    pub z: f64,
}

/// Something that turns, with the multiples of its speed that shake.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Excitation {
    /// What it is.
    pub name: String,
    /// Its speed.
    #[possible(f64::MIN_POSITIVE..)]
    pub speed: Frequency,
    /// The multiples of the speed that are strong.
    #[possible(f64::MIN_POSITIVE..)]
    pub orders: Vec<f64>,
}

/// The service that the cover is made for.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Service {
    /// Temperature at assembly.
    pub assembled_at: Option<Temperature>,
    /// The weather side.
    pub ambient: Option<Ambient>,
    /// The warm side.
    pub bay: Option<Bay>,
    /// What shakes it.
    pub excitations: Option<Vec<Excitation>>,
    /// The agents that reach it.
    pub agents: Option<Vec<Agent>>,
    /// The sealants used on it, by material name.
    pub sealants: Option<Vec<String>>,
    /// How long the sealants cure before they may be loaded: the makers' figure.
    #[possible(f64::MIN_POSITIVE..)]
    #[shown_in("h")]
    pub sealant_cure_time: Option<Time>,
    /// The direction of gravity, as the cover hangs.
    pub gravity: Option<Direction>,
    /// True where one person opens it with one hand.
    pub one_handed: Option<bool>,
}
