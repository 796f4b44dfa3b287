//! The flat blank of a layer: its size, and where it lies under the folded part.

use coaming::prelude::*;
use coaming::sheet::{
    AboveNinety, BendDirection, Leg, LengthReference, Profile, ProfileBend, ProfileOutcome,
};

use crate::demand::{Need, NotChecked};
use crate::document::{Bend, Edge, Layer, Outline};

/// A layer's blank along one axis: its profile of flange, face and flange.
pub(super) struct Axis {
    /// Size of the face along the axis, outside, in metres.
    face: f64,
    /// The bends at its start and at its end.
    ends: [Option<&'static str>; 2],
    profile: ProfileOutcome,
}

impl Axis {
    /// Size of the blank along the axis, in metres.
    pub(super) fn size(&self) -> f64 {
        self.profile.flat_length.value
    }

    /// The bend line along an edge, from the edge of the blank at which the axis begins, in metres.
    pub(super) fn bend_line(&self, edge: Edge) -> Option<f64> {
        let starts = self.ends[0].is_some();
        let place = match Choice::name(edge) {
            name if self.ends[0] == Some(name) => 0,
            name if self.ends[1] == Some(name) => usize::from(starts),
            _ => return None,
        };
        self.profile.bends.get(place).map(|bend| bend.bend_line.value)
    }

    /// From a place on the face, measured from its middle, to the place on the blank, measured from the edge at which
    /// the axis begins. The face itself is not deformed, so that both conventions of a document place its holes alike.
    pub(super) fn on_blank(&self, from_middle: f64) -> f64 {
        // The middle of the face, measured to its virtual sharps, less what the first bend takes off.
        let before = match (self.ends[0].is_some(), self.profile.bends.first(), self.profile.legs.first()) {
            (true, Some(bend), Some(leg)) => {
                leg.flat.value + bend.bend_allowance.value - bend.setback.map_or(0.0, |setback| setback.value)
            }
            _ => 0.0,
        };
        before + self.face / 2.0 + from_middle
    }
}

/// The two axes of a layer's blank, x then y. Without bends the blank is the outline itself.
///
/// # Errors
/// [`NotChecked`] with the path of what is missing, or with what is not calculated.
pub(super) fn axes(layer: &Layer) -> Result<[Axis; 2], NotChecked> {
    let bent = layer.bends.iter().flatten().next().is_some();
    if bent && !matches!(layer.outline, Outline::Rectangle(_)) {
        return Err(NotChecked::not_calculated("the flat pattern of an outline that is no rectangle"));
    }
    let (width, height) = layer.outline.box_size();
    Ok([axis(layer, width, Edge::Left, Edge::Right)?, axis(layer, height, Edge::Bottom, Edge::Top)?])
}

fn axis(layer: &Layer, face: f64, first: Edge, last: Edge) -> Result<Axis, NotChecked> {
    let start = along(layer, first)?;
    let end = along(layer, last)?;
    let leg = |length: f64| Leg { length: si(length), reference: LengthReference::ToVirtualSharp };
    let (mut legs, mut bends) = (Vec::new(), Vec::new());
    if let Some(bend) = start {
        legs.push(leg(flange(layer, bend)?));
        bends.push(profile_bend(layer, bend)?);
    }
    legs.push(leg(face));
    if let Some(bend) = end {
        legs.push(leg(flange(layer, bend)?));
        bends.push(profile_bend(layer, bend)?);
    }
    // A flat layer needs no thickness for its size.
    let thickness = match bends.is_empty() {
        true => mm(1.0),
        false => layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?,
    };
    let profile = Profile { thickness, legs, bends, above_ninety: AboveNinety::VirtualSharp };
    let (profile, _) = profile.calculate().map_err(NotChecked::Refused)?;
    let name = |bend: Option<&Bend>| bend.map(|bend| Choice::name(bend.edge));
    Ok(Axis { face, ends: [name(start), name(end)], profile })
}

/// The one bend along an edge, if there is any.
fn along(layer: &Layer, edge: Edge) -> Result<Option<&Bend>, NotChecked> {
    let mut bends = layer.bends.iter().flatten().filter(|bend| bend.edge == edge);
    match (bends.next(), bends.next()) {
        (bend, None) => Ok(bend),
        _ => Err(NotChecked::not_calculated(format!(
            "the flat pattern of two bends along the {} edge",
            Choice::name(edge)
        ))),
    }
}

fn flange(layer: &Layer, bend: &Bend) -> Result<f64, NotChecked> {
    let path = || format!("layers.{}.bends.{}.flange", layer.name, Choice::name(bend.edge));
    Ok(bend.flange.need(path)?.value)
}

fn profile_bend(layer: &Layer, bend: &Bend) -> Result<ProfileBend, NotChecked> {
    let path = |field: &str| format!("layers.{}.bends.{}.{field}", layer.name, Choice::name(bend.edge));
    Ok(ProfileBend {
        bend_angle: bend.bend_angle.need(|| path("bend_angle"))?,
        inside_radius: bend.inside_radius.need(|| path("inside_radius"))?,
        k_factor: bend.k_factor.need(|| path("k_factor"))?,
        // Which way a bend goes moves no line of the flat pattern.
        direction: bend.bend_direction.unwrap_or(BendDirection::Up),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Form, read};

    /// By hand: the deduction is 2 x 5.7 - (pi/2)(3.2 + 0.43 x 2.5) = 4.6848 mm, so that the blank is
    /// 580 + 2 (25 - 4.6848) = 620.6303 mm wide; the bend lines stand 25 - 4.6848/2 = 22.6576 mm inside its edges, and a
    /// hole in the middle of the face in the middle of the blank.
    #[test]
    fn bend_lines_and_holes_lie_where_hand_calculation_puts_them() {
        let text = include_str!("../../../../examples/covers/revised.toml");
        let cover = read(text, Form::Toml).unwrap();
        let [x, y] = axes(&cover.layers[0]).unwrap();
        let close = |found: f64, by_hand: f64| assert!((found - by_hand).abs() < 1e-7, "{found} {by_hand}");
        close(x.size(), 0.620_630_3);
        close(y.size(), 0.480_630_3);
        close(x.bend_line(Edge::Left).unwrap(), 0.022_657_6);
        close(x.bend_line(Edge::Right).unwrap(), 0.620_630_3 - 0.022_657_6);
        close(y.bend_line(Edge::Bottom).unwrap(), 0.022_657_6);
        assert_eq!(y.bend_line(Edge::Left), None);
        close(x.on_blank(0.0), 0.620_630_3 / 2.0);
        close(x.on_blank(-0.138), 0.620_630_3 / 2.0 - 0.138);
        // Without the flange on the left the face begins at the edge of the blank.
        let mut lopsided = cover.layers[0].clone();
        lopsided.bends.as_mut().unwrap().retain(|bend| bend.edge != Edge::Left);
        let [x, _] = axes(&lopsided).unwrap();
        close(x.on_blank(0.0), 0.290);
        close(x.bend_line(Edge::Right).unwrap(), 0.580 + 0.025 - 0.004_684_8 - 0.022_657_6);
        lopsided.bends.as_mut().unwrap()[0].k_factor = None;
        assert!(matches!(axes(&lopsided), Err(NotChecked::Needs(paths)) if paths[0].ends_with(".k_factor")));
    }
}
