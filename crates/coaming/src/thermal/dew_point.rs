use super::vapour;
use crate::prelude::*;

/// Dew point of the air in a bay, and how far a face stays above it.
///
/// # Formula
/// ```text
/// ew(t) = 611.2 Pa exp(17.62 t / (243.12 + t)),  t in °C
/// e     = φ ew(t)
/// td    = 243.12 y / (17.62 − y),  y = ln(e / 611.2 Pa)
/// margin = face temperature − td
/// ```
///
/// # Validity
/// Over water, −45 °C to 60 °C (below 0 °C the dew point over supercooled water: frost forms a little
/// sooner). Air pressure adds less than half a percent to the vapour pressure. A face below the dew point
/// gets wet; within about 2 K of it, it may.
///
/// # Source
/// WMO-No. 8, Guide to Instruments and Methods of Observation, annex 4.B (Magnus formula, second-hand), after
/// D. Sonntag, Z. Meteorol. 70 (1990) 340-344.
///
/// # Example
/// A bay at 40 °C and 90 %: dew point 38.04 °C by the saturation pressure of W. Wagner and A. Pruss, J. Phys.
/// Chem. Ref. Data 22 (1993) 783-787. A pane at 17 °C is 21 K below it.
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::DewPoint;
///
/// let (outcome, _) = DewPoint {
///     air_temperature: celsius(40.0),
///     relative_humidity: 0.90,
///     face_temperature: Some(celsius(17.0)),
/// }
/// .calculate()?;
/// assert!((outcome.dew_point.value - 273.15 - 38.038).abs() < 0.1);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct DewPoint {
    /// Temperature of the air.
    #[possible(173.15..=473.15)]
    #[tested(228.15..=333.15)]
    pub air_temperature: Temperature,
    /// Relative humidity over water, φ.
    #[possible(f64::MIN_POSITIVE..=1.0)]
    pub relative_humidity: f64,
    /// Temperature of the face to be judged.
    #[possible(0.0..)]
    pub face_temperature: Option<Temperature>,
}

/// Vapour pressure and dew point.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct DewPointOutcome {
    /// Saturation pressure at the air's temperature, ew.
    pub saturation_pressure: Pressure,
    /// Vapour pressure, e.
    pub vapour_pressure: Pressure,
    /// Dew point, td.
    pub dew_point: Temperature,
    /// Face temperature less dew point; below zero the face gets wet.
    pub face_margin: Option<TemperatureDifference>,
}

impl Calculation for DewPoint {
    const NAME: &'static str = "dew_point";
    const SOURCE: &'static [Source] = &[vapour::MAGNUS];
    type Outcome = DewPointOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let saturation = vapour::saturation_pressure(self.air_temperature.value);
        let pressure = self.relative_humidity * saturation;
        let dew = vapour::dew_point(pressure);
        if dew <= 0.0 {
            return Err(
                self.impossible("relative_humidity", "so much that the dew point stays above absolute zero")
            );
        }
        Ok(DewPointOutcome {
            saturation_pressure: si(saturation),
            vapour_pressure: si(pressure),
            dew_point: si(dew),
            face_margin: self.face_temperature.map(|face| si(face.value - dew)),
        })
    }
}
