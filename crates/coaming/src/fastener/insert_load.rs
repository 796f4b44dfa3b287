//! A threaded insert in plastic: pull-out, torque-out and jack-out against the maker's figures.

use crate::prelude::*;

/// Load on a threaded insert in plastic against its maker's pull-out and torque-out figures, and whether the screw jacks it out.
///
/// # Formula
/// Overlap = (insert diameter − hole in the clamped part)/2. At or below zero the screw's preload draws the insert into the
/// hole: it jacks out. Pull: preload + service pull where it jacks out or does not touch the clamped part; else the service
/// pull alone, because the preload closes between screw, clamped part and the insert's end face.
/// Utilisation = factor × pull/pull-out, and factor × tightening torque/torque-out.
///
/// # Validity
/// The maker's figures hold for the same plastic, hole and way of setting. A pull in service that outruns the preload parts
/// the clamped part from the insert; the whole service pull is counted at any preload, which is the safe side. Creep and
/// heat lower both figures: test a sample at the service temperature. The clamped part must bear on the insert, not on the
/// plastic round it.
///
/// # Source
/// Equilibrium. The factor on the maker's figures is an input: 3 is common practice. That the hole in the clamped part must
/// be smaller than the insert is common practice too.
///
/// # Example
/// By hand: 300 N of service pull with factor 3 use 900 N of 1200 N: 0.75.
/// ```
/// use coaming::fastener::InsertLoad;
/// use coaming::prelude::*;
///
/// let (insert, _) = InsertLoad {
///     pull_out: newton(1200.0),
///     torque_out: newton_meter(2.0),
///     factor: 3.0,
///     insert_diameter: mm(4.6),
///     clamped_hole_diameter: mm(3.4),
///     bears_on_insert: true,
///     preload: newton(750.0),
///     service_pull: newton(300.0),
///     tightening_torque: newton_meter(0.45),
/// }
/// .calculate()?;
/// assert!((insert.pull_out_utilisation - 0.75).abs() < 1e-12);
/// assert!(!insert.jacks_out);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct InsertLoad {
    /// Pull-out force by the maker for this plastic.
    #[possible(f64::MIN_POSITIVE..)]
    pub pull_out: Force,
    /// Torque-out by the maker for this plastic.
    #[possible(f64::MIN_POSITIVE..)]
    pub torque_out: Torque,
    /// Factor on the maker's figures.
    #[possible(1.0..)]
    pub factor: f64,
    /// Diameter of the insert's end face that the clamped part can bear on.
    #[possible(f64::MIN_POSITIVE..)]
    pub insert_diameter: Length,
    /// Hole in the part that is clamped on the insert.
    #[possible(f64::MIN_POSITIVE..)]
    pub clamped_hole_diameter: Length,
    /// True where the clamped part bears on the insert: the insert is flush or proud, with no gap or soft layer between.
    pub bears_on_insert: bool,
    /// Largest preload of the screw.
    #[possible(0.0..)]
    pub preload: Force,
    /// Largest pull in service along the screw.
    #[possible(0.0..)]
    pub service_pull: Force,
    /// Largest tightening torque, prevailing torque included.
    #[possible(0.0..)]
    pub tightening_torque: Torque,
}

/// Outcome of [`InsertLoad`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct InsertLoadOutcome {
    /// Overlap of the clamped part on the insert, on each side; at or below zero the screw jacks the insert out.
    pub overlap: Length,
    /// True where the hole in the clamped part is as large as the insert, or larger.
    pub jacks_out: bool,
    /// Pull on the insert that is counted.
    pub pull: Force,
    /// Factor × pull/pull-out; above 1 it fails.
    pub pull_out_utilisation: f64,
    /// The same with preload and service pull added, whatever the clamped part bears on.
    pub pull_out_utilisation_with_preload: f64,
    /// Factor × torque/torque-out; above 1 it fails.
    pub torque_out_utilisation: f64,
}

impl Calculation for InsertLoad {
    const NAME: &'static str = "insert_load";
    const SOURCE: &'static [Source] = &[Source::common_practice(
        "hole in the clamped part smaller than the insert; a factor on the maker's figures",
    )];
    type Outcome = InsertLoadOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let overlap = (self.insert_diameter.value - self.clamped_hole_diameter.value) / 2.0;
        let jacks_out = overlap <= 0.0;
        let (preload, service) = (self.preload.value, self.service_pull.value);
        let pull = if jacks_out || !self.bears_on_insert { preload + service } else { service };
        Ok(InsertLoadOutcome {
            overlap: si(overlap),
            jacks_out,
            pull: si(pull),
            pull_out_utilisation: self.factor * pull / self.pull_out.value,
            pull_out_utilisation_with_preload: self.factor * (preload + service) / self.pull_out.value,
            torque_out_utilisation: self.factor * self.tightening_torque.value / self.torque_out.value,
        })
    }
}
