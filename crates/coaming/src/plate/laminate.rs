//! Laminate of plies: stiffness, engineering constants, and ply stresses under load, temperature and moisture.

use super::laminate_plies::{Placed, held_back, placed};
use super::laminate_solve::{Factored, strains_along};
use crate::prelude::*;

/// Laminate of bonded plies under forces, moments, a change of temperature and of moisture.
///
/// # Formula
/// Classical lamination: Q of each ply turned to the laminate's x by its direction; A = Σ Q t, B = Σ Q t z, D = Σ Q (t z² +
/// t³/12), z the ply's middle from mid-height, outward positive. N = A ε + B κ − Σ Q e t, M = B ε + D κ − Σ Q e t z, with e the
/// ply's free strain α ΔT + moisture strain. Strain at z: ε + z κ; κ_x = −∂²w/∂x², κ_xy = −2 ∂²w/∂x∂y. Engineering constants
/// from the inverse of the whole matrix: E_x = 1/(h a11), ν_xy = −a12/a11, in bending E_x = 12/(h³ d11).
///
/// # Validity
/// Thin against its width, bonded without slip, elastic; the ends excluded, where plies peel. ν21 = ν12 E2/E1. Linear: an
/// unsymmetric laminate whose bow passes its thickness rolls in one direction instead. A failure of plies is not judged.
///
/// # Source
/// A. T. Nettles, Basic Mechanics of Laminated Composite Plates, NASA RP-1351 (1994), eqs. 53 to 56 and sec. VI.
///
/// # Example
/// Three plies 90°, 0°, 45° from the inner face (RP-1351, ex. 9): A11 = 139 984 lbf/in, A16 = 23 527 lbf/in.
/// ```
/// use coaming::plate::{Laminate, Ply};
/// use coaming::prelude::*;
///
/// let ply = |direction: f64| Ply {
///     direction: deg(direction),
///     thickness: inch(0.005),
///     youngs_modulus_1: psi(20.01e6),
///     youngs_modulus_2: psi(1.301e6),
///     shear_modulus_12: psi(1.001e6),
///     poisson_ratio_12: 0.3,
///     expansion_1: None,
///     expansion_2: None,
///     moisture_strain_1: None,
///     moisture_strain_2: None,
/// };
/// let (outcome, _) = Laminate {
///     plies: vec![ply(90.0), ply(0.0), ply(45.0)],
///     force_x: None,
///     force_y: None,
///     shear_force: None,
///     moment_x: None,
///     moment_y: None,
///     twisting_moment: None,
///     temperature_change: None,
/// }
/// .calculate()?;
/// let pound_per_inch = 4.4482216152605 / 0.0254;
/// assert!((outcome.stretch_stiffness_11.value / pound_per_inch - 139_984.0).abs() < 30.0);
/// assert!((outcome.stretch_stiffness_16.value / pound_per_inch - 23_527.0).abs() < 5.0);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Laminate {
    /// The plies, from the inner face outward.
    pub plies: Vec<Ply>,
    /// Force per length along x, positive in tension; none if absent.
    pub force_x: Option<ForcePerLength>,
    /// Force per length along y, positive in tension; none if absent.
    pub force_y: Option<ForcePerLength>,
    /// Shear force per length; none if absent.
    pub shear_force: Option<ForcePerLength>,
    /// Moment per length that bends along x, positive where it stretches the outer face; none if absent.
    pub moment_x: Option<Force>,
    /// Moment per length that bends along y, positive where it stretches the outer face; none if absent.
    pub moment_y: Option<Force>,
    /// Twisting moment per length; none if absent.
    pub twisting_moment: Option<Force>,
    /// Change of temperature since the laminate was free of stress; none if absent.
    pub temperature_change: Option<TemperatureDifference>,
}

/// One ply; an isotropic layer has the same modulus twice and G = E/(2 (1 + ν)).
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Ply {
    /// Direction of the fibres from the laminate's x, turning towards y.
    #[possible(-PI..=PI)]
    pub direction: Angle,
    /// Thickness.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Young's modulus along the fibres, E1.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus_1: Pressure,
    /// Young's modulus across the fibres, E2.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus_2: Pressure,
    /// Shear modulus in the ply, G12.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub shear_modulus_12: Pressure,
    /// Poisson's ratio of the ply, strain across over strain along under a pull along the fibres, ν12.
    #[possible(-1.0..=2.0)]
    #[tested(0.0..=0.5)]
    pub poisson_ratio_12: f64,
    /// Thermal expansion along the fibres; needed with a change of temperature.
    #[shown_in("um/(m·K)")]
    pub expansion_1: Option<Expansion>,
    /// Thermal expansion across the fibres; needed with a change of temperature.
    #[shown_in("um/(m·K)")]
    pub expansion_2: Option<Expansion>,
    /// Strain along the fibres that its change of moisture would cause if it were free; none if absent.
    #[possible(-0.5..=0.5)]
    pub moisture_strain_1: Option<f64>,
    /// Strain across the fibres that its change of moisture would cause if it were free; none if absent.
    #[possible(-0.5..=0.5)]
    pub moisture_strain_2: Option<f64>,
}

