//! Equilibrium of the panel with its gasket, latches and stops: damped Newton on a convex energy.

use super::assemble::add_dense;
use super::attach::Attachments;
use super::basis::Basis;
use super::hold::{check_enough, held_motions};
use super::internal::internal;
use super::level::Level;
use super::loads::{Applied, apply};
use super::sparse::{Factor, FreePart};
use super::symmetric::Symmetric;
use crate::element::hermite::add_outer;
use crate::element::quadrature::GAUSS_4;
use crate::error::{FreeMotion, PanelError};
use crate::model::latch::LatchAction;
use crate::model::load::Load;
use crate::model::prepare::Prepared;

/// Most Newton steps.
const MOST_STEPS: usize = 100;
/// Largest out-of-balance force accepted, relative to the forces that act.
const BALANCED: f64 = 1e-13;
/// Above this the iteration has failed.
const FAILED: f64 = 1e-8;

/// An equilibrium.
#[derive(Debug, Clone)]
pub(crate) struct State {
    /// Freedoms in the axes of the pairs.
    pub values: Vec<f64>,
    /// Freedoms in x and y.
    pub plane: Vec<f64>,
    /// Forces of the supports (and of latches held at a height) on the panel, in x and y; zero at free freedoms.
    pub reactions: Vec<f64>,
    /// Which latches hold their point at a height.
    pub latched: Vec<bool>,
    /// Newton steps taken.
    pub steps: usize,
}

/// Finds the equilibrium under a load.
pub(crate) fn solve(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
) -> Result<(State, Applied), PanelError> {
    check_enough(&level.freedoms, &level.mesh, prepared, &level.attachments, load)?;
    let applied = apply(level, prepared, load)?;
    let heights: Vec<Option<f64>> = (prepared.panel.latches.iter().enumerate())
        .map(|(i, latch)| match latch.action {
            LatchAction::Height(height) if !load.missing_latches.contains(&i) => Some(height),
            _ => None,
        })
        .collect();
    let mut latched: Vec<bool> = heights.iter().map(Option::is_some).collect();
    let mut steps = 0;
    // A latch that would have to push lets go; one whose point rises above its height takes hold again.
    for _ in 0..(2 * latched.len() + 4) {
        let state = newton(level, prepared, load, &applied, &heights, &latched)?;
        steps += state.steps;
        let scale = applied.resultant.size + state.reactions.iter().map(|r| r.abs()).fold(0.0, f64::max);
        let mut next = latched.clone();
        let mut worst = (1e-9 * scale, None);
        for (i, &vertex) in level.attachments.latches.iter().enumerate().filter(|&(i, _)| latched[i]) {
            let push = state.reactions[level.freedoms.deflection(vertex)];
            if push > worst.0 {
                worst = (push, Some(i));
            }
        }
        match worst.1 {
            Some(i) => next[i] = false,
            None => {
                let above = level.attachments.latches.iter().enumerate().find(|&(i, &vertex)| {
                    let rise = state.values[level.freedoms.deflection(vertex)];
                    heights[i].is_some_and(|h| !latched[i] && rise > h + 1e-9 * level.mesh.size)
                });
                match above {
                    Some((i, _)) => next[i] = true,
                    None => return Ok((State { steps, ..state }, applied)),
                }
            }
        }
        latched = next;
    }
    Err(PanelError::NotConverged { steps, residual: f64::INFINITY })
}

/// What elastic supports, gasket, spring latches and stops do at a state.
pub(crate) struct Contact {
    /// Energy stored.
    pub energy: f64,
    /// Forces on the panel over all freedoms, in x and y.
    pub forces: Vec<f64>,
    /// Sum of the sizes of those forces.
    pub size: f64,
}

