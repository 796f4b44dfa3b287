//! What a class of the module holds, worked on by one thread at a time.

use std::sync::{Mutex, TryLockError};

use coaming::Error;

/// Works on what nobody else is working on: waiting for another thread could wait for this one.
///
/// # Errors
/// [`Error::Inconsistent`] where it is in use or an earlier call ended in a defect, and what the work gives.
pub(crate) fn with<T, R>(
    held: &Mutex<T>,
    name: &str,
    work: impl FnOnce(&mut T) -> Result<R, Error>,
) -> Result<R, Error> {
    match held.try_lock() {
        Ok(mut held) => work(&mut held),
        Err(TryLockError::WouldBlock) => {
            Err(Error::inconsistent(name, "it is at work; use it on one thread at a time"))
        }
        Err(TryLockError::Poisoned(_)) => {
            Err(Error::inconsistent(name, "a defect of the library stopped an earlier call; make it anew"))
        }
    }
}
