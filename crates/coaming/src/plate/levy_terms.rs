//! What changes from term to term of a Lévy series, by recurrence: no transcendental function per term.

use super::levy_patch::{Ends, Patch};
use crate::math;

/// t and e^(−t) for t = θ, 2θ, 3θ, ...
pub(crate) struct Decay {
    step: f64,
    ratio: f64,
    t: f64,
    e: f64,
}

impl Decay {
    pub(crate) fn new(step: f64) -> Self {
        Self { step, ratio: math::exp(-step), t: 0.0, e: 1.0 }
    }

    pub(crate) fn next(&mut self) -> (f64, f64) {
        self.t += self.step;
        self.e *= self.ratio;
        (self.t, self.e)
    }
}

/// sin and cos of θ, 2θ, 3θ, ...
pub(crate) struct Turn {
    ds: f64,
    dc: f64,
    s: f64,
    c: f64,
}

impl Turn {
    pub(crate) fn new(step: f64) -> Self {
        Self { ds: math::sin(step), dc: math::cos(step), s: 0.0, c: 1.0 }
    }

    pub(crate) fn next(&mut self) -> (f64, f64) {
        let s = self.s * self.dc + self.c * self.ds;
        self.c = self.c * self.dc - self.s * self.ds;
        self.s = s;
        (self.s, self.c)
    }
}

/// The four constants (A, B, C, E) of the two ends, term by term: the part (A + B s) e^(−s) + (C + E r) e^(−r)
/// with s = k y and r = k (b − y) that brings the unsupported solution to rest there.
pub(crate) struct Supports {
    ends: Ends,
    near1: Decay,
    near2: Decay,
    far1: Decay,
    far2: Decay,
    across: Decay,
}

impl Supports {
    pub(crate) fn new(p: &Patch, k1: f64) -> Self {
        Self {
            ends: p.ends,
            near1: Decay::new(k1 * p.y1),
            near2: Decay::new(k1 * p.y2),
            far1: Decay::new(k1 * (p.b - p.y2)),
            far2: Decay::new(k1 * (p.b - p.y1)),
            across: Decay::new(k1 * p.b),
        }
    }

    pub(crate) fn next(&mut self) -> (f64, f64, f64, f64) {
        let (n1, en1) = self.near1.next();
        let (n2, en2) = self.near2.next();
        let (f1, ef1) = self.far1.next();
        let (f2, ef2) = self.far2.next();
        let (kb, e) = self.across.next();
        // Value, and slope by k y, of the unsupported solution at the two ends.
        let w0 = 0.5 * ((1.0 + 0.5 * n1) * en1 - (1.0 + 0.5 * n2) * en2);
        let wb = 0.5 * ((1.0 + 0.5 * f1) * ef1 - (1.0 + 0.5 * f2) * ef2);
        let whole = (1.0 - e) * (1.0 + e);
        match self.ends {
            Ends::Supported => {
                // Moments W'' - W of the unsupported solution.
                let m0 = -0.5 * (en1 - en2);
                let mb = -0.5 * (ef1 - ef2);
                let b = 0.5 * (m0 - e * mb) / whole;
                let d = 0.5 * (mb - e * m0) / whole;
                let p0 = w0 + d * kb * e;
                let pb = wb + b * kb * e;
                ((e * pb - p0) / whole, b, (e * p0 - pb) / whole, d)
            }
            Ends::Clamped => {
                // Slopes towards the middle; symmetric and antisymmetric halves.
                let s0 = 0.25 * ((1.0 + n1) * en1 - (1.0 + n2) * en2);
                let sb = 0.25 * ((1.0 + f1) * ef1 - (1.0 + f2) * ef2);
                let half = |sign: f64| {
                    let value = 0.5 * (w0 + sign * wb);
                    let slope = 0.5 * (s0 + sign * sb);
                    let g = sign * e;
                    // a (1 + g) + b kb g = -value,  a (g - 1) + b (1 - g + kb g) = -slope
                    let determinant = whole + 2.0 * kb * g;
                    let c = 1.0 - g + kb * g;
                    (
                        (slope * kb * g - value * c) / determinant,
                        (value * (g - 1.0) - slope * (1.0 + g)) / determinant,
                    )
                };
                let (a1, b1) = half(1.0);
                let (a2, b2) = half(-1.0);
                (a1 + a2, b1 + b2, a1 - a2, b1 - b2)
            }
        }
    }
}
