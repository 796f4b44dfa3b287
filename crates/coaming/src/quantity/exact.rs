//! Exact rational arithmetic for units: a quantity is (decimal + offset) × factor, rounded once.

use num_bigint::BigInt;
use num_rational::Ratio;
use num_traits::{One, ToPrimitive, Zero};

/// The largest power of ten that a decimal may carry; beyond it every `f64` is zero or infinite anyway.
const LARGEST_EXPONENT: i64 = 1_000;

/// A rational number, not necessarily in lowest terms.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Exact {
    numerator: BigInt,
    denominator: BigInt,
}

impl Exact {
    /// One.
    pub(crate) fn one() -> Self {
        Self { numerator: BigInt::one(), denominator: BigInt::one() }
    }

    /// A whole number.
    pub(crate) fn whole(n: i64) -> Self {
        Self { numerator: BigInt::from(n), denominator: BigInt::one() }
    }

    /// A decimal such as `-1.6`, `.5`, `23.6e-6`; `None` where it is not one or its exponent is absurd.
    pub(crate) fn decimal(text: &str) -> Option<Self> {
        let (mantissa, exponent) = match text.find(['e', 'E']) {
            Some(place) => (text.get(..place)?, text.get(place + 1..)?.parse::<i64>().ok()?),
            None => (text, 0),
        };
        let (negative, digits) = match mantissa.strip_prefix('-') {
            Some(rest) => (true, rest),
            None => (false, mantissa.strip_prefix('+').unwrap_or(mantissa)),
        };
        let (whole, fraction) = digits.split_once('.').unwrap_or((digits, ""));
        let all: String = [whole, fraction].concat();
        if all.is_empty() || !all.bytes().all(|byte| byte.is_ascii_digit()) {
            return None;
        }
        let power = exponent.checked_sub(i64::try_from(fraction.len()).ok()?)?;
        if power.abs() > LARGEST_EXPONENT {
            return None;
        }
        let numerator: BigInt = all.parse().ok()?;
        let value =
            Self { numerator: if negative { -numerator } else { numerator }, denominator: BigInt::one() };
        Some(value.times_power_of_ten(power))
    }

    /// The shortest decimal that names this `f64`, exactly.
    pub(crate) fn shortest(value: f64) -> Option<Self> {
        if value.is_finite() { Self::decimal(&format!("{value:e}")) } else { None }
    }

    /// The `f64` itself, exactly.
    pub(crate) fn binary(value: f64) -> Option<Self> {
        let ratio = Ratio::<BigInt>::from_float(value)?;
        let (numerator, denominator) = ratio.into_raw();
        Some(Self { numerator, denominator })
    }

    fn times_power_of_ten(mut self, power: i64) -> Self {
        let scale = BigInt::from(10u8).pow(u32::try_from(power.unsigned_abs()).unwrap_or(u32::MAX));
        if power >= 0 {
            self.numerator *= scale;
        } else {
            self.denominator *= scale;
        }
        self
    }

    pub(crate) fn is_zero(&self) -> bool {
        self.numerator.is_zero()
    }

    pub(crate) fn plus(&self, other: &Self) -> Self {
        Self {
            numerator: &self.numerator * &other.denominator + &other.numerator * &self.denominator,
            denominator: &self.denominator * &other.denominator,
        }
    }

    pub(crate) fn minus(&self, other: &Self) -> Self {
        self.plus(&Self { numerator: -&other.numerator, denominator: other.denominator.clone() })
    }

    pub(crate) fn times(&self, other: &Self) -> Self {
        Self {
            numerator: &self.numerator * &other.numerator,
            denominator: &self.denominator * &other.denominator,
        }
    }

    /// The quotient; `None` for a division by zero.
    pub(crate) fn over(&self, other: &Self) -> Option<Self> {
        if other.is_zero() {
            return None;
        }
        Some(Self {
            numerator: &self.numerator * &other.denominator,
            denominator: &self.denominator * &other.numerator,
        })
    }

    /// An integer power, negative ones included; `None` for a negative power of zero.
    pub(crate) fn to_power(&self, power: i32) -> Option<Self> {
        let size = power.unsigned_abs();
        let raised = Self { numerator: self.numerator.pow(size), denominator: self.denominator.pow(size) };
        if power < 0 { Self::one().over(&raised) } else { Some(raised) }
    }

    /// The nearest `f64`, ties to even; infinite where it is too large.
    pub(crate) fn rounded(&self) -> f64 {
        if self.numerator.is_zero() {
            return 0.0;
        }
        Ratio::new(self.numerator.clone(), self.denominator.clone()).to_f64().unwrap_or(f64::INFINITY)
    }
}

#[cfg(test)]
mod tests {
    use super::Exact;
    use proptest::prelude::*;

    #[test]
    fn decimals_round_as_the_standard_library_does() {
        for text in [
            "0",
            "1.6",
            "-0.07",
            "23.6e-6",
            "4.4482216152605",
            "1e300",
            "5e-324",
            "2.5e-324",
            "9007199254740993",
            ".5",
            "1.7976931348623157e308",
        ] {
            let ours = Exact::decimal(text).map(|exact| exact.rounded());
            assert_eq!(ours, text.parse::<f64>().ok(), "{text}");
        }
        for text in ["", ".", "-", "1e", "e5", "1.2.3", "0x10", "1_000", "1e5000", "nan", "inf"] {
            assert!(Exact::decimal(text).is_none(), "{text}");
        }
    }

    proptest! {
        #[test]
        fn any_float_survives_its_shortest_decimal(value in any::<f64>()) {
            prop_assume!(value.is_finite());
            prop_assert_eq!(Exact::shortest(value).map(|exact| exact.rounded()), Some(value));
            prop_assert_eq!(Exact::binary(value).map(|exact| exact.rounded()), Some(value));
        }

        // A quotient of two integers below 2^53 is one IEEE division, which rounds correctly.
        #[test]
        fn quotients_round_correctly(a in 1i64..1 << 53, b in 1i64..1 << 53) {
            let ours = Exact::whole(a).over(&Exact::whole(b)).map(|exact| exact.rounded());
            prop_assert_eq!(ours, Some(a as f64 / b as f64));
        }
    }
}