/// Outcome of [`Laminate`]. z points outward from mid-height; stresses are positive in tension.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LaminateOutcome {
    /// Thickness of all plies, h.
    pub total_thickness: Length,
    /// A11, force per length along x for strain along x.
    pub stretch_stiffness_11: ForcePerLength,
    /// A12.
    pub stretch_stiffness_12: ForcePerLength,
    /// A22.
    pub stretch_stiffness_22: ForcePerLength,
    /// A16.
    pub stretch_stiffness_16: ForcePerLength,
    /// A26.
    pub stretch_stiffness_26: ForcePerLength,
    /// A66, shear force per length for shear strain.
    pub stretch_stiffness_66: ForcePerLength,
    /// B11, force per length along x for curvature along x, and moment for strain.
    pub coupling_stiffness_11: Force,
    /// B12.
    pub coupling_stiffness_12: Force,
    /// B22.
    pub coupling_stiffness_22: Force,
    /// B16.
    pub coupling_stiffness_16: Force,
    /// B26.
    pub coupling_stiffness_26: Force,
    /// B66.
    pub coupling_stiffness_66: Force,
    /// D11, moment per length along x for curvature along x.
    pub bending_stiffness_11: Torque,
    /// D12.
    pub bending_stiffness_12: Torque,
    /// D22.
    pub bending_stiffness_22: Torque,
    /// D16.
    pub bending_stiffness_16: Torque,
    /// D26.
    pub bending_stiffness_26: Torque,
    /// D66.
    pub bending_stiffness_66: Torque,
    /// Young's modulus along x of the free laminate, its bow not held back.
    #[shown_in("GPa")]
    pub youngs_modulus_x: Pressure,
    /// Young's modulus along y of the free laminate.
    #[shown_in("GPa")]
    pub youngs_modulus_y: Pressure,
    /// Shear modulus in the plane of the free laminate.
    #[shown_in("GPa")]
    pub shear_modulus_xy: Pressure,
    /// Poisson's ratio, strain along y over strain along x under a pull along x.
    pub poisson_ratio_xy: f64,
    /// Young's modulus along x in bending, of a solid sheet as thick.
    #[shown_in("GPa")]
    pub bending_modulus_x: Pressure,
    /// Young's modulus along y in bending.
    #[shown_in("GPa")]
    pub bending_modulus_y: Pressure,
    /// Thermal expansion along x of the free laminate; none where a ply's is not given.
    #[shown_in("um/(m·K)")]
    pub expansion_x: Option<Expansion>,
    /// Thermal expansion along y of the free laminate.
    #[shown_in("um/(m·K)")]
    pub expansion_y: Option<Expansion>,
    /// Shear strain per kelvin of the free laminate.
    #[shown_in("um/(m·K)")]
    pub shear_expansion: Option<Expansion>,
    /// Strain along x at mid-height.
    pub strain_x: f64,
    /// Strain along y at mid-height.
    pub strain_y: f64,
    /// Shear strain at mid-height.
    pub shear_strain: f64,
    /// Curvature along x, κ_x; positive bows outward at the middle.
    pub curvature_x: Curvature,
    /// Curvature along y, κ_y.
    pub curvature_y: Curvature,
    /// Twist, κ_xy.
    pub twist: Curvature,
    /// Stresses of the plies, from the inner face outward.
    pub ply_stresses: Vec<PlyStress>,
}

/// Stresses at both faces of one ply, along its own fibres.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct PlyStress {
    /// Stress along the fibres at the ply's inner face.
    #[shown_in("MPa")]
    pub inner_along: Pressure,
    /// Stress across the fibres at the ply's inner face.
    #[shown_in("MPa")]
    pub inner_across: Pressure,
    /// Shear stress at the ply's inner face.
    #[shown_in("MPa")]
    pub inner_shear: Pressure,
    /// Stress along the fibres at the ply's outer face.
    #[shown_in("MPa")]
    pub outer_along: Pressure,
    /// Stress across the fibres at the ply's outer face.
    #[shown_in("MPa")]
    pub outer_across: Pressure,
    /// Shear stress at the ply's outer face.
    #[shown_in("MPa")]
    pub outer_shear: Pressure,
}

