//! Where the joint of a strip that is bent round the corners lies.

use coaming::prelude::*;

use crate::demand::NotChecked;
use crate::document::{Direction, Rectangle};
use crate::prepared::Prepared;

/// A place for the joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct JointPlace {
    /// On the seal's line, in metres.
    pub(super) at: (f64, f64),
    /// Along the line to where the nearer corner begins, in metres.
    pub(super) to_corner: f64,
    /// The latch that it lies beside, numbered from 1.
    pub(super) beside: Option<usize>,
}

/// A straight side of the seal's line.
struct Side {
    middle: (f64, f64),
    along: (f64, f64),
    straight: f64,
}

/// The place on the straight side that lies highest, where no water stands: one width of the strip beside a latch, where the
/// seal is pressed most and the joint keeps clear of the latch's own foot; of several the one nearest to the middle. Without a
/// latch on that side, or room beside it, the middle.
pub(super) fn joint_place(
    prepared: &Prepared<'_>,
    path: &Rectangle,
    width: Length,
) -> Result<JointPlace, NotChecked> {
    let gravity = prepared.cover.service.as_ref().and_then(|service| service.gravity.as_ref());
    let gravity = gravity.ok_or_else(|| NotChecked::needs("service.gravity"))?;
    let sides = sides(path);
    let side = highest(&sides, gravity)
        .ok_or_else(|| NotChecked::not_calculated("a straight side for the joint: the corners leave none"))?;
    let latches = prepared.cover.latches.as_ref().and_then(|latches| latches.positions.as_ref());
    let places: Vec<(f64, f64)> = latches.into_iter().flatten().map(|at| (at.x.value, at.y.value)).collect();
    Ok(beside(&sides, side, width.value, &places))
}

fn sides(path: &Rectangle) -> [Side; 4] {
    let (w, h) = (path.width.value, path.height.value);
    let radius = path.corner_radius.map_or(0.0, |radius| radius.value);
    let side = |middle, along, length: f64| Side { middle, along, straight: length - 2.0 * radius };
    [
        side((0.0, h / 2.0), (1.0, 0.0), w),
        side((0.0, -h / 2.0), (1.0, 0.0), w),
        side((w / 2.0, 0.0), (0.0, 1.0), h),
        side((-w / 2.0, 0.0), (0.0, 1.0), h),
    ]
}

/// The straight side that lies highest; of sides as high as each other the longest.
fn highest<'a>(sides: &'a [Side], gravity: &Direction) -> Option<&'a Side> {
    let height = |side: &Side| -(side.middle.0 * gravity.x + side.middle.1 * gravity.y);
    sides.iter().filter(|side| side.straight > 0.0).reduce(|best, other| {
        let (a, b) = (height(best), height(other));
        if b > a || (b == a && other.straight > best.straight) { other } else { best }
    })
}

impl Side {
    /// How far along the side from its middle a point lies, and how far off the side's straight part.
    fn reach(&self, at: (f64, f64)) -> (f64, f64) {
        let (x, y) = (at.0 - self.middle.0, at.1 - self.middle.1);
        let along = x * self.along.0 + y * self.along.1;
        let across = (x * self.along.1 - y * self.along.0).abs();
        let past = (along.abs() - self.straight / 2.0).max(0.0);
        (along, across.max(past))
    }

    fn point(&self, along: f64) -> (f64, f64) {
        (self.middle.0 + along * self.along.0, self.middle.1 + along * self.along.1)
    }
}

fn beside(sides: &[Side], side: &Side, width: f64, latches: &[(f64, f64)]) -> JointPlace {
    let half = side.straight / 2.0;
    let mut best: Option<(f64, usize)> = None;
    for (nth, latch) in latches.iter().enumerate() {
        let (along, off) = side.reach(*latch);
        if sides.iter().any(|other| other.straight > 0.0 && other.reach(*latch).1 < off) {
            continue;
        }
        for place in [along - width, along + width] {
            let fits = place.abs() + width <= half;
            if fits && best.is_none_or(|(known, _)| place.abs() < known.abs()) {
                best = Some((place, nth + 1));
            }
        }
    }
    let along = best.map_or(0.0, |best| best.0);
    JointPlace { at: side.point(along), to_corner: half - along.abs(), beside: best.map(|best| best.1) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(radius: f64) -> Rectangle {
        Rectangle { width: mm(540.0), height: mm(400.0), corner_radius: Some(mm(radius)) }
    }

    fn high(radius: f64, x: f64, y: f64, latches: &[(f64, f64)]) -> Option<((f64, f64), f64, Option<usize>)> {
        let sides = sides(&path(radius));
        let side = highest(&sides, &Direction { x, y, z: 0.0 })?;
        let place = beside(&sides, side, 0.012, latches);
        let whole = |metres: f64| (metres * 1e9).round() / 1e9;
        Some(((whole(place.at.0), whole(place.at.1)), whole(place.to_corner), place.beside))
    }

    /// By hand: without a latch the middle of the upper side of an upright cover, 230 mm from where the corners begin.
    #[test]
    fn without_a_latch_the_joint_lies_in_the_middle_of_the_upper_side() {
        assert_eq!(high(40.0, 0.0, -1.0, &[]), Some(((0.0, 0.2), 0.23, None)));
        assert_eq!(high(40.0, 1.0, 0.0, &[]), Some(((-0.27, 0.0), 0.16, None)));
        // Lying flat no side is low: a long one.
        assert_eq!(high(40.0, 0.0, 0.0, &[]), Some(((0.0, 0.2), 0.23, None)));
        // Corners of 200 mm leave nothing of the short sides.
        assert_eq!(high(200.0, 0.0, 1.0, &[]).map(|place| place.0), Some((0.0, -0.2)));
        assert_eq!(high(270.0, 0.0, 1.0, &[]), None);
    }

    /// By hand: one width of 12 mm beside a latch on the upper side, on the side of the middle.
    #[test]
    fn beside_the_latch_that_is_nearest_to_the_middle() {
        let six = [(-0.18, 0.2), (0.18, 0.2), (-0.18, -0.2), (0.18, -0.2), (0.27, 0.0), (-0.27, 0.0)];
        assert_eq!(high(40.0, 0.0, -1.0, &six), Some(((-0.168, 0.2), 0.062, Some(1))));
        assert_eq!(high(40.0, 0.0, 1.0, &six), Some(((-0.168, -0.2), 0.062, Some(3))));
        assert_eq!(high(40.0, -1.0, 0.0, &six), Some(((0.27, -0.012), 0.148, Some(5))));
        // A latch on another side says nothing; one at the corner's beginning leaves room towards the middle alone.
        assert_eq!(high(40.0, 0.0, -1.0, &[(0.27, 0.0)]).map(|place| place.2), Some(None));
        assert_eq!(high(40.0, 0.0, -1.0, &[(0.23, 0.2)]), Some(((0.218, 0.2), 0.012, Some(1))));
        // Past it none does.
        assert_eq!(high(40.0, 0.0, -1.0, &[(0.235, 0.2)]), Some(((0.0, 0.2), 0.23, None)));
    }
}
