//! A flat panel with holes and bend lines, as it is cut.

use super::BendDirection;
use super::panel_faces::{Edge, Fault, Flat, Line, Motion, Ring, faces, motions};
use crate::prelude::*;

/// A place on the flat.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct FlatPlace {
    /// Along x.
    pub x: Length,
    /// Along y.
    pub y: Length,
}

/// A round hole in the flat.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct FlatHole {
    /// Its centre along x.
    pub x: Length,
    /// Its centre along y.
    pub y: Length,
    /// Its diameter.
    #[possible(f64::MIN_POSITIVE..)]
    pub diameter: Length,
}

/// A bend: its line on the flat is the middle of what the bend takes up.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct FlatBend {
    /// One end of the bend line, along x.
    pub from_x: Length,
    /// That end, along y.
    pub from_y: Length,
    /// The other end of the bend line, along x.
    pub to_x: Length,
    /// The other end, along y.
    pub to_y: Length,
    /// Bend angle: the angle that the sheet is turned through.
    #[possible(f64::MIN_POSITIVE..=PI)]
    #[also(included_angle, super::supplement)]
    pub bend_angle: Angle,
    /// Inside radius.
    #[possible(0.0..)]
    pub inside_radius: Length,
    /// Which way it goes, seen from the good face.
    pub bend_direction: BendDirection,
}

/// A flat panel: outline, round holes and bend lines, seen on its good face.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct FlatPanel {
    /// Thickness of the bare sheet.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Distance of the neutral axis from the inside face over the thickness, K.
    #[possible(f64::MIN_POSITIVE..1.0)]
    #[tested(0.25..=0.5)]
    pub k_factor: f64,
    /// The corners of the outline in order, without repeating the first.
    pub outline: Vec<FlatPlace>,
    /// Round holes; none may lie in a bend or across an edge.
    pub holes: Vec<FlatHole>,
    /// The bends; each runs from edge to edge of the outline and crosses no other.
    pub bends: Vec<FlatBend>,
    /// A place on the face that stays where it is.
    pub base: FlatPlace,
}

/// The panel parted into faces, with where each goes.
pub(super) struct Parted {
    pub faces: Vec<Ring>,
    pub motions: Vec<Motion>,
    pub lines: Vec<Line>,
    pub outline: Ring,
    pub base: usize,
    /// The face of each hole.
    pub hole_faces: Vec<usize>,
}

/// Outlines of more corners would take minutes to be checked against themselves.
const MOST_CORNERS: usize = 2000;

impl FlatPanel {
    fn ring(&self) -> Result<Ring, Error> {
        let corners: Vec<Flat> = self.outline.iter().map(|place| [place.x.value, place.y.value]).collect();
        if corners.len() < 3 || corners.len() > MOST_CORNERS {
            return Err(Error::inconsistent(
                "panel.outline",
                format!("3 to {MOST_CORNERS} corners are accepted"),
            ));
        }
        let ring = Ring { corners: corners.into_iter().map(|corner| (corner, Edge::Outline)).collect() };
        if let Some((first, second)) = ring.crossing() {
            return Err(Error::inconsistent(
                format!("panel.outline[{first}], panel.outline[{second}]"),
                "the edges that begin here cross each other",
            ));
        }
        if ring.area().abs() < 1e-12 * ring.length() * ring.length() {
            return Err(Error::inconsistent("panel.outline", "an outline encloses an area"));
        }
        Ok(ring)
    }

    fn line(&self, place: usize, bend: &FlatBend) -> Result<Line, Error> {
        let (dx, dy) = (bend.to_x.value - bend.from_x.value, bend.to_y.value - bend.from_y.value);
        let length = math::hypot(dx, dy);
        if length <= 0.0 {
            return Err(Error::inconsistent(
                format!("panel.bends[{place}]"),
                "the two ends of a bend line lie apart",
            ));
        }
        let (r, t, angle) = (bend.inside_radius.value, self.thickness.value, bend.bend_angle.value);
        let up = bend.bend_direction == BendDirection::Up;
        Ok(Line {
            middle: [
                0.5 * (bend.from_x.value + bend.to_x.value),
                0.5 * (bend.from_y.value + bend.to_y.value),
            ],
            along: [dx / length, dy / length],
            half: 0.5 * angle * (r + self.k_factor * t),
            angle,
            radius: if up { r } else { r + t },
            sign: if up { 1.0 } else { -1.0 },
        })
    }

    /// Parts the panel into faces.
    pub(super) fn parted(&self) -> Result<Parted, Error> {
        let outline = self.ring()?;
        let lines = self
            .bends
            .iter()
            .enumerate()
            .map(|(place, bend)| self.line(place, bend))
            .collect::<Result<Vec<_>, _>>()?;
        let faces = faces(outline.clone(), &lines).map_err(|(place, fault)| {
            Error::inconsistent(
                format!("panel.bends[{place}]"),
                match fault {
                    Fault::NoFace => {
                        "the middle of a bend line lies on a face, with room for the bend on both sides"
                    }
                    Fault::IntoBend => {
                        "a bend ends at the outline, not in another bend: give the corner a relief"
                    }
                    Fault::NotAcross => "a bend runs straight from edge to edge of the outline",
                },
            )
        })?;
        let on = |point: Flat| faces.iter().position(|ring| ring.holds(point));
        let base = on([self.base.x.value, self.base.y.value]).ok_or_else(|| {
            Error::inconsistent("panel.base", "a place on a face, not in a bend, is accepted")
        })?;
        let mut hole_faces = Vec::with_capacity(self.holes.len());
        for (place, hole) in self.holes.iter().enumerate() {
            let centre = [hole.x.value, hole.y.value];
            let refuse =
                |reason: &str| Error::inconsistent(format!("panel.holes[{place}]"), reason.to_owned());
            let face = on(centre)
                .ok_or_else(|| refuse("a hole lies on a face, not in a bend or outside the outline"))?;
            let nearest = faces.get(face).map_or((0.0, Edge::Outline), |ring| ring.nearest(centre));
            if nearest.0 < 0.5 * hole.diameter.value {
                return Err(refuse(match nearest.1 {
                    Edge::Outline => "a hole lies within the outline",
                    Edge::Bend(..) => "a hole lies clear of the bends",
                }));
            }
            hole_faces.push(face);
        }
        let motions = motions(&faces, &lines, base);
        Ok(Parted { faces, motions, lines, outline, base, hole_faces })
    }
}
