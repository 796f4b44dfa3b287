use crate::prelude::*;

/// Moisture strain of a material at one relative humidity, read between measured points.
///
/// # Formula
/// Straight line between the two points around the humidity φ:
/// ```text
/// m = m1 + (m2 − m1) (φ − φ1) / (φ2 − φ1)
/// ```
/// A point from a water uptake w (mass fraction) and a swelling s (linear strain for each unit of uptake) is
/// m = s w.
///
/// # Validity
/// Between the first and the last point only; beyond them there is no measurement, and the calculation
/// refuses. The state is soaked through at that humidity. Two to a hundred points or more, humidity rising
/// from point to point; the strain may not fall.
///
/// # Source
/// Straight-line interpolation of measured points; equilibrium water uptake as in ISO 62:2008.
///
/// # Example
/// Unfilled nylon 6: 3.5 % uptake at 60 % humidity and 8.3 % at 95 % (data sheets), swelling 0.25 for each
/// unit of uptake (unverified): half way between them, at 77.5 %, the strain is 0.25 · 5.9 % = 1.475 %.
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::{MoisturePoint, MoistureStrain};
///
/// let point = |relative_humidity, moisture_strain| MoisturePoint { relative_humidity, moisture_strain };
/// let (outcome, _) = MoistureStrain {
///     points: vec![point(0.0, 0.0), point(0.60, 0.25 * 0.035), point(0.95, 0.25 * 0.083)],
///     relative_humidity: 0.775,
/// }
/// .calculate()?;
/// assert!((outcome.moisture_strain - 0.01475).abs() < 1e-12);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MoistureStrain {
    /// Measured points, humidity rising.
    pub points: Vec<MoisturePoint>,
    /// Relative humidity, φ.
    #[possible(0.0..=1.0)]
    pub relative_humidity: f64,
}

/// One measured point of moisture strain.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MoisturePoint {
    /// Relative humidity.
    #[possible(0.0..=1.0)]
    pub relative_humidity: f64,
    /// Moisture strain at that humidity, counted from dry.
    #[possible(0.0..=0.5)]
    pub moisture_strain: f64,
}

/// The moisture strain read.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct MoistureStrainOutcome {
    /// Moisture strain, m, counted from dry.
    pub moisture_strain: f64,
}

impl Calculation for MoistureStrain {
    const NAME: &'static str = "moisture_strain";
    const SOURCE: &'static [Source] = &[Source {
        title: "ISO 62",
        edition: "2008",
        locator: "equilibrium water absorption; straight line between points",
        standing: Standing::Memory,
    }];
    type Outcome = MoistureStrainOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let humidity = self.relative_humidity;
        let mut found = None;
        for pair in self.points.windows(2) {
            let [low, high] = pair else { continue };
            if high.relative_humidity <= low.relative_humidity {
                return Err(Error::inconsistent("points", "humidity must rise from point to point"));
            }
            if high.moisture_strain < low.moisture_strain {
                return Err(Error::inconsistent(
                    "points",
                    "moisture strain must not fall from point to point",
                ));
            }
            if found.is_none() && (low.relative_humidity..=high.relative_humidity).contains(&humidity) {
                let share =
                    (humidity - low.relative_humidity) / (high.relative_humidity - low.relative_humidity);
                found = Some(low.moisture_strain + (high.moisture_strain - low.moisture_strain) * share);
            }
        }
        if self.points.len() < 2 {
            return Err(Error::inconsistent("points", "two points or more are needed"));
        }
        match found {
            Some(moisture_strain) => Ok(MoistureStrainOutcome { moisture_strain }),
            None => {
                Err(self.impossible("relative_humidity", "between the first and the last measured point"))
            }
        }
    }
}
