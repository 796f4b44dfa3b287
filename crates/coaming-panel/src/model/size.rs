//! How much one panel may hold: some checks of shapes take time that grows with its square.
//!
//! On a workshop computer, in a test build, 256 round holes (9216 pieces) take less than half a second before anything is solved.

use super::line::Line;
use super::load::Load;
use super::panel::Panel;
use crate::error::PanelError;
use crate::geometry::outline::Outline;
use crate::geometry::path::{Path, Segment};

/// Most straight pieces of all boundaries, regions and lines together; an arc counts as a half circle's.
const MOST_PIECES: usize = 10_000;
/// Most points at which something is attached.
const MOST_POINTS: usize = 10_000;
/// Most pressures, forces, moments and temperatures of one load.
const MOST_LOADS: usize = 1000;
/// Straight pieces of 10 degrees that stand for a half circle.
const PIECES_OF_AN_ARC: usize = 18;

fn pieces(path: &Path) -> usize {
    let of = |segment: &Segment| match segment {
        Segment::Line { .. } => 1,
        Segment::Arc { .. } => PIECES_OF_AN_ARC,
    };
    path.segments.iter().map(of).sum()
}

fn all(outlines: &[Outline]) -> usize {
    outlines.iter().map(|outline| pieces(&outline.0)).sum()
}

fn within(name: &str, found: usize, accepted: usize) -> Result<(), PanelError> {
    if found > accepted {
        return Err(PanelError::TooLarge { name: name.into(), found, accepted });
    }
    Ok(())
}

fn along(line: &Line, panel: &Panel) -> usize {
    match line {
        Line::Outline => pieces(&panel.outline.0),
        Line::OutlineEdge(_) | Line::HoleEdge { .. } => PIECES_OF_AN_ARC,
        Line::Hole(hole) => panel.holes.get(*hole).map_or(0, |hole| pieces(&hole.0)),
        Line::Path(path) => pieces(path),
    }
}

/// Refuses a panel with more shapes and points than can be checked in reasonable time.
pub(crate) fn check_panel(panel: &Panel) -> Result<(), PanelError> {
    let regions = panel.layers.iter().filter_map(|layer| layer.region.as_ref());
    let lines = (panel.line_supports.iter().map(|support| &support.line))
        .chain(panel.beams.iter().map(|beam| &beam.line))
        .chain(panel.gaskets.iter().map(|gasket| &gasket.line));
    let washers = panel.point_supports.iter().filter(|support| support.washer_radius > 0.0).count();
    let found = pieces(&panel.outline.0)
        + all(&panel.holes)
        + regions
            .chain(panel.spread_masses.iter().map(|mass| &mass.region))
            .map(|region| pieces(&region.outline.0) + all(&region.holes))
            .sum::<usize>()
        + lines.map(|line| along(line, panel)).sum::<usize>()
        + 2 * PIECES_OF_AN_ARC * washers;
    within("pieces of all outlines and lines", found, MOST_PIECES)?;
    within("points at which something is attached", panel.marked_points().len(), MOST_POINTS)
}

/// Refuses a load of more parts than can be applied in reasonable time.
pub(crate) fn check_load(load: &Load) -> Result<(), PanelError> {
    let found = load.pressures.len()
        + load.point_forces.len()
        + load.line_forces.len()
        + load.edge_moments.len()
        + load.temperatures.len()
        + load.growths.len()
        + load.edge_forces.len()
        + load.support_movements.len();
    within("parts of a load", found, MOST_LOADS)?;
    let regions = load.pressures.iter().filter_map(|pressure| pressure.region.as_ref());
    within("pieces of a load's regions", regions.map(|region| pieces(&region.0)).sum(), MOST_PIECES)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::point::Point;
    use crate::model::load::Pressure;
    use crate::model::material::Material;
    use crate::model::panel::Layer;

    #[test]
    fn too_much_is_refused_at_once() {
        let material = Material::isotropic(70e9, 0.33, 2700.0, 0.0);
        let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 1.0, 1.0), Layer::whole(0.002, material));
        assert_eq!(check_panel(&panel), Ok(()));
        panel.holes = (0..300).map(|i| Outline::circle(f64::from(i) * 3.0, 0.0, 1.0)).collect();
        assert!(matches!(check_panel(&panel), Err(PanelError::TooLarge { found: 10_803, .. })));
        panel.holes.clear();
        panel.marks = vec![Point::default(); 10_001];
        assert!(matches!(check_panel(&panel), Err(PanelError::TooLarge { found: 10_001, .. })));
        let load = Load { pressures: vec![Pressure::uniform(1.0); 1001], ..Load::default() };
        assert!(matches!(check_load(&load), Err(PanelError::TooLarge { found: 1001, .. })));
    }
}
