//! Natural frequencies and shapes about an equilibrium.

use crate::error::PanelError;
use crate::geometry::point::Point;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::Watch;
use crate::system::assemble::assemble_mass;
use crate::system::contact::contact;
use crate::system::equilibrium::State;
use crate::system::level::Level;
use crate::system::sparse::{Factor, FreePart};
use crate::system::symmetric::Symmetric;
use faer::{Mat, Par, Side};
use std::f64::consts::TAU;
use std::sync::Arc;

/// The mesh that a mode's shape is given on.
#[derive(Debug, Clone, PartialEq)]
pub struct ModeMesh {
    /// Vertices.
    pub vertices: Vec<Point>,
    /// Triangles, three vertices each.
    pub triangles: Vec<[usize; 3]>,
}

/// One natural mode.
#[derive(Debug, Clone)]
pub struct Mode {
    /// Frequency, Hz.
    pub frequency: f64,
    /// Estimated error of the frequency, as a share.
    pub error: f64,
    /// Whether that meets the tolerance asked for.
    pub met: bool,
    /// Deflection of every vertex, scaled so that the modal mass is 1 kg.
    pub shape: Vec<f64>,
    /// The mesh of these vertices, the same for all modes of one call.
    pub mesh: Arc<ModeMesh>,
}

/// Below this many unknowns the whole eigenproblem is solved.
const DENSE: usize = 130;

/// The lowest `count` frequencies (rad/s squared) and vectors over all freedoms in x and y.
pub(crate) fn lowest(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    state: &State,
    count: usize,
    watch: &mut Watch<'_>,
) -> Result<Vec<(f64, Vec<f64>)>, PanelError> {
    let part = level.free_part(&state.latched)?;
    let mut stiffness = level.stiffness.clone();
    contact(level, prepared, load, &state.plane, Some(&mut stiffness));
    let mass = assemble_mass(
        &level.stiffness,
        &level.mesh,
        prepared,
        &level.stacks,
        &level.freedoms,
        &level.attachments,
    );
    if mass.values.iter().all(|&m| m == 0.0) {
        return Err(PanelError::Missing {
            name: "density".into(),
            reason: "a panel without mass has no frequencies".into(),
        });
    }
    let shift = shift(&part, &stiffness, &mass, level.freedoms.vertices);
    for (k, m) in stiffness.values.iter_mut().zip(&mass.values) {
        *k += shift * m;
    }
    let factor = part.factor(&stiffness).ok_or(PanelError::NotFinite { name: "a natural frequency" })?;
    let count = count.min(part.size());
    let pairs = solve(&part, &factor, &stiffness, &mass, count, watch)?;
    Ok(pairs
        .into_iter()
        .map(|(value, free)| {
            let mut vector = vec![0.0; level.freedoms.size()];
            for (&d, v) in part.freedoms.iter().zip(free) {
                vector[d] = v;
            }
            level.freedoms.to_plane(&mut vector);
            (1.0 / value - shift, vector)
        })
        .collect())
}

/// A shift that lets a free panel be factored: small beside the first elastic frequency, large beside rounding.
fn shift(part: &FreePart, stiffness: &Symmetric, mass: &Symmetric, vertices: usize) -> f64 {
    let (mut k, mut m) = (0.0_f64, 0.0_f64);
    for &d in part.freedoms.iter().filter(|&&d| d < vertices) {
        k += stiffness.diagonal(d);
        m += mass.diagonal(d);
    }
    // Stiffness over mass of one vertex is the highest frequency squared; it falls with the number of vertices squared.
    let n = part.freedoms.len() as f64 / 3.0;
    1e-2 * k / (m * n * n)
}

/// The inverse problem: mass over shifted stiffness, largest values first.
fn solve(
    part: &FreePart,
    factor: &Factor<'_>,
    stiffness: &Symmetric,
    mass: &Symmetric,
    count: usize,
    watch: &mut Watch<'_>,
) -> Result<Vec<(f64, Vec<f64>)>, PanelError> {
    let n = part.size();
    let operator = Operator { part, factor, mass };
    let mut found = if n <= DENSE {
        dense(part, stiffness, mass)?
    } else {
        subspace(&operator, stiffness, count, watch)?
    };
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    found.truncate(count);
    Ok(found)
}

struct Operator<'a> {
    part: &'a FreePart,
    factor: &'a Factor<'a>,
    mass: &'a Symmetric,
}

impl Operator<'_> {
    fn spread(&self, x: &[f64], matrix: &Symmetric) -> Vec<f64> {
        let mut full = vec![0.0; matrix.size()];
        for (&d, v) in self.part.freedoms.iter().zip(x) {
            full[d] = *v;
        }
        let y = matrix.times(&full);
        self.part.freedoms.iter().map(|&d| y[d]).collect()
    }
}

fn dense(
    part: &FreePart,
    stiffness: &Symmetric,
    mass: &Symmetric,
) -> Result<Vec<(f64, Vec<f64>)>, PanelError> {
    let n = part.size();
    let fill = |matrix: &Symmetric| {
        let mut out = Mat::<f64>::zeros(n, n);
        for (j, &d) in part.freedoms.iter().enumerate() {
            for p in matrix.starts[d]..matrix.starts[d + 1] {
                let i = part.free[matrix.rows[p]];
                if i != crate::system::sparse::HELD {
                    out[(i, j)] = matrix.values[p];
                    out[(j, i)] = matrix.values[p];
                }
            }
        }
        out
    };
    reduced(&fill(stiffness), &fill(mass))
}

