//! Each panel under each load, solved once in a review and kept.

use std::sync::{Arc, Mutex, PoisonError};

use coaming_panel::{Load, Panel, Settings, Solver};

use super::found::{Found, Left};
use super::large::{Large, Stretched};
use super::lid::lid;
use super::refusal::refusal;
use super::setup::Setup;
use crate::demand::NotChecked;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// A compression is wanted to a hundredth of a millimetre, not to half a per cent of a bow that may be less than that: the
/// rows are widened by the error that is left, and print it.
const SCREENING: Settings = Settings { tolerance: 0.05, first_triangles: 120, most_triangles: 20_000 };
/// For large deflection, whose every step takes several times as long.
const STRETCHED: Settings = Settings { most_triangles: 5_000, ..SCREENING };
/// The first mesh alone.
const COARSE: Settings = Settings { tolerance: 0.5, first_triangles: 120, most_triangles: 64 };

/// What was solved so far: a panel is meshed once for all its loads.
#[derive(Debug, Default)]
pub(crate) struct Solutions {
    meshed: Mutex<Vec<Meshed>>,
    large: Large,
    /// One mesh for everything, its error taken as a tenth: where only the paths of what is missing matter.
    coarse: bool,
}

/// Frequency of a mode in hertz, with its error as a share.
type ModeFound = Result<(f64, f64), NotChecked>;

#[derive(Debug)]
struct Meshed {
    panel: Panel,
    /// The first mesh alone.
    first: bool,
    solver: Result<Solver, NotChecked>,
    found: Vec<(Load, Result<Arc<Found>, NotChecked>)>,
    modes: Vec<(Load, ModeFound)>,
    travel: Option<Result<f64, NotChecked>>,
}

impl Solutions {
    /// Does something with the one solver of a panel.
    fn with<T>(&self, panel: &Panel, first: bool, act: impl FnOnce(&mut Meshed) -> T) -> Option<T> {
        let mut all = self.meshed.lock().unwrap_or_else(PoisonError::into_inner);
        let known = all.iter().position(|one| one.first == first && one.panel == *panel);
        let place = known.unwrap_or(all.len());
        if known.is_none() {
            let solver = Solver::new(panel, if first || self.coarse { COARSE } else { SCREENING })
                .map_err(|error| refusal(&error));
            all.push(Meshed {
                panel: panel.clone(),
                first,
                solver,
                found: Vec::new(),
                modes: Vec::new(),
                travel: None,
            });
        }
        all.get_mut(place).map(act)
    }

    /// Solutions on one mesh each, for tests that compare no numbers.
    #[cfg(test)]
    pub(crate) fn coarse() -> Self {
        Self { coarse: true, ..Self::default() }
    }

    fn solved(&self, panel: &Panel, load: &Load, first: bool) -> Result<Arc<Found>, NotChecked> {
        let latches: Vec<coaming_panel::Point> = panel.latches.iter().map(|latch| latch.at).collect();
        let found = self.with(panel, first, |one| {
            if let Some((_, found)) = one.found.iter().find(|(known, _)| known == load) {
                return found.clone();
            }
            let answer = match &mut one.solver {
                Ok(solver) => solver.solve(load).map_err(|error| refusal(&error)),
                Err(error) => Err(error.clone()),
            };
            let found = answer.map(|answer| {
                let found = Found::new(&answer, &latches);
                Arc::new(if first || self.coarse { found.about() } else { found })
            });
            one.found.push((load.clone(), found.clone()));
            found
        });
        found.unwrap_or_else(lost)
    }

    fn first_mode(&self, panel: &Panel, load: &Load) -> ModeFound {
        let found = self.with(panel, false, |one| {
            if let Some((_, found)) = one.modes.iter().find(|(known, _)| known == load) {
                return found.clone();
            }
            let modes = match &mut one.solver {
                Ok(solver) => solver.modes(load, 1).map_err(|error| refusal(&error)),
                Err(error) => Err(error.clone()),
            };
            let found = modes.and_then(|modes| {
                modes
                    .first()
                    .map(|mode| (mode.frequency, if self.coarse { 0.1 } else { mode.error }))
                    .ok_or_else(|| NotChecked::not_calculated("a lid without a mode"))
            });
            one.modes.push((load.clone(), found.clone()));
            found
        });
        found.unwrap_or_else(lost)
    }
}

