//! The pane as it is held, at both limits: resting along the edge of its free span, and flat in its lap.

use std::sync::Arc;

use coaming::prelude::*;
use coaming_panel::{
    Gasket, Law, Layer as Sheet, Line, LineSupport, Load, Material, Outline, Panel, Path, Pressure,
};

use super::found::Found;
use super::large::Stretched;
use super::masses::density;
use super::outline::outline;
use crate::demand::{Need, NotChecked};
use crate::document::{self, Layer, Positions, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// How a pane is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Rest {
    /// At its softest under a load: on the edge of its free span, which pushes and does not pull; free to turn and to slide.
    OnItsFrame,
    /// At its softest where no load tells on which side it rests: between two edges along its free span, free to turn.
    BetweenEdges,
    /// The same without its lap, which stiffens it by more than its mass takes away: softest where it rings.
    SpanAlone,
    /// At its firmest: its lap flat, free in its plane.
    FlatAndFree,
    /// At its firmest: its lap flat, and held in its plane.
    FlatAndHeld,
}

impl Rest {
    /// What it is called in the long story.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::OnItsFrame => "resting on its frame",
            Self::BetweenEdges => "between two edges",
            Self::SpanAlone => "its free span alone, supported",
            Self::FlatAndFree => "flat in its lap",
            Self::FlatAndHeld => "flat in its lap, held in its plane",
        }
    }
}

/// Stiffness of the frame's edge in newtons per metre for each metre of it: it gives a ten thousandth of a millimetre under 1 N/mm. A
/// stiffer one takes more steps, and changes what is printed by less than the error that is printed with it.
const EDGE: f64 = 1e10;
/// Height of the edge: any, for it counts from where the pane lies.
const DATUM: f64 = 1e-3;

/// Lengths that differ by less are the same.
const SLACK: f64 = 1e-9;

/// The free span of a pane, in the cover's plane: a circle where the pane is one and the span is as wide as high, a
/// rectangle otherwise.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give, [`NotChecked::Refused`] for a span that is larger than
/// the pane.
pub(crate) fn free_span(layer: &Layer) -> Result<Outline, NotChecked> {
    let (width, height) = span_size(layer)?;
    let (whole_width, whole_height) = layer.outline.box_size();
    if width > whole_width + SLACK || height > whole_height + SLACK {
        return Err(NotChecked::Refused(Error::inconsistent(
            format!("layers.{0}.free_width, layers.{0}.free_height", layer.name),
            "the free span of a pane lies within its outline",
        )));
    }
    let (x, y) = centre(layer);
    Ok(match &layer.outline {
        document::Outline::Circle(_) if (width - height).abs() <= SLACK => Outline::circle(x, y, width / 2.0),
        _ => Outline::rectangle(x - width / 2.0, y - height / 2.0, width, height),
    })
}

/// Width and height of the free span of a pane, in metres.
///
/// # Errors
/// [`NotChecked::Needs`] with the path.
pub(crate) fn span_size(layer: &Layer) -> Result<(f64, f64), NotChecked> {
    let path = |side: &str| format!("layers.{}.free_{side}", layer.name);
    let width = layer.free_width.need(|| path("width"))?.value;
    Ok((width, layer.free_height.need(|| path("height"))?.value))
}

/// The middle of a pane in the cover's plane, in metres.
pub(crate) fn centre(layer: &Layer) -> (f64, f64) {
    layer.at.as_ref().map_or((0.0, 0.0), |at| (at.x.value, at.y.value))
}

/// Whether the free span is the pane itself: it has no lap.
fn without_lap(layer: &Layer) -> bool {
    let (width, height) = layer.outline.box_size();
    let whole =
        |free: Option<Length>, whole: f64| free.is_some_and(|free| (free.value - whole).abs() <= SLACK);
    whole(layer.free_width, width) && whole(layer.free_height, height)
}

/// An outline as a path that ends where it starts.
fn round(outline: &Outline) -> Path {
    let path = outline.0.clone();
    let start = path.start;
    let closed = path.segments.last().is_some_and(|segment| {
        let (coaming_panel::geometry::path::Segment::Line { end }
        | coaming_panel::geometry::path::Segment::Arc { end, .. }) = *segment;
        end == start
    });
    if closed { path } else { path.line_to(start.x, start.y) }
}

/// A pane of this stiffness as it is held, with its mass where that is known.
///
/// # Errors
/// As [`free_span`].
pub(crate) fn pane(
    prepared: &Prepared<'_>,
    layer: &Layer,
    rest: Rest,
    youngs_modulus: coaming::prelude::Pressure,
    sheet: &mut Worksheet,
) -> Result<Panel, NotChecked> {
    let thickness =
        sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?.value;
    let material = prepared.material_of(layer)?;
    let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
    let mass = density(prepared, layer, &mut Worksheet::new()).unwrap_or(0.0);
    let made = Material::isotropic(youngs_modulus.value, poissons_ratio, mass, 0.0);
    let span = free_span(layer)?;
    let alone = rest == Rest::SpanAlone || without_lap(layer);
    let whole =
        if rest == Rest::SpanAlone { span.clone() } else { outline(&layer.outline, layer.at.as_ref()) };
    let mut panel = Panel::new(whole, Sheet::whole(thickness, made));
    panel.holes = layer.cut_outs.iter().flatten().map(|cut| outline(&cut.outline, cut.at.as_ref())).collect();
    if rest == Rest::OnItsFrame {
        panel.holes.extend(screw_holes(prepared, layer)?);
    }
    let edge = if alone { Line::Outline } else { Line::Path(round(&span)) };
    match rest {
        Rest::OnItsFrame => panel.gaskets.push(Gasket {
            line: edge,
            law: Law::Linear { stiffness: EDGE },
            free_height: DATUM,
            closed_gap: DATUM,
            gap_error: Vec::new(),
        }),
        Rest::BetweenEdges | Rest::SpanAlone => panel.line_supports.push(LineSupport::supported(edge)),
        Rest::FlatAndFree => panel.line_supports.push(LineSupport::clamped(edge)),
        Rest::FlatAndHeld => panel.line_supports.push(LineSupport::clamped(edge).held_in_plane()),
    }
    if !alone && matches!(rest, Rest::FlatAndFree | Rest::FlatAndHeld) {
        panel.line_supports.push(LineSupport::clamped(Line::Outline));
    }
    Ok(panel)
}

