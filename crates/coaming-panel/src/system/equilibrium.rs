//! Equilibrium of the panel with its gasket, latches and stops; latches that would have to push let go.

use super::hold::check_enough;
use super::level::Level;
use super::loads::{Applied, apply};
use super::newton::newton;
use crate::element::hermite::EdgeLine;
use crate::error::PanelError;
use crate::model::latch::{LatchAction, Stop};
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

/// Where to look for an equilibrium from.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Start<'a> {
    /// From the panel as it was drawn.
    Flat,
    /// From that on the mesh from which this one was refined.
    Coarser(&'a State),
    /// From another on this mesh.
    Near(&'a State),
}

/// Finds the equilibrium under a load.
pub(crate) fn solve(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    start: Start<'_>,
    watch: &mut Watch<'_>,
) -> Result<(State, Applied), PanelError> {
    check_enough(&level.freedoms, &level.mesh, prepared, &level.attachments, load)?;
    let applied = apply(level, prepared, load)?;
    let begin = match start {
        Start::Flat => None,
        Start::Coarser(state) => Some((state, carried_over(level, &state.plane))),
        Start::Near(state) => Some((state, state.values.clone())),
    };
    let begin = begin.map(|(state, values)| Begin { latched: state.latched.clone(), values: Some(values) });
    let state = with_latches(
        level,
        prepared,
        load,
        &applied,
        begin,
        Slack::ROUNDING,
        &mut |level, heights, latched, start| {
            newton(level, prepared, load, &applied, heights, latched, start, watch)
        },
    )?;
    Ok((state, applied))
}

/// Where to begin.
pub(crate) struct Begin {
    /// Which latches hold their points.
    pub latched: Vec<bool>,
    /// The state, in the axes of the pairs.
    pub values: Option<Vec<f64>>,
}

/// What a latch may push that holds, over the forces, and how far its point may rise where it does not, over the panel's size.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Slack {
    pub push: f64,
    pub rise: f64,
}

impl Slack {
    /// Rounding.
    pub(crate) const ROUNDING: Self = Self { push: 1e-9, rise: 1e-9 };
    /// What states that are only compared with others leave open.
    pub(crate) const ROUGH: Self = Self { push: 1e-4, rise: 1e-6 };
}

/// Finds an equilibrium for given latches: the heights at which they hold, and which of them do.
/// The last argument is where to start from, where that is known.
pub(crate) type Find<'a> =
    dyn FnMut(&mut Level, &[Option<f64>], &[bool], Option<&[f64]>) -> Result<State, PanelError> + 'a;

/// Lets latches go and take hold until each one that holds pulls.
pub(crate) fn with_latches(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    applied: &Applied,
    begin: Option<Begin>,
    slack: Slack,
    find: &mut Find<'_>,
) -> Result<State, PanelError> {
    let heights: Vec<Option<f64>> = (prepared.panel.latches.iter().enumerate())
        .map(|(i, latch)| match latch.action {
            LatchAction::Height(height) if !load.missing_latches.contains(&i) => Some(height),
            _ => None,
        })
        .collect();
    let (mut latched, mut start) = match begin {
        Some(begin) => (begin.latched, begin.values),
        None => (heights.iter().map(Option::is_some).collect(), None),
    };
    let mut steps = 0;
    // A latch that would have to push lets go; one whose point rises above its height takes hold again.
    for _ in 0..(2 * latched.len() + 4) {
        let state = find(level, &heights, &latched, start.as_deref())?;
        steps += state.steps;
        let scale = applied.resultant.size + state.reactions.iter().map(|r| r.abs()).fold(0.0, f64::max);
        let mut next = latched.clone();
        let mut values = state.values.clone();
        let mut worst = (slack.push * scale, None);
        for (i, &vertex) in level.attachments.latches.iter().enumerate().filter(|&(i, _)| latched[i]) {
            let push = state.reactions[level.freedoms.deflection(vertex)];
            if push <= slack.push * scale {
                continue;
            }
            // Where a stop stands at the latch it takes the push over, and nothing else moves.
            if let Some(sunk) = taken_over(level, prepared, &state, vertex, push) {
                next[i] = false;
                values[level.freedoms.deflection(vertex)] = sunk;
            } else if push > worst.0 {
                worst = (push, Some(i));
            }
        }
        if let Some(i) = worst.1 {
            next[i] = false;
        } else if next == latched {
            let above = level.attachments.latches.iter().enumerate().find(|&(i, &vertex)| {
                let rise = state.values[level.freedoms.deflection(vertex)];
                heights[i].is_some_and(|h| !latched[i] && rise > h + slack.rise * level.mesh.size)
            });
            match above {
                Some((i, _)) => next[i] = true,
                None => return Ok(State { steps, ..state }),
            }
        }
        start = Some(values);
        latched = next;
    }
    Err(PanelError::NotConverged { steps, residual: f64::INFINITY })
}

/// The height of a latch's vertex at which the stop under it pushes as much more as the latch does; none where there is no stop in touch.
fn taken_over(level: &Level, prepared: &Prepared, state: &State, vertex: usize, push: f64) -> Option<f64> {
    let height = state.values[level.freedoms.deflection(vertex)];
    let touches = |(at, stop): &(&usize, &Stop)| {
        **at == vertex && stop.stiffness > 0.0 && height <= stop.height + 1e-9 * level.mesh.size
    };
    let (_, stop) = level.attachments.stops.iter().zip(&prepared.panel.stops).find(touches)?;
    Some(height - push / stop.stiffness)
}

/// The bending of a coarser mesh on the one refined from it, in the axes of the pairs. Displacements in the plane start at nothing: they
/// follow in one step.
fn carried_over(level: &Level, coarse: &[f64]) -> Vec<f64> {
    let (mesh, freedoms) = (&level.mesh, &level.freedoms);
    let (old, parents) = (mesh.halved.0, &mesh.halved.1);
    let mut values = vec![0.0; freedoms.size()];
    let place = |v: usize| [freedoms.deflection(v), freedoms.pair(v)[0], freedoms.pair(v)[1]];
    for v in 0..old {
        let [w, x, y] = place(v);
        (values[w], values[x], values[y]) = (coarse[v], coarse[old + 2 * v], coarse[old + 2 * v + 1]);
    }
    for (k, ends) in parents.iter().enumerate() {
        let line = EdgeLine::new(mesh.vertices[ends[0]], mesh.vertices[ends[1]]);
        let list = freedoms.of_ends(*ends);
        let read = |row: [f64; 6]| row.iter().zip(list).map(|(r, d)| r * values[d]).sum::<f64>();
        let (rise, across) = (read(line.deflection(0.5)), read(line.slope_across(0.5)));
        let slope = line.along * read(line.slope_along(0.5)) + line.along.left() * across;
        let [w, x, y] = place(old + k);
        (values[w], values[x], values[y]) = (rise, slope.x, slope.y);
    }
    freedoms.to_axes(&mut values);
    values
}
