//! Large deflection of a rectangular plate under uniform pressure.

use super::isotropic::{check_thin, flexural_rigidity};
use super::plate_stretching::{self, InPlane};
use super::{EdgeSupport, rectangle_uniform};
use crate::prelude::*;

/// How the edges of a plate are held in its plane: it changes a large deflection by up to a factor of two.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum InPlaneSupport {
    /// Not held: the edge may draw in and wave, as on a gasket or under a bezel.
    Free,
    /// The edge stays straight and may draw in, as with a stiff loose frame or between equal bays.
    Straight,
    /// The edge stays straight where it is; the sheet may slide along it.
    Held,
    /// No point of the edge moves, as when welded or bonded to a stiff frame.
    Fixed,
}

impl InPlaneSupport {
    pub(crate) fn kernel(self) -> InPlane {
        match self {
            Self::Free => InPlane::Free,
            Self::Straight => InPlane::Straight,
            Self::Held => InPlane::Held,
            Self::Fixed => InPlane::Fixed,
        }
    }
}

/// Large deflection of a rectangular plate under uniform pressure: bending and stretching together (von Kármán).
///
/// # Formula
/// Least energy ½ D ∫(∇²w)² + ½ E t/(1 − ν²) ∫(e_x² + e_y² + 2 ν e_x e_y + ½ (1 − ν) γ²) − ∫ q w with
/// e_x = ∂u/∂x + ½ (∂w/∂x)² and so on, by Ritz with Legendre polynomials for u, v, w and Newton's rule.
/// Membrane stress E (e_x + ν e_y)/(1 − ν²), bending stress 6 M/t².
///
/// # Validity
/// Thin, flat, isotropic, elastic; slopes small against 1. Deflection to 0.2 %, stress at the centre to about 2 %, at a
/// clamped edge to about 2 %, for q s⁴/(E t⁴) to 400 and sides of 1:1 to 1:3 (s the shorter side); outside: caveat. Stress
/// in the corners is not given: free and straight edges are pressed there.
///
/// # Source
/// S. Levy, NACA TN 846/Report 737 (supported) and TN 847/Report 740 (clamped), 1942.
///
/// # Example
/// Supported square, edges straight and free to move in, q a⁴/(E t⁴) = 29.4, ν = 0.316: w/t = 0.962 (NACA TN 846).
/// ```
/// use coaming::plate::{EdgeSupport, InPlaneSupport, RectangularPlateLargeDeflection};
/// use coaming::prelude::*;
///
/// let plate = RectangularPlateLargeDeflection {
///     length: m(1.0),
///     width: m(1.0),
///     thickness: mm(5.0),
///     youngs_modulus: gigapascal(70.0),
///     poissons_ratio: 0.316,
///     pressure: pascal(29.4 * 70e9 * 0.005 * 0.005 * 0.005 * 0.005),
///     edge_support: EdgeSupport::Supported,
///     in_plane_support: InPlaneSupport::Straight,
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.deflection_ratio - 0.962).abs() < 0.01);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct RectangularPlateLargeDeflection {
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
    /// Pressure, q: positive pushes the plate inward.
    pub pressure: Pressure,
    /// How the plate is held along its edge against deflection and turning.
    pub edge_support: EdgeSupport,
    /// How the edge is held in the plane of the plate.
    pub in_plane_support: InPlaneSupport,
}

/// Outcome of [`RectangularPlateLargeDeflection`]. Bending stresses are those of the inner face, positive in tension.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct RectangularPlateLargeDeflectionOutcome {
    /// Deflection of the centre by small-deflection theory, outward positive.
    pub linear_deflection: Length,
    /// Deflection of the centre, outward positive.
    pub centre_deflection: Length,
    /// Size of the centre's deflection over the thickness.
    pub deflection_ratio: f64,
    /// Membrane stress along the length at the centre.
    #[shown_in("MPa")]
    pub centre_membrane_stress_along_length: Pressure,
    /// Membrane stress along the width at the centre.
    #[shown_in("MPa")]
    pub centre_membrane_stress_along_width: Pressure,
    /// Bending stress along the length at the centre.
    #[shown_in("MPa")]
    pub centre_bending_stress_along_length: Pressure,
    /// Bending stress along the width at the centre.
    #[shown_in("MPa")]
    pub centre_bending_stress_along_width: Pressure,
    /// Membrane stress across an edge that runs along the length, at its middle.
    #[shown_in("MPa")]
    pub length_edge_membrane_stress: Pressure,
    /// Bending stress across that edge; zero where supported.
    #[shown_in("MPa")]
    pub length_edge_bending_stress: Pressure,
    /// Membrane stress across an edge that runs along the width, at its middle.
    #[shown_in("MPa")]
    pub width_edge_membrane_stress: Pressure,
    /// Bending stress across that edge; zero where supported.
    #[shown_in("MPa")]
    pub width_edge_bending_stress: Pressure,
    /// Size of the largest stress of these places, membrane and bending added.
    #[shown_in("MPa")]
    pub largest_stress: Pressure,
}

