//! One module of typed classes.

use coaming::Entry;
use coaming::declaration::{Alternatives, Choices, Field, Kind, Record};
use std::collections::BTreeSet;
use std::path::Path;

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

/// The definitions of one module.
pub(crate) struct Module<'a> {
    name: &'a str,
    owners: &'a Owners,
    new: Vec<Definition>,
}

impl<'a> Module<'a> {
    /// Enters the module's types.
    pub(crate) fn new(name: &'a str, entries: &[&'static Entry], owners: &'a mut Owners) -> Self {
        let calculations: Vec<&str> =
            entries.iter().flat_map(|entry| [entry.input.name, entry.outcome.name]).collect();
        let mut new = Vec::new();
        for entry in entries {
            for field in entry.input.fields {
                owners.collect(&field.kind, false, name, &calculations, &mut new);
            }
            for field in entry.outcome.fields {
                owners.collect(&field.kind, true, name, &calculations, &mut new);
            }
        }
        Self { name, owners, new }
    }

    /// The module's text.
    pub(crate) fn text(&self, entries: &[&'static Entry]) -> String {
        let mut body = String::new();
        for definition in &self.new {
            body += &match definition {
                Definition::Choice(choices) => choice(choices, self.owners.name(*definition)),
                Definition::Input(record) => self.input_record(record, self.owners.name(*definition)),
                Definition::Outcome(record) => {
                    self.outcome(record, self.owners.name(*definition), "OutcomeRecord")
                }
                Definition::InputUnion(alternatives) => self.union(alternatives, false),
                Definition::OutcomeUnion(alternatives) => self.union(alternatives, true),
            };
        }
        let mut all: Vec<&str> = self.new.iter().map(|definition| self.owners.name(*definition)).collect();
        for entry in entries {
            body += &self.calculation(entry);
            all.push(entry.input.name);
            // Calculations may share an outcome.
            if !all.contains(&entry.outcome.name) {
                body += &self.outcome(entry.outcome, entry.outcome.name, "Outcome");
                all.push(entry.outcome.name);
            }
        }
        all.sort_unstable();
        let all: Vec<String> = all.iter().map(|name| format!("    {},\n", literal(name))).collect();
        format!("{}\n__all__ = [\n{}]\n{body}", self.head(entries, &body), all.concat())
    }

    fn head(&self, entries: &[&'static Entry], body: &str) -> String {
        let uses = |name: &str| uses(body, name);
        let used = |names: &[&'static str]| -> Vec<&str> {
            names.iter().copied().filter(|name| uses(name)).collect()
        };
        let mut head = quoted(&module_doc(self.name), 0);
        head += "\nfrom __future__ import annotations\n\n";
        head += "from dataclasses import dataclass\n";
        head += &import(
            "typing",
            &[&["TYPE_CHECKING"], &*used(&["ClassVar", "Literal", "Self", "TypeAlias"])].concat(),
        );
        head.push('\n');
        head += &import(
            "coaming._boundary",
            &used(&["Calculation", "Outcome", "OutcomeRecord", "Record", "SiValues", "calculate"]),
        );
        head += &import("coaming._inputs", &used(&["given_as"]));
        head += &import(
            "coaming._kinds",
            &used(&["NUMBER", "PLAIN", "Kind", "ListKind", "OneOfKind", "QuantityKind", "RecordKind"]),
        );
        for (module, names) in self.imported(entries) {
            head += &import(&format!("coaming.{module}"), &names);
        }
        let mut only_checked = String::new();
        let collections = import("collections.abc", &used(&["Mapping", "Sequence"]));
        let types = import(
            "coaming.types",
            &used(&[
                "NumberEntry",
                "NumberInput",
                "NumberList",
                "Quantity",
                "QuantityEntry",
                "QuantityInput",
                "QuantityList",
                "Values",
            ]),
        );
        for line in [collections, types] {
            if !line.is_empty() && !only_checked.is_empty() {
                only_checked.push('\n');
            }
            if !line.is_empty() {
                only_checked += &line.lines().map(|line| format!("    {line}\n")).collect::<String>();
            }
        }
        format!("{head}\nif TYPE_CHECKING:\n{only_checked}")
    }

    /// The types that an earlier module defines, by module.
    fn imported(&self, entries: &[&'static Entry]) -> Vec<(String, Vec<&str>)> {
        let mut found: BTreeSet<(&str, &str)> = BTreeSet::new();
        for entry in entries {
            for (record, is_outcome) in [(entry.input, false), (entry.outcome, true)] {
                for field in record.fields {
                    self.foreign(&field.kind, is_outcome, &mut found);
                }
            }
        }
        let mut modules: Vec<(String, Vec<&str>)> = Vec::new();
        for (module, name) in found {
            match modules.last_mut().filter(|last| last.0 == module) {
                Some(last) => last.1.push(name),
                None => modules.push((module.to_owned(), vec![name])),
            }
        }
        modules
    }

    /// The types of a kind that stand in another module, as far as this module names them.
    fn foreign<'s>(
        &'s self,
        kind: &'static Kind,
        is_outcome: bool,
        found: &mut BTreeSet<(&'s str, &'s str)>,
    ) {
        let definition = match kind {
            Kind::Optional(inner) | Kind::List(inner) => return self.foreign(inner, is_outcome, found),
            Kind::Choice(choices) => Definition::Choice(choices),
            Kind::Record(record) if is_outcome => Definition::Outcome(record),
            Kind::Record(record) => Definition::Input(record),
            Kind::OneOf(alternatives) if is_outcome => Definition::OutcomeUnion(alternatives),
            Kind::OneOf(alternatives) => Definition::InputUnion(alternatives),
            _ => return,
        };
        let is_own = self.owners.find(&definition).is_none_or(|owner| owner.module == self.name);
        if !is_own {
            if let Some(owner) = self.owners.find(&definition) {
                found.insert((&owner.module, &owner.name));
            }
            // A union's field lists its records by class.
            if let Kind::OneOf(alternatives) = kind {
                for option in alternatives.options {
                    self.foreign(&option.2, is_outcome, found);
                }
            }
            return;
        }
        match kind {
            Kind::Record(record) => {
                record.fields.iter().for_each(|field| self.foreign(&field.kind, is_outcome, found));
            }
            Kind::OneOf(alternatives) => {
                alternatives.options.iter().for_each(|option| self.foreign(&option.2, is_outcome, found));
            }
            _ => {}
        }
    }

    fn calculation(&self, entry: &Entry) -> String {
        let name = entry.input.name;
        let mut text = format!(
            "\n\n@dataclass(frozen=True, kw_only=True, eq=False)\nclass {name}(Calculation):\n{}\n",
            quoted(&with_fields(entry.input, true), 4)
        );
        text += &format!("    _name: ClassVar[str] = {}\n", literal(entry.name));
        text += &self.kinds(entry.input, false);
        text += &self.input_fields(entry.input, false);
        text += &format!("\n    def calculate(self) -> {}:\n", entry.outcome.name);
        text += &quoted("Calculates; a fault raises `CoamingError`.", 8);
        text += &format!("        return calculate(self, {})\n", entry.outcome.name);
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

    fn outcome(&self, record: &Record, name: &str, base: &str) -> String {
        let doc = quoted(&of_type(record.doc), 4);
        let mut text = format!("\n\nclass {name}({base}):\n{doc}\n    __slots__ = ()\n\n");
        text += &self.kinds(record, true);
        text += "\n    class Si(SiValues):\n";
        text += &quoted("In SI units: floats; arrays in the outcome of a batch.", 8);
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

/// An import of names; none where there are no names.
fn import(from: &str, names: &[&str]) -> String {
    let line = format!("from {from} import {}\n", names.join(", "));
    match names {
        [] => String::new(),
        // Within `if TYPE_CHECKING` it is indented.
        _ if line.chars().count() + 4 <= 110 => line,
        _ => {
            let names: Vec<String> = names.iter().map(|name| format!("    {name},\n")).collect();
            format!("from {from} import (\n{})\n", names.concat())
        }
    }
}

/// True where the text has the word as a whole name.
fn uses(text: &str, name: &str) -> bool {
    let is_part = |c: char| c.is_alphanumeric() || c == '_';
    text.match_indices(name).any(|(at, _)| {
        let before = text.get(..at).and_then(|before| before.chars().next_back());
        let after = text.get(at + name.len()..).and_then(|after| after.chars().next());
        !before.is_some_and(is_part) && !after.is_some_and(is_part)
    })
}

/// What the module's own Rust file says first.
fn module_doc(module: &str) -> String {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../coaming/src/{module}/mod.rs"));
    let text = std::fs::read_to_string(&file).unwrap_or_default();
    let lines: Vec<&str> = text
        .lines()
        .map_while(|line| line.strip_prefix("//!"))
        .map(|line| line.strip_prefix(' ').unwrap_or(line))
        .collect();
    of_type(&lines.join("\n"))
}
