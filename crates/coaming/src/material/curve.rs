//! Points of a property over temperature, time or humidity, and what lies between them.

use super::figure::Figure;
use crate::math;
use crate::prelude::*;

/// One point of a curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Point<X, Y> {
    /// Temperature, time or humidity.
    pub at: X,
    /// The property there.
    pub figure: Figure<Y>,
}

/// Points in rising order. Between two of them the value is interpolated: straight over temperature and
/// humidity, straight over the logarithm of time.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve<X, Y> {
    points: Vec<Point<X, Y>>,
    over_log: bool,
}

impl<X: Value + Copy, Y: Value + Copy> Curve<X, Y> {
    /// A curve that is straight between its points. The points must be finite and in strictly rising order.
    pub fn straight(points: Vec<Point<X, Y>>) -> Result<Self, Error> {
        Self { points, over_log: false }.checked()
    }

    /// A curve that is straight over the logarithm of what it runs over, such as time; all of it above zero.
    pub fn over_logarithm(points: Vec<Point<X, Y>>) -> Result<Self, Error> {
        Self { points, over_log: true }.checked()
    }

    /// The tables' own points, which the tests put through [`Curve::straight`].
    pub(super) fn of_table(points: Vec<Point<X, Y>>, over_log: bool) -> Self {
        Self { points, over_log }
    }

    /// The curve itself where its points can be.
    pub(super) fn checked(self) -> Result<Self, Error> {
        let refused = |reason: &str| Err(Error::inconsistent("points", reason));
        if self.points.is_empty() {
            return refused("a curve needs at least one point");
        }
        let places: Vec<f64> = self.points.iter().map(|point| place(point.at)).collect();
        let values = self.points.iter().map(|point| place(point.figure.value));
        if places.iter().copied().chain(values).any(|number| !number.is_finite()) {
            return refused("every point of a curve must be finite");
        }
        if self.over_log && places.iter().any(|&x| x <= 0.0) {
            return refused("a curve over a logarithm accepts only points above zero");
        }
        if places.windows(2).any(|pair| matches!(pair, [a, b] if a >= b)) {
            return refused("the points of a curve must be in strictly rising order");
        }
        Ok(self)
    }

    /// The points, in rising order.
    pub fn points(&self) -> &[Point<X, Y>] {
        &self.points
    }

    /// The value at `at`, on the weaker basis of the two points beside it. `None` beyond the first and the last
    /// point: nothing is extrapolated.
    pub fn at(&self, at: X) -> Option<Figure<Y>> {
        let x = place(at);
        let last = self.points.last()?;
        if x == place(last.at) {
            return Some(last.figure.clone());
        }
        let (low, high) = self
            .points
            .iter()
            .zip(self.points.iter().skip(1))
            .find(|(low, high)| place(low.at) <= x && x < place(high.at))?;
        if x == place(low.at) {
            return Some(low.figure.clone());
        }
        let scale = |number: f64| if self.over_log { math::ln(number) } else { number };
        let (x0, x1) = (scale(place(low.at)), scale(place(high.at)));
        let share = (scale(x) - x0) / (x1 - x0);
        let (y0, y1) = (place(low.figure.value), place(high.figure.value));
        let weaker = if low.figure.is_weaker_than(&high.figure) { &low.figure } else { &high.figure };
        Y::from_si(y0 + share * (y1 - y0)).map(|value| weaker.with_value(value))
    }
}

/// The SI number of a quantity or plain number; what is neither has none.
fn place(value: impl Value) -> f64 {
    value.si().unwrap_or(f64::NAN)
}
