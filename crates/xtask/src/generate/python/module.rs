//! One module: its classes in an order in which each finds what it is made of, and its imports.

use coaming::Entry;
use coaming::declaration::Kind;
use std::collections::BTreeSet;
use std::path::Path;

use super::classes::Classes;
use super::docs::{literal, of_type, quoted};
use super::names::{Definition, Owners};

/// A class or type with what it needs.
struct Item<'a> {
    name: &'a str,
    text: String,
    /// Module and name of each type that stands in its fields.
    needs: BTreeSet<(&'a str, &'a str)>,
}

/// The definitions of one module.
pub(crate) struct Module<'a> {
    name: &'a str,
    doc: String,
    items: Vec<Item<'a>>,
}

impl<'a> Module<'a> {
    /// Enters the module's types, and makes its classes.
    pub(crate) fn new(name: &'a str, entries: &[&'static Entry], owners: &'a mut Owners) -> Self {
        let mut new = Vec::new();
        // Inputs first: where both sides have a type of one name, the input keeps it.
        for entry in entries {
            entry.input.fields.iter().for_each(|field| owners.collect(&field.kind, false, name, &mut new));
        }
        for entry in entries {
            entry.outcome.fields.iter().for_each(|field| owners.collect(&field.kind, true, name, &mut new));
        }
        let owners: &Owners = owners;
        let classes = Classes { owners };
        let of_definition = |definition: &Definition| Item {
            name: owners.name(*definition),
            text: classes.definition(*definition),
            needs: needs(owners, *definition),
        };
        let mut items: Vec<Item<'a>> = new.iter().map(of_definition).collect();
        for entry in entries {
            let (input, outcome) = (Definition::Input(entry.input), Definition::Outcome(entry.outcome));
            let mut of_input = Item {
                name: owners.name(input),
                text: classes.calculation(entry),
                needs: needs(owners, input),
            };
            let name_of_outcome = owners.name(outcome);
            if owners.module(outcome) != name {
                of_input.needs.insert((owners.module(outcome), name_of_outcome));
            }
            items.push(of_input);
            if owners.module(outcome) == name && !items.iter().any(|item| item.name == name_of_outcome) {
                let text = classes.outcome(entry.outcome, name_of_outcome, "Outcome");
                items.push(Item { name: name_of_outcome, text, needs: needs(owners, outcome) });
            }
        }
        Self { name, doc: module_doc(&format!("coaming/src/{name}/mod.rs")), items: ordered(name, items) }
    }

    /// A module of outcomes alone, which calls by hand give; `source` is the Rust file, below `crates`, that declares them.
    pub(crate) fn of_outcomes(
        name: &'a str,
        source: &str,
        kinds: &'static [Kind],
        owners: &'a mut Owners,
    ) -> Self {
        let mut new = Vec::new();
        kinds.iter().for_each(|kind| owners.collect(kind, true, name, &mut new));
        let owners: &Owners = owners;
        let classes = Classes { owners };
        let item = |definition: &Definition| Item {
            name: owners.name(*definition),
            text: classes.definition(*definition),
            needs: needs(owners, *definition),
        };
        Self { name, doc: module_doc(source), items: ordered(name, new.iter().map(item).collect()) }
    }

    /// The module's text.
    pub(crate) fn text(&self) -> String {
        let body: String = self.items.iter().map(|item| item.text.as_str()).collect();
        let mut all: Vec<&str> = self.items.iter().map(|item| item.name).collect();
        all.sort_unstable();
        let all: Vec<String> = all.iter().map(|name| format!("    {},\n", literal(name))).collect();
        format!("{}\n__all__ = [\n{}]\n{body}", self.head(&body), all.concat())
    }

    fn head(&self, body: &str) -> String {
        let uses = |name: &str| uses(body, name);
        let used = |names: &[&'static str]| -> Vec<&str> {
            names.iter().copied().filter(|name| uses(name)).collect()
        };
        let mut head = quoted(&self.doc, 0);
        head += "\nfrom __future__ import annotations\n\n";
        head += &import("dataclasses", &used(&["dataclass"]));
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
            &used(&[
                "ARRAY",
                "NUMBER",
                "PLAIN",
                "Kind",
                "ListKind",
                "OneOfKind",
                "QuantityKind",
                "RecordKind",
            ]),
        );
        for (module, names) in self.imported() {
            head += &import(&format!("coaming.{module}"), &names);
        }
        let mut only_checked = String::new();
        let collections = import("collections.abc", &used(&["Mapping", "Sequence"]));
        let types = import(
            "coaming.types",
            &used(&[
                "Floats",
                "Indices",
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

    /// The types that another module defines, by module.
    fn imported(&self) -> Vec<(&str, Vec<&str>)> {
        let all: BTreeSet<(&str, &str)> =
            self.items.iter().flat_map(|item| item.needs.iter().copied()).collect();
        let mut modules: Vec<(&str, Vec<&str>)> = Vec::new();
        for (module, name) in all.into_iter().filter(|need| need.0 != self.name) {
            match modules.last_mut().filter(|last| last.0 == module) {
                Some(last) => last.1.push(name),
                None => modules.push((module, vec![name])),
            }
        }
        modules
    }
}

/// Module and name of each type that a definition names in its fields.
fn needs(owners: &Owners, definition: Definition) -> BTreeSet<(&str, &str)> {
    let mut found = BTreeSet::new();
    for kind in definition.inner() {
        add_needs(owners, kind, definition.is_outcome(), &mut found);
    }
    found
}

fn add_needs<'a>(
    owners: &'a Owners,
    kind: &Kind,
    is_outcome: bool,
    found: &mut BTreeSet<(&'a str, &'a str)>,
) {
    if let Kind::Optional(inner) | Kind::List(inner) = kind {
        return add_needs(owners, inner, is_outcome, found);
    }
    if let Some(definition) = Definition::of(kind, is_outcome) {
        found.insert((owners.module(definition), owners.name(definition)));
        // The field of a union lists its records by class.
        if let Kind::OneOf(_) = kind {
            definition.inner().iter().for_each(|inner| add_needs(owners, inner, is_outcome, found));
        }
    }
}

/// The items with each behind what it needs, and otherwise in their own order.
fn ordered<'a>(module: &str, mut items: Vec<Item<'a>>) -> Vec<Item<'a>> {
    let mut ordered: Vec<Item<'a>> = Vec::new();
    while !items.is_empty() {
        let waits = |item: &Item<'_>| {
            items.iter().any(|other| other.name != item.name && item.needs.contains(&(module, other.name)))
        };
        let next = items.iter().position(|item| !waits(item));
        ordered.push(items.remove(next.unwrap_or_else(|| panic!("{module}: types that hold each other"))));
    }
    ordered
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

/// What a Rust file below `crates` says first.
fn module_doc(source: &str) -> String {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(source);
    let text = std::fs::read_to_string(&file).unwrap_or_default();
    let lines: Vec<&str> = text
        .lines()
        .map_while(|line| line.strip_prefix("//!"))
        .map(|line| line.strip_prefix(' ').unwrap_or(line))
        .collect();
    of_type(&lines.join("\n"))
}
