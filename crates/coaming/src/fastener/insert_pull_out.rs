//! Pull-out and torque-out of an insert in plastic by the shear cylinder: an estimate where no maker's figure is known.

use crate::prelude::*;

/// Estimate of an insert's or self-tapping screw's pull-out and torque-out in plastic, by shear on the cylinder round it.
///
/// # Formula
/// Pull-out F = φ τ π D L. Torque-out T = φ τ π D² L/2.
///
/// # Validity
/// An upper bound for φ = 1: full shear strength on the whole cylinder at once. Knurls, weld lines, printed layers across the
/// pull, notches, heat and time lower it; φ takes them in and is yours to state. Always carries the caveat of an estimate:
/// the maker's figure, or a pull test of a sample, goes before it.
///
/// # Source
/// Definition: shear area × shear strength.
///
/// # Example
/// τ = 20 MPa, D = 5.6 mm, L = 8 mm: 2815 N (computed from the definition).
/// ```
/// use coaming::fastener::InsertPullOut;
/// use coaming::prelude::*;
///
/// let (insert, caveats) = InsertPullOut {
///     shear_strength: megapascal(20.0),
///     insert_diameter: mm(5.6),
///     insert_length: mm(8.0),
///     reduction: 1.0,
/// }
/// .calculate()?;
/// assert!((insert.pull_out.value - 2815.0).abs() < 1.0);
/// assert!(caveats.has(Caveat::Estimate));
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct InsertPullOut {
    /// Shear strength of the plastic, τ; for a printed part, along the layers that the cylinder shears.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub shear_strength: Pressure,
    /// Outer diameter of the insert or screw thread, D.
    #[possible(f64::MIN_POSITIVE..)]
    pub insert_diameter: Length,
    /// Length that is bedded in the plastic, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub insert_length: Length,
    /// Reduction for knurl, bond quality, layers and time, φ: 1 for none.
    #[possible(f64::MIN_POSITIVE..=1.0)]
    pub reduction: f64,
}

/// Outcome of [`InsertPullOut`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct InsertPullOutOutcome {
    /// Sheared area, π D L.
    pub shear_area: Area,
    /// Estimated pull-out, F.
    pub pull_out: Force,
    /// Estimated torque-out, T.
    pub torque_out: Torque,
}

impl Calculation for InsertPullOut {
    const NAME: &'static str = "insert_pull_out";
    const SOURCE: &'static [Source] = &[Source {
        title: "definition: shear area times shear strength",
        edition: "",
        locator: "",
        standing: Standing::Computed,
    }];
    type Outcome = InsertPullOutOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        caveats.add(Caveat::Estimate);
        let diameter = self.insert_diameter.value;
        let area = PI * diameter * self.insert_length.value;
        let force = self.reduction * self.shear_strength.value * area;
        Ok(InsertPullOutOutcome {
            shear_area: si(area),
            pull_out: si(force),
            torque_out: si(force * diameter / 2.0),
        })
    }
}
