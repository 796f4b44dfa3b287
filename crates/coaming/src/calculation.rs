//! [`Calculation`]: one situation in, its outcome out; and [`Entry`], a calculation as the registry holds it.

use crate::batch::{self, Column, Wanted};
use crate::caveat::Caveats;
use crate::declaration::{At, Desk, Field, Fields, Kind, Node, Path, Record, read_json};
use crate::error::Error;
use crate::source::Source;
use crate::topic::Topic;

/// A calculation: the input is the situation, [`formula`](Self::formula) is written by hand, and
/// [`calculate`](Self::calculate) is what callers use.
pub trait Calculation: Fields {
    /// Its name in snake case, as C, documents and the registry call it.
    const NAME: &'static str;

    /// Where the formula comes from.
    const SOURCE: &'static [Source];

    /// What comes out.
    type Outcome: Fields;

    /// The formula, line by line, on inputs that are within their ranges.
    ///
    /// # Errors
    /// Where no number can be given for these inputs together.
    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error>;

    /// Checks the input's ranges, applies the formula and checks that the outcome is finite.
    ///
    /// # Errors
    /// [`Error::Impossible`] for a value outside its range, [`Error::NotFinite`] for an overflow, and what the formula
    /// refuses.
    fn calculate(&self) -> Result<(Self::Outcome, Caveats), Error> {
        let mut caveats = Caveats::NONE;
        self.check(&Path::ROOT, &mut caveats)?;
        let outcome = self.formula(&mut caveats)?;
        outcome.check(&Path::ROOT, &mut caveats).map_err(|error| match error {
            Error::Impossible { field, value, .. } if !value.is_finite() => Error::NotFinite { field },
            other => other,
        })?;
        Ok((outcome, caveats))
    }
}

/// Calculates many rows: a template, the columns given and the columns wanted.
pub type Batch = fn(Node, &[Column<'_>], &mut [Wanted<'_>]) -> Result<Caveats, Error>;

/// A calculation as every language sees it: constant data and plain functions.
#[derive(Clone, Copy)]
pub struct Entry {
    /// What it belongs to.
    pub topic: Topic,
    /// Path of the type in the crate, such as `sheet::BendAllowance`.
    pub path: &'static str,
    /// Its name.
    pub name: &'static str,
    /// Where the formula comes from.
    pub source: &'static [Source],
    /// The input's table.
    pub input: &'static Record,
    /// The outcome's table.
    pub outcome: &'static Record,
    /// Calculates from a node.
    pub calculate: fn(Node) -> Result<(Node, Caveats), Error>,
    /// Calculates from JSON text.
    pub calculate_json: fn(&str) -> Result<(Node, Caveats), Error>,
    /// Calculates from JSON text and gives JSON text; see [`text`](crate::text).
    pub calculate_text: fn(&str) -> Result<String, Error>,
    /// The input of a node or text as its canonical node, checked.
    pub read: fn(Node) -> Result<Node, Error>,
    /// Calculates many rows: a template, the columns given and the columns wanted.
    pub batch: Batch,
}

impl core::fmt::Debug for Entry {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_tuple("Entry").field(&self.path).finish()
    }
}

impl Entry {
    /// The entry of a calculation.
    pub const fn of<C: Calculation>(topic: Topic, path: &'static str) -> Self {
        Self {
            topic,
            path,
            name: C::NAME,
            source: C::SOURCE,
            input: C::RECORD,
            outcome: <C::Outcome as Fields>::RECORD,
            calculate: |node| calculated(&read_node::<C>(node)?),
            calculate_json: |text| calculated(&read_json::<C>(text)?),
            calculate_text: crate::text::of::<C>,
            read: |node| Ok(read_node::<C>(node)?.write(&Field::ROOT)),
            batch: |node, given, wanted| batch::run(&read_node::<C>(node)?, given, wanted),
        }
    }

    /// True where both records are flat, so that C has a struct for each and a function over arrays.
    pub fn is_flat(&self) -> bool {
        Kind::Record(self.input).is_flat_record() && Kind::Record(self.outcome).is_flat_record()
    }

    /// The module that the calculation stands in: `sheet`.
    pub fn module(&self) -> &'static str {
        self.path.split_once("::").map_or("", |(module, _)| module)
    }
}

fn calculated<C: Calculation>(input: &C) -> Result<(Node, Caveats), Error> {
    input
        .calculate()
        .map(|(outcome, caveats)| (crate::declaration::Value::write(&outcome, &Field::ROOT), caveats))
}

/// Reads a value from a node, with the fault as it was raised.
///
/// # Errors
/// The first fault.
pub fn read_node<T: crate::declaration::Value>(node: Node) -> Result<T, Error> {
    let desk = Desk::default();
    T::read(node, &At::root(&desk))
        .map_err(|error| desk.take().unwrap_or_else(|| Error::Unreadable { reason: error.to_string() }))
}

/// Lists the calculations that every language has, each with its topic: `registry! { S2 sheet::BendAllowance, ... }`.
#[macro_export]
#[doc(hidden)]
macro_rules! registry {
    ($( $topic:ident $module:ident::$name:ident ),+ $(,)?) => {
        /// Every calculation, in the order of the documentation.
        pub static ALL: &[$crate::Entry] = &[
            $( $crate::Entry::of::<$module::$name>(
                $crate::Topic::$topic,
                concat!(stringify!($module), "::", stringify!($name)),
            ), )+
        ];
    };
}

/// The entry of a calculation by name.
///
/// # Errors
/// [`Error::UnknownCalculation`] with the nearest known name.
pub fn entry(name: &str) -> Result<&'static Entry, Error> {
    crate::ALL.iter().find(|entry| entry.name == name).ok_or_else(|| Error::UnknownCalculation {
        name: name.chars().take(60).collect(),
        nearest: crate::declaration::nearest::nearest(name, crate::ALL.iter().map(|entry| entry.name))
            .map(str::to_owned),
    })
}
