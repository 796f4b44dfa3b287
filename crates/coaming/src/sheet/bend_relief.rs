//! Relief notch where a bend ends beside a sheet that stays flat.

use crate::prelude::*;

/// Relief notch at the end of a bend that does not run across the whole sheet.
///
/// # Formula
///
/// With thickness t, inside radius r, bend angle α and bend allowance BA = α (r + K t):
///
/// - width = 1.5 t
/// - depth past the tangent line p = 0.5 mm
/// - depth from the outside face of the bent-up leg (r + t) tan(α/2) + p: at 90° the trade's "t + r + 0.5 mm"
/// - depth from the bend line on the flat BA/2 + p
///
/// # Validity
///
/// Bend angles below 180°. A laser or punch has a narrowest slot of its own, and a notch with round ends tears less. Width and depth are
/// what is usual, not what strength asks.
///
/// # Source
///
/// Common practice; both figures can be replaced.
///
/// # Example
///
/// By hand, t = 2 mm, r = 2 mm, 90°: 3 mm wide, 2 + 2 + 0.5 = 4.5 mm deep from the outside face.
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) = BendRelief {
///     thickness: mm(2.0),
///     inside_radius: mm(2.0),
///     bend_angle: deg(90.0),
///     k_factor: 0.42,
///     width_factor: None,
///     past_tangent_line: None,
/// }
/// .calculate()?;
/// assert!((outcome.width.value - 0.003).abs() < 1e-12);
/// assert!((outcome.depth_from_outside_face.value - 0.0045).abs() < 1e-12);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BendRelief {
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Inside radius, r.
    #[possible(0.0..)]
    pub inside_radius: Length,
    /// Bend angle, α: the angle the sheet is turned through.
    #[possible(0.0..PI)]
    #[also(included_angle, super::supplement)]
    pub bend_angle: Angle,
    /// Neutral axis, K: its distance from the inside face over the thickness.
    #[possible(f64::MIN_POSITIVE..1.0)]
    #[tested(0.25..=0.5)]
    pub k_factor: f64,
    /// Width of the notch in thicknesses; 1.5 (common practice) if absent.
    #[possible(0.0..)]
    pub width_factor: Option<f64>,
    /// Depth of the notch past the tangent line, p; 0.5 mm (common practice) if absent.
    #[possible(0.0..)]
    pub past_tangent_line: Option<Length>,
}

/// Size of a relief notch.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct BendReliefOutcome {
    /// Smallest width of the notch, along the bend.
    pub width: Length,
    /// Smallest depth from the outside face of the bent-up leg, or where the outside faces meet.
    pub depth_from_outside_face: Length,
    /// Smallest depth from the bend line, on the flat.
    pub depth_from_bend_line: Length,
}

impl Calculation for BendRelief {
    const NAME: &'static str = "bend_relief";
    const SOURCE: &'static [Source] =
        &[Source::common_practice("relief notch 1.5 t wide, t + r + 0.5 mm deep from the outside face")];
    type Outcome = BendReliefOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (t, r, a) = (self.thickness.value, self.inside_radius.value, self.bend_angle.value);
        let past = self.past_tangent_line.map_or(0.0005, |past| past.value);
        Ok(BendReliefOutcome {
            width: si(self.width_factor.unwrap_or(1.5) * t),
            depth_from_outside_face: si((r + t) * math::tan(a / 2.0) + past),
            depth_from_bend_line: si(a * (r + self.k_factor * t) / 2.0 + past),
        })
    }
}
