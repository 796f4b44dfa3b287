//! Names what moves freely once contact is lost.

use super::basis::Basis;
use super::hold::held_motions;
use super::level::Level;
use crate::error::{FreeMotion, PanelError};
use crate::model::latch::LatchAction;
use crate::model::load::Load;
use crate::model::prepare::Prepared;

/// Names the motion that is free where the gasket no longer touches.
pub(crate) fn lost_contact(level: &Level, prepared: &Prepared, load: &Load, plane: &[f64]) -> PanelError {
    let mesh = &level.mesh;
    let center = mesh.vertices[0];
    let mut basis = Basis::default();
    held_motions(&mut basis, &level.freedoms, mesh, &level.attachments, center);
    let mut at = |v: usize| {
        let p = (mesh.vertices[v] - center) * (1.0 / mesh.size);
        basis.add([1.0, p.x, p.y]);
    };
    for edge in &level.attachments.gaskets {
        for (v, along) in [(edge.ends[0], edge.from), (edge.ends[1], edge.to)] {
            if prepared.panel.gaskets[edge.gasket].compression(along, plane[v]) > 0.0 {
                at(v);
            }
        }
    }
    for (i, (latch, &v)) in prepared.panel.latches.iter().zip(&level.attachments.latches).enumerate() {
        let pulls = match latch.action {
            LatchAction::Spring { draw, .. } => plane[v] + draw > 0.0,
            LatchAction::Height(_) => true,
            LatchAction::Force(_) => false,
        };
        if pulls && !load.missing_latches.contains(&i) {
            at(v);
        }
    }
    for (stop, &v) in prepared.panel.stops.iter().zip(&level.attachments.stops) {
        if stop.height > plane[v] {
            at(v);
        }
    }
    let motion = basis.free_motion(center, mesh.size).unwrap_or(FreeMotion::Local { at: center });
    PanelError::ContactLost { motion }
}
