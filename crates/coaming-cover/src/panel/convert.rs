//! A panel of the document as the solver's, in SI numbers and with the solver's signs.

use super::convert_shape::{area, edge, line, outline, point};
use super::holding::{GasketLaw, Hold, LatchAction};
use super::layers::{Elasticity, LayerJoint, PanelLayer};
use super::loads::PanelLoadCase;
use super::problem::PanelProblem;
use coaming::declaration::nearest::nearest;
use coaming::prelude::*;
use coaming_panel as solver;

/// The entries of a list that may be absent.
pub(super) fn all<T>(list: &Option<Vec<T>>) -> &[T] {
    list.as_deref().unwrap_or_default()
}

/// The solver's panel, and the path of each of its marks.
pub(super) fn panel(problem: &PanelProblem) -> Result<(solver::Panel, Vec<String>), Error> {
    let layer =
        |name: &str, path: String| index(problem.layers.iter().map(|layer| layer.name.as_str()), name, path);
    distinct("layers", problem.layers.iter().map(|layer| layer.name.as_str()))?;
    distinct("latches", all(&problem.latches).iter().map(|latch| latch.name.as_str()))?;
    let mut layers = Vec::with_capacity(problem.layers.len());
    for (nth, given) in problem.layers.iter().enumerate() {
        layers.push(one_layer(given, &format!("layers[{nth}]"))?);
    }
    let mut joints = Vec::new();
    for (nth, joint) in all(&problem.joints).iter().enumerate() {
        let (way, lower, upper, kind) = match joint {
            LayerJoint::Bonded(joint) => ("bonded", &joint.lower, &joint.upper, solver::JointKind::Bonded),
            LayerJoint::Slipping(joint) => {
                let shear_stiffness = joint.shear_stiffness.value;
                ("slipping", &joint.lower, &joint.upper, solver::JointKind::Slipping { shear_stiffness })
            }
        };
        let path = format!("joints[{nth}].{way}");
        let (lower, upper) = (layer(lower, format!("{path}.lower"))?, layer(upper, format!("{path}.upper"))?);
        joints.push(solver::Joint { lower, upper, kind });
    }
    let mut beams = Vec::new();
    for (nth, beam) in all(&problem.beams).iter().enumerate() {
        let path = format!("beams[{nth}]");
        beams.push(solver::Beam {
            line: line(&beam.line, &format!("{path}.line"))?,
            layer: layer(&beam.layer, format!("{path}.layer"))?,
            youngs_modulus: beam.youngs_modulus.value,
            shear_modulus: beam.shear_modulus.value,
            area: beam.area.value,
            second_moment_of_area: beam.second_moment_of_area.value,
            torsion_constant: beam.torsion_constant.value,
            centroid_height: beam.centroid_height.value,
            density: beam.density.map_or(0.0, |density| density.value),
        });
    }
    let mut panel = solver::Panel {
        outline: outline(&problem.outline, "outline")?,
        holes: outlines(all(&problem.holes), "holes")?,
        layers,
        joints,
        beams,
        line_supports: line_supports(problem)?,
        point_supports: point_supports(problem)?,
        gaskets: gaskets(problem)?,
        latches: all(&problem.latches).iter().map(latch).collect(),
        stops: all(&problem.stops)
            .iter()
            .map(|stop| solver::Stop {
                at: point(&stop.at),
                height: stop.deflection.value,
                stiffness: stop.stiffness.value,
            })
            .collect(),
        masses: all(&problem.masses)
            .iter()
            .map(|mass| solver::PointMass { at: point(&mass.at), mass: mass.mass.value })
            .collect(),
        spread_masses: Vec::new(),
        marks: Vec::new(),
    };
    let marks = marks(problem, &panel);
    let (paths, points) = marks.into_iter().unzip();
    panel.marks = points;
    Ok((panel, paths))
}

