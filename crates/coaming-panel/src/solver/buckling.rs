//! Linear buckling under what acts in the plane.

use super::Solver;
use super::in_plane::error_left;
use crate::error::{FreeMotion, PanelError, checked};
use crate::model::growth::free_strains;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::{Progress, Watch, Work, deaf};
use crate::result::buckling::{Buckling, BucklingMode, CriticalRise};
use crate::result::in_plane::check_pins;
use crate::system::contact::contact;
use crate::system::equilibrium::{State, solve};
use crate::system::lanczos;
use crate::system::level::Level;
use crate::system::loads::apply;
use crate::system::membrane::stress_stiffness_of;
use crate::system::sparse::HELD;
use std::ops::ControlFlow;

impl Solver {
    /// The lowest factors by which what acts in the plane (edge forces, support movements, temperatures,
    /// growth) must be multiplied for the panel to
    /// buckle, on a mesh that meets the tolerance for the factors.
    ///
    /// Linear theory: the membrane forces of the flat panel grow in proportion, and stay what they are until it buckles. Gasket, latches and
    /// stops act with their stiffness about the equilibrium under the whole load, and do not let go or take hold on the way; the rest of
    /// the load has no other effect. Beams carry their share of the forces along their lines; they keep their section's shape and do not
    /// trip. A plate that bows under its load from the start (a gradient of temperature, layers unequal about the middle, an
    /// eccentric pull) has no sudden buckling: there the factor only tells where bowing becomes large.
    ///
    /// An in-plane hold that acts only after some free growth (a screw in a larger hole) uses up its clearance first: the critical
    /// temperature rise is the rise that uses up the clearance plus the one found here, which counts from contact on.
    pub fn buckling(&mut self, load: &Load, count: usize) -> Result<Buckling, PanelError> {
        self.buckling_with(load, count, &mut deaf)
    }

