//! The solver's answers as solutions with units.

use super::convert::all;
use super::problem::PanelProblem;
use super::solution::{
    BalanceLeft, Buckling, BucklingMode, CaseSolution, CriticalRise, CriticalTemperature, GasketState,
    LatchState, LayerStresses, LengthAt, MembraneForceAt, MeshError, MeshField, MomentAt, NaturalMode,
    NaturalModes, OpeningTravel, StressAt, SupportReaction,
};
use crate::document::Point;
use coaming::declaration::{Field, Node};
use coaming::prelude::*;
use coaming_panel as solver;

/// Refuses a solution with a number that is not finite, and names it.
pub(super) fn checked<S: Fields>(solution: S, path: &str) -> Result<S, Error> {
    finite(&solution.write(&Field::ROOT), path)?;
    Ok(solution)
}

fn finite(node: &Node, path: &str) -> Result<(), Error> {
    match node {
        Node::Record(entries) => {
            entries.iter().try_for_each(|(key, entry)| finite(entry, &format!("{path}.{key}")))
        }
        Node::List(entries) => entries.iter().try_for_each(|entry| finite(entry, path)),
        number => match number.si() {
            Some(si) if !si.is_finite() => Err(Error::NotFinite { field: path.to_owned() }),
            _ => Ok(()),
        },
    }
}

fn place(at: solver::Point) -> Point {
    Point { x: si(at.x), y: si(at.y) }
}

/// The solution of a load case, without what else it may have asked for.
pub(super) fn solution(problem: &PanelProblem, name: &str, answer: &solver::Answer) -> CaseSolution {
    let extreme =
        |found: solver::result::answer::Extreme| LengthAt { value: si(found.value), at: place(found.at) };
    let reaction = |found: &solver::result::answer::Reaction| SupportReaction {
        force: si(found.force),
        moment_along_x: si(found.moment.x),
        moment_along_y: si(found.moment.y),
        in_plane_x: si(found.in_plane.x),
        in_plane_y: si(found.in_plane.y),
    };
    let gasket = |found: &solver::result::answer::GasketAnswer| {
        let column = |of: fn(&solver::result::answer::GasketSample) -> f64| {
            found.samples.iter().map(of).collect::<Vec<f64>>()
        };
        GasketState {
            smallest: extreme(found.smallest),
            largest: extreme(found.largest),
            force: si(found.force),
            open_length: si(found.open_length),
            beyond_law: found.beyond_law,
            along_m: column(|sample| sample.along),
            x_m: column(|sample| sample.at.x),
            y_m: column(|sample| sample.at.y),
            compression_m: column(|sample| sample.compression),
            force_n_per_m: column(|sample| sample.force),
        }
    };
    let latches = all(&problem.latches).iter().zip(&answer.latches);
    let error = &answer.error;
    CaseSolution {
        name: name.to_owned(),
        largest_deflection: extreme(answer.largest_deflection),
        largest_moment: MomentAt {
            value: si(answer.largest_moment.value),
            at: place(answer.largest_moment.at),
        },
        large_deflection: false,
        largest_membrane_force: MembraneForceAt {
            value: si(answer.largest_membrane_force.value),
            at: place(answer.largest_membrane_force.at),
        },
        error: MeshError {
            deflection: known(error.deflection),
            latch_force: known(error.latch_force),
            compression: known(error.compression).map(si),
            moment: known(error.moment),
            membrane_force: known(error.membrane_force),
            triangles: whole(error.triangles),
            met: error.met,
        },
        balance: BalanceLeft {
            force: answer.balance.force,
            moment: answer.balance.moment,
            in_plane: answer.balance.in_plane,
        },
        line_reactions: answer.line_reactions.iter().map(reaction).collect(),
        point_reactions: answer.point_reactions.iter().map(reaction).collect(),
        latches: latches
            .map(|(latch, found)| LatchState {
                name: latch.name.clone(),
                pull: si(found.pull),
                deflection: si(found.deflection),
            })
            .collect(),
        gaskets: answer.gaskets.iter().map(gasket).collect(),
        stops: answer.stops.iter().copied().map(si).collect(),
        stresses: stresses(problem, &answer.field),
        modes: None,
        opening: None,
        buckling: None,
        critical_rise: None,
        field: field(&answer.field),
    }
}

/// An estimate, where there was a second mesh to compare with: the solver gives an infinite one otherwise.
fn known(error: f64) -> Option<f64> {
    error.is_finite().then_some(error)
}

