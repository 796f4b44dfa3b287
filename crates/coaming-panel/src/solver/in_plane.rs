//! Linear answers to loads in the plane, on meshes where every group of layers can move there.

use super::{Solver, answer_on, no_mesh};
use crate::error::PanelError;
use crate::mesh::refine::refine_marked;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::{Watch, Work};
use crate::result::answer::Answer;
use crate::result::collect::{Collected, collect};
use crate::result::error_estimate::ErrorEstimate;
use crate::result::in_plane::check_pins;
use crate::result::indicator::indicator;
use crate::system::equilibrium::{State, solve};
use crate::system::level::Level;

/// What one mesh answers.
pub(super) struct Solved {
    pub(super) state: State,
    pub(super) found: Collected,
}

impl Solver {
    /// Makes sure that a mesh with freedoms in the plane exists; tells whether it may.
    pub(super) fn reach_in_plane(&mut self, level: usize) -> Result<bool, PanelError> {
        while self.in_plane.len() <= level {
            let mesh = match (self.in_plane.last(), self.ladder.levels.first()) {
                (Some(last), _) => {
                    if 4 * last.mesh.triangles.len() > self.settings.most_triangles {
                        return Ok(false);
                    }
                    let all = vec![true; last.mesh.triangles.len()];
                    refine_marked(&last.mesh, &self.prepared.features, &all)
                }
                (None, Some(first)) => first.mesh.clone(),
                (None, None) => return Ok(false),
            };
            self.in_plane.push(Level::in_plane(mesh, &self.prepared)?);
        }
        Ok(true)
    }

    /// A level that was reached, and the panel.
    pub(super) fn in_plane_level(&mut self, level: usize) -> Result<(&mut Level, &Prepared), PanelError> {
        match self.in_plane.get_mut(level) {
            Some(level) => Ok((level, &self.prepared)),
            None => Err(PanelError::Missing { name: "mesh".into(), reason: "there is none".into() }),
        }
    }

    /// Linear equilibrium on one mesh.
    fn solve_in_plane_level(
        &mut self,
        at: usize,
        load: &Load,
        watch: &mut Watch<'_>,
    ) -> Result<Solved, PanelError> {
        self.reach_in_plane(at)?;
        let (level, prepared) = self.in_plane_level(at)?;
        watch.mesh(Work::Equilibrium, at, level.mesh.triangles.len())?;
        let (state, applied) = solve(level, prepared, load, None, watch)?;
        check_pins(level, &state, applied.in_plane)?;
        let found = collect(level, prepared, load, &state, &applied);
        Ok(Solved { state, found })
    }

    /// Solves for a load that acts in the plane, refining until deflection and displacement in the plane meet the tolerance.
    pub(super) fn solve_in_plane(
        &mut self,
        load: &Load,
        watch: &mut Watch<'_>,
    ) -> Result<Answer, PanelError> {
        let mut coarse = self.solve_in_plane_level(0, load, watch)?;
        let (mut before, mut plane_before): (Option<Change>, Option<f64>) = (None, None);
        let mut level = 0;
        let mut error = ErrorEstimate { deflection: f64::INFINITY, ..ErrorEstimate::default() };
        while self.reach_in_plane(level + 1)? {
            level += 1;
            let fine = self.solve_in_plane_level(level, load, watch)?;
            let change = Change::between(&coarse, &fine);
            let plane = plane_change(&self.in_plane[level - 1], &coarse, &self.in_plane[level], &fine);
            error = change.estimate(before.as_ref());
            error.deflection = error.deflection.max(error_left(plane, plane_before).0);
            error.met = error.deflection <= self.settings.tolerance;
            (before, plane_before) = (Some(change), Some(plane));
            coarse = fine;
            if error.met {
                break;
            }
        }
        error.triangles = self.in_plane[level].mesh.triangles.len();
        let here = self.in_plane.get_mut(level).ok_or_else(no_mesh)?;
        let indicator = indicator(here, &self.prepared, load, &coarse.state.plane);
        let solved = crate::refining::Solved { state: coarse.state, found: coarse.found, indicator };
        answer_on(here, &self.prepared, load, solved, error)
    }
}

