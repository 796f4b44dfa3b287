//! The layers of a cover: sheet, window, frame, liner, stiffener.

use super::outline::{Outline, Point};
use coaming::prelude::*;
use coaming::sheet::BendDirection;

/// What a layer is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum LayerRole {
    /// The sheet or moulded skin that closes the opening.
    Skin,
    /// A window.
    Pane,
    /// A frame or ring that holds another layer.
    Frame,
    /// A strip or rib that stiffens.
    Stiffener,
    /// A liner or facing.
    Liner,
}

/// How a layer is held to the skin.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Joining {
    /// Glued over its whole face.
    Bonded,
    /// Held by its screws.
    Screwed,
}

/// The side of the skin that a layer lies on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Face {
    /// Towards the bay.
    Inner,
    /// Towards the weather.
    Outer,
}

/// The side of a rectangular outline along which a bend runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Edge {
    /// At the smallest x.
    Left,
    /// At the largest x.
    Right,
    /// At the largest y.
    Top,
    /// At the smallest y.
    Bottom,
}

/// The direction in which a sheet was rolled, or the fibres of a laminate run, on the blank.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Grain {
    /// Along x.
    AlongX,
    /// Along y.
    AlongY,
    /// Either way: it does not matter.
    EitherWay,
}

/// What keeps water out of a hole through the outer layer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Sealing {
    /// Nothing: it is open.
    Nothing,
    /// A bead of sealant.
    Sealant,
    /// A washer with a sealing face.
    SealingWasher,
    /// A gasket or a strip of its own.
    Gasket,
}

/// An opening through a layer.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CutOut {
    /// Its shape.
    pub outline: Outline,
    /// Its centre; the origin if absent. A polygon has its own coordinates.
    pub at: Option<Point>,
    /// What seals it against what covers it.
    pub sealed_by: Option<Sealing>,
    /// Width of the bead of sealant round it.
    #[possible(f64::MIN_POSITIVE..)]
    pub bead_width: Option<Length>,
    /// Depth of the bead of sealant round it.
    #[possible(f64::MIN_POSITIVE..)]
    pub bead_depth: Option<Length>,
}

/// A return flange along one edge. The layer's outline is its outside size after bending.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Bend {
    /// The edge that it runs along.
    pub edge: Edge,
    /// Bend angle: the angle that the sheet is turned through.
    #[possible(f64::MIN_POSITIVE..=PI)]
    #[also(included_angle, coaming::sheet::supplement)]
    pub bend_angle: Option<Angle>,
    /// Inside radius.
    #[possible(0.0..)]
    pub inside_radius: Option<Length>,
    /// Distance of the neutral axis from the inside face over the thickness.
    #[possible(f64::MIN_POSITIVE..1.0)]
    pub k_factor: Option<f64>,
    /// Which way it goes.
    pub bend_direction: Option<BendDirection>,
    /// Outside height of the flange, to the virtual sharp.
    #[possible(f64::MIN_POSITIVE..)]
    pub flange: Option<Length>,
    /// Distance from the edge of the nearest hole to the bent-up face.
    #[possible(0.0..)]
    pub nearest_hole: Option<Length>,
    /// Opening of the die that it is bent over.
    #[possible(f64::MIN_POSITIVE..)]
    pub die_opening: Option<Length>,
}

/// The flat size that was drawn or ordered.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Blank {
    /// Size along x.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Size along y.
    #[possible(f64::MIN_POSITIVE..)]
    pub height: Length,
}

/// One layer.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Layer {
    /// Its name, by which screws, bonds and load cases call it.
    pub name: String,
    /// What it is for.
    pub role: LayerRole,
    /// Its outline: outside size, after bending.
    pub outline: Outline,
    /// Its centre; the origin if absent.
    pub at: Option<Point>,
    /// Thickness, bare or coated as the document says.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Option<Length>,
    /// Largest deviation of the thickness, either way.
    #[possible(0.0..)]
    pub thickness_tolerance: Option<Length>,
    /// Name of its material.
    pub material: Option<String>,
    /// Openings through it.
    pub cut_outs: Option<Vec<CutOut>>,
    /// Return flanges.
    pub bends: Option<Vec<Bend>>,
    /// The flat size that was drawn.
    pub blank: Option<Blank>,
    /// The direction of the grain or of the fibres on the blank.
    pub grain: Option<Grain>,
    /// The face on which the burr of cutting lies.
    pub burr_face: Option<Face>,
    /// Which side of the skin it lies on.
    pub face: Option<Face>,
    /// How it is held to the skin.
    pub joining: Option<Joining>,
    /// Into how many pieces it is divided along its length.
    #[possible(1.0..)]
    pub pieces: Option<u32>,
    /// Gap between two pieces.
    #[possible(0.0..)]
    pub piece_gap: Option<Length>,
    /// Width of the free span of a pane.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_width: Option<Length>,
    /// Height of the free span of a pane.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_height: Option<Length>,
    /// Deviation of an edge of a pane and of the opening that it laps, both together.
    #[possible(0.0..)]
    pub edge_tolerance: Option<Length>,
    /// Largest deviation from flat, as bought or made.
    #[possible(0.0..)]
    pub flatness: Option<Length>,
    /// Mass; from volume and density if absent.
    #[possible(0.0..)]
    pub mass: Option<Mass>,
    /// Share of the sun that its outer face absorbs.
    #[possible(0.0..=1.0)]
    pub solar_absorptance: Option<f64>,
    /// Second moment of area of its edge, which bends over the seal between two latches: the flange with the strip of
    /// sheet out to the seal line.
    #[possible(f64::MIN_POSITIVE..)]
    pub edge_second_moment: Option<SecondMomentOfArea>,
    /// Humidity at which it was made or dried.
    #[possible(0.0..=1.0)]
    pub made_at_humidity: Option<f64>,
}

impl Layer {
    /// Area of the outline less its cut-outs, in square metres.
    pub fn net_area(&self) -> f64 {
        let cut: f64 = self.cut_outs.iter().flatten().map(|cut_out| cut_out.outline.area()).sum();
        (self.outline.area() - cut).max(0.0)
    }
}