/// Evaluates elastic supports, gasket, spring latches and stops; adds their tangent to `matrix` when given.
pub(crate) fn contact(
    level: &Level,
    prepared: &Prepared,
    load: &Load,
    plane: &[f64],
    mut matrix: Option<&mut Symmetric>,
) -> Contact {
    let mut found = Contact { energy: 0.0, forces: vec![0.0; plane.len()], size: 0.0 };
    add_elastic_supports(level, plane, &mut found, matrix.as_deref_mut());
    for edge in &level.attachments.gaskets {
        let gasket = &prepared.panel.gaskets[edge.gasket];
        let list = level.freedoms.of_ends(edge.ends);
        let mut tangent = [[0.0; 6]; 6];
        let mut stiff = false;
        for (s, weight) in GAUSS_4 {
            let shape = edge.line.deflection(s);
            let deflection: f64 = list.iter().zip(shape).map(|(&d, n)| n * plane[d]).sum();
            let law = prepared.laws[edge.gasket].at(gasket.compression(edge.along(s), deflection));
            let factor = weight * edge.length();
            found.energy += factor * law.energy;
            found.size += factor * law.force;
            for (&d, n) in list.iter().zip(shape) {
                found.forces[d] += factor * law.force * n;
            }
            if law.tangent > 0.0 && matrix.is_some() {
                add_outer(&mut tangent, &shape, factor * law.tangent);
                stiff = true;
            }
        }
        if let (true, Some(matrix)) = (stiff, matrix.as_deref_mut()) {
            add_dense(matrix, &level.freedoms, &list, &tangent);
        }
    }
    let mut spring = |vertex: usize, stretch: f64, stiffness: f64, sign: f64| {
        if stretch > 0.0 {
            let d = level.freedoms.deflection(vertex);
            found.energy += 0.5 * stiffness * stretch * stretch;
            found.forces[d] += sign * stiffness * stretch;
            found.size += stiffness * stretch;
            if let Some(matrix) = matrix.as_deref_mut() {
                matrix.add(d, d, stiffness);
            }
        }
    };
    for (i, (latch, &vertex)) in prepared.panel.latches.iter().zip(&level.attachments.latches).enumerate() {
        if let (LatchAction::Spring { stiffness, draw }, false) =
            (latch.action, load.missing_latches.contains(&i))
        {
            spring(vertex, plane[level.freedoms.deflection(vertex)] + draw, stiffness, -1.0);
        }
    }
    for (stop, &vertex) in prepared.panel.stops.iter().zip(&level.attachments.stops) {
        spring(vertex, stop.height - plane[level.freedoms.deflection(vertex)], stop.stiffness, 1.0);
    }
    found
}

/// Evaluates supports that spring both ways.
fn add_elastic_supports(
    level: &Level,
    plane: &[f64],
    found: &mut Contact,
    mut matrix: Option<&mut Symmetric>,
) {
    let freedoms = &level.freedoms;
    for spring in &level.attachments.springs {
        let list = freedoms.of_ends(spring.ends);
        let mut k = [[0.0; 6]; 6];
        for (s, weight) in GAUSS_4 {
            add_outer(&mut k, &spring.line.deflection(s), weight * spring.length * spring.deflection);
            add_outer(&mut k, &spring.line.slope_across(s), weight * spring.length * spring.turning);
        }
        for (&d, row) in list.iter().zip(&k) {
            let force: f64 = row.iter().zip(list).map(|(v, e)| v * plane[e]).sum();
            found.forces[d] -= force;
            found.energy += 0.5 * force * plane[d];
            found.size += if d < freedoms.vertices { force.abs() } else { 0.0 };
        }
        if let Some(matrix) = matrix.as_deref_mut() {
            add_dense(matrix, freedoms, &list, &k);
        }
    }
    for point in &level.attachments.point_springs {
        let w = freedoms.deflection(point.vertex);
        let [x, y] = freedoms.pair(freedoms.slopes(point.vertex));
        for (d, k) in [(w, point.deflection), (x, point.turning), (y, point.turning)] {
            found.forces[d] -= k * plane[d];
            found.energy += 0.5 * k * plane[d] * plane[d];
            found.size += if d == w { (k * plane[d]).abs() } else { 0.0 };
            if let Some(matrix) = matrix.as_deref_mut() {
                matrix.add(d, d, k);
            }
        }
    }
}

