use crate::prelude::*;

/// Bow and stresses of two layers bonded together that grow differently.
///
/// # Formula
/// With m = t1/t2, n = E1/E2 (1 inner, 2 outer), h = t1 + t2, Δε = ε2 − ε1:
/// ```text
/// κ  = 6 Δε (1 + m)² / (h [3 (1 + m)² + (1 + m n)(m² + 1/(m n))])
/// N  = κ (E1 t1³ + E2 t2³) / (6 h)           force in each layer for each width: inner pulled, outer pressed
/// inner layer   σ at its joint face  N/t1 + E1 t1 κ/2,    at its free face  N/t1 − E1 t1 κ/2
/// outer layer   σ at its joint face −N/t2 − E2 t2 κ/2,    at its free face −N/t2 + E2 t2 κ/2
/// bow of a strip of length L:  κ L²/8 at mid-length over its ends;  κ L²/2 at the tip of a cantilever
/// ```
/// An outer layer that grows more (Δε > 0) bows the strip outward. In a plate both moduli are divided by 1 −
/// ν of their layer.
///
/// # Validity
/// Bonded without slip, elastic, free to bow, strain even through each layer. A strip narrower than its
/// length bows one way; a plate bows both ways, and past a bow of about its thickness it becomes a roll in
/// one direction, with a smaller bow across: a caveat says so. The stresses hold away from the ends; there,
/// peel and shear take over (`bond_end_shear`).
///
/// # Source
/// S. Timoshenko, Analysis of Bi-Metal Thermostats, J. Opt. Soc. Am. 11 (1925) 233-255.
///
/// # Example
/// Two equal layers, 300 mm together, 3 m long, 5e-6/K apart, 50 K: 5.625 mm at the tip (second-hand, from a
/// finite-element example).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::{BowBody, TwoLayerBow};
///
/// let (outcome, _) = TwoLayerBow {
///     body: BowBody::Strip,
///     inner_thickness: mm(150.0),
///     outer_thickness: mm(150.0),
///     inner_youngs_modulus: gigapascal(210.0),
///     outer_youngs_modulus: gigapascal(210.0),
///     inner_poissons_ratio: None,
///     outer_poissons_ratio: None,
///     inner_growth_strain: 0.0,
///     outer_growth_strain: 5e-6 * 50.0,
///     length: mm(3000.0),
/// }
/// .calculate()?;
/// assert!((outcome.tip_bow.value - 5.625e-3).abs() < 1e-6);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct TwoLayerBow {
    /// Strip or plate.
    pub body: BowBody,
    /// Thickness of the inner layer, t1.
    #[possible(f64::MIN_POSITIVE..)]
    pub inner_thickness: Length,
    /// Thickness of the outer layer, t2.
    #[possible(f64::MIN_POSITIVE..)]
    pub outer_thickness: Length,
    /// Young's modulus of the inner layer, E1.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub inner_youngs_modulus: Pressure,
    /// Young's modulus of the outer layer, E2.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub outer_youngs_modulus: Pressure,
    /// Poisson's ratio of the inner layer; a plate needs it.
    #[possible(0.0..=0.5)]
    pub inner_poissons_ratio: Option<f64>,
    /// Poisson's ratio of the outer layer; a plate needs it.
    #[possible(0.0..=0.5)]
    pub outer_poissons_ratio: Option<f64>,
    /// Growth strain of the inner layer, ε1.
    #[possible(-0.5..=0.5)]
    #[tested(-0.03..=0.03)]
    pub inner_growth_strain: f64,
    /// Growth strain of the outer layer, ε2.
    #[possible(-0.5..=0.5)]
    #[tested(-0.03..=0.03)]
    pub outer_growth_strain: f64,
    /// Length over which it bows, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
}

/// What bows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum BowBody {
    /// A strip, free to bow across its width as it likes.
    Strip,
    /// A plate that bows alike in both directions.
    Plate,
}

/// Bow and stresses.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct TwoLayerBowOutcome {
    /// Curvature, κ; positive bows outward.
    pub curvature: Curvature,
    /// Bow at mid-length over the two ends, κL²/8.
    pub middle_bow: Length,
    /// Bow at the tip of a cantilever, κL²/2.
    pub tip_bow: Length,
    /// Force in each layer for each width, N; the inner layer is pulled by it, the outer pressed.
    pub layer_force: ForcePerLength,
    /// Stress of the inner layer at its free face.
    #[shown_in("MPa")]
    pub inner_free_face_stress: Pressure,
    /// Stress of the inner layer at the joint.
    #[shown_in("MPa")]
    pub inner_joint_stress: Pressure,
    /// Stress of the outer layer at the joint.
    #[shown_in("MPa")]
    pub outer_joint_stress: Pressure,
    /// Stress of the outer layer at its free face.
    #[shown_in("MPa")]
    pub outer_free_face_stress: Pressure,
}

impl TwoLayerBow {
    /// Moduli that count for the body: E, or E/(1 − ν).
    fn moduli(&self) -> Result<(f64, f64), Error> {
        let (inner, outer) = (self.inner_youngs_modulus.value, self.outer_youngs_modulus.value);
        match (self.body, self.inner_poissons_ratio, self.outer_poissons_ratio) {
            (BowBody::Strip, ..) => Ok((inner, outer)),
            (BowBody::Plate, Some(v1), Some(v2)) => Ok((inner / (1.0 - v1), outer / (1.0 - v2))),
            (BowBody::Plate, ..) => Err(Error::inconsistent(
                "body, inner_poissons_ratio, outer_poissons_ratio",
                "a plate needs Poisson's ratio of both layers",
            )),
        }
    }
}

impl Calculation for TwoLayerBow {
    const NAME: &'static str = "two_layer_bow";
    const SOURCE: &'static [Source] = &[Source {
        title: "Timoshenko, Analysis of Bi-Metal Thermostats, J. Opt. Soc. Am. 11",
        edition: "1925",
        locator: "pp. 233-255, curvature and stresses of two strips",
        standing: Standing::SecondHand,
    }];
    type Outcome = TwoLayerBowOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (e1, e2) = self.moduli()?;
        let (t1, t2) = (self.inner_thickness.value, self.outer_thickness.value);
        let (m, n, h) = (t1 / t2, e1 / e2, t1 + t2);
        let difference = self.outer_growth_strain - self.inner_growth_strain;
        let square = (1.0 + m) * (1.0 + m);
        let curvature =
            6.0 * difference * square / (h * (3.0 * square + (1.0 + m * n) * (m * m + 1.0 / (m * n))));
        let force = curvature * (e1 * t1 * t1 * t1 + e2 * t2 * t2 * t2) / (6.0 * h);
        let (inner_bend, outer_bend) = (0.5 * e1 * t1 * curvature, 0.5 * e2 * t2 * curvature);
        let length = self.length.value;
        let middle = curvature * length * length / 8.0;
        if self.body == BowBody::Plate && middle.abs() > h {
            caveats.add(Caveat::BowPastThickness);
        }
        Ok(TwoLayerBowOutcome {
            curvature: si(curvature),
            middle_bow: si(middle),
            tip_bow: si(4.0 * middle),
            layer_force: si(force),
            inner_free_face_stress: si(force / t1 - inner_bend),
            inner_joint_stress: si(force / t1 + inner_bend),
            outer_joint_stress: si(0.0 - force / t2 - outer_bend),
            outer_free_face_stress: si(outer_bend - force / t2),
        })
    }
}
