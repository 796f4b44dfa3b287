use crate::prelude::*;

/// Contact pressure left on a gasket under lifting pressure and inertia, against the pressure it must hold.
///
/// # Formula
/// ```text
/// lift = p A + m a
/// qr   = q − lift / L               line force left
/// pc   = qr / w                     contact pressure left
/// ratio = pc / Δp
/// ```
///
/// # Validity
/// A lower bound: the whole lift is taken off the gasket. Stiff latches take most of it themselves; a lid
/// that sits on stops keeps its gap until the stops are free. q is that of the worst place, after set. A
/// ratio above 1 keeps a clean smooth face closed against air; what a sponge face lets through is found by a
/// hose or smoke test.
///
/// # Source
/// Balance of forces (common practice).
///
/// # Example
/// 0.30 N/mm on 12 mm of width, wind of 1 kPa on 0.214 m² along 1.811 m: 15.2 kPa left (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::GasketTightness;
///
/// let (outcome, _) = GasketTightness {
///     line_force: newton_per_mm(0.30),
///     width: mm(12.0),
///     path_length: mm(1811.0),
///     lifting_pressure: kilopascal(1.0),
///     sealed_area: square_mm(214_000.0),
///     mass: kilogram(3.25),
///     acceleration: meter_per_second_squared(0.0),
///     pressure_difference: kilopascal(1.0),
/// }
/// .calculate()?;
/// assert!((outcome.contact_pressure.value - 15_152.8).abs() < 0.1);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GasketTightness {
    /// Line force at the least pressed place, q.
    #[possible(0.0..)]
    pub line_force: ForcePerLength,
    /// Width in contact, w.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Length of the gasket's path, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub path_length: Length,
    /// Pressure that lifts the lid, p: bay over outside, suction of wind counted in.
    #[possible(0.0..)]
    pub lifting_pressure: Pressure,
    /// Area on which it acts, A.
    #[possible(0.0..)]
    pub sealed_area: Area,
    /// Mass of the lid, m.
    #[possible(0.0..)]
    pub mass: Mass,
    /// Acceleration that throws it outward, a.
    #[possible(0.0..)]
    pub acceleration: Acceleration,
    /// Pressure difference that the gasket must hold, Δp.
    #[possible(0.0..)]
    pub pressure_difference: Pressure,
}

/// Contact left.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct GasketTightnessOutcome {
    /// Lift on the lid.
    pub lift: Force,
    /// Line force left, qr; below zero: open.
    pub residual_line_force: ForcePerLength,
    /// Contact pressure left, pc; below zero: open.
    pub contact_pressure: Pressure,
    /// Contact pressure over the pressure difference; absent when there is none to hold.
    pub contact_ratio: Option<f64>,
}

impl Calculation for GasketTightness {
    const NAME: &'static str = "gasket_tightness";
    const SOURCE: &'static [Source] = &[Source::common_practice("balance of forces along the seal line")];
    type Outcome = GasketTightnessOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let lift =
            self.lifting_pressure.value * self.sealed_area.value + self.mass.value * self.acceleration.value;
        let residual = self.line_force.value - lift / self.path_length.value;
        let contact = residual / self.width.value;
        let difference = self.pressure_difference.value;
        Ok(GasketTightnessOutcome {
            lift: si(lift),
            residual_line_force: si(residual),
            contact_pressure: si(contact),
            contact_ratio: (difference > 0.0).then(|| contact / difference),
        })
    }
}
