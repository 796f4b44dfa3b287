//! The solution of a panel, with units. Deflections and forces are positive outward, compression closing, stress in tension.

mod held;
mod mesh;
mod modes;
mod place;

use coaming::prelude::*;

pub use held::{GasketState, LatchState, OpeningTravel, SupportReaction};
pub use mesh::{BalanceLeft, LayerStresses, MeshError, MeshField};
pub use modes::{Buckling, BucklingMode, CriticalRise, CriticalTemperature, NaturalMode, NaturalModes};
pub use place::{LengthAt, MembraneForceAt, MomentAt, StressAt};

/// The solution of one load case.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CaseSolution {
    /// Name of the load case.
    pub name: String,
    /// The deflection that is largest in size.
    pub largest_deflection: LengthAt,
    /// True where the stretching that the deflection itself brings was counted; linear theory otherwise.
    pub large_deflection: bool,
    /// The principal moment that is largest in size.
    pub largest_moment: MomentAt,
    /// The principal force in the plane per length that is largest in size; 0 where nothing strains the panel there.
    pub largest_membrane_force: MembraneForceAt,
    /// Estimated error of the mesh.
    pub error: MeshError,
    /// What is left of the balance.
    pub balance: BalanceLeft,
    /// Reactions of the supports along lines.
    pub line_reactions: Vec<SupportReaction>,
    /// Reactions of the supports at points.
    pub point_reactions: Vec<SupportReaction>,
    /// The latches.
    pub latches: Vec<LatchState>,
    /// The gaskets.
    pub gaskets: Vec<GasketState>,
    /// Push of each stop on the panel.
    pub stops: Vec<Force>,
    /// Stress of each layer that is somewhere.
    pub stresses: Vec<LayerStresses>,
    /// The natural modes, where wanted.
    pub modes: Option<NaturalModes>,
    /// The travel that opens it, where wanted.
    pub opening: Option<OpeningTravel>,
    /// The ways to buckle, where wanted.
    pub buckling: Option<Buckling>,
    /// The temperatures at which it buckles, where wanted.
    pub critical_rise: Option<CriticalRise>,
    /// The values over the mesh.
    pub field: MeshField,
}

/// The solution of a panel.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PanelSolution {
    /// What the panel is called.
    pub title: String,
    /// Version of the library.
    pub version: String,
    /// The load cases, in order.
    pub cases: Vec<CaseSolution>,
    /// What the numbers are not for.
    pub cautions: Vec<String>,
}
