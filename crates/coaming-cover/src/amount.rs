//! A number with the unit that it is shown in: what rows of the review and lines of the order sheet are made of.

use coaming::declaration::{Field, Node};
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
    /// A length to cut and drill by, shown to a hundredth of a millimetre or a thousandth of an inch however long it is.
    Size,
    /// A temperature, held as its rise above another one, in K, so that a margin means something; shown as what it is.
    Risen {
        /// The temperature that it rises from, K.
        from: f64,
    },
    /// A temperature, held as its fall below another one, in K; shown as what it is.
    Fallen {
        /// The temperature that it falls from, K.
        from: f64,
    },
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

    /// The measure of a field of a record.
    pub fn of_field(field: &Field) -> Self {
        match field.kind.dimension() {
            Some(dimension) => Self::Quantity(dimension, field.unit),
            None => Self::Number,
        }
    }

    /// A value of this measure, for people.
    pub fn shown(self, si: f64, system: System) -> String {
        match self {
            Self::Risen { from } => Self::TEMPERATURE.shown(from + si, system),
            Self::Fallen { from } => Self::TEMPERATURE.shown(from - si, system),
            Self::Quantity(dimension, unit) => for_people(si, dimension, unit, system),
            Self::Number => rounded(si, 4),
            Self::Percent => format!("{} %", rounded(si * 100.0, 3)),
            Self::Size => size(si, system),
        }
    }

    /// A band of this measure, for people, as in `43 to 66 Hz`; one value where both ends read alike.
    pub fn shown_band(self, low: f64, high: f64, system: System) -> String {
        let (low, high) = if self.is_reversed() { (high, low) } else { (low, high) };
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

    /// True where more of it is shown as less: at most so deep a fall is at least so high a temperature.
    pub const fn is_reversed(self) -> bool {
        matches!(self, Self::Fallen { .. })
    }

    /// A value of this measure, for data.
    pub fn node(self, si: f64) -> Node {
        match self {
            Self::Risen { from } => Self::TEMPERATURE.node(from + si),
            Self::Fallen { from } => Self::TEMPERATURE.node(from - si),
            Self::Quantity(dimension, unit) => Node::Quantity { si, dimension, unit },
            Self::Number | Self::Percent => Node::Number(si),
            Self::Size => Self::LENGTH.node(si),
        }
    }
}

/// A size as a drawing shows it.
fn size(si: f64, system: System) -> String {
    let (value, places, unit) = match system {
        System::Shop => (si / 1e-3, 2, "mm"),
        System::Inch => (si / 0.0254, 3, "in"),
    };
    let digits = format!("{value:.places$}");
    let digits = digits.trim_end_matches('0').trim_end_matches('.');
    format!("{} {unit}", if digits == "-0" { "0" } else { digits })
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

    /// For data.
    pub fn node(self) -> Node {
        self.measure.node(self.si)
    }
}

/// Words with amounts in them, each where a `{}` stands, so that every unit system reads them in its own units.
#[derive(Debug, Clone, PartialEq)]
pub struct Phrase {
    template: String,
    amounts: Vec<Amount>,
}

impl Phrase {
    /// Words with amounts.
    pub fn with(template: impl Into<String>, amounts: impl Into<Vec<Amount>>) -> Self {
        Self { template: template.into(), amounts: amounts.into() }
    }

    /// True where there are none.
    pub fn is_empty(&self) -> bool {
        self.template.is_empty()
    }

    /// For people. Words without amounts stand as they are; amounts beyond the last `{}` are left out.
    pub fn shown(&self, system: System) -> String {
        if self.amounts.is_empty() {
            return self.template.clone();
        }
        let mut words = String::new();
        let mut amounts = self.amounts.iter();
        let mut pieces = self.template.split("{}");
        words.push_str(pieces.next().unwrap_or(""));
        for piece in pieces {
            words.push_str(&amounts.next().map_or_else(String::new, |amount| amount.shown(system)));
            words.push_str(piece);
        }
        words
    }
}

impl From<&str> for Phrase {
    fn from(words: &str) -> Self {
        Self::with(words, [])
    }
}

impl From<String> for Phrase {
    fn from(words: String) -> Self {
        Self::with(words, [])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_phrase_speaks_in_every_unit_system() {
        let length = Amount::of(mm(25.4));
        let phrase = Phrase::with("bottoms by {}, nominal {}", [length, length]);
        assert_eq!(phrase.shown(System::Shop), "bottoms by 25.4 mm, nominal 25.4 mm");
        assert_eq!(phrase.shown(System::Inch), "bottoms by 1 in, nominal 1 in");
        assert_eq!(Phrase::with("{} and {}", [length]).shown(System::Shop), "25.4 mm and ");
        assert_eq!(Phrase::from("layer {}").shown(System::Shop), "layer {}");
    }

    #[test]
    fn a_rise_and_a_fall_are_shown_as_temperatures() {
        let from = 293.15;
        assert_eq!(Measure::Risen { from }.shown(35.0, System::Shop), "55 degC");
        assert_eq!(Measure::Fallen { from }.shown(35.0, System::Shop), "-15 degC");
        assert_eq!(Measure::Fallen { from }.shown_band(10.0, 35.0, System::Shop), "-15 to 10 degC");
        assert_eq!(Measure::Risen { from }.shown(35.0, System::Inch), "131 degF");
    }

    /// 1234.567 mm are 48.60500 in: a hole is not to be drilled half a millimetre off for the sake of four figures.
    #[test]
    fn a_size_keeps_its_hundredths() {
        let shown = |si: f64| [System::Shop, System::Inch].map(|system| Measure::Size.shown(si, system));
        assert_eq!(shown(1.234_567), ["1234.57 mm", "48.605 in"]);
        assert_eq!(shown(0.1), ["100 mm", "3.937 in"]);
        assert_eq!(shown(-1e-9), ["0 mm", "0 in"]);
        assert_eq!(shown(-0.138), ["-138 mm", "-5.433 in"]);
    }

    #[test]
    fn a_band_names_its_unit_once() {
        assert_eq!(Measure::FREQUENCY.shown_band(43.0, 66.0, System::Shop), "43 to 66 Hz");
        assert_eq!(Measure::FREQUENCY.shown_band(43.0, 43.0, System::Shop), "43 Hz");
        assert_eq!(Measure::Percent.shown_band(0.2, 0.35, System::Shop), "20 to 35 %");
    }
}
