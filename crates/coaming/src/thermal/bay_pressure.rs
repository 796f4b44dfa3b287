use super::vapour;
use crate::prelude::*;

/// Pressure rise of a closed bay from warming and wetting, and the lift on its lid.
///
/// # Formula
/// Closed at T1, humidity φ1, total pressure p0; then at T2, φ2, at constant volume:
/// ```text
/// dry gas   Δpd = (p0 − φ1 ew(T1)) (T2/T1 − 1)
/// vapour    Δpv = φ2 ew(T2) − φ1 ew(T1)
/// Δp = Δpd + Δpv
/// lift = Δp A,  on each of n latches lift/n
/// ```
/// ew by the Magnus formula (see `dew_point`). Positive pushes the lid off its seal: that is a negative
/// pressure in the sense of the cover.
///
/// # Validity
/// No vent, no leak, walls that do not give: an upper bound for a warming bay; a bay that cools draws the lid
/// on. φ2 = 1 with standing water inside. −45 °C to 60 °C. Released while hot, the lid is thrown with this
/// force: vent it first.
///
/// # Source
/// Ideal gas, Dalton's law; WMO-No. 8, annex 4.B for ew (second-hand).
///
/// # Example
/// Dry air from 25 to 55 °C: 101.325 · 30/298.15 = 10.20 kPa (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::BayPressure;
///
/// let (outcome, _) = BayPressure {
///     closing_temperature: celsius(25.0),
///     closing_humidity: 0.0,
///     closing_pressure: kilopascal(101.325),
///     service_temperature: celsius(55.0),
///     service_humidity: 0.0,
///     lid_area: square_mm(216_000.0),
///     latches: 6,
/// }
/// .calculate()?;
/// assert!((outcome.pressure_rise.value - 10_195.4).abs() < 0.1);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BayPressure {
    /// Temperature at which the bay was closed, T1.
    #[possible(173.15..=473.15)]
    #[tested(228.15..=333.15)]
    pub closing_temperature: Temperature,
    /// Relative humidity when it was closed, φ1.
    #[possible(0.0..=1.0)]
    pub closing_humidity: f64,
    /// Total pressure when it was closed, and outside since, p0.
    #[possible(f64::MIN_POSITIVE..)]
    #[tested(50e3..=110e3)]
    pub closing_pressure: Pressure,
    /// Temperature of the bay in service, T2.
    #[possible(173.15..=473.15)]
    #[tested(228.15..=333.15)]
    pub service_temperature: Temperature,
    /// Relative humidity in service, φ2; 1 with standing water.
    #[possible(0.0..=1.0)]
    pub service_humidity: f64,
    /// Area of the lid within its seal, A.
    #[possible(f64::MIN_POSITIVE..)]
    pub lid_area: Area,
    /// Number of latches, n.
    #[possible(1.0..=10_000.0)]
    pub latches: u32,
}

/// Pressure rise and lift.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct BayPressureOutcome {
    /// Rise by the dry gas, Δpd.
    pub dry_gas_rise: Pressure,
    /// Rise by the vapour, Δpv.
    pub vapour_rise: Pressure,
    /// Pressure rise over the outside, Δp.
    pub pressure_rise: Pressure,
    /// Lift on the lid; positive pushes it off its seal.
    pub lift: Force,
    /// Lift on each latch, equally shared.
    pub latch_lift: Force,
}

impl Calculation for BayPressure {
    const NAME: &'static str = "bay_pressure";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "ideal gas and Dalton's law",
            edition: "",
            locator: "constant volume, dry gas and vapour apart",
            standing: Standing::Computed,
        },
        vapour::MAGNUS,
    ];
    type Outcome = BayPressureOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (t1, t2) = (self.closing_temperature.value, self.service_temperature.value);
        let vapour_before = self.closing_humidity * vapour::saturation_pressure(t1);
        let vapour_after = self.service_humidity * vapour::saturation_pressure(t2);
        let dry = self.closing_pressure.value - vapour_before;
        if dry < 0.0 {
            return Err(Error::inconsistent(
                "closing_pressure, closing_humidity, closing_temperature",
                "the total pressure must be at least that of the vapour",
            ));
        }
        let dry_rise = dry * (t2 - t1) / t1;
        let vapour_rise = vapour_after - vapour_before;
        let rise = dry_rise + vapour_rise;
        let lift = rise * self.lid_area.value;
        Ok(BayPressureOutcome {
            dry_gas_rise: si(dry_rise),
            vapour_rise: si(vapour_rise),
            pressure_rise: si(rise),
            lift: si(lift),
            latch_lift: si(lift / f64::from(self.latches)),
        })
    }
}
