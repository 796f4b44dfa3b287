use crate::prelude::*;

/// Squeeze and groove fill of a round cord or ring in a rectangular groove.
///
/// # Formula
/// ```text
/// d′ = d / sqrt(1 + s)                   diameter after stretch: the volume stays
/// g  = groove depth + gap                depth that is left when closed
/// squeeze = (d′ − g) / d′
/// fill    = (π/4) d′² / (g b)            part of the groove's section that the cord takes
/// ```
/// The extremes take cord and groove at the ends of their tolerances: least squeeze with the thinnest cord in
/// the deepest groove, greatest fill with the thickest cord in the smallest groove.
///
/// # Validity
/// Rubber that keeps its volume; stretch even along the cord. A squeeze below zero does not seal. Swelling
/// and heat raise the fill: leave room for them.
///
/// # Source
/// Definition of squeeze and fill as in O-ring makers' design notes; constant volume.
///
/// # Example
/// A cord of 5.33 mm in a groove 4.3 deep and 6.2 wide: squeeze 19.3 %, fill 83.7 % (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::CordGroove;
///
/// let (outcome, _) = CordGroove {
///     cord_diameter: mm(5.33),
///     cord_tolerance: mm(0.0),
///     stretch: 0.0,
///     groove_depth: mm(4.3),
///     depth_tolerance: mm(0.0),
///     groove_width: mm(6.2),
///     width_tolerance: mm(0.0),
///     face_gap: mm(0.0),
/// }
/// .calculate()?;
/// assert!((outcome.squeeze - 0.1932).abs() < 1e-4);
/// assert!((outcome.fill - 0.8369).abs() < 1e-4);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CordGroove {
    /// Diameter of the free cord, d.
    #[possible(f64::MIN_POSITIVE..)]
    pub cord_diameter: Length,
    /// Tolerance of the cord's diameter: half of its band.
    #[possible(0.0..)]
    pub cord_tolerance: Length,
    /// Stretch of the cord in the groove, s: added part of its length.
    #[possible(-0.2..=1.0)]
    #[tested(0.0..=0.05)]
    pub stretch: f64,
    /// Depth of the groove.
    #[possible(f64::MIN_POSITIVE..)]
    pub groove_depth: Length,
    /// Tolerance of the depth: half of its band.
    #[possible(0.0..)]
    pub depth_tolerance: Length,
    /// Width of the groove, b.
    #[possible(f64::MIN_POSITIVE..)]
    pub groove_width: Length,
    /// Tolerance of the width: half of its band.
    #[possible(0.0..)]
    pub width_tolerance: Length,
    /// Gap between the faces when closed.
    #[possible(0.0..)]
    pub face_gap: Length,
}

/// Squeeze and fill.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct CordGrooveOutcome {
    /// Diameter after stretch, d′.
    pub stretched_diameter: Length,
    /// Squeeze at the middle of all tolerances.
    pub squeeze: f64,
    /// Least squeeze.
    pub squeeze_min: f64,
    /// Greatest squeeze.
    pub squeeze_max: f64,
    /// Fill at the middle of all tolerances.
    pub fill: f64,
    /// Greatest fill.
    pub fill_max: f64,
}

impl Calculation for CordGroove {
    const NAME: &'static str = "cord_groove";
    const SOURCE: &'static [Source] = &[Source {
        title: "O-ring maker's design notes",
        edition: "",
        locator: "squeeze and gland-fill paragraphs",
        standing: Standing::Read,
    }];
    type Outcome = CordGrooveOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (d, td) = (self.cord_diameter.value, self.cord_tolerance.value);
        let (depth, tg) = (self.groove_depth.value, self.depth_tolerance.value);
        let (b, tb) = (self.groove_width.value, self.width_tolerance.value);
        for (field, tolerance, size) in
            [("cord_tolerance", td, d), ("depth_tolerance", tg, depth), ("width_tolerance", tb, b)]
        {
            if tolerance >= size {
                return Err(self.impossible(field, "less than the size that it belongs to"));
            }
        }
        let g = depth + self.face_gap.value;
        let thinned = |d: f64| d / (1.0 + self.stretch).sqrt();
        let squeeze = |d: f64, g: f64| (thinned(d) - g) / thinned(d);
        let fill = |d: f64, g: f64, b: f64| 0.25 * PI * thinned(d) * thinned(d) / (g * b);
        Ok(CordGrooveOutcome {
            stretched_diameter: si(thinned(d)),
            squeeze: squeeze(d, g),
            squeeze_min: squeeze(d - td, g + tg),
            squeeze_max: squeeze(d + td, g - tg),
            fill: fill(d, g, b),
            fill_max: fill(d + td, g - tg, b - tb),
        })
    }
}
