//! The document: one description of a whole cover.

use super::latches::Latches;
use super::layer::{Face, Layer};
use super::load_case::LoadCase;
use super::locators::Locator;
use super::material::MaterialOverride;
use super::outline::Outline;
use super::screws::ScrewPattern;
use super::seal::Seal;
use super::service::Service;
use crate::limits::Limits;
use coaming::prelude::*;

/// Where the positions of holes are measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum HolePositions {
    /// On the flat pattern.
    OnTheFlat,
    /// On the folded part.
    OnTheFoldedPart,
}

/// What a thickness includes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum ThicknessMeans {
    /// The bare sheet.
    Bare,
    /// The sheet with its coating.
    Coated,
}

/// The opening that the cover closes.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Opening {
    /// Its outline.
    pub outline: Outline,
    /// Largest deviation from flat of the surface that the gasket lies on.
    #[possible(0.0..)]
    pub flatness: Option<Length>,
}

/// A bonded joint between two layers.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Bond {
    /// Its name.
    pub name: String,
    /// The two layers that it joins.
    pub layers: Vec<String>,
    /// Name of the adhesive.
    pub adhesive: Option<String>,
    /// Thickness of the bond line.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Option<Length>,
    /// Length of one piece.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Option<Length>,
    /// Width.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Option<Length>,
    /// How long it cures before it may be loaded: the maker's figure.
    #[possible(f64::MIN_POSITIVE..)]
    #[shown_in("h")]
    pub cure_time: Option<Time>,
    /// True where the adhesive keeps a metal and a carbon laminate apart by a glass scrim or the like.
    pub insulated: Option<bool>,
}

/// A joint that is filled with sealant.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SealantJoint {
    /// Its name.
    pub name: String,
    /// The two layers between which it lies.
    pub layers: Vec<String>,
    /// Name of the sealant.
    pub sealant: Option<String>,
    /// Width of the joint, across which the layers move.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Option<Length>,
    /// How much narrower it may turn out.
    #[possible(0.0..)]
    pub width_tolerance: Option<Length>,
    /// How deep the sealant stands in it.
    #[possible(f64::MIN_POSITIVE..)]
    pub depth: Option<Length>,
    /// How long it is.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Option<Length>,
}

/// What catches the cover when it slips from the hand.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Tether {
    /// How far it falls before the tether is taut.
    #[possible(0.0..)]
    pub free_fall: Option<Length>,
    /// Stiffness of the tether with its ends.
    #[possible(f64::MIN_POSITIVE..)]
    pub stiffness: Option<ForcePerLength>,
    /// The maker's working load.
    #[possible(f64::MIN_POSITIVE..)]
    pub working_load: Option<Force>,
}

/// What the cover keeps people from.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Hazard {
    /// What it is.
    pub description: Option<String>,
    /// The guard that covers it when the cover is open.
    pub guard: Option<String>,
    /// True where that guard is fixed and needs a tool.
    pub guard_needs_tool: Option<bool>,
}

/// A failing check that the shop accepts. It prints `fail (accepted by …)`, and never as a pass.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Waiver {
    /// Key of the check.
    pub check: String,
    /// Who accepts it.
    pub accepted_by: String,
    /// Why.
    pub reason: String,
}

/// The whole cover. Every field is optional but the structural ones: `version`, `title`, `opening` and `layers`.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Cover {
    /// Version of the document's form: 1.
    #[possible(1.0..=1.0)]
    pub version: u32,
    /// What the cover is called.
    pub title: String,
    /// Revision of the design.
    pub revision: Option<String>,
    /// The face that shows: bends are seen from it, and it is printed with the burr side.
    pub good_face: Option<Face>,
    /// Where the positions of holes are measured.
    pub hole_positions: Option<HolePositions>,
    /// What a thickness includes.
    pub thickness_means: Option<ThicknessMeans>,
    /// The opening.
    pub opening: Opening,
    /// The layers.
    pub layers: Vec<Layer>,
    /// The screw patterns.
    pub screws: Option<Vec<ScrewPattern>>,
    /// The seal.
    pub seal: Option<Seal>,
    /// The latches.
    pub latches: Option<Latches>,
    /// The bonded joints.
    pub bonds: Option<Vec<Bond>>,
    /// The joints that are filled with sealant.
    pub sealant_joints: Option<Vec<SealantJoint>>,
    /// What keeps it in its place along its plane; an empty list says nothing but friction.
    pub locators: Option<Vec<Locator>>,
    /// The tether.
    pub tether: Option<Tether>,
    /// The service.
    pub service: Option<Service>,
    /// The load cases.
    pub load_cases: Option<Vec<LoadCase>>,
    /// What the cover keeps people from.
    pub hazard: Option<Hazard>,
    /// Materials of one's own, or single values of known ones.
    pub materials: Option<Vec<MaterialOverride>>,
    /// Limits that replace those of common practice.
    pub limits: Option<Limits>,
    /// Failing checks that the shop accepts.
    pub waivers: Option<Vec<Waiver>>,
}
