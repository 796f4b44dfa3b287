//! Shape functions: quadratic (displacements in the plane, slopes) and cubic (deflection under loads and masses).

use super::triangle::Triangle;
use crate::geometry::point::Point;

/// Values of the six quadratic shape functions: corners, then the middles of sides 0-1, 1-2, 2-0.
pub(crate) const fn quadratic([a, b, c]: [f64; 3]) -> [f64; 6] {
    [a * (2.0 * a - 1.0), b * (2.0 * b - 1.0), c * (2.0 * c - 1.0), 4.0 * a * b, 4.0 * b * c, 4.0 * c * a]
}

/// Gradients of the six quadratic shape functions.
pub(crate) fn quadratic_gradients(triangle: &Triangle, [a, b, c]: [f64; 3]) -> [Point; 6] {
    let [ga, gb, gc] = triangle.gradients;
    [
        ga * (4.0 * a - 1.0),
        gb * (4.0 * b - 1.0),
        gc * (4.0 * c - 1.0),
        (ga * b + gb * a) * 4.0,
        (gb * c + gc * b) * 4.0,
        (gc * a + ga * c) * 4.0,
    ]
}

/// Values of the nine cubic shape functions of the deflection, in the order w, slope x, slope y per corner.
///
/// Source: Bazeley, Cheung, Irons and Zienkiewicz (1965); Zienkiewicz and Taylor, The Finite Element Method, vol. 2,
/// triangular element with corner nodes. They reproduce every quadratic.
pub(crate) fn cubic(triangle: &Triangle, l: [f64; 3]) -> [f64; 9] {
    let bubble = 0.5 * l[0] * l[1] * l[2];
    let mut n = [0.0; 9];
    for i in 0..3 {
        let (j, k) = ((i + 1) % 3, (i + 2) % 3);
        // From corner i to corner j along side i; from corner i to corner k against side k.
        let (to_j, to_k) = (triangle.sides[i], triangle.sides[k] * -1.0);
        n[3 * i] = l[i] + l[i] * l[i] * (l[j] + l[k]) - l[i] * (l[j] * l[j] + l[k] * l[k]);
        let (fj, fk) = (l[i] * l[i] * l[j] + bubble, l[i] * l[i] * l[k] + bubble);
        n[3 * i + 1] = fj * to_j.x + fk * to_k.x;
        n[3 * i + 2] = fj * to_j.y + fk * to_k.y;
    }
    n
}

/// Slope vectors at the six quadratic nodes as a linear map (12 × 9) of w and slopes at the corners.
///
/// At the middle of a side the slope along it follows the cubic between the ends, and the slope across it is the mean of the ends:
/// the discrete Kirchhoff conditions. Source: Batoz, Bathe and Ho, Int. J. Num. Meth. Eng. 15 (1980) 1771-1812.
pub(crate) fn slope_map(triangle: &Triangle) -> [[f64; 9]; 12] {
    let mut map = [[0.0; 9]; 12];
    for i in 0..3 {
        map[2 * i][3 * i + 1] = 1.0;
        map[2 * i + 1][3 * i + 2] = 1.0;
        let j = (i + 1) % 3;
        let side = triangle.sides[i];
        let length = side.length();
        let t = side * (1.0 / length);
        let n = t.left();
        let row = 2 * (3 + i);
        for (component, (tc, nc)) in [(t.x, n.x), (t.y, n.y)].into_iter().enumerate() {
            let out = &mut map[row + component];
            out[3 * i] = -1.5 / length * tc;
            out[3 * j] = 1.5 / length * tc;
            for corner in [i, j] {
                out[3 * corner + 1] = -0.25 * t.x * tc + 0.5 * n.x * nc;
                out[3 * corner + 2] = -0.25 * t.y * tc + 0.5 * n.y * nc;
            }
        }
    }
    map
}

