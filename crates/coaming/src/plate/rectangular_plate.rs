//! Rectangular plate under uniform pressure, supported or clamped all round.

use super::isotropic::{check_small, check_thin, face_stress, flexural_rigidity};
use super::{EdgeSupport, rectangle_uniform};
use crate::prelude::*;

/// Rectangular plate under uniform pressure, supported or clamped all round: deflection, moments, stresses, reactions.
///
/// # Formula
/// D ∇⁴w = q, D = E t³/(12 (1 − ν²)). Supported: Lévy's series w = Σ W_m(y) sin(m π x/a), summed until a term no
/// longer counts; corner force 2 (1 − ν) D ∂²w/∂x∂y. Clamped: Ritz, w = Σ c_ij φ_i(x) φ_j(y) with twice-integrated
/// Legendre polynomials. σ = 6 M/t². Positive pressure pushes inward, so that the deflection is negative. Moments and
/// stresses are those of the inner face: positive where it is in tension; the outer face has the opposite.
///
/// # Validity
/// Thin, flat, isotropic, elastic; small deflection. Deflections to 1e-8, moments to 1e-6, reactions of a clamped edge
/// to 1e-4 of the value, measured against finer series for sides of 1:1 to 1:10; a clamped plate longer than ten short
/// sides is taken at ten, where its ends no longer feel each other (1e-9). Caveats: deflection past t/2; t over 1/20 of
/// the short side, where shear deflection passes about 1 % (supported) to 4 % (clamped). The supported edge is the hard
/// one: corners held down.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), art. 30 (supported) and art. 44
/// (clamped; the coefficients there, solved here by Ritz).
///
/// # Example
/// Clamped square of 1 m, 20 mm thick, 100 kPa: art. 44 with the coefficient 0.0012653 gives 0.863 mm.
/// ```
/// use coaming::plate::{EdgeSupport, RectangularPlate};
/// use coaming::prelude::*;
///
/// let plate = RectangularPlate {
///     length: m(1.0),
///     width: m(1.0),
///     thickness: mm(20.0),
///     youngs_modulus: gigapascal(200.0),
///     poissons_ratio: 0.3,
///     pressure: kilopascal(100.0),
///     edge_support: EdgeSupport::Clamped,
/// };
/// let (outcome, caveats) = plate.calculate()?;
/// assert!((outcome.centre_deflection - mm(-0.863)).abs() < mm(0.001));
/// assert!(caveats.is_empty());
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RectangularPlate {
    /// Length of the plate between its supports, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the plate between its supports, b; it may be the longer side.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
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
    /// Pressure, q: positive pushes the plate inward, onto its seal.
    pub pressure: Pressure,
    /// How the plate is held along its edge.
    pub edge_support: EdgeSupport,
}

/// Outcome of [`RectangularPlate`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RectangularPlateOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Deflection of the centre, outward positive.
    pub centre_deflection: Length,
    /// Deflection of the largest size, outward positive; off the centre of a clamped plate over three times as long as
    /// wide.
    pub largest_deflection: Length,
    /// Size of the largest deflection over the thickness.
    pub deflection_ratio: f64,
    /// Moment per length at the centre that bends the length, positive where the inner face is in tension.
    pub centre_moment_along_length: Force,
    /// Moment per length at the centre that bends the width.
    pub centre_moment_along_width: Force,
    /// Moment per length across an edge that runs along the length, at its middle; zero where supported.
    pub length_edge_moment: Force,
    /// Moment per length across an edge that runs along the width, at its middle.
    pub width_edge_moment: Force,
    /// Twisting moment per length at the corners, its size; zero where clamped.
    pub corner_twisting_moment: Force,
    /// Stress along the length at the centre, on the inner face.
    #[shown_in("MPa")]
    pub centre_stress_along_length: Pressure,
    /// Stress along the width at the centre, on the inner face.
    #[shown_in("MPa")]
    pub centre_stress_along_width: Pressure,
    /// Stress across an edge that runs along the length, at its middle, on the inner face.
    #[shown_in("MPa")]
    pub length_edge_stress: Pressure,
    /// Stress across an edge that runs along the width, at its middle, on the inner face.
    #[shown_in("MPa")]
    pub width_edge_stress: Pressure,
    /// Size of the largest principal bending stress: centre, edges or corners.
    #[shown_in("MPa")]
    pub largest_stress: Pressure,
    /// Reaction per length at the middle of an edge that runs along the length, outward positive.
    pub length_edge_reaction: ForcePerLength,
    /// Reaction per length at the middle of an edge that runs along the width, outward positive.
    pub width_edge_reaction: ForcePerLength,
    /// Force of the support on each corner, outward positive: a supported plate under positive pressure is held down
    /// there; zero where clamped.
    pub corner_reaction: Force,
}

