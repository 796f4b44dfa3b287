//! Newton's method on the energy of large deflections, gasket, latches and stops in the same iteration.
//!
//! The energy is no longer convex: a panel pressed together has flat equilibria that it leaves at a touch. Steps go downhill in energy, and an
//! equilibrium at which the tangent is not positive is left along the direction in which it gives way, so that what is found is stable.

use super::contact::contact;
use super::equilibrium::State;
use super::free_motion::lost_contact;
use super::ground::Ground;
use super::large::{internal_large, tangent};
use super::level::Level;
use super::loads::Applied;
use super::sparse::{Factor, FreePart, HELD};
use super::symmetric::Symmetric;
use crate::error::{FreeMotion, PanelError};
use crate::model::growth::FreeStrain;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::Watch;

/// Most Newton steps.
const MOST_STEPS: usize = 200;
/// Largest out-of-balance force accepted, relative to the forces that act.
const BALANCED: f64 = 1e-11;
/// The same where loads are only compared with each other: stresses are as good.
const ROUGHLY: f64 = 1e-4;
/// Above this the iteration has failed.
const FAILED: f64 = 1e-7;
/// A step that leaves no more than this of the out-of-balance force has factors so near the tangent that they serve for the next.
const NEAR: f64 = 0.05;
/// Out-of-balance force below which a tangent tells whether the equilibrium gives way: it is nearer to that there than any mesh can tell.
const TELLING: f64 = 2e-3;
/// How often an equilibrium that gives way is left.
const DEPARTURES: usize = 6;
/// Parts of the linear stiffness that are added until the sum is positive.
const ADDED: [f64; 9] = [0.0, 0.01, 0.03, 0.1, 0.3, 1.0, 3.0, 10.0, 100.0];

/// What stays the same through the iteration.
pub(crate) struct Problem<'a> {
    pub prepared: &'a Prepared,
    pub load: &'a Load,
    /// What layers grow by under the load.
    pub growth: &'a [FreeStrain],
    pub applied: &'a Applied,
    pub heights: &'a [Option<f64>],
    pub latched: &'a [bool],
    /// Where to begin, in the axes of the pairs; flat where there is nothing better.
    pub start: Option<&'a [f64]>,
    /// Whether the state is only compared with others.
    pub roughly: bool,
}

struct Balance {
    forces: Vec<f64>,
    energy: f64,
    scale: f64,
    contact: f64,
    plane: Vec<f64>,
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

struct Run<'a> {
    level: &'a Level,
    problem: &'a Problem<'a>,
    part: &'a FreePart,
    ground: &'a Ground,
    loads: Vec<f64>,
    load_size: f64,
}

