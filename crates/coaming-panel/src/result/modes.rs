//! Natural frequencies and shapes about an equilibrium.

use crate::error::PanelError;
use crate::geometry::point::Point;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::Watch;
use crate::system::assemble::assemble_mass;
use crate::system::contact::contact;
use crate::system::equilibrium::State;
use crate::system::lanczos::{Pencil, largest};
use crate::system::lanes::Compact;
use crate::system::level::Level;
use crate::system::sparse::FreePart;
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
    let pairs = solve(&part, &stiffness, &mass, count.min(part.size()), watch)?;
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
    stiffness: &Symmetric,
    mass: &Symmetric,
    count: usize,
    watch: &mut Watch<'_>,
) -> Result<Vec<(f64, Vec<f64>)>, PanelError> {
    if part.size() <= DENSE {
        let mut found = dense(part, stiffness, mass)?;
        found.sort_by(|a, b| b.0.total_cmp(&a.0));
        found.truncate(count);
        return Ok(found);
    }
    let factor = part.factor(stiffness).ok_or(PanelError::NotFinite { name: "a natural frequency" })?;
    let mass = part.ordered(mass).without_held();
    let found = largest(&factor, &Pencil::Mass(&Compact::new(&mass)), mass.size(), count, watch)?;
    Ok(found.into_iter().map(|(value, x)| (value, part.scatter(&x))).collect())
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
    // Vectors of a strain energy of one half come out; of a modal mass of 1 they shall be.
    let pair = |j: usize| {
        let value = eigen.S().column_vector()[j];
        let scale = if value > 0.0 { 1.0 / value.sqrt() } else { 1.0 };
        (value, (0..n).map(|i| scale * vectors[(i, j)]).collect())
    };
    Ok((0..n).map(pair).collect())
}

/// Frequency in Hz of a squared circular frequency; rounding below zero is zero.
pub(crate) fn hertz(squared: f64) -> f64 {
    squared.max(0.0).sqrt() / TAU
}
