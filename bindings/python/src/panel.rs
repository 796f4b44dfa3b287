//! The panel solver: a panel made from a document, solved for one load after another; arrays go over without a copy.

use core::ops::ControlFlow;
use std::sync::Mutex;

use coaming::Error;
use coaming::declaration::Choice;
use coaming_cover::document::Form;
use coaming_cover::panel::{self, LoadOf, PanelLoadCase, Progress, read_load_case, read_panel};
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyInt, PyString};

use crate::boundary::{Fault, guarded};
use crate::handle;
use crate::solution::Handed;

/// One panel, checked and meshed.
#[pyclass(frozen, module = "coaming._native")]
pub(crate) struct Panel {
    panel: Mutex<panel::Panel>,
}

#[pymethods]
impl Panel {
    #[new]
    fn new(py: Python<'_>, document: &str) -> PyResult<Self> {
        guarded(py, || {
            let make = || panel::Panel::new(read_panel(document, Form::of(document))?);
            Ok(Self { panel: Mutex::new(py.detach(make)?) })
        })
    }

    /// The title of its document, and the names of its load cases.
    fn names(&self, py: Python<'_>) -> PyResult<(String, Vec<String>)> {
        guarded(py, || {
            Ok(handle::with(&self.panel, "panel", |panel| {
                let problem = panel.problem();
                let cases = problem.load_cases.iter().map(|case| case.name.clone()).collect();
                Ok((problem.title.clone(), cases))
            })?)
        })
    }

    /// Solves for a load case of its own, by index or name, or for one that is given as text.
    fn solve<'py>(
        &self,
        py: Python<'py>,
        load_case: &Bound<'py, PyAny>,
        given: Option<&str>,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        self.asked(py, load_case, given, progress, |panel, load, tell| panel.solve(load, tell))
    }

    /// The lowest natural modes about the equilibrium under a load.
    fn modes<'py>(
        &self,
        py: Python<'py>,
        count: &Bound<'py, PyAny>,
        load_case: &Bound<'py, PyAny>,
        given: Option<&str>,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let count = guarded(py, || whole(count, "count", "between 1 and 100"))?;
        self.asked(py, load_case, given, progress, |panel, load, tell| panel.modes(count, load, tell))
    }

    /// The lowest factors at which what acts in the plane under a load makes the panel buckle.
    fn buckling<'py>(
        &self,
        py: Python<'py>,
        count: &Bound<'py, PyAny>,
        load_case: &Bound<'py, PyAny>,
        given: Option<&str>,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let count = guarded(py, || whole(count, "count", "between 1 and 20"))?;
        self.asked(py, load_case, given, progress, |panel, load, tell| panel.buckling(count, load, tell))
    }

    /// The temperatures, in proportion to those of a load, at which the panel buckles.
    fn critical_rise<'py>(
        &self,
        py: Python<'py>,
        load_case: &Bound<'py, PyAny>,
        given: Option<&str>,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        self.asked(py, load_case, given, progress, |panel, load, tell| panel.critical_rise(load, tell))
    }

    /// The travel that opens it from the equilibrium under a load.
    fn opening<'py>(
        &self,
        py: Python<'py>,
        load_case: &Bound<'py, PyAny>,
        given: Option<&str>,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        self.asked(py, load_case, given, progress, |panel, load, tell| panel.opening(load, tell))
    }
}

impl Panel {
    /// Works on the panel while the interpreter is free, and lets it have its signals and the caller the progress.
    fn asked<'py, T: Handed + Send>(
        &self,
        py: Python<'py>,
        load_case: &Bound<'py, PyAny>,
        given: Option<&str>,
        progress: Option<Py<PyAny>>,
        work: impl FnOnce(&mut panel::Panel, LoadOf<'_>, panel::Tell<'_>) -> Result<T, Error> + Send,
    ) -> PyResult<Bound<'py, PyAny>> {
        guarded(py, || {
            let load = Load::read(load_case, given)?;
            let mut raised = None;
            let mut tell = |now: Progress| match Python::attach(|py| told(py, progress.as_ref(), now)) {
                Ok(false) => ControlFlow::Continue(()),
                Ok(true) => ControlFlow::Break(()),
                Err(error) => {
                    raised = Some(error);
                    ControlFlow::Break(())
                }
            };
            let done = py.detach(|| {
                handle::with(&self.panel, "panel", |panel| {
                    let load = load.of(panel)?;
                    work(panel, load, &mut tell)
                })
            });
            match raised {
                Some(error) => Err(error.into()),
                None => Ok(done?.handed(py)?),
            }
        })
    }
}

/// True where the caller wants to stop; an exception of the caller, or one of a signal such as Ctrl-C, comes through.
fn told(py: Python<'_>, progress: Option<&Py<PyAny>>, now: Progress) -> PyResult<bool> {
    py.check_signals()?;
    match progress {
        Some(progress) => {
            progress.call1(py, (now.work.name(), now.mesh, now.triangles, now.step))?.bind(py).is_truthy()
        }
        None => Ok(false),
    }
}

/// Which load, as Python names it.
enum Load {
    Index(usize),
    Name(String),
    Given(Box<PanelLoadCase>),
}

impl Load {
    fn read(load_case: &Bound<'_, PyAny>, given: Option<&str>) -> Result<Self, Fault> {
        if let Some(text) = given {
            return Ok(Self::Given(Box::new(read_load_case(text, Form::Json)?)));
        }
        if let Ok(name) = load_case.cast::<PyString>() {
            return Ok(Self::Name(name.to_str()?.to_owned()));
        }
        Ok(
            Self::Index(
                whole(load_case, "load", "the index, the name or the fields of a load case")? as usize
            ),
        )
    }

    fn of(&self, panel: &panel::Panel) -> Result<LoadOf<'_>, Error> {
        Ok(match self {
            Self::Index(index) => LoadOf::Document(*index),
            Self::Name(name) => LoadOf::Document(panel.load_case_named(name)?),
            Self::Given(case) => LoadOf::Given(case),
        })
    }
}

/// A whole number of things.
fn whole(value: &Bound<'_, PyAny>, field: &str, accepted: &str) -> Result<u32, Fault> {
    if value.cast::<PyBool>().is_ok() || value.cast::<PyInt>().is_err() {
        let found = format!("a value of type `{}`", value.get_type().name()?);
        let (field, expected) = (field.to_owned(), "a whole number".to_owned());
        return Err(Error::WrongType { field, found, expected }.into());
    }
    value.extract::<u32>().map_err(|_| {
        let number = value.extract::<f64>().unwrap_or(f64::MAX);
        let (field, accepted) = (field.to_owned(), accepted.to_owned());
        Error::Impossible { field, value: number, shown: format!("{number:e}"), accepted }.into()
    })
}
