//! How far a solve has come, told to the caller, who may stop it.

use crate::error::PanelError;
use std::ops::ControlFlow;

/// What the solver is looking for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Work {
    /// The equilibrium under a load.
    Equilibrium,
    /// Natural modes about an equilibrium.
    Modes,
    /// The equilibrium under a load, with the stretching that the deflection brings.
    LargeDeflection,
    /// Factors at which the panel buckles.
    Buckling,
}

/// How far a solve has come. It is told when a mesh is begun and before every step on it, so that a caller can show it or stop it; how many
/// meshes and steps there will be is not known beforehand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// What is being looked for.
    pub work: Work,
    /// Which mesh, from 0, the coarsest.
    pub mesh: usize,
    /// Its triangles.
    pub triangles: usize,
    /// Newton steps, or passes of the iteration for modes, begun on this mesh; 0 where the mesh is begun.
    pub step: usize,
}

/// The caller's ear, and what it was told last.
pub(crate) struct Watch<'a> {
    tell: &'a mut dyn FnMut(Progress) -> ControlFlow<()>,
    now: Progress,
}

impl<'a> Watch<'a> {
    /// Before anything is done.
    pub(crate) fn new(tell: &'a mut dyn FnMut(Progress) -> ControlFlow<()>) -> Self {
        Self { tell, now: Progress { work: Work::Equilibrium, mesh: 0, triangles: 0, step: 0 } }
    }

    /// A mesh is begun.
    pub(crate) fn mesh(&mut self, work: Work, mesh: usize, triangles: usize) -> Result<(), PanelError> {
        self.now = Progress { work, mesh, triangles, step: 0 };
        self.ask()
    }

    /// A step is begun.
    pub(crate) fn step(&mut self) -> Result<(), PanelError> {
        self.now.step += 1;
        self.ask()
    }

    fn ask(&mut self) -> Result<(), PanelError> {
        match (self.tell)(self.now) {
            ControlFlow::Continue(()) => Ok(()),
            ControlFlow::Break(()) => Err(PanelError::Cancelled),
        }
    }
}

/// The ear of a caller who does not listen.
pub(crate) fn deaf(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}
