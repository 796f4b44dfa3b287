//! Where layers and their cut-outs lie: boxes round them, and room for a hand on the sheet.

use crate::document::{CutOut, Layer, Outline, Point};

/// A box along the cover's axes, in metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bounds {
    pub(super) left: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
    pub(super) top: f64,
}

impl Bounds {
    /// The box round a shape; a polygon has its own coordinates.
    pub(super) fn round(shape: &Outline, centre: Option<&Point>) -> Self {
        let (x, y) = centre.map_or((0.0, 0.0), |centre| (centre.x.value, centre.y.value));
        if let Outline::Polygon(polygon) = shape {
            let nothing = Self {
                left: f64::INFINITY,
                right: f64::NEG_INFINITY,
                bottom: f64::INFINITY,
                top: f64::NEG_INFINITY,
            };
            return polygon.points.iter().fold(nothing, |round, point| Self {
                left: round.left.min(point.x.value),
                right: round.right.max(point.x.value),
                bottom: round.bottom.min(point.y.value),
                top: round.top.max(point.y.value),
            });
        }
        let (width, height) = shape.box_size();
        Self {
            left: x - width / 2.0,
            right: x + width / 2.0,
            bottom: y - height / 2.0,
            top: y + height / 2.0,
        }
    }

    pub(super) fn of_layer(layer: &Layer) -> Self {
        Self::round(&layer.outline, layer.at.as_ref())
    }

    pub(super) fn of_cut(cut: &CutOut) -> Self {
        Self::round(&cut.outline, cut.at.as_ref())
    }

    fn square(x: f64, y: f64, side: f64) -> Self {
        Self { left: x - side / 2.0, right: x + side / 2.0, bottom: y - side / 2.0, top: y + side / 2.0 }
    }

    pub(super) fn holds(self, other: Self) -> bool {
        self.left <= other.left
            && self.right >= other.right
            && self.bottom <= other.bottom
            && self.top >= other.top
    }

    pub(super) fn meets(self, other: Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.bottom < other.top
            && other.bottom < self.top
    }
}

/// Whether two layers on one face lie over each other, by the boxes round them: not where one lies within a cut-out of the
/// other.
pub(crate) fn overlap(one: &Layer, other: &Layer) -> bool {
    let (a, b) = (Bounds::of_layer(one), Bounds::of_layer(other));
    let round = |layer: &Layer, within: Bounds| {
        layer.cut_outs.iter().flatten().any(|hole| Bounds::of_cut(hole).holds(within))
    };
    a.meets(b) && !round(one, b) && !round(other, a)
}

/// How a layer lies to a cut-out of the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Over {
    /// Beside it, or round it with an opening of its own.
    Clear,
    /// All over it.
    Covers,
    /// Over a part of it.
    Part,
}

/// How a layer lies to a cut-out of the sheet, by the boxes round both.
pub(super) fn over(layer: &Layer, cut: &CutOut) -> Over {
    let (own, opening) = (Bounds::of_layer(layer), Bounds::of_cut(cut));
    let clear = layer.cut_outs.iter().flatten().any(|hole| Bounds::of_cut(hole).holds(opening));
    let holed = layer.cut_outs.iter().flatten().any(|hole| Bounds::of_cut(hole).meets(opening));
    match () {
        () if !own.meets(opening) || clear => Over::Clear,
        () if own.holds(opening) && !holed => Over::Covers,
        () => Over::Part,
    }
}

/// Left and right, bottom and top of a layer, in metres.
pub(crate) fn reach(layer: &Layer) -> ((f64, f64), (f64, f64)) {
    let own = Bounds::of_layer(layer);
    ((own.left, own.right), (own.bottom, own.top))
}

/// Centres of a square patch that touches a side of a cut-out: at its middle and at both its ends.
pub(crate) fn beside_cut_outs(layer: &Layer, side: f64) -> Vec<(f64, f64)> {
    let of = |cut: &CutOut| {
        let Bounds { left, right, bottom, top } = Bounds::of_cut(cut);
        let half = side / 2.0;
        let along = |low: f64, high: f64| [low + half, 0.5 * (low + high), high - half];
        let level = along(left, right).into_iter().flat_map(move |x| [(x, bottom - half), (x, top + half)]);
        let upright = along(bottom, top).into_iter().flat_map(move |y| [(left - half, y), (right + half, y)]);
        level.chain(upright).collect::<Vec<_>>()
    };
    layer.cut_outs.iter().flatten().flat_map(of).filter(|place| room_for(layer, *place, side)).collect()
}

