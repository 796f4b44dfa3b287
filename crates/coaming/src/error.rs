//! Why no number can be given: one variant per cause, each with a permanent code.

use crate::declaration::nearest::suggestion;

/// The cause of a refusal. An error means that no number can be given; a strained assumption is a
/// [`Caveat`](crate::Caveat) instead.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// The value of a field cannot be: negative where it must be positive, outside its possible range, not finite.
    #[error("{field}: {shown} is not possible; accepted: {accepted}")]
    Impossible {
        /// Path of the field.
        field: String,
        /// The value, in SI units.
        value: f64,
        /// The value as a person reads it, with its shop unit.
        shown: String,
        /// What is accepted.
        accepted: String,
    },
    /// A choice was given that is not among the options.
    #[error("{field}: `{value}` is not an option; accepted: {accepted}{}", suggestion(nearest))]
    NotAnOption {
        /// Path of the field.
        field: String,
        /// What was given.
        value: String,
        /// The options.
        accepted: String,
        /// The option that is spelt most like it.
        nearest: Option<String>,
    },
    /// Two or more fields contradict each other.
    #[error("{fields}: {reason}")]
    Inconsistent {
        /// Paths of the fields.
        fields: String,
        /// Why they do not go together, and what is accepted.
        reason: String,
    },
    /// An iteration did not converge.
    #[error("{what} did not converge; last residual {residual:e}")]
    NotConverged {
        /// What was sought.
        what: String,
        /// The last residual.
        residual: f64,
    },
    /// A required field is absent.
    #[error("{field}: missing; needed: {needed}")]
    Missing {
        /// Path of the field.
        field: String,
        /// What it is.
        needed: String,
    },
    /// The text or value is no quantity of the dimension that is due.
    #[error("{field}: `{text}` is not {expected}: {reason}")]
    NotAQuantity {
        /// Path of the field; empty where the text was read alone.
        field: String,
        /// What was given.
        text: String,
        /// The dimension that is due, with an example.
        expected: String,
        /// What is wrong with it.
        reason: String,
    },
    /// The value has another type than the one that is due.
    #[error("{field}: {found} stands where {expected} is due")]
    WrongType {
        /// Path of the field.
        field: String,
        /// What was found.
        found: String,
        /// What is due.
        expected: String,
    },
    /// A key that the record does not have.
    #[error("{field}: unknown key{}", suggestion(nearest))]
    UnknownKey {
        /// Path of the key.
        field: String,
        /// The known key that is spelt most like it.
        nearest: Option<String>,
    },
    /// A key that stands twice in one record.
    #[error("{field}: given twice")]
    Repeated {
        /// Path of the key.
        field: String,
    },
    /// A material that no table has.
    #[error("{field}: unknown material `{name}`{}", suggestion(nearest))]
    UnknownMaterial {
        /// Path of the field.
        field: String,
        /// The name that was asked for.
        name: String,
        /// The known names that are spelt most like it.
        nearest: Option<String>,
    },
    /// A calculation that the registry does not have.
    #[error("unknown calculation `{name}`{}", suggestion(nearest))]
    UnknownCalculation {
        /// The name that was asked for.
        name: String,
        /// The known name that is spelt most like it.
        nearest: Option<String>,
    },
    /// Text that cannot be read as a document.
    #[error("cannot be read: {reason}")]
    Unreadable {
        /// What is wrong, in the reader's words.
        reason: String,
    },
    /// More than is accepted: a list, a text or a nesting past its limit.
    #[error("{field}: too large: {found}; accepted: {accepted}")]
    TooLarge {
        /// Path of the field, or the document.
        field: String,
        /// How much was found.
        found: String,
        /// The limit.
        accepted: String,
    },
    /// A shape that cannot be: it crosses itself, or a hole lies outside it.
    #[error("{place}: {reason}")]
    Geometry {
        /// The place, in the caller's coordinates.
        place: String,
        /// What is wrong there.
        reason: String,
    },
    /// The body is free to move.
    #[error("free to move: {motion}")]
    Singular {
        /// The free motion.
        motion: String,
    },
    /// A result came out infinite or not a number.
    #[error("{field}: the result is not finite; the inputs are outside what the formula can hold")]
    NotFinite {
        /// The outcome's field.
        field: String,
    },
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
    /// A row of a batch failed.
    #[error("row {row}: {cause}")]
    AtRow {
        /// The lowest failing row, from 0.
        row: u64,
        /// Why it failed.
        cause: Box<Error>,
    },
    /// A fault at a place of a document.
    #[error("line {line}, column {column}: {cause}")]
    InDocument {
        /// Line, from 1.
        line: u64,
        /// Column, from 1.
        column: u64,
        /// What is wrong there.
        cause: Box<Error>,
    },
}

impl Error {
    /// A relation between fields that cannot hold: `fields` separated by commas, and what is accepted.
    pub fn inconsistent(fields: impl Into<String>, reason: impl Into<String>) -> Self {
        Self::Inconsistent { fields: fields.into(), reason: reason.into() }
    }

