//! What holds a panel: supports, gaskets, latches and stops; and masses on it.

use super::shape::Line;
use crate::document::Point;
use coaming::prelude::*;

/// How one freedom is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Hold {
    /// Not at all.
    Free,
    /// Rigidly.
    Fixed,
    /// By a spring, whose stiffness must be given.
    Elastic,
}

/// A support along a line.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SupportAlong {
    /// Where.
    pub line: Line,
    /// How the deflection is held.
    pub deflection: Hold,
    /// Force per length per deflection, where that is held elastically.
    #[possible(f64::MIN_POSITIVE..)]
    pub deflection_stiffness: Option<Pressure>,
    /// How the slope across the line is held.
    pub slope: Hold,
    /// Moment per length per radian, where the slope is held elastically.
    #[possible(f64::MIN_POSITIVE..)]
    pub slope_stiffness: Option<Force>,
    /// True where displacements in the plane are held too, in every layer; not held if absent.
    pub held_in_plane: Option<bool>,
    /// True where displacements in the plane along the line alone are held; not held if absent.
    pub held_along_in_plane: Option<bool>,
    /// True where displacements in the plane across the line alone are held; not held if absent.
    pub held_across_in_plane: Option<bool>,
    /// True where the line moves across itself in the plane only as one, straight, as an edge guided by a stiff bar; straight lines
    /// only, and what is held across is not also kept straight. Not so if absent.
    pub straight_in_plane: Option<bool>,
}

/// A support at a point.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SupportAt {
    /// Where.
    pub at: Point,
    /// Radius of the washer under which all points are held; a bare point if absent.
    #[possible(0.0..)]
    pub washer_radius: Option<Length>,
    /// How the deflection is held.
    pub deflection: Hold,
    /// Force per deflection, where that is held elastically.
    #[possible(f64::MIN_POSITIVE..)]
    pub deflection_stiffness: Option<ForcePerLength>,
    /// How both slopes are held.
    pub slope: Hold,
    /// Moment per radian, where the slopes are held elastically.
    #[possible(f64::MIN_POSITIVE..)]
    pub slope_stiffness: Option<Torque>,
    /// True where displacements in the plane are held too, in every layer; not held if absent.
    pub held_in_plane: Option<bool>,
}

/// A gasket whose force is proportional to its compression.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LinearLaw {
    /// Force per length per compression.
    #[possible(f64::MIN_POSITIVE..)]
    pub stiffness: Pressure,
}

/// A measured point of a gasket's law.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LawPoint {
    /// Compression.
    #[possible(0.0..)]
    pub compression: Length,
    /// Force per length at that compression.
    #[possible(0.0..)]
    pub force: ForcePerLength,
}

/// A gasket's law by measured points, the first at no compression and no force.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MeasuredLaw {
    /// The points, rising in compression and never falling in force; joined by a monotone cubic.
    pub points: Vec<LawPoint>,
}

/// Force per length of a gasket against its compression.
#[derive(Debug, Clone, PartialEq, OneOf)]
pub enum GasketLaw {
    /// Proportional.
    Linear(LinearLaw),
    /// By measured points.
    Measured(MeasuredLaw),
}

/// Extra gap at a place along a gasket.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GapError {
    /// Distance along the gasket.
    pub along: Length,
    /// Extra gap, positive where the seat is further away.
    pub gap: Length,
}

/// A gasket along a line: it pushes where it is compressed and never pulls.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GasketAlong {
    /// Where it runs.
    pub line: Line,
    /// Its law.
    pub law: GasketLaw,
    /// Height without load.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_height: Length,
    /// Distance from seat to panel where the panel has not deflected.
    pub closed_gap: Length,
    /// Extra gap along the gasket, in order, joined by straight lines and constant past the ends; none if absent.
    pub gap_errors: Option<Vec<GapError>>,
}

/// A latch that draws its point to a deflection, or lets go where it would have to push.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct HeldHeight {
    /// The deflection, positive outward.
    pub deflection: Length,
}

/// A latch that pulls as a spring drawn past the undeflected panel.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct DrawnSpring {
    /// Stiffness of latch and keeper.
    #[possible(f64::MIN_POSITIVE..)]
    pub stiffness: ForcePerLength,
    /// How far it is drawn past the undeflected panel.
    pub draw: Length,
}

/// A latch that pulls with a force.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PulledForce {
    /// The pull, positive inward.
    #[possible(0.0..)]
    pub pull: Force,
}

/// What a latch does; it only ever pulls the panel inward.
#[derive(Debug, Clone, PartialEq, OneOf)]
pub enum LatchAction {
    /// Draws its point to a deflection.
    Height(HeldHeight),
    /// Pulls as a spring.
    Spring(DrawnSpring),
    /// Pulls with a force.
    Force(PulledForce),
}

/// A latch.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LatchAt {
    /// Its name, by which load cases refer to it.
    pub name: String,
    /// Where it holds the panel.
    pub at: Point,
    /// What it does.
    pub action: LatchAction,
}

/// A stop: it pushes the panel outward where that would sink below a height, and never pulls.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct StopAt {
    /// Where.
    pub at: Point,
    /// Deflection at which the panel meets it, positive outward.
    pub deflection: Length,
    /// Its stiffness.
    #[possible(f64::MIN_POSITIVE..)]
    pub stiffness: ForcePerLength,
}

/// A mass at a point, moving with the panel.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MassAt {
    /// Where.
    pub at: Point,
    /// The mass.
    #[possible(0.0..)]
    pub mass: Mass,
}
