//! Layers that their screws press in their plane: the growth at which they bow, found once and kept.

use std::sync::{Mutex, PoisonError};

use coaming::prelude::*;
use coaming_panel::{
    Hold, Layer as Sheet, LayerGrowth, Line, LineSupport, Load, Panel, Path, Point, Settings, Solver,
    SupportMovement,
};

use super::lid::{elastic, flange, thickness};
use super::outline::outline;
use super::pane::{Rest, pane};
use super::refusal::refusal;
use crate::demand::NotChecked;
use crate::document::Layer;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// Growth for which a panel is solved: what buckles it is in proportion.
const UNIT: f64 = 1e-4;

/// Factor by which a load makes a panel buckle with its error as a share; none where nothing presses it.
type Factor = Result<Option<(f64, f64)>, NotChecked>;

/// What was found of panels that buckle.
#[derive(Debug, Default)]
pub(super) struct Bows(Mutex<Vec<Bow>>);

#[derive(Debug)]
struct Bow {
    panel: Panel,
    load: Load,
    factor: Factor,
    /// Whether it was asked for since what is unused was last let go.
    used: bool,
}

impl Bows {
    /// The lowest factor.
    pub(super) fn factor(&self, panel: &Panel, load: &Load, settings: Settings) -> Factor {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(known) = all.iter_mut().find(|bow| bow.load == *load && bow.panel == *panel) {
            known.used = true;
            return known.factor.clone();
        }
        let solved = Solver::new(panel, settings).and_then(|mut solver| solver.buckling(load, 1));
        let factor = solved
            .map(|found| found.modes.first().map(|mode| (mode.factor, mode.error)))
            .map_err(|error| refusal(&error));
        all.push(Bow { panel: panel.clone(), load: load.clone(), factor: factor.clone(), used: true });
        factor
    }

    /// Lets go of what nothing was asked of since this was last called.
    pub(super) fn forget_unused(&self) {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        all.retain(|bow| bow.used);
        for bow in all.iter_mut() {
            bow.used = false;
        }
    }
}

/// How screws hold a layer in its plane, once they touch it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Grip {
    /// Along the way to the origin alone: a pin that the hole has come to lie on.
    Outward,
    /// Both ways: a pin without play, or a clamp.
    BothWays,
}

/// The line across which a screw of this width holds a layer, upright to the way to the origin; none for a screw at the origin.
fn across((x, y): (f64, f64), width: f64) -> Option<Line> {
    let away = math::hypot(x, y);
    if away <= width {
        return None;
    }
    let (dx, dy) = (-0.5 * width * y / away, 0.5 * width * x / away);
    Some(Line::Path(Path::polyline(&[Point { x: x - dx, y: y - dy }, Point { x: x + dx, y: y + dy }])))
}

/// The growth strain past contact at which a pane bows that its screws hold, with its error as a share; none where nothing
/// presses it.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give; [`NotChecked::Refused`] with the solver's reason.
pub(crate) fn pane_bows(
    prepared: &Prepared<'_>,
    layer: &Layer,
    rest: Rest,
    (places, width): (&[(f64, f64)], f64),
    grip: Grip,
    youngs_modulus: Pressure,
) -> Result<Option<(f64, f64)>, NotChecked> {
    let mut panel = pane(prepared, layer, rest, youngs_modulus, &mut Worksheet::new())?;
    for line in places.iter().filter_map(|place| across(*place, width)) {
        panel.line_supports.push(LineSupport {
            deflection: Hold::Free,
            in_plane_along: grip == Grip::BothWays,
            in_plane_across: true,
            ..LineSupport::supported(line)
        });
    }
    let load = Load { growths: vec![LayerGrowth::even(0, UNIT)], ..Load::default() };
    let factor = prepared.solutions.buckles(&panel, &load).map_err(super::pane::of_pane)?;
    Ok(factor.map(|(factor, error)| (factor * UNIT, error)))
}

/// The strain by which its screws must move out, or in where `outward` is below zero, for the sheet to buckle between them, with its
/// error as a share; none where nothing presses it. The sheet is alone with its flanges, its cut-outs open. The screws hold it at the
/// height of a stiff frame; with `flat` they hold it flat under their heads, and its outer edge keeps its height: no gasket and no latch
/// does more.
///
/// # Errors
/// As [`pane_bows`].
pub(crate) fn sheet_bows(
    prepared: &Prepared<'_>,
    skin: &Layer,
    (places, width): (&[(f64, f64)], f64),
    outward: f64,
    flat: bool,
    sheet: &mut Worksheet,
) -> Result<Option<(f64, f64)>, NotChecked> {
    let thickness = thickness(skin, sheet)?;
    let material = elastic(prepared, skin, None, sheet)?;
    let mut panel = Panel::new(outline(&skin.outline, skin.at.as_ref()), Sheet::whole(thickness, material));
    panel.holes = skin.cut_outs.iter().flatten().map(|cut| outline(&cut.outline, cut.at.as_ref())).collect();
    for bend in skin.bends.iter().flatten() {
        panel.beams.push(flange(prepared, skin, bend, thickness, material, sheet)?);
    }
    if flat {
        panel.line_supports.push(LineSupport::supported(Line::Outline));
    }
    let slopes = if flat { Hold::Fixed } else { Hold::Free };
    let strain = if outward < 0.0 { -UNIT } else { UNIT };
    let mut load = Load::default();
    for (place, line) in places.iter().filter_map(|place| Some((place, across(*place, width)?))) {
        let movement = Point { x: strain * place.0, y: strain * place.1 };
        load.support_movements.push(SupportMovement { support: panel.line_supports.len(), movement });
        let held = LineSupport { slope_across: slopes, ..LineSupport::supported(line) };
        panel.line_supports.push(held.held_in_plane());
    }
    let factor = prepared.solutions.buckles(&panel, &load).map_err(of_sheet)?;
    Ok(factor.map(|(factor, error)| (factor * UNIT, error)))
}

/// The solver's refusal names what it was asked about.
fn of_sheet(why: NotChecked) -> NotChecked {
    match why {
        NotChecked::Refused(Error::Geometry { reason, .. }) => {
            NotChecked::Refused(Error::Geometry { place: "the sheet at its screws".to_owned(), reason })
        }
        other => other,
    }
}
