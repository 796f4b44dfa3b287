//! Saturation pressure of water vapour over water, by the Magnus formula.
//!
//! WMO-No. 8, Guide to Instruments and Methods of Observation, annex 4.B: ew = 6.112 hPa · exp(17.62 t /
//! (243.12 + t)) for −45 °C to 60 °C over water (after D. Sonntag, Z. Meteorol. 70 (1990) 340-344); pure
//! vapour, without the enhancement by air.

use crate::math;
use crate::prelude::{Source, Standing};

/// Where the formula is from.
pub(crate) const MAGNUS: Source = Source {
    title: "WMO-No. 8, Guide to Instruments and Methods of Observation",
    edition: "2018",
    locator: "annex 4.B, Magnus formula over water",
    standing: Standing::SecondHand,
};

const AT_ZERO: f64 = 611.2;
const A: f64 = 17.62;
const B: f64 = 243.12;
const ZERO_CELSIUS: f64 = 273.15;

/// Saturation pressure in pascal at a temperature in kelvin, which must lie above 30.03 K, where the formula
/// ends.
pub(crate) fn saturation_pressure(temperature: f64) -> f64 {
    let t = temperature - ZERO_CELSIUS;
    AT_ZERO * math::exp(A * t / (B + t))
}

/// Temperature in kelvin at which a vapour pressure in pascal, greater than zero, saturates.
pub(crate) fn dew_point(pressure: f64) -> f64 {
    let y = math::ln(pressure / AT_ZERO);
    B * y / (A - y) + ZERO_CELSIUS
}
