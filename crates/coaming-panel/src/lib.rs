//! The room of the panel solver: one flat, layered, stiffened panel of any outline, on a gasket, held by screws, stops
//! and latches, in plain SI `f64`; it holds no calculation yet.
#![forbid(unsafe_code)]
