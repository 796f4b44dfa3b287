//! Large deflection of a circular plate under uniform pressure.

use super::circle_stretching::Circle;
use super::isotropic::{check_thin, flexural_rigidity};
use super::{EdgeSupport, InPlaneSupport};
use crate::prelude::*;

/// Large deflection of a circular plate under uniform pressure: bending and stretching together (von Kármán).
///
/// # Formula
/// Least energy ∫ (½ D (k_r² + k_t² + 2 ν k_r k_t) + ½ E t/(1 − ν²) (e_r² + e_t² + 2 ν e_r e_t) − q w) 2 π r dr with
/// k_r = −w'', k_t = −w'/r, e_r = u' + ½ w'², e_t = u/r, by Ritz with polynomials in r² and Newton's rule. Membrane stress
/// E (e_r + ν e_t)/(1 − ν²), bending stress 6 M/t².
///
/// # Validity
/// Thin, flat, isotropic, elastic; slopes small against 1; the plate stays round. Deflection to 1e-6, stress to 1e-4, for
/// q a⁴/(E t⁴) to 400; outside: caveat. An edge that is free to draw in is pressed along itself and may wrinkle, which is
/// not in it. By symmetry an edge that stays straight is here as free as one that is not held, and a held one as fixed.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), art. 96 and 97; S. Way, Trans. ASME 56
/// (1934) 627.
///
/// # Example
/// Clamped and fixed, q a⁴/(E t⁴) = 10, ν = 0.3: w/t = 1.0520 (boundary-value problem by collocation,
/// tests/independent/plate_large_circle.py).
/// ```
/// use coaming::plate::{CircularPlateLargeDeflection, EdgeSupport, InPlaneSupport};
/// use coaming::prelude::*;
///
/// let plate = CircularPlateLargeDeflection {
///     radius: mm(100.0),
///     thickness: mm(1.0),
///     youngs_modulus: gigapascal(70.0),
///     poissons_ratio: 0.3,
///     pressure: kilopascal(7.0),
///     edge_support: EdgeSupport::Clamped,
///     in_plane_support: InPlaneSupport::Fixed,
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.deflection_ratio - 1.0520).abs() < 0.0001);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CircularPlateLargeDeflection {
    /// Radius of the plate between its supports, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub radius: Length,
    /// Thickness, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Young's modulus, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Poisson's ratio, ν.
    #[possible(-0.99..=0.5)]
    #[tested(0.0..=0.5)]
    pub poissons_ratio: f64,
    /// Pressure, q: positive pushes the plate inward.
    pub pressure: Pressure,
    /// How the plate is held along its edge against deflection and turning.
    pub edge_support: EdgeSupport,
    /// How the edge is held in the plane of the plate.
    pub in_plane_support: InPlaneSupport,
}

/// Outcome of [`CircularPlateLargeDeflection`]. Bending stresses are those of the inner face, positive in tension.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct CircularPlateLargeDeflectionOutcome {
    /// Deflection of the centre by small-deflection theory, outward positive.
    pub linear_deflection: Length,
    /// Deflection of the centre, outward positive.
    pub centre_deflection: Length,
    /// Size of the centre's deflection over the thickness.
    pub deflection_ratio: f64,
    /// Membrane stress at the centre, the same in every direction.
    #[shown_in("MPa")]
    pub centre_membrane_stress: Pressure,
    /// Bending stress at the centre, the same in every direction.
    #[shown_in("MPa")]
    pub centre_bending_stress: Pressure,
    /// Membrane stress across the edge; zero where it is free to draw in.
    #[shown_in("MPa")]
    pub edge_membrane_stress: Pressure,
    /// Bending stress across the edge; zero where supported.
    #[shown_in("MPa")]
    pub edge_bending_stress: Pressure,
    /// Membrane stress along the edge.
    #[shown_in("MPa")]
    pub edge_tangential_membrane_stress: Pressure,
    /// Bending stress along the edge.
    #[shown_in("MPa")]
    pub edge_tangential_bending_stress: Pressure,
    /// Size of the largest stress at the centre, the edge and 63 radii between, membrane and bending added.
    #[shown_in("MPa")]
    pub largest_stress: Pressure,
    /// Force per length with which the edge pulls inward on what holds it in its plane.
    pub edge_pull: ForcePerLength,
}

impl Calculation for CircularPlateLargeDeflection {
    const NAME: &'static str = "circular_plate_large_deflection";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells",
            edition: "2nd ed., 1959",
            locator: "art. 96 and 97",
            standing: Standing::Memory,
        },
        Source {
            title: "S. Way, Bending of Circular Plates with Large Deflection, Trans. ASME 56",
            edition: "1934",
            locator: "p. 627",
            standing: Standing::Memory,
        },
    ];
    type Outcome = CircularPlateLargeDeflectionOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, t) = (self.radius.value, self.thickness.value);
        let (e, nu, q) = (self.youngs_modulus.value, self.poissons_ratio, self.pressure.value);
        let clamped = self.edge_support == EdgeSupport::Clamped;
        let held = matches!(self.in_plane_support, InPlaneSupport::Held | InPlaneSupport::Fixed);
        let d = flexural_rigidity(e, t, nu);
        let load = q.abs() * a * a * a * a / (d * t);
        let plate = Circle::solve(load, nu, clamped, held);
        if !plate.settled {
            return Err(Error::NotConverged {
                what: "large deflection of the plate".to_owned(),
                residual: f64::NAN,
            });
        }
        check_thin(t, 2.0 * a, caveats);
        if load > 12.0 * (1.0 - nu * nu) * 400.0 {
            caveats.add(Caveat::OutsideTested);
        }
        let linear = if clamped { 1.0 / 64.0 } else { (5.0 + nu) / (64.0 * (1.0 + nu)) };
        let sign = q.signum();
        let unit = e * t * t / ((1.0 - nu * nu) * a * a);
        let by_hooke = |[r, h]: [f64; 2]| [unit * (r + nu * h), unit * (h + nu * r)];
        let stresses = |x: f64| {
            let here = plate.at(x);
            (by_hooke(here.stretch), by_hooke(here.bend).map(|stress| 0.5 * sign * stress))
        };
        let ([centre_membrane, _], [centre_bending, _]) = stresses(0.0);
        let ([edge_membrane, along_membrane], [edge_bending, along_bending]) = stresses(1.0);
        let edge_membrane = if held { edge_membrane } else { 0.0 };
        let edge_bending = if clamped { edge_bending } else { 0.0 };
        let largest = (0..=64_u32)
            .map(|place| {
                let (membrane, bending) = stresses(f64::from(place) / 64.0);
                let pairs = membrane.iter().zip(&bending);
                pairs.map(|(m, b)| m.abs() + b.abs()).fold(0.0, f64::max)
            })
            .fold(0.0, f64::max);
        let deflection = plate.at(0.0).deflection;
        Ok(CircularPlateLargeDeflectionOutcome {
            linear_deflection: si(-sign * t * load * linear),
            centre_deflection: si(-sign * t * deflection),
            deflection_ratio: deflection.abs(),
            centre_membrane_stress: si(centre_membrane),
            centre_bending_stress: si(centre_bending),
            edge_membrane_stress: si(edge_membrane),
            edge_bending_stress: si(edge_bending),
            edge_tangential_membrane_stress: si(along_membrane),
            edge_tangential_bending_stress: si(along_bending),
            largest_stress: si(largest),
            edge_pull: si(edge_membrane * t),
        })
    }
}
