//! The transcendental functions, from one portable library, so that a result has the same bits on every platform.
//!
//! `f64`'s own functions call the platform's mathematics library, whose last digit differs from system to system;
//! `clippy.toml` forbids them in this workspace. Square root, rounding and the four operations are exact by IEEE 754
//! and need no stand-in. Integer powers are written as products.

pub use libm::{
    acos, asin, atan, atan2, cbrt, cos, cosh, exp, expm1, hypot, log as ln, log1p as ln_1p, log10, pow, sin,
    sinh, tan, tanh,
};

/// π, as the nearest `f64`.
pub const PI: f64 = core::f64::consts::PI;

/// x², written once so that a long expression stays readable.
#[inline]
pub fn square(x: f64) -> f64 {
    x * x
}

/// x³.
#[inline]
pub fn cube(x: f64) -> f64 {
    x * x * x
}
