//! What a record says at a temperature, after a time, at a humidity.

use std::borrow::Cow;
use std::ops::RangeInclusive;
use std::sync::LazyLock;

use super::figure::{Basis, Figure};
use super::record::{CreepLine, Material, MaterialKind};
use crate::prelude::*;

/// Temperatures over which a metal's modulus is taken as steady, in kelvins: -50 to 100 degC.
static STEADY: LazyLock<RangeInclusive<f64>> = LazyLock::new(|| celsius(-50.0).value..=celsius(100.0).value);

impl Material {
    /// Young's modulus at a temperature: from its points where it has them; a metal's single figure between -50 and
    /// 100 degC, over which it falls by some 5 % (common practice). `None` beyond the data.
    pub fn youngs_modulus_at(&self, temperature: Temperature) -> Option<Figure<Pressure>> {
        if let Some(curve) = &self.modulus_over_temperature {
            return curve.at(temperature);
        }
        let steady = STEADY.contains(&temperature.value);
        self.youngs_modulus.clone().filter(|_| steady && self.kind == MaterialKind::Metal)
    }

    /// The share of the short-time modulus that is left after a time under load at a temperature.
    ///
    /// Straight over log time on each line, straight over temperature between two lines. Below the coldest line that
    /// line holds, creep being slower in the cold; a time shorter than a line's first point counts as that point.
    /// Metals do not creep below 100 degC (common practice). `None` beyond the longest time, above the warmest line,
    /// and where nothing is known.
    pub fn creep_factor(&self, temperature: Temperature, time: Time) -> Option<Figure<f64>> {
        if self.kind == MaterialKind::Metal && temperature.value <= celsius(100.0).value {
            return Some(Figure {
                value: 1.0,
                basis: Basis::Typical,
                source: Source::common_practice("metals of the table do not creep below 100 degC"),
                condition: Cow::Borrowed(""),
            });
        }
        let on = |line: &CreepLine| {
            let first = line.factor.points().first()?;
            if time.value < first.at.value { Some(first.figure.clone()) } else { line.factor.at(time) }
        };
        let coldest = self.creep.first()?;
        if temperature.value <= coldest.temperature.value {
            return on(coldest);
        }
        let (cold, warm) = self
            .creep
            .iter()
            .zip(self.creep.iter().skip(1))
            .find(|(_, warm)| temperature.value <= warm.temperature.value)?;
        let (at_cold, at_warm) = (on(cold)?, on(warm)?);
        let share =
            (temperature.value - cold.temperature.value) / (warm.temperature.value - cold.temperature.value);
        let factor = at_cold.value + share * (at_warm.value - at_cold.value);
        let weaker = if at_cold.is_weaker_than(&at_warm) { at_cold } else { at_warm };
        Some(weaker.with_value(factor))
    }

    /// Linear strain from taking up moisture between two relative humidities, each from 0 to 1, in equilibrium.
    ///
    /// Swelling × (uptake at the second − uptake at the first), on the weaker basis. Zero for a metal. `None` where
    /// nothing is known and outside 0 to 1.
    pub fn moisture_strain(&self, from_humidity: f64, to_humidity: f64) -> Option<Figure<f64>> {
        if self.kind == MaterialKind::Metal {
            return Some(Figure {
                value: 0.0,
                basis: Basis::Typical,
                source: Source::common_practice("metals take up no moisture"),
                condition: Cow::Borrowed(""),
            });
        }
        let (swelling, uptake) = (self.swelling.as_ref()?, self.moisture_uptake.as_ref()?);
        let (from, to) = (uptake.at(from_humidity)?, uptake.at(to_humidity)?);
        let strain = swelling.value * (to.value - from.value);
        let uptake = if from.is_weaker_than(&to) { from } else { to };
        Some(if uptake.is_weaker_than(swelling) {
            uptake.with_value(strain)
        } else {
            swelling.with_value(strain)
        })
    }
}
