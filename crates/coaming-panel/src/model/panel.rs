//! The panel as the caller describes it.

use super::beam::Beam;
use super::gasket::Gasket;
use super::latch::{Latch, PointMass, Stop};
use super::material::Material;
use super::spread_mass::SpreadMass;
use super::support::{LineSupport, PointSupport};
use crate::error::{PanelError, checked, finite, not_negative, positive};
use crate::geometry::outline::Outline;
use crate::geometry::point::Point;

/// The area of one layer.
#[derive(Debug, Clone, PartialEq)]
pub struct Region {
    /// Its outline.
    pub outline: Outline,
    /// Its holes.
    pub holes: Vec<Outline>,
}

/// One layer of the panel.
#[derive(Debug, Clone, PartialEq)]
pub struct Layer {
    /// Where it is; absent: on the whole panel.
    pub region: Option<Region>,
    /// Height of its lower face along z, from any datum common to all layers and beams, m.
    pub lower_face: f64,
    /// Thickness, m.
    pub thickness: f64,
    /// What it is made of.
    pub material: Material,
}

impl Layer {
    /// A layer on the whole panel whose lower face is the datum.
    pub fn whole(thickness: f64, material: Material) -> Self {
        Self { region: None, lower_face: 0.0, thickness, material }
    }

    /// Height of its middle.
    pub(crate) fn middle(&self) -> f64 {
        self.lower_face + 0.5 * self.thickness
    }
}

/// How two layers are joined where both are present. Layers without a joint slide on each other but deflect together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Joint {
    /// Index of one layer.
    pub lower: usize,
    /// Index of the other.
    pub upper: usize,
    /// How.
    pub kind: JointKind,
}

/// Kind of joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum JointKind {
    /// One piece. Layers bonded to each other, directly or over others, form one group; where members of a group overlap they bend with plane
    /// sections, even across a gap that a layer between them leaves open there.
    Bonded,
    /// Slip resisted by a shear stiffness per area, N/m3: of fasteners, of a soft bond line, or of a soft core (shear modulus over
    /// thickness, with the faces as the two layers).
    Slipping {
        /// Shear force per area per slip.
        shear_stiffness: f64,
    },
}

/// One flat panel and all that holds it.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// Outline of the panel.
    pub outline: Outline,
    /// Holes through all layers.
    pub holes: Vec<Outline>,
    /// Its layers; together they cover the panel.
    pub layers: Vec<Layer>,
    /// How layers are joined.
    pub joints: Vec<Joint>,
    /// Beams along lines.
    pub beams: Vec<Beam>,
    /// Supports along lines.
    pub line_supports: Vec<LineSupport>,
    /// Supports at points.
    pub point_supports: Vec<PointSupport>,
    /// Gaskets.
    pub gaskets: Vec<Gasket>,
    /// Latches.
    pub latches: Vec<Latch>,
    /// Stops.
    pub stops: Vec<Stop>,
    /// Masses at points.
    pub masses: Vec<PointMass>,
    /// Masses spread over regions.
    pub spread_masses: Vec<SpreadMass>,
    /// Further points at which the mesh shall have a corner, as under a point force.
    pub marks: Vec<Point>,
}

impl Panel {
    /// A panel of one layer, held by nothing yet.
    pub fn new(outline: Outline, layer: Layer) -> Self {
        Self {
            outline,
            holes: Vec::new(),
            layers: vec![layer],
            joints: Vec::new(),
            beams: Vec::new(),
            line_supports: Vec::new(),
            point_supports: Vec::new(),
            gaskets: Vec::new(),
            latches: Vec::new(),
            stops: Vec::new(),
            masses: Vec::new(),
            spread_masses: Vec::new(),
            marks: Vec::new(),
        }
    }

    /// The first part, such as `"latches"`, in which another panel differs by more than numbers; none where a solver that has meshed the one
    /// takes the other on those meshes by [`update`](crate::Solver::update).
    pub fn other_shape(&self, other: &Self) -> Option<&'static str> {
        super::shape::other_shape(self, other)
    }

    /// Checks every number that stands by itself.
    pub(crate) fn check(&self) -> Result<(), PanelError> {
        if self.layers.is_empty() {
            return Err(PanelError::Missing {
                name: "layers".into(),
                reason: "a panel needs a layer".into(),
            });
        }
        checked("layers: number", self.layers.len() as f64, "60 or fewer", |n| n <= 60.0)?;
        for (i, layer) in self.layers.iter().enumerate() {
            let part = format!("layer {i}");
            positive(format!("{part}: thickness"), layer.thickness)?;
            finite(format!("{part}: lower_face"), layer.lower_face)?;
            layer.material.check(&part)?;
        }
        let no_layer = |name: String, layer: usize| PanelError::Missing {
            name,
            reason: format!("there is no layer {layer}"),
        };
        for (i, joint) in self.joints.iter().enumerate() {
            let name = format!("joint {i}");
            for layer in [joint.lower, joint.upper] {
                if layer >= self.layers.len() {
                    return Err(no_layer(name, layer));
                }
            }
            if joint.lower == joint.upper {
                return Err(PanelError::Missing { name, reason: "joins a layer to itself".into() });
            }
            if let JointKind::Slipping { shear_stiffness } = joint.kind {
                not_negative(format!("{name}: shear_stiffness"), shear_stiffness)?;
            }
        }
        for (i, beam) in self.beams.iter().enumerate() {
            beam.check(&format!("beam {i}"))?;
            if beam.layer >= self.layers.len() {
                return Err(no_layer(format!("beam {i}"), beam.layer));
            }
        }
        for (i, support) in self.line_supports.iter().enumerate() {
            support.deflection.check(format!("line support {i}: deflection stiffness"))?;
            support.slope_across.check(format!("line support {i}: turning stiffness"))?;
        }
        for (i, support) in self.point_supports.iter().enumerate() {
            support.check(&format!("point support {i}"))?;
        }
        for (i, gasket) in self.gaskets.iter().enumerate() {
            gasket.check(&format!("gasket {i}"))?;
        }
        for (i, latch) in self.latches.iter().enumerate() {
            latch.check(&format!("latch {i}"))?;
        }
        for (i, stop) in self.stops.iter().enumerate() {
            stop.check(&format!("stop {i}"))?;
        }
        for (i, mass) in self.masses.iter().enumerate() {
            not_negative(format!("mass {i}: mass"), mass.mass)?;
        }
        Ok(())
    }

    /// All points that must be vertices of the mesh, with what they are.
    pub(crate) fn marked_points(&self) -> Vec<(String, Point)> {
        let mut all = Vec::new();
        let mut add = |kind: &str, points: Vec<Point>| {
            all.extend(points.into_iter().enumerate().map(|(i, p)| (format!("{kind} {i}"), p)));
        };
        add("point support", self.point_supports.iter().map(|s| s.at).collect());
        add("latch", self.latches.iter().map(|l| l.at).collect());
        add("stop", self.stops.iter().map(|s| s.at).collect());
        add("mass", self.masses.iter().map(|m| m.at).collect());
        add("mark", self.marks.clone());
        all
    }
}
