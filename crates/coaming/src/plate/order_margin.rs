//! Distance of a band of natural frequencies from the excitation orders of a machine.

use crate::prelude::*;

/// Distance of a natural frequency, known as a band, from the excitation orders of a machine.
///
/// # Formula
/// Excitation f = order × speed, over the range of speeds. Separation of a natural frequency f_n from f: |f_n/f − 1|, at the
/// closest pair of the two bands; zero where they overlap. Margin = separation/required − 1.
///
/// # Validity
/// Any frequencies. What is called for is the worse end of the band: a frequency between supported and clamped edges may
/// stand anywhere in it. Orders that are not listed are not looked at: list them to at least twice the highest strong one.
///
/// # Source
/// Common practice: 20 % separation.
///
/// # Example
/// A first mode between 43 and 66 Hz, engine at 1500 rpm: order 2 (50 Hz) lies within the band, order 1 (25 Hz) 72 % below.
/// ```
/// use coaming::plate::OrderMargin;
/// use coaming::prelude::*;
///
/// let margin = OrderMargin {
///     lowest_natural_frequency: hertz(43.0),
///     highest_natural_frequency: hertz(66.0),
///     lowest_speed: rpm(1500.0),
///     highest_speed: rpm(1500.0),
///     orders: vec![1.0, 2.0],
///     required_separation: Some(0.20),
/// };
/// let (outcome, _) = margin.calculate()?;
/// assert_eq!(outcome.worst_order, 2.0);
/// assert_eq!(outcome.separations[1], 0.0);
/// assert!((outcome.separations[0] - 0.72).abs() < 1e-12);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct OrderMargin {
    /// Low end of the band of the natural frequency.
    #[possible(f64::MIN_POSITIVE..)]
    pub lowest_natural_frequency: Frequency,
    /// High end of the band of the natural frequency.
    #[possible(f64::MIN_POSITIVE..)]
    pub highest_natural_frequency: Frequency,
    /// Lowest speed of the shaft.
    #[shown_in("rpm")]
    #[possible(f64::MIN_POSITIVE..)]
    pub lowest_speed: Frequency,
    /// Highest speed of the shaft.
    #[shown_in("rpm")]
    #[possible(f64::MIN_POSITIVE..)]
    pub highest_speed: Frequency,
    /// The orders: excitations per revolution (1.5 for the third half order of a four-stroke engine).
    #[possible(f64::MIN_POSITIVE..)]
    pub orders: Vec<f64>,
    /// Separation required; 20 % (common practice) if absent.
    #[possible(f64::MIN_POSITIVE..)]
    pub required_separation: Option<f64>,
}

/// Outcome of [`OrderMargin`]. Lists follow the orders.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct OrderMarginOutcome {
    /// Lowest excitation frequency of each order.
    pub lowest_excitations: Vec<Frequency>,
    /// Highest excitation frequency of each order.
    pub highest_excitations: Vec<Frequency>,
    /// Separation of each order at the worse end of the band; zero where the order lies within it.
    pub separations: Vec<f64>,
    /// Separation of each order at the better end of the band.
    pub best_separations: Vec<f64>,
    /// The order of the smallest separation; the first of them.
    pub worst_order: f64,
    /// Its separation.
    pub worst_separation: f64,
    /// Worst separation over the required one, less one.
    pub margin: f64,
    /// An order lies within the band: whether the panel rings cannot be told without a test.
    pub straddled: bool,
}

/// Separation of 20 %: common practice.
const REQUIRED: f64 = 0.20;

impl Calculation for OrderMargin {
    const NAME: &'static str = "order_margin";
    const SOURCE: &'static [Source] = &[Source::common_practice("20 % separation from an excitation order")];
    type Outcome = OrderMarginOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (low, high) = (self.lowest_natural_frequency.value, self.highest_natural_frequency.value);
        let (slow, fast) = (self.lowest_speed.value, self.highest_speed.value);
        if high < low {
            return Err(self.impossible("highest_natural_frequency", "at least the lowest natural frequency"));
        }
        if fast < slow {
            return Err(self.impossible("highest_speed", "at least the lowest speed"));
        }
        if self.orders.is_empty() {
            return Err(Error::inconsistent("orders", "the list is empty; at least one order is needed"));
        }
        let mut outcome = OrderMarginOutcome {
            lowest_excitations: Vec::with_capacity(self.orders.len()),
            highest_excitations: Vec::with_capacity(self.orders.len()),
            separations: Vec::with_capacity(self.orders.len()),
            best_separations: Vec::with_capacity(self.orders.len()),
            worst_order: f64::NAN,
            worst_separation: f64::MAX,
            margin: 0.0,
            straddled: false,
        };
        for order in &self.orders {
            let (from, to) = (order * slow, order * fast);
            // Closest approach of one natural frequency to the range of excitations.
            let apart = |natural: f64| {
                if natural < from {
                    1.0 - natural / from
                } else if natural > to {
                    natural / to - 1.0
                } else {
                    0.0
                }
            };
            let (at_low, at_high) = (apart(low), apart(high));
            let overlaps = low <= to && from <= high;
            let worst = if overlaps { 0.0 } else { at_low.min(at_high) };
            outcome.straddled |= overlaps;
            if worst < outcome.worst_separation {
                outcome.worst_separation = worst;
                outcome.worst_order = *order;
            }
            outcome.lowest_excitations.push(si(from));
            outcome.highest_excitations.push(si(to));
            outcome.separations.push(worst);
            outcome.best_separations.push(at_low.max(at_high));
        }
        outcome.margin = outcome.worst_separation / self.required_separation.unwrap_or(REQUIRED) - 1.0;
        Ok(outcome)
    }
}
