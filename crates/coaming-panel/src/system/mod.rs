//! The equations: freedoms, assembly, sparse solution, equilibrium.

pub(crate) mod analysis;
pub(crate) mod assemble;
pub(crate) mod attach;
pub(crate) mod basis;
pub(crate) mod conjugate;
pub(crate) mod contact;
pub(crate) mod equilibrium;
pub(crate) mod free_motion;
pub(crate) mod freedoms;
pub(crate) mod hold;
pub(crate) mod in_plane;
pub(crate) mod internal;
pub(crate) mod lanczos;
pub(crate) mod large;
pub(crate) mod large_newton;
pub(crate) mod level;
pub(crate) mod loads;
pub(crate) mod membrane;
pub(crate) mod near;
pub(crate) mod newton;
pub(crate) mod prolong;
pub(crate) mod sparse;
pub(crate) mod straight;
pub(crate) mod substitute;
pub(crate) mod symmetric;
