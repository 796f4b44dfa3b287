//! Stiffness of the layers that cover one triangle: A, B and D of every bonded group, slip between groups, mass.

use super::panel::{Joint, JointKind, Layer};
use crate::error::PanelError;
use crate::geometry::point::Point;

/// A 3 × 3 matrix of strains or stresses (xx, yy, xy).
pub(crate) type Matrix3 = [[f64; 3]; 3];

/// Stiffness of one bonded group about its own reference height.
#[derive(Debug, Clone)]
pub(crate) struct GroupPart {
    /// Index of the group.
    pub group: usize,
    /// Force per length of strain.
    pub a: Matrix3,
    /// Force per length of curvature, and moment per length of strain.
    pub b: Matrix3,
    /// Moment per length of curvature.
    pub d: Matrix3,
}

/// A joint that resists slip between two groups.
#[derive(Debug, Clone)]
pub(crate) struct Slip {
    /// Group of the lower layer.
    pub lower: usize,
    /// Group of the upper layer.
    pub upper: usize,
    /// Distance between the groups' reference heights.
    pub arm: f64,
    /// Shear force per area per slip, N/m3.
    pub stiffness: f64,
}

/// Everything that covers one triangle.
#[derive(Debug, Clone)]
pub(crate) struct Stack {
    /// Which layers, one bit each.
    pub cover: u64,
    /// The bonded groups.
    pub groups: Vec<GroupPart>,
    /// The joints between groups.
    pub slips: Vec<Slip>,
    /// Mass per area, kg/m2.
    pub mass_per_area: f64,
}

/// How layers are gathered into bonded groups.
#[derive(Debug, Clone)]
pub(crate) struct Groups {
    /// Group of each layer.
    pub of_layer: Vec<usize>,
    /// Reference height of each group: where the layers' stiffness is centred.
    pub height: Vec<f64>,
}

impl Groups {
    /// Gathers layers joined by bonded joints.
    pub(crate) fn new(layers: &[Layer], joints: &[Joint]) -> Self {
        let mut root: Vec<usize> = (0..layers.len()).collect();
        for joint in joints.iter().filter(|j| j.kind == JointKind::Bonded) {
            let (keep, drop) =
                (root[joint.lower].min(root[joint.upper]), root[joint.lower].max(root[joint.upper]));
            for r in &mut root {
                if *r == drop {
                    *r = keep;
                }
            }
        }
        let mut names: Vec<usize> = Vec::new();
        let of_layer: Vec<usize> = root
            .iter()
            .map(|r| {
                names.iter().position(|n| n == r).unwrap_or_else(|| {
                    names.push(*r);
                    names.len() - 1
                })
            })
            .collect();
        let height = (0..names.len())
            .map(|group| {
                let members =
                    || layers.iter().zip(&of_layer).filter(move |(_, g)| **g == group).map(|(l, _)| l);
                if members().count() == 1 {
                    return members().map(Layer::middle).sum();
                }
                let weight = |l: &Layer| {
                    let q = l.material.stiffness();
                    (q[0][0] + q[1][1]) * l.thickness
                };
                members().map(|l| weight(l) * l.middle()).sum::<f64>() / members().map(weight).sum::<f64>()
            })
            .collect();
        Self { of_layer, height }
    }
}

