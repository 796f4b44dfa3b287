//! Each panel under each load, solved once in a review and kept; panels of one shape on the same meshes.

use std::sync::{Arc, Mutex, PoisonError};

use coaming::plate::{RectangularPlateLargeDeflection, RectangularPlateLargeDeflectionOutcome};
use coaming::prelude::*;
use coaming_panel::{Load, Panel, Settings};

use super::bowed::Bows;
use super::found::{Found, Left};
use super::kept::Kept;
use super::large::Stretched;
use super::lids::made;
use super::plates::Plates;
use super::setup::Setup;
use crate::demand::NotChecked;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// A compression is wanted to a hundredth of a millimetre, not to half a per cent of a bow that may be less than that: the
/// rows are widened by the error that is left, and print it.
const SCREENING: Settings =
    Settings { tolerance: 0.05, absolute_tolerance: 1e-5, first_triangles: 120, most_triangles: 20_000 };
/// Most triangles for large deflection, whose every step takes several times as long.
const STRETCHED: usize = 5_000;
/// The first mesh alone.
const COARSE: Settings =
    Settings { tolerance: 0.5, absolute_tolerance: 0.0, first_triangles: 120, most_triangles: 64 };

/// Triangles of the first mesh of a panel without latches: a pane, whose stress at a held edge is compared from place to place.
const OF_A_PANE: usize = 400;

/// The settings for a panel.
fn for_panel(panel: &Panel, settings: Settings) -> Settings {
    match panel.latches.is_empty() {
        true => Settings { first_triangles: OF_A_PANE, ..settings },
        false => settings,
    }
}

/// What was solved so far: a shape is meshed once for all its panels and loads.
#[derive(Debug, Default)]
pub(crate) struct Solutions {
    shapes: Mutex<Vec<Arc<Shape>>>,
    bows: Arc<Bows>,
    plates: Plates,
    /// One mesh for everything, its error taken as a tenth: where only the paths of what is missing matter.
    coarse: bool,
}

/// A panel, and what is kept of all that have its shape. Shapes are solved side by side where several threads ask.
#[derive(Debug)]
struct Shape {
    of: Panel,
    kept: Mutex<Kept>,
}

impl Solutions {
    /// Does something with the meshes of a panel's shape.
    pub(super) fn with<T>(&self, panel: &Panel, act: impl FnOnce(&mut Kept) -> T) -> T {
        let shape = self.shape(panel);
        let mut kept = shape.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.turn_to(panel);
        act(&mut kept)
    }

    fn shape(&self, panel: &Panel) -> Arc<Shape> {
        let mut shapes = self.shapes.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(known) = shapes.iter().find(|shape| shape.of.other_shape(panel).is_none()) {
            return Arc::clone(known);
        }
        let settings = if self.coarse { COARSE } else { for_panel(panel, SCREENING) };
        let kept = Mutex::new(Kept::new(settings, self.coarse));
        let made = Arc::new(Shape { of: panel.clone(), kept });
        shapes.push(Arc::clone(&made));
        made
    }

    /// Lets go of what nothing was asked of since this was last called.
    pub(crate) fn forget_unused(&self) {
        let mut shapes = self.shapes.lock().unwrap_or_else(PoisonError::into_inner);
        shapes.retain(|shape| shape.kept.lock().unwrap_or_else(PoisonError::into_inner).forget_unused());
        self.bows.forget_unused();
        self.plates.forget_unused();
    }

    /// How many shapes are kept, and how many panels.
    #[cfg(test)]
    pub(crate) fn counts(&self) -> (usize, usize) {
        let shapes = self.shapes.lock().unwrap();
        (shapes.len(), shapes.iter().map(|shape| shape.kept.lock().unwrap().panels()).sum())
    }

    /// How many answers are kept.
    #[cfg(test)]
    pub(crate) fn solved(&self) -> usize {
        let shapes = self.shapes.lock().unwrap();
        shapes.iter().map(|shape| shape.kept.lock().unwrap().answers()).sum()
    }

    /// Solutions on one mesh each, for tests that compare no numbers.
    #[cfg(test)]
    pub(crate) fn coarse() -> Self {
        Self { coarse: true, ..Self::default() }
    }

    /// The same for another document, with what buckles known from this one.
    #[cfg(test)]
    pub(crate) fn coarse_beside(&self) -> Self {
        Self { bows: Arc::clone(&self.bows), ..Self::coarse() }
    }

    /// A solid plate by large deflection, in closed form.
    ///
    /// # Errors
    /// Those of the calculation.
    pub(crate) fn plate(
        &self,
        plate: &RectangularPlateLargeDeflection,
    ) -> Result<(RectangularPlateLargeDeflectionOutcome, Caveats), Error> {
        self.plates.calculated(plate)
    }

    /// The factor by which a load makes a panel buckle, with its error as a share; none where nothing presses it.
    ///
    /// # Errors
    /// [`NotChecked::Refused`] with the solver's reason.
    pub(super) fn buckles(&self, panel: &Panel, load: &Load) -> Result<Option<(f64, f64)>, NotChecked> {
        let found = self.bows.factor(
            panel,
            load,
            if self.coarse {
                COARSE
            } else {
                for_panel(panel, Settings { most_triangles: STRETCHED, ..SCREENING })
            },
        )?;
        Ok(found.map(|(factor, error)| (factor, if self.coarse { 0.1 } else { error })))
    }

