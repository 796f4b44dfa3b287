//! Stiffness of the clamped layers by the pressure cone, layer by layer, now and after creep.

use super::bolt_stiffness::JointKind;
use crate::prelude::*;

/// A shoulder bush (compression limiter) that carries the clamp force through a layer.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ShoulderBush {
    /// Outer diameter.
    #[possible(f64::MIN_POSITIVE..)]
    pub outer_diameter: Length,
    /// Inner diameter.
    #[possible(f64::MIN_POSITIVE..)]
    pub inner_diameter: Length,
    /// Young's modulus.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
}

/// One clamped layer.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ClampedLayer {
    /// Thickness.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Young's modulus in compression, at the temperature in question.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// How many times softer the layer is after its time and temperature: 1 for metal.
    #[possible(1.0..)]
    pub creep_factor: f64,
    /// Bush that carries the clamp force instead of the layer; absent without one.
    pub bush: Option<ShoulderBush>,
}

/// Stiffness of the clamped layers: a pressure cone through layers of different moduli, bushes included.
///
/// # Formula
/// δP = Σ ∫ dz/(E A(z)), A = (π/4)(D² − dh²), k = 1/δP. D grows from the bearing diameter dw by 2 z tan φ away from each bearing
/// face, to the middle of the grip for a through-bolted joint, through the whole grip for a tapped one, and no further than the
/// outer diameter of the parts DA. In closed form for each piece: ln[(D1 − dh)(D0 + dh)/((D1 + dh)(D0 − dh))]/(E π dh tan φ).
/// tan φ = 0.362 + 0.032 ln(β/2) + 0.153 ln y (through-bolted); 0.348 + 0.013 ln β + 0.193 ln y (tapped);
/// β = grip/dw, y = DA/dw. A bushed layer: thickness/(Eb (π/4)(Do² − Di²)). After creep: each E divided by its creep factor.
///
/// # Validity
/// The cone angle was fitted for metal layers of one modulus with y up to about 6 and is outside its tests for soft layers,
/// where the cone may be wider or narrower: a layer below 100 GPa without a bush carries a caveat. A bush must be longer than
/// its layer at all extremes, else layer and bush share; that is not looked at here.
///
/// # Source
/// VDI 2230-1 (2015), section 5.1.2 (recalled, unverified).
///
/// # Example
/// One steel block of 30 mm, dw 11.63, dh 9.0, DA 17.445 (y = 1.5), through-bolted: 838.0 kN/mm by quadrature of the cone.
/// ```
/// use coaming::fastener::{ClampedLayer, JointKind, MemberStiffness};
/// use coaming::prelude::*;
///
/// let (members, _) = MemberStiffness {
///     layers: vec![ClampedLayer { thickness: mm(30.0), youngs_modulus: gigapascal(205.0), creep_factor: 1.0, bush: None }],
///     bearing_diameter: mm(11.63),
///     hole_diameter: mm(9.0),
///     outer_diameter: mm(17.445),
///     joint_kind: JointKind::ThroughBolted,
/// }
/// .calculate()?;
/// assert!((members.stiffness.value / 1e6 - 838.0).abs() < 0.1);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MemberStiffness {
    /// Clamped layers, from the head.
    pub layers: Vec<ClampedLayer>,
    /// Outer diameter of the bearing face, dw.
    #[possible(f64::MIN_POSITIVE..)]
    pub bearing_diameter: Length,
    /// Diameter of the hole through the layers, dh.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_diameter: Length,
    /// Outer diameter of the clamped parts round the screw, DA: for a plate, twice the edge distance or the screw pitch.
    #[possible(f64::MIN_POSITIVE..)]
    pub outer_diameter: Length,
    /// How the screw is held.
    pub joint_kind: JointKind,
}

/// Outcome of [`MemberStiffness`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct MemberStiffnessOutcome {
    /// Stiffness of the layers, k.
    #[shown_in("kN/mm")]
    pub stiffness: ForcePerLength,
    /// Stiffness of the layers after creep.
    #[shown_in("kN/mm")]
    pub stiffness_after_creep: ForcePerLength,
    /// Half angle of the pressure cone, φ.
    pub cone_angle: Angle,
    /// Thickness of all layers.
    pub grip: Length,
}