impl Calculation for Laminate {
    const NAME: &'static str = "laminate";
    const SOURCE: &'static [Source] = &[Source {
        title: "A. T. Nettles, Basic Mechanics of Laminated Composite Plates, NASA RP-1351",
        edition: "1994",
        locator: "eqs. 53 to 56, sec. VI",
        standing: Standing::Read,
    }];
    type Outcome = LaminateOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.plies.is_empty() {
            return Err(Error::inconsistent("plies", "one ply or more is needed"));
        }
        // In units of the whole thickness h, so that A, B and D are of one size.
        let h: f64 = self.plies.iter().map(|ply| ply.thickness.value).sum();
        let plies = placed(&self.plies, h)?;
        let (mut a, mut b, mut d) = ([0.0; 6], [0.0; 6], [0.0; 6]);
        for ply in &plies {
            let [inner, outer] = ply.faces;
            let t = outer - inner;
            let middle = 0.5 * (outer + inner);
            let weights = [t, t * middle, t * (middle * middle + t * t / 12.0)];
            for (matrix, weight) in [&mut a, &mut b, &mut d].into_iter().zip(weights) {
                matrix.iter_mut().zip(ply.in_axes).for_each(|(entry, q)| *entry += q * weight);
            }
        }
        let singular = || Error::inconsistent("plies", "stiffnesses of a size that can be added are needed");
        let factored = Factored::new(a, b, d).ok_or_else(singular)?;
        let compliance = |place: usize| {
            let mut unit = [0.0; 6];
            if let Some(entry) = unit.get_mut(place) {
                *entry = 1.0;
            }
            factored.solve(unit)
        };
        let [a11, a12, ..] = compliance(0);
        let ([_, a22, ..], [_, _, a66, ..]) = (compliance(1), compliance(2));
        let ([.., d11, _, _], [.., d22, _]) = (compliance(3), compliance(4));
        let per_kelvin = plies
            .iter()
            .all(|ply| ply.per_kelvin.is_some())
            .then(|| factored.solve(held_back(&plies, |ply| ply.per_kelvin.unwrap_or([0.0; 2]))));
        let rise = self.temperature_change.map_or(0.0, |change| change.value);
        if let Some(place) = plies.iter().position(|ply| rise != 0.0 && ply.per_kelvin.is_none()) {
            return Err(Error::inconsistent(
                format!("plies[{place}].expansion_1, plies[{place}].expansion_2"),
                "a change of temperature needs both expansions of each ply",
            ));
        }
        let free = |ply: &Placed| {
            let ([along, across], [swell_along, swell_across]) =
                (ply.per_kelvin.unwrap_or([0.0; 2]), ply.moisture);
            [along * rise + swell_along, across * rise + swell_across]
        };
        let force = |given: Option<ForcePerLength>| given.map_or(0.0, |given| given.value / h);
        let moment = |given: Option<Force>| given.map_or(0.0, |given| given.value / (h * h));
        let mut loads = held_back(&plies, free);
        let given = [
            force(self.force_x),
            force(self.force_y),
            force(self.shear_force),
            moment(self.moment_x),
            moment(self.moment_y),
            moment(self.twisting_moment),
        ];
        loads.iter_mut().zip(given).for_each(|(load, given)| *load += given);
        let [x, y, shear, kx, ky, kxy] = factored.solve(loads);
        let ply_stresses = plies
            .iter()
            .map(|ply| {
                let [free_along, free_across] = free(ply);
                let [inner, outer] = ply.faces.map(|z| {
                    let [along, across, shear] =
                        strains_along([x + z * kx, y + z * ky, shear + z * kxy], ply.direction);
                    let [q11, q12, q22, q66] = ply.on_axis;
                    let (along, across) = (along - free_along, across - free_across);
                    [q11 * along + q12 * across, q12 * along + q22 * across, q66 * shear]
                });
                let ([i1, i2, i6], [o1, o2, o6]) = (inner, outer);
                PlyStress {
                    inner_along: si(i1),
                    inner_across: si(i2),
                    inner_shear: si(i6),
                    outer_along: si(o1),
                    outer_across: si(o2),
                    outer_shear: si(o6),
                }
            })
            .collect();
        let [a11_, a12_, a22_, a16_, a26_, a66_] = a.map(|value| si(value * h));
        let [b11_, b12_, b22_, b16_, b26_, b66_] = b.map(|value| si(value * h * h));
        let [d11_, d12_, d22_, d16_, d26_, d66_] = d.map(|value| si(value * h * h * h));
        let growth = |place: usize| per_kelvin.and_then(|strains| strains.get(place).copied()).map(si);
        Ok(LaminateOutcome {
            total_thickness: si(h),
            stretch_stiffness_11: a11_,
            stretch_stiffness_12: a12_,
            stretch_stiffness_22: a22_,
            stretch_stiffness_16: a16_,
            stretch_stiffness_26: a26_,
            stretch_stiffness_66: a66_,
            coupling_stiffness_11: b11_,
            coupling_stiffness_12: b12_,
            coupling_stiffness_22: b22_,
            coupling_stiffness_16: b16_,
            coupling_stiffness_26: b26_,
            coupling_stiffness_66: b66_,
            bending_stiffness_11: d11_,
            bending_stiffness_12: d12_,
            bending_stiffness_22: d22_,
            bending_stiffness_16: d16_,
            bending_stiffness_26: d26_,
            bending_stiffness_66: d66_,
            youngs_modulus_x: si(1.0 / a11),
            youngs_modulus_y: si(1.0 / a22),
            shear_modulus_xy: si(1.0 / a66),
            poisson_ratio_xy: -a12 / a11,
            bending_modulus_x: si(12.0 / d11),
            bending_modulus_y: si(12.0 / d22),
            expansion_x: growth(0),
            expansion_y: growth(1),
            shear_expansion: growth(2),
            strain_x: x,
            strain_y: y,
            shear_strain: shear,
            curvature_x: si(kx / h),
            curvature_y: si(ky / h),
            twist: si(kxy / h),
            ply_stresses,
        })
    }
}
