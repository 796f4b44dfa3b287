//! Damped Newton on a convex energy, with residuals that keep their digits.

use super::conjugate::conjugate;
use super::contact::{contact, has_contact};
use super::equilibrium::State;
use super::free_motion::lost_contact;
use super::internal::internal;
use super::level::Level;
use super::loads::Applied;
use super::near::Near;
use super::sparse::FreePart;
use super::symmetric::Symmetric;
use super::touched::Touched;
use crate::error::{FreeMotion, PanelError};
use crate::model::latch::LatchAction;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::Watch;

/// Most Newton steps.
const MOST_STEPS: usize = 100;
/// Largest out-of-balance force accepted, relative to the forces that act: little above what rounding leaves of a lid let go, some 5e-13.
const BALANCED: f64 = 1e-11;
/// Above this the iteration has failed.
const FAILED: f64 = 1e-8;
/// How much of the out-of-balance force a step may leave as the equations are solved.
const COARSEST_SHARE: f64 = 1e-2;
const FINEST_SHARE: f64 = 1e-10;
/// Rounding of the forces that may be left, over the largest of them, for a direction to be trusted.
const NOISE: f64 = 1e-3;
/// Stiffness added where no factors exist, over the largest on the diagonal.
const EXTRA: [f64; 6] = [1e-10, 1e-8, 1e-6, 1e-4, 1e-2, 1.0];

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