impl Run<'_> {
    fn balance(&self, values: &[f64]) -> Balance {
        let (level, problem) = (self.level, self.problem);
        let mut plane = values.to_vec();
        level.freedoms.to_plane(&mut plane);
        let mut touch = contact(level, problem.prepared, problem.load, &plane, None);
        let mut inner = internal_large(level, self.ground, problem.prepared, problem.growth, &plane);
        level.freedoms.to_axes(&mut inner.forces);
        level.freedoms.to_axes(&mut touch.forces);
        let forces: Vec<f64> =
            (0..values.len()).map(|d| self.loads[d] + touch.forces[d] - inner.forces[d]).collect();
        let slopes = level.freedoms.vertices..3 * level.freedoms.vertices;
        let held = (0..values.len())
            .filter(|d| !slopes.contains(d) && level.freedoms.used[*d])
            .map(|d| inner.forces[d].abs())
            .fold(0.0, f64::max);
        Balance {
            forces,
            energy: inner.energy + touch.energy - dot(values, &self.loads),
            scale: self.load_size + touch.size + held,
            contact: touch.size,
            plane,
        }
    }

    /// Largest out-of-balance force, moments divided by the size of the panel, over the forces that act.
    fn residual(&self, now: &Balance) -> f64 {
        let vertices = self.level.freedoms.vertices;
        let largest = self.part.freedoms.iter().fold(0.0_f64, |largest, &d| {
            let arm = if d >= vertices && d < 3 * vertices { self.level.mesh.size } else { 1.0 };
            let size = now.forces[d].abs() / arm;
            if size.is_nan() { f64::NAN } else { largest.max(size) }
        });
        if now.scale > 0.0 { largest / now.scale } else { largest }
    }

    fn tangent(&self, plane: &[f64]) -> Symmetric {
        let mut matrix = tangent(self.level, self.ground, self.problem.prepared, self.problem.growth, plane);
        contact(self.level, self.problem.prepared, self.problem.load, plane, Some(&mut matrix));
        matrix
    }

    /// A tangent made positive, as its factors need: which part of the linear stiffness was added, the factors, and the solution for `rhs`.
    fn solved(&self, matrix: Symmetric, from: usize, rhs: &[f64]) -> Option<(usize, Factor<'_>, Vec<f64>)> {
        let mut sum = matrix;
        let mut before = 0.0;
        for (nth, share) in ADDED.into_iter().enumerate().skip(from) {
            let more = share - before;
            before = share;
            if nth > 0 {
                for (s, k) in sum.values.iter_mut().zip(&self.level.stiffness.values) {
                    *s += more * k;
                }
                let vertices = self.level.freedoms.vertices;
                let free = || self.part.freedoms.iter().copied().filter(|&d| d < vertices);
                let largest = free().map(|d| self.level.stiffness.diagonal(d)).fold(0.0, f64::max);
                for d in free() {
                    sum.add(d, d, 1e-10 * more * largest);
                }
            }
            if let Some(factor) = self.part.factor(&sum) {
                let mut step = rhs.to_vec();
                factor.solve(&mut step);
                if step.iter().all(|s| s.is_finite()) {
                    return Some((nth, factor, step));
                }
            }
        }
        None
    }

    fn moved(&self, values: &[f64], step: &[f64], fraction: f64) -> Vec<f64> {
        let mut trial = values.to_vec();
        for (&d, s) in self.part.freedoms.iter().zip(step) {
            trial[d] += fraction * s;
        }
        trial
    }

    /// A state on the curve that starts with a step and draws the panel in as the square of it, as far as the unbalance along it, taken for
    /// that of a panel that stiffens with the square of its bow, says; none where it does not stiffen, or where the energy does not fall.
    fn along_curve(
        &self,
        values: &[f64],
        now: &Balance,
        step: &[f64],
        slope: f64,
        factor: &Factor<'_>,
    ) -> Option<(Vec<f64>, Balance)> {
        let bending = 3 * self.level.freedoms.vertices;
        let straight = self.balance(&self.moved(values, step, 1.0));
        let pull = |d: usize| if d < bending { 0.0 } else { straight.forces[d] };
        let mut drawn: Vec<f64> = self.part.freedoms.iter().map(|&d| pull(d)).collect();
        factor.solve(&mut drawn);
        let at = |s: f64| {
            let state = self.moved(&self.moved(values, step, s), &drawn, s * s);
            let balance = self.balance(&state);
            (state, balance)
        };
        let whole = at(1.0).1;
        let along = self.part.freedoms.iter().zip(step.iter().zip(&drawn));
        let ahead = -along.map(|(&d, (p, q))| whole.forces[d] * (p + 2.0 * q)).sum::<f64>();
        let stiffening = ahead / -slope;
        if !stiffening.is_finite() || stiffening <= 0.1 {
            return None;
        }
        // s + stiffening s³ = 1, which rises: Newton's method from 1 comes down to it.
        let mut s = 1.0_f64;
        for _ in 0..50 {
            let square = s * s;
            s -= (s + stiffening * s * square - 1.0) / (1.0 + 3.0 * stiffening * square);
        }
        Some(at(s)).filter(|(_, then)| then.energy < now.energy)
    }

    /// The direction in which an equilibrium gives way, if it does: inverse iteration on the tangent made just positive.
    fn gives_way(&self, plane: &[f64]) -> Option<Vec<f64>> {
        let matrix = self.tangent(plane);
        if self.part.factor(&matrix).is_some() {
            return None;
        }
        let vertices = self.level.freedoms.vertices;
        // Start from an even push outward with a little unevenness, so that no symmetry hides the direction.
        let mut x: Vec<f64> = (self.part.freedoms.iter().enumerate())
            .map(|(i, &d)| if d < vertices { 1.0 + 0.3 * ((i * 7919 % 101) as f64 / 101.0) } else { 0.0 })
            .collect();
        let mut from = 0;
        for _ in 0..12 {
            let (nth, _, mut next) = self.solved(matrix.clone(), from, &x)?;
            from = nth;
            let size = dot(&next, &next).sqrt();
            if size.is_nan() || size <= 0.0 {
                return None;
            }
            next.iter_mut().for_each(|v| *v /= size);
            let mut full = vec![0.0; self.level.freedoms.size()];
            for (&d, v) in self.part.freedoms.iter().zip(&next) {
                full[d] = *v;
            }
            let stiff = self.level.stiffness.times(&full);
            x = self.part.freedoms.iter().map(|&d| stiff[d]).collect();
            let way = next;
            // Outward is the sign of the largest deflection.
            let top = self.part.freedoms.iter().zip(&way).filter(|(d, _)| **d < vertices);
            let top = top.fold(0.0_f64, |a, (_, &v)| if v.abs() > a.abs() { v } else { a });
            if top == 0.0 {
                continue;
            }
            let curve = dot(&self.free_times(&matrix, &way), &way);
            if curve < 0.0 && from > 0 {
                return Some(way.iter().map(|v| v / top).collect());
            }
        }
        None
    }

    fn free_times(&self, matrix: &Symmetric, x: &[f64]) -> Vec<f64> {
        let mut full = vec![0.0; matrix.size()];
        for (&d, v) in self.part.freedoms.iter().zip(x) {
            full[d] = *v;
        }
        let y = matrix.times(&full);
        self.part.freedoms.iter().map(|&d| y[d]).collect()
    }
}

