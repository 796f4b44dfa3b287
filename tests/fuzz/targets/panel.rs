#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| coaming_tests::fuzzing::panel(bytes));
