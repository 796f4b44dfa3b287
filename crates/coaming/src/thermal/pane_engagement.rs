use crate::prelude::*;

/// How much of a lapped pane's edge stays behind its frame when it shrinks, bows and shifts.
///
/// # Formula
/// L free span, e the overlap of each edge at assembly:
/// ```text
/// shrinkage of each edge   sh = max(εf − εp, 0) (L/2 + e)
/// bow draws each edge in   sb = 4 w² / (3 L)             parabola of height w
/// shift                    ss = clearance by which the pane can move to one side
/// tolerance                t  = the sum of those of pane and opening
/// left = e − sh − sb − ss − t
/// ```
/// εp, εf growth strains of pane and frame.
///
/// # Validity
/// One direction; calculate both. The pane slides at its edges: a held edge draws in less and carries
/// membrane force instead. Bow small against the span (w under L/10, else a caveat). All at their worst at
/// once.
///
/// # Source
/// Geometry: chord of a shallow parabola, arc length to second order; common practice.
///
/// # Example
/// Span 260 mm bowed by 10.4 mm (span/25): each edge drawn in by 4 · 10.4²/(3 · 260) = 0.555 mm (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::PaneEngagement;
///
/// let (outcome, _) = PaneEngagement {
///     free_span: mm(260.0),
///     overlap: mm(20.0),
///     pane_growth_strain: 0.0,
///     frame_growth_strain: 0.0,
///     bow: mm(10.4),
///     side_clearance: mm(1.0),
///     tolerance: mm(0.5),
/// }
/// .calculate()?;
/// assert!((outcome.bow_draw.value - 0.554_667e-3).abs() < 1e-9);
/// assert!((outcome.engagement.value - 17.945_333e-3).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PaneEngagement {
    /// Free span between the frame's edges, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_span: Length,
    /// Overlap of each edge at assembly, e.
    #[possible(f64::MIN_POSITIVE..)]
    pub overlap: Length,
    /// Growth strain of the pane, εp.
    #[possible(-0.5..=0.5)]
    #[tested(-0.03..=0.03)]
    pub pane_growth_strain: f64,
    /// Growth strain of the frame, εf.
    #[possible(-0.5..=0.5)]
    #[tested(-0.03..=0.03)]
    pub frame_growth_strain: f64,
    /// Bow of the pane under load at mid-span, w.
    #[possible(0.0..)]
    pub bow: Length,
    /// Clearance by which the pane can shift to one side.
    #[possible(0.0..)]
    pub side_clearance: Length,
    /// Tolerance of pane and opening on one edge, all together.
    #[possible(0.0..)]
    pub tolerance: Length,
}

/// Engagement left, and what took the rest.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct PaneEngagementOutcome {
    /// Shrinkage of each edge, sh.
    pub shrinkage: Length,
    /// Draw of each edge by the bow, sb.
    pub bow_draw: Length,
    /// Engagement left at the worse edge; below zero the pane falls through.
    pub engagement: Length,
}

impl Calculation for PaneEngagement {
    const NAME: &'static str = "pane_engagement";
    const SOURCE: &'static [Source] =
        &[Source::common_practice("geometry of a shallow parabola; all at their worst")];
    type Outcome = PaneEngagementOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (span, overlap, bow) = (self.free_span.value, self.overlap.value, self.bow.value);
        if bow > 0.1 * span {
            caveats.add(Caveat::OutsideTested);
        }
        let difference = (self.frame_growth_strain - self.pane_growth_strain).max(0.0);
        let shrinkage = difference * (0.5 * span + overlap);
        let draw = 4.0 * bow * bow / (3.0 * span);
        let left = overlap - shrinkage - draw - self.side_clearance.value - self.tolerance.value;
        Ok(PaneEngagementOutcome { shrinkage: si(shrinkage), bow_draw: si(draw), engagement: si(left) })
    }
}
