//! Units and their exact factors, and the expressions that are written with them: `N·m`, `lbf in`, `um/(m K)`.

use super::dimension::{Dimension, Exponents};
use super::exact::Exact;

/// π to 40 digits, so that angles too are rounded once.
const PI: &str = "3.141592653589793238462643383279502884197";

/// A unit of the table: its exact factor to SI is `times` / `over`.
struct Named {
    symbols: &'static [&'static str],
    exponents: Exponents,
    times: &'static str,
    over: &'static str,
}

const fn unit(
    symbols: &'static [&'static str],
    exponents: Exponents,
    times: &'static str,
    over: &'static str,
) -> Named {
    Named { symbols, exponents, times, over }
}

const L: Exponents = Dimension::LENGTH.exponents;
const M: Exponents = Dimension::MASS.exponents;
const T: Exponents = Dimension::TIME.exponents;
const K: Exponents = Dimension::TEMPERATURE_DIFFERENCE.exponents;
const A: Exponents = Dimension::ANGLE.exponents;
const F: Exponents = Dimension::FORCE.exponents;
const P: Exponents = Dimension::PRESSURE.exponents;
const V: Exponents = Dimension::VOLUME.exponents;
const E: Exponents = Dimension::TORQUE.exponents;
const W: Exponents = Dimension::POWER.exponents;
const HZ: Exponents = Dimension::FREQUENCY.exponents;
const ACC: Exponents = Dimension::ACCELERATION.exponents;

/// Exact factors: inch, pound and pound-force as agreed in 1959 and by standard gravity (ISO 80000, NIST SP 811);
/// the thermal unit is the International Table one.
const UNITS: &[Named] = &[
    unit(&["m"], L, "1", "1"),
    unit(&["mm"], L, "0.001", "1"),
    unit(&["cm"], L, "0.01", "1"),
    unit(&["dm"], L, "0.1", "1"),
    unit(&["km"], L, "1000", "1"),
    unit(&["um"], L, "0.000001", "1"),
    unit(&["nm"], L, "0.000000001", "1"),
    unit(&["in", "inch"], L, "0.0254", "1"),
    unit(&["ft"], L, "0.3048", "1"),
    unit(&["yd"], L, "0.9144", "1"),
    unit(&["thou", "mil"], L, "0.0000254", "1"),
    unit(&["uin"], L, "0.0000000254", "1"),
    unit(&["kg"], M, "1", "1"),
    unit(&["g"], M, "0.001", "1"),
    unit(&["mg"], M, "0.000001", "1"),
    unit(&["t"], M, "1000", "1"),
    unit(&["lb", "lbm"], M, "0.45359237", "1"),
    unit(&["oz"], M, "0.028349523125", "1"),
    unit(&["s"], T, "1", "1"),
    unit(&["ms"], T, "0.001", "1"),
    unit(&["min"], T, "60", "1"),
    unit(&["h"], T, "3600", "1"),
    unit(&["d", "day"], T, "86400", "1"),
    unit(&["Hz"], HZ, "1", "1"),
    unit(&["kHz"], HZ, "1000", "1"),
    unit(&["rpm"], HZ, "1", "60"),
    unit(&["K", "delta_degC"], K, "1", "1"),
    unit(&["delta_degF"], K, "5", "9"),
    unit(&["rad"], A, "1", "1"),
    unit(&["mrad"], A, "0.001", "1"),
    unit(&["deg"], A, PI, "180"),
    unit(&["arcmin"], A, PI, "10800"),
    unit(&["arcsec"], A, PI, "648000"),
    unit(&["N"], F, "1", "1"),
    unit(&["mN"], F, "0.001", "1"),
    unit(&["daN"], F, "10", "1"),
    unit(&["kN"], F, "1000", "1"),
    unit(&["MN"], F, "1000000", "1"),
    unit(&["lbf"], F, "4.4482216152605", "1"),
    unit(&["ozf"], F, "4.4482216152605", "16"),
    unit(&["kip"], F, "4448.2216152605", "1"),
    unit(&["kgf"], F, "9.80665", "1"),
    unit(&["Pa"], P, "1", "1"),
    unit(&["hPa", "mbar"], P, "100", "1"),
    unit(&["kPa"], P, "1000", "1"),
    unit(&["MPa"], P, "1000000", "1"),
    unit(&["GPa"], P, "1000000000", "1"),
    unit(&["bar"], P, "100000", "1"),
    unit(&["psi"], P, "4.4482216152605", "0.00064516"),
    unit(&["ksi"], P, "4448.2216152605", "0.00064516"),
    unit(&["Msi"], P, "4448221.6152605", "0.00064516"),
    unit(&["psf"], P, "4.4482216152605", "0.09290304"),
    unit(&["L", "l"], V, "0.001", "1"),
    unit(&["mL", "ml", "cc"], V, "0.000001", "1"),
    unit(&["floz"], V, "0.0000295735295625", "1"),
    unit(&["J"], E, "1", "1"),
    unit(&["kJ"], E, "1000", "1"),
    unit(&["Btu"], E, "1055.05585262", "1"),
    unit(&["W"], W, "1", "1"),
    unit(&["kW"], W, "1000", "1"),
    unit(&["gn"], ACC, "9.80665", "1"),
];

