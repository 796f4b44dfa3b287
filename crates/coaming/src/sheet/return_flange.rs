//! A flange that already carries a return, bent up on a press brake: room for the punch, and for the corners of a tray.

use crate::prelude::*;

/// Bending up a flange whose end is already bent in (a return): room between the return's tip and the punch, and, on a tray
/// with returns on four sides, the longest punch that still comes out and the cut-back of the corners.
///
/// # Formula
/// Both legs rise by half of the bend angle as the punch goes down. With the inside lengths W = w − t tan(α/2) − t tan(γ/2) and
/// H = h − t tan(γ/2):
/// ```text
/// tip from the punch's middle   x = (W + H cos γ) cos(α/2) − H sin γ sin(α/2)
/// clearance                     x − b/2
/// largest return                H = (W cos(α/2) − b/2 − c)/(−cos(γ + α/2)), h = H + t tan(γ/2)
/// longest punch                 l − 2 e − 2 c
/// corner cut-back               e + g
/// ```
/// w and h are outside dimensions to the virtual sharps, α the bend that is made, with what it is bent over, γ that of the
/// return, b the punch's thickness, l the inside length of the tray along the bend, e how far the returns of its ends reach in,
/// c the clearance wanted, g the gap wanted between two returns in a corner.
///
/// # Validity
/// A straight punch of even thickness, thin against the flange; a punch with a gooseneck has more room: try it on its drawing.
/// The legs rise evenly, as in air bending on a V die. Sheet that swings up stands in the operator's way: keep hands out.
///
/// # Source
/// Geometry of turned parts (common practice).
///
/// # Example
/// A flange of 40 mm with a return of 15 mm, both at 90°, t = 1 mm: W = 38, H = 14, (38 − 14) cos 45° = 16.971 mm (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::ReturnFlange;
///
/// let (outcome, _) = ReturnFlange {
///     flange_height: mm(40.0),
///     return_height: mm(15.0),
///     thickness: mm(1.0),
///     bend_angle: deg(90.0),
///     return_bend_angle: deg(90.0),
///     over_bend: None,
///     punch_thickness: mm(20.0),
///     clearance: mm(1.0),
///     tray_length: None,
///     end_return: None,
///     corner_gap: None,
/// }
/// .calculate()?;
/// assert!((outcome.tip_distance - mm(16.971)).abs() < mm(0.001));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ReturnFlange {
    /// Height of the flange, outside, from virtual sharp to virtual sharp, w.
    #[possible(f64::MIN_POSITIVE..)]
    pub flange_height: Length,
    /// Height of the return, outside, from the virtual sharp to its tip, h.
    #[possible(f64::MIN_POSITIVE..)]
    pub return_height: Length,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Bend angle that is made now.
    #[possible(f64::MIN_POSITIVE..=3.0)]
    pub bend_angle: Angle,
    /// Bend angle of the return, γ.
    #[possible(f64::MIN_POSITIVE..=3.0)]
    pub return_bend_angle: Angle,
    /// What the bend is made over its angle, for springback; none if absent.
    #[possible(0.0..=1.0)]
    pub over_bend: Option<Angle>,
    /// Thickness of the punch above the sheet, b.
    #[possible(0.0..)]
    pub punch_thickness: Length,
    /// Clearance wanted to the punch, c.
    #[possible(0.0..)]
    pub clearance: Length,
    /// Inside length of the tray along the bend, between the flanges of its ends, l.
    #[possible(f64::MIN_POSITIVE..)]
    pub tray_length: Option<Length>,
    /// How far the returns of the ends reach in, outside, e.
    #[possible(0.0..)]
    pub end_return: Option<Length>,
    /// Gap wanted between two returns in a corner, g; none if absent.
    #[possible(0.0..)]
    pub corner_gap: Option<Length>,
}

/// Outcome of [`ReturnFlange`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ReturnFlangeOutcome {
    /// Distance of the return's tip from the punch's middle when the bend is made; negative past it.
    pub tip_distance: Length,
    /// Room between tip and punch; negative where they strike.
    pub punch_clearance: Length,
    /// Largest return that leaves the clearance wanted, outside; none where any does, zero where none does.
    pub largest_return: Option<Length>,
    /// Longest punch that goes between the returns of the ends; zero where none does, absent without `tray_length` and
    /// `end_return`.
    pub longest_punch: Option<Length>,
    /// How far this return is cut back at each end, so that it passes the returns of the ends; absent without `end_return`.
    pub corner_cut_back: Option<Length>,
}

impl Calculation for ReturnFlange {
    const NAME: &'static str = "return_flange";
    const SOURCE: &'static [Source] = &[Source::common_practice("geometry of turned parts on a press brake")];
    type Outcome = ReturnFlangeOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let t = self.thickness.value;
        let made = self.bend_angle.value + self.over_bend.map_or(0.0, |over| over.value);
        if made >= PI {
            return Err(self.impossible("over_bend", "less than what brings the bend to 180 deg"));
        }
        let (half, gamma) = (0.5 * made, self.return_bend_angle.value);
        let at_return = t * math::tan(0.5 * gamma);
        let inside_flange = self.flange_height.value - t * math::tan(0.5 * self.bend_angle.value) - at_return;
        let inside_return = self.return_height.value - at_return;
        if inside_flange <= 0.0 {
            return Err(self.impossible("flange_height", "more than the sheet takes up in its two bends"));
        }
        if inside_return <= 0.0 {
            return Err(self.impossible("return_height", "more than the sheet takes up in its bend"));
        }
        let (sine, cosine) = (math::sin(half), math::cos(half));
        let tip = (inside_flange + inside_return * math::cos(gamma)) * cosine
            - inside_return * math::sin(gamma) * sine;
        let half_punch = 0.5 * self.punch_thickness.value;
        let wanted = self.clearance.value;
        // How much nearer the tip comes with each length of return.
        let nearer = -math::cos(gamma + half);
        let room = inside_flange * cosine - half_punch - wanted;
        let largest = (nearer > 0.0).then(|| if room > 0.0 { room / nearer + at_return } else { 0.0 });
        let longest = self
            .tray_length
            .zip(self.end_return)
            .map(|(length, reach)| (length.value - 2.0 * reach.value - 2.0 * wanted).max(0.0));
        let gap = self.corner_gap.map_or(0.0, |gap| gap.value);
        Ok(ReturnFlangeOutcome {
            tip_distance: si(tip),
            punch_clearance: si(tip - half_punch),
            largest_return: largest.map(si),
            longest_punch: longest.map(si),
            corner_cut_back: self.end_return.map(|reach| si(reach.value + gap)),
        })
    }
}
