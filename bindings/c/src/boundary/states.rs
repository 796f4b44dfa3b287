//! The state of each part of a solved panel, by its index.

use core::ffi::c_char;

use calculations::quantity::Quantity;
use coaming_cover::panel::{CaseSolution, SupportReaction};

use super::fault::{CoamingFault, clipped};
use super::solution::{CoamingSolution, count, entry, place, state};

/// One latch.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingLatchState {
    /// Its pull, positive inward; zero where it is slack or missing.
    pub pull_n: f64,
    /// Deflection of the panel there.
    pub deflection_m: f64,
    /// Travel from its closed place until it is free; where `has_opening_travel`.
    pub opening_travel_m: f64,
    /// Its name, cut to 63 bytes.
    pub name: [c_char; 64],
    /// 1 where the load case asked for the opening.
    pub has_opening_travel: u8,
}

/// One gasket.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingGasketState {
    /// Smallest compression; negative is an open gap.
    pub smallest_m: f64,
    /// Where.
    pub smallest_x_m: f64,
    /// Where.
    pub smallest_y_m: f64,
    /// Largest compression.
    pub largest_m: f64,
    /// Where.
    pub largest_x_m: f64,
    /// Where.
    pub largest_y_m: f64,
    /// Its force on the panel.
    pub force_n: f64,
    /// Length of it without contact.
    pub open_length_m: f64,
    /// Samples along it.
    pub samples: u32,
    /// 1 where the compression goes past the last measured point of the law.
    pub beyond_law: u8,
}

/// Force and moment of one support on the panel.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingReaction {
    /// The force.
    pub force_n: f64,
    /// What force and moments do on a unit slope along x, about the origin.
    pub moment_along_x_n_m: f64,
    /// What force and moments do on a unit slope along y, about the origin.
    pub moment_along_y_n_m: f64,
    /// Force in the plane along x; zero where nothing strains the panel there.
    pub in_plane_x_n: f64,
    /// Force in the plane along y.
    pub in_plane_y_n: f64,
}

/// Stress in one layer: the principal stress that is largest in size on each face, positive in tension.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingLayerStresses {
    /// On the inner face.
    pub inner_pa: f64,
    /// Where.
    pub inner_x_m: f64,
    /// Where.
    pub inner_y_m: f64,
    /// On the outer face.
    pub outer_pa: f64,
    /// Where.
    pub outer_x_m: f64,
    /// Where.
    pub outer_y_m: f64,
    /// Name of the layer, cut to 63 bytes.
    pub name: [c_char; 64],
    /// Triangles that the layer covers.
    pub triangles: u32,
}

/// One natural mode.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingMode {
    /// Its frequency.
    pub frequency_hz: f64,
    /// Estimated error of the frequency, as a share; where `has_error`.
    pub error: f64,
    /// 1 where there was a second mesh to compare with.
    pub has_error: u8,
    /// 1 where the error meets the tolerance.
    pub error_met: u8,
}

/// One way to buckle, by linear theory of a perfectly flat panel: keep well below the lowest factor.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingBucklingMode {
    /// What acts in the plane times this makes the panel buckle.
    pub factor: f64,
    /// Estimated error of the factor, as a share; where `has_error`.
    pub error: f64,
    /// 1 where there was a second mesh to compare with.
    pub has_error: u8,
}

/// Temperature of one layer at which the panel buckles, above the one at which it is flat and free of stress.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingCriticalTemperature {
    /// Rise at the middle of the layer.
    pub rise_k: f64,
    /// Outer face minus inner face.
    pub gradient_k: f64,
    /// Name of the layer, cut to 63 bytes.
    pub layer: [c_char; 64],
}

// The layout that the header asserts.
const _: () = {
    assert!(size_of::<CoamingLatchState>() == 96 && size_of::<CoamingGasketState>() == 72);
    assert!(size_of::<CoamingReaction>() == 40 && size_of::<CoamingLayerStresses>() == 120);
    assert!(size_of::<CoamingMode>() == 24 && size_of::<CoamingBucklingMode>() == 24);
    assert!(size_of::<CoamingCriticalTemperature>() == 80);
};

/// The state of the latch with this index, in the order of the document.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_latch(
    solution: *const CoamingSolution,
    index: usize,
    latch: *mut CoamingLatchState,
    fault: *mut CoamingFault,
) -> u32 {
    let of = |case: &CaseSolution| {
        let found = entry(&case.latches, index, "latches")?;
        let travels = case.opening.as_ref().map(|opening| &opening.travels);
        let travel = travels.and_then(|travels| travels.get(index));
        Ok(CoamingLatchState {
            pull_n: found.pull.to_si(),
            deflection_m: found.deflection.to_si(),
            opening_travel_m: travel.map_or(0.0, |travel| travel.to_si()),
            name: clipped(&found.name),
            has_opening_travel: travel.is_some().into(),
        })
    };
    // SAFETY: by contract of this function.
    unsafe { state(solution, latch, "latch", fault, of) }
}

