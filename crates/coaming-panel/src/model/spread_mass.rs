//! A mass spread over a region that loads the panel and does not stiffen it.

use super::panel::Region;
use crate::error::{PanelError, not_negative};
use crate::geometry::check::{Bounds, Loop};
use crate::geometry::point::Point;
use crate::geometry::polygon::{area, clip};

/// A mass spread evenly over a region, moving with the panel: insulation, or a part that is hung on so loosely that it only weighs.
///
/// The mesh does not follow the region. Each triangle carries what of the mass lies over it, spread evenly over the whole of it, so that the
/// total stays and the place is known to the size of a triangle; arcs count as chords of 10 degrees. What lies over a hole or beside the
/// panel is left out.
#[derive(Debug, Clone, PartialEq)]
pub struct SpreadMass {
    /// Where it lies.
    pub region: Region,
    /// Mass per area, kg/m2.
    pub mass_per_area: f64,
}

/// A checked spread mass.
#[derive(Debug, Clone)]
pub(crate) struct Spread {
    outline: Vec<Point>,
    holes: Vec<Vec<Point>>,
    bounds: Bounds,
    mass_per_area: f64,
}

impl Spread {
    /// Checks a spread mass, called by this name in a fault.
    pub(crate) fn new(name: &str, given: &SpreadMass) -> Result<Self, PanelError> {
        let mass_per_area = not_negative(format!("{name}: mass_per_area"), given.mass_per_area)?;
        let outline = Loop::new(name, &given.region.outline)?;
        let mut holes: Vec<Loop> = Vec::new();
        for (i, hole) in given.region.holes.iter().enumerate() {
            let hole = Loop::new(&format!("{name} hole {i}"), hole)?;
            outline.check_hole(&hole)?;
            holes.iter().try_for_each(|other| other.check_separate(&hole))?;
            holes.push(hole);
        }
        let holes = holes.into_iter().map(|hole| hole.polygon).collect();
        Ok(Self { bounds: Bounds::of(&outline.polygon), outline: outline.polygon, holes, mass_per_area })
    }

    /// Mass per area of a triangle whose corners run to the left.
    pub(crate) fn over(&self, corners: &[Point; 3]) -> f64 {
        if self.mass_per_area == 0.0 || Bounds::of(corners).apart(&self.bounds, 0.0) {
            return 0.0;
        }
        let within = |polygon: &[Point]| area(&clip(polygon, corners)).abs();
        let left_out: f64 = self.holes.iter().map(|hole| within(hole)).sum();
        let share = (within(&self.outline) - left_out) / area(corners);
        self.mass_per_area * share.clamp(0.0, 1.0)
    }
}
