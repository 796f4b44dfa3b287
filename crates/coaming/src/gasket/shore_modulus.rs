use crate::prelude::*;

/// Young's modulus of solid rubber from its Shore A hardness: an estimate.
///
/// # Formula
/// ```text
/// E  = 0.0981 (56 + 7.62336 H) / (0.137505 (254 − 2.54 H)) MPa     Gent
/// El = 10^(0.0235 H − 0.6403) MPa                                    log-linear, for comparison
/// ```
///
/// # Validity
/// 20 to 80 Shore A; small strain, slow. Real compounds scatter by 20 % and more about Gent's line; the
/// log-linear relation for silicones lies up to 40 % above it at 50 Shore A. Both are shown, so that the
/// spread can be seen. At H = 100 the formula ends.
///
/// # Source
/// A. N. Gent, On the Relation between Indentation Hardness and Young's Modulus, Trans. IRI 34 (1958) 46-57
/// (second-hand); log-linear relation after Ruess (second-hand).
///
/// # Example
/// 60 Shore A: 3.605 MPa (the formula by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::ShoreModulus;
///
/// let (outcome, _) = ShoreModulus { shore_a: 60.0 }.calculate()?;
/// assert!((outcome.youngs_modulus.value - 3.605e6).abs() < 1e3);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ShoreModulus {
    /// Shore A hardness, H.
    #[possible(0.0..=99.0)]
    #[tested(20.0..=80.0)]
    pub shore_a: f64,
}

/// Young's modulus, by two relations.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ShoreModulusOutcome {
    /// Young's modulus by Gent, E.
    #[shown_in("MPa")]
    pub youngs_modulus: Pressure,
    /// Young's modulus by the log-linear relation, El.
    #[shown_in("MPa")]
    pub log_linear_modulus: Pressure,
}

impl Calculation for ShoreModulus {
    const NAME: &'static str = "shore_modulus";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Gent, Trans. IRI 34",
            edition: "1958",
            locator: "pp. 46-57, formula in MPa",
            standing: Standing::SecondHand,
        },
        Source {
            title: "Ruess, as quoted for silicones",
            edition: "",
            locator: "log10 E = 0.0235 S - 0.6403",
            standing: Standing::SecondHand,
        },
    ];
    type Outcome = ShoreModulusOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        caveats.add(Caveat::Estimate);
        let h = self.shore_a;
        let gent = 0.0981 * (56.0 + 7.62336 * h) / (0.137505 * (254.0 - 2.54 * h));
        let log_linear = math::pow(10.0, 0.0235 * h - 0.6403);
        Ok(ShoreModulusOutcome { youngs_modulus: si(1e6 * gent), log_linear_modulus: si(1e6 * log_linear) })
    }
}
