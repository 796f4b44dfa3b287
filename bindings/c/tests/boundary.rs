//! The boundary's own promises: a panic becomes a status, texts are cut between characters.
#![allow(unsafe_code)]

// A library for C cannot be linked into a Rust test: its sources are taken in, for one crate that uses few of them.
#[allow(unreachable_pub, dead_code, unused_imports)]
#[path = "../src/boundary/mod.rs"]
mod boundary;
#[allow(unreachable_pub, dead_code)]
#[path = "../src/generated/mod.rs"]
mod generated;

use std::ffi::CStr;
use std::mem::MaybeUninit;

use boundary::{COAMING_ERROR_DEFECT, COAMING_OK, CoamingFault, guarded};
use calculations::Error;

/// The status and the fault of a piece of work.
fn fault_of(work: impl FnOnce() -> Result<(), Error>) -> (u32, CoamingFault) {
    let mut fault = MaybeUninit::<CoamingFault>::zeroed();
    // SAFETY: room for a fault; all zeros are one.
    unsafe { (guarded(fault.as_mut_ptr(), work), fault.assume_init()) }
}

fn text(array: &[std::ffi::c_char]) -> String {
    let bytes: Vec<u8> = array.iter().map(|letter| *letter as u8).collect();
    CStr::from_bytes_until_nul(&bytes).unwrap().to_str().unwrap().to_owned()
}

#[test]
fn a_panic_becomes_a_status() {
    let (status, fault) = fault_of(|| panic!("row {} of {}", 3, 4));
    assert_eq!((status, fault.code, fault.index), (COAMING_ERROR_DEFECT, COAMING_ERROR_DEFECT, -1));
    assert_eq!(text(&fault.message), "a defect of the library: row 3 of 4");
    // SAFETY: NULL is allowed.
    let status = unsafe { guarded(std::ptr::null_mut(), || std::panic::panic_any(7_u8)) };
    assert_eq!(status, COAMING_ERROR_DEFECT);
}

#[test]
fn success_leaves_the_fault_untouched() {
    let (status, fault) = fault_of(|| Ok(()));
    assert_eq!((status, fault.code, fault.value.to_bits()), (COAMING_OK, 0, 0));
}

#[test]
fn texts_are_cut_between_characters() {
    // 62 letters and a degree sign of two bytes: 64 bytes with no room for the closing zero.
    let field = format!("{}°", "x".repeat(62));
    let (_, fault) = fault_of(|| Err(Error::inconsistent(field.clone(), "°".repeat(300))));
    assert_eq!(text(&fault.field), "x".repeat(62));
    let message = text(&fault.message);
    assert!(message.len() == 254 || message.len() == 255, "{}", message.len());
    assert!(message.ends_with('°'));
}

#[test]
fn a_fault_says_what_the_error_says() {
    let cause = Error::Impossible {
        field: "thickness".into(),
        value: -0.001,
        shown: "-1 mm".into(),
        accepted: "greater than 0 mm".into(),
    };
    let (status, fault) = fault_of(|| Err(Error::AtRow { row: 7, cause: Box::new(cause) }));
    assert_eq!((status, fault.code, fault.value, fault.index), (1, 1, -0.001, 7));
    assert_eq!(text(&fault.field), "thickness");
    assert_eq!(text(&fault.message), "row 7: thickness: -1 mm is not possible; accepted: greater than 0 mm");
}
