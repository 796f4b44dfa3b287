//! One load on its way from mesh to mesh: its state, its indicators, and the error that is left.

use crate::error::PanelError;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::{Watch, Work};
use crate::result::answer::Extreme;
use crate::result::collect::{Collected, collect};
use crate::result::error_estimate::{ErrorEstimate, SAFETY, order, share_left};
use crate::result::indicator::{Indicator, NEARLY_LARGEST, indicator};
use crate::system::equilibrium::{Start, State, solve};
use crate::system::level::Level;
use crate::system::loads::apply;

/// Compressions this near to the extremes, as a share of what lies between them, are watched likewise.
const NEARLY_EXTREME: f64 = 0.1;
/// Share of the difference between two ways of recovery that counts as an error.
const DOUBT: f64 = 0.1;
/// The same where the panel is stretched: its meshes follow the energy of stretching too, and leave moments rougher.
const DOUBT_STRETCHED: f64 = 0.5;

/// What one mesh answers.
#[derive(Debug)]
pub(crate) struct Solved {
    pub state: State,
    pub found: Collected,
    pub indicator: Indicator,
}

/// One load on its way from mesh to mesh.
#[derive(Debug)]
pub(crate) struct Run {
    /// The level of the last solution.
    pub level: usize,
    pub solved: Solved,
    pub error: ErrorEstimate,
}

/// Which error left is small enough.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Enough {
    /// As a share.
    pub share: f64,
    /// Of a deflection, m.
    pub deflection: f64,
}

/// Solves on one level. A state that is known already counts as one step told.
pub(crate) fn solve_level(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    start: Start<'_>,
    watch: &mut Watch<'_>,
) -> Result<Solved, PanelError> {
    let (state, applied) = match level.state(load) {
        Some(known) => {
            watch.step()?;
            (known, apply(level, prepared, load)?)
        }
        None => {
            let found = solve(level, prepared, load, start, watch)?;
            level.keep(load, &found.0);
            found
        }
    };
    let found = collect(level, prepared, load, &state, &applied);
    let indicator = indicator(level, prepared, load, &state.plane);
    Ok(Solved { state, found, indicator })
}

impl Run {
    /// The first mesh: nothing to compare with yet.
    pub(crate) fn start(
        level: &mut Level,
        prepared: &Prepared,
        load: &Load,
        watch: &mut Watch<'_>,
    ) -> Result<Self, PanelError> {
        let triangles = level.mesh.triangles.len();
        watch.mesh(Work::Equilibrium, 0, triangles)?;
        Ok(Self::first(solve_level(level, prepared, load, Start::Flat, watch)?, triangles))
    }

    /// What the first mesh answers.
    pub(crate) fn first(solved: Solved, triangles: usize) -> Self {
        let unknown = f64::INFINITY;
        let error = ErrorEstimate {
            deflection: unknown,
            latch_force: if solved.found.latches.is_empty() { 0.0 } else { unknown },
            compression: if solved.found.gaskets.is_empty() { 0.0 } else { unknown },
            moment: unknown,
            membrane_force: if solved.indicator.largest_membrane_force.value == 0.0 { 0.0 } else { unknown },
            order: None,
            triangles,
            met: false,
        };
        Self { level: 0, solved, error }
    }

    /// The next finer mesh.
    pub(crate) fn go_on(
        &mut self,
        level: &mut Level,
        prepared: &Prepared,
        load: &Load,
        enough: Enough,
        watch: &mut Watch<'_>,
    ) -> Result<(), PanelError> {
        let triangles = level.mesh.triangles.len();
        watch.mesh(Work::Equilibrium, self.level + 1, triangles)?;
        let fine = solve_level(level, prepared, load, Start::Coarser(&self.solved.state), watch)?;
        self.next(fine, triangles, enough, 0.0);
        Ok(())
    }

