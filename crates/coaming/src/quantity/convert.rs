//! Converting many numbers between a unit and SI, each exactly and rounded once.

use super::dimension::Dimension;
use super::exact::Exact;
use super::unit;
use crate::error::Error;

/// A unit of a dimension, ready to convert arrays. The numbers are taken as the binary values that they are, where
/// text is taken as the decimal that it shows: 0.07 as an array entry is a little more than `"0.07 mm"` says, and so
/// the two may differ in their last bit.
///
/// ```
/// use coaming::quantity::{Conversion, Dimension};
///
/// let inches = Conversion::new("in", &Dimension::LENGTH)?;
/// assert_eq!((inches.to_si(2.0), inches.from_si(0.0508)), (0.0508, 2.0));
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Conversion {
    to_si: Line,
    from_si: Line,
}

impl Conversion {
    /// The conversion of a unit that measures the dimension.
    ///
    /// # Errors
    /// [`Error::NotAQuantity`] for an unknown unit or one of another dimension.
    pub fn new(symbol: &str, dimension: &'static Dimension) -> Result<Self, Error> {
        let refused = |reason: String| Error::NotAQuantity {
            field: String::new(),
            text: symbol.chars().take(60).collect(),
            expected: format!("a unit of {} as in {}", dimension.name, dimension.example),
            reason,
        };
        if symbol.trim().is_empty() {
            return Err(refused("it needs a unit".to_owned()));
        }
        let unit = unit::read(symbol, dimension).map_err(refused)?;
        let zero = Exact::whole(0);
        let inverse =
            Exact::one().over(&unit.factor).ok_or_else(|| refused("a unit of size zero".to_owned()))?;
        Ok(Self {
            from_si: Line::new(zero.clone(), inverse, zero.minus(&unit.offset)),
            to_si: Line::new(unit.offset, unit.factor, zero),
        })
    }

    /// The SI value of a number of the unit. What is not finite stays so.
    pub fn to_si(&self, number: f64) -> f64 {
        self.to_si.at(number)
    }

    /// The number of the unit for an SI value. What is not finite stays so.
    pub fn from_si(&self, si: f64) -> f64 {
        self.from_si.at(si)
    }
}

/// A number as the unevaluated sum of two, the second below half a last digit of the first: some 106 bits.
type Pair = (f64, f64);

/// 2^-98.
const TINY: f64 = 1.0 / (1u128 << 98) as f64;

/// (x + before) × times + after.
#[derive(Debug, Clone)]
struct Line {
    exact: [Exact; 3],
    pairs: [Pair; 3],
    is_identity: bool,
}

impl Line {
    fn new(before: Exact, times: Exact, after: Exact) -> Self {
        let is_identity = before.is_zero() && after.is_zero() && times.minus(&Exact::one()).is_zero();
        let exact = [before, times, after];
        let pairs = exact.each_ref().map(pair);
        Self { exact, pairs, is_identity }
    }

    fn at(&self, x: f64) -> f64 {
        if self.is_identity || !x.is_finite() { x } else { self.quick(x).unwrap_or_else(|| self.slow(x)) }
    }

    /// In pairs; none where 106 bits cannot tell how the exact value rounds, or where products would leave the range.
    fn quick(&self, x: f64) -> Option<f64> {
        let [before, times, after] = self.pairs;
        let handy = |size: f64| (1e-150..1e150).contains(&size.abs());
        if !handy(x) || !handy(times.0) {
            return None;
        }
        let (sum, rest) = two_sum(x, before.0);
        let rest = rest + before.1;
        let product = sum * times.0;
        let below = sum.mul_add(times.0, -product) + (sum * times.1 + rest * times.0);
        let (high, low) = two_sum(product, after.0);
        let low = low + (below + after.1);
        // Every step above errs by less than 2^-104 of the largest number in it; 2^-98 leaves room.
        let doubt = ((x.abs() + before.0.abs()) * times.0.abs() + after.0.abs()) * TINY;
        let (up, down) = (high + (low + doubt), high + (low - doubt));
        (up == down).then_some(up)
    }

    fn slow(&self, x: f64) -> f64 {
        let [before, times, after] = &self.exact;
        Exact::binary(x).map_or(x, |x| x.plus(before).times(times).plus(after).rounded())
    }
}

fn pair(exact: &Exact) -> Pair {
    let high = exact.rounded();
    let low = Exact::binary(high).map_or(0.0, |rounded| exact.minus(&rounded).rounded());
    (high, low)
}

/// The rounded sum and what rounding took off it, exactly.
fn two_sum(a: f64, b: f64) -> (f64, f64) {
    let sum = a + b;
    let of_b = sum - a;
    (sum, (a - (sum - of_b)) + (b - of_b))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const UNITS: &[(&str, &Dimension)] = &[
        ("mm", &Dimension::LENGTH),
        ("in", &Dimension::LENGTH),
        ("deg", &Dimension::ANGLE),
        ("degC", &Dimension::TEMPERATURE),
        ("degF", &Dimension::TEMPERATURE),
        ("rpm", &Dimension::FREQUENCY),
        ("psi", &Dimension::PRESSURE),
        ("Btu/(h·ft^2·delta_degF)", &Dimension::HEAT_TRANSFER),
    ];

    proptest! {
        // The quick path and exact rational arithmetic are two derivations of the same rounding.
        #[test]
        fn the_quick_path_rounds_as_exact_arithmetic(place in 0..UNITS.len(), x in any::<f64>(), near in -1e4..1e4f64) {
            let (symbol, dimension) = UNITS[place];
            let conversion = Conversion::new(symbol, dimension).unwrap();
            for x in [x, near, -273.15, -459.67, 255.3722222222222, 273.15, 0.0] {
                if x.is_finite() {
                    prop_assert_eq!(conversion.to_si(x), conversion.to_si.slow(x), "{} {}", x, symbol);
                    prop_assert_eq!(conversion.from_si(x), conversion.from_si.slow(x), "{} {}", x, symbol);
                }
            }
        }
    }

    #[test]
    fn most_numbers_take_the_quick_path() {
        let degrees = Conversion::new("degF", &Dimension::TEMPERATURE).unwrap();
        let quick = (1..1000).filter(|n| degrees.to_si.quick(f64::from(*n) / 7.0).is_some()).count();
        assert!(quick > 990, "{quick}");
    }

    #[test]
    fn units_are_refused_as_in_text() {
        for (symbol, reason) in
            [("", "it needs a unit"), ("kg", "does not measure length"), ("furlong", "unknown unit")]
        {
            let error = Conversion::new(symbol, &Dimension::LENGTH).unwrap_err();
            assert!(error.name() == "not_a_quantity" && error.to_string().contains(reason), "{error}");
        }
        assert!(Conversion::new("delta_degC", &Dimension::TEMPERATURE).is_err());
        assert!(Conversion::new("degC", &Dimension::TEMPERATURE_DIFFERENCE).is_err());
    }

    #[test]
    fn what_is_not_finite_stays_so() {
        let inches = Conversion::new("in", &Dimension::LENGTH).unwrap();
        assert!(inches.to_si(f64::NAN).is_nan());
        assert_eq!(inches.to_si(f64::NEG_INFINITY), f64::NEG_INFINITY);
        assert_eq!(inches.from_si(f64::MAX), f64::INFINITY);
    }
}
