//! A solved panel behind a handle: its summary and its words.

use core::ffi::c_char;

use calculations::Error;
use calculations::quantity::Quantity;
use coaming_cover::calls;
use coaming_cover::document::Point;
use coaming_cover::panel::{CaseSolution, PanelSolution};

use super::fault::{CoamingFault, guarded, refuse_null};
use super::handle::hand_over;
use super::text::text;

/// The solution of one load case. It never changes and may be read from any thread. To be given to coaming_solution_free().
pub struct CoamingSolution {
    whole: PanelSolution,
}

/// What a solution holds, and its main numbers. Deflection and forces are positive outward, compression closing.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingSummary {
    /// The deflection that is largest in size.
    pub largest_deflection_m: f64,
    /// Where.
    pub largest_deflection_x_m: f64,
    /// Where.
    pub largest_deflection_y_m: f64,
    /// The principal moment per length that is largest in size; positive stretches the outer face.
    pub largest_moment_n: f64,
    /// Where.
    pub largest_moment_x_m: f64,
    /// Where.
    pub largest_moment_y_m: f64,
    /// The principal force in the plane per length that is largest in size, positive in tension; 0 where nothing strains the panel there.
    pub largest_membrane_force_n_per_m: f64,
    /// Where.
    pub largest_membrane_force_x_m: f64,
    /// Where.
    pub largest_membrane_force_y_m: f64,
    /// Estimated error of the deflection anywhere, over the largest; where `has_error_deflection`.
    pub error_deflection: f64,
    /// Estimated error of any latch's force, over the largest; where `has_error_latch_force`.
    pub error_latch_force: f64,
    /// Estimated error of the smallest and largest compression; where `has_error_compression`.
    pub error_compression_m: f64,
    /// Estimated error of the largest moment, over it; where `has_error_moment`.
    pub error_moment: f64,
    /// Estimated error of the largest force in the plane, over it; where `has_error_membrane_force`.
    pub error_membrane_force: f64,
    /// Sum of all forces over the sum of their sizes.
    pub balance_force: f64,
    /// Sum of all moments over the sum of the forces' sizes times the size of the panel.
    pub balance_moment: f64,
    /// Sum of all forces in the plane over the sum of their sizes (of their turning over the size of the panel, if that is larger).
    pub balance_in_plane: f64,
    /// The largest travel from the closed place until a latch is free; where `has_opening_travel`.
    pub opening_travel_m: f64,
    /// The load case's temperature rises times this make the panel buckle, by linear theory of a perfectly flat panel: keep well below
    /// it; where `has_critical_factor`.
    pub critical_factor: f64,
    /// Estimated error of that factor, as a share; where `has_critical_error`.
    pub critical_error: f64,
    /// Vertices of the mesh.
    pub vertices: u32,
    /// Triangles of the mesh.
    pub triangles: u32,
    /// How many supports along lines there are.
    pub line_reactions: u32,
    /// How many supports at points there are.
    pub point_reactions: u32,
    /// How many latches there are.
    pub latches: u32,
    /// How many gaskets there are.
    pub gaskets: u32,
    /// How many stops there are.
    pub stops: u32,
    /// How many layers have stresses.
    pub stresses: u32,
    /// How many natural modes were asked for.
    pub modes: u32,
    /// Vertices of the modes' own mesh.
    pub mode_vertices: u32,
    /// Triangles of the modes' own mesh.
    pub mode_triangles: u32,
    /// How many ways to buckle there are: none where none were asked for, or nothing presses the panel together.
    pub buckling_modes: u32,
    /// Vertices of the mesh of the ways to buckle.
    pub buckling_vertices: u32,
    /// Triangles of the mesh of the ways to buckle.
    pub buckling_triangles: u32,
    /// How many layers' critical temperatures there are.
    pub critical_temperatures: u32,
    /// 1 where the stretching that the deflection itself brings was counted; linear theory otherwise.
    pub large_deflection: u8,
    /// 1 where the deflection meets the tolerance.
    pub error_met: u8,
    /// 1 where there was a second mesh to compare with, as for the next three.
    pub has_error_deflection: u8,
    /// 1 where it is there.
    pub has_error_latch_force: u8,
    /// 1 where it is there.
    pub has_error_compression: u8,
    /// 1 where it is there.
    pub has_error_moment: u8,
    /// 1 where it is there.
    pub has_error_membrane_force: u8,
    /// 1 where the load case asked for the opening.
    pub has_opening_travel: u8,
    /// 1 where the load case asked for ways to buckle.
    pub has_buckling: u8,
    /// 1 where every factor meets the tolerance.
    pub buckling_met: u8,
    /// 1 where the load case asked for the critical temperature rise.
    pub has_critical_rise: u8,
    /// 1 where the temperatures press the panel together, so that it buckles.
    pub has_critical_factor: u8,
    /// 1 where there was a second mesh to compare with.
    pub has_critical_error: u8,
    /// 1 where the critical factor meets the tolerance.
    pub critical_met: u8,
}

