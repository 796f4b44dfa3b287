//! Rectangular plate held in its plane and heated: stress, and the rise at which it buckles.

use super::isotropic::{check_thin, flexural_rigidity};
use super::{EdgeSupport, clamped_frequency};
use crate::prelude::*;

/// Rectangular plate whose edges are held in its plane, heated evenly: restrained stress and critical temperature rise.
///
/// # Formula
/// Restrained: σ = −E α ΔT/(1 − ν), alike in both directions. Buckling under equal pressure N both ways: supported
/// N = π² D (1/a² + 1/b²); clamped N = k π² D/s² by Ritz with twice-integrated Legendre polynomials (k = 5.303 for the
/// square), s the shorter side. Critical rise ΔT = N (1 − ν)/(E α t).
///
/// # Validity
/// Thin, flat, isotropic, elastic; edges that cannot move in the plane at all: any clearance at the holes comes off the
/// rise first. Material properties constant over the rise. k to 1e-6 for sides of 1:1 to 1:10. A plate that is not flat
/// bows from the start. Caveat: t over 1/20 of the shorter side.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), art. 14; Timoshenko & Gere, Theory of
/// Elastic Stability, 2nd ed. (1961), art. 9.2 and 9.3 (from memory, unverified).
///
/// # Example
/// Polycarbonate held all round, 30 K warmer: 2400 MPa × 65e-6 1/K × 30 K/(1 − 0.37) = 7.429 MPa.
/// ```
/// use coaming::plate::{EdgeSupport, HeatedPlateBuckling};
/// use coaming::prelude::*;
///
/// let pane = HeatedPlateBuckling {
///     length: mm(260.0),
///     width: mm(180.0),
///     thickness: mm(3.0),
///     youngs_modulus: megapascal(2400.0),
///     poissons_ratio: 0.37,
///     expansion: per_kelvin(65e-6),
///     temperature_rise: delta_kelvin(30.0),
///     edge_support: EdgeSupport::Supported,
/// };
/// let (outcome, _) = pane.calculate()?;
/// assert!((outcome.restrained_stress - megapascal(-7.429)).abs() < megapascal(0.001));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct HeatedPlateBuckling {
    /// Length of the plate between its supports, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the plate between its supports, b.
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
    /// Coefficient of linear expansion, α: of the plate, or what it has more than its frame.
    #[possible(f64::MIN_POSITIVE..)]
    pub expansion: Expansion,
    /// Rise of temperature over that at which the plate is unstressed, ΔT.
    pub temperature_rise: TemperatureDifference,
    /// How the plate is held along its edge against deflection and turning.
    pub edge_support: EdgeSupport,
}

/// Outcome of [`HeatedPlateBuckling`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct HeatedPlateBucklingOutcome {
    /// Stress of the restrained, unbuckled plate; compression is negative.
    #[shown_in("MPa")]
    pub restrained_stress: Pressure,
    /// Buckling coefficient k = N s²/(π² D).
    pub buckling_coefficient: f64,
    /// Compressive stress at which the plate buckles, its size.
    #[shown_in("MPa")]
    pub critical_stress: Pressure,
    /// Rise of temperature at which the plate buckles.
    pub critical_temperature_rise: TemperatureDifference,
    /// Critical rise over the stated one, less one; absent where the plate is not heated.
    pub margin: Option<f64>,
}

impl Calculation for HeatedPlateBuckling {
    const NAME: &'static str = "heated_plate_buckling";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells",
            edition: "2nd ed., 1959",
            locator: "art. 14",
            standing: Standing::Computed,
        },
        Source {
            title: "Timoshenko & Gere, Theory of Elastic Stability",
            edition: "2nd ed., 1961",
            locator: "art. 9.2 and 9.3",
            standing: Standing::Memory,
        },
    ];
    type Outcome = HeatedPlateBucklingOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, t) = (self.length.value, self.width.value, self.thickness.value);
        let (e, nu, alpha) = (self.youngs_modulus.value, self.poissons_ratio, self.expansion.value);
        let (short, ratio) = (a.min(b), a.max(b) / a.min(b));
        let k = match self.edge_support {
            EdgeSupport::Supported => 1.0 + 1.0 / (ratio * ratio),
            EdgeSupport::Clamped => clamped_frequency::buckling_coefficient(ratio),
        };
        let stress = k * PI * PI * flexural_rigidity(e, t, nu) / (short * short * t);
        let rise = stress * (1.0 - nu) / (e * alpha);
        let given = self.temperature_rise.value;
        check_thin(t, short, caveats);
        Ok(HeatedPlateBucklingOutcome {
            restrained_stress: si(-e * alpha * given / (1.0 - nu)),
            buckling_coefficient: k,
            critical_stress: si(stress),
            critical_temperature_rise: si(rise),
            margin: (given > 0.0).then(|| rise / given - 1.0),
        })
    }
}
