//! The front of the crate: a panel, meshed once, solved for any number of loads.

use crate::error::{PanelError, checked, not_negative};
use crate::geometry::polygon;
use crate::ladder::Ladder;
use crate::mesh::refine::refine_around;
use crate::mesh::triangulate::triangulate;
use crate::model::growth::free_strains;
use crate::model::load::Load;
use crate::model::panel::Panel;
use crate::model::prepare::{Prepared, prepare};
use crate::model::shape::differ_by_gaskets;
use crate::progress::{Progress, Watch, Work, deaf};
use crate::refining::{Enough, Run, Solved};
use crate::result::answer::Answer;
use crate::result::error_estimate::{ErrorEstimate, SAFETY_OF_MODES, share_left, share_of_one_mesh};
use crate::result::field::Field;
use crate::result::indicator::indicator;
use crate::result::modes::{Mode, ModeMesh, hertz, lowest};
use crate::system::equilibrium::{Start, State, solve};
use crate::system::level::Level;
use std::ops::ControlFlow;
use std::sync::Arc;

mod buckling;
mod first_mesh;
mod in_plane;
mod large;
mod opening;
mod ways;

pub use opening::Opening;

/// How fine and how sure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Settings {
    /// Largest estimated error accepted, over the largest deflection.
    pub tolerance: f64,
    /// An estimated error of the deflection that is accepted whatever its share, m. It serves answers under loads, not factors of buckling
    /// and frequencies.
    pub absolute_tolerance: f64,
    /// About how many triangles the first mesh has; small features add more.
    pub first_triangles: usize,
    /// No mesh has more triangles than this.
    pub most_triangles: usize,
}

impl Default for Settings {
    fn default() -> Self {
        Self { tolerance: 0.005, absolute_tolerance: 0.0, first_triangles: 120, most_triangles: 150_000 }
    }
}

impl Settings {
    fn enough(&self) -> Enough {
        Enough { share: self.tolerance, deflection: self.absolute_tolerance }
    }
}

/// Longest side of a triangle at a latch, a point support or a mark of the first mesh, over the root of the largest area.
const SIDE_AT_A_POINT: f64 = 0.4;

/// A panel ready to be solved. The first mesh and its factors are kept; the finer ones are refined where the loads asked for err most, and
/// kept while they serve. Answers do not depend on what was solved before, but for rounding.
#[derive(Debug)]
pub struct Solver {
    prepared: Prepared,
    settings: Settings,
    ladder: Ladder,
    /// Meshes with freedoms in the plane for every group; made when first asked for.
    in_plane: Option<Ladder>,
}

impl Solver {
    /// Checks a panel and meshes it.
    pub fn new(panel: &Panel, settings: Settings) -> Result<Self, PanelError> {
        checked("tolerance", settings.tolerance, "greater than 0 and below 1", |t| t > 0.0 && t < 1.0)?;
        not_negative("absolute_tolerance", settings.absolute_tolerance)?;
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
        let largest = 1.6 * area / settings.first_triangles as f64;
        let mesh = triangulate(&prepared.plan(largest))?;
        let points: Vec<usize> = mesh.marks.iter().copied().filter(|&v| v < mesh.vertices.len()).collect();
        let mesh = refine_around(mesh, &prepared.features, &points, SIDE_AT_A_POINT * largest.sqrt());
        let first = Level::new(mesh, &prepared)?;
        Ok(Self { prepared, settings, ladder: Ladder::new(first), in_plane: None })
    }

    /// Puts another panel of the same shape in the place of the one that was meshed: other thicknesses, materials, stiffnesses, heights,
    /// laws and masses, where outlines, holes, lines and points are the same and whatever was held, joined or hung there still is.
    ///
    /// The meshes are kept, and so is what was analysed of the equations; factors too where the stiffness stays. From then on answers are
    /// on those meshes as far as they reach, and depend on what they were refined for within the errors estimated.
    ///
    /// # Errors
    /// [`PanelError::OtherShape`] with the part that differs, and whatever [`Solver::new`] refuses; the solver then is as before.
    pub fn update(&mut self, panel: &Panel) -> Result<(), PanelError> {
        if let Some(part) = self.prepared.panel.other_shape(panel) {
            return Err(PanelError::OtherShape { part });
        }
        let prepared = prepare(panel)?;
        if differ_by_gaskets(&self.prepared.panel, panel) {
            for ladder in [Some(&mut self.ladder), self.in_plane.as_mut()].into_iter().flatten() {
                ladder.levels.iter_mut().for_each(Level::forget_states);
            }
            self.keep_meshes();
            self.prepared = prepared;
            return Ok(());
        }
        let levels = || self.ladder.levels.iter().chain(self.in_plane.iter().flat_map(|l| &l.levels));
        let equations =
            levels().map(|level| level.equations(&prepared)).collect::<Result<Vec<_>, PanelError>>()?;
        let mut equations = equations.into_iter();
        for ladder in [Some(&mut self.ladder), self.in_plane.as_mut()].into_iter().flatten() {
            for (level, equations) in ladder.levels.iter_mut().zip(&mut equations) {
                level.take_on(equations);
            }
        }
        self.keep_meshes();
        self.prepared = prepared;
        Ok(())
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
        let answers = self.solve_all_with(std::slice::from_ref(load), tell)?;
        answers.into_iter().next().ok_or_else(no_mesh)
    }

