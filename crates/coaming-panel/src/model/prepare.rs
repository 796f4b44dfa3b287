//! From the caller's panel to what the mesh must follow: every geometric check, every named feature.

use super::law::MonotoneLaw;
use super::panel::Panel;
use super::spread_mass::Spread;
use super::stack::Groups;
use super::support::Hold;
use crate::error::PanelError;
use crate::geometry::check::{Loop, extent};
use crate::geometry::curve::Curve;
use crate::geometry::outline::Outline;
use crate::geometry::point::Point;
use crate::math::{atan2, exp, ln};
use crate::mesh::feature::Feature;
use crate::mesh::triangulate::{Plan, Region};
use std::f64::consts::{PI, TAU};

/// No finer than this at a corner, relative to the first mesh: rounding grows with the square.
const SMALLEST_SHARE: f64 = 1.0 / 2000.0;

/// What runs along a feature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Role {
    /// The outline (0) or a hole (1 + index).
    Boundary(usize),
    /// The edge of a layer.
    LayerBoundary,
    /// A line support.
    Support(usize),
    /// A beam.
    Beam(usize),
    /// A gasket.
    Gasket(usize),
    /// The rim of a washer.
    Washer,
}

/// A checked panel with its features.
#[derive(Debug, Clone)]
pub(crate) struct Prepared {
    pub panel: Panel,
    pub features: Vec<Feature>,
    pub roles: Vec<Role>,
    pub outline: Loop,
    pub holes: Vec<Loop>,
    pub laws: Vec<MonotoneLaw>,
    pub groups: Groups,
    pub spread: Vec<Spread>,
    layer_regions: Vec<Region>,
}

/// Checks a panel and lists what the mesh must follow.
pub(crate) fn prepare(panel: &Panel) -> Result<Prepared, PanelError> {
    panel.check()?;
    super::size::check_panel(panel)?;
    let outline = Loop::new("outline", &panel.outline)?;
    let holes = loops("hole", &panel.holes)?;
    check_holes(&outline, &holes)?;
    let mut features = Vec::new();
    let mut roles = Vec::new();
    let mut add = |name: &str, curves: Vec<_>, role: Role| {
        features.push(Feature::new(name, curves));
        roles.push(role);
        features.len() - 1
    };
    add("outline", outline.curves.clone(), Role::Boundary(0));
    for (i, hole) in holes.iter().enumerate() {
        add(&hole.name, hole.curves.clone(), Role::Boundary(1 + i));
    }
    let whole = Region { boundary: 0, holes: (1..=holes.len()).collect() };
    let mut layer_regions = Vec::new();
    for (i, layer) in panel.layers.iter().enumerate() {
        let Some(region) = &layer.region else {
            layer_regions.push(whole.clone());
            continue;
        };
        let name = format!("layer {i}");
        let boundary = Loop::new(&name, &region.outline)?;
        outline.check_within(&boundary)?;
        let layer_holes = loops(&format!("{name} hole"), &region.holes)?;
        check_holes(&boundary, &layer_holes)?;
        let at = add(&name, boundary.curves.clone(), Role::LayerBoundary);
        let inner = layer_holes.iter().map(|h| add(&h.name, h.curves.clone(), Role::LayerBoundary)).collect();
        layer_regions.push(Region { boundary: at, holes: inner });
    }
    for (i, support) in panel.line_supports.iter().enumerate() {
        let name = format!("line support {i}");
        add(
            &name,
            on_panel(&name, support.line.curves(&name, &outline, &holes)?, &outline)?,
            Role::Support(i),
        );
    }
    for (i, beam) in panel.beams.iter().enumerate() {
        let name = format!("beam {i}");
        add(&name, on_panel(&name, beam.line.curves(&name, &outline, &holes)?, &outline)?, Role::Beam(i));
    }
    let mut laws = Vec::new();
    for (i, gasket) in panel.gaskets.iter().enumerate() {
        let name = format!("gasket {i}");
        laws.push(gasket.law.prepare(&name)?);
        add(&name, on_panel(&name, gasket.line.curves(&name, &outline, &holes)?, &outline)?, Role::Gasket(i));
    }
    for (i, support) in panel.point_supports.iter().enumerate().filter(|(_, s)| s.washer_radius > 0.0) {
        let name = format!("washer of point support {i}");
        let rim = Outline::circle(support.at.x, support.at.y, support.washer_radius);
        add(&name, on_panel(&name, rim.curves(&name)?, &outline)?, Role::Washer);
    }
    for (name, p) in panel.marked_points() {
        for value in [p.x, p.y] {
            crate::error::finite(format!("{name}: coordinate"), value)?;
        }
        if is_far(p, &outline) {
            return Err(PanelError::NoMaterial { part: name, at: p });
        }
    }
    let groups = Groups::new(&panel.layers, &panel.joints);
    let spread = (panel.spread_masses.iter().enumerate())
        .map(|(i, mass)| Spread::new(&format!("spread mass {i}"), mass))
        .collect::<Result<_, PanelError>>()?;
    Ok(Prepared {
        panel: panel.clone(),
        features,
        roles,
        outline,
        holes,
        laws,
        groups,
        spread,
        layer_regions,
    })
}

