use crate::prelude::*;

/// Temperature of a face that is touched against the burn threshold for longer contact.
///
/// # Formula
/// ```text
/// margin = burn threshold − face temperature
/// ```
/// | contact | metal | glass, stone, ceramic | plastic, wood |
/// |---|---|---|---|
/// | 1 min | 51 °C | 56 °C | 60 °C |
/// | 10 min | 48 °C | 48 °C | 48 °C |
/// | 8 h and more | 43 °C | 43 °C | 43 °C |
///
/// # Validity
/// Healthy skin of adults; small areas, not the face. For contact shorter than 1 min the standard gives
/// curves that are not held here: a short touch stands more, and such a check needs the standard itself.
/// Thresholds of pain lie lower.
///
/// # Source
/// ISO 13732-1:2006, burn thresholds for contact of 1 min and longer; from memory, unverified: a caveat says
/// so.
///
/// # Example
/// A sheet at 66 °C is 15 K over the threshold of metal for 1 min.
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::{ContactTime, TouchMaterial, TouchTemperature};
///
/// let (outcome, caveats) = TouchTemperature {
///     face_temperature: celsius(66.0),
///     face_material: TouchMaterial::Metal,
///     contact_time: ContactTime::OneMinute,
/// }
/// .calculate()?;
/// assert!((outcome.margin.value + 15.0).abs() < 1e-9);
/// assert!(caveats.has(Caveat::UnverifiedThreshold));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct TouchTemperature {
    /// Temperature of the face.
    #[possible(0.0..)]
    pub face_temperature: Temperature,
    /// What the face is made of; a painted sheet counts as metal here.
    pub face_material: TouchMaterial,
    /// How long it is touched.
    pub contact_time: ContactTime,
}

/// What a touched face is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum TouchMaterial {
    /// Metal, bare or thinly coated.
    Metal,
    /// Glass, stone or ceramic.
    Glass,
    /// Plastic or wood.
    Plastic,
}

/// How long a face is touched.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum ContactTime {
    /// One minute.
    OneMinute,
    /// Ten minutes.
    TenMinutes,
    /// Eight hours or longer.
    EightHours,
}

/// Burn threshold and margin.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct TouchTemperatureOutcome {
    /// Burn threshold.
    pub threshold: Temperature,
    /// Threshold less face temperature; below zero it burns.
    pub margin: TemperatureDifference,
}

impl Calculation for TouchTemperature {
    const NAME: &'static str = "touch_temperature";
    const SOURCE: &'static [Source] = &[Source {
        title: "ISO 13732-1",
        edition: "2006",
        locator: "burn thresholds for contact of 1 min and longer",
        standing: Standing::Memory,
    }];
    type Outcome = TouchTemperatureOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        caveats.add(Caveat::UnverifiedThreshold);
        let threshold = celsius(match (self.contact_time, self.face_material) {
            (ContactTime::OneMinute, TouchMaterial::Metal) => 51.0,
            (ContactTime::OneMinute, TouchMaterial::Glass) => 56.0,
            (ContactTime::OneMinute, TouchMaterial::Plastic) => 60.0,
            (ContactTime::TenMinutes, _) => 48.0,
            (ContactTime::EightHours, _) => 43.0,
        });
        Ok(TouchTemperatureOutcome { threshold, margin: si(threshold.value - self.face_temperature.value) })
    }
}
