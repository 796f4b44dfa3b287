//! How slopes stretch a triangle: the quadratic terms of the membrane strain, and the stiffness that membrane forces lend.
//!
//! Deflection: the cubic of nine freedoms (`shape::cubic`), which is continuous from triangle to triangle, so that its gradient's square is
//! the stretching of a true surface. With it the stiffness of membrane forces is the consistent one (Kapur and Hartz, J. Eng. Mech. Div.
//! ASCE 92 (1966) 177-205; Zienkiewicz and Taylor, The Finite Element Method, vol. 2, plates: initial stress; both from memory).
//! The strain of slopes, a quartic, is projected onto the linear functions that the quadratic displacements in the plane can follow,
//! lest bending without stretching lock (assumed strain: Simo and Hughes, J. Appl. Mech. 53 (1986) 51-54, from memory). A linear
//! function is held by its values at the middles of the sides, which are also the points of the midside rule.

use super::quadrature::DEGREE_6;
use super::triangle::Triangle;

/// Values at the three midside points, in the order of `quadrature::MIDSIDE`.
pub(crate) type AtMidsides = [[f64; 3]; 3];

/// A point of the rule, with the slopes of the nine freedoms there and the linear functions of the midside points.
#[derive(Debug, Clone, Copy)]
pub(crate) struct SlopePoint {
    /// Weight; weights add to 1.
    pub weight: f64,
    /// Slopes along x and y of each freedom.
    pub slopes: [[f64; 9]; 2],
    /// The linear functions that are 1 at one midside point and 0 at the others.
    pub linear: [f64; 3],
}

/// The points at which slopes are taken.
pub(crate) fn slope_points(triangle: &Triangle) -> [SlopePoint; 12] {
    DEGREE_6.map(|(l, weight)| SlopePoint {
        weight,
        slopes: cubic_slopes(triangle, l),
        // The midside points lie opposite to corners 2, 0 and 1.
        linear: [1.0 - 2.0 * l[2], 1.0 - 2.0 * l[0], 1.0 - 2.0 * l[1]],
    })
}

/// Gradient (2 × 9) of the nine cubic shape functions of the deflection.
pub(crate) fn cubic_slopes(triangle: &Triangle, l: [f64; 3]) -> [[f64; 9]; 2] {
    let g = triangle.gradients;
    let mut out = [[0.0; 9]; 2];
    let bubble = (g[0] * (l[1] * l[2]) + g[1] * (l[2] * l[0]) + g[2] * (l[0] * l[1])) * 0.5;
    for i in 0..3 {
        let (j, k) = ((i + 1) % 3, (i + 2) % 3);
        let (to_j, to_k) = (triangle.sides[i], triangle.sides[k] * -1.0);
        // Of l_i + l_i^2 (l_j + l_k) - l_i (l_j^2 + l_k^2).
        let value = g[i] * (1.0 + 2.0 * l[i] * (l[j] + l[k]) - l[j] * l[j] - l[k] * l[k])
            + g[j] * (l[i] * (l[i] - 2.0 * l[j]))
            + g[k] * (l[i] * (l[i] - 2.0 * l[k]));
        let toward_j = g[i] * (2.0 * l[i] * l[j]) + g[j] * (l[i] * l[i]) + bubble;
        let toward_k = g[i] * (2.0 * l[i] * l[k]) + g[k] * (l[i] * l[i]) + bubble;
        out[0][3 * i] = value.x;
        out[1][3 * i] = value.y;
        for (row, (a, b)) in out.iter_mut().zip([(toward_j.x, toward_k.x), (toward_j.y, toward_k.y)]) {
            row[3 * i + 1] = a * to_j.x + b * to_k.x;
            row[3 * i + 2] = a * to_j.y + b * to_k.y;
        }
    }
    out
}

/// Membrane forces at a point of the rule from those at the midside points.
fn force_at(point: &SlopePoint, forces: &AtMidsides) -> [f64; 3] {
    let mut here = [0.0; 3];
    for (share, force) in point.linear.iter().zip(forces) {
        for (h, f) in here.iter_mut().zip(force) {
            *h += share * f;
        }
    }
    here
}

/// The stiffness that membrane forces lend to the nine freedoms of the deflection.
pub(crate) fn stress_stiffness(
    triangle: &Triangle,
    points: &[SlopePoint],
    forces: &AtMidsides,
) -> [[f64; 9]; 9] {
    let mut k = [[0.0; 9]; 9];
    for point in points {
        let [nx, ny, nxy] = force_at(point, forces).map(|f| f * point.weight * triangle.area);
        let [x, y] = &point.slopes;
        for i in 0..9 {
            let (px, py) = (nx * x[i] + nxy * y[i], nxy * x[i] + ny * y[i]);
            for j in 0..9 {
                k[i][j] += px * x[j] + py * y[j];
            }
        }
    }
    k
}

