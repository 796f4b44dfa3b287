//! Reading a quantity as people write it: `3 mm`, `1 1/8 in`, `2.4 N·m`, `16 ga steel`, `60 degC`, `40 %`.

use super::dimension::Dimension;
use super::exact::Exact;
use super::{gauge, unit};
use crate::error::Error;

/// A text longer than this is no quantity.
const LONGEST: usize = 200;

/// Reads a quantity of the given dimension to its SI value, rounded once.
///
/// # Errors
/// [`Error::NotAQuantity`] with what is wrong: no number, no unit, an unknown unit, a unit of another dimension, a
/// decimal comma, a number that is not finite.
pub fn read(text: &str, dimension: &'static Dimension) -> Result<f64, Error> {
    read_exact(text, dimension).and_then(|exact| finite(&exact)).map_err(|reason| Error::NotAQuantity {
        field: String::new(),
        text: shortened(text),
        expected: format!("a {} such as {}", dimension.name, dimension.example),
        reason,
    })
}

/// Reads a plain number: `0.4`, `40 %`, `3/8`.
///
/// # Errors
/// [`Error::NotAQuantity`] where it is no number, has a unit, or is not finite.
pub fn read_number(text: &str) -> Result<f64, Error> {
    let value = short_enough(text).and_then(|text| {
        let (number, rest) = split(text)?;
        match rest {
            "" => finite(&number),
            "%" => finite(
                &Exact::whole(100).to_power(-1).map_or_else(Exact::one, |percent| number.times(&percent)),
            ),
            other => Err(format!("`{other}` stands behind the number, and a plain number has no unit")),
        }
    });
    value.map_err(|reason| Error::NotAQuantity {
        field: String::new(),
        text: shortened(text),
        expected: "a number such as 0.4 or 40 %".to_owned(),
        reason,
    })
}

fn shortened(text: &str) -> String {
    if text.chars().count() <= 60 {
        text.to_owned()
    } else {
        text.chars().take(57).chain("...".chars()).collect()
    }
}

fn short_enough(text: &str) -> Result<&str, String> {
    if text.len() > LONGEST { Err(format!("longer than {LONGEST} characters")) } else { Ok(text.trim()) }
}

fn finite(exact: &Exact) -> Result<f64, String> {
    let value = exact.rounded();
    if value.is_finite() { Ok(value) } else { Err("larger than any number that can be held".to_owned()) }
}

fn read_exact(text: &str, dimension: &'static Dimension) -> Result<Exact, String> {
    let (number, rest) = split(short_enough(text)?)?;
    if rest.is_empty() {
        return Err("it needs a unit".to_owned());
    }
    if *dimension == Dimension::LENGTH
        && let Some(thickness) = gauge::thickness(&number, rest)
    {
        return thickness;
    }
    let unit = unit::read(rest, dimension)?;
    Ok(number.plus(&unit.offset).times(&unit.factor))
}

/// Splits a text into its leading number (decimal, `a/b` or `n a/b`) and the rest behind it.
fn split(text: &str) -> Result<(Exact, &str), String> {
    let (first, rest) = decimal(text)?;
    let whole = |piece: &str| piece.trim_start_matches('-').bytes().all(|byte| byte.is_ascii_digit());
    if whole(first) {
        if let Some((below, behind)) = rest.strip_prefix('/').and_then(digits) {
            return Ok((fraction(first, below)?, behind.trim_start()));
        }
        // A mixed number: `1 1/8 in`. The unit `1/K` has no digits below its line and is left alone.
        let after = rest.trim_start();
        if after.len() < rest.len()
            && let Some((above, behind)) = digits(after)
            && let Some((below, behind)) = behind.strip_prefix('/').and_then(digits)
        {
            let whole = exact(first)?;
            let part = fraction(above, below)?;
            let sum = if first.starts_with('-') { whole.minus(&part) } else { whole.plus(&part) };
            return Ok((sum, behind.trim_start()));
        }
    }
    Ok((exact(first)?, rest.trim_start()))
}

fn fraction(above: &str, below: &str) -> Result<Exact, String> {
    exact(above)?.over(&exact(below)?).ok_or_else(|| "a fraction over zero".to_owned())
}

fn exact(digits: &str) -> Result<Exact, String> {
    Exact::decimal(digits).ok_or_else(|| format!("`{digits}` is out of range"))
}

fn digits(text: &str) -> Option<(&str, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    if end == 0 { None } else { text.split_at_checked(end) }
}

/// The longest decimal at the start of a text, and what stands behind it.
fn decimal(text: &str) -> Result<(&str, &str), String> {
    let text = text.strip_prefix('+').unwrap_or(text);
    let bytes = text.as_bytes();
    let at = |place: usize| bytes.get(place).copied().unwrap_or(b' ');
    let run = |mut place: usize| {
        while at(place).is_ascii_digit() {
            place += 1;
        }
        place
    };
    let start = usize::from(at(0) == b'-');
    let mut end = run(start);
    let mut some = end > start;
    if at(end) == b'.' {
        let after = run(end + 1);
        some |= after > end + 1;
        end = after;
    }
    if !some {
        return Err(
            match text.trim_start_matches(['-', '+']).get(..3).map(str::to_ascii_lowercase).as_deref() {
                Some("nan" | "inf") => "it is not finite".to_owned(),
                _ => "it does not begin with a number".to_owned(),
            },
        );
    }
    if at(end) == b',' && at(end + 1).is_ascii_digit() {
        let point = text.replacen(',', ".", 1);
        return Err(format!("a decimal comma; write `{point}`"));
    }
    if matches!(at(end), b'e' | b'E') {
        let sign = usize::from(matches!(at(end + 1), b'-' | b'+'));
        let after = run(end + 1 + sign);
        if after > end + 1 + sign {
            end = after;
        }
    }
    text.split_at_checked(end).ok_or_else(|| "it does not begin with a number".to_owned())
}
