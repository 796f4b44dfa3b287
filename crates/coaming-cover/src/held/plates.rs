//! Solid plates by large deflection, for the long story beside the solver: as slow as a panel on its mesh, and kept like one.

use std::sync::{Mutex, PoisonError};

use coaming::plate::{RectangularPlateLargeDeflection, RectangularPlateLargeDeflectionOutcome};
use coaming::prelude::*;

/// What the closed form gave.
type Calculated = Result<(RectangularPlateLargeDeflectionOutcome, Caveats), Error>;

/// A plate that was calculated.
#[derive(Debug)]
struct Known {
    plate: RectangularPlateLargeDeflection,
    /// Whether it was asked for since the last clearing out.
    used: bool,
    calculated: Calculated,
}

/// The plates that were calculated.
#[derive(Debug, Default)]
pub(super) struct Plates(Mutex<Vec<Known>>);

impl Plates {
    /// A plate, calculated now or before.
    pub(super) fn calculated(&self, plate: &RectangularPlateLargeDeflection) -> Calculated {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(known) = all.iter_mut().find(|known| known.plate == *plate) {
            known.used = true;
            return known.calculated.clone();
        }
        let calculated = plate.calculate();
        all.push(Known { plate: plate.clone(), used: true, calculated: calculated.clone() });
        calculated
    }

    /// Lets go of what was not asked for since this was last called.
    pub(super) fn forget_unused(&self) {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        all.retain(|known| known.used);
        all.iter_mut().for_each(|known| known.used = false);
    }
}
