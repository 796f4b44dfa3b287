use crate::prelude::*;

/// Movement between two layers at one fastener, and the hole or slot that lets it happen.
///
/// # Formula
/// With the fixed point at the origin and the hole at (x, y):
/// ```text
/// u  = (ε1 − ε2) x,  v = (ε1 − ε2) y            movement of the layer against the fastener
/// s  = |ε1 − ε2| sqrt(x² + y²)
/// t  = t1 + t2                                  worst case
/// t  = k sqrt(t1² + t2²)                        root-sum-square, inflated by k
///
/// oversize   D ≥ d + 2 (s + t)                  clearance left: (D − d)/2 − s − t
/// slot       length over all ≥ d + 2 (|sl| + t) clearance left: (length − d)/2 − |sl| − t
///            width ≥ d + 2 |sa|
/// fixed      D ≥ d                              movement beyond (D − d)/2 is restrained
/// ```
/// sl and sa are the parts of (u, v) along and across the slot, whose long axis stands at `slot_direction` to
/// the x axis.
///
/// # Validity
/// The fastener stands in the middle of the hole at assembly. Both layers grow evenly from one fixed point.
/// Calculate the hot and the cold state, and take the worse: movement either way uses the same clearance.
/// Each tolerance is the radius of the zone in which the centre may lie. Across a slot no tolerance is added:
/// an error there turns the layer a little about its fixed hole and needs no room. Under a countersunk head
/// nothing floats, whatever the hole: the cone centres itself.
///
/// # Source
/// Geometry; L Δα ΔT at each fastener is common practice. Inflated root-sum-square: common practice, factor
/// 1.2 to 1.5.
///
/// # Example
/// A polycarbonate panel on an aluminium frame, 600 mm from the fixed point, 40 K warmer: 600 · (65 −
/// 23.6)e-6 · 40 = 0.9936 mm (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::{HoleMovement, HoleRole, ToleranceStack};
///
/// let (outcome, _) = HoleMovement {
///     distance_x: mm(600.0),
///     distance_y: mm(0.0),
///     growth_strain: 65e-6 * 40.0,
///     fastener_growth_strain: 23.6e-6 * 40.0,
///     hole_role: HoleRole::Oversize,
///     slot_direction: None,
///     fastener_diameter: mm(6.0),
///     hole_position_tolerance: mm(0.2),
///     fastener_position_tolerance: mm(0.1),
///     tolerance_stack: ToleranceStack::WorstCase,
///     inflation_factor: None,
///     hole_diameter: Some(mm(9.0)),
///     slot_length: None,
/// }
/// .calculate()?;
/// assert!((outcome.movement.value - 0.9936e-3).abs() < 1e-9);
/// assert!((outcome.smallest_hole_diameter.value - 8.5872e-3).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct HoleMovement {
    /// Distance of the hole from the fixed point along x.
    pub distance_x: Length,
    /// Distance of the hole from the fixed point along y.
    pub distance_y: Length,
    /// Growth strain of the layer that has the hole, ε1.
    #[possible(-0.5..=0.5)]
    #[tested(-0.03..=0.03)]
    pub growth_strain: f64,
    /// Growth strain of the layer that holds the fastener, ε2.
    #[possible(-0.5..=0.5)]
    #[tested(-0.03..=0.03)]
    pub fastener_growth_strain: f64,
    /// What the hole is there for.
    pub hole_role: HoleRole,
    /// Direction of the slot's long axis, turned from the x axis towards the y axis; for a slot only.
    #[possible(-2.0 * PI..=2.0 * PI)]
    pub slot_direction: Option<Angle>,
    /// Diameter of what passes the hole: the fastener, or its shoulder bush, d.
    #[possible(f64::MIN_POSITIVE..)]
    pub fastener_diameter: Length,
    /// Position tolerance of the hole, t1: radius of the zone in which its centre may lie.
    #[possible(0.0..)]
    pub hole_position_tolerance: Length,
    /// Position tolerance of the fastener, t2: radius of the zone in which its axis may lie.
    #[possible(0.0..)]
    pub fastener_position_tolerance: Length,
    /// How the two tolerances are added.
    pub tolerance_stack: ToleranceStack,
    /// Inflation factor of the root-sum-square, k; for that way of adding only.
    #[possible(1.0..=3.0)]
    pub inflation_factor: Option<f64>,
    /// Diameter of the hole, D; of a slot, its width.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_diameter: Option<Length>,
    /// Length of the slot over all; for a slot only.
    #[possible(f64::MIN_POSITIVE..)]
    pub slot_length: Option<Length>,
}

/// What a hole is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum HoleRole {
    /// Close fit: it places the layer, and belongs at the fixed point.
    Fixed,
    /// Long hole: it guides the layer along one direction.
    Slot,
    /// Large round hole: the layer moves in it in any direction.
    Oversize,
}

/// How tolerances are added.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum ToleranceStack {
    /// All at their limits at once.
    WorstCase,
    /// Square root of the sum of squares, inflated.
    RootSumSquare,
}