impl Stack {
    /// The stack of the layers in `cover`; layers that share space are an error at `at`.
    pub(crate) fn new(
        cover: u64,
        layers: &[Layer],
        joints: &[Joint],
        groups: &Groups,
        at: Point,
    ) -> Result<Self, PanelError> {
        let mut present: Vec<usize> = (0..layers.len()).filter(|k| cover >> k & 1 == 1).collect();
        present.sort_by(|&i, &j| layers[i].lower_face.total_cmp(&layers[j].lower_face));
        for pair in present.windows(2) {
            let (low, high) = (&layers[pair[0]], &layers[pair[1]]);
            if high.lower_face < low.lower_face + low.thickness - 1e-6 * low.thickness.min(high.thickness) {
                return Err(PanelError::LayersOverlap { lower: pair[0], upper: pair[1], at });
            }
        }
        let mut parts: Vec<GroupPart> = Vec::new();
        for group in 0..groups.height.len() {
            let members: Vec<&Layer> =
                present.iter().filter(|&&k| groups.of_layer[k] == group).map(|&k| &layers[k]).collect();
            if !members.is_empty() {
                parts.push(group_part(group, &members, groups.height[group]));
            }
        }
        let slips = joints
            .iter()
            .filter(|j| cover >> j.lower & 1 == 1 && cover >> j.upper & 1 == 1)
            .filter_map(|j| match j.kind {
                JointKind::Slipping { shear_stiffness } if shear_stiffness > 0.0 => {
                    let (lower, upper) = (groups.of_layer[j.lower], groups.of_layer[j.upper]);
                    let arm = groups.height[upper] - groups.height[lower];
                    (lower != upper).then_some(Slip { lower, upper, arm, stiffness: shear_stiffness })
                }
                _ => None,
            })
            .collect();
        let mass_per_area = present.iter().map(|&k| layers[k].thickness * layers[k].material.density).sum();
        Ok(Self { cover, groups: parts, slips, mass_per_area })
    }
}

fn group_part(group: usize, layers: &[&Layer], reference: f64) -> GroupPart {
    let zero = [[0.0; 3]; 3];
    let mut part = GroupPart { group, a: zero, b: zero, d: zero };
    let mut height = 0.0;
    for layer in layers {
        let q = layer.material.stiffness();
        let (t, z) = (layer.thickness, layer.middle() - reference);
        height += t;
        for i in 0..3 {
            for j in 0..3 {
                part.a[i][j] += q[i][j] * t;
                part.b[i][j] += q[i][j] * t * z;
                part.d[i][j] += q[i][j] * (t * z * z + t * t * t / 12.0);
            }
        }
    }
    // A coupling that is nothing but rounding is none.
    let largest = |m: &Matrix3| m.iter().flatten().fold(0.0_f64, |a, v| a.max(v.abs()));
    if largest(&part.b) <= 1e-10 * largest(&part.a) * height {
        part.b = zero;
    }
    part
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::material::Material;

    /// NASA RP-1351 (Nettles): three plies +45 / 0 / 90 of 0.005 in, the 45 on the positive-z side; printed digits (lb, in).
    #[test]
    fn three_plies() {
        let ply = |angle: f64, lower_face: f64| Layer {
            region: None,
            lower_face,
            thickness: 0.005,
            material: Material {
                youngs_modulus_1: 20.01e6,
                youngs_modulus_2: 1.301e6,
                poissons_ratio_12: 0.3,
                shear_modulus: 1.001e6,
                axis_angle: angle.to_radians(),
                density: 0.0,
                expansion_1: 0.0,
                expansion_2: 0.0,
            },
        };
        let layers = [ply(90.0, -0.0075), ply(0.0, -0.0025), ply(45.0, 0.0025)];
        let refs: Vec<&Layer> = layers.iter().collect();
        let part = group_part(0, &refs, 0.0);
        // The printed values use a rounded nu21 of 0.02: agreement to 0.1 %, and 0.1 lb in the small members of B.
        for (found, printed) in [
            (part.a[0][0], 139_984.0),
            (part.a[0][1], 26_703.0),
            (part.a[0][2], 23_527.0),
            (part.a[2][2], 35_828.0),
            (part.d[0][0], 1.2749),
            (part.d[0][1], 0.6741),
            (part.d[1][1], 3.6276),
            (part.d[0][2], 0.6372),
            (part.d[2][2], 0.8452),
        ] {
            assert!((found / printed - 1.0_f64).abs() < 1.2e-3, "{found} {printed}");
        }
        for (found, printed) in
            [(part.b[0][0], 131.2), (part.b[1][1], -339.4), (part.b[0][2], 117.6), (part.b[1][2], 117.6)]
        {
            assert!((found - printed).abs() < 0.35_f64, "{found} {printed}");
        }
    }
}
