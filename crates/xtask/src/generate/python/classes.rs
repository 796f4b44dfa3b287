//! The text of each class.

use coaming::Entry;
use coaming::declaration::{Alternatives, Choices, Field, Kind, Record};
use std::collections::BTreeSet;

use super::docs::{first_paragraph, literal, of_field, of_type, quoted};
use super::names::{Definition, Owners};

/// Words that a field cannot have for a name in Python: its keywords and what every class has.
const RESERVED: &[&str] = &[
    "and",
    "as",
    "assert",
    "async",
    "await",
    "break",
    "calculate",
    "caveats",
    "class",
    "continue",
    "def",
    "del",
    "elif",
    "else",
    "except",
    "finally",
    "for",
    "from",
    "global",
    "if",
    "import",
    "in",
    "is",
    "lambda",
    "nonlocal",
    "not",
    "or",
    "pass",
    "raise",
    "return",
    "si",
    "try",
    "while",
    "with",
    "yield",
];

/// What the plain values of a calculation's outcome are.
const BATCHED: &str = "In SI units: floats; arrays in the outcome of a batch.";

/// Makes the classes, by the names that their types have.
pub(crate) struct Classes<'a> {
    pub(crate) owners: &'a Owners,
}

impl Classes<'_> {
    /// The class or type of a definition.
    pub(crate) fn definition(&self, definition: Definition) -> String {
        let name = self.owners.name(definition);
        match definition {
            Definition::Choice(choices) => choice(choices, name),
            Definition::Input(record) => self.input_record(record, name),
            Definition::Outcome(record) => self.outcome(record, name, "OutcomeRecord"),
            Definition::InputUnion(alternatives) => self.union(alternatives, false),
            Definition::OutcomeUnion(alternatives) => self.union(alternatives, true),
        }
    }

    /// The class of a calculation's input.
    pub(crate) fn calculation(&self, entry: &Entry) -> String {
        let name = entry.input.name;
        let outcome = self.owners.name(Definition::Outcome(entry.outcome));
        let mut text = format!(
            "\n\n@dataclass(frozen=True, kw_only=True, eq=False)\nclass {name}(Calculation):\n{}\n",
            quoted(&with_fields(entry.input, true), 4)
        );
        text += &format!("    _name: ClassVar[str] = {}\n", literal(entry.name));
        text += &self.kinds(entry.input, false);
        text += &self.input_fields(entry.input, false);
        text += &format!("\n    def calculate(self) -> {outcome}:\n");
        text += &quoted("Calculates; a fault raises `CoamingError`.", 8);
        text += &format!("        return calculate(self, {outcome})\n");
        text + &self.second_conventions(entry.input, false)
    }

    fn input_record(&self, record: &Record, name: &str) -> String {
        let doc = quoted(&with_fields(record, true), 4);
        let mut text = format!("\n\n@dataclass(frozen=True, kw_only=True)\nclass {name}(Record):\n{doc}\n");
        text += &self.kinds(record, false);
        text += &self.input_fields(record, true);
        text + &self.second_conventions(record, true)
    }

    fn input_fields(&self, record: &Record, within: bool) -> String {
        let mut text = String::new();
        for field in record.fields {
            assert!(!RESERVED.contains(&field.name), "{}.{}: reserved in Python", record.name, field.name);
            let default = if matches!(field.kind, Kind::Optional(_)) { " = None" } else { "" };
            let annotation = self.owners.input_type(&field.kind, within);
            text += &format!("\n    {}: {annotation}{default}\n", field.name);
            text += &quoted(&of_field(field, true), 4);
        }
        text
    }

    /// A classmethod for each field that can be given in a second convention.
    fn second_conventions(&self, record: &Record, within: bool) -> String {
        let mut text = String::new();
        for field in record.fields {
            let Some(also) = field.also else { continue };
            let mut arguments = String::new();
            let mut passed = String::new();
            for other in record.fields {
                let is_it = other.name == field.name;
                let name = if is_it { also.name } else { other.name };
                let default = if matches!(other.kind, Kind::Optional(_)) && !is_it { " = None" } else { "" };
                let annotation = self.owners.input_type(&other.kind, within);
                arguments += &format!("        {name}: {annotation}{default},\n");
                passed += &match is_it {
                    true => format!("            {}=given_as({}, {name}),\n", other.name, literal(name)),
                    false => format!("            {name}={name},\n"),
                };
            }
            text += &format!(
                "\n    @classmethod\n    def with_{}(\n        cls,\n        *,\n{arguments}    ) -> Self:\n",
                also.name
            );
            text += &quoted(&format!("The same with `{}` given in place of `{}`.", also.name, field.name), 8);
            text += &format!("        return cls(\n{passed}        )\n");
        }
        text
    }

    /// The class of an outcome.
    pub(crate) fn outcome(&self, record: &Record, name: &str, base: &str) -> String {
        let doc = quoted(&of_type(record.doc), 4);
        let mut text = format!("\n\nclass {name}({base}):\n{doc}\n    __slots__ = ()\n\n");
        text += &self.kinds(record, true);
        text += "\n    class Si(SiValues):\n";
        let scalars = if self.owners.arrays { "In SI units." } else { BATCHED };
        text += &quoted(scalars, 8);
        text.push('\n');
        for field in record.fields {
            text +=
                &format!("        {}: {}\n", field.name, self.owners.outcome_type(&field.kind, true, false));
        }
        text += "\n    si: Si\n";
        for field in record.fields {
            assert!(!RESERVED.contains(&field.name), "{}.{}: reserved in Python", record.name, field.name);
            let annotation = self.owners.outcome_type(&field.kind, false, false);
            text += &format!("\n    @property\n    def {}(self) -> {annotation}:\n", field.name);
            text += &quoted(&of_field(field, false), 8);
            let get = format!("self._get({})", literal(field.name));
            text += &if annotation == "Values" {
                format!("        return {get}\n")
            } else {
                format!("        found: {annotation} = {get}\n        return found\n")
            };
        }
        text
    }

    fn kinds(&self, record: &Record, is_outcome: bool) -> String {
        let mut text = String::from("    _kinds: ClassVar[Mapping[str, Kind]] = {\n");
        for field in record.fields {
            text +=
                &format!("        {}: {},\n", literal(field.name), self.kind(&field.kind, field, is_outcome));
        }
        text + "    }\n"
    }

    fn kind(&self, kind: &Kind, field: &Field, is_outcome: bool) -> String {
        match kind {
            Kind::Quantity(dimension) => {
                let unit = if field.unit.is_empty() { dimension.shop } else { field.unit };
                format!("QuantityKind({}, {})", literal(dimension.name), literal(unit))
            }
            Kind::Number => "NUMBER".to_owned(),
            Kind::Count | Kind::Flag | Kind::Text | Kind::Choice(_) => "PLAIN".to_owned(),
            Kind::Optional(inner) => self.kind(inner, field, is_outcome),
            Kind::List(Kind::Number | Kind::Count) if self.owners.arrays => "ARRAY".to_owned(),
            Kind::List(inner) => format!("ListKind({})", self.kind(inner, field, is_outcome)),
            Kind::Record(record) => format!("RecordKind({})", self.record_name(record, is_outcome)),
            Kind::OneOf(alternatives) => {
                let options: Vec<String> = alternatives
                    .options
                    .iter()
                    .map(|(key, _, kind)| format!("{}: {}", literal(key), self.class(kind, is_outcome)))
                    .collect();
                format!("OneOfKind({{{}}})", options.join(", "))
            }
        }
    }

    fn record_name(&self, record: &'static Record, is_outcome: bool) -> &str {
        self.owners.name(if is_outcome { Definition::Outcome(record) } else { Definition::Input(record) })
    }

    /// The class behind an alternative's key.
    fn class(&self, kind: &Kind, is_outcome: bool) -> &str {
        match kind {
            Kind::Record(record) => self.record_name(record, is_outcome),
            _ => panic!("an alternative holds a record"),
        }
    }

    fn union(&self, alternatives: &'static Alternatives, is_outcome: bool) -> String {
        let definition = if is_outcome {
            Definition::OutcomeUnion(alternatives)
        } else {
            Definition::InputUnion(alternatives)
        };
        let classes: Vec<&str> =
            alternatives.options.iter().map(|option| self.class(&option.2, is_outcome)).collect();
        let distinct: BTreeSet<&str> = classes.iter().copied().collect();
        assert!(
            distinct.len() == classes.len(),
            "{}: each alternative needs a record of its own, so that Python can tell them apart",
            alternatives.name
        );
        let mut doc = of_type(alternatives.doc);
        for ((_, of_option, _), class) in alternatives.options.iter().zip(&classes) {
            doc += &format!("\n- `{class}`: {}", first_paragraph(of_option));
        }
        let name = self.owners.name(definition);
        format!("\n\n{name}: TypeAlias = {}\n{}", classes.join(" | "), quoted(&doc, 0))
    }
}

fn choice(choices: &Choices, name: &str) -> String {
    let options: Vec<String> =
        choices.options.iter().map(|option| format!("    {},\n", literal(option.0))).collect();
    let mut doc = of_type(choices.doc);
    doc.push('\n');
    for (option, of_option) in choices.options {
        doc += &format!("\n- `{option}`: {}", first_paragraph(of_option));
    }
    format!("\n\n{name}: TypeAlias = Literal[\n{}]\n{}", options.concat(), quoted(&doc, 0))
}

/// The doc comment of a record with a section that lists its fields.
fn with_fields(record: &Record, is_input: bool) -> String {
    let mut doc = of_type(record.doc);
    doc += "\n\nFields\n------";
    for field in record.fields {
        let or = field.also.map_or(String::new(), |also| format!(" (or `{}`)", also.name));
        doc += &format!("\n- `{}`{or}: {}", field.name, of_field(field, is_input));
    }
    doc
}
