use crate::prelude::*;

/// Slam of a hinged lid that falls shut: its energy, the speed of its edge, and the force that stops it.
///
/// # Formula
/// ```text
/// E = m g r (sin(β + θ) − sin β) − M θ      β + θ taken no higher than 90°
/// v = W sqrt(2 E/(m k²))
/// F = 2 E/s
/// ```
/// r from the axis to the centre of mass, θ the opening angle, β how far the closed lid rises from level, M the moment that
/// holds it back all the way (friction, a damper), k the radius of gyration about the axis (W/√3 for an even lid), s the way
/// over which the edge is stopped by what resists in proportion.
///
/// # Validity
/// A level axis, a stiff lid without drag of the air, which slows a wide one; no wind. A lid past the top is taken to start
/// from there. The force is that of a linear spring over the whole way: a bare metal stop is shorter and harder. Keep
/// fingers out: an edge that falls faster than a hand leaves the gap needs a stay or a damper.
///
/// # Source
/// Conservation of energy; standard gravity 9.80665 m/s².
///
/// # Example
/// 3.25 kg with its centre at 230 mm, let go at 60° over a level frame: 3.25 · 9.80665 · 0.23 · sin 60° = 6.348 J (by hand).
/// ```
/// use coaming::latch::LidSlam;
/// use coaming::prelude::*;
///
/// let (outcome, _) = LidSlam {
///     mass: kilogram(3.25),
///     centre_distance: mm(230.0),
///     hinge_to_edge: mm(460.0),
///     radius_of_gyration: None,
///     opening_angle: deg(60.0),
///     closed_rise: deg(0.0),
///     holding_moment: None,
///     stop_travel: mm(5.0),
/// }
/// .calculate()?;
/// assert!((outcome.energy.value - 6.348).abs() < 0.001);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LidSlam {
    /// Mass of the lid with all that it carries, m.
    #[possible(f64::MIN_POSITIVE..)]
    pub mass: Mass,
    /// Distance of its centre of mass from the axis, r.
    #[possible(f64::MIN_POSITIVE..)]
    pub centre_distance: Length,
    /// Distance of its free edge from the axis, W.
    #[possible(f64::MIN_POSITIVE..)]
    pub hinge_to_edge: Length,
    /// Radius of gyration about the axis, k; W/√3, as of an even lid, if absent.
    #[possible(f64::MIN_POSITIVE..)]
    pub radius_of_gyration: Option<Length>,
    /// Opening angle at which it is let go, θ.
    #[possible(0.0..=PI)]
    pub opening_angle: Angle,
    /// How far the closed lid rises from level, from the axis to the free edge, β.
    #[possible(-FRAC_PI_2..=FRAC_PI_2)]
    pub closed_rise: Angle,
    /// Moment about the axis that holds it back all the way, M; none if absent.
    #[possible(0.0..)]
    pub holding_moment: Option<Torque>,
    /// Way over which the free edge is stopped, s.
    #[possible(f64::MIN_POSITIVE..)]
    pub stop_travel: Length,
}

/// Outcome of [`LidSlam`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LidSlamOutcome {
    /// Energy that arrives, E; zero where it does not fall shut.
    #[shown_in("J")]
    pub energy: Torque,
    /// Speed of the free edge when it arrives, v.
    pub edge_speed: Velocity,
    /// Largest force at the free edge while it is stopped, F.
    pub stop_force: Force,
}

impl Calculation for LidSlam {
    const NAME: &'static str = "lid_slam";
    const SOURCE: &'static [Source] = &[Source::common_practice("conservation of energy")];
    type Outcome = LidSlamOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (m, r, w) = (self.mass.value, self.centre_distance.value, self.hinge_to_edge.value);
        let k = self.radius_of_gyration.map_or(w / 3.0_f64.sqrt(), |radius| radius.value);
        if k < r {
            return Err(self.impossible(
                "radius_of_gyration",
                "at least centre_distance; W/√3 is taken if it is absent",
            ));
        }
        let (theta, rise) = (self.opening_angle.value, self.closed_rise.value);
        // Past the top it has to be pushed back there first.
        let top = (rise + theta).min(FRAC_PI_2);
        let turned = top - rise;
        let weight = m * standard_gravity(1.0).value;
        let held = self.holding_moment.map_or(0.0, |moment| moment.value);
        let energy = (weight * r * (math::sin(top) - math::sin(rise)) - held * turned).max(0.0);
        Ok(LidSlamOutcome {
            energy: si(energy),
            edge_speed: si(w / k * (2.0 * energy / m).sqrt()),
            stop_force: si(2.0 * energy / self.stop_travel.value),
        })
    }
}
