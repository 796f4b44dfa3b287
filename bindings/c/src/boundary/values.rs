//! The values of a solution over its mesh, along its gaskets and over its modes, copied into the caller's arrays.

use calculations::Error;
use coaming_cover::panel::{Buckling, CaseSolution, GasketState, LayerStresses, NaturalModes};

use super::fault::{CoamingFault, guarded, refuse_null};
use super::solution::{CoamingSolution, entry};

/// Vertices: x, m.
pub const COAMING_VALUES_X: u32 = 0;
/// Vertices: y, m.
pub const COAMING_VALUES_Y: u32 = 1;
/// Deflection at the vertices, m.
pub const COAMING_VALUES_DEFLECTION: u32 = 2;
/// Slope along x at the vertices.
pub const COAMING_VALUES_SLOPE_X: u32 = 3;
/// Slope along y at the vertices.
pub const COAMING_VALUES_SLOPE_Y: u32 = 4;
/// Moment per length at the middle of the triangles, xx, N; positive stretches the outer face.
pub const COAMING_VALUES_MOMENT_XX: u32 = 5;
/// Moment per length, yy, N.
pub const COAMING_VALUES_MOMENT_YY: u32 = 6;
/// Moment per length, xy, N.
pub const COAMING_VALUES_MOMENT_XY: u32 = 7;
/// Force in the plane per length at the middle of the triangles, xx, N/m; positive in tension.
pub const COAMING_VALUES_MEMBRANE_XX: u32 = 8;
/// Force in the plane per length, yy, N/m.
pub const COAMING_VALUES_MEMBRANE_YY: u32 = 9;
/// Force in the plane per length, xy, N/m.
pub const COAMING_VALUES_MEMBRANE_XY: u32 = 10;
/// Gasket `index`: distance along it, m.
pub const COAMING_VALUES_GASKET_ALONG: u32 = 16;
/// Gasket `index`: x, m.
pub const COAMING_VALUES_GASKET_X: u32 = 17;
/// Gasket `index`: y, m.
pub const COAMING_VALUES_GASKET_Y: u32 = 18;
/// Gasket `index`: compression, m; negative is an open gap.
pub const COAMING_VALUES_GASKET_COMPRESSION: u32 = 19;
/// Gasket `index`: force per length, N/m.
pub const COAMING_VALUES_GASKET_FORCE: u32 = 20;
/// Stresses `index`: larger principal stress on the inner face at the middle of each of the layer's triangles, Pa.
pub const COAMING_VALUES_INNER_LARGER: u32 = 32;
/// Stresses `index`: smaller principal stress on the inner face, Pa.
pub const COAMING_VALUES_INNER_SMALLER: u32 = 33;
/// Stresses `index`: larger principal stress on the outer face, Pa.
pub const COAMING_VALUES_OUTER_LARGER: u32 = 34;
/// Stresses `index`: smaller principal stress on the outer face, Pa.
pub const COAMING_VALUES_OUTER_SMALLER: u32 = 35;
/// The modes' vertices: x, m.
pub const COAMING_VALUES_MODE_X: u32 = 48;
/// The modes' vertices: y, m.
pub const COAMING_VALUES_MODE_Y: u32 = 49;
/// Mode `index`: deflection at the modes' vertices for a modal mass of 1 kg, m.
pub const COAMING_VALUES_MODE_SHAPE: u32 = 50;
/// The vertices of the ways to buckle: x, m.
pub const COAMING_VALUES_BUCKLING_X: u32 = 64;
/// The vertices of the ways to buckle: y, m.
pub const COAMING_VALUES_BUCKLING_Y: u32 = 65;
/// Way to buckle `index`: deflection at their vertices, scaled so that the largest in size is 1.
pub const COAMING_VALUES_BUCKLING_SHAPE: u32 = 66;

/// Triangles: indices of three vertices each, one after another.
pub const COAMING_INDICES_TRIANGLES: u32 = 0;
/// Stresses `index`: the triangles that the layer covers.
pub const COAMING_INDICES_LAYER_TRIANGLES: u32 = 1;
/// The modes' triangles: indices of three vertices each.
pub const COAMING_INDICES_MODE_TRIANGLES: u32 = 2;
/// The triangles of the ways to buckle: indices of three vertices each.
pub const COAMING_INDICES_BUCKLING_TRIANGLES: u32 = 3;

/// Copies values of a solution.
///
/// `which` is one of the constants `COAMING_VALUES_...`; `index` says which gasket, layer or mode, and is ignored where there
/// is but one. `values` has room for `room` numbers; `*count` becomes how many there are. With `values` NULL and `room` 0 only
/// the count is written. Too little room is refused with COAMING_ERROR_TOO_LARGE, and nothing is written.
///
/// # Safety
/// Each pointer is NULL or points to what its type says, `values` to room for `room` numbers; the solution was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_values(
    solution: *const CoamingSolution,
    which: u32,
    index: usize,
    values: *mut f64,
    room: usize,
    count: *mut usize,
    fault: *mut CoamingFault,
) -> u32 {
    // SAFETY: by contract of this function.
    unsafe { copied(solution, values, room, count, fault, |case| numbers(case, which, index)) }
}

/// Copies indices of a solution: `which` is one of the constants `COAMING_INDICES_...`. As coaming_solution_values()
/// otherwise.
///
/// # Safety
/// As coaming_solution_values().
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_solution_indices(
    solution: *const CoamingSolution,
    which: u32,
    index: usize,
    values: *mut u32,
    room: usize,
    count: *mut usize,
    fault: *mut CoamingFault,
) -> u32 {
    // SAFETY: by contract of this function.
    unsafe { copied(solution, values, room, count, fault, |case| indices(case, which, index)) }
}

