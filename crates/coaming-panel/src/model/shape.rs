//! What of a panel decides its mesh and its unknowns, as against the numbers that only fill the equations.

use super::beam::Beam;
use super::gasket::Gasket;
use super::latch::{Latch, LatchAction, PointMass, Stop};
use super::law::Law;
use super::material::Material;
use super::panel::{Joint, JointKind, Layer, Panel};
use super::support::{Hold, LineSupport, PointSupport};

/// A part of a panel whose numbers may be set aside.
trait Part: Clone + PartialEq {
    /// Sets every number that decides neither mesh nor unknowns to the same value.
    fn set_aside_numbers(&mut self);
}

impl Part for Layer {
    fn set_aside_numbers(&mut self) {
        (self.lower_face, self.thickness) = (0.0, 1.0);
        self.material = Material::isotropic(1.0, 0.0, 0.0, 0.0);
    }
}

impl Part for Joint {
    fn set_aside_numbers(&mut self) {
        if let JointKind::Slipping { shear_stiffness } = &mut self.kind {
            *shear_stiffness = if *shear_stiffness > 0.0 { 1.0 } else { 0.0 };
        }
    }
}

impl Part for Beam {
    fn set_aside_numbers(&mut self) {
        *self = Self {
            line: self.line.clone(),
            layer: self.layer,
            youngs_modulus: 1.0,
            shear_modulus: 0.0,
            area: 0.0,
            second_moment_of_area: 0.0,
            torsion_constant: 0.0,
            centroid_height: 0.0,
            density: 0.0,
        };
    }
}

impl Part for Hold {
    fn set_aside_numbers(&mut self) {
        if let Self::Elastic(stiffness) = self {
            *stiffness = if *stiffness > 0.0 { 1.0 } else { *stiffness };
        }
    }
}

impl Part for LineSupport {
    fn set_aside_numbers(&mut self) {
        self.deflection.set_aside_numbers();
        self.slope_across.set_aside_numbers();
    }
}

impl Part for PointSupport {
    fn set_aside_numbers(&mut self) {
        self.deflection.set_aside_numbers();
        self.slopes.set_aside_numbers();
    }
}

impl Part for Gasket {
    fn set_aside_numbers(&mut self) {
        self.law = Law::Linear { stiffness: 1.0 };
        (self.free_height, self.closed_gap) = (1.0, 0.0);
        self.gap_error.clear();
    }
}

impl Part for Latch {
    fn set_aside_numbers(&mut self) {
        self.action = match self.action {
            LatchAction::Height(_) => LatchAction::Height(0.0),
            LatchAction::Spring { .. } => LatchAction::Spring { stiffness: 1.0, draw: 0.0 },
            LatchAction::Force(_) => LatchAction::Force(0.0),
        };
    }
}

impl Part for Stop {
    fn set_aside_numbers(&mut self) {
        (self.height, self.stiffness) = (0.0, 1.0);
    }
}

impl Part for PointMass {
    fn set_aside_numbers(&mut self) {
        self.mass = 0.0;
    }
}

/// Whether two lists of parts differ in numbers alone.
fn alike<P: Part>(one: &[P], other: &[P]) -> bool {
    let bare = |part: &P| {
        let mut part = part.clone();
        part.set_aside_numbers();
        part
    };
    one.len() == other.len() && one.iter().zip(other).all(|(a, b)| a == b || bare(a) == bare(b))
}

/// Whether two panels of one shape differ in nothing but how their gaskets push: the equations are the same.
pub(crate) fn differ_by_gaskets(one: &Panel, other: &Panel) -> bool {
    let lines = |panel: &Panel| panel.gaskets.iter().map(|gasket| gasket.line.clone()).collect::<Vec<_>>();
    let bare = Panel { gaskets: one.gaskets.clone(), ..other.clone() };
    *one == bare && lines(one) == lines(other)
}

/// The first part in which two panels differ by more than numbers. How masses are spread is such a number.
pub(crate) fn other_shape(one: &Panel, other: &Panel) -> Option<&'static str> {
    let checks: [(&'static str, &dyn Fn() -> bool); 12] = [
        ("outline", &|| one.outline == other.outline),
        ("holes", &|| one.holes == other.holes),
        ("layers", &|| alike(&one.layers, &other.layers)),
        ("joints", &|| alike(&one.joints, &other.joints)),
        ("beams", &|| alike(&one.beams, &other.beams)),
        ("line_supports", &|| alike(&one.line_supports, &other.line_supports)),
        ("point_supports", &|| alike(&one.point_supports, &other.point_supports)),
        ("gaskets", &|| alike(&one.gaskets, &other.gaskets)),
        ("latches", &|| alike(&one.latches, &other.latches)),
        ("stops", &|| alike(&one.stops, &other.stops)),
        ("masses", &|| alike(&one.masses, &other.masses)),
        ("marks", &|| one.marks == other.marks),
    ];
    checks.into_iter().find(|(_, same)| !same()).map(|(part, _)| part)
}
