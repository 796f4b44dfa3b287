//! How near to a bend a hole or slot may lie.

use crate::prelude::*;

/// Where a distance from a hole to a bend is measured from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
#[non_exhaustive]
pub enum HoleDistanceReference {
    /// From the bend line, on the flat.
    BendLine,
    /// From the tangent line, where the flat begins.
    TangentLine,
    /// On the folded part, from the inside face of the bent-up leg; at other angles than 90° from where the inside faces meet.
    InsideFace,
    /// On the folded part, from the outside face of the bent-up leg; at other angles than 90° from where the outside faces meet.
    OutsideFace,
}

/// Distance of a hole or slot from a bend against what common practice asks, and the zone in which holes distort.
///
/// # Formula
///
/// With thickness t, inside radius r, bend angle α and bend allowance BA = α (r + K t):
///
/// - the edge of the hole shall be f t from the tangent line: at 90° that is f t + r from the inside face of the bent-up leg
/// - f = 2.5 for a hole, 4 for a slot: an opening that is longer along the bend than across it
/// - from the inside face the tangent line is r tan(α/2) away, from the outside face (r + t) tan(α/2), from the bend line
///   on the flat BA/2
/// - distortion zone on the flat: f t + BA/2 to each side of the bend line
/// - margin = edge distance from the inside face / needed distance − 1
///
/// # Validity
///
/// Bend angles below 180°. The rule says where an edge stays round to the eye; a dowel or a pressed insert wants more. Where the hole
/// must lie nearer, drill after bending, or cut a relief slot along the bend.
///
/// # Source
///
/// Common practice, both factors; they can be replaced.
///
/// # Example
///
/// By hand, 1.6 mm sheet with r = 1.6 mm: the edge shall be 2.5 · 1.6 + 1.6 = 5.6 mm from the bent-up face.
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) = HoleToBend {
///     thickness: mm(1.6),
///     inside_radius: mm(1.6),
///     bend_angle: deg(90.0),
///     k_factor: 0.43,
///     across_bend: mm(4.5),
///     along_bend: mm(4.5),
///     centre_distance: mm(10.0),
///     measured_from: HoleDistanceReference::InsideFace,
///     hole_factor: None,
///     slot_factor: None,
/// }
/// .calculate()?;
/// assert!((outcome.needed_from_inside_face.value - 0.0056).abs() < 1e-12);
/// assert!((outcome.edge_from_inside_face.value - 0.00775).abs() < 1e-12);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct HoleToBend {
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
    /// Size of the hole across the bend; the diameter of a round one.
    #[possible(f64::MIN_POSITIVE..)]
    pub across_bend: Length,
    /// Size of the hole along the bend; the diameter of a round one.
    #[possible(f64::MIN_POSITIVE..)]
    pub along_bend: Length,
    /// Distance of the centre of the hole, square to the bend.
    #[possible(0.0..)]
    pub centre_distance: Length,
    /// Where that distance is measured from.
    pub measured_from: HoleDistanceReference,
    /// Distance of the edge from the tangent line in thicknesses, for a hole; 2.5 (common practice) if absent.
    #[possible(0.0..)]
    pub hole_factor: Option<f64>,
    /// Distance of the edge from the tangent line in thicknesses, for a slot along the bend; 4 (common practice) if absent.
    #[possible(0.0..)]
    pub slot_factor: Option<f64>,
}

/// How a hole lies to a bend.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct HoleToBendOutcome {
    /// Edge of the hole from the tangent line; negative where the hole cuts into the bend.
    pub edge_from_tangent_line: Length,
    /// Edge of the hole from the inside face of the bent-up leg.
    pub edge_from_inside_face: Length,
    /// Edge of the hole from the bend line, on the flat.
    pub edge_from_bend_line: Length,
    /// What is needed from the tangent line, f t.
    pub needed_from_tangent_line: Length,
    /// What is needed from the inside face of the bent-up leg.
    pub needed_from_inside_face: Length,
    /// What is needed from the bend line on the flat: the half width of the zone in which holes distort.
    pub distortion_zone: Length,
    /// Edge distance from the inside face over what is needed, less 1.
    pub margin: f64,
    /// True where the hole cuts into the bend itself.
    pub cuts_bend: bool,
    /// Distance of the edge in thicknesses that was used, f.
    pub factor: f64,
}

/// Edge of a hole from the tangent line, in thicknesses, common practice.
const HOLE_FACTOR: f64 = 2.5;
/// Edge of a slot along the bend from the tangent line, in thicknesses, common practice.
const SLOT_FACTOR: f64 = 4.0;

impl Calculation for HoleToBend {
    const NAME: &'static str = "hole_to_bend";
    const SOURCE: &'static [Source] = &[
        Source::common_practice("edge of a hole 2.5 t + r from the bent-up face"),
        Source::common_practice("edge of a slot along the bend 4 t + r from the bent-up face"),
    ];
    type Outcome = HoleToBendOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (t, r, a) = (self.thickness.value, self.inside_radius.value, self.bend_angle.value);
        let factor = if self.along_bend > self.across_bend {
            self.slot_factor.unwrap_or(SLOT_FACTOR)
        } else {
            self.hole_factor.unwrap_or(HOLE_FACTOR)
        };
        let tangent = math::tan(a / 2.0);
        let face_to_tangent_line = r * tangent;
        let bend_line_to_tangent_line = a * (r + self.k_factor * t) / 2.0;
        let start = match self.measured_from {
            HoleDistanceReference::BendLine => bend_line_to_tangent_line,
            HoleDistanceReference::TangentLine => 0.0,
            HoleDistanceReference::InsideFace => face_to_tangent_line,
            HoleDistanceReference::OutsideFace => (r + t) * tangent,
        };
        let edge = self.centre_distance.value - self.across_bend.value / 2.0 - start;
        let needed = factor * t;
        let needed_from_face = needed + face_to_tangent_line;
        if needed_from_face <= 0.0 {
            return Err(Error::inconsistent(
                "hole_factor, slot_factor, inside_radius",
                "nothing is needed, so that there is no margin; accepted: a factor or a radius greater than 0",
            ));
        }
        Ok(HoleToBendOutcome {
            edge_from_tangent_line: si(edge),
            edge_from_inside_face: si(edge + face_to_tangent_line),
            edge_from_bend_line: si(edge + bend_line_to_tangent_line),
            needed_from_tangent_line: si(needed),
            needed_from_inside_face: si(needed_from_face),
            distortion_zone: si(needed + bend_line_to_tangent_line),
            margin: (edge + face_to_tangent_line) / needed_from_face - 1.0,
            cuts_bend: edge < 0.0,
            factor,
        })
    }
}