/// Points under forces, each once, where nothing else puts a corner of the mesh.
fn marks(problem: &PanelProblem, panel: &solver::Panel) -> Vec<(String, solver::Point)> {
    let mut taken: Vec<solver::Point> = (panel.point_supports.iter().map(|support| support.at))
        .chain(panel.latches.iter().map(|latch| latch.at))
        .chain(panel.stops.iter().map(|stop| stop.at))
        .chain(panel.masses.iter().map(|mass| mass.at))
        .collect();
    let mut marks = Vec::new();
    for (k, case) in problem.load_cases.iter().enumerate() {
        for (nth, force) in all(&case.point_forces).iter().enumerate() {
            let at = point(&force.at);
            if !taken.contains(&at) {
                taken.push(at);
                marks.push((format!("load_cases[{k}].point_forces[{nth}]"), at));
            }
        }
    }
    marks
}

fn outlines(shapes: &[super::shape::Shape], path: &str) -> Result<Vec<solver::Outline>, Error> {
    shapes.iter().enumerate().map(|(nth, shape)| outline(shape, &format!("{path}[{nth}]"))).collect()
}

fn one_layer(layer: &PanelLayer, path: &str) -> Result<solver::Layer, Error> {
    let density = layer.density.map_or(0.0, |density| density.value);
    let expansion = layer.expansion.map_or(0.0, |expansion| expansion.value);
    let material = match &layer.material {
        Elasticity::Isotropic(material) => solver::Material::isotropic(
            material.youngs_modulus.value,
            material.poissons_ratio,
            density,
            expansion,
        ),
        Elasticity::Orthotropic(material) => solver::Material {
            youngs_modulus_1: material.youngs_modulus_1.value,
            youngs_modulus_2: material.youngs_modulus_2.value,
            poissons_ratio_12: material.poissons_ratio_12,
            shear_modulus: material.shear_modulus.value,
            axis_angle: material.axis_angle.map_or(0.0, |angle| angle.value),
            density,
            expansion_1: expansion,
            expansion_2: material.expansion_2.map_or(expansion, |expansion| expansion.value),
        },
    };
    let region = layer.region.as_ref().map(|region| {
        Ok(solver::Region {
            outline: outline(&region.outline, &format!("{path}.region.outline"))?,
            holes: outlines(all(&region.holes), &format!("{path}.region.holes"))?,
        })
    });
    Ok(solver::Layer {
        region: region.transpose()?,
        lower_face: layer.inner_face.map_or(0.0, |height| height.value),
        thickness: layer.thickness.value,
        material,
    })
}

/// How a freedom is held; a stiffness stands exactly where it is held elastically.
fn hold(hold: Hold, stiffness: Option<f64>, path: &str) -> Result<solver::Hold, Error> {
    match (hold, stiffness) {
        (Hold::Free, None) => Ok(solver::Hold::Free),
        (Hold::Fixed, None) => Ok(solver::Hold::Fixed),
        (Hold::Elastic, Some(stiffness)) => Ok(solver::Hold::Elastic(stiffness)),
        (Hold::Elastic, None) => Err(Error::Missing {
            field: format!("{path}_stiffness"),
            needed: "the stiffness of what holds elastically".to_owned(),
        }),
        (Hold::Free | Hold::Fixed, Some(_)) => Err(Error::inconsistent(
            format!("{path}, {path}_stiffness"),
            "a stiffness goes with `elastic` alone",
        )),
    }
}

fn line_supports(problem: &PanelProblem) -> Result<Vec<solver::LineSupport>, Error> {
    let one = |(nth, support): (usize, &super::holding::SupportAlong)| {
        let path = format!("line_supports[{nth}]");
        let deflection = support.deflection_stiffness.map(|stiffness| stiffness.value);
        let slope = support.slope_stiffness.map(|stiffness| stiffness.value);
        let [both, along, across, straight] = [
            support.held_in_plane,
            support.held_along_in_plane,
            support.held_across_in_plane,
            support.straight_in_plane,
        ]
        .map(|said| said == Some(true));
        Ok(solver::LineSupport {
            line: line(&support.line, &format!("{path}.line"))?,
            deflection: hold(support.deflection, deflection, &format!("{path}.deflection"))?,
            slope_across: hold(support.slope, slope, &format!("{path}.slope"))?,
            in_plane_along: both || along,
            in_plane_across: both || across,
            in_plane_straight: straight,
        })
    };
    all(&problem.line_supports).iter().enumerate().map(one).collect()
}

