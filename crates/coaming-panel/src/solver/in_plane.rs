//! Answers on meshes where every group of layers can move in the plane: to loads that act there, and large deflections.

use super::{Solver, no_mesh};
use crate::error::PanelError;
use crate::ladder::{Keep, Ladder};
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::{Watch, Work};
use crate::refining::{Run, Solved};
use crate::result::answer::Answer;
use crate::result::collect::collect;
use crate::result::in_plane::check_pins;
use crate::result::indicator::indicator;
use crate::system::equilibrium::{Start, State, solve};
use crate::system::level::Level;

/// Answers on the mesh of this number, from the state on the mesh before where there is one.
pub(super) type OnMesh<'a> = dyn FnMut(&mut Solver, usize, Option<&State>) -> Result<Solved, PanelError> + 'a;

impl Solver {
    /// The meshes with freedoms in the plane for every group, and the panel; the first is made when first asked for.
    pub(super) fn in_plane(&mut self) -> Result<(&mut Ladder, &Prepared), PanelError> {
        let ladder = match self.in_plane.take() {
            Some(ladder) => ladder,
            None => {
                let first = self.ladder.levels.first().ok_or_else(no_mesh)?;
                let mut made = Ladder::new(Level::in_plane_from(first, &self.prepared)?);
                if self.ladder.kept == Keep::Always {
                    made.kept = Keep::WhereTheyServe;
                }
                made
            }
        };
        Ok((self.in_plane.insert(ladder), &self.prepared))
    }

    /// A mesh that there is, and the panel.
    pub(super) fn in_plane_level(&mut self, at: usize) -> Result<(&mut Level, &Prepared), PanelError> {
        let (ladder, prepared) = self.in_plane()?;
        Ok((ladder.levels.get_mut(at).ok_or_else(no_mesh)?, prepared))
    }

    /// Makes sure that the mesh after `at` is the one refined by these squared indicators; tells whether it may be.
    ///
    /// Where nothing errs as far as can be seen, everything is divided, to see whether that is so.
    pub(super) fn climb_in_plane(&mut self, at: usize, squares: &[f64]) -> Result<bool, PanelError> {
        let super::Settings { tolerance, most_triangles, .. } = self.settings;
        let (ladder, prepared) = self.in_plane()?;
        let all = match squares.iter().any(|&s| s > 0.0) {
            true => None,
            false => Some(vec![1.0; squares.len()]),
        };
        ladder.climb(at, all.as_deref().unwrap_or(squares), prepared, tolerance, most_triangles)
    }

    /// Takes a load from mesh to mesh until deflection and displacement in the plane meet the tolerance.
    pub(super) fn run_in_plane(&mut self, load: &Load, solve: &mut OnMesh<'_>) -> Result<Run, PanelError> {
        let enough = self.settings.enough();
        let first = solve(self, 0, None)?;
        let mut run = Run::first(first, self.in_plane_level(0)?.0.mesh.triangles.len());
        while !run.error.met && self.climb_in_plane(run.level, &run.solved.indicator.squares)? {
            let fine = solve(self, run.level + 1, Some(&run.solved.state))?;
            let levels = &self.in_plane()?.0.levels;
            let (Some(coarse), Some(finer)) = (levels.get(run.level), levels.get(run.level + 1)) else {
                break;
            };
            let displaced = match load.acts_in_plane() {
                true => displaced(coarse, &run.solved.state, finer, &fine.state),
                false => 0.0,
            };
            run.next(fine, finer.mesh.triangles.len(), enough, displaced);
        }
        Ok(run)
    }

    /// Solves for a load that acts in the plane.
    pub(super) fn solve_in_plane(
        &mut self,
        load: &Load,
        watch: &mut Watch<'_>,
    ) -> Result<Answer, PanelError> {
        let run = self.run_in_plane(load, &mut |solver, at, before| {
            let (level, prepared) = solver.in_plane_level(at)?;
            watch.mesh(Work::Equilibrium, at, level.mesh.triangles.len())?;
            let start = before.map_or(Start::Flat, Start::Coarser);
            let (state, applied) = solve(level, prepared, load, start, watch)?;
            check_pins(level, prepared, &state, applied.in_plane)?;
            let found = collect(level, prepared, load, &state, &applied);
            let indicator = indicator(level, prepared, load, &state.plane);
            Ok(Solved { state, found, indicator })
        })?;
        let (level, prepared) = self.in_plane_level(run.level)?;
        super::answer_on(level, prepared, load, run.solved, run.error)
    }
}

/// The largest change of a displacement in the plane at a vertex of the coarser mesh, over the largest displacement.
fn displaced(coarse: &Level, at_coarse: &State, fine: &Level, at_fine: &State) -> f64 {
    let (mut change, mut largest) = (0.0_f64, 0.0_f64);
    for &group in &coarse.freedoms.membrane {
        for v in 0..coarse.mesh.vertices.len() {
            let pairs = (coarse.freedoms.at_vertex(group, v), fine.freedoms.at_vertex(group, v));
            let (Some(a), Some(b)) = pairs else { continue };
            let (a, b) = (coarse.freedoms.pair(a), fine.freedoms.pair(b));
            for (i, j) in a.into_iter().zip(b) {
                change = change.max((at_coarse.plane[i] - at_fine.plane[j]).abs());
                largest = largest.max(at_fine.plane[j].abs());
            }
        }
    }
    if largest > 0.0 { change / largest } else { 0.0 }
}