// The layout that the header asserts.
const _: () = {
    assert!(size_of::<CoamingSummary>() == 240);
};

impl CoamingSolution {
    /// The handle of a solution with one load case.
    ///
    /// # Errors
    /// [`Error::Missing`] where it has none.
    pub fn of(whole: PanelSolution) -> Result<Self, Error> {
        match whole.cases.is_empty() {
            true => Err(Error::Missing { field: "load_cases".to_owned(), needed: "one".to_owned() }),
            false => Ok(Self { whole }),
        }
    }

    /// The load case.
    ///
    /// # Errors
    /// None: [`of`](Self::of) has made sure of it.
    pub fn case(&self) -> Result<&CaseSolution, Error> {
        let first = self.whole.cases.first();
        first.ok_or_else(|| Error::Missing { field: "load_cases".to_owned(), needed: "one".to_owned() })
    }
}

/// Frees a solution; NULL is fine.
///
/// # Safety
/// NULL, or a solution of this library that was not freed yet and that no thread is reading.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_free(solution: *mut CoamingSolution) {
    if !solution.is_null() {
        // SAFETY: by contract it came from `Box::into_raw` and is freed once.
        drop(unsafe { Box::from_raw(solution) });
    }
}

/// The solution as text or JSON, with the cautions, as coaming_panel() gives it.
///
/// `output` is `"text"`, `"full_text"` or `"json"`; `units` is `"shop"` or `"inch"`. On success `*answer` is to be given to
/// coaming_text_free(); otherwise it is untouched.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; texts end with a zero; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_text(
    solution: *const CoamingSolution,
    output: *const c_char,
    units: *const c_char,
    answer: *mut *mut c_char,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        refuse_null(solution, "solution")?;
        refuse_null(answer, "answer")?;
        // SAFETY: by contract NULL or text that ends with a zero.
        let (output, units) = unsafe { (text(output, "output")?, text(units, "units")?) };
        // SAFETY: not NULL, and by contract not freed.
        let solution = unsafe { &*solution };
        let (output, units) = (calls::choice("output", output)?, calls::choice("units", units)?);
        let words = calls::panel_solution(&solution.whole, output, units)?;
        // SAFETY: not NULL, and by contract room for a pointer.
        unsafe { hand_over(words, answer) }
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

/// The summary of a solution.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_summary(
    solution: *const CoamingSolution,
    summary: *mut CoamingSummary,
    fault: *mut CoamingFault,
) -> u32 {
    // SAFETY: by contract of this function.
    unsafe { state(solution, summary, "summary", fault, |case| Ok(summary_of(case))) }
}

