//! Which rigid motions some constraints resist.

use crate::error::FreeMotion;
use crate::geometry::point::Point;

/// An orthonormal basis of the motions that are resisted, out of three.
#[derive(Debug, Clone, Default)]
pub(crate) struct Basis {
    rows: Vec<[f64; 3]>,
}

fn dot(a: &[f64; 3], b: &[f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

impl Basis {
    /// What is left of a constraint after those already known, scaled to length 1; `None` when nothing is.
    pub(crate) fn rest(&self, row: [f64; 3]) -> Option<[f64; 3]> {
        let mut rest = row;
        let length = dot(&row, &row).sqrt();
        for _ in 0..2 {
            for known in &self.rows {
                let share = dot(&rest, known);
                for (r, k) in rest.iter_mut().zip(known) {
                    *r -= share * k;
                }
            }
        }
        let left = dot(&rest, &rest).sqrt();
        (left > 1e-6 * length && left > 0.0).then(|| rest.map(|r| r / left))
    }

    /// Adds a constraint; tells whether it resists a motion that was free.
    pub(crate) fn add(&mut self, row: [f64; 3]) -> bool {
        match self.rest(row) {
            Some(unit) if self.rows.len() < 3 => {
                self.rows.push(unit);
                true
            }
            _ => false,
        }
    }

    /// Whether every motion is resisted.
    pub(crate) fn is_complete(&self) -> bool {
        self.rows.len() == 3
    }

    /// A motion (rise, slope x, slope y) that nothing resists.
    fn free(&self) -> Option<[f64; 3]> {
        [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]].into_iter().find_map(|row| {
            // Of the three unit motions, one has a part outside the basis; what is left of it is free only if one motion is missing,
            // else it is one of the free ones.
            self.rest(row).filter(|rest| self.rows.iter().all(|k| dot(k, rest).abs() < 1e-6))
        })
    }

    /// The free motion in the caller's coordinates; deflections were scaled by `size` about `center`.
    pub(crate) fn free_motion(&self, center: Point, size: f64) -> Option<FreeMotion> {
        let [rise, along_x, along_y] = self.free()?;
        let slope = Point::new(along_x, along_y);
        let steep = slope.length();
        if steep < 1e-6 * rise.abs() {
            return Some(FreeMotion::Lift);
        }
        let through = center + slope * (-rise * size / (steep * steep));
        Some(FreeMotion::Turn { through, direction: slope.left().unit() })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two points held: the panel turns about the line through them.
    #[test]
    fn two_points_leave_a_turn() {
        let mut basis = Basis::default();
        for p in [Point::new(1.0, 0.0), Point::new(1.0, 2.0)] {
            assert!(basis.add([1.0, p.x, p.y]));
        }
        let motion = basis.free_motion(Point::default(), 1.0);
        assert!(matches!(motion, Some(FreeMotion::Turn { through, direction })
            if (through.x - 1.0).abs() < 1e-12 && direction.x.abs() < 1e-12));
    }
}
