//! What the shape of one triangle makes of its freedoms: found once for a mesh, used in every step of large deflection.

use super::membrane::{MiddleSlopes, middle_slopes};
use super::quadrature::MIDSIDE;
use super::shape::{curvature_map, quadratic_gradients, slope_map, strain_map};
use super::stiffness::MEMBRANE;
use super::triangle::Triangle;
use crate::geometry::point::Point;

/// What the shape of one triangle makes of its freedoms.
#[derive(Debug, Clone)]
pub(crate) struct Shaped {
    pub triangle: Triangle,
    /// Slopes at the middles of the sides.
    pub middles: MiddleSlopes,
    /// Gradients of the six quadratic shape functions at the midside points: strains in the plane.
    pub gradients: [[Point; 6]; 3],
    /// Curvature at the midside points.
    pub bend: [[[f64; 9]; 3]; 3],
}

impl Shaped {
    /// Finds all for a triangle.
    pub(crate) fn new(triangle: Triangle) -> Self {
        let map = slope_map(&triangle);
        Self {
            middles: middle_slopes(&triangle),
            gradients: MIDSIDE.map(|(l, _)| quadratic_gradients(&triangle, l)),
            bend: MIDSIDE.map(|(l, _)| curvature_map(&strain_map(&triangle, l), &map)),
            triangle,
        }
    }

    /// Strain (xx, yy, engineering xy) at a midside point of displacements at the six nodes.
    pub(crate) fn strain(&self, m: usize, u: &[f64; MEMBRANE]) -> [f64; 3] {
        let mut strain = [0.0; 3];
        for (g, u) in self.gradients[m].iter().zip(u.chunks_exact(2)) {
            strain[0] += g.x * u[0];
            strain[1] += g.y * u[1];
            strain[2] += g.y * u[0] + g.x * u[1];
        }
        strain
    }

    /// Adds the forces at the six nodes that balance a force per length at a midside point, times `factor`.
    pub(crate) fn add_pull(&self, m: usize, force: [f64; 3], factor: f64, forces: &mut [f64]) {
        let [xx, yy, xy] = force.map(|f| factor * f);
        for (g, f) in self.gradients[m].iter().zip(forces.chunks_exact_mut(2)) {
            f[0] += g.x * xx + g.y * xy;
            f[1] += g.y * yy + g.x * xy;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The short ways are those of the strain map, for displacements and forces of no meaning.
    #[test]
    fn short_ways_agree_with_the_map() {
        let triangle = Triangle::new([Point::new(0.3, -0.2), Point::new(1.7, 0.4), Point::new(0.6, 1.9)]);
        let shaped = Shaped::new(triangle);
        let u: [f64; MEMBRANE] = std::array::from_fn(|k| crate::math::sin(1.0 + 2.3 * k as f64));
        let force = [0.3, -1.1, 0.7];
        for (m, (l, _)) in MIDSIDE.into_iter().enumerate() {
            let map = strain_map(&triangle, l);
            let mut pull = [0.0; MEMBRANE];
            shaped.add_pull(m, force, 2.0, &mut pull);
            for (found, row) in shaped.strain(m, &u).into_iter().zip(&map) {
                let exact: f64 = row.iter().zip(u).map(|(s, u)| s * u).sum();
                assert!((found - exact).abs() < 1e-13, "{found} {exact}");
            }
            for (k, found) in pull.into_iter().enumerate() {
                let exact: f64 = (0..3).map(|i| 2.0 * force[i] * map[i][k]).sum();
                assert!((found - exact).abs() < 1e-13, "{found} {exact}");
            }
        }
    }
}
