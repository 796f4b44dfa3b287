//! Answers on the first mesh alone, and meshes that are kept: for searches among many loads.

use super::{Solver, answer_on, no_mesh};
use crate::error::PanelError;
use crate::ladder::Keep;
use crate::model::load::Load;
use crate::progress::{Watch, deaf};
use crate::refining::Run;
use crate::result::answer::Answer;

impl Solver {
    /// Keeps the meshes that there are for whatever is asked from now on, as [`update`](Self::update) does: refined further where an
    /// answer needs it, and never made anew. Answers then depend on what was asked before within the errors estimated.
    ///
    /// For loads in the plane and for large deflection, whose stresses crowd where the load is, a mesh is kept only for answers whose own
    /// mesh would divide no more than it did.
    pub fn keep_meshes(&mut self) {
        self.ladder.kept = Keep::Always;
        if let Some(ladder) = &mut self.in_plane {
            ladder.kept = Keep::WhereTheyServe;
        }
    }

    /// Solves for one load on the first mesh alone, to compare loads with each other. No error is estimated: the estimate of the answer is
    /// infinite and says that nothing is met.
    ///
    /// # Errors
    /// As [`solve`](Self::solve). [`PanelError::Missing`] for a load in the plane, which has meshes of its own.
    pub fn solve_on_first_mesh(&mut self, load: &Load) -> Result<Answer, PanelError> {
        load.check(self.prepared.panel.layers.len(), self.prepared.panel.latches.len())?;
        if load.acts_in_plane() {
            return Err(PanelError::Missing {
                name: "first mesh".into(),
                reason: "a load in the plane has meshes of its own".into(),
            });
        }
        let first = self.ladder.levels.first_mut().ok_or_else(no_mesh)?;
        let run = Run::start(first, &self.prepared, load, &mut Watch::new(&mut deaf))?;
        answer_on(first, &self.prepared, load, run.solved, run.error)
    }
}