fn has_contact(attachments: &Attachments, prepared: &Prepared) -> bool {
    let sprung = prepared.panel.latches.iter().any(|l| matches!(l.action, LatchAction::Spring { .. }));
    !attachments.gaskets.is_empty() || !attachments.stops.is_empty() || sprung
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

/// Out-of-balance forces in the axes of the pairs, the energy, the sum of the forces that act, and what rounding of the deflections
/// alone makes of the forces: a stiff panel far from where it was drawn can be no better.
struct Balance {
    forces: Vec<f64>,
    energy: f64,
    scale: f64,
    rounding: f64,
}

fn balance(
    level: &Level,
    prepared: &Prepared,
    load: &Load,
    applied: &[f64],
    scale: f64,
    values: &[f64],
) -> (Balance, Vec<f64>) {
    let mut plane = values.to_vec();
    level.freedoms.to_plane(&mut plane);
    let mut found = contact(level, prepared, load, &plane, None);
    let mut inner = internal(level, prepared, &plane);
    level.freedoms.to_axes(&mut inner.forces);
    let internal = inner.forces;
    level.freedoms.to_axes(&mut found.forces);
    let forces = (0..values.len()).map(|d| applied[d] + found.forces[d] - internal[d]).collect();
    let energy = inner.energy - dot(values, applied) + found.energy;
    let held = (0..level.freedoms.vertices).map(|d| internal[d].abs()).fold(0.0, f64::max);
    let rounding = (0..level.freedoms.vertices)
        .map(|d| 4.0 * f64::EPSILON * level.stiffness.diagonal(d) * values[d].abs())
        .fold(0.0, f64::max);
    (Balance { forces, energy, scale: scale + found.size + held, rounding }, plane)
}

fn newton(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    applied: &Applied,
    heights: &[Option<f64>],
    latched: &[bool],
) -> Result<State, PanelError> {
    let part = level.free_part(latched)?;
    let level: &Level = level;
    let mut values = vec![0.0; level.freedoms.size()];
    for (i, &vertex) in level.attachments.latches.iter().enumerate() {
        if let (true, Some(height)) = (latched[i], heights[i]) {
            values[level.freedoms.deflection(vertex)] = height;
        }
    }
    let mut loads = applied.vector.clone();
    level.freedoms.to_axes(&mut loads);
    let load_size = applied.resultant.size + loads.iter().map(|l| l.abs()).fold(0.0, f64::max);
    let nonlinear = has_contact(&level.attachments, prepared);
    let (mut now, mut plane) = balance(level, prepared, load, &loads, load_size, &values);
    let (mut residual, mut accepted) = size_of(&part, level, &now);
    // Without contact the stiffness is constant: one factorisation, and further steps only refine.
    let constant = if nonlinear {
        None
    } else {
        let mut matrix = level.stiffness.clone();
        contact(level, prepared, load, &plane, Some(&mut matrix));
        Some(
            part.factor(&matrix)
                .ok_or(PanelError::Mechanism { motion: FreeMotion::Local { at: level.mesh.vertices[0] } })?,
        )
    };
    let mut steps = 0;
    while steps < MOST_STEPS && (residual > BALANCED || steps == 0) {
        steps += 1;
        let rhs: Vec<f64> = part.freedoms.iter().map(|&d| now.forces[d]).collect();
        let (step, exact) = match &constant {
            Some(factor) => {
                (solved(factor, &rhs).ok_or(PanelError::NotFinite { name: "the deflection" })?, true)
            }
            None => {
                let mut matrix = level.stiffness.clone();
                contact(level, prepared, load, &plane, Some(&mut matrix));
                direction(&part, &mut matrix, &rhs, level)?
            }
        };
        let slope = -part.freedoms.iter().zip(&step).map(|(&d, s)| now.forces[d] * s).sum::<f64>();
        let mut fraction = 1.0;
        let mut taken = None;
        for _ in 0..60 {
            let mut trial = values.clone();
            for (&d, s) in part.freedoms.iter().zip(&step) {
                trial[d] += fraction * s;
            }
            let (then, then_plane) = balance(level, prepared, load, &loads, load_size, &trial);
            let then_slope = -part.freedoms.iter().zip(&step).map(|(&d, s)| then.forces[d] * s).sum::<f64>();
            // On a convex energy a step is good when the energy falls, or when the slope along it has shrunk.
            let falls = then.energy <= now.energy + 1e-4 * fraction * slope;
            if !nonlinear || falls || then_slope.abs() <= 0.5 * slope.abs() {
                taken = Some((trial, then, then_plane));
                break;
            }
            fraction *= 0.5;
        }
        let Some((trial, then, then_plane)) = taken else { break };
        values = trial;
        plane = then_plane;
        now = then;
        let before = residual;
        (residual, accepted) = size_of(&part, level, &now);
        if !residual.is_finite() {
            return Err(PanelError::NotFinite { name: "the out-of-balance force" });
        }
        let lost = plane.iter().take(level.freedoms.vertices).any(|w| w.abs() > 1e3 * level.mesh.size);
        if lost && nonlinear {
            return Err(lost_contact(level, prepared, load, &plane));
        }
        // Rounding sets a floor; a step that no longer gains has reached it.
        if exact && residual > 0.5 * before && accepted < FAILED {
            break;
        }
    }
    if accepted > FAILED {
        let still = contact(level, prepared, load, &plane, None);
        return Err(if nonlinear && still.size == 0.0 {
            lost_contact(level, prepared, load, &plane)
        } else {
            PanelError::NotConverged { steps, residual }
        });
    }
    let mut reactions: Vec<f64> =
        (0..values.len())
            .map(|d| {
                if part.free[d] == super::sparse::HELD && level.freedoms.used[d] {
                    -now.forces[d]
                } else {
                    0.0
                }
            })
            .collect();
    level.freedoms.to_plane(&mut reactions);
    Ok(State { values, plane, reactions, latched: latched.to_vec(), steps })
}

/// Largest out-of-balance force, moments divided by the size of the panel, over the forces that act; and what of it is more than rounding.
fn size_of(part: &FreePart, level: &Level, now: &Balance) -> (f64, f64) {
    let largest = part.freedoms.iter().fold(0.0_f64, |largest, &d| {
        let arm = if d >= level.freedoms.vertices && d < 3 * level.freedoms.vertices {
            level.mesh.size
        } else {
            1.0
        };
        let size = now.forces[d].abs() / arm;
        if size.is_nan() { f64::NAN } else { largest.max(size) }
    });
    let share = |force: f64| if now.scale > 0.0 { force / now.scale } else { force };
    let accepted = if largest.is_nan() { largest } else { (largest - now.rounding).max(0.0) };
    (share(largest), share(accepted))
}

fn solved(factor: &Factor<'_>, rhs: &[f64]) -> Option<Vec<f64>> {
    let mut step = rhs.to_vec();
    factor.solve(&mut step);
    step.iter().all(|s| s.is_finite()).then_some(step)
}

/// The Newton step. Where the panel has lost its contact for the moment, a small stiffness is added until the factors exist.
fn direction(
    part: &FreePart,
    matrix: &mut Symmetric,
    rhs: &[f64],
    level: &Level,
) -> Result<(Vec<f64>, bool), PanelError> {
    let mut largest = 0.0_f64;
    for &d in &part.freedoms {
        largest = largest.max(if d < level.freedoms.vertices { matrix.diagonal(d) } else { 0.0 });
    }
    let mut exact = true;
    for attempt in 0..6 {
        if let Some(step) = part.factor(matrix).and_then(|factor| solved(&factor, rhs)) {
            return Ok((step, exact));
        }
        exact = false;
        let extra = largest * [1e-10, 1e-8, 1e-6, 1e-4, 1e-2, 1.0][attempt];
        for &d in &part.freedoms {
            if d < level.freedoms.vertices {
                matrix.add(d, d, extra);
            }
        }
    }
    Err(PanelError::Mechanism { motion: FreeMotion::Local { at: level.mesh.vertices[0] } })
}

/// Names the motion that is free where the gasket no longer touches.
fn lost_contact(level: &Level, prepared: &Prepared, load: &Load, plane: &[f64]) -> PanelError {
    let mesh = &level.mesh;
    let center = mesh.vertices[0];
    let mut basis = Basis::default();
    held_motions(&mut basis, &level.freedoms, mesh, &level.attachments, center);
    let mut at = |v: usize| {
        let p = (mesh.vertices[v] - center) * (1.0 / mesh.size);
        basis.add([1.0, p.x, p.y]);
    };
    for edge in &level.attachments.gaskets {
        for (v, along) in [(edge.ends[0], edge.from), (edge.ends[1], edge.to)] {
            if prepared.panel.gaskets[edge.gasket].compression(along, plane[v]) > 0.0 {
                at(v);
            }
        }
    }
    for (i, (latch, &v)) in prepared.panel.latches.iter().zip(&level.attachments.latches).enumerate() {
        let pulls = match latch.action {
            LatchAction::Spring { draw, .. } => plane[v] + draw > 0.0,
            LatchAction::Height(_) => true,
            LatchAction::Force(_) => false,
        };
        if pulls && !load.missing_latches.contains(&i) {
            at(v);
        }
    }
    for (stop, &v) in prepared.panel.stops.iter().zip(&level.attachments.stops) {
        if stop.height > plane[v] {
            at(v);
        }
    }
    let motion = basis.free_motion(center, mesh.size).unwrap_or(FreeMotion::Local { at: center });
    PanelError::ContactLost { motion }
}