/// The temperature scales that carry an offset: SI = (number + offset) × times / over.
const SCALES: &[(&str, &str, &str, &str)] =
    &[("degC", "273.15", "1", "1"), ("degF", "459.67", "5", "9"), ("K", "0", "1", "1")];

/// A unit expression, resolved: exponents, exact factor to SI and exact offset (0 but for temperature scales).
#[derive(Debug, Clone)]
pub(crate) struct Unit {
    pub(crate) exponents: Exponents,
    pub(crate) factor: Exact,
    pub(crate) offset: Exact,
}

/// All symbols, for the suggestion behind an unknown one.
pub(crate) fn symbols() -> impl Iterator<Item = &'static str> {
    UNITS.iter().flat_map(|unit| unit.symbols.iter().copied()).chain(["degC", "degF"])
}

fn named(symbol: &str) -> Option<Unit> {
    // Inside an expression a degree Celsius or Fahrenheit can only be a difference: 13e-6 1/degC.
    let symbol = match symbol {
        "degC" => "K",
        "degF" => "delta_degF",
        other => other,
    };
    let found = UNITS.iter().find(|unit| unit.symbols.contains(&symbol))?;
    let factor = Exact::decimal(found.times)?.over(&Exact::decimal(found.over)?)?;
    Some(Unit { exponents: found.exponents, factor, offset: Exact::whole(0) })
}

/// Spelling made uniform: one sign for the product, one for micro, powers as `^2`, degrees by name.
fn normalised(text: &str) -> String {
    let mut plain = String::with_capacity(text.len() + 8);
    let mut in_power = false;
    for c in text.trim().chars() {
        let superscript = match c {
            '⁻' => Some('-'),
            '¹' => Some('1'),
            '²' => Some('2'),
            '³' => Some('3'),
            '⁴' => Some('4'),
            _ => None,
        };
        if let Some(digit) = superscript {
            if !in_power {
                plain.push('^');
            }
            plain.push(digit);
            in_power = true;
            continue;
        }
        in_power = false;
        match c {
            '·' | '⋅' | '×' | '*' => plain.push('*'),
            'µ' | 'μ' => plain.push('u'),
            '°' => plain.push_str("deg"),
            '℃' => plain.push_str("degC"),
            '″' => plain.push_str("in"),
            '−' => plain.push('-'),
            other => plain.push(other),
        }
    }
    plain.replace("**", "^")
}

/// Reads a unit for a quantity of the given dimension; the text may not be empty.
pub(crate) fn read(text: &str, dimension: &Dimension) -> Result<Unit, String> {
    let plain = normalised(text);
    if dimension.is_absolute_temperature {
        let scale = SCALES.iter().find(|scale| scale.0 == plain);
        let (_, offset, times, over) = scale.ok_or_else(|| match plain.as_str() {
            "delta_degC" | "delta_degF" => "a temperature is due, not a difference".to_owned(),
            _ => format!("unit `{text}` is no temperature; use degC, degF or K"),
        })?;
        let exact = |digits: &str| Exact::decimal(digits).ok_or_else(|| "unit table".to_owned());
        let factor = exact(times)?.over(&exact(over)?).ok_or_else(|| "unit table".to_owned())?;
        return Ok(Unit { exponents: dimension.exponents, factor, offset: exact(offset)? });
    }
    if dimension.exponents == K && matches!(plain.as_str(), "degC" | "degF") {
        return Err(format!(
            "a temperature difference is due and {plain} names a temperature; write K, delta_degC or delta_degF"
        ));
    }
    // A shock of "3 g" is meant in standard gravities, not in grams.
    let plain = if dimension.exponents == ACC && plain == "g" { "gn".to_owned() } else { plain };
    let mut reader = Reader { rest: &plain, depth: 0 };
    let unit = reader.quotient()?;
    if !reader.rest.is_empty() {
        return Err(format!("unit `{text}` ends unexpectedly at `{}`", reader.rest));
    }
    if unit.exponents != dimension.exponents {
        return Err(format!("unit `{}` does not measure {}", text.trim(), dimension.name));
    }
    Ok(unit)
}

/// A reader by recursive descent over `quotient = product ['/' product-without-blanks]`.
struct Reader<'a> {
    rest: &'a str,
    depth: u32,
}

