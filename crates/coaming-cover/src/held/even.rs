//! Whether a sheet on its seal and latches is the same turned about its middle.

use crate::demand::NotChecked;
use crate::document::{CutOut, Edge, Layer, LayerRole, Outline, Point};
use crate::prepared::Prepared;

type Place = (f64, f64);

fn place(at: Option<&Point>) -> Place {
    at.map_or((0.0, 0.0), |at| (at.x.value, at.y.value))
}

/// Whether the sheet alone, its flanges, its seal and its latches are even about the upright line through its middle, and
/// about the level one. Only what is plainly so counts: a polygon never does.
pub(crate) fn even_about(prepared: &Prepared<'_>, layer: &Layer) -> (bool, bool) {
    let plain = |shape: &Outline| !matches!(shape, Outline::Polygon(_));
    let cuts: Vec<&CutOut> = layer.cut_outs.iter().flatten().collect();
    let path = prepared.cover.seal.as_ref().and_then(|seal| seal.path.as_ref());
    let latches = prepared.cover.latches.as_ref().and_then(|latches| latches.positions.as_ref());
    let shapes =
        plain(&layer.outline) && cuts.iter().all(|cut| plain(&cut.outline)) && path.is_some_and(plain);
    let middle = place(layer.at.as_ref());
    let even = |turned: &dyn Fn(Place) -> Place, edges: (Edge, Edge)| {
        let cut = |cut: &&CutOut| {
            let over = turned(place(cut.at.as_ref()));
            cuts.iter().any(|other| place(other.at.as_ref()) == over && other.outline == cut.outline)
        };
        let latch = |at: &Point| {
            let over = turned((at.x.value, at.y.value));
            latches.iter().copied().flatten().any(|other| (other.x.value, other.y.value) == over)
        };
        let flange = |edge: Edge| {
            let mut bends = layer.bends.iter().flatten();
            bends.find(|bend| bend.edge == edge).map(|bend| (bend.flange, bend.bend_direction))
        };
        shapes
            && turned((0.0, 0.0)) == (0.0, 0.0)
            && cuts.iter().all(cut)
            && latches.iter().copied().flatten().all(latch)
            && flange(edges.0) == flange(edges.1)
    };
    (
        even(&|(x, y)| (2.0 * middle.0 - x, y), (Edge::Left, Edge::Right)),
        even(&|(x, y)| (x, 2.0 * middle.1 - y), (Edge::Bottom, Edge::Top)),
    )
}

/// The latches by index, without those that mirror one before them on a lid that is even about its middle.
///
/// # Errors
/// [`NotChecked::Needs`] where the document does not say where they stand.
pub(crate) fn latches_apart(prepared: &Prepared<'_>) -> Result<Vec<usize>, NotChecked> {
    let latches = prepared.cover.latches.as_ref().ok_or_else(|| NotChecked::needs("latches"))?;
    let positions = latches.positions.as_ref().ok_or_else(|| NotChecked::needs("latches.positions"))?;
    let skin = prepared.cover.layers.iter().find(|layer| layer.role == LayerRole::Skin);
    let (even_x, even_y) = skin.map_or((false, false), |skin| even_about(prepared, skin));
    let (x, y) = place(skin.and_then(|skin| skin.at.as_ref()));
    let mirrored = |one: &Point, other: &Point| {
        let ((px, py), (qx, qy)) = (place(Some(one)), place(Some(other)));
        (px == qx || (even_x && 2.0 * x - px == qx)) && (py == qy || (even_y && 2.0 * y - py == qy))
    };
    let apart = positions
        .iter()
        .enumerate()
        .filter(|(nth, at)| !positions.iter().take(*nth).any(|one| mirrored(one, at)));
    Ok(apart.map(|(nth, _)| nth).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Form, read};

    fn even(text: &str) -> (bool, bool) {
        let cover = read(text, Form::Toml).unwrap();
        let prepared = Prepared::new(&cover).unwrap();
        even_about(&prepared, &cover.layers[0])
    }

    /// By hand: four latches on the long sides mirror each other, and two on the short ones.
    #[test]
    fn of_latches_that_mirror_each_other_one_stands() {
        let apart = |text: &str| {
            let cover = read(text, Form::Toml).unwrap();
            latches_apart(&Prepared::new(&cover).unwrap()).unwrap()
        };
        let revised = include_str!("../../../../examples/covers/revised.toml");
        assert_eq!(apart(revised), [0, 4]);
        let moved = revised.replace("x = \"270 mm\", y = \"0 mm\"", "x = \"270 mm\", y = \"10 mm\"");
        assert_eq!(apart(&moved), [0, 1, 2, 3, 4, 5]);
    }

    #[test]
    fn a_latch_or_an_aperture_off_its_place_is_seen() {
        let revised = include_str!("../../../../examples/covers/revised.toml");
        assert_eq!(even(revised), (true, true));
        let latch = revised.replace("x = \"270 mm\", y = \"0 mm\"", "x = \"270 mm\", y = \"10 mm\"");
        assert_eq!(even(&latch), (false, false));
        let both = latch.replace("x = \"-270 mm\", y = \"0 mm\"", "x = \"-270 mm\", y = \"10 mm\"");
        assert_eq!(even(&both), (true, false));
        let flange = revised.replacen("flange = \"25 mm\"", "flange = \"20 mm\"", 1);
        assert_eq!(even(&flange), (false, true));
    }
}
