use crate::prelude::*;

/// Play of a layer under its shoulder bushes, at the extremes of tolerance, temperature and moisture.
///
/// # Formula
/// ```text
/// g    = B (1 + εB) − t (1 + ε)
/// gmin = least over hot and cold of (B − tB)(1 + εB) − (t + tt)(1 + ε)
/// gmax = greatest over hot and cold of (B + tB)(1 + εB) − (t − tt)(1 + ε)
/// ```
/// B bush length, t layer thickness, tB and tt their tolerances, ε growth strains through the thickness in
/// the two states.
///
/// # Validity
/// The screw clamps the bush, not the layer: the layer floats while g > 0. A seal or soft washer between
/// layer and sheet adds its own thickness. "Hot" is the state in which the layer is thickest: warm, and
/// soaked if it takes up water; "cold" the other one.
///
/// # Source
/// Geometry; shoulder bushes (compression limiters) longer than the layer they pass are common practice.
///
/// # Example
/// A bush of 5.2 ± 0.05 over a pane of 5.0 ± 0.1 mm: 0.05 to 0.35 mm at room temperature (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::ShoulderBush;
///
/// let (outcome, _) = ShoulderBush {
///     bush_length: mm(5.2),
///     bush_tolerance: mm(0.05),
///     layer_thickness: mm(5.0),
///     thickness_tolerance: mm(0.1),
///     hot_bush_strain: 0.0,
///     hot_layer_strain: 0.0,
///     cold_bush_strain: 0.0,
///     cold_layer_strain: 0.0,
/// }
/// .calculate()?;
/// assert!((outcome.play_min.value - 0.05e-3).abs() < 1e-9);
/// assert!((outcome.play_max.value - 0.35e-3).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ShoulderBush {
    /// Length of the bush under the head or washer, B.
    #[possible(f64::MIN_POSITIVE..)]
    pub bush_length: Length,
    /// Tolerance of the bush length, tB: half of its band.
    #[possible(0.0..)]
    pub bush_tolerance: Length,
    /// Thickness of the layer, or of all layers, that the bush passes, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub layer_thickness: Length,
    /// Tolerance of the thickness, tt: half of its band.
    #[possible(0.0..)]
    pub thickness_tolerance: Length,
    /// Growth strain of the bush when hot.
    #[possible(-0.5..=0.5)]
    pub hot_bush_strain: f64,
    /// Growth strain of the layer through its thickness when hot, and soaked.
    #[possible(-0.5..=0.5)]
    pub hot_layer_strain: f64,
    /// Growth strain of the bush when cold.
    #[possible(-0.5..=0.5)]
    pub cold_bush_strain: f64,
    /// Growth strain of the layer through its thickness when cold, and dry.
    #[possible(-0.5..=0.5)]
    pub cold_layer_strain: f64,
}

/// Play of the layer.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ShoulderBushOutcome {
    /// Play at the middle of all tolerances, before any growth.
    pub play: Length,
    /// Least play, gmin; zero or below: the layer is clamped.
    pub play_min: Length,
    /// Greatest play, gmax: what may rattle.
    pub play_max: Length,
    /// True if the layer floats at every extreme.
    pub floats: bool,
}

impl Calculation for ShoulderBush {
    const NAME: &'static str = "shoulder_bush";
    const SOURCE: &'static [Source] =
        &[Source::common_practice("bush length less layer thickness at both extremes")];
    type Outcome = ShoulderBushOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (b, tb) = (self.bush_length.value, self.bush_tolerance.value);
        let (t, tt) = (self.layer_thickness.value, self.thickness_tolerance.value);
        if tb >= b {
            return Err(self.impossible("bush_tolerance", "less than the bush length"));
        }
        if tt >= t {
            return Err(self.impossible("thickness_tolerance", "less than the layer thickness"));
        }
        let least = |bush: f64, layer: f64| (b - tb) * (1.0 + bush) - (t + tt) * (1.0 + layer);
        let greatest = |bush: f64, layer: f64| (b + tb) * (1.0 + bush) - (t - tt) * (1.0 + layer);
        let (hot_bush, hot_layer) = (self.hot_bush_strain, self.hot_layer_strain);
        let (cold_bush, cold_layer) = (self.cold_bush_strain, self.cold_layer_strain);
        let min = least(hot_bush, hot_layer).min(least(cold_bush, cold_layer));
        let max = greatest(hot_bush, hot_layer).max(greatest(cold_bush, cold_layer));
        Ok(ShoulderBushOutcome { play: si(b - t), play_min: si(min), play_max: si(max), floats: min > 0.0 })
    }
}
