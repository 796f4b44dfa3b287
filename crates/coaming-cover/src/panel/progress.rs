//! How far a solve has come, told to the caller, who may stop it.

use coaming::prelude::*;
use coaming_panel as solver;
use core::ops::ControlFlow;

/// What is being looked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
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

/// How far a solve has come. It is told when a mesh is begun and before every step on it; how many meshes and steps there
/// will be is not known beforehand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// What is being looked for.
    pub work: Work,
    /// Which mesh, from 0, the coarsest.
    pub mesh: u32,
    /// Its triangles.
    pub triangles: u32,
    /// Steps begun on this mesh; 0 where the mesh is begun.
    pub step: u32,
}

/// What a caller does who is told: [`ControlFlow::Break`] stops the work with [`Error::Cancelled`].
pub type Tell<'a> = &'a mut dyn FnMut(Progress) -> ControlFlow<()>;

/// Goes on whatever is told: for callers who only want the result.
pub fn go_on(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

impl From<solver::Progress> for Progress {
    fn from(told: solver::Progress) -> Self {
        let whole = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        let work = match told.work {
            solver::Work::Modes => Work::Modes,
            solver::Work::LargeDeflection => Work::LargeDeflection,
            solver::Work::Buckling => Work::Buckling,
            _ => Work::Equilibrium,
        };
        Self { work, mesh: whole(told.mesh), triangles: whole(told.triangles), step: whole(told.step) }
    }
}
