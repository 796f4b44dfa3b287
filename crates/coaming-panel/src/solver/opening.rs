//! What it takes to open the latches.

use super::{Solver, no_mesh};
use crate::error::PanelError;
use crate::model::latch::{Latch, LatchAction};
use crate::model::load::{Load, Pressure};
use crate::progress::{Progress, Watch, deaf};
use crate::refining::{Solved, solve_level};
use crate::system::equilibrium::Start;
use std::ops::ControlFlow;

/// What opening the latches takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Opening {
    /// Travel of each latch from its closed place until it is free, m.
    pub travels: Vec<f64>,
    /// The largest of them.
    pub travel: f64,
}

impl Solver {
    /// The travel at which every latch is free while the gasket still pushes.
    ///
    /// All latches are taken away, and the gasket is left pushing with one thousandth of what it pushed when closed, by an even pressure
    /// inward; a panel that its weight or the load presses on the gasket needs no such help but gets it all the same.
    pub fn opening(&mut self, load: &Load) -> Result<Opening, PanelError> {
        self.opening_with(load, &mut deaf)
    }

    /// As [`opening`](Self::opening), telling how far it has come; [`ControlFlow::Break`] stops it with [`PanelError::Cancelled`].
    pub fn opening_with(
        &mut self,
        load: &Load,
        tell: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Opening, PanelError> {
        let watch = &mut Watch::new(tell);
        load.check(self.prepared.panel.layers.len(), self.prepared.panel.latches.len())?;
        let closed = self.run(std::slice::from_ref(load), watch)?.into_iter().next().ok_or_else(no_mesh)?;
        let finest = closed.level;
        let level = self.ladder.levels.get(finest).ok_or_else(no_mesh)?;
        let closed = closed.solved;
        let push: f64 = closed.found.gaskets.iter().map(|g| g.force).sum();
        let area: f64 = (0..level.mesh.triangles.len()).map(|t| level.mesh.area(t)).sum();
        let mut open = load.clone();
        open.missing_latches = (0..self.prepared.panel.latches.len()).collect();
        open.pressures.push(Pressure::uniform(-1e-3 * push / area));
        let free = self.let_go(finest, load, &open, watch)?;
        let travel = |latch: &Latch, i: usize| {
            let rise = free.found.latches[i].deflection;
            match latch.action {
                LatchAction::Spring { draw, .. } => rise + draw,
                LatchAction::Height(_) | LatchAction::Force(_) => rise - closed.found.latches[i].deflection,
            }
        };
        let travels: Vec<f64> =
            self.prepared.panel.latches.iter().enumerate().map(|(i, l)| travel(l, i)).collect();
        let largest = travels.iter().copied().fold(0.0, f64::max);
        Ok(Opening { travels, travel: largest })
    }

    /// The panel let go under `open`, which is `load` without its latches: from where it lay on the same mesh when it was let go before, on
    /// another gasket perhaps, or else from mesh to mesh. There is but one equilibrium, whichever way leads there.
    fn let_go(
        &mut self,
        finest: usize,
        load: &Load,
        open: &Load,
        watch: &mut Watch<'_>,
    ) -> Result<Solved, PanelError> {
        let level = self.ladder.levels.get_mut(finest).ok_or_else(no_mesh)?;
        let known = level.let_go(load);
        let near = known.map(|state| solve_level(level, &self.prepared, open, Start::Near(&state), watch));
        let free = match near {
            Some(Ok(free)) => free,
            Some(Err(PanelError::Cancelled)) => return Err(PanelError::Cancelled),
            Some(Err(_)) | None => {
                let mut free: Option<Solved> = None;
                for level in self.ladder.levels.iter_mut().take(finest + 1) {
                    let start = free.as_ref().map_or(Start::Flat, |coarser| Start::Coarser(&coarser.state));
                    free = Some(solve_level(level, &self.prepared, open, start, watch)?);
                }
                free.ok_or_else(no_mesh)?
            }
        };
        let level = self.ladder.levels.get_mut(finest).ok_or_else(no_mesh)?;
        level.keep_let_go(load, &free.state);
        Ok(free)
    }
}