/// Finds a stable equilibrium while the given latches hold their points at a height.
pub(crate) fn newton_large(
    level: &mut Level,
    problem: &Problem<'_>,
    watch: &mut Watch<'_>,
) -> Result<State, PanelError> {
    let part = level.free_part(problem.latched)?;
    let ground = level.ground();
    let level: &Level = level;
    let mut values = problem.start.map_or_else(|| vec![0.0; level.freedoms.size()], <[f64]>::to_vec);
    for (d, value) in values.iter_mut().enumerate() {
        if part.free[d] == HELD {
            *value = 0.0;
        }
    }
    for (i, &vertex) in level.attachments.latches.iter().enumerate() {
        if let (true, Some(height)) = (problem.latched[i], problem.heights[i]) {
            values[level.freedoms.deflection(vertex)] = height;
        }
    }
    for &(d, movement) in &problem.applied.moved {
        values[d] = movement;
    }
    let mut loads = problem.applied.vector.clone();
    level.freedoms.to_axes(&mut loads);
    let load_size = problem.applied.resultant.size + loads.iter().map(|l| l.abs()).fold(0.0, f64::max);
    let (balanced, failed) = if problem.roughly { (ROUGHLY, ROUGHLY) } else { (BALANCED, FAILED) };
    let run = Run { level, problem, part: &part, ground: &ground, loads, load_size };
    let mut now = run.balance(&values);
    let mut residual = run.residual(&now);
    let (mut steps, mut departures) = (0, 0);
    // The last factors of a tangent with nothing added, and the out-of-balance force where they were made.
    let mut known: Option<(Factor<'_>, f64)> = None;
    let mut near = false;
    let thinnest = problem.prepared.panel.layers.iter().map(|l| l.thickness).fold(f64::INFINITY, f64::min);
    loop {
        let mut stalled = false;
        while steps < MOST_STEPS && !stalled && (residual > balanced || steps == 0) {
            steps += 1;
            watch.step()?;
            let rhs: Vec<f64> = part.freedoms.iter().map(|&d| now.forces[d]).collect();
            let by_known = known.as_ref().filter(|_| near);
            let again = by_known.is_some();
            let (nth, step) = match by_known {
                Some((factor, _)) => {
                    let mut step = rhs.clone();
                    factor.solve(&mut step);
                    (0, step)
                }
                None => {
                    let (nth, factor, step) =
                        run.solved(run.tangent(&now.plane), 0, &rhs).ok_or(PanelError::Mechanism {
                            motion: FreeMotion::Local { at: level.mesh.vertices[0] },
                        })?;
                    known = (nth == 0).then_some((factor, residual));
                    (nth, step)
                }
            };
            let slope = -dot(&rhs, &step);
            let mut fraction = 1.0;
            let mut taken = None;
            // From flat a straight step stretches the panel as far as it bows; it is first taken along the curve on which it does not.
            if let (1, None, Some((factor, _))) = (steps, problem.start, known.as_ref()) {
                taken = run.along_curve(&values, &now, &step, slope, factor);
                if taken.is_some() {
                    fraction = 0.0;
                }
            }
            let tries = if taken.is_some() { 0 } else { 40 };
            for _ in 0..tries {
                let trial = run.moved(&values, &step, fraction);
                let then = run.balance(&trial);
                let then_slope =
                    -part.freedoms.iter().zip(&step).map(|(&d, s)| then.forces[d] * s).sum::<f64>();
                let falls = then.energy <= now.energy + 1e-4 * fraction * slope;
                // Where rounding hides the fall of the energy, the slope along the step tells.
                let shrinks = then_slope.abs() <= 0.5 * slope.abs()
                    && (then.energy - now.energy).abs() <= 1e-9 * now.energy.abs().max(then.energy.abs());
                if falls || shrinks {
                    taken = Some((trial, then));
                    break;
                }
                fraction *= if fraction > 0.2 { 0.5 } else { 0.3 };
            }
            let Some((trial, then)) = taken else {
                // Only factors of this very state could show a better way.
                if again {
                    near = false;
                    continue;
                }
                break;
            };
            let before = residual;
            (values, now) = (trial, then);
            residual = run.residual(&now);
            if !residual.is_finite() {
                return Err(PanelError::NotFinite { name: "the out-of-balance force" });
            }
            let far = now.plane.iter().take(level.freedoms.vertices).any(|w| w.abs() > 1e3 * level.mesh.size);
            if far {
                return Err(lost_contact(level, problem.prepared, problem.load, &now.plane));
            }
            near = nth == 0 && fraction == 1.0 && residual <= NEAR * before;
            // Rounding sets a floor; a full step that no longer gains has reached it.
            stalled = nth == 0 && !again && fraction == 1.0 && residual > 0.5 * before && residual < FAILED;
        }
        if residual.is_nan() || residual > failed {
            let touches =
                now.contact > 0.0 || level.freedoms.held.iter().take(level.freedoms.vertices).any(|h| *h);
            return Err(if touches {
                PanelError::NotConverged { steps, residual }
            } else {
                lost_contact(level, problem.prepared, problem.load, &now.plane)
            });
        }
        if known.as_ref().is_some_and(|(_, then)| problem.roughly || *then <= TELLING) {
            break;
        }
        let Some(way) = run.gives_way(&now.plane) else { break };
        (known, near) = (None, false);
        departures += 1;
        if departures > DEPARTURES {
            return Err(PanelError::NotConverged { steps, residual });
        }
        // Leave along it as far as the energy falls, starting from a part of the thickness.
        let mut reach = 0.3 * thinnest;
        let mut left = run.moved(&values, &way, reach);
        let mut there = run.balance(&left);
        for _ in 0..20 {
            if there.energy < now.energy {
                break;
            }
            reach *= 0.5;
            left = run.moved(&values, &way, reach);
            there = run.balance(&left);
        }
        (values, now) = (left, there);
        residual = f64::INFINITY;
    }
    let mut reactions: Vec<f64> = (0..values.len())
        .map(|d| if part.free[d] == HELD && level.freedoms.used[d] { -now.forces[d] } else { 0.0 })
        .collect();
    level.freedoms.to_plane(&mut reactions);
    Ok(State { values, plane: now.plane, reactions, latched: problem.latched.to_vec(), steps })
}
