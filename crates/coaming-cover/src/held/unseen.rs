//! Places at which the stress of the sheet is not looked at, because thin-plate theory has none there.

use coaming_panel::geometry::path::Segment;
use coaming_panel::{Outline, Panel, Point, Region};

/// Within this distance the stress is not looked at, in metres: under a bare point the theory has none, and the foot of the
/// latch spreads its pull; at a sharp corner of a layer that is one piece with the sheet it has no largest, and a ductile
/// sheet yields there before it fails. By common practice a stress beside such a corner is read at some millimetres from it.
pub(crate) const FOOT: f64 = 0.01;

/// Those places: latches, and the sharp corners of the layers on the sheet.
pub(super) fn unseen(panel: &Panel) -> Vec<Point> {
    let corners =
        panel.layers.iter().skip(1).filter_map(|layer| layer.region.as_ref()).flat_map(sharp_corners);
    panel.latches.iter().map(|latch| latch.at).chain(corners).collect()
}

/// Whether a place is too near to one of them.
pub(super) fn is_unseen(at: Point, unseen: &[Point]) -> bool {
    unseen.iter().any(|place| {
        let (x, y) = (place.x - at.x, place.y - at.y);
        x * x + y * y < FOOT * FOOT
    })
}

fn sharp_corners(region: &Region) -> Vec<Point> {
    core::iter::once(&region.outline).chain(&region.holes).flat_map(corners).collect()
}

/// Where two straight sides of an outline meet and turn by more than 30 degrees; a rounded corner has an arc between them.
fn corners(outline: &Outline) -> Vec<Point> {
    let mut start = outline.0.start;
    let mut sides: Vec<(bool, Point, Point)> = Vec::new();
    for segment in &outline.0.segments {
        sides.push((matches!(segment, Segment::Line { .. }), start, end(segment)));
        start = end(segment);
    }
    if start != outline.0.start {
        sides.push((true, start, outline.0.start));
    }
    let next = sides.iter().cycle().skip(1);
    sides
        .iter()
        .zip(next)
        .filter(|(one, next)| one.0 && next.0 && turns(one, next))
        .map(|(one, _)| one.2)
        .collect()
}

fn turns(one: &(bool, Point, Point), next: &(bool, Point, Point)) -> bool {
    let run = |side: &(bool, Point, Point)| (side.2.x - side.1.x, side.2.y - side.1.y);
    let ((a, b), (c, d)) = (run(one), run(next));
    let along = a * c + b * d;
    along < 0.0 || along * along < 0.75 * (a * a + b * b) * (c * c + d * d)
}

fn end(segment: &Segment) -> Point {
    match *segment {
        Segment::Line { end } | Segment::Arc { end, .. } => end,
    }
}

#[cfg(test)]
mod tests {
    use coaming::prelude::*;

    use super::*;

    /// By eye: a rectangle has four, a rounded one and a circle none.
    #[test]
    fn sharp_corners_are_where_straight_sides_meet() {
        let mut found = corners(&Outline::rectangle(-0.1, -0.2, 0.2, 0.4));
        found.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
        let at = |x: f64, y: f64| Point { x, y };
        assert_eq!(found, [at(-0.1, -0.2), at(-0.1, 0.2), at(0.1, -0.2), at(0.1, 0.2)]);
        assert!(corners(&Outline::rounded_rectangle(0.0, 0.0, 0.2, 0.4, 0.02)).is_empty());
        assert!(corners(&Outline::circle(0.0, 0.0, 0.1)).is_empty());
        // A polygon of 24 sides turns by 15 degrees at each, a hexagon by 60.
        let polygon = |sides: u32| {
            let turn = |nth: u32| 2.0 * math::PI * f64::from(nth) / f64::from(sides);
            Outline::polygon(
                &(0..sides).map(|nth| at(math::cos(turn(nth)), math::sin(turn(nth)))).collect::<Vec<_>>(),
            )
        };
        assert_eq!((corners(&polygon(24)).len(), corners(&polygon(6)).len()), (0, 6));
        assert!(is_unseen(at(0.005, 0.0), &[at(0.0, 0.0)]));
        assert!(!is_unseen(at(0.008, 0.008), &[at(0.0, 0.0)]));
    }
}
