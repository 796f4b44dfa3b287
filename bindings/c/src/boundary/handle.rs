//! What stands behind a handle, worked on by one thread at a time; and texts that are handed over.

use core::ffi::c_char;
use std::ffi::CString;
use std::sync::{Mutex, TryLockError};

use calculations::Error;

use super::fault::null;

/// Works on what nobody else is working on: waiting for another thread could wait for this one.
///
/// # Errors
/// [`Error::WrongType`] for NULL, [`Error::Inconsistent`] where it is in use or an earlier call ended in a defect, and what the
/// work gives.
pub(super) fn with<T, R>(
    handle: Option<&Mutex<T>>,
    name: &str,
    work: impl FnOnce(&mut T) -> Result<R, Error>,
) -> Result<R, Error> {
    let Some(handle) = handle else { return Err(null(name)) };
    match handle.try_lock() {
        Ok(mut held) => work(&mut held),
        Err(TryLockError::WouldBlock) => {
            Err(Error::inconsistent(name, "it is at work; use it on one thread at a time"))
        }
        Err(TryLockError::Poisoned(_)) => {
            Err(Error::inconsistent(name, "a defect of the library stopped an earlier call; make it anew"))
        }
    }
}

/// Hands a text over, to be given back to coaming_text_free().
///
/// # Errors
/// [`Error::Unreadable`] for a text with a zero in it.
///
/// # Safety
/// `answer` has room for a pointer.
pub(super) unsafe fn hand_over(text: String, answer: *mut *mut c_char) -> Result<(), Error> {
    let text = CString::new(text).map_err(|error| Error::Unreadable { reason: error.to_string() })?;
    // SAFETY: by contract room for a pointer.
    unsafe { answer.write_unaligned(text.into_raw()) };
    Ok(())
}
