//! One shape of panel with its meshes, and what was solved of it: under any load, on any gasket, with or without mass.

use std::sync::Arc;

use coaming_panel::{Answer, Load, Panel, Settings, Solver};

use super::found::Found;
use super::refusal::refusal;
use super::unseen::unseen;
use crate::demand::NotChecked;

/// What is found of a panel under a load.
pub(super) type FoundOf = Result<Arc<Found>, NotChecked>;
/// Frequency of a mode in hertz, with its error as a share.
pub(super) type ModeFound = Result<(f64, f64), NotChecked>;

/// One panel of the shape: what was solved of it.
#[derive(Debug)]
struct Known {
    panel: Panel,
    /// Whether anything was asked of it since the last clearing out.
    used: bool,
    found: Vec<(Load, FoundOf)>,
    on_first: Vec<(Load, FoundOf)>,
    /// By large deflection.
    large: Vec<(Load, FoundOf)>,
    large_on_first: Vec<(Load, FoundOf)>,
    modes: Vec<(Load, ModeFound)>,
    travels: Vec<(Load, Result<f64, NotChecked>)>,
}

impl Known {
    fn new(panel: Panel) -> Self {
        Self {
            panel,
            used: true,
            found: Vec::new(),
            on_first: Vec::new(),
            large: Vec::new(),
            large_on_first: Vec::new(),
            modes: Vec::new(),
            travels: Vec::new(),
        }
    }
}

/// A shape, meshed once. Panels that differ in numbers alone, as in the gasket's law or in their mass, share its meshes:
/// those were refined for what was asked first, and are refined further where another answer errs by more than it may.
#[derive(Debug)]
pub(super) struct Kept {
    settings: Settings,
    /// Where no error is estimated: one mesh for everything, the error taken as a tenth.
    one_mesh: bool,
    solver: Option<Solver>,
    /// The panel that the solver's equations are of.
    holds: Option<usize>,
    /// The panel that is asked about.
    asked: usize,
    known: Vec<Known>,
}

impl Kept {
    /// Nothing solved yet, and nothing meshed.
    pub(super) fn new(settings: Settings, one_mesh: bool) -> Self {
        Self { settings, one_mesh, solver: None, holds: None, asked: 0, known: Vec::new() }
    }

    /// Makes a panel the one that is asked about. It has this shape.
    pub(super) fn turn_to(&mut self, panel: &Panel) {
        let known = self.known.iter().position(|known| known.panel == *panel);
        self.asked = known.unwrap_or(self.known.len());
        match self.known.get_mut(self.asked) {
            Some(known) => known.used = true,
            None => self.known.push(Known::new(panel.clone())),
        }
    }

    /// Lets go of panels that nothing was asked of since this was last called; tells whether any is left.
    pub(super) fn forget_unused(&mut self) -> bool {
        let holds = self.holds.filter(|&holds| self.known.get(holds).is_some_and(|one| one.used));
        self.holds = holds.map(|holds| self.known.iter().take(holds).filter(|one| one.used).count());
        self.known.retain(|one| one.used);
        for one in &mut self.known {
            one.used = false;
        }
        !self.known.is_empty()
    }

    /// Panels that are kept.
    #[cfg(test)]
    pub(super) fn panels(&self) -> usize {
        self.known.len()
    }

    /// Answers that are kept.
    #[cfg(test)]
    pub(super) fn answers(&self) -> usize {
        let of = |one: &Known| {
            let under_loads = [&one.found, &one.on_first, &one.large, &one.large_on_first];
            let answers: usize = under_loads.into_iter().map(Vec::len).sum();
            answers + one.modes.len() + one.travels.len()
        };
        self.known.iter().map(of).sum()
    }

    /// Has the solver answer something about the panel, or gives what it answered before.
    fn ask<T: Clone>(
        &mut self,
        before: impl Fn(&Known) -> Option<Result<T, NotChecked>>,
        solve: impl FnOnce(&mut Solver, &Panel) -> Result<T, NotChecked>,
        keep: impl FnOnce(&mut Known, Result<T, NotChecked>),
    ) -> Result<T, NotChecked> {
        let Some(one) = self.known.get_mut(self.asked) else { return Err(lost()) };
        if let Some(found) = before(one) {
            return found;
        }
        let found = ready(&mut self.solver, &mut self.holds, self.settings, self.asked, &one.panel)
            .and_then(|solver| solve(solver, &one.panel));
        keep(one, found.clone());
        found
    }

    /// The panel under a load.
    pub(super) fn found(&mut self, load: &Load) -> FoundOf {
        let one_mesh = self.one_mesh;
        self.ask(
            |one| under(&one.found, load),
            |solver, panel| {
                let answer = solver.solve(load).map_err(|error| refusal(&error))?;
                solver.keep_meshes();
                Ok(kept(&answer, panel, one_mesh))
            },
            |one, found| one.found.push((load.clone(), found)),
        )
    }