/// Movement at the hole and the room it needs.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct HoleMovementOutcome {
    /// Movement of the layer against the fastener along x, u.
    pub movement_x: Length,
    /// Movement of the layer against the fastener along y, v.
    pub movement_y: Length,
    /// Size of the movement, s.
    pub movement: Length,
    /// Movement along the slot, sl; for a slot only.
    pub movement_along_slot: Option<Length>,
    /// Movement across the slot, sa; for a slot only.
    pub movement_across_slot: Option<Length>,
    /// Both position tolerances together, t.
    pub position_tolerance: Length,
    /// Smallest diameter of the hole; of a slot, its smallest width.
    pub smallest_hole_diameter: Length,
    /// Smallest length of the slot over all; for a slot only.
    pub smallest_slot_length: Option<Length>,
    /// Clearance left on the radius beyond movement and tolerance, negative if there is too little; along a
    /// slot. Absent for a fixed hole, and when the size is not given.
    pub clearance_left: Option<Length>,
    /// Part of the movement for which the given size has no room; absent when the size is not given.
    pub restrained_movement: Option<Length>,
}

impl HoleMovement {
    fn check_role(&self) -> Result<(), Error> {
        if self.hole_role == HoleRole::Slot {
            if let (Some(length), Some(width)) = (self.slot_length, self.hole_diameter)
                && length < width
            {
                return Err(Error::inconsistent(
                    "slot_length, hole_diameter",
                    "a slot is at least as long over all as it is wide",
                ));
            }
        } else if self.slot_direction.is_some() || self.slot_length.is_some() {
            return Err(Error::inconsistent(
                "hole_role, slot_direction, slot_length",
                "only a slot has a direction and a length",
            ));
        }
        if self.tolerance_stack == ToleranceStack::WorstCase && self.inflation_factor.is_some() {
            return Err(Error::inconsistent(
                "tolerance_stack, inflation_factor",
                "a worst case is not inflated; leave the factor out",
            ));
        }
        Ok(())
    }

    fn position_tolerance(&self) -> Result<f64, Error> {
        let (hole, fastener) = (self.hole_position_tolerance.value, self.fastener_position_tolerance.value);
        match (self.tolerance_stack, self.inflation_factor) {
            (ToleranceStack::WorstCase, _) => Ok(hole + fastener),
            (ToleranceStack::RootSumSquare, Some(factor)) => Ok(factor * math::hypot(hole, fastener)),
            (ToleranceStack::RootSumSquare, None) => Err(Error::inconsistent(
                "tolerance_stack, inflation_factor",
                "root_sum_square needs its inflation factor; 1 adds nothing",
            )),
        }
    }
}

impl Calculation for HoleMovement {
    const NAME: &'static str = "hole_movement";
    const SOURCE: &'static [Source] = &[Source {
        title: "common practice",
        edition: "",
        locator: "length times difference of growth; inflated root-sum-square of tolerances",
        standing: Standing::CommonPractice,
    }];
    type Outcome = HoleMovementOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        self.check_role()?;
        let difference = self.growth_strain - self.fastener_growth_strain;
        let u = difference * self.distance_x.value;
        let v = difference * self.distance_y.value;
        let s = math::hypot(u, v);
        let t = self.position_tolerance()?;
        let d = self.fastener_diameter.value;
        let room = |size: Length| 0.5 * (size.value - d);

        let mut outcome = HoleMovementOutcome {
            movement_x: si(u),
            movement_y: si(v),
            movement: si(s),
            movement_along_slot: None,
            movement_across_slot: None,
            position_tolerance: si(t),
            smallest_hole_diameter: si(d),
            smallest_slot_length: None,
            clearance_left: None,
            restrained_movement: None,
        };
        match self.hole_role {
            HoleRole::Fixed => {
                let restrained = self.hole_diameter.map_or(s, |size| (s - room(size)).max(0.0));
                if restrained > 0.0 {
                    caveats.add(Caveat::FixedHoleMoves);
                }
                outcome.restrained_movement = Some(si(restrained));
            }
            HoleRole::Oversize => {
                outcome.smallest_hole_diameter = si(d + 2.0 * (s + t));
                outcome.clearance_left = self.hole_diameter.map(|size| si(room(size) - s - t));
                outcome.restrained_movement =
                    self.hole_diameter.map(|size| si((s + t - room(size)).max(0.0)));
            }
            HoleRole::Slot => {
                let Some(direction) = self.slot_direction else {
                    return Err(Error::inconsistent(
                        "hole_role, slot_direction",
                        "a slot needs its direction",
                    ));
                };
                let (sine, cosine) = (math::sin(direction.value), math::cos(direction.value));
                let along = u * cosine + v * sine;
                let across = v * cosine - u * sine;
                outcome.movement_along_slot = Some(si(along));
                outcome.movement_across_slot = Some(si(across));
                outcome.smallest_hole_diameter = si(d + 2.0 * across.abs());
                outcome.smallest_slot_length = Some(si(d + 2.0 * (along.abs() + t)));
                outcome.clearance_left = self.slot_length.map(|size| si(room(size) - along.abs() - t));
                if let (Some(length), Some(width)) = (self.slot_length, self.hole_diameter) {
                    let short = (along.abs() + t - room(length)).max(0.0);
                    let narrow = (across.abs() - room(width)).max(0.0);
                    outcome.restrained_movement = Some(si(math::hypot(short, narrow)));
                }
            }
        }
        Ok(outcome)
    }
}