impl Calculation for RectangularPlate {
    const NAME: &'static str = "rectangular_plate";
    const SOURCE: &'static [Source] = &[Source {
        title: "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells",
        edition: "2nd ed., 1959",
        locator: "art. 30 and 44",
        standing: Standing::Computed,
    }];
    type Outcome = RectangularPlateOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, t) = (self.length.value, self.width.value, self.thickness.value);
        let (nu, q) = (self.poissons_ratio, self.pressure.value);
        let (short, long) = (a.min(b), a.max(b));
        let d = flexural_rigidity(self.youngs_modulus.value, t, nu);
        // For a short side of 1, unit pressure and unit rigidity.
        let plate = match self.edge_support {
            EdgeSupport::Supported => rectangle_uniform::supported(1.0, long / short, nu),
            EdgeSupport::Clamped => rectangle_uniform::clamped(1.0, long / short, nu),
        };
        let moment = q * short * short;
        let deflection = moment * short * short / d;
        let along_length = |short_one: f64, long_one: f64| if a <= b { short_one } else { long_one };
        let along_width = |short_one: f64, long_one: f64| if a <= b { long_one } else { short_one };
        let mx = moment * along_length(plate.short_span_moment, plate.long_span_moment);
        let my = moment * along_width(plate.short_span_moment, plate.long_span_moment);
        // The edges that run along the length are the short edges where the length is the short side.
        let edge_y = moment * along_length(plate.short_edge_moment, plate.long_edge_moment);
        let edge_x = moment * along_width(plate.short_edge_moment, plate.long_edge_moment);
        let corner = moment * plate.corner_force;
        let stress = |moment: f64| face_stress(moment, t);
        let worst = [mx, my, edge_x, edge_y, moment * plate.largest_edge_moment, 0.5 * corner]
            .iter()
            .fold(0.0, |worst: f64, moment| worst.max(stress(*moment).abs()));
        let largest = deflection * plate.largest_deflection;
        check_thin(t, short, caveats);
        check_small(largest, t, caveats);
        Ok(RectangularPlateOutcome {
            flexural_rigidity: si(d),
            centre_deflection: si(-deflection * plate.centre_deflection),
            largest_deflection: si(-largest),
            deflection_ratio: (largest / t).abs(),
            centre_moment_along_length: si(mx),
            centre_moment_along_width: si(my),
            length_edge_moment: si(edge_y),
            width_edge_moment: si(edge_x),
            corner_twisting_moment: si(0.5 * corner.abs()),
            centre_stress_along_length: si(stress(mx)),
            centre_stress_along_width: si(stress(my)),
            length_edge_stress: si(stress(edge_y)),
            width_edge_stress: si(stress(edge_x)),
            largest_stress: si(worst),
            length_edge_reaction: si(q
                * short
                * along_length(plate.short_edge_reaction, plate.long_edge_reaction)),
            width_edge_reaction: si(q
                * short
                * along_width(plate.short_edge_reaction, plate.long_edge_reaction)),
            corner_reaction: si(-corner),
        })
    }
}
