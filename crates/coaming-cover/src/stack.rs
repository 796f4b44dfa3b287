//! Where each layer lies along z, and where its mass is centred.

use coaming::prelude::*;
use coaming::sheet::BendDirection;

use crate::demand::{Need, NotChecked};
use crate::document::{Bend, Edge, Face, Layer, LayerRole, Outline, Point};
use crate::held::overlap;
use crate::prepared::Prepared;

/// The lower and the upper face of a layer in metres, from the inner face of the skin, positive outward: layers of one face
/// lie on each other, in the order of the document, where they overlap.
///
/// # Errors
/// [`NotChecked`] with the path of what is missing.
pub(crate) fn height(prepared: &Prepared<'_>, layer: &Layer) -> Result<(f64, f64), NotChecked> {
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    let skin = skin.ok_or_else(|| NotChecked::needs("a layer with role = \"skin\""))?;
    let own = thickness(layer)?;
    if layer.name == skin.name {
        return Ok((0.0, own));
    }
    let face = layer.face.need(|| format!("layers.{}.face", layer.name))?;
    let mut under = 0.0;
    for below in prepared.cover.layers.iter().take_while(|below| below.name != layer.name) {
        if below.name != skin.name && below.face == Some(face) && overlap(below, layer) {
            under += thickness(below)?;
        }
    }
    Ok(match face {
        Face::Inner => (-under - own, -under),
        Face::Outer => {
            let foot = thickness(skin)? + under;
            (foot, foot + own)
        }
    })
}

fn thickness(layer: &Layer) -> Result<f64, NotChecked> {
    Ok(layer.thickness.need(|| format!("layers.{}.thickness", layer.name))?.value)
}

fn place(at: Option<&Point>) -> (f64, f64) {
    at.map_or((0.0, 0.0), |at| (at.x.value, at.y.value))
}

/// The centre of a shape's area in metres; a rectangle and a circle lie about `at`, a polygon in its own coordinates.
fn centre(outline: &Outline, at: Option<&Point>) -> (f64, f64) {
    let Outline::Polygon(_) = outline else { return place(at) };
    let corners = outline.corners();
    // About the first corner, so that a polygon far from the origin loses no digits.
    let Some(&(x0, y0)) = corners.first() else { return (0.0, 0.0) };
    let next = corners.iter().cycle().skip(1);
    let (mut twice, mut x, mut y) = (0.0, 0.0, 0.0);
    for (a, b) in corners.iter().zip(next) {
        let (a, b) = ((a.0 - x0, a.1 - y0), (b.0 - x0, b.1 - y0));
        let cross = a.0 * b.1 - b.0 * a.1;
        twice += cross;
        x += (a.0 + b.0) * cross;
        y += (a.1 + b.1) * cross;
    }
    if twice == 0.0 { (x0, y0) } else { (x0 + x / (3.0 * twice), y0 + y / (3.0 * twice)) }
}

/// An area in square metres with its centre along x, y and z.
type Area = (f64, f64, f64, Result<f64, NotChecked>);

/// The centre of a layer's mass: in its plane, and along z, each with the path of what is missing for it.
pub(crate) struct Centre {
    /// Along x and y, in metres.
    pub(crate) plane: Result<(f64, f64), NotChecked>,
    /// Along z, in metres from the inner face of the skin, positive outward.
    pub(crate) z: Result<f64, NotChecked>,
}

/// Area of the outline less its cut-outs, with the flanges at their outside height: as the mass is reckoned.
pub(crate) fn centre_of(prepared: &Prepared<'_>, layer: &Layer) -> Centre {
    let faces = height(prepared, layer);
    let middle = faces.as_ref().map(|(low, high)| f64::midpoint(*low, *high)).map_err(Clone::clone);
    let (x, y) = centre(&layer.outline, layer.at.as_ref());
    let mut areas = vec![(layer.outline.area(), x, y, middle.clone())];
    for cut in layer.cut_outs.iter().flatten() {
        let (x, y) = centre(&cut.outline, cut.at.as_ref());
        areas.push((-cut.outline.area(), x, y, middle.clone()));
    }
    for bend in layer.bends.iter().flatten() {
        match flange(prepared, layer, bend, &faces) {
            Ok(flange) => areas.push(flange),
            Err(why) => return Centre { plane: Err(why.clone()), z: Err(why) },
        }
    }
    let total: f64 = areas.iter().map(|area| area.0).sum();
    if total <= 0.0 {
        let why = NotChecked::not_calculated(format!("the centre of `{}`, which has no area", layer.name));
        return Centre { plane: Err(why.clone()), z: Err(why) };
    }
    let mean = |of: fn(&Area) -> f64| areas.iter().map(|area| area.0 * of(area)).sum::<f64>() / total;
    let z = areas.iter().map(|area| area.3.clone().map(|z| area.0 * z)).sum::<Result<f64, NotChecked>>();
    Centre { plane: Ok((mean(|area| area.1), mean(|area| area.2))), z: z.map(|z| z / total) }
}