impl Solutions {
    fn opening(&self, panel: &Panel) -> Result<f64, NotChecked> {
        let found = self.with(panel, false, |one| {
            if let Some(found) = &one.travel {
                return found.clone();
            }
            let opening = match &mut one.solver {
                Ok(solver) => solver.opening(&Load::default()).map_err(|error| refusal(&error)),
                Err(error) => Err(error.clone()),
            };
            let found = opening.map(|opening| opening.travel);
            one.travel = Some(found.clone());
            found
        });
        found.unwrap_or_else(lost)
    }
}

impl Solutions {
    /// A panel under a load, solved for large deflection on the first mesh alone.
    ///
    /// # Errors
    /// [`NotChecked::Refused`] with the solver's reason.
    pub(super) fn roughly_stretched(&self, panel: &Panel, load: &Load) -> Result<Arc<Found>, NotChecked> {
        self.large.solved(panel, load, COARSE)
    }

    /// A panel under a load, solved for large deflection.
    ///
    /// Its error is what a second mesh changed. Where the first is so fine that no second is made, it is what refinement
    /// made of the linear answer from the same first mesh, with what was left then.
    ///
    /// # Errors
    /// [`NotChecked::Refused`] with the solver's reason.
    pub(super) fn stretched(&self, panel: &Panel, load: &Load) -> Result<Stretched, NotChecked> {
        let first = self.roughly_stretched(panel, load)?;
        if self.coarse {
            let stress_error = 0.1 * first.stress.value;
            return Ok(Stretched { found: Arc::new(first.as_ref().clone().about()), stress_error });
        }
        let found = self.large.solved(panel, load, STRETCHED)?;
        if found.left.deflection_share.is_finite() {
            let stress_error = (found.stress.value - first.stress.value).abs();
            return Ok(Stretched { found, stress_error });
        }
        let (rough, fine) = (self.solved(panel, load, true)?, self.solved(panel, load, false)?);
        let change = |rough: f64, fine: f64| if fine == 0.0 { 0.0 } else { (rough / fine - 1.0).abs() };
        let of_deflection = change(rough.deflection.value, fine.deflection.value);
        let deflection_share = of_deflection + fine.left.deflection_share;
        let stress_error = change(rough.stress.value, fine.stress.value) * found.stress.value;
        let left =
            Left { deflection_share, pull_share: fine.left.pull_share, compression: fine.left.compression };
        Ok(Stretched { found: Arc::new(Found { left, ..found.as_ref().clone() }), stress_error })
    }
}

fn lost<T>() -> Result<T, NotChecked> {
    Err(NotChecked::not_calculated("a panel that could not be kept"))
}

/// The lid of a setup, closed.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give; [`NotChecked::Refused`] with the solver's reason.
pub(crate) fn closed(
    prepared: &Prepared<'_>,
    setup: Setup,
    sheet: &mut Worksheet,
) -> Result<Arc<Found>, NotChecked> {
    under(prepared, setup, &Load::default(), sheet)
}

/// The lid of a setup under a load.
///
/// # Errors
/// As [`closed`].
pub(crate) fn under(
    prepared: &Prepared<'_>,
    setup: Setup,
    load: &Load,
    sheet: &mut Worksheet,
) -> Result<Arc<Found>, NotChecked> {
    prepared.solutions.solved(&lid(prepared, setup, sheet)?, load, false)
}

/// Largest stress in the sheet under a load on the first mesh alone, in pascals: what refinement made of it tells its error.
///
/// # Errors
/// As [`closed`].
pub(crate) fn stress_on_first_mesh(
    prepared: &Prepared<'_>,
    setup: Setup,
    load: &Load,
) -> Result<f64, NotChecked> {
    let panel = lid(prepared, setup, &mut Worksheet::new())?;
    prepared.solutions.solved(&panel, load, true).map(|found| found.stress.value)
}

/// Frequency of the lowest mode of the closed lid in hertz, and its error as a share.
///
/// # Errors
/// As [`closed`].
pub(crate) fn first_mode(
    prepared: &Prepared<'_>,
    setup: Setup,
    sheet: &mut Worksheet,
) -> Result<(f64, f64), NotChecked> {
    let panel = lid(prepared, setup.weighed(), sheet)?;
    prepared.solutions.first_mode(&panel, &Load::default())
}

/// How far the latches rise from where they are closed until every one of them is free and the gasket hardly pushes, in
/// metres, and its error.
///
/// # Errors
/// As [`closed`].
pub(crate) fn rebound(
    prepared: &Prepared<'_>,
    setup: Setup,
    sheet: &mut Worksheet,
) -> Result<(f64, f64), NotChecked> {
    let panel = lid(prepared, setup, sheet)?;
    let travel = prepared.solutions.opening(&panel)?;
    let closed = closed(prepared, setup, &mut Worksheet::new())?;
    Ok((travel, closed.deflection_error()))
}