/// The cone: bearing, hole and outer diameter and slope, in m.
struct Cone {
    bearing: f64,
    hole: f64,
    outer: f64,
    slope: f64,
}

impl Cone {
    /// ∫ dz/A between two distances from the bearing face.
    fn compliance(&self, from: f64, to: f64) -> f64 {
        // Distance from which the cone fills the parts.
        let full = (self.outer - self.bearing) / (2.0 * self.slope);
        let (cone_end, cylinder_start) = (to.min(full), from.max(full));
        let mut sum = 0.0;
        if cone_end > from {
            let (d0, d1) =
                (self.bearing + 2.0 * self.slope * from, self.bearing + 2.0 * self.slope * cone_end);
            let ratio = (d1 - self.hole) * (d0 + self.hole) / ((d1 + self.hole) * (d0 - self.hole));
            sum += math::ln(ratio) / (PI * self.hole * self.slope);
        }
        if to > cylinder_start {
            sum += (to - cylinder_start) / (PI / 4.0 * (self.outer - self.hole) * (self.outer + self.hole));
        }
        sum
    }
}

impl Calculation for MemberStiffness {
    const NAME: &'static str = "member_stiffness";
    const SOURCE: &'static [Source] = &[Source {
        title: "VDI 2230-1",
        edition: "2015",
        locator: "section 5.1.2",
        standing: Standing::Memory,
    }];
    type Outcome = MemberStiffnessOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.layers.is_empty() {
            return Err(Error::inconsistent("layers", "at least one layer is needed: the list is empty"));
        }
        let (bearing, hole) = (self.bearing_diameter.value, self.hole_diameter.value);
        let outer = self.outer_diameter.value;
        if bearing <= hole {
            return Err(self.impossible("bearing_diameter", "more than the hole diameter"));
        }
        if outer < bearing {
            return Err(self.impossible("outer_diameter", "not less than the bearing diameter"));
        }
        let grip = self.layers.iter().fold(0.0, |sum, layer| sum + layer.thickness.value);
        let (slenderness, width) = (grip / bearing, outer / bearing);
        let slope = match self.joint_kind {
            JointKind::ThroughBolted => 0.362 + 0.032 * math::ln(slenderness / 2.0) + 0.153 * math::ln(width),
            JointKind::Tapped => 0.348 + 0.013 * math::ln(slenderness) + 0.193 * math::ln(width),
        };
        if slope <= 0.0 {
            return Err(Error::inconsistent(
                "layers, bearing_diameter",
                "the grip is too thin beside the head: the cone angle has no meaning",
            ));
        }
        if width > 6.0 || slenderness < 0.2 {
            caveats.add(Caveat::OutsideTested);
        }
        let cone = Cone { bearing, hole, outer, slope };
        let turn = match self.joint_kind {
            JointKind::ThroughBolted => grip / 2.0,
            JointKind::Tapped => grip,
        };
        let (mut now, mut later, mut start) = (0.0, 0.0, 0.0);
        for layer in &self.layers {
            let end = start + layer.thickness.value;
            match &layer.bush {
                Some(bush) => {
                    let (outer, inner) = (bush.outer_diameter.value, bush.inner_diameter.value);
                    if outer <= inner {
                        return Err(Error::inconsistent(
                            "layers.bush.outer_diameter, layers.bush.inner_diameter",
                            "the outer must be larger",
                        ));
                    }
                    let area = PI / 4.0 * (outer - inner) * (outer + inner);
                    let compliance = layer.thickness.value / (bush.youngs_modulus.value * area);
                    now += compliance;
                    later += compliance;
                }
                None => {
                    if layer.youngs_modulus.value < 100e9 {
                        caveats.add(Caveat::OutsideVdi2230);
                    }
                    let mut shape = 0.0;
                    if start < turn {
                        shape += cone.compliance(start, end.min(turn));
                    }
                    if end > turn {
                        shape += cone.compliance(grip - end, grip - start.max(turn));
                    }
                    let compliance = shape / layer.youngs_modulus.value;
                    now += compliance;
                    later += compliance * layer.creep_factor;
                }
            }
            start = end;
        }
        Ok(MemberStiffnessOutcome {
            stiffness: si(1.0 / now),
            stiffness_after_creep: si(1.0 / later),
            cone_angle: si(math::atan(slope)),
            grip: si(grip),
        })
    }
}