/// The largest change of a displacement in the plane at a vertex of the coarser mesh, over the largest displacement.
pub(super) fn plane_change(coarse: &Level, at_coarse: &Solved, fine: &Level, at_fine: &Solved) -> f64 {
    let (mut change, mut largest) = (0.0_f64, 0.0_f64);
    for &group in &coarse.freedoms.membrane {
        for v in 0..coarse.mesh.vertices.len() {
            let pairs = (coarse.freedoms.at_vertex(group, v), fine.freedoms.at_vertex(group, v));
            let (Some(a), Some(b)) = pairs else { continue };
            let (a, b) = (coarse.freedoms.pair(a), fine.freedoms.pair(b));
            for (i, j) in a.into_iter().zip(b) {
                change = change.max((at_coarse.state.plane[i] - at_fine.state.plane[j]).abs());
                largest = largest.max(at_fine.state.plane[j].abs());
            }
        }
    }
    if largest > 0.0 { change / largest } else { 0.0 }
}

/// What changed from one mesh to the next.
pub(super) struct Change {
    deflection: f64,
    latch_force: f64,
    compression: f64,
}

impl Change {
    pub(super) fn between(coarse: &Solved, fine: &Solved) -> Self {
        // Old vertices keep their index, and deflections come first: compare where both have a vertex.
        let old = coarse.found.vertices;
        let deflection = (0..old).map(|v| (coarse.state.plane[v] - fine.state.plane[v]).abs()).fold(
            (coarse.found.largest_deflection.value.abs() - fine.found.largest_deflection.value.abs()).abs(),
            f64::max,
        );
        let scale = fine.found.largest_deflection.value.abs();
        let strongest = fine.found.latches.iter().map(|l| l.pull).fold(0.0, f64::max);
        let latch = (coarse.found.latches.iter().zip(&fine.found.latches))
            .map(|(a, b)| (a.pull - b.pull).abs())
            .fold(0.0, f64::max);
        let compression = (coarse.found.gaskets.iter().zip(&fine.found.gaskets))
            .map(|(a, b)| {
                (a.smallest.value - b.smallest.value).abs().max((a.largest.value - b.largest.value).abs())
            })
            .fold(0.0, f64::max);
        let share = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { 0.0 };
        Self { deflection: share(deflection, scale), latch_force: share(latch, strongest), compression }
    }

    pub(super) fn estimate(&self, before: Option<&Self>) -> ErrorEstimate {
        let (deflection, order) = error_left(self.deflection, before.map(|b| b.deflection));
        let (latch_force, _) = error_left(self.latch_force, before.map(|b| b.latch_force));
        let (compression, _) = error_left(self.compression, before.map(|b| b.compression));
        ErrorEstimate { deflection, latch_force, compression, order, ..ErrorEstimate::default() }
    }
}

/// Factor from the last change to the error that is left.
///
/// When each halving of the mesh divides the error by 2^p, the error left is the last change over 2^p - 1. With p seen on three meshes
/// (limited to 0.5..=2, the range between the sharpest corners and smooth fields) and a safety of 1.5; with two meshes, p = 1.
pub(super) fn error_left(last_change: f64, change_before: Option<f64>) -> (f64, Option<f64>) {
    match change_before.filter(|&b| b > 0.0 && last_change > 0.0) {
        None => (last_change, None),
        Some(before) => {
            let order = crate::math::ln(before / last_change) / std::f64::consts::LN_2;
            let reduction = (before / last_change).clamp(2.0_f64.sqrt(), 4.0);
            (1.5 * last_change / (reduction - 1.0), Some(order))
        }
    }
}
