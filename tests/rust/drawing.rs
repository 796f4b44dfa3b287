//! Inputs drawn from bytes: the tables of the registry say what a field can hold, the bytes say what it holds here.
//!
//! Properties and fuzzing draw from the same generator. Most numbers are of a practical size, so that a formula is
//! reached; the rest are bounds, extremes and values of a wrong kind.

use coaming::declaration::{Field, Kind};
use coaming::quantity::{Dimension, for_data, read};
use serde_json::{Map, Value, json};

/// Bytes that are taken one by one; zeros once they are used up.
#[derive(Debug)]
pub struct Bytes<'a> {
    rest: &'a [u8],
}

impl<'a> Bytes<'a> {
    /// All of the bytes.
    pub const fn new(rest: &'a [u8]) -> Self {
        Self { rest }
    }

    /// The next byte.
    pub fn byte(&mut self) -> u8 {
        match self.rest.split_first() {
            Some((first, rest)) => {
                self.rest = rest;
                *first
            }
            None => 0,
        }
    }

    /// A number below `bound`.
    pub fn below(&mut self, bound: usize) -> usize {
        let drawn = usize::from(self.byte()) << 8 | usize::from(self.byte());
        drawn % bound.max(1)
    }

    /// A number from 0 to 1.
    pub fn share(&mut self) -> f64 {
        f64::from(u16::from_le_bytes([self.byte(), self.byte()])) / f64::from(u16::MAX)
    }

    /// Any `f64`, NaN and infinities included.
    pub fn float(&mut self) -> f64 {
        let mut eight = [0; 8];
        eight.fill_with(|| self.byte());
        f64::from_le_bytes(eight)
    }

    /// What is left.
    pub const fn rest(&self) -> &'a [u8] {
        self.rest
    }
}

/// An input for a record.
pub fn record(fields: &'static [Field], bytes: &mut Bytes<'_>) -> Value {
    let mut drawn = Map::new();
    for field in fields {
        if let Some(value) = value(field, &field.kind, bytes, 0) {
            drawn.insert(field.name.to_owned(), value);
        }
    }
    Value::Object(drawn)
}

fn value(field: &'static Field, kind: &'static Kind, bytes: &mut Bytes<'_>, depth: usize) -> Option<Value> {
    if bytes.byte() == 0xFF {
        return Some(of_a_wrong_kind(bytes));
    }
    Some(match kind {
        Kind::Quantity(dimension) => {
            let si = number(field, Some(dimension), bytes);
            if si.is_finite() {
                json!(for_data(si, dimension, dimension.shop))
            } else {
                json!(format!("{si} {}", dimension.si))
            }
        }
        Kind::Number => json!(number(field, None, bytes)),
        Kind::Count => json!(count(field, bytes)),
        Kind::Flag => json!(bytes.byte() % 2 == 1),
        Kind::Text => json!(format!("name {}", bytes.byte() % 4)),
        Kind::Choice(choices) => json!(choices.options[bytes.below(choices.options.len())].0),
        Kind::OneOf(alternatives) => {
            let (key, _, behind) = &alternatives.options[bytes.below(alternatives.options.len())];
            json!({ *key: value(field, behind, bytes, depth + 1)? })
        }
        Kind::Record(of) if depth < 6 => {
            let mut drawn = Map::new();
            for field in of.fields {
                if let Some(entry) = value(field, &field.kind, bytes, depth + 1) {
                    drawn.insert(field.name.to_owned(), entry);
                }
            }
            Value::Object(drawn)
        }
        Kind::Record(_) => return None,
        Kind::List(inner) => {
            let length = usize::from(bytes.byte() % 6);
            Value::Array((0..length).filter_map(|_| value(field, inner, bytes, depth + 1)).collect())
        }
        Kind::Optional(_) if bytes.byte().is_multiple_of(3) => return None,
        Kind::Optional(inner) => return value(field, inner, bytes, depth),
    })
}

fn of_a_wrong_kind(bytes: &mut Bytes<'_>) -> Value {
    match bytes.byte() % 8 {
        0 => Value::Null,
        1 => json!(bytes.byte() % 2 == 1),
        2 => json!(bytes.float()),
        3 => json!(String::from_utf8_lossy(bytes.rest().get(..8).unwrap_or(&[]))),
        4 => json!([]),
        5 => json!({}),
        6 => json!("1 mm"),
        _ => json!(u64::MAX),
    }
}

/// A number of a field in SI units.
fn number(field: &Field, dimension: Option<&'static Dimension>, bytes: &mut Bytes<'_>) -> f64 {
    let (low, high) = field.possible;
    let clamped = |si: f64| if low <= high { si.clamp(low, high) } else { si };
    match bytes.byte() {
        0..=9 => clamped(f64::NEG_INFINITY),
        10..=19 => clamped(f64::INFINITY),
        20..=24 => clamped(0.0),
        25..=29 => bytes.float(),
        30..=34 => clamped(bytes.float().abs()),
        35..=39 => -typical(dimension, bytes),
        40..=109 if field.tested.0.is_finite() && field.tested.1.is_finite() => {
            let share = bytes.share();
            field.tested.0 * (1.0 - share) + field.tested.1 * share
        }
        40..=79 if low.is_finite() && high.is_finite() => {
            let share = bytes.share();
            low * (1.0 - share) + high * share
        }
        _ => clamped(typical(dimension, bytes)),
    }
}

/// A number near the example that the dimension's messages show, within some powers of ten.
fn typical(dimension: Option<&'static Dimension>, bytes: &mut Bytes<'_>) -> f64 {
    let example = dimension.map_or(1.0, |dimension| {
        let first = dimension.example.split(" or ").next().unwrap_or_default();
        read(first, dimension).unwrap_or(1.0)
    });
    if dimension.is_some_and(|dimension| dimension.is_absolute_temperature) {
        return 200.0 + 200.0 * bytes.share();
    }
    let decades = [0, 0, 0, 1, -1, 2, -2, 3][usize::from(bytes.byte() % 8)];
    let power =
        (0..i32::abs(decades)).fold(1.0, |power, _| if decades > 0 { power * 10.0 } else { power / 10.0 });
    example * power * (0.1 + 2.0 * bytes.share())
}

fn count(field: &Field, bytes: &mut Bytes<'_>) -> u32 {
    let (low, high) = field.possible;
    match bytes.byte() {
        0..=4 => u32::MAX,
        5..=9 => low.max(0.0) as u32,
        10..=14 => high.min(f64::from(u32::MAX)) as u32,
        15..=19 => 0,
        _ => (low.max(0.0) as u32).saturating_add(u32::from(bytes.byte() % 12)),
    }
}
