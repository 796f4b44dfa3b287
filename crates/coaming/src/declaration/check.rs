//! The range check of one number: possible, tested, finite.

use super::kind::{Field, Kind};
use super::path::Path;
use crate::caveat::{Caveat, Caveats};
use crate::error::Error;
use crate::quantity::{System, for_people, rounded};

/// Checks a number against its field's ranges: outside the possible one is an error, outside the tested one a caveat.
///
/// # Errors
/// [`Error::Impossible`] where the number is not finite or outside the field's possible range.
#[inline(always)]
pub fn check_number(
    si: f64,
    field: &'static Field,
    path: &Path<'_>,
    caveats: &mut Caveats,
) -> Result<(), Error> {
    // Written so that a NaN, which compares false, is refused; infinities are outside every finite bound.
    if !(si >= field.possible.0 && si <= field.possible.1 && si.abs() < f64::INFINITY) {
        return Err(impossible(si, field, path));
    }
    if si < field.tested.0 || si > field.tested.1 {
        caveats.add(Caveat::OutsideTested);
    }
    Ok(())
}

#[cold]
#[inline(never)]
fn impossible(si: f64, field: &'static Field, path: &Path<'_>) -> Error {
    Error::Impossible {
        field: path.to_string(),
        value: si,
        shown: shown(si, field),
        accepted: accepted(field),
    }
}

/// A number of the field as people read it.
pub fn shown(si: f64, field: &Field) -> String {
    match field.kind.dimension() {
        Some(dimension) if si.is_finite() => for_people(si, dimension, field.unit, System::Shop),
        _ => rounded(si, 6),
    }
}

/// The field's possible range in words: `greater than 0 mm`, `0 deg to 180 deg`.
pub fn accepted(field: &Field) -> String {
    let dimension = match field.kind {
        Kind::List(inner) => inner.dimension(),
        other => other.dimension(),
    };
    let bound = |si: f64| match dimension {
        Some(dimension) => for_people(si, dimension, field.unit, System::Shop),
        None => rounded(si, 6),
    };
    let (low, high) = field.possible;
    let above = |low: f64| {
        if low == f64::MIN_POSITIVE {
            format!("greater than {}", bound(0.0))
        } else {
            format!("at least {}", bound(low))
        }
    };
    // A bound just below a round number stands for "less than" it.
    let below = |high: f64| {
        let open = high.next_up();
        if is_round(open) && !is_round(high) {
            format!("less than {}", bound(open))
        } else {
            format!("at most {}", bound(high))
        }
    };
    match (low.is_finite(), high.is_finite()) {
        (false, false) => "any finite number".to_owned(),
        (true, false) => above(low),
        (false, true) => below(high),
        (true, true) if low > high => "nothing".to_owned(),
        (true, true) => format!("{} and {}", above(low), below(high)),
    }
}

/// True for a number that has at most six figures.
fn is_round(value: f64) -> bool {
    format!("{value:.5e}").parse::<f64>() == Ok(value)
}
