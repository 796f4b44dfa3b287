use crate::prelude::*;

/// Shear stress at the ends of a bonded single lap under load, by differential strain.
///
/// # Formula
/// ```text
/// ω² = (G/η) (1/(E1 t1) + 1/(E2 t2)),  x = ω L/2,  ψ = E1 t1 / (E2 t2)
/// τm = P / (b L)                                                  mean
/// τ  = τm x [coth x + |ψ − 1|/(ψ + 1) tanh x]                     at the end of the more stretched adherend
/// ```
/// For two like adherends τ/τm = x coth x.
///
/// # Validity
/// Elastic; the adherends stretch and the bond line only shears. The eccentric load of a single lap bends it
/// and adds peel, which is not in this model: support the lap or treat the result as the lower bound. Not for
/// bonds that yield before the ends share.
///
/// # Source
/// O. Volkersen, Luftfahrtforschung 15 (1938) 41-47.
///
/// # Example
/// 5 kN on 25 × 25 mm, 2 mm adherends of 70 GPa, 0.25 mm of 700 MPa: 20.27 MPa, 2.534 times the mean (finite
/// differences give the same).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::LapShear;
///
/// let (outcome, _) = LapShear {
///     load: kilonewton(5.0),
///     width: mm(25.0),
///     overlap: mm(25.0),
///     first_thickness: mm(2.0),
///     first_youngs_modulus: gigapascal(70.0),
///     second_thickness: mm(2.0),
///     second_youngs_modulus: gigapascal(70.0),
///     bond_thickness: mm(0.25),
///     bond_shear_modulus: megapascal(700.0),
/// }
/// .calculate()?;
/// assert!((outcome.stress_ratio - 2.534).abs() < 0.0026);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LapShear {
    /// Load on the lap, P.
    #[possible(0.0..)]
    pub load: Force,
    /// Width of the lap, b.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Length of the overlap along the load, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub overlap: Length,
    /// Thickness of the first adherend, t1.
    #[possible(f64::MIN_POSITIVE..)]
    pub first_thickness: Length,
    /// Young's modulus of the first adherend, E1.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub first_youngs_modulus: Pressure,
    /// Thickness of the second adherend, t2.
    #[possible(f64::MIN_POSITIVE..)]
    pub second_thickness: Length,
    /// Young's modulus of the second adherend, E2.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub second_youngs_modulus: Pressure,
    /// Thickness of the bond line, η.
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_thickness: Length,
    /// Shear modulus of the bond line, G.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_shear_modulus: Pressure,
}

/// Shear in the lap.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LapShearOutcome {
    /// Shear-lag parameter, ω.
    pub shear_lag: Curvature,
    /// Mean shear stress, τm.
    #[shown_in("MPa")]
    pub mean_shear_stress: Pressure,
    /// Largest shear stress, τ.
    #[shown_in("MPa")]
    pub largest_shear_stress: Pressure,
    /// Largest over mean.
    pub stress_ratio: f64,
}

impl Calculation for LapShear {
    const NAME: &'static str = "lap_shear";
    const SOURCE: &'static [Source] = &[Source {
        title: "Volkersen, Luftfahrtforschung 15",
        edition: "1938",
        locator: "pp. 41-47, differential-strain model",
        standing: Standing::Computed,
    }];
    type Outcome = LapShearOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let first = self.first_youngs_modulus.value * self.first_thickness.value;
        let second = self.second_youngs_modulus.value * self.second_thickness.value;
        let stiffness = self.bond_shear_modulus.value / self.bond_thickness.value;
        let omega = (stiffness * (1.0 / first + 1.0 / second)).sqrt();
        let x = 0.5 * omega * self.overlap.value;
        let tanh = math::tanh(x);
        let psi = first / second;
        let ratio = x / tanh + x * tanh * (psi - 1.0).abs() / (psi + 1.0);
        let mean = self.load.value / (self.width.value * self.overlap.value);
        Ok(LapShearOutcome {
            shear_lag: si(omega),
            mean_shear_stress: si(mean),
            largest_shear_stress: si(mean * ratio),
            stress_ratio: ratio,
        })
    }
}
