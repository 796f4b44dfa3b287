//! From a problem to its solution: one panel, meshed once and solved for any of its load cases, or for others.

use super::answer::{buckling, checked, critical_rise, modes, opening, solution};
use super::convert::{all, index, load, panel};
use super::faults::Faults;
use super::loads::PanelLoadCase;
use super::problem::PanelProblem;
use super::progress::{Tell, go_on};
use super::solution::{Buckling, CaseSolution, CriticalRise, NaturalModes, OpeningTravel, PanelSolution};
use crate::cautions::CAUTIONS;
use coaming::prelude::*;
use coaming_panel as solver;
use core::ops::ControlFlow;

/// Most load cases of one problem: each may take seconds.
const MOST_CASES: usize = 100;

/// The load that a panel is solved for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LoadOf<'a> {
    /// The load case of the panel's own document with this index, from 0.
    Document(usize),
    /// Another load case. Faults name it `load`. A force at a point need not fall on a corner of the mesh, which only that of the
    /// document's own load cases is sure to do: the moment under it is blurred a little more.
    Given(&'a PanelLoadCase),
}

/// One panel, checked and meshed, to be solved for one load after another. Solutions do not depend on what was solved
/// before.
///
/// Linear theory of thin plates for small deflections, unless the load case asks for large ones; see [`coaming_panel`]. The numbers are a screening with the inputs
/// given, not a certificate.
#[derive(Debug)]
pub struct Panel {
    problem: PanelProblem,
    solver: solver::Solver,
    marks: Vec<String>,
}

/// A load with what its faults are told by.
struct Posed {
    case: PanelLoadCase,
    path: String,
    load: solver::Load,
}

/// What the solver hears from, as it takes it.
type Ear<'a> = &'a mut dyn FnMut(solver::Progress) -> ControlFlow<()>;

impl Panel {
    /// Checks a panel and meshes it. Its load cases are checked when they are solved.
    ///
    /// # Errors
    /// [`Error::Geometry`] with the place of a shape that cannot be, [`Error::Inconsistent`], [`Error::Missing`] or
    /// [`Error::NotAnOption`] with the paths of what does not go together, [`Error::TooLarge`].
    pub fn new(problem: PanelProblem) -> Result<Self, Error> {
        if problem.load_cases.len() > MOST_CASES {
            return Err(Error::TooLarge {
                field: "load_cases".to_owned(),
                found: problem.load_cases.len().to_string(),
                accepted: format!("at most {MOST_CASES}"),
            });
        }
        let (panel, marks) = panel(&problem)?;
        let own = Faults { case: "", pressures: 0, marks: &marks };
        let made = solver::Solver::new(&panel, settings(&problem)).map_err(|fault| own.error(fault));
        Ok(Self { solver: made?, problem, marks })
    }

    /// The problem that it was made from.
    pub fn problem(&self) -> &PanelProblem {
        &self.problem
    }

    /// The index of the load case of this name.
    ///
    /// # Errors
    /// [`Error::NotAnOption`] with the names.
    pub fn load_case_named(&self, name: &str) -> Result<usize, Error> {
        let names = self.problem.load_cases.iter().map(|case| case.name.as_str());
        index(names, name, "load_case".to_owned())
    }

    /// Solves for one load, with the modes and the opening that it asks for.
    ///
    /// # Errors
    /// [`Error::Singular`] with the motion that nothing resists, [`Error::Geometry`], [`Error::Impossible`],
    /// [`Error::Inconsistent`], [`Error::Missing`] or [`Error::NotAnOption`] with the path in the load case,
    /// [`Error::NotConverged`], [`Error::NotFinite`], and [`Error::Cancelled`] where the caller stopped it.
    pub fn solve(&mut self, load: LoadOf<'_>, tell: Tell<'_>) -> Result<CaseSolution, Error> {
        let posed = self.posed(load)?;
        let large = posed.case.large_deflection == Some(true);
        let answer = self.ask(&posed, tell, |solver, load, tell| match large {
            true => solver.solve_large_with(load, tell),
            false => solver.solve_with(load, tell),
        })?;
        let mut solved = solution(&self.problem, &posed.case.name, &answer);
        solved.large_deflection = large;
        if let Some(count) = posed.case.modes {
            let count = count as usize;
            let found = self.ask(&posed, tell, |solver, load, tell| solver.modes_with(load, count, tell))?;
            solved.modes = Some(modes(&found));
        }
        if posed.case.opening == Some(true) {
            let found = self.ask(&posed, tell, |solver, load, tell| solver.opening_with(load, tell))?;
            solved.opening = Some(opening(found));
        }
        if let Some(count) = posed.case.buckling {
            solved.buckling = Some(self.buckles(&posed, count, tell)?);
        }
        if posed.case.critical_rise == Some(true) {
            solved.critical_rise = Some(self.rises(&posed, tell)?);
        }
        checked(solved, &posed.path)
    }

    /// The lowest natural modes about the equilibrium under a load, 1 to 100 of them.
    ///
    /// # Errors
    /// As [`solve`](Self::solve); [`Error::Impossible`] for another count; [`Error::Inconsistent`] for a panel without mass.
    pub fn modes(&mut self, count: u32, load: LoadOf<'_>, tell: Tell<'_>) -> Result<NaturalModes, Error> {
        let posed = self.posed(load)?;
        let count = count as usize;
        let found = self.ask(&posed, tell, |solver, load, tell| solver.modes_with(load, count, tell))?;
        checked(modes(&found), &posed.path)
    }

