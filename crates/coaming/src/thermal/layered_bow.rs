use crate::prelude::*;

/// Bow and stresses of a strip of any number of bonded layers that grow differently.
///
/// # Formula
/// With z from the inner face, layer k from z_k to z_k+1, strain εm + κ z over the whole strip:
/// ```text
/// Σ ∫ E (εm + κ z − ε) dz = 0          no force
/// Σ ∫ E (εm + κ z − ε) z dz = 0        no moment
/// σ = E (εm + κ z − ε)
/// bow at mid-length over the ends: κ L²/8
/// ```
/// z points outward; the strip bows outward if its outer layers grow more (κ > 0).
///
/// # Validity
/// Bonded without slip, elastic, free to bow, strain even through each layer; a strip narrow against its
/// length. Ends excluded.
///
/// # Source
/// Beam theory; for two layers it is Timoshenko, J. Opt. Soc. Am. 11 (1925) 233-255.
///
/// # Example
/// Copper on invar, 1 mm each, 100 K: 1.40976 per metre (Timoshenko's equation, by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::{BowLayer, LayeredBow};
///
/// let layer = |name: &str, gpa, growth_strain| BowLayer {
///     name: name.to_string(),
///     thickness: mm(1.0),
///     youngs_modulus: gigapascal(gpa),
///     growth_strain,
/// };
/// let (outcome, _) = LayeredBow {
///     layers: vec![layer("invar", 130.0, 1.2e-4), layer("copper", 137.0, 2e-3)],
///     length: mm(100.0),
/// }
/// .calculate()?;
/// assert!((outcome.curvature.value - 1.40976).abs() < 7e-4);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LayeredBow {
    /// The layers, from the inner face outward.
    pub layers: Vec<BowLayer>,
    /// Length over which it bows, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
}

/// One bonded layer.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BowLayer {
    /// What it is.
    pub name: String,
    /// Thickness.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Young's modulus, E.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Growth strain of the layer when free, ε.
    #[possible(-0.5..=0.5)]
    #[tested(-0.03..=0.03)]
    pub growth_strain: f64,
}

/// Bow and stresses.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LayeredBowOutcome {
    /// Curvature, κ; positive bows outward.
    pub curvature: Curvature,
    /// Strain of the inner face, εm.
    pub inner_face_strain: f64,
    /// Bow at mid-length over the two ends, κL²/8.
    pub middle_bow: Length,
    /// Stress at both faces of each layer, from the inner face outward.
    pub stresses: Vec<LayerStress>,
}

/// Stress at both faces of one layer.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LayerStress {
    /// Stress at the layer's inner face.
    #[shown_in("MPa")]
    pub inner_face_stress: Pressure,
    /// Stress at the layer's outer face.
    #[shown_in("MPa")]
    pub outer_face_stress: Pressure,
}

impl Calculation for LayeredBow {
    const NAME: &'static str = "layered_bow";
    const SOURCE: &'static [Source] = &[Source {
        title: "Timoshenko, Analysis of Bi-Metal Thermostats, J. Opt. Soc. Am. 11",
        edition: "1925",
        locator: "pp. 233-255; the same equilibrium for more layers",
        standing: Standing::Computed,
    }];
    type Outcome = LayeredBowOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.layers.is_empty() {
            return Err(Error::inconsistent("layers", "one layer or more is needed"));
        }
        let total: f64 = self.layers.iter().map(|layer| layer.thickness.value).sum();
        // Moments of stiffness about mid-height, where the equations are best posed: a EA, b ES, d EI; growth
        // force f, moment g.
        let (mut a, mut b, mut d, mut f, mut g) = (0.0, 0.0, 0.0, 0.0, 0.0);
        let mut z = -0.5 * total;
        for layer in &self.layers {
            let (t, e) = (layer.thickness.value, layer.youngs_modulus.value);
            let middle = z + 0.5 * t;
            a += e * t;
            b += e * t * middle;
            d += e * t * (middle * middle + t * t / 12.0);
            f += e * t * layer.growth_strain;
            g += e * t * middle * layer.growth_strain;
            z += t;
        }
        let determinant = a * d - b * b;
        let curvature = (a * g - b * f) / determinant;
        let strain = (d * f - b * g) / determinant;
        let mut z = -0.5 * total;
        let mut stresses = Vec::with_capacity(self.layers.len());
        for layer in &self.layers {
            let at = |z: f64| si(layer.youngs_modulus.value * (strain + curvature * z - layer.growth_strain));
            let top = z + layer.thickness.value;
            stresses.push(LayerStress { inner_face_stress: at(z), outer_face_stress: at(top) });
            z = top;
        }
        let length = self.length.value;
        Ok(LayeredBowOutcome {
            curvature: si(curvature),
            inner_face_strain: strain - 0.5 * total * curvature,
            middle_bow: si(curvature * length * length / 8.0),
            stresses,
        })
    }
}
