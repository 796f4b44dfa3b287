//! The ways to buckle on one mesh.

use crate::error::{FreeMotion, PanelError};
use crate::model::growth::free_strains;
use crate::model::load::Load;
use crate::model::prepare::Prepared;
use crate::progress::Watch;
use crate::result::in_plane::check_pins;
use crate::result::indicator::{Indicator, indicator};
use crate::system::contact::contact;
use crate::system::equilibrium::{Start, State, solve};
use crate::system::lanczos::{Pencil, largest};
use crate::system::lanes::Compact;
use crate::system::level::Level;
use crate::system::loads::{apply, held_back};
use crate::system::membrane::stress_stiffness_of;
use crate::system::sparse::HELD;

/// What a field errs by.
pub(super) struct Erring {
    /// Squared indicators.
    pub squares: Vec<f64>,
    /// The energy that they are to be compared with.
    pub energy: f64,
}

impl Erring {
    /// What all triangles err by together, over the energy.
    pub(super) fn share(&self) -> f64 {
        if self.energy > 0.0 { self.squares.iter().sum::<f64>() / self.energy } else { 0.0 }
    }
}

impl From<Indicator> for Erring {
    fn from(of: Indicator) -> Self {
        Self { squares: of.squares, energy: of.energy }
    }
}

/// One way to buckle on one mesh.
pub(super) struct Way {
    pub factor: f64,
    /// Over all freedoms, in x and y.
    pub shape: Vec<f64>,
    pub bent: Erring,
}

/// The lowest ways to buckle on one mesh.
pub(super) struct Ways {
    pub ways: Vec<Way>,
    /// Of the forces in the plane.
    pub pressed: Erring,
}

/// The lowest positive factors on one mesh.
pub(super) fn factors(
    level: &mut Level,
    prepared: &Prepared,
    load: &Load,
    count: usize,
    watch: &mut Watch<'_>,
) -> Result<Ways, PanelError> {
    let panel = &prepared.panel;
    let closed = if panel.gaskets.is_empty() && panel.latches.is_empty() && panel.stops.is_empty() {
        None
    } else {
        Some(solve(level, prepared, load, Start::Flat, watch)?.0)
    };
    let size = level.freedoms.size();
    let flat = vec![0.0; size];
    let latched = closed.as_ref().map_or_else(Vec::new, |s| s.latched.clone());
    let part = level.free_part(&latched)?;
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
    check_pins(level, prepared, &state, applied.in_plane)?;
    let mut relief = stress_stiffness_of(level, prepared, &free_strains(&pulls, &panel.layers), &state.plane);
    for value in &mut relief.values {
        *value = -*value;
    }
    let relief = part.ordered(&relief).without_held();
    let pencil = Compact::new(&relief);
    let pairs = largest(&factor, &Pencil::Indefinite(&pencil), relief.size(), count, watch)?;
    let pressed = indicator(level, prepared, &pulls, &state.plane);
    let pressed =
        Erring { energy: pressed.energy + held_back_energy(level, prepared, &pulls), ..pressed.into() };
    let mut ways = Vec::with_capacity(pairs.len());
    for (value, ordered) in pairs {
        let mut shape = vec![0.0; size];
        for (&d, v) in part.freedoms.iter().zip(part.scatter(&ordered)) {
            shape[d] = v;
        }
        level.freedoms.to_plane(&mut shape);
        let bent = indicator(level, prepared, &pulls, &shape).into();
        ways.push(Way { factor: 1.0 / value, shape, bent });
    }
    Ok(Ways { ways, pressed })
}

/// Twice the energy of growth that is held back everywhere: forces in the plane are to be compared with it where nothing moves.
fn held_back_energy(level: &Level, prepared: &Prepared, load: &Load) -> f64 {
    let mut sum = 0.0;
    for given in free_strains(load, &prepared.panel.layers) {
        let (force, _) = held_back(prepared, &given);
        let work: f64 = force.iter().zip(given.middle).map(|(f, s)| f * s).sum();
        let covered =
            (0..level.mesh.triangles.len()).filter(|&t| level.mesh.cover[t] >> given.layer & 1 == 1);
        sum += work * covered.map(|t| level.mesh.area(t)).sum::<f64>();
    }
    sum
}
