//! A band of natural frequencies against the orders of what turns.

use coaming::prelude::*;

use crate::amount::Measure;
use crate::demand::{Bound, Demand, Finding, NotChecked};
use crate::document::Excitation;
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// What shakes the cover.
///
/// # Errors
/// [`NotChecked::Needs`] with the path.
pub(super) fn excitations<'a>(prepared: &Prepared<'a>) -> Result<&'a [Excitation], NotChecked> {
    let service = prepared.cover.service.as_ref();
    let excitations = service.and_then(|service| service.excitations.as_ref());
    excitations.map(Vec::as_slice).ok_or_else(|| NotChecked::needs("service.excitations"))
}

/// The separation of a band of frequencies from the nearest order, over that order.
///
/// # Errors
/// [`NotChecked::Needs`] with the path.
pub(super) fn against(
    prepared: &Prepared<'_>,
    mut sheet: Worksheet,
    (low, high): (f64, f64),
    lever: String,
    words: &str,
) -> Result<Demand, NotChecked> {
    let excitations = excitations(prepared)?;
    let orders: Vec<(String, f64)> = excitations
        .iter()
        .flat_map(|source| {
            source.orders.iter().map(|order| {
                (format!("{} order {}", source.name, rounded(*order, 3)), source.speed.value * order)
            })
        })
        .collect();
    let strongest = orders.iter().map(|order| order.1).fold(0.0, f64::max);
    if strongest < 2.0 * high {
        sheet.say(
            "Orders are named to less than twice the first mode; stronger ones above it are not looked at.",
        );
    }
    let separation = |frequency: f64| {
        orders.iter().map(|order| (frequency - order.1).abs() / order.1).fold(f64::INFINITY, f64::min)
    };
    let nearest = orders.iter().min_by(|a, b| {
        let gap = |order: &(String, f64)| distance(order.1, low, high) / order.1;
        gap(a).total_cmp(&gap(b))
    });
    let Some(nearest) = nearest else { return Err(NotChecked::needs("service.excitations.orders")) };
    let straddled = distance(nearest.1, low, high) == 0.0;
    let worst = if straddled { 0.0 } else { separation(low).min(separation(high)) };
    // Between two orders the best place of the band is where it is furthest from both.
    let best = best_separation(&orders, low, high);
    sheet.at(format!(
        "{} against {}, {}",
        Measure::FREQUENCY.shown_band(low, high, System::Shop),
        Measure::FREQUENCY.shown(nearest.1, System::Shop),
        nearest.0
    ));
    let (limit, origin) = practice(prepared.limits.order_separation());
    sheet.advise(lever, words);
    let bound = Bound::AtLeast { limit };
    Ok(sheet.finish(Finding::Number { low: worst, high: best, measure: Measure::Percent, bound }, origin))
}

/// Distance of a value from a closed range; nothing within it.
fn distance(value: f64, low: f64, high: f64) -> f64 {
    if value < low {
        low - value
    } else if value > high {
        value - high
    } else {
        0.0
    }
}

/// The largest separation from every order that some frequency of the band has: the ends, or between two orders the
/// frequency that is relatively as far from both.
fn best_separation(orders: &[(String, f64)], low: f64, high: f64) -> f64 {
    let separation = |frequency: f64| {
        orders.iter().map(|order| (frequency - order.1).abs() / order.1).fold(f64::INFINITY, f64::min)
    };
    let mut sorted: Vec<f64> = orders.iter().map(|order| order.1).collect();
    sorted.sort_by(f64::total_cmp);
    let between = sorted.iter().zip(sorted.iter().skip(1)).map(|(a, b)| 2.0 * a * b / (a + b));
    between
        .filter(|frequency| *frequency > low && *frequency < high)
        .chain([low, high])
        .map(separation)
        .fold(0.0, f64::max)
}