/// Whether a square patch lies on the layer, off its cut-outs. Round corners of a rectangle are not looked at; a cut-out
/// counts with the box round it.
pub(crate) fn room_for(layer: &Layer, (x, y): (f64, f64), side: f64) -> bool {
    let patch = Bounds::square(x, y, side);
    let (cx, cy) = layer.at.as_ref().map_or((0.0, 0.0), |at| (at.x.value, at.y.value));
    let corners = [
        (patch.left, patch.bottom),
        (patch.right, patch.bottom),
        (patch.right, patch.top),
        (patch.left, patch.top),
    ];
    // A rounding error must not take away the places along the edge.
    let slack = 1e-9;
    let on_it = match &layer.outline {
        Outline::Rectangle(_) => {
            let own = Bounds::of_layer(layer);
            let own = Bounds {
                left: own.left - slack,
                right: own.right + slack,
                bottom: own.bottom - slack,
                top: own.top + slack,
            };
            own.holds(patch)
        }
        Outline::Circle(circle) => corners.iter().all(|(x, y)| {
            let reach = circle.diameter.value / 2.0 + slack;
            (x - cx) * (x - cx) + (y - cy) * (y - cy) <= reach * reach
        }),
        Outline::Polygon(polygon) => corners.iter().chain([&(x, y)]).all(|at| within(&polygon.points, *at)),
    };
    let inside = Bounds {
        left: patch.left + slack,
        right: patch.right - slack,
        bottom: patch.bottom + slack,
        top: patch.top - slack,
    };
    on_it && !layer.cut_outs.iter().flatten().any(|cut| Bounds::of_cut(cut).meets(inside))
}

/// Whether a point lies in a polygon: a ray from it crosses the sides an odd number of times.
fn within(points: &[Point], (x, y): (f64, f64)) -> bool {
    let next = points.iter().cycle().skip(1);
    let crossings = points.iter().zip(next).filter(|(a, b)| {
        let (ax, ay, bx, by) = (a.x.value, a.y.value, b.x.value, b.y.value);
        (ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax)
    });
    crossings.count() % 2 == 1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Cover, Form, read};

    fn revised() -> Cover {
        read(include_str!("../../../../examples/covers/revised.toml"), Form::Toml).unwrap()
    }

    #[test]
    fn a_pane_covers_the_aperture_and_its_frame_goes_round_it() {
        let cover = revised();
        let aperture = cover.layers[0].cut_outs.as_ref().unwrap()[0].clone();
        let found: Vec<Over> = cover.layers[1..].iter().map(|layer| over(layer, &aperture)).collect();
        assert_eq!(found, [Over::Covers, Over::Clear, Over::Clear, Over::Clear]);
    }

    /// By the drawing: the frame lies on the pane, the liner round the frame and so on the sheet.
    #[test]
    fn a_liner_round_the_frame_lies_on_the_sheet() {
        let cover = revised();
        let [_, pane, frame, strip, liner] = &cover.layers[..] else { panic!("five layers") };
        assert!(overlap(pane, frame));
        assert!(!overlap(frame, liner) && !overlap(liner, pane) && !overlap(strip, liner));
    }

    /// By hand: the sheet is 580 by 440 mm, its aperture 244 by 164 mm, the patch 100 mm.
    #[test]
    fn a_hand_finds_room_beside_the_aperture() {
        let cover = revised();
        let room = |x: f64, y: f64| room_for(&cover.layers[0], (x, y), 0.1);
        assert!(room(0.0, 0.132) && room(0.0, 0.17) && room(0.24, 0.17) && room(0.172, 0.0));
        assert!(!room(0.0, 0.131) && !room(0.0, 0.171) && !room(0.171, 0.0) && !room(0.0, 0.0));
    }
}
