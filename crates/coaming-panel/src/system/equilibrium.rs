//! Equilibrium of the panel with its gasket, latches and stops; latches that would have to push let go.

use super::hold::check_enough;
use super::level::Level;
use super::loads::{Applied, apply};
use super::newton::newton;
use crate::error::PanelError;
use crate::model::latch::LatchAction;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::Watch;

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
    watch: &mut Watch<'_>,
) -> Result<(State, Applied), PanelError> {
    check_enough(&level.freedoms, &level.mesh, prepared, &level.attachments, load)?;
    let applied = apply(level, prepared, load)?;
    let state = with_latches(level, prepared, load, &applied, &mut |level, heights, latched| {
        newton(level, prepared, load, &applied, heights, latched, watch)
    })?;
    Ok((state, applied))
}

/// Finds an equilibrium for given latches: the heights at which they hold, and which of them do.
pub(crate) type Find<'a> = dyn FnMut(&mut Level, &[Option<f64>], &[bool]) -> Result<State, PanelError> + 'a;

/// Lets latches go and take hold until each one that holds pulls.
pub(crate) fn with_latches(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    applied: &Applied,
    find: &mut Find<'_>,
) -> Result<State, PanelError> {
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
        let state = find(level, &heights, &latched)?;
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
                    None => return Ok(State { steps, ..state }),
                }
            }
        }
        latched = next;
    }
    Err(PanelError::NotConverged { steps, residual: f64::INFINITY })
}