    /// A panel under a load, solved for large deflection on the first mesh alone.
    ///
    /// # Errors
    /// [`NotChecked::Refused`] with the solver's reason.
    pub(super) fn roughly_stretched(&self, panel: &Panel, load: &Load) -> Result<Arc<Found>, NotChecked> {
        self.with(panel, |shape| shape.found_large_on_first_mesh(load))
    }

    /// A panel under a load, solved for large deflection.
    ///
    /// Its error is what a second mesh changed. Where the first is so fine that no second is made, it is what refinement
    /// made of the linear answer from the same first mesh, with what was left then.
    ///
    /// # Errors
    /// [`NotChecked::Refused`] with the solver's reason.
    pub(super) fn stretched(&self, panel: &Panel, load: &Load) -> Result<Stretched, NotChecked> {
        let first = self.roughly_stretched(panel, load)?;
        if self.coarse {
            let stress_error = 0.1 * first.stress.value;
            return Ok(Stretched { found: Arc::new(first.as_ref().clone().about()), stress_error });
        }
        let found = self.with(panel, |shape| shape.found_large(load, STRETCHED))?;
        if found.left.deflection_share.is_finite() {
            let stress_error = (found.stress.value - first.stress.value).abs();
            return Ok(Stretched { found, stress_error });
        }
        let rough = self.with(panel, |shape| shape.found_on_first_mesh(load))?;
        let fine = self.with(panel, |shape| shape.found(load))?;
        let change = |rough: f64, fine: f64| if fine == 0.0 { 0.0 } else { (rough / fine - 1.0).abs() };
        let of_deflection = change(rough.deflection.value, fine.deflection.value);
        let deflection_share = of_deflection + fine.left.deflection_share;
        let stress_error = change(rough.stress.value, fine.stress.value) * found.stress.value;
        let left = Left { deflection_share, ..fine.left };
        Ok(Stretched { found: Arc::new(Found { left, ..found.as_ref().clone() }), stress_error })
    }
}

/// The lid of a setup under a load; its inputs are noted where there is a worksheet.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give; [`NotChecked::Refused`] with the solver's reason.
pub(crate) fn under(
    prepared: &Prepared<'_>,
    setup: Setup,
    load: &Load,
    sheet: Option<&mut Worksheet>,
) -> Result<Arc<Found>, NotChecked> {
    prepared.solutions.with(made(prepared, setup, sheet)?.as_ref(), |shape| shape.found(load))
}

/// Solves the lid of a setup for several loads together, as far as it can be made and solved.
pub(crate) fn find_all(prepared: &Prepared<'_>, setup: Setup, loads: &[Load]) {
    if let Ok(panel) = made(prepared, setup, None) {
        prepared.solutions.with(&panel, |shape| shape.find_all(loads));
    }
}

/// The lid of a setup under a load on the first mesh alone, its error taken as a tenth: to compare loads with each other.
///
/// # Errors
/// As [`under`].
pub(crate) fn on_first_mesh(
    prepared: &Prepared<'_>,
    setup: Setup,
    load: &Load,
) -> Result<Arc<Found>, NotChecked> {
    let panel = made(prepared, setup, None)?;
    prepared.solutions.with(&panel, |shape| shape.found_on_first_mesh(load))
}

/// Largest stress in the sheet under a load on the first mesh alone, in pascals: what refinement made of it tells its error.
///
/// # Errors
/// As [`under`].
pub(crate) fn stress_on_first_mesh(
    prepared: &Prepared<'_>,
    setup: Setup,
    load: &Load,
) -> Result<f64, NotChecked> {
    on_first_mesh(prepared, setup, load).map(|found| found.stress.value)
}

/// Frequency of the lowest mode of the closed lid in hertz, and its error as a share.
///
/// # Errors
/// As [`under`].
pub(crate) fn first_mode(
    prepared: &Prepared<'_>,
    setup: Setup,
    sheet: Option<&mut Worksheet>,
) -> Result<(f64, f64), NotChecked> {
    let panel = made(prepared, setup.weighed(), sheet)?;
    prepared.solutions.with(&panel, |shape| shape.first_mode(&Load::default()))
}

/// How far the latches rise from where they are closed until every one of them is free and the gasket hardly pushes, under a
/// load, in metres, and its error.
///
/// # Errors
/// As [`under`].
pub(crate) fn rebound(
    prepared: &Prepared<'_>,
    setup: Setup,
    load: &Load,
    sheet: Option<&mut Worksheet>,
) -> Result<(f64, f64), NotChecked> {
    let panel = made(prepared, setup, sheet)?;
    let travel = prepared.solutions.with(&panel, |shape| shape.opening(load))?;
    let closed = under(prepared, setup, load, None)?;
    Ok((travel, closed.deflection_error()))
}
