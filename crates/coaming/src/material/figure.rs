//! One number of a material: its value, what it rests on, and where it comes from.

use std::borrow::Cow;

use crate::prelude::*;

/// What a figure rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Choice)]
#[non_exhaustive]
pub enum Basis {
    /// Guaranteed by a standard or specification.
    Minimum,
    /// Usual value of a handbook or data sheet; single pieces lie on both sides of it.
    Typical,
    /// Estimated from similar materials or by a rule: judge it as such.
    Estimate,
    /// The maker's figure for the very product, given by the caller.
    Maker,
    /// Measured by the caller.
    Measured,
}

impl Basis {
    /// Strength of the basis, for choosing the weaker of two: an estimate is the weakest.
    const fn strength(self) -> u8 {
        match self {
            Self::Estimate => 0,
            Self::Typical => 1,
            Self::Maker => 2,
            Self::Measured => 3,
            Self::Minimum => 4,
        }
    }
}

/// One number of a material with its basis and source.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure<Q> {
    /// The value, a quantity or a plain number.
    pub value: Q,
    /// What it rests on.
    pub basis: Basis,
    /// Where it comes from, and how it was taken from there.
    pub source: Source,
    /// The condition it holds under: temperature, direction, thickness, test. Empty where there is none to state.
    pub condition: Cow<'static, str>,
}

impl<Q> Figure<Q> {
    /// A figure that the caller measured; `condition` says how.
    pub fn measured(value: Q, condition: impl Into<Cow<'static, str>>) -> Self {
        Self { value, basis: Basis::Measured, source: GIVEN, condition: condition.into() }
    }

    /// A figure of the maker of the very product; `condition` says which sheet and test.
    pub fn maker(value: Q, condition: impl Into<Cow<'static, str>>) -> Self {
        Self { value, basis: Basis::Maker, source: GIVEN, condition: condition.into() }
    }

    /// True where nobody has yet looked the figure up in its source.
    pub const fn is_unverified(&self) -> bool {
        self.source.standing.is_unverified()
    }

    /// Another value on the same basis: for what is computed from this figure.
    pub fn with_value<R>(&self, value: R) -> Figure<R> {
        Figure { value, basis: self.basis, source: self.source, condition: self.condition.clone() }
    }

    /// True where this figure's origin is weaker than the other's: unverified before verified, then by basis.
    pub fn is_weaker_than<R>(&self, other: &Figure<R>) -> bool {
        let rank = |unverified: bool, basis: Basis| (u8::from(!unverified), basis.strength());
        rank(self.is_unverified(), self.basis) < rank(other.is_unverified(), other.basis)
    }
}

/// The source of what a caller gives.
const GIVEN: Source =
    Source { title: "given by the caller", edition: "", locator: "", standing: Standing::Read };