    /// As [`buckling`](Self::buckling), telling how far it has come; [`ControlFlow::Break`] stops it with [`PanelError::Cancelled`].
    pub fn buckling_with(
        &mut self,
        load: &Load,
        count: usize,
        tell: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Buckling, PanelError> {
        let watch = &mut Watch::new(tell);
        load.check(self.prepared.panel.layers.len(), self.prepared.panel.latches.len())?;
        checked("count of factors", count as f64, "between 1 and 20", |n| (1.0..=20.0).contains(&n))?;
        let (mut before, mut change_before): (Option<Vec<f64>>, Option<Vec<f64>>) = (None, None);
        let mut level = 0;
        loop {
            self.reach_in_plane(level)?;
            let (here, prepared) = self.in_plane_level(level)?;
            watch.mesh(Work::Buckling, level, here.mesh.triangles.len())?;
            let pairs = factors(here, prepared, load, count, watch)?;
            let values: Vec<f64> = pairs.iter().map(|p| p.0).collect();
            let share = |known: &Vec<f64>| -> Vec<f64> {
                (0..values.len())
                    .map(|i| known.get(i).map_or(f64::INFINITY, |k| ((values[i] - k) / values[i]).abs()))
                    .collect()
            };
            let changes = before.as_ref().map(share);
            let errors: Vec<f64> = (0..values.len())
                .map(|i| {
                    let last = changes.as_ref().map_or(f64::INFINITY, |c| c[i]);
                    let earlier = change_before.as_ref().and_then(|c| c.get(i)).copied();
                    error_left(last, earlier.filter(|e| e.is_finite())).0
                })
                .collect();
            let met = before.is_some() && errors.iter().all(|&e| e <= self.settings.tolerance);
            if met || !self.reach_in_plane(level + 1)? {
                let mesh = &self.in_plane[level].mesh;
                let modes = pairs.into_iter().zip(errors);
                return Ok(Buckling {
                    modes: modes
                        .map(|((factor, shape), error)| BucklingMode {
                            factor,
                            error,
                            shape: scaled(&shape[..mesh.vertices.len()]),
                        })
                        .collect(),
                    vertices: mesh.vertices.clone(),
                    triangles: mesh.triangles.clone(),
                    met,
                });
            }
            (before, change_before) = (Some(values), changes);
            level += 1;
        }
    }

    /// The temperatures, in proportion to those of the load, at which the panel buckles; `None` where they press nothing together. See
    /// [`buckling`](Self::buckling) for what is assumed, and for holds with clearance. Edge forces, support movements and other growth
    /// of the load are left out.
    pub fn critical_rise(&mut self, load: &Load) -> Result<Option<CriticalRise>, PanelError> {
        let warm = Load {
            edge_forces: Vec::new(),
            support_movements: Vec::new(),
            growths: Vec::new(),
            ..load.clone()
        };
        let found = self.buckling(&warm, 1)?;
        let met = found.met;
        Ok(found.modes.into_iter().next().map(|mode| {
            let mut temperatures = load.temperatures.clone();
            for t in &mut temperatures {
                t.rise *= mode.factor;
                t.difference *= mode.factor;
            }
            CriticalRise { factor: mode.factor, error: mode.error, temperatures, met }
        }))
    }
}

/// Scaled so that the largest in size is 1.
fn scaled(shape: &[f64]) -> Vec<f64> {
    let top = shape.iter().fold(0.0_f64, |a, &v| if v.abs() > a.abs() { v } else { a });
    shape.iter().map(|v| if top == 0.0 { 0.0 } else { v / top }).collect()
}

/// The lowest positive factors on one mesh, with vectors over all freedoms in x and y.
fn factors(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    count: usize,
    watch: &mut Watch<'_>,
) -> Result<Vec<(f64, Vec<f64>)>, PanelError> {
    let panel = &prepared.panel;
    let closed = if panel.gaskets.is_empty() && panel.latches.is_empty() && panel.stops.is_empty() {
        None
    } else {
        Some(solve(level, prepared, load, None, watch)?.0)
    };
    let size = level.freedoms.size();
    let flat = vec![0.0; size];
    let latched = closed.as_ref().map_or_else(Vec::new, |s| s.latched.clone());
    let part = level.free_part(&latched)?;
    let level: &Level = level;
    let mut stiffness = level.stiffness.clone();
    contact(level, prepared, load, closed.as_ref().map_or(&flat, |s| &s.plane), Some(&mut stiffness));
    let factor = part
        .factor(&stiffness)
        .ok_or(PanelError::Mechanism { motion: FreeMotion::Local { at: level.mesh.vertices[0] } })?;
    // The linear answer to what acts in the plane alone.
    let pulls = Load {
        edge_forces: load.edge_forces.clone(),
        support_movements: load.support_movements.clone(),
        temperatures: load.temperatures.clone(),
        growths: load.growths.clone(),
        missing_latches: (0..panel.latches.len()).collect(),
        ..Load::default()
    };
    let applied = apply(level, prepared, &pulls)?;
    let mut forces = applied.vector;
    level.freedoms.to_axes(&mut forces);
    let mut values = flat;
    for &(d, movement) in &applied.moved {
        values[d] = movement;
    }
    let carried = stiffness.times(&values);
    let mut rhs: Vec<f64> = part.freedoms.iter().map(|&d| forces[d] - carried[d]).collect();
    factor.solve(&mut rhs);
    for (&d, v) in part.freedoms.iter().zip(&rhs) {
        values[d] = *v;
    }
    let resisted = stiffness.times(&values);
    let mut reactions: Vec<f64> = (0..size)
        .map(|d| if part.free[d] == HELD && level.freedoms.used[d] { resisted[d] - forces[d] } else { 0.0 })
        .collect();
    level.freedoms.to_plane(&mut reactions);
    let mut plane = values.clone();
    level.freedoms.to_plane(&mut plane);
    let state = State { values, plane, reactions, latched, steps: 1 };
    check_pins(level, &state, applied.in_plane)?;
    let mut relief = stress_stiffness_of(level, prepared, &free_strains(&pulls, &panel.layers), &state.plane);
    for value in &mut relief.values {
        *value = -*value;
    }
    let pairs = lanczos::largest(&part, &factor, &stiffness, &relief, count)?;
    Ok(pairs
        .into_iter()
        .map(|(value, free)| {
            let mut vector = vec![0.0; size];
            for (&d, v) in part.freedoms.iter().zip(free) {
                vector[d] = v;
            }
            level.freedoms.to_plane(&mut vector);
            (1.0 / value, vector)
        })
        .collect())
}