    /// Solves for several loads on the same meshes, which are refined where any of the loads that have not met the tolerance yet errs most.
    ///
    /// Much faster than one after the other. Each answer is on the first mesh on which it met the tolerance, and depends on which loads
    /// are given together within the errors estimated.
    pub fn solve_all(&mut self, loads: &[Load]) -> Result<Vec<Answer>, PanelError> {
        self.solve_all_with(loads, &mut deaf)
    }

    /// As [`solve_all`](Self::solve_all), telling how far it has come; [`ControlFlow::Break`] stops it with [`PanelError::Cancelled`].
    pub fn solve_all_with(
        &mut self,
        loads: &[Load],
        tell: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Vec<Answer>, PanelError> {
        for load in loads {
            load.check(self.prepared.panel.layers.len(), self.prepared.panel.latches.len())?;
        }
        let watch = &mut Watch::new(tell);
        let normal: Vec<Load> = loads.iter().filter(|load| !load.acts_in_plane()).cloned().collect();
        let mut runs = self.run(&normal, watch)?.into_iter();
        let mut answers = Vec::with_capacity(loads.len());
        for load in loads {
            answers.push(match load.acts_in_plane() {
                true => self.solve_in_plane(load, watch)?,
                false => self.answer(load, runs.next().ok_or_else(no_mesh)?)?,
            });
        }
        Ok(answers)
    }

    /// Takes some loads from mesh to mesh until each meets the tolerance.
    fn run(&mut self, loads: &[Load], watch: &mut Watch<'_>) -> Result<Vec<Run>, PanelError> {
        let enough = self.settings.enough();
        let first = self.ladder.levels.first_mut().ok_or_else(no_mesh)?;
        let mut runs = Vec::with_capacity(loads.len());
        for load in loads {
            runs.push(Run::start(first, &self.prepared, load, watch)?);
        }
        for level in 0.. {
            let squares = together(runs.iter().filter(|r| !r.error.met).map(|r| {
                let indicator = &r.solved.indicator;
                (indicator.squares.as_slice(), indicator.energy)
            }));
            if squares.is_empty() || !self.climb(level, &squares)? {
                break;
            }
            let Some(finer) = self.ladder.levels.get_mut(level + 1) else { break };
            for (load, run) in loads.iter().zip(&mut runs).filter(|(_, r)| !r.error.met) {
                run.go_on(finer, &self.prepared, load, enough, watch)?;
            }
        }
        Ok(runs)
    }

    fn climb(&mut self, level: usize, squares: &[f64]) -> Result<bool, PanelError> {
        let Settings { tolerance, most_triangles, .. } = self.settings;
        self.ladder.climb(level, squares, &self.prepared, tolerance, most_triangles)
    }

    fn answer(&mut self, load: &Load, run: Run) -> Result<Answer, PanelError> {
        let level = self.ladder.levels.get_mut(run.level).ok_or_else(no_mesh)?;
        answer_on(level, &self.prepared, load, run.solved, run.error)
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
        let mut before: Option<Vec<(f64, f64)>> = None;
        // What the panel touches decides its stiffness: that has to be settled first.
        let settled = match self.is_linear() {
            true => 0,
            false => {
                let runs = self.run(std::slice::from_ref(load), watch)?;
                runs.first().map_or(0, |r| r.level)
            }
        };
        for level in settled.saturating_sub(1).. {
            let at_rest = self.rest_state(level, load, watch)?;
            let here = self.ladder.levels.get_mut(level).ok_or_else(no_mesh)?;
            watch.mesh(Work::Modes, level, here.mesh.triangles.len())?;
            let pairs = lowest(here, &self.prepared, load, &at_rest, count, watch)?;
            let mesh =
                ModeMesh { vertices: here.mesh.vertices.clone(), triangles: here.mesh.triangles.clone() };
            let top = pairs.iter().fold(0.0_f64, |a, p| a.max(p.0.abs()));
            let found: Vec<_> =
                pairs.iter().map(|(_, shape)| indicator(here, &self.prepared, load, shape)).collect();
            // Rigid motions of a free panel have no frequency, and no error.
            let rigid = |square: f64| square.abs() < 1e-6 * top;
            let here: Vec<(f64, f64)> = (pairs.iter().zip(&found))
                .map(|((square, _), i)| (*square, if i.energy > 0.0 { i.total / i.energy } else { 0.0 }))
                .collect();
            let errors: Vec<f64> = (here.iter().enumerate())
                .map(|(m, &(square, now))| match before.as_ref().and_then(|b| b.get(m)) {
                    _ if rigid(square) => 0.0,
                    // Half the change of the square is the change of the frequency.
                    Some(&(old, was)) => {
                        let change = 0.5 * ((square - old) / square).abs();
                        SAFETY_OF_MODES * change * share_left(was, now, level == 1)
                    }
                    None => SAFETY_OF_MODES * share_of_one_mesh(now),
                })
                .collect();
            let worst = errors.iter().fold(0.0_f64, |a, &b| a.max(b));
            let squares = together(
                (found.iter().zip(&pairs))
                    .filter(|(_, p)| !rigid(p.0))
                    .map(|(i, _)| (i.squares.as_slice(), i.energy)),
            );
            // One mesh alone is never taken for good enough while a second may be had.
            let met = before.is_some() && worst <= self.settings.tolerance;
            if met || (level >= settled && !self.climb(level, &squares)?) {
                let mesh = Arc::new(mesh);
                return Ok(pairs
                    .into_iter()
                    .zip(errors)
                    .map(|((square, vector), error)| Mode {
                        frequency: hertz(square),
                        error,
                        met: error <= self.settings.tolerance,
                        shape: vector[..mesh.vertices.len()].to_vec(),
                        mesh: Arc::clone(&mesh),
                    })
                    .collect());
            }
            before = Some(here);
        }
        Err(no_mesh())
    }

    /// Whether nothing can let go.
    fn is_linear(&self) -> bool {
        let panel = &self.prepared.panel;
        panel.gaskets.is_empty() && panel.latches.is_empty() && panel.stops.is_empty()
    }

    /// The state about which a panel vibrates: its equilibrium, or flat and at rest where nothing but supports acts.
    fn rest_state(&mut self, level: usize, load: &Load, watch: &mut Watch<'_>) -> Result<State, PanelError> {
        let linear = self.is_linear();
        let level = self.ladder.levels.get_mut(level).ok_or_else(no_mesh)?;
        if let Some(known) = level.state(load).filter(|_| !linear) {
            return Ok(known);
        }
        if !linear {
            return Ok(solve(level, &self.prepared, load, Start::Flat, watch)?.0);
        }
        let size = level.freedoms.size();
        let zero = vec![0.0; size];
        Ok(State {
            values: zero.clone(),
            plane: zero.clone(),
            reactions: zero,
            latched: Vec::new(),
            steps: 0,
        })
    }
}

/// The answer from the state found on a mesh.
fn answer_on(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    solved: Solved,
    error: ErrorEstimate,
) -> Result<Answer, PanelError> {
    let field = Field::new(
        level,
        &solved.state,
        &prepared.panel.layers,
        &prepared.groups,
        free_strains(load, &prepared.panel.layers),
    );
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
        largest_moment: solved.indicator.largest_moment,
        largest_membrane_force: solved.indicator.largest_membrane_force,
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

/// Squared indicators of several solutions as one, each over its own energy.
fn together<'a>(all: impl Iterator<Item = (&'a [f64], f64)>) -> Vec<f64> {
    let mut sum: Vec<f64> = Vec::new();
    for (squares, energy) in all {
        sum.resize(squares.len(), 0.0);
        let scale = if energy > 0.0 { 1.0 / energy } else { 0.0 };
        for (s, square) in sum.iter_mut().zip(squares) {
            *s += scale * square;
        }
    }
    sum
}

fn no_mesh() -> PanelError {
    PanelError::Missing { name: "mesh".into(), reason: "there is none".into() }
}
