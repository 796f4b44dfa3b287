//! What of a panel decides its mesh and its unknowns, as against the numbers that only fill the equations.

use super::beam::Beam;
use super::latch::LatchAction;
use super::law::Law;
use super::material::Material;
use super::panel::{JointKind, Panel};
use super::support::Hold;

/// The panel with every number that decides neither mesh nor unknowns set to the same value.
fn shape(panel: &Panel) -> Panel {
    let hold = |hold: Hold| match hold {
        Hold::Elastic(k) if k > 0.0 => Hold::Elastic(1.0),
        other => other,
    };
    let mut made = panel.clone();
    for layer in &mut made.layers {
        (layer.lower_face, layer.thickness) = (0.0, 1.0);
        layer.material = Material::isotropic(1.0, 0.0, 0.0, 0.0);
    }
    for joint in &mut made.joints {
        if let JointKind::Slipping { shear_stiffness } = &mut joint.kind {
            *shear_stiffness = if *shear_stiffness > 0.0 { 1.0 } else { 0.0 };
        }
    }
    for beam in &mut made.beams {
        *beam = Beam {
            line: beam.line.clone(),
            layer: beam.layer,
            youngs_modulus: 1.0,
            shear_modulus: 0.0,
            area: 0.0,
            second_moment_of_area: 0.0,
            torsion_constant: 0.0,
            centroid_height: 0.0,
            density: 0.0,
        };
    }
    for support in &mut made.line_supports {
        (support.deflection, support.slope_across) = (hold(support.deflection), hold(support.slope_across));
    }
    for support in &mut made.point_supports {
        (support.deflection, support.slopes) = (hold(support.deflection), hold(support.slopes));
    }
    for gasket in &mut made.gaskets {
        gasket.law = Law::Linear { stiffness: 1.0 };
        (gasket.free_height, gasket.closed_gap) = (1.0, 0.0);
        gasket.gap_error.clear();
    }
    for latch in &mut made.latches {
        latch.action = match latch.action {
            LatchAction::Height(_) => LatchAction::Height(0.0),
            LatchAction::Spring { .. } => LatchAction::Spring { stiffness: 1.0, draw: 0.0 },
            LatchAction::Force(_) => LatchAction::Force(0.0),
        };
    }
    for stop in &mut made.stops {
        (stop.height, stop.stiffness) = (0.0, 1.0);
    }
    for mass in &mut made.masses {
        mass.mass = 0.0;
    }
    made.spread_masses.clear();
    made
}

/// Whether two panels of one shape differ in nothing but how their gaskets push: the equations are the same.
pub(crate) fn differ_by_gaskets(one: &Panel, other: &Panel) -> bool {
    let lines = |panel: &Panel| panel.gaskets.iter().map(|gasket| gasket.line.clone()).collect::<Vec<_>>();
    let bare = Panel { gaskets: one.gaskets.clone(), ..other.clone() };
    *one == bare && lines(one) == lines(other)
}

/// The first part in which two panels differ by more than numbers.
pub(crate) fn other_shape(one: &Panel, other: &Panel) -> Option<&'static str> {
    let (a, b) = (shape(one), shape(other));
    [
        ("outline", a.outline == b.outline),
        ("holes", a.holes == b.holes),
        ("layers", a.layers == b.layers),
        ("joints", a.joints == b.joints),
        ("beams", a.beams == b.beams),
        ("line_supports", a.line_supports == b.line_supports),
        ("point_supports", a.point_supports == b.point_supports),
        ("gaskets", a.gaskets == b.gaskets),
        ("latches", a.latches == b.latches),
        ("stops", a.stops == b.stops),
        ("masses", a.masses == b.masses),
        ("marks", a.marks == b.marks),
    ]
    .into_iter()
    .find(|(_, same)| !same)
    .map(|(part, _)| part)
}
