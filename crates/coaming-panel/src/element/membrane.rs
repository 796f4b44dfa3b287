//! How slopes stretch a triangle: the quadratic terms of the membrane strain, and the stiffness that membrane forces lend.
//!
//! Deflection: the cubic of nine freedoms (`shape::cubic`), which is continuous from triangle to triangle, so that its gradient's square is
//! the stretching of a true surface. With it the stiffness of membrane forces is the consistent one (Kapur and Hartz, J. Eng. Mech. Div.
//! ASCE 92 (1966) 177-205; Zienkiewicz and Taylor, The Finite Element Method, vol. 2, plates: initial stress; both from memory).
//! The strain of slopes, a quartic, is projected onto the linear functions that the quadratic displacements in the plane can follow,
//! lest bending without stretching lock (assumed strain: Simo and Hughes, J. Appl. Mech. 53 (1986) 51-54, from memory). A linear
//! function is held by its values at the middles of the sides, which are also the points of the midside rule.

use super::quadrature::DEGREE_6;
use super::shape::quadratic;
use super::triangle::Triangle;

/// Values at the three midside points, in the order of `quadrature::MIDSIDE`.
pub(crate) type AtMidsides = [[f64; 3]; 3];
/// Slopes along x and y at the six quadratic nodes, which determine them everywhere: those of a cubic are quadratic.
pub(crate) type NodeSlopes = [[f64; 2]; 6];
/// What the nine freedoms make of the slopes at the middles of the sides, along x and along y. At a corner the slopes are freedoms.
pub(crate) type MiddleSlopes = [[[f64; 9]; 2]; 3];

/// Means over the triangle of the product of two quadratic shape functions with the linear function that is 1 at one midside point and 0
/// at the others, times 3: what that function has of the product's projection onto linear functions, for they are orthogonal, each with a
/// mean square of a third.
const PRODUCTS: [[[f64; 6]; 6]; 3] = products();

const fn products() -> [[[f64; 6]; 6]; 3] {
    let mut found = [[[0.0; 6]; 6]; 3];
    let mut point = 0;
    while point < DEGREE_6.len() {
        let (l, weight) = DEGREE_6[point];
        let n = quadratic(l);
        // The midside points lie opposite to corners 2, 0 and 1.
        let linear = [1.0 - 2.0 * l[2], 1.0 - 2.0 * l[0], 1.0 - 2.0 * l[1]];
        let mut k = 0;
        while k < 3 * 6 * 6 {
            let (m, a, b) = (k / 36, k / 6 % 6, k % 6);
            found[m][a][b] += 3.0 * weight * linear[m] * n[a] * n[b];
            k += 1;
        }
        point += 1;
    }
    found
}

