//! The printed units of the sources that have no constructor, so that a table shows its source's digits.

use crate::prelude::*;

/// Stress in thousands of pounds-force per square inch.
pub(super) fn ksi(value: f64) -> Pressure {
    psi(value * 1.0e3)
}

/// Modulus in millions of pounds-force per square inch.
pub(super) fn msi(value: f64) -> Pressure {
    psi(value * 1.0e6)
}

/// Density in pounds per cubic inch.
pub(super) fn pound_per_cubic_inch(value: f64) -> MassDensity {
    let edge = inch(1.0).value;
    si(pound(value).value / (edge * edge * edge))
}

/// Expansion in 1/°F.
pub(super) fn per_fahrenheit(value: f64) -> Expansion {
    per_kelvin(value * 1.8)
}

/// Expansion in millionths per kelvin.
pub(super) fn micro_per_kelvin(value: f64) -> Expansion {
    per_kelvin(value * 1.0e-6)
}

/// Conductivity in Btu/(h·ft·°F), International Table.
pub(super) fn btu_per_hour_foot_fahrenheit(value: f64) -> ThermalConductivity {
    // 1055.05585262 J over 3600 s, 0.3048 m and 5/9 K.
    si(value * 1055.05585262 / (3600.0 * 0.3048) * 1.8)
}
