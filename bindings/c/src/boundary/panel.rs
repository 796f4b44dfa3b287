//! The panel solver behind a handle: a panel made from a document, solved for one load after another.

use core::ffi::{c_char, c_void};
use core::ops::ControlFlow;
use std::sync::Mutex;

use calculations::Error;
use calculations::declaration::Choice;
use coaming_cover::document::Form;
use coaming_cover::panel::{LoadOf, Panel, Progress, read_load_case, read_panel};

use super::fault::{CoamingFault, guarded, refuse_null};
use super::handle;
use super::solution::CoamingSolution;
use super::text::text;

/// The equilibrium under a load is being looked for.
pub const COAMING_WORK_EQUILIBRIUM: u32 = 0;

/// Natural modes about an equilibrium are being looked for.
pub const COAMING_WORK_MODES: u32 = 1;

/// The equilibrium under a load, with the stretching that the deflection brings, is being looked for.
pub const COAMING_WORK_LARGE_DEFLECTION: u32 = 2;

/// Factors at which the panel buckles are being looked for.
pub const COAMING_WORK_BUCKLING: u32 = 3;

/// One panel, checked and meshed. Made by coaming_panel_new(), to be given to coaming_panel_free(). One thread at a time may
/// solve it; a second one is refused with COAMING_ERROR_INCONSISTENT.
pub struct CoamingPanel {
    panel: Mutex<Panel>,
}

/// How far a solve has come. How many meshes and steps there will be is not known beforehand.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingProgress {
    /// What is being looked for: one of the constants `COAMING_WORK_...`.
    pub work: u32,
    /// Which mesh, from 0, the coarsest.
    pub mesh: u32,
    /// Its triangles.
    pub triangles: u32,
    /// Steps begun on this mesh; 0 where the mesh is begun.
    pub step: u32,
}

/// Called when a mesh is begun and before every step on it, from the thread that solves. `progress` is valid during the
/// call only; `user` is what the caller gave. 0 goes on, anything else stops the work with COAMING_ERROR_CANCELLED. It must
/// return, and may not free the panel.
pub type CoamingTell =
    Option<unsafe extern "C" fn(progress: *const CoamingProgress, user: *mut c_void) -> u32>;

/// Makes a panel from its document, TOML or JSON, as coaming_panel() takes it: checks its shapes and meshes it.
///
/// On success `*panel` is to be given to coaming_panel_free(); otherwise it is untouched. Texts are UTF-8; `fault` may be
/// NULL.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the text ends with a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_panel_new(
    document: *const c_char,
    panel: *mut *mut CoamingPanel,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        // SAFETY: by contract NULL or text that ends with a zero.
        let document = unsafe { text(document, "document")? };
        refuse_null(panel, "panel")?;
        let made = Panel::new(read_panel(document, Form::of(document))?)?;
        let handle = Box::new(CoamingPanel { panel: Mutex::new(made) });
        // SAFETY: not NULL, and by contract room for a pointer.
        unsafe { panel.write_unaligned(Box::into_raw(handle)) };
        Ok(())
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

/// Frees a panel; NULL is fine. Its solutions stay.
///
/// # Safety
/// NULL, or a panel of coaming_panel_new() that was not freed yet and that no thread is solving.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_panel_free(panel: *mut CoamingPanel) {
    if !panel.is_null() {
        // SAFETY: by contract it came from `Box::into_raw` and is freed once.
        drop(unsafe { Box::from_raw(panel) });
    }
}

/// How many load cases the panel's document has.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the panel was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_panel_load_cases(
    panel: *const CoamingPanel,
    count: *mut usize,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        refuse_null(count, "count")?;
        // SAFETY: by contract of this function.
        let found = unsafe { with(panel, |panel| Ok(panel.problem().load_cases.len()))? };
        // SAFETY: not NULL, and by contract room for a count.
        unsafe { count.write_unaligned(found) };
        Ok(())
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

/// Solves the load case of the panel's own document with this index, from 0, with the modes, the opening, the ways to buckle
/// and the critical temperature rise that it asks for.
///
/// `tell` may be NULL; `user` is handed to it. On success `*solution` is to be given to coaming_solution_free(); otherwise
/// it is untouched, and the panel can be solved again. It may take seconds. The results are screenings with the inputs
/// given, not a certificate; coaming_solution_text() has the cautions.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the panel was not freed; `tell` keeps what CoamingTell asks.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_panel_solve(
    panel: *mut CoamingPanel,
    load_case: usize,
    tell: CoamingTell,
    user: *mut c_void,
    solution: *mut *mut CoamingSolution,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        refuse_null(solution, "solution")?;
        // SAFETY: by contract of this function.
        unsafe { solved(panel, LoadOf::Document(load_case), tell, user, solution) }
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

/// Solves another load case, given as the text of one entry of `load_cases`, TOML or JSON. As coaming_panel_solve()
/// otherwise; a fault names the load case `load`.
///
/// # Safety
/// As coaming_panel_solve(); the text ends with a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_panel_solve_load(
    panel: *mut CoamingPanel,
    load: *const c_char,
    tell: CoamingTell,
    user: *mut c_void,
    solution: *mut *mut CoamingSolution,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        // SAFETY: by contract NULL or text that ends with a zero.
        let load = unsafe { text(load, "load")? };
        refuse_null(solution, "solution")?;
        let load = read_load_case(load, Form::of(load))?;
        // SAFETY: by contract of this function.
        unsafe { solved(panel, LoadOf::Given(&load), tell, user, solution) }
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

/// # Safety
/// The panel is NULL or not freed; `solution` has room; `tell` keeps what CoamingTell asks.
unsafe fn solved(
    panel: *const CoamingPanel,
    load: LoadOf<'_>,
    tell: CoamingTell,
    user: *mut c_void,
    solution: *mut *mut CoamingSolution,
) -> Result<(), Error> {
    let mut told = |now: Progress| {
        let Some(tell) = tell else { return ControlFlow::Continue(()) };
        let now = CoamingProgress {
            work: now.work.number(),
            mesh: now.mesh,
            triangles: now.triangles,
            step: now.step,
        };
        // SAFETY: by contract a function that takes these.
        match unsafe { tell(&raw const now, user) } {
            0 => ControlFlow::Continue(()),
            _ => ControlFlow::Break(()),
        }
    };
    let work = |panel: &mut Panel| {
        let case = panel.solve(load, &mut told)?;
        Ok(panel.solution(vec![case]))
    };
    // SAFETY: by contract of this function.
    let found = CoamingSolution::of(unsafe { with(panel, work)? })?;
    // SAFETY: by contract room for a pointer.
    unsafe { solution.write_unaligned(Box::into_raw(Box::new(found))) };
    Ok(())
}

/// # Safety
/// The panel is NULL or not freed.
unsafe fn with<T>(
    panel: *const CoamingPanel,
    work: impl FnOnce(&mut Panel) -> Result<T, Error>,
) -> Result<T, Error> {
    // SAFETY: by contract NULL or not freed.
    handle::with(unsafe { panel.as_ref() }.map(|handle| &handle.panel), "panel", work)
}
