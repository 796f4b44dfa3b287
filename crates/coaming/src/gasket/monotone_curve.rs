//! Monotone piecewise cubic through measured points.
//!
//! Slopes inside by the weighted harmonic mean of Fritsch and Butland (1984); at the two ends by the
//! three-point formula kept to the shape of the data (Moler, Numerical Computing with MATLAB, 2004, section
//! 3.6). F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246, prove that such slopes keep
//! the curve monotone.

use crate::error::Error;

/// One piece between two neighbouring points.
#[derive(Debug, Clone, Copy)]
struct Piece {
    start: f64,
    width: f64,
    low: f64,
    high: f64,
    slope_low: f64,
    slope_high: f64,
}

/// A monotone curve; needs two points or more with rising abscissa and values that never fall.
#[derive(Debug, Clone)]
pub(crate) struct MonotoneCurve {
    pieces: Vec<Piece>,
}

/// What the curve gives at one place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Reading {
    /// Value there.
    pub value: f64,
    /// Slope there.
    pub slope: f64,
    /// Integral from the first point to there.
    pub integral: f64,
}

impl MonotoneCurve {
    /// The curve of a gasket through its measured points (closing, force), or why they are none.
    pub(crate) fn from_origin(points: &[(f64, f64)]) -> Result<Self, Error> {
        if points.len() < 2 {
            return Err(Error::inconsistent("points", "two points or more are needed"));
        }
        if points.first() != Some(&(0.0, 0.0)) {
            return Err(Error::inconsistent(
                "points",
                "the first is the free gasket: nothing closed, no force",
            ));
        }
        for pair in points.windows(2) {
            let [(x0, y0), (x1, y1)] = pair else { continue };
            if x1 <= x0 {
                return Err(Error::inconsistent("points", "the closing must rise from point to point"));
            }
            if y1 < y0 {
                return Err(Error::inconsistent("points", "the force must not fall from point to point"));
            }
        }
        Ok(Self::through(points))
    }

    /// A curve through `points`, whose abscissae rise and whose values never fall.
    fn through(points: &[(f64, f64)]) -> Self {
        let chords: Vec<(f64, f64)> = points
            .windows(2)
            .filter_map(|pair| match pair {
                [(x0, y0), (x1, y1)] => Some((x1 - x0, (y1 - y0) / (x1 - x0))),
                _ => None,
            })
            .collect();
        let slopes = slopes(&chords);
        let pieces = points
            .windows(2)
            .zip(slopes.windows(2))
            .filter_map(|(pair, slope)| match (pair, slope) {
                (&[(x0, y0), (x1, y1)], &[d0, d1]) => Some(Piece {
                    start: x0,
                    width: x1 - x0,
                    low: y0,
                    high: y1,
                    slope_low: d0,
                    slope_high: d1,
                }),
                _ => None,
            })
            .collect();
        Self { pieces }
    }

    /// Value, slope and integral at `x`; none outside the points.
    pub(crate) fn at(&self, x: f64) -> Option<Reading> {
        let mut integral = 0.0;
        for piece in &self.pieces {
            let t = (x - piece.start) / piece.width;
            if t < 0.0 {
                return None;
            }
            if x <= piece.start + piece.width {
                let mut reading = piece.at(t.min(1.0));
                reading.integral += integral;
                return Some(reading);
            }
            integral += piece.at(1.0).integral;
        }
        None
    }
}

impl Piece {
    /// Cubic Hermite polynomial at the fraction `t` of the piece.
    fn at(&self, t: f64) -> Reading {
        let h = self.width;
        let rise = self.high - self.low;
        let (a, b) = (h * self.slope_low, h * self.slope_high);
        let c2 = 3.0 * rise - 2.0 * a - b;
        let c3 = a + b - 2.0 * rise;
        Reading {
            value: self.low + t * (a + t * (c2 + t * c3)),
            slope: (a + t * (2.0 * c2 + t * 3.0 * c3)) / h,
            integral: h * t * (self.low + t * (0.5 * a + t * (c2 / 3.0 + t * 0.25 * c3))),
        }
    }
}

/// Slope at each point from the chords (width, slope) between them.
fn slopes(chords: &[(f64, f64)]) -> Vec<f64> {
    let mut all = Vec::with_capacity(chords.len() + 1);
    match chords {
        [] => {}
        [(_, only)] => all.extend([*only, *only]),
        [first, second, ..] => {
            all.push(end_slope(*first, *second));
            all.extend(chords.windows(2).map(|pair| match pair {
                [left, right] => inner_slope(*left, *right),
                _ => 0.0,
            }));
            if let [.., before, last] = chords {
                all.push(end_slope(*last, *before));
            }
        }
    }
    all
}

fn inner_slope((h0, d0): (f64, f64), (h1, d1): (f64, f64)) -> f64 {
    if d0 * d1 <= 0.0 {
        return 0.0;
    }
    let (w0, w1) = (2.0 * h1 + h0, h1 + 2.0 * h0);
    (w0 + w1) / (w0 / d0 + w1 / d1)
}

/// Three-point slope at an end, or zero if it turns against the first chord. (Where the data turn, three
/// times the first chord would bound it; data that never fall cannot reach that bound.)
fn end_slope((h0, d0): (f64, f64), (h1, d1): (f64, f64)) -> f64 {
    let slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if slope * d0 <= 0.0 { 0.0 } else { slope }
}
