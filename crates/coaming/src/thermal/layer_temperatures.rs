use crate::prelude::*;

/// Steady temperatures through a stack of layers between the air on both sides, with sun outside and radiant
/// heat inside.
///
/// # Formula
/// ```text
/// R  = Σ t/k                                           resistance of the layers
/// Ti, To faces:
///   hi (Tai − Ti) + qi = (Ti − To)/R                   inner face
///   (Ti − To)/R + a S = ho (To − Tao)                  outer face
/// q  = (Ti − To)/R                                     heat flux outward
/// ```
/// hi, ho film coefficients (convection and long-wave radiation together), Tai, Tao air temperatures, S
/// irradiance on the outer face, a its solar absorptance, qi radiant heat taken up by the inner face. Inside,
/// temperature falls by q t/k in each layer.
///
/// # Validity
/// Steady and even over the area: no edges, frames or screws. The sun stops at the outer face; a clear window
/// lets most of it through (give it the absorptance of the pane and the rest to what lies behind). A
/// cloudless sky at night draws a face some kelvin below the air, which is not in here. Film coefficients: CP
/// 15 W/(m² K) outside in light wind, 6 inside, each ± a third.
///
/// # Source
/// Steady one-dimensional conduction with surface resistances, as in ISO 6946:2017 and VDI Heat Atlas.
///
/// # Example
/// Thin dark sheet, absorptance 0.9, 900 W/m², 40 °C out and 55 °C in: (15·40 + 6·55 + 810)/21 = 82.86 °C (by
/// hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::{LayerTemperatures, ThermalLayer};
///
/// let (outcome, _) = LayerTemperatures {
///     inner_air_temperature: celsius(55.0),
///     outer_air_temperature: celsius(40.0),
///     inner_film: watt_per_square_meter_kelvin(6.0),
///     outer_film: watt_per_square_meter_kelvin(15.0),
///     irradiance: watt_per_square_meter(900.0),
///     solar_absorptance: 0.9,
///     inner_radiant_flux: watt_per_square_meter(0.0),
///     layers: vec![ThermalLayer {
///         name: "sheet".to_string(),
///         thickness: mm(1.6),
///         conductivity: watt_per_meter_kelvin(138.0),
///     }],
/// }
/// .calculate()?;
/// assert!((outcome.outer_face_temperature.value - 273.15 - 82.857).abs() < 0.01);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LayerTemperatures {
    /// Temperature of the air inside, Tai.
    #[possible(0.0..)]
    #[tested(213.15..=423.15)]
    pub inner_air_temperature: Temperature,
    /// Temperature of the air outside, Tao.
    #[possible(0.0..)]
    #[tested(213.15..=423.15)]
    pub outer_air_temperature: Temperature,
    /// Film coefficient of the inner face, hi.
    #[possible(f64::MIN_POSITIVE..)]
    #[tested(1.0..=100.0)]
    pub inner_film: HeatTransferCoefficient,
    /// Film coefficient of the outer face, ho.
    #[possible(f64::MIN_POSITIVE..)]
    #[tested(1.0..=100.0)]
    pub outer_film: HeatTransferCoefficient,
    /// Irradiance of the sun on the outer face, S.
    #[possible(0.0..=2000.0)]
    pub irradiance: HeatFlux,
    /// Solar absorptance of the outer face, a.
    #[possible(0.0..=1.0)]
    pub solar_absorptance: f64,
    /// Radiant heat taken up by the inner face, qi.
    #[possible(0.0..)]
    pub inner_radiant_flux: HeatFlux,
    /// The layers, from the inner face outward.
    pub layers: Vec<ThermalLayer>,
}

/// One layer of the stack.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ThermalLayer {
    /// What it is.
    pub name: String,
    /// Thickness, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Thermal conductivity, k.
    #[possible(f64::MIN_POSITIVE..)]
    pub conductivity: ThermalConductivity,
}

/// Temperatures of faces and layers.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LayerTemperaturesOutcome {
    /// Temperature of the inner face, Ti.
    pub inner_face_temperature: Temperature,
    /// Temperature of the outer face, To.
    pub outer_face_temperature: Temperature,
    /// Heat flux through the stack, q; positive outward.
    pub heat_flux: HeatFlux,
    /// Resistance of the layers without films, R, as its inverse: the conductance.
    pub conductance: HeatTransferCoefficient,
    /// Temperatures of each layer, from the inner face outward.
    pub layers: Vec<LayerTemperature>,
}

/// Temperatures of one layer.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LayerTemperature {
    /// Temperature of its inner face.
    pub inner_temperature: Temperature,
    /// Temperature of its outer face.
    pub outer_temperature: Temperature,
    /// Mean temperature: the one it grows by.
    pub mean_temperature: Temperature,
}

impl Calculation for LayerTemperatures {
    const NAME: &'static str = "layer_temperatures";
    const SOURCE: &'static [Source] = &[Source {
        title: "ISO 6946",
        edition: "2017",
        locator: "steady conduction with surface resistances; absorbed sun added at the outer face",
        standing: Standing::Memory,
    }];
    type Outcome = LayerTemperaturesOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.layers.is_empty() {
            return Err(Error::inconsistent("layers", "one layer or more is needed"));
        }
        let resistance: f64 = self.layers.iter().map(|l| l.thickness.value / l.conductivity.value).sum();
        let (hi, ho) = (self.inner_film.value, self.outer_film.value);
        // Temperatures counted from the outer air, in which the two balances are solved.
        let drive = self.inner_air_temperature.value - self.outer_air_temperature.value;
        let sun = self.solar_absorptance * self.irradiance.value;
        let inside = hi * drive + self.inner_radiant_flux.value;
        let outer = (inside + sun * (1.0 + hi * resistance)) / (hi + ho + hi * ho * resistance);
        let flux = ho * outer - sun;
        let outer_face = self.outer_air_temperature.value + outer;
        let inner_face = outer_face + flux * resistance;
        let mut temperature = inner_face;
        let mut layers = Vec::with_capacity(self.layers.len());
        for layer in &self.layers {
            let next = temperature - flux * layer.thickness.value / layer.conductivity.value;
            layers.push(LayerTemperature {
                inner_temperature: si(temperature),
                outer_temperature: si(next),
                mean_temperature: si(0.5 * (temperature + next)),
            });
            temperature = next;
        }
        Ok(LayerTemperaturesOutcome {
            inner_face_temperature: si(inner_face),
            outer_face_temperature: si(outer_face),
            heat_flux: si(flux),
            conductance: si(1.0 / resistance),
            layers,
        })
    }
}