/// Mean over the triangle of the discrete-Kirchhoff slopes less the mean gradient of the deflection, as a linear map (2 × 9).
///
/// It vanishes for every quadratic deflection. The mean gradient follows from the cubic deflection along the sides by Gauss's theorem.
pub(crate) fn slope_mismatch(triangle: &Triangle, slopes: &[[f64; 9]; 12]) -> [[f64; 9]; 2] {
    let mut map = [[0.0; 9]; 2];
    for (direction, row) in map.iter_mut().enumerate() {
        for (column, value) in row.iter_mut().enumerate() {
            *value = (slopes[6 + direction][column]
                + slopes[8 + direction][column]
                + slopes[10 + direction][column])
                / 3.0;
        }
    }
    for (i, side) in triangle.sides.into_iter().enumerate() {
        let outward = side.left() * (-1.0 / triangle.area);
        let j = (i + 1) % 3;
        for (row, n) in map.iter_mut().zip([outward.x, outward.y]) {
            for (corner, sign) in [(i, 1.0), (j, -1.0)] {
                row[3 * corner] -= 0.5 * n;
                row[3 * corner + 1] -= sign * n * side.x / 12.0;
                row[3 * corner + 2] -= sign * n * side.y / 12.0;
            }
        }
    }
    map
}

/// Strains (xx, yy, engineering xy) as a linear map (3 × 12) of vectors at the six quadratic nodes.
pub(crate) fn strain_map(triangle: &Triangle, l: [f64; 3]) -> [[f64; 12]; 3] {
    let gradients = quadratic_gradients(triangle, l);
    let mut map = [[0.0; 12]; 3];
    for (node, g) in gradients.into_iter().enumerate() {
        map[0][2 * node] = g.x;
        map[1][2 * node + 1] = g.y;
        map[2][2 * node] = g.y;
        map[2][2 * node + 1] = g.x;
    }
    map
}

/// Curvatures (-w,xx, -w,yy, -2 w,xy) as a linear map (3 × 9) of w and slopes at the corners. `strain` and `slopes` are as
/// [`strain_map`] and [`slope_map`] make them: only what these fill is read.
pub(crate) fn curvature_map(strain: &[[f64; 12]; 3], slopes: &[[f64; 9]; 12]) -> [[f64; 9]; 3] {
    let mut map = [[0.0; 9]; 3];
    for node in 0..3 {
        let (gx, gy) = (strain[0][2 * node], strain[1][2 * node + 1]);
        map[0][3 * node + 1] -= gx;
        map[1][3 * node + 2] -= gy;
        map[2][3 * node + 1] -= gy;
        map[2][3 * node + 2] -= gx;
    }
    for side in 0..3 {
        let row = 2 * (3 + side);
        let (gx, gy) = (strain[0][row], strain[1][row + 1]);
        for corner in [side, (side + 1) % 3] {
            for column in 3 * corner..3 * corner + 3 {
                let (x, y) = (slopes[row][column], slopes[row + 1][column]);
                map[0][column] -= gx * x;
                map[1][column] -= gy * y;
                map[2][column] -= gy * x + gx * y;
            }
        }
    }
    map
}

/// Slope vectors at the six quadratic nodes, as [`slope_map`] gives them, of w and slopes at the corners.
pub(crate) fn node_slopes(triangle: &Triangle, u: &[f64; 9]) -> [Point; 6] {
    let corner = |i: usize| Point::new(u[3 * i + 1], u[3 * i + 2]);
    let mut nodes = [corner(0), corner(1), corner(2), Point::default(), Point::default(), Point::default()];
    for i in 0..3 {
        let j = (i + 1) % 3;
        let length = triangle.sides[i].length();
        let t = triangle.sides[i] * (1.0 / length);
        let n = t.left();
        let sum = corner(i) + corner(j);
        let along = 1.5 / length * (u[3 * j] - u[3 * i]) - 0.25 * sum.dot(t);
        nodes[3 + i] = t * along + n * (0.5 * sum.dot(n));
    }
    nodes
}