/// Finds the equilibrium while the given latches hold their points at a height, starting from some values.
#[allow(clippy::too_many_arguments)]
pub(crate) fn newton(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    applied: &Applied,
    heights: &[Option<f64>],
    latched: &[bool],
    start: Option<&[f64]>,
    watch: &mut Watch<'_>,
) -> Result<State, PanelError> {
    let part = level.free_part(latched)?;
    let nonlinear = has_contact(&level.attachments, prepared);
    let closed = closed_latches(prepared);
    let closed_part = level.free_part(if nonlinear { &closed } else { latched })?;
    let matrix = level.closed_matrix(prepared);
    let touched = level.touched(prepared);
    let factors = level.constant_factor(&closed_part, &matrix, if nonlinear { &closed } else { latched });
    let near = factors.and_then(|f| Near::released(closed_part.again(f), &closed_part, &part, &matrix));
    let mut near = near.map(|near| (near, touched.values(&matrix)));
    drop(matrix);
    if near.is_none() && !nonlinear {
        return Err(PanelError::Mechanism { motion: FreeMotion::Local { at: level.mesh.vertices[0] } });
    }
    let level: &Level = level;
    let mut values = vec![0.0; level.freedoms.size()];
    if let (Some(start), true) = (start, nonlinear) {
        for &d in &part.freedoms {
            values[d] = start[d];
        }
    }
    for (i, &vertex) in level.attachments.latches.iter().enumerate() {
        if let (true, Some(height)) = (latched[i], heights[i]) {
            values[level.freedoms.deflection(vertex)] = height;
        }
    }
    for &(d, movement) in &applied.moved {
        values[d] = movement;
    }
    let mut loads = applied.vector.clone();
    level.freedoms.to_axes(&mut loads);
    let load_size = applied.resultant.size + loads.iter().map(|l| l.abs()).fold(0.0, f64::max);
    let (mut now, mut plane) = balance(level, prepared, load, &loads, load_size, &values);
    let (mut residual, mut accepted) = size_of(&part, level, &now);
    // Without contact the stiffness is constant, and its factors are there: further steps only refine. With it factors near those of the
    // tangent serve as long as few steps of conjugate gradients lead from them to the tangent's own.
    let (mut exact, mut by_factors) = (true, false);
    // What contact makes of the stiffness where it touches; nothing else of this matrix is looked at.
    let mut touching = level.stiffness.zero();
    let mut steps = 0;
    while steps < MOST_STEPS && (residual > BALANCED || steps == 0) {
        steps += 1;
        watch.step()?;
        let step = if nonlinear {
            touched.copy(&level.stiffness, &mut touching);
            contact(level, prepared, load, &plane, Some(&mut touching));
            let whole = || {
                let mut matrix = level.stiffness.clone();
                contact(level, prepared, load, &plane, Some(&mut matrix));
                matrix
            };
            let tangent = Tangent { part: &part, touched: &touched, touching: &touching, whole: &whole };
            let found = tangent_step(&tangent, &mut near, level, &now.forces, residual)?;
            (exact, by_factors) = (found.exact, found.by_factors);
            found.step
        } else {
            let mut rhs = part.gather(&now.forces);
            near.iter().for_each(|(near, _)| near.solve(&mut rhs));
            part.scatter(&rhs)
        };
        if !step.iter().all(|s| s.is_finite()) {
            return Err(PanelError::NotFinite { name: "the deflection" });
        }
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
        let Some((trial, then, then_plane)) = taken else {
            // Only factors of this very state could show a better way.
            if by_factors || !nonlinear {
                break;
            }
            near = None;
            continue;
        };
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

/// Which latches hold their points when all of them do.
fn closed_latches(prepared: &Prepared) -> Vec<bool> {
    prepared.panel.latches.iter().map(|latch| matches!(latch.action, LatchAction::Height(_))).collect()
}

/// A step of Newton over the free freedoms.
struct TangentStep {
    step: Vec<f64>,
    /// Whether it is of the tangent itself, with nothing added.
    exact: bool,
    /// Whether the tangent was factored for it.
    by_factors: bool,
}

/// The tangent at a state.
struct Tangent<'a, 'b> {
    part: &'a FreePart,
    touched: &'b Touched,
    /// The tangent where contact touches it.
    touching: &'b Symmetric,
    /// Makes all of it.
    whole: &'b dyn Fn() -> Symmetric,
}

/// Solves for a step with the factors near at hand, or else with those of the tangent, which then take their place. Where the panel has
/// lost its contact for the moment, a small stiffness is added until the factors exist and rounding does not decide what they give.
fn tangent_step<'a>(
    tangent: &Tangent<'a, '_>,
    near: &mut Option<(Near<'a>, Vec<f64>)>,
    level: &Level,
    forces: &[f64],
    residual: f64,
) -> Result<TangentStep, PanelError> {
    let Tangent { part, touched, touching, whole } = *tangent;
    let rhs = part.gather(forces);
    // A step of Newton leaves about the square of the error: no more is asked of the equations.
    let share = residual.max(0.1 * BALANCED / residual).clamp(FINEST_SHARE, COARSEST_SHARE);
    let step = near
        .as_ref()
        .and_then(|(near, values)| conjugate(&touched.change(part, touching, values), near, &rhs, share));
    if let Some(step) = step {
        return Ok(TangentStep { step: part.scatter(&step), exact: true, by_factors: false });
    }
    *near = None;
    let matrix = &mut whole();
    let vertices = level.freedoms.vertices;
    let deflections = || part.freedoms.iter().enumerate().filter(|(_, d)| **d < vertices);
    let largest = deflections().map(|(_, &d)| matrix.diagonal(d)).fold(0.0, f64::max);
    let push = deflections().map(|(_, &d)| forces[d].abs()).fold(0.0, f64::max);
    for attempt in 0..=EXTRA.len() {
        if let Some(made) = part.factor(matrix) {
            let made = Near::exact(made);
            let mut step = rhs.clone();
            made.solve(&mut step);
            let step = part.scatter(&step);
            let noise = deflections()
                .map(|(k, &d)| f64::EPSILON * matrix.diagonal(d) * step[k].abs())
                .fold(0.0, f64::max);
            if noise <= NOISE * push || attempt == EXTRA.len() {
                // With stiffness added everywhere it is near no tangent that is to come.
                *near = (attempt == 0).then(|| (made, touched.values(matrix)));
                return Ok(TangentStep { step, exact: attempt == 0, by_factors: true });
            }
        }
        if let Some(share) = EXTRA.get(attempt) {
            for (_, &d) in deflections() {
                matrix.add(d, d, largest * share);
            }
        }
    }
    Err(PanelError::Mechanism { motion: FreeMotion::Local { at: level.mesh.vertices[0] } })
}
