//! Series kernel: simply supported rectangle under a rectangular patch of pressure.
//!
//! Plain numbers: unit flexural rigidity, unit pressure on the patch, deflection in the direction of
//! the pressure. The Lévy series runs along x; `at` picks the faster of the two directions.
//!
//! For each term sin(k x), k = m π/a, the deflection across is W(y) = (p/k⁴) · (strip + edges of the
//! patch + supports). The strip part sums to a simply supported beam in closed form. The edges of the
//! patch give g(t) = ½ (1 + t/2) e^(−t), t = k times the distance, so that the terms fall
//! exponentially away from them. The supports give (A + B k y) e^(−k y) and its mirror image. No
//! growing exponential is formed.

use super::field::Field;
use super::levy_terms::{Decay, Supports, Turn};
use core::f64::consts::PI;

/// Terms are dropped once their exponential is below e^(−FAR).
const FAR: f64 = 34.0;
/// Most terms summed, reached only for points on the border of the patch.
const MOST_TERMS: f64 = 3000.0;

/// How the edges y = 0 and y = b are held; x = 0 and x = a are always supported.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Ends {
    Supported,
    Clamped,
}

/// A rectangle 0..a by 0..b and the borders of the loaded patch.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Patch {
    pub a: f64,
    pub b: f64,
    pub x1: f64,
    pub x2: f64,
    pub y1: f64,
    pub y2: f64,
    pub ends: Ends,
}

impl Patch {
    /// The whole rectangle loaded.
    pub(crate) fn whole(a: f64, b: f64) -> Self {
        Self { a, b, x1: 0.0, x2: a, y1: 0.0, y2: b, ends: Ends::Supported }
    }

    /// True where the whole plate is loaded.
    pub(crate) fn is_whole(&self) -> bool {
        self.x1 == 0.0 && self.y1 == 0.0 && self.x2 == self.a && self.y2 == self.b
    }

    /// The same plate with x and y exchanged, the ends now on the other pair of edges.
    pub(crate) fn turned(self) -> Self {
        Self { a: self.b, b: self.a, x1: self.y1, x2: self.y2, y1: self.x1, y2: self.x2, ends: self.ends }
    }

    /// Distance across the series from the nearer border of the patch, over the side.
    fn reach(&self, y: f64) -> f64 {
        (y - self.y1).abs().min((y - self.y2).abs()) / self.a
    }

    /// Deflection and derivatives at (x, y), by the faster of the two series.
    pub(crate) fn at(&self, x: f64, y: f64) -> Field {
        let turned = self.turned();
        if self.ends == Ends::Clamped || self.reach(y) >= turned.reach(x) {
            self.along_x(x, y)
        } else {
            turned.along_x(y, x).turned()
        }
    }

    /// Deflection and derivatives at (x, y) by the series along x.
    pub(crate) fn along_x(&self, x: f64, y: f64) -> Field {
        let mut f = Field::default();
        if y >= self.y1 && y <= self.y2 {
            self.add_strip(x, &mut f);
        }
        let terms = (FAR / (PI * self.reach(y))).min(MOST_TERMS);
        let k1 = PI / self.a;
        // Signs of the contributions of the two borders and of their slopes.
        let (s1, t1) = if y >= self.y1 { (-1.0, 1.0) } else { (1.0, -1.0) };
        let (s2, t2) = if y <= self.y2 { (-1.0, -1.0) } else { (1.0, 1.0) };
        let mut border1 = Decay::new(k1 * (y - self.y1).abs());
        let mut border2 = Decay::new(k1 * (y - self.y2).abs());
        let mut near = Decay::new(k1 * y);
        let mut far = Decay::new(k1 * (self.b - y));
        let mut supports = Supports::new(self, k1);
        let mut place = Turn::new(k1 * x);
        let mut load1 = Turn::new(k1 * self.x1);
        let mut load2 = Turn::new(k1 * self.x2);
        let mut m = 0.0;
        while m < terms {
            m += 1.0;
            let k = m * k1;
            let (sine, cosine) = place.next();
            let (_, c1) = load1.next();
            let (_, c2) = load2.next();
            let (d1, e1) = border1.next();
            let (d2, e2) = border2.next();
            let (s, es) = near.next();
            let (r, er) = far.next();
            let (a, b, c, e) = supports.next();
            let load = 2.0 * (c1 - c2) / (self.a * k * k * k * k * k);
            // Deflection across the series and its derivatives by k y.
            let (f1, f2) = (s1 * e1, s2 * e2);
            let w =
                0.5 * (f1 * (1.0 + 0.5 * d1) + f2 * (1.0 + 0.5 * d2)) + (a + b * s) * es + (c + e * r) * er;
            let w1 = -0.25 * (t1 * f1 * (1.0 + d1) + t2 * f2 * (1.0 + d2)) + (b - a - b * s) * es
                - (e - c - e * r) * er;
            let w2 = 0.25 * (f1 * d1 + f2 * d2) + (a - 2.0 * b + b * s) * es + (c - 2.0 * e + e * r) * er;
            let w3 = 0.25 * (t1 * f1 * (1.0 - d1) + t2 * f2 * (1.0 - d2)) + (3.0 * b - a - b * s) * es
                - (3.0 * e - c - e * r) * er;
            let (l1, l2) = (load * k, load * k * k);
            let l3 = l2 * k;
            f.w += load * w * sine;
            f.wx += l1 * w * cosine;
            f.wy += l1 * w1 * sine;
            f.wxx -= l2 * w * sine;
            f.wxy += l2 * w1 * cosine;
            f.wyy += l2 * w2 * sine;
            f.wxxx -= l3 * w * cosine;
            f.wxxy -= l3 * w1 * sine;
            f.wxyy += l3 * w2 * cosine;
            f.wyyy += l3 * w3 * sine;
        }
        f
    }

    /// Simply supported beam of span a loaded from x1 to x2: the sum of the strip parts.
    fn add_strip(&self, x: f64, f: &mut Field) {
        let Self { a, x1, x2, .. } = *self;
        let reaction = (x2 - x1) * (a - 0.5 * (x1 + x2)) / a;
        let (u1, u2) = ((x - x1).max(0.0), (x - x2).max(0.0));
        let (v1, v2) = (a - x1, a - x2);
        let slope = (reaction * a * a * a / 6.0 - (v1 * v1 * v1 * v1 - v2 * v2 * v2 * v2) / 24.0) / a;
        f.w += slope * x - reaction * x * x * x / 6.0 + (u1 * u1 * u1 * u1 - u2 * u2 * u2 * u2) / 24.0;
        f.wx += slope - 0.5 * reaction * x * x + (u1 * u1 * u1 - u2 * u2 * u2) / 6.0;
        f.wxx += 0.5 * (u1 * u1 - u2 * u2) - reaction * x;
        f.wxxx += u1 - u2 - reaction;
    }
}
