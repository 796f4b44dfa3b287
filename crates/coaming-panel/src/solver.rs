//! The front of the crate: a panel, meshed once, solved for any number of loads.

use crate::error::{PanelError, checked};
use crate::geometry::polygon;
use crate::mesh::refine::refine;
use crate::mesh::triangulate::triangulate;
use crate::model::latch::{Latch, LatchAction};
use crate::model::load::{Load, Pressure};
use crate::model::panel::Panel;
use crate::model::prepare::{Prepared, prepare};
use crate::progress::{Progress, Watch, Work, deaf};
use crate::result::answer::Answer;
use crate::result::collect::{Collected, collect};
use crate::result::error_estimate::{ErrorEstimate, error_left};
use crate::result::field::Field;
use crate::result::modes::{Mode, hertz, lowest};
use crate::system::equilibrium::{State, solve};
use crate::system::level::Level;
use std::ops::ControlFlow;

mod buckling;
mod in_plane;
mod large;

/// How fine and how sure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Settings {
    /// Largest estimated error accepted, over the largest deflection.
    pub tolerance: f64,
    /// About how many triangles the first mesh has; small features add more.
    pub first_triangles: usize,
    /// No mesh has more triangles than this.
    pub most_triangles: usize,
}

impl Default for Settings {
    fn default() -> Self {
        Self { tolerance: 0.005, first_triangles: 120, most_triangles: 150_000 }
    }
}

/// What opening the latches takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Opening {
    /// Travel of each latch from its closed place until it is free, m.
    pub travels: Vec<f64>,
    /// The largest of them.
    pub travel: f64,
}

/// A panel ready to be solved. Meshes and symbolic factors are kept from load to load; answers do not depend on what was solved before.
#[derive(Debug)]
pub struct Solver {
    prepared: Prepared,
    settings: Settings,
    levels: Vec<Level>,
    /// The same meshes with freedoms in the plane for every group; made when first asked for.
    in_plane: Vec<Level>,
}

struct Solved {
    state: State,
    found: Collected,
}

impl Solver {
    /// Checks a panel and meshes it.
    pub fn new(panel: &Panel, settings: Settings) -> Result<Self, PanelError> {
        checked("tolerance", settings.tolerance, "greater than 0 and below 1", |t| t > 0.0 && t < 1.0)?;
        checked("first_triangles", settings.first_triangles as f64, "between 16 and 20 000", |n| {
            (16.0..=20_000.0).contains(&n)
        })?;
        checked("most_triangles", settings.most_triangles as f64, "between 64 and 1 000 000", |n| {
            (64.0..=1e6).contains(&n)
        })?;
        let prepared = prepare(panel)?;
        let area = polygon::area(&prepared.outline.polygon).abs()
            - prepared.holes.iter().map(|h| polygon::area(&h.polygon).abs()).sum::<f64>();
        // Refined meshes have triangles of about 0.6 of the largest area allowed.
        let mesh = triangulate(&prepared.plan(1.6 * area / settings.first_triangles as f64))?;
        let first = Level::new(mesh, &prepared)?;
        Ok(Self { prepared, settings, levels: vec![first], in_plane: Vec::new() })
    }

    /// Makes sure that a level of refinement exists; tells whether it may.
    fn reach(&mut self, level: usize) -> Result<bool, PanelError> {
        while self.levels.len() <= level {
            let Some(last) = self.levels.last() else { return Ok(false) };
            if 4 * last.mesh.triangles.len() > self.settings.most_triangles {
                return Ok(false);
            }
            let finer = refine(&last.mesh, &self.prepared.features);
            self.levels.push(Level::new(finer, &self.prepared)?);
        }
        Ok(true)
    }

    fn solve_level(&mut self, nth: usize, load: &Load, watch: &mut Watch<'_>) -> Result<Solved, PanelError> {
        let Some(level) = self.levels.get_mut(nth) else {
            return Err(PanelError::Missing { name: "mesh".into(), reason: "there is none".into() });
        };
        watch.mesh(Work::Equilibrium, nth, level.mesh.triangles.len())?;
        let (state, applied) = solve(level, &self.prepared, load, watch)?;
        let found = collect(level, &self.prepared, load, &state, &applied);
        Ok(Solved { state, found })
    }

