//! Many rows: strided columns are copied block by block into slices, so that the safe core does the work.

use calculations::batch::{self, Column, Wanted};
use calculations::{Caveats, Error};

use super::Input;
use super::fault::{CoamingFault, guarded, refuse_null};

/// Rows copied at a time: enough for every core to have work, and a megabyte for each column.
const BLOCK: usize = 16 * 8_192;

/// No record has as many fields.
const MOST_COLUMNS: usize = 256;

/// A column of the input: one SI value for each row.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingColumn {
    /// The field: one of the constants `COAMING_PLACE_...` of the input.
    pub place: u32,
    /// The value of row 0.
    pub values: *const f64,
    /// From one row's value to the next, in elements: 1 for an array, 0 for the same value in every row, negative to go
    /// backwards.
    pub stride: i64,
}

/// A column wanted of the outcome: room for one SI value for each row. NaN stands for an absent outcome here, and only
/// here.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingWanted {
    /// The field: one of the constants `COAMING_PLACE_..._OUTCOME_...` of the outcome.
    pub place: u32,
    /// Room for the value of row 0.
    pub values: *mut f64,
    /// From one row's value to the next, in elements; not 0.
    pub stride: i64,
}

/// The rows of a batch: what is given and what is wanted, at least one column. A wanted column may be the very array of
/// a given one, but columns must not overlap otherwise.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingBatch {
    /// The number of rows.
    pub rows: usize,
    /// The columns given; every other field has its value in the input struct.
    pub columns: *const CoamingColumn,
    /// How many columns are given.
    pub column_count: usize,
    /// The columns wanted.
    pub wanted: *const CoamingWanted,
    /// How many columns are wanted.
    pub wanted_count: usize,
}

/// A calculation over many rows.
///
/// # Safety
/// Each pointer is NULL or points to as many values as its count says, columns to as many as rows and stride say.
pub unsafe fn call_batch<I: Input>(
    input: *const I,
    batch: *const CoamingBatch,
    caveats: *mut u64,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        refuse_null(input, "input")?;
        refuse_null(batch, "batch")?;
        // SAFETY: neither is NULL, and by contract they are what their types say.
        let (input, batch) = unsafe { (input.read_unaligned(), batch.read_unaligned()) };
        // SAFETY: the contract of this function.
        let union = unsafe { rows_of(&input.to_calculation()?, &batch)? };
        if !caveats.is_null() {
            // SAFETY: not NULL, and by contract room for the caveats.
            unsafe { caveats.write_unaligned(union.bits()) };
        }
        Ok(())
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

unsafe fn rows_of<C: calculations::Calculation>(
    template: &C,
    batch: &CoamingBatch,
) -> Result<Caveats, Error> {
    // SAFETY: the contract of the caller.
    let (given, wanted) = unsafe {
        (
            list(batch.columns, batch.column_count, "columns")?,
            list(batch.wanted, batch.wanted_count, "wanted")?,
        )
    };
    check(batch.rows, &given, &wanted)?;
    let most = batch.rows.min(BLOCK);
    let mut inputs: Vec<Vec<f64>> = given.iter().map(|_| Vec::with_capacity(most)).collect();
    let mut outcomes: Vec<Vec<f64>> = wanted.iter().map(|_| vec![0.0; most]).collect();
    let mut union = Caveats::NONE;
    let mut first = 0;
    loop {
        let here = BLOCK.min(batch.rows - first);
        for (column, copy) in given.iter().zip(&mut inputs) {
            copy.clear();
            // SAFETY: `check` has refused NULL and strides that leave the address space; by contract each row is there.
            copy.extend(
                (first..first + here)
                    .map(|row| unsafe { at(column.values, row, column.stride).read_unaligned() }),
            );
        }
        let columns: Vec<Column<'_>> = given
            .iter()
            .zip(&inputs)
            .map(|(column, values)| Column { place: place(column.place), values })
            .collect();
        let mut rooms: Vec<Wanted<'_>> = wanted
            .iter()
            .zip(&mut outcomes)
            .map(|(column, values)| {
                values.truncate(here);
                Wanted { place: place(column.place), values }
            })
            .collect();
        union.merge(batch::run(template, &columns, &mut rooms).map_err(|error| behind(error, first))?);
        for (column, values) in wanted.iter().zip(&outcomes) {
            for (row, value) in (first..first + here).zip(values) {
                // SAFETY: as for the columns given.
                unsafe {
                    at(column.values.cast_const(), row, column.stride).cast_mut().write_unaligned(*value)
                };
            }
        }
        first += here;
        if first == batch.rows {
            return Ok(union);
        }
    }
}

/// The entries behind a pointer and a count.
unsafe fn list<T: Copy>(pointer: *const T, count: usize, argument: &str) -> Result<Vec<T>, Error> {
    if count == 0 {
        return Ok(Vec::new());
    }
    refuse_null(pointer, argument)?;
    // More columns than any record has fields is a count gone wrong: it is not followed.
    if count > MOST_COLUMNS {
        let (found, accepted) = (format!("{count} columns"), format!("at most {MOST_COLUMNS} columns"));
        return Err(Error::TooLarge { field: argument.to_owned(), found, accepted });
    }
    // SAFETY: not NULL, and by contract `count` entries.
    Ok((0..count).map(|entry| unsafe { pointer.add(entry).read_unaligned() }).collect())
}

fn check(rows: usize, given: &[CoamingColumn], wanted: &[CoamingWanted]) -> Result<(), Error> {
    if given.is_empty() && wanted.is_empty() {
        return Err(Error::inconsistent("columns, wanted", "at least one column must be given or wanted"));
    }
    for (place, column) in given.iter().enumerate() {
        check_column(rows, column.values, column.stride, &format!("columns[{place}]"))?;
        if given.iter().take(place).any(|other| other.place == column.place) {
            return Err(Error::Repeated { field: format!("columns[{place}].place") });
        }
    }
    for (place, column) in wanted.iter().enumerate() {
        check_column(rows, column.values, column.stride, &format!("wanted[{place}]"))?;
        if column.stride == 0 && rows > 1 {
            let field = format!("wanted[{place}].stride");
            return Err(Error::inconsistent(field, "a stride of 0 leaves room for one row only"));
        }
    }
    Ok(())
}

fn check_column(rows: usize, values: *const f64, stride: i64, argument: &str) -> Result<(), Error> {
    if rows == 0 {
        return Ok(());
    }
    refuse_null(values, &format!("{argument}.values"))?;
    let bytes = i64::try_from(rows - 1).ok().and_then(|last| last.checked_mul(stride)?.checked_mul(8));
    match bytes.map(isize::try_from) {
        Some(Ok(_)) => Ok(()),
        _ => Err(Error::TooLarge {
            field: format!("{argument}.stride"),
            found: format!("{rows} rows with a stride of {stride}"),
            accepted: "an array that fits into memory".to_owned(),
        }),
    }
}

/// The address of a row. The product fits: `check_column` has tried it.
fn at(values: *const f64, row: usize, stride: i64) -> *const f64 {
    values.wrapping_offset((row as isize).wrapping_mul(stride as isize))
}

/// A place as the core takes it; what does not fit is no field's place, and the core refuses it.
fn place(place: u32) -> usize {
    usize::try_from(place).unwrap_or(usize::MAX)
}

/// The row of a block as the row of the whole.
fn behind(error: Error, first: usize) -> Error {
    match error {
        Error::AtRow { row, cause } => Error::AtRow { row: row + first as u64, cause },
        other => other,
    }
}