/// The state of the gasket with this index, in the order of the document.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_gasket(
    solution: *const CoamingSolution,
    index: usize,
    gasket: *mut CoamingGasketState,
    fault: *mut CoamingFault,
) -> u32 {
    let of = |case: &CaseSolution| {
        let found = entry(&case.gaskets, index, "gaskets")?;
        let ([smallest_x_m, smallest_y_m], [largest_x_m, largest_y_m]) =
            (place(&found.smallest.at), place(&found.largest.at));
        Ok(CoamingGasketState {
            smallest_m: found.smallest.value.to_si(),
            smallest_x_m,
            smallest_y_m,
            largest_m: found.largest.value.to_si(),
            largest_x_m,
            largest_y_m,
            force_n: found.force.to_si(),
            open_length_m: found.open_length.to_si(),
            samples: count(found.along_m.len()),
            beyond_law: found.beyond_law.into(),
        })
    };
    // SAFETY: by contract of this function.
    unsafe { state(solution, gasket, "gasket", fault, of) }
}

/// The reaction of the support along a line with this index, in the order of the document.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_line_reaction(
    solution: *const CoamingSolution,
    index: usize,
    reaction: *mut CoamingReaction,
    fault: *mut CoamingFault,
) -> u32 {
    let of = |case: &CaseSolution| Ok(reaction_of(entry(&case.line_reactions, index, "line_reactions")?));
    // SAFETY: by contract of this function.
    unsafe { state(solution, reaction, "reaction", fault, of) }
}

/// The reaction of the support at a point with this index, in the order of the document.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_point_reaction(
    solution: *const CoamingSolution,
    index: usize,
    reaction: *mut CoamingReaction,
    fault: *mut CoamingFault,
) -> u32 {
    let of = |case: &CaseSolution| Ok(reaction_of(entry(&case.point_reactions, index, "point_reactions")?));
    // SAFETY: by contract of this function.
    unsafe { state(solution, reaction, "reaction", fault, of) }
}

/// The push of the stop with this index on the panel, in the order of the document, N.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_stop(
    solution: *const CoamingSolution,
    index: usize,
    push_n: *mut f64,
    fault: *mut CoamingFault,
) -> u32 {
    let of = |case: &CaseSolution| Ok(entry(&case.stops, index, "stops")?.to_si());
    // SAFETY: by contract of this function.
    unsafe { state(solution, push_n, "push_n", fault, of) }
}

/// The stresses of the layer with this index, in the order of the document without layers that are nowhere.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_stresses(
    solution: *const CoamingSolution,
    index: usize,
    stresses: *mut CoamingLayerStresses,
    fault: *mut CoamingFault,
) -> u32 {
    let of = |case: &CaseSolution| {
        let found = entry(&case.stresses, index, "stresses")?;
        let ([inner_x_m, inner_y_m], [outer_x_m, outer_y_m]) =
            (place(&found.inner.at), place(&found.outer.at));
        Ok(CoamingLayerStresses {
            inner_pa: found.inner.value.to_si(),
            inner_x_m,
            inner_y_m,
            outer_pa: found.outer.value.to_si(),
            outer_x_m,
            outer_y_m,
            name: clipped(&found.layer),
            triangles: count(found.triangles.len()),
        })
    };
    // SAFETY: by contract of this function.
    unsafe { state(solution, stresses, "stresses", fault, of) }
}

/// The natural mode with this index, lowest first.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_mode(
    solution: *const CoamingSolution,
    index: usize,
    mode: *mut CoamingMode,
    fault: *mut CoamingFault,
) -> u32 {
    let of = |case: &CaseSolution| {
        let modes = case.modes.as_ref().map_or(&[][..], |found| &found.modes);
        let found = entry(modes, index, "modes")?;
        Ok(CoamingMode {
            frequency_hz: found.frequency.to_si(),
            error: found.error.unwrap_or(0.0),
            has_error: found.error.is_some().into(),
            error_met: found.met.into(),
        })
    };
    // SAFETY: by contract of this function.
    unsafe { state(solution, mode, "mode", fault, of) }
}

/// The way to buckle with this index, lowest factor first.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_buckling_mode(
    solution: *const CoamingSolution,
    index: usize,
    mode: *mut CoamingBucklingMode,
    fault: *mut CoamingFault,
) -> u32 {
    let of = |case: &CaseSolution| {
        let modes = case.buckling.as_ref().map_or(&[][..], |found| &found.modes);
        let found = entry(modes, index, "ways to buckle")?;
        Ok(CoamingBucklingMode {
            factor: found.factor,
            error: found.error.unwrap_or(0.0),
            has_error: found.error.is_some().into(),
        })
    };
    // SAFETY: by contract of this function.
    unsafe { state(solution, mode, "mode", fault, of) }
}

/// The temperature of the layer with this index, in the order of the load case's temperatures, at which the panel buckles.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_critical_temperature(
    solution: *const CoamingSolution,
    index: usize,
    temperature: *mut CoamingCriticalTemperature,
    fault: *mut CoamingFault,
) -> u32 {
    let of = |case: &CaseSolution| {
        let temperatures = case.critical_rise.as_ref().map_or(&[][..], |found| &found.temperatures);
        let found = entry(temperatures, index, "critical temperatures")?;
        Ok(CoamingCriticalTemperature {
            rise_k: found.rise.to_si(),
            gradient_k: found.gradient.to_si(),
            layer: clipped(&found.layer),
        })
    };
    // SAFETY: by contract of this function.
    unsafe { state(solution, temperature, "temperature", fault, of) }
}

fn reaction_of(found: &SupportReaction) -> CoamingReaction {
    CoamingReaction {
        force_n: found.force.to_si(),
        moment_along_x_n_m: found.moment_along_x.to_si(),
        moment_along_y_n_m: found.moment_along_y.to_si(),
        in_plane_x_n: found.in_plane_x.to_si(),
        in_plane_y_n: found.in_plane_y.to_si(),
    }
}
