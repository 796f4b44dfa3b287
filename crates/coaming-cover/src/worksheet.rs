//! The worksheet of one check: it notes each input, calculation and weak value as the check takes it, so that the row
//! can be followed by hand.

use coaming::material::{Basis, Figure, Material};
use coaming::prelude::*;

use crate::amount::{Amount, Measure, Phrase};
use crate::demand::{Bound, Cure, Demand, Finding, Input, InputValue, NotChecked, Origin, Ruling};
use crate::limits::LimitOrigin;
use crate::prepared::property;

/// What a check has taken so far.
#[derive(Debug, Default)]
pub(crate) struct Worksheet {
    calculations: Vec<(&'static str, &'static [Source])>,
    formulas: Vec<String>,
    inputs: Vec<Input>,
    caveats: Caveats,
    weak: Vec<String>,
    unverified: bool,
    place: Option<Phrase>,
    notes: Vec<String>,
    cure: Option<Cure>,
}

impl Worksheet {
    /// An empty one.
    pub(crate) fn new() -> Self {
        Self::default()
    }

    /// Notes a number.
    pub(crate) fn note(&mut self, label: &str, si: f64, measure: Measure) {
        let value = InputValue::Amount(Amount { si, measure });
        let input = Input { label: label.to_owned(), value };
        // What a check takes twice, such as four flanges alike, is noted once.
        if !self.inputs.contains(&input) {
            self.inputs.push(input);
        }
    }

    /// Notes words.
    pub(crate) fn note_words(&mut self, label: &str, words: impl Into<String>) {
        let input = Input { label: label.to_owned(), value: InputValue::Words(words.into()) };
        if !self.inputs.contains(&input) {
            self.inputs.push(input);
        }
    }

    /// Takes an optional quantity of the document.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] with the path.
    pub(crate) fn given<Q: Quantity>(
        &mut self,
        label: &str,
        path: impl Into<String>,
        value: Option<Q>,
    ) -> Result<Q, NotChecked> {
        let quantity = value.ok_or_else(|| NotChecked::needs(path))?;
        self.note(label, quantity.to_si(), Measure::of::<Q>());
        Ok(quantity)
    }

    /// Takes an optional plain number of the document.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] with the path.
    pub(crate) fn number(
        &mut self,
        label: &str,
        path: impl Into<String>,
        value: Option<f64>,
    ) -> Result<f64, NotChecked> {
        let number = value.ok_or_else(|| NotChecked::needs(path))?;
        self.note(label, number, Measure::Number);
        Ok(number)
    }

    /// Takes a property of a material; a typical, estimated or unverified one is remembered as weak.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] with material and property.
    pub(crate) fn property<Q: Value>(
        &mut self,
        material: &Material,
        name: &'static str,
        figure: &Option<Figure<Q>>,
    ) -> Result<Q, NotChecked> {
        let figure = property(material, name, figure)?;
        Ok(self.figure(material, name, figure))
    }

    /// Takes a figure of a material.
    pub(crate) fn figure<Q: Value>(
        &mut self,
        material: &Material,
        name: &'static str,
        figure: Figure<Q>,
    ) -> Q {
        let known = Material::PROPERTIES.iter().find(|property| property.name == name);
        let measure = match known
            .and_then(|property| property.kind.dimension().map(|dimension| (dimension, property.unit)))
        {
            Some((dimension, unit)) => Measure::Quantity(dimension, unit),
            None => Measure::Number,
        };
        if let Some(si) = figure.value.si() {
            self.note(&format!("{} {}", material.key, name.replace('_', " ")), si, measure);
        }
        if matches!(figure.basis, Basis::Typical | Basis::Estimate) || figure.is_unverified() {
            let unverified = if figure.is_unverified() { ", unverified" } else { "" };
            let words = format!(
                "{} {}: {}{unverified}",
                material.key,
                name.replace('_', " "),
                Choice::name(figure.basis)
            );
            if !self.weak.contains(&words) {
                self.weak.push(words);
            }
        }
        figure.value
    }

    /// Makes a calculation and remembers its name, sources and caveats.
    ///
    /// # Errors
    /// [`NotChecked::Refused`] with the calculation's own error.
    pub(crate) fn run<C: Calculation>(&mut self, calculation: &C) -> Result<C::Outcome, NotChecked> {
        self.take::<C>(calculation.calculate())
    }

