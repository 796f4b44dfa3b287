use crate::prelude::*;

/// Thickness that a flexible bond line needs so that growth shears its end no more than allowed.
///
/// # Formula
/// The end shear strain of a bond of half length ℓ = L/2 falls as the bond line thickens:
/// ```text
/// γ(η) = |Δε| tanh(β ℓ) / (β η),  β² = (G/η) (1/(E1 t1) + 1/(E2 t2))
/// η    such that γ(η) = γ allowed
/// ηr   = |Δε| ℓ / γ allowed        bound: layers that do not give; η never exceeds it
/// ```
/// η is found by halving the interval from 0 to ηr.
///
/// # Validity
/// Elastic rubbery bond line; the strain at the end, not the mean. Between stiff layers and a soft bond η is
/// nearly ηr. The allowed strain comes from the adhesive's maker or from practice, cyclic where the
/// temperature cycles.
///
/// # Source
/// W. T. Chen and C. W. Nelson, IBM J. Res. Dev. 23 (1979) 179-188, solved for the thickness.
///
/// # Example
/// A strip of 240 mm, growth 21.6e-6 · 55 apart: between rigid layers 0.1426 mm to take, 1.0 mm at a shear
/// strain of 0.1426 (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::FlexibleBondLine;
///
/// let (outcome, _) = FlexibleBondLine {
///     bond_length: mm(240.0),
///     growth_difference: 21.6e-6 * 55.0,
///     first_thickness: mm(2.5),
///     first_youngs_modulus: gigapascal(70.0),
///     second_thickness: mm(1.0),
///     second_youngs_modulus: gigapascal(60.0),
///     bond_shear_modulus: megapascal(0.5),
///     allowed_shear_strain: 0.14256,
/// }
/// .calculate()?;
/// assert!((outcome.rigid_thickness.value - 1e-3).abs() < 1e-9);
/// assert!(outcome.bond_thickness.value < outcome.rigid_thickness.value);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct FlexibleBondLine {
    /// Length of the bond, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_length: Length,
    /// Difference of the layers' growth strains, Δε.
    #[possible(-0.5..=0.5)]
    #[tested(-0.03..=0.03)]
    pub growth_difference: f64,
    /// Thickness of the first layer, t1.
    #[possible(f64::MIN_POSITIVE..)]
    pub first_thickness: Length,
    /// Young's modulus of the first layer, E1.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub first_youngs_modulus: Pressure,
    /// Thickness of the second layer, t2.
    #[possible(f64::MIN_POSITIVE..)]
    pub second_thickness: Length,
    /// Young's modulus of the second layer, E2.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub second_youngs_modulus: Pressure,
    /// Shear modulus of the bond line, G.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_shear_modulus: Pressure,
    /// Allowed shear strain of the bond line.
    #[possible(f64::MIN_POSITIVE..=2.0)]
    #[tested(0.01..=0.5)]
    pub allowed_shear_strain: f64,
}

/// Bond-line thickness.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct FlexibleBondLineOutcome {
    /// Thickness needed, η.
    pub bond_thickness: Length,
    /// Thickness between layers that do not give, ηr: a bound.
    pub rigid_thickness: Length,
    /// Shear-lag parameter at the thickness needed, β; absent when no thickness is needed.
    pub shear_lag: Option<Curvature>,
}

impl Calculation for FlexibleBondLine {
    const NAME: &'static str = "flexible_bond_line";
    const SOURCE: &'static [Source] = &[Source {
        title: "Chen and Nelson, Thermal Stress in Bonded Joints, IBM J. Res. Dev. 23",
        edition: "1979",
        locator: "pp. 179-188, one-dimensional two-layer model, solved for the thickness",
        standing: Standing::Computed,
    }];
    type Outcome = FlexibleBondLineOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let compliance = 1.0 / (self.first_youngs_modulus.value * self.first_thickness.value)
            + 1.0 / (self.second_youngs_modulus.value * self.second_thickness.value);
        let half = 0.5 * self.bond_length.value;
        let difference = self.growth_difference.abs();
        let beta = |eta: f64| (self.bond_shear_modulus.value / eta * compliance).sqrt();
        let strain = |eta: f64| difference * math::tanh(beta(eta) * half) / (beta(eta) * eta);
        let rigid = difference * half / self.allowed_shear_strain;
        let (mut low, mut high) = (0.0, rigid);
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            if middle <= low || middle >= high {
                break;
            }
            if strain(middle) > self.allowed_shear_strain {
                low = middle;
            } else {
                high = middle;
            }
        }
        Ok(FlexibleBondLineOutcome {
            bond_thickness: si(high),
            rigid_thickness: si(rigid),
            shear_lag: (high > 0.0).then(|| si(beta(high))),
        })
    }
}
