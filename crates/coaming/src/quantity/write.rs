//! Writing quantities: rounded for people, to the bit for data.

use super::dimension::Dimension;
use super::exact::Exact;
use super::{read, unit};

/// The units that people are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum System {
    /// mm, N, N·m, kPa, degC, deg.
    #[default]
    Shop,
    /// in, lbf, lbf in, psi, degF, deg.
    Inch,
}

/// The inch unit beside each shop unit.
const COUNTERPARTS: &[(&str, &str)] = &[
    ("mm", "in"),
    ("m", "ft"),
    ("um", "thou"),
    ("mm^2", "in^2"),
    ("mL", "floz"),
    ("mm^4", "in^4"),
    ("kg", "lb"),
    ("g", "oz"),
    ("N", "lbf"),
    ("kN", "lbf"),
    ("Pa", "psi"),
    ("kPa", "psi"),
    ("MPa", "ksi"),
    ("GPa", "Msi"),
    ("N·m", "lbf·in"),
    ("W", "Btu/h"),
    ("kg/m^3", "lb/in^3"),
    ("kg/m^2", "lb/ft^2"),
    ("m/s", "ft/s"),
    ("m/s^2", "ft/s^2"),
    ("degC", "degF"),
    ("K", "delta_degF"),
    ("1/K", "1/delta_degF"),
    ("N/mm", "lbf/in"),
    ("N/m", "lbf/in"),
    ("kN/m", "lbf/in"),
    ("kPa/mm", "psi/in"),
    ("W/(m·K)", "Btu/(h·ft·delta_degF)"),
    ("W/(m^2·K)", "Btu/(h·ft^2·delta_degF)"),
    ("W/m^2", "Btu/(h·ft^2)"),
    ("1/m", "1/in"),
];

/// The unit in which a person of that system reads what the shop shows in `shop`.
pub fn counterpart(shop: &'static str, system: System) -> &'static str {
    match system {
        System::Shop => shop,
        System::Inch => COUNTERPARTS.iter().find(|pair| pair.0 == shop).map_or(shop, |pair| pair.1),
    }
}

/// The value in a unit of its dimension, as an `f64`; `None` where the unit is none of that dimension's.
fn in_unit(si: f64, dimension: &'static Dimension, symbol: &str) -> Option<f64> {
    let unit = unit::read(symbol, dimension).ok()?;
    Some(Exact::binary(si)?.over(&unit.factor)?.minus(&unit.offset).rounded())
}

/// A number rounded to `figures` significant figures, without trailing zeros.
pub fn rounded(value: f64, figures: usize) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let scientific = format!("{value:.*e}", figures.saturating_sub(1));
    let size: i32 = scientific.split_once('e').and_then(|(_, exponent)| exponent.parse().ok()).unwrap_or(0);
    if !(-4..7).contains(&size) {
        return trimmed_scientific(&scientific);
    }
    let places = usize::try_from(i32::try_from(figures).unwrap_or(4) - 1 - size).unwrap_or(0);
    // Rounding first in scientific form keeps 12345 at four figures from printing a false last digit.
    let value: f64 = scientific.parse().unwrap_or(value);
    trimmed(&format!("{value:.places$}"))
}

fn trimmed(decimal: &str) -> String {
    if decimal.contains('.') {
        decimal.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        decimal.to_owned()
    }
}

fn trimmed_scientific(text: &str) -> String {
    match text.split_once('e') {
        Some((mantissa, "0")) => trimmed(mantissa),
        Some((mantissa, exponent)) => format!("{}e{exponent}", trimmed(mantissa)),
        None => text.to_owned(),
    }
}

/// For people: rounded to four figures, in the shop unit given or its inch counterpart, as in `1.6 mm`.
pub fn for_people(si: f64, dimension: &'static Dimension, shop: &'static str, system: System) -> String {
    let symbol = counterpart(shop, system);
    let value = in_unit(si, dimension, symbol).unwrap_or(f64::NAN);
    // 273.15 K is not exact in binary: what is left of an offset is no temperature.
    let value = if value.abs() < 1e-12 * si.abs() && dimension.is_absolute_temperature { 0.0 } else { value };
    if value.is_nan() { format!("{si} {}", dimension.si) } else { format!("{} {symbol}", rounded(value, 4)) }
}

/// For data: the shortest decimal in the given unit that reads back to the same bits; in the SI unit where that
/// unit has no such decimal.
pub fn for_data(si: f64, dimension: &'static Dimension, symbol: &'static str) -> String {
    if let Some(value) = in_unit(si, dimension, symbol) {
        for figures in [15, 16, 17] {
            let text = format!("{} {symbol}", plain(&format!("{value:.*e}", figures - 1)));
            if read::read(&text, dimension).is_ok_and(|back| back.to_bits() == (si + 0.0).to_bits()) {
                return text;
            }
        }
    }
    format!("{} {}", plain(&format!("{si:e}")), dimension.si)
}

/// A scientific decimal as data shows it: plain where it is of a handy size, without trailing zeros.
fn plain(scientific: &str) -> String {
    let size: i32 = scientific.split_once('e').and_then(|(_, exponent)| exponent.parse().ok()).unwrap_or(0);
    if !(-7..16).contains(&size) {
        return trimmed_scientific(scientific);
    }
    let mantissa = scientific.split_once('e').map_or(scientific, |(mantissa, _)| mantissa);
    let figures = mantissa.bytes().filter(u8::is_ascii_digit).count();
    let places = usize::try_from(i32::try_from(figures).unwrap_or(17) - 1 - size).unwrap_or(0);
    let value: f64 = scientific.parse().unwrap_or(f64::NAN);
    trimmed(&format!("{value:.places$}"))
}