impl Reader<'_> {
    fn skip(&mut self, count: usize) {
        self.rest = self.rest.get(count..).unwrap_or("");
    }

    fn skip_blanks(&mut self) -> bool {
        let trimmed = self.rest.trim_start();
        let some = trimmed.len() < self.rest.len();
        self.rest = trimmed;
        some
    }

    fn quotient(&mut self) -> Result<Unit, String> {
        self.skip_blanks();
        let mut unit = self.product()?;
        self.skip_blanks();
        if self.rest.starts_with('/') {
            self.skip(1);
            self.skip_blanks();
            let below = self.tight()?;
            unit = combine(&unit, &below, -1)?;
            self.skip_blanks();
            if !self.rest.is_empty() && !self.rest.starts_with(')') {
                return Err(format!(
                    "after a `/` put what is below the line in parentheses, as in W/(m^2 K); `{}` is left over",
                    self.rest
                ));
            }
        }
        Ok(unit)
    }

    fn product(&mut self) -> Result<Unit, String> {
        let mut unit = self.tight()?;
        loop {
            let blanks = self.skip_blanks();
            if self.rest.starts_with('*') {
                self.skip(1);
                self.skip_blanks();
            } else if !blanks || self.rest.is_empty() || self.rest.starts_with(['/', ')']) {
                return Ok(unit);
            }
            let next = self.tight()?;
            unit = combine(&unit, &next, 1)?;
        }
    }

    /// Factors that stand together without a blank or sign between them: `m^2K`.
    fn tight(&mut self) -> Result<Unit, String> {
        let mut unit = self.factor()?;
        while self.rest.starts_with(|c: char| c.is_alphabetic() || c == '(') {
            let next = self.factor()?;
            unit = combine(&unit, &next, 1)?;
        }
        Ok(unit)
    }

    fn factor(&mut self) -> Result<Unit, String> {
        let base = if self.rest.starts_with('(') {
            self.depth += 1;
            if self.depth > 4 {
                return Err("too many parentheses in the unit".to_owned());
            }
            self.skip(1);
            let inner = self.quotient()?;
            if !self.rest.starts_with(')') {
                return Err("a parenthesis is not closed in the unit".to_owned());
            }
            self.skip(1);
            self.depth -= 1;
            inner
        } else if self.rest.starts_with('1') {
            self.skip(1);
            Unit { exponents: [0; 5], factor: Exact::one(), offset: Exact::whole(0) }
        } else {
            let end = self.rest.find(|c: char| !(c.is_alphabetic() || c == '_')).unwrap_or(self.rest.len());
            let symbol = self.rest.get(..end).unwrap_or("");
            if symbol.is_empty() {
                return Err(format!("a unit is due at `{}`", self.rest));
            }
            let found = named(symbol).ok_or_else(|| unknown(symbol))?;
            self.skip(end);
            found
        };
        // `mm2` is the power too, as the trade writes it.
        if self.rest.starts_with('^') {
            self.skip(1);
        } else if !self.rest.starts_with(|c: char| c.is_ascii_digit()) {
            return Ok(base);
        }
        let end = self.rest.find(|c: char| !(c.is_ascii_digit() || c == '-')).unwrap_or(self.rest.len());
        let power: i8 = self
            .rest
            .get(..end)
            .and_then(|digits| digits.parse().ok())
            .ok_or("a power of the unit is no small integer")?;
        self.skip(end);
        if power.abs() > 6 {
            return Err("a power of the unit is larger than 6".to_owned());
        }
        raise(&base, power)
    }
}

fn unknown(symbol: &str) -> String {
    match crate::declaration::nearest::nearest(symbol, symbols()) {
        Some(near) => format!("unknown unit `{symbol}`; did you mean `{near}`?"),
        None => format!("unknown unit `{symbol}`"),
    }
}

fn raise(unit: &Unit, power: i8) -> Result<Unit, String> {
    let mut exponents = [0; 5];
    for (raised, exponent) in exponents.iter_mut().zip(unit.exponents) {
        *raised = exponent.checked_mul(power).ok_or("a power of the unit is too large")?;
    }
    let factor = unit.factor.to_power(i32::from(power)).ok_or("a unit of size zero")?;
    Ok(Unit { exponents, factor, offset: Exact::whole(0) })
}

fn combine(left: &Unit, right: &Unit, power: i8) -> Result<Unit, String> {
    let right = raise(right, power)?;
    let mut exponents = left.exponents;
    for (sum, exponent) in exponents.iter_mut().zip(right.exponents) {
        *sum = sum.checked_add(exponent).ok_or("a power of the unit is too large")?;
    }
    Ok(Unit { exponents, factor: left.factor.times(&right.factor), offset: Exact::whole(0) })
}
