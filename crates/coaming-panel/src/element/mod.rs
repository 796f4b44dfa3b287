//! The triangle: bending, membrane, slip between layers, and the interpolation that carries loads and mass.

pub(crate) mod hermite;
pub(crate) mod membrane;
pub(crate) mod quadrature;
pub(crate) mod shape;
pub(crate) mod shaped;
pub(crate) mod stiffness;
pub(crate) mod triangle;