fn summary_of(case: &CaseSolution) -> CoamingSummary {
    let [largest_deflection_x_m, largest_deflection_y_m] = place(&case.largest_deflection.at);
    let [largest_moment_x_m, largest_moment_y_m] = place(&case.largest_moment.at);
    let [largest_membrane_force_x_m, largest_membrane_force_y_m] = place(&case.largest_membrane_force.at);
    let (modes, buckling, rise) = (case.modes.as_ref(), case.buckling.as_ref(), case.critical_rise.as_ref());
    CoamingSummary {
        largest_deflection_m: case.largest_deflection.value.to_si(),
        largest_deflection_x_m,
        largest_deflection_y_m,
        largest_moment_n: case.largest_moment.value.to_si(),
        largest_moment_x_m,
        largest_moment_y_m,
        largest_membrane_force_n_per_m: case.largest_membrane_force.value.to_si(),
        largest_membrane_force_x_m,
        largest_membrane_force_y_m,
        error_deflection: case.error.deflection.unwrap_or(0.0),
        error_latch_force: case.error.latch_force.unwrap_or(0.0),
        error_compression_m: case.error.compression.map_or(0.0, |length| length.to_si()),
        error_moment: case.error.moment.unwrap_or(0.0),
        error_membrane_force: case.error.membrane_force.unwrap_or(0.0),
        balance_force: case.balance.force,
        balance_moment: case.balance.moment,
        balance_in_plane: case.balance.in_plane,
        opening_travel_m: case.opening.as_ref().map_or(0.0, |opening| opening.travel.to_si()),
        critical_factor: rise.and_then(|found| found.factor).unwrap_or(0.0),
        critical_error: rise.and_then(|found| found.error).unwrap_or(0.0),
        vertices: count(case.field.x_m.len()),
        triangles: count(case.field.triangles.len() / 3),
        line_reactions: count(case.line_reactions.len()),
        point_reactions: count(case.point_reactions.len()),
        latches: count(case.latches.len()),
        gaskets: count(case.gaskets.len()),
        stops: count(case.stops.len()),
        stresses: count(case.stresses.len()),
        modes: modes.map_or(0, |found| count(found.modes.len())),
        mode_vertices: modes.map_or(0, |found| count(found.x_m.len())),
        mode_triangles: modes.map_or(0, |found| count(found.triangles.len() / 3)),
        buckling_modes: buckling.map_or(0, |found| count(found.modes.len())),
        buckling_vertices: buckling.map_or(0, |found| count(found.x_m.len())),
        buckling_triangles: buckling.map_or(0, |found| count(found.triangles.len() / 3)),
        critical_temperatures: rise.map_or(0, |found| count(found.temperatures.len())),
        large_deflection: case.large_deflection.into(),
        error_met: case.error.met.into(),
        has_error_deflection: case.error.deflection.is_some().into(),
        has_error_latch_force: case.error.latch_force.is_some().into(),
        has_error_compression: case.error.compression.is_some().into(),
        has_error_moment: case.error.moment.is_some().into(),
        has_error_membrane_force: case.error.membrane_force.is_some().into(),
        has_opening_travel: case.opening.is_some().into(),
        has_buckling: buckling.is_some().into(),
        buckling_met: buckling.is_some_and(|found| found.met).into(),
        has_critical_rise: rise.is_some().into(),
        has_critical_factor: rise.is_some_and(|found| found.factor.is_some()).into(),
        has_critical_error: rise.is_some_and(|found| found.error.is_some()).into(),
        critical_met: rise.is_some_and(|found| found.met).into(),
    }
}

/// A place as two numbers.
pub fn place(at: &Point) -> [f64; 2] {
    [at.x.to_si(), at.y.to_si()]
}

/// A count of the mesh or of a document's list: a few millions at most.
pub fn count(found: usize) -> u32 {
    u32::try_from(found).unwrap_or(u32::MAX)
}

/// The entry of a list.
///
/// # Errors
/// [`Error::Impossible`] that says how many there are.
pub fn entry<'a, T>(list: &'a [T], index: usize, name: &str) -> Result<&'a T, Error> {
    list.get(index).ok_or_else(|| Error::Impossible {
        field: "index".to_owned(),
        value: index as f64,
        shown: index.to_string(),
        accepted: match list.len() {
            0 => format!("none: the solution has no {name}"),
            count => format!("0 to {} of {name}", count - 1),
        },
    })
}

/// Writes one state of a solution.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
pub unsafe fn state<T>(
    solution: *const CoamingSolution,
    room: *mut T,
    argument: &str,
    fault: *mut CoamingFault,
    of: impl FnOnce(&CaseSolution) -> Result<T, Error>,
) -> u32 {
    let work = || {
        refuse_null(solution, "solution")?;
        refuse_null(room, argument)?;
        // SAFETY: not NULL, and by contract not freed.
        let found = of(unsafe { &*solution }.case()?)?;
        // SAFETY: not NULL, and by contract room for it.
        unsafe { room.write_unaligned(found) };
        Ok(())
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}
