//! Transcendental functions, all from one portable library, so that every machine gives the same bits.

/// Sine of an angle in radians.
pub(crate) fn sin(angle: f64) -> f64 {
    libm::sin(angle)
}

/// Cosine of an angle in radians.
pub(crate) fn cos(angle: f64) -> f64 {
    libm::cos(angle)
}

/// Angle of the vector (x, y) in radians, in -pi..=pi.
pub(crate) fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// Natural logarithm.
pub(crate) fn ln(value: f64) -> f64 {
    libm::log(value)
}

/// Exponential function.
pub(crate) fn exp(value: f64) -> f64 {
    libm::exp(value)
}
