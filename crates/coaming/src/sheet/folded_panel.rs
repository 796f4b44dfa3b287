//! A flat panel with its bends made: where each face and each hole lies in space.

use super::FlatPanel;
use super::panel_faces::{Edge, Flat, Motion, Space};
use crate::prelude::*;

/// Flat panel with any number of bends about any lines, folded: its faces and holes in space, and what the flat measures.
///
/// # Formula
/// Each bend takes the strip of its allowance BA = α (r + K t) about its line; the part past it is turned by α about the
/// line and lies beyond an arc of the good face's radius, r where the bend goes up (to the good face), r + t where it goes
/// down: the tangent line at BA/2 goes to s = −BA/2 + ρ sin α, z = ±ρ (1 − cos α). Motions of one bend behind the other
/// are multiplied. Area less holes; volume = area × t; cut length = outline and hole edges.
///
/// # Validity
/// Sheet of even thickness, bends of even radius, no springback; the flat is the plane z = 0, its good face outward (z
/// positive). Faces are not checked for striking each other, nor against the press brake. Exact: what is folded comes back
/// flat to 1e-9 m.
///
/// # Source
/// Geometry; the allowance as in [`BendAllowance`](super::BendAllowance).
///
/// # Example
/// A flange of 20 mm flat at 90°, r = 2 mm, K = 0.4, t = 1 mm, up: its end stands 20 + 2 mm over the sheet's good face.
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::{BendDirection, FlatBend, FlatHole, FlatPanel, FlatPlace, FoldedPanel};
///
/// let half = 0.5 * core::f64::consts::FRAC_PI_2 * 2.4;
/// let at = |x: f64, y: f64| FlatPlace { x: mm(x), y: mm(y) };
/// let right = 50.0 + half + 20.0;
/// let (outcome, _) = FoldedPanel {
///     panel: FlatPanel {
///         thickness: mm(1.0),
///         k_factor: 0.4,
///         outline: vec![at(0.0, 0.0), at(right, 0.0), at(right, 30.0), at(0.0, 30.0)],
///         holes: vec![FlatHole { x: mm(right - 10.0), y: mm(15.0), diameter: mm(5.0) }],
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
/// }
/// .calculate()?;
/// assert!((outcome.holes[0].z - mm(12.0)).abs() < mm(1e-9));
/// assert!((outcome.size_z - mm(23.0)).abs() < mm(1e-9));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct FoldedPanel {
    /// The flat panel.
    pub panel: FlatPanel,
}

/// A place in space.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SpacePlace {
    /// Along x.
    pub x: Length,
    /// Along y.
    pub y: Length,
    /// Along z, outward from the good face of the base.
    pub z: Length,
}

/// A face in space.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct FoldedFace {
    /// The corners of its good face.
    pub corners: Vec<SpacePlace>,
    /// Outward direction of its good face, along x.
    pub normal_x: f64,
    /// That direction, along y.
    pub normal_y: f64,
    /// That direction, along z.
    pub normal_z: f64,
    /// Area of the face, its holes included.
    pub area: Area,
}

/// A hole in space.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct FoldedHole {
    /// Its centre on the good face, along x.
    pub x: Length,
    /// That centre, along y.
    pub y: Length,
    /// That centre, along z.
    pub z: Length,
    /// Number of its face, from 0.
    pub face: u32,
    /// Distance from its edge to the nearest edge or bend of the face.
    pub edge_distance: Length,
}

/// Outcome of [`FoldedPanel`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct FoldedPanelOutcome {
    /// Length of the flat along x.
    pub flat_x: Length,
    /// Length of the flat along y.
    pub flat_y: Length,
    /// Area of the flat without its holes.
    pub flat_area: Area,
    /// Length of all cuts: outline and hole edges.
    pub cut_length: Length,
    /// Volume of the sheet.
    pub volume: Volume,
    /// Length of the folded panel along x, thickness and bends included.
    pub size_x: Length,
    /// Length of the folded panel along y.
    pub size_y: Length,
    /// Length of the folded panel along z.
    pub size_z: Length,
    /// Number of the face that stays where it is, from 0.
    pub base_face: u32,
    /// The faces.
    pub faces: Vec<FoldedFace>,
    /// The holes, in the order of the flat's.
    pub holes: Vec<FoldedHole>,
}

/// The least and the largest of each coordinate.
#[derive(Debug, Clone, Copy)]
struct Bounds {
    low: Space,
    high: Space,
}

impl Bounds {
    const NOTHING: Self = Self { low: [f64::INFINITY; 3], high: [f64::NEG_INFINITY; 3] };

    fn add(&mut self, point: Space) {
        for ((low, high), value) in self.low.iter_mut().zip(&mut self.high).zip(point) {
            *low = low.min(value);
            *high = high.max(value);
        }
    }

    fn size(&self) -> Space {
        let ([lx, ly, lz], [hx, hy, hz]) = (self.low, self.high);
        [hx - lx, hy - ly, hz - lz]
    }
}

