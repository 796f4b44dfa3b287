//! A number with the unit that it is shown in: what rows of the review and lines of the order sheet are made of.

use coaming::declaration::Node;
use coaming::prelude::*;

/// What a number measures: a dimension with the unit it is shown in, or a plain ratio.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measure {
    /// A quantity, shown in a unit.
    Quantity(&'static Dimension, &'static str),
    /// A plain number.
    Number,
    /// A ratio, shown in per cent.
    Percent,
}

impl Measure {
    /// Lengths, in millimetres.
    pub const LENGTH: Self = Self::Quantity(&Dimension::LENGTH, "mm");
    /// Forces, in newtons.
    pub const FORCE: Self = Self::Quantity(&Dimension::FORCE, "N");
    /// Torques, in newton metres.
    pub const TORQUE: Self = Self::Quantity(&Dimension::TORQUE, "N·m");
    /// Stresses, in megapascals.
    pub const STRESS: Self = Self::Quantity(&Dimension::PRESSURE, "MPa");
    /// Pressures, in kilopascals.
    pub const PRESSURE: Self = Self::Quantity(&Dimension::PRESSURE, "kPa");
    /// Masses, in kilograms.
    pub const MASS: Self = Self::Quantity(&Dimension::MASS, "kg");
    /// Temperatures, in degrees Celsius.
    pub const TEMPERATURE: Self = Self::Quantity(&Dimension::TEMPERATURE, "degC");
    /// Temperature differences, in kelvins.
    pub const DIFFERENCE: Self = Self::Quantity(&Dimension::TEMPERATURE_DIFFERENCE, "K");
    /// Frequencies, in hertz.
    pub const FREQUENCY: Self = Self::Quantity(&Dimension::FREQUENCY, "Hz");

    /// The measure of a quantity type, in its shop unit.
    pub const fn of<Q: Quantity>() -> Self {
        Self::Quantity(Q::DIMENSION, Q::DIMENSION.shop)
    }

    /// A value of this measure, for people.
    pub fn shown(self, si: f64, system: System) -> String {
        match self {
            Self::Quantity(dimension, unit) => for_people(si, dimension, unit, system),
            Self::Number => rounded(si, 4),
            Self::Percent => format!("{} %", rounded(si * 100.0, 3)),
        }
    }

    /// A band of this measure, for people: `43–66 Hz` written with a plain hyphen, or one value where both are equal.
    pub fn shown_band(self, low: f64, high: f64, system: System) -> String {
        let (first, last) = (self.shown(low, system), self.shown(high, system));
        if first == last {
            return first;
        }
        match (first.rsplit_once(' '), last.split_once(' ')) {
            (Some((number, unit)), Some((_, same))) if unit == same && !number.contains(' ') => {
                format!("{number} to {last}")
            }
            _ => format!("{first} to {last}"),
        }
    }

    /// A value of this measure, for data.
    pub fn node(self, si: f64) -> Node {
        match self {
            Self::Quantity(dimension, unit) => Node::Quantity { si, dimension, unit },
            Self::Number | Self::Percent => Node::Number(si),
        }
    }
}

/// A value with its measure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Amount {
    /// The value in SI units.
    pub si: f64,
    /// What it measures.
    pub measure: Measure,
}

impl Amount {
    /// A quantity in its shop unit.
    pub fn of<Q: Quantity>(quantity: Q) -> Self {
        Self { si: quantity.to_si(), measure: Measure::of::<Q>() }
    }

    /// For people.
    pub fn shown(self, system: System) -> String {
        self.measure.shown(self.si, system)
    }
}