/// Area and centre of a flange: it leaves the edge of the outline, where the outside faces meet, at the bend angle.
fn flange(
    prepared: &Prepared<'_>,
    layer: &Layer,
    bend: &Bend,
    faces: &Result<(f64, f64), NotChecked>,
) -> Result<Area, NotChecked> {
    let path = |field: &str| format!("layers.{}.bends.{}.{field}", layer.name, Choice::name(bend.edge));
    let Outline::Rectangle(outside) = &layer.outline else {
        return Err(NotChecked::not_calculated("flanges along an outline that is no rectangle"));
    };
    let length = bend.flange.need(|| path("flange"))?.value;
    let angle = bend.bend_angle.need(|| path("bend_angle"))?.value;
    let t = thickness(layer)?;
    // From the sharp along the flange, and half a thickness to the inside of the bend.
    let out = length / 2.0 * math::cos(angle) - t / 2.0 * math::sin(angle);
    let rise = length / 2.0 * math::sin(angle) + t / 2.0 * math::cos(angle);
    let (x, y) = place(layer.at.as_ref());
    let (half_width, half_height) = (outside.width.value / 2.0, outside.height.value / 2.0);
    let (x, y, along) = match bend.edge {
        Edge::Left => (x - half_width - out, y, outside.height.value),
        Edge::Right => (x + half_width + out, y, outside.height.value),
        Edge::Bottom => (x, y - half_height - out, outside.width.value),
        Edge::Top => (x, y + half_height + out, outside.width.value),
    };
    let z = faces.clone().and_then(|(low, high)| {
        let direction = bend.bend_direction.need(|| path("bend_direction"))?;
        let good = prepared.cover.good_face.need(|| "good_face".to_owned())?;
        // `up` is towards the good face; the sharp is on the other face.
        let outward = (direction == BendDirection::Up) == (good == Face::Outer);
        Ok(if outward { low + rise } else { high - rise })
    });
    Ok((length * along, x, y, z))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Cover, Form, Polygon, read};

    const REVISED: &str = include_str!("../../../examples/covers/revised.toml");

    fn cover(text: &str) -> Cover {
        read(text, Form::Toml).unwrap()
    }

    fn z(cover: &Cover, name: &str) -> Result<f64, NotChecked> {
        let prepared = Prepared::new(cover).unwrap();
        centre_of(&prepared, prepared.layer(name).unwrap()).z
    }

    fn close(found: f64, by_hand: f64) {
        assert!((found - by_hand).abs() < 1e-9, "{found} {by_hand}");
    }

    /// By hand: the pane hangs under the lid, the frame under the pane; the strip lies beside both, under the lid alone.
    #[test]
    fn layers_of_a_face_lie_on_each_other_where_they_overlap() {
        let cover = cover(REVISED);
        close(z(&cover, "pane").unwrap(), -2.5e-3);
        close(z(&cover, "frame").unwrap(), -11e-3);
        close(z(&cover, "strip").unwrap(), -0.5e-3);
        // The liner goes round the frame, and is clear of the strip.
        close(z(&cover, "liner").unwrap(), -3e-3);
        let prepared = Prepared::new(&cover).unwrap();
        let strip = centre_of(&prepared, prepared.layer("strip").unwrap());
        assert_eq!(strip.plane, Ok((0.0, -0.15)));
    }

    /// By hand: a solid lid of 580 x 440 x 2.5 mm has its face's middle at z = 1.25 mm. Its four flanges of 25 mm, 2040 mm
    /// long together, reach from the outer face inward, with their middle at 2.5 - 12.5 = -10 mm. Face 255 200 mm^2,
    /// flanges 51 000 mm^2: z = (255 200 x 1.25 - 51 000 x 10)/306 200 mm.
    #[test]
    fn flanges_pull_the_centre_inward() {
        let solid = REVISED
            .lines()
            .filter(|line| !line.starts_with("cut_outs = [{ outline = { rectangle = { width = \"244"));
        let text = solid.collect::<Vec<_>>().join("\n");
        let by_hand = (255_200.0 * 1.25 - 51_000.0 * 10.0) / 306_200.0 * 1e-3;
        close(z(&cover(&text), "lid").unwrap(), by_hand);
        // Bent the other way they stand on the inner face: 0 + 12.5 mm.
        let up = text.replace("bend_direction = \"down\"", "bend_direction = \"up\"");
        close(z(&cover(&up), "lid").unwrap(), (255_200.0 * 1.25 + 51_000.0 * 12.5) / 306_200.0 * 1e-3);
        let unknown = text.replace("good_face = \"outer\"\n", "");
        assert_eq!(z(&cover(&unknown), "lid"), Err(NotChecked::needs("good_face")));
    }

    /// A flange along the right edge alone moves the centre along x: by hand, its middle stands half a thickness inside
    /// the edge, at 290 - 1.25 mm.
    #[test]
    fn a_flange_along_one_edge_moves_the_centre_to_it() {
        let mut cover = cover(REVISED);
        let lid = &mut cover.layers[0];
        lid.cut_outs = None;
        lid.bends.as_mut().unwrap().retain(|bend| bend.edge == Edge::Right);
        let prepared = Prepared::new(&cover).unwrap();
        let (x, y) = centre_of(&prepared, prepared.layer("lid").unwrap()).plane.unwrap();
        close(x, 0.288_75 * 11_000.0 / (255_200.0 + 11_000.0));
        close(y, 0.0);
    }

    /// An L of three squares of 1 m, its centre by hand at (5/6, 5/6) m, far from the origin.
    #[test]
    fn a_polygon_is_centred_by_its_area() {
        let corners = [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (1.0, 1.0), (1.0, 2.0), (0.0, 2.0)];
        let point = |(x, y): (f64, f64)| Point { x: si(x + 10.0), y: si(y - 20.0) };
        let outline = Outline::Polygon(Polygon { points: corners.into_iter().map(point).collect() });
        let (x, y) = centre(&outline, None);
        close(x, 10.0 + 5.0 / 6.0);
        close(y, -20.0 + 5.0 / 6.0);
    }
}
