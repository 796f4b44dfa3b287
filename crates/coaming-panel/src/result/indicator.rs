//! How much each triangle errs: the energy of the difference between the recovered field and its own.
//!
//! Source: Zienkiewicz and Zhu, Int. J. Num. Meth. Eng. 24 (1987) 337-357.

use super::answer::Extreme;
use super::recover::{Strained, Strains, raw};
use crate::model::growth::free_strains;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::model::stack::Matrix3;
use crate::system::level::Level;
use crate::system::loads::held_back;

/// Values above this share of the largest are watched together with it.
pub(crate) const NEARLY_LARGEST: f64 = 0.9;

/// Squared indicators in energy, and the strain energy twice.
#[derive(Debug, Clone)]
pub(crate) struct Indicator {
    /// Of each triangle.
    pub squares: Vec<f64>,
    /// Their sum.
    pub total: f64,
    /// Twice the strain energy of the triangles.
    pub energy: f64,
    /// The larger principal moment per length in size at every vertex, from the recovered field.
    pub moments: Vec<f64>,
    /// The largest of them.
    pub largest_moment: Extreme,
    /// How far apart the two ways of recovery are there.
    pub moment_doubt: f64,
    /// The larger principal force in the plane per length in size at every vertex.
    pub forces: Vec<f64>,
    /// The largest of them.
    pub largest_membrane_force: Extreme,
    /// How far the triangles' own are from it there, and where it is nearly as large.
    pub force_doubt: f64,
}

/// The indicators of a state of linear theory.
pub(crate) fn indicator(level: &mut Level, prepared: &Prepared, load: &Load, plane: &[f64]) -> Indicator {
    indicate(level, prepared, load, plane, false)
}

/// The indicators of a state; with the stretch that slopes bring, where they do.
pub(crate) fn indicate(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    plane: &[f64],
    slopes_stretch: bool,
) -> Indicator {
    let patches = level.patches();
    let own = raw(level, plane, slopes_stretch);
    let better = patches.sober(&own);
    let count = level.mesh.triangles.len();
    let (mut squares, mut total, mut energy) = (Vec::with_capacity(count), 0.0, 0.0);
    for t in 0..count {
        let square = energy_of(level, t, |s, t| difference(s, &own, &better, t));
        energy += energy_of(level, t, |s, t| s.map_or(own.curvature[t], |m| own.membrane[m].1[t]));
        total += square;
        squares.push(square);
    }
    let sober = sections(level, prepared, load, &better);
    let best = sections(level, prepared, load, &patches.smooth(level, plane, &better));
    let (largest_moment, at) = largest(level, &best.moments);
    let moment_doubt = at.map_or(0.0, |v| (best.moments[v].abs() - sober.moments[v].abs()).abs());
    let largest_membrane_force = largest(level, &best.forces).0;
    let force_doubt = if largest_membrane_force.value == 0.0 {
        0.0
    } else {
        let plain = sections(level, prepared, load, &own);
        let pairs = best.forces.iter().zip(&plain.forces).map(|(a, b)| (a.abs(), b.abs()));
        (pairs.filter(|(a, _)| *a > NEARLY_LARGEST * largest_membrane_force.value.abs()))
            .fold(0.0, |doubt, (a, b)| (a - b).abs().max(doubt))
    };
    let Sections { moments, forces } = best;
    Indicator {
        squares,
        total,
        energy,
        moments,
        largest_moment,
        moment_doubt,
        forces,
        largest_membrane_force,
        force_doubt,
    }
}

/// The value that is largest in size, and its vertex.
fn largest(level: &Level, values: &[f64]) -> (Extreme, Option<usize>) {
    let mut found = (Extreme { value: 0.0, at: level.mesh.vertices[0] }, None);
    for (v, &value) in values.iter().enumerate() {
        if value.abs() > found.0.value.abs() {
            found = (Extreme { value, at: level.mesh.vertices[v] }, Some(v));
        }
    }
    found
}

/// What passes through the sections at every vertex: the larger principal moment and force in the plane in size, per length.
struct Sections {
    moments: Vec<f64>,
    forces: Vec<f64>,
}

