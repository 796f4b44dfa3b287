//! Lids that a load bends past half their thickness: solved with the stretching that the deflection brings.

use std::sync::Arc;

use coaming_panel::Load;

use super::found::Found;
use super::lids::made;
use super::setup::Setup;
use crate::demand::NotChecked;
use crate::prepared::Prepared;

/// A state of large deflection with the error of its largest stress, in pascals.
#[derive(Debug, Clone)]
pub(crate) struct Stretched {
    pub(crate) found: Arc<Found>,
    pub(crate) stress_error: f64,
}

/// The lid of a setup under a load, solved for large deflection. The lid is free in its plane: a sponge holds no edge
/// against drawing in, and neither does a latch.
///
/// # Errors
/// As [`under`](super::under).
pub(crate) fn stretched(prepared: &Prepared<'_>, setup: Setup, load: &Load) -> Result<Stretched, NotChecked> {
    prepared.solutions.stretched(made(prepared, setup, None)?.as_ref(), load)
}

/// The same on the first mesh alone: to compare places, not to judge by.
///
/// # Errors
/// As [`under`](super::under).
pub(crate) fn roughly_stretched(
    prepared: &Prepared<'_>,
    setup: Setup,
    load: &Load,
) -> Result<Arc<Found>, NotChecked> {
    prepared.solutions.roughly_stretched(made(prepared, setup, None)?.as_ref(), load)
}