/// Slopes at every point of the rule: of the freedoms `w`, plus a tilt common to all.
pub(crate) fn slopes_at(points: &[SlopePoint], w: &[f64], tilt: [f64; 2]) -> Vec<[f64; 2]> {
    let of = |row: &[f64; 9]| row.iter().zip(w).map(|(n, v)| n * v).sum::<f64>();
    points.iter().map(|p| [tilt[0] + of(&p.slopes[0]), tilt[1] + of(&p.slopes[1])]).collect()
}

/// Strain of the slopes (half their squares, and their product) at the midside points, projected onto linear functions.
pub(crate) fn slope_strain(points: &[SlopePoint], slopes: &[[f64; 2]]) -> AtMidsides {
    let mut strain = [[0.0; 3]; 3];
    for (point, &[x, y]) in points.iter().zip(slopes) {
        let here = [0.5 * x * x, 0.5 * y * y, x * y];
        for (row, linear) in strain.iter_mut().zip(point.linear) {
            // The linear functions are orthogonal, each with a mean square of a third.
            for (s, h) in row.iter_mut().zip(here) {
                *s += 3.0 * point.weight * linear * h;
            }
        }
    }
    strain
}

/// Strain of the slopes of nine freedoms at the corners, from its projection onto linear functions.
pub(crate) fn slope_strain_at_corners(triangle: &Triangle, w: &[f64]) -> AtMidsides {
    let points = slope_points(triangle);
    let [a, b, c] = slope_strain(&points, &slopes_at(&points, w, [0.0; 2]));
    // Midside points in the order 0-1, 1-2, 2-0: a corner has twice the mean of its two sides less that of the opposite one.
    let mix = |one: [f64; 3], other: [f64; 3], opposite: [f64; 3]| {
        [0, 1, 2].map(|i| one[i] + other[i] - opposite[i])
    };
    [mix(a, c, b), mix(a, b, c), mix(b, c, a)]
}

/// Change of `slope_strain` with each of the nine freedoms, at the midside points.
pub(crate) fn slope_strain_map(points: &[SlopePoint], slopes: &[[f64; 2]]) -> [[[f64; 9]; 3]; 3] {
    let mut map = [[[0.0; 9]; 3]; 3];
    for (point, &[x, y]) in points.iter().zip(slopes) {
        let [gx, gy] = &point.slopes;
        for (rows, linear) in map.iter_mut().zip(point.linear) {
            let share = 3.0 * point.weight * linear;
            for i in 0..9 {
                rows[0][i] += share * x * gx[i];
                rows[1][i] += share * y * gy[i];
                rows[2][i] += share * (x * gy[i] + y * gx[i]);
            }
        }
    }
    map
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::element::shape::cubic;
    use crate::geometry::point::Point;

    fn triangle() -> Triangle {
        Triangle::new([Point::new(0.3, -0.2), Point::new(1.7, 0.4), Point::new(0.6, 1.9)])
    }

    /// The gradient is that of the shape functions, by central differences.
    #[test]
    fn slopes_are_the_gradient() {
        let t = triangle();
        let l = [0.2, 0.5, 0.3];
        let h = 1e-6;
        for (direction, step) in [(0, Point::new(h, 0.0)), (1, Point::new(0.0, h))] {
            let moved = |sign: f64| {
                let mut m = l;
                for (value, g) in m.iter_mut().zip(t.gradients) {
                    *value += sign * g.dot(step);
                }
                cubic(&t, m)
            };
            let (ahead, behind) = (moved(1.0), moved(-1.0));
            for i in 0..9 {
                let difference = (ahead[i] - behind[i]) / (2.0 * h);
                assert!((cubic_slopes(&t, l)[direction][i] - difference).abs() < 1e-9, "{i}");
            }
        }
    }

    /// A tilt strains evenly: half of its squares, and its product. A plane w = a x + b y does the same through its freedoms.
    #[test]
    fn a_tilt_strains_evenly() {
        let t = triangle();
        let points = slope_points(&t);
        let (a, b) = (0.3, -0.7);
        let corners = [Point::default(), t.sides[0], t.sides[2] * -1.0];
        let w: Vec<f64> = corners.iter().flat_map(|p| [a * p.x + b * p.y, a, b]).collect();
        for slopes in [slopes_at(&points, &[0.0; 9], [a, b]), slopes_at(&points, &w, [0.0; 2])] {
            for row in slope_strain(&points, &slopes) {
                for (found, exact) in row.into_iter().zip([0.5 * a * a, 0.5 * b * b, a * b]) {
                    assert!((found - exact).abs() < 1e-14);
                }
            }
        }
    }
}
