use super::monotone_curve::MonotoneCurve;
use crate::prelude::*;

/// Pressure, line force, stiffness and energy of a sponge gasket from a maker's measured points.
///
/// # Formula
/// A monotone piecewise cubic p(c) passes through all points (compression c, pressure p). Its slope at an
/// inner point is the weighted harmonic mean of the two chord slopes δ with widths h, or 0 where one of them
/// is 0:
/// ```text
/// d = (w1 + w2) / (w1/δ1 + w2/δ2),  w1 = 2 h2 + h1,  w2 = h2 + 2 h1
/// ```
/// At an end d = ((2 h1 + h2) δ1 − h1 δ2) / (h1 + h2), or 0 where that has not the sign of δ1; two points are
/// joined by a straight line. Then
/// ```text
/// q = p w                      line force
/// k = w (dp/dc) / H            line stiffness
/// U = w H ∫ p dc, from 0 to c  energy of closing, for each length
/// ```
///
/// # Validity
/// Between the first and the last point; beyond the last there is no measurement, and the calculation
/// refuses. The first point is the free gasket: no compression, no pressure. Compression must rise and
/// pressure must not fall from point to point. The curve holds for the strip's own shape (a free sponge does
/// not bulge; a hollow section belongs to its own width), for the temperature and speed of the measurement,
/// and for the first loading: unloading and a gasket that has taken a set lie below it.
///
/// # Source
/// F. N. Fritsch and R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980)
/// 238-246; F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304 (inner slopes); C.
/// Moler, Numerical Computing with MATLAB, 2004, section 3.6 (end slopes).
///
/// # Example
/// Points at 0, 10, 25 and 50 % with 0, 8, 24 and 80 kPa: 31.937 kPa at 30 %, by an independent
/// monotone interpolator.
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::{SpongeCurve, SpongePoint};
///
/// let point = |compression, kpa| SpongePoint { compression, pressure: kilopascal(kpa) };
/// let (outcome, _) = SpongeCurve {
///     points: vec![point(0.0, 0.0), point(0.10, 8.0), point(0.25, 24.0), point(0.50, 80.0)],
///     compression: 0.30,
///     width: mm(12.0),
///     free_height: mm(10.0),
/// }
/// .calculate()?;
/// assert!((outcome.pressure.value - 31_937.0305).abs() < 1e-3);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SpongeCurve {
    /// Measured points, compression rising; the first is the free gasket.
    pub points: Vec<SpongePoint>,
    /// Compression, c: closed part of the free height.
    #[possible(0.0..=0.99)]
    pub compression: f64,
    /// Width of the strip, w.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Free height of the strip, H.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_height: Length,
}

/// One measured point of a sponge.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SpongePoint {
    /// Compression: closed part of the free height.
    #[possible(0.0..=0.99)]
    pub compression: f64,
    /// Pressure at that compression.
    #[possible(0.0..)]
    pub pressure: Pressure,
}

/// Pressure, line force, stiffness and energy at one compression.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SpongeCurveOutcome {
    /// Pressure, p.
    pub pressure: Pressure,
    /// Slope of the curve, dp/dc.
    pub tangent_modulus: Pressure,
    /// Line force, q.
    pub line_force: ForcePerLength,
    /// Line stiffness, k: change of line force with closing (N/m for each m).
    #[shown_in("N/mm^2")]
    pub line_stiffness: Pressure,
    /// Energy of closing for each length of strip, U (J/m).
    #[shown_in("J/m")]
    pub energy_per_length: Force,
}

impl Calculation for SpongeCurve {
    const NAME: &'static str = "sponge_curve";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Fritsch and Carlson, SIAM J. Numer. Anal. 17",
            edition: "1980",
            locator: "pp. 238-246, monotone piecewise cubic",
            standing: Standing::Memory,
        },
        Source {
            title: "Moler, Numerical Computing with MATLAB",
            edition: "2004",
            locator: "section 3.6, inner and end slopes",
            standing: Standing::Memory,
        },
    ];
    type Outcome = SpongeCurveOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let points: Vec<(f64, f64)> = self.points.iter().map(|p| (p.compression, p.pressure.value)).collect();
        let curve = MonotoneCurve::from_origin(&points)?;
        let Some(reading) = curve.at(self.compression) else {
            return Err(self.impossible("compression", "no more than that of the last measured point"));
        };
        let (w, h) = (self.width.value, self.free_height.value);
        Ok(SpongeCurveOutcome {
            pressure: si(reading.value),
            tangent_modulus: si(reading.slope),
            line_force: si(reading.value * w),
            line_stiffness: si(reading.slope * w / h),
            energy_per_length: si(reading.integral * w * h),
        })
    }
}
