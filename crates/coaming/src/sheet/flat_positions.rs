//! Places on a folded panel, brought back to its flat.

use super::panel_faces::Flat;
use super::{FlatPanel, FlatPlace, SpacePlace};
use crate::prelude::*;

/// Places on the good face of a folded panel, such as holes that were laid out on the folded part, brought back to the flat.
///
/// # Formula
/// The motion of each face, as of [`FoldedPanel`](super::FoldedPanel), turned round: a place belongs to the face in whose plane
/// it lies and within whose outline it falls.
///
/// # Validity
/// Places within 1 µm of a good face and on it, not in a bend; where two faces lie on each other, the first. Exact: what is
/// unfolded comes back to 1e-9 m.
///
/// # Source
/// Geometry.
///
/// # Example
/// The hole of the example of `FoldedPanel`, given where it stands on the flange, lies 10 mm from the end of the flat.
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::{BendDirection, FlatBend, FlatPanel, FlatPlace, FlatPositions, SpacePlace};
///
/// let half = 0.5 * core::f64::consts::FRAC_PI_2 * 2.4;
/// let at = |x: f64, y: f64| FlatPlace { x: mm(x), y: mm(y) };
/// let right = 50.0 + half + 20.0;
/// let (outcome, _) = FlatPositions {
///     panel: FlatPanel {
///         thickness: mm(1.0),
///         k_factor: 0.4,
///         outline: vec![at(0.0, 0.0), at(right, 0.0), at(right, 30.0), at(0.0, 30.0)],
///         holes: vec![],
///         bends: vec![FlatBend {
///             from_x: mm(50.0),
///             from_y: mm(0.0),
///             to_x: mm(50.0),
///             to_y: mm(30.0),
///             bend_angle: deg(90.0),
///             inside_radius: mm(2.0),
///             bend_direction: BendDirection::Up,
///         }],
///         base: at(10.0, 15.0),
///     },
///     places: vec![SpacePlace { x: mm(50.0 - half + 2.0), y: mm(15.0), z: mm(12.0) }],
/// }
/// .calculate()?;
/// assert!((outcome.places[0].x - mm(right - 10.0)).abs() < mm(1e-9));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct FlatPositions {
    /// The flat panel.
    pub panel: FlatPanel,
    /// The places on the folded panel's good face.
    pub places: Vec<SpacePlace>,
}

/// Outcome of [`FlatPositions`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct FlatPositionsOutcome {
    /// The places on the flat, in the same order.
    pub places: Vec<FlatPlace>,
    /// The number of the face of each, from 0.
    pub faces: Vec<u32>,
}

/// How far off its face a place may lie, in m.
const OFF_FACE: f64 = 1e-6;

impl Calculation for FlatPositions {
    const NAME: &'static str = "flat_positions";
    const SOURCE: &'static [Source] = &[Source::common_practice("geometry of turned parts")];
    type Outcome = FlatPositionsOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let parted = self.panel.parted()?;
        let (mut places, mut faces) = (Vec::new(), Vec::new());
        for (which, place) in self.places.iter().enumerate() {
            let point = [place.x.value, place.y.value, place.z.value];
            let on = |(number, (ring, motion)): (
                usize,
                (&super::panel_faces::Ring, &super::panel_faces::Motion),
            )| {
                let [x, y, z] = motion.back(point);
                let at: Flat = [x, y];
                let near = z.abs() <= OFF_FACE && (ring.holds(at) || ring.nearest(at).0 <= OFF_FACE);
                near.then_some((number, at))
            };
            let found = parted.faces.iter().zip(&parted.motions).enumerate().find_map(on);
            let Some((number, [x, y])) = found else {
                return Err(Error::inconsistent(
                    format!("places[{which}]"),
                    "a place on the good face of a face is accepted",
                ));
            };
            places.push(FlatPlace { x: si(x), y: si(y) });
            faces.push(u32::try_from(number).unwrap_or(u32::MAX));
        }
        Ok(FlatPositionsOutcome { places, faces })
    }
}