    /// Solves for one load, refining until the estimated error meets the tolerance or the largest mesh is reached.
    pub fn solve(&mut self, load: &Load) -> Result<Answer, PanelError> {
        self.solve_with(load, &mut deaf)
    }

    /// As [`solve`](Self::solve), telling how far it has come; [`ControlFlow::Break`] stops it with [`PanelError::Cancelled`], after which
    /// the solver can be used as before.
    pub fn solve_with(
        &mut self,
        load: &Load,
        tell: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Answer, PanelError> {
        load.check(self.prepared.panel.layers.len(), self.prepared.panel.latches.len())?;
        let watch = &mut Watch::new(tell);
        if load.acts_in_plane() {
            return self.solve_in_plane(load, watch);
        }
        let (level, solved, error) = self.solve_to_tolerance(load, watch)?;
        self.answer(level, load, solved, error)
    }

    fn solve_to_tolerance(
        &mut self,
        load: &Load,
        watch: &mut Watch<'_>,
    ) -> Result<(usize, Solved, ErrorEstimate), PanelError> {
        let mut coarse = self.solve_level(0, load, watch)?;
        let mut before: Option<Change> = None;
        let mut level = 0;
        let mut error = ErrorEstimate { deflection: f64::INFINITY, ..ErrorEstimate::default() };
        while self.reach(level + 1)? {
            level += 1;
            let fine = self.solve_level(level, load, watch)?;
            let change = Change::between(&coarse, &fine);
            error = change.estimate(before.as_ref());
            error.met = error.deflection <= self.settings.tolerance;
            before = Some(change);
            coarse = fine;
            if error.met {
                break;
            }
        }
        error.triangles = self.levels[level].mesh.triangles.len();
        Ok((level, coarse, error))
    }

    fn answer(
        &self,
        level: usize,
        load: &Load,
        solved: Solved,
        error: ErrorEstimate,
    ) -> Result<Answer, PanelError> {
        let Some(level) = self.levels.get(level) else {
            return Err(PanelError::Missing { name: "mesh".into(), reason: "there is none".into() });
        };
        answer_on(level, &self.prepared, load, solved, error)
    }

    /// The lowest natural modes about the equilibrium under a load, on a mesh that meets the tolerance for the frequencies too.
    pub fn modes(&mut self, load: &Load, count: usize) -> Result<Vec<Mode>, PanelError> {
        self.modes_with(load, count, &mut deaf)
    }

    /// As [`modes`](Self::modes), telling how far it has come; [`ControlFlow::Break`] stops it with [`PanelError::Cancelled`].
    pub fn modes_with(
        &mut self,
        load: &Load,
        count: usize,
        tell: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Vec<Mode>, PanelError> {
        let watch = &mut Watch::new(tell);
        load.check(self.prepared.panel.layers.len(), self.prepared.panel.latches.len())?;
        checked("count of modes", count as f64, "between 1 and 100", |n| (1.0..=100.0).contains(&n))?;
        let mut before: Option<Vec<f64>> = None;
        let mut level = 0;
        loop {
            let state = self.rest_state(level, load, watch)?;
            let Some(here) = self.levels.get_mut(level) else {
                return Err(PanelError::Missing { name: "mesh".into(), reason: "there is none".into() });
            };
            let vertices = here.mesh.vertices.len();
            watch.mesh(Work::Modes, level, here.mesh.triangles.len())?;
            let pairs = lowest(here, &self.prepared, load, &state, count, watch)?;
            let squares: Vec<f64> = pairs.iter().map(|p| p.0).collect();
            let top = squares.iter().fold(0.0_f64, |a, &b| a.max(b.abs()));
            let changes: Vec<f64> = match &before {
                None => vec![f64::INFINITY; squares.len()],
                // Half the change of the square is the change of the frequency; rigid motions of a free panel have none.
                Some(old) => squares
                    .iter()
                    .zip(old)
                    .map(|(s, o)| if s.abs() < 1e-6 * top { 0.0 } else { 0.5 * ((s - o) / s).abs() })
                    .collect(),
            };
            let worst = changes.iter().fold(0.0_f64, |a, &b| a.max(b));
            if worst <= self.settings.tolerance || !self.reach(level + 1)? {
                return Ok(pairs
                    .into_iter()
                    .zip(changes)
                    .map(|((square, vector), error)| Mode {
                        frequency: hertz(square),
                        error,
                        shape: vector[..vertices].to_vec(),
                    })
                    .collect());
            }
            before = Some(squares);
            level += 1;
        }
    }

    /// The state about which a panel vibrates: its equilibrium, or flat and at rest where nothing but supports acts.
    fn rest_state(&mut self, level: usize, load: &Load, watch: &mut Watch<'_>) -> Result<State, PanelError> {
        let panel = &self.prepared.panel;
        let linear = panel.gaskets.is_empty() && panel.latches.is_empty() && panel.stops.is_empty();
        if !linear {
            return Ok(self.solve_level(level, load, watch)?.state);
        }
        let size = self.levels.get(level).map_or(0, |l| l.freedoms.size());
        let zero = vec![0.0; size];
        Ok(State {
            values: zero.clone(),
            plane: zero.clone(),
            reactions: zero,
            latched: Vec::new(),
            steps: 0,
        })
    }

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
        let (level, closed, _) = self.solve_to_tolerance(load, watch)?;
        let push: f64 = closed.found.gaskets.iter().map(|g| g.force).sum();
        let area: f64 =
            (0..self.levels[level].mesh.triangles.len()).map(|t| self.levels[level].mesh.area(t)).sum();
        let mut open = load.clone();
        open.missing_latches = (0..self.prepared.panel.latches.len()).collect();
        open.pressures.push(Pressure::uniform(-1e-3 * push / area));
        let free = self.solve_level(level, &open, watch)?;
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
}

/// The answer from the state found on a mesh.
fn answer_on(
    level: &Level,
    prepared: &Prepared,
    load: &Load,
    solved: Solved,
    error: ErrorEstimate,
) -> Result<Answer, PanelError> {
    let field =
        Field::new(level, &solved.state, &prepared.panel.layers, &prepared.groups, &load.temperatures);
    answer_from(field, solved, error)
}

/// The answer from a field and what was gathered.
fn answer_from(field: Field, solved: Solved, error: ErrorEstimate) -> Result<Answer, PanelError> {
    if !field.deflection.iter().all(|w| w.is_finite()) {
        return Err(PanelError::NotFinite { name: "the deflection" });
    }
    let found = solved.found;
    Ok(Answer {
        field,
        largest_deflection: found.largest_deflection,
        line_reactions: found.line_reactions,
        point_reactions: found.point_reactions,
        nodal_reactions: found.nodal_reactions,
        latches: found.latches,
        gaskets: found.gaskets,
        stops: found.stops,
        balance: found.balance,
        error,
        newton_steps: solved.state.steps,
    })
}

/// What changed from one mesh to the next.
struct Change {
    deflection: f64,
    latch_force: f64,
    compression: f64,
}

impl Change {
    fn between(coarse: &Solved, fine: &Solved) -> Self {
        // Old vertices keep their index, and deflections come first: compare where both have a vertex.
        let old = coarse.found_vertices();
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

    fn estimate(&self, before: Option<&Self>) -> ErrorEstimate {
        let (deflection, order) = error_left(self.deflection, before.map(|b| b.deflection));
        let (latch_force, _) = error_left(self.latch_force, before.map(|b| b.latch_force));
        let (compression, _) = error_left(self.compression, before.map(|b| b.compression));
        ErrorEstimate { deflection, latch_force, compression, order, triangles: 0, met: false }
    }
}

impl Solved {
    fn found_vertices(&self) -> usize {
        self.found.vertices
    }
}
