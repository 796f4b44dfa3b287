use crate::prelude::*;

/// Shear and peel at the end of a bond between two layers that grow differently.
///
/// # Formula
/// Shear lag over the half length ℓ = L/2, bond line η thick with shear modulus G:
/// ```text
/// β² = (G/η) (1/(E1 t1) + 1/(E2 t2))
/// τ  = |Δε| G tanh(β ℓ) / (β η)            at the end
/// γ  = τ / G                               shear strain there
/// γr = |Δε| ℓ / η                          bound: adherends that do not give at all
/// N  = |Δε| (1 − 1/cosh(β ℓ)) / (1/(E1 t1) + 1/(E2 t2))   force in each layer at mid-length, for each width
/// ```
/// Peel, with D = E t³/12 of each layer, peel modulus Ep of the bond line, C = t1/(2 D1) − t2/(2 D2):
/// ```text
/// 4 λ⁴ = (Ep/η) (1/D1 + 1/D2)
/// w⁗ + 4 λ⁴ w = −C τ′,   w″ = 0 and w‴ = −C τ at the end      w opening of the bond line
/// P = −C β τ / (β⁴ + 4 λ⁴),  A = (β³ P + C τ)/(2 λ³) − β² P/(2 λ²)
/// σ = (Ep/η) (A + P) times the sign of (ε2 − ε1)
/// ```
/// Positive peel pulls the end open; two like layers (C = 0) do not peel. With one stiff adherend and a soft
/// bond σ tends to τ (3 Ep t/(E η))^¼.
///
/// # Validity
/// Elastic bond line, thin against the layers; shear even through it, although it is zero at the very edge.
/// The peel holds for bonds longer than about 3/λ and 3/β from the middle; a shorter one gets a caveat. Both
/// layers as narrow strips: no ν.
///
/// # Source
/// W. T. Chen and C. W. Nelson, Thermal Stress in Bonded Joints, IBM J. Res. Dev. 23 (1979) 179-188 (shear);
/// L. J. Hart-Smith, NASA CR-112236, 1973 (peel; the limit above, unverified).
///
/// # Example
/// 100 mm of plastic on aluminium with 2 mm of soft sealant, 40 K: 0.0449 MPa (finite differences give
/// 0.04493).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::BondEndShear;
///
/// let (outcome, _) = BondEndShear {
///     bond_length: mm(100.0),
///     first_thickness: mm(3.0),
///     first_youngs_modulus: megapascal(3200.0),
///     first_growth_strain: 70e-6 * 40.0,
///     second_thickness: mm(2.0),
///     second_youngs_modulus: gigapascal(69.0),
///     second_growth_strain: 23e-6 * 40.0,
///     bond_thickness: mm(2.0),
///     bond_shear_modulus: megapascal(1.0),
///     bond_peel_modulus: None,
/// }
/// .calculate()?;
/// assert!((outcome.end_shear_stress.value - 0.0449e6).abs() < 0.0449e6 * 0.005);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BondEndShear {
    /// Length of the bond, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_length: Length,
    /// Thickness of the first layer, t1.
    #[possible(f64::MIN_POSITIVE..)]
    pub first_thickness: Length,
    /// Young's modulus of the first layer, E1.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub first_youngs_modulus: Pressure,
    /// Growth strain of the first layer, ε1.
    #[possible(-0.5..=0.5)]
    pub first_growth_strain: f64,
    /// Thickness of the second layer, t2.
    #[possible(f64::MIN_POSITIVE..)]
    pub second_thickness: Length,
    /// Young's modulus of the second layer, E2.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub second_youngs_modulus: Pressure,
    /// Growth strain of the second layer, ε2.
    #[possible(-0.5..=0.5)]
    pub second_growth_strain: f64,
    /// Thickness of the bond line, η.
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_thickness: Length,
    /// Shear modulus of the bond line, G.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_shear_modulus: Pressure,
    /// Peel modulus of the bond line across its thickness, Ep; without it no peel is given.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_peel_modulus: Option<Pressure>,
}

/// Shear and peel at the end.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct BondEndShearOutcome {
    /// Shear-lag parameter, β.
    pub shear_lag: Curvature,
    /// Shear stress at the end, τ.
    #[shown_in("MPa")]
    pub end_shear_stress: Pressure,
    /// Shear strain at the end, γ.
    pub end_shear_strain: f64,
    /// Shear strain between layers that do not give, γr: a bound.
    pub rigid_shear_strain: f64,
    /// Force in each layer at mid-length for each width, N.
    pub layer_force: ForcePerLength,
    /// Peel stress at the end, σ; positive pulls it open.
    #[shown_in("MPa")]
    pub end_peel_stress: Option<Pressure>,
}

impl BondEndShear {
    /// Peel at the end of a long bond from the end shear stress.
    fn peel(&self, peel_modulus: f64, beta: f64, tau: f64, caveats: &mut Caveats) -> f64 {
        let (t1, t2) = (self.first_thickness.value, self.second_thickness.value);
        let d1 = self.first_youngs_modulus.value * t1 * t1 * t1 / 12.0;
        let d2 = self.second_youngs_modulus.value * t2 * t2 * t2 / 12.0;
        let stiffness = peel_modulus / self.bond_thickness.value;
        let four_lambda_4 = stiffness * (1.0 / d1 + 1.0 / d2);
        let lambda = (0.25 * four_lambda_4).sqrt().sqrt();
        let half = 0.5 * self.bond_length.value;
        if lambda.min(beta) * half < 3.0 {
            caveats.add(Caveat::ShortBond);
        }
        let c = 0.5 * t1 / d1 - 0.5 * t2 / d2;
        let p = 0.0 - c * beta * tau / (beta * beta * beta * beta + four_lambda_4);
        let a = (beta * beta * beta * p + c * tau) / (2.0 * lambda * lambda * lambda)
            - beta * beta * p / (2.0 * lambda * lambda);
        let size = stiffness * (a + p);
        if self.second_growth_strain >= self.first_growth_strain { size } else { 0.0 - size }
    }
}

impl Calculation for BondEndShear {
    const NAME: &'static str = "bond_end_shear";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Chen and Nelson, Thermal Stress in Bonded Joints, IBM J. Res. Dev. 23",
            edition: "1979",
            locator: "pp. 179-188, one-dimensional two-layer model",
            standing: Standing::Computed,
        },
        Source {
            title: "Hart-Smith, NASA CR-112236",
            edition: "1973",
            locator: "peel at the end of an adherend",
            standing: Standing::Memory,
        },
    ];
    type Outcome = BondEndShearOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let compliance = 1.0 / (self.first_youngs_modulus.value * self.first_thickness.value)
            + 1.0 / (self.second_youngs_modulus.value * self.second_thickness.value);
        let (g, eta) = (self.bond_shear_modulus.value, self.bond_thickness.value);
        let half = 0.5 * self.bond_length.value;
        let difference = (self.second_growth_strain - self.first_growth_strain).abs();
        let beta = (g / eta * compliance).sqrt();
        let strain = difference * math::tanh(beta * half) / (beta * eta);
        let tau = g * strain;
        let force = difference * (1.0 - 1.0 / math::cosh(beta * half)) / compliance;
        Ok(BondEndShearOutcome {
            shear_lag: si(beta),
            end_shear_stress: si(tau),
            end_shear_strain: strain,
            rigid_shear_strain: difference * half / eta,
            layer_force: si(force),
            end_peel_stress: self.bond_peel_modulus.map(|ep| si(self.peel(ep.value, beta, tau, caveats))),
        })
    }
}