fn point_supports(problem: &PanelProblem) -> Result<Vec<solver::PointSupport>, Error> {
    let one = |(nth, support): (usize, &super::holding::SupportAt)| {
        let path = format!("point_supports[{nth}]");
        let deflection = support.deflection_stiffness.map(|stiffness| stiffness.value);
        let slope = support.slope_stiffness.map(|stiffness| stiffness.value);
        Ok(solver::PointSupport {
            at: point(&support.at),
            washer_radius: support.washer_radius.map_or(0.0, |radius| radius.value),
            deflection: hold(support.deflection, deflection, &format!("{path}.deflection"))?,
            slopes: hold(support.slope, slope, &format!("{path}.slope"))?,
            in_plane: support.held_in_plane == Some(true),
        })
    };
    all(&problem.point_supports).iter().enumerate().map(one).collect()
}

fn gaskets(problem: &PanelProblem) -> Result<Vec<solver::Gasket>, Error> {
    let one = |(nth, gasket): (usize, &super::holding::GasketAlong)| {
        let law = match &gasket.law {
            GasketLaw::Linear(law) => solver::Law::Linear { stiffness: law.stiffness.value },
            GasketLaw::Measured(law) => solver::Law::Points(
                law.points.iter().map(|point| (point.compression.value, point.force.value)).collect(),
            ),
        };
        Ok(solver::Gasket {
            line: line(&gasket.line, &format!("gaskets[{nth}].line"))?,
            law,
            free_height: gasket.free_height.value,
            closed_gap: gasket.closed_gap.value,
            gap_error: all(&gasket.gap_errors)
                .iter()
                .map(|error| (error.along.value, error.gap.value))
                .collect(),
        })
    };
    all(&problem.gaskets).iter().enumerate().map(one).collect()
}

fn latch(latch: &super::holding::LatchAt) -> solver::Latch {
    let action = match &latch.action {
        LatchAction::Height(held) => solver::LatchAction::Height(held.deflection.value),
        LatchAction::Spring(spring) => {
            solver::LatchAction::Spring { stiffness: spring.stiffness.value, draw: spring.draw.value }
        }
        LatchAction::Force(force) => solver::LatchAction::Force(force.pull.value),
    };
    solver::Latch { at: point(&latch.at), action }
}

