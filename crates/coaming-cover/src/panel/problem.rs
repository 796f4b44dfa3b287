//! The document of one panel by itself.

use super::holding::{GasketAlong, LatchAt, MassAt, StopAt, SupportAlong, SupportAt};
use super::layers::{BeamAlong, LayerJoint, PanelLayer};
use super::loads::PanelLoadCase;
use super::shape::Shape;
use crate::document::{Form, read_as};
use coaming::prelude::*;

/// How fine and how sure a solution is to be.
#[derive(Debug, Clone, PartialEq, Fields, Default)]
pub struct PanelSettings {
    /// Largest estimated error accepted, over the largest deflection; 0.005 if absent.
    #[possible(1e-6..=0.5)]
    pub tolerance: Option<f64>,
    /// An estimated error of the deflection that is accepted whatever its share, as a length; none if absent. It serves answers under
    /// loads, not factors of buckling and frequencies.
    #[possible(0.0..)]
    pub absolute_tolerance: Option<Length>,
    /// About how many triangles the first mesh has; 120 if absent.
    #[possible(16.0..=20_000.0)]
    pub first_triangles: Option<u32>,
    /// No refined mesh has more triangles than this; 150 000 if absent.
    #[possible(64.0..=1_000_000.0)]
    pub most_triangles: Option<u32>,
}

/// One flat panel, all that holds it, and the loads on it. Points are in one plane, seen from outside, x to the right and y
/// up; z and deflections are positive outward, pressures where they push the panel onto its seal, compression closing.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PanelProblem {
    /// Version of the document's form: 1.
    #[possible(1.0..=1.0)]
    pub version: u32,
    /// What the panel is called.
    pub title: String,
    /// Its outline.
    pub outline: Shape,
    /// Holes through all layers.
    pub holes: Option<Vec<Shape>>,
    /// Its layers; together they cover the panel.
    pub layers: Vec<PanelLayer>,
    /// How layers are joined.
    pub joints: Option<Vec<LayerJoint>>,
    /// Beams along lines.
    pub beams: Option<Vec<BeamAlong>>,
    /// Supports along lines.
    pub line_supports: Option<Vec<SupportAlong>>,
    /// Supports at points.
    pub point_supports: Option<Vec<SupportAt>>,
    /// Gaskets.
    pub gaskets: Option<Vec<GasketAlong>>,
    /// Latches.
    pub latches: Option<Vec<LatchAt>>,
    /// Stops.
    pub stops: Option<Vec<StopAt>>,
    /// Masses at points.
    pub masses: Option<Vec<MassAt>>,
    /// The load cases.
    pub load_cases: Vec<PanelLoadCase>,
    /// How fine and how sure the solution is to be.
    pub settings: Option<PanelSettings>,
}

/// Reads the document of a panel, TOML or JSON.
///
/// # Errors
/// The first fault of syntax, key, unit or range, as [`Error::InDocument`] with line and column.
pub fn read_panel(text: &str, form: Form) -> Result<PanelProblem, Error> {
    read_as(text, form)
}

/// Reads the document of one load case, TOML or JSON, to be solved on a panel beside that panel's own.
///
/// # Errors
/// As [`read_panel`].
pub fn read_load_case(text: &str, form: Form) -> Result<PanelLoadCase, Error> {
    read_as(text, form)
}
