//! Linear answers to loads in the plane, on meshes where every group of layers can move there.

use super::{Change, Solved, Solver, answer_on};
use crate::error::PanelError;
use crate::mesh::refine::refine;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::{Watch, Work};
use crate::result::answer::Answer;
use crate::result::collect::collect;
use crate::result::error_estimate::{ErrorEstimate, error_left};
use crate::result::in_plane::check_pins;
use crate::system::equilibrium::solve;
use crate::system::level::Level;

impl Solver {
    /// Makes sure that a mesh with freedoms in the plane exists; tells whether it may.
    pub(super) fn reach_in_plane(&mut self, level: usize) -> Result<bool, PanelError> {
        while self.in_plane.len() <= level {
            let mesh = match (self.in_plane.last(), self.levels.first()) {
                (Some(last), _) => {
                    if 4 * last.mesh.triangles.len() > self.settings.most_triangles {
                        return Ok(false);
                    }
                    refine(&last.mesh, &self.prepared.features)
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
        let (state, applied) = solve(level, prepared, load, watch)?;
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
        answer_on(&self.in_plane[level], &self.prepared, load, coarse, error)
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
