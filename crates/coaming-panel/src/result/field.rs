//! The solved field on its mesh: deflection, slopes, moments and stresses at any point.

use super::recover::{Strained, Strains, raw};
use crate::element::shape::{cubic, quadratic, slope_map};
use crate::element::triangle::Triangle;
use crate::geometry::point::Point;
use crate::model::growth::FreeStrain;
use crate::model::panel::Layer;
use crate::model::stack::Groups;
use crate::system::equilibrium::State;
use crate::system::level::Level;
use std::f64::consts::FRAC_PI_2;

/// Stress at a point of one face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FaceStress {
    /// Stresses xx, yy and xy, Pa.
    pub stress: [f64; 3],
    /// Larger principal stress, Pa.
    pub principal_1: f64,
    /// Smaller principal stress, Pa.
    pub principal_2: f64,
}

impl FaceStress {
    fn new(stress: [f64; 3]) -> Self {
        let (mean, half) = (0.5 * (stress[0] + stress[1]), 0.5 * (stress[0] - stress[1]));
        let radius = (half * half + stress[2] * stress[2]).sqrt();
        Self { stress, principal_1: mean + radius, principal_2: mean - radius }
    }
}

/// Stress on both faces of one layer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LayerStress {
    /// Index of the layer.
    pub layer: usize,
    /// On its lower face.
    pub lower: FaceStress,
    /// On its upper face.
    pub upper: FaceStress,
}

/// The field at one point.
#[derive(Debug, Clone, PartialEq)]
pub struct PointAnswer {
    /// Deflection, m.
    pub deflection: f64,
    /// Slope along x and y.
    pub slope: [f64; 2],
    /// Curvatures -w,xx, -w,yy, -2 w,xy, 1/m.
    pub curvature: [f64; 3],
    /// Moments per length xx, yy, xy of all groups about their own reference heights, N; positive stretches the upper face. Where layers
    /// bend as one piece this is the moment of the section.
    pub moment: [f64; 3],
    /// Forces per length in the plane xx, yy, xy of all layers, N/m; positive stretches.
    pub membrane_force: [f64; 3],
    /// Stress of every layer present.
    pub layers: Vec<LayerStress>,
}

/// The solved field on its mesh.
#[derive(Debug, Clone)]
pub struct Field {
    /// Vertices of the mesh.
    pub vertices: Vec<Point>,
    /// Triangles, three vertices each.
    pub triangles: Vec<[usize; 3]>,
    /// Deflection of every vertex, m.
    pub deflection: Vec<f64>,
    /// Slopes of every vertex along x and y.
    pub slope: Vec<[f64; 2]>,
    /// Curvature at the corners of every triangle, recovered around each vertex from the slopes nearby that no feature parts from it.
    pub curvature: Vec<[[f64; 3]; 3]>,
    membrane: Vec<(usize, Vec<[Strains; 3]>)>,
    cover: Vec<u64>,
    layers: Vec<Layer>,
    groups: Groups,
    growth: Vec<FreeStrain>,
    mesh: crate::mesh::Mesh,
}

impl Field {
    /// Recovers the field from a state of linear theory.
    pub(crate) fn new(
        level: &mut Level,
        state: &State,
        layers: &[Layer],
        groups: &Groups,
        growth: Vec<FreeStrain>,
    ) -> Self {
        Self::recover(level, state, layers, groups, growth, false)
    }

    /// Recovers the field from a state in which slopes stretch the panel too.
    pub(crate) fn large(
        level: &mut Level,
        state: &State,
        layers: &[Layer],
        groups: &Groups,
        growth: Vec<FreeStrain>,
    ) -> Self {
        Self::recover(level, state, layers, groups, growth, true)
    }

    fn recover(
        level: &mut Level,
        state: &State,
        layers: &[Layer],
        groups: &Groups,
        growth: Vec<FreeStrain>,
        slopes_stretch: bool,
    ) -> Self {
        let patches = level.patches();
        let mesh = &level.mesh;
        let u = &state.plane;
        let n = mesh.vertices.len();
        let own = raw(level, u, slopes_stretch);
        let Strained { curvature, membrane } = patches.smooth(level, u, &patches.sober(&own));
        Self {
            vertices: mesh.vertices.clone(),
            triangles: mesh.triangles.clone(),
            deflection: u[..n].to_vec(),
            slope: (0..n).map(|v| level.freedoms.pair(level.freedoms.slopes(v)).map(|d| u[d])).collect(),
            curvature,
            membrane,
            cover: mesh.cover.clone(),
            layers: layers.to_vec(),
            groups: groups.clone(),
            growth,
            mesh: mesh.clone(),
        }
    }

    /// The field at a point; `None` off the material.
    pub fn at(&self, point: Point) -> Option<PointAnswer> {
        let (t, l) = self.mesh.locate(point)?;
        Some(self.within(t, l))
    }

    /// The field at the middle of a triangle; `None` where there is no such triangle.
    pub fn middle_of(&self, triangle: usize) -> Option<PointAnswer> {
        (triangle < self.triangles.len()).then(|| self.within(triangle, [1.0 / 3.0; 3]))
    }