/// Strains (xx, yy, engineering xy) at the three corners of vectors at the six quadratic nodes.
pub(crate) fn corner_strains(triangle: &Triangle, nodes: &[Point; 6]) -> [[f64; 3]; 3] {
    [0, 1, 2].map(|i| {
        let (j, k) = ((i + 1) % 3, (i + 2) % 3);
        let gradients = triangle.gradients;
        let mut strain = [0.0; 3];
        for (g, v) in [
            (gradients[i], nodes[i] * 3.0),
            (gradients[j], nodes[3 + i] * 4.0 - nodes[j]),
            (gradients[k], nodes[3 + k] * 4.0 - nodes[k]),
        ] {
            strain[0] += g.x * v.x;
            strain[1] += g.y * v.y;
            strain[2] += g.y * v.x + g.x * v.y;
        }
        strain
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Any quadratic deflection: its values, slopes and constant curvatures come back exactly.
    #[test]
    fn quadratics_are_reproduced() {
        let corners = [Point::new(0.3, -0.2), Point::new(1.7, 0.4), Point::new(0.6, 1.9)];
        let w = |p: Point| 1.0 + 2.0 * p.x - p.y + 0.7 * p.x * p.x - 1.3 * p.x * p.y + 0.4 * p.y * p.y;
        let slope = |p: Point| Point::new(2.0 + 1.4 * p.x - 1.3 * p.y, -1.0 - 1.3 * p.x + 0.8 * p.y);
        let triangle = Triangle::new(corners);
        let nodal: Vec<f64> = corners.iter().flat_map(|&p| [w(p), slope(p).x, slope(p).y]).collect();
        let l = [0.2, 0.5, 0.3];
        let at = corners[0] * l[0] + corners[1] * l[1] + corners[2] * l[2];
        let value: f64 = cubic(&triangle, l).iter().zip(&nodal).map(|(n, v)| n * v).sum();
        assert!((value - w(at)).abs() < 1e-14);
        for row in slope_mismatch(&triangle, &slope_map(&triangle)) {
            let found: f64 = row.iter().zip(&nodal).map(|(a, b)| a * b).sum();
            assert!(found.abs() < 1e-14, "{found}");
        }
        let strains = corner_strains(&triangle, &node_slopes(&triangle, &std::array::from_fn(|k| nodal[k])));
        for (corner, strain) in strains.into_iter().enumerate() {
            for (found, exact) in strain.into_iter().zip([1.4, 0.8, -2.6]) {
                assert!((found - exact).abs() < 1e-13, "{corner}: {found} {exact}");
            }
        }
        let map = curvature_map(&strain_map(&triangle, l), &slope_map(&triangle));
        for (row, exact) in map.iter().zip([-1.4, -0.8, 2.6]) {
            let found: f64 = row.iter().zip(&nodal).map(|(a, b)| a * b).sum();
            assert!((found - exact).abs() < 1e-13, "{found} {exact}");
        }
    }

    /// The short ways to strains and curvatures give what the maps do, for nodal values of no meaning.
    #[test]
    fn short_ways_agree_with_the_maps() {
        let triangle = Triangle::new([Point::new(0.3, -0.2), Point::new(1.7, 0.4), Point::new(0.6, 1.9)]);
        let u: [f64; 9] = std::array::from_fn(|k| crate::math::sin(1.0 + 2.3 * k as f64));
        let slopes = slope_map(&triangle);
        let nodes = node_slopes(&triangle, &u);
        for (node, slope) in nodes.iter().enumerate() {
            for (row, found) in [(2 * node, slope.x), (2 * node + 1, slope.y)] {
                let exact: f64 = slopes[row].iter().zip(&u).map(|(m, v)| m * v).sum();
                assert!((found - exact).abs() < 1e-14, "{found} {exact}");
            }
        }
        let short = corner_strains(&triangle, &nodes);
        for (k, short) in short.into_iter().enumerate() {
            let mut l = [0.0; 3];
            l[k] = 1.0;
            let strain = strain_map(&triangle, l);
            let curvature = curvature_map(&strain, &slopes);
            for ((found, row), whole) in short.into_iter().zip(curvature).zip(strain) {
                let by_map: f64 = row.iter().zip(&u).map(|(m, v)| m * v).sum();
                let by_hand: f64 = (0..12)
                    .map(|c| whole[c] * if c % 2 == 0 { nodes[c / 2].x } else { nodes[c / 2].y })
                    .sum();
                assert!(
                    (found + by_map).abs() < 1e-13 && (found - by_hand).abs() < 1e-13,
                    "{found} {by_map} {by_hand}"
                );
            }
        }
    }
}
