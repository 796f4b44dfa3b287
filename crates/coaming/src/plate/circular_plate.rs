//! Circular plate under uniform pressure or a central force, supported or clamped.

use super::EdgeSupport;
use super::isotropic::{check_small, check_thin, face_stress, flexural_rigidity};
use crate::prelude::*;

/// Circular plate under uniform pressure and a central force spread over a small disc, supported or clamped.
///
/// # Formula
/// Pressure q: supported w0 = (5 + ν)/(1 + ν) q a⁴/(64 D), M0 = (3 + ν) q a²/16; clamped w0 = q a⁴/(64 D),
/// M0 = (1 + ν) q a²/16, edge M = −q a²/8. Force F on a disc of radius c, clamped:
/// w0 = F/(16 π D) (a² − c² ln(a/c) − ¾ c²), M0 = (1 + ν) F/(4 π) (ln(a/c) + c²/(4 a²)), edge M = −F/(4 π) (1 − c²/(2 a²)).
/// A supported edge turns until its moment is gone: minus that moment all over, w0 more by a² M/(2 (1 + ν) D). σ = 6 M/t².
///
/// # Validity
/// Thin, flat, isotropic, elastic; small deflection. Exact within thin-plate theory. Caveats: deflection past t/2; t over
/// 1/20 of the diameter; a disc narrower than the thickness.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), art. 16 to 19; Chen & Liew (eds.), The
/// Civil Engineering Handbook, 2nd ed., ch. 47, eqs. 47.72 to 47.76 (second-hand).
///
/// # Example
/// Clamped, w0 = q a⁴/(64 D): with D = 10 kN·m, q = 1 kPa, a = 1 m that is 1.5625 mm.
/// ```
/// use coaming::plate::{CircularPlate, EdgeSupport};
/// use coaming::prelude::*;
///
/// let plate = CircularPlate {
///     radius: m(1.0),
///     thickness: mm(10.0),
///     youngs_modulus: gigapascal(109.2),
///     poissons_ratio: 0.3,
///     edge_support: EdgeSupport::Clamped,
///     pressure: kilopascal(1.0),
///     central_force: None,
///     force_radius: None,
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.centre_deflection - mm(-1.5625)).abs() < mm(1e-9));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CircularPlate {
    /// Radius of the plate to its support, a.
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
    /// How the plate is held along its edge.
    pub edge_support: EdgeSupport,
    /// Pressure, q: positive pushes the plate inward.
    pub pressure: Pressure,
    /// Force on a disc about the centre, F, positive inward; none if absent.
    pub central_force: Option<Force>,
    /// Radius of that disc, c; needed with the force.
    #[possible(f64::MIN_POSITIVE..)]
    pub force_radius: Option<Length>,
}

/// Outcome of [`CircularPlate`]. Moments and stresses are those of the inner face, positive where it is in tension.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct CircularPlateOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Deflection of the centre, the largest; outward positive.
    pub centre_deflection: Length,
    /// Size of the centre's deflection over the thickness.
    pub deflection_ratio: f64,
    /// Moment per length at the centre, the same in all directions.
    pub centre_moment: Force,
    /// Radial moment per length at the edge; zero where supported.
    pub edge_moment: Force,
    /// Tangential moment per length at the edge.
    pub edge_tangential_moment: Force,
    /// Stress at the centre.
    #[shown_in("MPa")]
    pub centre_stress: Pressure,
    /// Radial stress at the edge.
    #[shown_in("MPa")]
    pub edge_stress: Pressure,
    /// Size of the larger of the two.
    #[shown_in("MPa")]
    pub largest_stress: Pressure,
    /// Slope at the edge, its size; zero where clamped.
    pub edge_slope: Angle,
    /// Reaction per length of the edge, outward positive.
    pub edge_reaction: ForcePerLength,
}

impl Calculation for CircularPlate {
    const NAME: &'static str = "circular_plate";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells",
            edition: "2nd ed., 1959",
            locator: "art. 16 to 19",
            standing: Standing::Memory,
        },
        Source {
            title: "Chen & Liew (eds.), The Civil Engineering Handbook",
            edition: "2nd ed.",
            locator: "ch. 47, eqs. 47.72 to 47.76",
            standing: Standing::SecondHand,
        },
    ];
    type Outcome = CircularPlateOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, t, nu, q) =
            (self.radius.value, self.thickness.value, self.poissons_ratio, self.pressure.value);
        let d = flexural_rigidity(self.youngs_modulus.value, t, nu);
        let (force, c) = match (self.central_force, self.force_radius) {
            (None, _) => (0.0, a),
            (Some(_), None) => {
                return Err(Error::inconsistent(
                    "central_force, force_radius",
                    "a force needs the radius of the disc that it is spread over: under a point the moment has no \
                     finite value",
                ));
            }
            (Some(force), Some(c)) if c.value <= a => (force.value, c.value),
            (Some(_), Some(_)) => {
                return Err(self.impossible("force_radius", "at most the radius of the plate"));
            }
        };
        // Supported, ν-free part (clamped) and what the edge's turning adds. Pressure:
        let clamped_w = q * a * a * a * a / (64.0 * d);
        let clamped_edge = -q * a * a / 8.0;
        let clamped_centre = (1.0 + nu) * q * a * a / 16.0;
        // Force on the disc, clamped: slope φ = −w' from D (1/r (r φ)')' = −shear, shear F r/(2 π c²) inside and
        // F/(2 π r) outside.
        let (l, s) = (math::ln(a / c), math::square(c / a));
        let force_w = force * a * a / (16.0 * PI * d) * (1.0 - s * (0.75 + l));
        let force_edge = -force / (4.0 * PI) * (1.0 - 0.5 * s);
        let force_centre = force * (1.0 + nu) / (4.0 * PI) * (l + 0.25 * s);
        let (w, edge, centre) =
            (clamped_w + force_w, clamped_edge + force_edge, clamped_centre + force_centre);
        // A supported edge turns until its moment is gone: a constant moment −edge all over.
        let (w, edge, centre, slope) = match self.edge_support {
            EdgeSupport::Clamped => (w, edge, centre, 0.0),
            EdgeSupport::Supported => {
                let turn = -edge / (d * (1.0 + nu));
                (w + 0.5 * turn * a * a, 0.0, centre - edge, (turn * a).abs())
            }
        };
        let tangential = match self.edge_support {
            EdgeSupport::Clamped => nu * edge,
            // A clamped edge has ν M_r; the constant moment adds −M_r.
            EdgeSupport::Supported => (nu - 1.0) * (clamped_edge + force_edge),
        };
        check_thin(t, 2.0 * a, caveats);
        check_small(w, t, caveats);
        if self.central_force.is_some() && 2.0 * c < t {
            caveats.add(Caveat::PatchWithinThickness);
        }
        let (centre_stress, edge_stress) = (face_stress(centre, t), face_stress(edge, t));
        Ok(CircularPlateOutcome {
            flexural_rigidity: si(d),
            centre_deflection: si(-w),
            deflection_ratio: (w / t).abs(),
            centre_moment: si(centre),
            edge_moment: si(edge),
            edge_tangential_moment: si(tangential),
            centre_stress: si(centre_stress),
            edge_stress: si(edge_stress),
            largest_stress: si(centre_stress.abs().max(edge_stress.abs())),
            edge_slope: si(slope),
            edge_reaction: si(0.5 * q * a + force / (2.0 * PI * a)),
        })
    }
}
