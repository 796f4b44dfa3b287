//! Errors and panics as C sees them: a status, and a fault with the same.

use core::ffi::c_char;
use core::mem::offset_of;
use core::panic::AssertUnwindSafe;
use std::panic::catch_unwind;

use calculations::Error;

/// The status of success.
pub const COAMING_OK: u32 = 0;

/// A defect of the library itself: please report it, with the input.
pub const COAMING_ERROR_DEFECT: u32 = 1000;

/// Why a call failed. It owns nothing and needs no freeing; a call that succeeds leaves it untouched.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct CoamingFault {
    /// The permanent code of the cause, the same as the status.
    pub code: u32,
    /// The path of the field at fault, without the unit suffix, such as `thickness`; empty where there is none.
    pub field: [c_char; 64],
    /// The value at fault, in SI units; NaN where there is none.
    pub value: f64,
    /// What is wrong and what is accepted, in one sentence.
    pub message: [c_char; 256],
    /// The row of a batch that failed, from 0; -1 outside a batch.
    pub index: i64,
}

// The layout that the header asserts.
const _: () = {
    assert!(size_of::<CoamingFault>() == 344);
    assert!(offset_of!(CoamingFault, field) == 4 && offset_of!(CoamingFault, value) == 72);
    assert!(offset_of!(CoamingFault, message) == 80 && offset_of!(CoamingFault, index) == 336);
};

impl CoamingFault {
    /// The fault of an error.
    pub fn of(error: &Error) -> Self {
        Self {
            code: error.code(),
            field: clipped(error.field()),
            value: error.value().unwrap_or(f64::NAN),
            message: clipped(&error.to_string()),
            index: error.row().and_then(|row| i64::try_from(row).ok()).unwrap_or(-1),
        }
    }

    fn of_defect(message: &str) -> Self {
        Self {
            code: COAMING_ERROR_DEFECT,
            field: clipped(""),
            value: f64::NAN,
            message: clipped(&format!("a defect of the library: {message}")),
            index: -1,
        }
    }
}

/// A text in a fixed array: cut between two characters, never within one, and closed by a zero.
pub fn clipped<const N: usize>(text: &str) -> [c_char; N] {
    let mut end = text.len().min(N.saturating_sub(1));
    while !text.is_char_boundary(end) {
        end -= 1;
    }
    let mut clipped = [0; N];
    for (room, byte) in clipped.iter_mut().zip(text.bytes().take(end)) {
        *room = byte as c_char;
    }
    clipped
}

/// Refuses a pointer that is NULL.
///
/// # Errors
/// [`Error::WrongType`] that names the argument.
pub fn refuse_null<T>(pointer: *const T, argument: &str) -> Result<(), Error> {
    if pointer.is_null() { Err(null(argument)) } else { Ok(()) }
}

/// The error of an argument that is NULL.
pub(super) fn null(argument: &str) -> Error {
    let (found, expected) = ("NULL".to_owned(), "a pointer to a value".to_owned());
    Error::WrongType { field: argument.to_owned(), found, expected }
}

/// Does the work of a call: a refusal or a panic becomes a status and fills the fault, if there is one.
///
/// # Safety
/// `fault` is NULL or has room for a fault.
pub unsafe fn guarded(fault: *mut CoamingFault, work: impl FnOnce() -> Result<(), Error>) -> u32 {
    let refused = || work().err().map(|error| CoamingFault::of(&error));
    let failure = match catch_unwind(AssertUnwindSafe(refused)) {
        Ok(None) => return COAMING_OK,
        Ok(Some(failure)) => failure,
        Err(panic) => {
            let text = panic.downcast_ref::<String>().map(String::as_str);
            let text = text.or_else(|| panic.downcast_ref::<&str>().copied()).unwrap_or("unknown");
            CoamingFault::of_defect(text)
        }
    };
    if !fault.is_null() {
        // SAFETY: not NULL, and by contract room for a fault.
        unsafe { fault.write_unaligned(failure) };
    }
    failure.code
}