fn numbers(case: &CaseSolution, which: u32, index: usize) -> Result<&[f64], Error> {
    let field = &case.field;
    let gasket = |of: fn(&GasketState) -> &Vec<f64>| {
        entry(&case.gaskets, index, "gaskets").map(|found| of(found).as_slice())
    };
    let stress = |of: fn(&LayerStresses) -> &Vec<f64>| {
        entry(&case.stresses, index, "stresses").map(|found| of(found).as_slice())
    };
    Ok(match which {
        COAMING_VALUES_X => &field.x_m,
        COAMING_VALUES_Y => &field.y_m,
        COAMING_VALUES_DEFLECTION => &field.deflection_m,
        COAMING_VALUES_SLOPE_X => &field.slope_x,
        COAMING_VALUES_SLOPE_Y => &field.slope_y,
        COAMING_VALUES_MOMENT_XX => &field.moment_xx_n,
        COAMING_VALUES_MOMENT_YY => &field.moment_yy_n,
        COAMING_VALUES_MOMENT_XY => &field.moment_xy_n,
        COAMING_VALUES_MEMBRANE_XX => &field.membrane_xx_n_per_m,
        COAMING_VALUES_MEMBRANE_YY => &field.membrane_yy_n_per_m,
        COAMING_VALUES_MEMBRANE_XY => &field.membrane_xy_n_per_m,
        COAMING_VALUES_GASKET_ALONG => gasket(|found| &found.along_m)?,
        COAMING_VALUES_GASKET_X => gasket(|found| &found.x_m)?,
        COAMING_VALUES_GASKET_Y => gasket(|found| &found.y_m)?,
        COAMING_VALUES_GASKET_COMPRESSION => gasket(|found| &found.compression_m)?,
        COAMING_VALUES_GASKET_FORCE => gasket(|found| &found.force_n_per_m)?,
        COAMING_VALUES_INNER_LARGER => stress(|found| &found.inner_larger_pa)?,
        COAMING_VALUES_INNER_SMALLER => stress(|found| &found.inner_smaller_pa)?,
        COAMING_VALUES_OUTER_LARGER => stress(|found| &found.outer_larger_pa)?,
        COAMING_VALUES_OUTER_SMALLER => stress(|found| &found.outer_smaller_pa)?,
        COAMING_VALUES_MODE_X => &modes(case)?.x_m,
        COAMING_VALUES_MODE_Y => &modes(case)?.y_m,
        COAMING_VALUES_MODE_SHAPE => &entry(&modes(case)?.modes, index, "modes")?.shape_m,
        COAMING_VALUES_BUCKLING_X => &buckling(case)?.x_m,
        COAMING_VALUES_BUCKLING_Y => &buckling(case)?.y_m,
        COAMING_VALUES_BUCKLING_SHAPE => &entry(&buckling(case)?.modes, index, "ways to buckle")?.shape,
        other => return Err(unknown(other, "COAMING_VALUES_...")),
    })
}

fn indices(case: &CaseSolution, which: u32, index: usize) -> Result<&[u32], Error> {
    Ok(match which {
        COAMING_INDICES_TRIANGLES => &case.field.triangles,
        COAMING_INDICES_LAYER_TRIANGLES => &entry(&case.stresses, index, "stresses")?.triangles,
        COAMING_INDICES_MODE_TRIANGLES => &modes(case)?.triangles,
        COAMING_INDICES_BUCKLING_TRIANGLES => &buckling(case)?.triangles,
        other => return Err(unknown(other, "COAMING_INDICES_...")),
    })
}

fn modes(case: &CaseSolution) -> Result<&NaturalModes, Error> {
    case.modes.as_ref().ok_or_else(|| Error::Missing {
        field: "modes".to_owned(),
        needed: "a load case that asks for natural modes".to_owned(),
    })
}

fn buckling(case: &CaseSolution) -> Result<&Buckling, Error> {
    case.buckling.as_ref().ok_or_else(|| Error::Missing {
        field: "buckling".to_owned(),
        needed: "a load case that asks for ways to buckle".to_owned(),
    })
}

fn unknown(which: u32, accepted: &str) -> Error {
    Error::NotAnOption {
        field: "which".to_owned(),
        value: which.to_string(),
        accepted: format!("the constants {accepted}"),
        nearest: None,
    }
}

/// Copies a list of a solution into the caller's array.
///
/// # Safety
/// Each pointer is NULL or points to what its type says, `values` to room for `room` entries; the solution was not freed.
unsafe fn copied<T: Copy>(
    solution: *const CoamingSolution,
    values: *mut T,
    room: usize,
    count: *mut usize,
    fault: *mut CoamingFault,
    of: impl FnOnce(&CaseSolution) -> Result<&[T], Error>,
) -> u32 {
    let work = || {
        refuse_null(solution, "solution")?;
        refuse_null(count, "count")?;
        // SAFETY: not NULL, and by contract not freed.
        let found = of(unsafe { &*solution }.case()?)?;
        let only_count = values.is_null() && room == 0;
        if !only_count {
            refuse_null(values, "values")?;
            if room < found.len() {
                return Err(Error::TooLarge {
                    field: "values".to_owned(),
                    found: format!("{} values", found.len()),
                    accepted: format!("room for {room}"),
                });
            }
            for (nth, value) in found.iter().enumerate() {
                // SAFETY: not NULL, and by contract room for `room` entries, of which there are as many as values.
                unsafe { values.add(nth).write_unaligned(*value) };
            }
        }
        // SAFETY: not NULL, and by contract room for a count.
        unsafe { count.write_unaligned(found.len()) };
        Ok(())
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}
