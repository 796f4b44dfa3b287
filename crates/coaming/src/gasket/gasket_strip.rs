use crate::prelude::*;

/// Length of a gasket strip laid as a rounded or mitred rectangle, its corners, and the place of its joint.
///
/// # Formula
/// Centre line a × b, corner radius r on it, strip width w:
/// ```text
/// bent     L = 2 (a + b) − (8 − 2π) r                  one piece, one joint
///          stretch of the outer edge = w / (2 r), squeeze of the inner edge the same
///          straight sides a − 2 r, b − 2 r
/// mitred   L = 2 (a + b)                               four pieces, four joints, no radius
///          pieces a + w and b + w over their long edges, cut at 45°
/// cut length = L (1 + e),  e the extra length that keeps the joint pressed
/// ```
///
/// # Validity
/// A strip lies round a corner without buckling while r/w stays above the maker's limit. Put the joint of a
/// bent strip in the middle of the longest straight side, not at the low point of a cover in the weather:
/// water stands there.
///
/// # Source
/// Geometry; place of the joint and extra length: common practice.
///
/// # Example
/// 540 × 400 mm with a radius of 40: 1811.3 mm (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::{GasketCorner, GasketStrip};
///
/// let (outcome, _) = GasketStrip {
///     length: mm(540.0),
///     width: mm(400.0),
///     strip_width: mm(12.0),
///     corner: GasketCorner::Bent,
///     corner_radius: mm(40.0),
///     smallest_radius_ratio: 3.0,
///     extra_length: 0.01,
/// }
/// .calculate()?;
/// assert!((outcome.path_length.value - 1.811_327).abs() < 1e-6);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GasketStrip {
    /// Length of the rectangle on the gasket's centre line, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the rectangle on the gasket's centre line, b.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Width of the strip, w.
    #[possible(f64::MIN_POSITIVE..)]
    pub strip_width: Length,
    /// How the strip turns its corners.
    pub corner: GasketCorner,
    /// Corner radius on the centre line, r; 0 for mitred corners.
    #[possible(0.0..)]
    pub corner_radius: Length,
    /// Smallest radius over strip width that the strip bends to without buckling.
    #[possible(0.0..)]
    pub smallest_radius_ratio: f64,
    /// Extra length that keeps the joint pressed, e: part of the length.
    #[possible(0.0..=0.2)]
    pub extra_length: f64,
}

/// How a strip turns a corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum GasketCorner {
    /// Bent round in one piece.
    Bent,
    /// Four pieces, cut at 45° and bonded.
    Mitred,
}

/// Lengths, corners and joint.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct GasketStripOutcome {
    /// Length of the path, L.
    pub path_length: Length,
    /// Length to cut from the roll, all pieces together.
    pub cut_length: Length,
    /// Number of pieces.
    pub pieces: u32,
    /// Number of joints.
    pub joints: u32,
    /// Length of each long piece over its long edge; mitred only.
    pub long_piece: Option<Length>,
    /// Length of each short piece over its long edge; mitred only.
    pub short_piece: Option<Length>,
    /// Longest straight side: the joint of a bent strip stands in its middle.
    pub longest_straight: Length,
    /// Stretch of the strip's outer edge in a corner; bent only.
    pub corner_stretch: Option<f64>,
    /// True if the radius is large enough for the strip; bent only.
    pub corner_bends: Option<bool>,
}

impl Calculation for GasketStrip {
    const NAME: &'static str = "gasket_strip";
    const SOURCE: &'static [Source] =
        &[Source::common_practice("geometry of the path; joint in the longest straight")];
    type Outcome = GasketStripOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, b, w) = (self.length.value, self.width.value, self.strip_width.value);
        let (r, e) = (self.corner_radius.value, self.extra_length);
        if w >= a.min(b) {
            return Err(self.impossible("strip_width", "less than both sides of the rectangle"));
        }
        match self.corner {
            GasketCorner::Bent => {
                if 2.0 * r > a.min(b) {
                    return Err(self.impossible("corner_radius", "no more than half of the shorter side"));
                }
                if r < 0.5 * w {
                    return Err(self.impossible(
                        "corner_radius",
                        "at least half of the strip's width, or mitred corners",
                    ));
                }
                let path = 2.0 * (a + b) - (8.0 - 2.0 * PI) * r;
                Ok(GasketStripOutcome {
                    path_length: si(path),
                    cut_length: si(path * (1.0 + e)),
                    pieces: 1,
                    joints: 1,
                    long_piece: None,
                    short_piece: None,
                    longest_straight: si(a.max(b) - 2.0 * r),
                    corner_stretch: Some(0.5 * w / r),
                    corner_bends: Some(r >= self.smallest_radius_ratio * w),
                })
            }
            GasketCorner::Mitred => {
                if r > 0.0 {
                    return Err(Error::inconsistent(
                        "corner, corner_radius",
                        "a mitred corner has no radius; give 0 mm",
                    ));
                }
                let piece = |side: f64| (side + w) * (1.0 + e);
                Ok(GasketStripOutcome {
                    path_length: si(2.0 * (a + b)),
                    cut_length: si(2.0 * (piece(a) + piece(b))),
                    pieces: 4,
                    joints: 4,
                    long_piece: Some(si(piece(a.max(b)))),
                    short_piece: Some(si(piece(a.min(b)))),
                    longest_straight: si(a.max(b)),
                    corner_stretch: None,
                    corner_bends: None,
                })
            }
        }
    }
}
