//! What a calculation, and a caller of one, needs at hand.

pub use core::f64::consts::{FRAC_PI_2, PI};

pub use crate::calculation::Calculation;
pub use crate::caveat::{Caveat, Caveats};
pub use crate::declaration::{Choice, Fields, OneOf, Value};
pub use crate::error::Error;
pub use crate::math;
pub use crate::quantity::*;
pub use crate::source::{Source, Standing};
pub use coaming_derive::{Choice, Fields, OneOf};