    /// Solves for several loads together, where they can be solved: those of which nothing is known yet.
    pub(super) fn find_all(&mut self, loads: &[Load]) {
        let Some(one) = self.known.get_mut(self.asked) else { return };
        let mut new: Vec<Load> = Vec::new();
        for load in loads {
            if under(&one.found, load).is_none() && !new.contains(load) {
                new.push(load.clone());
            }
        }
        if new.is_empty() {
            return;
        }
        // What is refused leaves each load to be asked for by itself, and says so when it is.
        let solver = ready(&mut self.solver, &mut self.holds, self.settings, self.asked, &one.panel);
        let Ok((solver, answers)) = solver.and_then(|solver| {
            let answers = solver.solve_all(&new).map_err(|error| refusal(&error))?;
            Ok((solver, answers))
        }) else {
            return;
        };
        solver.keep_meshes();
        let found = answers.iter().map(|answer| Ok(kept(answer, &one.panel, self.one_mesh)));
        one.found.extend(new.into_iter().zip(found));
    }

    /// The panel under a load on the first mesh alone, the error taken as a tenth.
    pub(super) fn found_on_first_mesh(&mut self, load: &Load) -> FoundOf {
        self.ask(
            |one| under(&one.on_first, load),
            |solver, panel| {
                let answer = solver.solve_on_first_mesh(load).map_err(|error| refusal(&error))?;
                Ok(kept(&answer, panel, true))
            },
            |one, found| one.on_first.push((load.clone(), found)),
        )
    }

    /// The panel under a load, in equilibrium as it is bent, on no mesh of more triangles than `most`.
    pub(super) fn found_large(&mut self, load: &Load, most: usize) -> FoundOf {
        self.ask(
            |one| under(&one.large, load),
            |solver, panel| {
                let answer = solver.solve_large_within(load, most).map_err(|error| refusal(&error))?;
                solver.keep_meshes();
                Ok(kept(&answer, panel, false))
            },
            |one, found| one.large.push((load.clone(), found)),
        )
    }

    /// The same on the first mesh alone.
    pub(super) fn found_large_on_first_mesh(&mut self, load: &Load) -> FoundOf {
        self.ask(
            |one| under(&one.large_on_first, load),
            |solver, panel| {
                let answer = solver.solve_large_on_first_mesh(load).map_err(|error| refusal(&error))?;
                Ok(kept(&answer, panel, false))
            },
            |one, found| one.large_on_first.push((load.clone(), found)),
        )
    }

    /// The lowest mode about the equilibrium under a load.
    pub(super) fn first_mode(&mut self, load: &Load) -> ModeFound {
        let one_mesh = self.one_mesh;
        self.ask(
            |one| under(&one.modes, load),
            |solver, _| {
                let modes = solver.modes(load, 1).map_err(|error| refusal(&error))?;
                let first =
                    modes.first().ok_or_else(|| NotChecked::not_calculated("a lid without a mode"))?;
                Ok((first.frequency, if one_mesh { 0.1 } else { first.error }))
            },
            |one, found| one.modes.push((load.clone(), found)),
        )
    }

    /// How far the latches travel until the panel lies free on its gasket under a load, in metres.
    pub(super) fn opening(&mut self, load: &Load) -> Result<f64, NotChecked> {
        self.ask(
            |one| under(&one.travels, load),
            |solver, _| {
                let opening = solver.opening(load).map_err(|error| refusal(&error))?;
                Ok(opening.travel)
            },
            |one, found| one.travels.push((load.clone(), found)),
        )
    }
}

/// The solver with the equations of the panel that is asked about.
fn ready<'a>(
    solver: &'a mut Option<Solver>,
    holds: &mut Option<usize>,
    settings: Settings,
    asked: usize,
    panel: &Panel,
) -> Result<&'a mut Solver, NotChecked> {
    let made = match solver.take() {
        Some(mut known) => {
            let updated = if *holds == Some(asked) { Ok(()) } else { known.update(panel) };
            let known = solver.insert(known);
            updated.map_err(|error| refusal(&error))?;
            known
        }
        None => solver.insert(Solver::new(panel, settings).map_err(|error| refusal(&error))?),
    };
    *holds = Some(asked);
    Ok(made)
}

fn lost() -> NotChecked {
    NotChecked::not_calculated("a panel that could not be kept")
}

/// What is known under a load.
fn under<T: Clone>(known: &[(Load, T)], load: &Load) -> Option<T> {
    known.iter().find(|(one, _)| one == load).map(|(_, found)| found.clone())
}

fn kept(answer: &Answer, panel: &Panel, about: bool) -> Arc<Found> {
    let found = Found::new(answer, &unseen(panel));
    Arc::new(if about { found.about() } else { found })
}
