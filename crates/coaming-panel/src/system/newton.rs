//! Damped Newton on a convex energy, with residuals that keep their digits.

use super::contact::{contact, has_contact};
use super::equilibrium::State;
use super::free_motion::lost_contact;
use super::internal::internal;
use super::level::Level;
use super::loads::Applied;
use super::sparse::{Factor, FreePart};
use super::symmetric::Symmetric;
use crate::error::{FreeMotion, PanelError};
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::Watch;

/// Most Newton steps.
const MOST_STEPS: usize = 100;
/// Largest out-of-balance force accepted, relative to the forces that act.
const BALANCED: f64 = 1e-13;
/// Above this the iteration has failed.
const FAILED: f64 = 1e-8;
/// Factors that shrank the out-of-balance force to this share or less are used again.
const WORTH_KEEPING: f64 = 0.1;
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
    let mut factor: Option<Factor<'_>> = None;
    if !nonlinear {
        let mut matrix = level.stiffness.clone();
        contact(level, prepared, load, &vec![0.0; level.freedoms.size()], Some(&mut matrix));
        let loose = PanelError::Mechanism { motion: FreeMotion::Local { at: level.mesh.vertices[0] } };
        factor = Some(part.again(level.constant_factor(&part, &matrix, latched).ok_or(loose)?));
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
    // Factors stay in use while they serve. Without contact the stiffness is constant: further steps only refine.
    let mut exact = true;
    let mut steps = 0;
    while steps < MOST_STEPS && (residual > BALANCED || steps == 0) {
        steps += 1;
        watch.step()?;
        let rhs: Vec<f64> = part.freedoms.iter().map(|&d| now.forces[d]).collect();
        let fresh = factor.is_none();
        let made = match factor.take() {
            Some(made) => made,
            None => {
                let mut matrix = level.stiffness.clone();
                contact(level, prepared, load, &plane, Some(&mut matrix));
                let (made, as_it_is) = factored(&part, &mut matrix, level, nonlinear)?;
                exact = as_it_is;
                made
            }
        };
        let step = solved(&made, &rhs).ok_or(PanelError::NotFinite { name: "the deflection" })?;
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
            if fresh {
                break;
            }
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
        // Rounding sets a floor; a step with factors of this very state that no longer gains has reached it.
        let gained = residual <= 0.5 * before;
        if fresh && exact && !gained && accepted < FAILED {
            break;
        }
        // Without contact no other factors would be better.
        if exact && (!nonlinear || residual <= WORTH_KEEPING * before) {
            if !nonlinear && !gained && accepted < FAILED {
                break;
            }
            factor = Some(made);
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

/// Factors of the tangent, and whether they are of the tangent itself. Where the panel has lost its contact for the moment, a small
/// stiffness is added until the factors exist.
fn factored<'a>(
    part: &'a FreePart,
    matrix: &mut Symmetric,
    level: &Level,
    nonlinear: bool,
) -> Result<(Factor<'a>, bool), PanelError> {
    let mut largest = 0.0_f64;
    for &d in &part.freedoms {
        largest = largest.max(if d < level.freedoms.vertices { matrix.diagonal(d) } else { 0.0 });
    }
    for attempt in 0..=EXTRA.len() {
        if let Some(made) = part.factor(matrix) {
            return Ok((made, attempt == 0));
        }
        let Some(share) = EXTRA.get(attempt).filter(|_| nonlinear) else { break };
        for &d in &part.freedoms {
            if d < level.freedoms.vertices {
                matrix.add(d, d, largest * share);
            }
        }
    }
    Err(PanelError::Mechanism { motion: FreeMotion::Local { at: level.mesh.vertices[0] } })
}
