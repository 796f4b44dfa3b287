//! Linear buckling under what acts in the plane.

use super::ways::factors;
use super::{Solver, no_mesh, together};
use crate::error::{PanelError, checked};
use crate::model::load::Load;
use crate::progress::{Progress, Watch, Work, deaf};
use crate::result::buckling::{Buckling, BucklingMode, CriticalRise};
use crate::result::error_estimate::{SAFETY, share_left};
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
        let mut before: Option<Vec<(f64, f64)>> = None;
        for level in 0.. {
            let (here, prepared) = self.in_plane_level(level)?;
            watch.mesh(Work::Buckling, level, here.mesh.triangles.len())?;
            let found = factors(here, prepared, load, count, watch)?;
            // A factor errs as the energy of its shape does, and by what the forces in the plane err.
            let now: Vec<(f64, f64)> =
                found.ways.iter().map(|w| (w.factor, w.bent.share() + found.pressed.share())).collect();
            let errors: Vec<f64> = (now.iter().enumerate())
                .map(|(i, &(factor, square))| match before.as_ref().and_then(|b| b.get(i)) {
                    Some(&(old, was)) => {
                        SAFETY * ((factor - old) / factor).abs() * share_left(was, square, level == 1)
                    }
                    None => SAFETY * square,
                })
                .collect();
            let all = found.ways.iter().map(|w| &w.bent).chain([&found.pressed]);
            let squares = together(all.map(|e| (e.squares.as_slice(), e.energy)));
            // One mesh alone is never taken for good enough while a second may be had.
            let met = before.is_some() && errors.iter().all(|&e| e <= self.settings.tolerance);
            if met || !self.climb_in_plane(level, &squares)? {
                let mesh = &self.in_plane_level(level)?.0.mesh;
                let modes = found.ways.into_iter().zip(errors);
                return Ok(Buckling {
                    modes: modes
                        .map(|(way, error)| BucklingMode {
                            factor: way.factor,
                            error,
                            shape: scaled(&way.shape[..mesh.vertices.len()]),
                        })
                        .collect(),
                    vertices: mesh.vertices.clone(),
                    triangles: mesh.triangles.clone(),
                    met,
                });
            }
            before = Some(now);
        }
        Err(no_mesh())
    }

    /// The temperatures, in proportion to those of the load, at which the panel buckles; `None` where they press nothing together. See
    /// [`buckling`](Self::buckling) for what is assumed, and for holds with clearance. Edge forces, support movements and other growth
    /// of the load are left out.
    pub fn critical_rise(&mut self, load: &Load) -> Result<Option<CriticalRise>, PanelError> {
        self.critical_rise_with(load, &mut deaf)
    }

    /// As [`critical_rise`](Self::critical_rise), telling how far it has come; [`ControlFlow::Break`] stops it with
    /// [`PanelError::Cancelled`].
    pub fn critical_rise_with(
        &mut self,
        load: &Load,
        tell: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Option<CriticalRise>, PanelError> {
        load.check(self.prepared.panel.layers.len(), self.prepared.panel.latches.len())?;
        let warm = Load {
            edge_forces: Vec::new(),
            support_movements: Vec::new(),
            growths: Vec::new(),
            ..load.clone()
        };
        let found = self.buckling_with(&warm, 1, tell)?;
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
