//! What a solved panel, its supports, its latches and its gaskets do to each other. Forces are positive outward, compression closing.
//!
//! Values along gaskets are plain SI numbers, with the unit in the name, ready to be plotted or summed.

use super::place::LengthAt;
use coaming::prelude::*;

/// Force and moment of one support on the panel.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SupportReaction {
    /// The force.
    pub force: Force,
    /// What force and moments do on a unit slope along x, about the origin.
    pub moment_along_x: Torque,
    /// What force and moments do on a unit slope along y, about the origin.
    pub moment_along_y: Torque,
    /// Force in the plane along x; zero where nothing strains the panel there.
    pub in_plane_x: Force,
    /// Force in the plane along y.
    pub in_plane_y: Force,
}

/// One latch.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LatchState {
    /// Its name.
    pub name: String,
    /// Its pull, positive inward; zero where it is slack or missing.
    pub pull: Force,
    /// Deflection of the panel there.
    pub deflection: Length,
}

/// One gasket.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GasketState {
    /// Smallest compression; negative is an open gap.
    pub smallest: LengthAt,
    /// Largest compression.
    pub largest: LengthAt,
    /// Its force on the panel.
    pub force: Force,
    /// Length of it without contact.
    pub open_length: Length,
    /// True where the compression goes past the last measured point of the law.
    pub beyond_law: bool,
    /// Samples in order: distance along the gasket, m.
    pub along_m: Vec<f64>,
    /// Samples: x, m.
    pub x_m: Vec<f64>,
    /// Samples: y, m.
    pub y_m: Vec<f64>,
    /// Samples: compression, m; negative is an open gap.
    pub compression_m: Vec<f64>,
    /// Samples: force per length, N/m.
    pub force_n_per_m: Vec<f64>,
}

/// What opening the latches takes.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct OpeningTravel {
    /// The largest travel from the closed place until a latch is free.
    pub travel: Length,
    /// That of each latch.
    pub travels: Vec<Length>,
}
