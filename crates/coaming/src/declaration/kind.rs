//! What a field is: its kind, its name, its doc line and its ranges, as constant data.

use crate::quantity::Dimension;

/// The kinds of value that a field can have: a closed list, so that every language can hold each of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// A quantity with a dimension.
    Quantity(&'static Dimension),
    /// A plain number, such as a ratio.
    Number,
    /// A whole number of things.
    Count,
    /// Yes or no.
    Flag,
    /// Words.
    Text,
    /// One of a list of names: a `u32` in C.
    Choice(&'static Choices),
    /// One of several records: an enum with data.
    OneOf(&'static Alternatives),
    /// A record of named fields.
    Record(&'static Record),
    /// A list of values of one kind.
    List(&'static Kind),
    /// A value that may be absent.
    Optional(&'static Kind),
}

/// The options of a choice.
#[derive(Debug, PartialEq)]
pub struct Choices {
    /// The type's name.
    pub name: &'static str,
    /// Its doc comment.
    pub doc: &'static str,
    /// Each option with its doc line; its place is its number in C.
    pub options: &'static [(&'static str, &'static str)],
}

/// The alternatives of an enum with data.
#[derive(Debug, PartialEq)]
pub struct Alternatives {
    /// The type's name.
    pub name: &'static str,
    /// Its doc comment.
    pub doc: &'static str,
    /// Each alternative's key with its doc line and the kind of the record behind it.
    pub options: &'static [(&'static str, &'static str, Kind)],
}

/// A record type.
#[derive(Debug, PartialEq)]
pub struct Record {
    /// The type's name.
    pub name: &'static str,
    /// Its doc comment.
    pub doc: &'static str,
    /// Its fields, in order.
    pub fields: &'static [Field],
}

/// One row of the field table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Field {
    /// The field's name, the same in every language.
    pub name: &'static str,
    /// Its doc line.
    pub doc: &'static str,
    /// What it holds.
    pub kind: Kind,
    /// The unit that it is shown in: the dimension's shop unit or one that suits this field better; empty for what
    /// has none.
    pub unit: &'static str,
    /// The closed range outside which the value cannot be, in SI units.
    pub possible: (f64, f64),
    /// The closed range outside which the formula was not tested, in SI units.
    pub tested: (f64, f64),
    /// A second key under which the same field can be given in another convention.
    pub also: Option<Also>,
}

/// A second convention for a field, such as the included angle beside the bend angle.
#[derive(Debug, Clone, Copy)]
pub struct Also {
    /// The second key.
    pub name: &'static str,
    /// From the second convention to the field's own, in SI units.
    pub convert: fn(f64) -> f64,
}

impl PartialEq for Also {
    fn eq(&self, other: &Self) -> bool {
        self.name == other.name
    }
}

/// All of the numbers.
pub const UNBOUNDED: (f64, f64) = (f64::NEG_INFINITY, f64::INFINITY);

impl Field {
    /// The field of a whole record that stands alone.
    pub const ROOT: Self = Self {
        name: "",
        doc: "",
        kind: Kind::Flag,
        unit: "",
        possible: UNBOUNDED,
        tested: UNBOUNDED,
        also: None,
    };
}

impl Kind {
    /// The dimension of a quantity, an optional one included.
    pub const fn dimension(&self) -> Option<&'static Dimension> {
        match self {
            Self::Quantity(dimension) => Some(dimension),
            Self::Optional(inner) => inner.dimension(),
            _ => None,
        }
    }

    /// The unit that a field of this kind is shown in, unless the field says otherwise.
    pub const fn shop_unit(&self) -> &'static str {
        match self {
            Self::Quantity(dimension) => dimension.shop,
            Self::Optional(inner) | Self::List(inner) => inner.shop_unit(),
            _ => "",
        }
    }

    /// True for a kind that C holds in one struct member: quantity, number, count, flag, choice, or an option of one.
    pub const fn is_flat(&self) -> bool {
        match self {
            Self::Quantity(_) | Self::Number | Self::Count | Self::Flag | Self::Choice(_) => true,
            Self::Optional(inner) => {
                matches!(inner, Self::Quantity(_) | Self::Number | Self::Count | Self::Flag | Self::Choice(_))
            }
            _ => false,
        }
    }

    /// True for a number that a batch can hold in an array: a quantity or a plain number, or an option of one.
    pub const fn is_scalar(&self) -> bool {
        match self {
            Self::Quantity(_) | Self::Number => true,
            Self::Optional(inner) => matches!(inner, Self::Quantity(_) | Self::Number),
            _ => false,
        }
    }

    /// The fields of a record; none for every other kind.
    pub const fn fields(&self) -> &'static [Field] {
        match self {
            Self::Record(record) => record.fields,
            _ => &[],
        }
    }

    /// True for a record whose every field is flat.
    pub fn is_flat_record(&self) -> bool {
        matches!(self, Self::Record(record) if record.fields.iter().all(|field| field.kind.is_flat()))
    }
}
