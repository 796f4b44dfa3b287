//! The one place where C's pointers are read and written, and where errors and panics become a status and a fault.

mod batch;
mod fault;
mod handle;
pub mod panel;
pub mod reviewer;
pub mod solution;
pub mod states;
pub mod text;
pub mod values;

use calculations::declaration::{Choice, not_a_number_of};
use calculations::{Calculation, Caveats, Error};

pub use batch::{CoamingBatch, CoamingColumn, CoamingWanted, call_batch};
pub use fault::{COAMING_ERROR_DEFECT, COAMING_OK, CoamingFault, clipped, guarded, refuse_null};

/// An input as C holds it: plain data, for which any bits are a value.
pub trait Input: Copy {
    /// The calculation that it is the input of.
    type Calculation: Calculation;
    /// The outcome as C holds it.
    type Outcome: Outcome<<Self::Calculation as Calculation>::Outcome>;

    /// The calculation's own input.
    ///
    /// # Errors
    /// [`Error::NotAnOption`] for a number that is no option of a choice.
    fn to_calculation(&self) -> Result<Self::Calculation, Error>;
}

/// An outcome as C holds it.
pub trait Outcome<Of> {
    /// From the calculation's own outcome.
    fn of(outcome: &Of, caveats: Caveats) -> Self;
}

/// The option of a number that C gave.
///
/// # Errors
/// [`Error::NotAnOption`] that names the field.
pub fn choice<C: Choice>(field: &str, number: u32) -> Result<C, Error> {
    C::from_number(number).ok_or_else(|| not_a_number_of::<C>(field, number))
}

/// An optional choice; its number is looked at only where it is given.
///
/// # Errors
/// [`Error::NotAnOption`] that names the field.
pub fn optional_choice<C: Choice>(given: u8, field: &str, number: u32) -> Result<Option<C>, Error> {
    if given == 0 { Ok(None) } else { choice(field, number).map(Some) }
}

/// One calculation.
///
/// # Safety
/// Each pointer is NULL or points to a value of its type.
pub unsafe fn call<I: Input>(input: *const I, outcome: *mut I::Outcome, fault: *mut CoamingFault) -> u32 {
    let work = || {
        refuse_null(input, "input")?;
        refuse_null(outcome, "outcome")?;
        // SAFETY: not NULL, and by contract an `I`; any bits are a value of it.
        let input = unsafe { input.read_unaligned() };
        let (result, caveats) = input.to_calculation()?.calculate()?;
        // SAFETY: not NULL, and by contract room for an outcome.
        unsafe { outcome.write_unaligned(I::Outcome::of(&result, caveats)) };
        Ok(())
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}
