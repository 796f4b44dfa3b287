use crate::prelude::*;

/// Growth of one layer from its own temperature and moisture.
///
/// # Formula
/// ```text
/// ΔT  = T − T0
/// εT  = α ΔT
/// εm  = m − m0
/// ε   = εT + εm
/// ΔL  = ε L
/// ```
/// Strains are counted from the state at assembly; growth is positive. Each layer has its own temperature:
/// the outer sheet in the sun and the pane behind it do not share one.
///
/// # Validity
/// A mean coefficient of expansion between the two temperatures (tested from −60 °C to 150 °C) and strains
/// small against 1. The layer is free: no screw, bond or frame holds it. Moisture strain is that of the
/// soaked-through state; thick plastic takes weeks to months to reach it. Fibre-filled plastics and laminates
/// grow differently on each axis: calculate each axis by itself.
///
/// # Source
/// Definition of the coefficient of linear expansion (ISO 11359-2:2021, mean coefficient); the moisture
/// strain adds to it in the same way.
///
/// # Example
/// A polycarbonate sheet of 1 m, warmed by 80 K, grows by 5.2 mm (sheet maker's worked example).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::LayerGrowth;
///
/// let (growth, _) = LayerGrowth {
///     length: m(1.0),
///     expansion: per_kelvin(65e-6),
///     assembly_temperature: celsius(-40.0),
///     service_temperature: celsius(40.0),
///     assembly_moisture_strain: 0.0,
///     service_moisture_strain: 0.0,
/// }
/// .calculate()?;
/// assert!((growth.length_change.value - 5.2e-3).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LayerGrowth {
    /// Length that grows, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Mean coefficient of linear expansion, α.
    #[possible(-1e-3..=1e-3)]
    #[tested(-1e-5..=3e-4)]
    pub expansion: Expansion,
    /// Temperature of the layer when it was assembled, T0.
    #[possible(0.0..)]
    #[tested(213.15..=423.15)]
    pub assembly_temperature: Temperature,
    /// Temperature of the layer in service, T.
    #[possible(0.0..)]
    #[tested(213.15..=423.15)]
    pub service_temperature: Temperature,
    /// Moisture strain of the layer when it was assembled, m0; 0 if dry.
    #[possible(-0.5..=0.5)]
    #[tested(0.0..=0.03)]
    pub assembly_moisture_strain: f64,
    /// Moisture strain of the layer in service, m; 0 for a material that takes up no water.
    #[possible(-0.5..=0.5)]
    #[tested(0.0..=0.03)]
    pub service_moisture_strain: f64,
}

/// What a layer grows.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LayerGrowthOutcome {
    /// Temperature rise since assembly, ΔT.
    pub temperature_rise: TemperatureDifference,
    /// Strain by temperature, εT.
    pub thermal_strain: f64,
    /// Strain by moisture, εm.
    pub moisture_strain: f64,
    /// Growth strain, ε: both together.
    pub growth_strain: f64,
    /// Change of length, ΔL; positive is growth.
    pub length_change: Length,
}

impl Calculation for LayerGrowth {
    const NAME: &'static str = "layer_growth";
    const SOURCE: &'static [Source] = &[Source {
        title: "ISO 11359-2",
        edition: "2021",
        locator: "mean coefficient of linear thermal expansion",
        standing: Standing::Memory,
    }];
    type Outcome = LayerGrowthOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let rise = self.service_temperature.value - self.assembly_temperature.value;
        let thermal = self.expansion.value * rise;
        let moisture = self.service_moisture_strain - self.assembly_moisture_strain;
        let growth = thermal + moisture;
        Ok(LayerGrowthOutcome {
            temperature_rise: si(rise),
            thermal_strain: thermal,
            moisture_strain: moisture,
            growth_strain: growth,
            length_change: si(growth * self.length.value),
        })
    }
}