/// An index or count of the mesh: at most a few millions.
fn whole(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

fn field(found: &solver::result::field::Field) -> MeshField {
    let middles: Vec<_> = (0..found.triangles.len()).filter_map(|t| found.middle_of(t)).collect();
    MeshField {
        x_m: found.vertices.iter().map(|vertex| vertex.x).collect(),
        y_m: found.vertices.iter().map(|vertex| vertex.y).collect(),
        triangles: found.triangles.iter().flatten().copied().map(whole).collect(),
        deflection_m: found.deflection.clone(),
        slope_x: found.slope.iter().map(|[along_x, _]| *along_x).collect(),
        slope_y: found.slope.iter().map(|[_, along_y]| *along_y).collect(),
        moment_xx_n: middles.iter().map(|middle| middle.moment[0]).collect(),
        moment_yy_n: middles.iter().map(|middle| middle.moment[1]).collect(),
        moment_xy_n: middles.iter().map(|middle| middle.moment[2]).collect(),
        membrane_xx_n_per_m: middles.iter().map(|middle| middle.membrane_force[0]).collect(),
        membrane_yy_n_per_m: middles.iter().map(|middle| middle.membrane_force[1]).collect(),
        membrane_xy_n_per_m: middles.iter().map(|middle| middle.membrane_force[2]).collect(),
    }
}

fn stresses(problem: &PanelProblem, found: &solver::result::field::Field) -> Vec<LayerStresses> {
    let middles: Vec<_> = (0..found.triangles.len()).map(|t| found.middle_of(t)).collect();
    let one = |(nth, layer): (usize, &super::layers::PanelLayer)| {
        let largest = |outer: bool| {
            let (value, at) = found.largest_stress(nth, outer)?;
            Some(StressAt { value: si(value), at: place(at) })
        };
        let mut stresses = LayerStresses {
            layer: layer.name.clone(),
            inner: largest(false)?,
            outer: largest(true)?,
            triangles: Vec::new(),
            inner_larger_pa: Vec::new(),
            inner_smaller_pa: Vec::new(),
            outer_larger_pa: Vec::new(),
            outer_smaller_pa: Vec::new(),
        };
        for (t, middle) in middles.iter().enumerate() {
            let here = middle.as_ref().and_then(|middle| middle.layers.iter().find(|at| at.layer == nth));
            let Some(here) = here else { continue };
            stresses.triangles.push(whole(t));
            stresses.inner_larger_pa.push(here.lower.principal_1);
            stresses.inner_smaller_pa.push(here.lower.principal_2);
            stresses.outer_larger_pa.push(here.upper.principal_1);
            stresses.outer_smaller_pa.push(here.upper.principal_2);
        }
        Some(stresses)
    };
    problem.layers.iter().enumerate().filter_map(one).collect()
}

/// The modes with the mesh that they share.
pub(super) fn modes(found: &[solver::Mode]) -> NaturalModes {
    let mesh = found.first().map(|mode| mode.mesh.as_ref());
    let (vertices, triangles) = mesh.map_or((&[][..], &[][..]), |mesh| (&mesh.vertices, &mesh.triangles));
    let mode = |found: &solver::Mode| NaturalMode {
        frequency: si(found.frequency),
        error: known(found.error),
        met: found.met,
        shape_m: found.shape.clone(),
    };
    NaturalModes {
        modes: found.iter().map(mode).collect(),
        x_m: vertices.iter().map(|vertex| vertex.x).collect(),
        y_m: vertices.iter().map(|vertex| vertex.y).collect(),
        triangles: triangles.iter().flatten().copied().map(whole).collect(),
    }
}

/// The ways to buckle with the mesh that they share.
pub(super) fn buckling(found: solver::Buckling) -> Buckling {
    Buckling {
        x_m: found.vertices.iter().map(|vertex| vertex.x).collect(),
        y_m: found.vertices.iter().map(|vertex| vertex.y).collect(),
        triangles: found.triangles.iter().flatten().copied().map(whole).collect(),
        met: found.met,
        modes: (found.modes.into_iter())
            .map(|mode| BucklingMode { factor: mode.factor, error: known(mode.error), shape: mode.shape })
            .collect(),
    }
}

/// The temperatures at which the panel buckles, with the names of its layers.
pub(super) fn critical_rise(problem: &PanelProblem, found: Option<solver::CriticalRise>) -> CriticalRise {
    let Some(found) = found else {
        return CriticalRise { factor: None, error: None, met: true, temperatures: Vec::new() };
    };
    let named = |t: solver::LayerTemperature| {
        let layer = problem.layers.get(t.layer)?.name.clone();
        Some(CriticalTemperature { layer, rise: si(t.rise), gradient: si(t.difference) })
    };
    CriticalRise {
        factor: Some(found.factor),
        error: known(found.error),
        met: found.met,
        temperatures: found.temperatures.into_iter().filter_map(named).collect(),
    }
}

/// The travels that open the latches.
pub(super) fn opening(found: solver::Opening) -> OpeningTravel {
    OpeningTravel { travel: si(found.travel), travels: found.travels.into_iter().map(si).collect() }
}
