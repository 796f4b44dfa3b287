//! Panels that a load bends past half their thickness: solved with the stretching that the deflection brings, and kept.

use std::sync::{Arc, Mutex, PoisonError};

use coaming_panel::{Load, Panel, Settings, Solver};

use super::found::Found;
use super::lid::lid;
use super::refusal::refusal;
use super::setup::Setup;
use super::unseen::unseen;
use crate::demand::NotChecked;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// What was solved for large deflection so far.
#[derive(Debug, Default)]
pub(super) struct Large(Mutex<Vec<Meshed>>);

#[derive(Debug)]
struct Meshed {
    panel: Panel,
    settings: Settings,
    solver: Result<Solver, NotChecked>,
    /// Whether anything was asked of it since what is unused was last let go.
    used: bool,
    found: Vec<(Load, Result<Arc<Found>, NotChecked>)>,
}

impl Large {
    /// A panel under a load, in equilibrium as it is bent.
    ///
    /// # Errors
    /// [`NotChecked::Refused`] with the solver's reason.
    pub(super) fn solved(
        &self,
        panel: &Panel,
        load: &Load,
        settings: Settings,
    ) -> Result<Arc<Found>, NotChecked> {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let known = all.iter().position(|one| one.settings == settings && one.panel == *panel);
        let place = known.unwrap_or(all.len());
        if known.is_none() {
            let solver = Solver::new(panel, settings).map_err(|error| refusal(&error));
            all.push(Meshed { panel: panel.clone(), settings, solver, used: true, found: Vec::new() });
        }
        let lost = || NotChecked::not_calculated("a panel that could not be kept");
        let one = all.get_mut(place).ok_or_else(lost)?;
        one.used = true;
        if let Some((_, found)) = one.found.iter().find(|(known, _)| known == load) {
            return found.clone();
        }
        let answer = match &mut one.solver {
            Ok(solver) => solver.solve_large(load).map_err(|error| refusal(&error)),
            Err(error) => Err(error.clone()),
        };
        let found = answer.map(|answer| Arc::new(Found::new(&answer, &unseen(panel))));
        one.found.push((load.clone(), found.clone()));
        found
    }

    /// Lets go of what nothing was asked of since this was last called.
    pub(super) fn forget_unused(&self) {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        all.retain(|one| one.used);
        for one in all.iter_mut() {
            one.used = false;
        }
    }
}

/// A state of large deflection with the error of its largest stress, in pascals.
#[derive(Debug, Clone)]
pub(crate) struct Stretched {
    pub(crate) found: Arc<Found>,
    pub(crate) stress_error: f64,
}

/// The lid of a setup under a load, solved for large deflection. The lid is free in its plane: a sponge holds no edge
/// against drawing in, and neither does a latch.
///
/// # Errors
/// As [`under`](super::under).
pub(crate) fn stretched(prepared: &Prepared<'_>, setup: Setup, load: &Load) -> Result<Stretched, NotChecked> {
    prepared.solutions.stretched(&lid(prepared, setup, &mut Worksheet::new())?, load)
}

/// The same on the first mesh alone: to compare places, not to judge by.
///
/// # Errors
/// As [`under`](super::under).
pub(crate) fn roughly_stretched(
    prepared: &Prepared<'_>,
    setup: Setup,
    load: &Load,
) -> Result<Arc<Found>, NotChecked> {
    prepared.solutions.roughly_stretched(&lid(prepared, setup, &mut Worksheet::new())?, load)
}
