//! What is checked about outlines before anything is meshed; each fault names its place.

use super::curve::Curve;
use super::outline::Outline;
use super::point::Point;
use super::polygon;
use crate::error::PanelError;
use std::f64::consts::PI;

/// Most segments accepted in one outline.
const MOST_SEGMENTS: f64 = 4000.0;
/// Smallest width accepted, relative to the size of the outline.
const LEAST_WIDTH: f64 = 1e-4;
/// Sharpest corner accepted.
const SHARPEST_CORNER: f64 = 3.0 * PI / 180.0;

/// The box around some points.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bounds {
    low: Point,
    high: Point,
}

impl Bounds {
    /// The box around some points.
    pub(crate) fn of(points: &[Point]) -> Self {
        let (mut low, mut high) =
            (points.first().copied().unwrap_or_default(), points.first().copied().unwrap_or_default());
        for p in points {
            low = Point::new(low.x.min(p.x), low.y.min(p.y));
            high = Point::new(high.x.max(p.x), high.y.max(p.y));
        }
        Self { low, high }
    }

    /// Whether two boxes are further apart than `margin`.
    pub(crate) fn apart(&self, other: &Self, margin: f64) -> bool {
        apart(self.low, self.high, other.low, other.high, margin)
    }

    /// Whether a point lies in the box.
    pub(crate) fn contains(&self, p: Point) -> bool {
        self.low.x <= p.x && p.x <= self.high.x && self.low.y <= p.y && p.y <= self.high.y
    }
}

/// A checked closed boundary that runs to the left around its inside.
#[derive(Debug, Clone)]
pub(crate) struct Loop {
    /// What the boundary is, for messages.
    pub name: String,
    /// Its curves in order.
    pub curves: Vec<Curve>,
    /// A close polygon through it.
    pub polygon: Vec<Point>,
    /// Whether the caller drew it the other way round; edges are still numbered as the caller drew them.
    pub least: f64,
}

impl Loop {
    /// Checks an outline by itself.
    pub(crate) fn new(name: &str, outline: &Outline) -> Result<Self, PanelError> {
        let sides = outline.0.segments.len() as f64;
        crate::error::checked(format!("{name}: number of segments"), sides, "4000 or fewer", |n| {
            n <= MOST_SEGMENTS
        })?;
        let curves = outline.curves(name)?;
        let polygon: Vec<Point> = curves
            .iter()
            .flat_map(|c| {
                c.divide(f64::INFINITY, PI / 18.0).into_iter().filter(|&f| f < 1.0).map(|f| c.point(f))
            })
            .collect();
        let size = extent(&polygon);
        let checked = Self { name: name.into(), curves, polygon, least: LEAST_WIDTH * size };
        checked.check_corners()?;
        checked.check_itself()?;
        let perimeter: f64 = checked.curves.iter().map(Curve::length).sum();
        if polygon::area(&checked.polygon).abs() < checked.least * perimeter {
            return Err(PanelError::Sliver {
                part: name.into(),
                at: checked.polygon[0],
                reason: "the width is below 1/10000 of the length",
            });
        }
        Ok(checked)
    }

    fn check_corners(&self) -> Result<(), PanelError> {
        for (i, curve) in self.curves.iter().enumerate() {
            let next = &self.curves[(i + 1) % self.curves.len()];
            let (arriving, leaving) = (curve.tangent(1.0), next.tangent(0.0));
            let turn = crate::math::atan2(arriving.cross(leaving), arriving.dot(leaving)).abs();
            if PI - turn < SHARPEST_CORNER {
                return Err(PanelError::Sliver {
                    part: self.name.clone(),
                    at: next.from(),
                    reason: "the corner is sharper than 3 degrees",
                });
            }
        }
        Ok(())
    }

    fn check_itself(&self) -> Result<(), PanelError> {
        let p = &self.polygon;
        let n = p.len();
        let mut along = Vec::with_capacity(n + 1);
        along.push(0.0);
        for i in 0..n {
            along.push(along[i] + p[i].distance(p[(i + 1) % n]));
        }
        let whole = along[n];
        for i in 0..n {
            let (a, b) = (p[i], p[(i + 1) % n]);
            for j in (i + 2)..n {
                if i == 0 && j == n - 1 {
                    continue;
                }
                let (c, d) = (p[j], p[(j + 1) % n]);
                if apart(a, b, c, d, self.least) {
                    continue;
                }
                if let Some((t, _)) = polygon::crossing(a, b, c, d) {
                    return Err(PanelError::Crossing {
                        part: self.name.clone(),
                        other: "itself".into(),
                        at: a.toward(b, t),
                    });
                }
                let (gap, at) = separation(a, b, c, d);
                let between = (along[j] - along[i + 1]).min(whole - along[j + 1] + along[i]);
                if gap < self.least && between > 20.0 * self.least {
                    return Err(PanelError::Touching {
                        part: self.name.clone(),
                        other: "itself".into(),
                        at,
                        least: self.least,
                    });
                }
            }
        }
        Ok(())
    }

