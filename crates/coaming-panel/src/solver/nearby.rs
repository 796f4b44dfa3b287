//! What small further loads add to an equilibrium, to first order: many loads for one factorisation.

use super::{Solver, no_mesh};
use crate::error::{FreeMotion, PanelError};
use crate::model::growth::free_strains;
use crate::model::load::Load;
use crate::progress::{Watch, deaf};
use crate::result::field::Field;
use crate::system::contact::contact;
use crate::system::equilibrium::{State, solve};
use crate::system::loads::apply;

impl Solver {
    /// The field under a load together with each of some further loads, on the first mesh and to first order: gasket and stops act by
    /// their stiffness at the equilibrium under the first load alone, and the latches that hold there hold on.
    ///
    /// One factorisation serves all further loads, so that the one that does most can be looked for among many; its own answer then comes
    /// from [`solve`](Self::solve). Exact where nothing can let go. Latches that a further load calls missing are as the first load has them.
    ///
    /// # Errors
    /// As [`solve`](Self::solve). [`PanelError::Missing`] for a load in the plane, which has meshes of its own.
    pub fn solve_nearby(&mut self, load: &Load, further: &[Load]) -> Result<Vec<Field>, PanelError> {
        let (layers, latches) = (self.prepared.panel.layers.len(), self.prepared.panel.latches.len());
        for one in std::iter::once(load).chain(further) {
            one.check(layers, latches)?;
            if one.acts_in_plane() {
                return Err(PanelError::Missing {
                    name: "first mesh".into(),
                    reason: "a load in the plane has meshes of its own".into(),
                });
            }
        }
        let prepared = &self.prepared;
        let level = self.ladder.levels.first_mut().ok_or_else(no_mesh)?;
        let at_rest = match level.state(load) {
            Some(known) => known,
            None => solve(level, prepared, load, None, &mut Watch::new(&mut deaf))?.0,
        };
        let part = level.free_part(&at_rest.latched)?;
        let mut tangent = level.stiffness.clone();
        contact(level, prepared, load, &at_rest.plane, Some(&mut tangent));
        let loose = PanelError::Mechanism { motion: FreeMotion::Local { at: level.mesh.vertices[0] } };
        let factor = part.factor(&tangent).ok_or(loose)?;
        // What a latch pulls by itself acts once, with the first load.
        let pulled = apply(level, prepared, &Load::default())?.vector;
        let mut columns = Vec::with_capacity(further.len() * part.size());
        for one in further {
            let alone = Load { missing_latches: Vec::new(), ..one.clone() };
            let mut forces = apply(level, prepared, &alone)?.vector;
            for (force, own) in forces.iter_mut().zip(&pulled) {
                *force -= own;
            }
            level.freedoms.to_axes(&mut forces);
            columns.extend(part.freedoms.iter().map(|&d| forces[d]));
        }
        factor.solve(&mut columns);
        if !columns.iter().all(|value| value.is_finite()) {
            return Err(PanelError::NotFinite { name: "the deflection" });
        }
        let mut fields = Vec::with_capacity(further.len());
        for (nth, one) in further.iter().enumerate() {
            let column = &columns[nth * part.size()..(nth + 1) * part.size()];
            let mut values = at_rest.values.clone();
            for (&d, step) in part.freedoms.iter().zip(column) {
                values[d] += step;
            }
            let mut plane = values.clone();
            level.freedoms.to_plane(&mut plane);
            let state = State { values, plane, ..at_rest.clone() };
            let mut growth = free_strains(load, &prepared.panel.layers);
            growth.extend(free_strains(one, &prepared.panel.layers));
            fields.push(Field::new(level, &state, &prepared.panel.layers, &prepared.groups, growth));
        }
        Ok(fields)
    }
}