impl Calculation for RectangularPlateLargeDeflection {
    const NAME: &'static str = "rectangular_plate_large_deflection";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "S. Levy, Bending of Rectangular Plates with Large Deflections, NACA TN 846/Report 737",
            edition: "1942",
            locator: "table of centre deflection against pressure",
            standing: Standing::Memory,
        },
        Source {
            title: "S. Levy, Square Plate with Clamped Edges under Normal Pressure, NACA TN 847/Report 740",
            edition: "1942",
            locator: "table of centre deflection against pressure",
            standing: Standing::Memory,
        },
    ];
    type Outcome = RectangularPlateLargeDeflectionOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, t) = (self.length.value, self.width.value, self.thickness.value);
        let (e, nu, q) = (self.youngs_modulus.value, self.poissons_ratio, self.pressure.value);
        let (short, ratio) = (a.min(b), a.max(b) / a.min(b));
        if ratio > 20.0 {
            return Err(self.impossible(
                if a > b { "length" } else { "width" },
                "at most 20 times the other side; a longer plate bends as a strip",
            ));
        }
        let clamped = self.edge_support == EdgeSupport::Clamped;
        let d = flexural_rigidity(e, t, nu);
        let load = q.abs() * short * short * short * short / (d * t);
        let along = (4.0 + ratio).ceil().min(12.0) as usize;
        let (sides, counts) = if a <= b { ((1.0, ratio), (5, along)) } else { ((ratio, 1.0), (along, 5)) };
        let plate =
            plate_stretching::rectangle(sides, load, nu, clamped, self.in_plane_support.kernel(), counts);
        if !plate.settled {
            return Err(Error::NotConverged {
                what: "large deflection of the plate".to_owned(),
                residual: f64::NAN,
            });
        }
        let linear = if clamped {
            rectangle_uniform::clamped(1.0, ratio, nu)
        } else {
            rectangle_uniform::supported(1.0, ratio, nu)
        };
        check_thin(t, short, caveats);
        if load > 12.0 * (1.0 - nu * nu) * 400.0 || ratio > 3.0 {
            caveats.add(Caveat::OutsideTested);
        }
        let sign = q.signum();
        let unit = e * t * t / ((1.0 - nu * nu) * short * short);
        // Across x, then across y, for a pair along x and y.
        let by_hooke = |[x, y]: [f64; 2]| [unit * (x + nu * y), unit * (y + nu * x)];
        let [mx, my] = by_hooke(plate.centre_stretch);
        let [bx, by] = by_hooke(plate.centre_bend).map(|stress| 0.5 * sign * stress);
        let [[edge_x, _], [_, edge_y]] = plate.edge_stretch.map(by_hooke);
        let [edge_bend_x, edge_bend_y] =
            if clamped { plate.edge_bend.map(|bend| 0.5 * sign * unit * bend) } else { [0.0; 2] };
        let worst = [(mx, bx), (my, by), (edge_x, edge_bend_x), (edge_y, edge_bend_y)]
            .iter()
            .fold(0.0, |worst: f64, (membrane, bending)| worst.max(membrane.abs() + bending.abs()));
        Ok(RectangularPlateLargeDeflectionOutcome {
            linear_deflection: si(-sign * t * load * linear.centre_deflection),
            centre_deflection: si(-sign * t * plate.deflection),
            deflection_ratio: plate.deflection.abs(),
            centre_membrane_stress_along_length: si(mx),
            centre_membrane_stress_along_width: si(my),
            centre_bending_stress_along_length: si(bx),
            centre_bending_stress_along_width: si(by),
            length_edge_membrane_stress: si(edge_y),
            length_edge_bending_stress: si(edge_bend_y),
            width_edge_membrane_stress: si(edge_x),
            width_edge_bending_stress: si(edge_bend_x),
            largest_stress: si(worst),
        })
    }
}
