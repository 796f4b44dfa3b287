//! Numerical solver for one flat, layered, stiffened panel of any outline, lying on a gasket and held by supports, latches and stops.
//!
//! Plain SI numbers: metres, newtons, pascals, kilograms, radians, kelvins. z points outward; deflection and forces are positive along z;
//! gasket compression is positive closing; stress is positive in tension.
//!
//! Thin-plate bending by discrete-Kirchhoff triangles (Batoz, Bathe and Ho 1980), displacements in the plane by quadratic triangles, coupled
//! through A, B and D of every bonded group of layers; groups slip on each other against a shear stiffness per area.
//!
//! [`Solver::solve`] is linear theory of small deflections: past about half the thickness a panel held at its edges is stiffer than that.
//! [`Solver::solve_large`] counts the stretching that the deflection brings; [`Solver::buckling`] and [`Solver::critical_rise`] tell what in
//! the plane makes the flat panel buckle.
//!
//! A thin plate does not shear, nor soften where a free edge twists. Shells as thick as the sheet deflect 0.2 to 0.8 % more for 2.5 mm with a
//! cut-out that leaves strips of 140 to 170 mm (`tests/reference/washers.csv`); the difference grows with thickness over width.
//!
//! The results are screenings with the inputs given, not a certificate: where failure could injure, local law and codes
//! hold, and a competent engineer decides. A panel is no shield against bursting parts, and not for people to stand on.

#![forbid(unsafe_code)]
#![deny(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
// Loops over rows and columns read like the formulas.
#![allow(clippy::needless_range_loop)]

mod element;
pub mod error;
pub mod geometry;
mod ladder;
mod math;
mod mesh;
pub mod model;
pub mod progress;
mod refining;
pub mod result;
pub mod solver;
mod system;

pub use error::{FreeMotion, PanelError};
pub use geometry::outline::Outline;
pub use geometry::path::Path;
pub use geometry::point::Point;
pub use model::beam::Beam;
pub use model::gasket::Gasket;
pub use model::growth::LayerGrowth;
pub use model::in_plane::{EdgeForce, SupportMovement};
pub use model::latch::{Latch, LatchAction, PointMass, Stop};
pub use model::law::Law;
pub use model::line::Line;
pub use model::load::{EdgeMoment, LayerTemperature, LineForce, Load, PointForce, Pressure};
pub use model::material::Material;
pub use model::panel::{Joint, JointKind, Layer, Panel, Region};
pub use model::spread_mass::SpreadMass;
pub use model::support::{Hold, LineSupport, PointSupport};
pub use progress::{Progress, Work};
pub use result::answer::Answer;
pub use result::buckling::{Buckling, BucklingMode, CriticalRise};
pub use result::modes::{Mode, ModeMesh};
pub use solver::{Opening, Settings, Solver};
pub use system::factor_time::factor_time;
