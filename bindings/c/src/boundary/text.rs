//! The calls that pass text: a calculation by name, the words of caveats and errors, the version.

use core::ffi::{CStr, c_char};
use std::ffi::CString;

use calculations::Error;
use coaming_cover::calls;

use super::fault::{CoamingFault, guarded, refuse_null};
use super::handle::hand_over;
use crate::generated::words;

/// Calculates from JSON text: any calculation, also one with lists or alternatives that has no struct here.
///
/// `input` is one JSON object with the calculation's fields: quantities as text with a unit (`"1.6 mm"`), choices by
/// name, optional fields left out. On success `*outcome` is a JSON object, `{"outcome": {...}, "caveats": [...]}`, to be
/// given back to coaming_text_free(); otherwise it is untouched. Texts are UTF-8; `fault` may be NULL.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; texts end with a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_calculate(
    name: *const c_char,
    input: *const c_char,
    outcome: *mut *mut c_char,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        // SAFETY: by contract NULL or text that ends with a zero.
        let (name, input) = unsafe { (text(name, "name")?, text(input, "input")?) };
        refuse_null(outcome, "outcome")?;
        let answer = calculations::text::calculate(name, input)?;
        // SAFETY: not NULL, and by contract room for a pointer.
        unsafe { hand_over(answer, outcome) }
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

/// Reviews a cover: its document in, the review out. The results are screenings with the inputs given, not a certificate.
///
/// `document` is TOML or JSON; `output` is `"text"`, `"full_text"`, `"markdown"`, `"full_markdown"` or `"json"`; `units` is
/// `"shop"` or `"inch"`. On success `*review` is to be given back to coaming_text_free(); otherwise it is untouched. Texts
/// are UTF-8; `fault` may be NULL.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; texts end with a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_review(
    document: *const c_char,
    output: *const c_char,
    units: *const c_char,
    review: *mut *mut c_char,
    fault: *mut CoamingFault,
) -> u32 {
    // SAFETY: by contract of this function.
    unsafe { document_call(calls::review, document, output, units, review, fault) }
}

/// The order sheet of a cover: its document in, the sheet out. As coaming_review() otherwise.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; texts end with a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_order_sheet(
    document: *const c_char,
    output: *const c_char,
    units: *const c_char,
    order_sheet: *mut *mut c_char,
    fault: *mut CoamingFault,
) -> u32 {
    // SAFETY: by contract of this function.
    unsafe { document_call(calls::order_sheet, document, output, units, order_sheet, fault) }
}

/// Solves one panel: its document in, deflections, latch forces and gasket compression of every load case out.
///
/// `"json"` holds the values over the mesh too. Linear theory of thin plates for small deflections. As coaming_review()
/// otherwise; it may take seconds, and is safe to call from many threads at once.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; texts end with a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_panel(
    document: *const c_char,
    output: *const c_char,
    units: *const c_char,
    solution: *mut *mut c_char,
    fault: *mut CoamingFault,
) -> u32 {
    // SAFETY: by contract of this function.
    unsafe { document_call(calls::panel, document, output, units, solution, fault) }
}

/// The JSON Schema (2020-12) of a document, for editors: `of` is `"cover"` or `"panel"`. As coaming_review() otherwise.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; the text ends with a zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_schema(
    of: *const c_char,
    schema: *mut *mut c_char,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        // SAFETY: by contract NULL or text that ends with a zero.
        let of = unsafe { text(of, "of")? };
        refuse_null(schema, "schema")?;
        let text = calls::schema(calls::choice("of", of)?)?;
        // SAFETY: not NULL, and by contract room for a pointer.
        unsafe { hand_over(text, schema) }
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