/// All values and vectors of mass over stiffness, both dense.
fn reduced(stiffness: &Mat<f64>, mass: &Mat<f64>) -> Result<Vec<(f64, Vec<f64>)>, PanelError> {
    let fault = || PanelError::NotFinite { name: "a natural frequency" };
    let n = stiffness.nrows();
    let llt = stiffness.llt(Side::Lower).map_err(|_| fault())?;
    let l = llt.L();
    let mut c = mass.clone();
    faer::linalg::triangular_solve::solve_lower_triangular_in_place(l, c.as_mut(), Par::Seq);
    let mut c = c.transpose().to_owned();
    faer::linalg::triangular_solve::solve_lower_triangular_in_place(l, c.as_mut(), Par::Seq);
    let symmetric = Mat::from_fn(n, n, |i, j| 0.5 * (c[(i, j)] + c[(j, i)]));
    let eigen = symmetric.self_adjoint_eigen(Side::Lower).map_err(|_| fault())?;
    let mut vectors = eigen.U().to_owned();
    faer::linalg::triangular_solve::solve_upper_triangular_in_place(
        l.transpose(),
        vectors.as_mut(),
        Par::Seq,
    );
    Ok((0..n).map(|j| (eigen.S().column_vector()[j], (0..n).map(|i| vectors[(i, j)]).collect())).collect())
}

/// Subspace iteration: each pass applies mass and inverse stiffness, then solves the problem reduced to the subspace.
///
/// Source: Bathe, Finite Element Procedures (1996), section 11.6.
fn subspace(
    operator: &Operator<'_>,
    stiffness: &Symmetric,
    count: usize,
    watch: &mut Watch<'_>,
) -> Result<Vec<(f64, Vec<f64>)>, PanelError> {
    let n = operator.part.size();
    let width = (2 * count).max(count + 8).min(n);
    let mut basis: Vec<Vec<f64>> = (0..width).map(|k| start(n, k)).collect();
    let mut known = vec![0.0; count];
    let mut change_before = f64::INFINITY;
    for _pass in 0..200 {
        watch.step()?;
        let mut next = Vec::with_capacity(n * width);
        for x in &basis {
            next.extend(operator.spread(x, operator.mass));
        }
        operator.factor.solve(&mut next);
        let raw: Vec<&[f64]> = next.chunks(n).collect();
        let (mut kr, mut mr) = (Mat::<f64>::zeros(width, width), Mat::<f64>::zeros(width, width));
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(x, y)| x * y).sum::<f64>();
        // Each vector and the stiffness times it, for a strain energy of one half.
        let scaled: Vec<(Vec<f64>, Vec<f64>)> = raw
            .iter()
            .map(|x| {
                let kx = operator.spread(x, stiffness);
                let size = dot(x, &kx).sqrt();
                let scale = if size > 0.0 { 1.0 / size } else { 1.0 };
                let times = |v: &[f64]| v.iter().map(|v| scale * v).collect();
                (times(x), times(&kx))
            })
            .collect();
        for (j, (x, kx)) in scaled.iter().enumerate() {
            let mx = operator.spread(x, operator.mass);
            for (i, (y, _)) in scaled.iter().enumerate() {
                kr[(i, j)] = dot(y, kx);
                mr[(i, j)] = dot(y, &mx);
            }
        }
        let mut pairs = reduced(&kr, &mr)?;
        pairs.sort_by(|a, b| b.0.total_cmp(&a.0));
        basis = pairs
            .iter()
            .map(|(_, q)| {
                let mut x = vec![0.0; n];
                for ((s, _), weight) in scaled.iter().zip(q) {
                    for (xi, si) in x.iter_mut().zip(s) {
                        *xi += weight * si;
                    }
                }
                x
            })
            .collect();
        let values: Vec<f64> = pairs.iter().take(count).map(|p| p.0).collect();
        let change = values.iter().zip(&known).map(|(v, k)| ((v - k) / v).abs()).fold(0.0, f64::max);
        known = values;
        // Rounding sets a floor for a stiff panel on soft springs; a pass that no longer gains has reached it.
        let floor = change < 1e-6 && change > 0.5 * change_before;
        change_before = change;
        if change < 1e-10 || floor {
            return Ok(pairs.into_iter().zip(basis).map(|((value, _), x)| (value, x)).take(count).collect());
        }
    }
    Err(PanelError::NotConverged { steps: 200, residual: change_before })
}

/// A fixed start that favours no symmetry: a plain sequence of low discrepancy.
fn start(n: usize, k: usize) -> Vec<f64> {
    let step = [0.618_033_988_749_894_9, 0.754_877_666_246_692_7, 0.569_840_290_998_053_3][k % 3];
    let mut x = 0.137 * (k as f64 + 1.0);
    (0..n)
        .map(|_| {
            x += step + 0.013 * k as f64;
            x -= x.floor();
            x - 0.5
        })
        .collect()
}

/// Frequency in Hz of a squared circular frequency; rounding below zero is zero.
pub(crate) fn hertz(squared: f64) -> f64 {
    squared.max(0.0).sqrt() / TAU
}
