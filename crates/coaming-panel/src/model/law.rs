//! Force against compression: any law that never falls, with its tangent and its energy.

use crate::error::{PanelError, checked, finite, not_negative, positive};

/// Force per length of a gasket against its compression. Zero and below: no force.
#[derive(Debug, Clone, PartialEq)]
pub enum Law {
    /// Proportional: force per length per compression, N/m2.
    Linear {
        /// Slope of the law.
        stiffness: f64,
    },
    /// Measured points (compression m, force per length N/m), joined by a monotone cubic and, past the last, by its tangent.
    Points(Vec<(f64, f64)>),
}

/// A law ready for use: value, tangent and energy at any compression.
#[derive(Debug, Clone)]
pub(crate) struct MonotoneLaw {
    knots: Vec<Knot>,
}

#[derive(Debug, Clone, Copy)]
struct Knot {
    compression: f64,
    force: f64,
    slope: f64,
    energy: f64,
}

/// Force, tangent and energy at one compression, per length.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct LawValue {
    pub force: f64,
    pub tangent: f64,
    pub energy: f64,
    /// Whether the compression lies past the last measured point.
    pub beyond: bool,
}

impl Law {
    /// Checks that the law starts at zero or above, grows in compression and never falls in force.
    pub(crate) fn prepare(&self, part: &str) -> Result<MonotoneLaw, PanelError> {
        let points = match self {
            Self::Linear { stiffness } => {
                let k = positive(format!("{part}: stiffness"), *stiffness)?;
                let knot =
                    |compression: f64| Knot { compression, force: k * compression, slope: k, energy: 0.0 };
                return Ok(MonotoneLaw { knots: vec![knot(0.0)] });
            }
            Self::Points(points) => points,
        };
        if points.len() < 2 {
            return Err(PanelError::Missing {
                name: part.into(),
                reason: "a law needs two points or more".into(),
            });
        }
        for (i, &(c, p)) in points.iter().enumerate() {
            not_negative(format!("{part}: compression of point {i}"), c)?;
            finite(format!("{part}: force of point {i}"), p)?;
        }
        let (c0, p0) = points[0];
        checked(format!("{part}: first compression"), c0, "0", |v| v == 0.0)?;
        checked(format!("{part}: force at no compression"), p0, "0", |v| v == 0.0)?;
        for pair in points.windows(2) {
            let ((c, p), (d, q)) = (pair[0], pair[1]);
            checked(format!("{part}: compression"), d, "greater than the one before", |v| v > c)?;
            if q < p {
                return Err(PanelError::LawFalls { part: part.into(), compression: d });
            }
        }
        Ok(MonotoneLaw { knots: knots(points) })
    }
}

/// Knots with slopes that keep every piece monotone.
///
/// Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304: weighted harmonic mean; at the ends the slope of the
/// end piece, limited as usual. From memory.
fn knots(points: &[(f64, f64)]) -> Vec<Knot> {
    let n = points.len();
    let step = |i: usize| points[i + 1].0 - points[i].0;
    let rise = |i: usize| (points[i + 1].1 - points[i].1) / step(i);
    let mut knots: Vec<Knot> = Vec::with_capacity(n);
    for (i, &(compression, force)) in points.iter().enumerate() {
        let slope = if i == 0 {
            rise(0)
        } else if i == n - 1 {
            rise(n - 2)
        } else {
            let (before, after) = (rise(i - 1), rise(i));
            if before * after <= 0.0 {
                0.0
            } else {
                let (h, g) = (step(i - 1), step(i));
                let (u, v) = (2.0 * g + h, g + 2.0 * h);
                (u + v) / (u / before + v / after)
            }
        };
        let energy = match knots.last() {
            None => 0.0,
            Some(last) => {
                let h = compression - last.compression;
                last.energy + 0.5 * h * (last.force + force) + h * h / 12.0 * (last.slope - slope)
            }
        };
        knots.push(Knot { compression, force, slope, energy });
    }
    knots
}

impl MonotoneLaw {
    /// Force, tangent and energy at a compression.
    pub(crate) fn at(&self, compression: f64) -> LawValue {
        if compression <= 0.0 {
            return LawValue::default();
        }
        let after = self.knots.partition_point(|k| k.compression < compression);
        let Some(a) = after.checked_sub(1).and_then(|i| self.knots.get(i)) else {
            return LawValue::default();
        };
        let x = compression - a.compression;
        let Some(b) = self.knots.get(after) else {
            return LawValue {
                force: a.force + a.slope * x,
                tangent: a.slope,
                energy: a.energy + a.force * x + 0.5 * a.slope * x * x,
                beyond: self.knots.len() > 1,
            };
        };
        // Cubic on the piece: force = p + m x + q x^2 + r x^3.
        let h = b.compression - a.compression;
        let rise = (b.force - a.force) / h;
        let q = (3.0 * rise - 2.0 * a.slope - b.slope) / h;
        let r = (a.slope + b.slope - 2.0 * rise) / (h * h);
        LawValue {
            force: a.force + x * (a.slope + x * (q + x * r)),
            tangent: (a.slope + x * (2.0 * q + 3.0 * r * x)).max(0.0),
            energy: a.energy + x * (a.force + x * (0.5 * a.slope + x * (q / 3.0 + 0.25 * r * x))),
            beyond: false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A law through points of a straight line is that line; its energy is half of force times compression.
    #[test]
    fn straight_points() {
        let law = Law::Points(vec![(0.0, 0.0), (1.0, 2.0), (3.0, 6.0)]).prepare("law");
        let at = law.map(|l| l.at(2.5)).unwrap_or_default();
        assert!(
            (at.force - 5.0).abs() < 1e-14
                && (at.tangent - 2.0).abs() < 1e-14
                && (at.energy - 6.25).abs() < 1e-14
        );
    }

    proptest! {
        /// For any rising points: force never falls, tangent is its derivative, energy its integral.
        #[test]
        fn monotone_and_consistent(rises in prop::collection::vec(0.0_f64..3.0, 2..7), c in 0.01_f64..8.0) {
            let mut points = vec![(0.0, 0.0)];
            for (i, r) in rises.iter().enumerate() {
                let last = points[i].1;
                points.push((i as f64 + 1.0, last + r));
            }
            let law = Law::Points(points).prepare("law").map_err(|e| TestCaseError::fail(e.to_string()))?;
            let h = 1e-5;
            let (low, mid, high) = (law.at(c - h), law.at(c), law.at(c + h));
            prop_assert!(high.force >= low.force - 1e-12);
            prop_assert!(((high.energy - low.energy) / (2.0 * h) - mid.force).abs() < 1e-6 * (1.0 + mid.force));
            prop_assert!(((high.force - low.force) / (2.0 * h) - mid.tangent).abs() < 1e-3 * (1.0 + mid.tangent));
        }
    }
}