    fn within(&self, t: usize, l: [f64; 3]) -> PointAnswer {
        let triangle = Triangle::new(self.mesh.corners(t));
        let nodal: Vec<f64> = (self.triangles[t].into_iter())
            .flat_map(|v| [self.deflection[v], self.slope[v][0], self.slope[v][1]])
            .collect();
        let deflection = cubic(&triangle, l).iter().zip(&nodal).map(|(n, v)| n * v).sum();
        let map = slope_map(&triangle);
        let mut slope = [0.0; 2];
        for (node, n) in quadratic(l).into_iter().enumerate() {
            for (direction, value) in slope.iter_mut().enumerate() {
                *value += n * map[2 * node + direction].iter().zip(&nodal).map(|(m, v)| m * v).sum::<f64>();
            }
        }
        let blend = |corners: &[Strains; 3]| {
            let mut out = [0.0; 3];
            for (corner, weight) in corners.iter().zip(l) {
                for (o, c) in out.iter_mut().zip(corner) {
                    *o += weight * c;
                }
            }
            out
        };
        let curvature = blend(&self.curvature[t]);
        let mut moment = [0.0; 3];
        let mut membrane_force = [0.0; 3];
        let mut layers = Vec::new();
        for (k, layer) in self.layers.iter().enumerate().filter(|&(k, _)| self.cover[t] >> k & 1 == 1) {
            let group = self.groups.of_layer[k];
            let strain = self
                .membrane
                .iter()
                .find(|(g, _)| *g == group)
                .map_or([0.0; 3], |(_, values)| blend(&values[t]));
            let face = |height: f64| self.stress(k, strain, curvature, height);
            let [lower, middle, upper] =
                [layer.lower_face, layer.middle(), layer.lower_face + layer.thickness].map(face);
            let arm = layer.middle() - self.groups.height[group];
            for i in 0..3 {
                let gradient = (upper[i] - lower[i]) / layer.thickness;
                membrane_force[i] += middle[i] * layer.thickness;
                moment[i] += middle[i] * layer.thickness * arm
                    + gradient * layer.thickness * layer.thickness * layer.thickness / 12.0;
            }
            layers.push(LayerStress {
                layer: k,
                lower: FaceStress::new(lower),
                upper: FaceStress::new(upper),
            });
        }
        PointAnswer { deflection, slope, curvature, moment, membrane_force, layers }
    }

    fn stress(&self, index: usize, strain: Strains, curvature: Strains, height: f64) -> [f64; 3] {
        let layer = &self.layers[index];
        let group = self.groups.of_layer[index];
        // A group without freedoms in the plane is one that nothing holds there: it grows as it likes.
        let grows = !self.membrane.iter().any(|(g, _)| *g == group);
        let (q, rise) = (layer.material.stiffness(), (height - layer.middle()) / layer.thickness);
        let mut free = [0.0; 3];
        for given in self.growth.iter().filter(|g| g.layer == index) {
            for (f, (middle, difference)) in free.iter_mut().zip(given.middle.iter().zip(given.difference)) {
                *f += if grows { 0.0 } else { *middle } + difference * rise;
            }
        }
        let arm = height - self.groups.height[group];
        let total: Vec<f64> = (0..3).map(|i| strain[i] + arm * curvature[i] - free[i]).collect();
        let mut stress = [0.0; 3];
        for (s, row) in stress.iter_mut().zip(q) {
            *s = row.iter().zip(&total).map(|(a, b)| a * b).sum();
        }
        stress
    }

    /// The largest principal stress in size on one face of one layer, and where: (stress, place). `None` if the layer is nowhere.
    pub fn largest_stress(&self, layer: usize, upper: bool) -> Option<(f64, Point)> {
        let mut best: Option<(f64, Point)> = None;
        let item = self.layers.get(layer)?;
        let group = self.groups.of_layer[layer];
        let height = if upper { item.lower_face + item.thickness } else { item.lower_face };
        for (t, corners) in
            self.curvature.iter().enumerate().filter(|&(t, _)| self.cover[t] >> layer & 1 == 1)
        {
            for (k, &curvature) in corners.iter().enumerate() {
                let strain = self
                    .membrane
                    .iter()
                    .find(|(g, _)| *g == group)
                    .map_or([0.0; 3], |(_, values)| values[t][k]);
                let face = FaceStress::new(self.stress(layer, strain, curvature, height));
                let value = if face.principal_1.abs() >= face.principal_2.abs() {
                    face.principal_1
                } else {
                    face.principal_2
                };
                if best.is_none_or(|(b, _)| value.abs() > f64::abs(b)) {
                    best = Some((value, self.vertices[self.triangles[t][k]]));
                }
            }
        }
        best
    }

    /// Mean curvature over a disc, as under a washer: moments under a bare point grow without bound as the mesh gets finer.
    pub fn mean_curvature(&self, center: Point, radius: f64) -> Option<[f64; 3]> {
        let mut sum = [0.0; 3];
        let mut count = 0.0;
        for ring in 0..8 {
            for spoke in 0..24 {
                // Rings of equal area.
                let r = radius * ((ring as f64 + 0.5) / 8.0).sqrt();
                let angle = FRAC_PI_2 * (spoke as f64 + 0.5) / 6.0;
                let p = center + Point::new(crate::math::cos(angle), crate::math::sin(angle)) * r;
                if let Some(here) = self.at(p) {
                    for (s, c) in sum.iter_mut().zip(here.curvature) {
                        *s += c;
                    }
                    count += 1.0;
                }
            }
        }
        (count > 0.0).then(|| sum.map(|s| s / count))
    }
}
