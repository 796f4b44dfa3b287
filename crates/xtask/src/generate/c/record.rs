//! The Rust source of one record: its C struct, its conversion, and the compile-time check of its layout.

use coaming::declaration::{Field, Kind, Record};

use super::member::{members, plain};
use super::{layout, names};

/// The struct of a record with the constants of its places.
pub(super) fn structure(record: &'static Record, is_outcome: bool) -> String {
    let name = names::structure(record);
    let members = members(record, is_outcome);
    let layout = layout::of(&members);
    let mut text = String::new();
    for (place, field) in record.fields.iter().enumerate().filter(|(_, field)| field.kind.is_scalar()) {
        let constant = names::place(record, field);
        text.push_str(&format!(
            "/// The place of `{}` in {name}.\npub const {constant}: u32 = {place};\n\n",
            field.name
        ));
    }
    text.push_str(&doc_lines(&for_c(record.doc)));
    text.push_str(&format!("#[derive(Debug, Clone, Copy)]\n#[repr(C)]\npub struct {name} {{\n"));
    for member in &members {
        text.push_str(&format!(
            "{}pub {}: {},\n",
            doc_lines(&for_c(&member.doc)),
            member.name,
            member.of.rust()
        ));
    }
    text.push_str("}\n\nconst _: () = {\n");
    text.push_str(&format!("assert!(size_of::<{name}>() == {});\n", layout.size));
    for (member, offset) in members.iter().zip(&layout.offsets) {
        text.push_str(&format!("assert!(offset_of!({name}, {}) == {offset});\n", member.name));
    }
    text.push_str("};\n\n");
    text
}

/// The expression that makes a field of the calculation's input from the C struct.
pub(super) fn from_c(field: &'static Field) -> String {
    let (name, member) = (field.name, names::member(field));
    let kind = plain(&field.kind);
    match (names::has(field), kind) {
        (Some(has), Kind::Choice(_)) => format!("optional_choice(self.{has}, {name:?}, self.{member})?"),
        (Some(has), _) => format!("(self.{has} != 0).then_some({})", value_from_c(kind, &member)),
        (None, Kind::Choice(_)) => format!("choice({name:?}, self.{member})?"),
        (None, _) => value_from_c(kind, &member),
    }
}

fn value_from_c(kind: &Kind, member: &str) -> String {
    match kind {
        Kind::Quantity(_) => format!("si(self.{member})"),
        Kind::Flag => format!("self.{member} != 0"),
        _ => format!("self.{member}"),
    }
}

/// The member initialisers that hold a field of the calculation's outcome.
pub(super) fn to_c(field: &'static Field) -> String {
    let (name, member) = (field.name, names::member(field));
    let kind = plain(&field.kind);
    match names::has(field) {
        None => format!("{member}: {},\n", value_to_c(kind, &format!("outcome.{name}"))),
        Some(has) => {
            let value = match kind {
                Kind::Quantity(_) => format!("outcome.{name}.map_or(0.0, |value| value.value)"),
                Kind::Flag => format!("outcome.{name}.map_or(0, u8::from)"),
                Kind::Choice(_) => format!("outcome.{name}.map_or(0, Choice::number)"),
                _ => format!("outcome.{name}.unwrap_or_default()"),
            };
            format!("{has}: u8::from(outcome.{name}.is_some()),\n{member}: {value},\n")
        }
    }
}

fn value_to_c(kind: &Kind, value: &str) -> String {
    match kind {
        Kind::Quantity(_) => format!("{value}.value"),
        Kind::Flag => format!("u8::from({value})"),
        Kind::Choice(_) => format!("Choice::number({value})"),
        _ => value.to_owned(),
    }
}

/// A doc comment as C shows it: without the Rust example, links as plain names.
pub(super) fn for_c(doc: &str) -> String {
    let doc = doc.split("\n# Example").next().unwrap_or(doc).trim_end();
    doc.replace("[`", "`").replace("`]", "`").replace("*/", "* /")
}

/// Text as the lines of a doc comment.
pub(super) fn doc_lines(text: &str) -> String {
    text.lines().map(|line| format!("/// {line}").trim_end().to_owned() + "\n").collect()
}