/// The slopes at the middles of the sides of each freedom.
pub(crate) fn middle_slopes(triangle: &Triangle) -> MiddleSlopes {
    [[0.5, 0.5, 0.0], [0.0, 0.5, 0.5], [0.5, 0.0, 0.5]].map(|l| cubic_slopes(triangle, l))
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

/// The stiffness that membrane forces lend to the nine freedoms of the deflection.
pub(crate) fn stress_stiffness(
    triangle: &Triangle,
    middles: &MiddleSlopes,
    forces: &AtMidsides,
) -> [[f64; 9]; 9] {
    let mut k = [[0.0; 9]; 9];
    for a in 0..6 {
        // What the slopes of each freedom are paired with at this node.
        let mut pull = [[0.0; 9]; 2];
        for b in 0..6 {
            let mut n = [0.0; 3];
            for (products, force) in PRODUCTS.iter().zip(forces) {
                let share = triangle.area / 3.0 * products[a][b];
                for (n, f) in n.iter_mut().zip(force) {
                    *n += share * f;
                }
            }
            let [nx, ny, nxy] = n;
            if b < 3 {
                pull[0][3 * b + 1] += nx;
                pull[0][3 * b + 2] += nxy;
                pull[1][3 * b + 1] += nxy;
                pull[1][3 * b + 2] += ny;
            } else {
                let [x, y] = &middles[b - 3];
                for i in 0..9 {
                    pull[0][i] += nx * x[i] + nxy * y[i];
                    pull[1][i] += nxy * x[i] + ny * y[i];
                }
            }
        }
        if a < 3 {
            for i in 0..9 {
                k[3 * a + 1][i] += pull[0][i];
                k[3 * a + 2][i] += pull[1][i];
            }
        } else {
            let [x, y] = &middles[a - 3];
            for i in 0..9 {
                for j in 0..9 {
                    k[i][j] += x[i] * pull[0][j] + y[i] * pull[1][j];
                }
            }
        }
    }
    k
}

/// Slopes at the six nodes: of the freedoms `w`, plus a tilt common to all.
pub(crate) fn slopes_at(middles: &MiddleSlopes, w: &[f64; 9], tilt: [f64; 2]) -> NodeSlopes {
    let of = |row: &[f64; 9]| row.iter().zip(w).map(|(n, v)| n * v).sum::<f64>();
    std::array::from_fn(|node| match node.checked_sub(3) {
        None => [tilt[0] + w[3 * node + 1], tilt[1] + w[3 * node + 2]],
        Some(side) => [tilt[0] + of(&middles[side][0]), tilt[1] + of(&middles[side][1])],
    })
}

/// What each node's slopes are multiplied by in the strain of the slopes at a midside point.
fn partners(products: &[[f64; 6]; 6], slopes: &NodeSlopes) -> NodeSlopes {
    let mut found = [[0.0; 2]; 6];
    for (row, slope) in products.iter().zip(slopes) {
        for (f, share) in found.iter_mut().zip(row) {
            f[0] += share * slope[0];
            f[1] += share * slope[1];
        }
    }
    found
}

/// Strain of the slopes (half their squares, and their product) at the midside points, projected onto linear functions.
pub(crate) fn slope_strain(slopes: &NodeSlopes) -> AtMidsides {
    PRODUCTS.map(|products| {
        let mut strain = [0.0; 3];
        for ([px, py], [x, y]) in partners(&products, slopes).into_iter().zip(slopes) {
            strain[0] += 0.5 * px * x;
            strain[1] += 0.5 * py * y;
            strain[2] += px * y;
        }
        strain
    })
}

/// Strain of the slopes of nine freedoms at the corners, from its projection onto linear functions.
pub(crate) fn slope_strain_at_corners(triangle: &Triangle, w: &[f64; 9]) -> AtMidsides {
    let [a, b, c] = slope_strain(&slopes_at(&middle_slopes(triangle), w, [0.0; 2]));
    // Midside points in the order 0-1, 1-2, 2-0: a corner has twice the mean of its two sides less that of the opposite one.
    let mix = |one: [f64; 3], other: [f64; 3], opposite: [f64; 3]| {
        [0, 1, 2].map(|i| one[i] + other[i] - opposite[i])
    };
    [mix(a, c, b), mix(a, b, c), mix(b, c, a)]
}

/// Change of `slope_strain` with each of the nine freedoms, at the midside points.
pub(crate) fn slope_strain_map(middles: &MiddleSlopes, slopes: &NodeSlopes) -> [[[f64; 9]; 3]; 3] {
    PRODUCTS.map(|products| {
        let mut rows = [[0.0; 9]; 3];
        for (node, [px, py]) in partners(&products, slopes).into_iter().enumerate() {
            if node < 3 {
                rows[0][3 * node + 1] += px;
                rows[1][3 * node + 2] += py;
                rows[2][3 * node + 1] += py;
                rows[2][3 * node + 2] += px;
            } else {
                let [x, y] = &middles[node - 3];
                for i in 0..9 {
                    rows[0][i] += px * x[i];
                    rows[1][i] += py * y[i];
                    rows[2][i] += px * y[i] + py * x[i];
                }
            }
        }
        rows
    })
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
        let middles = middle_slopes(&t);
        let (a, b) = (0.3, -0.7);
        let corners = [Point::default(), t.sides[0], t.sides[2] * -1.0];
        let w: [f64; 9] = std::array::from_fn(|k| {
            let p = corners[k / 3];
            [a * p.x + b * p.y, a, b][k % 3]
        });
        for slopes in [slopes_at(&middles, &[0.0; 9], [a, b]), slopes_at(&middles, &w, [0.0; 2])] {
            for row in slope_strain(&slopes) {
                for (found, exact) in row.into_iter().zip([0.5 * a * a, 0.5 * b * b, a * b]) {
                    assert!((found - exact).abs() < 1e-14);
                }
            }
        }
    }

    /// Strain, its change and the stiffness of membrane forces are those of a rule of degree 6 point by point (Dunavant), for freedoms and
    /// forces of no meaning.
    #[test]
    fn products_agree_with_the_rule() {
        let t = triangle();
        let middles = middle_slopes(&t);
        let w: [f64; 9] = std::array::from_fn(|k| crate::math::sin(1.0 + 2.3 * k as f64));
        let forces: AtMidsides =
            std::array::from_fn(|m| std::array::from_fn(|i| crate::math::sin(0.7 + (3 * m + i) as f64)));
        let (mut strain, mut change, mut stiff) = ([[0.0; 3]; 3], [[[0.0; 9]; 3]; 3], [[0.0; 9]; 9]);
        for (l, weight) in DEGREE_6 {
            let [gx, gy] = cubic_slopes(&t, l);
            let of = |g: &[f64; 9]| g.iter().zip(w).map(|(g, w)| g * w).sum::<f64>();
            let (x, y) = (of(&gx), of(&gy));
            let linear = [1.0 - 2.0 * l[2], 1.0 - 2.0 * l[0], 1.0 - 2.0 * l[1]];
            let force: [f64; 3] = std::array::from_fn(|i| (0..3).map(|m| linear[m] * forces[m][i]).sum());
            for m in 0..3 {
                let share = 3.0 * weight * linear[m];
                for (s, h) in strain[m].iter_mut().zip([0.5 * x * x, 0.5 * y * y, x * y]) {
                    *s += share * h;
                }
                for i in 0..9 {
                    change[m][0][i] += share * x * gx[i];
                    change[m][1][i] += share * y * gy[i];
                    change[m][2][i] += share * (x * gy[i] + y * gx[i]);
                }
            }
            for i in 0..9 {
                for j in 0..9 {
                    let along = force[0] * gx[i] * gx[j] + force[1] * gy[i] * gy[j];
                    let across = force[2] * (gx[i] * gy[j] + gy[i] * gx[j]);
                    stiff[i][j] += weight * t.area * (along + across);
                }
            }
        }
        let slopes = slopes_at(&middles, &w, [0.0; 2]);
        let close = |found: f64, exact: f64| assert!((found - exact).abs() < 1e-12, "{found} {exact}");
        let found = slope_strain(&slopes);
        found.iter().flatten().zip(strain.iter().flatten()).for_each(|(a, b)| close(*a, *b));
        let found = slope_strain_map(&middles, &slopes);
        found
            .iter()
            .flatten()
            .flatten()
            .zip(change.iter().flatten().flatten())
            .for_each(|(a, b)| close(*a, *b));
        let found = stress_stiffness(&t, &middles, &forces);
        found.iter().flatten().zip(stiff.iter().flatten()).for_each(|(a, b)| close(*a, *b));
    }
}
