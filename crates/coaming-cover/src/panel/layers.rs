//! What a panel consists of: layers, the joints between them, and beams along lines.

use super::shape::{Line, Shape};
use coaming::prelude::*;

/// A material that is the same in every direction.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct IsotropicMaterial {
    /// Young's modulus.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Poisson's ratio.
    #[possible(-0.99..=0.5)]
    pub poissons_ratio: f64,
}

/// A material with two axes at right angles in the plane.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct OrthotropicMaterial {
    /// Young's modulus along axis 1.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus_1: Pressure,
    /// Young's modulus along axis 2.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus_2: Pressure,
    /// Contraction along axis 2 over extension along axis 1; its size must stay below the root of the moduli's ratio.
    pub poissons_ratio_12: f64,
    /// Shear modulus in the plane.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub shear_modulus: Pressure,
    /// Angle from the x axis to axis 1, counter-clockwise as seen from outside; 0 if absent.
    pub axis_angle: Option<Angle>,
    /// Thermal expansion along axis 2; as along axis 1 if absent.
    pub expansion_2: Option<Expansion>,
}

/// How a layer answers to strain.
#[derive(Debug, Clone, PartialEq, OneOf)]
pub enum Elasticity {
    /// The same in every direction.
    Isotropic(IsotropicMaterial),
    /// Two axes at right angles.
    Orthotropic(OrthotropicMaterial),
}

/// The part of the panel that a layer covers.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Region {
    /// Its outline.
    pub outline: Shape,
    /// Its holes.
    pub holes: Option<Vec<Shape>>,
}

/// One layer of the panel.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PanelLayer {
    /// Its name, by which joints, beams and temperatures refer to it.
    pub name: String,
    /// Height of its inner face along z, from any datum common to all layers and beams; 0 if absent.
    pub inner_face: Option<Length>,
    /// Thickness.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// What it is made of.
    pub material: Elasticity,
    /// Density; without mass if absent, which modes and accelerations then do not feel.
    #[possible(0.0..)]
    pub density: Option<MassDensity>,
    /// Thermal expansion, of an orthotropic layer that along axis 1; needed where the layer has a temperature.
    pub expansion: Option<Expansion>,
    /// Where it is; on the whole panel if absent.
    pub region: Option<Region>,
}

/// Two layers as one piece.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Bonded {
    /// Name of one layer.
    pub lower: String,
    /// Name of the other.
    pub upper: String,
}

/// Two layers that slip on each other against a stiffness.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Slipping {
    /// Name of one layer.
    pub lower: String,
    /// Name of the other.
    pub upper: String,
    /// Shear force per area per slip: of screws, of a soft bond line, or of a soft core (shear modulus over thickness).
    #[possible(0.0..)]
    pub shear_stiffness: ForcePerVolume,
}

/// How two layers are joined where both are present. Layers without a joint slide on each other but deflect together.
#[derive(Debug, Clone, PartialEq, OneOf)]
pub enum LayerJoint {
    /// As one piece.
    Bonded(Bonded),
    /// Slipping against a stiffness.
    Slipping(Slipping),
}

/// A beam along a line: return flange, hem, rib or bar.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BeamAlong {
    /// Where it runs.
    pub line: Line,
    /// Name of the layer that it is attached to.
    pub layer: String,
    /// Young's modulus.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Shear modulus.
    #[shown_in("GPa")]
    #[possible(0.0..)]
    pub shear_modulus: Pressure,
    /// Area of its section.
    #[possible(0.0..)]
    pub area: Area,
    /// Second moment of area about the section's own axis parallel to the panel.
    #[possible(0.0..)]
    pub second_moment_of_area: SecondMomentOfArea,
    /// Torsion constant.
    #[possible(0.0..)]
    pub torsion_constant: SecondMomentOfArea,
    /// Height of the section's centroid along z, from the datum of the layers.
    pub centroid_height: Length,
    /// Density; without mass if absent.
    #[possible(0.0..)]
    pub density: Option<MassDensity>,
}
