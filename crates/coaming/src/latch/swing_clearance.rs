use crate::prelude::*;

/// Room that the edges of a hinged lid need as they swing.
///
/// # Formula
/// ```text
/// free edge: R = sqrt(W² + d²)         its lowest corner reaches out to R, at the opening angle atan(d/W)
/// gap needed                           R − W
/// back edge: o sin θ + u cos θ = f     its corner meets the frame at the opening angle θ
/// ```
/// W from the axis to the far face of the free edge, d how far that edge's lowest corner (the end of a flange, or the seal)
/// lies inward of the axis, o how far the lid reaches behind the axis, u how far that corner and f how far the frame's face
/// lies inward of the axis.
///
/// # Validity
/// A stiff lid, one fixed axis, a frame whose wall beside the free edge reaches up to the axis; play of the hinge and
/// tolerances come on top. An axis that lies outward of the sheet lengthens d.
///
/// # Source
/// Geometry of a turn.
///
/// # Example
/// A lid of 460 mm with a flange of 30 mm below the axis: sqrt(460² + 30²) − 460 = 0.977 mm (by hand).
/// ```
/// use coaming::latch::SwingClearance;
/// use coaming::prelude::*;
///
/// let (outcome, _) = SwingClearance {
///     hinge_to_edge: mm(460.0),
///     edge_depth: mm(30.0),
///     edge_gap: mm(3.0),
///     back_reach: None,
///     back_depth: None,
///     frame_depth: None,
/// }
/// .calculate()?;
/// assert!((outcome.needed_gap - mm(0.977)).abs() < mm(0.001));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SwingClearance {
    /// Distance from the hinge axis to the far face of the free edge, W.
    #[possible(f64::MIN_POSITIVE..)]
    pub hinge_to_edge: Length,
    /// How far the lowest corner of the free edge lies inward of the axis, d; negative where it lies outward of it.
    pub edge_depth: Length,
    /// Gap between the free edge and the frame when closed.
    #[possible(0.0..)]
    pub edge_gap: Length,
    /// How far the lid reaches behind the axis, o; nothing meets the frame there if absent.
    #[possible(0.0..)]
    pub back_reach: Option<Length>,
    /// How far that corner lies inward of the axis, u; zero if absent.
    pub back_depth: Option<Length>,
    /// How far the frame's face behind the axis lies inward of the axis, f; zero if absent.
    pub frame_depth: Option<Length>,
}

/// Outcome of [`SwingClearance`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SwingClearanceOutcome {
    /// Distance of the free edge's lowest corner from the axis, R.
    pub swing_radius: Length,
    /// Gap that the free edge needs to pass the frame.
    pub needed_gap: Length,
    /// Gap left where the free edge passes closest; negative where it strikes.
    pub clearance: Length,
    /// Opening angle at which it passes closest.
    pub closest_angle: Angle,
    /// Opening angle at which the back corner meets the frame; none where it never does, or is not given.
    pub largest_opening_angle: Option<Angle>,
}

impl Calculation for SwingClearance {
    const NAME: &'static str = "swing_clearance";
    const SOURCE: &'static [Source] = &[Source::common_practice("geometry of a turn")];
    type Outcome = SwingClearanceOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (w, depth) = (self.hinge_to_edge.value, self.edge_depth.value);
        let radius = math::hypot(w, depth);
        // A corner outward of the axis draws in from the start.
        let needed = if depth > 0.0 { depth * depth / (radius + w) } else { 0.0 };
        let largest = match self.back_reach {
            None => None,
            Some(reach) => {
                let o = reach.value;
                let (u, f) = (
                    self.back_depth.map_or(0.0, |depth| depth.value),
                    self.frame_depth.map_or(0.0, |depth| depth.value),
                );
                if u > f {
                    return Err(self.impossible(
                        "back_depth",
                        "at most frame_depth: the closed lid would stand in the frame",
                    ));
                }
                // o sin θ + u cos θ is largest, R', at θ = atan(o/u).
                let back = math::hypot(o, u);
                let turn = math::atan2(o, u);
                (f <= back && back > 0.0).then(|| turn - math::acos((f / back).clamp(-1.0, 1.0)))
            }
        };
        Ok(SwingClearanceOutcome {
            swing_radius: si(radius),
            needed_gap: si(needed),
            clearance: si(self.edge_gap.value - needed),
            closest_angle: si(if depth > 0.0 { math::atan2(depth, w) } else { 0.0 }),
            largest_opening_angle: largest.map(si),
        })
    }
}
