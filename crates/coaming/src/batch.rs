//! One calculation over many rows: a template, whose scalar fields are replaced row by row from columns.
//!
//! Rows are taken in fixed blocks that are shared out over the cores. The result does not depend on how many there
//! are: rows are independent, caveats are a union, and of the failing rows the lowest is reported.

use core::num::NonZero;

use crate::calculation::Calculation;
use crate::caveat::Caveats;
use crate::declaration::Fields;
use crate::error::Error;

/// Rows in a block; below two blocks a second thread costs more than it saves.
const BLOCK: usize = 8_192;

/// A column given: the place of an input field and one SI value for each row.
#[derive(Debug, Clone, Copy)]
pub struct Column<'a> {
    /// The field's place in the input.
    pub place: usize,
    /// One SI value for each row.
    pub values: &'a [f64],
}

/// A column wanted: the place of an outcome field and room for one SI value for each row. An optional outcome that
/// is absent is a NaN here, and only here.
#[derive(Debug)]
pub struct Wanted<'a> {
    /// The field's place in the outcome.
    pub place: usize,
    /// Room for one SI value for each row.
    pub values: &'a mut [f64],
}

/// Calculates every row.
///
/// # Errors
/// [`Error::AtRow`] with the lowest failing row; the columns wanted are then unspecified. [`Error::Inconsistent`] where
/// columns differ in length, [`Error::WrongType`] where a place holds no number.
pub fn run<C: Calculation>(
    template: &C,
    given: &[Column<'_>],
    wanted: &mut [Wanted<'_>],
) -> Result<Caveats, Error> {
    let rows = rows_of(given, wanted)?;
    places_of::<C>(given, wanted)?;
    let cores = std::thread::available_parallelism().map_or(1, NonZero::get);
    let blocks = rows.div_ceil(BLOCK);
    let threads = cores.min(blocks / 2).max(1);
    let share = blocks.div_ceil(threads) * BLOCK;
    let parts = split(given, wanted, rows, share);
    let outcomes: Vec<Result<Caveats, Error>> = if threads == 1 {
        parts.into_iter().map(|part| part.run(template)).collect()
    } else {
        std::thread::scope(|scope| {
            let running: Vec<_> =
                parts.into_iter().map(|part| scope.spawn(move || part.run(template))).collect();
            // A thread that panicked has broken the library's own promise: the panic goes on to the boundary.
            running
                .into_iter()
                .map(|thread| thread.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
                .collect()
        })
    };
    // Parts are in the order of their rows, so the first failure is the lowest row.
    outcomes.into_iter().try_fold(Caveats::NONE, |mut union, outcome| {
        union.merge(outcome?);
        Ok(union)
    })
}

fn rows_of(given: &[Column<'_>], wanted: &[Wanted<'_>]) -> Result<usize, Error> {
    let lengths =
        given.iter().map(|column| column.values.len()).chain(wanted.iter().map(|column| column.values.len()));
    let mut lengths = lengths.peekable();
    let rows = lengths.peek().copied().unwrap_or(0);
    if lengths.all(|length| length == rows) {
        Ok(rows)
    } else {
        Err(Error::inconsistent("columns", "every column must have the same number of rows"))
    }
}

fn places_of<C: Calculation>(given: &[Column<'_>], wanted: &[Wanted<'_>]) -> Result<(), Error> {
    let not_a_number = |side: &str, place: usize| Error::WrongType {
        field: format!("{side} column {place}"),
        found: "no number".to_owned(),
        expected: "the place of a quantity or plain number".to_owned(),
    };
    let scalar = |fields: &[crate::declaration::Field], place: usize| {
        fields.get(place).is_some_and(|field| field.kind.is_scalar())
    };
    if let Some(column) = given.iter().find(|column| !scalar(C::RECORD.fields, column.place)) {
        return Err(not_a_number("input", column.place));
    }
    match wanted.iter().find(|column| !scalar(<C::Outcome as Fields>::RECORD.fields, column.place)) {
        Some(column) => Err(not_a_number("outcome", column.place)),
        None => Ok(()),
    }
}

/// Neighbouring rows that one thread works through.
struct Part<'g, 'w> {
    first: usize,
    rows: usize,
    given: Vec<Column<'g>>,
    wanted: Vec<Wanted<'w>>,
}

fn split<'g, 'w>(
    given: &[Column<'g>],
    wanted: &'w mut [Wanted<'_>],
    rows: usize,
    share: usize,
) -> Vec<Part<'g, 'w>> {
    let mut rest: Vec<Wanted<'w>> =
        wanted.iter_mut().map(|column| Wanted { place: column.place, values: &mut *column.values }).collect();
    let mut parts = Vec::new();
    let mut first = 0;
    while first < rows {
        let here = share.min(rows - first);
        let (mut mine, mut others) = (Vec::new(), Vec::new());
        for column in rest {
            // `here` is at most the length that is left: every column has `rows` rows.
            let (head, tail) = column.values.split_at_mut(here.min(column.values.len()));
            mine.push(Wanted { place: column.place, values: head });
            others.push(Wanted { place: column.place, values: tail });
        }
        rest = others;
        let given = given
            .iter()
            .map(|column| Column {
                place: column.place,
                values: column.values.get(first..first + here).unwrap_or(&[]),
            })
            .collect();
        parts.push(Part { first, rows: here, given, wanted: mine });
        first += here;
    }
    parts
}

impl Part<'_, '_> {
    fn run<C: Calculation>(mut self, template: &C) -> Result<Caveats, Error> {
        let mut row_input = template.clone();
        let mut union = Caveats::NONE;
        for row in 0..self.rows {
            for column in &self.given {
                row_input.set(column.place, column.values.get(row).copied().unwrap_or(f64::NAN));
            }
            let (outcome, caveats) = row_input
                .calculate()
                .map_err(|cause| Error::AtRow { row: (self.first + row) as u64, cause: Box::new(cause) })?;
            union.merge(caveats);
            for column in &mut self.wanted {
                if let Some(room) = column.values.get_mut(row) {
                    *room = outcome.get(column.place).unwrap_or(f64::NAN);
                }
            }
        }
        Ok(union)
    }
}
