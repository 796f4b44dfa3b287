//! A reviewer behind a handle: one cover reviewed again and again while it is worked on.

use core::ffi::c_char;
use std::sync::Mutex;

use calculations::Error;
use coaming_cover::calls::{self, Output, Units};
use coaming_cover::reviewer::Reviewer;

use super::fault::{CoamingFault, guarded, refuse_null};
use super::handle;
use super::text::document_call;

/// Reviews a cover after each change, and solves anew only what the change touches. Made by coaming_reviewer_new(), to be given to
/// coaming_reviewer_free(). One thread at a time may use it; a second one is refused with COAMING_ERROR_INCONSISTENT.
///
/// What the panel solver found is kept from one review to the next: a lid that did not change is not solved again, and its rows are the
/// same to the bit; a lid of the same shape with other numbers, such as another thickness, gasket or mass, is solved on the meshes that
/// there are. Such meshes were refined for the numbers before, so that its rows may differ from those of coaming_review() within the
/// errors that they print. What the latest document does not use is let go.
pub struct CoamingReviewer {
    reviewer: Mutex<Reviewer>,
}

/// Makes a reviewer that has reviewed nothing yet. On success `*reviewer` is to be given to coaming_reviewer_free(); `fault` may be NULL.
///
/// # Safety
/// Each pointer is NULL or points to what its type says.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_reviewer_new(
    reviewer: *mut *mut CoamingReviewer,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        refuse_null(reviewer, "reviewer")?;
        let handle = Box::new(CoamingReviewer { reviewer: Mutex::new(Reviewer::new()) });
        // SAFETY: not NULL, and by contract room for a pointer.
        unsafe { reviewer.write_unaligned(Box::into_raw(handle)) };
        Ok(())
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

/// Frees a reviewer; NULL is fine. The texts that it gave stay.
///
/// # Safety
/// NULL, or a reviewer of coaming_reviewer_new() that was not freed yet and that no thread is using.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_reviewer_free(reviewer: *mut CoamingReviewer) {
    if !reviewer.is_null() {
        // SAFETY: by contract it came from `Box::into_raw` and is freed once.
        drop(unsafe { Box::from_raw(reviewer) });
    }
}

/// Reviews a cover with what the reviewer has kept. As coaming_review() otherwise: a document that is refused gives the same fault, and
/// the reviewer can be used on.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; texts end with a zero; the reviewer was not freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_reviewer_review(
    reviewer: *mut CoamingReviewer,
    document: *const c_char,
    output: *const c_char,
    units: *const c_char,
    review: *mut *mut c_char,
    fault: *mut CoamingFault,
) -> u32 {
    // SAFETY: by contract of this function.
    unsafe { document_call(asked(reviewer, calls::review_with), document, output, units, review, fault) }
}

/// The order sheet of a cover with what the reviewer has kept. As coaming_reviewer_review() otherwise.
///
/// # Safety
/// As coaming_reviewer_review().
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_reviewer_order_sheet(
    reviewer: *mut CoamingReviewer,
    document: *const c_char,
    output: *const c_char,
    units: *const c_char,
    order_sheet: *mut *mut c_char,
    fault: *mut CoamingFault,
) -> u32 {
    // SAFETY: by contract of this function.
    unsafe {
        document_call(asked(reviewer, calls::order_sheet_with), document, output, units, order_sheet, fault)
    }
}

/// A call that takes a reviewer, a document and how the text is to be.
type Call = fn(&mut Reviewer, &str, Output, Units) -> Result<String, Error>;

/// The call with its reviewer, which nobody else may be using.
///
/// # Safety
/// The reviewer is NULL, or outlives what is given back.
unsafe fn asked<'a>(
    reviewer: *const CoamingReviewer,
    call: Call,
) -> impl FnOnce(&str, Output, Units) -> Result<String, Error> + 'a {
    // SAFETY: by contract NULL or not freed.
    let handle = unsafe { reviewer.as_ref::<'a>() }.map(|handle| &handle.reviewer);
    move |document, output, units| {
        handle::with(handle, "reviewer", |reviewer| call(reviewer, document, output, units))
    }
}
