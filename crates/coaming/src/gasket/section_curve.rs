use super::monotone_curve::MonotoneCurve;
use crate::prelude::*;

/// Line force, stiffness and energy of a hollow or shaped gasket section from a maker's measured points.
///
/// # Formula
/// The monotone piecewise cubic of `sponge_curve`, here through points of closing δ and line force q:
/// ```text
/// k = dq/dδ                    line stiffness
/// U = ∫ q dδ, from 0 to δ      energy of closing, for each length
/// ```
///
/// # Validity
/// Between the first and the last point; beyond the last there is no measurement, and the calculation
/// refuses. The first point is the free section. A hollow section that snaps (line force falls while closing)
/// is refused: no single closed height belongs to its force. It holds for the mounting, temperature and speed
/// of the measurement.
///
/// # Source
/// F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246; C. Moler, Numerical Computing
/// with MATLAB, 2004, section 3.6 (slopes).
///
/// # Example
/// Two points, 0 and 4 mm with 0 and 0.8 N/mm, are joined by a straight line: 0.4 N/mm at 2 mm (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::{SectionCurve, SectionPoint};
///
/// let point = |closing, n_per_mm| SectionPoint { closing: mm(closing), line_force: newton_per_mm(n_per_mm) };
/// let (outcome, _) =
///     SectionCurve { points: vec![point(0.0, 0.0), point(4.0, 0.8)], closing: mm(2.0) }.calculate()?;
/// assert!((outcome.line_force.value - 400.0).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SectionCurve {
    /// Measured points, closing rising; the first is the free section.
    pub points: Vec<SectionPoint>,
    /// Closing from the free height, δ.
    #[possible(0.0..)]
    pub closing: Length,
}

/// One measured point of a section.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SectionPoint {
    /// Closing from the free height.
    #[possible(0.0..)]
    pub closing: Length,
    /// Line force at that closing.
    #[possible(0.0..)]
    pub line_force: ForcePerLength,
}

/// Line force, stiffness and energy at one closing.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SectionCurveOutcome {
    /// Line force, q.
    pub line_force: ForcePerLength,
    /// Line stiffness, k: change of line force with closing (N/m for each m).
    #[shown_in("N/mm^2")]
    pub line_stiffness: Pressure,
    /// Energy of closing for each length of gasket, U (J/m).
    #[shown_in("J/m")]
    pub energy_per_length: Force,
}

impl Calculation for SectionCurve {
    const NAME: &'static str = "section_curve";
    const SOURCE: &'static [Source] = &[Source {
        title: "Fritsch and Carlson, SIAM J. Numer. Anal. 17",
        edition: "1980",
        locator: "pp. 238-246, monotone piecewise cubic",
        standing: Standing::Memory,
    }];
    type Outcome = SectionCurveOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let points: Vec<(f64, f64)> =
            self.points.iter().map(|p| (p.closing.value, p.line_force.value)).collect();
        let curve = MonotoneCurve::from_origin(&points)?;
        let Some(reading) = curve.at(self.closing.value) else {
            return Err(self.impossible("closing", "no more than that of the last measured point"));
        };
        Ok(SectionCurveOutcome {
            line_force: si(reading.value),
            line_stiffness: si(reading.slope),
            energy_per_length: si(reading.integral),
        })
    }
}