    /// What the next finer mesh answers. `displaced` is what changed of the displacements in the plane, over the largest.
    pub(crate) fn next(&mut self, fine: Solved, triangles: usize, enough: Enough, displaced: f64) {
        let before = self.error.triangles;
        let mut error = changed(&self.solved, &fine);
        let (old, new) = (self.solved.indicator.total, fine.indicator.total);
        let left = share_left(old, new, self.level == 0);
        let bent = SAFETY * left * error.deflection;
        let displaced = SAFETY * left * displaced;
        error.deflection = bent.max(displaced);
        error.latch_force *= SAFETY * left;
        error.compression *= SAFETY * left;
        // What passes through a section is less regular than a deflection: it may stand still by chance while two ways to recover it
        // still differ.
        let now = &fine.indicator;
        let part = if now.largest_membrane_force.value == 0.0 { DOUBT } else { DOUBT_STRETCHED };
        let doubted = |doubt: f64, of: Extreme| if doubt > 0.0 { part * doubt / of.value.abs() } else { 0.0 };
        error.moment = (error.moment * left).max(doubted(now.moment_doubt, now.largest_moment));
        let forces = doubted(now.force_doubt, now.largest_membrane_force);
        error.membrane_force = (SAFETY * error.membrane_force * left).max(forces);
        error.order = order(old, new, before, triangles);
        error.triangles = triangles;
        let largest = fine.found.largest_deflection.value.abs();
        let met = bent <= enough.share || bent * largest <= enough.deflection;
        error.met = met && displaced <= enough.share;
        *self = Self { level: self.level + 1, solved: fine, error };
    }
}

/// What changed from one mesh to the next, in the measures of the estimate.
pub(crate) fn changed(coarse: &Solved, fine: &Solved) -> ErrorEstimate {
    let share = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { 0.0 };
    // Old vertices keep their index, and deflections come first: compare where both have a vertex.
    let (was, is) = (coarse.found.largest_deflection.value, fine.found.largest_deflection.value);
    let deflection = (0..coarse.found.vertices)
        .map(|v| (coarse.state.plane[v] - fine.state.plane[v]).abs())
        .fold((was.abs() - is.abs()).abs(), f64::max);
    let strongest = fine.found.latches.iter().map(|l| l.pull).fold(0.0, f64::max);
    let latch = (coarse.found.latches.iter().zip(&fine.found.latches))
        .map(|(a, b)| (a.pull - b.pull).abs())
        .fold(0.0, f64::max);
    let compression = (coarse.found.gaskets.iter().zip(&fine.found.gaskets))
        .map(|(a, b)| {
            (a.smallest.value - b.smallest.value).abs().max((a.largest.value - b.largest.value).abs())
        })
        .fold(0.0, f64::max);
    // Neither extreme may stand still by chance while the places around it move.
    let near_extreme = |gasket: usize, value: f64| {
        let (low, high) =
            (coarse.found.gaskets[gasket].smallest.value, coarse.found.gaskets[gasket].largest.value);
        value < low + NEARLY_EXTREME * (high - low) || value > high - NEARLY_EXTREME * (high - low)
    };
    let compression = (coarse.found.seats.iter())
        .filter(|&&(gasket, _, value)| near_extreme(gasket, value))
        .map(|&(_, v, _)| (coarse.state.plane[v] - fine.state.plane[v]).abs())
        .fold(compression, f64::max);
    let section = |old: &[f64], new: &[f64], [was, is]: [Extreme; 2]| {
        let (was, is) = (was.value.abs(), is.value.abs());
        // One value may stand still by chance while those around it move. Under pure twist the sign of the larger is rounding.
        let change = (old.iter().zip(new))
            .map(|(a, b)| (a.abs(), b.abs()))
            .filter(|(a, b)| a.max(*b) > NEARLY_LARGEST * is)
            .map(|(a, b)| (a - b).abs())
            .fold((was - is).abs(), f64::max);
        share(change, is)
    };
    let (old, new) = (&coarse.indicator, &fine.indicator);
    let moment = section(&old.moments, &new.moments, [old.largest_moment, new.largest_moment]);
    let passing = [old.largest_membrane_force, new.largest_membrane_force];
    let membrane_force = section(&old.forces, &new.forces, passing);
    ErrorEstimate {
        deflection: share(deflection, is.abs()),
        latch_force: share(latch, strongest),
        compression,
        moment,
        membrane_force,
        ..ErrorEstimate::default()
    }
}
