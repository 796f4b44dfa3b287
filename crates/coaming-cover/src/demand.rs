//! What a check finds: numbers only. Verdict, words and cure are made from it afterwards, so that sizing and spreading
//! can run this stage alone.

use coaming::prelude::*;

use crate::amount::{Amount, Measure, Phrase};
use crate::limits::LimitOrigin;

/// Where a limit comes from.
#[derive(Debug, Clone, PartialEq)]
pub enum Origin {
    /// Common practice, or what the document puts in its place.
    Practice(LimitOrigin),
    /// A published source.
    Published(Source),
    /// The maker's figure, at that path of the document.
    Maker(String),
    /// What the design itself holds, at that path of the document.
    Design(String),
}

/// Which way a limit lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Bound {
    /// The demand must not exceed it; above `marginal_above` it is at best marginal.
    AtMost {
        /// The limit.
        limit: f64,
        /// Where marginal begins, for a limit of two steps.
        marginal_above: Option<f64>,
    },
    /// The demand must reach it.
    AtLeast {
        /// The limit.
        limit: f64,
    },
    /// The demand must lie between the two.
    Within {
        /// The lower limit.
        low: f64,
        /// The upper limit.
        high: f64,
    },
}

/// One input of a check, as a reader needs it to check the row by hand.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// What it is.
    pub label: String,
    /// Its value.
    pub value: InputValue,
}

/// The value of an input.
#[derive(Debug, Clone, PartialEq)]
pub enum InputValue {
    /// A number with its unit.
    Amount(Amount),
    /// Words.
    Words(String),
}

/// What a rule finds, where no number decides.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ruling {
    /// It holds.
    Holds,
    /// It is broken.
    Broken,
    /// Only a test can tell.
    NeedsTest,
}

/// The finding itself.
#[derive(Debug, Clone, PartialEq)]
pub enum Finding {
    /// A number or band against a limit, both in SI units.
    Number {
        /// The lower end of the demand.
        low: f64,
        /// The upper end of the demand; equal to the lower one where there is no band.
        high: f64,
        /// What it measures.
        measure: Measure,
        /// The limit.
        bound: Bound,
    },
    /// A rule.
    Rule {
        /// What was found.
        finds: Phrase,
        /// What is needed.
        needs: String,
        /// Whether it holds.
        ruling: Ruling,
    },
}

/// What would cure a row: a lever of the document and where to set it, or advice where no single number does it.
#[derive(Debug, Clone, PartialEq)]
pub struct Cure {
    /// Path of the lever in the document.
    pub lever: String,
    /// Where it stands now and where to set it.
    pub change: Option<(Amount, Amount)>,
    /// What to do, in words.
    pub words: Phrase,
}

/// What a check finds, with all that a reader needs to follow it.
#[derive(Debug, Clone, PartialEq)]
pub struct Demand {
    /// The finding.
    pub finding: Finding,
    /// Where its limit comes from.
    pub origin: Origin,
    /// The calculations that it took, by name, with their sources.
    pub calculations: Vec<(&'static str, &'static [Source])>,
    /// What was reckoned besides, as a formula in words.
    pub formulas: Vec<String>,
    /// Its inputs.
    pub inputs: Vec<Input>,
    /// Strained assumptions.
    pub caveats: Caveats,
    /// Typical, estimated or unverified values that it rests on.
    pub weak: Vec<String>,
    /// True where a dimension was not confirmed against its standard: the row does no better than `needs test`.
    pub unverified: bool,
    /// Where on the cover, or against what.
    pub place: Option<Phrase>,
    /// Further words for the long story.
    pub notes: Vec<String>,
    /// What would cure it.
    pub cure: Option<Cure>,
}

impl Demand {
    /// True where every number of it is finite.
    pub fn is_finite(&self) -> bool {
        let finding = match &self.finding {
            Finding::Number { low, high, bound, .. } => {
                let bound = match *bound {
                    Bound::AtMost { limit, .. } | Bound::AtLeast { limit } => limit.is_finite(),
                    Bound::Within { low, high } => low.is_finite() && high.is_finite(),
                };
                bound && low.is_finite() && high.is_finite()
            }
            Finding::Rule { .. } => true,
        };
        let inputs = self.inputs.iter().all(|input| match &input.value {
            InputValue::Amount(amount) => amount.si.is_finite(),
            InputValue::Words(_) => true,
        });
        let change = self.cure.as_ref().and_then(|cure| cure.change.as_ref());
        finding && inputs && change.is_none_or(|(now, to)| now.si.is_finite() && to.si.is_finite())
    }
}

/// Why a check was not made.
#[derive(Debug, Clone, PartialEq)]
pub enum NotChecked {
    /// The document does not give what it needs.
    Needs(Vec<String>),
    /// No version of the library calculates it yet.
    NotCalculated {
        /// What is not calculated.
        what: String,
        /// The number that is known all the same, such as a linear one.
        shown: Option<Box<Demand>>,
    },
    /// The calculation refused the inputs.
    Refused(Error),
}

impl NotChecked {
    /// The document lacks the field at this path.
    pub fn needs(path: impl Into<String>) -> Self {
        Self::Needs(vec![path.into()])
    }

    /// This version has no calculation for it.
    pub fn not_calculated(what: impl Into<String>) -> Self {
        Self::NotCalculated { what: what.into(), shown: None }
    }
}

/// An optional fact of the document that a check needs.
pub trait Need<T> {
    /// The fact, or the path that is missing.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] with the path.
    fn need(&self, path: impl FnOnce() -> String) -> Result<T, NotChecked>;
}

impl<T: Clone> Need<T> for Option<T> {
    fn need(&self, path: impl FnOnce() -> String) -> Result<T, NotChecked> {
        self.clone().ok_or_else(|| NotChecked::needs(path()))
    }
}