fn place([x, y, z]: Space) -> SpacePlace {
    SpacePlace { x: si(x), y: si(y), z: si(z) }
}

fn number(place: usize) -> u32 {
    u32::try_from(place).unwrap_or(u32::MAX)
}

/// Adds both faces of a bend at the points where a coordinate is largest or least on the arc, and at its ends.
fn add_arc(
    bounds: &mut Bounds,
    motion: &Motion,
    at: Flat,
    inward: Flat,
    (radius, angle, sign, t): (f64, f64, f64, f64),
) {
    let ([x, y], [nx, ny]) = (at, inward);
    // From the tangent line of the face that `motion` moves, outward along −inward.
    let out = [-nx, -ny, 0.0];
    for rho in [radius, if sign > 0.0 { radius + t } else { radius - t }] {
        let on_arc = |turn: f64| {
            let depth = radius - rho * math::cos(turn);
            let reach = rho * math::sin(turn);
            let [ox, oy, _] = out;
            motion.of([x + reach * ox, y + reach * oy, sign * depth])
        };
        let (start, quarter) = (on_arc(0.0), on_arc(FRAC_PI_2));
        let centre = motion.of([x, y, sign * radius]);
        bounds.add(start);
        bounds.add(on_arc(angle));
        for ((s, q), c) in start.iter().zip(quarter).zip(centre) {
            // The coordinate is c + (s − c) cos φ + (q − c) sin φ.
            let turn = math::atan2(q - c, s - c);
            for extreme in [turn, turn + PI, turn - PI] {
                if extreme > 0.0 && extreme < angle {
                    bounds.add(on_arc(extreme));
                }
            }
        }
    }
}

impl Calculation for FoldedPanel {
    const NAME: &'static str = "folded_panel";
    const SOURCE: &'static [Source] =
        &[Source::common_practice("geometry of turned parts; bend allowance about the bend line")];
    type Outcome = FoldedPanelOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let panel = &self.panel;
        let t = panel.thickness.value;
        if panel.bends.iter().any(|bend| bend.inside_radius.value < 0.5 * t) {
            caveats.add(Caveat::SharpBend);
        }
        let parted = panel.parted()?;
        let mut bounds = Bounds::NOTHING;
        let mut faces = Vec::with_capacity(parted.faces.len());
        for (ring, motion) in parted.faces.iter().zip(&parted.motions) {
            let mut corners = Vec::with_capacity(ring.corners.len());
            for ([x, y], _) in &ring.corners {
                let good = motion.of([*x, *y, 0.0]);
                bounds.add(good);
                bounds.add(motion.of([*x, *y, -t]));
                corners.push(place(good));
            }
            for (from, to, edge) in ring.edges() {
                let Edge::Bend(which, left) = edge else { continue };
                let Some(line) = parted.lines.get(which) else { continue };
                let [ax, ay] = line.along;
                let side = if left { 1.0 } else { -1.0 };
                let inward = [-side * ay, side * ax];
                for end in [from, to] {
                    add_arc(&mut bounds, motion, end, inward, (line.radius, line.angle, line.sign, t));
                }
            }
            let [nx, ny, nz] = motion.normal();
            faces.push(FoldedFace {
                corners,
                normal_x: nx,
                normal_y: ny,
                normal_z: nz,
                area: si(ring.area().abs()),
            });
        }
        let mut holes = Vec::with_capacity(panel.holes.len());
        let (mut holed, mut cut) = (0.0, parted.outline.length());
        for (hole, face) in panel.holes.iter().zip(&parted.hole_faces) {
            let (Some(ring), Some(motion)) = (parted.faces.get(*face), parted.motions.get(*face)) else {
                continue;
            };
            let (centre, diameter) = ([hole.x.value, hole.y.value], hole.diameter.value);
            let [x, y] = centre;
            let [px, py, pz] = motion.of([x, y, 0.0]);
            holed += 0.25 * PI * diameter * diameter;
            cut += PI * diameter;
            let edge_distance = si(ring.nearest(centre).0 - 0.5 * diameter);
            holes.push(FoldedHole { x: si(px), y: si(py), z: si(pz), face: number(*face), edge_distance });
        }
        let mut flat = Bounds::NOTHING;
        parted.outline.corners.iter().for_each(|([x, y], _)| flat.add([*x, *y, 0.0]));
        let ([flat_x, flat_y, _], [size_x, size_y, size_z]) = (flat.size(), bounds.size());
        let area = parted.outline.area().abs() - holed;
        Ok(FoldedPanelOutcome {
            flat_x: si(flat_x),
            flat_y: si(flat_y),
            flat_area: si(area),
            cut_length: si(cut),
            volume: si(area * t),
            size_x: si(size_x),
            size_y: si(size_y),
            size_z: si(size_z),
            base_face: number(parted.base),
            faces,
            holes,
        })
    }
}