/// Refuses a line that leaves the box around the panel, before a mesh tries to follow it to wherever it leads.
fn on_panel(name: &str, curves: Vec<Curve>, outline: &Loop) -> Result<Vec<Curve>, PanelError> {
    let points =
        curves.iter().flat_map(|c| c.divide(f64::INFINITY, PI / 18.0).into_iter().map(|f| c.point(f)));
    match points.into_iter().find(|&p| is_far(p, outline)) {
        Some(at) => Err(PanelError::NoMaterial { part: name.into(), at }),
        None => Ok(curves),
    }
}

/// Whether a point lies outside the box around the panel.
fn is_far(p: Point, outline: &Loop) -> bool {
    // The polygon of an arc lies within its sagitta: 0.4 % of the radius at 10 degrees.
    let margin = 1e-2 * extent(&outline.polygon);
    let beyond = |pick: fn(&Point) -> f64| {
        outline.polygon.iter().all(|q| pick(&p) < pick(q) - margin)
            || outline.polygon.iter().all(|q| pick(&p) > pick(q) + margin)
    };
    beyond(|q| q.x) || beyond(|q| q.y)
}

fn loops(kind: &str, outlines: &[Outline]) -> Result<Vec<Loop>, PanelError> {
    outlines.iter().enumerate().map(|(i, o)| Loop::new(&format!("{kind} {i}"), o)).collect()
}

fn check_holes(outline: &Loop, holes: &[Loop]) -> Result<(), PanelError> {
    for (i, hole) in holes.iter().enumerate() {
        outline.check_hole(hole)?;
        for other in &holes[..i] {
            other.check_separate(hole)?;
        }
    }
    Ok(())
}

impl Prepared {
    /// What the first mesh must follow, with triangles no larger than `largest_area`.
    pub(crate) fn plan(&self, largest_area: f64) -> Plan<'_> {
        Plan {
            features: &self.features,
            panel: Region { boundary: 0, holes: (1..=self.holes.len()).collect() },
            layers: self.layer_regions.clone(),
            marks: self.panel.marked_points().into_iter().map(|(_, p)| p).collect(),
            fine: self.fine_places(largest_area),
            largest_area,
        }
    }

    /// Corners at which moments are singular, with a mesh size there.
    ///
    /// The deflection goes as r^m. Supported corner of angle a: m = pi / a below 180 degrees, 2 - pi / a above; free or clamped, above 180
    /// degrees: m about 1.5 (Williams, J. Appl. Mech. 19 (1952) 526-528). The energy missed within a distance h goes as h^(2m - 2): the size
    /// is chosen so that 2 % of what the first mesh would miss is left.
    fn fine_places(&self, largest_area: f64) -> Vec<(Point, f64)> {
        let longest = 1.6 * largest_area.sqrt();
        let supported = self
            .panel
            .line_supports
            .iter()
            .any(|s| s.deflection != Hold::Free && s.slope_across != Hold::Fixed);
        let mut places = Vec::new();
        for (boundary, inside_left) in
            std::iter::once((&self.outline, true)).chain(self.holes.iter().map(|h| (h, false)))
        {
            let runs_left = crate::geometry::polygon::area(&boundary.polygon) > 0.0;
            for (i, curve) in boundary.curves.iter().enumerate() {
                let next = &boundary.curves[(i + 1) % boundary.curves.len()];
                let (arriving, leaving) = (curve.tangent(1.0), next.tangent(0.0));
                let turn = atan2(arriving.cross(leaving), arriving.dot(leaving));
                let interior = if runs_left == inside_left { PI - turn } else { PI + turn };
                let interior = interior.rem_euclid(TAU);
                let power = if supported && interior > 0.55 * PI && interior < 0.98 * PI {
                    PI / interior
                } else if interior > 1.02 * PI {
                    if supported { 2.0 - PI / interior } else { 1.5 }
                } else {
                    continue;
                };
                let share = exp(ln(0.02) / (2.0 * power - 2.0)).clamp(SMALLEST_SHARE, 1.0);
                places.push((next.from(), longest * share));
            }
        }
        places
    }
}
