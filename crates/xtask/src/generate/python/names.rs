//! Which Python type stands for a kind, and which module defines it.
//!
//! A record that is both an input and part of an outcome is two classes: what is given may be text, what comes out is
//! a quantity. A type that two modules share is defined by the first and imported by the other.

use coaming::Entry;
use coaming::declaration::{Alternatives, Choices, Kind, Record};

/// A type that a module defines besides its calculations.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Definition {
    Choice(&'static Choices),
    Input(&'static Record),
    Outcome(&'static Record),
    InputUnion(&'static Alternatives),
    OutcomeUnion(&'static Alternatives),
}

impl Definition {
    /// The definition that a kind needs by itself.
    pub(crate) const fn of(kind: &Kind, is_outcome: bool) -> Option<Self> {
        Some(match kind {
            Kind::Choice(choices) => Self::Choice(choices),
            Kind::Record(record) if is_outcome => Self::Outcome(record),
            Kind::Record(record) => Self::Input(record),
            Kind::OneOf(alternatives) if is_outcome => Self::OutcomeUnion(alternatives),
            Kind::OneOf(alternatives) => Self::InputUnion(alternatives),
            _ => return None,
        })
    }

    /// The kinds within it.
    pub(crate) fn inner(&self) -> Vec<&'static Kind> {
        match self {
            Self::Choice(_) => Vec::new(),
            Self::Input(record) | Self::Outcome(record) => {
                record.fields.iter().map(|field| &field.kind).collect()
            }
            Self::InputUnion(alternatives) | Self::OutcomeUnion(alternatives) => {
                alternatives.options.iter().map(|option| &option.2).collect()
            }
        }
    }

    pub(crate) fn rust_name(&self) -> &'static str {
        match self {
            Self::Choice(choices) => choices.name,
            Self::Input(record) | Self::Outcome(record) => record.name,
            Self::InputUnion(alternatives) | Self::OutcomeUnion(alternatives) => alternatives.name,
        }
    }

    pub(crate) const fn is_outcome(&self) -> bool {
        matches!(self, Self::Outcome(_) | Self::OutcomeUnion(_))
    }
}

/// A definition with the module and the name that it got.
pub(crate) struct Owner {
    pub(crate) definition: Definition,
    pub(crate) module: String,
    pub(crate) name: String,
}

/// Every definition so far, over all modules.
#[derive(Default)]
pub(crate) struct Owners {
    all: Vec<Owner>,
    /// Whether a list of numbers in an outcome is an array of numpy, as over a mesh.
    pub(crate) arrays: bool,
}

impl Owners {
    pub(crate) fn find(&self, definition: &Definition) -> Option<&Owner> {
        self.all.iter().find(|owner| owner.definition == *definition)
    }

    /// The name of a definition; every kind is entered before it is named.
    pub(crate) fn name(&self, definition: Definition) -> &str {
        let owner = self.find(&definition);
        &owner.unwrap_or_else(|| panic!("{} is not entered", definition.rust_name())).name
    }

    /// The module of a definition that is entered.
    pub(crate) fn module(&self, definition: Definition) -> &str {
        let owner = self.find(&definition);
        &owner.unwrap_or_else(|| panic!("{} is not entered", definition.rust_name())).module
    }

    fn is_free(&self, module: &str, name: &str) -> bool {
        !self.all.iter().any(|owner| owner.module == module && owner.name == name)
    }

    fn push(&mut self, definition: Definition, module: &str, name: String) {
        self.all.push(Owner { definition, module: module.to_owned(), name });
    }

    /// Enters the classes of a calculation, which other calculations may hold as records.
    pub(crate) fn enter_calculation(&mut self, entry: &Entry) {
        for definition in [Definition::Input(entry.input), Definition::Outcome(entry.outcome)] {
            // Calculations may share an outcome.
            if self.find(&definition).is_none() {
                self.push(definition, entry.module(), definition.rust_name().to_owned());
            }
        }
    }

    /// Enters a definition in a module under a name that is free there.
    fn enter(&mut self, definition: Definition, module: &str) {
        let plain = definition.rust_name();
        let longer = format!("{plain}{}", if definition.is_outcome() { "Found" } else { "Given" });
        let name = [plain.to_owned(), longer].into_iter().find(|name| self.is_free(module, name));
        let name = name.unwrap_or_else(|| panic!("{module}: two different types are named {plain}"));
        self.push(definition, module, name);
    }

    /// Enters what a kind needs, inner ones first, and lists what is new in this module, in order.
    pub(crate) fn collect(
        &mut self,
        kind: &'static Kind,
        is_outcome: bool,
        module: &str,
        new: &mut Vec<Definition>,
    ) {
        if let Kind::Optional(inner) | Kind::List(inner) = kind {
            return self.collect(inner, is_outcome, module, new);
        }
        let Some(definition) = Definition::of(kind, is_outcome).filter(|it| self.find(it).is_none()) else {
            return;
        };
        for inner in definition.inner() {
            self.collect(inner, is_outcome, module, new);
        }
        self.enter(definition, module);
        new.push(definition);
    }

    /// The annotation of an input field; `within` where it stands in a record or list, which take no arrays.
    pub(crate) fn input_type(&self, kind: &Kind, within: bool) -> String {
        match kind {
            Kind::Quantity(_) => if within { "QuantityEntry" } else { "QuantityInput" }.to_owned(),
            Kind::Number => if within { "NumberEntry" } else { "NumberInput" }.to_owned(),
            Kind::List(Kind::Quantity(_)) => "QuantityList".to_owned(),
            Kind::List(Kind::Number) => "NumberList".to_owned(),
            Kind::List(inner) => format!("Sequence[{}]", self.input_type(inner, true)),
            Kind::Optional(inner) => format!("{} | None", self.input_type(inner, within)),
            Kind::Record(record) => self.name(Definition::Input(record)).to_owned(),
            Kind::OneOf(alternatives) => self.name(Definition::InputUnion(alternatives)).to_owned(),
            plain => self.plain_type(plain),
        }
    }

    /// The annotation of an outcome field: as a quantity, or in SI units.
    pub(crate) fn outcome_type(&self, kind: &Kind, in_si: bool, within: bool) -> String {
        match kind {
            Kind::Quantity(_) if !in_si => "Quantity".to_owned(),
            Kind::Quantity(_) | Kind::Number if self.arrays => "float".to_owned(),
            Kind::List(Kind::Number) if self.arrays => "Floats".to_owned(),
            Kind::List(Kind::Count) if self.arrays => "Indices".to_owned(),
            Kind::Quantity(_) | Kind::Number => if within { "float" } else { "Values" }.to_owned(),
            Kind::List(inner) => format!("tuple[{}, ...]", self.outcome_type(inner, in_si, true)),
            Kind::Optional(inner) => match self.outcome_type(inner, in_si, within) {
                any if any == "Values" => any,
                some => format!("{some} | None"),
            },
            Kind::Record(record) => {
                format!("{}{}", self.name(Definition::Outcome(record)), if in_si { ".Si" } else { "" })
            }
            Kind::OneOf(_) if in_si => "SiValues".to_owned(),
            Kind::OneOf(alternatives) => self.name(Definition::OutcomeUnion(alternatives)).to_owned(),
            plain => self.plain_type(plain),
        }
    }

    fn plain_type(&self, kind: &Kind) -> String {
        match kind {
            Kind::Count => "int".to_owned(),
            Kind::Flag => "bool".to_owned(),
            Kind::Choice(choices) => self.name(Definition::Choice(choices)).to_owned(),
            _ => "str".to_owned(),
        }
    }
}