    /// The permanent code: C returns it as the status, Python as `.code`. A row or document wrapper has its cause's.
    pub fn code(&self) -> u32 {
        match self {
            Self::Impossible { .. } => 1,
            Self::NotAnOption { .. } => 2,
            Self::Inconsistent { .. } => 3,
            Self::NotConverged { .. } => 4,
            Self::Missing { .. } => 5,
            Self::NotAQuantity { .. } => 6,
            Self::UnknownKey { .. } => 7,
            Self::UnknownMaterial { .. } => 8,
            Self::Unreadable { .. } => 9,
            Self::Geometry { .. } => 10,
            Self::Singular { .. } => 11,
            Self::NotFinite { .. } => 12,
            Self::Cancelled => 13,
            Self::WrongType { .. } => 14,
            Self::Repeated { .. } => 15,
            Self::TooLarge { .. } => 16,
            Self::UnknownCalculation { .. } => 17,
            Self::AtRow { cause, .. } | Self::InDocument { cause, .. } => cause.code(),
        }
    }

    /// Every code with its name, sentence and cure, in the order of the code.
    pub const CODES: &'static [(u32, &'static str, &'static str, &'static str)] = &[
        (
            1,
            "impossible",
            "A value lies outside what is possible.",
            "Give a value within the range that is named.",
        ),
        (2, "not_an_option", "A choice is not among its options.", "Use one of the options that are named."),
        (3, "inconsistent", "Fields contradict each other.", "Change one of the fields that are named."),
        (4, "not_converged", "An iteration did not converge.", "Check the inputs for extremes."),
        (5, "missing", "A required field is absent.", "Give the field that is named."),
        (
            6,
            "not_a_quantity",
            "A text is no quantity of its dimension.",
            "Give a number with a unit, such as `3 mm`.",
        ),
        (7, "unknown_key", "A key is not known.", "Correct its spelling, or remove it."),
        (
            8,
            "unknown_material",
            "A material is not known.",
            "Use a known name, or give a record of your own.",
        ),
        (9, "unreadable", "A text cannot be read.", "Mend it at the place that is named."),
        (10, "geometry", "A shape cannot be.", "Mend the outline at the place that is named."),
        (11, "singular", "The body is free to move.", "Add a support against the motion that is named."),
        (12, "not_finite", "A result is not finite.", "Bring extreme inputs back to a practical size."),
        (13, "cancelled", "The caller asked to stop.", "Call again."),
        (14, "wrong_type", "A value has another type than the one due.", "Give the type that is named."),
        (15, "repeated", "A key stands twice.", "Remove one of the two."),
        (16, "too_large", "A list, text or nesting is past its limit.", "Split or shorten it."),
        (17, "unknown_calculation", "A calculation is not known.", "Use a name of the registry."),
    ];

    fn row_of_codes(&self) -> (&'static str, &'static str) {
        let code = self.code();
        Self::CODES.iter().find(|row| row.0 == code).map_or(("", ""), |row| (row.1, row.3))
    }

    /// The cause's name in snake case.
    pub fn name(&self) -> &'static str {
        self.row_of_codes().0
    }

    /// What would cure it, in one sentence.
    pub fn cure(&self) -> &'static str {
        self.row_of_codes().1
    }

    /// The path of the field that is at fault; empty where there is none.
    pub fn field(&self) -> &str {
        match self {
            Self::Impossible { field, .. }
            | Self::NotAnOption { field, .. }
            | Self::Missing { field, .. }
            | Self::NotAQuantity { field, .. }
            | Self::WrongType { field, .. }
            | Self::UnknownKey { field, .. }
            | Self::Repeated { field }
            | Self::UnknownMaterial { field, .. }
            | Self::TooLarge { field, .. }
            | Self::NotFinite { field } => field,
            Self::Inconsistent { fields, .. } => fields,
            Self::AtRow { cause, .. } | Self::InDocument { cause, .. } => cause.field(),
            _ => "",
        }
    }

    /// The value at fault in SI units, where it is one number.
    pub fn value(&self) -> Option<f64> {
        match self {
            Self::Impossible { value, .. } => Some(*value),
            Self::NotConverged { residual, .. } => Some(*residual),
            Self::AtRow { cause, .. } | Self::InDocument { cause, .. } => cause.value(),
            _ => None,
        }
    }

    /// The row of a batch that failed.
    pub fn row(&self) -> Option<u64> {
        match self {
            Self::AtRow { row, .. } => Some(*row),
            _ => None,
        }
    }

    /// Line and column in the document, from 1.
    pub fn position(&self) -> Option<(u64, u64)> {
        match self {
            Self::InDocument { line, column, .. } => Some((*line, *column)),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_code_has_one_row() {
        let codes: Vec<u32> = Error::CODES.iter().map(|row| row.0).collect();
        assert_eq!(codes, (1..=codes.len() as u32).collect::<Vec<_>>());
    }

    #[test]
    fn a_wrapped_error_speaks_for_its_cause() {
        let cause = Error::Impossible {
            field: "thickness".into(),
            value: -0.001,
            shown: "-1 mm".into(),
            accepted: "greater than 0 mm".into(),
        };
        let wrapped = Error::InDocument { line: 3, column: 13, cause: Box::new(cause) };
        assert_eq!((wrapped.code(), wrapped.field(), wrapped.value()), (1, "thickness", Some(-0.001)));
        assert_eq!(
            wrapped.to_string(),
            "line 3, column 13: thickness: -1 mm is not possible; accepted: greater than 0 mm"
        );
    }
}
