//! Edge distance, pitch, bearing, tear-out and net section of a hole.

use crate::prelude::*;

/// A fastener hole near an edge and beside its neighbours: distances, bearing, tear-out and net section, each against its limit.
///
/// # Formula
/// Edge distance ratio e/D and pitch ratio p/d, each over the ratio that is required. D is the hole, d the fastener.
/// Bearing: F/(d t). Tear-out on two planes from the hole to the edge: F/(2 (e − D/2) t).
/// Net section between holes: F/((p − D) t). Each stress over its limit is a utilisation; above 1 it fails.
///
/// # Validity
/// In-plane force on one fastener, towards the edge, even over its hole; no friction, no bending of the fastener.
/// The tear-out planes run from the rim of the hole and are thus shorter than planes from its centre: the safe side.
/// The net section carries one fastener's force on one pitch. Ratios are to nominal sizes: take the tolerance off `edge_distance`.
///
/// # Source
/// NASA RP-1228, Fastener Design Manual (1990), p. 21: edge distance 2 D nominal and 1.5 D smallest, bearing strength
/// about 1.5 times the tensile (second-hand). The limits are inputs; none is built in.
///
/// # Example
/// 1 kN on a 5 mm screw in a 2 mm sheet: bearing 100 MPa, by hand.
/// ```
/// use coaming::fastener::HoleEdge;
/// use coaming::prelude::*;
///
/// let (hole, _) = HoleEdge {
///     hole_diameter: mm(5.5),
///     fastener_diameter: mm(5.0),
///     sheet_thickness: mm(2.0),
///     edge_distance: mm(11.0),
///     required_edge_ratio: 2.0,
///     pitch: Some(mm(20.0)),
///     required_pitch_ratio: Some(3.0),
///     force: kilonewton(1.0),
///     bearing_limit: megapascal(300.0),
///     shear_limit: megapascal(120.0),
///     tensile_limit: megapascal(200.0),
/// }
/// .calculate()?;
/// assert!((hole.bearing_stress.value - 100e6).abs() < 1.0);
/// assert!((hole.edge_distance_ratio - 2.0).abs() < 1e-12);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct HoleEdge {
    /// Diameter of the hole, D.
    #[possible(f64::MIN_POSITIVE..)]
    pub hole_diameter: Length,
    /// Nominal diameter of the fastener, d.
    #[possible(f64::MIN_POSITIVE..)]
    pub fastener_diameter: Length,
    /// Thickness of the sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub sheet_thickness: Length,
    /// Distance from the centre of the hole to the edge, e.
    #[possible(f64::MIN_POSITIVE..)]
    pub edge_distance: Length,
    /// Edge distance that is required, as a multiple of the hole diameter.
    #[possible(f64::MIN_POSITIVE..)]
    pub required_edge_ratio: f64,
    /// Distance from hole to hole, p; absent for a single hole.
    #[possible(f64::MIN_POSITIVE..)]
    pub pitch: Option<Length>,
    /// Pitch that is required, as a multiple of the fastener diameter; goes with the pitch.
    #[possible(f64::MIN_POSITIVE..)]
    pub required_pitch_ratio: Option<f64>,
    /// In-plane force on the fastener, F.
    #[possible(0.0..)]
    pub force: Force,
    /// Bearing stress that the sheet may take.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub bearing_limit: Pressure,
    /// Shear stress that the sheet may take.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub shear_limit: Pressure,
    /// Tensile stress that the net section may take.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub tensile_limit: Pressure,
}

/// Outcome of [`HoleEdge`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct HoleEdgeOutcome {
    /// Edge distance over hole diameter, e/D.
    pub edge_distance_ratio: f64,
    /// Edge distance over the one that is required; below 1 it is too small.
    pub edge_distance_adequacy: f64,
    /// Pitch over fastener diameter, p/d; absent for a single hole.
    pub pitch_ratio: Option<f64>,
    /// Pitch over the one that is required; below 1 it is too small.
    pub pitch_adequacy: Option<f64>,
    /// Bearing stress.
    #[shown_in("MPa")]
    pub bearing_stress: Pressure,
    /// Bearing stress over its limit.
    pub bearing_utilisation: f64,
    /// Shear stress on the two tear-out planes.
    #[shown_in("MPa")]
    pub tear_out_stress: Pressure,
    /// Tear-out stress over its limit.
    pub tear_out_utilisation: f64,
    /// Tensile stress in the net section; absent for a single hole.
    #[shown_in("MPa")]
    pub net_section_stress: Option<Pressure>,
    /// Net section stress over its limit.
    pub net_section_utilisation: Option<f64>,
}

impl Calculation for HoleEdge {
    const NAME: &'static str = "hole_edge";
    const SOURCE: &'static [Source] = &[Source {
        title: "NASA RP-1228, Fastener Design Manual",
        edition: "1990",
        locator: "p. 21",
        standing: Standing::SecondHand,
    }];
    type Outcome = HoleEdgeOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (hole, d, t) =
            (self.hole_diameter.value, self.fastener_diameter.value, self.sheet_thickness.value);
        let (e, force) = (self.edge_distance.value, self.force.value);
        if hole < d {
            return Err(self.impossible("hole_diameter", "not less than the fastener diameter"));
        }
        if e <= hole / 2.0 {
            return Err(self.impossible(
                "edge_distance",
                "more than half the hole diameter: the hole must lie inside the edge",
            ));
        }
        let pitch = match (self.pitch, self.required_pitch_ratio) {
            (Some(pitch), Some(required)) => {
                if pitch.value <= hole {
                    return Err(
                        self.impossible("pitch", "more than the hole diameter: the holes must not touch")
                    );
                }
                Some((pitch.value, required))
            }
            (None, None) => None,
            _ => {
                return Err(Error::inconsistent(
                    "pitch, required_pitch_ratio",
                    "give both, or neither for a single hole",
                ));
            }
        };
        let bearing = force / (d * t);
        let tear_out = force / (2.0 * (e - hole / 2.0) * t);
        let net = pitch.map(|(pitch, _)| force / ((pitch - hole) * t));
        Ok(HoleEdgeOutcome {
            edge_distance_ratio: e / hole,
            edge_distance_adequacy: e / hole / self.required_edge_ratio,
            pitch_ratio: pitch.map(|(pitch, _)| pitch / d),
            pitch_adequacy: pitch.map(|(pitch, required)| pitch / d / required),
            bearing_stress: si(bearing),
            bearing_utilisation: bearing / self.bearing_limit.value,
            tear_out_stress: si(tear_out),
            tear_out_utilisation: tear_out / self.shear_limit.value,
            net_section_stress: net.map(si),
            net_section_utilisation: net.map(|stress| stress / self.tensile_limit.value),
        })
    }
}