/// The holes within the free span of a pane for its screws. Those that its edge meets, and those of the lap beyond it, are left out:
/// what lies past the edge on which a pane rests bends little.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
fn screw_holes(prepared: &Prepared<'_>, layer: &Layer) -> Result<Vec<Outline>, NotChecked> {
    let ((width, height), (x, y)) = (span_size(layer)?, centre(layer));
    let mut holes = Vec::new();
    for pattern in prepared.cover.screws.iter().flatten() {
        for passed in pattern.passes.iter().flatten().filter(|passed| passed.layer == layer.name) {
            let path = format!("screws.{}", pattern.name);
            let radius = passed.hole.need(|| format!("{path}.passes.{}.hole", layer.name))?.value / 2.0;
            for (px, py) in places(pattern)? {
                // From the edge of the free span, negative within it.
                let away = ((px - x).abs() - width / 2.0).max((py - y).abs() - height / 2.0);
                if away < -1.1 * radius {
                    holes.push(Outline::circle(px, py, radius));
                }
            }
        }
    }
    Ok(holes)
}

/// Where the screws of a pattern stand, in metres.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(crate) fn places(pattern: &ScrewPattern) -> Result<Vec<(f64, f64)>, NotChecked> {
    let path = format!("screws.{}", pattern.name);
    let positions =
        pattern.positions.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.positions")))?;
    let count = match positions {
        Positions::Points(_) => 0,
        Positions::Rectangle(_) => pattern.count.need(|| format!("{path}.count"))?,
    };
    positions.points(count).ok_or_else(|| {
        NotChecked::not_calculated(format!("{count} screws on the rectangle of {path}.positions"))
    })
}

/// A pressure on the free span of a pane, positive outward.
///
/// # Errors
/// As [`free_span`].
pub(crate) fn pressed(layer: &Layer, pressure: f64) -> Result<Load, NotChecked> {
    let region = if without_lap(layer) { None } else { Some(free_span(layer)?) };
    Ok(Load { pressures: vec![Pressure { region, ..Pressure::uniform(pressure) }], ..Load::default() })
}

/// A panel that is a pane, under a load.
///
/// # Errors
/// [`NotChecked::Refused`] with the solver's reason.
pub(crate) fn pane_under(
    prepared: &Prepared<'_>,
    panel: &Panel,
    load: &Load,
) -> Result<Arc<Found>, NotChecked> {
    prepared.solutions.with(panel, |shape| shape.found(load)).map_err(of_pane)
}

/// The same on the first mesh alone: to compare places, and to see what refinement makes of a stress.
///
/// # Errors
/// As [`pane_under`].
pub(crate) fn pane_on_first_mesh(
    prepared: &Prepared<'_>,
    panel: &Panel,
    load: &Load,
) -> Result<Arc<Found>, NotChecked> {
    prepared.solutions.with(panel, |shape| shape.found_on_first_mesh(load)).map_err(of_pane)
}

/// A pane under a load, solved for large deflection.
///
/// # Errors
/// As [`pane_under`].
pub(crate) fn pane_stretched(
    prepared: &Prepared<'_>,
    panel: &Panel,
    load: &Load,
) -> Result<Stretched, NotChecked> {
    prepared.solutions.stretched(panel, load).map_err(of_pane)
}

/// The same on the first mesh alone.
///
/// # Errors
/// As [`pane_under`].
pub(crate) fn pane_roughly_stretched(
    prepared: &Prepared<'_>,
    panel: &Panel,
    load: &Load,
) -> Result<Arc<Found>, NotChecked> {
    prepared.solutions.roughly_stretched(panel, load).map_err(of_pane)
}

/// Frequency of the lowest mode of a pane in hertz, and its error as a share.
///
/// # Errors
/// As [`pane_under`].
pub(crate) fn pane_mode(prepared: &Prepared<'_>, panel: &Panel) -> Result<(f64, f64), NotChecked> {
    prepared.solutions.with(panel, |shape| shape.first_mode(&Load::default())).map_err(of_pane)
}

/// The solver's refusal names what it was asked about.
pub(super) fn of_pane(why: NotChecked) -> NotChecked {
    match why {
        NotChecked::Refused(Error::Geometry { reason, .. }) => {
            NotChecked::Refused(Error::Geometry { place: "the pane as it is held".to_owned(), reason })
        }
        NotChecked::Refused(Error::NotConverged { residual, .. }) => {
            NotChecked::Refused(Error::NotConverged {
                what: "the equilibrium of the pane".to_owned(),
                residual,
            })
        }
        other => other,
    }
}