/// A call that takes a document and gives text.
///
/// # Safety
/// Each pointer is NULL or points to what its type says; texts end with a zero.
pub unsafe fn document_call(
    call: impl FnOnce(&str, calls::Output, calls::Units) -> Result<String, Error>,
    document: *const c_char,
    output: *const c_char,
    units: *const c_char,
    answer: *mut *mut c_char,
    fault: *mut CoamingFault,
) -> u32 {
    let work = || {
        // SAFETY: by contract NULL or text that ends with a zero.
        let (document, output, units) =
            unsafe { (text(document, "document")?, text(output, "output")?, text(units, "units")?) };
        refuse_null(answer, "answer")?;
        let text = call(document, calls::choice("output", output)?, calls::choice("units", units)?)?;
        // SAFETY: not NULL, and by contract room for a pointer.
        unsafe { hand_over(text, answer) }
    };
    // SAFETY: by contract NULL or room for a fault.
    unsafe { guarded(fault, work) }
}

/// Frees a text that coaming_calculate(), coaming_review(), coaming_order_sheet(), coaming_reviewer_review(),
/// coaming_reviewer_order_sheet(), coaming_panel(), coaming_schema() or coaming_solution_text() gave; NULL is fine.
///
/// # Safety
/// NULL, or a text of this library that was not freed yet.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn coaming_text_free(text: *mut c_char) {
    if !text.is_null() {
        // SAFETY: by contract it came from `CString::into_raw` and is freed once.
        drop(unsafe { CString::from_raw(text) });
    }
}

/// What the caveat of a bit says, in one sentence. The text is constant and never NULL.
#[unsafe(no_mangle)]
pub extern "C" fn coaming_caveat_text(bit: u32) -> *const c_char {
    words::caveat_text(bit).unwrap_or(c"No caveat of this version has this bit.").as_ptr()
}

/// What would cure the caveat of a bit, in one sentence. The text is constant and never NULL.
#[unsafe(no_mangle)]
pub extern "C" fn coaming_caveat_cure(bit: u32) -> *const c_char {
    words::caveat_cure(bit).unwrap_or(c"No caveat of this version has this bit.").as_ptr()
}

/// What the error of a code says, in one sentence. The text is constant and never NULL.
#[unsafe(no_mangle)]
pub extern "C" fn coaming_error_text(code: u32) -> *const c_char {
    match code {
        super::COAMING_OK => c"No error.",
        super::COAMING_ERROR_DEFECT => c"A defect of the library itself.",
        _ => words::error_text(code).unwrap_or(c"No error of this version has this code."),
    }
    .as_ptr()
}

/// What would cure the error of a code, in one sentence. The text is constant and never NULL.
#[unsafe(no_mangle)]
pub extern "C" fn coaming_error_cure(code: u32) -> *const c_char {
    match code {
        super::COAMING_OK => c"Nothing to do.",
        super::COAMING_ERROR_DEFECT => c"Report it, with the input.",
        _ => words::error_cure(code).unwrap_or(c"No error of this version has this code."),
    }
    .as_ptr()
}

/// The version of the library, such as "0.1.0". The text is constant.
#[unsafe(no_mangle)]
pub extern "C" fn coaming_version() -> *const c_char {
    words::VERSION.as_ptr()
}

/// The ABI of the library: equal to COAMING_ABI where header and library go together; see coaming_abi_matches().
#[unsafe(no_mangle)]
pub extern "C" fn coaming_abi() -> u32 {
    words::COAMING_ABI
}

/// A text that C gave.
///
/// # Errors
/// [`Error::WrongType`] for NULL, [`Error::Unreadable`] for what is not UTF-8.
///
/// # Safety
/// NULL, or text that ends with a zero and outlives what is made of it.
pub unsafe fn text<'a>(pointer: *const c_char, argument: &str) -> Result<&'a str, Error> {
    refuse_null(pointer, argument)?;
    // SAFETY: not NULL, and by contract text that ends with a zero.
    let text = unsafe { CStr::from_ptr(pointer) };
    text.to_str().map_err(|error| Error::Unreadable { reason: format!("{argument}: not UTF-8: {error}") })
}
