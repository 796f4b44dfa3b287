//! The solution of a panel, with units. Deflections and forces are positive outward, compression closing, stress in tension.
//!
//! Values over the mesh and along gaskets are plain SI numbers, with the unit in the name, ready to be plotted or summed.

use crate::document::Point;
use coaming::prelude::*;

/// A deflection or compression, and where.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LengthAt {
    /// The value.
    pub value: Length,
    /// Where.
    pub at: Point,
}

/// A stress, and where.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct StressAt {
    /// The value.
    #[shown_in("MPa")]
    pub value: Pressure,
    /// Where.
    pub at: Point,
}

/// A moment per length, and where.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MomentAt {
    /// The value, a moment over a length (N·m/m is N); positive stretches the outer face.
    pub value: Force,
    /// Where.
    pub at: Point,
}

/// A force in the plane per length, and where.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MembraneForceAt {
    /// The value, positive in tension.
    pub value: ForcePerLength,
    /// Where.
    pub at: Point,
}

/// How far the solution may be from that of an infinitely fine mesh; each is absent where no finer mesh was allowed to compare with.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MeshError {
    /// Error of the deflection anywhere, over the largest.
    pub deflection: Option<f64>,
    /// Error of any latch's force, over the largest.
    pub latch_force: Option<f64>,
    /// Error of the smallest and largest compression.
    pub compression: Option<Length>,
    /// Error of the largest moment, over it. Under a bare point and in a sharp inner corner the moment grows without bound: this then says how
    /// much a finer mesh would add.
    pub moment: Option<f64>,
    /// Error of the largest force in the plane, over it; 0 where none passes. What is said of the moment goes for it too.
    pub membrane_force: Option<f64>,
    /// Triangles of the finest mesh.
    pub triangles: u32,
    /// True where the deflection meets the tolerance.
    pub met: bool,
}

/// What is left when all forces and moments are added.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BalanceLeft {
    /// Sum of all forces over the sum of their sizes.
    pub force: f64,
    /// Sum of all moments over the sum of the forces' sizes times the size of the panel.
    pub moment: f64,
    /// Sum of all forces in the plane over the sum of their sizes (of their turning over the size of the panel, if that is larger).
    pub in_plane: f64,
}

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

/// Stress in one layer: the larger principal stress in size on each face, and its course over the layer's triangles.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LayerStresses {
    /// Name of the layer.
    pub layer: String,
    /// Largest in size on the inner face.
    pub inner: StressAt,
    /// Largest in size on the outer face.
    pub outer: StressAt,
    /// Triangles that the layer covers, by index.
    pub triangles: Vec<u32>,
    /// Larger principal stress on the inner face at the middle of each of them, Pa.
    pub inner_larger_pa: Vec<f64>,
    /// Smaller principal stress on the inner face, Pa.
    pub inner_smaller_pa: Vec<f64>,
    /// Larger principal stress on the outer face, Pa.
    pub outer_larger_pa: Vec<f64>,
    /// Smaller principal stress on the outer face, Pa.
    pub outer_smaller_pa: Vec<f64>,
}

/// The values over the mesh.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MeshField {
    /// Vertices: x, m.
    pub x_m: Vec<f64>,
    /// Vertices: y, m.
    pub y_m: Vec<f64>,
    /// Triangles: indices of three vertices each, one after another.
    pub triangles: Vec<u32>,
    /// Deflection at the vertices, m.
    pub deflection_m: Vec<f64>,
    /// Slope along x at the vertices.
    pub slope_x: Vec<f64>,
    /// Slope along y at the vertices.
    pub slope_y: Vec<f64>,
    /// Moment per length at the middle of the triangles, xx, N; positive stretches the outer face.
    pub moment_xx_n: Vec<f64>,
    /// Moment per length, yy, N.
    pub moment_yy_n: Vec<f64>,
    /// Moment per length, xy, N.
    pub moment_xy_n: Vec<f64>,
    /// Force in the plane per length at the middle of the triangles, of all layers, xx, N/m; positive in tension.
    pub membrane_xx_n_per_m: Vec<f64>,
    /// Force in the plane per length, yy, N/m.
    pub membrane_yy_n_per_m: Vec<f64>,
    /// Force in the plane per length, xy, N/m.
    pub membrane_xy_n_per_m: Vec<f64>,
}

/// One natural mode.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct NaturalMode {
    /// Its frequency.
    pub frequency: Frequency,
    /// Estimated error of the frequency, as a share; absent where no finer mesh was allowed to compare with.
    pub error: Option<f64>,
    /// True where that meets the tolerance.
    pub met: bool,
    /// Deflection at the modes' vertices for a modal mass of 1 kg, m.
    pub shape_m: Vec<f64>,
}

/// The lowest natural modes about an equilibrium, on a mesh of their own.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct NaturalModes {
    /// The modes, lowest first.
    pub modes: Vec<NaturalMode>,
    /// Vertices: x, m.
    pub x_m: Vec<f64>,
    /// Vertices: y, m.
    pub y_m: Vec<f64>,
    /// Triangles: indices of three vertices each, one after another.
    pub triangles: Vec<u32>,
}

/// What opening the latches takes.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct OpeningTravel {
    /// The largest travel from the closed place until a latch is free.
    pub travel: Length,
    /// That of each latch.
    pub travels: Vec<Length>,
}

/// One way to buckle.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BucklingMode {
    /// What acts in the plane times this makes the panel buckle.
    pub factor: f64,
    /// Estimated error of the factor, as a share; absent where no finer mesh was allowed to compare with.
    pub error: Option<f64>,
    /// Deflection at the vertices, scaled so that the largest in size is 1.
    pub shape: Vec<f64>,
}

/// The lowest ways to buckle, on a mesh of their own. Linear theory of the flat panel: one that bows under its load from the start has no
/// sudden buckling, and there the factor only tells where bowing becomes large. Real panels are never quite flat: keep a factor in hand.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Buckling {
    /// The ways to buckle, lowest factor first; empty where nothing presses the panel together.
    pub modes: Vec<BucklingMode>,
    /// True where every factor meets the tolerance.
    pub met: bool,
    /// Vertices: x, m.
    pub x_m: Vec<f64>,
    /// Vertices: y, m.
    pub y_m: Vec<f64>,
    /// Triangles: indices of three vertices each, one after another.
    pub triangles: Vec<u32>,
}

/// Temperature of one layer at which the panel buckles, above the one at which it is flat and free of stress.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CriticalTemperature {
    /// Name of the layer.
    pub layer: String,
    /// Rise at the middle of the layer.
    pub rise: TemperatureDifference,
    /// Outer face minus inner face.
    pub gradient: TemperatureDifference,
}

/// Temperatures at which the panel buckles, in proportion to those of the load case. They count from where the supports begin to hold in
/// the plane: a hole with clearance first uses that up.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct CriticalRise {
    /// The load case's temperatures times this make the panel buckle; absent where they press nothing together.
    pub factor: Option<f64>,
    /// Estimated error of the factor, as a share; absent where no finer mesh was allowed to compare with.
    pub error: Option<f64>,
    /// True where the factor meets the tolerance.
    pub met: bool,
    /// The temperatures times the factor; none where there is no factor.
    pub temperatures: Vec<CriticalTemperature>,
}

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