    /// Whether a point lies inside.
    pub(crate) fn contains(&self, p: Point) -> bool {
        polygon::contains(&self.polygon, p)
    }

    /// Checks that two boundaries neither cross nor touch.
    pub(crate) fn check_apart(&self, other: &Self) -> Result<(), PanelError> {
        let least = self.least.max(other.least);
        if Bounds::of(&self.polygon).apart(&Bounds::of(&other.polygon), least) {
            return Ok(());
        }
        for (i, &a) in self.polygon.iter().enumerate() {
            let b = self.polygon[(i + 1) % self.polygon.len()];
            for (j, &c) in other.polygon.iter().enumerate() {
                let d = other.polygon[(j + 1) % other.polygon.len()];
                if apart(a, b, c, d, least) {
                    continue;
                }
                if let Some((t, _)) = polygon::crossing(a, b, c, d) {
                    return Err(PanelError::Crossing {
                        part: other.name.clone(),
                        other: self.name.clone(),
                        at: a.toward(b, t),
                    });
                }
                let (gap, at) = separation(a, b, c, d);
                if gap < least {
                    return Err(PanelError::Touching {
                        part: other.name.clone(),
                        other: self.name.clone(),
                        at,
                        least,
                    });
                }
            }
        }
        Ok(())
    }

    /// Checks that a hole lies inside this outline and touches nothing.
    pub(crate) fn check_hole(&self, hole: &Self) -> Result<(), PanelError> {
        self.check_apart(hole)?;
        match hole.polygon.iter().find(|&&p| !self.contains(p)) {
            Some(&at) => Err(PanelError::Outside { part: hole.name.clone(), of: self.name.clone(), at }),
            None => Ok(()),
        }
    }

    /// Checks that two holes lie apart, neither in the other.
    pub(crate) fn check_separate(&self, other: &Self) -> Result<(), PanelError> {
        self.check_apart(other)?;
        if self.contains(other.polygon[0]) || other.contains(self.polygon[0]) {
            return Err(PanelError::Crossing {
                part: other.name.clone(),
                other: self.name.clone(),
                at: other.polygon[0],
            });
        }
        Ok(())
    }

    /// Checks that a layer's boundary lies on this panel; it may run along the panel's own boundary.
    pub(crate) fn check_within(&self, layer: &Self) -> Result<(), PanelError> {
        for (i, &a) in layer.polygon.iter().enumerate() {
            let b = layer.polygon[(i + 1) % layer.polygon.len()];
            for p in [a, a.toward(b, 0.5)] {
                // The polygons of two arcs differ by their sagitta: 0.4 % of the radius at 10 degrees.
                let allowed = self.least + 0.004 * a.distance(b);
                if !self.contains(p) && polygon::distance(&self.polygon, p) > allowed {
                    return Err(PanelError::Outside {
                        part: layer.name.clone(),
                        of: self.name.clone(),
                        at: p,
                    });
                }
            }
        }
        Ok(())
    }
}

/// Largest side of the box around some points.
pub(crate) fn extent(points: &[Point]) -> f64 {
    let fold = |pick: fn(&Point) -> f64| {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for p in points {
            low = low.min(pick(p));
            high = high.max(pick(p));
        }
        high - low
    };
    fold(|p| p.x).max(fold(|p| p.y))
}

/// Quick answer: the boxes around two segments are further apart than `margin`.
pub(crate) fn apart(a: Point, b: Point, c: Point, d: Point, margin: f64) -> bool {
    a.x.max(b.x) + margin < c.x.min(d.x)
        || c.x.max(d.x) + margin < a.x.min(b.x)
        || a.y.max(b.y) + margin < c.y.min(d.y)
        || c.y.max(d.y) + margin < a.y.min(b.y)
}

/// Smallest distance between two segments that do not cross, and where.
fn separation(a: Point, b: Point, c: Point, d: Point) -> (f64, Point) {
    let mut best = (f64::INFINITY, a);
    for (gap, at) in [
        (polygon::nearest(c, d, a).1, a),
        (polygon::nearest(c, d, b).1, b),
        (polygon::nearest(a, b, c).1, c),
        (polygon::nearest(a, b, d).1, d),
    ] {
        if gap < best.0 {
            best = (gap, at);
        }
    }
    best
}