    /// Takes what a calculation gave, and remembers its name, sources and caveats.
    ///
    /// # Errors
    /// [`NotChecked::Refused`] with the calculation's own error.
    pub(crate) fn take<C: Calculation>(
        &mut self,
        calculated: Result<(C::Outcome, Caveats), Error>,
    ) -> Result<C::Outcome, NotChecked> {
        let (outcome, caveats) = calculated.map_err(NotChecked::Refused)?;
        self.caveats.merge(caveats);
        if !self.calculations.iter().any(|done| done.0 == C::NAME) {
            self.calculations.push((C::NAME, C::SOURCE));
        }
        Ok(outcome)
    }

    /// Says how a number follows from the inputs where no calculation of the library gives it: a formula in words.
    pub(crate) fn reckon(&mut self, formula: impl Into<String>) {
        let formula = formula.into();
        if !self.formulas.contains(&formula) {
            self.formulas.push(formula);
        }
    }

    /// Remembers that a solver was used, which no registry of calculations lists: its name and sources.
    pub(crate) fn solved(&mut self, solver: (&'static str, &'static [Source])) {
        if !self.calculations.iter().any(|done| done.0 == solver.0) {
            self.calculations.push(solver);
        }
    }

    /// Says that a dimension behind the row was not confirmed against its standard: it does no better than `needs test`.
    pub(crate) fn unverified(&mut self, what: &str) {
        self.caveats.add(Caveat::UnverifiedDimension);
        self.unverified = true;
        self.weak.push(format!("{what}: unverified"));
    }

    /// Says where on the cover, or against what.
    pub(crate) fn at(&mut self, place: impl Into<Phrase>) {
        self.place = Some(place.into());
    }

    /// Adds words to the long story.
    pub(crate) fn say(&mut self, words: impl Into<String>) {
        let words = words.into();
        if !self.notes.contains(&words) {
            self.notes.push(words);
        }
    }

    /// Names the lever that would cure the row, from where it stands to where it should.
    pub(crate) fn cure(
        &mut self,
        lever: impl Into<String>,
        now: Amount,
        to: Amount,
        words: impl Into<Phrase>,
    ) {
        self.cure = Some(Cure { lever: lever.into(), change: Some((now, to)), words: words.into() });
    }

    /// Gives advice where no single number cures the row.
    pub(crate) fn advise(&mut self, lever: impl Into<String>, words: impl Into<Phrase>) {
        self.cure = Some(Cure { lever: lever.into(), change: None, words: words.into() });
    }

    /// The demand: one number against an upper limit of common practice.
    pub(crate) fn at_most(self, demand: f64, measure: Measure, limit: f64, origin: Origin) -> Demand {
        self.finish(
            Finding::Number {
                low: demand,
                high: demand,
                measure,
                bound: Bound::AtMost { limit, marginal_above: None },
            },
            origin,
        )
    }

    /// The demand: one number against a lower limit.
    pub(crate) fn at_least(self, demand: f64, measure: Measure, limit: f64, origin: Origin) -> Demand {
        self.finish(
            Finding::Number { low: demand, high: demand, measure, bound: Bound::AtLeast { limit } },
            origin,
        )
    }

    /// The demand: a rule.
    pub(crate) fn rule(
        self,
        finds: impl Into<Phrase>,
        needs: impl Into<String>,
        ruling: Ruling,
        origin: Origin,
    ) -> Demand {
        self.finish(Finding::Rule { finds: finds.into(), needs: needs.into(), ruling }, origin)
    }

    /// The demand of a finding.
    pub(crate) fn finish(self, finding: Finding, origin: Origin) -> Demand {
        Demand {
            finding,
            origin,
            calculations: self.calculations,
            formulas: self.formulas,
            inputs: self.inputs,
            caveats: self.caveats,
            weak: self.weak,
            unverified: self.unverified,
            place: self.place,
            notes: self.notes,
            cure: self.cure,
        }
    }
}

/// A limit of common practice, with its origin.
pub(crate) fn practice((value, origin): (f64, LimitOrigin)) -> (f64, Origin) {
    (value, Origin::Practice(origin))
}
