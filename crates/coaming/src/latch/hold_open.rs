use crate::prelude::*;

/// Stay that holds a hinged lid open in wind.
///
/// # Formula
/// ```text
/// wind       p = ½ ρ v² C       M_w = p A c
/// weight     M_g = m g r cos(β + θ)                    closes the lid where positive
/// stay       l = sqrt(n² + e² − 2 n e cos θ)           arm = n e sin θ/l
/// push       (M_w + M_g)/arm                           wind that closes
/// pull       (M_w − M_g)/arm                           wind that opens
/// ```
/// n from the axis to the stay's end on the frame, e to its end on the lid, both square to the axis and on the plane of the
/// closed lid; c from the axis to the middle of the area.
///
/// # Validity
/// A level axis; wind square to the lid from either side, the worst for a lid that stands open; gusts are in v. The
/// coefficient of a plate in free air is 1.1 to 1.2, beside a wall or on a deck up to 2 (common practice). No vibration.
///
/// # Source
/// EN 1991-1-4:2005, eq. 4.10 (velocity pressure; unverified); balance of moments; standard gravity 9.80665 m/s².
///
/// # Example
/// 20 m/s in air of 1.25 kg/m³ with C = 1.2: ½ · 1.25 · 20² · 1.2 = 300 Pa (by hand).
/// ```
/// use coaming::latch::HoldOpen;
/// use coaming::prelude::*;
///
/// let (outcome, _) = HoldOpen {
///     mass: kilogram(3.25),
///     centre_distance: mm(230.0),
///     area: square_mm(0.26e6),
///     area_distance: mm(230.0),
///     opening_angle: deg(90.0),
///     closed_rise: deg(0.0),
///     wind_speed: meter_per_second(20.0),
///     air_density: kilogram_per_cubic_meter(1.25),
///     force_coefficient: 1.2,
///     stay_on_frame: mm(200.0),
///     stay_on_lid: mm(200.0),
///     working_load: None,
/// }
/// .calculate()?;
/// assert!((outcome.wind_pressure - pascal(300.0)).abs() < pascal(1e-9));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct HoldOpen {
    /// Mass of the lid with all that it carries, m.
    #[possible(f64::MIN_POSITIVE..)]
    pub mass: Mass,
    /// Distance of its centre of mass from the axis, r.
    #[possible(0.0..)]
    pub centre_distance: Length,
    /// Area of the lid, A.
    #[possible(f64::MIN_POSITIVE..)]
    pub area: Area,
    /// Distance of the area's middle from the axis, c.
    #[possible(0.0..)]
    pub area_distance: Length,
    /// Opening angle at which it is held, θ.
    #[possible(f64::MIN_POSITIVE..PI)]
    pub opening_angle: Angle,
    /// How far the closed lid rises from level, from the axis to the free edge, β.
    #[possible(-FRAC_PI_2..=FRAC_PI_2)]
    pub closed_rise: Angle,
    /// Speed of the wind in gusts, v.
    #[possible(0.0..)]
    pub wind_speed: Velocity,
    /// Density of the air, ρ: 1.25 kg/m³ by EN 1991-1-4.
    #[possible(f64::MIN_POSITIVE..)]
    pub air_density: MassDensity,
    /// Force coefficient of the lid square to the wind, C.
    #[possible(f64::MIN_POSITIVE..)]
    #[tested(1.0..=2.0)]
    pub force_coefficient: f64,
    /// Distance from the axis to the stay's end on the frame, n.
    #[possible(f64::MIN_POSITIVE..)]
    pub stay_on_frame: Length,
    /// Distance from the axis to the stay's end on the lid, e.
    #[possible(f64::MIN_POSITIVE..)]
    pub stay_on_lid: Length,
    /// Maker's working load of all stays together.
    #[possible(f64::MIN_POSITIVE..)]
    pub working_load: Option<Force>,
}

/// Outcome of [`HoldOpen`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct HoldOpenOutcome {
    /// Pressure of the wind on the lid, p.
    #[shown_in("Pa")]
    pub wind_pressure: Pressure,
    /// Moment of the wind about the axis, M_w.
    pub wind_moment: Torque,
    /// Moment of the weight about the axis, M_g; positive closes the lid.
    pub weight_moment: Torque,
    /// Length of the stay between its ends, l.
    pub stay_length: Length,
    /// Distance of the stay's line from the axis.
    pub stay_arm: Length,
    /// Largest push in the stay, with wind that closes the lid; negative where it only pulls.
    pub push: Force,
    /// Largest pull in the stay, with wind that opens the lid; negative where it only pushes.
    pub pull: Force,
    /// Size of the larger of the two over the working load.
    pub working_load_ratio: Option<f64>,
    /// Wind at which a lid that rests open past the top falls shut without a stay; none where its weight closes it anyway.
    pub closing_speed: Option<Velocity>,
}

impl Calculation for HoldOpen {
    const NAME: &'static str = "hold_open";
    const SOURCE: &'static [Source] =
        &[Source { title: "EN 1991-1-4", edition: "2005", locator: "eq. 4.10", standing: Standing::Memory }];
    type Outcome = HoldOpenOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (theta, v) = (self.opening_angle.value, self.wind_speed.value);
        let per_square = 0.5 * self.air_density.value * self.force_coefficient;
        let pressure = per_square * v * v;
        let lever = self.area.value * self.area_distance.value;
        let wind = pressure * lever;
        let weight = self.mass.value * standard_gravity(1.0).value;
        let gravity = weight * self.centre_distance.value * math::cos(self.closed_rise.value + theta);
        let (n, e) = (self.stay_on_frame.value, self.stay_on_lid.value);
        // (n − e)² + 2 n e (1 − cos θ), without the difference of two like numbers.
        let half = math::sin(0.5 * theta);
        let length = math::hypot(n - e, 2.0 * half * (n * e).sqrt());
        let arm = n * e * math::sin(theta) / length;
        let (push, pull) = ((wind + gravity) / arm, (wind - gravity) / arm);
        let closing_speed =
            (gravity < 0.0 && lever > 0.0).then(|| si((-gravity / (per_square * lever)).sqrt()));
        Ok(HoldOpenOutcome {
            wind_pressure: si(pressure),
            wind_moment: si(wind),
            weight_moment: si(gravity),
            stay_length: si(length),
            stay_arm: si(arm),
            push: si(push),
            pull: si(pull),
            working_load_ratio: self.working_load.map(|load| push.max(pull) / load.value),
            closing_speed,
        })
    }
}
