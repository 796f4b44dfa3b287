//! The members of a C struct that a field becomes.

use coaming::declaration::{Field, Kind, Record, UNBOUNDED, accepted};

use super::names;

/// The type of a member.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Type {
    /// `double`.
    Double,
    /// `uint32_t`.
    Unsigned32,
    /// `uint8_t`.
    Unsigned8,
    /// `uint64_t`.
    Unsigned64,
}

impl Type {
    /// Its name in Rust.
    pub(crate) fn rust(self) -> &'static str {
        match self {
            Self::Double => "f64",
            Self::Unsigned32 => "u32",
            Self::Unsigned8 => "u8",
            Self::Unsigned64 => "u64",
        }
    }

    /// Its size and alignment.
    pub(crate) fn size(self) -> usize {
        match self {
            Self::Double | Self::Unsigned64 => 8,
            Self::Unsigned32 => 4,
            Self::Unsigned8 => 1,
        }
    }
}

/// A member of a struct.
pub(crate) struct Member {
    /// Its name.
    pub(crate) name: String,
    /// Its type.
    pub(crate) of: Type,
    /// Its doc comment.
    pub(crate) doc: String,
}

/// The members of a record, in order; an outcome's last one holds its caveats.
pub(crate) fn members(record: &Record, is_outcome: bool) -> Vec<Member> {
    let mut members: Vec<Member> =
        record.fields.iter().flat_map(|field| of_field(field, is_outcome)).collect();
    if is_outcome {
        members.push(Member {
            name: "caveats".to_owned(),
            of: Type::Unsigned64,
            doc: "The caveats as a set: bit COAMING_CAVEAT_... is set where that one applies.".to_owned(),
        });
    }
    members
}

/// The type that holds a flat kind.
pub(crate) fn type_of(kind: &Kind) -> Type {
    match kind {
        Kind::Count | Kind::Choice(_) => Type::Unsigned32,
        Kind::Flag => Type::Unsigned8,
        Kind::Optional(inner) => type_of(inner),
        _ => Type::Double,
    }
}

/// The kind behind an option.
pub(crate) fn plain(kind: &'static Kind) -> &'static Kind {
    match kind {
        Kind::Optional(inner) => inner,
        other => other,
    }
}

fn of_field(field: &'static Field, is_outcome: bool) -> Vec<Member> {
    let given = if is_outcome { "there" } else { "given" };
    let has = names::has(field).map(|name| Member {
        name,
        of: Type::Unsigned8,
        doc: format!("Whether `{}` is {given}: 0 is no, 1 is yes.", field.name),
    });
    let value = Member { name: names::member(field), of: type_of(&field.kind), doc: doc(field, is_outcome) };
    has.into_iter().chain([value]).collect()
}

/// The field's doc line, its unit, and for an input what is accepted.
fn doc(field: &'static Field, is_outcome: bool) -> String {
    let mut doc = field.doc.to_owned();
    match plain(&field.kind) {
        Kind::Quantity(dimension) => doc.push_str(&format!(" Unit: {}.", dimension.si)),
        Kind::Choice(choices) => {
            doc.push_str(&format!(
                " One of the constants {}_....",
                names::option(choices.name, "").trim_end_matches('_')
            ));
        }
        Kind::Flag => doc.push_str(" 0 is no, 1 is yes."),
        _ => {}
    }
    if !is_outcome && field.possible != UNBOUNDED {
        doc.push_str(&format!(" Accepted: {}.", accepted(field)));
    }
    doc
}