fn sections(level: &Level, prepared: &Prepared, load: &Load, better: &Strained) -> Sections {
    let warm: Vec<(usize, [f64; 3], [f64; 3])> = (free_strains(load, &prepared.panel.layers).iter())
        .map(|g| {
            let (force, moment) = held_back(prepared, g);
            (g.layer, force, moment)
        })
        .collect();
    let count = level.mesh.vertices.len();
    let mut found = Sections { moments: vec![0.0; count], forces: vec![0.0; count] };
    for (t, corners) in level.mesh.triangles.iter().enumerate() {
        for (k, &v) in corners.iter().enumerate() {
            let (mut moment, mut force) = ([0.0; 3], [0.0; 3]);
            for part in &level.stacks.of(t).groups {
                let stretches = level.freedoms.membrane.iter().position(|&g| g == part.group);
                let stretch = stretches.map_or([0.0; 3], |m| better.membrane[m].1[t][k]);
                let bend = better.curvature[t][k];
                for i in 0..3 {
                    for j in 0..3 {
                        moment[i] += part.b[i][j] * stretch[j] + part.d[i][j] * bend[j];
                        // A group that nothing strains in its plane passes no force there.
                        if stretches.is_some() {
                            force[i] += part.a[i][j] * stretch[j] + part.b[i][j] * bend[j];
                        }
                    }
                }
            }
            for (layer, lost, turned) in warm.iter().filter(|(l, ..)| level.mesh.cover[t] >> l & 1 == 1) {
                let stretches = level.freedoms.membrane.contains(&prepared.groups.of_layer[*layer]);
                for i in 0..3 {
                    moment[i] -= turned[i];
                    if stretches {
                        force[i] -= lost[i];
                    }
                }
            }
            for (values, tensor) in [(&mut found.moments, moment), (&mut found.forces, force)] {
                let value = larger(tensor);
                if value.abs() > values[v].abs() {
                    values[v] = value;
                }
            }
        }
    }
    found
}

/// The principal value that is larger in size.
fn larger([xx, yy, xy]: Strains) -> f64 {
    let (mean, half) = (0.5 * (xx + yy), 0.5 * (xx - yy));
    let radius = (half * half + xy * xy).sqrt();
    if mean < 0.0 { mean - radius } else { mean + radius }
}

/// Recovered less own strains at the corners: of bending, or of one entry of the membrane list.
fn difference(which: Option<usize>, own: &Strained, better: &Strained, t: usize) -> [Strains; 3] {
    let (a, b) = match which {
        None => (own.curvature[t], better.curvature[t]),
        Some(m) => (own.membrane[m].1[t], better.membrane[m].1[t]),
    };
    [0, 1, 2].map(|k| [0, 1, 2].map(|i| b[k][i] - a[k][i]))
}

/// Twice the strain energy of linear strains given at the corners of a triangle.
fn energy_of(level: &Level, t: usize, strains: impl Fn(Option<usize>, usize) -> [Strains; 3]) -> f64 {
    let bend = strains(None, t);
    let area = level.mesh.area(t);
    let mut sum = 0.0;
    for part in &level.stacks.of(t).groups {
        sum += over_triangle(&part.d, &bend, &bend);
        let place = level.freedoms.membrane.iter().position(|&g| g == part.group);
        if let Some(m) = place {
            let stretch = strains(Some(m), t);
            sum += over_triangle(&part.a, &stretch, &stretch) + 2.0 * over_triangle(&part.b, &stretch, &bend);
        }
    }
    sum * area
}

/// Mean over a triangle of u · matrix · v, both linear between the corners.
fn over_triangle(matrix: &Matrix3, u: &[Strains; 3], v: &[Strains; 3]) -> f64 {
    let product = |x: &Strains, y: &Strains| -> f64 {
        (0..3).map(|i| x[i] * (matrix[i][0] * y[0] + matrix[i][1] * y[1] + matrix[i][2] * y[2])).sum()
    };
    let add = |w: &[Strains; 3]| [0, 1, 2].map(|i| w[0][i] + w[1][i] + w[2][i]);
    let corners: f64 = (0..3).map(|k| product(&u[k], &v[k])).sum();
    (corners + product(&add(u), &add(v))) / 12.0
}

/// The triangles that together hold `share` of all squared indicators, the largest first.
///
/// Source: Dörfler, SIAM J. Num. Anal. 33 (1996) 1106-1124.
pub(crate) fn worst(squares: &[f64], share: f64) -> Vec<bool> {
    let mut order: Vec<usize> = (0..squares.len()).collect();
    order.sort_by(|&a, &b| squares[b].total_cmp(&squares[a]).then(a.cmp(&b)));
    let aim = share * squares.iter().sum::<f64>();
    let mut marked = vec![false; squares.len()];
    let mut sum = 0.0;
    for t in order {
        if sum >= aim {
            break;
        }
        sum += squares[t];
        marked[t] = true;
    }
    marked
}
