use crate::prelude::*;

/// Closing of a hinged lid onto its gasket: the hinge side is squeezed first and more, and slides as it is.
///
/// # Formula
/// With x the distance of a seal line from the axis, a the height of the axis over the lid's sealing face, c the
/// compression of the gasket there when closed:
/// ```text
/// rise at the angle θ     x sin θ + a (1 − cos θ)
/// touch                   rise = c
/// slide from there        |x cos θ + a sin θ − x|
/// latches                 F L = w (q1 x1 + q2 x2) + 2 ℓ ((q1 x1 + q2 x2)/3 + (q1 x2 + q2 x1)/6)
/// hinges                  w (q1 + q2) + ℓ (q1 + q2) − F
/// ```
/// q1 and q2 are the line forces at the two seal lines along the hinge, w their length, ℓ = x2 − x1; along the two other
/// sides the line force goes evenly from one to the other.
///
/// # Validity
/// A stiff lid on hinges without play; the gasket's line force at the two closed heights comes from its own curve. No
/// pressure and no weight: add theirs. With an axis in the plane of the sealing face (a = 0) the slide is smallest.
///
/// # Source
/// Geometry of a turn and balance of moments.
///
/// # Example
/// Seal lines at 40 and 440 mm from the axis, both squeezed by 4 mm, axis in the sealing face: the hinge side touches at
/// asin(4/40) = 5.739°, the latch side at asin(4/440) = 0.521° (by hand).
/// ```
/// use coaming::latch::HingeClosing;
/// use coaming::prelude::*;
///
/// let (outcome, _) = HingeClosing {
///     hinge_to_first_seal: mm(40.0),
///     hinge_to_second_seal: mm(440.0),
///     hinge_to_latch: mm(460.0),
///     axis_height: mm(0.0),
///     seal_width: mm(500.0),
///     first_compression: mm(4.0),
///     second_compression: mm(4.0),
///     first_line_force: newton_per_mm(0.4),
///     second_line_force: newton_per_mm(0.4),
/// }
/// .calculate()?;
/// assert!((outcome.first_touch_angle - deg(5.739)).abs() < deg(0.001));
/// assert!((outcome.second_touch_angle - deg(0.521)).abs() < deg(0.001));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct HingeClosing {
    /// Distance from the hinge axis to the seal line on the hinge side, x1.
    #[possible(f64::MIN_POSITIVE..)]
    pub hinge_to_first_seal: Length,
    /// Distance from the hinge axis to the seal line on the latch side, x2; more than the first.
    #[possible(f64::MIN_POSITIVE..)]
    pub hinge_to_second_seal: Length,
    /// Distance from the hinge axis to the line of the latches, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub hinge_to_latch: Length,
    /// Height of the axis over the sealing face of the closed lid, outward positive, a.
    pub axis_height: Length,
    /// Length of each seal line along the hinge, w.
    #[possible(f64::MIN_POSITIVE..)]
    pub seal_width: Length,
    /// Compression of the gasket on the hinge side when closed.
    #[possible(f64::MIN_POSITIVE..)]
    pub first_compression: Length,
    /// Compression of the gasket on the latch side when closed.
    #[possible(f64::MIN_POSITIVE..)]
    pub second_compression: Length,
    /// Line force of the gasket on the hinge side at that compression, q1.
    #[possible(0.0..)]
    pub first_line_force: ForcePerLength,
    /// Line force of the gasket on the latch side at that compression, q2.
    #[possible(0.0..)]
    pub second_line_force: ForcePerLength,
}

/// Outcome of [`HingeClosing`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct HingeClosingOutcome {
    /// Opening angle at which the hinge side touches the gasket.
    pub first_touch_angle: Angle,
    /// Opening angle at which the latch side touches the gasket.
    pub second_touch_angle: Angle,
    /// How far the lid slides over the gasket on the hinge side, from touching to closed.
    pub first_slide: Length,
    /// How far the lid slides over the gasket on the latch side.
    pub second_slide: Length,
    /// Compression on the hinge side less that on the latch side.
    pub compression_difference: Length,
    /// Force of all latches together, F.
    pub latch_force: Force,
    /// Force of all hinges together; negative where they push the lid outward.
    pub hinge_force: Force,
}

impl HingeClosing {
    /// Angle at which a seal line touches, and its slide from there.
    fn touch(&self, name: &str, x: f64, compression: f64) -> Result<(f64, f64), Error> {
        let a = self.axis_height.value;
        let radius = math::hypot(x, a);
        let sine = (compression - a) / radius;
        if sine > 1.0 {
            return Err(self.impossible(
                name,
                "what the lid rises by when it is opened; the seal line lies too near the axis",
            ));
        }
        // x sin θ − a cos θ = radius · sin(θ − atan(a/x)).
        let angle = math::atan2(a, x) + math::asin(sine);
        Ok((angle, (x * math::cos(angle) + a * math::sin(angle) - x).abs()))
    }
}

impl Calculation for HingeClosing {
    const NAME: &'static str = "hinge_closing";
    const SOURCE: &'static [Source] = &[Source::common_practice("geometry of a turn and balance of moments")];
    type Outcome = HingeClosingOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (x1, x2) = (self.hinge_to_first_seal.value, self.hinge_to_second_seal.value);
        let (q1, q2, w) = (self.first_line_force.value, self.second_line_force.value, self.seal_width.value);
        if x2 <= x1 {
            return Err(self.impossible("hinge_to_second_seal", "more than hinge_to_first_seal"));
        }
        let (c1, c2) = (self.first_compression.value, self.second_compression.value);
        let (first_angle, first_slide) = self.touch("first_compression", x1, c1)?;
        let (second_angle, second_slide) = self.touch("second_compression", x2, c2)?;
        let side = x2 - x1;
        let moment =
            w * (q1 * x1 + q2 * x2) + 2.0 * side * ((q1 * x1 + q2 * x2) / 3.0 + (q1 * x2 + q2 * x1) / 6.0);
        let latches = moment / self.hinge_to_latch.value;
        Ok(HingeClosingOutcome {
            first_touch_angle: si(first_angle),
            second_touch_angle: si(second_angle),
            first_slide: si(first_slide),
            second_slide: si(second_slide),
            compression_difference: si(c1 - c2),
            latch_force: si(latches),
            hinge_force: si((w + side) * (q1 + q2) - latches),
        })
    }
}