    /// The lowest factors by which what acts in the plane under a load makes the panel buckle, 1 to 20 of them. See [`Buckling`] for what
    /// they are worth.
    ///
    /// # Errors
    /// As [`solve`](Self::solve); [`Error::Impossible`] for another count.
    pub fn buckling(&mut self, count: u32, load: LoadOf<'_>, tell: Tell<'_>) -> Result<Buckling, Error> {
        let posed = self.posed(load)?;
        checked(self.buckles(&posed, count, tell)?, &posed.path)
    }

    /// The temperatures, in proportion to those of a load, at which the panel buckles. Its other loads in the plane are left out.
    ///
    /// # Errors
    /// As [`solve`](Self::solve); [`Error::Missing`] for a load without temperatures.
    pub fn critical_rise(&mut self, load: LoadOf<'_>, tell: Tell<'_>) -> Result<CriticalRise, Error> {
        let posed = self.posed(load)?;
        checked(self.rises(&posed, tell)?, &posed.path)
    }

    fn buckles(&mut self, posed: &Posed, count: u32, tell: Tell<'_>) -> Result<Buckling, Error> {
        let count = count as usize;
        let found = self.ask(posed, tell, |solver, load, tell| solver.buckling_with(load, count, tell))?;
        Ok(buckling(found))
    }

    fn rises(&mut self, posed: &Posed, tell: Tell<'_>) -> Result<CriticalRise, Error> {
        if posed.load.temperatures.is_empty() {
            let field = format!("{}.temperatures", posed.path);
            return Err(Error::Missing { field, needed: "the temperatures that are to rise".to_owned() });
        }
        let found = self.ask(posed, tell, |solver, load, tell| solver.critical_rise_with(load, tell))?;
        Ok(critical_rise(&self.problem, found))
    }

    /// The travel at which every latch is free while the gasket still pushes, from the equilibrium under a load.
    ///
    /// # Errors
    /// As [`solve`](Self::solve).
    pub fn opening(&mut self, load: LoadOf<'_>, tell: Tell<'_>) -> Result<OpeningTravel, Error> {
        let posed = self.posed(load)?;
        let found = self.ask(&posed, tell, |solver, load, tell| solver.opening_with(load, tell))?;
        checked(opening(found), &posed.path)
    }

    /// Solved load cases as a solution of this panel, with the cautions that belong to it.
    pub fn solution(&self, cases: Vec<CaseSolution>) -> PanelSolution {
        PanelSolution {
            title: self.problem.title.clone(),
            version: env!("CARGO_PKG_VERSION").to_owned(),
            cases,
            cautions: CAUTIONS.iter().map(|caution| (*caution).to_owned()).collect(),
        }
    }

    /// The solver's load; the case is copied, for it may be the panel's own.
    fn posed(&self, of: LoadOf<'_>) -> Result<Posed, Error> {
        let (case, path) = match of {
            LoadOf::Given(case) => (case, "load".to_owned()),
            LoadOf::Document(nth) => match self.problem.load_cases.get(nth) {
                Some(case) => (case, format!("load_cases[{nth}]")),
                None => return Err(no_such_case(nth, self.problem.load_cases.len())),
            },
        };
        Ok(Posed { load: load(&self.problem, case, &path)?, case: case.clone(), path })
    }

    /// Lets the solver work, and tells its refusals in the words of the document.
    fn ask<T>(
        &mut self,
        posed: &Posed,
        tell: Tell<'_>,
        work: impl FnOnce(&mut solver::Solver, &solver::Load, Ear<'_>) -> Result<T, solver::PanelError>,
    ) -> Result<T, Error> {
        let pressures = all(&posed.case.pressures).len();
        let faults = Faults { case: &posed.path, pressures, marks: &self.marks };
        let mut pass_on = |told: solver::Progress| tell(told.into());
        work(&mut self.solver, &posed.load, &mut pass_on).map_err(|fault| faults.error(fault))
    }
}

fn no_such_case(nth: usize, count: usize) -> Error {
    let accepted = match count {
        0 => "none: the panel has no load cases of its own".to_owned(),
        count => format!("0 to {}", count - 1),
    };
    Error::Impossible { field: "load_case".to_owned(), value: nth as f64, shown: nth.to_string(), accepted }
}

/// Solves every load case of a panel.
///
/// As [`Panel`], which also tells how far it has come, can be stopped, and solves for other loads.
///
/// # Errors
/// As [`Panel::new`] and [`Panel::solve`] give them; [`Error::Missing`] where there is no load case.
pub fn solve(problem: &PanelProblem) -> Result<PanelSolution, Error> {
    if problem.load_cases.is_empty() {
        return Err(Error::Missing { field: "load_cases".to_owned(), needed: "at least one".to_owned() });
    }
    let mut panel = Panel::new(problem.clone())?;
    let cases = (0..problem.load_cases.len())
        .map(|nth| panel.solve(LoadOf::Document(nth), &mut go_on))
        .collect::<Result<_, _>>()?;
    Ok(panel.solution(cases))
}

fn settings(problem: &PanelProblem) -> solver::Settings {
    let usual = solver::Settings::default();
    let Some(given) = &problem.settings else { return usual };
    let count = |given: Option<u32>, usual: usize| given.map_or(usual, |count| count as usize);
    solver::Settings {
        tolerance: given.tolerance.unwrap_or(usual.tolerance),
        absolute_tolerance: given.absolute_tolerance.map_or(usual.absolute_tolerance, |most| most.value),
        first_triangles: count(given.first_triangles, usual.first_triangles),
        most_triangles: count(given.most_triangles, usual.most_triangles),
    }
}
