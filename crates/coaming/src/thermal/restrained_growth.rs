use crate::prelude::*;

/// Stress and force in a layer whose growth is held beyond its clearance, and its bearing on the screws.
///
/// # Formula
/// With Δε the growth strain of the layer less that of what holds it, c the clearance over the held length L:
/// ```text
/// εh = max(|Δε| − c/L, 0)                      strain that is held
/// σ  = −E εh (sign of Δε)                      held along one direction
/// σ  = −E εh (sign of Δε) / (1 − ν)            held along both directions
/// F  = |σ| b t                                 force over the width b
/// p  = F / (n d t)                             bearing on n screws of diameter d
/// ```
/// A layer that wants to grow is pressed: its stress is negative.
///
/// # Validity
/// What holds the layer does not give: the stress is an upper bound. Elastic, short term; plastic creeps and
/// relieves itself over days. Pressed thin layers buckle first: see `critical_rise`. The screws at one end
/// share alike.
///
/// # Source
/// S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, art. 14 (both
/// directions); Roark's Formulas for Stress and Strain, 7th ed., ch. 16 (one direction, unverified).
///
/// # Example
/// Polycarbonate held all round and warmed by 30 K: 2400 MPa · 65e-6 · 30 / (1 − 0.37) = 7.429 MPa (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::{RestrainedGrowth, Restraint};
///
/// let (outcome, _) = RestrainedGrowth {
///     growth_difference: 65e-6 * 30.0,
///     held_length: mm(276.0),
///     clearance: mm(0.0),
///     restraint: Restraint::BothDirections,
///     youngs_modulus: megapascal(2400.0),
///     poissons_ratio: 0.37,
///     width: mm(196.0),
///     thickness: mm(3.0),
///     screws: 4,
///     screw_diameter: mm(4.0),
/// }
/// .calculate()?;
/// assert!((outcome.stress.value + 7.429e6).abs() < 4e3);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RestrainedGrowth {
    /// Growth strain of the layer less that of what holds it, Δε.
    #[possible(-0.5..=0.5)]
    #[tested(-0.03..=0.03)]
    pub growth_difference: f64,
    /// Length between the holds, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub held_length: Length,
    /// Clearance over that length before the layer meets its holds, c: both ends together.
    #[possible(0.0..)]
    pub clearance: Length,
    /// Directions in which it is held.
    pub restraint: Restraint,
    /// Young's modulus of the layer, E.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Poisson's ratio of the layer, ν.
    #[possible(0.0..=0.5)]
    pub poissons_ratio: f64,
    /// Width across the held direction, b.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Thickness of the layer, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Screws that hold one end, n.
    #[possible(1.0..=10_000.0)]
    pub screws: u32,
    /// Diameter of the screw in its hole, d.
    #[possible(f64::MIN_POSITIVE..)]
    pub screw_diameter: Length,
}

/// Directions in which a layer is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum Restraint {
    /// Along one direction; free across it.
    OneDirection,
    /// Along both directions of its plane.
    BothDirections,
}

/// Stress, force and bearing of a held layer.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RestrainedGrowthOutcome {
    /// Strain that is held, εh.
    pub held_strain: f64,
    /// Stress in the layer, σ; negative when it is pressed.
    #[shown_in("MPa")]
    pub stress: Pressure,
    /// Force at one end, F.
    pub force: Force,
    /// Force on each screw of one end.
    pub screw_force: Force,
    /// Bearing stress at each hole, p.
    #[shown_in("MPa")]
    pub bearing_stress: Pressure,
}

impl Calculation for RestrainedGrowth {
    const NAME: &'static str = "restrained_growth";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells",
            edition: "2nd ed. 1959",
            locator: "art. 14",
            standing: Standing::Computed,
        },
        Source {
            title: "Roark's Formulas for Stress and Strain",
            edition: "7th ed.",
            locator: "ch. 16, uniform temperature, ends held",
            standing: Standing::Memory,
        },
    ];
    type Outcome = RestrainedGrowthOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let difference = self.growth_difference;
        let held = (difference.abs() - self.clearance.value / self.held_length.value).max(0.0);
        let modulus = match self.restraint {
            Restraint::OneDirection => self.youngs_modulus.value,
            Restraint::BothDirections => self.youngs_modulus.value / (1.0 - self.poissons_ratio),
        };
        let size = modulus * held;
        let stress = if difference > 0.0 { 0.0 - size } else { size };
        let force = size * self.width.value * self.thickness.value;
        let each = force / f64::from(self.screws);
        Ok(RestrainedGrowthOutcome {
            held_strain: held,
            stress: si(stress),
            force: si(force),
            screw_force: si(each),
            bearing_stress: si(each / (self.screw_diameter.value * self.thickness.value)),
        })
    }
}
