//! Where the lid rings on its seal and latches.

use crate::amount::Measure;
use crate::checks::solved::tell_model;
use crate::checks::{Subject, name, orders};
use crate::demand::{Demand, NotChecked};
use crate::held::{self, Setup};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The lowest mode of the closed lid, with the mass of all its layers, as a band over the limits of how they join in and of
/// the gasket.
pub(super) fn frequency(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let layer = prepared.layer(name(subject, 0)?)?;
    let mut sheet = Worksheet::new();
    orders::excitations(prepared)?;
    crate::checks::seal::gasket(prepared, &mut sheet)?;
    let (mut low, mut high) = (f64::INFINITY, 0.0_f64);
    let mut told: Vec<(Setup, f64)> = Vec::new();
    for setup in Setup::ALL.into_iter().rev() {
        let (frequency, error) = match told.is_empty() {
            true => held::first_mode(prepared, setup, Some(&mut sheet))?,
            false => held::first_mode(prepared, setup, None)?,
        };
        low = low.min(frequency * (1.0 - error));
        high = high.max(frequency * (1.0 + error));
        // A gasket whose law is known is the same at both ends of its band.
        let same = |(known, f): &(Setup, f64)| known.joined == setup.joined && *f == frequency;
        if !told.iter().any(same) {
            sheet.note(&format!("first mode, {}", setup.joined_name()), frequency, Measure::FREQUENCY);
            sheet.note(&format!("its error, {}", setup.joined_name()), error, Measure::Percent);
        }
        told.push((setup, frequency));
    }
    sheet.solved(held::PANEL_SOLVER);
    sheet.say("The gasket acts by the slope of its law where the closed lid rests; sponge that is shaken fast is stiffer than that, and the lid then rings higher.");
    sheet.say("The mass of pane, frame and stiffeners goes with the sheet; screws, inserts, gasket and paint are left out. A pane over a cut-out hangs on its lap where the sheet is alone.");
    tell_model(prepared, &mut sheet);
    let lever = format!("layers.{}.thickness", layer.name);
    orders::against(
        prepared,
        sheet,
        (low, high),
        lever,
        "another thickness, flanges or ribs, or a firmer gasket; stiffer can move it onto the next order",
    )
}