/// The solver's load. Its pressures are positive outward, those of the document inward: the sign turns here and nowhere else.
pub(super) fn load(problem: &PanelProblem, case: &PanelLoadCase, path: &str) -> Result<solver::Load, Error> {
    let mut pressures = Vec::new();
    for (nth, given) in all(&case.pressures).iter().enumerate() {
        let per_length = |increase: Option<ForcePerVolume>| increase.map_or(0.0, |increase| -increase.value);
        let region = given.region.as_ref();
        let region = region.map(|shape| outline(shape, &format!("{path}.pressures[{nth}].region")));
        pressures.push(solver::Pressure {
            at_origin: -given.pressure.value,
            gradient: solver::Point::new(
                per_length(given.increase_along_x),
                per_length(given.increase_along_y),
            ),
            region: region.transpose()?,
        });
    }
    for (nth, given) in all(&case.patches).iter().enumerate() {
        let region = outline(&given.patch, &format!("{path}.patches[{nth}].patch"))?;
        let at_origin = given.force.value / area(&region);
        // A patch without area: the solver refuses its outline, with the place.
        let at_origin = if at_origin.is_finite() { at_origin } else { 0.0 };
        pressures.push(solver::Pressure {
            at_origin,
            gradient: solver::Point::default(),
            region: Some(region),
        });
    }
    let mut line_forces = Vec::new();
    for (nth, given) in all(&case.line_forces).iter().enumerate() {
        let line = line(&given.line, &format!("{path}.line_forces[{nth}].line"))?;
        line_forces.push(solver::LineForce { line, force: given.force.value });
    }
    let layer =
        |name: &str, path: String| index(problem.layers.iter().map(|layer| layer.name.as_str()), name, path);
    let mut temperatures = Vec::new();
    for (nth, given) in all(&case.temperatures).iter().enumerate() {
        let path = format!("{path}.temperatures[{nth}].layer");
        let layer = layer(&given.layer, path)?;
        if problem.layers.get(layer).is_some_and(|layer| layer.expansion.is_none()) {
            return Err(Error::Missing {
                field: format!("layers[{layer}].expansion"),
                needed: "the thermal expansion of a layer that has a temperature".to_owned(),
            });
        }
        let difference = given.gradient.map_or(0.0, |gradient| gradient.value);
        temperatures.push(solver::LayerTemperature { layer, rise: given.rise.value, difference });
    }
    let mut growths = Vec::new();
    for (nth, given) in all(&case.growths).iter().enumerate() {
        let difference_1 = given.gradient.unwrap_or(0.0);
        growths.push(solver::LayerGrowth {
            layer: layer(&given.layer, format!("{path}.growths[{nth}].layer"))?,
            along_1: given.strain,
            along_2: given.strain_2.unwrap_or(given.strain),
            difference_1,
            difference_2: given.gradient_2.unwrap_or(difference_1),
        });
    }
    let mut edge_forces = Vec::new();
    for (nth, given) in all(&case.edge_forces).iter().enumerate() {
        let per_length = |force: Option<ForcePerLength>| force.map_or(0.0, |force| force.value);
        edge_forces.push(solver::EdgeForce {
            line: edge(&given.edge),
            layer: layer(&given.layer, format!("{path}.edge_forces[{nth}].layer"))?,
            outward: per_length(given.outward),
            force: solver::Point::new(per_length(given.along_x), per_length(given.along_y)),
        });
    }
    let moved = |length: Option<Length>| length.map_or(0.0, |length| length.value);
    let mut missing_latches = Vec::new();
    for (nth, name) in all(&case.missing_latches).iter().enumerate() {
        let names = all(&problem.latches).iter().map(|latch| latch.name.as_str());
        missing_latches.push(index(names, name, format!("{path}.missing_latches[{nth}]"))?);
    }
    Ok(solver::Load {
        pressures,
        point_forces: all(&case.point_forces)
            .iter()
            .map(|force| solver::PointForce { at: point(&force.at), force: force.force.value })
            .collect(),
        line_forces,
        edge_moments: all(&case.edge_moments)
            .iter()
            .map(|given| solver::EdgeMoment { line: edge(&given.edge), moment: given.moment.value })
            .collect(),
        normal_acceleration: case.normal_acceleration.map_or(0.0, |acceleration| acceleration.value),
        temperatures,
        growths,
        edge_forces,
        support_movements: all(&case.support_movements)
            .iter()
            .map(|given| solver::SupportMovement {
                support: given.support as usize,
                movement: solver::Point::new(moved(given.along_x), moved(given.along_y)),
            })
            .collect(),
        missing_latches,
    })
}

/// The place of a name in a list.
pub(super) fn index<'a>(
    names: impl Iterator<Item = &'a str> + Clone,
    name: &str,
    field: String,
) -> Result<usize, Error> {
    names.clone().position(|known| known == name).ok_or_else(|| Error::NotAnOption {
        field,
        value: name.chars().take(60).collect(),
        accepted: names.clone().take(20).collect::<Vec<_>>().join(", "),
        nearest: nearest(name, names).map(str::to_owned),
    })
}

/// Refuses a name that stands twice: it could not be referred to.
fn distinct<'a>(list: &str, names: impl Iterator<Item = &'a str>) -> Result<(), Error> {
    let mut seen = std::collections::BTreeMap::new();
    for (nth, name) in names.enumerate() {
        if let Some(first) = seen.insert(name, nth) {
            return Err(Error::inconsistent(
                format!("{list}[{first}].name, {list}[{nth}].name"),
                "each needs a name of its own",
            ));
        }
    }
    Ok(())
}
